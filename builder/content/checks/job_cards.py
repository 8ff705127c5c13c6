"""Tables of job cards: each row fits its columns."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.model import CardTable
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem


def check_job_cards(file: FileRead) -> Iterator[Problem]:
    """Each row with cells has one for each column."""
    for table in file.every(CardTable):
        wanted = len(table.columns)
        for index, row in enumerate(table.rows):
            if row and len(row) != wanted:
                yield fault(
                    "J001",
                    file.place(table, "rows", index),
                    f"Row {index + 1} has {_counted(len(row), 'cell')} under {_counted(wanted, 'column')}.",
                    'Give it a cell for each column; one to write in is `""`.',
                )


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
