"""The page that the preview shows while something has to be mended."""

from __future__ import annotations

from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf


def faults_leaf(report: str, path: str = "index.html") -> Leaf:
    """The report as a page at ``path``, so that whoever looked at that page sees what is wrong instead."""
    return Leaf(
        path=path,
        slug="faults",
        kind="faults",
        title="To mend",
        course="",
        body=render("en", "faults.html", report=report),
        language="en",
    )
