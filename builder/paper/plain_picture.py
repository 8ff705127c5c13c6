"""A drawing of a course as a picture for paper: its classes become colours that stand in the SVG itself.

On a page the theme's styles give a drawing its look, through variables that no typesetter knows. So the same rules,
read from ``css/figure.css``, are put into the drawing with the values of ``css/tokens.css``: those of print, because
papers come out of black-and-white printers. What differs only by its colour on screen differs by its dashes as well.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from itertools import pairwise

from journeybook.content.model import Figure
from journeybook.content.wording import Wording
from journeybook.drawing.xml_text import escape

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_RULE = re.compile(r"^((?:svg\.figure|\.figure )[^{}@]*)\{([^{}]*)\}", re.MULTILINE)
_VARIABLE = re.compile(r"var\((--[a-z0-9-]+)\)")
_TOKEN = re.compile(r"(--[a-z0-9-]+):\s*([^;]+);")
_FONT = re.compile(r"font:\s*(\d+)\s+(\d+)px\s+([^;]+);")
_VIEW_BOX = re.compile(r'\bviewBox="\s*[-\d.]+[\s,]+[-\d.]+[\s,]+([\d.]+)[\s,]+([\d.]+)\s*"')
_ROOT = re.compile(r"<svg\b[^>]*>")


@dataclass(frozen=True, kw_only=True)
class Picture:
    """A drawing as ``press`` takes it, and what a template needs beside it."""

    name: str
    """Of the file under which a template finds it: ``figure-ID.svg``."""
    data: bytes
    """The SVG, with its own colours."""
    alt: str
    """What it shows, in words: every picture on paper has to say it (PDF/UA)."""
    wide: float
    """Width and height of the drawing in its own units: lettering of 13 units is the smallest there is."""
    high: float

    def as_data(self) -> dict[str, str | float]:
        """What a template reads; ``pictures`` of ``press`` gets ``{picture.name: picture.data}``."""
        return {"name": self.name, "alt": self.alt, "wide": self.wide, "high": self.high}


def picture_of(figure: Figure, wording: Wording) -> Picture:
    """The drawing of a figure, with its alt text in plain words."""
    wide, high = size_of(figure.svg)
    alt = wording.plain(figure.alt) or wording.plain(figure.title)
    return Picture(name=f"figure-{figure.id}.svg", data=plain_svg(figure.svg), alt=alt, wide=wide, high=high)


def plain_svg(svg: str) -> bytes:
    """A checked drawing, with the theme's classes, as an SVG file that needs no theme.

    The drawing may be a whole figure or any other SVG with root class ``figure``; it is returned unchanged but for a
    ``style`` element as its first child. Raises ValueError where there is no root element.
    """
    root = _ROOT.search(svg)
    if root is None:
        raise ValueError("There is no svg element.")
    style = f"<style>{escape(_rules())}</style>"
    return (svg[: root.end()] + style + svg[root.end() :]).encode()


def size_of(svg: str) -> tuple[float, float]:
    """Width and height of a drawing, in its own units; raises ValueError without a ``viewBox``."""
    view = _VIEW_BOX.search(svg)
    if view is None:
        raise ValueError("The drawing has no viewBox.")
    return float(view[1]), float(view[2])


@cache
def _rules() -> str:
    """The theme's rules for drawings, with every value in place."""
    css = files("journeybook.theme") / "css"
    values = _values((css / "tokens.css").read_text(encoding="utf-8"))
    # The families after ours are for browsers; on paper there is none but our own.
    values["--read"], values["--label"] = '"Journeybook Read"', '"Journeybook Label"'
    sheet = _COMMENT.sub("", (css / "figure.css").read_text(encoding="utf-8"))
    rules = []
    for selectors, body in _RULE.findall(sheet):
        plain = _VARIABLE.sub(lambda name: values[name[1]], body)
        rules.append(f"{selectors.strip()}{{{_FONT.sub(_long_font, plain).strip()}}}")
    return "\n".join(rules)


def _values(tokens: str) -> dict[str, str]:
    """The light values of the theme's variables, those of print above them."""
    light, print_only = _COMMENT.sub("", tokens), ""
    marks = [found.start() for found in re.finditer(r"^@media|^:root", light, re.MULTILINE)] + [len(light)]
    blocks = [light[start:end] for start, end in pairwise(marks)]
    light = "".join(block for block in blocks if block.startswith(":root"))
    print_only = "".join(block for block in blocks if block.startswith("@media print"))
    return dict(_TOKEN.findall(light)) | dict(_TOKEN.findall(print_only))


def _long_font(short: re.Match[str]) -> str:
    """``font`` written out: the short form is read by browsers only."""
    return f"font-weight: {short[1]}; font-size: {short[2]}px; font-family: {short[3]};"
