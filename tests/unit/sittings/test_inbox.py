"""What comes back from a class is taken in once, refused with a reason, and never lost, moved or doubled."""

from __future__ import annotations

import os
import threading
import time
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from class_of_three import COURSE, KAY, LEE, ROBIN, Inbox, attempt, attempt_of, observation, sitting

from journeybook.marking.attempt import Asked, Card, write
from journeybook.marking.fingerprint import fingerprint
from journeybook.proof.record_codes import to_codes
from journeybook.sittings import sitting_file
from journeybook.sittings.arrivals import READ_CAP
from journeybook.sittings.inbox import take_in
from journeybook.sittings.sitting import Sitting


@pytest.fixture
def inbox(tmp_path: Path) -> Inbox:
    return Inbox(tmp_path)


def test_a_saved_attempt_is_taken_in_and_marked(inbox: Inbox) -> None:
    inbox.put("robin.json", attempt(ROBIN))
    (line,) = inbox.take_in()
    assert (line.outcome, line.who, line.ticket) == ("taken in", "Robin Ashdown", ROBIN)
    assert line.fingerprint == fingerprint(attempt(ROBIN))
    assert line.result is not None
    assert line.result["passed"] is False
    held = inbox.now().people[0].attempt
    assert held is not None
    assert (held.text.encode(), held.by_way_of, held.source) == (attempt(ROBIN), "file", "robin.json")


def test_a_class_comes_back_by_file_and_by_code_at_one_go(inbox: Inbox) -> None:
    inbox.put("robin.json", attempt(ROBIN))
    inbox.put("from the hall.txt", "\n".join([*reversed(to_codes(attempt(KAY))), *to_codes(attempt(LEE))]))
    lines = inbox.take_in()
    assert [line.outcome for line in lines] == ["taken in"] * 3
    assert [place.attempt.by_way_of for place in inbox.now().people if place.attempt] == [
        "file",
        "code",
        "code",
    ]


def test_running_twice_changes_nothing(inbox: Inbox) -> None:
    inbox.put("robin.json", attempt(ROBIN))
    inbox.put("broken.json", attempt(KAY).replace(b'"variant":0', b'"variant":7'))
    inbox.take_in()
    once = inbox.path.read_bytes()
    again = inbox.take_in(received="2026-12-03T10:00:00Z")
    assert [line.outcome for line in again] == ["refused", "already held"]
    assert again[1].result is not None
    assert inbox.path.read_bytes() == once


def test_one_attempt_that_came_by_file_and_by_code_is_held_once(inbox: Inbox) -> None:
    inbox.put("a.json", attempt(ROBIN))
    inbox.put("b.txt", "\n".join(to_codes(attempt(ROBIN))))
    assert inbox.outcomes() == {"a.json": "taken in", "b.txt": "already held"}


def test_a_used_ticket_is_refused_and_noted(inbox: Inbox) -> None:
    inbox.put("a.json", attempt(ROBIN))
    inbox.put("b.json", attempt(ROBIN, ended="2026-12-02T09:25:00Z"))
    lines = inbox.take_in()
    assert [line.outcome for line in lines] == ["taken in", "refused"]
    assert "is used" in lines[1].why
    assert [each.source for each in inbox.now().refused] == ["b.json"]


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"seed": "ZZZZZ-ZZZZZ"}, "No place of this sitting"),
        ({"course": "another"}, "Its course is another"),
        ({"digest": "b" * 64}, "Its digest is"),
        ({"version": "9"}, "Its version is 9"),
        ({"card": Card(id="0999", name="Nobody", workplace="")}, "It names Nobody"),
        ({"avoid": ("isolate-1",)}, "other questions to avoid"),
        ({"answers": {"nowhere": "a"}}, "which the form does not ask"),
        ({"form": (Asked(question="isolate-1", variant=0, options=("a", "b")),)}, "not what the record's seed gives"),
    ],
)  # fmt: skip
def test_what_does_not_belong_is_refused_noted_and_left_alone(
    inbox: Inbox, changes: dict[str, object], why: str
) -> None:
    file = inbox.put("robin.json", write(replace(attempt_of(ROBIN), **changes)))  # type: ignore[arg-type]
    (line,) = inbox.take_in()
    assert line.outcome == "refused"
    assert why in line.why
    assert [each.why for each in inbox.now().refused] == [line.why]
    assert inbox.now().people == sitting().people
    assert file.exists()


