"""The usual certificate read in one go: what its bytes say, and the message that its signature is of.

Every certificate that we write has the same members in the same order, so that its canonical text fits one pattern,
and a text that fits is canonical and of the right shape: no member is left to chance. What is signed (W3C Data
Integrity EdDSA Cryptosuites 1.0, 3.3.4) are the canonical bytes without the proof: the same bytes with the proof cut
out. Whatever does not fit is none of this file's business, and is read the long way, which decides; a test holds the
two ways to the same.
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

from journeybook.marking import canonical
from journeybook.proof import base58
from journeybook.proof.certificate import SIZE_CAP, Certificate
from journeybook.proof.certificate_shape import (
    AROUND,
    CONTROLS,
    FORMAT,
    LONGEST_TEXT,
    MOST_OBSERVATIONS,
    at_odds,
)
from journeybook.proof.data_integrity import CONTEXT
from journeybook.proof.did_key import method_of


@dataclass(frozen=True, kw_only=True, slots=True)
class Quick:
    """What the bytes of a certificate say, and what is to be verified."""

    certificate: Certificate
    signature: bytes
    """64 bytes, where they are a signature at all."""
    message: bytes
    """The 64 bytes that were signed, if it is genuine."""


def _members(open_: str, **patterns: str) -> str:
    """The canonical text of an object with these members, each a group of its name."""
    inner = ",".join(f'"{name}":{pattern}' for name, pattern in sorted(patterns.items()))
    return open_ + inner + r"\}"


def _group(name: str, pattern: str) -> str:
    return f'"(?P<{name}>{pattern})"'


# No quote and no backslash inside: only these would be written otherwise than they are.
_WORDS = rf'(?![{AROUND}])[^"\\{CONTROLS}]{{1,{LONGEST_TEXT}}}(?<![{AROUND}])'
_SPACE_OR_WORDS = f"(?:{_WORDS})?"
_DAY = "[0-9]{4}-[0-9]{2}-[0-9]{2}"
_PRINT = "[A-Z2-7]{4}(?:-[A-Z2-7]{4}){3}"
_COUNT = "0|[1-9][0-9]{0,14}"
_UUID = "[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}"
_BASE58 = "[1-9A-HJ-NP-Za-km-z]"
_TEXTS = (
    "name", "person", "employer", "equipment", "title", "course", "version", "profile", "language",
)  # fmt: skip
_MAY_BE_EMPTY = ("workplace", "identity", "trainer", "assessor")
_CONTEXT_TEXT = re.escape(canonical.write(CONTEXT).decode("utf-8"))
_SUBJECT = _members(
    r"\{",
    **{name: _group(name, _WORDS) for name in _TEXTS},
    **{name: _group(name, _SPACE_OR_WORDS) for name in _MAY_BE_EMPTY},
    **{name: _group(name, _DAY) for name in ("checked", "retrainBy")},
    **{name: _group(name, f"(?:{_DAY})?") for name in ("trained", "observed")},
    format=f'"{FORMAT}"',
    digest=_group("digest", "[0-9a-f]{64}"),
    marks=f"(?P<marks>{_COUNT})",
    of="(?P<of>[1-9][0-9]{0,11}000)",
    cut="(?P<cut>[1-9][0-9]?|100)",
    mustPass=rf"\[(?P<right>{_COUNT}),(?P<asked>{_COUNT})\]",
    check=_group("check", "self-recorded|supervised"),
    practical=_group("practical", "observed|not observed"),
    attempt="(?P<attempt>[1-9][0-9]{0,14})",
    fingerprint=_group("fingerprint", _PRINT),
    observations=rf'\[(?P<observations>(?:"{_PRINT}"(?:,"{_PRINT}"){{0,{MOST_OBSERVATIONS - 1}}})?)\]',
    example="(?P<example>true|false)",
)
_RECORD = re.compile(
    rf'\{{"@context":{_CONTEXT_TEXT},"credentialSubject":{_SUBJECT},"id":"(?P<id>urn:uuid:{_UUID})",'
    rf'"issuer":"(?P<issuer>did:key:(?P<key>z6Mk{_BASE58}{{40,50}}))"'
    rf'(?P<rest>,"proof":\{{"@context":{_CONTEXT_TEXT},"cryptosuite":"eddsa-jcs-2022",'
    rf'"proofPurpose":"assertionMethod","proofValue":"z(?P<signature>{_BASE58}{{64,100}})",'
    r'"type":"DataIntegrityProof","verificationMethod":"(?P=issuer)#(?P=key)"\}'
    r'(?P<tail>,"type":\["VerifiableCredential"\],'
    r'"validFrom":"(?P<from>[0-9]{4}-[0-9]{2}-[0-9]{2}T(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]Z)",'
    r'"validUntil":"(?P<until>(?P=retrainBy)T23:59:59Z)"\}))'
)


def quick(record: bytes) -> Quick | None:
    """Return what a certificate's bytes say; None where they do not fit, which says nothing about them."""
    if len(record) > SIZE_CAP:
        return None
    try:
        text = record.decode("utf-8")
    except UnicodeDecodeError:
        return None
    found = _RECORD.fullmatch(text)
    # Every part of a text in form C is in form C (UAX #15, 1.3).
    if found is None or not (text.isascii() or unicodedata.is_normalized("NFC", text)):
        return None
    try:
        certificate = _certificate(found)
        date.fromisoformat(found["from"][:10])
    except ValueError:  # a day that the calendar has not
        return None
    if certificate is None:
        return None
    # The rest and the tail are ASCII, so that they have as many bytes as signs.
    unsigned = record[: -len(found["rest"])] + found["tail"].encode("ascii")
    return Quick(
        certificate=certificate,
        signature=base58.decode(found["signature"]),
        message=_options_digest(certificate.issuer) + hashlib.sha256(unsigned).digest(),
    )


