"""Two commands at one sitting, as real processes: they wait for one another, and nothing that came in is lost."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from class_of_three import KAY, ROBIN, STAMP, attempt, sitting

from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import Refused, SittingRefused

HERE = Path(__file__).parent
ROUNDS = 40

# Each round notes one refused record of its own, so that a lost update is a missing note.
NOTER = """
import sys
from dataclasses import replace
from pathlib import Path
from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import Refused
path, name, rounds = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
for at in range(rounds):
    note = Refused(source=f"{name}-{at}", received="2026-12-02T10:00:00Z", fingerprint="", ticket="", why="x")
    sitting_file.update(path, lambda now: replace(now, refused=(*now.refused, note)))
"""
HOLDER = """
import sys, time
from pathlib import Path
from journeybook.sittings import sitting_file
def step(now):
    print("held", flush=True)
    sys.stdin.read()
    return now
sitting_file.update(Path(sys.argv[1]), step)
"""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    made = tmp_path / "class.sitting.json"
    sitting_file.write(made, sitting())
    return made


def started(code: str, *words: object) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, "-c", code, *map(str, words)], stdin=subprocess.PIPE, stdout=subprocess.PIPE
    )


def holder(path: Path) -> subprocess.Popen[bytes]:
    """A process that holds the lock until its input ends."""
    made = started(HOLDER, path)
    assert made.stdout is not None
    assert made.stdout.readline() == b"held\n"
    return made


def test_four_processes_updating_one_sitting_lose_no_update(path: Path) -> None:
    running = [started(NOTER, path, name, ROUNDS) for name in "abcd"]
    for each in running:
        each.communicate()
    assert [each.returncode for each in running] == [0] * 4
    noted = [each.source for each in sitting_file.read(path).refused]
    assert sorted(noted) == sorted(f"{name}-{at}" for name in "abcd" for at in range(ROUNDS))
    # Each process's own notes stand in its own order.
    for name in "abcd":
        assert [each for each in noted if each.startswith(name)] == [f"{name}-{at}" for at in range(ROUNDS)]


def test_two_commands_that_take_in_at_once_both_keep_what_they_took(path: Path, tmp_path: Path) -> None:
    code = """
import sys
sys.path.insert(0, sys.argv[1])
from pathlib import Path
from class_of_three import COURSE, STAMP
from journeybook.sittings.arrivals import arrivals
from journeybook.sittings.inbox import take_in
lines = take_in(arrivals([Path(sys.argv[3])]), [Path(sys.argv[2])], received=STAMP, course_of=lambda _: COURSE,
                say_of_certificate=lambda _: "")
print(lines[0].outcome)
"""
    running = []
    for ticket in (ROBIN, KAY):
        file = tmp_path / f"{ticket}.json"
        file.write_bytes(attempt(ticket))
        running.append(started(code, HERE, path, file))
    assert [each.communicate()[0] for each in running] == [b"taken in\n"] * 2
    robin, kay, lee = sitting_file.read(path).people
    assert robin.attempt is not None
    assert kay.attempt is not None
    assert lee.attempt is None
    assert robin.attempt.received == STAMP


def test_who_comes_second_waits_for_the_first(path: Path) -> None:
    first = holder(path)
    second = started(NOTER, path, "b", 1)
    with pytest.raises(subprocess.TimeoutExpired):
        second.wait(timeout=0.5)
    first.communicate()
    second.communicate()
    assert (first.returncode, second.returncode) == (0, 0)
    assert [each.source for each in sitting_file.read(path).refused] == ["b-0"]


def test_who_has_waited_long_enough_is_told_so(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sitting_file, "PATIENCE", 0.2)
    before = path.read_bytes()
    first = holder(path)
    try:
        with pytest.raises(SittingRefused) as refused:
            sitting_file.update(path, lambda now: now)
        assert (refused.value.code, refused.value.message) == (
            "H005",
            "Somebody else is at class.sitting.json.",
        )
    finally:
        first.communicate()
    assert path.read_bytes() == before


def test_a_process_that_is_killed_leaves_no_lock_and_the_file_whole(path: Path) -> None:
    before = path.read_bytes()
    first = holder(path)
    os.kill(first.pid, signal.SIGKILL)
    first.communicate()
    assert path.read_bytes() == before
    sitting_file.update(path, lambda now: replace(now, title="Thursday class"))
    assert sitting_file.read(path).title == "Thursday class"


def test_what_a_killed_process_left_half_written_is_swept_away(path: Path) -> None:
    unfinished = path.with_name(path.name + ".unfinished")
    unfinished.write_bytes(b'{"format":')
    note = Refused(source="x", received=STAMP, fingerprint="", ticket="", why="x")
    sitting_file.update(path, lambda now: replace(now, refused=(note,)))
    assert not unfinished.exists()
    assert sitting_file.read(path).refused == (note,)


def test_of_two_that_make_the_same_sitting_one_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "new.sitting.json"
    sitting_file.create(path, sitting())
    before = path.read_bytes()
    with pytest.raises(SittingRefused, match="is there already, and a sitting is never written over"):
        sitting_file.create(path, replace(sitting(), title="Another class"))
    assert path.read_bytes() == before
