"""The commands that the documents print can be typed as they stand there; README.md leads a class to certificates."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import click
import pytest

from journeybook.cli import main
from journeybook.sittings.class_file import read_class_file

ROOT = Path(__file__).parents[2]
README, DEVELOPERS = ((ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md"))
FENCE = re.compile(r"^ *```.*\n", re.MULTILINE)


def typed(text: str) -> list[str]:
    """Every line of a document's blocks that begins with our program; what is cut short with … is none."""
    lines = (line for block in FENCE.split(text)[1::2] for line in block.splitlines())
    return [
        line.strip().removeprefix(".venv/bin/")
        for line in lines
        if line.strip().removeprefix(".venv/bin/").startswith("journeybook ") and "…" not in line
    ]


def command_of(words: list[str]) -> tuple[click.Command, list[str]]:
    """The command that the words name, and what follows it."""
    command: click.Command = main
    while isinstance(command, click.Group):
        found = command.get_command(click.Context(command), words[0])
        assert found is not None, words[0]
        command, words = found, words[1:]
    return command, words


@pytest.mark.parametrize("line", dict.fromkeys(typed(README) + typed(DEVELOPERS)))
def test_each_command_has_the_options_and_words_that_it_needs(line: str) -> None:
    command, words = command_of(shlex.split(re.sub(r"[\[\]]|\.\.\.", "", line))[1:])
    options = {name: one for one in command.params if isinstance(one, click.Option) for name in one.opts}
    given: set[str | None] = set()
    free = 0
    while words:
        word = words.pop(0)
        if word == ">":
            break
        if not word.startswith("-"):
            free += 1
            continue
        assert word in options, f"{line}: no option {word}"
        given.add(options[word].name)
        if not options[word].is_flag:
            assert words, f"{line}: {word} is given nothing"
            words.pop(0)
    missing = {one.name for one in options.values() if one.required} - given
    assert not missing, f"{line}: {missing}"
    arguments = [one for one in command.params if isinstance(one, click.Argument)]
    assert free >= sum(one.required for one in arguments), line
    assert free <= len(arguments) or any(one.nargs == -1 for one in arguments), line


def test_the_readme_leads_from_a_class_to_certificates() -> None:
    way = README[README.index("## From a class to certificates") : README.index("## What a certificate")]
    names = [" ".join(shlex.split(line)[1:3]) for line in typed(way)]
    assert [name.split()[0] for name in names] == [
        "key", "key", "trust", "release", "seal", "paper", "mark", "vouch", "certify", "verify",
    ]  # fmt: skip
    assert "pip install -e '.[proof,print]'" in way


def test_the_class_file_of_the_readme_seats_a_class() -> None:
    (written,) = (block for block in re.findall(r"^```yaml\n(.*?)^```", README, re.DOTALL | re.MULTILINE)
                  if "people:" in block)  # fmt: skip
    found, problems = read_class_file(written.encode(), "wednesday.yml")
    assert problems == []
    assert found is not None
    assert [person.id for person in found.people] == ["0417", "0512"]
