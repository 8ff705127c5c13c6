"""Passphrases: a list that can be told apart, and chance that is even."""

from __future__ import annotations

import hashlib
from importlib.resources import files
from pathlib import Path

import pytest

from journeybook.proof.pass_words import WORDS, WrongWord, new_passphrase, read_back, word_list


def test_the_list_is_the_published_one() -> None:
    # SHA-256 of english.txt as the bips repository publishes it (from memory; every copy seen has it).
    text = (files("journeybook.proof") / "words" / "english.txt").read_bytes()
    assert hashlib.sha256(text).hexdigest() == (
        "2f5eed53a4727b4bf8880d8f3f199efc90e58503646d9ff8eff3a2ed3b24dbda"
    )


def test_four_letters_tell_its_2048_words_apart() -> None:
    words = word_list()
    assert len(words) == 2048
    assert len({word[:4] for word in words}) == 2048


def test_a_passphrase_is_six_words_of_the_list() -> None:
    drawn = new_passphrase().split(" ")
    assert len(drawn) == 6
    assert set(drawn) <= set(word_list())


def test_no_two_passphrases_are_alike() -> None:
    assert len({new_passphrase() for _ in range(100)}) == 100


@pytest.mark.parametrize(
    "typed",
    ["abandon ability zoo", "ABANDON Ability, zoo", "aban-abil-zoo", "  aban\tabil\nzoo. ", "aban–abil zoo"],
)
def test_a_passphrase_is_understood_as_it_is_typed_in_a_workshop(typed: str) -> None:
    assert read_back(typed) == "abandon ability zoo"


@pytest.mark.parametrize("word", ["abilitx", "abi", "q", "abilityy"])
def test_a_word_that_is_not_in_the_list_is_named_with_its_place(word: str) -> None:
    with pytest.raises(WrongWord) as wrong:
        read_back(f"abandon {word} zoo")
    assert (wrong.value.word, wrong.value.place) == (word, 2)


def test_the_words_that_somebody_may_have_meant_are_named() -> None:
    with pytest.raises(WrongWord, match="“abiliti”, is not in the list of words; near it are ability"):
        read_back("abiliti")


def test_the_page_of_a_sitting_asks_for_as_many_words_as_are_drawn() -> None:
    typed = Path(__file__).parents[3] / "site_overrides" / "js" / "pure" / "sitting-typed.js"
    script = typed.read_text(encoding="utf-8")
    assert f"const PASSPHRASE_WORDS = {WORDS};" in script
