"""Who may sign: the key against the trust list and against the course. Decides, and touches no file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from journeybook.proof.key_plate import KeyPlate
    from journeybook.proof.trust_list import TrustList


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
    holder = plate.holder
    # A key may stand in the list more than once, as for two years; what is said against it holds for all of them.
    listed = () if trust is None else trust.keys_of(plate.did)
    if trust is not None and not listed:
        yield NoSigning(
            why=f"The key of {holder} is not on the trust list {list_name}, so nobody could believe what it signs.",
            mend=f"Add it: `journeybook key show KEY > plate.txt`, then `journeybook trust add {list_name} plate.txt "
            "--key FILE`, with the key file of who answers for the list.",
        )
        return
    for key in listed:
        if key.withdrawn is not None:
            yield NoSigning(
                why=f"The key of {holder} was withdrawn on {key.withdrawn.on}.",
                mend="Sign with another key of the list.",
            )
    spans = [(plate.from_day.isoformat(), plate.until.isoformat())]
    yield from _out_of_days(holder, spans, today)
    if listed:
        yield from _out_of_days(f"{holder} on the trust list", [(k.from_day, k.until) for k in listed], today)
    if not is_demo(plate, trust) and (examples := example_values(content)):
        more = f" and {len(examples) - 3} more" if len(examples) > 3 else ""
        yield NoSigning(
            why="The course still holds example values, so its certificates are not valid for work: "
            f"{', '.join(examples[:3])}{more}.",
            mend="Fill the kit sheet in from your own unit's instructions and release the course again; "
            "or try it out with a key that was made with `journeybook key make --demo`.",
        )


def _out_of_days(whose: str, spans: Sequence[tuple[str, str]], today: date) -> Iterator[NoSigning]:
    day = today.isoformat()
    if any(first <= day <= last for first, last in spans):
        return
    told = " and ".join(f"from {first} until {last}" for first, last in spans)
    mend = (
        f"Sign on {spans[0][0]} or later, or with another key."
        if all(day < first for first, _ in spans)
        else "Make this year's key with `journeybook key make`. Whose key answers for the list hands it over with "
        "`journeybook trust renew`, late as well; anybody else's is added with `journeybook trust add`."
    )
    yield NoSigning(why=f"The key of {whose} signs {told}, and today is {day} (UTC).", mend=mend)


def is_demo(plate: KeyPlate, trust: TrustList | None) -> bool:
    """Return whether the key signs only what is marked as an example."""
    return plate.demo or (trust is not None and any(key.demo for key in trust.keys_of(plate.did)))


def example_values(content: Mapping[str, Any]) -> list[str]:
    """Return the ids of the values that the course says are invented, in order."""
    return [
        value["id"]
        for sheet in ("kit", "profile")
        for value in content["public"][sheet]["values"]
        if value["example"]
    ]
