"""Drawings made from data: sound SVG, readable lettering, and the same in words."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from journeybook.drawing.plans.chart import Chart, Line, Scale, draw_chart
from journeybook.drawing.plans.decision import Ask, Decision, Do, draw_decision
from journeybook.drawing.plans.gauge import At, Gauge, draw_gauge
from journeybook.drawing.plans.path import Path, Stop, draw_path
from journeybook.drawing.plans.letters import width_of, wrapped
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
