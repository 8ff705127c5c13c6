"""The drawings of practice: each stands once on a lesson's page, and every later question leads to it.

A drawing shown again under each question that asks about it makes a page long and slow. A drawing that the lesson
shows is not repeated at all; another one stands in the first question that asks about it. From the drawing there is
a way back to every question that leads there, shown once somebody has come by a link.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from markupsafe import Markup

from journeybook.content.model import Course, Question
from journeybook.content.wording import Wording
from journeybook.pages.filters import svg_for
from journeybook.pages.question_figure import figures_of


class Asking(NamedTuple):
    """A question that leads to a drawing elsewhere on the page."""

    number: int
    """Its place in the practice, from 1."""
    place: str
    """The id of its words."""


class PracticeFigures:
    """Call it with a figure's id, question by question, for the HTML inside a question."""

    def __init__(
        self,
        course: Course,
        wording: Wording,
        slug: str,
        say: Callable[[str], str],
        *,
        above: Iterable[str],
        questions: Iterable[Question],
    ) -> None:
        """``slug`` is the leaf's; ``above`` are the figures that the lesson shows; ``questions`` all that are asked."""
        self._course = course
        self._wording = wording
        self._slug = slug
        self.say = say  # under the name by which tools/extract_words.py knows a text of the interface
        self._shown = set(above)
        self._leading = _leading(course, questions, self._shown, slug)

    def __call__(self, figure: str) -> str:
        """The drawing with its text alternative, or the way to it; nothing where the course has no such figure."""
        found = self._course.figures.get(figure)
        if found is None:
            return ""
        place = f"{self._slug}-figure-{figure}"
        if figure in self._shown:
            words = self.say("See the drawing above: {title}").format(title=self._wording.plain(found.title))
            return Markup('<p class="figure-above"><a href="#{}">{}</a></p>').format(place, words)
        self._shown.add(figure)
        return Markup(
            '<div class="question-figure" id="{}" tabindex="-1">'
            '<div role="img" aria-label="{}">{}</div>{}</div>'
        ).format(place, self._wording.plain(found.alt), svg_for(found, self._slug), self.ways_back(figure))

    def ways_back(self, figure: str) -> Markup:
        """The links from a drawing to the questions that lead to it; empty where there are none."""
        leading = self._leading.get(figure, ())
        if not leading:
            return Markup("")
        link, question = Markup(' <a href="#{}">{}</a>'), self.say("question {number}")
        links = (link.format(place, question.format(number=number)) for number, place in leading)
        return Markup('<p class="figure-asked">{}{}</p>').format(
            self.say("Asked about in practice:"), Markup("").join(links)
        )


def _leading(
    course: Course, questions: Iterable[Question], above: Iterable[str], slug: str
) -> dict[str, list[Asking]]:
    """Figure -> the questions that show a link in its place."""
    shown = set(above)
    leading: dict[str, list[Asking]] = {}
    for number, question in enumerate(questions, 1):
        for figure in figures_of(course, question):
            asking = Asking(number=number, place=f"{slug}-q-{question.id}-ask")
            if figure in shown and asking not in leading.get(figure, ()):
                leading.setdefault(figure, []).append(asking)
            shown.add(figure)
    return leading
