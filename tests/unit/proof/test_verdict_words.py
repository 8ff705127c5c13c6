"""The command and the checking page say the same of a certificate."""

from __future__ import annotations

import dataclasses
import re
from datetime import date
from importlib.resources import files
from typing import get_args

import pytest
from yard_certificates import OBSERVED

from journeybook.proof.trust_list import TrustedKey, TrustList, Withdrawal
from journeybook.proof.verdict import Kind, Verdict
from journeybook.proof.verdict_words import (
    CLOCK_IS_BEHIND,
    EXAMPLE,
    LIST_IS_OLD,
    ONLY_SAID,
    SAYINGS,
    STRENGTHS,
    age,
    doubt,
    facts,
    is_example,
)

PAGE = (files("journeybook.theme") / "js" / "view" / "checking-view.js").read_text(encoding="utf-8")
SAID = re.compile(r'Words\.say\("((?:[^"\\]|\\.)*)"')
SAYING = re.compile(
    r'^ +"?([a-z-]+)"?: \{ title: Words\.say\("([^"]*)"\), look: "(good|care|hold)", '
    r'next: Words\.say\("([^"]*)"\) \},$',
    re.MULTILINE,
)


def test_each_verdict_is_called_and_followed_by_the_same_on_the_page() -> None:
    on_page = {kind: (title, then) for kind, title, _, then in SAYING.findall(PAGE)}
    assert on_page == {kind: (saying.title, saying.next) for kind, saying in SAYINGS.items()}
    assert set(on_page) == set(get_args(Kind))


def test_only_a_genuine_record_looks_good() -> None:
    looks: dict[str, set[str]] = {}
    for kind, _, look, _ in SAYING.findall(PAGE):
        looks.setdefault(look, set()).add(kind)
    assert looks == {
        "good": {"genuine"},
        "care": {"example", "unknown-signer", "unreadable"},
        "hold": {"out-of-date", "withdrawn", "altered"},
    }


def test_the_strengths_and_the_example_read_the_same() -> None:
    strength = PAGE[PAGE.index("function strength") : PAGE.index("function facts")]
    assert {*SAID.findall(strength)} == {word for words in STRENGTHS.values() for word in words}
    assert f'Words.say("{EXAMPLE}")' in PAGE


def test_what_an_unknown_signer_says_is_said_to_be_no_more_than_that() -> None:
    assert PAGE.index('verdict.kind === "unknown-signer"') < PAGE.index(f'Words.say("{ONLY_SAID}")')


def test_the_facts_are_called_the_same_and_stand_in_the_same_order(whole: Verdict) -> None:
    of_the_page = PAGE[PAGE.index("function facts") : PAGE.index("async function takeList")]
    labels = [
        label for label in re.findall(r'\[Words\.say\("([^"]*)"\), ', of_the_page) if label != "Withdrawals"
    ]
    # The page puts the withdrawal in front after the others are listed.
    labels.remove("Withdrawn on")
    assert ["Withdrawn on", *labels] == [label for label, _ in facts(whole)]


@pytest.fixture
def whole() -> Verdict:
    """With every fact there is."""
    certificate = dataclasses.replace(OBSERVED, marks=21_333, of=24_000, must_pass=(8, 8), attempt=2)
    key = TrustedKey(
        did="did:key:z6Mk", holder="Sam Reyes", role="assessor", from_day="2026-01-01", until="2026-12-31"
    )
    return Verdict(
        kind="withdrawn",
        certificate=certificate,
        key=key,
        withdrawn=Withdrawal(on="2026-05-04", reason="issued to the wrong person"),
    )


def test_facts_read_as_a_person_says_them(whole: Verdict) -> None:
    assert facts(whole) == [
        ("Withdrawn on", "2026-05-04: issued to the wrong person"),
        ("Name", "Inès Okafor"),
        ("Staff number", "1042"),
        ("Employer", "Quillon Basin Works, Slip 2"),
        ("Course", "Powered air for welders, 1.0"),
        ("Equipment", "belt-worn powered respirator"),
        ("Holds", "2026-03-02 – 2027-03-01"),
        ("Trained", "2026-02-27"),
        ("Check taken", "2026-03-01"),
        ("Practical seen", "2026-03-02"),
        ("Marks", "21.333 of 24, 80 % needed, must-pass 8 of 8"),
        ("Attempt", "2"),
        ("Trainer", "Jo Vance"),
        ("Assessor", "Sam Reyes"),
        ("Identity", "works pass with photograph"),
        ("Signed by", "Sam Reyes, assessor"),
        ("Language", "en"),
        ("Rules of", "gb"),
        ("Fingerprint", OBSERVED.fingerprint),
        ("Observations", ", ".join(OBSERVED.observations)),
        ("Certificate", OBSERVED.id.removeprefix("urn:uuid:")),
        ("Contents", "abab abab abab abab"),
    ]
    assert not is_example(whole)


def test_nothing_of_an_altered_record_is_shown(whole: Verdict) -> None:
    altered = Verdict(kind="altered", certificate=whole.certificate, key=None, withdrawn=None)
    assert facts(altered) == []


@pytest.mark.parametrize(
    ("made", "days"), [("2026-03-01", 26), ("2026-03-27", 0), ("2026-04-01", 0), ("2026-99-99", 0)]
)
def test_a_list_is_as_old_as_its_day_says(made: str, days: int) -> None:
    trust = TrustList(issuer="did:key:z6Mk", holder="Quillon Basin Works", number=1, made=f"{made}T08:00:00Z")
    assert age(trust, date(2026, 3, 27)) == days


@pytest.mark.parametrize(
    ("made", "said"),
    [
        ("2025-12-24", LIST_IS_OLD),
        ("2025-12-25", ""),
        ("2026-03-27", ""),
        ("2026-03-28", ""),
        ("2026-03-29", CLOCK_IS_BEHIND),
        ("2026-99-99", ""),
    ],
)
def test_a_list_that_is_old_or_of_a_day_to_come_is_not_relied_on_in_silence(made: str, said: str) -> None:
    trust = TrustList(issuer="did:key:z6Mk", holder="Quillon Basin Works", number=1, made=f"{made}T08:00:00Z")
    assert doubt(trust, date(2026, 3, 27)) == said


def test_what_the_day_of_a_list_makes_doubtful_reads_the_same_on_the_page() -> None:
    doubtful = PAGE[PAGE.index("function doubt") : PAGE.index("async function takeList")]
    assert SAID.findall(doubtful) == [LIST_IS_OLD, CLOCK_IS_BEHIND]
    assert "const OLD = 92;" in PAGE
