"""A language is one file: every word of the interface goes through gettext, and the template for it is current."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from gettext import NullTranslations
from html.parser import HTMLParser
from pathlib import Path

import pytest

from journeybook.content.loader import load_course
from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.marking.compiled import compile_course
from journeybook.pages import engine
from journeybook.pages.site import Ready, Site

ROOT = Path(__file__).parents[3]
STARTER = ROOT / "builder" / "starter"
OPEN, CLOSE = "⟦", "⟧"
DIGEST = r"([0-9a-f]{4} ){3}[0-9a-f]{4}"
"""The beginning of a digest, as pages show it: the same in every language."""


class Bracketed(NullTranslations):
    """A language in which every word of the interface is the English one in brackets."""

    def gettext(self, message: str) -> str:
        return f"{OPEN}{message}{CLOSE}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return f"{OPEN}{msgid1 if n == 1 else msgid2}{CLOSE}"


class Seen(HTMLParser):
    """Collects what a reader sees or hears: text, labels, alternatives."""

    SILENT = frozenset({"script", "style"})
    SAID = frozenset({"aria-label", "title", "alt", "placeholder"})

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self._silent = 0
        self._kept: str | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._silent += tag in self.SILENT
        # HTML's own word for what stays as it is in every language: a command to type.
        if ("translate", "no") in attrs:
            self._kept = tag
        self.texts += [value for name, value in attrs if name in self.SAID and value]

    def handle_endtag(self, tag: str) -> None:
        self._silent -= tag in self.SILENT
        if tag == self._kept:
            self._kept = None

    def handle_data(self, data: str) -> None:
        if not self._silent and self._kept is None and data.strip():
            self.texts.append(data)


def texts_of_the_author(course: Course) -> str:
    """Every text in the files of the course, as it may stand on a page."""
    wording = Wording(course)
    found = [re.sub(r"<[^>]+>", " ", figure.svg) for figure in course.figures.values()]
    for path in STARTER.rglob("*.yml"):
        for line in path.read_text(encoding="utf-8").splitlines():
            found.append(wording.plain(line))
            found += [wording.plain(quoted) for quoted in re.findall(r'"([^"]*)"', line)]
    return " ".join(" ".join(found).split())


@pytest.fixture
def bracketed(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Puts the bracketed language in place of English."""

    def catalogue(_language: str) -> tuple[NullTranslations, tuple[()]]:
        return Bracketed(), ()

    for name, module in list(sys.modules.items()):
        if name.startswith("journeybook.pages") and hasattr(module, "load_catalogue"):
            monkeypatch.setattr(module, "load_catalogue", catalogue)
    engine.engine.cache_clear()
    yield
    engine.engine.cache_clear()


def test_nothing_of_the_interface_stays_english(bracketed: None) -> None:  # noqa: ARG001 - set up by name
    course, problems = load_course(STARTER, "first-course", profile="here")
    assert course is not None, problems
    site = Site([Ready(course=course, compiled=compile_course(course))], name=course.title)
    own = texts_of_the_author(course)
    for path in site.paths:
        seen = Seen()
        seen.feed(site.page(path)[1].decode())
        # A translated sentence may hold a link, so a bracket may close in a later text than it opened.
        rest = re.sub(f"{OPEN}[^{CLOSE}]*{CLOSE}", "\n", "\n".join(seen.texts))
        for piece in (part.strip(" .,;:–·%()\u00a0") for part in re.split(r"\n|, |\. | – ", rest)):
            words = " ".join(piece.replace("\u00a0", " ").split())
            if re.search(r"[A-Za-z]{2}", words) and not re.fullmatch(DIGEST, words):
                assert words in own.replace("\u00a0", " "), f"{path}: {words!r} does not go through gettext"


def test_the_template_for_a_language_is_current() -> None:
    sys.path.insert(0, str(ROOT / "tools"))
    try:
        from extract_words import TEMPLATE, template
    finally:
        sys.path.pop(0)
    assert TEMPLATE.read_bytes() == template(), "run tools/extract_words.py"


def test_every_word_that_is_looked_up_stands_in_the_template() -> None:
    template = (ROOT / "site_overrides" / "locale" / "journeybook.pot").read_text(encoding="utf-8")
    for word in ("Jan", "Choose one", "Route card", "Whose card?", "not yet confirmed"):
        assert f'"{word}"' in template
