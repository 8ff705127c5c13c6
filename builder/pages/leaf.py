"""A leaf: one page's worth of course, before and after an edition has put its links in place."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True)
class LeafHead:
    """What is known of a leaf without reading it."""

    path: str
    """Where the site keeps it, relative to the site's root: ``drill-guard/20-set/first-look.html``."""
    slug: str
    """Begins every id in the body, so that no id comes twice when all leaves stand in one file."""
    kind: str
    """One of rack, card, module, lesson, check, words, kit, sources, search, checking, faults."""
    title: str
    """Plain text."""
    course: str
    """Id of the course; empty for the rack."""
    language: str
    """BCP 47."""
    operation: int = 0
    """The operation of the route card it belongs to; 0 where it belongs to none."""
    scripts: tuple[str, ...] = ()
    """What its page loads besides the script that every page loads: names in assets, without the ending."""


@dataclass(frozen=True, kw_only=True)
class Leaf(LeafHead):
    """One page of the site, and one section of the one-file edition."""

    body: str
    """HTML. Links to other leaves read ``href="page:KIND/ID"`` until an edition resolves them."""
    data: dict[str, object] = field(default_factory=dict)
    """Plain JSON for the scripts."""


@dataclass(frozen=True, kw_only=True)
class SettledLeaf(LeafHead):
    """A leaf as both editions print it: each link leads somewhere, and all is UTF-8 already."""

    in_site: bytes
    """The body, each link relative to ``path``."""
    in_one_file: bytes
    """The body, each link a fragment of the file."""
    script_data: bytes
    """The data as they stand in a script element; empty where there are none."""
