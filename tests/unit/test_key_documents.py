"""Every command about keys that DEVELOPERS.md tells a firm to type is one that the program has."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import click
import pytest

from journeybook.commands.key import key
from journeybook.commands.trust import trust

SECTION = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text("utf-8").split("\n## Keys and trust\n")[1]
LINES = re.findall(r"^journeybook .*$", SECTION.split("\n## ")[0], re.MULTILINE)

GROUPS = {"key": key, "trust": trust}


def test_each_command_about_keys_is_told() -> None:
    told = {tuple(line.split()[1:3]) for line in LINES}
    assert told == {(group.name, name) for group in GROUPS.values() for name in group.commands}


@pytest.mark.parametrize("line", LINES)
def test_a_line_of_the_documents_is_understood(line: str, monkeypatch: pytest.MonkeyPatch) -> None:
    _, name, sub, *arguments = shlex.split(line.split(" > ")[0])
    command = GROUPS[name].commands[sub]
    for parameter in command.params:  # The files of the documents are not there.
        if isinstance(parameter.type, click.Path):
            monkeypatch.setattr(parameter.type, "exists", False)
    context = command.make_context(sub, list(arguments), resilient_parsing=False)
    assert context.args == []
