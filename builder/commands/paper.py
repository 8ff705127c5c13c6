"""``journeybook paper``: the papers of the shop, as PDF files to print and to keep.

The commands stand in files of their own, which say what each paper is: ``paper_sitting`` has those of a sitting.
"""

from __future__ import annotations

import click


@click.group()
def paper() -> None:
    """Set the papers of the shop: question papers, answer sheets, class sheets, cards, as PDF files to print."""
