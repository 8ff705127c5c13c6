from __future__ import annotations

import pytest
from drill_pages import drill_course, leaves

from journeybook.pages.links import Targets

TARGETS = Targets(drill_course())


def test_a_link_within_the_same_page_is_a_fragment() -> None:
    address = TARGETS.address_for_site("page:words#sleeve", path="pillar-drill/words.html", slug="words")
    assert address == "#words-sleeve"


def test_the_front_page_of_the_site_leads_into_the_folder_of_the_course() -> None:
    assert TARGETS.address_for_site("page:kit", path="index.html", slug="card") == "pillar-drill/kit.html"


def test_a_figure_is_sought_in_the_lesson_that_names_it_and_then_elsewhere() -> None:
    own, _ = TARGETS.find("figure", "guard-laid-out", "", "lesson-parts-of-the-guard")
    other, mark = TARGETS.find("figure", "guard-laid-out", "", "lesson-set-the-guard")
    assert own == other == "lesson-parts-of-the-guard"
    assert mark == "lesson-parts-of-the-guard-figure-guard-laid-out"


def test_a_figure_that_no_lesson_shows_leads_to_the_route_card() -> None:
    assert TARGETS.find("figure", "nowhere", "", "words") == ("card", "")


def test_a_link_that_names_no_leaf_is_refused() -> None:
    with pytest.raises(ValueError, match="not a link to a leaf: page:Nothing Here"):
        TARGETS.address_for_one_file("page:Nothing Here", slug="card")
    with pytest.raises(KeyError):
        TARGETS.address_for_site("page:lesson/unknown", path="index.html", slug="card")


def test_the_one_file_does_not_offer_itself_for_download() -> None:
    card = leaves()["card"]
    assert "Save the one-file edition" in TARGETS.for_site(card.body, path=card.path, slug="card")
    assert "Save the one-file edition" not in TARGETS.for_one_file(card.body, slug="card")