@lru_cache(maxsize=256)
def _options_digest(issuer: str) -> bytes:
    """SHA-256 of the canonical proof without its value, which only the signer's name makes another."""
    return hashlib.sha256(
        canonical.write(
            {
                "@context": CONTEXT,
                "type": "DataIntegrityProof",
                "cryptosuite": "eddsa-jcs-2022",
                "verificationMethod": method_of(issuer),
                "proofPurpose": "assertionMethod",
            }
        )
    ).digest()


def _certificate(found: re.Match[str]) -> Certificate | None:
    """The certificate; None where its members contradict each other. Raises ValueError for a day that is none."""
    said = found.groupdict()
    marks, of, cut = int(said["marks"]), int(said["of"]), int(said["cut"])
    right, asked = int(said["right"]), int(said["asked"])
    observations = tuple(said["observations"][1:-1].split('","')) if said["observations"] else ()
    if at_odds(
        {
            **said,
            "marks": marks,
            "of": of,
            "cut": cut,
            "mustPass": (right, asked),
            "observations": observations,
        }
    ):
        return None
    trained, observed = said["trained"], said["observed"]
    return Certificate(
        id=said["id"],
        issuer=said["issuer"],
        valid_from=said["from"],
        valid_until=said["until"],
        name=said["name"],
        person=said["person"],
        employer=said["employer"],
        workplace=said["workplace"],
        equipment=said["equipment"],
        title=said["title"],
        course=said["course"],
        version=said["version"],
        digest=said["digest"],
        profile=said["profile"],
        language=said["language"],
        marks=marks,
        of=of,
        cut=cut,
        must_pass=(right, asked),
        check=said["check"],
        practical=said["practical"],
        identity=said["identity"],
        trainer=said["trainer"],
        assessor=said["assessor"],
        trained=date.fromisoformat(trained) if trained else None,
        checked=date.fromisoformat(said["checked"]),
        observed=date.fromisoformat(observed) if observed else None,
        retrain_by=date.fromisoformat(said["retrainBy"]),
        attempt=int(said["attempt"]),
        fingerprint=said["fingerprint"],
        observations=observations,
        example=said["example"] == "true",
    )
