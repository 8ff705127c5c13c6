"""Answers on paper, keyed in: a small YAML file that becomes the same record as a screen would have saved."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

from journeybook.content.file_read import FileRead, read_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.excerpt import visible
from journeybook.diagnostics.problem import Place, Problem
from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.marking.draw import draw_form
from journeybook.marking.kind import Json
from journeybook.marking.mark import mark
from journeybook.sittings.paper_answers import NotThisKind, hint, raw_answer
from journeybook.sittings.sitting import Place as Seat
from journeybook.sittings.sitting import Sitting
from journeybook.source.reading import Reading, called, what_is
from journeybook.source.scalars import NamedTexts, Text
from journeybook.source.shapes import Field, Record

ENDING = ".keyed.yml"
KEYED_CAP = 1 << 20
_QUESTION = re.compile(r"q([1-9][0-9]{0,2})")
_LONGEST = 300


@dataclass(frozen=True, kw_only=True)
class KeyedFile:
    """The file as read."""

    ticket: str
    keyed_by: str
    started: str
    ended: str
    answers: Mapping[str, str]
    """``q1``, ``q2`` … in the printed order -> what stands on the paper."""
    place: Place


class _OnPaper:
    """What stands in a row of the paper: a text, a number, or a list of letters."""

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The row as one text, or ``INVALID``."""
        value = container[key]
        if isinstance(value, list) and all(isinstance(each, str) for each in value):
            value = " ".join(value)
        if type(value) in (int, Decimal):
            value = str(value)
        if value is None:
            value = ""
        if isinstance(value, str) and len(value) <= _LONGEST:
            return value
        return reading.refuse(
            "Y001",
            container,
            key,
            trail,
            f"{called(key)} is {what_is(value)} where what stands on the paper belongs.",
            'Key the letters or the number as they stand there, in quotes: "B" or "C A B" or "10,2 L/min".',
        )

    def schema(self) -> dict[str, Any]:
        """A text, a number, or a list of texts."""
        return {"type": ["string", "number", "array", "null"], "items": {"type": "string"}}


_TIME = (
    "a time with its zone",
    'Write it as "2026-12-02T09:05:00Z", or with the hours off UTC: "2026-12-02T10:05:00+01:00".',
)
_STAMP = Text(
    25, pattern=r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(Z|[+-][0-9]{2}:[0-9]{2})", rule=_TIME
)
KEYED_FILE = Record(
    KeyedFile,
    "keyed answers",
    [
        Field("ticket", Text(40), "The ticket at the head of the sheet.", "ABCDE-FGHJK"),
        Field("keyed-by", Text(120), "Who keys the answers in.", "A. Fenwright"),
        Field("started", _STAMP, "When the person began.", "2026-12-02T09:05:00Z"),
        Field("ended", _STAMP, "When the person handed in.", "2026-12-02T09:31:00Z"),
        Field(
            "answers",
            NamedTexts(_OnPaper(), most=300, noun="answers", mend='Write each on its own line: `q1: "B"`.'),
            "What stands on the sheet, by the number of the question.",
            {"q1": "B", "q2": "A C", "q3": "10,2 L/min"},
        ),
    ],
    title="keyed answers",
)  # fmt: skip


def read_keyed(data: bytes, path: str) -> tuple[FileRead | None, list[Problem]]:
    """Return the file, or None and what has to be mended; its ``value`` is a KeyedFile."""
    if len(data) > KEYED_CAP:
        place = Place(file=path, length=0)
        return None, [
            fault(
                "Y001",
                place,
                f"The file is larger than {KEYED_CAP} bytes.",
                "Begin it again with `journeybook from-paper`.",
            )
        ]
    file = read_file(data, path, KEYED_FILE)
    if file.problems or not isinstance(file.value, KeyedFile):
        return None, file.problems
    problems = [
        fault(
            "Y001",
            file.place(file.value, name),
            f"`{name}` is no time that there is.",
            'Write it as "2026-12-02T09:05:00Z".',
        )
        for name, text in (("started", file.value.started), ("ended", file.value.ended))
        if _stamp(text) is None
    ]
    return (None, problems) if problems else (file, [])


