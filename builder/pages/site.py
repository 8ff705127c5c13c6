"""A site in memory: which pages and files there are, and what makes each. Nothing here touches the disk."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial

from journeybook.pages import assets
from journeybook.pages.course_pages import CoursePages, Ready
from journeybook.pages.leaf import Leaf
from journeybook.pages.lessons import MadeLesson
from journeybook.pages.rack import rack_leaf
from journeybook.pages.shell import rack_page

__all__ = ["Ready", "Site"]

Page = tuple[str, bytes]
"""The title as plain text, and the whole document."""


class Site:
    """Everything that stands in the site folder, each part made when it is asked for."""

    def __init__(
        self,
        courses: Sequence[Ready],
        *,
        name: str,
        preview: bool = False,
        made: Sequence[Sequence[MadeLesson]] = (),
    ) -> None:
        """The site of one or more courses, in the order of the rack.

        With one course its route card is the front page as well; with several that is the rack. ``preview`` loosens
        the policy by what ``mkdocs serve`` needs to show a saved change. ``made`` are the lessons of each course, where
        they were made before.
        """
        self._pages: dict[str, Callable[[], Page]] = {}
        self._files: dict[str, Callable[[], bytes]] = {
            path: partial(bytes, content) for path, content in assets.asset_files().items()
        }
        held: list[CoursePages] = []
        for index, ready in enumerate(courses):
            lessons = made[index] if made else ()
            pages = CoursePages(ready, lessons, several=len(courses) > 1, preview=preview)
            held.append(pages)
            self._pages |= {path: partial(_page, pages, path) for path in pages.paths}
            self._files |= pages.files()
        if len(held) == 1:
            self._pages["index.html"] = partial(_front_page, held[0])
        else:
            self._pages["index.html"] = partial(_rack, held, name, preview)

    @property
    def paths(self) -> tuple[str, ...]:
        """The paths of all pages."""
        return tuple(self._pages)

    @property
    def files(self) -> Mapping[str, Callable[[], bytes]]:
        """What makes each other file, by path: styles, scripts, fonts, search data, one-file editions."""
        return self._files

    def page(self, path: str) -> Page:
        """Title and document of one of ``paths``."""
        return self._pages[path]()


def _page(pages: CoursePages, path: str) -> Page:
    leaf = pages.leaf(path)
    return leaf.title, pages.page(leaf)


def _front_page(pages: CoursePages) -> Page:
    leaf = pages.front_page()
    return leaf.title, pages.page(leaf)


def _rack(held: Sequence[CoursePages], name: str, preview: bool) -> Page:
    language = held[0].course.languages[0] if held else "en"
    leaf: Leaf = rack_leaf([(pages.course, pages.wording) for pages in held], name, language)
    return leaf.title, rack_page(leaf, name, preview=preview).encode()
