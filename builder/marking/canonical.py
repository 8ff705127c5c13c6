"""Which bytes stand for plain data: JSON in the one form of RFC 8785, restricted to what evidence may hold.

Allowed: objects, arrays, texts, booleans, null, and integers within plus or minus 2^53 - 1, which every
JSON reader keeps exact. Refused: floats, lone surrogates, larger integers. Keys are sorted by their
UTF-16 code units (RFC 8785, 3.2.3). Reading is as strict as writing: bytes are accepted only when they
are exactly what writing their contents would give.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Callable
from json.encoder import encode_basestring
from typing import Any, NoReturn

from journeybook.marking.kind import Json

LARGEST = 2**53 - 1
"""RFC 7493, 2.2: integers beyond it do not survive every JSON reader."""
SIZE_CAP = 1 << 20
"""Bytes. A check of 200 questions is below a tenth of it."""
COMPILED_SIZE_CAP = 256 << 20
"""Bytes. A compiled course is our own file; the cap only keeps a mistaken file from filling the memory."""
DEPTH_CAP = 32
"""Nested arrays and objects."""

_TOO_DEEP = f"Lists and objects are nested more than {DEPTH_CAP} deep."
_MANY_DIGITS = re.compile(r"[0-9]{16}")
_PLAIN = json.JSONEncoder(ensure_ascii=False, sort_keys=True, separators=(",", ":"))


class NotCanonical(ValueError):  # noqa: N818 - it says what the data are not
    """Data or bytes that are not canonical JSON of the allowed kind."""

    def __init__(self, reason: str, detail: str) -> None:
        """Keep why: ``reason`` is one word for programs, ``detail`` a sentence for people.

        Reasons: ``size``, ``depth``, ``utf-8``, ``json``, ``duplicate``, ``number``, ``surrogate``, ``type``,
        ``form``.
        """
        self.reason = reason
        self.detail = detail
        super().__init__(detail)


def write(value: Json) -> bytes:
    """Return the canonical bytes of ``value``; raise NotCanonical for what is refused."""
    text = _PLAIN.encode(value) if _is_usual(value) else _text(value, 0)
    try:
        return text.encode("utf-8")
    except UnicodeEncodeError as error:
        raise NotCanonical("surrogate", "A text holds half of a surrogate pair.") from error


def _is_usual(value: object) -> bool:
    """Whether the standard library writes the value as RFC 8785 asks, in C: ASCII keys and allowed types alone.

    False says nothing against a value; the slower writer then looks at it piece by piece and names what is wrong.
    """
    level: list[Any] = [value]
    for _ in range(DEPTH_CAP):
        below: list[Any] = []
        for each in level:
            kind = type(each)
            if kind is str:
                continue
            if kind is dict:
                try:
                    if not "".join(each).isascii():
                        return False
                except TypeError:  # a key that is no text
                    return False
                below.extend(each.values())
            elif kind is list:
                below.extend(each)
            elif kind is int:
                if not -LARGEST <= each <= LARGEST:
                    return False
            elif kind is not bool and each is not None:
                return False
        if not below:
            return True
        level = below
    return False


def _text(value: object, depth: int) -> str:
    if isinstance(value, str):
        # Escapes exactly the quote, the backslash and the control characters, with the short forms
        # \b \t \n \f \r and lower-case \u00xx otherwise: RFC 8785, 3.2.2.2.
        return encode_basestring(value)
    if value is True:
        return "true"
    if value is False:
        return "false"
    if value is None:
        return "null"
    if isinstance(value, int):
        if not -LARGEST <= value <= LARGEST:
            raise NotCanonical("number", f"The integer {_shortened(str(value))} is beyond 2^53 - 1.")
        return int.__repr__(value)
    if depth >= DEPTH_CAP:
        raise NotCanonical("depth", _TOO_DEEP)
    if isinstance(value, (list, tuple)):
        return "[" + ",".join([_text(each, depth + 1) for each in value]) + "]"
    if isinstance(value, dict):
        return "{" + ",".join([_member(key, value[key], depth) for key in _sorted_keys(value)]) + "}"
    if isinstance(value, float):
        raise NotCanonical("number", f"{value!r} is not an integer.")
    raise NotCanonical("type", f"A {type(value).__name__} cannot stand in evidence.")


def _member(key: str, value: object, depth: int) -> str:
    return encode_basestring(key) + ":" + _text(value, depth + 1)


def _sorted_keys(mapping: dict[object, object]) -> list[str]:
    keys: list[str] = []
    for key in mapping:
        if not isinstance(key, str):
            raise NotCanonical("type", f"A key must be a text, not {type(key).__name__}.")
        keys.append(key)
    # Code points and UTF-16 code units sort alike below the surrogates, so most keys need no encoding.
    if all(key.isascii() for key in keys):
        return sorted(keys)
    return sorted(keys, key=_code_units)


def _code_units(text: str) -> bytes:
    return text.encode("utf-16-be", "surrogatepass")


def read(data: bytes, size_cap: int = SIZE_CAP) -> Json:
    """Return the contents of canonical bytes; raise NotCanonical for anything else."""
    if len(data) > size_cap:
        raise NotCanonical("size", f"The file is larger than {size_cap} bytes.")
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        raise NotCanonical("utf-8", f"Byte {error.start + 1} is not UTF-8.") from error
    value = _parsed(text)
    if _nests_deeper(value, DEPTH_CAP):
        raise NotCanonical("depth", _TOO_DEEP)
    if _written_again(value, text) != text:
        _parsed(text, _without_duplicates)
        raise NotCanonical("form", "The bytes differ from the canonical form of their contents.")
    return value


def _parsed(text: str, pairs: Callable[[list[tuple[str, Json]]], Json] | None = None) -> Json:
    # Python converts digits itself, and quickly, where none can be too many.
    whole = _bounded_integer if _MANY_DIGITS.search(text) else None
    try:
        value: Json = json.loads(
            text,
            object_pairs_hook=pairs,
            parse_float=_refuse_float,
            parse_constant=_refuse_float,
            parse_int=whole,
        )
    except json.JSONDecodeError as error:
        raise NotCanonical(
            "json", f"Line {error.lineno}, column {error.colno}: {error.msg[0].lower()}{error.msg[1:]}."
        ) from error
    except RecursionError as error:
        raise NotCanonical("depth", _TOO_DEEP) from error
    return value


def _nests_deeper(value: Json, levels: int) -> bool:
    """Return whether lists and objects stand more than ``levels`` deep in one another; a level at a time."""
    containers = [value] if isinstance(value, (dict, list)) else []
    for _ in range(levels):
        containers = [
            inner
            for outer in containers
            for inner in (outer.values() if isinstance(outer, dict) else outer)
            if isinstance(inner, (dict, list))
        ]
        if not containers:
            return False
    return True


def _written_again(value: Json, text: str) -> str:
    """Return the canonical text of a value that was parsed from ``text``, so that its types are known."""
    if "\\u" not in text and (text.isascii() or max(text) <= "\uffff"):
        # Without characters beyond U+FFFF the standard library sorts keys as RFC 8785 asks, in C.
        return _PLAIN.encode(value)
    return write(value).decode("utf-8")


def _without_duplicates(members: list[tuple[str, Json]]) -> dict[str, Json]:
    found = dict(members)
    if len(found) != len(members):
        twice = next(name for name, count in Counter(name for name, _ in members).items() if count > 1)
        raise NotCanonical("duplicate", f"The key “{_shortened(twice)}” stands twice in one object.")
    return found


def _refuse_float(literal: str) -> NoReturn:
    raise NotCanonical("number", f"{_shortened(literal)} is not an integer.")


def _bounded_integer(literal: str) -> int:
    # Python refuses to convert very long digits itself, with an error of its own; length decides first.
    if len(literal) > 17 or abs(int(literal)) > LARGEST:
        raise NotCanonical("number", f"The integer {_shortened(literal)} is beyond 2^53 - 1.")
    return int(literal)


def _shortened(text: str) -> str:
    return text if len(text) <= 24 else text[:21] + "..."
