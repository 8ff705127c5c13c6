"""What a build knows about itself, said in the strip and at the foot of every page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class BuildFacts:
    """Version and standing of the course that is being built."""

    version: str
    digest: str
    """SHA-256 of the compiled course, 64 hexadecimal digits; empty where nothing was compiled."""
    draft: bool
    """True unless this very content is a release."""
    profile: str
    """Title of the jurisdiction's profile."""

    @property
    def short_digest(self) -> str:
        """The first 64 bits in groups of four, for a human eye; the full digest stays in the data."""
        return " ".join(self.digest[start : start + 4] for start in range(0, min(len(self.digest), 16), 4))
