"""The demo course's duties for the United States name what 29 CFR 1910.134(k)(1) lists, each of (i) to (vii) once.

The words on the left are the regulation's own headings of what the employee can demonstrate knowledge of (29 CFR
1910.134(k)(1)(i) to (vii), 63 FR 1152, 8 January 1998), cut to what tells one from another.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from journeybook.content.loader import load_course
from journeybook.content.model import Course, Duty

ROOT = Path(__file__).parents[2]

LISTED = {
    "(i) why necessary; improper fit, usage or maintenance": r"why the respirator is necessary.*improper fit",
    "(ii) limitations and capabilities": r"what the respirator can and cannot do",
    "(iii) emergency situations, malfunctions": r"emergencies.*malfunctions",
    "(iv) inspect, put on and remove, use, check the seals": r"inspect.*put on and remove.*check its seals",
    "(v) maintenance and storage": r"maintained and stored",
    "(vi) medical signs and symptoms": r"medical signs and symptoms",
    "(vii) general requirements of the section": r"general requirements of the rule",
}


@cache
def course() -> Course:
    found, problems = load_course(ROOT, "powered-respirator", profile="us")
    assert found is not None, problems
    return found


def duties_of_k1() -> list[Duty]:
    duties = course().duties
    assert duties is not None
    return [duty for duty in duties.duties if "osha-134-k1" in duty.sources]


def test_the_clause_is_the_one_that_lists_them() -> None:
    citation = course().sources["osha-134-k1"]
    assert (citation.title.split(" Resp")[0], citation.clause) == ("29 CFR 1910.134", "(k)(1)(i) to (vii)")


@pytest.mark.parametrize("clause", LISTED)
def test_each_of_the_seven_is_a_duty_that_is_taught_and_asked_or_observed(clause: str) -> None:
    (duty,) = [one for one in duties_of_k1() if re.search(LISTED[clause], one.text)]
    assert duty.covered_by.lessons
    assert duty.covered_by.questions
    assert duty.covered_by.practicals


def test_there_are_seven_and_no_more() -> None:
    assert len(duties_of_k1()) == len(LISTED) == 7
