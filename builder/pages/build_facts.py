"""What a build knows about itself, said in the strip and at the foot of every page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class BuildFacts:
    """Version and standing of the course that is being built."""

    version: str
    draft: bool
    """True unless this very content is a release."""
    profile: str
    """Title of the jurisdiction's profile."""
    trust: str = ""
    """Canonical text of the site's trust list; empty where the site knows no signer."""


def short_digest(digest: str) -> str:
    """The first 64 bits of a course's digest in groups of four, for a human eye; the full one stays in the data."""
    return " ".join(digest[start : start + 4] for start in range(0, 16, 4))
