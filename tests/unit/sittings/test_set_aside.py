"""What somebody else handed in with a person's ticket is kept apart; what a person handed in themselves counts."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import UTC, date, datetime
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest
from class_of_three import KAY, ROBIN, STAMP, Inbox, attempt
from click.testing import CliRunner, Result
from test_seal import BASE, people

from journeybook.cli import main
from journeybook.making import courses_of
from journeybook.marking.attempt import read
from journeybook.marking.fingerprint import fingerprint
from journeybook.project import Project
from journeybook.sittings import sitting_format
from journeybook.sittings.seal import Chance, Sealed, seal_sitting
from journeybook.sittings.set_aside import attempts_of, with_set_aside
from journeybook.sittings.sitting import ALPHABET, CertificateIssued, Sitting, SittingRefused, vouched

TRIAL = attempt(ROBIN)
OWN = attempt(ROBIN, ended="2026-12-02T09:25:00Z")
WEDNESDAY = date(2026, 12, 2)


@pytest.fixture
def inbox(tmp_path: Path) -> Inbox:
    """Robin's ticket was tried out first; then Robin sat. Kay is back."""
    made = Inbox(tmp_path)
    made.put("a-trial.json", TRIAL)
    made.put("b-robin.json", OWN)
    made.put("c-kay.json", attempt(KAY))
    made.take_in()
    return made


def run(inbox: Inbox, *more: str, ticket: str = ROBIN, typed: str = "y\n") -> Result:
    words = ["set-aside", str(inbox.path), ticket, "--by", "T. Marrable", "--why", "The page was tried out."]
    return CliRunner().invoke(main, [*words, *more], input=typed)


def test_a_trial_is_set_aside_whole_and_the_persons_own_attempt_is_taken_in(inbox: Inbox) -> None:
    assert inbox.outcomes() == {
        "a-trial.json": "already held",
        "b-robin.json": "refused",
        "c-kay.json": "already held",
    }
    result = run(inbox)
    assert result.exit_code == 0, result.output
    assert "of nobody of the class?" in result.output
    lines = {line.source: line for line in inbox.take_in()}
    assert lines["b-robin.json"].outcome == "taken in"
    assert lines["a-trial.json"].outcome == "already held"
    assert (
        lines["a-trial.json"].why
        == f"It was set aside on {date.today()} by T. Marrable: The page was tried out."
    )
    robin = inbox.now().people[0]
    assert robin.attempt is not None
    assert robin.attempt.text.encode() == OWN
    (kept,) = robin.set_aside
    assert (kept.attempt.text.encode(), kept.attempt.source, kept.answered_by) == (TRIAL, "a-trial.json", "")
    # It is nobody's of the class, so it counts for nobody; that Robin's own was refused at first stays noted.
    assert [place.attempt_number for place in inbox.now().people] == [1, 1, 1]
    assert [each.source for each in inbox.now().refused] == ["b-robin.json"]


def test_no_is_the_answer_to_a_bare_return(inbox: Inbox) -> None:
    before = inbox.path.read_bytes()
    result = run(inbox, typed="\n")
    assert (result.exit_code, inbox.path.read_bytes()) == (1, before)
    assert "Nothing was changed." in result.output


def swapped(inbox: Inbox) -> Sitting:
    """Robin answered on Kay's slip, Kay on Robin's; both are set aside."""
    assert run(inbox, "--answered-by", "0512", ticket=ROBIN).exit_code == 0
    assert run(inbox, "--answered-by", "0417", ticket=KAY).exit_code == 0
    return inbox.now()


def test_two_who_changed_slips_are_counted_by_who_answered(inbox: Inbox) -> None:
    after = swapped(inbox)
    assert [place.attempt for place in after.people] == [None] * 3
    assert [place.attempt_number for place in after.people] == [2, 2, 1]
    assert [each.text.encode() for each in attempts_of(after, "0417")] == [attempt(KAY)]
    assert [each.text.encode() for each in attempts_of(after, "0512")] == [TRIAL]
    assert attempts_of(after, "0613") == ()


def sealed_again(*earlier: Sitting) -> Sealed:
    (ready,), _ = courses_of(Project(root=BASE, courses=("pillar-drill",), profile="uk"))
    letters = cycle(ALPHABET)
    return seal_sitting(
        ready.course, ready.compiled, people(), passphrase="guard mango river stone ladder zebra",
        now=datetime(2026, 12, 3, tzinfo=UTC), earlier=earlier,
        chance=Chance(letter=lambda: next(letters), some=lambda count: bytes(range(count))),
    )  # fmt: skip


def test_a_new_sitting_spares_each_the_questions_that_they_answered_themselves(inbox: Inbox) -> None:
    robin, kay = sealed_again(swapped(inbox)).sitting.people
    assert (robin.name, robin.attempt_number) == ("Robin Ashdown", 2)
    assert (kay.name, kay.attempt_number) == ("Kay Ferriby", 2)
    assert robin.avoid == tuple(asked.question for asked in read(attempt(KAY)).form)
    assert kay.avoid == tuple(asked.question for asked in read(TRIAL).form)


