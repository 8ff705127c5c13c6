"""Where letters stand beside the parts of a drawing."""

from __future__ import annotations

import math

from journeybook.drawing.marks import mark_places
from journeybook.drawing.parts import Box, drawn

RADIUS = 10.0


def places(inside: str) -> dict[str, tuple[float, float] | None]:
    drawing = drawn(
        f'<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 376 240">{inside}</svg>'
    )
    return dict(zip(drawing.parts, mark_places(list(drawing.parts.values()), drawing, RADIUS), strict=True))


def square(middle: tuple[float, float] | None) -> Box:
    assert middle is not None
    return Box(middle[0] - RADIUS, middle[1] - RADIUS, middle[0] + RADIUS, middle[1] + RADIUS)


def test_a_letter_of_a_large_part_stands_on_its_outline() -> None:
    x, y = places('<rect id="f-a" class="tint-1" x="40" y="40" width="200" height="100"/>')["f-a"] or (0, 0)
    assert (x, y) in {(x, y) for x in (40, 140, 240) for y in (40, 90, 140)} - {(140, 90)}


def test_a_letter_hides_little_of_a_small_part() -> None:
    part = Box(100, 100, 126, 126)
    middle = places('<rect id="f-a" class="tint-1" x="100" y="100" width="26" height="26"/>')["f-a"]
    assert square(middle).shared(part) < part.width * part.height / 5


def test_letters_do_not_cover_each_other() -> None:
    parts = "".join(
        f'<rect id="f-{number}" class="tint-1" x="{100 + 12 * number}" y="100" width="40" height="40"/>'
        for number in range(4)
    )
    found = [square(middle) for middle in places(parts).values()]
    assert not [1 for at, one in enumerate(found) for other in found[at + 1 :] if one.shared(other)]


def test_a_letter_leaves_lettering_free() -> None:
    inside = (
        '<rect id="f-a" class="tint-1" x="100" y="100" width="80" height="80"/>'
        '<text class="label" x="84" y="106">collar</text><text class="label" x="160" y="106">knob</text>'
    )
    middle = square(places(inside)["f-a"])
    drawing = drawn(
        f'<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 376 240">{inside}</svg>'
    )
    assert not any(middle.shared(text) for text in drawing.texts)


def test_a_letter_stays_in_the_drawing() -> None:
    middle = places(
        '<rect id="f-a" class="tint-1" x="0" y="0" width="376" height="240"/>'
        '<rect id="f-b" class="tint-1" x="0" y="100" width="20" height="20"/>'
    )["f-b"]
    assert math.isclose(square(middle).shared(Box(0, 0, 376, 240)), 4 * RADIUS * RADIUS)


def test_a_letter_of_dots_stands_among_them() -> None:
    dots = '<path id="f-a" class="dots" d="M100 100h0m20 0h0m60 0h0m0 60h0m-80 0h0"/>'
    assert places(dots) == {"f-a": (140.0, 130.0)}


def test_a_part_whose_place_is_not_known_has_no_letter() -> None:
    assert places('<use id="f-a" href="#f-b"/>') == {"f-a": None}
