"""``journeybook why``: the story of one code."""

from __future__ import annotations

import click

from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.why import story
from journeybook.source.near import nearest


@click.command()
@click.argument("code")
def why(code: str) -> None:
    """Tell the story of a code, with an example that fails and one that is mended."""
    wanted = code.upper()
    if wanted not in CODES:
        near = " or ".join(nearest(wanted, sorted(CODES)))
        raise click.BadParameter(f"there is no code {code!r}" + (f"; did you mean {near}?" if near else "."))
    click.echo(story(wanted), nl=False)
