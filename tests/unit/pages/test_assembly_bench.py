"""An assembly bench on a page: complete with scripts off, and the data by which the script refuses a step."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from journeybook.content.loader import load_course
from journeybook.content.model import AssemblyBench, Course
from journeybook.content.wording import Wording
from journeybook.pages.assembly_bench_html import assembly_bench, assembly_key
from journeybook.pages.bench_desk import BenchDesk, BenchOnPage

BASE = Path(__file__).parents[2] / "faults" / "base"


@pytest.fixture(scope="module")
def course() -> Course:
    loaded, problems = load_course(BASE, "pillar-drill", profile="uk", today=date(2026, 11, 25))
    assert loaded is not None, problems
    return loaded


def bench_of(course: Course) -> AssemblyBench:
    bench = course.benches["guard-on"]
    assert isinstance(bench, AssemblyBench)
    return bench


def on_page(course: Course, bench: AssemblyBench) -> BenchOnPage:
    desk = BenchDesk(course=course, wording=Wording(course), slug="lesson-x", language="en")
    return assembly_bench(desk, bench)


def words_of(html: str) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", html))


def test_every_step_stands_there_with_its_letter_in_the_order_of_the_letters(course: Course) -> None:
    body = on_page(course, bench_of(course)).body
    steps = re.findall(
        r'data-step="([a-z-]+)"><span class="assembly-letter" aria-hidden="true">(\w)</span>', body
    )
    assert steps == [("collar", "A"), ("isolate", "B"), ("knob", "C"), ("sleeve", "D"), ("start", "E")]


def test_the_part_that_stands_there_from_the_beginning_is_no_step(course: Course) -> None:
    page = on_page(course, bench_of(course))
    assert 'data-part="quill"' in page.body
    assert 'data-step="quill"' not in page.body
    assert "quill" not in page.data["moves"]  # type: ignore[operator]


def test_the_drawing_stands_in_words_too(course: Course) -> None:
    words = words_of(on_page(course, bench_of(course)).body)
    assert "Quill stands there from the beginning." in words
    assert "Sleeve goes on Collar from below." in words
    assert "Done besides: Isolate the drill; Start the drill." in words
    assert "Isolate the drill comes before: Collar; Sleeve." in words


def test_the_rules_stand_with_their_reasons_and_the_critical_ones_say_so(course: Course) -> None:
    body = on_page(course, bench_of(course)).body
    first = re.search(r'<li data-rule="0" data-critical>.*?</li>', body)
    assert first is not None
    assert words_of(first[0]).strip() == (
        "Critical First: Isolate the drill. Only then: Collar; Sleeve. "
        "The spindle could start while your fingers are on it."
    )
    assert '<li data-rule="1">' in body


def test_one_right_order_stands_there_and_how_many_there_are(course: Course) -> None:
    words = words_of(on_page(course, bench_of(course)).body)
    assert "One right order Isolate the drill Collar Sleeve Locking knob Start the drill" in words
    assert "2 orders keep every rule, and each of them is as right as this one." in words


def test_a_single_right_order_is_called_so(course: Course) -> None:
    bench = bench_of(course)
    strict = replace(bench, rules=(*bench.rules, replace(bench.rules[1], first="sleeve", then=("knob",))))
    assert "It is the only one that keeps every rule." in on_page(course, strict).body


def test_a_large_number_of_orders_is_grouped(course: Course) -> None:
    bench = bench_of(course)
    more = tuple(replace(bench.parts[1], id=f"look-{index}", name=f"Look {index}") for index in range(7))
    body = on_page(course, replace(bench, parts=(*bench.parts, *more))).body
    # 12!/5! ways to put seven free steps among five of which two orders are right.
    assert "7\u202f983\u202f360 orders keep every rule" in body


def test_the_key_holds_all_that_follows_from_the_rules(course: Course) -> None:
    key = assembly_key(bench_of(course))
    assert ["isolate", "start"] in key["before"]  # type: ignore[operator]
    assert key["steps"] == ["isolate", "collar", "sleeve", "knob", "start"]
    assert [rule["critical"] for rule in key["rules"]] == [True, False, True, False]  # type: ignore[attr-defined]


def test_every_part_that_moves_is_in_the_drawing_and_the_data_are_plain(course: Course) -> None:
    page = on_page(course, bench_of(course))
    data = json.loads(json.dumps(page.data))
    assert set(data["moves"]) == {"collar", "sleeve", "knob"} == set(data["ways"])
    for part in data["moves"]:
        assert f'data-part="{part}"' in page.body
        assert f'data-way="{part}"' in page.body
        assert f'data-label="{part}"' in page.body
    assert 'data-tick="isolate"' in page.body


def test_nothing_in_it_has_an_id_so_that_it_may_stand_twice(course: Course) -> None:
    assert " id=" not in on_page(course, bench_of(course)).body


def test_a_name_that_looks_like_markup_is_printed_as_words(course: Course) -> None:
    bench = bench_of(course)
    sly = replace(bench, parts=tuple(replace(part, name='<b onclick="x">&') for part in bench.parts))
    body = on_page(course, sly).body
    assert "<b onclick" not in body
    assert "&lt;b onclick" in body


def test_references_in_a_reason_lead_where_they_say(course: Course) -> None:
    bench = bench_of(course)
    told = replace(bench, rules=(replace(bench.rules[0], reason="See {kit.guard-gap}."), *bench.rules[1:]))
    assert "{kit" not in on_page(course, told).body
