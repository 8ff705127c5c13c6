"""Canonical bytes against the test data of RFC 8785's authors.

Source: cyberphone/json-canonicalization, testdata (Apache-2.0), commit 19d51d7 (2024): arrays, french, structures,
unicode and weird, typed off; the beginnings of the SHA-256 of the published outputs stand beside them. ``values`` is
left out: it is about floats, which evidence does not hold; so the 56.0 of ``structures`` stands here as 56.
"""

from __future__ import annotations

import hashlib
import json

import pytest

from journeybook.marking import canonical

# Name -> input, output, beginning of the output's SHA-256.
FILES = {
    "arrays": ('[\n  56,\n  {"d": true, "10": null, "1": [ ]}\n]', '[56,{"1":[],"10":null,"d":true}]', "099601b1"),
    "french": (
        '{"peach": "This sorting order", "p\u00e9ch\u00e9": "is wrong according to French", '
        '"p\u00eache": "but canonicalization MUST", "sin":   "ignore locale"}',
        '{"peach":"This sorting order","p\u00e9ch\u00e9":"is wrong according to French",'
        '"p\u00eache":"but canonicalization MUST","sin":"ignore locale"}',
        "d99d0ebd",
    ),
    "structures": (
        '{"1": {"f": {"f": "hi","F": 5} ,"\\n": 56}, "10": { }, "": "empty", "a": { }, '
        '"111": [ {"e": "yes","E": "no" } ], "A": { }}',
        '{"":"empty","1":{"\\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{"E":"no","e":"yes"}],"A":{},"a":{}}',
        "605f6500",
    ),
    # A letter in two parts stays in two parts: names are composed before they are written, by whoever writes them.
    "unicode": (
        '{"Unnormalized Unicode":"A\\u030a"}',
        '{"Unnormalized Unicode":"A\u030a"}',
        "0d99aad9",
    ),
    "weird": (
        '{"\\u20ac": "Euro Sign", "\\r": "Carriage Return", "\\u000a": "Newline", "1": "One", '
        '"\\u0080": "Control\\u007f", "\\ud83d\\ude02": "Smiley", "\\u00f6": "Latin Small Letter O With Diaeresis", '
        '"\\ufb33": "Hebrew Letter Dalet With Dagesh", "</script>": "Browser Challenge"}',
        '{"\\n":"Newline","\\r":"Carriage Return","1":"One","</script>":"Browser Challenge",'
        '"\u0080":"Control\u007f","\u00f6":"Latin Small Letter O With Diaeresis","\u20ac":"Euro Sign",'
        '"\U0001f602":"Smiley","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
        "6af595a9",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FILES)
def test_the_files_come_out_as_published(name: str) -> None:
    given, expected, sum_of_it = FILES[name]
    written = canonical.write(json.loads(given))
    assert written.decode() == expected
    assert hashlib.sha256(written).hexdigest().startswith(sum_of_it)
    assert canonical.read(written) == json.loads(given)
