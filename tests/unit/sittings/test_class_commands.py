"""Vouching and the state of a class, as people at the terminal meet them."""

from __future__ import annotations

import errno
import json
import os
from pathlib import Path

import pytest
from class_of_three import COURSE, KAY, ROBIN, STAMP, Inbox, attempt
from click.testing import CliRunner, Result

from journeybook.cli import main
from journeybook.commands import mark as mark_command
from journeybook.commands.came_back import seat_of
from journeybook.marking.fingerprint import fingerprint
from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import with_attempt

PRINT = fingerprint(attempt(ROBIN))


@pytest.fixture
def inbox(tmp_path: Path) -> Inbox:
    made = Inbox(tmp_path)
    made.put("robin.json", attempt(ROBIN))
    made.take_in()
    return made


def run(*words: str, typed: str = "") -> Result:
    return CliRunner().invoke(main, words, input=typed)


def vouch(inbox: Inbox, *more: str, typed: str = "") -> Result:
    return run("vouch", str(inbox.path), "--by", "T. Marrable", "--on", "2026-12-02", *more, typed=typed)


def test_two_yeses_vouch_for_a_person(inbox: Inbox) -> None:
    result = vouch(inbox, typed="y\ny\n")
    assert result.exit_code == 0
    assert PRINT in result.output
    word = inbox.now().people[0].vouched
    assert word is not None
    assert (word.by, word.on.isoformat(), word.identity) == ("T. Marrable", "2026-12-02", "Works pass")


@pytest.mark.parametrize("typed", ["\n", "n\n", "y\n\n", "y\nn\n"])
def test_anything_less_leaves_the_person_as_they_were(inbox: Inbox, typed: str) -> None:
    assert vouch(inbox, typed=typed).exit_code == 1
    assert inbox.now().people[0].vouched is None


def test_a_person_vouched_for_is_not_asked_about_again(inbox: Inbox) -> None:
    vouch(inbox, typed="y\ny\n")
    again = vouch(inbox)
    assert (again.exit_code, PRINT in again.output) == (0, False)


def test_keyed_answers_are_compared_with_the_paper_itself(tmp_path: Path) -> None:
    inbox = Inbox(tmp_path)
    whole = with_attempt(
        inbox.now(), attempt(ROBIN), received=STAMP, by_way_of="keyed", source="robin.keyed.yml"
    )
    sitting_file.write(inbox.path, whole.sitting)
    result = vouch(inbox, typed="n\n")
    assert "those on the signed paper sheet?" in result.output
    assert "class sheet" not in result.output


def listed(inbox: Inbox, text: str) -> Result:
    return vouch(inbox, "--list", str(inbox.put("sheet.csv", text)))


@pytest.mark.parametrize("apart", [",", ";"])
def test_a_list_vouches_where_the_fingerprint_is_the_same(inbox: Inbox, apart: str) -> None:
    result = listed(
        inbox, f"ticket,fingerprint,identity\n{ROBIN.lower()},{PRINT.lower()},yes\n".replace(",", apart)
    )
    assert result.exit_code == 0, result.output
    assert inbox.now().people[0].vouched is not None


@pytest.mark.parametrize(
    ("line", "why"),
    [
        (f"{ROBIN},AAAA-BBBB-CCCC-DDDD,yes", f"of Robin Ashdown came {PRINT}"),
        (f"{ROBIN},{PRINT},no", "it was not checked who Robin Ashdown is"),
        (f"{KAY},{PRINT},yes", "Kay Ferriby has handed in nothing yet"),
        (f"ZZZZZ-ZZZZZ,{PRINT},yes", "no place has the ticket"),
        (f"{ROBIN},{PRINT},maybe", "says yes or no"),
        (f"{ROBIN},{PRINT}", "2 columns where 3 belong"),
    ],
)
def test_a_list_that_does_not_fit_vouches_for_nobody(inbox: Inbox, line: str, why: str) -> None:
    result = listed(inbox, f"ticket,fingerprint,identity\n{line}\n")
    assert (result.exit_code, why in result.output) == (1, True), result.output
    assert inbox.now().people[0].vouched is None


def test_nobody_vouches_before_the_day(inbox: Inbox) -> None:
    result = run("vouch", str(inbox.path), "--by", "T. Marrable", "--on", "2026-12-01", typed="y\ny\n")
    assert result.exit_code == 1
    assert "Nobody can vouch" in result.output


def test_nobody_vouches_on_a_day_that_is_still_to_come(inbox: Inbox) -> None:
    result = run("vouch", str(inbox.path), "--by", "T. Marrable", "--on", "2190-12-02", typed="y\ny\n")
    assert result.exit_code == 1
    assert "still to come" in result.output
    assert inbox.now().people[0].vouched is None


