"""``journeybook trust``: the signed list of whose keys a site trusts, and of what was withdrawn."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import UUID

import click

from journeybook.commands.key import plate_at
from journeybook.commands.passphrase import PASSPHRASE_FD, opened, passphrase_fd, refusals_said
from journeybook.commands.trust_show import fingerprint_in, list_at, show
from journeybook.commands.typed import DAY
from journeybook.diagnostics.excerpt import visible
from journeybook.marking.canonical import NotCanonical
from journeybook.proof.did_key import did_of
from journeybook.proof.key_plate import line_of
from journeybook.proof.private_file import put

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    from journeybook.proof.key_plate import KeyPlate
    from journeybook.proof.trust_list import TrustedKey, TrustList

REASONS_OF_KEYS = ("lost", "stolen", "out-of-use")
REASONS_OF_CERTIFICATES = ("mistake", "replaced", "train-again")
"""Words that say nothing of a person: the list is public."""

_FILE = click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
_KEY = click.option(
    "--key",
    "key_file",
    required=True,
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="The key file of who answers for the list.",
)
_ON = click.option("--on", type=DAY, help="The day; today unless given.")


@click.group()
def trust() -> None:
    """Keep the signed list of the keys that a site trusts."""


@trust.command()
@_FILE
@_KEY
@click.option("--holder", required=True, help="The firm that answers for the list, as people know it.")
@click.option(
    "--in-place-of",
    "former_file",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="A list that nobody can sign any more: certificates withdrawn in it stay withdrawn.",
)
@PASSPHRASE_FD
def start(
    file: Path, key_file: Path, holder: str, former_file: Path | None, passphrase_fd: int | None
) -> None:
    """Begin a list in FILE, with the key of who answers for it."""
    from journeybook.proof.trust_list import TrustList

    if file.exists():
        raise click.ClickException(
            f"{file} is there already, and a list is never begun over one. Name another file."
        )
    try:
        holder = line_of(holder)
    except ValueError as wrong:
        raise click.UsageError(f"--holder: {wrong}") from wrong
    former = list_at(former_file) if former_file else None
    private = opened(key_file, passphrase_fd)
    with refusals_said():
        plate, _ = plate_at(key_file, private)
    made = TrustList(
        issuer=plate.did,
        holder=holder,
        number=1,
        made=_now(),
        keys=(_entry(plate),),
        # Without them, what was taken back would be genuine again.
        withdrawn=former.withdrawn if former else (),
    )
    _write(file, made, private)
    click.echo(f"{file}: list no. 1 of {holder}, with the key of {plate.holder}.")
    if former:
        click.echo(
            f"Certificates withdrawn, as in {former_file}: {len(former.withdrawn)}. Its keys are not in it: add each "
            "that was not withdrawn with `journeybook trust add`."
        )
    click.echo(
        f"Name it in mkdocs.yml, below `courses` of the plugin and indented like it: trust: {file.name}"
    )


@trust.command()
@_FILE
@click.argument("plate_file", metavar="PLATE", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@_KEY
@click.option("--fingerprint", help="What the holder read to you, in place of the question.")
@PASSPHRASE_FD
def add(
    file: Path, plate_file: Path, key_file: Path, fingerprint: str | None, passphrase_fd: int | None
) -> None:
    """Add the key of another signer, from the PLATE that they sent (what `journeybook key show` prints)."""
    current = list_at(file)
    with refusals_said():
        plate, _ = plate_at(plate_file)
    if any(key.did == plate.did for key in current.keys):
        raise click.ClickException(f"The key of {plate.holder} is in the list already.")
    _compare(plate, fingerprint)
    private = opened(key_file, passphrase_fd)
    _changed(file, current, private, lambda now: replace(now, keys=(*now.keys, _entry(plate))))
    click.echo(f"Added: {plate.holder}, {plate.role}, {plate.from_day} to {plate.until}.")


@trust.command()
@_FILE
@_KEY
@click.option(
    "--new-key",
    "new_file",
    required=True,
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="The key file that takes over.",
)
@PASSPHRASE_FD
@passphrase_fd("--new-passphrase-fd", "the passphrase of the new key")
def renew(
    file: Path, key_file: Path, new_file: Path, passphrase_fd: int | None, new_passphrase_fd: int | None
) -> None:
    """Hand the list over to next year's key: signed by the old one and the new one."""
    current = list_at(file)
    private = opened(key_file, passphrase_fd)
    following = opened(new_file, new_passphrase_fd)
    with refusals_said():
        plate, _ = plate_at(new_file, following)
    if did_of(private.public_key().public_bytes_raw()) == plate.did:
        raise click.ClickException(
            "The old key and the new one are the same. Make a new one with journeybook key make."
        )
    known = any(key.did == plate.did for key in current.keys)

    def handed(now: TrustList) -> TrustList:
        return replace(now, issuer=plate.did, keys=now.keys if known else (*now.keys, _entry(plate)))

    _changed(file, current, following, handed, private)
    click.echo(f"The list is answered for by the key of {plate.holder}, {plate.from_day} to {plate.until}.")
    click.echo("The old key stays in it: what it signed stays genuine.")


