"""The words of the interface in the reader's language.

English stands in the templates and the code; other languages come from ``locale/LANGUAGE.po`` of the theme,
read with Babel (the extra ``journeybook[words]``) and looked up with the standard library's gettext.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from gettext import GNUTranslations, NullTranslations
from importlib.resources import files
from io import BytesIO
from typing import TYPE_CHECKING

from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.extras import to_install
from journeybook.diagnostics.problem import Place, Problem

if TYPE_CHECKING:
    from babel.messages.catalog import Message

SOURCE_LANGUAGE = "en"
_GAP = re.compile(r"%\(\w+\)[a-z]|\{\w+\}|%%|[%{}]")
"""What is filled in, and what would be taken for it: ``%(name)s`` in templates, ``{name}`` elsewhere."""
_LONGEST_STRAY = 2
"""Characters of the longest sign in ``_GAP`` that is not itself a gap."""


@cache
def load_catalogue(language: str) -> tuple[NullTranslations, tuple[Problem, ...]]:
    """The catalogue for a BCP 47 tag, and what is wrong with it; English serves where nothing better is.

    A message that is empty, marked fuzzy or has other gaps than the English stays English. Plural forms follow
    the header of the file.
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
    catalogue = read_po(BytesIO(file.read_bytes()), locale=primary)
    unlike = [
        message for message in catalogue if message.id and not message.fuzzy and not _same_gaps(message)
    ]
    for message in unlike:
        catalogue.delete(message.id, message.context)
    compiled = BytesIO()
    write_mo(compiled, catalogue)
    compiled.seek(0)
    return GNUTranslations(compiled), tuple(_other_gaps(language, file.name, message) for message in unlike)


def _same_gaps(message: Message) -> bool:
    """Whether a translation can be filled in wherever its English text is.

    It has each gap of the English and no other; one of several plural forms may say a number in words. It has
    no sign that only looks like the start of a gap, unless the English has it.
    """
    english = (message.id,) if isinstance(message.id, str) else tuple(message.id)
    strings = (message.string,) if isinstance(message.string, str) else tuple(message.string or ())
    wanted = {sign for text in english for sign in _GAP.findall(text)}
    for text in filter(None, strings):
        found = set(_GAP.findall(text))
        left_out = {sign for sign in wanted - found if len(sign) > _LONGEST_STRAY}
        if found - wanted or (left_out and len(english) == 1):
            return False
    return True


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
        f"Install it with: {to_install('words')}.",
    )


def _other_gaps(language: str, file: str, message: Message) -> Problem:
    english = message.id if isinstance(message.id, str) else message.id[0]
    gaps = ", ".join(sign for sign in dict.fromkeys(_GAP.findall(english)) if len(sign) > _LONGEST_STRAY)
    return warning(
        "T003",
        Place(file="course.yml"),
        f"The text “{english}” in '{language}' does not have the gaps of the English, so it stays English.",
        f"Give it {gaps} and no other in {file}."
        if gaps
        else f"Take the signs % and {{ out of it in {file}.",
    )