def test_a_record_that_another_program_saved_anew_is_refused(inbox: Inbox) -> None:
    inbox.put("robin.json", attempt(ROBIN).replace(b'","', b'", "') + b"\n")
    (line,) = inbox.take_in()
    assert line.outcome == "refused"
    assert "altered" in line.why


def test_parts_that_are_missing_are_named(inbox: Inbox) -> None:
    codes = to_codes(
        attempt(ROBIN, answers={}, card=Card(id="0417", name="Robin Ashdown", workplace="Bay 3"))
    )
    inbox.put(
        "codes.txt", "\n".join(codes[:-1]) if len(codes) > 1 else codes[0].replace("JB2:1/1", "JB2:1/2")
    )
    (line,) = inbox.take_in()
    assert line.outcome == "incomplete"
    assert "not there" in line.why


def test_without_its_course_nothing_is_taken_in_and_nothing_lost(inbox: Inbox) -> None:
    inbox.put("robin.json", attempt(ROBIN))
    before = inbox.path.read_bytes()
    (line,) = inbox.take_in(course_of=lambda _: None)
    assert (line.outcome, inbox.path.read_bytes()) == ("not here", before)
    assert inbox.outcomes() == {"robin.json": "taken in"}


@pytest.mark.parametrize(
    ("name", "data", "what"),
    [
        ("letter.pdf", b"%PDF-1.7\ncut short", "PDF"),
        ("certificate.json", b'{"credentialSubject":{"format":"journeybook certificate 1"}}', "certificate"),
        ("code.txt", b" jb1:ABC", "certificate code"),
        ("notes.txt", b"Robin was here", "other"),
        ("empty.json", b"", "empty"),
        ("photo.jpg", bytes(range(256)) * 99, "other"),
        ("robin.keyed.yaml", b"ticket: x", "other"),
    ],
)
def test_what_is_no_record_is_told_and_left_alone(inbox: Inbox, name: str, data: bytes, what: str) -> None:
    file = inbox.put(name, data)
    (line,) = inbox.take_in()
    assert (line.outcome, line.what) == ("no record", what)
    assert line.why
    assert file.read_bytes() == data
    assert inbox.now() == sitting()


