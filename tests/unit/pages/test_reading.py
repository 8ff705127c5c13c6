from __future__ import annotations

import re
from dataclasses import replace

import pytest
from drill_pages import DIGEST, FACTS, drill_course, leaves, page, words_in

from journeybook.content.wording import Wording
from journeybook.pages.links import Targets
from journeybook.pages.reading import reading_leaves
from journeybook.pages.route_card import check_operation, check_questions

SLUGS = [
    "card",
    "module-guard",
    "lesson-parts-of-the-guard",
    "module-setting",
    "lesson-set-the-guard",
    "lesson-when-it-jams",
    "practical-prove-the-guard",
    "job-cards",
    "job-card-before-you-drill",
    "job-card-out-of-use",
    "duties",
    "words",
    "kit",
    "sources",
    "search",
    "checking",
]


def test_the_leaves_stand_in_reading_order() -> None:
    assert list(leaves()) == SLUGS


def test_every_leaf_has_the_path_that_its_place_in_the_course_gives() -> None:
    assert leaves()["module-guard"].path == "pillar-drill/10-guard.html"
    assert leaves()["lesson-parts-of-the-guard"].path == "pillar-drill/10-guard/parts-of-the-guard.html"
    assert leaves()["card"].path == "pillar-drill/index.html"


@pytest.mark.parametrize("slug", SLUGS)
def test_every_id_in_a_body_begins_with_the_slug_of_its_leaf(slug: str) -> None:
    ids = re.findall(r'\sid="([^"]+)"', leaves()[slug].body)
    assert [name for name in ids if not name.startswith(slug)] == []
    assert len(ids) == len(set(ids))


def test_no_id_comes_twice_in_all_leaves_together() -> None:
    ids = re.findall(r'\sid="([^"]+)"', "".join(leaf.body for leaf in leaves().values()))
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("slug", [slug for slug in SLUGS if slug != "search"])
def test_every_reference_within_a_body_finds_its_id(slug: str) -> None:
    """Labels, descriptions, patterns and markers; fragments of links are tried for the one file."""
    body = leaves()[slug].body
    ids = set(re.findall(r'\sid="([^"]+)"', body))
    named = re.findall(r'(?:aria-labelledby|aria-describedby|\sfor)="([^"]+)"', body)
    named += re.findall(r"url\(#([^)]+)\)", body)
    assert [name for text in named for name in text.split() if name not in ids] == []


def test_every_link_of_the_one_file_lands_on_an_id_or_a_leaf() -> None:
    targets = Targets(drill_course())
    everything = "".join(leaf.body for leaf in leaves().values())
    ids = set(re.findall(r'\sid="([^"]+)"', everything)) | set(SLUGS) | {"check"}
    lost = set()
    for leaf in leaves().values():
        found = re.findall(r'href="#([^"]*)"', targets.for_one_file(leaf.body, slug=leaf.slug))
        lost |= {name for name in found if name not in ids}
    assert lost == set()


def test_no_page_has_a_style_attribute_an_inline_handler_or_an_unresolved_link() -> None:
    for slug in SLUGS:
        assert not re.search(r'\sstyle="|\son[a-z]+="|page:', page(slug))


def test_a_lesson_shows_every_kind_of_block_under_its_own_word() -> None:
    first = words_in(leaves()["lesson-parts-of-the-guard"].body)
    second = words_in(leaves()["lesson-set-the-guard"].body)
    assert "Why Swarf winds" in first
    assert "Worked example A gap of 6 mm" in first.replace("\N{NO-BREAK SPACE}", " ")
    assert "Warning The chuck runs on" in second
    assert "Stop and ask Stop and ask: the sleeve" in second
    assert "Common mistake Tying the sleeve up" in second
    assert leaves()["lesson-set-the-guard"].body.count("<li>") >= 3


def test_a_source_that_nobody_read_is_marked_not_yet_confirmed_until_somebody_checks_it() -> None:
    sources = leaves()["sources"].body
    rows = dict(re.findall(r'<tr id="sources-([a-z-]+)">(.*?)</tr>', sources, re.S))
    assert "not yet confirmed" in rows["common-practice"]
    assert "not yet confirmed" not in rows["drill-manual"]
    assert "Checked by T. Marrable, 20 Nov 2026, edition 2" in words_in(rows["guard-rule"])


def test_a_value_of_the_kit_sheet_that_is_invented_says_so() -> None:
    row = re.search(r'<tr id="kit-guard-gap">(.*?)</tr>', leaves()["kit"].body, re.S)
    assert row is not None
    assert words_in(row[1]).startswith("Largest gap under the guard 6&nbsp;mm example")


def test_a_value_with_several_sources_shows_each_and_which_is_not_yet_confirmed() -> None:
    course = drill_course()
    duty = replace(course.profile.values["guard-duty"], sources=("guard-rule", "common-practice"), page="7")
    profile = replace(course.profile, values={"guard-duty": duty})
    changed = replace(course, profile=profile)
    body = {leaf.slug: leaf for leaf in reading_leaves(changed, Wording(changed), FACTS, lambda: DIGEST)}[
        "kit"
    ].body
    row = re.search(r'<tr id="kit-profile-guard-duty">(.*?)</tr>', body, re.S)
    assert row is not None
    assert re.findall(r'href="page:sources#([a-z-]+)"', row[1]) == ["guard-rule", "common-practice"]
    assert words_in(row[1]).endswith(
        "Rules of the fitting bay , 4 (2026) What the trade does not yet confirmed page 7"
    )


def test_the_route_card_counts_the_check_as_the_last_operation() -> None:
    course = drill_course()
    assert check_operation(course) == 90
    late = replace(course, modules=(*course.modules, replace(course.modules[0], id="late", operation=90)))
    assert check_operation(late) == 100


def test_the_route_card_counts_a_question_for_each_critical_fact_and_each_cell() -> None:
    course = drill_course()
    assert course.check is not None
    assert check_questions(course) == 1 + sum(cell.draw for cell in course.check.cells)
    assert check_questions(replace(course, check=None)) == 0


def test_without_a_script_the_next_step_leads_to_the_first_lesson() -> None:
    link = re.search(r"<a [^>]*data-next [^>]*>", leaves()["card"].body)
    assert link is not None
    assert 'href="page:lesson/parts-of-the-guard"' in link[0]


def test_the_last_lesson_leads_to_the_check_or_back_to_the_card() -> None:
    course = drill_course()
    assert 'class="turn-on" href="page:check"' in leaves()["lesson-when-it-jams"].body
    unchecked = replace(course, check=None)
    by_slug = {
        leaf.slug: leaf for leaf in reading_leaves(unchecked, Wording(unchecked), FACTS, lambda: DIGEST)
    }
    last = by_slug["lesson-when-it-jams"]
    assert 'class="turn-on" href="page:card"' in last.body


def test_a_lesson_that_opens_the_next_operation_is_announced_as_such() -> None:
    assert "Next: operation 20" in leaves()["lesson-parts-of-the-guard"].body


def test_text_of_the_author_never_becomes_markup() -> None:
    course = drill_course()
    module = course.modules[0]
    lesson = replace(module.lessons[0], title="Gap < 6 mm & <b>no more</b>")
    changed = replace(course, modules=(replace(module, lessons=(lesson,)), *course.modules[1:]))
    bodies = [leaf.body for leaf in reading_leaves(changed, Wording(changed), FACTS, lambda: DIGEST)]
    assert any("Gap &lt; 6 mm &amp;" in body for body in bodies)
    assert not any("<b>no more</b>" in body for body in bodies)
