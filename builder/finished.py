"""A site as bytes: what is left to do once everything is made is to put it into a folder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True)
class FinishedPage:
    """A whole page."""

    path: str
    """Relative to the site's root, with forward slashes."""
    title: str
    """Plain text."""
    html: bytes


@dataclass(frozen=True, kw_only=True)
class FinishedSite:
    """Every page and file of a site, and what was said while it was made."""

    pages: tuple[FinishedPage, ...] = ()
    files: Mapping[str, bytes] = field(default_factory=dict)
    """Everything else by its path: styles, scripts, fonts, search data, one-file editions."""
    report: str = ""
    """The problems as a person reads them; empty where there are none."""
    faulty: bool = False
    """True where a fault stands: then the pages show the report, in the preview, or are missing."""
    for_today: bool = False
    """True where the report holds what another day would not: such a site is not kept for later."""
