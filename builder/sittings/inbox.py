"""What came back from a class, taken in at one go: of each record it is said what became of it, and none is lost.

Records are sorted to the sitting they belong to; then each sitting is changed once, from reading to writing under its
lock. A run that is broken off has changed nothing or everything of a sitting, so the next one goes on from there, and
running twice changes nothing. Files are only ever read.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from journeybook.diagnostics.excerpt import visible
from journeybook.diagnostics.problem import Level, Problem
from journeybook.marking import attempt as attempts
from journeybook.marking import canonical
from journeybook.marking import observation as observations
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observed import misfits
from journeybook.marking.remark import Marker
from journeybook.proof.record_codes import PREFIX, from_codes
from journeybook.sittings import keyed, sitting_file
from journeybook.sittings.arrivals import Arrival
from journeybook.sittings.sitting import (
    Place,
    Refused,
    Sitting,
    SittingRefused,
    why_not,
    with_attempt,
    with_observation,
)

OUTCOMES = ("taken in", "already held", "refused", "incomplete", "not here", "no record")
"""``incomplete``: parts of codes are missing. ``not here``: the course is missing. ``no record``: something else."""
NEEDS_SOMEBODY = frozenset({"refused", "incomplete", "not here"})
_MOST_NOTED = 5000
"""Refused records that a sitting keeps; beyond, they are told and not noted, so that nobody can fill the file up."""
_LONGEST_WHY = 900
_CODE_BEGINS = 64
"""Bytes in which a certificate's code begins, after blanks that a pasting has left."""


@dataclass(frozen=True, kw_only=True)
class Told:
    """What became of one thing that came."""

    source: str
    outcome: str
    """One of ``OUTCOMES``."""
    what: str
    """What it is, in a word or two: ``attempt``, ``observation``, ``keyed answers``, ``codes``, ``PDF`` …"""
    who: str = ""
    ticket: str = ""
    fingerprint: str = ""
    why: str = ""
    """A sentence; empty where there is nothing to say."""
    result: Mapping[str, Any] | None = None
    """The check's result, for an attempt that is held and can be marked."""
    problems: tuple[Problem, ...] = ()
    """Faults of a keyed file, with their lines."""


@dataclass(frozen=True, kw_only=True)
class Course:
    """The compiled course that a sitting was drawn from."""

    data: bytes
    content: Mapping[str, Any]
    marker: Marker


CourseOf = Callable[[Sitting], "Course | None"]
"""Where the compiled course comes from; None where it is not here."""
SayOfCertificate = Callable[[bytes], str]
"""What a PDF, the text of a certificate's code, or a signed certificate is worth, in a sentence."""


@dataclass(frozen=True, kw_only=True)
class _Record:
    """One record, and how it came."""

    data: bytes
    source: str
    way: str
    what: str


def course_from(data: bytes | None) -> Course | None:
    """The course in the bytes of a compiled.json that was found by its digest."""
    if data is None:
        return None
    content = canonical.read(data, canonical.COMPILED_SIZE_CAP)
    assert isinstance(content, dict), "the digest has shown that it is a compiled course"
    return Course(data=data, content=content, marker=Marker(data))


def take_in(
    arrived: Iterable[Arrival],
    paths: Sequence[Path],
    *,
    received: str,
    course_of: CourseOf,
    say_of_certificate: SayOfCertificate,
) -> list[Told]:
    """Take in what came, and say of each what became of it, in the order in which it came.

    ``paths`` are the private files of the sittings; ``received`` is the time to note, RFC 3339. Raises SittingRefused
    or OSError where a sitting cannot be read or written; what went before stays done.
    """
    sittings = [sitting_file.read(path) for path in paths]
    lines: list[Told | None] = []
    waiting: dict[int, list[tuple[int, _Record]]] = {}
    for found in (each for one in arrived for each in _looked_at(one, say_of_certificate)):
        if isinstance(found, _Record):
            waiting.setdefault(_where(found, sittings), []).append((len(lines), found))
            lines.append(None)
        else:
            lines.append(found)
    for index, records in waiting.items():
        told: list[tuple[int, Told]] = []

        def step(
            sitting: Sitting,
            records: list[tuple[int, _Record]] = records,
            told: list[tuple[int, Told]] = told,
        ) -> Sitting:
            course = course_of(sitting)
            for at, record in records:
                sitting, line = _entered(sitting, record, course, received)
                told.append((at, line))
            return sitting

        sitting_file.update(paths[index], step)
        for at, line in told:
            lines[at] = line
    return [line for line in lines if line is not None]


