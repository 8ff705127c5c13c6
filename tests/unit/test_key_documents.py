"""Every command about keys that DEVELOPERS.md tells a firm to type is one that the program has."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import click
import pytest

from journeybook.cli import main

SECTION = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text("utf-8").split("\n## Keys and trust\n")[1]
LINES = re.findall(r"^journeybook .*$", SECTION.split("\n## ")[0], re.MULTILINE)


def test_each_command_about_keys_is_told() -> None:
    told = {tuple(line.split()[1:3]) for line in LINES}
    groups = [main.commands[name] for name in ("key", "trust")]
    assert told == {
        (group.name, name) for group in groups if isinstance(group, click.Group) for name in group.commands
    }


@pytest.mark.parametrize("line", LINES)
def test_a_line_of_the_documents_is_understood(line: str, monkeypatch: pytest.MonkeyPatch) -> None:
    _, name, sub, *arguments = shlex.split(line.split(" > ")[0])
    group = main.commands[name]
    assert isinstance(group, click.Group)
    command = group.commands[sub]
    for parameter in command.params:  # The files of the documents are not there.
        if isinstance(parameter.type, click.Path):
            monkeypatch.setattr(parameter.type, "exists", False)
    context = command.make_context(sub, list(arguments), resilient_parsing=False)
    assert context.args == []
