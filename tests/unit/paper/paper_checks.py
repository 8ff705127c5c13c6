"""What is asked of every paper: the two standards, our own faces, and that all of it can be read."""

from __future__ import annotations

import re
import unicodedata
from collections import defaultdict
from io import BytesIO
from itertools import combinations
from pathlib import Path
from typing import Any

import pdfua
import pikepdf
import pypdfium2
from PIL import Image

FACES = {
    "JourneybookLabel-Regular",
    "JourneybookRead-Regular",
    "JourneybookRead-Bold",
    "JourneybookRead-Italic",
}
Box = tuple[float, float, float, float]
"""Left, bottom, right, top, in points."""


def standards_of(pdf: bytes) -> dict[str, str]:
    """What the paper says it is: part and level of PDF/A, part of PDF/UA, its language and its title."""
    with pikepdf.open(BytesIO(pdf)) as opened:
        meta = opened.open_metadata()
        return {
            "pdf/a": f"{meta['pdfaid:part']}{meta['pdfaid:conformance']}",
            "pdf/ua": str(meta["pdfuaid:part"]),
            "language": str(opened.Root.Lang),
            "title": str(meta["dc:title"]),
        }


def findings_of(pdf: bytes, folder: Path) -> list[str]:
    """What the checker of PDF/UA finds."""
    path = folder / "checked.pdf"
    path.write_bytes(pdf)
    return [f"{found.rule_id}: {found.message}" for found in pdfua.validate(str(path)).findings]


def faces_of(pdf: bytes) -> set[str]:
    """The names of the faces in the paper, each without the letters that mark a part of it."""
    with pikepdf.open(BytesIO(pdf)) as opened:
        fonts = [each for each in opened.objects if _is_font(each)]
        return {str(font.BaseFont).lstrip("/").split("+")[-1] for font in fonts}


def _is_font(each: Any) -> bool:
    return isinstance(each, pikepdf.Dictionary) and each.get("/Type") == "/Font" and "/BaseFont" in each


def pages_of(pdf: bytes) -> list[str]:
    """The words of each page, with single spaces."""
    document = pypdfium2.PdfDocument(pdf)
    texts = [page.get_textpage().get_text_bounded() for page in document]
    return [" ".join(unicodedata.normalize("NFC", text).split()) for text in texts]


def size_of_page(pdf: bytes) -> tuple[int, int]:
    """Width and height of the first page, in whole millimetres."""
    wide, high = pypdfium2.PdfDocument(pdf)[0].get_size()
    return round(wide / 72 * 25.4), round(high / 72 * 25.4)


def picture_of_page(pdf: bytes, dots_per_inch: int = 72, page: int = 0) -> Image.Image:
    """The page as a printer would make it."""
    rendered: Image.Image = pypdfium2.PdfDocument(pdf)[page].render(scale=dots_per_inch / 72).to_pil()
    return rendered


def badly_placed(pdf: bytes, edge: float = 14.0) -> list[str]:
    """Letters that stand nearer than ``edge`` points to the paper's edge, or on another letter."""
    said = []
    for number, page in enumerate(pypdfium2.PdfDocument(pdf), start=1):
        wide, high = page.get_size()
        text = page.get_textpage()
        letters = [
            (text.get_text_range(at, 1), text.get_charbox(at, loose=False))
            for at in range(text.count_chars())
        ]
        seen = [
            (sign, box)
            for sign, box in letters
            if sign.strip() and unicodedata.category(sign) != "Cf" and box[2] > box[0]
        ]
        for sign, (left, bottom, right, top) in seen:
            if left < edge or bottom < edge or right > wide - edge or top > high - edge:
                said.append(f"page {number}: {sign!r} at {left:.0f}, {bottom:.0f}")
        said += [f"page {number}: {one!r} on {other!r}" for one, other in _on_each_other(seen)]
    return said


def _on_each_other(letters: list[tuple[str, Box]]) -> list[tuple[str, str]]:
    near: dict[tuple[int, int], list[tuple[str, Box]]] = defaultdict(list)
    for sign, box in letters:
        near[int(box[0] // 30), int(box[1] // 30)].append((sign, box))
    return [
        (one[0], other[0])
        for cell in near.values()
        for one, other in combinations(cell, 2)
        # The letters of a ligature have one box.
        if one[1] != other[1] and _shared(one[1], other[1]) > 0.4 * min(_area(one[1]), _area(other[1]))
    ]


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _shared(one: Box, other: Box) -> float:
    across = min(one[2], other[2]) - max(one[0], other[0])
    up = min(one[3], other[3]) - max(one[1], other[1])
    return max(0.0, across) * max(0.0, up)


def without_spaces(text: str) -> str:
    """A text to look for where lines are broken and words parted anywhere."""
    return re.sub(r"[\s\N{SOFT HYPHEN}]+", "", text)
