"""One part of a drawing by itself."""

from __future__ import annotations

import xml.etree.ElementTree as ET

from journeybook.drawing.excerpt import excerpt
from journeybook.drawing.svg_check import check_svg

SVG = """<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 100 100">
<defs><pattern id="lines" width="4" height="4"><path class="hatch" d="M0 4L4 0"/></pattern>
<pattern id="unused" width="4" height="4"><path id="never" class="hatch" d="M0 0h4"/></pattern>
<clipPath id="edge"><rect width="50" height="50"/></clipPath></defs>
<g id="case" transform="translate(5 5)" clip-path="url(#edge)">
<rect id="lid" class="ink" fill="url(#lines)" width="20" height="10"/>
<g id="knob"><circle id="pin" class="ink" r="4"/><text class="small" x="2" y="3">A &amp; B</text></g>
</g>
<use id="second" href="#pin" x="40"/>
</svg>"""


def drawn() -> str:
    svg, problems = check_svg(SVG.encode(), "f.svg", "f")
    assert svg is not None, problems
    return svg


def ids(markup: str) -> set[str]:
    tree = ET.fromstring(f"<svg>{markup}</svg>")
    return {one.attrib["id"] for one in tree.iter() if "id" in one.attrib}


def test_a_part_stands_inside_of_what_moves_and_cuts_it() -> None:
    found = excerpt(drawn(), "f-knob", "w-")
    assert found.endswith(
        '<g transform="translate(5 5)" clip-path="url(#w-f-edge)"><g><circle class="ink" r="4"></circle>'
        '<text class="small" x="2" y="3">A &amp; B</text></g></g>'
    )


def test_nothing_of_its_neighbours_comes_along() -> None:
    assert "rect id" not in excerpt(drawn(), "f-knob", "w-")
    assert 'class="ink" fill' not in excerpt(drawn(), "f-knob", "w-")


def test_only_what_is_named_has_an_id_and_that_with_the_prefix() -> None:
    assert ids(excerpt(drawn(), "f-lid", "w-")) == {"w-f-lines", "w-f-edge"}
    assert ids(excerpt(drawn(), "f-second", "w-")) == {"w-f-pin"}


def test_what_a_use_draws_comes_along() -> None:
    found = excerpt(drawn(), "f-second", "w-")
    assert '<use href="#w-f-pin" x="40">' in found
    assert '<defs><circle id="w-f-pin" class="ink" r="4"></circle></defs>' in found


def test_a_part_that_is_not_there_gives_nothing() -> None:
    assert excerpt(drawn(), "f-handle", "w-") == ""
