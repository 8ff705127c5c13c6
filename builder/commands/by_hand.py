"""Names that no face of ours can print: a paper shows a sign in their place, and somebody has to write them in."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime

import click

from journeybook.diagnostics.excerpt import visible
from journeybook.paper.press import NotSet, unprintable


def warn_of_names(people: Iterable[tuple[str, str]]) -> None:
    """Warn, on standard error, of the names among ``(name, id)`` that the papers just set do not show."""
    everybody = list(people)
    try:
        lacking = unprintable("\n".join(name for name, _ in everybody), datetime.now(UTC))
    except NotSet:
        # Whatever else the typesetter says of such a text, the papers themselves have been set.
        return
    unseen = [f"{visible(name)} ({visible(id_)})" for name, id_ in everybody if lacking & frozenset(name)]
    if unseen:
        click.echo(
            "Warning: these names have letters that the type of the papers lacks, and � stands there in their place. "
            f"Write them in by hand; records and screens have them: {', '.join(unseen)}.",
            err=True,
        )