@pytest.mark.parametrize("typed", ["tomorrow", "2.12.2026", "2026-2-30", "2026-12-2"])
def test_a_day_that_is_none_is_said_in_words(inbox: Inbox, typed: str) -> None:
    result = run("vouch", str(inbox.path), "--by", "T. Marrable", "--on", typed)
    assert result.exit_code == 2
    assert "Write year, month and day in figures" in result.output
    assert "%Y" not in result.output + run("vouch", "-h").output


def test_a_list_may_space_tickets_and_fingerprints_as_people_type_them(inbox: Inbox) -> None:
    ticket = inbox.now().people[0].ticket
    typed = f"{ticket.lower().replace('-', ' ')},{PRINT.lower().replace('-', ' ')},yes"
    result = listed(inbox, f"ticket,fingerprint,identity\n{typed}\n")
    assert result.exit_code == 0, result.output
    assert inbox.now().people[0].vouched is not None


@pytest.mark.parametrize("between", ["", " ", "-", " – ", "\u2011"])
def test_a_ticket_is_found_however_it_is_spaced(inbox: Inbox, between: str) -> None:
    place = inbox.now().people[0]
    typed = f" {place.ticket[:5].lower()}{between}{place.ticket[6:]} "
    assert seat_of(inbox.now(), typed) == place


def test_the_state_names_who_is_back_and_who_is_not(inbox: Inbox) -> None:
    result = run("class-state", str(inbox.path))
    assert result.exit_code == 0, result.output
    assert "nobody has vouched" in result.output
    assert result.output.count("not back") == 2
    assert "Of 3: 1 back, 0 vouched for, 0 certified; 0 refused." in result.output
    content = json.loads(run("class-state", str(inbox.path), "--json").output)
    assert [person["back"] for person in content["people"]] == [True, False, False]


def test_marking_a_class_gives_a_table_and_an_object(inbox: Inbox) -> None:
    words = ("mark", str(inbox.folder), "--sitting", str(inbox.path))
    table = run(*words)
    assert "Already held  Robin Ashdown" in table.output
    assert "In all: 1 already held." in table.output
    assert [line["outcome"] for line in json.loads(run(*words, "--json").output)] == ["already held"]


def test_several_files_need_a_sitting(inbox: Inbox) -> None:
    result = run("mark", str(inbox.folder))
    assert result.exit_code == 2
    assert "--sitting" in result.output


def test_a_file_that_is_no_sitting_is_a_sentence(inbox: Inbox) -> None:
    result = run("class-state", str(inbox.put("x.json", b"{}")))
    assert result.exit_code == 1
    assert result.output.startswith("Error: The file is not the private file of a sitting.")


def test_an_empty_keyed_file_needs_the_course_here(inbox: Inbox) -> None:
    result = run("from-paper", str(inbox.path), ROBIN)
    assert result.exit_code == 1
    assert "is not here" in result.output


def test_the_folder_of_the_sitting_itself_may_be_named(inbox: Inbox) -> None:
    folder = inbox.path.parent
    (folder / "class.html").write_text(
        '<!doctype html>\n<script id="sealed">{}</script><script>`JB2:${x}`</script>', encoding="utf-8"
    )
    result = run("mark", str(folder), "--sitting", str(inbox.path))
    assert result.exit_code == 0, result.output
    assert "class.html: It is the room's page of a sitting." in result.output
    assert "In all: 1 already held, 1 no record." in result.output


@pytest.mark.parametrize("command", ["mark", "vouch", "set-aside"])
def test_a_disk_without_room_is_a_sentence_and_loses_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    made = Inbox(tmp_path)
    made.put("robin.json", attempt(ROBIN))
    if command != "mark":
        made.take_in()
    before = made.path.read_bytes()

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    by = ("--by", "T. Marrable")
    words = {
        "mark": ("mark", str(made.folder), "--sitting", str(made.path)),
        "vouch": ("vouch", str(made.path), *by, "--on", "2026-12-02"),
        "set-aside": ("set-aside", str(made.path), ROBIN, *by, "--why", "A trial."),
    }
    monkeypatch.setattr(mark_command, "course_finder", lambda _: lambda _: COURSE)
    result = run(*words[command], typed="y\ny\n")
    assert result.exit_code == 1
    assert isinstance(result.exception, SystemExit)
    assert "No space left on device" in result.output
    assert [made.path.read_bytes(), sorted(path.name for path in tmp_path.glob("*.unfinished"))] == [
        before,
        [],
    ]
