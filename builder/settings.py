"""What mkdocs.yml says to us: the settings under ``plugins: - journeybook:``, read with positions.

MkDocs reads the file first and more loosely: tags, anchors and inherited files are its own business. So nothing is
said where they are used, or where the plugin is not named in this very file; MkDocs has its own words for the rest.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.report import report
from journeybook.source.document import Document
from journeybook.source.listing import Listing
from journeybook.source.reading import Reading
from journeybook.source.scalars import ID_LENGTH, ID_PATTERN, Text
from journeybook.source.shapes import Field, Record
from journeybook.source.strict_yaml import read_document

NAME = "journeybook"
_NOT_OURS_TO_JUDGE = frozenset({"S012", "S013", "S014", "S015"})
"""Merge keys, anchors, aliases and tags: MkDocs knows what they stand for."""

_UNSURE = "S016"
"""A value without quotes that could be read in two ways."""


@dataclass(frozen=True, kw_only=True)
class _Settings:
    courses: tuple[str, ...]
    profile: str
    quizzes: str
    trust: str
    cache: str


def _called(what: str, like: str) -> Text:
    rule = f"{what} has the name of {like}: small letters, digits and single hyphens"
    return Text(
        ID_LENGTH,
        pattern=ID_PATTERN,
        rule=(rule, "Write that name, and rename it where it has others."),
        code="C006",
    )


_FOLDER = Text(300)
SETTINGS = Record(
    _Settings,
    f"plugin {NAME}",
    [
        Field(
            "courses",
            Listing(_called("a course", "its folder"), least=1, most=500, noun="course"),
            "The folders of the courses, in square brackets.",
            ["first-course"],
        ),
        Field(
            "profile",
            _called("a profile", "its file in profiles/, without the ending"),
            "The profile that the site is for, as its file in profiles/ is called.",
            "here",
        ),
        Field("quizzes", _FOLDER, "The folder of the question banks.", "quizzes", default="quizzes"),
        Field(
            "trust", Text(300, blank=True), "The signed list of the keys trusted.", "trust.json", default=""
        ),
        Field(
            "cache", Text(300, blank=True), "The folder of the kept sites.", ".cache/journeybook", default=""
        ),
    ],
    placed=False,
    fixed={"enabled": "MkDocs takes it away from every plugin"},
    title=f"{NAME} plugin",
)


def settings_problems(data: bytes, file: str) -> list[Problem]:
    """What is wrong with our settings in a mkdocs.yml, or with a file that is no YAML at all; never raises."""
    document, problems = read_document(data, file)
    try:
        yaml.compose(data, Loader=yaml.SafeLoader)
    except (yaml.YAMLError, ValueError, RecursionError):
        return problems
    if document is None or any(problem.code in _NOT_OURS_TO_JUDGE for problem in problems):
        return []
    found = _entry(document)
    if found is None or "INHERIT" in document.root:  # type: ignore[operator]  # where there is an entry, there are keys
        return []
    container, key = found
    return [
        *_problems_of_entry(document, container, key, problems),
        *_at_the_margin(document),
        *_theme_problems(document),
    ]


def _problems_of_entry(
    document: Document, container: Any, key: Any, problems: list[Problem]
) -> list[Problem]:
    """What is wrong below the plugin's name. ``problems``: those of the whole file as YAML."""
    beside = (
        [word for word in container if word != key]
        if isinstance(_plugins_of(document), list) and isinstance(container, dict)
        else []
    )
    if beside and container[key] is None:
        return [_not_below(document, container, beside[0])]
    if container[key] in (NAME, None):
        return [_nothing_set(document, container, key)]
    reading = Reading(document)
    SETTINGS.read(reading, container, key, "")
    lines = _lines_of(document, container[key])
    # A comment behind a value and the like are MkDocs' to allow; what it would read as something else is not.
    ours = [problem for problem in problems if problem.code == _UNSURE and problem.place.line in lines]
    told = {(problem.place.line, problem.place.column) for problem in ours}
    return ours + [one for one in reading.problems if (one.place.line, one.place.column) not in told]


def problems_of_settings(path: Path) -> list[Problem]:
    """The same of a file on the disk; nothing where it cannot be read, which MkDocs says itself."""
    try:
        return settings_problems(path.read_bytes(), path.name)
    except OSError:
        return []


def report_on_settings(path: Path) -> str:
    """What is wrong with our settings in a file, as a terminal shows it; empty where nothing is."""
    problems = problems_of_settings(path)
    return report(problems, path.parent) if problems else ""


def _at_the_margin(document: Document) -> list[Problem]:
    """Settings of ours among those of MkDocs: it would only warn, and a site without its list knows no signer."""
    root: Any = document.root
    return [
        fault(
            "C001",
            document.place(root, field.key, on_key=True),
            f"`{field.key}` stands at the margin, where MkDocs has its own settings; it belongs to the plugin {NAME}.",
            f"Move the line below `- {NAME}:`, and indent it like `courses` there.",
        )
        for field in SETTINGS.fields
        if field.key in root
    ]


def _theme_problems(document: Document) -> list[Problem]:
    """Pages are printed by our own theme only; another one leaves them without styles and scripts."""
    root: Any = document.root
    written = root.get("theme")
    named = written.get("name") if isinstance(written, dict) else written
    if named == NAME:
        return []
    mend = (
        f"Write `name: {NAME}` in it."
        if isinstance(written, dict)
        else f"Write `theme: {{name: {NAME}}}` on a line of its own."
    )
    if named is None:
        place = document.place(root, "theme" if "theme" in root else "plugins", on_key=True)
        return [
            fault("C002", place, f"Nothing names the theme {NAME}, which has the styles and scripts.", mend)
        ]
    place = document.place(written, "name") if isinstance(written, dict) else document.place(root, "theme")
    return [fault("C010", place, f"The theme is not {NAME}, so styles and scripts would be missing.", mend)]


def _nothing_set(document: Document, container: Any, key: Any) -> Problem:
    return fault(
        "C002",
        document.place(container, key),
        f"The plugin {NAME} is not told what to build.",
        f"Write `- {NAME}: {{courses: [first-course], profile: here}}` with your course and your profile.",
    )


def _not_below(document: Document, container: Any, key: str) -> Problem:
    return fault(
        "C012",
        document.place(container, key, on_key=True),
        f"The settings stand beside `{NAME}:` and not below it.",
        "Indent each of them by two more spaces.",
    )


def _plugins_of(document: Document) -> Any:
    return document.root.get("plugins") if isinstance(document.root, dict) else None


def _entry(document: Document) -> tuple[Any, Any] | None:
    """Where the plugin's settings stand: what holds them, and under which key or number."""
    plugins = _plugins_of(document)
    if isinstance(plugins, dict):
        return (plugins, NAME) if NAME in plugins else None
    for number, entry in enumerate(plugins if isinstance(plugins, list) else []):
        if entry == NAME:
            return plugins, number
        if isinstance(entry, dict) and NAME in entry:
            return entry, NAME
    return None


def _lines_of(document: Document, settings: Any) -> set[int]:
    """The lines on which our keys and values begin."""
    if not isinstance(settings, dict):
        return set()
    lines = set()
    for key, value in settings.items():
        lines.update({document.place(settings, key, on_key=True).line, document.place(settings, key).line})
        if isinstance(value, list):
            lines.update(document.place(value, number).line for number in range(len(value)))
    return lines