@trust.command("withdraw-key")
@_FILE
@click.argument("named", metavar="KEY")
@_KEY
@_ON
@click.option("--reason", required=True, type=click.Choice(REASONS_OF_KEYS))
@PASSPHRASE_FD
def withdraw_key(
    file: Path, named: str, key_file: Path, on: datetime | None, reason: str, passphrase_fd: int | None
) -> None:
    """Withdraw the KEY with that name (did:key:…) or fingerprint: nothing that it signed counts any more."""
    from journeybook.proof.trust_list import Withdrawal

    current = list_at(file)
    found = _named(current, named)
    if found.withdrawn:
        raise click.ClickException(
            f"The key of {visible(found.holder)} was withdrawn on {found.withdrawn.on} already."
        )
    private = opened(key_file, passphrase_fd)
    if did_of(private.public_key().public_bytes_raw()) == found.did:
        raise click.ClickException(
            "A key does not withdraw itself: nobody could vouch for the next list. "
            "Hand the list over with journeybook trust renew first, or sign with another key of the list."
        )
    day = _day(on)

    def without(now: TrustList) -> TrustList:
        entry = replace(found, withdrawn=Withdrawal(on=day, reason=reason))
        return replace(now, keys=tuple(entry if key.did == found.did else key for key in now.keys))

    _changed(file, current, private, without)
    click.echo(
        f"Withdrawn on {day}: the key of {visible(found.holder)}, {found.from_day} to {found.until} ({reason})."
    )
    click.echo("Certificates that it signed say *withdrawn* from now on; sign again those that are right.")


@trust.command()
@_FILE
@click.argument("ids", metavar="CERTIFICATE…", nargs=-1, required=True)
@_KEY
@_ON
@click.option("--reason", required=True, type=click.Choice(REASONS_OF_CERTIFICATES))
@PASSPHRASE_FD
def withdraw(
    file: Path,
    ids: tuple[str, ...],
    key_file: Path,
    on: datetime | None,
    reason: str,
    passphrase_fd: int | None,
) -> None:
    """Withdraw each CERTIFICATE: its PDF or record, or the id that stands on its paper.

    A withdrawal stands for ever, and what is built from the list afterwards says it of every copy.
    """
    from journeybook.proof.trust_list import Withdrawal

    current = list_at(file)
    wanted = list(dict.fromkeys(_certificate(text, current) for text in ids))
    for each in wanted:
        if (before := current.withdrawal_of(each)) is not None:
            raise click.ClickException(f"{each} was withdrawn on {before.on} already.")
    private = opened(key_file, passphrase_fd)
    entry = Withdrawal(on=_day(on), reason=reason)

    def without(now: TrustList) -> TrustList:
        return replace(now, withdrawn=(*now.withdrawn, *((each, entry) for each in wanted)))

    _changed(file, current, private, without)
    for each in wanted:
        click.echo(f"Withdrawn on {entry.on}: {each} ({reason}).")


def _entry(plate: KeyPlate) -> TrustedKey:
    from journeybook.proof.trust_list import TrustedKey

    return TrustedKey(
        did=plate.did,
        holder=plate.holder,
        role=plate.role,
        from_day=plate.from_day.isoformat(),
        until=plate.until.isoformat(),
        demo=plate.demo,
    )


