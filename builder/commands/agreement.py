"""``journeybook agreement``: how far two observers of one practical agree."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import click

from journeybook.diagnostics.excerpt import visible
from journeybook.marking.agreement import of_observations
from journeybook.marking.canonical import SIZE_CAP, NotCanonical
from journeybook.marking.observation import NotAnObservation, Observation, read

_RECORD = click.Path(path_type=Path, exists=True, dir_okay=False)


@click.command()
@click.argument("first", type=_RECORD)
@click.argument("second", type=_RECORD)
def agreement(first: Path, second: Path) -> None:
    """Compare the records FIRST and SECOND of two observers who watched the same practical."""
    one, other = _observation(first), _observation(second)
    try:
        found = of_observations(one, other)
    except ValueError as refused:
        raise click.ClickException(str(refused)) from refused
    click.echo(f"Observers    {visible(one.assessor.name)}; {visible(other.assessor.name)}")
    click.echo(f"Practical    {visible(one.practical)}, {one.held_on}, {found.steps} steps")
    click.echo(f"Agreed       {_percent(found.agreed)} of the steps")
    kappa = "cannot be said: each used one word only" if found.kappa is None else f"{float(found.kappa):.2f}"
    click.echo(f"Kappa        {kappa} (Cohen; falls where nearly every step is “yes”)")
    click.echo(f"AC1          {float(found.ac1):.2f} (Gwet)")
    for step, seen, seen_too in found.apart:
        click.echo(f"Apart        {visible(step)}: {seen}; {seen_too}")


def _observation(path: Path) -> Observation:
    with path.open("rb") as file:
        data = file.read(SIZE_CAP + 1)
    try:
        return read(data)
    except (NotCanonical, NotAnObservation) as refused:
        detail = refused.detail if isinstance(refused, NotCanonical) else refused.message
        message = f"{path} is not an observation as its page saved it. {detail}"
        raise click.ClickException(message) from refused


def _percent(share: Fraction) -> str:
    return f"{float(100 * share):.0f} %"
