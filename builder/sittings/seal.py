"""Making a sitting: a ticket and a form for each person, the questions they will be asked, sealed.

What leaves this file is plain data: the private sitting for the employer, and the record that stands in the page.
The page's content holds no key, no reason and no answer, and of the questions only those that some form asks.
"""

from __future__ import annotations

import hashlib
import secrets
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

from journeybook.content.model import Course, DrillQuestion
from journeybook.content.wording import Wording
from journeybook.marking import attempt as attempts
from journeybook.marking.compiled import Compiled
from journeybook.marking.draw import draw_form
from journeybook.marking.kind import Json
from journeybook.pages.asked_question import asked_facts, asked_html
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.bench_html import bench_data, benches_of_questions
from journeybook.pages.question_figure import QuestionFigures
from journeybook.pages.question_html import Desk
from journeybook.sittings import sealed_blob
from journeybook.sittings.class_file import ClassFile, Person, composed
from journeybook.sittings.set_aside import attempts_of
from journeybook.sittings.sitting import ALPHABET, Assessor, Place, Sitting

SLUG = "sitting"
_LETTERS = 10


@dataclass(frozen=True, kw_only=True)
class Chance:
    """Where everything that must be unforeseeable comes from."""

    letter: Callable[[], str]
    """One letter of a ticket."""
    some: Callable[[int], bytes]
    """So many random bytes."""


def true_chance() -> Chance:
    """Chance from the system."""
    return Chance(letter=lambda: secrets.choice(ALPHABET), some=secrets.token_bytes)


@dataclass(frozen=True, kw_only=True)
class Sealed:
    """A sitting that was made."""

    sitting: Sitting
    record: Mapping[str, Json]
    """What stands in the page: format ``journeybook sealed 1``."""


def seal_sitting(
    course: Course,
    compiled: Compiled,
    people: ClassFile,
    *,
    passphrase: str,
    now: datetime,
    chance: Chance,
    earlier: Sequence[Sitting] = (),
) -> Sealed:
    """Draw the forms and seal them. ``earlier``: sittings whose questions a person should not meet again.

    Raises ValueError for a course without a check.
    """
    if course.check is None:
        raise ValueError(f"course {course.id} has no check")
    minutes = course.check.minutes
    sitting = Sitting(
        id=str(UUID(bytes=chance.some(16), version=4)),
        course=course.id,
        version=course.version,
        digest=compiled.digest,
        profile=course.profile.id,
        language=course.languages[0],
        title=composed(people.title),
        held_on=people.held_on,
        location=composed(people.location),
        assessor=Assessor(name=composed(people.assessor.name), basis=composed(people.assessor.basis)),
        identity=composed(people.identity),
        trainer=composed(people.trainer),
        trained=people.trained,
        minutes=minutes,
        made=now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"),
        passphrase=passphrase,
        people=tuple(_places(people.people, minutes, earlier, chance)),
    )
    content = _content(course, compiled, sitting)
    salt, iv = chance.some(sealed_blob.SALT_BYTES), chance.some(sealed_blob.IV_BYTES)
    head: dict[str, Json] = {
        "course": sitting.course,
        "title": sitting.title,
        "version": sitting.version,
        "digest": sitting.digest,
        "profile": sitting.profile,
        "language": sitting.language,
        "held-on": sitting.held_on.isoformat(),
        "location": sitting.location,
    }
    record = sealed_blob.seal(head, content, sealed_blob.key_of(passphrase, salt), salt=salt, iv=iv)
    return Sealed(sitting=sitting, record=record)


def _places(
    people: Iterable[Person], minutes: int, earlier: Sequence[Sitting], chance: Chance
) -> Iterable[Place]:
    taken: set[str] = set()
    for person in people:
        name = composed(person.id)
        before = [
            attempts.read(held.text.encode()) for sitting in earlier for held in attempts_of(sitting, name)
        ]
        yield Place(
            ticket=_ticket(taken, chance),
            id=name,
            name=composed(person.name),
            workplace=composed(person.workplace),
            extra_minutes=person.minutes_beyond(minutes),
            oral=person.oral,
            avoid=tuple(dict.fromkeys(asked.question for record in before for asked in record.form)),
            attempt_number=len(before) + 1,
        )


def _ticket(taken: set[str], chance: Chance) -> str:
    while True:
        letters = "".join(chance.letter() for _ in range(_LETTERS))
        if letters not in taken:
            taken.add(letters)
            return f"{letters[:5]}-{letters[5:]}"


def place_name(sitting_id: str, ticket: str) -> str:
    """Return under which name the page finds the place of a ticket: the page holds no ticket."""
    return hashlib.sha256(f"{sitting_id}\n{ticket}".encode()).hexdigest()


def _content(course: Course, compiled: Compiled, sitting: Sitting) -> dict[str, Json]:
    content: Any = compiled.content
    plan, keys = content["public"]["plan"], content["private"]["keys"]
    places: dict[str, Json] = {}
    asked: set[str] = set()
    for place in sitting.people:
        form = draw_form(plan, place.ticket, place.avoid)
        asked.update(line["q"] for line in form)
        places[place_name(sitting.id, place.ticket)] = {
            "person": {"id": place.id, "name": place.name, "workplace": place.workplace},
            "form": [*form],
            "avoid": [*place.avoid],
            "minutes": sitting.minutes + place.extra_minutes,
            "oral": place.oral,
        }
    return {
        "sitting": sitting.id,
        "assessor": sitting.assessor.name,
        "places": places,
        "facts": {id_: asked_facts(keys[id_]) for id_ in sorted(asked)},
        **_shown(course, asked),
    }


def _shown(course: Course, asked: Collection[str]) -> dict[str, Json]:
    """The questions as HTML, the drawings they refer to, and what their benches must know."""
    wording, language = Wording(course), course.languages[0]
    figures = QuestionFigures(course, wording, SLUG)
    desk = Desk(course=course, wording=wording, slug=SLUG, figure_html=figures, language=language)
    questions = [course.questions[id_] for id_ in sorted(asked)]
    html: dict[str, Json] = {question.id: str(asked_html(desk, question)) for question in questions}
    benches = BenchDesk(course=course, wording=wording, slug=SLUG, language=language)
    every: Any = bench_data(benches)
    return {
        "questions": html,
        "drawings": str(figures.store()),
        "benches": {id_: every[id_] for id_ in sorted(set(benches_of_questions(questions)))},
        "drills": sum(isinstance(question, DrillQuestion) for question in questions),
    }
