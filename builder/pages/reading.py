"""All the leaves that are read: route card, modules, lessons, words, kit sheet, sources, search."""

from __future__ import annotations

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.kit_page import kit_leaf
from journeybook.pages.leaf import Leaf
from journeybook.pages.lesson_page import lesson_leaf
from journeybook.pages.module_page import module_leaf
from journeybook.pages.route_card import route_card_leaf
from journeybook.pages.search_page import search_leaf
from journeybook.pages.sources_page import sources_leaf
from journeybook.pages.turns import turns
from journeybook.pages.words_page import words_leaf


def reading_leaves(course: Course, wording: Wording, release: BuildFacts) -> list[Leaf]:
    """The leaves in reading order: the card first, each module before its lessons, then what is looked up."""
    way = turns(course, wording)
    leaves = [route_card_leaf(course, wording, release)]
    for module in course.modules:
        leaves.append(module_leaf(course, wording, module, way[f"module/{module.id}"]))
        leaves.extend(
            lesson_leaf(course, wording, module, lesson, way[f"lesson/{lesson.id}"])
            for lesson in module.lessons
        )
    leaves += [
        words_leaf(course, wording),
        kit_leaf(course, wording),
        sources_leaf(course),
        search_leaf(course, wording),
    ]
    return leaves
