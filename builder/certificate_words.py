"""The words of the printed certificate: from the signed certificate and the course that it names, and nothing else.

So a lost paper can be set again from its record, the same to the byte.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from datetime import date
from typing import Any

from journeybook.content.markup import render_plain
from journeybook.paper.certificate_sheet import CertificateSheet
from journeybook.proof.certificate import Certificate
from journeybook.proof.certificate_shape import LONGEST_TEXT
from journeybook.proof.did_key import public_of
from journeybook.proof.key_plate import fingerprint_of
from journeybook.sittings.earned import told_apart

_LANGUAGES = {
    "cs": "čeština", "da": "dansk", "de": "Deutsch", "en": "English", "es": "español", "fr": "français",
    "hu": "magyar", "it": "italiano", "lt": "lietuvių", "nl": "Nederlands", "pl": "polski", "pt": "português",
    "ro": "română", "sk": "slovenčina", "tr": "Türkçe", "uk": "українська",
}  # fmt: skip
"""What a language calls itself; others are named by their tag."""


def sheet_of(
    certificate: Certificate, content: Mapping[str, Any], *, holder: str, role: str
) -> CertificateSheet:
    """Return the words of a certificate's paper.

    ``content`` is that of the compiled course whose digest it names; ``holder`` and ``role`` are its signer's.
    """
    public = content["public"]
    texts = in_language(public["texts"], certificate.language, content)
    # One name for both, or for the only one: a name that looks like two says nothing of a practical nobody saw.
    both = certificate.check == "supervised" and certificate.practical == "observed"
    assessor, observer = told_apart(certificate.assessor) if both else (certificate.assessor, "")
    return CertificateSheet(
        id=certificate.id,
        tongue=certificate.language,
        language=_LANGUAGES.get(certificate.language.split("-")[0].lower(), certificate.language),
        issuer=f"{holder}, {role}",
        issuer_place=", ".join(
            part for part in (public["issuer"]["name"], public["issuer"]["place"]) if part
        ),
        key=fingerprint_of(public_of(certificate.issuer)),
        issued=date.fromisoformat(certificate.valid_from[:10]),
        name=certificate.name,
        person=certificate.person,
        employer=certificate.employer,
        workplace=certificate.workplace,
        equipment=certificate.equipment,
        title=certificate.title,
        version=certificate.version,
        digest=certificate.digest,
        profile=plain(in_language(public["profile"]["texts"], certificate.language, content)["title"]),
        outcomes=tuple(plain(texts["outcomes"][each]) for each in public["outcomes"]),
        marks=certificate.marks,
        of=certificate.of,
        cut=certificate.cut,
        must_pass=certificate.must_pass,
        attempt=certificate.attempt,
        supervised=certificate.check == "supervised",
        identity=certificate.identity,
        observed=certificate.observed,
        practicals=tuple(
            plain(in_language(practical["texts"], certificate.language, content)["title"])
            for practical in public["practicals"].values()
        ),
        trainer=certificate.trainer,
        assessor=assessor,
        observer=observer,
        trained=certificate.trained,
        checked=certificate.checked,
        retrain_by=certificate.retrain_by,
        fingerprint=certificate.fingerprint,
        observations=certificate.observations,
        cautions=tuple(map(plain, texts["cautions"])),
        contact=", ".join(
            filter(None, (plain(public["contact"][part]) for part in ("name", "role", "reach")))
        ),
        limits=tuple(map(plain, texts["does-not-prove"])),
        example=certificate.example,
    )


def in_language(texts: Mapping[str, Any], language: str, content: Mapping[str, Any]) -> Any:
    """Return what stands in a language, or in the one that the course was written in."""
    return texts.get(language, texts[content["languages"][0]])


def plain(text: str) -> str:
    """Return the words of a text of the course, on one line and without marks."""
    return " ".join(unicodedata.normalize("NFC", render_plain(text)).split())


def fitted(text: str) -> str:
    """Return the same, cut to the length that a certificate holds."""
    words = plain(text)
    return words if len(words) <= LONGEST_TEXT else words[: LONGEST_TEXT - 1].rstrip() + "…"
