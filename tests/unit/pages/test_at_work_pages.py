"""Practicals, job cards and duties as pages: what they say, and what they never do."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from drill_pages import DIGEST, FACTS, drill_course, leaves, page, words_in

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.leaf import Leaf
from journeybook.pages.links import Targets
from journeybook.pages.reading import reading_leaves
from journeybook.pages.route_card import practical_operation
from journeybook.pages.search_index import lookup_entries

PRACTICAL = "practical-prove-the-guard"
CARD = "job-card-before-you-drill"
PAGES = (PRACTICAL, CARD, "job-card-out-of-use", "job-cards", "duties")


def leaves_of(course: Course) -> dict[str, Leaf]:
    return {leaf.slug: leaf for leaf in reading_leaves(course, Wording(course), FACTS, lambda: DIGEST)}


def rows(body: str) -> list[str]:
    return re.findall(r"<tr id=.*?</tr>", body, re.DOTALL)


def test_each_has_its_path() -> None:
    assert leaves()[PRACTICAL].path == "pillar-drill/practical/prove-the-guard.html"
    assert leaves()[CARD].path == "pillar-drill/job-card/before-you-drill.html"
    assert leaves()["job-cards"].path == "pillar-drill/job-cards.html"
    assert leaves()["duties"].path == "pillar-drill/duties.html"


@pytest.mark.parametrize("slug", PAGES)
def test_nothing_on_them_can_be_pressed_or_filled_in_by_a_browser(slug: str) -> None:
    # Not without a script, and not on paper; the form of a practical is made by its script.
    assert not re.search(r"<(?:button|input|select|textarea|form)\b", leaves()[slug].body)
    assert bool(leaves()[slug].data) == bool(leaves()[slug].scripts) == (slug == PRACTICAL)


def test_the_script_of_a_practical_knows_what_its_record_has_to_say() -> None:
    assert leaves()[PRACTICAL].scripts == ("deflate", "practical")
    assert leaves()[PRACTICAL].data == {
        "practical": {
            "course": "pillar-drill",
            "version": "1.0",
            "digest": DIGEST,
            "profile": "uk",
            "language": "en",
            "practical": "prove-the-guard",
            "draft": True,
            "conditions": 2,
            "steps": [["isolate", True], ["close-the-gap", True], ["name-parts", False]],
        }
    }
    assert '<span class="digest">0123 4567 89ab cdef</span>' in page(PRACTICAL)
    assert re.findall(r'"\.\./\.\./assets/([a-z]+)\.css"', page(PRACTICAL)) == ["journeybook", "practical"]
    assert "practical.css" not in page(CARD)
    assert re.findall(r'src="\.\./\.\./assets/([a-z]+)\.js"', page(PRACTICAL)) == [
        "journeybook",
        "deflate",
        "practical",
    ]


def test_the_practical_puts_safety_before_the_first_step() -> None:
    said = words_in(leaves()[PRACTICAL].body)
    assert said.index("Nothing is begun until each of these is so.") < said.index(
        "The drill is isolated, and"
    )
    assert said.index("The drill is isolated, and") < said.index("Make the drill safe to touch.")


def test_a_critical_step_says_so_in_a_word_and_the_others_do_not() -> None:
    found = rows(leaves()[PRACTICAL].body)
    assert [words_in(row).split()[:2] for row in found] == [
        ["1", "Critical"],
        ["2", "Critical"],
        ["3", "Name"],
    ]
    assert ["is-critical" in row for row in found] == [True, True, False]
    assert "3 steps, 2 of them critical" in words_in(leaves()[PRACTICAL].body)


def test_each_step_has_a_box_for_yes_no_not_seen_and_prompted() -> None:
    for row in rows(leaves()[PRACTICAL].body):
        assert row.count('class="tick-box"') == 4
        assert words_in(row).endswith("Yes No Not seen Prompted")


def test_what_to_look_for_stands_beside_the_step_with_the_values_of_the_kit_sheet() -> None:
    second = (
        words_in(rows(leaves()[PRACTICAL].body)[1]).replace("&nbsp;", " ").replace("\N{NO-BREAK SPACE}", " ")
    )
    assert "Look for Measures it and says a number: at most 6 mm" in second


def test_when_to_end_it_is_read_before_the_first_step_and_a_hint_on_a_critical_one_counts() -> None:
    body = leaves()[PRACTICAL].body
    order = [body.index(f'class="{name}') for name in ("practical-safety", "practical-stop", "observed")]
    assert order == sorted(order)
    assert "that is “no” or “not seen”, or that needed a hint, means not yet competent" in words_in(body)


def test_the_practical_has_a_line_for_everybody_who_answers_for_it() -> None:
    said = words_in(leaves()[PRACTICAL].body)
    for label in (
        "Person observed",
        "Assessor: name and role",
        "What makes the assessor fit",
        "Second observer",
        "Date and place",
    ):
        assert label in said


def test_its_result_is_in_the_two_words_and_it_says_what_it_does_not_prove() -> None:
    said = words_in(leaves()[PRACTICAL].body)
    assert re.search(r"\bcompetent not yet competent\b", said)
    assert "It does not prove permission to work" in said
    assert "This page keeps nothing." in said


def test_the_head_that_is_repeated_on_paper_names_the_practical_and_the_example_unit() -> None:
    head = re.search(r"<thead>.*?</thead>", leaves()[PRACTICAL].body, re.DOTALL)
    assert head is not None
    assert "Set the guard, and prove it Example unit: not valid for work Person observed" in words_in(head[0])
    course = drill_course()
    values = {name: replace(value, example=False) for name, value in course.kit.values.items()}
    real = leaves_of(replace(course, kit=replace(course.kit, values=values)))
    assert "Example unit" not in words_in(real[PRACTICAL].body)
    assert "Example unit" not in words_in(real[CARD].body)


def test_the_practicals_are_the_last_lines_of_the_route_card_and_no_script_can_reach_their_box() -> None:
    card = leaves()["card"].body
    (row,) = re.findall(r'<tr class="operation-practical">.*?</tr>', card, re.DOTALL)
    assert card.index("operation-check") < card.index("operation-practical")
    assert words_in(row).startswith("100 Set the guard, and prove it Practical: observed by an assessor")
    assert "data-" not in row


def test_without_a_check_the_practicals_follow_the_last_module() -> None:
    course = drill_course()
    assert practical_operation(course, 0) == 100
    assert practical_operation(course, 1) == 110
    assert practical_operation(replace(course, check=None), 0) == 30


def test_a_job_card_carries_its_own_cautions_and_version_for_the_wall() -> None:
    foot = re.search(r"<footer.*?</footer>", leaves()[CARD].body, re.DOTALL)
    assert foot is not None
    said = words_in(foot[0])
    assert (
        "Training aid. The maker&#39;s instructions" in said
        or "Training aid. The maker's instructions" in said
    )
    assert "Version 1.0, draft, not released" in said
    assert "Rules of the fitting bay , 4 (2026)" in said


def test_a_citation_that_nobody_read_is_not_yet_confirmed_on_a_card_as_well() -> None:
    course = drill_course()
    card = replace(course.job_cards["out-of-use"], sources=("common-practice",))
    changed = leaves_of(replace(course, job_cards={card.id: card}, duties=None, practicals={}, modules=()))
    assert "What the trade does (not yet confirmed)" in words_in(changed["job-card-out-of-use"].body)


def test_empty_rows_and_cells_are_there_to_write_on() -> None:
    body = leaves()[CARD].body
    first, second = re.findall(r'<table class="job-table.*?</table>', body, re.DOTALL)
    assert first.count('<td class="empty">') == 4
    assert second.count('<td class="empty">') == 6


def test_a_drawing_on_a_card_says_in_words_what_it_shows() -> None:
    alt = re.search(r'<figure class="job-figure" role="img" aria-label="([^"]+)"', leaves()[CARD].body)
    assert alt is not None
    assert len(alt[1]) > 20


def test_the_tag_has_a_hole_and_the_others_have_none() -> None:
    assert "tag-hole" in leaves()["job-card-out-of-use"].body
    assert "tag-hole" not in leaves()[CARD].body


def test_the_list_leads_to_every_card() -> None:
    assert re.findall(r'href="page:job-card/([a-z-]+)"', leaves()["job-cards"].body) == [
        "before-you-drill",
        "out-of-use",
    ]


def test_a_duty_leads_to_what_covers_it() -> None:
    first = re.search(
        r'<li class="duty" id="duties-nobody-reaches-in">.*?</div>\n</li>', leaves()["duties"].body, re.DOTALL
    )
    assert first is not None
    said = words_in(first[0])
    assert "Taught in Set the guard to the drill" in said
    assert "Asked in the check 1 question may be drawn" in said
    for link in (
        "page:lesson/set-the-guard",
        "page:lesson/set-the-guard#q-guard-04",
        "page:practical/prove-the-guard#close-the-gap",
        "page:job-card/before-you-drill",
        "page:sources#guard-rule",
    ):
        assert f'href="{link}"' in first[0]


def test_a_clause_that_nobody_read_is_not_yet_confirmed() -> None:
    second = leaves()["duties"].body.split('id="duties-isolated-first"')[1]
    clauses = re.findall(r"<li>(.*?)</li>", second.split("duty-covers")[0], re.DOTALL)
    assert ["not yet confirmed" in clause for clause in clauses] == [False, True]


def test_a_course_without_them_has_neither_pages_nor_lines_nor_links() -> None:
    course = drill_course()
    lesson = replace(course.lessons[0], body=())
    module = replace(course.modules[0], lessons=(lesson,))
    bare = replace(course, practicals={}, job_cards={}, duties=None, modules=(module,))
    found = leaves_of(bare)
    assert not [slug for slug in found if slug.startswith(("practical", "job-card", "duties"))]
    assert not re.search(
        r"page:(?:practical|job-card|duties)|operation-practical|card-paper", found["card"].body
    )
    with pytest.raises(KeyError):
        Targets(bare).path("duties")


def test_the_search_finds_practicals_and_job_cards_by_what_stands_on_them() -> None:
    course = drill_course()
    entries = {entry[2]: entry for entry in lookup_entries(course, Wording(course))}
    practical, card = entries["page:practical/prove-the-guard"], entries["page:job-card/before-you-drill"]
    assert practical[:2] == ["Set the guard, and prove it", "Practical"]
    assert "keeps the chuck key in the hand" in practical[3]
    assert card[:2] == ["Before you drill", "Job card"]
    assert "Bay 2" in card[3]
    assert "guard-laid-out" not in card[3]


def test_texts_lead_to_practicals_and_job_cards() -> None:
    html = page("lesson-set-the-guard")
    assert '<a href="../practical/prove-the-guard.html">Set the guard, and prove it</a>' in html
    assert '<a href="../job-card/before-you-drill.html">Before you drill</a>' in html


def test_text_of_the_author_never_becomes_markup() -> None:
    course = drill_course()
    evil = "6 < 7 & <b>x</b>"
    practical = course.practicals["prove-the-guard"]
    step = replace(practical.steps[0], text=evil, look_for=evil)
    steps = (step, *practical.steps[1:])
    watched = replace(practical, title=evil, intro=evil, safety=(evil,), stop=evil, steps=steps)
    card = replace(course.job_cards["before-you-drill"], title=evil, when=evil)
    changed = replace(course, practicals={watched.id: watched}, job_cards={**course.job_cards, card.id: card})
    for slug in (PRACTICAL, CARD, "job-cards", "duties", "card"):
        assert "<b>x</b>" not in leaves_of(changed)[slug].body, slug
