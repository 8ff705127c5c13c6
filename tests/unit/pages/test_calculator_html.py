from __future__ import annotations

import re
from dataclasses import replace

import pytest
from drill_pages import drill_course, leaves, page, words_in
from markupsafe import Markup

from journeybook.content.arithmetic import Expression, parse
from journeybook.content.wording import Wording
from journeybook.pages.calculator_html import calculator_html, unit_words
from journeybook.pages.formula_html import formula_html
from journeybook.pages.search_index import search_entries


def sheet() -> str:
    course = drill_course()
    return calculator_html(course, Wording(course), "spindle-speed", "lesson-set-the-guard")


def formula(text: str) -> str:
    expression = parse(text)
    assert isinstance(expression, Expression)
    html = formula_html(expression.postfix, lambda name: Markup(name.upper()), lambda words: words)
    return re.sub(r"<[^>]+>", "", html).replace("&nbsp;", " ")


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("a + b * c", "A + B × C"),
        ("(a + b) * c", "(A + B) × C"),
        ("a - (b - c)", "A − (B − C)"),
        ("(a - b) - c", "A − B − C"),
        ("a / (b * c)", "A ÷ (B × C)"),
        ("a / b / 100", "A ÷ B ÷ 100"),
        ("1 / (a / 100 / b + 1 - a / 100)", "1 ÷ (A ÷ 100 ÷ B + 1 − A ÷ 100)"),
        ("-(a + b)", "−(A + B)"),
        ("a - -2.50", "A − (−2.5)"),
    ],
)
def test_a_formula_has_the_signs_of_print_and_no_needless_brackets(written: str, read: str) -> None:
    assert formula(written) == read


def test_what_is_rounded_is_said_in_words() -> None:
    assert formula("ceil(min(a, 2) / b)") == "rounded up (the least of (A; 2) ÷ B)"


@pytest.mark.parametrize(
    ("unit", "shown"),
    [
        ("m3/h", "m³/h"),
        ("mg/m3", "mg/m³"),
        ("ft3/min", "ft³/min"),
        ("mmH2O", "mmH2O"),
        ("L/min", "L/min"),
        ("cm2", "cm²"),
    ],
)
def test_units_have_raised_powers(unit: str, shown: str) -> None:
    assert unit_words(unit) == shown


def test_without_scripts_the_sheet_is_a_worked_example() -> None:
    words = words_in(sheet()).replace("&nbsp;", " ")
    assert "25, mild steel" in words
    assert "D = A × 1000 ÷ (3.1416 × B )".replace(" )", ")") in words.replace(" )", ")")
    assert "= 25 × 1000 ÷ (3.1416 × 10" in words
    assert "≈ 796 rpm" in words


def test_the_caution_stands_before_every_result_and_the_sources_after_them() -> None:
    html = sheet()
    assert html.index("calc-caution") < html.index("data-result=") < html.index("source-list")


def test_each_line_is_labelled_and_every_id_begins_with_the_leafs() -> None:
    html = sheet()
    for name in ("cutting-speed", "diameter", "stand-off"):
        whole = f"lesson-set-the-guard-calculator-spindle-speed-{name}"
        assert f'for="{whole}"' in html
        assert f'id="{whole}"' in html
    assert all(name.startswith("lesson-set-the-guard-") for name in re.findall(r'\bid="([^"]+)"', html))


def test_markup_in_a_text_is_text() -> None:
    course = drill_course()
    calculator = course.calculators["spindle-speed"]
    spoilt = replace(
        calculator,
        title="<b>x</b>",
        inputs=(replace(calculator.inputs[0], label="<i>y</i>", unit="<u>"), *calculator.inputs[1:]),
    )
    changed = replace(course, calculators={"spindle-speed": spoilt})
    html = calculator_html(changed, Wording(changed), "spindle-speed", "s")
    assert "<i>y" not in html
    assert "<u>" not in html
    assert "<b>x" not in html


def test_only_a_page_with_a_calculator_loads_its_script() -> None:
    assert "assets/calculator.js" in page("lesson-set-the-guard")
    assert "assets/calculator.js" not in page("lesson-parts-of-the-guard")


def test_the_page_hands_over_ranges_and_steps() -> None:
    data = leaves()["lesson-set-the-guard"].data
    found = data["calculators"]["spindle-speed"]
    assert found["inputs"][1] == {
        "id": "diameter",
        "name": "diameter",
        "letter": "B",
        "least": "1",
        "most": "20",
        "start": "10",
        "places": 1,
    }
    assert found["inputs"][0]["choices"] == [["25", "25, mild steel"], ["60", "60, aluminium"]]
    assert found["programs"][1] == [
        "a_second",
        [["in", "turns"], ["n", "60"], ["op", "/"], ["call", "floor", 1]],
    ]


def test_a_calculator_is_found_by_the_search() -> None:
    course = drill_course()
    text = next(
        entry[3] for entry in search_entries(course, Wording(course)) if entry[0].startswith("Set the guard")
    )
    assert "How fast the spindle may turn" in text
    assert "its own chart counts" in text
