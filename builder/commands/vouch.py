"""``journeybook vouch``: the fingerprints on the signed class sheet, compared person by person."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import click

from journeybook.commands.came_back import SITTING, said, sitting_of
from journeybook.commands.typed import DAY, fingerprint_of, ticket_of
from journeybook.diagnostics.excerpt import visible
from journeybook.marking import observation as observations
from journeybook.proof.key_plate import line_of
from journeybook.sittings import sitting_file
from journeybook.sittings.class_file import same_name
from journeybook.sittings.sitting import (
    Countersigned,
    Place,
    Received,
    Sitting,
    SittingRefused,
    Vouched,
    countersigned,
    vouched,
)

_COLUMNS = ("ticket", "fingerprint", "identity")
_CSV_CAP = 1 << 20
_NOT_ONESELF = "nobody vouches for themselves"


@dataclass(frozen=True, kw_only=True)
class _Row:
    """A line of the list."""

    line: int
    ticket: str
    fingerprint: str
    checked: bool


@click.command()
@SITTING
@click.option(
    "--by", required=True, help="Who vouches: the assessor or the trainer who holds the signed sheet."
)
@click.option(
    "--on",
    type=DAY,
    help="The day on which it is done; today unless given.",
)
@click.option(
    "--list",
    "list_path",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="A CSV with the columns ticket, fingerprint, identity (yes or no) in place of questions.",
)
@click.pass_context
def vouch(context: click.Context, sitting_path: Path, by: str, on: object, list_path: Path | None) -> None:
    """Confirm, person by person, that the signed class sheet shows the fingerprint that came in.

    For an attempt it is asked as well whether somebody checked who the person was.
    """
    sitting = sitting_of(sitting_path)
    try:
        by = line_of(by)
    except ValueError as wrong:
        raise click.UsageError(f"--by must say who vouches. {wrong}", context) from wrong
    day = on.date() if hasattr(on, "date") else date.today()
    if day > max(date.today(), sitting.held_on):
        raise click.ClickException(f"Nobody can vouch on {day} yet: that day is still to come.")
    if day < sitting.held_on:
        raise click.ClickException(f"Nobody can vouch on {day} for what was held on {sitting.held_on}.")
    steps = _from_list(sitting, list_path, by) if list_path else _asked(sitting, by)
    count = left = 0
    for place, print_of_it, is_observation in steps:
        if place is None:
            left += 1
            continue
        try:
            sitting_file.update(
                sitting_path,
                lambda now, place=place, print_of_it=print_of_it, is_observation=is_observation: _step(  # type: ignore[misc]
                    now, place, print_of_it, is_observation, by, day
                ),
            )
        except SittingRefused as refused:
            raise said(refused) from refused
        except OSError as refused:
            raise click.ClickException(
                f"{sitting_path} cannot be changed: {refused.strerror}. {count} vouched for before it stay so."
            ) from refused
        count += 1
    click.echo(
        f"Vouched for {count} {'record' if count == 1 else 'records'}"
        + (f"; {left} left as they were." if left else ".")
    )
    context.exit(1 if left else 0)


def _step(now: Sitting, place: Place, print_of_it: str, is_observation: bool, by: str, day: date) -> Sitting:
    if is_observation:
        return countersigned(now, place.ticket, print_of_it, by=by, on=day)
    here = now.place(place.ticket)
    if here is None or here.attempt is None or here.attempt.fingerprint != print_of_it:
        raise SittingRefused(
            "H004", f"What {place.name} handed in has changed meanwhile.", "Begin `journeybook vouch` again."
        )
    return vouched(now, place.ticket, by=by, on=day, identity=now.identity)


def _asked(sitting: Sitting, by: str) -> Iterator[tuple[Place | None, str, bool]]:
    """Ask at the terminal; no is the answer to a bare return."""
    for place in sitting.people:
        waits = _waits(place)
        if waits and same_name(place.name, by):
            click.echo(f"\n{visible(place.name)} ({visible(place.id)}): {_NOT_ONESELF}")
            click.echo("  Let somebody else look at the sheet, and run this with their name at --by.")
            yield None, "", False
            continue
        if place.attempt is not None and _stands_not(place, place.vouched):
            click.echo(f"\n{visible(place.name)} ({visible(place.id)}), ticket {place.ticket}")
            click.echo(
                f"  attempt {place.attempt.fingerprint}, came by {place.attempt.by_way_of} "
                f"{visible(place.attempt.source)}"
            )
            same = click.confirm(f"  {_question(place.attempt)}", default=False)
            known = same and click.confirm(
                f"  Was it checked who this is ({visible(sitting.identity)})?", default=False
            )
            yield (place if known else None), place.attempt.fingerprint, False
        for held in place.observations:
            if _stands_not(place, held.countersigned):
                seen = observations.read(held.text.encode())
                click.echo(
                    f"\n{visible(place.name)}: observation “{visible(seen.practical)}” by {visible(seen.assessor.name)}"
                )
                click.echo(f"  {held.fingerprint}, {seen.result}")
                signed = click.confirm(
                    "  Is the paper with this fingerprint signed by the assessor?", default=False
                )
                yield (place if signed else None), held.fingerprint, True


def _waits(place: Place) -> bool:
    """Whether something of a place still waits for somebody's word."""
    words = [] if place.attempt is None else [place.vouched]
    return any(
        _stands_not(place, word) for word in (*words, *(held.countersigned for held in place.observations))
    )


