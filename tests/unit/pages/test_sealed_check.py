"""A sealed check leaves nothing of itself in the site: no question, no answer, no reason, nothing it alone uses."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from journeybook.content.model import Course, Use
from journeybook.making import courses_of
from journeybook.marking.compiled import Compiled
from journeybook.pages.open_part import open_part
from journeybook.pages.site import Ready, Site
from journeybook.project import Project

ROOT = Path(__file__).parents[3]
COURSES = {
    "pillar-drill": Project(root=ROOT / "tests" / "faults" / "base", courses=("pillar-drill",), profile="uk"),
    "powered-respirator": Project(root=ROOT, courses=("powered-respirator",), profile="us"),
}
NAMES = sorted(COURSES)


@cache
def sealed(name: str) -> Ready:
    (ready,), _ = courses_of(COURSES[name])
    assert ready.course.check is not None
    course = replace(ready.course, check=replace(ready.course.check, sealed=True))
    return Ready(course=course, compiled=Compiled(course))


@cache
def everything(name: str) -> dict[str, str]:
    """Every page and file of the site of a sealed course, by path."""
    site = Site([sealed(name)], name="Quillon Basin Works")
    made = {path: site.page(path)[1] for path in site.paths}
    made |= {path: make() for path, make in site.files.items()}
    return {path: content.decode("utf-8", "replace") for path, content in made.items()}


@cache
def words(name: str) -> str:
    """All that the site says, with entities resolved, tags away and single spaces, and the raw text after it."""
    raw = "\n".join(everything(name).values())
    plain = html.unescape(re.sub(r"<[^>]+>", " ", raw))
    return re.sub(r"\s+", " ", plain) + "\n" + raw


def texts_of(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for each in value.values():
            yield from texts_of(each)
    elif isinstance(value, list):
        for each in value:
            yield from texts_of(each)


def secret_texts(name: str) -> dict[str, set[str]]:
    """Question of the check -> its own texts: asks, options, reasons, of sentences long enough to be known again."""
    content: dict[str, Any] = dict(sealed(name).compiled.content)
    public, private = content["public"]["questions"], content["private"]["reasons"]
    # What a practice question or its drill says in the same words is no leak of the check.
    shared = {
        plain(text) for id_, one in public.items() if one["use"] == "practice"
        for text in (*texts_of(one["texts"]), *texts_of(private[id_]))
    }  # fmt: skip
    for drill in open_part(sealed(name).course).drills:
        for part in ("public", "private"):
            shared.update(plain(text) for text in texts_of(content[part]["drills"][drill]["texts"]))
    return {
        id_: {
            text
            for text in map(plain, (*texts_of(one["texts"]), *texts_of(private[id_])))
            if len(text) > 30 and not any(text in one for one in shared)
        }
        for id_, one in public.items()
        if one["use"] == "check"
    }


@pytest.mark.parametrize("name", NAMES)
def test_no_id_of_a_question_of_the_check_stands_in_the_site(name: str) -> None:
    course = sealed(name).course
    asked = [one.id for bank in course.banks for one in bank.questions if one.use is Use.CHECK]
    assert len(asked) > 3
    raw = "\n".join(everything(name).values())
    found = [one for one in asked if re.search(rf"(?<![\w-]){re.escape(one)}(?![\w-])", raw)]
    assert found == []


@pytest.mark.parametrize("name", NAMES)
def test_no_text_of_a_question_of_the_check_stands_in_the_site(name: str) -> None:
    said = words(name)
    # What a lesson teaches in the very words of a question was there before and is no leak of the check.
    taught = words_of_lessons(name)
    found = [
        (id_, text)
        for id_, texts in secret_texts(name).items()
        for text in texts
        if plain(text) in said and plain(text) not in taught
    ]
    assert found == []


def plain(text: str) -> str:
    text = re.sub(r"[*_`]+", "", text)
    return re.sub(r"\s+", " ", text).strip()


@cache
def words_of_lessons(name: str) -> str:
    content: dict[str, Any] = dict(sealed(name).compiled.content)
    public = content["public"]
    shown = {
        part: public[part]
        for part in ("lessons", "words", "job-cards", "practicals", "texts")
        if part in public
    }
    return re.sub(r"\s+", " ", " ".join(plain(text) for text in texts_of(shown)))


@pytest.mark.parametrize("name", NAMES)
def test_the_same_search_finds_them_where_the_check_is_open(name: str) -> None:
    """The search itself is worth something: with an open check it finds every question."""
    course = sealed(name).course
    assert course.check is not None
    opened = replace(course, check=replace(course.check, sealed=False))
    site = Site([Ready(course=opened, compiled=Compiled(opened))], name="Quillon Basin Works")
    page = site.page(f"{name}/check.html")[1].decode()
    drawn = dict(Compiled(opened).content)
    questions: dict[str, Any] = drawn["public"]["plan"]["questions"]  # type: ignore[index, call-overload, assignment]
    assert [one for one in questions if f'data-question="{one}"' not in page] == []


@pytest.mark.parametrize("name", NAMES)
def test_what_the_check_alone_uses_is_left_out(name: str) -> None:
    course = sealed(name).course
    part = open_part(course)
    raw = "\n".join(everything(name).values())
    assert set(course.drills) >= set(part.drills)
    # A lesson may bear the same id as a drill.
    others = {lesson.id for lesson in course.lessons}
    for kind in ("figures", "benches", "drills"):
        for thing in set(getattr(course, kind)) - set(getattr(part, kind)) - others:
            assert not re.search(rf'(?<![\w-]){re.escape(thing)}(?![\w-])["<&]', raw), f"{kind}: {thing}"


@pytest.mark.parametrize("name", NAMES)
def test_no_plan_no_key_and_no_digest_of_a_question_stands_in_the_site(name: str) -> None:
    digests = json.loads(sealed(name).compiled.digests)["questions"]
    raw = "\n".join(text for path, text in everything(name).items() if not path.startswith("assets/"))
    course = sealed(name).course
    asked = [id_ for id_, one in course.questions.items() if one.use is Use.CHECK]
    assert [id_ for id_ in asked if digests[id_] in raw or digests[id_][:16] in raw] == []
    assert '"form-algorithm"' not in raw
    assert '"gates"' not in raw


@pytest.mark.parametrize("name", NAMES)
def test_practice_questions_stay(name: str) -> None:
    course: Course = sealed(name).course
    raw = "\n".join(everything(name).values())
    named = [id_ for lesson in course.lessons for id_ in lesson.practice]
    assert named
    assert [id_ for id_ in named if f'data-question="{id_}"' not in raw] == []


def test_the_page_of_the_check_says_where_it_is_taken() -> None:
    page = everything("pillar-drill")["pillar-drill/check.html"]
    assert "taken in the room, under an assessor" in page
    assert "data-check-desk" not in page


def test_an_open_course_is_shown_as_it_is() -> None:
    (ready,), _ = courses_of(COURSES["pillar-drill"])
    assert open_part(ready.course) is ready.course


def test_the_digest_covers_that_the_check_is_sealed() -> None:
    (ready,), _ = courses_of(COURSES["pillar-drill"])
    assert sealed("pillar-drill").compiled.digest != ready.compiled.digest
