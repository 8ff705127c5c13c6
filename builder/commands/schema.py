"""``journeybook schema``: what an editor completes and explains by."""

from __future__ import annotations

import json
from pathlib import Path

import click

from journeybook.content.json_schema import schemas


@click.command()
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
