from __future__ import annotations

import re
from dataclasses import replace

from drill_pages import BASE, drill_course, leaves, page, page_of, shell, words_in

from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.rack import rack_leaf
from journeybook.pages.shell import POLICY, direction_of, rack_page


def test_every_page_says_the_cautions_whom_to_ask_and_which_version() -> None:
    for slug in leaves():
        text = words_in(page(slug))
        assert "Training aid. The maker's instructions for your drill come first" in text.replace(
            "&#39;", "'"
        )
        assert "Ask T. Marrable , training lead, the office by the slip" in text
        assert "Version 1.0, draft, not released" in text


def test_the_digest_stands_where_a_record_begins_and_where_one_is_made_and_nowhere_else() -> None:
    showing = {slug for slug in leaves() if "0123 4567 89ab cdef" in page(slug)}
    assert showing == {"card", "practical-prove-the-guard"}
    check = replace(leaves()["search"], kind="check")
    assert "0123 4567 89ab cdef" in page_of(shell(), check)


def test_a_page_built_on_example_values_says_that_it_is_not_valid_for_work() -> None:
    assert "Example unit: not valid for work" in page("lesson-set-the-guard")


def test_a_page_built_on_a_real_kit_sheet_does_not() -> None:
    course = drill_course()
    values = {name: replace(value, example=False) for name, value in course.kit.values.items()}
    real = replace(course, kit=replace(course.kit, values=values))
    assert "Example unit" not in page_of(shell(real), leaves()["card"])


def test_a_released_course_carries_no_draft_mark() -> None:
    released = BuildFacts(version="1.0", draft=False, profile="Example rules")
    assert "draft" not in page_of(shell(facts=released), leaves()["words"]).lower()


def test_links_are_relative_to_the_page_so_that_a_folder_opens_anywhere() -> None:
    lesson = page("lesson-set-the-guard")
    assert 'href="../words.html#words-chuck-key"' in lesson
    assert 'href="../10-guard/parts-of-the-guard.html"' in lesson
    assert (
        'href="../10-guard/parts-of-the-guard.html#lesson-parts-of-the-guard-figure-guard-laid-out"' in lesson
    )
    assert 'href="../../assets/journeybook.css"' in lesson
    addresses = re.findall(r'(?:href|src)="([^"]*)"', lesson)
    assert [one for one in addresses if one.startswith(("/", "http"))] == []


def test_every_relative_link_of_the_site_leads_to_a_page_that_exists() -> None:
    made = {leaf.path for leaf in leaves().values()} | {"pillar-drill/check.html", "pillar-drill.html"}
    for slug, leaf in leaves().items():
        folder = (BASE / leaf.path).parent
        for address in re.findall(r'<a [^>]*href="([^"#]+)', page(slug)):
            target = (folder / address).resolve().relative_to(BASE.resolve()).as_posix()
            assert target in made, f"{slug} links to {address}"


def test_the_policy_allows_nothing_from_elsewhere() -> None:
    assert f'http-equiv="Content-Security-Policy" content="{POLICY}"'.replace("'", "&#39;") in page("card")
    assert "unsafe" not in POLICY
    assert "connect-src 'none'" in POLICY


def test_only_the_search_page_loads_the_search_data() -> None:
    loading = [slug for slug in leaves() if 'src="search-data.js"' in page(slug)]
    assert loading == ["search"]


def test_the_open_tab_is_marked_for_a_screen_reader() -> None:
    assert re.findall(r'<a class="tab" href="([^"]*)" aria-current="page">', page("kit")) == ["kit.html"]
    assert "aria-current" not in page("lesson-set-the-guard")


def test_a_site_of_several_courses_leads_back_to_the_rack() -> None:
    assert 'href="../../index.html">Rack' in page("lesson-set-the-guard", several=True)
    assert "Rack" not in page("lesson-set-the-guard")


def test_the_rack_shows_every_course_with_its_way_in() -> None:
    course = drill_course()
    leaf = rack_leaf([(course, Wording(course))], "Quillon Basin Works training", "en")
    html = rack_page(leaf, "Quillon Basin Works training")
    assert 'href="pillar-drill/index.html"' in html
    assert "2 operations · 18 min · version 1.0" in words_in(html)


def test_languages_written_from_right_to_left_say_so() -> None:
    assert [direction_of(tag) for tag in ("en", "ar", "fa-AF", "pt-BR")] == ["ltr", "rtl", "rtl", "ltr"]
