"""What a text of the author's says once its references are expanded.

As HTML, as plain words, as source for digests.
"""

from __future__ import annotations

from collections.abc import Mapping

from journeybook.content.markup import escape, render_block_and_plain, render_inline, render_plain
from journeybook.content.model import Course, Sheet, Value
from journeybook.content.references import Reference, RefersTo, replace_references

NO_BREAK = "\N{NO-BREAK SPACE}"
_OPEN, _CLOSE = "\ue000", "\ue001"
"""Private characters around the number of a piece of finished HTML while CommonMark is rendered around it."""
_MOST_NESTED = 3
"""Titles may hold references, whose titles may hold references; no deeper."""


class Wording:
    """Expands and renders the texts of one course.

    ``given`` is a row of a number question's ``given``: names and numbers as written, a kit value in braces
    included. A reference that names nothing stays as written; the loader has refused such a course.
    """

    def __init__(self, course: Course) -> None:
        self.course = course
        self._lesson_titles = {lesson.id: lesson.title for lesson in course.lessons}
        self._plain_of_blocks: dict[str, str] = {}
        """Blocks written out so far, with pieces -> their words: the search asks for them again."""

    def inline(self, text: str, given: Mapping[str, str] | None = None) -> str:
        """HTML without paragraphs, for titles, options and labels."""
        pieces: list[str] = []
        return _put_back(render_inline(self._with_pieces(text, given, pieces)), pieces)

    def block(
        self,
        text: str,
        slug: str = "",
        *,
        given: Mapping[str, str] | None = None,
        taken: set[str] | None = None,
    ) -> str:
        """HTML with paragraphs, lists, tables and headings.

        Heading ids start with ``slug`` and join ``taken``.
        """
        pieces: list[str] = []
        with_pieces = self._with_pieces(text, given, pieces)
        html, plain = render_block_and_plain(with_pieces, slug, taken)
        if "\n" in with_pieces:
            self._plain_of_blocks[with_pieces] = plain
        return _put_back(html, pieces)

    def plain(self, text: str, given: Mapping[str, str] | None = None) -> str:
        """The words alone, for titles of windows, search, print and descriptions of figures."""
        pieces: list[str] = []

        def put(reference: Reference) -> str:
            pieces.append(self._words(reference, given, 0))
            return f"{_OPEN}{len(pieces) - 1}{_CLOSE}"

        with_pieces = replace_references(_without_private(text), put)
        known = self._plain_of_blocks.get(with_pieces)
        return _put_back(render_plain(with_pieces) if known is None else known, pieces)

    def source(self, text: str, given: Mapping[str, str] | None = None) -> str:
        """The author's CommonMark with the values in place: what a digest of the texts covers."""
        return replace_references(text, lambda reference: self._words(reference, given, 0))

    def value_text(self, value: Value) -> str:
        """A value with its unit, held together."""
        return f"{value.value}{NO_BREAK}{value.unit}" if value.unit else value.value

    def value_html(self, value: Value, *, number_only: bool = False) -> str:
        """The same as HTML, marked where it is an example."""
        shown = value.value if number_only else self.value_text(value)
        return f'<span class="{"value example" if value.example else "value"}">{escape(shown)}</span>'

    def _with_pieces(self, text: str, given: Mapping[str, str] | None, pieces: list[str]) -> str:
        def put(reference: Reference) -> str:
            pieces.append(self._html(reference, given))
            return f"{_OPEN}{len(pieces) - 1}{_CLOSE}"

        return replace_references(_without_private(text), put)

    def _sheet_value(self, reference: Reference) -> Value | None:
        sheet: Sheet = self.course.kit if reference.to is RefersTo.KIT else self.course.profile
        return sheet.values.get(reference.name)

    def _html(self, reference: Reference, given: Mapping[str, str] | None) -> str:
        words = escape(self._words(reference, given, 0))
        match reference.to:
            case RefersTo.KIT | RefersTo.PROFILE:
                value = self._sheet_value(reference)
                return words if value is None else self.value_html(value, number_only=reference.number_only)
            case RefersTo.WORD if reference.name in self.course.terms:
                return f'<a class="word" href="page:words#{reference.name}">{words}</a>'
            case RefersTo.LESSON if reference.name in self._lesson_titles:
                return f'<a href="page:lesson/{reference.name}">{words}</a>'
            case RefersTo.PRACTICAL if reference.name in self.course.practicals:
                return f'<a href="page:practical/{reference.name}">{words}</a>'
            case RefersTo.JOB_CARD if reference.name in self.course.job_cards:
                return f'<a href="page:job-card/{reference.name}">{words}</a>'
            case RefersTo.FIGURE if reference.name in self.course.figures:
                return f'<a href="page:figure/{reference.name}">{words}</a>'
            case _:
                return words

    def _words(self, reference: Reference, given: Mapping[str, str] | None, nested: int) -> str:
        match reference.to:
            case RefersTo.KIT | RefersTo.PROFILE:
                value = self._sheet_value(reference)
                if value is not None:
                    return value.value if reference.number_only else self.value_text(value)
            case RefersTo.WORD:
                term = self.course.terms.get(reference.name)
                if term is not None:
                    return reference.wording or term.word
            case RefersTo.LESSON if reference.name in self._lesson_titles:
                return self._title(self._lesson_titles[reference.name], nested)
            case RefersTo.PRACTICAL if reference.name in self.course.practicals:
                return self._title(self.course.practicals[reference.name].title, nested)
            case RefersTo.JOB_CARD if reference.name in self.course.job_cards:
                return self._title(self.course.job_cards[reference.name].title, nested)
            case RefersTo.FIGURE if reference.name in self.course.figures:
                return self._title(self.course.figures[reference.name].title, nested)
            case RefersTo.GIVEN if given is not None and reference.name in given:
                return self._given_number(given[reference.name])
        return reference.written

    def _given_number(self, written: str) -> str:
        """A number as written, or the number of the value that it names in braces."""
        return replace_references(
            written, lambda inner: getattr(self._sheet_value(inner), "value", inner.written)
        )

    def _title(self, title: str, nested: int) -> str:
        if nested >= _MOST_NESTED:
            return title
        return render_plain(replace_references(title, lambda inner: self._words(inner, None, nested + 1)))


def _without_private(text: str) -> str:
    return (
        text.replace(_OPEN, "\ufffd").replace(_CLOSE, "\ufffd") if _OPEN in text or _CLOSE in text else text
    )


def _put_back(text: str, pieces: list[str]) -> str:
    for number, piece in enumerate(pieces):
        text = text.replace(f"{_OPEN}{number}{_CLOSE}", piece)
    return text
