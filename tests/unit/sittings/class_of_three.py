"""A sitting of three at a course with a question of most kinds, for the tests of what comes back. All invented."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from journeybook.marking import observation as observations
from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.marking.compiled import compile_course
from journeybook.marking.draw import draw_form
from journeybook.marking.observation import Assessor as Observer
from journeybook.marking.observation import Observation, StepSeen
from journeybook.sittings import sitting_file
from journeybook.sittings.arrivals import arrivals
from journeybook.sittings.inbox import Course, Told, course_from, take_in
from journeybook.sittings.sitting import Assessor, Place, Sitting

STAMP = "2026-12-02T10:00:00Z"
ROBIN, KAY, LEE = "ABCDE-FGHJK", "MNPQR-STVWX", "YZ234-56789"


def compiled() -> tuple[bytes, str, dict[str, Any]]:
    sys.path.insert(0, str(Path(__file__).parents[1] / "marking"))
    from pillar_drill import course

    made = compile_course(course())
    return made.data, made.digest, dict(made.content)


DATA, DIGEST, CONTENT = compiled()
PLAN: Any = CONTENT["public"]["plan"]
KEYS: Any = CONTENT["private"]["keys"]
COURSE = course_from(DATA)


def sitting() -> Sitting:
    return Sitting(
        id="3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11",
        course=str(CONTENT["course"]),
        version=str(CONTENT["version"]),
        digest=DIGEST,
        profile=str(CONTENT["profile"]),
        language="en",
        title="Wednesday class",
        held_on=date(2026, 12, 2),
        location="Training room 2",
        assessor=Assessor(name="T. Marrable", basis="Foreman"),
        identity="Works pass",
        trainer="A. Fenwright",
        trained=None,
        minutes=30,
        made="2026-11-30T08:00:00Z",
        passphrase="guard mango river stone ladder zebra",
        people=(
            Place(ticket=ROBIN, id="0417", name="Robin Ashdown", workplace="Bay 3"),
            Place(ticket=KAY, id="0512", name="Kay Ferriby", workplace=""),
            Place(ticket=LEE, id="0613", name="Lee Thornaby", workplace="Bay 1"),
        ),
    )


def attempt_of(ticket: str, **changes: Any) -> Attempt:
    place = sitting().place(ticket) or replace(sitting().people[0], ticket=ticket)
    form = draw_form(PLAN, ticket, ())
    whole = Attempt(
        course=sitting().course,
        version=sitting().version,
        digest=DIGEST,
        profile=sitting().profile,
        language="en",
        seed=ticket,
        avoid=(),
        form=tuple(
            Asked(question=one["q"], variant=one["variant"], options=tuple(one["options"])) for one in form
        ),
        answers={},
        shown=tuple(one["q"] for one in form),
        started="2026-12-02T09:00:00Z",
        ended="2026-12-02T09:20:00Z",
        card=Card(id=place.id, name=place.name, workplace=place.workplace),
    )
    return replace(whole, **changes)


def attempt(ticket: str, **changes: Any) -> bytes:
    return write(attempt_of(ticket, **changes))


def observation(**changes: Any) -> bytes:
    """What was seen of Kay Ferriby on the day of the check."""
    whole = Observation(
        course=sitting().course,
        version=sitting().version,
        digest=sitting().digest,
        profile=sitting().profile,
        language="en",
        practical="guard-watched",
        person=Card(id="0512", name="Kay Ferriby", workplace=""),
        unit="drill 4",
        held_on=date(2026, 12, 2),
        location="Bay 3",
        assessor=Observer(name="T. Marrable", role="Foreman", basis="Named by the works manager"),
        second=None,
        safety=(True,),
        steps=(StepSeen(step="close-the-gap", seen="yes", prompted=False, note=""),),
        stopped=False,
        note="",
        result="competent",
        started="2026-12-02T11:00:00Z",
        ended="2026-12-02T11:10:00Z",
    )
    return observations.write(replace(whole, **changes))


class Inbox:
    """A folder for what comes back and the private file of the sitting."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder / "back"
        self.folder.mkdir()
        self.path = folder / "class.sitting.json"
        sitting_file.write(self.path, sitting())

    def put(self, name: str, data: bytes | str) -> Path:
        path = self.folder / name
        path.write_bytes(data.encode() if isinstance(data, str) else data)
        return path

    def take_in(
        self,
        *files: Path,
        course_of: Callable[[Sitting], Course | None] = lambda _: COURSE,
        received: str = STAMP,
    ) -> list[Told]:
        return take_in(
            arrivals(files or [self.folder]),
            [self.path],
            received=received,
            course_of=course_of,
            say_of_certificate=lambda _: "a PDF",
        )

    def now(self) -> Sitting:
        return sitting_file.read(self.path)

    def outcomes(self) -> dict[str, str]:
        return {line.source: line.outcome for line in self.take_in()}
