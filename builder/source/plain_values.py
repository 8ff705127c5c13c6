"""What a value without quotes means: a text, a number, true, false, nothing, or none of these for sure.

YAML 1.1 (2005, type repository of yaml.org/type) and YAML 1.2 (2009, core schema, 10.3.2) read ``no``,
``012``, ``1e3`` and many more differently, and so do programs that claim to read either. Whatever two of them
disagree on is refused. Dates are the exception: ``2026-11-20`` is text here, and whoever wants a date reads
it from the text.
"""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Final

_PLAIN = {"": None, "null": None, "true": True, "false": False}

_OTHER_WORDS = frozenset({"y", "n", "yes", "no", "on", "off", "true", "false", "null", "~", "=", "<<"})
"""In any case: YAML 1.1 has ``yes|Yes|YES``; ``yEs`` is text everywhere and still not what anybody meant."""

_WHOLE = re.compile(r"0|-?[1-9][0-9]*")
_DECIMAL = re.compile(r"-?(?:0|[1-9][0-9]*)\.[0-9]+")
_MOST_DIGITS = 15
"""A double holds every decimal of 15 digits (IEEE 754 binary64); beyond, readers lose digits."""

_NUMBER_TO_SOMEBODY = re.compile(
    r"""
    [-+]?(?:
        0b[01_]+ | 0o[0-7_]+ | 0x[0-9a-f_]+           # 1.1 binary and hexadecimal, 1.2 octal
      | [0-9][0-9_]*(?::[0-5]?[0-9])+(?:\.[0-9_]*)?   # 1.1 sexagesimal: 1:30 is ninety
      | [0-9][0-9_]*(?:e[-+]?[0-9]+)?                 # 012, 1_000, 1e3
      | [0-9][0-9_]*\.[0-9_]*(?:e[-+]?[0-9]+)?        # 1., 1_0.5, 1.5e+3
      | \.[0-9][0-9_]*(?:e[-+]?[0-9]+)?               # .5
      | \.(?:inf|nan)
    )
    """,
    re.VERBOSE | re.IGNORECASE,
)
_MOMENT = re.compile(r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(?:[Tt]|[ \t]+)[0-9]{1,2}:[0-9]{2}:[0-9]{2}.*")


_OCTAL = re.compile(r"[-+]?0[0-7_]+")


class Unsure:
    """The type of ``UNSURE``."""


UNSURE: Final = Unsure()
"""Stands for a value that readers disagree on."""

FIRST_OF_NOT_TEXT = frozenset("0123456789+-.yYnNtTfFoO~=<")
"""A text that starts with none of these is text to everybody; most texts are told apart by this alone."""


def plain_value(text: str) -> str | int | Decimal | bool | Unsure | None:
    """The value of a scalar written without quotes, or ``UNSURE``."""
    if text in _PLAIN:
        return _PLAIN[text]
    if text[0] not in FIRST_OF_NOT_TEXT:
        return text
    if len(text) < 6 and text.lower() in _OTHER_WORDS:
        return UNSURE
    if text[0] not in "0123456789+-.":
        return text
    if _WHOLE.fullmatch(text):
        return int(text) if len(text.lstrip("-")) <= _MOST_DIGITS else UNSURE
    if _DECIMAL.fullmatch(text):
        return Decimal(text) if len(text.lstrip("-")) <= _MOST_DIGITS + 1 else UNSURE
    if _NUMBER_TO_SOMEBODY.fullmatch(text) or _MOMENT.fullmatch(text):
        return UNSURE
    return text


def is_text_key(text: str) -> bool:
    """True for a key without quotes that every reader takes for text, and for ``on``.

    ``on:`` is a key of the files themselves (``approved: {by: …, on: 2026-11-20}``); in the place of a key it
    cannot be taken for anything else here, and asking for quotes there would be a trap.
    """
    return text == "on" or isinstance(plain_value(text), str)


def other_reading(text: str) -> str:
    """What some programs make of a value that ``plain_value`` is unsure of, in words for a message."""
    low = text.lower()
    if low in ("y", "yes", "on", "true"):
        return "true"
    if low in ("n", "no", "off", "false"):
        return "false"
    if low in ("null", "~"):
        return "nothing"
    if low in ("=", "<<"):
        return "an instruction"
    if ":" in text:
        return "a date with a time" if _MOMENT.fullmatch(text) else "a number to the base of 60"
    if _WHOLE.fullmatch(text) or _DECIMAL.fullmatch(text):
        return "a number with its last digits lost"
    if _OCTAL.fullmatch(text):
        return "a number to the base of 8"
    return "a number"
