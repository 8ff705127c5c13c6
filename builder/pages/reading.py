"""All the leaves that are read: route card, modules, lessons, words, kit sheet, sources, search."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.kit_page import kit_leaf
from journeybook.pages.leaf import Leaf
from journeybook.pages.lesson_page import lesson_leaf
from journeybook.pages.links import lesson_path, module_path
from journeybook.pages.module_page import module_leaf
from journeybook.pages.route_card import route_card_leaf
from journeybook.pages.search_page import search_leaf
from journeybook.pages.sources_page import sources_leaf
from journeybook.pages.turns import turns
from journeybook.pages.words_page import words_leaf


def reading_makers(course: Course, wording: Wording, release: BuildFacts) -> dict[str, Callable[[], Leaf]]:
    """What makes each leaf, by its path, in reading order.

    The card comes first, each module before its lessons, then what is looked up.
    """
    way = turns(course, wording)
    makers: dict[str, Callable[[], Leaf]] = {
        f"{course.id}/index.html": partial(route_card_leaf, course, wording, release)
    }
    for module in course.modules:
        path = module_path(course.id, module.operation, module.id)
        makers[path] = partial(module_leaf, course, wording, module, way[f"module/{module.id}"])
        for lesson in module.lessons:
            path = lesson_path(course.id, module.operation, module.id, lesson.id)
            makers[path] = partial(lesson_leaf, course, wording, module, lesson, way[f"lesson/{lesson.id}"])
    return makers | {
        f"{course.id}/words.html": partial(words_leaf, course, wording),
        f"{course.id}/kit.html": partial(kit_leaf, course, wording),
        f"{course.id}/sources.html": partial(sources_leaf, course),
        f"{course.id}/search.html": partial(search_leaf, course, wording),
    }


def reading_leaves(course: Course, wording: Wording, release: BuildFacts) -> list[Leaf]:
    """The leaves in reading order."""
    return [make() for make in reading_makers(course, wording, release).values()]
