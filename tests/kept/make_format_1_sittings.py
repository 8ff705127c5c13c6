"""How the files of format-1-sittings/ were made, once.

``PYTHONPATH=tests/kept:tests/unit/marking:tests/unit/sittings python tests/kept/make_format_1_sittings.py``. It never
writes over a kept file. A later format gets a folder of its own; these stay readable for ever.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from datetime import UTC, date, datetime
from itertools import cycle
from pathlib import Path
from typing import Any

from class_of_three import CONTENT, COURSE, DATA, KAY, KEYS, LEE, ROBIN, STAMP, attempt_of, sitting
from make_format_1 import RIGHT, answered
from test_seal import BASE, people

from journeybook.making import courses_of
from journeybook.marking import canonical, observation
from journeybook.marking.attempt import Attempt, Card, write
from journeybook.marking.fingerprint import fingerprint
from journeybook.project import Project
from journeybook.proof.record_codes import to_codes
from journeybook.sittings import keyed, sealed_blob, sitting_format
from journeybook.sittings.seal import Chance, seal_sitting
from journeybook.sittings.set_aside import with_set_aside
from journeybook.sittings.sitting import (
    CertificateIssued,
    Sitting,
    countersigned,
    vouched,
    with_attempt,
    with_certificate,
    with_observation,
)

FOLDER = Path(__file__).parent / "format-1-sittings"
WEDNESDAY = date(2026, 12, 2)


def answered_right(ticket: str) -> Attempt:
    """Return an attempt in which every question is answered as its key would have it."""
    whole = attempt_of(ticket)
    answers = {}
    for asked in whole.form:
        known: Any = {**RIGHT, asked.question: RIGHT.get(asked.question, KEYS[asked.question].get("right"))}
        answers[asked.question] = answered({"q": asked.question, "variant": asked.variant}, known)
    return replace(whole, answers=answers)


def seen() -> observation.Observation:
    """Return what an assessor saw of Kay."""
    return observation.Observation(
        course=sitting().course,
        version=sitting().version,
        digest=sitting().digest,
        profile=sitting().profile,
        language="en",
        practical="guard-watched",
        person=Card(id="0512", name="Kay Ferriby", workplace=""),
        unit="drill 4",
        held_on=WEDNESDAY,
        location="Bay 3, größere Werft",
        assessor=observation.Assessor(
            name="T. Marrable", role="Foreman", basis="Named by the works manager"
        ),
        second=observation.SecondObserver(name="A. Fenwright", role="Trainer"),
        safety=(True,),
        steps=(observation.StepSeen(step="close-the-gap", seen="yes", prompted=False, note="at once"),),
        stopped=False,
        note="Calm, asked before touching.",
        result="competent",
        started="2026-12-02T11:00:00Z",
        ended="2026-12-02T11:10:00Z",
    )  # fmt: skip


def keyed_lee() -> str:
    """Return Lee's paper, keyed: the empty file with a letter or a number in every row."""
    seat = sitting().place(LEE)
    assert seat is not None
    text = keyed.empty_file(sitting(), seat, CONTENT)
    text = text.replace('keyed-by: ""', 'keyed-by: "A. Fenwright"')
    for row, letters in {"q1": "A C", "q2": "B -", "q3": "C A B E D", "q4": "a", "q5": "0,6 cm"}.items():
        assert f'{row}: ""' in text
        text = text.replace(f'{row}: ""', f'{row}: "{letters}"')
    return text


def whole_day(robin: bytes, kay: bytes, lee: bytes, trial: bytes, saw: bytes) -> Sitting:
    """Return the sitting after a day on which everything that a file can hold has happened."""
    day = sitting()
    day = with_attempt(day, trial, received=STAMP, by_way_of="file", source="trial.json").sitting
    day = with_set_aside(
        day, ROBIN, fingerprint(trial), by="T. Marrable", on=WEDNESDAY, why="The page was tried out.",
        answered_by="0512",
    )  # fmt: skip
    for data, way, source in (
        (robin, "file", "robin.json"),
        (kay, "code", "from the hall.txt"),
        (lee, "keyed", f"{LEE}.keyed.yml, keyed by A. Fenwright"),
        (write(replace(attempt_of(KAY), ended="2026-12-02T09:59:00Z")), "file", "kay-again.json"),
    ):
        day = with_attempt(day, data, received=STAMP, by_way_of=way, source=source).sitting
    day = with_observation(day, KAY, saw, received="2026-12-02T12:00:00Z")
    day = vouched(day, ROBIN, by="T. Marrable", on=WEDNESDAY, identity="Works pass")
    day = vouched(day, KAY, by="T. Marrable", on=WEDNESDAY, identity="Works pass")
    day = countersigned(day, KAY, fingerprint(saw), by="T. Marrable", on=WEDNESDAY)
    issued = CertificateIssued(
        id="urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11", issued="2026-12-03T08:00:00Z", file="kay.pdf"
    )
    return with_certificate(replace(day, trained=date(2026, 12, 1)), KAY, issued)


def main() -> None:
    """Write the folder, or refuse."""
    if FOLDER.exists():
        sys.exit("format-1-sittings is kept; nothing is written over it")
    assert COURSE is not None
    robin, kay = write(answered_right(ROBIN)), write(attempt_of(KAY))
    saw, paper = observation.write(seen()), keyed_lee()
    file, problems = keyed.read_keyed(paper.encode(), f"{LEE}.keyed.yml")
    seat = sitting().place(LEE)
    assert file is not None, problems
    assert seat is not None
    lee, problems = keyed.record_of(file, sitting(), seat, CONTENT)
    assert not problems, problems
    day = whole_day(robin, kay, lee, write(attempt_of(ROBIN)), saw)
    results = {}
    for name, data in (("robin", robin), ("kay", kay), ("lee", lee)):
        found = COURSE.marker.re_mark(data, name)
        assert found.result is not None, found.problems
        results[name] = {"fingerprint": found.fingerprint, "result": dict(found.result)}

    (ready,), _ = courses_of(Project(root=BASE, courses=("pillar-drill",), profile="uk"))
    letters = cycle("ABCDEFGHJKMNPQRSTVWXYZ23456789")
    sealed = seal_sitting(
        ready.course, ready.compiled, people(), passphrase=day.passphrase, now=datetime(2026, 11, 30, tzinfo=UTC),
        chance=Chance(letter=lambda: next(letters), some=lambda count: bytes(range(count))),
    )  # fmt: skip
    record = canonical.write(dict(sealed.record))

    FOLDER.mkdir()
    for name, data in {
        "compiled.json": DATA,
        "class.sitting.json": sitting_format.to_bytes(day),
        "attempt-robin.json": robin,
        "attempt-kay.json": kay,
        "attempt-lee.json": lee,
        "codes-kay.txt": ("\n".join(to_codes(kay)) + "\n").encode(),
        "codes-robin-and-observation.txt": "\n".join([*reversed(to_codes(robin)), *to_codes(saw)]).encode(),
        f"{LEE}.keyed.yml": paper.encode(),
        "observation.json": saw,
        "results.json": canonical.write(results),
        "sealed.json": record,
        "sealed-content.json": canonical.write(sealed_blob.unseal(record, day.passphrase)),
        "sealed.sitting.json": sitting_format.to_bytes(sealed.sitting),
    }.items():
        (FOLDER / name).write_bytes(data)


if __name__ == "__main__":
    main()
