"""``journeybook set-aside``: an attempt that somebody else handed in with a person's ticket."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from journeybook.commands.came_back import SITTING, said, seat_of, sitting_of
from journeybook.diagnostics.excerpt import visible
from journeybook.proof.key_plate import line_of
from journeybook.sittings import sitting_file
from journeybook.sittings.set_aside import with_set_aside
from journeybook.sittings.sitting import Sitting, SittingRefused

_LONGEST = 300


@click.command("set-aside")
@SITTING
@click.argument("ticket")
@click.option("--by", required=True, help="Who sets it aside: the assessor or the trainer.")
@click.option("--why", required=True, help="What happened, in a sentence.")
@click.option(
    "--answered-by",
    default="",
    metavar="ID",
    help="The id of the person of the class who did answer; left out where it was nobody of the class.",
)
@click.pass_context
def set_aside(
    context: click.Context, sitting_path: Path, ticket: str, by: str, why: str, answered_by: str
) -> None:
    """Set aside the attempt on TICKET, because somebody else handed it in: two slips were changed, or it was a trial.

    It is kept whole, with who said so and why. The person's own attempt can be taken in afterwards.
    """
    sitting = sitting_of(sitting_path)
    by, why = _line("--by", by), _line("--why", why)
    place = seat_of(sitting, ticket)
    if place.attempt is None:
        raise click.ClickException(
            f"{visible(place.name)} has handed in nothing, so there is nothing to set aside."
        )
    held = place.attempt.fingerprint

    def step(now: Sitting) -> Sitting:
        return with_set_aside(
            now, place.ticket, held, by=by, on=date.today(), why=why, answered_by=answered_by.strip()
        )

    try:
        step(sitting)  # What will be refused need not be asked.
        click.echo(f"{visible(place.name)} ({visible(place.id)}), ticket {place.ticket}: attempt {held}")
        if not click.confirm(
            f"Was this attempt somebody else's, {_who(sitting, answered_by)}?", default=False
        ):
            click.echo("Nothing was changed.")
            context.exit(1)
        after = sitting_file.update(sitting_path, step)
    except SittingRefused as refused:
        raise said(refused) from refused
    except OSError as refused:
        raise click.ClickException(f"{sitting_path} cannot be changed: {refused.strerror}.") from refused
    _tell(after, answered_by.strip(), sitting_path)


def _line(option: str, text: str) -> str:
    try:
        return line_of(text, _LONGEST)
    except ValueError as wrong:
        raise click.UsageError(f"{option}: {wrong}") from wrong


def _who(sitting: Sitting, answered_by: str) -> str:
    person = next((each for each in sitting.people if each.id == answered_by.strip()), None)
    return (
        f"answered by {visible(person.name)} ({visible(person.id)})" if person else "of nobody of the class"
    )


def _tell(after: Sitting, answered_by: str, path: Path) -> None:
    click.echo("Set aside and kept. The ticket is free for the person's own attempt:")
    click.echo(f"  where it came already: journeybook mark FILE --sitting {path}")
    click.echo(f"  where they have to sit again: journeybook seal COURSE --class NEW.yml --earlier {path}")
    for each in after.people:
        if each.id == answered_by:
            click.echo(
                f"It counts for {visible(each.name)}: their own ticket is now attempt {each.attempt_number}."
            )
