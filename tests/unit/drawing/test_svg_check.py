from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.diagnostics.problem import Problem
from journeybook.drawing.figure_classes import CLASSES
from journeybook.drawing.svg_check import ELEMENTS, LARGEST, check_svg

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 240" class="figure">'


def check(body: str, opening: str = OPEN) -> tuple[str | None, list[Problem]]:
    return check_svg(f"{opening}{body}</svg>".encode(), "figures/knob.svg", "knob")


def good(body: str) -> str:
    svg, problems = check(body)
    assert svg is not None, problems
    return svg


def refused(body: str, opening: str = OPEN) -> Problem:
    svg, problems = check(body, opening)
    assert svg is None
    assert len(problems) == 1, problems
    return problems[0]


def test_a_plain_drawing_comes_back_normalised() -> None:
    head = '<?xml version="1.0"?>\n<!-- drawn by hand -->\n'
    data = f'{head}{OPEN}\n  <rect x="1" y="2"\n width="3" height="4"/>\n</svg>\n'
    svg, problems = check_svg(data.encode(), "figures/knob.svg", "knob")
    assert problems == []
    assert svg == f'{OPEN}<rect x="1" y="2" width="3" height="4"></rect></svg>'


def test_ids_and_references_get_the_figures_name() -> None:
    svg = good(
        '<defs><marker id="tip"><path d="M0 0"/></marker><g id="bolt"/><pattern id="hatch"/></defs>'
        '<use href="#bolt"/><path d="M0 0" marker-end="url(#tip)" fill="url(#hatch)"/>'
    )
    assert set(re.findall(r'id="([^"]+)"', svg)) == {"knob-tip", "knob-bolt", "knob-hatch"}
    assert 'href="#knob-bolt"' in svg
    assert 'marker-end="url(#knob-tip)"' in svg
    assert 'fill="url(#knob-hatch)"' in svg


def test_an_id_that_has_the_figures_name_already_gets_it_once() -> None:
    svg = good('<defs><g id="knob-bolt"/><g id="nut"/></defs><use href="#knob-bolt"/><use href="#knob-nut"/>')
    assert set(re.findall(r' id="([^"]+)"', svg)) == {"knob-bolt", "knob-nut"}
    assert re.findall(r'href="([^"]+)"', svg) == ["#knob-bolt", "#knob-nut"]


def test_two_ids_that_the_figures_name_makes_equal_are_refused() -> None:
    assert refused('<g id="tip"/><g id="knob-tip"/>').message == (
        "Two elements of the drawing have the id `knob-tip`."
    )


def test_every_class_of_the_theme_may_be_used() -> None:
    names = " ".join(sorted(CLASSES))
    assert f'class="{names}"' in good(f'<rect class="{names}" width="1" height="1"/>')


@pytest.mark.parametrize(
    ("name", "mend"),
    [
        ("lable", "Write `label`, or take it out."),
        ("Ink", "Write `ink`, or take it out."),
        ("brand-colour-7", "Take it out, or use one such as `ink`, `tint-1` or `label`."),
    ],
)
def test_a_class_that_the_theme_does_not_have_is_refused(name: str, mend: str) -> None:
    problem = refused(f'<rect class="thin {name}" width="1" height="1"/>')
    assert (problem.code, problem.mend) == ("F008", mend)
    assert problem.message == f"The theme has no class called `{name}`."


def test_a_reference_may_come_before_what_it_names() -> None:
    assert 'href="#knob-later"' in good('<use href="#later"/><g id="later"/>')


def test_the_drawing_as_a_whole_keeps_no_id_of_its_own() -> None:
    svg, problems = check('<g id="bolt"/>', OPEN.replace("<svg ", '<svg id="drawing-1" '))
    assert problems == []
    assert svg == f'{OPEN}<g id="knob-bolt"></g></svg>'


TOOTH = '<g id="tooth"/><g id="row"><use href="#tooth"/><use href="#tooth"/></g>'


def test_a_use_may_draw_a_group_that_holds_a_use() -> None:
    assert 'href="#knob-row"' in good(f'{TOOTH}<use href="#row"/>')


