"""Places that are a whole file or folder: there is no line to show."""

from __future__ import annotations

from journeybook.diagnostics.problem import Place


def whole_file(path: str) -> Place:
    """The place of a problem that is not about any one line."""
    return Place(file=path, length=0)
