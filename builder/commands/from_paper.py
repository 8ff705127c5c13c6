"""``journeybook from-paper``: an empty file for the answers on one paper sheet."""

from __future__ import annotations

from pathlib import Path

import click

from journeybook.commands.came_back import SITTING, course_finder, seat_of, sitting_of
from journeybook.commands.project_option import CONFIG, project_of
from journeybook.proof.private_place import published_by
from journeybook.sittings.keyed import ENDING, empty_file


@click.command("from-paper")
@SITTING
@click.argument("ticket")
@click.option(
    "--into",
    "folder",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="The folder for the file; that of the sitting unless given.",
)
@CONFIG
@click.pass_context
def from_paper(
    context: click.Context, sitting_path: Path, ticket: str, folder: Path | None, config_file: Path
) -> None:
    """Write an empty file for the answers on the paper sheet of TICKET, to be filled in and taken in with `mark`."""
    sitting = sitting_of(sitting_path)
    seat = seat_of(sitting, ticket)
    project = project_of(context, config_file)
    course = course_finder(project)(sitting)
    if course is None:
        raise click.ClickException(
            f"The course {sitting.course} {sitting.version} with contents {sitting.digest[:12]} is not here. "
            "Run this beside the mkdocs.yml of the site that holds its release."
        )
    into = folder or sitting_path.parent
    if folder is not None and (why := published_by(folder, project.watched())):
        raise click.ClickException(
            f"Keyed answers are not written into {folder}: {why}, and they are as secret as the sitting. "
            "Leave --into out, and they lie beside the sitting."
        )
    path = into / f"{seat.ticket}{ENDING}"
    try:
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(empty_file(sitting, seat, course.content))
    except FileExistsError as there:
        raise click.ClickException(
            f"{path} is there already; what is keyed is never written over."
        ) from there
    click.echo(f"Fill in {path}, then take it in:")
    click.echo(f"  journeybook mark {path} --sitting {sitting_path}")
