"""The sources of a release, kept on the shelf beside it as ``sources.zip``.

The compiled course marks what comes back for ever, but no sitting can be made from it: it has the drawings by their
digests alone. So the files that it was compiled from are kept too, and an older version can be sealed once the course
has moved on. The digest says whether they are still the very course that was released.
"""

from __future__ import annotations

import io
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path, PurePosixPath

from journeybook.making import courses_of
from journeybook.marking.release_shelf import FOLDER, folder_of
from journeybook.pages.course_pages import Ready
from journeybook.project import Project

NAME = "sources.zip"
SIZE_CAP = 256 << 20
"""Bytes of all files unpacked: more than any course is, and less than would fill a disk."""
_COURSES, _QUIZZES = "course_src", "quizzes"
"""The folders inside, whatever the project calls its own."""
_EARLIEST = (1980, 1, 1, 0, 0, 0)
"""The first moment that a zip can state; the same files then give the same bytes."""


class NoSources(ValueError):  # noqa: N818 - it says what is missing
    """A release whose sources cannot be had, or are not those of its digest."""

    def __init__(self, message: str, mend: str) -> None:
        """Keep the sentence for people, and what to do about it."""
        self.message = message
        self.mend = mend
        super().__init__(message)


def pack(project: Project, course: str) -> bytes:
    """Return the files of a course and of its questions as a zip. Raises OSError."""
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as packed:
        for top, where in ((_COURSES, project.courses_dir), (_QUIZZES, project.quizzes_dir)):
            folder = project.root / where / course
            for path in sorted(folder.rglob("*")):
                inside = path.relative_to(folder)
                if path.is_file() and not _left_out(inside.as_posix()):
                    entry = zipfile.ZipInfo(f"{top}/{course}/{inside.as_posix()}", _EARLIEST)
                    entry.compress_type = zipfile.ZIP_DEFLATED
                    packed.writestr(entry, path.read_bytes())
    return file.getvalue()


def _left_out(name: str) -> bool:
    return name.startswith(f"{FOLDER}/") or any(part.startswith(".") for part in name.split("/"))


def keep(project: Project, course: str, version: str, digest: str) -> bool:
    """Put the sources beside a release, if they are those of its digest; say whether they are there.

    Raises OSError where the disk refuses.
    """
    path = folder_of(project.root / project.courses_dir / course, version, project.profile) / NAME
    if path.exists():
        return True
    data = pack(project, course)
    # Read again as they will be read one day: what was saved in an editor meanwhile is no part of the release.
    with _unpacked(data, project) as there:
        ready, _ = courses_of(replace(there, courses=(course,)))
    if not any(one.compiled.digest == digest for one in ready):
        return False
    unfinished = path.with_name(f"{NAME}.unfinished")
    unfinished.write_bytes(data)
    unfinished.replace(path)
    return True


@contextmanager
def course_of_release(project: Project, course: str, version: str, digest: str) -> Iterator[Ready]:
    """The course of a release, from the sources on the shelf, for as long as it is needed.

    Raises NoSources; OSError where the disk refuses.
    """
    path = folder_of(project.root / project.courses_dir / course, version, project.profile) / NAME
    elsewhere = (
        f"Bring back the files of {version}, from version control or a back-up, into a folder of their own; give "
        "--config-file the mkdocs.yml there."
    )
    try:
        data = path.read_bytes()
    except FileNotFoundError as missing:
        message = (
            f"The sources of {course} {version} are not on the shelf: there is no {NAME} beside its release."
        )
        raise NoSources(message, elsewhere) from missing
    try:
        with _unpacked(data, project) as there:
            ready, _ = courses_of(replace(there, courses=(course,)))
            same = next((one for one in ready if one.compiled.digest == digest), None)
            if same is None:
                gives = ready[0].compiled.digest[:12] if ready else "faults"
                raise NoSources(
                    f"The kept sources of {course} {version} give {gives} with this journeybook, not the {digest[:12]} "
                    "that was released.",
                    "Seal it with the journeybook that released it.",
                )
            yield replace(same, course=replace(same.course, draft=False))
    except zipfile.BadZipFile as damaged:
        raise NoSources(f"{path} is damaged: {damaged}.", elsewhere) from damaged


@contextmanager
def _unpacked(data: bytes, project: Project) -> Iterator[Project]:
    """The project of a zip's files, in a folder that is gone afterwards."""
    with (
        zipfile.ZipFile(io.BytesIO(data)) as packed,
        tempfile.TemporaryDirectory(prefix="journeybook-") as folder,
    ):
        entries = packed.infolist()
        if sum(entry.file_size for entry in entries) > SIZE_CAP:
            raise zipfile.BadZipFile(f"it unpacks to more than {SIZE_CAP} bytes")
        for entry in entries:
            name = PurePosixPath(entry.filename)
            if name.is_absolute() or ".." in name.parts or "\\" in entry.filename:
                raise zipfile.BadZipFile(f"the name {entry.filename!r} leads out of it")
            there = Path(folder, *name.parts)
            there.parent.mkdir(parents=True, exist_ok=True)
            there.write_bytes(packed.read(entry))
        yield replace(project, root=Path(folder), courses_dir=_COURSES, quizzes_dir=_QUIZZES, trust="")
