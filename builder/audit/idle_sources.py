"""A008: every source is cited by something.

Only what is in this build counts: a source that only another profile's sheet cites belongs to that profile.
"""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_idle_sources(course: Course) -> Iterator[Problem]:
    """Entries of sources.yml that no ``source`` names."""
    cited = set(course.validity.sources)
    cited.update(name for lesson in course.lessons for name in lesson.sources)
    cited.update(name for fact in course.critical_facts for name in fact.sources)
    cited.update(name for bank in course.banks for question in bank.questions for name in question.sources)
    cited.update(name for bench in course.benches.values() for name in bench.sources)
    cited.update(name for each in course.calculators.values() for name in each.sources)
    cited.update(name for drill in course.drills.values() for name in drill.sources)
    cited.update(name for practical in course.practicals.values() for name in practical.sources)
    cited.update(name for card in course.job_cards.values() for name in card.sources)
    cited.update(course.duties.sources if course.duties else ())
    for sheet in (course.kit, course.profile):
        cited.update(name for value in sheet.values.values() for name in value.sources)
    for citation in course.sources.values():
        if citation.id not in cited:
            yield warning(
                "A008",
                citation.place,
                f"Nothing cites the source {citation.id}.",
                f"Name it under `source` where something rests on it, take it out, or limit it with `only` if it "
                f"serves another profile than {course.profile.id}.",
            )
