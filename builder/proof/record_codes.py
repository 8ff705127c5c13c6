"""Records as texts that a phone reads off a screen: ``JB2:PART/OF:LETTERS:PIECE``.

PIECE is part of the base45 of the raw deflate of the record; LETTERS are the first eight of the record's
fingerprint, so that parts of several records can be told apart and each record proves itself when put together.
Twin of ``site_overrides/js/pure/record-codes.js``.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from journeybook.marking.canonical import SIZE_CAP
from journeybook.marking.fingerprint import fingerprint
from journeybook.proof import base45

PREFIX = "JB2:"
LONGEST_PIECE = 480
"""Signs in a piece that we write: a multiple of three, so that no cut parts the signs of two bytes.

No such piece ends in a space either, so a space that a mail program takes away at a line's end is none of ours.
Up to 700 signs are read.
"""
MOST_PARTS = 99
LETTERS = 8
_CODE = re.compile(
    r"JB2:([1-9][0-9]?)/([1-9][0-9]?):([A-Z2-7]{8}):"
    r"([0-9A-Z $%*+\-./:]{1,700}?)(?=\s{0,64}JB2:|$)"
)
_SHOWN = 60
MOST_RECORDS = 2000
"""Records that one heap of codes may name: four classes of the largest size."""
MOST_ODD = 100
"""Odd things of one heap that are told one by one."""
_MOST_TRIED = 20_000
"""Odd beginnings after which the rest of a heap is not looked at: it is no heap of codes."""
_MOST_CODES = 50_000
"""Codes after which the rest is not looked at: a class of 500, each with as many parts as can be counted, has fewer."""


@dataclass(frozen=True, kw_only=True)
class Incomplete:
    """A record of which some parts are not there."""

    letters: str
    missing: tuple[int, ...]
    """Parts from 1, in order."""
    parts: int

    def sentence(self) -> str:
        """What to tell whoever pasted it."""
        named = ", ".join(map(str, self.missing))
        noun = "part" if len(self.missing) == 1 else "parts"
        return f"Of the record {self.letters[:4]}-{self.letters[4:]}… {noun} {named} of {self.parts} are not there."


@dataclass(frozen=True, kw_only=True)
class Odd:
    """Something that begins as a code and is none, or parts that do not give the record they name."""

    text: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Decoded:
    """What a heap of codes held."""

    records: tuple[bytes, ...]
    """Each once, in the order of its first part."""
    incomplete: tuple[Incomplete, ...]
    odd: tuple[Odd, ...]


def to_codes(data: bytes) -> list[str]:
    """Return the codes of a record; raises ValueError where they would be more than ``MOST_PARTS``."""
    return codes_of_packed(_deflated(data), fingerprint(data))


def codes_of_packed(packed: bytes, print_of_it: str) -> list[str]:
    """Return the codes of a deflated record with that fingerprint; raises ValueError as ``to_codes``."""
    whole = base45.encode(packed)
    pieces = [whole[at : at + LONGEST_PIECE] for at in range(0, max(len(whole), 1), LONGEST_PIECE)]
    if len(pieces) > MOST_PARTS:
        raise ValueError(f"the record needs {len(pieces)} codes; at most {MOST_PARTS} can be counted")
    letters = print_of_it.replace("-", "")[:LETTERS]
    return [f"{PREFIX}{part}/{len(pieces)}:{letters}:{piece}" for part, piece in enumerate(pieces, 1)]


def _deflated(data: bytes) -> bytes:
    machine = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    return machine.compress(data) + machine.flush()


def from_codes(texts: Iterable[str]) -> Decoded:
    """Return what ``texts`` hold: codes in any order, some twice, of several records, several in one text.

    Never raises; nothing is guessed. A record is given only when its bytes have the fingerprint that its parts name.
    """
    parts: dict[tuple[str, int], dict[int, list[str]]] = {}
    odd: list[Odd] = []
    odd_in_all = in_all = left_out = 0
    for found in (each for text in texts for each in _codes_of(text)):
        if isinstance(found, Odd):
            odd_in_all += 1
            if odd_in_all <= MOST_ODD:
                odd.append(found)
            if odd_in_all > _MOST_TRIED:
                break
            continue
        in_all += 1
        if in_all > _MOST_CODES:
            why = f"It has more than {_MOST_CODES} codes; those beyond were not looked at. Part the file."
            odd.append(Odd(text="The file", why=why))
            break
        part, of, letters, piece = found
        if (letters, of) not in parts and len(parts) >= MOST_RECORDS:
            left_out += 1
            continue
        held = parts.setdefault((letters, of), {}).setdefault(part, [])
        # Two that differ are enough to say that they do.
        if len(held) < 2 and piece not in held:
            held.append(piece)
    if odd_in_all > _MOST_TRIED:
        why = f"It begins as a code and goes on as none more than {_MOST_TRIED} times; the rest was not looked at."
        odd.append(Odd(text="The file", why=why))
    elif odd_in_all > MOST_ODD:
        odd.append(Odd(text=f"{odd_in_all - MOST_ODD} more", why="They begin as codes and go on as none."))
    if left_out:
        why = f"It has codes of more than {MOST_RECORDS} records; {left_out} codes beyond were left out. Part the file."
        odd.append(Odd(text="The file", why=why))
    records: dict[bytes, None] = {}
    incomplete: list[Incomplete] = []
    for (letters, of), pieces in parts.items():
        missing = tuple(part for part in range(1, of + 1) if part not in pieces)
        twice = [part for part, held in sorted(pieces.items()) if len(held) > 1]
        if twice:
            why = f"Part {twice[0]} of {of} came twice with different signs; scan it again."
            odd.append(Odd(text=f"{letters} {twice[0]}/{of}", why=why))
        elif missing:
            incomplete.append(Incomplete(letters=letters, missing=missing, parts=of))
        else:
            whole = "".join(pieces[part][0] for part in range(1, of + 1))
            record, why = _opened(whole, letters)
            if record is None:
                odd.append(Odd(text=f"{letters}, {of} {'part' if of == 1 else 'parts'}", why=why))
            else:
                records[record] = None
    return Decoded(records=tuple(records), incomplete=tuple(incomplete), odd=tuple(odd))


def _codes_of(text: str) -> Iterator[tuple[int, int, str, str] | Odd]:
    for line in map(str.rstrip, text.splitlines()):
        at = line.find(PREFIX)
        while at >= 0:
            found = _CODE.match(line, at)
            following = line.find(PREFIX, at + len(PREFIX))
            if found is None or int(found[1]) > int(found[2]):
                until = following if following >= 0 else len(line)
                why = "It begins as a code and goes on as none; scan or copy it again."
                yield Odd(text=line[at : min(until, at + _SHOWN)], why=why)
            else:
                yield int(found[1]), int(found[2]), found[3], found[4]
            at = following


def _opened(signs: str, letters: str) -> tuple[bytes | None, str]:
    again = "scan or copy its parts again."
    try:
        packed = base45.decode(signs)
        machine = zlib.decompressobj(-zlib.MAX_WBITS)
        data = machine.decompress(packed, SIZE_CAP + 1)
    except (ValueError, zlib.error):
        return None, f"Its parts do not fit together; {again}"
    if len(data) > SIZE_CAP:
        return None, f"It unpacks to more than {SIZE_CAP} bytes, which no record of ours does."
    if not machine.eof or machine.unused_data:
        return None, f"Its parts do not fit together; {again}"
    if fingerprint(data).replace("-", "")[:LETTERS] != letters:
        return None, f"What its parts give has another fingerprint than they name; {again}"
    return data, ""
