"""The plate of a key: what everybody may know of it, as lines that a person reads and the key itself has signed.

It stands above the encrypted key in its file (RFC 7468, 2, lets text stand there), and goes alone to whoever keeps the
trust list. The signature says only that whoever has the key wrote these lines; that the holder is who the plate says
is for people to compare, by the fingerprint.
"""

from __future__ import annotations

import base64
import hashlib
import unicodedata
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from journeybook.marking import canonical
from journeybook.marking.kind import Json
from journeybook.proof import base58
from journeybook.proof.data_integrity import public_key
from journeybook.proof.did_key import did_of, public_of

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

FORMAT = "journeybook key plate 1"
FINGERPRINT_BYTES = 20
LONGEST_TEXT = 120
_NAMES = ("Holder", "Role", "From", "Until", "Demo", "Did", "Signature")


class NotAPlate(ValueError):  # noqa: N818 - it says what the text is not
    """A text without a plate, or with one that its key did not sign; the text of the error says why, for people."""


@dataclass(frozen=True, kw_only=True)
class KeyPlate:
    """Whose key it is, and between which days it may sign."""

    did: str
    holder: str
    role: str
    from_day: date
    until: date
    """Both days are included."""
    demo: bool = False

    @property
    def fingerprint(self) -> str:
        """What two people read to each other."""
        return fingerprint_of(public_of(self.did))


def fingerprint_of(public: bytes) -> str:
    """Return 160 bits of SHA-256 of the 32 public bytes: eight groups of four letters of base32 (RFC 4648, 6)."""
    letters = base64.b32encode(hashlib.sha256(public).digest()[:FINGERPRINT_BYTES]).decode("ascii")
    return " ".join(letters[at : at + 4] for at in range(0, len(letters), 4))


def plate_text(plate: KeyPlate, private: Ed25519PrivateKey) -> str:
    """Return the lines of the plate, signed; raise ValueError where the key is another, or a text has no form."""
    if did_of(private.public_key().public_bytes_raw()) != plate.did:
        raise ValueError("a plate is signed by its own key")
    for text in (plate.holder, plate.role):
        if text != line_of(text):
            raise ValueError("a text of a plate is one line")
    signature = "z" + base58.encode(private.sign(_signed(plate)))
    values = (
        plate.holder,
        plate.role,
        plate.from_day.isoformat(),
        plate.until.isoformat(),
        "yes" if plate.demo else "no",
        plate.did,
        signature,
    )
    lines = [f"{name}: {value}" for name, value in zip(_NAMES, values, strict=True)]
    return "\n".join([FORMAT.capitalize(), *lines, ""])


def line_of(text: str, longest: int = LONGEST_TEXT) -> str:
    """Return a text as a plate holds it: NFC, single spaces, printable.

    Raises ValueError where nothing or too much is left.
    """
    found = " ".join(unicodedata.normalize("NFC", text).split())
    if not found or len(found) > longest or not found.isprintable():
        raise ValueError(f"This has to be a text of 1 to {longest} letters.")
    return found


def read_plate(text: str) -> KeyPlate:
    """Return the plate that stands in a text, whatever stands after it; raise NotAPlate."""
    lines = [line.strip() for line in text.lstrip("\ufeff").splitlines()]
    try:
        start = lines.index(FORMAT.capitalize()) + 1
    except ValueError:
        raise NotAPlate("There is no key plate in it.") from None
    found: dict[str, str] = {}
    for name, line in zip(_NAMES, lines[start : start + len(_NAMES)], strict=False):
        if not line.startswith(f"{name}: "):
            raise NotAPlate(f"The line “{name}: …” is missing from the key plate.")
        found[name] = line.removeprefix(f"{name}: ").strip()
    if len(found) < len(_NAMES):
        raise NotAPlate("The key plate is cut short.")
    return _checked(found)


def _checked(found: dict[str, str]) -> KeyPlate:
    from cryptography.exceptions import InvalidSignature

    try:
        plate = KeyPlate(
            did=found["Did"],
            holder=line_of(found["Holder"]),
            role=line_of(found["Role"]),
            from_day=date.fromisoformat(found["From"]),
            until=date.fromisoformat(found["Until"]),
            demo={"yes": True, "no": False}[found["Demo"]],
        )
        signature = base58.decode(found["Signature"].removeprefix("z"))
        public_key(plate.did).verify(signature, _signed(plate))
    except (ValueError, KeyError) as error:
        raise NotAPlate("The key plate is damaged.") from error
    except InvalidSignature as error:
        raise NotAPlate("The key plate was changed after its key signed it.") from error
    return plate


def _signed(plate: KeyPlate) -> bytes:
    facts: dict[str, Json] = {
        "format": FORMAT,
        "did": plate.did,
        "holder": plate.holder,
        "role": plate.role,
        "from": plate.from_day.isoformat(),
        "until": plate.until.isoformat(),
        "demo": plate.demo,
    }
    return canonical.write(facts)
