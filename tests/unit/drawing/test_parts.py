"""The parts of a drawing: their ids, and about where they lie."""

from __future__ import annotations

import math

import pytest

from journeybook.drawing.parts import Box, drawn, full_id, is_small, part_ids
from journeybook.drawing.path_points import path_points


def svg(inside: str, view: str = "0 0 376 240") -> str:
    """A drawing one unit of which is one pixel on a phone."""
    return f'<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="{view}">{inside}</svg>'


def box(inside: str) -> tuple[int, ...]:
    """The box of the part ``f-a``, to the nearest unit."""
    found = drawn(svg(inside)).parts["f-a"].box
    assert found is not None
    return tuple(round(side) for side in found)


def test_parts_are_named_as_their_author_wrote_them() -> None:
    assert part_ids(svg('<g id="f-a"><rect id="f-b" x="1" y="1" width="9" height="9"/></g>'), "f") == [
        "a",
        "b",
    ]


@pytest.mark.parametrize("written", ["sleeve", "guard-sleeve"])
def test_an_author_may_write_the_figures_name_before_a_part(written: str) -> None:
    assert full_id(written, "guard") == "guard-sleeve"


@pytest.mark.parametrize("kept", ["defs", "pattern", "marker", "clipPath", "title"])
def test_what_is_not_drawn_where_it_stands_is_no_part(kept: str) -> None:
    assert part_ids(svg(f'<{kept}><g id="f-a"/></{kept}>'), "f") == []


@pytest.mark.parametrize(
    ("shape", "expected"),
    [
        pytest.param('<rect id="f-a" x="10" y="20" width="30" height="40"/>', (10, 20, 40, 60), id="rect"),
        pytest.param('<circle id="f-a" cx="50" cy="60" r="10"/>', (40, 50, 60, 70), id="circle"),
        pytest.param('<ellipse id="f-a" cx="50" cy="60" rx="20" ry="10"/>', (30, 50, 70, 70), id="ellipse"),
        pytest.param('<line id="f-a" x1="5" y1="9" x2="1" y2="2"/>', (1, 2, 5, 9), id="line"),
        pytest.param('<polygon id="f-a" points="0,0 8,2 4,9"/>', (0, 0, 8, 9), id="polygon"),
        pytest.param('<path id="f-a" d="M10 10h20v5l-4 3z"/>', (10, 10, 30, 18), id="path"),
        pytest.param(
            '<rect id="f-a" class="ink" x="10" y="20" width="30" height="40"/>', (9, 19, 41, 61), id="line"
        ),
        pytest.param(
            '<g id="f-a"><rect x="0" y="0" width="2" height="2"/><rect x="8" y="8" width="2" height="2"/></g>',
            (0, 0, 10, 10),
            id="group",
        ),
    ],
)
def test_a_part_has_the_box_of_what_is_drawn(shape: str, expected: tuple[int, ...]) -> None:
    assert box(shape) == expected


@pytest.mark.parametrize(
    ("transform", "expected"),
    [
        ("translate(100 10)", (100, 10, 140, 30)),
        ("translate(100)", (100, 0, 140, 20)),
        ("scale(2)", (0, 0, 80, 40)),
        ("rotate(90)", (-20, 0, 0, 40)),
        ("rotate(180 20 10)", (0, 0, 40, 20)),
        ("matrix(1 0 0 1 5 6)", (5, 6, 45, 26)),
        ("translate(10 0) scale(2 1)", (10, 0, 90, 20)),
        ("skewX(45)", (0, 0, 60, 20)),
    ],
)
def test_a_part_is_where_its_transform_puts_it(transform: str, expected: tuple[int, ...]) -> None:
    assert box(f'<rect id="f-a" width="40" height="20" transform="{transform}"/>') == expected


def test_a_part_is_where_the_transforms_around_it_put_it() -> None:
    inside = '<g transform="translate(10 10)"><g transform="scale(2)"><rect id="f-a" width="4" height="4"/></g></g>'
    assert box(inside) == (10, 10, 18, 18)