def test_a_trial_counts_for_nobody_in_a_new_sitting(inbox: Inbox) -> None:
    run(inbox)
    robin, _ = sealed_again(inbox.now()).sitting.people
    assert (robin.attempt_number, robin.avoid) == (1, ())


@pytest.mark.parametrize(
    ("more", "why"),
    [
        (("--answered-by", "0417"), "The attempt is Robin Ashdown's own, and their own attempt counts."),
        (("--answered-by", "9999"), "Nobody of this sitting has the id 9999."),
    ],
)
def test_a_persons_own_attempt_is_never_set_aside(inbox: Inbox, more: tuple[str, ...], why: str) -> None:
    before = inbox.path.read_bytes()
    result = run(inbox, *more)
    assert result.exit_code == 1
    assert result.output.startswith(f"Error: {why}")
    assert inbox.path.read_bytes() == before


@pytest.mark.parametrize("by", ["Robin Ashdown", "Kay Ferriby"])
def test_neither_of_the_two_sets_it_aside(inbox: Inbox, by: str) -> None:
    before = inbox.path.read_bytes()
    result = run(inbox, "--answered-by", "0512", "--by", by)
    assert result.exit_code == 1
    assert result.output.startswith(f"Error: {by} is the one whose attempt it is about.")
    assert inbox.path.read_bytes() == before


@pytest.mark.parametrize(
    ("ticket", "why"),
    [
        ("ZZZZZ-ZZZZZ", "No place of this sitting has the ticket"),
        ("YZ234-56789", "Lee Thornaby has handed in nothing"),
    ],
)
def test_where_nothing_was_handed_in_nothing_is_set_aside(inbox: Inbox, ticket: str, why: str) -> None:
    result = run(inbox, ticket=ticket)
    assert result.exit_code == 1
    assert why in result.output


@pytest.mark.parametrize("empty", ["--by", "--why"])
def test_who_and_why_must_be_said(inbox: Inbox, empty: str) -> None:
    result = run(inbox, empty, "  ")
    assert result.exit_code == 2
    assert "This has to be a text of 1 to 300 letters." in result.output


def test_what_a_certificate_stands_on_stays(inbox: Inbox) -> None:
    robin, *rest = inbox.now().people
    issued = CertificateIssued(
        id="urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11", issued=STAMP, file="robin.pdf"
    )
    with pytest.raises(SittingRefused, match="was issued on it"):
        with_set_aside(
            replace(inbox.now(), people=(replace(robin, certificate=issued), *rest)),
            ROBIN, fingerprint(TRIAL), by="x", on=WEDNESDAY, why="y",
        )  # fmt: skip


def test_who_had_vouched_is_kept_with_it_and_nobody_vouches_for_what_comes_next(inbox: Inbox) -> None:
    word = vouched(inbox.now(), ROBIN, by="T. Marrable", on=WEDNESDAY, identity="Works pass")
    after = with_set_aside(word, ROBIN, fingerprint(TRIAL), by="A. Fenwright", on=WEDNESDAY, why="A trial.")
    assert after.people[0].vouched is None
    assert after.people[0].set_aside[0].vouched == word.people[0].vouched
    assert sitting_format.from_bytes(sitting_format.to_bytes(after)) == after


def test_another_attempt_than_the_one_asked_about_is_not_set_aside(inbox: Inbox) -> None:
    with pytest.raises(SittingRefused, match=r"No attempt .* is held for Robin Ashdown"):
        with_set_aside(inbox.now(), ROBIN, fingerprint(OWN), by="x", on=WEDNESDAY, why="y")


def test_the_state_of_the_class_tells_it(inbox: Inbox) -> None:
    swapped(inbox)
    words = CliRunner().invoke(main, ["class-state", str(inbox.path)]).output
    assert (
        f"set aside {fingerprint(TRIAL)}, answered by 0512: The page was tried out. (T. Marrable, " in words
    )
    content: Any = json.loads(CliRunner().invoke(main, ["class-state", str(inbox.path), "--json"]).output)
    assert [len(person["set-aside"]) for person in content["people"]] == [1, 1, 0]
    assert content["people"][1]["set-aside"][0]["answered-by"] == "0417"


def test_a_place_with_nothing_set_aside_does_not_say_so_and_an_empty_list_is_no_sitting(inbox: Inbox) -> None:
    data = sitting_format.to_bytes(inbox.now())
    assert b"set-aside" not in data
    with pytest.raises(SittingRefused, match="set-aside"):
        sitting_format.from_bytes(data.replace(b'"ticket":', b'"set-aside":[],"ticket":', 1))
