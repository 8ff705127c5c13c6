"""The words of the interface in the reader's language.

English stands in the templates and the code; other languages come from ``locale/LANGUAGE.po`` of the theme,
read with Babel (the extra ``journeybook[words]``).
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from gettext import NullTranslations
from importlib.resources import files
from io import StringIO

from journeybook.diagnostics.problem import Level, Place, Problem

SOURCE_LANGUAGE = "en"


class Catalogue(NullTranslations):
    """Interface words by their English form."""

    def __init__(self, words: dict[str, tuple[str, ...]], plural: Callable[[int], int] | None = None) -> None:
        super().__init__()
        self._words = words
        self._plural = plural or (lambda number: int(number != 1))

    def gettext(self, message: str) -> str:
        """The word in this language, or the English one where there is none."""
        found = self._words.get(message)
        return found[0] if found else message

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """The form for n, by the plural rule of the language."""
        found = self._words.get(msgid1)
        if not found:
            return msgid1 if n == 1 else msgid2
        return found[min(self._plural(n), len(found) - 1)]


@cache
def load_catalogue(language: str) -> tuple[Catalogue, tuple[Problem, ...]]:
    """The catalogue for a BCP 47 tag, and what is wrong with it; English words serve where nothing better is."""
    primary = language.split("-")[0].lower()
    if primary == SOURCE_LANGUAGE:
        return Catalogue({}), ()
    file = files("journeybook.theme") / "locale" / f"{primary}.po"
    place = Place(file="mkdocs.yml")
    if not file.is_file():
        return Catalogue({}), (
            Problem(
                code="T001",
                level=Level.WARNING,
                place=place,
                message=f"The interface has no words in '{language}', so buttons and headings stay English.",
                mend=f"Add {primary}.po to the theme's folder locale, or take '{language}' out of the languages.",
            ),
        )
    try:
        from babel.messages.pofile import read_po
    except ImportError:
        return Catalogue({}), (
            Problem(
                code="T002",
                level=Level.FAULT,
                place=place,
                message=f"The words of the interface in '{language}' cannot be read without Babel.",
                mend="Install it with: pip install 'journeybook[words]'.",
            ),
        )
    read = read_po(StringIO(file.read_text(encoding="utf-8")), locale=primary)
    words: dict[str, tuple[str, ...]] = {}
    for message in read:
        key = message.id if isinstance(message.id, str) else message.id[0]
        forms = (message.string,) if isinstance(message.string, str) else tuple(message.string)
        if key and all(forms) and not message.fuzzy:
            words[key] = forms
    return Catalogue(words, read.locale.plural_form if read.locale else None), ()
