"""Where ``page:`` links lead, for each edition.

A body names its targets by what they are: ``page:card``, ``page:module/ID``, ``page:lesson/ID``,
``page:practical/ID``, ``page:job-card/ID``, ``page:job-cards``, ``page:duties``, ``page:figure/ID``,
``page:words#ID``, ``page:kit#ID``, ``page:sources#ID``, ``page:check``, ``page:checking``, ``page:search``,
``page:rack``, ``page:download``. The site makes relative addresses of them, so that it opens from any folder;
the one-file edition makes fragments.
"""

from __future__ import annotations

import posixpath
import re
from collections.abc import Callable
from functools import lru_cache

from journeybook.content.model import BlockKind, Course
from journeybook.pages.filters import script_json
from journeybook.pages.leaf import Leaf, SettledLeaf

_LINK = re.compile(r"page:([a-z]+(?:-[a-z]+)*)(?:/([a-z0-9-]+))?(?:#([a-z0-9-]+))?")
_SITE_BEGINS = b"<!-- only in the site -->"
_ONLY_IN_SITE = re.compile(_SITE_BEGINS + rb"(.*?)<!-- /only in the site -->\n?", re.DOTALL)


def slug_of(kind: str, name: str = "") -> str:
    """What begins every id of that leaf."""
    return f"{kind}-{name}" if name else kind


def module_path(course: str, operation: int, module: str) -> str:
    """The module's page, relative to the site's root."""
    return f"{course}/{operation}-{module}.html"


def lesson_path(course: str, operation: int, module: str, lesson: str) -> str:
    """The lesson's page, relative to the site's root."""
    return f"{course}/{operation}-{module}/{lesson}.html"


def practical_path(course: str, practical: str) -> str:
    """The practical's page, relative to the site's root."""
    return f"{course}/practical/{practical}.html"


def job_card_path(course: str, card: str) -> str:
    """The job card's page, relative to the site's root."""
    return f"{course}/job-card/{card}.html"


@lru_cache(maxsize=4096)  # the same few tabs and footings on every page of a folder
def _relative(place: str, folder: str) -> str:
    return posixpath.relpath(place, folder)


class Targets:
    """Every leaf of a course that can be linked to."""

    def __init__(self, course: Course) -> None:
        kinds = ("check", "words", "kit", "sources", "search", "checking")
        self._paths = {kind: f"{course.id}/{kind}.html" for kind in kinds}
        self._paths["card"] = f"{course.id}/index.html"
        self._paths["rack"] = "index.html"
        self._paths["download"] = f"{course.id}.html"
        if course.duties is not None:
            self._paths["duties"] = f"{course.id}/duties.html"
        if course.job_cards:
            self._paths["job-cards"] = f"{course.id}/job-cards.html"
        for name in course.practicals:
            self._paths[slug_of("practical", name)] = practical_path(course.id, name)
        for name in course.job_cards:
            self._paths[slug_of("job-card", name)] = job_card_path(course.id, name)
        self._figures: dict[str, list[str]] = {}
        for module in course.modules:
            self._paths[slug_of("module", module.id)] = module_path(course.id, module.operation, module.id)
            for lesson in module.lessons:
                slug = slug_of("lesson", lesson.id)
                self._paths[slug] = lesson_path(course.id, module.operation, module.id, lesson.id)
                for block in lesson.body:
                    if block.kind is BlockKind.FIGURE:
                        self._figures.setdefault(block.text, []).append(slug)

    def find(self, kind: str, name: str, mark: str, here: str) -> tuple[str, str]:
        """The target's slug and the full id within it; the id is empty for the top of the leaf.

        ``here`` is the slug of the leaf that holds the link: its own figures come first.
        A figure that no lesson shows is looked for on the route card.
        """
        if kind == "figure":
            holders = self._figures.get(name, [])
            if not holders:
                return "card", ""
            holder = here if here in holders else holders[0]
            return holder, f"{holder}-figure-{name}"
        slug = slug_of(kind, name)
        return slug, f"{slug}-{mark}" if mark else ""

    def path(self, slug: str) -> str:
        """The leaf's file, relative to the site's root. Raises KeyError for a leaf the course lacks."""
        return self._paths[slug]

    def address_for_site(self, link: str, *, path: str, slug: str) -> str:
        """The address, relative to the page ``path``, of what a ``page:`` link names."""
        target, mark = self._parse(link, slug)
        place = self._paths[target]
        if place == path and mark:
            return f"#{mark}"
        relative = _relative(place, posixpath.dirname(path) or ".")
        return f"{relative}#{mark}" if mark else relative

    def address_for_one_file(self, link: str, *, slug: str) -> str:
        """The fragment, within the one file, of what a ``page:`` link names."""
        target, mark = self._parse(link, slug)
        return f"#{mark or target}"

    def for_site(self, html: str, *, path: str, slug: str) -> str:
        """The HTML with every link made relative to ``path``, the page it stands on."""
        return self._for_site(html.encode(), path, slug).decode()

    def for_one_file(self, html: str, *, slug: str) -> str:
        """The HTML with every link made a fragment of the file, and without what is only for the site."""
        return self._for_one_file(html.encode(), slug).decode()

    def _for_site(self, html: bytes, path: str, slug: str) -> bytes:
        if _SITE_BEGINS in html:
            html = _ONLY_IN_SITE.sub(rb"\1", html)
        return _with_addresses(html, lambda link: self.address_for_site(link, path=path, slug=slug))

    def _for_one_file(self, html: bytes, slug: str) -> bytes:
        if _SITE_BEGINS in html:
            html = _ONLY_IN_SITE.sub(b"", html)
        return _with_addresses(html, lambda link: self.address_for_one_file(link, slug=slug))

    def settled(self, leaf: Leaf) -> SettledLeaf:
        """The leaf as both editions print it."""
        body = leaf.body.encode()
        return SettledLeaf(
            path=leaf.path,
            slug=leaf.slug,
            kind=leaf.kind,
            title=leaf.title,
            course=leaf.course,
            language=leaf.language,
            operation=leaf.operation,
            scripts=leaf.scripts,
            in_site=self._for_site(body, leaf.path, leaf.slug),
            in_one_file=self._for_one_file(body, leaf.slug),
            script_data=script_json(leaf.data).encode() if leaf.data else b"",
        )

    def _parse(self, link: str, here: str) -> tuple[str, str]:
        parts = _LINK.fullmatch(link)
        if parts is None:
            raise ValueError(f"not a link to a leaf: {link}")
        return self.find(parts[1], parts[2] or "", parts[3] or "", here)


def _with_addresses(html: bytes, address: Callable[[str], str]) -> bytes:
    """The HTML with what ``address`` gives in place of each ``page:`` link."""
    first, *rest = html.split(b'href="page:')
    known: dict[bytes, bytes] = {}  # a page of questions names the same few sources again and again
    written = [first]
    for piece in rest:
        link, _, after = piece.partition(b'"')
        if link not in known:
            known[link] = f'href="{address(f"page:{link.decode()}")}"'.encode()
        written += (known[link], after)
    return b"".join(written)
