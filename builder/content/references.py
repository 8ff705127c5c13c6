"""References in texts: which braces name what. Reads them only; what they name is looked up elsewhere."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from journeybook.source.near import nearest


class RefersTo(StrEnum):
    """What a reference names."""

    KIT = "kit"
    PROFILE = "profile"
    WORD = "word"
    LESSON = "lesson"
    FIGURE = "figure"
    PRACTICAL = "practical"
    JOB_CARD = "job-card"
    GIVEN = "given"
    """A name from a number question's ``given``: braces without a dot."""


@dataclass(frozen=True, slots=True)
class Reference:
    """One pair of braces."""

    to: RefersTo
    name: str
    number_only: bool = False
    """``{kit.NAME.number}``: the value without its unit."""
    wording: str = ""
    """``{word.ID|wording}``: how the word is inflected here."""
    written: str = ""
    """The reference as it stands in the text, with its braces."""


@dataclass(frozen=True, slots=True)
class Unreadable:
    """A brace that opens no reference."""

    written: str
    """The braces, or the lone brace and what follows it, 40 characters at most."""


_BRACES = re.compile(r"\\([{}])|\{([^{}\\\n]{0,200})\}|\{")
_ID = r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*"
_INSIDE = re.compile(
    rf"(?P<sheet>kit|profile)\.(?P<value>{_ID})(?P<number>\.number)?"
    rf"|word\.(?P<word>{_ID})(?:\|(?P<wording>[^|]+))?"
    rf"|(?P<kind>lesson|figure|practical|job-card)\.(?P<id>{_ID})"
    r"|(?P<given>[a-z][a-z0-9]*(?:_[a-z0-9]+)*)"
)


def read_reference(inside: str) -> Reference | None:
    """What stands between two braces, or None where it is not a reference."""
    found = _INSIDE.fullmatch(inside)
    if found is None:
        return None
    written = "{" + inside + "}"
    if found["sheet"]:
        return Reference(
            RefersTo(found["sheet"]), found["value"], number_only=bool(found["number"]), written=written
        )
    if found["word"]:
        return Reference(
            RefersTo.WORD, found["word"], wording=(found["wording"] or "").strip(), written=written
        )
    if found["kind"]:
        return Reference(RefersTo(found["kind"]), found["id"], written=written)
    return Reference(RefersTo.GIVEN, found["given"], written=written)


KINDS = tuple(one.value for one in RefersTo if one is not RefersTo.GIVEN)
"""The words before the dot."""


def meant_by(written: str) -> str:
    """The reference that was perhaps meant by braces that hold none, or nothing: `{jobcard.a}` is `{job-card.a}`."""
    found = re.fullmatch(r"\{\s*([\w-]+)\s*[.:\s]\s*([^|]*?)(\.number)?\s*(\|[^|]+)?\}", written)
    if found is None:
        return ""
    kind = nearest(found[1], KINDS, 1)
    name = re.sub(r"[\s_]+", "-", found[2].strip().lower())
    inside = f"{kind[0]}.{name}{found[3] or ''}{found[4] or ''}" if kind else ""
    return f"{{{inside}}}" if inside and read_reference(inside) else ""


def references_in(text: str) -> Iterator[Reference | Unreadable]:
    """Every reference of a text, in order, and every brace that is none."""
    if "{" not in text:
        return
    for found in _BRACES.finditer(text):
        if found[1] is not None:
            continue
        reference = read_reference(found[2]) if found[2] is not None else None
        lone = text[found.start() : found.start() + 40].split("\n")[0]
        yield reference or Unreadable(found[0][:40] if found[2] is not None else lone)


def replace_references(text: str, put: Callable[[Reference], str]) -> str:
    r"""The text with each reference replaced by what ``put`` gives, and ``\{`` and ``\}`` by a brace."""
    if "{" not in text and "\\}" not in text:
        return text

    def one(found: re.Match[str]) -> str:
        if found[1] is not None:
            return found[1]
        reference = read_reference(found[2]) if found[2] is not None else None
        return found[0] if reference is None else put(reference)

    return _BRACES.sub(one, text)