def _looked_at(arrival: Arrival, say_of_certificate: SayOfCertificate) -> Iterator[Told | _Record]:
    """What one file holds: records, or what it is instead."""
    name, data = arrival.name, arrival.data
    if arrival.why:
        yield Told(source=name, outcome="no record", what="unread", why=arrival.why)
    elif not data:
        yield Told(source=name, outcome="no record", what="empty", why="There is nothing in it.")
    elif b"%PDF-" in data[:1024]:
        yield Told(source=name, outcome="no record", what="PDF", why=say_of_certificate(data))
    elif name.endswith(keyed.ENDING):
        yield _Record(data=data, source=name, way="keyed", what="keyed answers")
    elif data[:15].lower() == b"<!doctype html>" and b'id="sealed"' in data:
        yield Told(source=name, outcome="no record", what="page", why="It is the room's page of a sitting.")
    elif PREFIX.encode() in data:
        yield from _in_codes(name, data)
    elif data.lstrip()[:1] == b"{":
        yield from _in_json(name, data, say_of_certificate)
    elif b"JB1:" in data[:_CODE_BEGINS].upper():
        yield Told(source=name, outcome="no record", what="certificate code", why=say_of_certificate(data))
    else:
        why = "It is none of the files that a check, a practical or a keyed sheet gives."
        if ".keyed." in name:
            why = f"Keyed answers have names that end in {keyed.ENDING}; rename it."
        yield Told(source=name, outcome="no record", what="other", why=why)


def _in_codes(name: str, data: bytes) -> Iterator[Told | _Record]:
    decoded = from_codes([data.decode("utf-8", "replace")])
    for record in decoded.records:
        yield _Record(data=record, source=name, way="code", what=_kind_of(record))
    for part in decoded.incomplete:
        yield Told(source=name, outcome="incomplete", what="codes", why=part.sentence())
    for odd in decoded.odd:
        yield Told(source=name, outcome="refused", what="codes", why=f"{visible(odd.text)}: {odd.why}")


def _in_json(name: str, data: bytes, say_of_certificate: SayOfCertificate) -> Iterator[Told | _Record]:
    # Only what says of itself that it is a record of ours is one; the rest of a download folder is somebody else's.
    what = _kind_of(data)
    if what != "other":
        yield _Record(data=data, source=name, way="file", what=what)
        return
    known = b'"journeybook sitting 1"' in data[: canonical.SIZE_CAP]
    why = (
        "It is the private file of a sitting; name it with --sitting."
        if known
        else "It is JSON of another kind."
    )
    if b'"journeybook certificate 1"' in data[: canonical.SIZE_CAP]:
        yield Told(source=name, outcome="no record", what="certificate", why=say_of_certificate(data))
        return
    yield Told(source=name, outcome="no record", what="other", why=why)


def _kind_of(data: bytes) -> str:
    head = data[: canonical.SIZE_CAP]
    for format_, what in ((attempts.FORMAT, "attempt"), (observations.FORMAT, "observation")):
        if f'"format":"{format_}"'.encode() in head.replace(b": ", b":").replace(b" :", b":"):
            return what
    return "other"


def _where(record: _Record, sittings: Sequence[Sitting]) -> int:
    """Which sitting a record belongs to; the first where it belongs to none, so that it is noted somewhere."""
    if record.what == "keyed answers":
        return next(
            (
                at
                for at, one in enumerate(sittings)
                if any(p.ticket.encode() in record.data for p in one.people)
            ),
            0,
        )
    try:
        if record.what == "observation":
            seen = observations.read(record.data)
            return next(
                (at for at, one in enumerate(sittings) if one.digest == seen.digest and _seat(one, seen)), 0
            )
        taken = attempts.read(record.data)
    except (canonical.NotCanonical, attempts.NotAnAttempt, observations.NotAnObservation):
        return 0
    by_ticket = (at for at, one in enumerate(sittings) if one.place(taken.seed) is not None)
    by_course = (at for at, one in enumerate(sittings) if one.digest == taken.digest)
    return next(by_ticket, next(by_course, 0))


def _seat(sitting: Sitting, seen: observations.Observation) -> Place | None:
    person = (seen.person.id, seen.person.name)
    return next((place for place in sitting.people if (place.id, place.name) == person), None)


def _entered(sitting: Sitting, record: _Record, course: Course | None, received: str) -> tuple[Sitting, Told]:
    if record.what == "keyed answers":
        return _enter_keyed(sitting, record, course, received)
    if record.what == "observation":
        return _enter_observation(sitting, record, course, received)
    return _enter_attempt(sitting, record, course, received)


def _unread(refused: canonical.NotCanonical | attempts.NotAnAttempt | observations.NotAnObservation) -> str:
    if isinstance(refused, canonical.NotCanonical):
        return f"{refused.detail} It was altered, or another program has saved it anew."
    return refused.message


def _enter_attempt(
    sitting: Sitting, record: _Record, course: Course | None, received: str
) -> tuple[Sitting, Told]:
    line = Told(
        source=record.source, outcome="refused", what=record.what, fingerprint=fingerprint(record.data)
    )
    try:
        taken = attempts.read(record.data)
    except (canonical.NotCanonical, attempts.NotAnAttempt) as refused:
        return _noted(sitting, replace(line, why=_unread(refused)), received)
    line = replace(line, who=visible(taken.card.name), ticket=visible(taken.seed[:40]))
    place = sitting.place(taken.seed)
    every = [] if place is None else [place.attempt, *(each.attempt for each in place.set_aside)]
    held = any(each is not None and each.text.encode() == record.data for each in every)
    result: Mapping[str, Any] | None = None
    if not held and not why_not(sitting, taken) and place is not None and place.attempt is None:
        if course is None:
            return sitting, replace(line, outcome="not here", why=_not_here(sitting))
        remarked = course.marker.re_mark(record.data, record.source)
        if remarked.result is None:
            return _noted(
                sitting, replace(line, why=" ".join(each.message for each in remarked.problems[:3])), received
            )
        result = remarked.result
    elif held and course is not None:
        result = course.marker.re_mark(record.data, record.source).result
    done = with_attempt(sitting, record.data, received=received, by_way_of=record.way, source=record.source)
    if done.outcome == "refused":
        return _noted(sitting, replace(line, why=done.why or why_not(sitting, taken)), received)
    outcome = "taken in" if done.outcome == "entered" else done.outcome
    return done.sitting, replace(line, outcome=outcome, why=visible(done.why), result=result)


