"""How a passphrase comes in: typed where nobody sees it, or through an open file descriptor; never as an argument.

What stands on a command line or in the environment is read by other programs of the machine, and kept in histories.
"""

from __future__ import annotations

import getpass
import os
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from journeybook.diagnostics.extras import to_install
from journeybook.proof.pass_words import WrongWord, new_passphrase, read_back

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

SHORTEST = 15
"""Letters of a passphrase of one's own: what NIST SP 800-63B-4 asks of a password that stands alone (from memory)."""
_LONGEST = 1024
_TRIES = 3


def passphrase_fd(name: str = "--passphrase-fd", what: str = "the passphrase") -> Callable[[Any], Any]:
    """Return the option that names a file descriptor in place of a prompt."""
    return click.option(
        name,
        type=click.IntRange(min=0),
        help=f"Read {what} from this open file descriptor, one line, in place of asking for it.",
    )


PASSPHRASE_FD = passphrase_fd()


def from_descriptor(descriptor: int) -> str:
    """Return the first line that comes through an open file descriptor; the descriptor itself stays as it is."""
    try:
        with os.fdopen(os.dup(descriptor), "rb") as file:
            line = file.readline(_LONGEST + 1)
        text = line.rstrip(b"\r\n").decode("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise click.ClickException(f"File descriptor {descriptor} gives no passphrase.") from error
    if not text or len(line) > _LONGEST:
        raise click.ClickException(f"File descriptor {descriptor} gives no passphrase.")
    return text


def _asked(words: str, again: str | None = None) -> str:
    """What somebody types unseen; ends the command where there is no terminal at which they could."""
    with warnings.catch_warnings():
        # Without a terminal, getpass would warn and read what everybody sees.
        warnings.simplefilter("error", getpass.GetPassWarning)
        try:
            return str(click.prompt(words, hide_input=True, confirmation_prompt=again or False, type=str))
        except getpass.GetPassWarning as seen:
            raise click.ClickException(
                "There is no terminal at which a passphrase could be typed unseen. Run this in a terminal, or give the "
                "passphrase with --passphrase-fd."
            ) from seen


def new_of_own(descriptor: int | None) -> str:
    """Return a passphrase that somebody thought of: asked for twice, and long enough."""
    text = (
        from_descriptor(descriptor)
        if descriptor is not None
        else _asked("New passphrase", again="The same again")
    )
    if len(text) < SHORTEST:
        raise click.ClickException(
            f"That passphrase has {len(text)} letters; one of your own needs {SHORTEST} or more. Nothing was written."
        )
    return str(text)


def new_of_words() -> str:
    """Show a drawn passphrase once, and return it when it has been typed back from where it was written down."""
    drawn = new_passphrase()
    click.echo("The passphrase, shown this once:\n")
    click.echo(f"    {drawn}\n")
    click.echo("Write it down now, on paper, and keep it apart from the key file and from its paper back-up.")
    for _ in range(_TRIES):
        typed = _asked("Type it from your paper (four letters of each word will do)")
        try:
            if read_back(typed) == drawn:
                return drawn
            click.echo("That is another passphrase.")
        except WrongWord as wrong:
            click.echo(str(wrong))
    raise click.ClickException("The passphrase was not typed back, so nothing was written.")


def opened(path: Path, descriptor: int | None, asking: str | None = None) -> Ed25519PrivateKey:
    """Return the key of a file, by a passphrase that is asked for, three times at most; ends the command otherwise."""
    return opened_by(path, descriptor, asking)[0]


def opened_by(path: Path, descriptor: int | None, asking: str | None = None) -> tuple[Ed25519PrivateKey, str]:
    """Return the same, and the passphrase that opened it."""
    from journeybook.proof.key_file import KeyRefused, bytes_of

    with refusals_said():
        bytes_of(path)  # A missing file is said before anybody types.
        if descriptor is not None:
            return _tried(path, from_descriptor(descriptor))
        for left in reversed(range(_TRIES)):
            typed = _asked(asking or f"Passphrase of {path.name}")
            try:
                return _tried(path, typed)
            except KeyRefused as refused:
                if refused.reason != "passphrase" or not left:
                    raise
                click.echo(_slip(typed) or refused.detail)
    raise AssertionError("the last try gives a key or raises")


def _tried(path: Path, typed: str) -> tuple[Ed25519PrivateKey, str]:
    """The key, by the passphrase as it was typed, or as the words that it abbreviates."""
    from journeybook.proof.key_file import KeyRefused, open_key

    try:
        return open_key(path, typed), typed
    except KeyRefused as refused:
        try:
            words = read_back(typed)
        except WrongWord:
            words = typed
        if refused.reason != "passphrase" or words in ("", typed):
            raise
        return open_key(path, words), words


def _slip(typed: str) -> str:
    """Which word of a passphrase of words cannot be right; empty where most are not from the list at all."""
    try:
        read_back(typed)
    except WrongWord as wrong:
        return str(wrong) if len(typed.split()) > 2 and wrong.near else ""
    return ""


@contextmanager
def refusals_said() -> Iterator[None]:
    """Say in a sentence what is refused, or which package is missing."""
    from journeybook.proof.key_file import KeyRefused

    try:
        yield
    except KeyRefused as refused:
        raise click.ClickException(refused.detail) from refused
    except ModuleNotFoundError as missing:
        raise click.ClickException(
            f"This needs the package {missing.name}, which is not installed; "
            f"install it with: {to_install('proof')}"
        ) from missing
