"""Journeybook: builds training sites with scored checks and completion certificates from folders of YAML."""

__version__ = "0.1.0"
