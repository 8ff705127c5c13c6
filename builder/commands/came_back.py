"""What the commands about a class have in common: the sitting's file, its course, and how a table is set."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any

import click

from journeybook.commands.typed import ticket_of
from journeybook.diagnostics.render_json import as_data
from journeybook.marking.kind import in_questions
from journeybook.project import Project
from journeybook.remarking import compiled_with
from journeybook.sittings import sitting_file
from journeybook.sittings.inbox import Course, Told, counted, course_from
from journeybook.sittings.sitting import Place, Sitting, SittingRefused

SITTING = click.argument(
    "sitting_path", metavar="SITTING", type=click.Path(path_type=Path, exists=True, dir_okay=False)
)
_MOST_OTHERS = 12
"""Files that are no record at all and are named; of a whole download folder the rest is counted."""


def said(refused: SittingRefused) -> click.ClickException:
    """A refusal as one sentence and what to do."""
    return click.ClickException(f"{refused.message} {refused.mend}")


def sitting_of(path: Path) -> Sitting:
    """The sitting of a file; ends the command with a sentence otherwise."""
    try:
        return sitting_file.read(path)
    except SittingRefused as refused:
        raise said(refused) from refused
    except OSError as refused:
        raise click.ClickException(f"{path} cannot be read: {refused.strerror}.") from refused


def seat_of(sitting: Sitting, given: str) -> Place:
    """The place of a ticket as somebody typed it."""
    seat = sitting.place(ticket_of(given))
    if seat is None:
        raise click.ClickException(
            f"No place of this sitting has the ticket {given[:40]!r}. Compare it with the sheet, letter by letter."
        )
    return seat


def course_finder(project: Project) -> Callable[[Sitting], Course | None]:
    """Finds the compiled course of a sitting in a project, each once."""
    known: dict[str, Course | None] = {}

    def find(sitting: Sitting) -> Course | None:
        if sitting.digest not in known:
            known[sitting.digest] = course_from(compiled_with(project, sitting.course, sitting.digest))
        return known[sitting.digest]

    return find


def result_words(result: dict[str, Any] | Any) -> str:
    """A result in words: a check that was sat in a class is still only what its record says until somebody vouches."""
    verdict = "knowledge check passed" if result["passed"] else "not yet passed"
    return f"{verdict}, {in_questions(result['marks'])} of {in_questions(result['of'])}"


def table(lines: Sequence[Told]) -> str:
    """What became of everything, in words, a record a line; what is no record stands below."""
    others = [line for line in lines if line.outcome == "no record"]
    rows: list[str] = []
    for line in lines:
        if line.outcome == "no record":
            continue
        who = ", ".join(part for part in (line.who, line.ticket) if part) or line.what
        rows.append(f"{line.outcome.capitalize():<13} {who}")
        told = [line.source, line.fingerprint, result_words(line.result) if line.result else ""]
        rows.append(" " * 14 + "; ".join(part for part in told if part))
        if line.why:
            rows.append(" " * 14 + line.why)
    rows += [f"{'No record':<13} {line.source}: {line.why}" for line in others[:_MOST_OTHERS]]
    if len(others) > _MOST_OTHERS:
        rows.append(
            f"{'':<13} and {len(others) - _MOST_OTHERS} more files that are no record; --json names them all."
        )
    counts = ", ".join(f"{count} {outcome}" for outcome, count in counted(lines).items()) or "nothing came"
    return "\n".join([*rows, "", f"In all: {counts}."]) + "\n"


def told_as_data(lines: Iterable[Told]) -> str:
    """The same for a program."""
    content = [
        {
            "from": line.source,
            "outcome": line.outcome,
            "what": line.what,
            "who": line.who,
            "ticket": line.ticket,
            "fingerprint": line.fingerprint,
            "why": line.why,
            "result": line.result,
            "problems": as_data(line.problems),
        }
        for line in lines
    ]
    return json.dumps(content, ensure_ascii=False, indent=1) + "\n"
