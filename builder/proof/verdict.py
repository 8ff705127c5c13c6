"""What can be said of a certificate: one of seven verdicts.

In this order, so that the graver thing is said:
1. ``unreadable``: no certificate, or not in its one form;
2. ``altered``: not what its issuer signed;
3. ``unknown-signer``: the list in use does not name the key, or there is no list;
4. ``withdrawn``: the certificate or its key was taken back, whenever it was signed, because a thief can write any date;
   a key of the list that signed outside its days is unknown for that day;
5. ``out-of-date``: the day is before the first or after the last. The first is a day of UTC, which is tomorrow
   where it is still the evening before; so the day before it is taken for the first;
6. ``example``: made to try things out, or with a key that is published;
7. ``genuine``.
Twin of ``site_overrides/js/pure/verdict.js``; tests/vectors/proof/verdicts.json holds both to this.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

from journeybook.marking.kind import Json
from journeybook.proof.certificate import Certificate, NotACertificate, of_document, parsed
from journeybook.proof.data_integrity import NotGenuine, public_key, verify
from journeybook.proof.quick_certificate import Quick, quick
from journeybook.proof.trust_list import TrustedKey, TrustList, Withdrawal

Kind = Literal["genuine", "example", "unknown-signer", "out-of-date", "withdrawn", "altered", "unreadable"]


@dataclass(frozen=True, kw_only=True)
class Verdict:
    """What was found."""

    kind: Kind
    certificate: Certificate | None
    """None where it is unreadable. Where it is altered, nothing in it can be relied on."""
    key: TrustedKey | None
    """The signer as the list in use names it; None where it does not, or none was looked for."""
    withdrawn: Withdrawal | None
    """Where it is withdrawn: since when and why."""


def verdict(record: bytes, trust: TrustList | None, today: date) -> Verdict:
    """Return the verdict on the bytes of a certificate, by a list that was read (its signatures checked) or none."""
    fits = quick(record)
    if fits is not None:
        certificate, holds = fits.certificate, _is_signed(fits)
    else:
        try:
            document = parsed(record)
        except NotACertificate:
            return Verdict(kind="unreadable", certificate=None, key=None, withdrawn=None)
        certificate, holds = of_document(document), _is_genuine(document)
    if not holds:
        return Verdict(kind="altered", certificate=certificate, key=None, withdrawn=None)
    return _trusted(certificate, trust, today)


def _is_signed(fits: Quick) -> bool:
    from cryptography.exceptions import InvalidSignature

    try:
        public_key(fits.certificate.issuer).verify(fits.signature, fits.message)
    except (NotGenuine, InvalidSignature):
        return False
    return True


def _is_genuine(document: Mapping[str, Json]) -> bool:
    try:
        verify(document)
    except NotGenuine:
        return False
    return True


def _trusted(certificate: Certificate, trust: TrustList | None, today: date) -> Verdict:
    day = certificate.valid_from[:10]
    known = trust.keys_of(certificate.issuer) if trust else ()
    # A key may stand in the list more than once, as for two years; what is said against it holds for all of them.
    key = trust.key_of(certificate.issuer, day) if trust else None
    if trust and known:
        lost = next((each for each in known if each.withdrawn), None)
        withdrawn = trust.withdrawal_of(certificate.id) or (lost.withdrawn if lost else None)
        if withdrawn:
            return Verdict(
                kind="withdrawn", certificate=certificate, key=key or lost or known[0], withdrawn=withdrawn
            )
    if key is None:
        return Verdict(kind="unknown-signer", certificate=certificate, key=None, withdrawn=None)
    kind: Kind = "genuine"
    if today.toordinal() < date.fromisoformat(day).toordinal() - 1 or today > certificate.retrain_by:
        kind = "out-of-date"
    elif certificate.example or any(each.demo for each in known):
        kind = "example"
    return Verdict(kind=kind, certificate=certificate, key=key, withdrawn=None)
