"""A site in memory.

The leaves of every course, and every other file, by path. Nothing here touches the disk.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.marking.compiled import Compiled
from journeybook.pages import assets
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.check_page import check_leaf
from journeybook.pages.leaf import Leaf
from journeybook.pages.one_file import one_file
from journeybook.pages.rack import rack_leaf
from journeybook.pages.reading import reading_leaves
from journeybook.pages.script_words import words_script
from journeybook.pages.search_index import site_search_script
from journeybook.pages.shell import Shell, rack_page
from journeybook.pages.words_catalogue import SOURCE_LANGUAGE


@dataclass(frozen=True, kw_only=True)
class Ready:
    """A checked course and what was compiled of it."""

    course: Course
    compiled: Compiled


@dataclass(frozen=True, kw_only=True)
class Site:
    """Everything that stands in the site folder."""

    leaves: tuple[Leaf, ...]
    """The pages, unframed."""
    shells: Mapping[str, Shell]
    """Course id -> what frames its leaves."""
    name: str
    files: Mapping[str, bytes]
    """Every other file by its path: styles, scripts, fonts, search data, one-file editions."""
    preview: bool = False
    """Whether the pages reload themselves, in ``mkdocs serve``."""

    def page(self, leaf: Leaf) -> str:
        """The whole document of one of ``leaves``."""
        if leaf.course:
            return self.shells[leaf.course].page(leaf)
        return rack_page(leaf, self.name, preview=self.preview)


def build_site(courses: Sequence[Ready], *, name: str, preview: bool = False) -> Site:
    """The site of one or more courses, in the order of the rack.

    With one course its route card is the front page as well; with several that is the rack. ``preview`` loosens the
    policy by what ``mkdocs serve`` needs to show a saved change.
    """
    files = assets.asset_files()
    leaves: list[Leaf] = []
    shells: dict[str, Shell] = {}
    worded: list[tuple[Course, Wording]] = []
    for ready in courses:
        course = ready.course
        wording = Wording(course)
        worded.append((course, wording))
        facts = BuildFacts(
            version=course.version,
            digest=ready.compiled.digest,
            draft=course.draft,
            profile=course.profile.title,
        )
        own = reading_leaves(course, wording, facts)
        if course.check is not None:
            own.append(check_leaf(course, wording, facts, ready.compiled))
        shells[course.id] = Shell(course, wording, facts, several=len(courses) > 1, preview=preview)
        language = course.languages[0]
        words = words_script(language) if language != SOURCE_LANGUAGE else ""
        files[f"{course.id}/search-data.js"] = site_search_script(course, wording).encode()
        if words:
            files[f"assets/words-{language}.js"] = words.encode()
        files[f"{course.id}.html"] = one_file(course, wording, facts, own, words).encode()
        leaves += own
    if len(courses) == 1:
        leaves.append(replace(leaves[0], path="index.html"))
    else:
        language = courses[0].course.languages[0] if courses else "en"
        leaves.append(rack_leaf(worded, name, language))
    return Site(leaves=tuple(leaves), shells=shells, name=name, files=files, preview=preview)