def _compare(plate: KeyPlate, said: str | None) -> None:
    """Somebody has to hear from the holder that the key is theirs: the plate alone says what its maker wanted."""
    if said is not None:
        if "".join(said.upper().replace("-", " ").split()) != plate.fingerprint.replace(" ", ""):
            raise click.ClickException(
                "That is another fingerprint than that of the plate. Nothing was added."
            )
        return
    click.echo(f"Holder       {plate.holder}, {plate.role}{'  (DEMO KEY)' if plate.demo else ''}")
    click.echo(f"Signs        from {plate.from_day} until {plate.until}")
    click.echo(f"Fingerprint  {plate.fingerprint}")
    if not click.confirm("Has the holder read you that fingerprint, by telephone or in person?"):
        raise click.ClickException("Nothing was added.")


def _named(current: TrustList, named: str) -> TrustedKey:
    plain = "".join(named.upper().replace("-", " ").split())
    for key in current.keys:
        if key.did == named or fingerprint_in(key.did).replace(" ", "") == plain:
            return key
    raise click.ClickException(
        "No key of the list has that name or fingerprint; journeybook trust show lists them."
    )


def _certificate(text: str, current: TrustList) -> str:
    """The id that somebody typed, or of the file that they named."""
    if Path(text).is_file():
        return _in_file(Path(text), current)
    try:
        return f"urn:uuid:{UUID(text.strip().removeprefix('urn:uuid:'))}"
    except ValueError as error:
        raise click.UsageError(
            f"{text!r} is no id of a certificate, such as urn:uuid:3f0c…, and there is no such file. "
            "Name the PDF, its record, or the id in the foot of the paper."
        ) from error


def _in_file(path: Path, current: TrustList) -> str:
    """The id of the certificate that a file is or holds: a slip in 36 copied letters would stand for ever."""
    from journeybook.proof.presented import record_in
    from journeybook.proof.record_in_pdf import PDF_CAP
    from journeybook.proof.verdict import verdict

    try:
        with path.open("rb") as file:
            data = file.read(PDF_CAP + 1)
    except OSError as refused:
        raise click.ClickException(f"{path} cannot be read: {refused.strerror or refused}.") from refused
    found = verdict(record_in(data), current, datetime.now(UTC).date()) if len(data) <= PDF_CAP else None
    if found is None or found.certificate is None or found.kind in ("altered", "unknown-signer"):
        raise click.ClickException(
            f"{path} holds no certificate as a key of this list signed it. Nothing was withdrawn."
        )
    click.echo(
        f"{visible(str(path))}: {visible(found.certificate.name)} ({visible(found.certificate.person)})."
    )
    return found.certificate.id


def _changed(
    file: Path,
    current: TrustList,
    private: Ed25519PrivateKey,
    change: Callable[[TrustList], TrustList],
    *before: Ed25519PrivateKey,
) -> None:
    """Write the next list, if those who use the current one would take it."""
    from journeybook.proof.trust_list import Refused, accept, read, write

    following = replace(
        change(current),
        issuer=did_of(private.public_key().public_bytes_raw()),
        number=current.number + 1,
        # A clock that was set back would date the list before the one it replaces, and hide how old either is.
        made=max(_now(), current.made),
    )
    try:
        data = write(following, private, *before)
        accept(read(data), current)
    except (NotCanonical, Refused) as refused:
        raise click.ClickException(f"{file} stays as it is. {refused.detail}") from refused
    if list_at(file) != current:
        raise click.ClickException(
            f"{file} stays as it is: somebody else has changed it meanwhile, and theirs would be lost. Run this again."
        )
    put(file, data, for_everybody=True)
    click.echo(f"{file}: list no. {following.number} in place of no. {current.number}. Build the site again.")


def _write(file: Path, made: TrustList, private: Ed25519PrivateKey) -> None:
    from journeybook.proof.trust_list import write

    put(file, write(made, private), for_everybody=True)


def _day(on: datetime | None) -> str:
    today = datetime.now(UTC).date()
    day: date = on.date() if on else today
    if day > today:
        raise click.UsageError(f"--on {day} is still to come.")
    return day.isoformat()


def _now() -> str:
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


trust.add_command(show)
