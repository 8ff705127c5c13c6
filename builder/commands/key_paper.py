"""``journeybook key paper`` and ``key restore``: a key into the safe, and back out of it."""

from __future__ import annotations

import tempfile
from datetime import UTC, date, datetime
from pathlib import Path

import click

from journeybook.commands.passphrase import PASSPHRASE_FD, opened_by, refusals_said
from journeybook.paper.press import SIZES, NoPress, NotSet
from journeybook.proof.did_key import did_of
from journeybook.proof.key_plate import KeyPlate, NotAPlate, line_of, plate_text, read_plate
from journeybook.proof.private_file import put

_DAY = click.DateTime(["%Y-%m-%d"])
_PAPER_CAP = 64 << 10


@click.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.argument("sheet", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--paper", "size", type=click.Choice(SIZES), default=SIZES[0], show_default=True, help="For a PDF."
)
def paper(file: Path, sheet: Path, size: str) -> None:
    """Write a SHEET to print for the safe: the key in FILE, still locked, as a code and as rows to type.

    SHEET is a PDF where its name ends in .pdf, and an HTML file otherwise.
    """
    from journeybook.proof import key_paper
    from journeybook.proof.key_file import KeyRefused, bytes_of, refuse_place

    with refusals_said():
        refuse_place(sheet, [])
        if sheet.exists():
            raise KeyRefused("there", f"{sheet} is there already. Name another file.")
        try:
            text = bytes_of(file).decode("utf-8")
            plate = read_plate(text)
            now = datetime.now(UTC)
            made = (
                _pdf(text, plate, now, size)
                if sheet.suffix.lower() == ".pdf"
                else key_paper.paper(text, plate, plate.did, plate.fingerprint, now.date().isoformat())
            )
        except (UnicodeDecodeError, NotAPlate, key_paper.PaperWrong) as error:
            raise KeyRefused("unreadable", f"{file} is not a key file with its plate.") from error
    put(sheet, made)
    click.echo(f"Print {sheet} on one page, and seal it in an envelope for the safe.")
    click.echo("Then delete the file. The passphrase belongs in another place than the sheet.")


def _pdf(key_file: str, plate: KeyPlate, now: datetime, size: str) -> bytes:
    """The sheet as PDF: what the key is in plain words, because papers know nothing of keys."""
    from journeybook.paper.key_paper import KeyOnPaper, key_pdf
    from journeybook.proof.key_paper import code_of, der_of, rows_of

    sheet = KeyOnPaper(
        holder=plate.holder,
        role=plate.role,
        from_day=plate.from_day.isoformat(),
        until=plate.until.isoformat(),
        demo=plate.demo,
        did=plate.did,
        fingerprint=plate.fingerprint,
        rows=rows_of(der_of(key_file)),
        code=code_of(key_file),
        printed=now.date().isoformat(),
    )
    try:
        return key_pdf(sheet, made=now, paper=size)
    except (NoPress, NotSet) as refused:
        cure = "" if isinstance(refused, NotSet) else " Or name a file that ends in .html, and print that."
        raise click.ClickException(f"{refused}{cure}") from refused


@click.command()
@click.argument("text_file", metavar="PAPER", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--holder", help="As on the sheet; needed when the rows were typed.")
@click.option("--role", help="As on the sheet; needed when the rows were typed.")
@click.option("--from", "from_day", type=_DAY, help="As on the sheet; needed when the rows were typed.")
@click.option("--until", type=_DAY, help="As on the sheet; needed when the rows were typed.")
@click.option("--demo", is_flag=True, help="When the sheet says that it is a demo key.")
@PASSPHRASE_FD
def restore(
    text_file: Path,
    file: Path,
    holder: str | None,
    role: str | None,
    from_day: datetime | None,
    until: datetime | None,
    demo: bool,
    passphrase_fd: int | None,
) -> None:
    """Write FILE again from PAPER: the text of the sheet's code, or its rows as somebody typed them."""
    from journeybook.proof import key_paper
    from journeybook.proof.key_file import KeyRefused, refuse_place, write_key

    with refusals_said():
        refuse_place(file, [])
        if file.exists():
            raise KeyRefused(
                "there", f"{file} is there already, and a key is never written over. Name another file."
            )
        try:
            with text_file.open("rb") as opened_file:
                text = opened_file.read(_PAPER_CAP).decode("utf-8-sig")
            locked = key_paper.pem_of(text)
        except UnicodeDecodeError as error:
            raise KeyRefused("unreadable", f"{text_file} is not text.") from error
        except key_paper.PaperWrong as error:
            raise KeyRefused("unreadable", f"{text_file}: {error}") from error
    plate = _plate_in(text)
    typed = None if plate else _as_printed(holder, role, from_day, until)
    # The key is opened where nobody else reads it, and only what opens is kept.
    with tempfile.TemporaryDirectory() as folder:
        trial = Path(folder) / file.name
        trial.write_bytes(locked)
        try:
            private, passphrase = opened_by(trial, passphrase_fd, "Passphrase of the key on the paper")
        except click.ClickException as refused:
            # The trial's own path means nothing to anybody.
            raise click.ClickException(
                refused.message.replace(str(trial), "the key on the paper")
            ) from refused
    did = did_of(private.public_key().public_bytes_raw())
    if plate is None:
        assert typed is not None
        plate = KeyPlate(
            did=did, holder=typed[0], role=typed[1], from_day=typed[2], until=typed[3], demo=demo
        )
    with refusals_said():
        if plate.did != did:
            raise KeyRefused(
                "kind", f"{text_file}: the key plate belongs to another key than the one below it."
            )
        write_key(file, private.private_bytes_raw(), passphrase, plate_text(plate, private))
    click.echo(f"The key is back in {file}, under its passphrase.")
    click.echo(f"  Fingerprint  {plate.fingerprint}")
    click.echo(f"Compare that with the sheet. Then delete {text_file}.")


def _as_printed(
    holder: str | None, role: str | None, from_day: datetime | None, until: datetime | None
) -> tuple[str, str, date, date]:
    """What was given of the sheet's lines, all of which are needed."""
    if holder is None or role is None or from_day is None or until is None:
        raise click.UsageError(
            "The key plate is not in the text; give --holder, --role, --from and --until as printed."
        )
    try:
        return line_of(holder), line_of(role), from_day.date(), until.date()
    except ValueError as wrong:
        raise click.UsageError(f"--holder and --role: {wrong}") from wrong


def _plate_in(text: str) -> KeyPlate | None:
    try:
        return read_plate(text)
    except NotAPlate:
        return None
