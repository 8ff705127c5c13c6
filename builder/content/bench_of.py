"""The bench of a course with its numbers worked out."""

from __future__ import annotations

from journeybook.content.fan_numbers import worked_out
from journeybook.content.fan_values import WorkedOut
from journeybook.content.model import Course, FanBench


def fan_of(course: Course, bench_id: str) -> WorkedOut:
    """A fan bench worked out. Raises ``ValueError`` for one that the cross-checks would have refused."""
    bench = course.benches.get(bench_id)
    if not isinstance(bench, FanBench):
        raise ValueError(f"{bench_id} is no fan bench")
    found = worked_out(bench, {"kit": course.kit.values, "profile": course.profile.values})
    if isinstance(found, list):
        raise ValueError(f"{bench_id}: {found[0].message}")
    return found
