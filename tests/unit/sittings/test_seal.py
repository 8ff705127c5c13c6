"""Sealing: what is sealed comes back to whoever has the passphrase, to nobody else, and holds no answer."""

from __future__ import annotations

import json
import re
from datetime import UTC, datetime
from functools import cache
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest

from journeybook.making import courses_of
from journeybook.marking import canonical
from journeybook.marking.draw import draw_form
from journeybook.project import Project
from journeybook.sittings import sealed_blob
from journeybook.sittings.class_file import ClassFile, read_class_file
from journeybook.sittings.seal import Chance, Sealed, place_name, seal_sitting
from journeybook.sittings.sitting import ALPHABET

BASE = Path(__file__).parents[2] / "faults" / "base"
PASSPHRASE = "guard mango river stone ladder zebra"
CLASS = """\
title: "Wednesday class"
date: 2026-12-02
place: "Training room 2"
assessor: {name: "T. Marrable", basis: "Foreman"}
identity: "Works pass"
trainer: "A. Fenwright"
people:
  - {id: "0417", name: "Robin Ashdown"}
  - {id: "0512", name: "Kay Ferriby", extra-percent: 25, oral: true}
"""


def people(text: str = CLASS) -> ClassFile:
    found, problems = read_class_file(text.encode(), "class.yml")
    assert found is not None, problems
    return found


@cache
def sealed() -> Sealed:
    (ready,), _ = courses_of(Project(root=BASE, courses=("pillar-drill",), profile="uk"))
    letters = cycle(ALPHABET)
    chance = Chance(letter=lambda: next(letters), some=lambda count: bytes(range(count)))
    now = datetime(2026, 11, 30, tzinfo=UTC)
    return seal_sitting(ready.course, ready.compiled, people(), passphrase=PASSPHRASE, now=now, chance=chance)


@cache
def content() -> Any:
    return sealed_blob.unseal(canonical.write(dict(sealed().record)), PASSPHRASE)


def test_the_check_value_of_the_cipher_holds() -> None:
    from cryptography.hazmat.primitives.ciphers.aead import AESGCM

    # Twelve zero bytes of IV, and "aad" beside the data: as the check value of the design was made.
    key = bytes.fromhex("0460eeec7ddf8b5f91f2037b3e2ab248f7c5d88dbecabb50a4269e518f1948cd")
    assert (
        AESGCM(key).encrypt(bytes(12), b"sealed", b"aad").hex()
        == "10b39bc64baa742c6c1561fd40136afe30d4442e3a5d"
    )


def test_capitals_spaces_and_what_follows_the_fourth_letter_do_no_harm() -> None:
    assert sealed_blob.typed_form("  GUARD mangoes  rive stonE ladd zebra") == sealed_blob.typed_form(
        PASSPHRASE
    )


def test_another_passphrase_opens_nothing() -> None:
    with pytest.raises(sealed_blob.NotOpened):
        sealed_blob.unseal(canonical.write(dict(sealed().record)), "guard mango river stone zebra ladder")


def test_each_person_finds_the_form_of_the_ticket_and_nobody_elses() -> None:
    sitting = sealed().sitting
    (ready,), _ = courses_of(Project(root=BASE, courses=("pillar-drill",), profile="uk"))
    plan: Any = ready.compiled.content["public"]
    for place in sitting.people:
        found = content()["places"][place_name(sitting.id, place.ticket)]
        assert found["person"]["name"] == place.name
        assert found["form"] == draw_form(plan["plan"], place.ticket, place.avoid)


def test_extra_time_is_added_and_rounded_up() -> None:
    robin, kay = sealed().sitting.people
    assert (robin.extra_minutes, kay.oral) == (0, True)
    assert kay.extra_minutes * 100 >= sealed().sitting.minutes * 25


def test_no_ticket_stands_in_the_sealed_content() -> None:
    text = json.dumps(content())
    assert not any(place.ticket in text for place in sealed().sitting.people)


def test_the_sealed_content_holds_no_answer_and_no_reason() -> None:
    (ready,), _ = courses_of(Project(root=BASE, courses=("pillar-drill",), profile="uk"))
    private: Any = ready.compiled.content["private"]
    text = json.dumps(content(), ensure_ascii=False)
    plain = re.sub(r"<[^>]+>", "", text)
    for question in content()["questions"]:
        for reason in _texts(private["reasons"][question]):
            assert len(reason) < 20 or reason not in plain, question
    names = (
        '"right"',
        '"pairs"',
        '"before"',
        '"critical"',
        '"slips"',
        '"goal"',
        "data-right",
        "data-critical",
    )
    for word in (*names, "go-to"):
        assert word not in text.replace('\\"', '"'), word


def _texts(value: Any) -> list[str]:
    if isinstance(value, str):
        return [value]
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else []
    return [text for each in inner for text in _texts(each)]


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ('id: "0512"', 'id: "0417"', "H006"),
        ("extra-percent: 25", "extra-percent: 25, extra-minutes: 3", "H007"),
        ("date: 2026-12-02", "date: 2.12.2026", "C009"),
    ],
)
def test_a_wrong_class_file_is_refused_with_its_code_and_line(old: str, new: str, code: str) -> None:
    assert old in CLASS
    found, problems = read_class_file(CLASS.replace(old, new).encode(), "class.yml")
    assert found is None
    assert code in {problem.code for problem in problems}
    assert all(problem.place.file == "class.yml" and problem.place.line > 1 for problem in problems)
