from __future__ import annotations

from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from journeybook.content.json_schema import FILE_KINDS, schema_of, schemas
from journeybook.source.listing import Listing
from journeybook.source.shapes import Record
from journeybook.source.strict_yaml import read_document
from journeybook.source.unions import KeyUnion, KindUnion, OneKeyUnion

FAULTS = Path(__file__).parents[2] / "faults"
BASE = FAULTS / "base"
DEMO = Path(__file__).parents[3]

REFUSED_BY_BOTH = [
    "key-misspelt", "key-from-nowhere", "title-missing", "contact-missing", "contact-without-reach",
    "right-missing",
    "kit-value-without-quotes", "version-without-quotes", "text-is-a-list", "ask-empty", "ask-only-spaces",
    "title-too-long", "id-with-capitals", "id-starts-with-digit", "minutes-in-quotes", "minutes-zero",
    "percent-over-a-hundred", "percent-with-decimals", "validity-of-no-months", "draw-nothing",
    "example-in-quotes",
    "date-turned-round", "level-misspelt", "status-unknown", "kind-misspelt", "kind-missing",
    "options-are-text",
    "one-option-only", "option-is-text", "block-with-two-keys", "block-kind-misspelt", "version-with-a-space",
    "language-by-name", "file-holds-a-list", "figure-without-alt",
    "plan-number-in-words", "plan-number-without-quotes", "plan-of-unknown-kind",
    "decision-point-asks-nothing", "chart-without-lines", "path-with-one-stop", "stack-of-unknown-look",
]  # fmt: skip
"""Cases whose fault one file shows: the schema must refuse them too."""


def kind_of(path: str) -> str | None:
    for kind, (_, patterns) in FILE_KINDS.items():
        wanted = [one for one in patterns if not one.startswith("!")]
        unwanted = [one[1:] for one in patterns if one.startswith("!")]
        if any(fnmatch(path, one) for one in wanted) and not any(fnmatch(path, one) for one in unwanted):
            return kind
    return None


def as_json(value: Any) -> Any:
    """The data as an editor's YAML reader hands them to a schema: decimals as numbers."""
    if isinstance(value, dict):
        return {key: as_json(one) for key, one in value.items()}
    if isinstance(value, list):
        return [as_json(one) for one in value]
    return value if isinstance(value, bool | int | str) or value is None else float(value)


def refusals(root: Path, path: Path) -> list[str]:
    kind = kind_of(path.relative_to(root).as_posix())
    assert kind is not None, path
    document, problems = read_document(path.read_bytes(), path.name)
    assert document is not None
    assert not problems
    return [
        error.message for error in Draft202012Validator(schema_of(kind)).iter_errors(as_json(document.root))
    ]


def files_of(root: Path, course: str) -> list[Path]:
    return sorted((root / "course_src" / course).rglob("*.yml")) + sorted(
        (root / "quizzes" / course).glob("*.yml")
    )


@pytest.mark.parametrize("kind", FILE_KINDS)
def test_each_schema_is_a_schema(kind: str) -> None:
    Draft202012Validator.check_schema(schema_of(kind))


def test_there_is_a_schema_for_each_kind_of_file() -> None:
    assert list(schemas()) == [
        "course", "kit", "profile", "sources", "words", "module", "lesson", "figure", "bank", "blueprint",
        "bench", "calculator", "drill", "practical", "job-card", "duties",
    ]  # fmt: skip


@pytest.mark.parametrize("path", files_of(BASE, "pillar-drill"), ids=lambda path: path.name)
def test_the_good_course_is_good_to_the_schema(path: Path) -> None:
    assert refusals(BASE, path) == []


@pytest.mark.parametrize("path", files_of(DEMO, "powered-respirator"), ids=lambda path: path.name)
def test_the_demo_course_is_good_to_the_schema(path: Path) -> None:
    assert refusals(DEMO, path) == []


@pytest.mark.parametrize("case", REFUSED_BY_BOTH)
def test_the_schema_refuses_what_the_reader_refuses(case: str) -> None:
    root = FAULTS / "cases" / case
    assert any(refusals(root, path) for path in sorted(root.rglob("*.yml")))


def fields_in(shape: Any) -> Iterator[tuple[str, Any]]:
    match shape:
        case Record():
            for field in shape.fields:
                yield f"{shape.title}: {field.key}", field
                yield from fields_in(field.shape)
        case Listing():
            yield from fields_in(shape.entry)
        case KindUnion() | KeyUnion():
            for record in shape.records.values():
                yield from fields_in(record)
        case OneKeyUnion():
            for field in shape.fields.values():
                yield f"block: {field.key}", field
                yield from fields_in(field.shape)


FIELDS = dict(pair for record, _ in FILE_KINDS.values() for pair in fields_in(record))


@pytest.mark.parametrize("name", FIELDS)
def test_every_key_is_described_and_its_example_is_good(name: str) -> None:
    field = FIELDS[name]
    assert field.describe.endswith(".")
    assert list(Draft202012Validator(field.schema()).iter_errors(field.example)) == []
