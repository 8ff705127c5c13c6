"""Which state of a course a sitting is made of: as it stands, where that is its release, or a release by version."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

import click

from journeybook.commands.project_option import say
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem
from journeybook.making import courses_of
from journeybook.marking.release_shelf import DamagedRelease, Release, read_shelf
from journeybook.pages.course_pages import Ready
from journeybook.project import Project
from journeybook.release_sources import NoSources, course_of_release


@contextmanager
def course_to_seal(
    context: click.Context, project: Project, course: str, version: str | None
) -> Iterator[Ready]:
    """The released course for as long as it is needed; says what keeps it back and ends the command otherwise."""
    where = whole_file(f"{project.courses_dir}/{course}")
    ready, problems = courses_of(replace(project, courses=(course,)))
    if version is None:
        if not ready:
            _end(context, project, problems)
        if ready[0].course.draft:
            _end(context, project, [_not_released(project, ready[0], course)])
        yield _with_check(context, project, ready[0])
        return
    release = _on_the_shelf(project, course, version)
    as_it_stands = next((one for one in ready if one.compiled.digest == release.digest), None)
    if as_it_stands is not None:
        standing = replace(as_it_stands, course=replace(as_it_stands.course, draft=False))
        yield _with_check(context, project, standing)
        return
    try:
        with course_of_release(project, course, version, release.digest) as older:
            yield _with_check(context, project, older)
    except NoSources as missing:
        _end(context, project, [fault("H008", where, missing.message, missing.mend)])


def _on_the_shelf(project: Project, course: str, version: str) -> Release:
    try:
        shelf = read_shelf(project.root / project.courses_dir / course)
    except DamagedRelease as damaged:
        raise click.ClickException(
            f"A release of {course} is damaged: {damaged}. Bring the file back from a back-up."
        ) from damaged
    kept = [one for one in shelf if one.profile == project.profile]
    found = next((one for one in kept if one.version == version), None)
    if found is None:
        there = ", ".join(one.version for one in kept) or "none"
        raise click.BadParameter(
            f"{course} has no release {version!r} for the profile {project.profile}; there: {there}.",
            param_hint="'--version'",
        )
    return found


def _not_released(project: Project, ready: Ready, course: str) -> Problem:
    message = (
        f"The course {course} as it stands is not a release: {ready.compiled.digest[:12]} is not frozen."
    )
    mend = f"Release it with `journeybook release {course}`, or bring back its files as they were released."
    try:
        shelf = read_shelf(project.root / project.courses_dir / course)
    except DamagedRelease:
        shelf = []
    kept = [one.version for one in shelf if one.profile == project.profile]
    if kept:
        mend = (
            f"Release it with `journeybook release {course}`, or seal a kept release: `--version {kept[-1]}`."
        )
    return fault("H008", whole_file(f"{project.courses_dir}/{course}"), message, mend)


def _with_check(context: click.Context, project: Project, ready: Ready) -> Ready:
    check, course = ready.course.check, ready.course.id
    if check is None:
        where = whole_file(f"{project.courses_dir}/{course}")
        message = f"The course {course} has no check."
        _end(context, project, [fault("H008", where, message, "Write its competence-check.yml first.")])
    elif not check.sealed:
        message = "The check is not sealed: its questions and answers stand open in the site."
        mend = "Add `sealed: true` to it, release and build again."
        say([warning("H010", check.place, message, mend)], project.root)
    return ready


def _end(context: click.Context, project: Project, problems: list[Problem]) -> None:
    say(problems, project.root)
    context.exit(1)
