"""The papers of a sitting, from its private file: whose form is printed on which ticket, and the class sheet.

A form is drawn again from its ticket, so a paper asks what the page would ask. Nothing of the passphrase leaves here.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any

from journeybook.content.markup import render_plain
from journeybook.marking.draw import draw_form
from journeybook.paper.class_sheet import ClassRow, ClassSheet
from journeybook.paper.form_on_paper import FormOnPaper
from journeybook.paper.imprint import CourseInPrint
from journeybook.sittings.sitting import Place, Sitting


def form_on_paper(
    sitting: Sitting, place: Place, printed: CourseInPrint, content: Mapping[str, Any]
) -> FormOnPaper:
    """The form of a place. ``printed`` is the course of the sitting's digest, ``content`` that of compiled.json."""
    return FormOnPaper(
        printed=printed,
        ticket=place.ticket,
        name=place.name,
        person=place.id,
        workplace=place.workplace,
        class_title=sitting.title,
        held_on=sitting.held_on,
        location=sitting.location,
        minutes=sitting.minutes,
        extra_minutes=place.extra_minutes,
        oral=place.oral,
        form=draw_form(content["public"]["plan"], place.ticket, place.avoid),
        made=_made(sitting),
    )


def class_sheet(sitting: Sitting, content: Mapping[str, Any]) -> ClassSheet:
    """The class sheet; what has been handed in already is printed with its fingerprint."""
    public, language = content["public"], content["languages"][0]
    texts = public["texts"][language]
    return ClassSheet(
        language=language,
        title=sitting.title,
        course=render_plain(texts["title"]),
        version=sitting.version,
        digest=sitting.digest,
        profile=render_plain(public["profile"]["texts"][language]["title"]),
        held_on=sitting.held_on,
        location=sitting.location,
        assessor=sitting.assessor.name,
        basis=sitting.assessor.basis,
        identity=sitting.identity,
        trainer=sitting.trainer,
        trained=sitting.trained,
        minutes=sitting.minutes,
        example=any(value["example"] for value in public["kit"]["values"]),
        cautions=tuple(render_plain(caution) for caution in texts["cautions"]),
        limits=tuple(render_plain(limit) for limit in texts["does-not-prove"]),
        rows=tuple(
            ClassRow(
                name=place.name,
                person=place.id,
                workplace=place.workplace,
                ticket=place.ticket,
                extra_minutes=place.extra_minutes,
                oral=place.oral,
                fingerprint=place.attempt.fingerprint if place.attempt else "",
            )
            for place in sitting.people
        ),
        made=_made(sitting),
    )


def _made(sitting: Sitting) -> datetime:
    return datetime.fromisoformat(sitting.made).astimezone(UTC)
