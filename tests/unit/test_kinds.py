"""A kind of question is known to every stage, or to none: whoever adds one is told here what is still missing."""

from __future__ import annotations

import re
from dataclasses import fields
from pathlib import Path

import pytest

from journeybook.content.formats.questions import QUESTION
from journeybook.marking.kinds import KINDS
from journeybook.pages.question_html import KIND_WORDS, SHEETS
from journeybook.paper.asked_kinds import ASKED, HOW_TO_ANSWER

ROOT = Path(__file__).parents[2]
THEME = ROOT / "site_overrides"
WRITTEN = set(QUESTION.records)
"""The words that an author may write after ``kind:``."""


def kinds_in(script: str) -> set[str]:
    """The names in a script's table of kinds."""
    found = re.search(
        r"const KINDS = \{(.*?)\};", (THEME / "js" / script).read_text(encoding="utf-8"), re.DOTALL
    )
    assert found is not None, f"{script} has no table of kinds"
    return {part.split(":")[0].strip() for part in found[1].split(",") if part.strip()}


def test_every_kind_is_marked() -> None:
    assert set(KINDS) == WRITTEN
    assert kinds_in("pure/mark.js") == WRITTEN


def test_every_kind_is_shown() -> None:
    assert set(SHEETS) == WRITTEN
    assert set(KIND_WORDS) == WRITTEN
    assert kinds_in("view/question-view.js") == WRITTEN


def test_every_kind_is_asked_on_paper() -> None:
    assert set(ASKED) == WRITTEN
    assert set(HOW_TO_ANSWER) == WRITTEN


@pytest.mark.parametrize("kind", sorted(WRITTEN))
def test_a_kinds_record_model_and_marking_bear_its_word(kind: str) -> None:
    record = QUESTION.records[kind]
    assert record.make.kind == kind
    assert record.fixed == {"kind": kind}
    assert KINDS[kind].name == kind


ARRANGED_ELSEWHERE = {"drill": "deeds"}
"""What a form arranges and the question itself does not hold: deeds stand in the drill."""


@pytest.mark.parametrize("kind", sorted(WRITTEN))
def test_what_a_kind_offers_is_one_of_its_fields_and_is_what_a_form_arranges(kind: str) -> None:
    model = QUESTION.records[kind].make
    assert (model.offers or ARRANGED_ELSEWHERE.get(kind, "")) == KINDS[kind].arranged
    assert not model.offers or model.offers in {each.name for each in fields(model)}