@pytest.mark.parametrize(
    "body",
    [
        pytest.param(f'{TOOTH}<g id="rows"><use href="#row"/></g><use href="#rows"/>', id="three in a row"),
        pytest.param(
            f'{TOOTH}<g id="rows"><use href="#knob-row"/></g><use href="#rows"/>', id="with the figure's name"
        ),
        pytest.param(f'{TOOTH}<use id="again" href="#row"/><use href="#again"/>', id="a use that is used"),
        pytest.param(f'<use href="#outer"/><g id="outer"><g><use href="#row"/></g></g>{TOOTH}', id="before"),
        pytest.param('<g id="knob"><use href="#knob"/></g>', id="itself"),
    ],
)
def test_a_use_that_leads_deeper_is_refused(body: str) -> None:
    assert refused(body).code == "F007"


def test_uses_that_draw_each_other_are_refused() -> None:
    _, problems = check('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>')
    assert [problem.code for problem in problems] == ["F007", "F007"]


def test_text_is_kept_and_escaped() -> None:
    assert good("<text x='1' y='2'>A &lt; B\n   &amp; C</text>").endswith(
        '<text x="1" y="2">A &lt; B &amp; C</text></svg>'
    )


@pytest.mark.parametrize(
    "body",
    [
        "<script>alert(1)</script>",
        "<style>.a{fill:red}</style>",
        "<foreignObject/>",
        "<image href='a.png'/>",
        "<a href='https://example.org'><text>x</text></a>",
        "<animate attributeName='x'/>",
        "<set attributeName='onclick'/>",
        "<linearGradient id='a'/>",
        "<filter id='a'/>",
        "<metadata>x</metadata>",
        "<sodipodi:namedview/>",
        "<switch/>",
        "<symbol id='a'/>",
        "<iframe/>",
        "<SCRIPT>alert(1)</SCRIPT>",
        "<svg viewBox='0 0 1 1'/>",
        "loose text",
        "<title><g/></title>",
        "<?xml-stylesheet href='a.css'?>",
    ],
)
def test_what_a_figure_may_not_hold_is_refused(body: str) -> None:
    assert refused(body).code == "F005"


@pytest.mark.parametrize(
    "attribute",
    [
        'style="fill:red"',
        'onclick="alert(1)"',
        'onload="alert(1)"',
        'fill="red"',
        'fill="#ff0000"',
        'stroke="black"',
        'stroke-width="3"',
        'opacity="0.5"',
        'href="#a"',
        'xlink:href="#a"',
        'inkscape:label="Layer"',
        'xml:base="https://example.org/"',
        'tabindex="0"',
        'filter="url(#a)"',
    ],
)
def test_an_attribute_that_styles_or_acts_is_refused(attribute: str) -> None:
    assert refused(f'<rect {attribute} width="1" height="1"/>').code == "F006"


@pytest.mark.parametrize(
    "body",
    [
        '<use href="https://example.org/a.svg#b"/>',
        '<use href="a.svg#b"/>',
        '<use href="javascript:alert(1)"/>',
        '<use href=""/>',
        '<use href="#"/>',
        '<use href="#nothing"/>',
        '<path d="M0 0" marker-end="url(https://example.org/#a)"/>',
        '<path d="M0 0" fill="url(#nothing)"/>',
        '<path d="M0 0" clip-path="inset(5px)"/>',
        '<g id="a b"/>',
        '<g id="a"/><g id="a"/>',
    ],
)
def test_ids_and_references_stay_within_the_drawing(body: str) -> None:
    assert refused(body).code == "F007"


def test_a_view_box_is_needed() -> None:
    assert "viewBox" in refused("", '<svg class="figure">').message


@pytest.mark.parametrize(
    "box",
    [
        "0 0 360",
        "0 0 a b",
        "",
        "0,0,1,1,1",
        "0 0 4..80 320",
        "0 0 1.2.3 4",
        "0 0 -360 240",
        "0 0 360 0",
        "0 0 0.0 1",
    ],
)
def test_a_view_box_has_four_numbers(box: str) -> None:
    assert refused("", f'<svg viewBox="{box}">').code == "F006"


