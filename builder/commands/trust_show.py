"""``journeybook trust show``: a trust list in words."""

from __future__ import annotations

from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journeybook.commands.passphrase import refusals_said
from journeybook.diagnostics.excerpt import visible
from journeybook.proof.did_key import NotAKey, public_of
from journeybook.proof.key_plate import fingerprint_of

if TYPE_CHECKING:
    from journeybook.proof.trust_list import TrustedKey, TrustList

_FILE = click.Path(path_type=Path, exists=True, dir_okay=False)


@click.command()
@click.argument("file", type=_FILE)
@click.option("--after", type=_FILE, help="The list in use: say whether FILE may replace it.")
def show(file: Path, after: Path | None) -> None:
    """Say in words what a trust list says, and whether its signatures hold."""
    from journeybook.proof.trust_list import Refused, accept
    from journeybook.proof.verdict_words import age, doubt

    found = list_at(file)
    today = datetime.now(UTC).date()
    click.echo(
        f"List no. {found.number} of {visible(found.holder)}, made {found.made}, {_days(age(found, today))} ago."
    )
    if said := doubt(found, today):
        click.echo(said)
    click.echo("Its signatures hold:")
    for did in found.signers:
        click.echo(f"  {_name_of(found, did)}{', who answers for it' if did == found.issuer else ''}")
    click.echo("Keys:")
    for key in found.keys:
        who = f"{visible(key.holder)}, {visible(key.role)}{' (DEMO KEY)' if key.demo else ''}"
        click.echo(f"  {who}: {_state(key, today)}")
        click.echo(f"    {fingerprint_in(key.did)}")
    click.echo(f"Certificates withdrawn: {len(found.withdrawn) or 'none'}")
    for id_, entry in found.withdrawn:
        click.echo(f"  {entry.on}  {visible(id_)}  {visible(entry.reason)}")
    if after is not None:
        try:
            accept(found, list_at(after))
        except Refused as refused:
            raise click.ClickException(f"It may not replace {after}. {refused.detail}") from refused
        click.echo(f"It may replace {after}.")


def list_at(path: Path) -> TrustList:
    """The list in a file, its signatures checked; ends the command where they do not hold."""
    from journeybook.marking.canonical import SIZE_CAP
    from journeybook.proof.trust_list import Refused, read

    with refusals_said():
        try:
            with path.open("rb") as file:
                return read(file.read(SIZE_CAP + 1))
        except Refused as refused:
            raise click.ClickException(f"{path}: {refused.detail}") from refused


def fingerprint_in(did: str) -> str:
    """The fingerprint of a key of a list; in words where the list names what is none, for any signer may write any."""
    try:
        return fingerprint_of(public_of(did))
    except NotAKey:
        return "no key of Ed25519"


def _state(key: TrustedKey, today: date) -> str:
    if key.withdrawn is not None:
        return f"withdrawn on {key.withdrawn.on} ({visible(key.withdrawn.reason)})"
    day = today.isoformat()
    if day < key.from_day:
        return f"signs from {key.from_day} until {key.until}"
    return f"signs until {key.until}" if day <= key.until else f"signed until {key.until}"


def _name_of(found: TrustList, did: str) -> str:
    return next(
        (f"{visible(key.holder)} ({key.from_day} to {key.until})" for key in found.keys if key.did == did),
        did,
    )


def _days(count: int) -> str:
    return f"{count} day{'' if count == 1 else 's'}"
