"""What a course shows around its questions, as plain data: its own words, modules, sheets and sources.

A text stands by language under ``texts``; what is not said in a language (an id, a number, a name, a date)
stands beside it. Whatever a page prints from the course's files is here or with the lessons and questions, so
that no change to it leaves the digest as it was.
"""

from __future__ import annotations

from collections.abc import Iterable

from journeybook.content.model import Citation, Confirmation, Course, Module, Sheet, Value
from journeybook.marking.kind import Json
from journeybook.marking.question_texts import Say


def shown_around(course: Course, say: Say) -> dict[str, Json]:
    """Return the members of the public part that concern the course as a whole."""
    language = course.languages[0]
    return {
        "texts": {language: _own_texts(course, say)},
        "issuer": {"name": course.issuer.name, "place": course.issuer.location},
        "contact": {
            "name": course.contact.name,
            "role": course.contact.role,
            "reach": course.contact.reach,
        },
        "approved": None
        if course.approved is None
        else {"by": course.approved.by, "on": course.approved.on.isoformat()},
        "validity": {"months": course.validity.months, "source": list(course.validity.sources)},
        "check": None if course.check is None else {"minutes": course.check.minutes},
        "outcomes": [outcome.id for outcome in course.outcomes],
        "critical-facts": [{"id": fact.id, "source": list(fact.sources)} for fact in course.critical_facts],
        "modules": [_module(module, language, say) for module in course.modules],
        "kit": _sheet(course.kit, language, say),
        "profile": _sheet(course.profile, language, say),
        "sources": _citations(course.sources.values()),
    }


def _own_texts(course: Course, say: Say) -> dict[str, Json]:
    return {
        "title": say(course.title),
        "summary": say(course.summary),
        "equipment": say(course.equipment),
        "cautions": [say(caution) for caution in course.cautions],
        "does-not-prove": [say(limit) for limit in course.certificate_limits],
        "validity": say(course.validity.grounds),
        "check": None
        if course.check is None
        else {"title": say(course.check.title), "grounds": say(course.check.grounds)},
        "outcomes": {outcome.id: say(outcome.text) for outcome in course.outcomes},
        "critical-facts": {
            fact.id: {"text": say(fact.text), "why": say(fact.why)} for fact in course.critical_facts
        },
    }


def _module(module: Module, language: str, say: Say) -> dict[str, Json]:
    return {
        "id": module.id,
        "operation": module.operation,
        "lessons": [lesson.id for lesson in module.lessons],
        "texts": {language: {"title": say(module.title), "summary": say(module.summary)}},
    }


def _sheet(sheet: Sheet, language: str, say: Say) -> dict[str, Json]:
    return {
        "texts": {language: {"title": say(sheet.title)}},
        "values": [_value(value, language, say) for value in sheet.values.values()],
    }


def _value(value: Value, language: str, say: Say) -> dict[str, Json]:
    return {
        "id": value.id,
        "value": value.value,
        "unit": value.unit,
        "source": list(value.sources),
        "page": value.page,
        "confirmed": _confirmation(value.confirmed),
        "example": value.example,
        "texts": {language: {"label": say(value.label), "note": say(value.note)}},
    }


def _citations(citations: Iterable[Citation]) -> list[Json]:
    return [
        {
            "id": citation.id,
            "title": citation.title,
            "clause": citation.clause,
            "year": citation.year,
            "status": citation.standing.value,
            "confirmed": _confirmation(citation.confirmed),
        }
        for citation in citations
    ]


def _confirmation(confirmed: Confirmation | None) -> Json:
    if confirmed is None:
        return None
    return {"by": confirmed.by, "on": confirmed.on.isoformat(), "edition": confirmed.edition}
