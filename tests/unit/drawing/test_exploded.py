"""Exploded drawings: nothing covers anything, all of it is on the sheet, and the drawing is sound."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journeybook.drawing.exploded.boxes import Box, Lying
from journeybook.drawing.exploded.draw import draw_exploded
from journeybook.drawing.exploded.parts import LOOKS, SHAPES, SIDES, Assembly, Deed, Part, looks_of
from journeybook.drawing.exploded.places import Places, places
from journeybook.drawing.exploded.shapes import draw_shape
from journeybook.drawing.plans.sheet import WIDTH
from journeybook.drawing.svg_check import check_svg

MACHINE = Assembly(
    parts=(
        Part(id="body", name="Body", shape="box", wide=60, high=64, deep=44),
        Part(
            id="pack", name="Pack", shape="disc", look="pleats", wide=18, high=52, joins="body", side="right"
        ),
        Part(
            id="mesh",
            name="Wire mesh",
            shape="disc",
            look="mesh",
            wide=7,
            high=52,
            joins="pack",
            side="right",
        ),
        Part(
            id="lid",
            name="Lid",
            shape="cap",
            look="slots",
            wide=22,
            high=60,
            joins="mesh",
            side="right",
            into=16,
            layer=1,
            waits=frozenset({"pack", "mesh"}),
        ),
        Part(id="foot", name="Foot", shape="plate", wide=80, high=8, joins="body", side="below"),
        Part(id="pipe", name="Pipe", shape="tube", look="ribs", wide=14, high=62, joins="body", shift=-14),
        Part(id="strap", name="Strap", shape="strap", wide=22, high=90, joins="body", side="left", layer=2),
    ),
    deeds=(Deed(id="look", name="Look at all parts"), Deed(id="run", name="Let it run")),
)


def found(assembly: Assembly) -> Places:
    laid = places(assembly)
    assert laid is not None
    return laid


def covered(one: Lying) -> Iterator[Box]:
    yield one.box
    if one.label is not None and (one.part.joins or not one.label.box.meets(one.box)):
        yield one.label.box


@st.composite
def assemblies(draw: st.DrawFn) -> Assembly:
    """A base and up to seven parts, each on one of those before it, with rules that let it come after some of them."""
    count = draw(st.integers(2, 8))
    parts: list[Part] = []
    for index in range(count):
        waits = draw(st.sets(st.sampled_from([part.id for part in parts[1:]]))) if index > 1 else set()
        parts.append(
            Part(
                id=f"p{index}",
                name=draw(st.sampled_from(["Cap", "Long bolt", "Ring of the upper bearing", "Guard"])),
                shape=draw(st.sampled_from(SHAPES)),
                look=draw(st.sampled_from(LOOKS)),
                wide=draw(st.integers(10, 60)),
                high=draw(st.integers(10, 60)),
                joins=draw(st.sampled_from([part.id for part in parts])) if parts else "",
                side=draw(st.sampled_from(SIDES)),
                shift=draw(st.integers(-20, 20)),
                into=draw(st.integers(0, 8)),
                layer=len(waits),
                waits=frozenset(waits),
            )
        )
    return Assembly(parts=tuple(parts), deeds=MACHINE.deeds)


def test_apart_no_part_and_no_name_covers_another() -> None:
    for one, other in combinations(found(MACHINE).lying, 2):
        assert not any(a.meets(b) for a in covered(one) for b in covered(other)), (
            f"{one.part.id}, {other.part.id}"
        )


@settings(deadline=None, max_examples=60)
@given(assemblies())
def test_whatever_the_parts_nothing_covers_anything_that_lies_apart(assembly: Assembly) -> None:
    laid = places(assembly)
    if laid is None:
        return
    for one, other in combinations(laid.lying, 2):
        assert not any(a.meets(b) for a in covered(one) for b in covered(other))
        for lying, placed in ((one, other), (other, one)):
            if lying.part.joins and lying.part.id not in placed.part.waits:
                assert not any(box.meets(placed.home) for box in covered(lying)), (
                    "a part that is in place is covered"
                )


@settings(deadline=None, max_examples=60)
@given(assemblies())
def test_whatever_the_parts_all_of_it_is_on_the_sheet(assembly: Assembly) -> None:
    laid = places(assembly)
    if laid is None:
        return
    for one in laid.lying:
        for box in (*covered(one), one.home):
            assert box.left >= 0
            assert box.right <= WIDTH
            assert box.top >= 0
            assert box.foot <= laid.foot


@settings(deadline=None, max_examples=60)
@given(assemblies())
def test_whatever_the_parts_the_drawing_is_sound(assembly: Assembly) -> None:
    drawn = draw_exploded(assembly, "fig")
    if drawn is not None:
        svg, problems = check_svg(drawn.svg.encode(), "fig.svg", "fig")
        assert problems == []
        assert svg is not None


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("side", SIDES)
def test_every_shape_can_be_drawn_in_every_look_from_every_side(shape: str, look: str, side: str) -> None:
    base = Part(id="base", name="Base", shape="box", wide=60, high=60)
    part = Part(
        id="part",
        name="Part",
        shape=shape,
        look=look,
        wide=40,
        high=30,
        joins="base",
        side=side,  # type: ignore[arg-type]
    )
    drawn = draw_exploded(Assembly(parts=(base, part)), "fig")
    assert drawn is not None
    assert check_svg(drawn.svg.encode(), "fig.svg", "fig")[1] == []


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("look", [look for look in LOOKS if look != "plain"])
@pytest.mark.parametrize("side", SIDES)
def test_a_look_is_seen_on_just_the_shapes_that_are_said_to_show_it(shape: str, look: str, side: str) -> None:
    part = Part(id="part", name="Part", shape=shape, wide=40, high=50, joins="base", side=side)  # type: ignore[arg-type]
    plain = draw_shape(part, 0, 0, 1).marks
    assert (draw_shape(replace(part, look=look), 0, 0, 1).marks != plain) == (look in looks_of(shape))


def test_a_part_in_place_touches_what_it_goes_on() -> None:
    at = {one.part.id: one for one in found(MACHINE).lying}
    for one in at.values():
        if one.part.joins:
            assert one.home.meets(at[one.part.joins].home, 0.5)


def test_a_part_moves_straight_along_the_side_it_goes_on_from() -> None:
    drawn = draw_exploded(MACHINE, "fig")
    assert drawn is not None
    assert drawn.moves["foot"][0] == 0
    assert drawn.moves["foot"][1] < 0
    assert drawn.moves["lid"][0] < 0
    assert drawn.moves["lid"][1] == 0
    assert drawn.moves["strap"][0] > 0


def test_what_comes_later_lies_farther_out() -> None:
    at = {one.part.id: one for one in found(MACHINE).lying}
    assert at["pack"].x < at["mesh"].x < at["lid"].x


def test_the_line_of_a_part_belongs_to_all_that_come_along_it() -> None:
    drawn = draw_exploded(MACHINE, "fig")
    assert drawn is not None
    assert drawn.ways["pack"] == ("pack", "mesh", "lid")
    assert drawn.ways["lid"] == ("lid",)


def test_letters_follow_the_words_and_so_tell_nothing_of_the_order() -> None:
    assert MACHINE.letters == {
        "foot": "A", "run": "B", "lid": "C", "look": "D", "pack": "E", "pipe": "F", "strap": "G", "mesh": "H",
    }  # fmt: skip


def test_names_stand_beside_the_parts_where_there_is_room() -> None:
    drawn = draw_exploded(MACHINE, "fig")
    assert drawn is not None
    assert {"Pipe", "Lid", "Strap"} <= set(re.findall(r">([^<>]+)</text>", drawn.svg))


def test_the_base_has_its_name_on_it_or_beside_it() -> None:
    machine = draw_exploded(MACHINE, "fig")
    assert machine is not None
    assert ">Body</text>" in machine.svg
    spindle = Part(id="spindle", name="Spindle", shape="rod", wide=20, high=60)
    drawn = draw_exploded(
        Assembly(parts=(spindle, replace(MACHINE.parts[1], joins="spindle", side="above"))), "fig"
    )
    assert drawn is not None
    assert ">Spindle</text>" in drawn.svg


def test_a_row_that_no_sheet_holds_is_not_drawn() -> None:
    row = [Part(id="p0", name="Bar", shape="rod", wide=60, high=6)]
    row += [
        Part(id=f"p{index}", name="Bar", shape="rod", wide=60, high=6, joins=f"p{index - 1}", side="right")
        for index in range(1, 20)
    ]
    assert draw_exploded(Assembly(parts=tuple(row)), "fig") is None


def test_a_name_that_looks_like_markup_stays_words() -> None:
    base = Part(id="base", name="A<b>&", shape="box", wide=60, high=60)
    part = Part(id="part", name='<i>"&', shape="cap", wide=40, high=30, joins="base")
    drawn = draw_exploded(Assembly(parts=(base, part), deeds=(Deed(id="d", name="<u>"),)), "fig")
    assert drawn is not None
    assert check_svg(drawn.svg.encode(), "fig.svg", "fig")[1] == []
    assert "&lt;i&gt;" in drawn.svg
