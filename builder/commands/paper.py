"""``journeybook paper``: the papers of the shop, as PDF files to print and to keep.

The commands stand in files of their own, which say what each paper is: ``paper_sitting`` has those of a sitting,
``paper_cards`` those of a course alone.
"""

from __future__ import annotations

import click

from journeybook.commands import paper_cards, paper_sitting


@click.group()
def paper() -> None:
    """Set the papers of the shop: question papers, answer sheets, class sheets, cards, as PDF files to print."""


for command in (
    *paper_sitting.COMMANDS,
    paper_cards.cards,
    paper_cards.records,
    paper_cards.tag,
    paper_cards.observation,
    paper_cards.everything,
):
    paper.add_command(command)
