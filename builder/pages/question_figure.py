"""A drawing inside a question."""

from __future__ import annotations

import re

from journeybook.content.model import Course
from markupsafe import escape

_ID = re.compile(r'(\bid="|url\(#|href="#)')


def question_figure(course: Course, slug: str, figure: str) -> str:
    """Return the drawing with its text alternative, or nothing where the course has no such figure.

    Its ids get a prefix of their own: the same drawing may also stand in the lesson above.
    """
    found = course.figures.get(figure)
    if found is None:
        return ""
    svg = _ID.sub(lambda match: f"{match[1]}{slug}-q-", found.svg)
    return f'<div class="question-figure" role="img" aria-label="{escape(found.alt)}">{svg}</div>'
