from __future__ import annotations

from collections.abc import Callable
from importlib.resources import files

import pytest
from story_examples import codes_of, file_of, found_in, page_of
from story_pages import read_story

from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.problem import Problem
from journeybook.diagnostics.why import story
from journeybook.source.strict_yaml import read_document

SAVED: dict[str, Callable[[str], bytes]] = {
    "S001": lambda text: text.encode() * 200_000,
    "S002": lambda text: text.encode("utf-16"),
    "S003": lambda text: text.encode("latin-1"),
    "S033": lambda text: text.encode() * 201,
}
"""Where an example stands for a file that cannot be printed: how that file comes about."""

ALONG_WITH = {"S033": {"S016"}}


def read(file: str, text: str) -> list[Problem]:
    return read_document(text.encode("utf-8"), file)[1]


@pytest.mark.parametrize("code", CODES)
def test_every_code_has_a_page_with_its_title_a_reason_and_two_examples(code: str) -> None:
    page = page_of(code)
    assert (page.code, page.title) == (code, CODES[code])
    assert len(page.why) > 80
    assert "```" not in page.why


def test_every_page_belongs_to_a_code() -> None:
    pages = files("journeybook.diagnostics").joinpath("why").iterdir()
    assert {page.name for page in pages} == {f"{code}.md" for code in CODES}


@pytest.mark.parametrize("code", codes_of("S"))
def test_the_failing_example_of_a_source_page_gives_that_code_and_no_other(code: str) -> None:
    fails = page_of(code).fails
    data = SAVED.get(code, str.encode)(fails)
    found = {problem.code for problem in read_document(data, "example.yml")[1]}
    assert found == {code} | ALONG_WITH.get(code, set())


@pytest.mark.parametrize("code", codes_of("S"))
def test_the_mended_example_of_a_source_page_has_no_fault(code: str) -> None:
    assert found_in(page_of(code).mended, read) == set()


@pytest.mark.parametrize("code", codes_of("CLQDEFBRKWMA"))
def test_both_examples_of_every_other_page_can_be_read(code: str) -> None:
    page = page_of(code)
    if page.language != "yaml":
        return
    assert found_in(page.fails, read) == set()
    assert found_in(page.mended, read) == set()


def test_an_example_names_its_file_in_its_first_line() -> None:
    assert file_of("# quizzes/demo/flow.yml\ntitle: a\n") == "quizzes/demo/flow.yml"
    assert file_of("title: a\n") == "example.yml"


def test_a_page_that_is_not_built_like_one_is_refused() -> None:
    with pytest.raises(ValueError, match="a heading, a reason"):
        read_story("# S010 A key stands twice.\n\nBecause.\n")


def test_there_is_no_story_of_a_code_that_there_is_not() -> None:
    with pytest.raises(KeyError):
        story("S999")
