"""Who may sign: the key against the trust list and against the course. Decides, and touches no file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    from journeybook.proof.key_plate import KeyPlate
    from journeybook.proof.trust_list import TrustList


@dataclass(frozen=True, kw_only=True)
class Signer:
    """A key that was opened, and what its plate says."""

    private: Ed25519PrivateKey
    plate: KeyPlate

    @property
    def did(self) -> str:
        """Its name."""
        return self.plate.did


@dataclass(frozen=True, kw_only=True)
class NoSigning:
    """Why a key does not sign."""

    why: str
    mend: str


def no_signing(
    plate: KeyPlate, trust: TrustList | None, list_name: str, content: Mapping[str, Any], today: date
) -> Iterator[NoSigning]:
    """Yield every reason why the key of ``plate`` does not sign certificates of a course ``today`` (UTC).

    ``trust`` is the site's list, None where it names none; ``content`` is that of compiled.json.
    """
    day, holder = today.isoformat(), plate.holder
    listed = None if trust is None else next((key for key in trust.keys if key.did == plate.did), None)
    if trust is not None and listed is None:
        yield NoSigning(
            why=f"The key of {holder} is not on the trust list {list_name}, so nobody could believe what it signs.",
            mend=f"Add it: `journeybook key show KEY > plate.txt`, then `journeybook trust add {list_name} plate.txt`.",
        )
        return
    if listed is not None and listed.withdrawn is not None:
        yield NoSigning(
            why=f"The key of {holder} was withdrawn on {listed.withdrawn.on}.",
            mend="Sign with another key of the list.",
        )
    first, last = (
        (plate.from_day.isoformat(), plate.until.isoformat())
        if listed is None
        else (max(plate.from_day.isoformat(), listed.from_day), min(plate.until.isoformat(), listed.until))
    )
    if not first <= day <= last:
        mend = (
            "Make this year's key with `journeybook key make`, and add it with `journeybook trust add`."
            if day > last
            else f"Sign on {first} or later, or with another key."
        )
        yield NoSigning(
            why=f"The key of {holder} signs from {first} until {last}, and today is {day} (UTC).", mend=mend
        )
    if not is_demo(plate, trust) and (examples := example_values(content)):
        more = f" and {len(examples) - 3} more" if len(examples) > 3 else ""
        yield NoSigning(
            why="The course still holds example values, so its certificates are not valid for work: "
            f"{', '.join(examples[:3])}{more}.",
            mend="Fill the kit sheet in from your own unit's instructions and release the course again; "
            "or try it out with a key that was made with `journeybook key make --demo`.",
        )


def is_demo(plate: KeyPlate, trust: TrustList | None) -> bool:
    """Return whether the key signs only what is marked as an example."""
    return plate.demo or (trust is not None and any(key.demo for key in trust.keys if key.did == plate.did))


def example_values(content: Mapping[str, Any]) -> list[str]:
    """Return the ids of the values that the course says are invented, in order."""
    return [
        value["id"]
        for sheet in ("kit", "profile")
        for value in content["public"][sheet]["values"]
        if value["example"]
    ]