def _stands_not(place: Place, word: Vouched | Countersigned | None) -> bool:
    """Whether no word is given, or only that of the very person, which counts for nothing."""
    return word is None or same_name(place.name, word.by)


def _question(attempt: Received) -> str:
    """What has to hold: answers on paper had no fingerprint before they were keyed."""
    if attempt.by_way_of == "keyed":
        return "Are the keyed answers, compared one by one, those on the signed paper sheet?"
    return "Does the signed class sheet show this fingerprint?"


def _from_list(sitting: Sitting, path: Path, by: str) -> Iterator[tuple[Place | None, str, bool]]:
    for row in _rows(path):
        place = sitting.place(row.ticket)
        why = ""
        held = {} if place is None else {each.fingerprint: True for each in place.observations}
        if place is not None and place.attempt is not None:
            held[place.attempt.fingerprint] = False
        if place is None:
            why = f"no place has the ticket {visible(row.ticket[:40])}"
        elif same_name(place.name, by):
            why = _NOT_ONESELF
        elif not held:
            why = f"{visible(place.name)} has handed in nothing yet"
        elif row.fingerprint not in held:
            shown = visible(row.fingerprint[:40])
            why = f"the sheet shows {shown}, and of {visible(place.name)} came {', '.join(held)}"
        elif not row.checked and not held[row.fingerprint]:
            why = f"it was not checked who {visible(place.name)} is"
        if why:
            click.echo(f"Line {row.line}: not vouched for: {why}.")
        yield (None if why else place), row.fingerprint, held.get(row.fingerprint, False)


def _rows(path: Path) -> list[_Row]:
    with path.open("rb") as file:
        data = file.read(_CSV_CAP + 1)
    if len(data) > _CSV_CAP:
        raise click.ClickException(
            f"{path.name} is larger than {_CSV_CAP} bytes, which no list of a class is."
        )
    try:
        text = data.decode("utf-8-sig")
        head = text.split("\n", 1)[0]
        lines = list(
            csv.reader(io.StringIO(text, newline=""), delimiter=";" if ";" in head else ",", strict=True)
        )
    except (UnicodeDecodeError, csv.Error) as error:
        raise click.ClickException(f"{path.name} cannot be read as CSV in UTF-8: {error}.") from error
    names = [name.strip().lower() for name in lines[0]] if lines else []
    if sorted(names) != sorted(_COLUMNS):
        raise click.ClickException(
            f"{path.name} must have the columns {', '.join(_COLUMNS)} in its first line."
        )
    rows: list[_Row] = []
    for number, line in enumerate(lines[1:], 2):
        if not any(cell.strip() for cell in line):
            continue
        if len(line) != len(names):
            raise click.ClickException(
                f"{path.name}, line {number}: {len(line)} columns where {len(names)} belong."
            )
        cells = {name: cell.strip() for name, cell in zip(names, line, strict=True)}
        if cells["identity"].lower() not in ("yes", "no"):
            raise click.ClickException(f"{path.name}, line {number}: the column identity says yes or no.")
        rows.append(_Row(
            line=number,
            ticket=ticket_of(cells["ticket"]),
            fingerprint=fingerprint_of(cells["fingerprint"]),
            checked=cells["identity"].lower() == "yes",
        ))  # fmt: skip
    return rows
