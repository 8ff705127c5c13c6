"""How deep ``use`` elements of a drawing lead into each other.

A few lines of them, each drawing the one before ten times, would keep a browser drawing for ever. A ``use`` may
draw something that holds a ``use``; what that one draws holds none.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem

DEEPEST = 2
"""``use`` elements in a row, from the page to the shape."""


@dataclass(kw_only=True)
class Uses:
    """The ``use`` elements of one drawing, as its elements open and close."""

    _open: list[str] = field(default_factory=list)
    """Ids of the open elements, empty for those without."""
    _found: list[tuple[str, Place]] = field(default_factory=list)
    _within: dict[str, set[str]] = field(default_factory=dict)
    """Id -> ids that ``use`` elements inside of it draw, its own included."""

    def enter(self, name: str) -> None:
        """An element opens; ``name`` is its id."""
        self._open.append(name)

    def leave(self) -> None:
        """The innermost element closes."""
        self._open.pop()

    def note(self, target: str, place: Place) -> None:
        """The element that opened last is a ``use`` and draws ``target``."""
        self._found.append((target, place))
        for name in self._open:
            if name:
                self._within.setdefault(name, set()).add(target)

    def problems(self) -> Iterator[Problem]:
        """Each ``use`` that leads deeper than ``DEEPEST``, or round in a circle."""
        deep = self._leading_deeper()
        for target, place in self._found:
            if target in deep:
                yield fault(
                    "F007",
                    place,
                    "This `<use>` draws something whose `<use>` draws another `<use>`.",
                    "Put the shapes themselves in place of one of them.",
                )

    def _leading_deeper(self) -> frozenset[str]:
        """Ids from which at least ``DEEPEST`` ``use`` elements follow each other."""
        leading = frozenset(self._within)
        for _ in range(DEEPEST - 1):
            leading = frozenset(name for name, drawn in self._within.items() if drawn & leading)
        return leading
