"""Ids that would become files whose names are taken: by the site itself, or by Windows for its devices.

The device names are those of Microsoft, "Naming Files, Paths, and Namespaces"; Windows opens the device in place of
the file whatever ending follows, so a site with such a page could not be copied there.
"""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.gathered import Gathered
from journeybook.content.model import Lesson
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem

OF_THE_SITE = frozenset({"index", "assets"})
"""What lies beside the courses' own pages and folders."""
OF_WINDOWS = frozenset(
    {"con", "nul", "prn", "aux", *(f"{port}{number}" for port in ("com", "lpt") for number in range(1, 10))}
)


def check_taken_ids(got: Gathered) -> Iterator[Problem]:
    """No course, module, lesson, practical or job card has an id that cannot become a page."""
    if got.course_id in OF_THE_SITE:
        message = f"A course cannot be called `{got.course_id}`: the site has a page or folder of that name."
        yield _taken(got.course_id, whole_file(got.layout.course_dir), message)
    if got.course_id in OF_WINDOWS:
        yield _device("course", got.course_id, whole_file(got.layout.course_dir))
    for module in got.modules:
        if module.folder.id in OF_WINDOWS:
            yield _device("module", module.folder.id, whole_file(module.folder.path))
    for lesson in got.every(Lesson):
        if lesson.id in OF_WINDOWS:
            yield _device("lesson", lesson.id, got.place(lesson, "id"))
    for folder, noun in (("practicals", "practical"), ("job-cards", "job card")):
        for name, path in got.layout.named[folder].items():
            if name in OF_WINDOWS:
                yield _device(noun, name, whole_file(path))


def _device(noun: str, name: str, place: Place) -> Problem:
    message = f"A {noun} cannot be called `{name}`: Windows keeps that name for a device."
    return _taken(name, place, message)


def _taken(name: str, place: Place, message: str) -> Problem:
    return fault(
        "C037",
        place,
        message,
        f"Give it another id, such as `the-{name}`, and use that wherever it is named.",
    )
