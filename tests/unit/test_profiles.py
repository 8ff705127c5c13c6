"""A site never shows another country's number: the demo course built for both of its profiles, in memory."""

from __future__ import annotations

import re
from functools import cache
from html import escape
from pathlib import Path

import pytest

from journeybook.content.model import Citation, Course, Value
from journeybook.making import courses_of
from journeybook.pages.site import Site
from journeybook.project import Project

ROOT = Path(__file__).parents[2]
COURSE = "powered-respirator"
BOTH = [("us", "uk"), ("uk", "us")]


@cache
def built(profile: str) -> tuple[Course, dict[str, str]]:
    """The course, and every page, one-file edition and search script by path."""
    ready, problems = courses_of(Project(root=ROOT, courses=(COURSE,), profile=profile))
    assert problems == []
    site = Site(ready, name="Quillon Basin Works")
    texts = {path: site.page(path)[1].decode() for path in site.paths}
    texts |= {
        path: make().decode()
        for path, make in site.files.items()
        if path == f"{COURSE}.html" or path.startswith(f"{COURSE}/")
    }
    return ready[0].course, texts


def pages_with(pattern: str, texts: dict[str, str]) -> list[str]:
    return [path for path, text in texts.items() if re.search(pattern, text)]


def shown(value: Value) -> str:
    """Every way in which a page, a script or a search result writes the value.

    A number without a unit, or of one digit, is looked for where a value of a sheet is shown, for it is also the
    number of something else on nearly every page.
    """
    if re.fullmatch(r"[\d.,]+", value.value) and (not value.unit or len(value.value) == 1):
        unit = f"&nbsp;{escape(value.unit)}" if value.unit else ""
        return rf'class="value[^"]*">{re.escape(value.value)}(?:{re.escape(unit)})?<'
    spellings = {value.value, escape(value.value), escape(value.value, quote=False)}
    words = "|".join(re.escape(spelling) for spelling in sorted(spellings))
    unit = rf"(?:&nbsp;|\s){re.escape(escape(value.unit))}" if value.unit else ""
    return rf"(?<![\w.])(?:{words}){unit}(?![\w])"


def differing(own: Course, other: Course) -> list[Value]:
    """The other profile's values that this one does not have, and that the kit sheet does not happen to have."""
    said = {(value.value, value.unit) for sheet in (own.profile, own.kit) for value in sheet.values.values()}
    return [value for value in other.profile.values.values() if (value.value, value.unit) not in said]


def limited_to(course: Course) -> list[Citation]:
    return [citation for citation in course.sources.values() if citation.only]


def test_both_sites_hold_pages_a_one_file_edition_and_search_data() -> None:
    for profile in ("us", "uk"):
        texts = built(profile)[1]
        assert {
            "index.html",
            f"{COURSE}.html",
            f"{COURSE}/search-data.js",
            f"{COURSE}/kit.html",
        } <= texts.keys()
        assert len([path for path in texts if re.search(r"/\d+-[a-z-]+/", path)]) > 15


@pytest.mark.parametrize(("own", "other"), BOTH)
def test_a_site_shows_each_value_of_its_own_profile(own: str, other: str) -> None:
    course, texts = built(own)
    missing = [
        value.id for value in differing(built(other)[0], course) if not pages_with(shown(value), texts)
    ]
    assert missing == []


@pytest.mark.parametrize(("own", "other"), BOTH)
def test_no_value_of_the_other_profile_stands_anywhere(own: str, other: str) -> None:
    course, texts = built(own)
    foreign = differing(course, built(other)[0])
    assert len(foreign) >= 10
    assert {value.id: pages_with(shown(value), texts) for value in foreign} == {
        value.id: [] for value in foreign
    }


@pytest.mark.parametrize(("own", "other"), BOTH)
def test_no_source_of_the_other_profile_stands_anywhere(own: str, other: str) -> None:
    course, texts = built(own)
    foreign = limited_to(built(other)[0])
    assert len(foreign) >= 8
    own_titles = {citation.title for citation in course.sources.values()}
    for citation in foreign:
        assert citation.id not in course.sources
        assert pages_with(rf"\b{re.escape(citation.id)}\b", texts) == []
        if citation.title not in own_titles:
            assert pages_with(re.escape(escape(citation.title)), texts) == []


@pytest.mark.parametrize(("own", "other"), BOTH)
def test_a_site_shows_each_source_of_its_own_profile(own: str, other: str) -> None:
    course, texts = built(own)
    assert {citation.only for citation in limited_to(course)} == {(own,)}
    for citation in limited_to(course):
        assert citation.id not in built(other)[0].sources
        assert f"{COURSE}/sources.html" in pages_with(rf"\b{re.escape(citation.id)}\b", texts)


@pytest.mark.parametrize(
    ("own", "foreign"),
    [("uk", r"\b(?:OSHA|NIOSH|WAC|CFR|eTool)\b"), ("us", r"\b(?:COSHH|HSE|L5|TH2|TH3|EN 12941|EU)\b")],
)
def test_no_rule_of_the_other_country_is_named_in_a_text(own: str, foreign: str) -> None:
    assert pages_with(foreign, built(own)[1]) == []


def test_the_same_question_is_asked_on_the_sources_that_hold_in_each_country() -> None:
    us, uk = built("us")[0], built("uk")[0]
    assert us.questions.keys() == uk.questions.keys()
    different = [name for name in us.questions if us.questions[name].sources != uk.questions[name].sources]
    assert different
    for name in different:
        assert us.questions[name].sources
        assert uk.questions[name].sources
