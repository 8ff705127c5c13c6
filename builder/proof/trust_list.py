"""The signed list of the keys a site trusts, and of the certificates withdrawn.

A credential (W3C VC Data Model 2.0) whose subject is ``journeybook trust list 1``, signed by its issuer and, when the
issuer's key changes, by the key before it too.
Twin of ``site_overrides/js/pure/trust-list.js``: both take the same texts.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal

from journeybook.marking import canonical
from journeybook.marking.kind import Json
from journeybook.proof.certificate_shape import AROUND
from journeybook.proof.data_integrity import CONTEXT, NotGenuine, sign, verify_all
from journeybook.proof.did_key import did_of

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

FORMAT = "journeybook trust list 1"
_DID = re.compile(r"did:key:z6Mk[1-9A-HJ-NP-Za-km-z]{40,50}")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_STAMP = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")

Reason = Literal["unreadable", "altered", "older", "stranger", "none-before"]
_SENTENCES: dict[Reason, str] = {
    "unreadable": "This is not a trust list.",
    "altered": "The trust list is not as its issuer signed it.",
    "older": "The trust list is not newer than the one in use.",
    "stranger": "The trust list is not signed by a key that the one in use trusts.",
    "none-before": "No trust list is in use that could vouch for this one.",
}


class Refused(ValueError):  # noqa: N818 - what happened to the list
    """A text that is no trust list, one whose signatures do not hold, or one that may not replace the list in use."""

    def __init__(self, reason: Reason) -> None:
        """Keep why: ``reason`` for programs, the same as in JavaScript; ``detail`` a sentence for people."""
        self.reason = reason
        self.detail = _SENTENCES[reason]
        super().__init__(self.detail)


@dataclass(frozen=True, kw_only=True)
class Withdrawal:
    """When a key or a certificate was withdrawn, and why."""

    on: str
    """ISO date."""
    reason: str


@dataclass(frozen=True, kw_only=True)
class TrustedKey:
    """A key that may sign certificates between two days, both included."""

    did: str
    holder: str
    """As people know them."""
    role: str
    from_day: str
    until: str
    withdrawn: Withdrawal | None = None
    demo: bool = False
    """Whether the key is a published one, which anybody can sign with."""


@dataclass(frozen=True, kw_only=True)
class TrustList:
    """What a trust list says."""

    issuer: str
    """Did of the key that answers for the list."""
    holder: str
    """The issuer's name as people know it."""
    number: int
    """Each list of an issuer has a higher one than the list before."""
    made: str
    """RFC 3339 UTC stamp in whole seconds."""
    keys: tuple[TrustedKey, ...] = ()
    withdrawn: tuple[tuple[str, Withdrawal], ...] = ()
    """Ids of certificates (``urn:uuid:…``) with their withdrawal."""
    signers: tuple[str, ...] = ()
    """Dids whose signature on the list was checked; empty for a list that was not read."""

    @property
    def date(self) -> str:
        """ISO date of the day the list was made: withdrawals are known up to it."""
        return self.made[:10]

    def key_of(self, did: str, day: str) -> TrustedKey | None:
        """Return the key that ``did`` is on that ISO date, or None."""
        return next((key for key in self.keys_of(did) if key.from_day <= day <= key.until), None)

    def withdrawal_of(self, certificate_id: str) -> Withdrawal | None:
        """Return when and why the certificate was withdrawn; None where it was not."""
        return self._withdrawals.get(certificate_id)

    def keys_of(self, did: str) -> tuple[TrustedKey, ...]:
        """Return every entry of that key, in the order of the list."""
        return self._entries.get(did, ())

    @cached_property
    def _withdrawals(self) -> dict[str, Withdrawal]:
        # The first entry of an id counts.
        return dict(reversed(self.withdrawn))

    @cached_property
    def _entries(self) -> dict[str, tuple[TrustedKey, ...]]:
        entries: dict[str, tuple[TrustedKey, ...]] = {}
        for key in self.keys:
            entries[key.did] = (*entries.get(key.did, ()), key)
        return entries


def read(data: bytes) -> TrustList:
    """Return the list that ``data`` holds, its signatures checked; raise Refused."""
    try:
        document: Any = canonical.read(data.decode("utf-8").strip(AROUND).encode("utf-8"))
    except (UnicodeDecodeError, canonical.NotCanonical) as error:
        raise Refused("unreadable") from error
    if not _is_list(document):
        raise Refused("unreadable")
    try:
        signers = verify_all(document)
    except NotGenuine as error:
        raise Refused("altered") from error
    subject = document["credentialSubject"]
    return TrustList(
        issuer=document["issuer"],
        holder=subject["holder"],
        number=subject["number"],
        made=document["validFrom"],
        keys=tuple(_key(each) for each in subject["keys"]),
        withdrawn=tuple((each["id"], _withdrawal(each)) for each in subject["withdrawn"]),
        signers=signers,
    )


