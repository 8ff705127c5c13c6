"""Marking a file that came back.

Finds the compiled course it names, in the releases or in the sources, and marks again.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.excerpt import visible
from journeybook.diagnostics.problem import Place, Problem
from journeybook.diagnostics.render_json import as_data
from journeybook.making import courses_of
from journeybook.marking.attempt import Attempt, NotAnAttempt, read
from journeybook.marking.canonical import SIZE_CAP, NotCanonical
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.kind import in_questions
from journeybook.marking.remark import re_mark
from journeybook.project import Project


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What came of one file: a result, or problems."""

    fingerprint: str
    attempt: Attempt | None = None
    result: Mapping[str, Any] | None = None
    """The check's result as ``marking.result`` gives it."""
    released: bool = False
    """Whether the course it was marked against is a release."""
    problems: tuple[Problem, ...] = ()
    """Faults where there is no result; warnings beside one."""

    def as_text(self) -> str:
        """The result for a person, a line a fact.

        What came out of the file is made visible: a name with a line break in it could otherwise write a line of
        its own, such as a result.
        """
        assert self.attempt is not None, "asked only where there is a result"
        assert self.result is not None, "asked only where there is a result"
        attempt, result = self.attempt, self.result
        verdict = "knowledge check passed" if result["passed"] else "not yet passed"
        version = attempt.version if self.released else f"{attempt.version} (draft)"
        lines = [
            f"Card of      {visible(attempt.card.name)}"
            + (f", {visible(attempt.card.workplace)}" if attempt.card.workplace else ""),
            f"Course       {attempt.course}, version {version}, {attempt.profile}",
            f"Taken        {attempt.started} to {attempt.ended}, by the clock of the device",
            f"Result       {verdict}, self-recorded; practical not observed",
            f"Marks        {in_questions(result['marks'])} of {in_questions(result['of'])}; "
            f"{result['percent']} % needed",
        ]
        for gate in result["must-pass"]:
            lines.append(
                f"Must-pass    {gate['fact']}: {'right' if gate['mark'] == 1000 else 'not yet'} ({gate['question']})"
            )
        for question in result["critical"]:
            lines.append(f"Drill        {question}: a critical error, which fails the check")
        for outcome, score in result["outcomes"].items():
            lines.append(
                f"Outcome      {outcome}: {in_questions(score['marks'])} of {in_questions(score['of'])}"
            )
        lines.append(f"Fingerprint  {self.fingerprint}")
        return "\n".join(lines) + "\n"

    def as_json(self) -> str:
        """The result for a program."""
        assert self.attempt is not None, "asked only where there is a result"
        assert self.result is not None, "asked only where there is a result"
        card = self.attempt.card
        content = {
            "fingerprint": self.fingerprint,
            "card": {"id": card.id, "name": card.name, "workplace": card.workplace},
            "course": self.attempt.course,
            "version": self.attempt.version,
            "released": self.released,
            "result": self.result,
            "problems": as_data(self.problems),
        }
        return json.dumps(content, ensure_ascii=False, indent=1) + "\n"


def remark_file(project: Project, file: Path) -> Outcome:
    """Mark the attempt in ``file`` again; whatever is wrong with it is a problem, never an exception."""
    name = _within(project.root, file)
    place = Place(file=name, length=0)
    try:
        with file.open("rb") as stream:
            # One byte past the cap is enough to see that a file is too large.
            data = stream.read(SIZE_CAP + 1)
    except OSError as error:
        mend = "Give the path of a file that the check saved."
        return Outcome(
            fingerprint="",
            problems=(fault("M001", place, f"The file cannot be read: {error.strerror}.", mend),),
        )
    found, released = _compiled_for(project, data)
    remarked = re_mark(data, found, name)
    if not found and remarked.attempt is not None:
        course = remarked.attempt.course
        return Outcome(
            fingerprint=fingerprint(data),
            attempt=remarked.attempt,
            problems=(_no_course(project, course, place),),
        )
    return Outcome(
        fingerprint=fingerprint(data),
        attempt=remarked.attempt,
        result=remarked.result,
        released=released,
        problems=remarked.problems,
    )


def _within(root: Path, file: Path) -> str:
    """The file's path as every other problem names one, relative to mkdocs.yml, where it lies there."""
    full = file.resolve()
    return (full.relative_to(root.resolve()) if full.is_relative_to(root.resolve()) else file).as_posix()


def _no_course(project: Project, course: str, place: Place) -> Problem:
    if course in project.courses:
        message = (
            f"The course {course} has no release with the record's digest, and as it stands it has faults."
        )
        return fault(
            "M013", place, message, "Mend what `journeybook faults` lists, or bring back its releases."
        )
    message = f"The record is of the course {course}, which this project does not hold."
    return fault(
        "M013", place, message, "Give --config-file the mkdocs.yml of the site where the check was taken."
    )


def _compiled_for(project: Project, data: bytes) -> tuple[bytes, bool]:
    """The compiled course whose digest the attempt names, else one of the same id; and whether it is a release."""
    try:
        attempt = read(data)
    except (NotCanonical, NotAnAttempt):
        return b"", False
    for path in _releases(project, attempt.course):
        try:
            compiled = path.read_bytes()
        except OSError:
            continue  # Without it the record is not marked, and told why: M008 or M013.
        if hashlib.sha256(compiled).hexdigest() == attempt.digest:
            return compiled, True
    ready, _ = courses_of(project)
    for one in ready:
        if one.course.id == attempt.course:
            return one.compiled.data, False
    return b"", False


def compiled_with(project: Project, course: str, digest: str) -> bytes | None:
    """The compiled course with a digest, from the releases or the sources as they stand; None where it is not here."""
    for path in _releases(project, course):
        try:
            compiled = path.read_bytes()
        except OSError:
            continue
        if hashlib.sha256(compiled).hexdigest() == digest:
            return compiled
    if course not in project.courses:
        return None
    ready, _ = courses_of(replace(project, courses=(course,)))
    return next((one.compiled.data for one in ready if one.compiled.digest == digest), None)


def _releases(project: Project, course: str) -> Iterator[Path]:
    # The id comes out of a file that anybody may have written: only a course of this project is looked for.
    if course in project.courses:
        yield from sorted(
            (project.root / project.courses_dir / course / "releases").glob("*/*/compiled.json")
        )
