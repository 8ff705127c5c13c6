"""Which parsed JSON is a certificate: the members it has, the shape of each, and how they hold together.

Twin of the same rules in ``site_overrides/js/pure/verdict.js``; tests/vectors/verdicts.json holds both to them.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from journeybook.proof.data_integrity import CONTEXT

FORMAT = "journeybook certificate 1"
LONGEST_TEXT = 200
"""Characters (Unicode code points)."""
MOST_OBSERVATIONS = 8

_MEMBERS = frozenset(
    {"@context", "type", "id", "issuer", "validFrom", "validUntil", "credentialSubject", "proof"}
)
_TYPE = ["VerifiableCredential"]
_ID = re.compile(r"urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
"""RFC 9562, 4 and 5.4: version 4, variant 10."""
_DID = re.compile(r"did:key:z6Mk[1-9A-HJ-NP-Za-km-z]{40,50}")
_STAMP = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})T(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]Z")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_DIGEST = re.compile(r"[0-9a-f]{64}")
_FINGERPRINT = re.compile(r"[A-Z2-7]{4}(?:-[A-Z2-7]{4}){3}")
AROUND = "\t\n\v\f\r \u00a0\u1680\u2028\u2029\u202f\u205f\u3000\ufeff" + "".join(
    map(chr, range(0x2000, 0x200B))
)
"""The blanks that JavaScript's trim() takes off a text; Python's strip() takes off more."""
CONTROLS = r"\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufeff"
"""What no text holds, as in a class of ``re``: C0, C1, line separators, the signs that turn the direction of writing
around, the byte order mark. A name shown with them could be read as another."""
_TEXT = re.compile(rf"(?![{AROUND}])[^{CONTROLS}]{{1,{LONGEST_TEXT}}}(?<![{AROUND}])")


def mistake(document: object) -> str:
    """Say what keeps the document from being a certificate; empty where nothing does. The proof is not looked into."""
    if not isinstance(document, dict) or document.keys() != _MEMBERS:
        return "It has not the members of a certificate."
    if document["@context"] != CONTEXT or document["type"] != _TYPE:
        return "It is a record of another kind."
    if not isinstance(document["proof"], dict):
        return "It has not one proof."
    subject = document["credentialSubject"]
    if not isinstance(subject, dict) or subject.keys() != _SUBJECT.keys():
        return "Its subject has not the members of a certificate."
    for name, right in _SUBJECT.items():
        if not right(subject[name]):
            return f"Its “{name}” is not of the shape that a certificate asks for."
    if not _matches(_ID, document["id"]):
        return "Its id is no UUID of version 4."
    if not _matches(_DID, document["issuer"]):
        return "Its issuer is no did:key of Ed25519."
    if not _is_stamp(document["validFrom"]):
        return "The time from which it holds is none."
    if document["validUntil"] != f"{subject['retrainBy']}T23:59:59Z":
        return "It does not end with the day on which training is due again."
    return at_odds(subject)


def at_odds(subject: Mapping[str, Any]) -> str:
    """Say which members, each of its shape, contradict each other; empty where none do."""
    of = subject["of"]
    supervised = subject["check"] == "supervised"
    observed = subject["practical"] == "observed"
    if subject["marks"] > of:
        return "It has more marks than there are."
    if subject["marks"] * 100 < subject["cut"] * of:
        return "Its marks do not reach the cut."
    if subject["mustPass"][0] != subject["mustPass"][1]:
        return "A must-pass question was missed."
    if supervised != bool(subject["identity"]):
        return "How identity was checked belongs to a supervised check, and to no other."
    if (supervised or observed) != bool(subject["assessor"]):
        return "An assessor belongs to what was supervised or observed, and to nothing else."
    if not observed == bool(subject["observed"]) == bool(subject["observations"]):
        return "The day and the records of observation belong to an observed practical, and to no other."
    return ""


def day_of(value: str) -> date | None:
    """Return the day of a text that is empty or an ISO date; raise ValueError for anything else."""
    return date.fromisoformat(value) if value else None


def _matches(pattern: re.Pattern[str], value: object) -> bool:
    return isinstance(value, str) and pattern.fullmatch(value) is not None


def _is_text(value: object) -> bool:
    return (
        isinstance(value, str)
        and _TEXT.fullmatch(value) is not None
        and (value.isascii() or unicodedata.is_normalized("NFC", value))
    )


def _is_blank_or_text(value: object) -> bool:
    return value == "" or _is_text(value)


def _is_day(value: object) -> bool:
    if not _matches(_DAY, value):
        return False
    try:
        date.fromisoformat(str(value))
    except ValueError:
        return False
    return True


def _is_blank_or_day(value: object) -> bool:
    return value == "" or _is_day(value)


def _is_stamp(value: object) -> bool:
    return _matches(_STAMP, value) and _is_day(str(value)[:10])


def _is_count(value: object) -> bool:
    return type(value) is int and value >= 0


def _is_from_one(value: object) -> bool:
    return type(value) is int and value >= 1


def _is_questions(value: object) -> bool:
    return type(value) is int and value >= 1000 and value % 1000 == 0


def _is_per_cent(value: object) -> bool:
    return type(value) is int and 1 <= value <= 100


def _is_must_pass(value: object) -> bool:
    return isinstance(value, list) and len(value) == 2 and all(map(_is_count, value))


def _is_fingerprint(value: object) -> bool:
    return _matches(_FINGERPRINT, value)


def _is_fingerprints(value: object) -> bool:
    return isinstance(value, list) and len(value) <= MOST_OBSERVATIONS and all(map(_is_fingerprint, value))


_SUBJECT: dict[str, Callable[[object], bool]] = {
    "format": lambda value: value == FORMAT,
    "name": _is_text,
    "person": _is_text,
    "employer": _is_text,
    "workplace": _is_blank_or_text,
    "equipment": _is_text,
    "title": _is_text,
    "course": _is_text,
    "version": _is_text,
    "digest": lambda value: _matches(_DIGEST, value),
    "profile": _is_text,
    "language": _is_text,
    "marks": _is_count,
    "of": _is_questions,
    "cut": _is_per_cent,
    "mustPass": _is_must_pass,
    "check": lambda value: value in ("self-recorded", "supervised"),
    "practical": lambda value: value in ("observed", "not observed"),
    "identity": _is_blank_or_text,
    "trainer": _is_blank_or_text,
    "assessor": _is_blank_or_text,
    "trained": _is_blank_or_day,
    "checked": _is_day,
    "observed": _is_blank_or_day,
    "retrainBy": _is_day,
    "attempt": _is_from_one,
    "fingerprint": _is_fingerprint,
    "observations": _is_fingerprints,
    "example": lambda value: isinstance(value, bool),
}
