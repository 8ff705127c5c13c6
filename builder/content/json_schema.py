"""JSON Schemas (draft 2020-12) for editors, one a kind of file, made from the same tables as the reader.

They say what one file can show to be wrong. What needs the other files (a name that is not there) the
loader finds.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from journeybook.content.formats.blueprint import BLUEPRINT
from journeybook.content.formats.course import COURSE
from journeybook.content.formats.figure import FIGURE
from journeybook.content.formats.lesson import LESSON, MODULE
from journeybook.content.formats.named import NAMED_FILES
from journeybook.content.formats.questions import BANK
from journeybook.content.formats.sheets import KIT, PROFILE, SOURCES, WORDS
from journeybook.source.shapes import FileShape

DIALECT = "https://json-schema.org/draft/2020-12/schema"

FILE_KINDS: Mapping[str, tuple[FileShape, tuple[str, ...]]] = MappingProxyType(
    {
        "course": (COURSE, ("course_src/*/course.yml",)),
        "kit": (KIT, ("course_src/*/kit.yml",)),
        "profile": (PROFILE, ("course_src/*/profiles/*.yml",)),
        "sources": (SOURCES, ("course_src/*/sources.yml",)),
        "words": (WORDS, ("course_src/*/words.yml",)),
        "module": (MODULE, ("course_src/*/modules/*/module.yml",)),
        "lesson": (LESSON, ("course_src/*/modules/*/*.yml", "!course_src/*/modules/*/module.yml")),
        "figure": (FIGURE, ("course_src/*/figures/*.yml",)),
        "bank": (BANK, ("quizzes/*/*.yml", "!quizzes/*/competence-check.yml")),
        "blueprint": (BLUEPRINT, ("quizzes/*/competence-check.yml",)),
    }
    | {
        shape.noun.replace(" ", "-"): (shape, (f"course_src/*/{folder}/*.yml",))
        for folder, (shape, _) in NAMED_FILES.items()
    }
)
"""Kind of file -> its table, and the paths (``!`` for all but) that editors connect with its schema."""


def schema_of(kind: str) -> dict[str, Any]:
    """The schema of a kind of file; raises ``KeyError`` for a kind that there is not."""
    record = FILE_KINDS[kind][0]
    return {"$schema": DIALECT, "title": f"Journeybook: {record.title}", **record.schema()}


def schemas() -> dict[str, dict[str, Any]]:
    """Kind of file -> its schema."""
    return {kind: schema_of(kind) for kind in FILE_KINDS}
