"""Which SVG may become a figure: a list of elements and attributes, local references, no style of its own.

A figure is drawn with the theme's classes, so that one drawing serves light, dark and print. What is not on
the lists below is refused by name: scripts, handlers, links, images and foreign content never reach a page.
Elements and attributes as in SVG 2 (W3C Candidate Recommendation, 4 October 2018).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.parsers import expat

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.drawing.figure_classes import CLASSES
from journeybook.drawing.lettering import Lettering
from journeybook.drawing.nested_uses import Uses
from journeybook.drawing.xml_text import escape, quoteattr
from journeybook.source.near import nearest

LARGEST = 200_000
"""Bytes."""
_PICTURES = {
    b"\x89PNG": "PNG picture",
    b"\xff\xd8\xff": "JPEG picture",
    b"GIF8": "GIF picture",
    b"RIFF": "WebP picture",
    b"BM": "BMP picture",
    b"%PDF": "PDF file",
    b"PK": "packed file",
    b"\x1f\x8b": "packed file",
}
"""How files begin that are given the name of a drawing; each by its own specification."""
_NAMESPACE = "http://www.w3.org/2000/svg"

_SHAPE = frozenset({"transform", "clip-path", "fill", "fill-rule", "clip-rule"})
_MARKED = frozenset({"marker-start", "marker-mid", "marker-end"})
_PLACED = frozenset({"x", "y", "dx", "dy", "rotate"})
_BOX = frozenset({"x", "y", "width", "height"})
_EVERYWHERE = frozenset({"id", "class"})

ELEMENTS: dict[str, frozenset[str]] = {
    "svg": frozenset({"viewBox", "xmlns", "version", "preserveAspectRatio"}),
    "g": _SHAPE,
    "path": _SHAPE | _MARKED | {"d"},
    "rect": _SHAPE | _BOX | {"rx", "ry"},
    "circle": _SHAPE | {"cx", "cy", "r"},
    "ellipse": _SHAPE | {"cx", "cy", "rx", "ry"},
    "line": _SHAPE | _MARKED | {"x1", "y1", "x2", "y2"},
    "polyline": _SHAPE | _MARKED | {"points"},
    "polygon": _SHAPE | _MARKED | {"points"},
    "text": _SHAPE | _PLACED | {"text-anchor"},
    "tspan": _PLACED | {"text-anchor"},
    "defs": frozenset(),
    "pattern": _BOX | {"patternUnits", "patternContentUnits", "patternTransform", "viewBox"},
    "marker": frozenset({"markerWidth", "markerHeight", "markerUnits", "refX", "refY", "orient", "viewBox"}),
    "clipPath": frozenset({"clipPathUnits", "transform"}),
    "use": _SHAPE | _BOX | {"href"},
    "title": frozenset(),
    "desc": frozenset(),
}
"""Element -> its attributes beside id and class."""

_TEXT_ELEMENTS = frozenset({"text", "tspan", "title", "desc"})
_REFERENCE_ATTRIBUTES = frozenset({"fill", "clip-path"}) | _MARKED
_LOCAL_URL = re.compile(r"url\(#([^()\s'\"#]+)\)")
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_.-]*")
_NUMBER = r"\d+(?:\.\d+)?"
_BOX_NUMBERS = re.compile(rf"-?{_NUMBER}[\s,]+-?{_NUMBER}(?:[\s,]+(?=[0.]*[1-9]){_NUMBER}){{2}}", re.ASCII)
"""Where the drawing begins, and its width and height, which are more than nothing."""


def check_svg(data: bytes, file: str, figure_id: str) -> tuple[str | None, list[Problem]]:
    """The drawing as normalised text with every id starting ``FIGURE-``, or None; and what is wrong with it.

    An id that starts so already stays as it is.
    The text has no XML declaration and no comments, and can stand inside an HTML page. Beside it there may be
    warnings. Never raises, whatever the bytes.
    """
    if len(data) > LARGEST:
        problem = fault(
            "F003",
            Place(file=file, length=0),
            f"The drawing has {len(data)} bytes; at most {LARGEST} are read.",
            "Simplify it: fewer points on its paths, no traced photographs.",
        )
        return None, [problem]
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        made = next((name for start, name in _PICTURES.items() if data.startswith(start)), "")
        if made:
            message = f"This is a {made} under the name of a drawing."
            mend = (
                "Draw what matters, and save that as SVG; a new name does not turn a picture into a drawing."
            )
            return None, [fault("F004", Place(file=file, length=0), message, mend)]
        line = data.count(b"\n", 0, error.start) + 1
        place = Place(file=file, line=line)
        return None, [fault("F004", place, "The drawing is not in UTF-8.", "Save it as UTF-8.")]
    drawing = _Drawing(file=file, figure=figure_id)
    drawing.read(text)
    if drawing.problems:
        return None, sorted(drawing.problems, key=lambda problem: problem.place)
    return "".join(drawing.written), list(drawing.lettering.problems())


@dataclass(kw_only=True)
class _Drawing:
    """One drawing while it is read."""

    file: str
    figure: str
    problems: list[Problem] = field(default_factory=list)
    written: list[str] = field(default_factory=list)
    lettering: Lettering = field(default_factory=Lettering)
    _open: list[str] = field(default_factory=list)
    _ids: dict[str, Place] = field(default_factory=dict)
    """By the id with the figure's name before it, as it will stand on the page."""
    _ids_as_written: set[str] = field(default_factory=set)
    _wanted: list[tuple[str, Place]] = field(default_factory=list)
    _uses: Uses = field(default_factory=Uses)
    _skipped: int = 0
    """How many elements deep inside a refused one the reader is."""

    def read(self, text: str) -> None:
        parser = expat.ParserCreate("utf-8")
        parser.buffer_text = True
        parser.ordered_attributes = True
        self._parser = parser
        parser.StartDoctypeDeclHandler = self._doctype
        parser.StartElementHandler = self._start
        parser.EndElementHandler = self._end
        parser.CharacterDataHandler = self._characters
        parser.ProcessingInstructionHandler = self._instruction
        try:
            parser.Parse(text.encode("utf-8"), True)
        except _EnoughError:
            return
        except expat.ExpatError as error:
            place = Place(file=self.file, line=error.lineno, column=error.offset + 1)
            reason = expat.ErrorString(error.code)
            self.problems.append(
                fault(
                    "F004",
                    place,
                    f"The drawing cannot be read as XML: {reason}.",
                    "Export it again as plain SVG.",
                )
            )
            return
        self.problems.extend(self._uses.problems())
        for name, place in self._wanted:
            if self._full(name) not in self._ids:
                near = nearest(name, self._ids_as_written)
                cure = f"Write `#{near[0]}`, or give" if near else "Give"
                self.problems.append(
                    fault(
                        "F007",
                        place,
                        f"Nothing in the drawing has the id `{name[:60]}`.",
                        f"{cure} something that id.",
                    )
                )

    def _place(self, length: int = 1) -> Place:
        return Place(
            file=self.file,
            line=self._parser.CurrentLineNumber,
            column=self._parser.CurrentColumnNumber + 1,
            length=length,
        )

    def _refuse(self, code: str, length: int, message: str, mend: str) -> None:
        self.problems.append(fault(code, self._place(length), message, mend))
        if len(self.problems) >= 50:
            raise _EnoughError

    def _doctype(self, *_: object) -> None:
        place = Place(file=self.file, line=self._parser.CurrentLineNumber)
        self.problems.append(
            fault(
                "F004",
                place,
                "The drawing starts with a DOCTYPE.",
                "Take it out; a figure starts with `<svg …>`.",
            )
        )
        raise _EnoughError

    def _instruction(self, target: str, _: str) -> None:
        self._refuse(
            "F005", len(target) + 2, f"The drawing has an instruction <?{target[:40]}?>.", "Take it out."
        )

    def _start(self, name: str, listed: list[str]) -> None:
        if self._skipped or name not in ELEMENTS:
            if not self._skipped:
                self._refuse_element(name)
            self._skipped += 1
            return
        attributes = dict(zip(listed[::2], listed[1::2], strict=True))
        if not self._open:
            self._check_root(name, attributes)
        elif name == "svg":
            self._refuse("F005", 4, "There is one `<svg>` inside another.", "Use `<g>` for the inner one.")
        if self._open and self._open[-1] in ("title", "desc"):
            self._refuse(
                "F005",
                len(name) + 1,
                f"A `<{name}>` stands inside `<{self._open[-1]}>`.",
                "Leave only text there.",
            )
        self._open.append(name)
        self._uses.enter(self._full(attributes["id"]) if "id" in attributes else "")
        if name == "use":
            self._uses.note(self._full(attributes.get("href", "")[1:]), self._place(4))
        self.written.append("<" + name)
        for key, value in attributes.items():
            self.written.extend(self._attribute(name, key, value))
        self.written.append(">")

    def _refuse_element(self, name: str) -> None:
        near = nearest(name, ELEMENTS)
        if ":" in name or name in ("metadata", "sodipodi"):
            mend = "Export it as plain SVG, without the drawing program's own data."
        elif name in ("style", "linearGradient", "radialGradient", "filter"):
            mend = "Take it out and give the shapes classes of the theme, such as `ink` or `tint-1`."
        elif near:
            mend = f"Write `<{near[0]}>`."
        else:
            mend = "Take it out; a figure is drawn with paths, shapes and text only."
        self._refuse("F005", len(name) + 1, f"A figure cannot hold `<{name[:60]}>`.", mend)

    def _check_root(self, name: str, attributes: dict[str, str]) -> None:
        # The page gives the drawing as a whole an id; one of its own would be a second.
        attributes.pop("id", None)
        if name != "svg":
            self._refuse(
                "F005",
                len(name) + 1,
                f"The drawing starts with `<{name}>`.",
                "Start it with `<svg viewBox=…>`.",
            )
            return
        if not _BOX_NUMBERS.fullmatch(attributes.get("viewBox", "")):
            self._refuse(
                "F006",
                4,
                "The drawing has no `viewBox` of four plain numbers, the last two above 0.",
                'Write it into `<svg …>`, for example `viewBox="0 0 480 320"`.',
            )
        else:
            self.lettering.width = float(re.split(r"[\s,]+", attributes["viewBox"])[2])
            self.lettering.place = self._place(4)
        for key in ("width", "height"):
            if attributes.pop(key, None) is not None:
                self._refuse(
                    "F006",
                    4,
                    f"The drawing fixes its `{key}`.",
                    f"Take `{key}` out of `<svg …>`; the page sets the size.",
                )

    def _attribute(self, element: str, key: str, value: str) -> Iterator[str]:
        if key not in ELEMENTS[element] and key not in _EVERYWHERE:
            self._refuse_attribute(element, key)
            return
        if key == "xmlns" and value != _NAMESPACE:
            self._refuse(
                "F004", 4, "The drawing's `xmlns` is not that of SVG.", f'Write `xmlns="{_NAMESPACE}"`.'
            )
        elif key == "id":
            value = self._own_id(value)
        elif key == "class":
            self._check_classes(element, value)
            if element in _TEXT_ELEMENTS:
                self.lettering.note(value)
        elif key == "href":
            value = self._local(value[1:] if value.startswith("#") else "", value, "#{}")
        elif key in _REFERENCE_ATTRIBUTES and value != "none":
            found = _LOCAL_URL.fullmatch(value.strip())
            if found is None and key == "fill":
                self._refuse(
                    "F006",
                    len(element) + 1,
                    f"`fill` sets a colour, `{value[:40]}`.",
                    "Take it out and use a class of the theme, such as `fill-ink` or `tint-1`.",
                )
                return
            value = self._local(found[1] if found else "", value, "url(#{})")
        yield f" {key}={quoteattr(value)}"

    def _check_classes(self, element: str, value: str) -> None:
        for name in value.split():
            if name not in CLASSES:
                near = nearest(name, CLASSES)
                self._refuse(
                    "F008",
                    len(element) + 1,
                    f"The theme has no class called `{name[:60]}`.",
                    f"Write {' or '.join(f'`{one}`' for one in near)}, or take it out."
                    if near
                    else "Take it out, or use one such as `ink`, `tint-1` or `label`.",
                )

    def _full(self, name: str) -> str:
        """An id with the figure's name before it, once."""
        return name if name.startswith(f"{self.figure}-") else f"{self.figure}-{name}"

    def _own_id(self, name: str) -> str:
        full = self._full(name)
        if not _NAME.fullmatch(name):
            self._refuse(
                "F007", 4, f"`{name[:60]}` cannot be an id in a drawing.", "Use letters, digits and hyphens."
            )
        elif full in self._ids:
            self.problems.append(
                fault(
                    "F007",
                    self._place(),
                    f"Two elements of the drawing have the id `{name[:60]}`.",
                    "Rename one of them.",
                    (self._ids[full],),
                )
            )
        self._ids.setdefault(full, self._place())
        self._ids_as_written.add(name)
        return full

    def _local(self, name: str, value: str, form: str) -> str:
        """The reference with the figure's prefix; anything that leads out of the drawing is refused."""
        if not _NAME.fullmatch(name):
            self._refuse(
                "F007",
                4,
                f"`{value[:60]}` leads out of the drawing.",
                "Refer to an id of this drawing, such as `#arrow`.",
            )
            return value
        self._wanted.append((name, self._place()))
        return form.format(self._full(name))

    def _refuse_attribute(self, element: str, key: str) -> None:
        allowed = ELEMENTS[element] | _EVERYWHERE
        near = nearest(key, allowed)
        if key == "style" or key.startswith(("stroke", "font", "opacity", "color")):
            mend = "Take it out and use a class of the theme, such as `ink`, `thin` or `label`."
        elif key == "xlink:href" and element == "use":
            mend = "Write `href` instead."
        elif ":" in key:
            mend = "Export it as plain SVG, without the drawing program's own data."
        elif near:
            mend = f"Write `{near[0]}` if that is meant, or take it out."
        else:
            mend = "Take it out."
        self._refuse("F006", len(element) + 1, f"`<{element}>` cannot have `{key[:60]}` in a figure.", mend)

    def _end(self, name: str) -> None:
        if self._skipped:
            self._skipped -= 1
            return
        self._open.pop()
        self._uses.leave()
        self.written.append(f"</{name}>")

    def _characters(self, text: str) -> None:
        if self._skipped or not self._open:
            return
        if self._open[-1] in _TEXT_ELEMENTS:
            self.written.append(escape(re.sub(r"\s+", " ", text)))
        elif text.strip():
            self._refuse(
                "F005",
                1,
                f"Text stands loose in `<{self._open[-1]}>`.",
                "Put it into `<text>`, or take it out.",
            )


class _EnoughError(Exception):
    """Enough is known; the rest of the drawing is not read."""
