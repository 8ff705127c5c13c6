from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.content import markup
from journeybook.content.loader import load_course
from journeybook.content.markup import render_block, render_inline, render_plain
from journeybook.content.model import Course
from journeybook.content.wording import Wording

BASE = Path(__file__).parents[2] / "faults" / "base"


def base_course() -> Course:
    course, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None, problems
    return course


COURSE = base_course()
WORDS = Wording(COURSE)


def test_a_kit_value_comes_with_its_unit_held_together() -> None:
    assert WORDS.inline("{kit.guard-gap}") == '<span class="value example">6\u00a0mm</span>'


def test_a_value_that_is_no_example_says_nothing_about_examples() -> None:
    assert WORDS.inline("{profile.guard-duty}") == (
        '<span class="value">as the fitting bay\'s rules say</span>'
    )


def test_the_number_alone_has_no_unit() -> None:
    assert WORDS.plain("{kit.guard-gap.number} millimetres") == "6 millimetres"


def test_a_word_links_to_the_glossary() -> None:
    assert WORDS.inline("{word.chuck-key}") == '<a class="word" href="page:words#chuck-key">chuck key</a>'


def test_a_word_can_be_inflected() -> None:
    assert (
        WORDS.inline("{word.chuck-key|chuck keys}")
        == '<a class="word" href="page:words#chuck-key">chuck keys</a>'
    )


def test_a_lesson_is_linked_by_its_title() -> None:
    assert WORDS.inline("{lesson.parts-of-the-guard}") == (
        '<a href="page:lesson/parts-of-the-guard">Parts of the guard</a>'
    )


def test_a_figure_is_named_and_linked() -> None:
    assert (
        WORDS.inline("{figure.guard-laid-out}")
        == '<a href="page:figure/guard-laid-out">The guard, laid out</a>'
    )


def test_a_brace_behind_a_backslash_is_a_brace() -> None:
    assert WORDS.inline(r"\{kit.guard-gap\}") == "{kit.guard-gap}"
    assert WORDS.source(r"\{kit.guard-gap\}") == "{kit.guard-gap}"


def test_given_numbers_are_shown_as_written() -> None:
    assert WORDS.inline("{flow} for {hours} h", {"flow": "170.50", "hours": "4"}) == "170.50 for 4 h"


def test_a_given_number_that_names_a_kit_value_shows_its_number() -> None:
    assert WORDS.plain("{gap} mm", {"gap": "{kit.guard-gap}"}) == "6 mm"


def test_source_has_values_and_no_html() -> None:
    assert WORDS.source("**Gap** {kit.guard-gap}, {word.sleeve}") == "**Gap** 6\u00a0mm, sleeve"


def test_references_work_inside_emphasis_tables_and_code() -> None:
    html = WORDS.block("| a |\n|---|\n| **{kit.guard-gap.number}** `{kit.guard-gap.number}` |\n")
    assert '<td><strong><span class="value example">6</span></strong> <code>' in html


def test_a_value_is_never_read_as_markup() -> None:
    odd = replace(COURSE.kit.values["guard-lock"], value='*a* <b> "c"')
    sheet = replace(COURSE.kit, values={"guard-lock": odd})
    html = Wording(replace(COURSE, kit=sheet)).inline("{kit.guard-lock}")
    assert html == '<span class="value example">*a* &lt;b&gt; &quot;c&quot;</span>'


def test_a_reference_in_a_link_address_makes_no_link_and_no_broken_attribute() -> None:
    html = WORDS.inline("[x](https://example.org/{kit.guard-gap})")
    assert "<a " not in html


@pytest.mark.parametrize(
    "text",
    [
        '[x](https://example.org "{kit.guard-gap}")',
        "```{kit.guard-gap}\nx\n```",
        "| {kit.guard-gap} |\n|---|\n",
    ],
)
def test_a_reference_never_ends_up_inside_an_attribute(text: str) -> None:
    for piece in WORDS.block(text, "les").split('"')[1::2]:
        assert "<" not in piece or piece.startswith(">")


def test_headings_start_at_level_two_and_carry_the_leafs_slug() -> None:
    assert render_block("# What it covers\n\n#### Deep\n", "parts") == (
        '<h2 id="parts-what-it-covers">What it covers</h2>\n<h4 id="parts-deep">Deep</h4>\n'
    )


def test_equal_headings_get_different_ids_on_one_page() -> None:
    taken: set[str] = set()
    first = render_block("## Why\n", "parts", taken)
    second = render_block("## Why\n", "parts", taken)
    assert ('id="parts-why"' in first, 'id="parts-why-2"' in second) == (True, True)


def test_a_table_scrolls_by_itself_and_needs_no_style() -> None:
    html = render_block("| part | mm |\n|:--|--:|\n| sleeve | 6 |\n")
    assert html.startswith(
        '<div class="table-scroll" tabindex="0" role="group" aria-label="part, mm"><table>'
    )
    assert '<th scope="col" class="right">mm</th>' in html
    assert "style" not in html


def test_no_two_tables_of_a_page_have_the_same_name() -> None:
    taken: set[str] = set()
    table = "| part | mm |\n|---|---|\n| sleeve | 6 |\n"
    html = render_block(f"{table}\n## More\n\n{table}", "l-guard", taken) + render_block(
        table, "l-guard", taken
    )
    assert re.findall(r'aria-label="([^"]*)"', html) == ["part, mm", "part, mm (2)", "part, mm (3)"]


def test_a_corner_without_words_heads_nothing() -> None:
    html = render_block("| | mm |\n|---|---|\n| sleeve | 6 |\n")
    assert html.count("<th ") == html.count("</th>") == 1
    assert html.count("<td>") == html.count("</td>") == 3


def test_html_of_an_author_is_text() -> None:
    assert render_inline("<b onclick=x>&amp;</b>") == "&lt;b onclick=x&gt;&amp;&lt;/b&gt;"


@pytest.mark.parametrize(
    "address", ["javascript:alert(1)", "data:text/html,x", "file:///etc/passwd", "//evil.example", "x.html"]
)
def test_links_lead_nowhere_else(address: str) -> None:
    assert "<a" not in render_inline(f"[x]({address})")


def test_links_out_give_nothing_away() -> None:
    assert render_inline("[x](https://example.org)") == '<a href="https://example.org" rel="noopener">x</a>'


@pytest.mark.parametrize(
    "address", ["page:lesson/none", "page:nonsense/a/b", "PAGE:card", "javascript:alert(1)"]
)
def test_a_link_leads_to_the_web_or_to_a_mailbox_and_nowhere_else(address: str) -> None:
    assert "<a " not in render_inline(f"[x]({address}) <{address}>")


def test_pictures_come_as_figures_only() -> None:
    assert "<img" not in render_block("![a](https://example.org/a.png)")


def test_plain_text_keeps_the_words_and_drops_the_marks() -> None:
    assert render_plain(
        "## Top\n\nA **bold** `word` and\na [link](https://example.org).\n\n- one\n- two\n"
    ) == ("Top\nA bold word and a link.\none\ntwo")


CHARACTERS = st.text(alphabet=st.sampled_from(list("abc ABC.,;()#>-+=|\"'&<*_`[]!\\:~\n19é—…")), max_size=40)


@given(CHARACTERS)
def test_the_fast_way_gives_the_same_html_as_the_slow_one(text: str) -> None:
    assert render_inline(text) == markup._MARKDOWN.renderInline(text)


@given(CHARACTERS)
def test_no_text_brings_markup_of_its_own(text: str) -> None:
    tags = set(re.findall(r"<(\w+)", render_inline(text)))
    assert tags <= {"em", "strong", "code", "a", "br"}