FORMAT = b'{"format":"journeybook attempt 1",'
HOSTILE = {
    "deep.json": FORMAT + b'"a":' + b"[" * 400_000,
    "closed.json": FORMAT + b'"a":' + b"[" * 40 + b"]" * 40 + b"}",
    "number.json": FORMAT + b'"a":' + b"9" * 900_000 + b"}",
    "float.json": FORMAT + b'"a":1e999999}',
    "nan.json": FORMAT + b'"a":NaN}',
    "double.json": FORMAT + b'"a":1,"a":2}',
    "surrogate.json": FORMAT + b'"a":"\\ud800"}',
    "latin.json": FORMAT + b'"a":"\xff"}',
    "large.json": FORMAT + b'"a":"' + b"x" * (2 << 20) + b'"}',
    "many.json": FORMAT + b",".join(b'"%d":1' % number for number in range(80_000)) + b"}",
    "codes.txt": b"JB2:1/1:ABCDEFGH:" * 60_000,
    "yaml.keyed.yml": b"ticket: " + b"[" * 100_000,
    "bomb.keyed.yml": b"a: &a [x,x]\nb: &b [*a,*a]\nticket: *b\n",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_record_is_refused_within_a_second(inbox: Inbox, name: str) -> None:
    inbox.put(name, HOSTILE[name])
    begun = time.process_time()
    lines = inbox.take_in()
    assert time.process_time() - begun < 1
    assert {line.outcome for line in lines} == {"refused"}
    assert all(line.why and "\n" not in line.why for line in lines)
    assert inbox.now().people == sitting().people


def test_a_file_of_a_hundred_megabytes_is_not_read(inbox: Inbox) -> None:
    with (inbox.folder / "huge.json").open("wb") as file:
        file.truncate(100 << 20)
    begun = time.process_time()
    (line,) = inbox.take_in()
    assert time.process_time() - begun < 1
    assert str(READ_CAP) in line.why


def test_ten_thousand_odd_files_take_seconds_and_hide_no_record(inbox: Inbox) -> None:
    for number in range(10_000):
        (inbox.folder / f"{number}.txt").write_bytes(b"x%d" % number)
    inbox.put("robin.json", attempt(ROBIN))
    begun = time.process_time()
    lines = inbox.take_in()
    assert time.process_time() - begun < 5
    assert [line.source for line in lines if line.outcome == "taken in"] == ["robin.json"]
    assert len(lines) == 10_001


def test_links_out_of_the_folder_pipes_and_loops_are_not_followed(inbox: Inbox, tmp_path: Path) -> None:
    outside = tmp_path / "outside.json"
    outside.write_bytes(attempt(ROBIN))
    (inbox.folder / "link.json").symlink_to(outside)
    (inbox.folder / "loop").symlink_to(inbox.folder)
    os.mkfifo(inbox.folder / "pipe")
    assert {line.source: line.outcome for line in inbox.take_in()} == {
        "link.json": "no record", "loop": "no record", "pipe": "no record",
    }  # fmt: skip


def test_a_name_with_a_line_break_writes_no_line_of_its_own(inbox: Inbox) -> None:
    inbox.put("x\nTaken in  Robin Ashdown.json", attempt(ROBIN, ended="2026-12-02T09:25:00Z"))
    (inbox.folder / os.fsdecode(b"broken\xff.json")).write_bytes(b"{")
    assert all("\n" not in line.source and line.source.isprintable() for line in inbox.take_in())
    assert inbox.now().people[0].attempt is not None


def test_an_observation_is_taken_in_at_the_place_of_its_person_once(inbox: Inbox) -> None:
    inbox.put("kay.txt", "\n".join(to_codes(observation())))
    (line,) = inbox.take_in()
    assert (line.outcome, line.what, line.ticket) == ("taken in", "observation", KAY)
    assert [held.fingerprint for held in inbox.now().people[1].observations] == [fingerprint(observation())]
    assert [each.outcome for each in inbox.take_in()] == ["already held"]


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"person": Card(id="9", name="Nobody", workplace="")}, "no place in this sitting"),
        ({"digest": "b" * 64}, "The record is of"),
        ({"safety": (False,)}, "safety condition"),
        ({"practical": "elsewhere"}, "no practical"),
    ],
)
def test_an_observation_that_does_not_fit_is_refused_and_noted(
    inbox: Inbox, changes: dict[str, Any], why: str
) -> None:
    inbox.put("kay.json", observation(**changes))
    (line,) = inbox.take_in()
    assert line.outcome == "refused"
    assert why in line.why
    assert [each.why for each in inbox.now().refused] == [line.why]


def test_a_file_named_twice_is_looked_at_once(inbox: Inbox) -> None:
    file = inbox.put("robin.json", attempt(ROBIN))
    assert len(inbox.take_in(file, inbox.folder, file)) == 1


def test_of_two_sittings_each_gets_its_own(inbox: Inbox, tmp_path: Path) -> None:
    from journeybook.sittings.arrivals import arrivals

    robin, *rest = sitting().people
    one, other = tmp_path / "one.sitting.json", tmp_path / "other.sitting.json"
    sitting_file.write(one, replace(sitting(), people=(robin,)))
    sitting_file.write(other, replace(sitting(), people=tuple(rest)))
    inbox.put("kay.json", attempt(KAY))
    inbox.put("robin.json", attempt(ROBIN))
    lines = take_in(
        arrivals([inbox.folder]), [one, other], received="2026-12-02T10:00:00Z",
        course_of=lambda _: COURSE, say_of_certificate=lambda _: "",
    )  # fmt: skip
    assert [line.outcome for line in lines] == ["taken in", "taken in"]
    assert sitting_file.read(one).people[0].attempt
    assert sitting_file.read(other).people[0].attempt
    assert (sitting_file.read(one).refused, sitting_file.read(other).refused) == ((), ())


def test_a_run_that_is_broken_off_changes_nothing_and_the_next_goes_on(inbox: Inbox) -> None:
    inbox.put("robin.json", attempt(ROBIN))
    before = inbox.path.read_bytes()

    def broken(_: Sitting) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        inbox.take_in(course_of=broken)
    assert inbox.path.read_bytes() == before
    assert inbox.outcomes() == {"robin.json": "taken in"}


def test_two_at_once_lose_nothing(inbox: Inbox) -> None:
    files = [inbox.put(f"{ticket}.json", attempt(ticket)) for ticket in (ROBIN, KAY, LEE)]
    threads = [threading.Thread(target=inbox.take_in, args=(file,)) for file in files]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert all(place.attempt for place in inbox.now().people)
