"""The theme holds together: every style is shipped, every token exists, the colours can be read."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

import pytest

from journeybook.drawing.figure_classes import CLASSES

ROOT = Path(__file__).parents[3]
THEME = Path(str(files("journeybook.theme")))
CSS = THEME / "css"
TOKENS = (CSS / "tokens.css").read_text(encoding="utf-8")
SCHEMES = {
    "light": TOKENS.split("@media")[0],
    "dark": TOKENS.split("@media (prefers-color-scheme: dark)")[1].split("@media")[0],
}
READABLE = 4.5
"""Contrast for text: WCAG 2.2, success criterion 1.4.3."""
VISIBLE = 3.0
"""Contrast for edges and signs: WCAG 2.2, success criterion 1.4.11."""


def colours(scheme: str) -> dict[str, str]:
    return dict(re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{6});", SCHEMES[scheme]))


def luminance(colour: str) -> float:
    """Relative luminance; WCAG 2.2, "relative luminance"."""
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (red, green, blue)]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_every_style_file_is_shipped_once() -> None:
    order = [name for path in CSS.glob("order*.txt") for name in path.read_text(encoding="utf-8").split()]
    assert sorted(order) == sorted(path.name for path in CSS.glob("*.css"))


def test_every_token_that_a_style_uses_is_defined() -> None:
    everything = "\n".join(path.read_text(encoding="utf-8") for path in CSS.glob("*.css"))
    used = set(re.findall(r"var\((--[a-z0-9-]+)", everything))
    defined = set(re.findall(r"(--[a-z0-9-]+):", everything))
    assert used - defined == set()


def test_light_and_dark_paint_the_same_things() -> None:
    assert colours("light").keys() == colours("dark").keys()


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("ground", ["card", "paper", "field", "card-edge"])
@pytest.mark.parametrize("text", ["ink", "ink-soft", "chalk", "act", "hold", "stamp", "handwriting"])
def test_text_can_be_read_on_every_ground(scheme: str, ground: str, text: str) -> None:
    paint = colours(scheme)
    assert contrast(paint[text], paint[ground]) >= READABLE


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize(
    ("text", "ground"),
    [
        ("on-act", "act"),
        ("on-act-fill", "act-fill"),
        ("on-act-fill", "act-fill-deep"),
        ("on-hold", "hold"),
        ("ink", "hold-wash"),
        ("hold", "hold-wash"),
        ("ink", "act-wash"),
        ("act", "act-wash"),
        ("ink", "mark"),
        ("ink", "tint-1"),
        ("ink", "tint-2"),
    ],
)
def test_text_can_be_read_on_the_ground_made_for_it(scheme: str, text: str, ground: str) -> None:
    paint = colours(scheme)
    assert contrast(paint[text], paint[ground]) >= READABLE


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("ground", ["card", "paper", "bench", "act-fill"])
def test_one_of_the_two_rings_of_the_focus_is_seen_on_every_ground(scheme: str, ground: str) -> None:
    paint = colours(scheme)
    assert max(contrast(paint[ring], paint[ground]) for ring in ("focus", "focus-halo")) >= VISIBLE


def test_every_class_that_drawings_may_use_is_painted() -> None:
    figure = (CSS / "figure.css").read_text(encoding="utf-8")
    inside = sorted(CLASSES - {"figure"})
    assert [name for name in inside if not re.search(rf"\.figure \.{name}(?![\w-])", figure)] == []
    assert re.search(r"svg\.figure \{", figure)


def test_authors_are_told_of_every_class_that_drawings_may_use() -> None:
    told = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert [name for name in sorted(CLASSES) if f"`{name}`" not in told] == []


def test_the_two_faces_stay_within_forty_kilobytes_and_carry_their_licences() -> None:
    fonts = THEME / "fonts"
    assert sum((fonts / name).stat().st_size for name in ("label.woff2", "read.woff2")) <= 40_000
    for licence in ("barlow-condensed-OFL.txt", "atkinson-hyperlegible-next-OFL.txt"):
        assert "SIL Open Font License, Version 1.1" in (fonts / licence).read_text(encoding="utf-8")


def test_every_font_that_the_styles_name_is_there() -> None:
    named = re.findall(r"url\((fonts/[^)]+)\)", (CSS / "fonts.css").read_text(encoding="utf-8"))
    assert len(named) == 4
    assert [name for name in named if not (THEME / name).is_file()] == []


def test_no_style_reaches_outside_the_theme() -> None:
    everything = "\n".join(path.read_text(encoding="utf-8") for path in CSS.glob("*.css"))
    assert not re.search(r"@import|https?:|url\((?!fonts/)", everything)