def _enter_observation(
    sitting: Sitting, record: _Record, course: Course | None, received: str
) -> tuple[Sitting, Told]:
    line = Told(
        source=record.source, outcome="refused", what=record.what, fingerprint=fingerprint(record.data)
    )
    try:
        seen = observations.read(record.data)
    except (canonical.NotCanonical, observations.NotAnObservation) as refused:
        return _noted(sitting, replace(line, why=_unread(refused)), received)
    line = replace(line, who=visible(seen.person.name))
    place = _seat(sitting, seen)
    if place is None:
        why = f"It is of {visible(seen.person.name)} ({visible(seen.person.id)}), who has no place in this sitting."
        return _noted(sitting, replace(line, why=why), received)
    line = replace(line, ticket=place.ticket)
    if course is None:
        return sitting, replace(line, outcome="not here", why=_not_here(sitting))
    faults = [
        each
        for each in misfits(seen, course.content, sitting.digest, record.source)
        if each.level is Level.FAULT
    ]
    if faults:
        return _noted(sitting, replace(line, why=" ".join(each.message for each in faults[:3])), received)
    try:
        after = with_observation(sitting, place.ticket, record.data, received=received)
    except SittingRefused as refused:
        return _noted(sitting, replace(line, why=refused.message), received)
    return after, replace(line, outcome="already held" if after == sitting else "taken in")


def _enter_keyed(
    sitting: Sitting, record: _Record, course: Course | None, received: str
) -> tuple[Sitting, Told]:
    line = Told(source=record.source, outcome="refused", what=record.what)
    file, problems = keyed.read_keyed(record.data, record.source)
    if file is None:
        return sitting, _told_with(line, problems)
    found: keyed.KeyedFile = file.value
    place = sitting.place(found.ticket.strip())
    line = replace(line, ticket=visible(found.ticket[:40]))
    if place is None:
        return _noted(
            sitting,
            replace(line, why=f"No place of this sitting has the ticket {visible(found.ticket[:40])}."),
            received,
        )
    line = replace(line, who=visible(place.name))
    if course is None:
        return sitting, replace(line, outcome="not here", why=_not_here(sitting))
    data, problems = keyed.record_of(file, sitting, place, course.content)
    if problems:
        return sitting, _told_with(line, problems)
    by = f"{record.source}, keyed by {visible(found.keyed_by)}"
    after, told = _enter_attempt(sitting, replace(record, data=data, source=by), course, received)
    return after, replace(told, source=record.source)


def _told_with(line: Told, problems: Sequence[Problem]) -> Told:
    """The line with the faults of a keyed file, cut: a message may quote from the file, and that at any length."""
    short = tuple(replace(each, message=_cut(each.message), mend=_cut(each.mend)) for each in problems)
    first = short[0]
    more = f" {len(short) - 1} more." if len(short) > 1 else ""
    return replace(line, why=f"Line {first.place.line}: {first.message} {first.mend}{more}", problems=short)


def _cut(text: str) -> str:
    return text if len(text) <= _LONGEST_WHY // 2 else text[: _LONGEST_WHY // 2 - 1] + "…"


def _not_here(sitting: Sitting) -> str:
    return (
        f"The course {sitting.course} {sitting.version} with contents {sitting.digest[:12]} is not here to mark by; "
        "nothing was changed. Run this beside the mkdocs.yml of the site that holds its release."
    )


def _noted(sitting: Sitting, line: Told, received: str) -> tuple[Sitting, Told]:
    """The sitting with a refused record noted, once for each record and reason."""
    noted = Refused(
        source=line.source[:_LONGEST_WHY],
        received=received,
        fingerprint=line.fingerprint,
        ticket=line.ticket,
        why=visible(line.why[:_LONGEST_WHY]),
    )
    line = replace(line, why=noted.why)
    known = any((one.fingerprint, one.why) == (noted.fingerprint, noted.why) for one in sitting.refused)
    if known or len(sitting.refused) >= _MOST_NOTED:
        return sitting, line
    return replace(sitting, refused=(*sitting.refused, noted)), line


def counted(lines: Iterable[Told]) -> dict[str, int]:
    """How many came to each outcome; those that none came to are left out."""
    found = Counter(line.outcome for line in lines)
    return {outcome: found[outcome] for outcome in OUTCOMES if found[outcome]}
