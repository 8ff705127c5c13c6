"""Cuts the two type faces down to what the pages need.

Usage: ``python tools/subset_fonts.py NODE_MODULES site_overrides/fonts``

NODE_MODULES holds the packages ``@fontsource/barlow-condensed`` and
``@fontsource-variable/atkinson-hyperlegible-next`` from the npm registry, both under the SIL Open Font
License 1.1. Needs ``fonttools`` and ``brotli``. Each face is written in two files: the Latin of most
western languages, which every page loads, and the further Latin letters, which a browser fetches only for
a page that uses them (``unicode-range`` in css/fonts.css). Hinting goes, because the screens this is read on
do not use it; the reading face keeps only the weights 400 to 700.
"""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

LABEL = "@fontsource/barlow-condensed"
READ = "@fontsource-variable/atkinson-hyperlegible-next"

LATIN = [
    *range(0x20, 0x7F),
    *range(0xA0, 0x100),
    0x131, 0x152, 0x153,
    0x2013, 0x2014, 0x2018, 0x2019, 0x201A, 0x201C, 0x201D, 0x201E, 0x2022, 0x2026, 0x2039, 0x203A,
    0x20AC, 0x2190, 0x2191, 0x2192, 0x2193, 0x2212, 0x2264, 0x2265, 0x2713,
]  # fmt: skip
FURTHER_LATIN = [*range(0x100, 0x131), *range(0x132, 0x152), *range(0x154, 0x180), *range(0x218, 0x21C)]

FILES = [
    (f"{LABEL}/files/barlow-condensed-latin-600-normal.woff2", LATIN, "label.woff2"),
    (f"{LABEL}/files/barlow-condensed-latin-ext-600-normal.woff2", FURTHER_LATIN, "label-further.woff2"),
    (f"{READ}/files/atkinson-hyperlegible-next-latin-wght-normal.woff2", LATIN, "read.woff2"),
    (
        f"{READ}/files/atkinson-hyperlegible-next-latin-ext-wght-normal.woff2",
        FURTHER_LATIN,
        "read-further.woff2",
    ),
]
LICENCES = [
    (f"{LABEL}/LICENSE", "barlow-condensed-OFL.txt"),
    (f"{READ}/LICENSE", "atkinson-hyperlegible-next-OFL.txt"),
]


def cut(font: TTFont, characters: list[int]) -> TTFont:
    """The font with only these code points, kerning and the marks that accents need."""
    options = Options()
    options.hinting = False
    options.layout_features = ["kern", "mark", "mkmk", "ccmp", "locl"]
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]  # copyright and licence stay in the file
    options.notdef_outline = True
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=characters)
    subsetter.subset(font)
    return instantiateVariableFont(font, {"wght": (400, 400, 700)}) if "fvar" in font else font


def main(node_modules: Path, fonts: Path) -> None:
    """Writes the four WOFF2 files and the two licences."""
    fonts.mkdir(parents=True, exist_ok=True)
    for source, characters, name in FILES:
        font = cut(TTFont(node_modules / source), characters)
        font.flavor = "woff2"
        font.save(fonts / name)
        sys.stdout.write(f"{name}: {(fonts / name).stat().st_size} bytes\n")
    for source, name in LICENCES:
        shutil.copyfile(node_modules / source, fonts / name)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
