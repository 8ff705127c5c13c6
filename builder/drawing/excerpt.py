"""One part of a checked drawing by itself: what it is made of, where it stands, and nothing else."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.parsers import expat

from journeybook.drawing.xml_text import escape, quoteattr

_REFERENCE = re.compile(r"url\(#([^)]+)\)|^#(.+)$")
_UNIQUE = frozenset({"id", "href", "fill", "clip-path", "marker-start", "marker-mid", "marker-end"})


@dataclass(kw_only=True, eq=False)
class _Element:
    """One element and what it holds: elements and text."""

    name: str
    attributes: dict[str, str]
    holds: list[_Element | str] = field(default_factory=list)

    def all(self) -> Iterator[_Element]:
        yield self
        for one in self.holds:
            if isinstance(one, _Element):
                yield from one.all()


def excerpt(svg: str, part: str, prefix: str) -> str:
    """The marks of one part, inside of whatever moves it, with the patterns and clips that they name.

    ``part`` is the full id. Ids are left out where nothing refers to them; the others get the prefix, so that a leaf
    may hold several excerpts. Empty where the drawing has no such part.
    """
    root = _read(svg)
    ids = {one.attributes["id"]: one for one in root.all() if "id" in one.attributes}
    if part not in ids:
        return ""
    way = _way_to(root, ids[part])
    named = _named_by([*way[1:-1]], ids[part], ids)
    defs = "".join(_written(ids[name], named, prefix) for name in sorted(named) if ids[name] is not ids[part])
    inner = _written(ids[part], named, prefix)
    for above in reversed(way[1:-1]):
        inner = f"{_opening(above, named, prefix)}{inner}</{above.name}>"
    return f"<defs>{defs}</defs>{inner}" if defs else inner


def _read(svg: str) -> _Element:
    top = _Element(name="", attributes={})
    open_elements = [top]

    def start(name: str, attributes: dict[str, str]) -> None:
        element = _Element(name=name, attributes=dict(attributes))
        open_elements[-1].holds.append(element)
        open_elements.append(element)

    def end(_: str) -> None:
        open_elements.pop()

    def characters(text: str) -> None:
        open_elements[-1].holds.append(text)

    parser = expat.ParserCreate("utf-8")
    parser.buffer_text = True
    parser.StartElementHandler = start
    parser.EndElementHandler = end
    parser.CharacterDataHandler = characters
    parser.Parse(svg.encode("utf-8"), True)
    found = top.holds[0]
    assert isinstance(found, _Element)
    return found


def _way_to(element: _Element, wanted: _Element) -> list[_Element]:
    """From the root to the part, both included."""
    if element is wanted:
        return [element]
    for one in element.holds:
        if isinstance(one, _Element) and (way := _way_to(one, wanted)):
            return [element, *way]
    return []


def _named_by(above: list[_Element], part: _Element, ids: dict[str, _Element]) -> set[str]:
    """Every id that is needed: what the part and what moves it refer to, and what these refer to."""
    named: set[str] = set()
    waiting = [*above, *part.all()]
    while waiting:
        for key, value in waiting.pop().attributes.items():
            found = _REFERENCE.search(value) if key in _UNIQUE else None
            name = (found[1] or found[2]) if found else ""
            if name in ids and name not in named:
                named.add(name)
                waiting += ids[name].all()
    return named


def _opening(element: _Element, named: set[str], prefix: str) -> str:
    attributes = "".join(
        f" {key}={quoteattr(_prefixed(key, value, prefix))}"
        for key, value in element.attributes.items()
        if key != "id" or value in named
    )
    return f"<{element.name}{attributes}>"


def _prefixed(key: str, value: str, prefix: str) -> str:
    if key == "id":
        return prefix + value
    if key not in _UNIQUE:
        return value
    return _REFERENCE.sub(lambda found: found[0].replace("#", f"#{prefix}"), value)


def _written(element: _Element, named: set[str], prefix: str) -> str:
    inner = "".join(
        escape(one) if isinstance(one, str) else _written(one, named, prefix) for one in element.holds
    )
    return f"{_opening(element, named, prefix)}{inner}</{element.name}>"
