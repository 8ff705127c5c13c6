"""Sources that exist in the builds for some profiles only (``only`` in sources.yml).

Every profile of the course is looked at, whichever is being built, so that a site for one country is never
built on sources that its sister would lack.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from journeybook.content.gathered import Gathered
from journeybook.content.model import (
    Bench,
    Calculator,
    Citation,
    CriticalFact,
    Drill,
    JobCard,
    Lesson,
    PracticalStep,
    Question,
    Value,
)
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.near import nearest


def check_limited_sources(got: Gathered) -> Iterator[Problem]:
    """Each profile in ``only`` is there, and no profile loses its last source or a sheet's source."""
    yield from _check_profiles(got)
    profiles = got.layout.profiles
    limited = {
        one.id: one for one in got.every(Citation) if one.only and all(name in profiles for name in one.only)
    }
    if not limited:
        return
    for noun, thing, sources in _resting_on_sources(got):
        yield from _check_something_remains(got, limited, noun, thing, sources)
    for value in got.kit.values if got.kit else ():
        yield from _check_value(got, limited, value, profiles, got.place)
    for value in got.profile.values if got.profile else ():
        yield from _check_value(got, limited, value, (got.profile_id,), got.place)
    for profile in got.unused_profiles:
        for value in profile.file.values:
            yield from _check_value(got, limited, value, (profile.id,), profile.place)


def _check_profiles(got: Gathered) -> Iterator[Problem]:
    there = got.layout.profiles
    for citation in got.every(Citation):
        for index, name in enumerate(citation.only):
            if name not in there:
                near = nearest(name, there) or tuple(sorted(there))[:8]
                cure = f"Write {' or '.join(f'`{one}`' for one in near)}, or add" if near else "Add"
                yield fault(
                    "C028",
                    got.place(citation, "only", index),
                    f"The course has no profile called `{name}`.",
                    f"{cure} profiles/{name}.yml.",
                )


def _resting_on_sources(got: Gathered) -> Iterator[tuple[str, object, Sequence[str]]]:
    for lesson in got.every(Lesson):
        yield "The lesson", lesson, lesson.sources
    for question in got.every(Question):
        yield "The question", question, question.sources
    for calculator in got.every(Calculator):
        yield "The calculator", calculator, calculator.sources
    for bench in got.every(Bench):
        yield "The bench", bench, bench.sources
    for drill in got.every(Drill):
        yield "The drill", drill, drill.sources
    for step in got.every(PracticalStep):
        yield f"The step {step.id}", step, step.sources
    for card in got.every(JobCard):
        yield "The job card", card, card.sources
    for fact in got.every(CriticalFact):
        yield f"The critical fact {fact.id}", fact, fact.sources
    if got.course is not None:
        yield "The validity", got.course.validity, got.course.validity.sources


def _check_something_remains(
    got: Gathered, limited: dict[str, Citation], noun: str, thing: object, sources: Sequence[str]
) -> Iterator[Problem]:
    if not sources or not all(name in limited for name in sources):
        return
    for profile in got.layout.profiles:
        citations = [limited[name] for name in sources]
        if not any(citation.is_for(profile) for citation in citations):
            names = ", ".join(f"`{name}`" for name in dict.fromkeys(sources))
            yield fault(
                "C035",
                got.place(thing, "source"),
                f"{noun} has no source in the profile `{profile}`: {names} "
                f"{'is' if len(set(sources)) == 1 else 'are'} limited to other profiles.",
                f"Add a source that holds in `{profile}` too, or add `{profile}` to an `only` in sources.yml.",
                tuple(dict.fromkeys(got.place(citation, "only") for citation in citations)),
            )


def _check_value(
    got: Gathered,
    limited: dict[str, Citation],
    value: Value,
    profiles: Iterable[str],
    place: Callable[[object, str, int], Place],
) -> Iterator[Problem]:
    for index, name in enumerate(value.sources):
        lacking = [one for one in profiles if name in limited and not limited[name].is_for(one)]
        if lacking:
            where = (
                f"the profile {_listed(lacking)}, which uses this kit sheet too"
                if value.place.file == got.layout.top.get("kit.yml")
                else f"this profile, {_listed(lacking)}"
            )
            yield fault(
                "C036",
                place(value, "source", index),
                f"The source `{name}` does not exist in {where}.",
                f"Name another source, or add {_listed(lacking)} to its `only` in sources.yml.",
                (got.place(limited[name], "only"),),
            )


def _listed(names: Sequence[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
