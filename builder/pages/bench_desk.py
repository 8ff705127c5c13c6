"""What the makers of benches share."""

from __future__ import annotations

from dataclasses import dataclass, field

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording


@dataclass(frozen=True, kw_only=True)
class BenchDesk:
    """What stays the same from bench to bench of a page."""

    course: Course
    wording: Wording
    slug: str
    """The leaf's slug; every id in its body starts with it."""
    language: str


@dataclass(frozen=True, kw_only=True)
class BenchOnPage:
    """One bench as a page shows it: what is read with scripts off, and what its script must know.

    The page puts title, intro, caution and sources round it.
    """

    body: Markup
    """Replaced or brought to life by the kind's script."""
    data: dict[str, object] = field(default_factory=dict)
    """Plain JSON; stands once on a page, however often the bench is shown there."""
    trial: str = ""
    """JSON of how it is set up above a question."""
