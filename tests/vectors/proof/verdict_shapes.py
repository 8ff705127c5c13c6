"""Verdict cases about the shape of a certificate: each is signed as it stands, so that only its shape can speak."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from typing import Any

from verdict_signers import PLAIN, STRANGER, WHOLE, Document, changed, did, signed, without

REQUIRED = ("name", "person", "employer", "equipment", "title", "course", "version", "profile", "language")
OPTIONAL = ("workplace", "trainer")
NO_TEXTS: list[tuple[str, Any]] = [
    ("a number", 5), ("null", None), ("true", True), ("a list", ["Ines"]), ("an object", {"a": "Ines"}),
    ("a blank before", " Ines"), ("a blank after", "Ines "), ("a hard blank before", "\u00a0Ines"),
    ("a wide blank after", "Ines\u3000"), ("a blank alone", " "), ("a line feed", "Ines\nOkafor"),
    ("a tab", "Ines\tOkafor"),
    ("a bell", "Ines\u0007"), ("a delete", "Ines\u007f"), ("a C1 control", "Ines\u0085Okafor"),
    ("a line separator", "Ines\u2028Okafor"), ("writing turned around", "Ines\u202eOkafor"),
    ("writing set apart", "Ines\u2066Okafor"),
    ("a byte order mark", "Ines\ufeffOkafor"), ("letters taken apart", unicodedata.normalize("NFD", "Inès")),
    ("a sign that has a simpler one", "10 \u2126"), ("201 letters", "I" * 201),
    ("201 letters beyond U+FFFF", "\U00010400" * 201),
]  # fmt: skip
TEXTS: list[tuple[str, str]] = [
    ("200 letters", "I" * 200), ("200 letters beyond U+FFFF", "\U00010400" * 200), ("one letter", "I"),
    ("quotes and a backslash", 'Ines "Ina" \\ Okafor'), ("another writing", "山田 太郎"),
    ("writing from the right", "אינס"),
    ("a joiner", "ناه\u200cید"), ("markup", "<b>Ines</b>"), ("a name that scripts know", "__proto__"),
]  # fmt: skip
NO_DAYS: list[tuple[str, Any]] = [
    ("30 February", "2026-02-30"), ("a leap day of none", "2025-02-29"), ("a leap day of 1900", "1900-02-29"),
    ("month 13", "2026-13-01"), ("day 0", "2026-03-00"), ("year 0", "0000-03-01"),
    ("without zeros", "2026-3-1"),
    ("without lines", "20260301"), ("of a week", "2026-W09-7"), ("a time", "2026-03-01T00:00:00Z"),
    ("a line feed", "2026-03-01\n"),
    ("other digits", "٢٠٢٦-٠٣-٠١"), ("null", None), ("a number", 20260301),
]  # fmt: skip
WRONG: dict[str, list[tuple[str, Any]]] = {
    "format": [
        ("another", "journeybook certificate 2"), ("a list", ["journeybook certificate 1"]), ("empty", ""),
    ],
    "digest": [
        ("capitals", "AB" * 32), ("too short", "ab" * 31), ("too long", "ab" * 33),
        ("no hexadecimal", "gh" * 32),
        ("a line feed", "ab" * 32 + "\n"), ("empty", ""), ("a number", 1),
    ],
    "marks": [
        ("below none", -1), ("a text", "19200"), ("true", True), ("null", None),
        ("more than there are", 24001), ("below the cut", 19199),
    ],
    "of": [
        ("none", 0), ("no whole question", 24500), ("half a question", 500), ("a text", "24000"),
        ("below none", -24000),
    ],
    "cut": [("none", 0), ("more than all", 101), ("a text", "80"), ("true", True), ("above the marks", 81)],
    "mustPass": [
        ("one number", [8]), ("three numbers", [8, 8, 8]), ("one missed", [7, 8]),
        ("more than asked", [9, 8]), ("texts", ["8", "8"]),
        ("below none", [-1, -1]), ("flags", [True, True]), ("an object", {"0": 8, "1": 8}),
        ("a number", 8), ("a text", "88"), ("empty", []),
    ],
    "check": [
        ("a capital", "Supervised"), ("empty", ""), ("null", None), ("a list", ["self-recorded"]),
        ("another word", "sealed"),
    ],
    "practical": [("a capital", "Observed"), ("empty", ""), ("null", None), ("a list", ["not observed"])],
    "attempt": [("none", 0), ("below none", -1), ("a text", "1"), ("true", True)],
    "fingerprint": [
        ("two groups", "ABCD-EFGH"), ("small letters", "abcd-efgh-ijkl-mn27"),
        ("an unknown letter", "ABCD-EFGH-IJKL-MN21"),
        ("five groups", "ABCD-EFGH-IJKL-MN27-ABCD"), ("without lines", "ABCDEFGHIJKLMN27"),
        ("empty", ""), ("a line feed", "ABCD-EFGH-IJKL-MN27\n"),
    ],
    "observations": [
        ("null", None), ("a text", "AAAA-BBBB-CCCC-DDDD"), ("an object", {}),
        ("of a self-recorded practical", ["AAAA-BBBB-CCCC-DDDD"]),
    ],
    "example": [("a number", 0), ("a text", "false"), ("null", None)],
    "checked": [("empty", ""), *NO_DAYS],
    "retrainBy": [("another day than the end", "2027-03-02"), ("empty", ""), ("30 February", "2027-02-30")],
    "identity": [("where nobody supervised", "works pass"), ("null", None)],
    "assessor": [("where nobody watched", "Sam Reyes"), ("null", None)],
    "observed": [("where nobody observed", "2026-03-02"), ("null", None)],
    "trained": [("30 February", "2026-02-30"), ("null", None), ("a blank", " ")],
}  # fmt: skip
WRONG_WHOLE: dict[str, list[tuple[str, Any]]] = {
    "identity": [("empty", ""), ("a blank", " "), ("a number", 1)],
    "assessor": [("empty", ""), ("a bell", "Sam\u0007")],
    "observed": [("empty", ""), ("30 February", "2026-02-30")],
    "observations": [
        ("none", []), ("nine", ["AAAA-BBBB-CCCC-DDDD"] * 9), ("a number", [5]), ("empty", [""]),
        ("two groups", ["AAAA-BBBB"]),
    ],
}  # fmt: skip
WRONG_TOP: dict[str, list[tuple[str, Any]]] = {
    "@context": [
        ("turned around", PLAIN["@context"][::-1]), ("one more", [*PLAIN["@context"], "urn:x"]),
        ("the first alone", PLAIN["@context"][:1]), ("a text", PLAIN["@context"][0]),
    ],
    "type": [
        ("one more", ["VerifiableCredential", "Other"]), ("a text", "VerifiableCredential"), ("empty", []),
    ],
    "id": [
        ("capitals", "urn:uuid:0B0F3C3E-6F1F-4B7A-9A64-0A8F0F6F7A11"),
        ("version 1", "urn:uuid:0b0f3c3e-6f1f-1b7a-9a64-0a8f0f6f7a11"),
        ("another variant", "urn:uuid:0b0f3c3e-6f1f-4b7a-ca64-0a8f0f6f7a11"),
        ("no urn", "0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11"),
        ("a line feed", PLAIN["id"] + "\n"), ("null", None), ("an object", {}),
    ],
    "issuer": [
        ("an object", {"id": PLAIN["issuer"]}), ("a site", "https://example.org/issuer"), ("null", None),
        ("another curve", "did:key:zQ3shokFTS3brHcDQrn82RUDfCZESWL1ZdCEJwekUDPQiYBme"),
    ],
    "validFrom": [
        ("a day", "2026-03-02"), ("hour 24", "2026-03-02T24:00:00Z"),
        ("minute 60", "2026-03-02T08:60:00Z"), ("second 60", "2026-03-02T08:00:60Z"),
        ("30 February", "2026-02-30T08:00:00Z"), ("another zone", "2026-03-02T08:00:00+00:00"),
        ("a small z", "2026-03-02T08:00:00z"),
        ("parts of a second", "2026-03-02T08:00:00.0Z"), ("a line feed", "2026-03-02T08:00:00Z\n"),
        ("null", None), ("a number", 1),
    ],
    "validUntil": [
        ("another second", "2027-03-01T23:59:58Z"), ("another day", "2027-03-02T23:59:59Z"),
        ("a day", "2027-03-01"), ("null", None),
    ],
    "credentialSubject": [
        ("null", None), ("a list", [PLAIN["credentialSubject"]]), ("a text", "x"), ("empty", {}),
    ],
}  # fmt: skip


def shapes() -> Iterator[tuple[str, bytes, str]]:
    """Name, record, kind."""
    yield from _right()
    for name in ("@context", "type", "id", "validFrom", "validUntil", "credentialSubject"):
        yield f"{name} missing", signed(without(PLAIN, name)), "unreadable"
    yield "issuer missing", signed(without(PLAIN, "issuer")), "unreadable"
    for name in PLAIN["credentialSubject"]:
        yield f"{name} missing", signed(without(PLAIN, "credentialSubject", name)), "unreadable"
    for name in ("note", "__proto__", "constructor", "observation"):
        yield f"a member more: {name}", signed({**PLAIN, name: ""}), "unreadable"
        yield f"a member of the subject more: {name}", signed(changed(PLAIN, **{name: ""})), "unreadable"
    for what, text in NO_TEXTS:
        yield f"name: {what}", signed(changed(PLAIN, name=text)), "unreadable"
    for name in (*REQUIRED[1:], *OPTIONAL):
        for what, text in (("a number", 5), ("a blank after", "x "), ("a line feed", "x\ny")):
            yield f"{name}: {what}", signed(changed(PLAIN, **{name: text})), "unreadable"
    for name in REQUIRED:
        yield f"{name}: empty", signed(changed(PLAIN, **{name: ""})), "unreadable"
    for table, document in ((WRONG, PLAIN), (WRONG_WHOLE, WHOLE)):
        for name, values in table.items():
            for what, value in values:
                where = "observed: " if document is WHOLE else ""
                yield f"{where}{name}: {what}", signed(changed(document, **{name: value})), "unreadable"
    for name, values in WRONG_TOP.items():
        for what, value in values:
            yield f"{name}: {what}", signed({**PLAIN, name: value}), "unreadable"
    yield from _together()


def _right() -> Iterator[tuple[str, bytes, str]]:
    yield "the check alone", signed(PLAIN), "genuine"
    yield "supervised and observed", signed(WHOLE), "genuine"
    for what, text in TEXTS:
        yield f"name: {what}", signed(changed(PLAIN, name=text)), "genuine"
    for name in OPTIONAL:
        yield f"{name}: empty", signed(changed(WHOLE, **{name: ""})), "genuine"
    yield (
        "supervised, not observed",
        signed(changed(WHOLE, practical="not observed", observed="", observations=[])),
        "genuine",
    )
    yield "observed, not supervised", signed(changed(WHOLE, check="self-recorded", identity="")), "genuine"
    yield "eight observations", signed(changed(WHOLE, observations=["AAAA-BBBB-CCCC-DDDD"] * 8)), "genuine"
    yield "all marks, all to be had", signed(changed(PLAIN, marks=24000, cut=100)), "genuine"
    yield "no must-pass question", signed(changed(PLAIN, mustPass=[0, 0])), "genuine"
    yield "a later attempt", signed(changed(PLAIN, attempt=17)), "genuine"
    yield "trained on a leap day", signed(changed(PLAIN, trained="2024-02-29")), "genuine"
    yield "trained on the leap day of 2000", signed(changed(PLAIN, trained="2000-02-29")), "genuine"


def _together() -> Iterator[tuple[str, bytes, str]]:
    supervised: Document = changed(PLAIN, check="supervised")
    yield "supervised by nobody", signed(changed(supervised, identity="works pass")), "unreadable"
    yield "supervised without identity", signed(changed(supervised, assessor="Sam Reyes")), "unreadable"
    observed = changed(PLAIN, practical="observed", assessor="Sam Reyes")
    yield "observed on no day", signed(changed(observed, observations=["AAAA-BBBB-CCCC-DDDD"])), "unreadable"
    yield "observed without a record", signed(changed(observed, observed="2026-03-02")), "unreadable"
    # 100 * marks is beyond 2^53, where a float of a script takes it for 100 * of.
    largest = 9_007_199_254_740_000
    missed = {"of": largest, "marks": largest - 1, "cut": 100}
    yield "one mark of very many below the cut", signed(changed(PLAIN, **missed)), "unreadable"
    for what, day in (
        ("30 February", "2027-02-30"),
        ("a leap day of none", "2027-02-29"),
        ("month 0", "2027-00-10"),
    ):
        until = {**changed(PLAIN, retrainBy=day), "validUntil": f"{day}T23:59:59Z"}
        yield f"due again on {what}", signed(until), "unreadable"
    yield "an issuer that did not sign", signed({**PLAIN, "issuer": did(STRANGER)}), "altered"