@pytest.mark.parametrize(
    "inside",
    ['<rect id="f-a" width="9" height="9" transform="turn(3)"/>', '<use id="f-a" href="#f-b"/>'],
)
def test_a_place_that_cannot_be_worked_out_is_not_guessed(inside: str) -> None:
    part = drawn(svg(inside)).parts["f-a"]
    assert part.box is None
    assert not is_small(part, drawn(svg(inside)))


@pytest.mark.parametrize(
    ("side", "small"),
    [pytest.param(23.9, True, id="under 24 pixels"), pytest.param(24, False, id="24 pixels")],
)
def test_a_part_under_24_pixels_on_a_phone_is_small(side: float, small: bool) -> None:
    drawing = drawn(svg(f'<rect id="f-a" width="{side}" height="200"/>'))
    assert is_small(drawing.parts["f-a"], drawing) is small


def test_on_a_wide_drawing_a_part_has_to_be_larger() -> None:
    drawing = drawn(svg('<rect id="f-a" width="40" height="40"/>', view="0 0 752 240"))
    assert is_small(drawing.parts["f-a"], drawing)


@pytest.mark.parametrize(
    ("inside", "filled"),
    [
        ('<path id="f-a" class="dots" d="M1 1h0m8 8h0"/>', False),
        ('<path id="f-a" class="thin" d="M1 1h9"/>', False),
        ('<g id="f-a"><text class="small" x="9" y="9">collar</text></g>', False),
        ('<g id="f-a"><path class="thin" d="M1 1h9"/><rect class="tint-1" width="9" height="9"/></g>', True),
        ('<rect id="f-a" width="9" height="9"/>', True),
    ],
)
def test_a_part_of_lines_dots_or_letters_is_no_area(inside: str, filled: bool) -> None:
    assert drawn(svg(inside)).parts["f-a"].filled is filled


def test_lettering_stands_from_its_start_its_middle_or_its_end() -> None:
    texts = "".join(
        f'<text class="label {anchor}" x="200" y="50">collar</text>' for anchor in ("", "middle", "end")
    )
    starts, middles, ends = drawn(svg(texts)).texts
    assert starts.left == 200
    assert middles.centre[0] == 200
    assert ends.right == 200
    assert 30 < starts.width < 60


def test_a_line_of_its_own_within_a_text_has_its_own_place() -> None:
    inside = '<text class="label" x="10" y="20">one<tspan x="10" y="80">two</tspan></text>'
    first, second = sorted(drawn(svg(inside)).texts)[:2]
    assert {round(first.top), round(second.top)} == {9, 69}


def test_the_area_that_two_boxes_share() -> None:
    assert Box(0, 0, 10, 10).shared(Box(5, 5, 20, 20)) == 25
    assert Box(0, 0, 10, 10).shared(Box(10, 0, 20, 10)) == 0


@pytest.mark.parametrize(
    ("data", "expected"),
    [
        pytest.param("M0 0 10 0 10 10z", (0, 0, 10, 10), id="what follows a move are lines"),
        pytest.param("m5 5 1 0zm1 1h2", (5, 5, 8, 6), id="a close goes back to where the piece began"),
        pytest.param("M0 0C0 20 10 20 10 0", (0, 0, 10, 15), id="cubic"),
        pytest.param("M0 0q5 20 10 0", (0, 0, 10, 10), id="quadratic"),
        pytest.param("M0 0q5 20 10 0t10 0", (0, -10, 20, 10), id="smooth quadratic swings to the other side"),
        pytest.param("M0 0c0 20 10 20 10 0s10-20 10 0", (0, -15, 20, 15), id="smooth cubic"),
        pytest.param("M0 10a10 10 0 0 1 20 0", (0, 0, 20, 10), id="half a circle"),
        pytest.param("M0 0a2.2 2.2 0 1 0 4.4 0a2.2 2.2 0 1 0-4.4 0", (0, -2, 4, 2), id="a whole circle"),
        pytest.param("M0 10a10 10 0 0120 0", (0, 0, 20, 10), id="flags close to what follows"),
    ],
)
def test_a_path_passes_where_its_curves_go(data: str, expected: tuple[int, ...]) -> None:
    across, down = zip(*path_points(data), strict=True)
    sides = (min(across), min(down), max(across), max(down))
    assert all(
        math.isclose(side, wanted, abs_tol=0.9) for side, wanted in zip(sides, expected, strict=True)
    ), sides