def write(trust: TrustList, private: Ed25519PrivateKey, *before: Ed25519PrivateKey) -> bytes:
    """Return the canonical bytes of the list, signed by its issuer and by the keys ``before`` that vouch for it.

    Raises ValueError where ``private`` is not the issuer's, and Refused where the list could not be read again.
    """
    if did_of(private.public_key().public_bytes_raw()) != trust.issuer:
        raise ValueError("A trust list is signed by its issuer.")
    data = canonical.write(sign(_document(trust), private, *before))
    read(data)
    return data


def accept(newer: TrustList, current: TrustList | None) -> None:
    """Raise Refused unless ``newer`` may replace ``current``: a higher number, no earlier day, signed by a trusted key.

    That is its issuer's, or another that may sign on the day of the newer list; none that is withdrawn, and no demo key
    beside the issuer's. So a second key of the firm helps where the first is lost. Where no list is in use, nothing can
    vouch for one that somebody brings along. An earlier day would let a key that has run out vouch for what is new.
    """
    if current is None:
        raise Refused("none-before")
    if newer.number <= current.number or newer.date < current.date:
        raise Refused("older")
    if not any(_vouches(current, did, newer.date) for did in newer.signers):
        raise Refused("stranger")


def _vouches(current: TrustList, did: str, day: str) -> bool:
    known = [key for key in current.keys if key.did == did]
    if any(key.withdrawn for key in known):
        return False
    # The issuer's key vouches beyond its dates as well: a list that was renewed late is not a stranger's.
    return did == current.issuer or any(key.from_day <= day <= key.until and not key.demo for key in known)


def _document(trust: TrustList) -> dict[str, Json]:
    keys: list[Json] = [
        {
            "did": key.did,
            "holder": key.holder,
            "role": key.role,
            "from": key.from_day,
            "until": key.until,
            "withdrawn": None
            if key.withdrawn is None
            else {"on": key.withdrawn.on, "reason": key.withdrawn.reason},
            "demo": key.demo,
        }
        for key in trust.keys
    ]
    withdrawn: list[Json] = [
        {"id": id_, "on": entry.on, "reason": entry.reason} for id_, entry in trust.withdrawn
    ]
    return {
        "@context": CONTEXT,
        "type": ["VerifiableCredential"],
        "issuer": trust.issuer,
        "validFrom": trust.made,
        "credentialSubject": {
            "format": FORMAT,
            "holder": trust.holder,
            "number": trust.number,
            "keys": keys,
            "withdrawn": withdrawn,
        },
    }


def _is_list(document: Any) -> bool:
    subject = document.get("credentialSubject") if isinstance(document, dict) else None
    return (
        isinstance(subject, dict)
        and subject.get("format") == FORMAT
        and _matches(_DID, document.get("issuer"))
        and _matches(_STAMP, document.get("validFrom"))
        and isinstance(subject.get("holder"), str)
        and type(subject.get("number")) is int
        and _all(subject.get("keys"), _is_key)
        and _all(
            subject.get("withdrawn"), lambda each: isinstance(each.get("id"), str) and _is_withdrawal(each)
        )
    )


def _is_key(key: dict[str, Any]) -> bool:
    withdrawn = key.get("withdrawn", "")
    return (
        _matches(_DID, key.get("did"))
        and isinstance(key.get("holder"), str)
        and _matches(_DAY, key.get("from"))
        and _matches(_DAY, key.get("until"))
        and isinstance(key.get("demo"), bool)
        and (withdrawn is None or (isinstance(withdrawn, dict) and _is_withdrawal(withdrawn)))
    )


def _is_withdrawal(entry: dict[str, Any]) -> bool:
    return _matches(_DAY, entry.get("on"))


def _all(entries: object, right: Callable[[dict[str, Any]], bool]) -> bool:
    return isinstance(entries, list) and all(isinstance(each, dict) and right(each) for each in entries)


def _matches(pattern: re.Pattern[str], value: object) -> bool:
    return isinstance(value, str) and pattern.fullmatch(value) is not None


def _key(entry: dict[str, Any]) -> TrustedKey:
    return TrustedKey(
        did=entry["did"],
        holder=entry["holder"],
        role=_text(entry.get("role")),
        from_day=entry["from"],
        until=entry["until"],
        withdrawn=None if entry["withdrawn"] is None else _withdrawal(entry["withdrawn"]),
        demo=entry["demo"],
    )


def _withdrawal(entry: dict[str, Any]) -> Withdrawal:
    return Withdrawal(on=entry["on"], reason=_text(entry.get("reason")))


def _text(value: object) -> str:
    """A word for people that decides nothing: what is no text is left out."""
    return value if isinstance(value, str) else ""
