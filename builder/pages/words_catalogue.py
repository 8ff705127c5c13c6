"""The words of the interface in the reader's language.

English stands in the templates and the code; other languages come from ``locale/LANGUAGE.po`` of the theme,
read with Babel (the extra ``journeybook[words]``) and looked up with the standard library's gettext.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from gettext import GNUTranslations, NullTranslations
from importlib.resources import files
from io import BytesIO

from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Place, Problem

SOURCE_LANGUAGE = "en"


@cache
def load_catalogue(language: str) -> tuple[NullTranslations, tuple[Problem, ...]]:
    """The catalogue for a BCP 47 tag, and what is wrong with it; English serves where nothing better is.

    A message that is empty or marked fuzzy stays English. Plural forms follow the header of the file.
    """
    primary = language.split("-")[0].lower()
    if primary == SOURCE_LANGUAGE:
        return NullTranslations(), ()
    file = files("journeybook.theme") / "locale" / f"{primary}.po"
    if not file.is_file():
        return NullTranslations(), (_no_words(language, primary),)
    try:
        from babel.messages.mofile import write_mo
        from babel.messages.pofile import read_po
    except ImportError:
        return NullTranslations(), (_no_babel(language),)
    compiled = BytesIO()
    write_mo(compiled, read_po(BytesIO(file.read_bytes()), locale=primary))
    compiled.seek(0)
    return GNUTranslations(compiled), ()


def to_translate(english: str) -> str:
    """Mark a text that is looked up later, so that ``tools/extract_words.py`` finds it. Imported as ``_``."""
    return english


def catalogue_problems(languages: Iterable[str], place: Place) -> list[Problem]:
    """What is wrong with the words in these languages; ``place`` is where the author names them."""
    found = (problem for language in languages for problem in load_catalogue(language)[1])
    return [replace(problem, place=place) for problem in found]


def _no_words(language: str, primary: str) -> Problem:
    return warning(
        "T001",
        Place(file="course.yml"),
        f"The interface has no words in '{language}': buttons and headings would stay English.",
        f"Add {primary}.po to the theme's folder locale, or drop '{language}' from languages.",
    )


def _no_babel(language: str) -> Problem:
    return fault(
        "T002",
        Place(file="course.yml"),
        f"The words of the interface in '{language}' cannot be read without Babel.",
        'Install it with: pip install "journeybook[words]".',
    )
