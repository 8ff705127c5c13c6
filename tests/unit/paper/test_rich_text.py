"""An author's text becomes plain data: looks and blocks are kept, and every sign stays the sign that was typed."""

from __future__ import annotations

from paper_demo import COURSE

from journeybook.content.wording import Wording
from journeybook.paper.rich_text import blocks_of, runs_of

WORDING = Wording(COURSE)


def test_looks_lie_in_one_another() -> None:
    assert runs_of(WORDING, "Set **it *upright***, never `tilted`.") == [
        {"text": "Set "},
        {"text": "it ", "strong": True},
        {"text": "upright", "strong": True, "slanted": True},
        {"text": ", never "},
        {"text": "tilted", "code": True},
        {"text": "."},
    ]


def test_a_value_of_the_kit_sheet_is_in_place_and_said_to_be_an_example() -> None:
    assert runs_of(WORDING, "At least {kit.minimum-flow}.") == [
        {"text": "At least "},
        {"text": "170\N{NO-BREAK SPACE}L/min", "example": True},
        {"text": "."},
    ]


def test_links_and_references_keep_their_words_alone() -> None:
    assert runs_of(WORDING, "[our page](https://example.org) and {word.tag-out|tagged out}") == [
        {"text": "our page"},
        {"text": " and "},
        {"text": "tagged out"},
    ]


def test_signs_of_the_typesetter_and_of_html_stay_as_they_were_typed() -> None:
    hostile = '#panic("x") $ <b> @ref \\\\ "quoted" & so'
    assert runs_of(WORDING, hostile) == [{"text": '#panic("x") $ <b> @ref \\ "quoted" & so'}]


def test_blocks_stand_one_after_the_other() -> None:
    text = "One\nline.\\\nAnother.\n\n## Head\n\n---\n\n    code <b>\n    more\n"
    assert blocks_of(WORDING, text) == [
        {"kind": "paragraph", "runs": [{"text": "One line."}, {"break": True}, {"text": "Another."}]},
        {"kind": "heading", "level": 2, "runs": [{"text": "Head"}]},
        {"kind": "rule"},
        {"kind": "code", "text": "code <b>\nmore"},
    ]


def test_lists_may_hold_paragraphs_and_lists() -> None:
    (made,) = blocks_of(WORDING, "3. a\n\n   b\n\n4. - c\n")
    assert (made["ordered"], made["start"]) == (True, 3)
    first, second = made["items"]
    assert [block["runs"] for block in first] == [[{"text": "a"}], [{"text": "b"}]]
    assert second == [
        {
            "kind": "list",
            "ordered": False,
            "start": 1,
            "items": [[{"kind": "paragraph", "runs": [{"text": "c"}]}]],
        }
    ]


def test_a_table_keeps_its_rows_and_its_empty_cells() -> None:
    (made,) = blocks_of(WORDING, "| a | b |\n|---|---|\n| **1** | |\n")
    assert made["rows"] == [
        [[{"text": "a"}], [{"text": "b"}]],
        [[{"text": "1", "strong": True}], []],
    ]


def test_nothing_gives_nothing() -> None:
    assert runs_of(WORDING, "") == []
    assert blocks_of(WORDING, "") == []
