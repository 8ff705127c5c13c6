"""Drawings made from data: sound SVG, readable lettering, and the same in words."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

import pytest

from journeybook.drawing.plans.callouts import Callout, call_out
from journeybook.drawing.plans.chart import Chart, Line, Scale, draw_chart, marked
from journeybook.drawing.plans.decision import Ask, Decision, Do, draw_decision
from journeybook.drawing.plans.gauge import At, Gauge, draw_gauge
from journeybook.drawing.plans.letters import width_of, wrapped
from journeybook.drawing.plans.path import Path, Stop, draw_path
from journeybook.drawing.plans.sheet import Drawn, fitting_step, plain, short, spread, ticks
from journeybook.drawing.plans.stack import LOOKS, Layer, Stack, draw_stack
from journeybook.drawing.plans.timeline import Span, Timeline, draw_timeline
from journeybook.drawing.svg_check import check_svg

PATH = draw_path(Path(medium="air", stops=(Stop(name="Inlet", note="mesh & slots"), Stop(name="Outlet"))))
STACK = draw_stack(
    Stack(
        medium="air",
        layers=tuple(Layer(name=look, note="a note", look=look, thin=look == "mesh") for look in LOOKS),
    )
)
GAUGE = draw_gauge(
    Gauge(
        label="Speed",
        unit="rpm",
        low=0,
        high=3000,
        marks=(At(at=2500, name="most"), At(at=2400, name="most with a large drill")),
        pointers=(At(at=1000, name="read"),),
        good=(500, 2500),
    )
)
TIMELINE = draw_timeline(
    Timeline(
        label="Shift",
        unit="h",
        low=0,
        high=8,
        events=(At(at=4, name="look"), At(at=4, name="look again")),
        spans=(Span(low=0, high=5, name="first"), Span(low=3, high=8, name="second")),
    )
)
QUESTIONS = Decision(
    start="a",
    points=(
        Ask(id="c", ask="Third?", yes="go", no="halt"),
        Ask(id="a", ask="First?", yes="b", no="c"),
        Ask(id="b", ask="Second, with a good many words in it to make two lines?", yes="halt", no="c"),
        Do(id="halt", do="Stop and ask", stop=True),
        Do(id="go", do="Go on"),
    ),
)
DECISION = draw_decision(QUESTIONS)
CHART = draw_chart(
    Chart(
        across=Scale(label="Load", unit="%", low=0, high=100, step=20),
        up=Scale(label="Time", unit="h", low=0, high=8, step=2),
        lines=(Line(name="new", points=((0, 7), (100, 4))), Line(name="old", points=((0, 5), (100, 3)))),
        levels=(At(at=4, name="a shift"),),
    )
)
EVERY = {
    "path": PATH,
    "stack": STACK,
    "gauge": GAUGE,
    "timeline": TIMELINE,
    "decision": DECISION,
    "chart": CHART,
}


@pytest.mark.parametrize("kind", EVERY)
def test_a_drawing_passes_the_check_of_drawings(kind: str) -> None:
    svg, problems = check_svg(EVERY[kind].svg.encode(), "drawn.svg", "drawn")
    assert problems == []
    assert svg is not None


@pytest.mark.parametrize("kind", EVERY)
def test_nothing_stands_outside_the_sheet(kind: str) -> None:
    svg = EVERY[kind].svg
    height = float(re.findall(r'viewBox="0 0 400 ([\d.]+)"', svg)[0])
    for x, y in re.findall(r'<(?:text|rect)[^>]* x="([-\d.]+)" y="([-\d.]+)"', svg):
        assert 0 <= float(x) <= 400
        assert 0 <= float(y) <= height
    for x, y in re.findall(r"[ML]([-\d.]+) ([-\d.]+)", svg):
        assert 0 <= float(x) <= 400
        assert 0 <= float(y) <= height


def test_text_is_escaped() -> None:
    assert "mesh &amp; slots" in PATH.svg


@pytest.mark.parametrize(
    ("drawn", "words"),
    [
        (PATH, "air: 1. Inlet (mesh & slots). 2. Outlet."),
        (
            GAUGE,
            "Speed: 0 – 3000 rpm. ✓ 500 – 2500 rpm. 2500 rpm: most. 2400 rpm: most with a large drill. 1000 rpm: read.",
        ),
        (TIMELINE, "Shift. 0 – 5 h: first. 3 – 8 h: second. 4 h: look. 4 h: look again."),
        (
            DECISION,
            "1. First? yes: → 2. no: → 3. 2. Second, with a good many words in it to make two lines? yes: Stop and ask."
            " no: → 3. 3. Third? yes: Go on. no: Stop and ask.",
        ),
        (CHART, "Time, h / Load, %. new: 0 → 7; 100 → 4. old: 0 → 5; 100 → 3. a shift: 4."),
    ],
)
def test_a_drawing_says_the_same_in_words(drawn: Drawn, words: str) -> None:
    assert drawn.words == words


def test_a_question_stands_below_every_question_that_leads_to_it() -> None:
    tops = [float(y) for y in re.findall(r'<g id="[abc]"><path[^>]*d="M[\d.]+ ([\d.]+)L', DECISION.svg)]
    assert re.findall(r'<g id="([abc])">', DECISION.svg) == ["a", "b", "c"]
    assert tops == sorted(tops)


def test_no_two_boxes_of_a_decision_overlap() -> None:
    crowded = draw_decision(
        Decision(
            start="a",
            points=(
                Ask(id="a", ask="First?", yes="b", no="c"),
                Ask(id="b", ask="Second?", yes="go", no="halt"),
                Ask(id="c", ask="Third?", yes="go", no="halt"),
                Do(id="halt", do="Stop and ask the person who knows", stop=True),
                Do(id="go", do="Go on with it"),
            ),
        )
    )
    boxes = [
        tuple(float(number) for number in box)
        for box in re.findall(
            r'<rect[^>]*x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"', crowded.svg
        )
    ]
    outlines = re.findall(
        r'<g id="[abc]"><path[^>]*d="M[^"]*L[\d.]+ ([\d.]+)L[^"]*L[\d.]+ ([\d.]+)Z"', crowded.svg
    )
    left = sorted([*((y, y + height) for x, y, _, height in boxes if x < 200)])
    for first, second in pairwise(left):
        assert first[1] <= second[0]
    for top, foot in outlines:
        for low, high in left:
            assert float(foot) <= low or float(top) >= high or float(top) == float(foot)


def test_overlapping_spans_stand_side_by_side() -> None:
    lefts = re.findall(r'<rect[^>]* x="([\d.]+)"', TIMELINE.svg)
    assert len(set(lefts)) == 2


def test_labels_that_would_touch_are_moved_apart() -> None:
    assert spread([10, 12, 60], [18, 18, 18]) == [10, 28, 60]


def test_lines_of_lettering_keep_within_their_width() -> None:
    assert wrapped("one two three", 60, "label") == ["one two", "three"]
    assert wrapped("", 60, "label") == []


def test_a_scale_has_round_marks() -> None:
    assert fitting_step(0, 100, 8) == 20
    assert ticks(0, 1, 0.25) == [0, 0.25, 0.5, 0.75, 1]


def test_coordinates_are_short() -> None:
    assert [short(x) for x in (1.0, 1.26, -0.04, 10.0)] == ["1", "1.3", "0", "10"]


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (Fraction(21, 2), "10.5"),
        (Fraction(-5), "\N{MINUS SIGN}5"),
        (Fraction(1, 3), "0.333333"),
        (Fraction(1234567), "1234567"),
        (0.1, "0.1"),
        (0, "0"),
    ],
)
def test_numbers_stand_as_people_write_them(number: Fraction | float, words: str) -> None:
    assert plain(number) == words


def test_a_line_of_lettering_is_about_as_wide_as_a_browser_makes_it() -> None:
    measured = 85.7  # of the theme's face in a browser, at 15
    assert measured <= width_of("Stop and ask", "label") <= measured * 1.08


def test_lines_of_lettering_are_of_about_one_length() -> None:
    assert wrapped("Mark it with a cross, hand it in", 130, "small") == [
        "Mark it with a",
        "cross, hand it in",
    ]


def test_a_number_and_its_unit_stay_together() -> None:
    assert wrapped("below 80\N{NO-BREAK SPACE}%", 60, "label") == ["below", "80\N{NO-BREAK SPACE}%"]


def strikes(pointer: Callout, name: Callout) -> bool:
    return pointer is not name and name.row < pointer.row and name.left < pointer.x < name.right


@pytest.mark.parametrize(
    "places", [(168, 171, 176), (10, 20, 30, 390), (200, 201, 202, 203, 204), (398, 396)]
)
def test_names_along_a_line_neither_touch_nor_are_struck_through(places: tuple[int, ...]) -> None:
    callouts = call_out([(x, f"a name at {x}") for x in places])
    assert [callout.x for callout in callouts] == list(places)
    for one in callouts:
        assert one.left >= 0
        assert one.right <= 400
        assert not any(strikes(one, other) for other in callouts)
    for one, other in pairwise(sorted(callouts, key=lambda callout: (callout.row, callout.left))):
        assert one.row < other.row or one.right < other.left


def test_the_name_of_a_level_stands_where_no_line_runs() -> None:
    svg = draw_chart(
        Chart(
            across=Scale(label="Time", unit="min", low=0, high=360, step=60),
            up=Scale(label="Flow", unit="L/min", low=140, high=180, step=10),
            lines=(Line(name="", points=((0, 175), (300, 172), (330, 168), (360, 150))),),
            levels=(At(at=170, name="minimum"),),
        )
    ).svg
    found = re.search(r'<text class="small" x="([\d.]+)" y="([\d.]+)">minimum', svg)
    line = re.search(r'<path class="act" d="M([^"]+)"', svg)
    assert found is not None
    assert line is not None
    left, foot = float(found[1]), float(found[2])
    points = [tuple(float(one) for one in point.split()) for point in line[1].split("L")]
    for (x1, y1), (x2, y2) in pairwise(points):
        for step in range(101):
            x, y = x1 + (x2 - x1) * step / 100, y1 + (y2 - y1) * step / 100
            assert not (left <= x <= left + width_of("minimum", "small") and foot - 12 <= y <= foot + 3)


def test_of_many_points_those_at_the_marks_of_the_scale_are_marked() -> None:
    across = Scale(label="Load", unit="%", low=0, high=100, step=25)
    many = Line(name="", points=tuple((5 * x, 7) for x in range(21)))
    assert [x for x, _ in marked(many, across)] == [0, 25, 50, 75, 100]
    few = Line(name="", points=((0, 1), (33, 2)))
    assert marked(few, across) == few.points


def test_what_lasts_one_after_the_other_differs_in_shade() -> None:
    svg = draw_timeline(
        Timeline(
            label="Day",
            unit="h",
            low=0,
            high=8,
            spans=tuple(Span(low=x, high=x + 2, name=f"part {x}") for x in (0, 2, 4, 6)),
        )
    ).svg
    shades = re.findall(r'class="ink (tint-\d)"', svg)
    assert shades == ["tint-1", "tint-2", "tint-1", "tint-2"]


def test_what_stops_the_work_has_a_ring_and_a_heavier_box() -> None:
    assert DECISION.svg.count('<circle class="hold fill-paper"') == DECISION.svg.count(
        '<rect class="hold fill-paper"'
    )
    assert DECISION.svg.count('<circle class="hold fill-paper"') == 2
