"""One course as pages: which there are, and what makes each of them when it is wanted.

A build wants all of them at once; the preview only the one that somebody looks at.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.marking.compiled import Compiled
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.bench_html import site_bench_script
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.check_page import check_leaf
from journeybook.pages.leaf import Leaf, SettledLeaf
from journeybook.pages.lessons import MadeLesson
from journeybook.pages.one_file import one_file
from journeybook.pages.open_part import open_part
from journeybook.pages.reading import reading_makers
from journeybook.pages.script_words import words_script
from journeybook.pages.sealed_check_page import sealed_check_leaf
from journeybook.pages.search_index import Entry, lookup_entries, search_entries, site_search_script
from journeybook.pages.shell import Shell
from journeybook.pages.words_catalogue import SOURCE_LANGUAGE


@dataclass(frozen=True, kw_only=True)
class Ready:
    """A checked course and what was compiled of it."""

    course: Course
    compiled: Compiled
    trust: str = ""
    """Canonical text of the site's trust list; empty where there is none."""


class CoursePages:
    """The pages and files of one course, each made when it is asked for."""

    def __init__(
        self, ready: Ready, made: Sequence[MadeLesson] = (), *, several: bool, preview: bool = False
    ) -> None:
        """``made`` are its lessons where they were made before; for the rest see ``Shell``."""
        course = open_part(ready.course)
        self.course = course
        self.wording = Wording(course)
        self._facts = BuildFacts(
            version=course.version,
            draft=course.draft,
            profile=course.profile.title,
            trust=ready.trust,
        )
        self._compiled = ready.compiled
        self._shell = Shell(course, self.wording, self._facts, self._digest, several=several, preview=preview)
        self._targets = self._shell.targets
        self._makers = reading_makers(course, self.wording, self._facts, self._digest)
        if course.check is not None:
            self._makers[f"{course.id}/check.html"] = (
                partial(sealed_check_leaf, course, self.wording)
                if course.check.sealed
                else partial(check_leaf, course, self.wording, self._facts, ready.compiled)
            )
        self._made = {one.leaf.path: one.leaf for one in made}
        self._made_entries: list[Entry] = [one.entry for one in made]

    @property
    def paths(self) -> tuple[str, ...]:
        """The paths of its pages, in reading order; the route card is the first."""
        return tuple(self._makers)

    def leaf(self, path: str) -> SettledLeaf:
        """The leaf of one of ``paths``."""
        made = self._made.get(path)
        if made is None:
            made = self._made[path] = self._targets.settled(self._makers[path]())
        return made

    def page(self, leaf: SettledLeaf) -> bytes:
        """The whole document of one leaf."""
        return self._shell.page(leaf)

    def front_page(self) -> SettledLeaf:
        """The route card where it is the front page of the whole site."""
        card: Leaf = self._makers[self.paths[0]]()
        return self._targets.settled(replace(card, path="index.html"))

    def files(self) -> dict[str, Callable[[], bytes]]:
        """What makes each of its other files, by path: search data, one-file edition, the scripts' words."""
        course = self.course
        made: dict[str, Callable[[], bytes]] = {
            f"{course.id}/search-data.js": lambda: site_search_script(self._entries, self._targets).encode(),
            f"{course.id}.html": self._one_file,
        }
        if course.benches:
            benches = BenchDesk(course=course, wording=self.wording, slug="", language=course.languages[0])
            made[f"{course.id}/bench-data.js"] = lambda: site_bench_script(benches).encode()
        if self._script_words:
            made[f"assets/words-{course.languages[0]}.js"] = self._script_words.encode
        return made

    @cached_property
    def _script_words(self) -> str:
        language = self.course.languages[0]
        return words_script(language) if language != SOURCE_LANGUAGE else ""

    @cached_property
    def _entries(self) -> list[Entry]:
        """What the search finds."""
        if self._made_entries:
            return self._made_entries + lookup_entries(self.course, self.wording)
        return search_entries(self.course, self.wording)

    def _digest(self) -> str:
        return self._compiled.digest

    def _one_file(self) -> bytes:
        return one_file(
            self.course,
            self.wording,
            self._facts,
            self._digest(),
            [self.leaf(path) for path in self.paths],
            self._script_words,
            entries=self._entries,
            targets=self._targets,
        )
