"""Passphrases of plain words: drawn by the machine, read out in a room, written on a card, typed in with gloves on.

The list is the English one of BIP-39: 2,048 words (11 bits each), each known by its first four letters, MIT licence,
from PyPI `mnemonic` 0.21 (words/english-licence.txt). Six words are 66 bits.
"""

from __future__ import annotations

import secrets
from functools import cache
from importlib.resources import files

from journeybook.source.near import nearest

WORDS = 6
BITS_OF_A_WORD = 11
_KNOWN_BY = 4
"""Letters that tell any two words of the list apart."""


class WrongWord(ValueError):  # noqa: N818 - it says what is wrong
    """A word that is not in the list."""

    def __init__(self, word: str, place: int) -> None:
        """Keep the word, its place counted from 1, and a sentence for people."""
        self.word = word
        self.place = place
        self.near = tuple(nearest(word, word_list()))
        hint = f"; near it are {' and '.join(self.near)}" if self.near else ""
        super().__init__(f"Word {place}, “{word[:20]}”, is not in the list of words{hint}.")


@cache
def word_list() -> tuple[str, ...]:
    """Return the 2,048 words, sorted."""
    text = files("journeybook.proof").joinpath("words/english.txt").read_text(encoding="ascii")
    return tuple(text.split())


@cache
def _by_first_letters() -> dict[str, str]:
    return {word[:_KNOWN_BY]: word for word in word_list()}


def new_passphrase(words: int = WORDS) -> str:
    """Return that many words drawn by the system's random source, with a space between each two."""
    return " ".join(secrets.choice(word_list()) for _ in range(words))


def read_back(text: str) -> str:
    """Return the passphrase that somebody typed, in the form in which it was drawn.

    Capitals, hyphens, commas and spaces do not matter, and of a word the first four letters are enough. Raises
    WrongWord for a word that is not in the list, so that a slip is named before a key is tried.
    """
    for sign in ",;.-_\u2013\u00a0":
        text = text.replace(sign, " ")
    return " ".join(_word(typed, place) for place, typed in enumerate(text.lower().split(), start=1))


def _word(typed: str, place: int) -> str:
    word = _by_first_letters().get(typed[:_KNOWN_BY])
    if word is None or not word.startswith(typed):
        raise WrongWord(typed, place)
    return word
