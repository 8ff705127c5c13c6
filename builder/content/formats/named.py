"""Which table reads the files of which folder, where each file is one thing called like the file."""

from __future__ import annotations

from journeybook.content.formats.benches import BENCH
from journeybook.content.formats.calculators import CALCULATOR
from journeybook.content.formats.drills import DRILL
from journeybook.content.formats.duties import DUTIES
from journeybook.content.formats.job_cards import JOB_CARD
from journeybook.content.formats.practicals import PRACTICAL
from journeybook.content.gathered import Naming
from journeybook.source.shapes import FileShape

NAMED_FILES: dict[str, tuple[FileShape, Naming]] = {
    "benches": (BENCH, Naming.BENCH),
    "calculators": (CALCULATOR, Naming.CALCULATOR),
    "drills": (DRILL, Naming.DRILL),
    "practicals": (PRACTICAL, Naming.PRACTICAL),
    "job-cards": (JOB_CARD, Naming.JOB_CARD),
    "duties": (DUTIES, Naming.DUTIES),
}
"""Folder -> the table, and what the names of its files name. The thing's ``id`` is the file's name."""
