from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.content.references import (
    Reference,
    RefersTo,
    Unreadable,
    meant_by,
    read_reference,
    references_in,
    replace_references,
)


@pytest.mark.parametrize(
    ("inside", "expected"),
    [
        ("kit.minimum-flow", (RefersTo.KIT, "minimum-flow", False, "")),
        ("kit.minimum-flow.number", (RefersTo.KIT, "minimum-flow", True, "")),
        ("profile.limit", (RefersTo.PROFILE, "limit", False, "")),
        ("word.pre-filter|pre-filters", (RefersTo.WORD, "pre-filter", False, "pre-filters")),
        ("lesson.seal-face", (RefersTo.LESSON, "seal-face", False, "")),
        ("figure.exploded", (RefersTo.FIGURE, "exploded", False, "")),
        ("flow", (RefersTo.GIVEN, "flow", False, "")),
        ("flow_high", (RefersTo.GIVEN, "flow_high", False, "")),
    ],
)
def test_a_reference_is_read(inside: str, expected: tuple[RefersTo, str, bool, str]) -> None:
    found = read_reference(inside)
    assert found is not None
    assert (found.to, found.name, found.number_only, found.wording) == expected


@pytest.mark.parametrize(
    "inside", ["", "kit", "kit.", "Kit.flow", "kit flow", "word.a|", "lesson.a.number", "kit.a.b"]
)
def test_anything_else_is_not(inside: str) -> None:
    found = read_reference(inside)
    assert found is None or found.to is RefersTo.GIVEN


def test_all_references_of_a_text_are_found_in_order() -> None:
    text = r"{kit.a} and \{kit.b\} and {see above} and {flow} and a lone { brace"
    assert list(references_in(text)) == [
        Reference(RefersTo.KIT, "a", written="{kit.a}"),
        Unreadable("{see above}"),
        Reference(RefersTo.GIVEN, "flow", written="{flow}"),
        Unreadable("{ brace"),
    ]


def test_only_references_are_replaced() -> None:
    assert (
        replace_references(r"{kit.a} \{x\} {y z}", lambda reference: reference.name.upper()) == "A {x} {y z}"
    )


@given(st.text(alphabet="{}\\kit.aword|_ \n", max_size=30))
def test_writing_references_back_changes_only_backslashes(text: str) -> None:
    back = replace_references(text, lambda reference: reference.written)
    assert back == text.replace("\\{", "{").replace("\\}", "}")


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("{jobcard.before-use}", "{job-card.before-use}"),
        ("{job_card.before-use}", "{job-card.before-use}"),
        ("{words.pre-filter|pre-filters}", "{word.pre-filter|pre-filters}"),
        ("{kit Minimum flow}", "{kit.minimum-flow}"),
        ("{kit.Minimum-Flow.number}", "{kit.minimum-flow.number}"),
        ("{practical: prove-it}", "{practical.prove-it}"),
        ("{lesson.}", ""),
        ("{elsewhere.x}", ""),
        ("{", ""),
    ],
)
def test_braces_that_hold_no_reference_may_mean_one(written: str, meant: str) -> None:
    assert meant_by(written) == meant
