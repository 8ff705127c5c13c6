"""Vectors of records as codes on a screen, and of what is typed at a sitting."""

from __future__ import annotations

import random

from case import Case, derived, hand

PRINT = "ABCD-EFGH-IJKL-MN27"


def codes() -> list[Case]:
    """A deflated record cut into codes: ``JB2:PART/OF:LETTERS:`` and at most 480 signs of base45."""
    chance = random.Random(27)

    def cut(name: str, data: bytes) -> Case:
        return derived(name, "codes-of-packed", {"hex": data.hex(), "fingerprint": PRINT})

    def known(name: str, data: bytes, *expect: str) -> Case:
        return hand(name, "codes-of-packed", {"hex": data.hex(), "fingerprint": PRINT}, list(expect))

    return [
        known("two bytes are three signs (RFC 9285, 4.3)", b"AB", "JB2:1/1:ABCDEFGH:BB8"),
        known("an odd byte is two signs (RFC 9285, 4.3)", b"Hello!!", "JB2:1/1:ABCDEFGH:%69 VD92EX0"),
        known("base-45 (RFC 9285, 4.3)", b"base-45", "JB2:1/1:ABCDEFGH:UJCLQE7W581"),
        known("nothing is one empty code", b"", "JB2:1/1:ABCDEFGH:"),
        known("zeros are zeros", bytes(3), "JB2:1/1:ABCDEFGH:00000"),
        known(
            "the largest pair of bytes (65535 = 32·2025 + 16·45 + 15)", b"\xff\xff", "JB2:1/1:ABCDEFGH:FGW"
        ),
        cut("320 bytes fill one code", chance.randbytes(320)),
        cut("one byte more begins a second", chance.randbytes(321)),
        cut("two full codes", chance.randbytes(640)),
        cut("seven codes", chance.randbytes(2000)),
        cut("every byte there is", bytes(range(256))),
    ]


def sitting_texts() -> list[Case]:
    """What is typed at a sitting, as it enters the key, and the name under which a ticket's place stands."""
    known = "guar mang rive ston ladd zebr"

    def typed(name: str, text: str, form: str = known) -> Case:
        return hand(name, "typed-passphrase", {"text": text}, form)

    return [
        typed("words as they are read out", "guard mango river stone ladder zebra"),
        typed("in capitals", "GUARD Mango RIVER stone LADDER Zebra"),
        typed("with spaces around and a tab between", "  guard   mango river\tstone ladder zebra \n"),
        typed("four letters of each are enough", known),
        typed(
            "what follows the fourth letter does no harm", "guards mangoes rivers stonemason ladders zebras"
        ),
        typed("a short word stays short", "act all", "act all"),
        typed("nothing", "", ""),
        derived(
            "a place's name is SHA-256 of sitting, line break and ticket",
            "place-of-ticket",
            {"sitting": "3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11", "ticket": "ABCDE-FGHJK"},
        ),
    ]
