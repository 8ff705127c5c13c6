"""Courses from disk.

The only file of ``content`` that touches it; whatever is wrong there is a problem, not an exception.
"""

from __future__ import annotations

import gc
import os
import re
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path, PurePath

from journeybook.content.assembly import course_from_files
from journeybook.content.model import Course
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.svg_check import LARGEST
from journeybook.source.decoding import MOST_BYTES
from journeybook.source.near import nearest
from journeybook.source.scalars import ID_PATTERN

MOST_FILES = 20_000


def load_course(
    root: Path, course_id: str, *, profile: str, courses_dir: str = "course_src", quizzes_dir: str = "quizzes"
) -> tuple[Course | None, list[Problem]]:
    """Load one course for one profile: the course, or None with any fault, and all problems, sorted.

    ``root`` is the folder of mkdocs.yml; the other folders are relative to it.
    """
    course_dir, quiz_dir = _path(courses_dir, course_id), _path(quizzes_dir, course_id)
    if not re.fullmatch(ID_PATTERN, course_id) or not _is_folder(root / course_dir):
        return None, [_no_such_course(root, course_id, courses_dir)]
    disk = _Disk(root)
    disk.read_folder(course_dir)
    if not disk.files and disk.problems:
        # The folder itself is a link or cannot be opened: that each of its files is missing is no news.
        return None, disk.problems
    disk.read_folder(quiz_dir)
    with _collector_paused():
        course, problems = course_from_files(
            disk.files,
            course_id,
            profile=profile,
            course_dir=course_dir,
            quiz_dir=quiz_dir,
            unread=disk.unread,
        )
    problems = sorted([*disk.problems, *problems], key=lambda problem: (problem.place, problem.code))
    if not _is_folder(root / quiz_dir):
        problems = _told_by_the_folder(problems, quiz_dir)
    return (None if disk.problems else course), problems


def load_courses(
    root: Path,
    course_ids: Sequence[str],
    *,
    profile: str,
    courses_dir: str = "course_src",
    quizzes_dir: str = "quizzes",
) -> tuple[list[Course], list[Problem]]:
    """Load several courses: those without a fault, in the order asked for, and the problems of all."""
    courses: list[Course] = []
    problems: list[Problem] = []
    for course_id in dict.fromkeys(course_ids):
        course, found = load_course(
            root, course_id, profile=profile, courses_dir=courses_dir, quizzes_dir=quizzes_dir
        )
        problems.extend(found)
        if course is not None:
            courses.append(course)
    return courses, problems


def _no_such_course(root: Path, course_id: str, courses_dir: str) -> Problem:
    folder = root / courses_dir
    try:
        there = sorted(
            one.name for one in folder.iterdir() if one.is_dir() and re.fullmatch(ID_PATTERN, one.name)
        )
    except OSError:
        there = []
    near = nearest(course_id, there) or there[:8]
    if near:
        names = " or ".join(f"`{one}`" for one in near)
        mend = f"Write {names} in mkdocs.yml, or add the folder {courses_dir}/{course_id}/."
    else:
        mend = f"Add the folder {courses_dir}/{course_id}/ with course.yml, kit.yml and sources.yml in it."
    return fault(
        "C020",
        whole_file(f"{courses_dir}/{course_id}"),
        f"There is no course folder called `{course_id}`.",
        mend,
    )


def _told_by_the_folder(problems: list[Problem], quiz_dir: str) -> list[Problem]:
    """One problem in place of one for every question that a lesson names."""
    others = [problem for problem in problems if problem.code != "L001"]
    if len(others) == len(problems):
        return problems
    missing = fault(
        "C021",
        whole_file(quiz_dir),
        "Lessons name questions, and the folder for the course's questions is not there.",
        "Add it, or correct `quizzes:` in mkdocs.yml.",
    )
    return [missing, *others]


