"""``journeybook new``: a small course that works, to begin with."""

from __future__ import annotations

import re
import shutil
import sys
from importlib.resources import as_file, files
from pathlib import Path

import click


@click.command()
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
