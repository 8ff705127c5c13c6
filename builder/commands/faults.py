"""``journeybook faults``: everything to mend, without building."""

from __future__ import annotations

from pathlib import Path

import click

from journeybook.commands.project_option import CONFIG, project_of, say
from journeybook.diagnostics.render_json import render_json
from journeybook.diagnostics.report import has_fault
from journeybook.making import courses_of


@click.command()
@CONFIG
@click.option("--json", "as_json", is_flag=True, help="For programs: a list of problems.")
@click.pass_context
def faults(context: click.Context, config_file: Path, as_json: bool) -> None:
    """List everything that has to be mended, without building."""
    project = project_of(context, config_file, as_json=as_json)
    _, problems = courses_of(project)
    if as_json:
        click.echo(render_json(problems), nl=False)
    else:
        say(problems, project.root)
    context.exit(1 if has_fault(problems) else 0)
