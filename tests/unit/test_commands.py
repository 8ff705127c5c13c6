"""Every command stands where the command line looks for it, and only what is asked for is read."""

from __future__ import annotations

import subprocess
import sys

import click
import pytest
from click.testing import CliRunner

from journeybook.cli import COMMANDS, main


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_is_found_under_its_name_and_says_what_it_does(name: str) -> None:
    command = main.get_command(click.Context(main), name)
    assert command is not None
    assert command.name == name
    assert command.get_short_help_str()


def test_an_unknown_command_is_told_with_the_nearest() -> None:
    said = CliRunner().invoke(main, ["relase"])
    assert said.exit_code == 2
    assert said.output.endswith("Error: No such command 'relase'. Did you mean 'release'?\n")


def test_what_is_not_asked_for_is_not_read() -> None:
    program = (
        "import sys\nfrom journeybook.cli import main\nmain(['why', 'Q012'], standalone_mode=False)\n"
        "print([name for name in ('mkdocs', 'cryptography', 'typst', 'jinja2') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"
