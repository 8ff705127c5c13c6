"""Whether a course may be released, and the freezing of it.

A release is for ever: attempts and certificates name its digest. So a version is never given to other
contents, a question that people have answered never vanishes, and nothing is frozen that somebody still has
doubts about.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from pathlib import Path, PurePosixPath

from journeybook.content.model import Course
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Level, Place, Problem
from journeybook.marking import release_shelf as shelf
from journeybook.marking.compiled import Compiled, compile_course
from journeybook.marking.release_shelf import DamagedRelease, Release


def release(
    course: Course, folder: Path, now: datetime, problems: Sequence[Problem] = ()
) -> tuple[Release | None, list[Problem]]:
    """Freeze the course as it stands into ``folder/releases/VERSION/PROFILE``, or say why not.

    ``folder`` is the course's own (``course_src/COURSE``); ``now`` has a time zone; ``problems`` are those of
    loading and of the audit. Returns the release, or None where it was refused; then the faults for which it
    was refused, or the warnings that go with a release all the same. Releasing the same contents again
    changes nothing. Raises OSError where the disk refuses.
    """
    found = list(draft_reasons(course, problems))
    try:
        shelf.folder_of(folder, course.version, course.profile.id)
        compiled = compile_course(course)
    except ValueError as error:
        mend = "Mend what is named; the check of the course says where it stands."
        return None, [*found, fault("R007", course.place, f"The course cannot be compiled: {error}.", mend)]
    try:
        earlier = shelf.read_shelf(folder)
        last = _last_for(earlier, course.profile.id)
        last = shelf.with_keys(folder, last) if last else None
    except DamagedRelease as error:
        return None, [*found, _damaged(error, course, folder)]
    found += compare_with_release(course, compiled, last)
    same = next((one for one in earlier if _in_one_folder(one, course)), None)
    if same is not None and (same.version, same.digest) != (course.version, compiled.digest):
        found.append(_reused(course, same, compiled))
    if any(problem.level is Level.FAULT for problem in found):
        return None, found
    if same is None:
        same = Release(
            version=course.version,
            profile=course.profile.id,
            digest=compiled.digest,
            released=now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"),
            questions=tuple(sorted(question.id for bank in course.banks for question in bank.questions)),
        )
        shelf.write_release(folder, same, compiled)
    return same, found


def _in_one_folder(one: Release, course: Course) -> bool:
    """Whether a release has the course's version and profile; many disks take 1.0-a and 1.0-A for the same folder."""
    return (one.version.casefold(), one.profile.casefold()) == (
        course.version.casefold(),
        course.profile.id.casefold(),
    )


def last_release(folder: Path, profile: str) -> Release | None:
    """Return the latest release for a profile, with its keys; None where there is none that can be read.

    What cannot be read is said when somebody wants to release; a site is built all the same, as a draft.
    """
    try:
        last = _last_for(shelf.read_shelf(folder), profile)
        return shelf.with_keys(folder, last) if last else None
    except DamagedRelease:
        return None


def _last_for(earlier: Sequence[Release], profile: str) -> Release | None:
    return next((one for one in reversed(earlier) if one.profile == profile), None)


def draft_reasons(course: Course, problems: Sequence[Problem]) -> Iterator[Problem]:
    """Yield why the course is still a draft. Problems of this stage (R) are judged anew, not counted."""
    unmended = [problem for problem in problems if not problem.code.startswith("R")]
    if unmended:
        yield fault(
            "R001",
            unmended[0].place,
            f"{_counted(len(unmended), 'thing', 'still to be mended')}; the first is {unmended[0].code}.",
            "Mend what the check of the course lists, then release.",
            also_at=[problem.place for problem in unmended[1:]],
        )
    if course.unfinished:
        yield fault(
            "R001",
            course.place,
            "course.yml says `draft: true`.",
            "Take the line out once the course is complete, mend what is listed then, and release.",
        )
    drafts = [
        *(lesson.place for lesson in course.lessons if lesson.draft),
        *(question.place for question in course.questions.values() if question.draft),
    ]
    if drafts:
        yield fault(
            "R001",
            drafts[0],
            f"{_counted(len(drafts), 'part of the course', 'marked as draft')}.",
            "Complete each and take `draft: true` out.",
            also_at=drafts[1:],
        )
    if course.approved is None:
        yield fault(
            "R002",
            course.place,
            "Nobody is named as having approved the course.",
            "Add `approved: {by: NAME, on: DATE}` to course.yml once somebody has.",
        )


def compare_with_release(course: Course, compiled: Compiled, last: Release | None) -> list[Problem]:
    """Return what happened to the questions of the last release; nothing where there is none."""
    if last is None:
        return []
    kept = {question.id for bank in course.banks for question in bank.questions}
    found = [
        fault(
            "R004",
            course.place,
            f"Question {gone} of version {last.version} is gone.",
            "Put it back and add `retired: DATE`; an id is never given to something else.",
        )
        for gone in last.questions
        if gone not in kept
    ]
    private = compiled.content["private"]
    assert isinstance(private, dict)
    keys = private["keys"]
    assert isinstance(keys, dict)
    found += [
        warning(
            "R005",
            question.place,
            f"Question {id_} is marked in another way than in version {last.version}.",
            "Give it a new id if it asks for something else now; keep the id only for a correction.",
        )
        for id_, question in course.questions.items()
        if id_ in last.keys and last.keys[id_] != keys[id_]
    ]
    return found


def _damaged(error: DamagedRelease, course: Course, folder: Path) -> Problem:
    # The course knows its folder as problems name it, relative to mkdocs.yml; the shelf as the disk does.
    path = PurePosixPath(course.place.file).parent / error.path.relative_to(folder)
    return fault(
        "R006",
        Place(file=path.as_posix(), length=0),
        f"An earlier release cannot be relied on: {error.detail}.",
        "Restore its folder from a copy; a release is never written anew.",
    )


def _reused(course: Course, same: Release, compiled: Compiled) -> Problem:
    return fault(
        "R003",
        course.place,
        f"Version {same.version} was released on {same.released[:10]} with other contents "
        f"({same.digest[:16]}…, now {compiled.digest[:16]}…).",
        "Give the course a new version; certificates name the old one for ever.",
    )


def _counted(number: int, noun: str, state: str) -> str:
    if number == 1:
        return f"One {noun} is {state}"
    first, _, rest = noun.partition(" ")
    return f"{number} {first}s{' ' + rest if rest else ''} are {state}"
