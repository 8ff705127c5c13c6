"""Things that know where they were read, and work out the line and column only when somebody asks."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journeybook.diagnostics.problem import Place


class Placed:
    """A base for frozen data with a field ``place`` that a ``Record`` reads very many of.

    Line and column are counted from an index into the text, which takes as long as checking the whole object, and of
    most questions and options nobody ever asks where they stand: a fifth of the time of reading a course was saved.
    """

    if not TYPE_CHECKING:  # A type checker would take this for "has every attribute".

        def __getattr__(self, name: str) -> Place:
            """Called only while ``place`` is not among the object's own attributes."""
            known = self.__dict__
            if name != "place" or "_read_from" not in known:
                raise AttributeError(f"{type(self).__name__!r} object has no attribute {name!r}")
            document, container, trail = known["_read_from"]
            known["place"] = place = document.place(container, trail=trail)
            return place
