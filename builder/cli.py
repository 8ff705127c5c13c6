"""The command line: parse, call, print, exit code.

Exit codes: 0 done, 1 something has to be mended, 2 the command was not understood.
"""

from __future__ import annotations

import json
import re
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any

import click

from journeybook import __version__
from journeybook.commands.agreement import agreement
from journeybook.commands.certify import certify
from journeybook.commands.class_state import class_state
from journeybook.commands.from_paper import from_paper
from journeybook.commands.key import key
from journeybook.commands.mark import mark
from journeybook.commands.paper import paper
from journeybook.commands.project_option import CONFIG, project_of, say
from journeybook.commands.seal import seal
from journeybook.commands.set_aside import set_aside
from journeybook.commands.trust import trust
from journeybook.commands.verify import verify
from journeybook.commands.vouch import vouch
from journeybook.content.json_schema import schemas
from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.render_json import render_json
from journeybook.diagnostics.report import has_fault
from journeybook.diagnostics.why import story
from journeybook.making import courses_of
from journeybook.marking.release import release as freeze
from journeybook.release_sources import keep as keep_sources
from journeybook.source.near import nearest


class _Commands(click.Group):
    """Commands for which a disk that refuses is a sentence, not a traceback."""

    def make_context(
        self, info_name: str | None, args: list[str], parent: click.Context | None = None, **extra: Any
    ) -> click.Context:
        """Understand the command line, which may print the help or the version."""
        with _said_in_a_sentence():
            return super().make_context(info_name, args, parent, **extra)

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command that was asked for."""
        with _said_in_a_sentence():
            return super().invoke(ctx)


@contextmanager
def _said_in_a_sentence() -> Iterator[None]:
    try:
        yield
    except BrokenPipeError:
        raise  # Whoever reads our output has gone; click ends quietly.
    except OSError as refused:
        # What has no name is where the output goes.
        named = refused.filename or "The output cannot be written"
        raise click.ClickException(f"{named}: {refused.strerror or refused}.") from refused


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="journeybook")
def main() -> None:
    """Training sites with scored checks and completion certificates, from folders of YAML."""


@main.command()
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


@main.command()
@click.argument("code")
def why(code: str) -> None:
    """Tell the story of a code, with an example that fails and one that is mended."""
    wanted = code.upper()
    if wanted not in CODES:
        near = " or ".join(nearest(wanted, sorted(CODES)))
        raise click.BadParameter(f"there is no code {code!r}" + (f"; did you mean {near}?" if near else "."))
    click.echo(story(wanted), nl=False)


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
def new(folder: Path) -> None:
    """Start a course of your own in FOLDER, which must be new or empty."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.ClickException(
            f"{folder} is there already and is not an empty folder; choose another name."
        )
    with as_file(files("journeybook") / "starter") as starter:
        try:
            shutil.copytree(starter, folder, dirs_exist_ok=True, ignore=shutil.ignore_patterns("__pycache__"))
        except shutil.Error as several:
            _, first, told = several.args[0][0]
            reason = re.sub(r"^\[Errno \d+\] |: '.*", "", told)
            message = f"{first} could not be written: {reason}. Take {folder} away before you try again."
            raise click.ClickException(message) from several
    click.echo(f"A first course stands in {folder}. See it with:")
    click.echo(f"  cd {_quoted(str(folder))}")
    click.echo(f"  {_beside_us('mkdocs')} serve")
    click.echo("Check it there with:")
    click.echo(f"  {_beside_us('journeybook')} faults")
    click.echo(f"Begin with {folder / 'course_src' / 'first-course' / 'kit.yml'}.")


def _beside_us(command: str) -> str:
    """How a command of this environment is called from another folder, whether or not it is activated."""
    there = shutil.which(command, path=str(Path(sys.executable).parent))
    return _quoted(there) if there else command


def _quoted(path: str) -> str:
    return f'"{path}"' if " " in path else path


@main.command()
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False))
def schema(folder: Path) -> None:
    """Write a JSON Schema for each kind of file into FOLDER, for editors."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, content in schemas().items():
        path = folder / f"{name}.schema.json"
        text = json.dumps(content, indent=2, ensure_ascii=False) + "\n"
        try:
            path.write_text(text, encoding="utf-8")
        except OSError as refused:
            raise click.ClickException(f"{path} could not be written: {refused.strerror}.") from refused
        click.echo(path)


@main.command()
@click.argument("course")
@CONFIG
@click.pass_context
def release(context: click.Context, course: str, config_file: Path) -> None:
    """Freeze this version of COURSE, so that its results can be marked for ever."""
    project = project_of(context, config_file)
    if course not in project.courses:
        near = " or ".join(nearest(course, project.courses) or project.courses)
        raise click.BadParameter(f"{config_file} does not name the course {course!r}; it names {near}.")
    # What is still to be mended in another course does not keep this one back.
    ready, problems = courses_of(replace(project, courses=(course,)))
    if not ready:
        say(problems, project.root)
        context.exit(1)
    (one,) = ready
    folder = project.root / project.courses_dir / course
    now = datetime.now(UTC)
    try:
        made, found = freeze(one.course, folder, now, problems)
        kept = made is not None and keep_sources(project, course, made.version, made.digest)
    except OSError as refused:
        there = refused.filename or folder / "releases"
        raise click.ClickException(
            f"The release could not be written to {there}: {refused.strerror}."
        ) from refused
    every = list(dict.fromkeys([*problems, *found]))
    if made is None or every:
        say(every, project.root)
    if made is None:
        context.exit(1)
    click.echo(f"Released {course} {made.version} for {made.profile} at {made.released}: {made.digest}")
    if not kept:
        click.echo(
            "Its files were changed meanwhile, so they are not kept beside it; release the same state again."
        )
    click.echo("Build the site again: its pages say draft no more. Keep the folder releases/ for ever.")


main.add_command(seal)
main.add_command(mark)
main.add_command(from_paper)
main.add_command(vouch)
main.add_command(set_aside)
main.add_command(agreement)
main.add_command(class_state)
main.add_command(certify)
main.add_command(paper)
main.add_command(key)
main.add_command(trust)
main.add_command(verify)
