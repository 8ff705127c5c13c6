"""The demo course, loaded once for the tests of papers."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from journeybook.content.loader import load_courses

ROOT = Path(__file__).parents[3]

COURSE = load_courses(
    ROOT,
    ("powered-respirator",),
    profile="us",
    courses_dir="course_src",
    quizzes_dir="quizzes",
    today=date(2026, 11, 27),
)[0][0]
