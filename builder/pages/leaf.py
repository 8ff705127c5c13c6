"""A leaf: one page's worth of course, before an edition puts it into a file."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """One page of the site, and one section of the one-file edition."""

    path: str
    """Where the site keeps it, relative to the site's root: ``drill-guard/20-set/first-look.html``."""
    slug: str
    """Begins every id in the body, so that no id comes twice when all leaves stand in one file."""
    kind: str
    """One of rack, card, module, lesson, check, words, kit, sources, search."""
    title: str
    """Plain text."""
    course: str
    """Id of the course; empty for the rack."""
    body: str
    """HTML. Links to other leaves read ``href="page:KIND/ID"`` until an edition resolves them."""
    data: dict[str, object] = field(default_factory=dict)
    """Plain JSON for the scripts."""
    language: str
    """BCP 47."""
    operation: int = 0
    """The operation of the route card it belongs to; 0 where it belongs to none."""
