"""Courses from disk.

The only file of ``content`` that touches it; whatever is wrong there is a problem, not an exception.
"""

from __future__ import annotations

import gc
import os
import re
import stat
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import date
from operator import attrgetter
from pathlib import Path, PurePath

from journeybook.content.assembly import course_from_files
from journeybook.content.load_memo import LoadMemo
from journeybook.content.model import Course
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.svg_check import LARGEST
from journeybook.source.decoding import MOST_BYTES
from journeybook.source.near import nearest
from journeybook.source.scalars import ID_PATTERN

MOST_FILES = 20_000
_BEGINNING = 4_000
"""Bytes in which a file of a course shows that it is one."""


def load_course(
    root: Path,
    course_id: str,
    *,
    profile: str,
    courses_dir: str = "course_src",
    quizzes_dir: str = "quizzes",
    today: date | None = None,
    memo: LoadMemo | None = None,
) -> tuple[Course | None, list[Problem]]:
    """Load one course for one profile: the course, or None with any fault, and all problems, sorted.

    ``root`` is the folder of mkdocs.yml; the other folders are relative to it. ``today`` is the latest day that has
    begun; without it no day counts as still to come. With the ``memo`` of an earlier load, only what has changed since
    is read, and the rest is made of the same objects.
    """
    memo = memo or LoadMemo()
    with memo.one_round(), _collector_paused():
        return _load_course(root, course_id, profile, courses_dir, quizzes_dir, today, memo)


def _load_course(
    root: Path,
    course_id: str,
    profile: str,
    courses_dir: str,
    quizzes_dir: str,
    today: date | None,
    memo: LoadMemo,
) -> tuple[Course | None, list[Problem]]:
    course_dir, quiz_dir = _path(courses_dir, course_id), _path(quizzes_dir, course_id)
    if not re.fullmatch(ID_PATTERN, course_id) or not _is_folder(root / course_dir):
        return None, [_no_such_course(root, course_id, courses_dir)]
    disk = _Disk(root, memo)
    disk.read_folder(course_dir)
    if not disk.files and disk.problems:
        # The folder itself is a link or cannot be opened: that each of its files is missing is no news.
        return None, disk.problems
    disk.read_folder(quiz_dir)
    course, problems = course_from_files(
        disk.files,
        course_id,
        profile=profile,
        course_dir=course_dir,
        quiz_dir=quiz_dir,
        unread=disk.unread,
        today=today,
        memo=memo,
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
    today: date | None = None,
    memo: LoadMemo | None = None,
) -> tuple[list[Course], list[Problem]]:
    """Load several courses: those without a fault, in the order asked for, and the problems of all.

    For ``today`` and ``memo`` see ``load_course``; a memo serves one list of courses, load after load.
    """
    memo = memo or LoadMemo()
    courses: list[Course] = []
    problems: list[Problem] = []
    with memo.one_round(), _collector_paused():
        for course_id in dict.fromkeys(course_ids):
            course, found = _load_course(root, course_id, profile, courses_dir, quizzes_dir, today, memo)
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
    """One problem in place of one for every question that a lesson or a duty names."""
    others = [problem for problem in problems if problem.code not in ("L001", "U004")]
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

    def __init__(self, root: Path, memo: LoadMemo) -> None:
        self.root = root
        self.memo = memo
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
        # One look at each folder tells names, links and times of all its files: half the time of asking for each.
        waiting = [folder]
        while waiting:
            here = waiting.pop()
            folders: list[str] = []
            for entry in self._entries(here):
                path = f"{here}/{entry.name}"
                if _leads_to_folder(entry):
                    if entry.name.startswith("."):
                        continue
                    if entry.is_symlink():
                        self._refuse_link(path)
                    else:
                        folders.append(path)
                elif len(self.files) >= MOST_FILES:
                    self._refuse(
                        path, "C023", f"There are more than {MOST_FILES} files.", "Split the course up."
                    )
                    return
                else:
                    self._read_file(path, entry)
            waiting.extend(reversed(folders))

    def _entries(self, folder: str) -> list[os.DirEntry[str]]:
        try:
            with os.scandir(self.root / folder) as entries:
                return sorted(entries, key=attrgetter("name"))
        except OSError as error:
            self._refuse(
                folder,
                "C022",
                f"This folder cannot be opened: {error.strerror}.",
                "Give yourself the right to read it.",
            )
            return []

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

    def _beginning(self, path: str) -> bytes:
        """What tells whether a `.txt` is a file of the course; of others the name is enough to say what is wrong."""
        full = self.root / path
        if not path.endswith(".txt") or full.is_symlink() or not full.is_file():
            return b""
        try:
            with full.open("rb") as file:
                return file.read(_BEGINNING)
        except OSError:
            return b""

    def _read_file(self, path: str, entry: os.DirEntry[str]) -> None:
        name = entry.name
        if name.startswith(".") or not name.endswith((".yml", ".svg")):
            if not name.startswith("."):
                self.files[_printable(path)] = self._beginning(path)
            return
        if entry.is_symlink() and not self._is_inside(path):
            self.unread.append(_printable(path))
            self._refuse_link(path)
            return
        try:
            seen = entry.stat()
            size = seen.st_size
            most = LARGEST if name.endswith(".svg") else MOST_BYTES  # larger files are not opened at all
            if size > most:
                self.unread.append(_printable(path))
                self._refuse(
                    path,
                    "C023",
                    f"This file has {size} bytes; at most {most} are read.",
                    "Simplify the drawing; a picture does not become one by its name."
                    if name.endswith(".svg")
                    else "Split it into several files.",
                )
                return
            if not stat.S_ISREG(seen.st_mode):
                raise OSError(None, "it is not a plain file")
            self.files[_printable(path)] = self.memo.bytes_of(entry.path, seen)
        except OSError as error:
            self.unread.append(_printable(path))
            reason = error.strerror or "something went wrong"
            self._refuse(
                path, "C022", f"This file cannot be read: {reason}.", "Give yourself the right to read it."
            )


def _path(folder: str, course_id: str) -> str:
    """A course's folder as paths in messages have it, however mkdocs.yml writes it: ``./quizzes/`` is ``quizzes``."""
    return PurePath(os.path.normpath(PurePath(folder, course_id))).as_posix()


def _leads_to_folder(entry: os.DirEntry[str]) -> bool:
    try:
        return entry.is_dir()
    except OSError:
        return False


def _is_folder(path: Path) -> bool:
    """Whether a folder is there; False also where nobody may look, which ``Path.is_dir`` answers with an exception."""
    return os.path.isdir(path)  # noqa: PTH112 - see above


def _printable(path: str) -> str:
    """The path with bytes that are not text replaced, so that it can always be printed."""
    return os.fsencode(path).decode("utf-8", "replace")
