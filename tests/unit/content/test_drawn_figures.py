"""Figures with ``draw``: the values of the sheets in them, their words, and what is made again when."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest

from journeybook.content.assembly import course_from_files
from journeybook.content.bench_of import fan_of
from journeybook.content.load_memo import LoadMemo
from journeybook.content.model import Course
from journeybook.content.plans.as_words import as_commonmark
from journeybook.content.wording import Wording
from journeybook.marking.compiled import compile_course

BASE = Path(__file__).parents[2] / "faults" / "base"
COURSE = "course_src/pillar-drill"
FILES = {path.relative_to(BASE).as_posix(): path.read_bytes() for path in BASE.rglob("*") if path.is_file()}


def load(memo: LoadMemo | None = None, **changed: str) -> Course:
    """The second course with figures of these texts; ``kit`` is the kit sheet."""
    files = FILES | {
        f"{COURSE}/{'kit.yml' if name == 'kit' else f'figures/{name}.yml'}": text.encode()
        for name, text in changed.items()
    }
    memo = memo or LoadMemo()
    with memo.one_round():
        course, problems = course_from_files(
            files,
            "pillar-drill",
            profile="uk",
            course_dir=COURSE,
            quiz_dir="quizzes/pillar-drill",
            memo=memo,
        )
    assert course is not None, problems
    return course


def texts(svg: str) -> list[str]:
    return re.findall(r"<text[^>]*>([^<]*)</text>", svg)


def pointing_at(number: str, name: str = "set") -> str:
    return (
        'title: "Table"\ndraw: {kind: gauge, label: "Table", unit: mm, from: "0", to: "200", '
        f'pointers: [{{at: "{number}", name: "{name}"}}]}}\n'
    )


def test_a_value_of_the_kit_sheet_stands_in_the_drawing_with_its_unit() -> None:
    assert "most: 6 mm" in texts(load().figures["guard-gap"].svg)


def test_a_word_of_the_glossary_stands_in_the_drawing_as_the_word() -> None:
    assert "Is the sleeve locked?" in texts(load().figures["may-i-start"].svg)


def test_a_number_from_the_kit_sheet_moves_with_it() -> None:
    kit = FILES[f"{COURSE}/kit.yml"].decode()
    before, after = load(), load(kit=kit.replace('value: "6"', 'value: "7"'))
    assert before.figures["guard-gap"].svg != after.figures["guard-gap"].svg
    assert compile_course(before).digest != compile_course(after).digest


def test_numbers_in_the_words_are_exact() -> None:
    course = load(table=pointing_at("100.123456"))
    assert "100.123456 mm: set." in Wording(course).plain(course.figures["table"].alt)


def test_a_number_may_have_a_minus() -> None:
    course = load(
        table='title: "T"\ndraw: {kind: gauge, label: T, unit: °C, from: "-20", to: "20", '
        'pointers: [{at: "-5", name: "cold"}]}\n'
    )
    assert "\N{MINUS SIGN}5 °C: cold." in Wording(course).plain(course.figures["table"].alt)


def test_without_alt_the_drawing_is_worded_by_itself() -> None:
    course = load()
    assert Wording(course).plain(course.figures["may-i-start"].alt) == (
        "1. Is the sleeve locked? yes: → 2. no: Stop and ask. "
        "2. Is the key out of the chuck? yes: Start it. no: Take it out, ask again."
    )


def test_alt_that_is_given_wins() -> None:
    course = load(table='alt: "A scale."\n' + pointing_at("100"))
    assert course.figures["table"].alt == "A scale."


def test_signs_in_a_drawing_are_not_read_as_commonmark_in_its_words() -> None:
    written = "a *b* [c](d) <e> & `f` _g_ 1. #h \\{i\\}"
    course = load(table=pointing_at("100", written.replace("\\", "\\\\")))
    shown = "a *b* [c](d) <e> & `f` _g_ 1. #h {i}"
    assert shown in Wording(course).plain(course.figures["table"].alt)
    assert shown.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;") in texts(
        course.figures["table"].svg
    )


@pytest.mark.parametrize("words", ["1. one", "- two", "> three", "# four", "a\\b", "{kit.guard-gap}"])
def test_words_as_commonmark_mean_just_these_words(words: str) -> None:
    assert Wording(load()).plain(as_commonmark(words)) == words


def test_the_parts_of_a_drawing_have_the_name_of_the_figure_before_theirs() -> None:
    assert 'id="may-i-start-key"' in load().figures["may-i-start"].svg


def test_the_answers_of_a_decision_may_be_in_another_language() -> None:
    text = FILES[f"{COURSE}/figures/may-i-start.yml"].decode()
    course = load(**{"may-i-start": text + "  words: {if-yes: ja, if-no: nein}\n"})
    shown = texts(course.figures["may-i-start"].svg)
    assert {"ja", "nein"} <= set(shown)
    assert not {"yes", "no"} & set(shown)


def test_a_figure_that_is_as_it_was_is_the_same_object() -> None:
    memo = LoadMemo()
    first = load(memo)
    kit = FILES[f"{COURSE}/kit.yml"].decode()
    second = load(memo, kit=kit.replace('value: "180"', 'value: "190"'))
    assert first.figures["guard-gap"] is second.figures["guard-gap"]


def test_each_kind_of_drawing_is_read() -> None:
    course = load(
        stack='title: "T"\ndraw: {kind: stack, medium: swarf, layers: [{name: A, look: mesh}, {name: B}]}\n',
        path='title: "T"\ndraw: {kind: path, stops: [{name: A, note: b}, {name: C}]}\n',
        timeline='title: "T"\ndraw: {kind: timeline, label: Day, unit: h, from: "0", to: "8", '
        'events: [{at: "4", name: look}], spans: [{from: "0", to: "3.5", name: first}]}\n',
        chart='title: "T"\ndraw: {kind: chart, across: {label: A, from: "0", to: "9"}, '
        'up: {label: B, from: "0", to: "{kit.table-travel.number}"}, '
        'lines: [{name: C, points: [["0", "1"], ["9", "{kit.guard-gap.number}"]]}]}\n',
    )
    words = {
        name: Wording(course).plain(course.figures[name].alt)
        for name in ("stack", "path", "timeline", "chart")
    }
    assert words == {
        "stack": "swarf: 1. A. 2. B.",
        "path": "1. A (b). 2. C.",
        "timeline": "Day. 0 – 3.5 h: first. 4 h: look.",
        "chart": "B / A. C: 0 → 1; 9 → 6.",
    }


EXTRACTOR = (
    BASE.parent / "cases" / "bench-line-of-an-assembly" / COURSE / "benches" / "extractor.yml"
).read_text()


def test_a_line_comes_from_the_table_of_a_bench() -> None:
    line = "{name: low, bench: extractor, of: minutes, along: load, at: {setting: high}, divide: 60}"
    files = FILES | {
        f"{COURSE}/benches/extractor.yml": EXTRACTOR.encode(),
        f"{COURSE}/figures/load.yml": (
            'title: "T"\ndraw: {kind: chart, across: {label: Load, unit: "%", from: "0", to: "50"}, '
            f'up: {{label: Time, unit: h, from: "0", to: "8"}}, lines: [{line.replace("60", repr("60"))}]}}\n'
        ).encode(),
    }
    course, problems = course_from_files(
        files, "pillar-drill", profile="uk", course_dir=COURSE, quiz_dir="quizzes/pillar-drill"
    )
    assert course is not None, problems
    worked = fan_of(course, "extractor")
    hours = [
        Fraction(worked.table.value("minutes", {"setting": 1, "load": place}), 60) for place in (0, 1, 2)
    ]
    said = [
        Fraction(value)
        for value in re.findall(r"→ (\d+(?:\.\d+)?)", Wording(course).plain(course.figures["load"].alt))
    ]
    assert [round(float(one), 2) for one in hours] == [float(one) for one in said]
