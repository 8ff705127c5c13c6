"""All the leaves that are read: route card, modules, lessons, practicals, job cards, and what is looked up."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.checking_page import checking_leaf
from journeybook.pages.duties_page import duties_leaf
from journeybook.pages.job_card_page import job_card_leaf, job_cards_leaf
from journeybook.pages.kit_page import kit_leaf
from journeybook.pages.leaf import Leaf
from journeybook.pages.lesson_page import lesson_leaf
from journeybook.pages.links import job_card_path, lesson_path, module_path, practical_path
from journeybook.pages.module_page import module_leaf
from journeybook.pages.practical_page import practical_leaf
from journeybook.pages.route_card import practical_operation, route_card_leaf
from journeybook.pages.search_page import search_leaf
from journeybook.pages.sources_page import sources_leaf
from journeybook.pages.turns import Turn, turns
from journeybook.pages.words_page import words_leaf


def reading_makers(
    course: Course, wording: Wording, release: BuildFacts, digest: Callable[[], str]
) -> dict[str, Callable[[], Leaf]]:
    """What makes each leaf, by its path, in reading order.

    The card comes first, each module before its lessons, then what is looked up. ``digest`` is asked for the course's
    digest where a leaf carries it.
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
    return (
        makers
        | _at_work(course, wording, release, digest, way)
        | {
            f"{course.id}/words.html": partial(words_leaf, course, wording),
            f"{course.id}/kit.html": partial(kit_leaf, course, wording),
            f"{course.id}/sources.html": partial(sources_leaf, course),
            f"{course.id}/search.html": partial(search_leaf, course, wording),
            f"{course.id}/checking.html": partial(checking_leaf, course, wording, release.trust),
        }
    )


def _at_work(
    course: Course,
    wording: Wording,
    release: BuildFacts,
    digest: Callable[[], str],
    way: Mapping[str, tuple[Turn, Turn | None]],
) -> dict[str, Callable[[], Leaf]]:
    makers: dict[str, Callable[[], Leaf]] = {}
    for index, practical in enumerate(course.practicals.values()):
        operation, turn = practical_operation(course, index), way[f"practical/{practical.id}"]
        makers[practical_path(course.id, practical.id)] = partial(
            practical_leaf, course, wording, practical, operation, turn, release, digest
        )
    if course.job_cards:
        makers[f"{course.id}/job-cards.html"] = partial(job_cards_leaf, course, wording)
    for card in course.job_cards.values():
        makers[job_card_path(course.id, card.id)] = partial(job_card_leaf, course, wording, release, card)
    if course.duties is not None:
        makers[f"{course.id}/duties.html"] = partial(duties_leaf, course, wording, course.duties)
    return makers


def reading_leaves(
    course: Course, wording: Wording, release: BuildFacts, digest: Callable[[], str]
) -> list[Leaf]:
    """The leaves in reading order."""
    return [make() for make in reading_makers(course, wording, release, digest).values()]
