"""The command line: parse, call, print, exit code.

Exit codes: 0 done, 1 something has to be mended, 2 the command was not understood.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from typing import Any

import click

from journeybook import __version__

COMMANDS = (
    "faults", "why", "new", "schema", "release", "seal", "mark", "from-paper", "vouch", "set-aside", "class-state",
    "certify", "verify", "paper", "agreement", "key", "trust",
)  # fmt: skip
"""Each stands in a file of its name under ``commands``, as a function of its name."""


class _Commands(click.Group):
    """Commands that are read only when they are asked for, and for which a disk that refuses is a sentence."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click's signature
        """Return the names in the order of a course's way."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        """Return the command, read now; None for a name that is none."""
        if cmd_name not in COMMANDS:
            return None
        name = cmd_name.replace("-", "_")
        command: click.Command = getattr(import_module(f"journeybook.commands.{name}"), name)
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Return the command of the line; an unknown name is told with the nearest that there are."""
        try:
            return super().resolve_command(ctx, args)
        except click.NoSuchCommand as unknown:
            raise click.NoSuchCommand(unknown.command_name, possibilities=COMMANDS, ctx=ctx) from None

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
    except click.ClickException as told:
        # What was refused may quote a file or a name that somebody made up to write on the terminal.
        told.message = _shown(told.message)  # type: ignore[misc]  # Only so is every kind of refusal shown alike.
        raise
    except BrokenPipeError:
        raise  # Whoever reads our output has gone; click ends quietly.
    except OSError as refused:
        # What has no name is where the output goes.
        named = refused.filename or "The output cannot be written"
        raise click.ClickException(_shown(f"{named}: {refused.strerror or refused}.")) from refused


def _shown(message: str) -> str:
    from journeybook.diagnostics.excerpt import visible

    return "\n".join(map(visible, message.split("\n")))


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="journeybook")
def main() -> None:
    """Training sites with scored checks and completion certificates, from folders of YAML."""