@pytest.mark.parametrize("size", ['width="360"', 'height="100%"'])
def test_a_drawing_does_not_fix_its_size(size: str) -> None:
    assert refused("", f'<svg viewBox="0 0 1 1" {size}>').message.startswith("The drawing fixes its")


def test_fill_none_is_allowed() -> None:
    assert 'fill="none"' in good('<path d="M0 0" fill="none"/>')


def test_another_root_is_refused() -> None:
    svg, problems = check_svg(b"<g/>", "figures/knob.svg", "knob")
    assert svg is None
    assert problems[0].message == "The drawing starts with `<g>`."


@pytest.mark.parametrize(
    "text",
    [
        "<!DOCTYPE svg><svg viewBox='0 0 1 1'/>",
        "<!DOCTYPE svg [<!ENTITY a 'aaaa'><!ENTITY b '&a;&a;'>]><svg viewBox='0 0 1 "
        "1'><text>&b;</text></svg>",
        "<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/passwd'>]><svg viewBox='0 0 1 "
        "1'><text>&x;</text></svg>",
        "<svg viewBox='0 0 1 1'>&nbsp;</svg>",
        "<svg viewBox='0 0 1 1'><g></svg>",
        "",
        "not a drawing",
        "<svg xmlns='http://www.w3.org/1999/xhtml' viewBox='0 0 1 1'/>",
    ],
)
def test_what_is_not_plain_svg_is_refused(text: str) -> None:
    svg, problems = check_svg(text.encode(), "figures/knob.svg", "knob")
    assert svg is None
    assert [problem.code for problem in problems] == ["F004"]


def test_another_encoding_is_refused_with_its_line() -> None:
    svg, problems = check_svg(OPEN.encode() + b"\n<text>caf\xe9</text></svg>", "figures/knob.svg", "knob")
    assert svg is None
    assert (problems[0].code, problems[0].place.line) == ("F004", 2)


def test_an_encoding_that_the_file_only_claims_is_not_believed() -> None:
    text = f'<?xml version="1.0" encoding="utf-7"?>{OPEN}</svg>'
    svg, _ = check_svg(text.encode(), "figures/knob.svg", "knob")
    assert svg == f"{OPEN}</svg>"


def test_a_large_drawing_is_not_read() -> None:
    svg, problems = check_svg(b" " * (LARGEST + 1), "figures/knob.svg", "knob")
    assert svg is None
    assert problems[0].code == "F003"


def test_every_fault_of_a_drawing_is_told_with_line_and_column() -> None:
    svg, problems = check('\n<rect style="a"/>\n  <image/>')
    assert svg is None
    assert [(problem.place.line, problem.place.column) for problem in problems] == [(2, 1), (3, 3)]


def test_a_drawing_full_of_faults_does_not_fill_the_screen() -> None:
    _, problems = check("<image/>" * 500)
    assert len(problems) == 50


def test_what_stands_inside_something_refused_is_not_told_again() -> None:
    assert refused("<foreignObject><div onclick='x'><script/></div></foreignObject>").place.length == 14


BODIES = st.recursive(
    st.sampled_from(["", "x < y", "&amp;", '"', "<!-- c -->", "<![CDATA[<script>]]>", "]]>"]),
    lambda inner: st.builds(
        lambda name, key, value, body: f'<{name} {key}="{value}">{body}</{name}>',
        st.sampled_from([*ELEMENTS, "script", "a", "image"]),
        st.sampled_from(["id", "class", "href", "fill", "d", "x", "onload", "style", "transform"]),
        st.sampled_from(["a", "#a", "url(#a)", "javascript:1", "&quot;&gt;&lt;script&gt;", "none"]),
        inner,
    ),
    max_leaves=6,
)


@given(BODIES)
def test_what_passes_holds_only_what_is_allowed(body: str) -> None:
    svg, problems = check(body)
    assert (svg is None) == bool(problems)
    if svg is None:
        return
    for element in ElementTree.fromstring(svg).iter():
        name = element.tag.rpartition("}")[2]
        assert name in ELEMENTS
        assert set(element.attrib) <= ELEMENTS[name] | {"id", "class"}


@given(st.binary(max_size=200))
def test_no_bytes_raise(data: bytes) -> None:
    check_svg(data, "figures/knob.svg", "knob")