@contextmanager
def _collector_paused() -> Iterator[None]:
    """Loading makes very many objects and no circles of them, so looking for circles would find nothing."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


class _Disk:
    """Reads folders into memory, noting what cannot be read."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.real_root = Path(os.path.realpath(root))
        self.files: dict[str, bytes] = {}
        self.unread: list[str] = []
        self.problems: list[Problem] = []

    def read_folder(self, folder: str) -> None:
        """Read every file below a folder, links to other files of the site included."""
        if not _is_folder(self.root / folder):
            return
        if not self._is_inside(folder):
            self._refuse_link(folder)
            return
        for parent, folders, names in os.walk(self.root / folder, onerror=self._note_unreadable_folder):
            here = Path(parent).relative_to(self.root).as_posix()
            folders[:] = sorted(self._without_links(here, folders))
            for name in sorted(names):
                if len(self.files) >= MOST_FILES:
                    self._refuse(
                        f"{here}/{name}",
                        "C023",
                        f"There are more than {MOST_FILES} files.",
                        "Split the course up.",
                    )
                    return
                self._read_file(f"{here}/{name}")

    def _without_links(self, here: str, folders: Iterable[str]) -> Iterable[str]:
        for name in folders:
            if name.startswith("."):
                continue
            if (self.root / here / name).is_symlink():
                self._refuse_link(f"{here}/{name}")
            else:
                yield name

    def _is_inside(self, path: str) -> bool:
        return Path(os.path.realpath(self.root / path)).is_relative_to(self.real_root)

    def _refuse(self, path: str, code: str, message: str, mend: str) -> None:
        self.problems.append(fault(code, whole_file(_printable(path)), message, mend))

    def _refuse_link(self, path: str) -> None:
        self._refuse(
            path,
            "C024",
            "This is a link to somewhere else, and a course is read from its own folder only.",
            "Put a copy in its place.",
        )

    def _note_unreadable_folder(self, error: OSError) -> None:
        path = Path(str(error.filename)).relative_to(self.root).as_posix()
        self._refuse(
            path,
            "C022",
            f"This folder cannot be opened: {error.strerror}.",
            "Give yourself the right to read it.",
        )

    def _read_file(self, path: str) -> None:
        name = path.rsplit("/", 1)[-1]
        if name.startswith(".") or not name.endswith((".yml", ".svg")):
            if not name.startswith("."):
                self.files[_printable(path)] = (
                    b""  # Known by its name only; the layout says that nothing reads it.
                )
            return
        full = self.root / path
        if full.is_symlink() and not self._is_inside(path):
            self.unread.append(_printable(path))
            self._refuse_link(path)
            return
        try:
            size = full.stat().st_size
            most = LARGEST if name.endswith(".svg") else MOST_BYTES  # larger files are not opened at all
            if size > most:
                self.unread.append(_printable(path))
                self._refuse(
                    path,
                    "C023",
                    f"This file has {size} bytes; at most {most} are read.",
                    "Simplify the drawing." if name.endswith(".svg") else "Split it into several files.",
                )
                return
            if not full.is_file():
                raise OSError(None, "it is not a plain file")
            self.files[_printable(path)] = full.read_bytes()
        except OSError as error:
            self.unread.append(_printable(path))
            reason = error.strerror or "something went wrong"
            self._refuse(
                path, "C022", f"This file cannot be read: {reason}.", "Give yourself the right to read it."
            )


def _path(folder: str, course_id: str) -> str:
    """A course's folder as paths in messages have it, however mkdocs.yml writes it: ``./quizzes/`` is ``quizzes``."""
    return PurePath(os.path.normpath(PurePath(folder, course_id))).as_posix()


def _is_folder(path: Path) -> bool:
    """Whether a folder is there; False also where nobody may look, which ``Path.is_dir`` answers with an exception."""
    return os.path.isdir(path)  # noqa: PTH112 - see above


def _printable(path: str) -> str:
    """The path with bytes that are not text replaced, so that it can always be printed."""
    return os.fsencode(path).decode("utf-8", "replace")
