"""The theme's styles, scripts and fonts as the files of a site.

Styles and scripts are put together in the order that the lists in ``css`` and ``js`` name, and
give one text to inline into the one-file edition. Comments and indentation stay behind, which takes a
third off what a phone fetches; names and lines stay, so that what is served can still be read.
"""

from __future__ import annotations

import base64
import re
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable

STYLES = {
    "assets/journeybook.css": "order.txt",
    "assets/practical.css": "order-practical.txt",
}
"""What every page loads, and what a practical loads besides, by the list of its parts."""
SCRIPTS = {
    "assets/journeybook.js": "order.txt",
    "assets/check.js": "order-check.txt",
    "assets/search.js": "order-search.txt",
    "assets/bench.js": "order-bench.txt",
    "assets/calculator.js": "order-calculator.txt",
    "assets/drill.js": "order-drill.txt",
    "assets/deflate.js": "order-deflate.txt",
    "assets/checking.js": "order-checking.txt",
    "assets/practical.js": "order-practical.txt",
}
"""What every page loads, and what only some pages load besides (the check, the search, those with a bench,
a calculator or a drill, the checking of a certificate, a practical; ``deflate`` is what the last two share),
by the list of its parts."""

_COMMENT_BLOCK = re.compile(r"^[ \t]*/\*(?!!).*?\*/[ \t]*\n", re.DOTALL | re.MULTILINE)
_COMMENT_LINE = re.compile(r"^[ \t]*//.*\n", re.MULTILINE)
_INDENTATION = re.compile(r"^[ \t]+", re.MULTILINE)
_EMPTY_LINE = re.compile(r"\n{2,}")
_FONT_ADDRESS = re.compile(r"url\((fonts/[a-z0-9-]+\.woff2)\)")


def _theme() -> Traversable:
    return files("journeybook.theme")


def _joined(folder: str, order: str) -> str:
    home = _theme() / folder
    names = (home / order).read_text(encoding="utf-8").split()
    return "\n".join((home / name).read_text(encoding="utf-8").strip() + "\n" for name in names)


def _lean(text: str) -> str:
    """Without comments that have lines to themselves, indentation and empty lines; licences (``/*!``) stay.

    Only whole lines are touched, so a ``//`` or ``/*`` inside a text stays. No text of the theme's scripts runs over
    several lines; a test keeps it so, because its indentation would be lost here.
    """
    for unneeded in (_COMMENT_BLOCK, _INDENTATION):
        text = unneeded.sub("", text)
    return _EMPTY_LINE.sub("\n", text)


@cache
def styles() -> dict[str, str]:
    """The style files of a site by path; fonts are addressed beside them."""
    return {path: _lean(_joined("css", order)) for path, order in STYLES.items()}


def style() -> str:
    """All styles as one text, for a page that stands alone."""
    return "\n".join(styles().values())


@cache
def scripts() -> dict[str, str]:
    """The script files of a site by path: classic scripts put together, each a single top-level const."""
    return {path: _lean(_COMMENT_LINE.sub("", _joined("js", order))) for path, order in SCRIPTS.items()}


def script() -> str:
    """All scripts as one text, for a page that stands alone."""
    return "\n".join(scripts().values())


@cache
def sitting_script() -> str:
    """The scripts of a sitting's page as one text; no page of a site loads them."""
    return _lean(_COMMENT_LINE.sub("", _joined("js", "order-sitting.txt")))


@cache
def fonts() -> dict[str, bytes]:
    """The font files by their address in the styles: ``fonts/read.woff2``."""
    return {name: (_theme() / name).read_bytes() for name in sorted(set(_FONT_ADDRESS.findall(style())))}


@cache
def style_with_fonts() -> str:
    """All styles with the fonts inside, for a page that stands alone."""

    def inlined(found: re.Match[str]) -> str:
        return f"url(data:font/woff2;base64,{base64.b64encode(fonts()[found.group(1)]).decode('ascii')})"

    return _FONT_ADDRESS.sub(inlined, style())


def asset_files() -> dict[str, bytes]:
    """Every shared file of a site, by its path relative to the site's root."""
    shared = {path: text.encode() for path, text in (styles() | scripts()).items()}
    return shared | {f"assets/{name}": content for name, content in fonts().items()}


def forget() -> None:
    """Read the theme anew next time; the preview calls it so that a changed style shows."""
    for cached in (styles, scripts, sitting_script, fonts, style_with_fonts):
        cached.cache_clear()
