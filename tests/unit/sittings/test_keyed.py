"""What stands on paper becomes the same record as a screen would have saved."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from class_of_three import CONTENT, KEYS, PLAN, ROBIN, Inbox, attempt, sitting

from journeybook.marking.draw import draw_form
from journeybook.sittings.keyed import empty_file
from journeybook.sittings.paper_answers import NotThisKind, hint, raw_answer

FORM = draw_form(PLAN, ROBIN, ())
LETTERS = "ABCDEFGHIJ"
CHOICE = {"kind": "choice", "options": ["a", "b", "c"], "right": "b"}
CHOICES = {"kind": "choices", "options": ["a", "b", "c"], "right": ["a"], "whole": False}
ORDER = {"kind": "order", "steps": ["a", "b", "c"], "before": [], "critical": []}
MATCH = {"kind": "match", "items": ["i", "j"], "answers": ["a", "b", "c"], "pairs": {"i": "a", "j": "b"}}
NUMBER = {
    "kind": "number",
    "unit": "L/min",
    "unit-needed": True,
    "units": {"L/min": "1"},
    "variants": [{"low": "1", "high": "2"}],
}
TRIAGE = {
    "kind": "triage",
    "places": ["use", "scrap"],
    "units": ["u", "v"],
    "right": {"u": "use", "v": "scrap"},
    "dangerous": [],
    "whole": False,
}
SPOT = {"kind": "spot", "spots": ["s", "t"], "right": "s"}
SETTING = {"kind": "setting", "controls": ["load", "duct"], "counts": [10, 3], "accepted": [[1, 1]]}
DRILL = {"kind": "drill", "start": "x", "moments": {}, "ends": {}, "deeds": ["stop", "walk"]}
DRAWN = ("c", "a", "b")


@pytest.mark.parametrize(
    ("key", "drawn", "text", "answer"),
    [
        (CHOICE, DRAWN, "A", "c"),
        (CHOICE, DRAWN, " b ", "a"),
        (CHOICE, DRAWN, "", None),
        (CHOICE, DRAWN, "-", None),
        (CHOICES, DRAWN, "C A", ["b", "c"]),
        (CHOICES, DRAWN, "AC", ["b", "c"]),
        (ORDER, DRAWN, "C, A, B", ["b", "c", "a"]),
        (ORDER, DRAWN, "cab", ["b", "c", "a"]),
        (MATCH, DRAWN, "B -", {"i": "a"}),
        (MATCH, DRAWN, "- -", None),
        (NUMBER, (), "10,2 L/min", {"value": "10,2", "unit": "L/min"}),
        (NUMBER, (), "10.2", {"value": "10.2", "unit": ""}),
        (NUMBER, (), "ten", {"value": "ten", "unit": ""}),
        (TRIAGE, ("v", "u"), "B A", {"v": "scrap", "u": "use"}),
        (SPOT, ("t", "s"), "2", "s"),
        (SPOT, ("t", "s"), "A", "t"),
        (SETTING, (), "3 1", {"load": 2, "duct": 0}),
        (DRILL, ("walk", "stop"), "B A", ["stop", "walk"]),
    ],
)  # fmt: skip
def test_letters_and_numbers_become_the_raw_answer(key: Any, drawn: Any, text: str, answer: Any) -> None:
    assert raw_answer(key, drawn, text) == answer


@pytest.mark.parametrize(
    ("key", "drawn", "text", "why"),
    [
        (CHOICE, DRAWN, "D", "none of A to C"),
        (CHOICE, DRAWN, "A B", "1 letter belongs"),
        (CHOICE, DRAWN, "0", "none of"),
        (CHOICES, DRAWN, "A A", "twice"),
        (ORDER, DRAWN, "A B", "each of A to C"),
        (MATCH, DRAWN, "A A", "serves once"),
        (MATCH, DRAWN, "A", "2 letters belong"),
        (NUMBER, (), "10 mm", "no unit of this question"),
        (SETTING, (), "11 1", "load 1 to 10"),
        (DRILL, ("walk", "stop"), "A -", "a dash"),
    ],
)  # fmt: skip
def test_what_cannot_stand_on_the_paper_is_refused(key: Any, drawn: Any, text: str, why: str) -> None:
    with pytest.raises(NotThisKind, match=why):
        raw_answer(key, drawn, text)


@pytest.mark.parametrize("key", [CHOICE, CHOICES, ORDER, MATCH, NUMBER, TRIAGE, SPOT, SETTING, DRILL])
def test_every_kind_says_what_to_key(key: Any) -> None:
    assert hint(key, DRAWN)


def filled(**answers: str) -> str:
    """The empty file with its gaps filled in."""
    seat = sitting().place(ROBIN)
    assert seat is not None
    text = empty_file(sitting(), seat, CONTENT).replace('keyed-by: ""', 'keyed-by: "A. Fenwright"')
    for question, answer in answers.items():
        text = text.replace(f'  {question}: ""', f'  {question}: "{answer}"')
    return text


def test_the_file_to_fill_in_has_a_row_for_each_question(tmp_path: Path) -> None:
    assert [f"  q{number}: " in filled() for number in range(1, len(FORM) + 2)] == [True] * len(FORM) + [
        False
    ]
    inbox = Inbox(tmp_path)
    inbox.put("robin.keyed.yml", filled())
    assert [line.outcome for line in inbox.take_in()] == ["taken in"]


def test_keyed_answers_become_the_record_that_a_screen_saves(tmp_path: Path) -> None:
    inbox = Inbox(tmp_path)
    at = next(number for number, one in enumerate(FORM) if KEYS[one["q"]]["kind"] == "choice")
    inbox.put("robin.keyed.yml", filled(**{f"q{at + 1}": "A"}))
    (line,) = inbox.take_in()
    assert line.outcome == "taken in"
    held = inbox.now().people[0].attempt
    assert held is not None
    assert (held.by_way_of, held.source) == ("keyed", "robin.keyed.yml, keyed by A. Fenwright")
    screen = attempt(ROBIN, answers={FORM[at]["q"]: FORM[at]["options"][0]}, ended="2026-12-02T09:30:00Z")
    assert held.text.encode() == screen
    assert [each.outcome for each in inbox.take_in()] == ["already held"]


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ('  q1: ""', '  q1: "Z"', "Y003"),
        ('  q1: ""', '  q99: "A"', "Y002"),
        ('  q1: ""', "  q1: true", "Y001"),
        ("T09:30:00Z", "T09:61:00Z", "Y001"),
        ("answers:", "answrs:", "C001"),
    ],
)
def test_a_slip_is_shown_with_its_line_and_nothing_is_taken_in(
    tmp_path: Path, old: str, new: str, code: str
) -> None:
    inbox = Inbox(tmp_path)
    text = filled().replace(old, new, 1)
    inbox.put("robin.keyed.yml", text)
    (line,) = inbox.take_in()
    assert line.outcome == "refused"
    assert code in {problem.code for problem in line.problems}
    place = line.problems[0].place
    assert text.splitlines()[place.line - 1].strip()
    assert inbox.now() == sitting()


def test_times_with_a_zone_are_kept_in_utc(tmp_path: Path) -> None:
    inbox = Inbox(tmp_path)
    inbox.put("robin.keyed.yml", filled().replace("T09:00:00Z", "T10:00:00+01:00"))
    assert [line.outcome for line in inbox.take_in()] == ["taken in"]
    held = inbox.now().people[0].attempt
    assert held is not None
    assert '"started":"2026-12-02T09:00:00Z"' in held.text


def test_an_unknown_ticket_is_refused(tmp_path: Path) -> None:
    inbox = Inbox(tmp_path)
    inbox.put("robin.keyed.yml", filled().replace(ROBIN, "ZZZZZ-ZZZZZ"))
    (line,) = inbox.take_in()
    assert (line.outcome, "No place" in line.why) == ("refused", True)
