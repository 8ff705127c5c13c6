"""``journeybook key``: making, keeping and showing the keys that sign certificates."""

from __future__ import annotations

import secrets
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journeybook.commands.key_paper import paper, restore
from journeybook.commands.passphrase import (
    PASSPHRASE_FD,
    new_of_own,
    new_of_words,
    opened,
    passphrase_fd,
    refusals_said,
)
from journeybook.proof.did_key import did_of
from journeybook.proof.key_plate import KeyPlate, NotAPlate, line_of, plate_text, read_plate

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

_FILE = click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
_DAYS_OVER = 31
"""The first month of the next year: nobody has to change keys between the holidays."""


@click.group()
def key() -> None:
    """Make, keep and show the keys that sign certificates."""


def window(year: int, today: date) -> tuple[date, date]:
    """The days between which a key of ``year`` signs: never before it was made, and a month into the next year."""
    return max(today, date(year, 1, 1)), date(year, 12, 31) + timedelta(days=_DAYS_OVER)


@key.command()
@_FILE
@click.option("--holder", required=True, help="Who signs with it, as people know them.")
@click.option("--role", required=True, help="What they are in the firm.")
@click.option("--year", type=click.IntRange(2020, 2199), help="The year it is for; this one unless given.")
@click.option(
    "--demo", is_flag=True, help="A key for trying out; it signs only what is marked as an example."
)
@click.option("--own-words", is_flag=True, help="Think of a passphrase yourself in place of six drawn words.")
@PASSPHRASE_FD
def make(
    file: Path,
    holder: str,
    role: str,
    year: int | None,
    demo: bool,
    own_words: bool,
    passphrase_fd: int | None,
) -> None:
    """Make a key for one signer and one year, and write it to FILE, locked with a passphrase."""
    from journeybook.proof.key_file import KeyRefused, refuse_place, write_key

    today = datetime.now(UTC).date()
    try:
        holder, role = line_of(holder), line_of(role)
    except ValueError as wrong:
        raise click.UsageError(f"--holder and --role: {wrong}") from wrong
    if year is not None and year < today.year:
        raise click.UsageError(f"A key for {year} could sign nothing any more.")
    with refusals_said():
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

        refuse_place(file, [])
        if file.exists():
            raise KeyRefused(
                "there", f"{file} is there already, and a key is never written over. Name another file."
            )
        if not file.absolute().parent.is_dir():
            raise KeyRefused("missing", f"There is no folder {file.absolute().parent}; make it first.")
        own = own_words or passphrase_fd is not None
        passphrase = new_of_own(passphrase_fd) if own else new_of_words()
        seed = secrets.token_bytes(32)
        private = Ed25519PrivateKey.from_private_bytes(seed)
        first, last = window(year or today.year, today)
        plate = KeyPlate(
            did=did_of(private.public_key().public_bytes_raw()),
            holder=holder,
            role=role,
            from_day=first,
            until=last,
            demo=demo,
        )
        write_key(file, seed, passphrase, plate_text(plate, private))
    click.echo(f"\nThe key is in {file}.")
    _tell(plate)
    click.echo("\nNow print its paper back-up for the safe:")
    click.echo(f"  journeybook key paper {file} {file.with_suffix('.paper.html')}")


@key.command()
@_FILE
def show(file: Path) -> None:
    """Show what everybody may know of a key: its plate, and the fingerprint that is read out on the telephone."""
    with refusals_said():
        plate, text = plate_at(file)
    click.echo(text)
    click.echo(f"Fingerprint  {plate.fingerprint}")


@key.command("new-passphrase")
@_FILE
@click.option("--own-words", is_flag=True, help="Think of a passphrase yourself in place of six drawn words.")
@PASSPHRASE_FD
@passphrase_fd("--new-passphrase-fd", "the new passphrase")
def new_passphrase(
    file: Path, own_words: bool, passphrase_fd: int | None, new_passphrase_fd: int | None
) -> None:
    """Put the key in FILE under another passphrase."""
    from journeybook.proof.key_file import write_key

    private = opened(file, passphrase_fd, f"Present passphrase of {file.name}")
    with refusals_said():
        plate, _ = plate_at(file, private)
        own = own_words or new_passphrase_fd is not None
        passphrase = new_of_own(new_passphrase_fd) if own else new_of_words()
        write_key(file, private.private_bytes_raw(), passphrase, plate_text(plate, private), anew=True)
    click.echo(f"\n{file} opens with the new passphrase only.")
    click.echo("Its paper back-up still opens with the old one: print a new one, and destroy the old sheet.")


def plate_at(path: Path, private: Ed25519PrivateKey | None = None) -> tuple[KeyPlate, str]:
    """The plate in a key file, or sent alone, and its lines.

    Raises KeyRefused, also where the plate is not that of the key ``private``.
    """
    from journeybook.proof.key_file import KeyRefused, bytes_of

    try:
        text = bytes_of(path).decode("utf-8")
        plate = read_plate(text)
    except UnicodeDecodeError as error:
        raise KeyRefused("unreadable", f"{path} is not a key file.") from error
    except NotAPlate as error:
        raise KeyRefused("unreadable", f"{path}: {error}") from error
    if private is not None and did_of(private.public_key().public_bytes_raw()) != plate.did:
        raise KeyRefused("kind", f"{path}: the key plate belongs to another key than the one below it.")
    start = text.index("Journeybook key plate 1")
    return plate, text[start:].split("-----BEGIN")[0].strip()


def _tell(plate: KeyPlate) -> None:
    click.echo(f"  Holder       {plate.holder}, {plate.role}{'  (DEMO KEY)' if plate.demo else ''}")
    click.echo(f"  Signs        from {plate.from_day} until {plate.until}")
    click.echo(f"  Name         {plate.did}")
    click.echo(f"  Fingerprint  {plate.fingerprint}")


key.add_command(paper)
key.add_command(restore)
