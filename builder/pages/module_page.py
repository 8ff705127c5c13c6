"""A module's page: the lessons of one operation, and what they lead to."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import Course, Module
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.links import module_path, slug_of
from journeybook.pages.turns import Turn


def module_leaf(course: Course, wording: Wording, module: Module, turn: tuple[Turn, Turn | None]) -> Leaf:
    """The leaf of one module; its outcomes are those of its lessons, in course order."""
    language = course.languages[0]
    named = {outcome for lesson in module.lessons for outcome in lesson.outcomes}
    before, after = turn
    return Leaf(
        path=module_path(course.id, module.operation, module.id),
        slug=slug_of("module", module.id),
        kind="module",
        title=wording.plain(module.title),
        course=course.id,
        body=render(
            language,
            "module.html",
            module=module,
            wording=wording,
            summary=Markup(wording.inline(module.summary)),
            outcomes=[Markup(wording.inline(one.text)) for one in course.outcomes if one.id in named],
            before=before,
            after=after,
        ),
        language=language,
        operation=module.operation,
    )
