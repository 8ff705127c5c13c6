"""The drawings inside the questions of the check: each stands once on the leaf, and every question shows it.

Several questions ask about one drawing, and any of them may be drawn. An SVG ``use`` element costs a line and looks
the same.
"""

from __future__ import annotations

import re

from markupsafe import Markup, escape

from journeybook.content.model import Course, DrillQuestion, Figure, Question, SpotQuestion, TriageQuestion
from journeybook.content.wording import Wording
from journeybook.pages.filters import drawing_id, svg_for

_VIEW_BOX = re.compile(r'\bviewBox="([^"]+)"')


def figure_of(course: Course, question: Question) -> str:
    """The id of the figure shown with a question: its own or its drill's; empty where there is none."""
    if isinstance(question, SpotQuestion):
        return ""  # It is what is answered with, and stands in the question itself (``spot_figure``).
    if question.figure or not isinstance(question, DrillQuestion):
        return question.figure
    return course.drills[question.drill].figure


def figures_of(course: Course, question: Question) -> list[str]:
    """The ids of every figure shown with a question, in the order in which they are shown."""
    units = question.units if isinstance(question, TriageQuestion) else ()
    return [figure for figure in (figure_of(course, question), *(unit.figure for unit in units)) if figure]


class QuestionFigures:
    """Call it with a figure's id for the HTML inside a question; ``store`` then gives what it refers to."""

    def __init__(self, course: Course, wording: Wording, slug: str) -> None:
        """``slug`` is the leaf's."""
        self._course = course
        self._wording = wording
        self._slug = slug
        self._wanted: dict[str, Figure] = {}

    def __call__(self, figure: str) -> str:
        """The drawing with its text alternative, or nothing where the course has no such figure."""
        found = self._course.figures.get(figure)
        if found is None:
            return ""
        self._wanted[figure] = found
        box = _VIEW_BOX.search(found.svg)
        view = box[1] if box else "0 0 100 100"
        _, _, width, height = view.replace(",", " ").split()
        drawing = f'<use href="#{drawing_id(figure, self._slug)}" width="{width}" height="{height}"/>'
        return (
            f'<div class="question-figure" role="img" aria-label="{escape(self._wording.plain(found.alt))}">'
            f'<svg class="figure" viewBox="0 0 {width} {height}">{drawing}</svg></div>'
        )

    def store(self) -> Markup:
        """The drawings themselves, out of sight; empty where there are none."""
        if not self._wanted:
            return Markup("")
        drawings = Markup("").join(svg_for(figure, self._slug) for figure in self._wanted.values())
        return Markup('<div class="drawn-once" aria-hidden="true">{}</div>').format(drawings)
