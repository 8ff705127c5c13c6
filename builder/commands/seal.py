"""``journeybook seal``: a sitting for a class, as one sealed page and one private file."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path

import click

from journeybook.commands.came_back import said
from journeybook.commands.course_to_seal import course_to_seal
from journeybook.commands.project_option import CONFIG, project_with, say
from journeybook.diagnostics.extras import to_install
from journeybook.pages.course_pages import Ready
from journeybook.project import Project
from journeybook.proof.private_file import put
from journeybook.sittings import sitting_file
from journeybook.sittings.class_file import ClassFile, read_class_file
from journeybook.sittings.private_place import refuse_place
from journeybook.sittings.sitting import Sitting, SittingRefused

_CLASS_CAP = 1 << 20


@click.command()
@click.argument("course")
@click.option(
    "--class",
    "class_file",
    required=True,
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="Who sits: a YAML file.",
)
@click.option(
    "--into",
    "folder",
    required=True,
    type=click.Path(path_type=Path, file_okay=False),
    help="The folder for both files; outside the site and of version control.",
)
@click.option(
    "--earlier",
    "earlier_files",
    multiple=True,
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="The private file of an earlier sitting: who sat there gets other questions where there are others.",
)
@click.option(
    "--version",
    "version",
    metavar="VERSION",
    help="A release on the shelf, where the course has changed since; else the course as it stands.",
)
@CONFIG
@click.pass_context
def seal(
    context: click.Context,
    course: str,
    class_file: Path,
    folder: Path,
    earlier_files: tuple[Path, ...],
    version: str | None,
    config_file: Path,
) -> None:
    """Make a sitting of COURSE: one sealed page for the room, one private file for the employer."""
    project = project_with(context, config_file, course)
    people = _class_of(context, project, class_file)
    page, private = folder / f"{class_file.stem}.html", folder / f"{class_file.stem}.sitting.json"
    try:
        refuse_place(folder, project.watched())
        earlier = [sitting_file.read(path) for path in earlier_files]
        _refuse_overwriting(page, private)
        with course_to_seal(context, project, course, version) as ready:
            sitting, document = _made(ready, people, earlier)
        _write(page, document, private, sitting)
    except SittingRefused as refused:
        raise said(refused) from refused
    except ImportError as missing:
        raise click.ClickException(
            f"Sealing needs the package {missing.name}, which is not installed; "
            f"install it with: {to_install('proof')}"
        ) from missing
    except OSError as refused:
        raise click.ClickException(
            f"The sitting could not be made: {refused.filename or folder}: {refused.strerror}. Nothing of it is left."
        ) from refused
    _tell(sitting, page, private)


def _write(page: Path, document: bytes, private: Path, sitting: Sitting) -> None:
    """Both files or neither: a page without its private file could never be marked."""
    page.parent.mkdir(parents=True, exist_ok=True)
    sitting_file.create(private, sitting)
    try:
        put(page, document, for_everybody=True)
    except OSError:
        private.unlink()
        raise


def _class_of(context: click.Context, project: Project, path: Path) -> ClassFile:
    try:
        with path.open("rb") as file:
            data = file.read(_CLASS_CAP + 1)
    except OSError as refused:
        raise click.ClickException(f"{path} cannot be read: {refused.strerror}.") from refused
    if len(data) > _CLASS_CAP:
        raise click.ClickException(f"{path} is larger than {_CLASS_CAP} bytes, which no class file is.")
    full = path.resolve()
    inside = full.is_relative_to(project.root.resolve())
    name = full.relative_to(project.root.resolve()).as_posix() if inside else path.as_posix()
    found, problems = read_class_file(data, name)
    if found is None:
        say(problems, project.root)
        context.exit(1)
    return found


def _refuse_overwriting(*paths: Path) -> None:
    for path in paths:
        if path.exists():
            raise SittingRefused(
                "H009",
                f"{path} is there already, and a sitting is never written over.",
                "If that is this class, it is sealed: go on with those tickets. For another sitting, give the class "
                "file another name.",
            )


def _made(ready: Ready, people: ClassFile, earlier: Sequence[Sitting]) -> tuple[Sitting, bytes]:
    from journeybook.proof.pass_words import new_passphrase, word_list
    from journeybook.sittings.seal import seal_sitting, true_chance
    from journeybook.sittings.sitting_page import sitting_page

    sealed = seal_sitting(
        ready.course,
        ready.compiled,
        people,
        passphrase=new_passphrase(),
        now=datetime.now(UTC),
        chance=true_chance(),
        earlier=earlier,
    )
    return sealed.sitting, sitting_page(ready.course, sealed.sitting, sealed.record, word_list())


def _tell(sitting: Sitting, page: Path, private: Path) -> None:
    count = len(sitting.people)
    click.echo(
        f"Sealed {sitting.course} {sitting.version} for {count} {'person' if count == 1 else 'people'}."
    )
    click.echo(f"  The room's page   {page}")
    click.echo(f"  Private file      {private}   (keep it; nobody in the room needs it)")
    click.echo("")
    click.echo(f"  Passphrase        {sitting.passphrase}")
    click.echo("")
    click.echo("What to do next:")
    click.echo(
        "  1. Write each person's ticket on a slip of their own; read the passphrase out in the room, not before."
    )
    click.echo("  2. Open the page on each device: from a stick, a share or a server. It needs no network.")
    click.echo(
        "  3. Check who each person is, and write the fingerprint on the class sheet when they hand in."
    )
    click.echo("  4. Take the saved files or the codes to where the private file is.")
    click.echo(f"The class sheet to print: journeybook paper class {private} {private.parent}")
    click.echo("For answers with a pen there are `paper questions` and `paper answers`.")
    for place in sitting.people:
        more = f"  +{place.extra_minutes} min" if place.extra_minutes else ""
        click.echo(f"  {place.ticket}  {place.name} ({place.id}){more}{'  read out' if place.oral else ''}")