def record_of(
    file: FileRead, sitting: Sitting, seat: Seat, compiled: Mapping[str, Any]
) -> tuple[bytes, list[Problem]]:
    """Return the attempt of a keyed file, or what has to be mended. ``compiled``: the content of compiled.json."""
    keyed: KeyedFile = file.value
    form = draw_form(compiled["public"]["plan"], seat.ticket, seat.avoid)
    keys: Mapping[str, Any] = compiled["private"]["keys"]
    answers: dict[str, Json] = {}
    problems: list[Problem] = []
    for name, text in keyed.answers.items():
        number = _QUESTION.fullmatch(name)
        if number is None or int(number[1]) > len(form):
            mend = f"The form has the questions q1 to q{len(form)}."
            problems.append(
                fault("Y002", _row(file, name), f"`{name[:40]}` is no question of this form.", mend)
            )
            continue
        asked = form[int(number[1]) - 1]
        key = keys[asked["q"]]
        try:
            answer = raw_answer(key, asked["options"], text)
        except NotThisKind as refused:
            problems.append(_unfit(file, name, str(refused), hint(key, asked["options"])))
            continue
        if answer is None:
            continue
        problem = mark(key, asked["variant"], answer).remarks.get("problem")
        if problem == "malformed":
            problems.append(
                _unfit(file, name, "the question cannot have this answer", hint(key, asked["options"]))
            )
        elif problem == "ambiguous":
            problems.append(_two_ways(file, name, text))
        answers[asked["q"]] = answer
    if problems:
        return b"", problems
    attempt = Attempt(
        course=sitting.course,
        version=sitting.version,
        digest=sitting.digest,
        profile=sitting.profile,
        language=sitting.language,
        seed=seat.ticket,
        avoid=seat.avoid,
        form=tuple(
            Asked(question=each["q"], variant=each["variant"], options=tuple(each["options"]))
            for each in form
        ),
        answers=answers,
        shown=tuple(each["q"] for each in form),
        started=_stamp(keyed.started) or "",
        ended=_stamp(keyed.ended) or "",
        card=Card(id=seat.id, name=seat.name, workplace=seat.workplace),
    )
    return write(attempt), []


def empty_file(sitting: Sitting, seat: Seat, compiled: Mapping[str, Any]) -> str:
    """Return a keyed file to fill in: one line a question, with what belongs there beside it."""
    form = draw_form(compiled["public"]["plan"], seat.ticket, seat.avoid)
    keys: Mapping[str, Any] = compiled["private"]["keys"]
    day = sitting.held_on.isoformat()
    lines = [
        f"# What stands on the answer sheet of {visible(seat.name)} ({visible(seat.id)}).",
        "# Key it as it stands there, wrong or right. Leave the quotes; an unanswered question stays empty.",
        f"ticket: {seat.ticket}",
        'keyed-by: ""',
        f'started: "{day}T09:00:00Z"   # mend both times; Z is UTC, +01:00 an hour ahead of it',
        f'ended: "{day}T09:30:00Z"',
        "answers:",
        *(
            f'  q{number}: ""   # {keys[each["q"]]["kind"]}: {hint(keys[each["q"]], each["options"])}'
            for number, each in enumerate(form, 1)
        ),
    ]
    return "\n".join(lines) + "\n"


def _unfit(file: FileRead, name: str, why: str, wanted: str) -> Problem:
    message = f"What is keyed for {name} is no answer to it: {why}."
    return fault("Y003", _row(file, name), message, f"Look at the sheet again and key {wanted}.")


def _two_ways(file: FileRead, name: str, text: str) -> Problem:
    """A number such as 4.284: the page would ask again, and nobody is there to be asked."""
    message = (
        f"What is keyed for {name}, {visible(text)}, can be read in two ways: as decimals, or as thousands."
    )
    mend = (
        "The paper asks for numbers without a mark for thousands: where decimals are meant, key a 0 after them "
        '("4.2840"); where the sheet shows that thousands are meant, leave the mark out ("4284").'
    )
    return fault("Y003", _row(file, name), message, mend)


def _row(file: FileRead, name: str) -> Place:
    origin = file.origins[id(file.value)]
    return origin.document.place(origin.container["answers"], name, trail=origin.trail)


def _stamp(text: str) -> str | None:
    try:
        moment = datetime.fromisoformat(text)
        return moment.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ") if moment.year > 1 else None
    except (ValueError, OverflowError):
        return None
