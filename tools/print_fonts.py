"""Makes the fonts of the printed papers: builder/paper/fonts, plain TrueType, which the typesetter can read.

Usage: ``python tools/print_fonts.py NODE_MODULES builder/paper/fonts``

NODE_MODULES holds the packages ``@fontsource/barlow-condensed`` and ``@fontsource/atkinson-hyperlegible-next``
from the npm registry, both under the SIL Open Font License 1.1. Needs ``fonttools`` and ``brotli``. The files
of a weight, western, further Latin and, where the face has it, Vietnamese, become one; the faces are renamed, as the
licence asks of changed ones.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

from fontTools.merge import Merger
from fontTools.ttLib import TTFont

LABEL = "barlow-condensed"
READ = "atkinson-hyperlegible-next"
FACES = [
    (LABEL, 600, "normal", "Journeybook Label", "label.ttf"),
    (READ, 400, "normal", "Journeybook Read", "read.ttf"),
    (READ, 400, "italic", "Journeybook Read", "read-italic.ttf"),
    (READ, 700, "normal", "Journeybook Read", "read-bold.ttf"),
]
_STYLES = {
    (400, "normal"): "Regular",
    (400, "italic"): "Italic",
    (600, "normal"): "Regular",
    (700, "normal"): "Bold",
}


def face(files: Path, source: str, weight: int, slope: str, folder: Path) -> TTFont:
    """Every Latin of one face as one font."""
    parts: list[str] = []
    for script in ("latin", "latin-ext", "vietnamese"):
        packed = files / f"{source}-{script}-{weight}-{slope}.woff2"
        if not packed.exists() and script == "vietnamese":
            continue
        font = TTFont(packed)
        font.flavor = None
        part = folder / f"{source}-{script}-{weight}-{slope}.ttf"
        font.save(part)
        parts.append(str(part))
    return Merger().merge(parts)


def renamed(font: TTFont, family: str, style: str) -> TTFont:
    """The font under our name; copyright and licence stay in it."""
    names = font["name"]
    for record in list(names.names):
        if record.nameID in (16, 17, 21, 22, 25):
            names.removeNames(nameID=record.nameID)
    post = f"{family}-{style}".replace(" ", "")
    for number, text in ((1, family), (2, style), (3, post), (4, f"{family} {style}"), (6, post)):
        names.setName(text, number, 3, 1, 0x409)
    names.removeNames(nameID=7)
    if family.endswith("Label"):
        font["OS/2"].usWeightClass = 400  # the only one of its family: what asks for no weight gets it
    return font


def main(node_modules: Path, home: Path) -> None:
    """Writes the faces and their licences."""
    home.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        for source, weight, slope, family, name in FACES:
            package = node_modules / "@fontsource" / source
            font = renamed(
                face(package / "files", source, weight, slope, Path(folder)), family, _STYLES[weight, slope]
            )
            font["head"].created = font["head"].modified = 3_800_000_000
            font.recalcTimestamp = False
            font.save(home / name)
            sys.stdout.write(f"{name}: {(home / name).stat().st_size} bytes\n")
            shutil.copyfile(package / "LICENSE", home / f"{source}-OFL.txt")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
