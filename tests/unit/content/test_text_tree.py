"""The author's CommonMark as plain data for paper."""

from __future__ import annotations

import pytest

from journeybook.content.text_tree import runs_of, tree_of, words_of


def test_a_line_of_words_is_one_paragraph_of_one_run() -> None:
    assert tree_of("Proof the guard.") == [{"kind": "paragraph", "runs": [{"text": "Proof the guard."}]}]


def test_marks_become_the_way_in_which_words_are_set() -> None:
    (paragraph,) = tree_of("Press *softly*, **never** `twice`, ***ever***.")
    assert paragraph["runs"] == [
        {"text": "Press "},
        {"text": "softly", "emphasis": True},
        {"text": ", "},
        {"text": "never", "strong": True},
        {"text": " "},
        {"text": "twice", "code": True},
        {"text": ", "},
        {"text": "ever", "strong": True, "emphasis": True},
        {"text": "."},
    ]


def test_lists_tables_quotes_and_code_keep_their_shape() -> None:
    text = "3. one\n4. two\n   - deep\n\n> said\n\n```\na  b\n```\n\n| n | words |\n|--:|:-:|\n| 1 | *x* |\n\n---\n"
    listed, quote, code, table, rule = tree_of(text)
    assert (listed["kind"], listed["numbered"], listed["start"]) == ("list", True, 3)
    assert [block["kind"] for block in listed["items"][1]] == ["paragraph", "list"]
    assert quote == {"kind": "quote", "blocks": [{"kind": "paragraph", "runs": [{"text": "said"}]}]}
    assert code == {"kind": "code", "text": "a  b"}
    assert table["heads"] == [[{"text": "n"}], [{"text": "words"}]]
    assert table["align"] == ["right", "center"]
    assert table["rows"] == [[[{"text": "1"}], [{"text": "x", "emphasis": True}]]]
    assert rule == {"kind": "rule"}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("#let x = 1; $sqrt(2)$", "#let x = 1; $sqrt(2)$"),
        ("<b>bold</b> & <script>", "<b>bold</b> & <script>"),
        ("[words](https://example.org/x)", "words"),
        ("![drawing](x.svg)", "![drawing](x.svg)"),
        ("\\*no\\* \\#mark", "*no* #mark"),
        ("one\ntwo  \nthree", "one two\nthree"),
    ],
)
def test_signs_are_signs_and_a_link_is_its_words(text: str, words: str) -> None:
    assert words_of(runs_of(tree_of(text))) == words


def test_words_that_are_put_in_later_stay_words() -> None:
    (paragraph,) = tree_of("**At X**", lambda words: words.replace("X", "*5* | #x"))
    assert paragraph["runs"] == [{"text": "At *5* | #x", "strong": True}]


def test_the_paragraphs_of_a_short_text_follow_one_another() -> None:
    assert words_of(runs_of(tree_of("one\n\n- two\n\n> three\n\n    four"))) == "one\ntwo\nthree\nfour"
