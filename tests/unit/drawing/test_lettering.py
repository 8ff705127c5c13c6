"""Lettering that shrinks to nothing on a phone is pointed out."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from journeybook.diagnostics.problem import Level
from journeybook.drawing.lettering import SIZES
from journeybook.drawing.svg_check import check_svg

STYLE = Path(__file__).parents[3] / "site_overrides" / "css" / "figure.css"


def codes(width: str, text: str) -> list[str]:
    data = f'<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 {width} 200">{text}</svg>'
    svg, problems = check_svg(data.encode(), "figures/knob.svg", "knob")
    assert svg is not None
    assert all(problem.level is Level.WARNING for problem in problems)
    return [problem.code for problem in problems]


@pytest.mark.parametrize(
    ("widest", "lettering"),
    [("413", "small"), ("477", "label"), ("477", "label-strong end"), ("636", "number middle")],
)
def test_each_class_of_lettering_has_its_widest_drawing(widest: str, lettering: str) -> None:
    text = f'<text class="{lettering}" x="1" y="20">collar</text>'
    assert codes(widest, text) == []
    assert codes(str(int(widest) + 1), text) == ["F009"]


def test_the_smallest_lettering_counts() -> None:
    assert codes("450", '<text class="label">nut<tspan class="small">M8</tspan></text>') == ["F009"]


def test_a_drawing_without_lettering_may_be_as_wide_as_it_likes() -> None:
    assert codes("1600", '<rect class="ink small" width="9" height="9"/>') == []


def test_the_mend_names_a_width_that_is_narrow_enough() -> None:
    data = b'<svg class="figure" viewBox="0,0,640,200"><text class="small">collar</text></svg>'
    _, problems = check_svg(data, "figures/knob.svg", "knob")
    assert "8 pixels" in problems[0].message
    assert "`viewBox` 410 wide" in problems[0].mend


def test_the_sizes_are_those_of_the_theme() -> None:
    style = STYLE.read_text(encoding="utf-8")
    painted = re.findall(r"\.figure \.([\w-]+) \{ font: \d+ (\d+)px", style)
    assert {name: int(size) for name, size in painted} == SIZES
