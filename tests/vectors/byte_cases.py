"""Vectors of canonical bytes, attempt files and fingerprints."""

from __future__ import annotations

import json
from hashlib import sha256
from typing import Any

from case import Case, hand


def canonical_bytes() -> list[Case]:
    """RFC 8785 as far as evidence may go."""
    weird = {
        "€": "Euro Sign",
        "\r": "Carriage Return",
        "\ufb33": "Hebrew Letter Dalet With Dagesh",
        "1": "One",
        "😀": "Emoji: Grinning Face",
        "\u0080": "Control",
        "ö": "Latin Small Letter O With Diaeresis",
    }

    def written(name: str, value: Any, text: str) -> Case:
        return hand(name, "canonical-write", {"value": value}, {"value": text})

    def refused(name: str, text: str) -> Case:
        return hand(name, "canonical-read", {"text": text}, {"refused": True})

    deep = "[" * 33 + "]" * 33
    return [
        written(
            "keys sort by UTF-16 code units (RFC 8785, 3.2.3)",
            weird,
            '{"\\r":"Carriage Return","1":"One","\u0080":"Control","ö":"Latin Small Letter O With Diaeresis",'
            '"€":"Euro Sign","😀":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
        ),
        written(
            "texts escape no more than they must (RFC 8785, 3.2.2.2)",
            '€$\u000f\nA\'B"\\\\"/\u007f\b\t\f\r',
            '"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/\u007f\\b\\t\\f\\r"',
        ),
        written("literals", [None, True, False], "[null,true,false]"),
        written("integers", [0, -1, 2**53 - 1, -(2**53 - 1)], "[0,-1,9007199254740991,-9007199254740991]"),
        written("nothing", {}, "{}"),
        written("depth 32", json.loads("[" * 32 + "]" * 32), "[" * 32 + "]" * 32),
        hand("depth 33 is refused", "canonical-write", {"value": json.loads(deep)}, {"refused": "depth"}),
        hand("a half is refused", "canonical-write", {"value": 0.5}, {"refused": "number"}),
        hand(
            "reading gives the contents",
            "canonical-read",
            {"text": '{"a":[1,"ö"]}'},
            {"value": {"a": [1, "ö"]}},
        ),
        refused("a key given twice", '{"a":1,"a":1}'),
        refused("keys out of order", '{"b":1,"a":1}'),
        refused("a space", '{"a": 1}'),
        refused("a line end", "1\n"),
        refused("a fraction", "1.5"),
        refused("a fraction that is whole", "1.0"),
        refused("an exponent", "1e3"),
        refused("minus zero", "-0"),
        refused("an integer beyond 2^53 - 1", "9007199254740992"),
        refused("a very long integer", "9" * 5000),
        refused("half of a surrogate pair", '"\\ud800"'),
        refused("an escape that need not be", '"\\u0041"'),
        refused("an escaped slash", '"\\/"'),
        refused("not a number", "NaN"),
        refused("infinity", "Infinity"),
        refused("nothing at all", ""),
        refused("cut short", '{"a":'),
        refused("a comma too many", "[1,]"),
        refused("too deep", deep),
        refused("two values", "1 2"),
        refused("a byte order mark", "\ufeff1"),
    ]


def records() -> list[Case]:
    """Attempt files and fingerprints."""
    facts = {
        "course": "pillar-drill",
        "version": "1.0",
        "digest": "00" * 32,
        "profile": "us",
        "language": "en",
        "seed": "form-A-2026",
        "avoid": ["cell-1"],
        "form": [
            {"q": "cell-5", "variant": 0, "options": ["b", "a"]},
            {"q": "cell-1", "variant": 2, "options": []},
        ],
        "answers": {"cell-5": "a", "cell-1": {"value": "10,2", "unit": "m3/h"}},
        "shown": ["cell-5", "cell-1"],
        "started": "2026-11-24T09:00:00Z",
        "ended": "2026-11-24T09:20:00Z",
        "card": {"id": "c-1", "name": "Åsa O'Neill", "workplace": 'Basin "Lane"'},
    }
    text = (
        '{"answers":{"cell-1":{"unit":"m3/h","value":"10,2"},"cell-5":"a"},"avoid":["cell-1"],'
        '"card":{"id":"c-1","name":"Åsa O\'Neill","workplace":"Basin \\"Lane\\""},"course":"pillar-drill",'
        f'"digest":"{"00" * 32}","ended":"2026-11-24T09:20:00Z",'
        '"form":[{"options":["b","a"],"q":"cell-5","variant":0},{"options":[],"q":"cell-1","variant":2}],'
        '"format":"journeybook attempt 1","language":"en","profile":"us","seed":"form-A-2026",'
        '"shown":["cell-5","cell-1"],"started":"2026-11-24T09:00:00Z","version":"1.0"}'
    )
    return [
        # SHA-256("abc") starts with these 80 bits (FIPS 180-4).
        hand(
            "the fingerprint of abc", "fingerprint", {"text": "abc"}, base32_by_hand("ba7816bf8f01cfea4141")
        ),
        hand(
            "an attempt file",
            "attempt-file",
            {"facts": facts},
            {"text": text, "fingerprint": base32_by_hand(sha256(text.encode()).hexdigest()[:20])},
        ),
    ]


def base32_by_hand(digits: str) -> str:
    """Return hexadecimal digits in RFC 4648 base32, five bits at a time, in groups of four."""
    bits = "".join(f"{int(digit, 16):04b}" for digit in digits)
    letters = ["ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"[int(bits[at : at + 5], 2)] for at in range(0, len(bits), 5)]
    return "-".join("".join(letters[at : at + 4]) for at in range(0, len(letters), 4))
