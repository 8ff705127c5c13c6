"""Which file of a course folder is what. Decides from paths alone; touches no disk."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import nearest
from journeybook.source.scalars import ID_LENGTH, ID_PATTERN

BLUEPRINT_NAME = "competence-check.yml"
_LATER = ("translations",)
"""Folders whose names are kept for parts of a course that this version does not read."""
NAMED = ("benches", "calculators", "drills", "practicals", "job-cards", "duties")
"""Folders of files that are each one thing, called like the file: drills/NAME.yml."""
_FOLDERS = ("modules", "figures", "profiles", *NAMED)
TOP = ("course.yml", "kit.yml", "sources.yml", "words.yml")
_MODULE_FOLDER = re.compile(rf"(\d{{1,4}})-({ID_PATTERN})")
_NOT_OURS = ("README.md", "Thumbs.db", "desktop.ini")
"""Notes to people, and what Windows puts into folders by itself."""
PICTURES = ("png", "jpg", "jpeg", "gif", "webp", "bmp", "tif", "tiff", "pdf", "PNG", "JPG", "JPEG")
_LEADING_NUMBER = re.compile(r"\d{1,9}")


@dataclass(frozen=True, kw_only=True)
class ModuleFolder:
    """A folder in modules/."""

    id: str
    operation: int
    path: str
    lessons: tuple[str, ...]
    """Paths of the lesson files, in course order."""


@dataclass(kw_only=True)
class Layout:
    """The paths of a course's files by what they hold."""

    course_dir: str
    quiz_dir: str
    top: dict[str, str] = field(default_factory=dict)
    """course.yml, kit.yml, sources.yml, words.yml -> path, where the file is there."""
    profiles: dict[str, str] = field(default_factory=dict)
    figures: dict[str, str] = field(default_factory=dict)
    drawings: dict[str, str] = field(default_factory=dict)
    named: dict[str, dict[str, str]] = field(default_factory=lambda: {folder: {} for folder in NAMED})
    """Folder -> name of a file without its ending -> path."""
    modules: list[ModuleFolder] = field(default_factory=list)
    banks: dict[str, str] = field(default_factory=dict)
    blueprint: str = ""
    unread: list[str] = field(default_factory=list)
    """Paths of files that have to be renamed before they are read, or whose folder has to be."""


def arrange(paths: Iterable[str], *, course_dir: str, quiz_dir: str) -> tuple[Layout, list[Problem]]:
    """Sort paths by what they are. ``course_dir`` and ``quiz_dir`` have no slash at their ends."""
    layout = Layout(course_dir=course_dir, quiz_dir=quiz_dir)
    problems: list[Problem] = []
    folders: dict[str, list[str]] = {}
    ordered = sorted(path for path in paths if not _is_ignored(path, course_dir))
    problems.extend(_collisions(ordered))
    for path in ordered:
        if path.startswith(course_dir + "/"):
            _place_course_file(layout, path, path[len(course_dir) + 1 :], folders, problems)
        elif path.startswith(quiz_dir + "/"):
            _place_quiz_file(layout, path, path[len(quiz_dir) + 1 :], problems)
    problems.extend(_place_modules(layout, folders))
    return layout, problems


def _is_ignored(path: str, course_dir: str) -> bool:
    """What lies in a folder without being a part of a course."""
    name = path.rsplit("/", 1)[-1]
    return (
        any(part.startswith(".") for part in path.split("/"))
        or name.endswith("~")
        # Office programs mark a file as open by one of that name.
        or name.startswith("~$")
        or name in _NOT_OURS
        # What `journeybook release` froze is read by digest, never as a part of the course.
        or path.startswith(f"{course_dir}/releases/")
    )


def _collisions(paths: list[str]) -> Iterable[Problem]:
    seen: dict[str, str] = {}
    for path in paths:
        first = seen.setdefault(path.casefold(), path)
        if first != path:
            yield fault(
                "C027",
                whole_file(path),
                "This file's path differs from another's only in capital letters.",
                "Rename one of the two; on many computers they would be one and the same file.",
                (whole_file(first),),
            )


def _misplaced(path: str, cure: str, what: str = "Nothing reads this file") -> Problem:
    return warning("C026", whole_file(path), f"{what}.", cure)


def _yaml_stem(path: str, name: str, problems: list[Problem]) -> str:
    """The name without ``.yml``, or nothing after noting what is wrong with it."""
    stem, dot, ending = name.rpartition(".")
    if not dot or ending != "yml":
        problems.append(
            _misplaced(path, "Move it out of this folder, or give it the ending `.yml` if it is YAML.")
        )
        return ""
    return stem


def _as_id(layout: Layout, path: str, stem: str, ending: str, problems: list[Problem]) -> str:
    """The id that a name stands for; where the file has to be renamed first, the id it has then, or nothing."""
    if re.fullmatch(ID_PATTERN, stem) and len(stem) <= ID_LENGTH:
        return stem
    plain = re.sub(r"[^a-z0-9]+", "-", stem.lower()).strip("-")
    is_id = re.fullmatch(ID_PATTERN, plain) is not None and len(plain) <= ID_LENGTH
    problems.append(
        fault(
            "C025",
            whole_file(path),
            f"The file name `{stem}` cannot be an id: small letters, digits and single hyphens, a "
            "letter first.",
            f"Rename it to `{plain}{ending}`." if is_id else "Rename it, starting with a letter.",
        )
    )
    layout.unread.append(path)
    return plain if is_id else ""


def _place_course_file(
    layout: Layout, path: str, inner: str, folders: dict[str, list[str]], problems: list[Problem]
) -> None:
    head, _, rest = inner.partition("/")
    if not rest:
        if head in TOP:
            layout.top[head] = path
        elif stem := _yaml_stem(path, head, problems):
            near = nearest(head, TOP) or nearest(stem, [*_FOLDERS])
            problems.append(
                _misplaced(path, f"Rename it to `{near[0]}`." if near else "Move it where it belongs.")
            )
    elif head == "modules":
        folder, _, name = rest.partition("/")
        if not name or "/" in name:
            problems.append(
                _misplaced(path, "Put it into a folder of modules/ such as `20-parts`, not deeper.")
            )
        elif _yaml_stem(path, name, problems):
            folders.setdefault(folder, []).append(path)
    elif head in _FOLDERS:
        _place_flat_file(layout, path, head, rest, problems)
    elif head in _LATER:
        problems.append(
            _misplaced(
                path, "Keep it for later, or move it out.", f"This version does not read the folder {head}/"
            )
        )
    else:
        near = nearest(head, [*_FOLDERS, *_LATER])
        cure = f"Rename the folder to `{near[0]}`." if near else "Move it out of the course folder."
        problems.append(_misplaced(path, cure, f"A course has no folder {head}/; this file is not read"))


def _place_flat_file(layout: Layout, path: str, head: str, name: str, problems: list[Problem]) -> None:
    if "/" in name:
        problems.append(_misplaced(path, f"Put it into {head}/ itself, not deeper."))
    elif head == "figures" and name.endswith(".svg"):
        if drawn := _as_id(layout, path, name[:-4], ".svg", problems):
            layout.drawings.setdefault(drawn, path)
    elif head == "figures" and name.rpartition(".")[2] in PICTURES:
        problems.append(
            _misplaced(
                path,
                "Draw what matters as SVG, or move the picture out of the course folder.",
                "A figure is a drawing in SVG; this picture is not shown",
            )
        )
    elif (stem := _yaml_stem(path, name, problems)) and (
        meant := _as_id(layout, path, stem, ".yml", problems)
    ):
        _of(layout, head).setdefault(meant, path)


def _of(layout: Layout, folder: str) -> dict[str, str]:
    """Name -> path of the files of a flat folder."""
    if folder in NAMED:
        return layout.named[folder]
    return layout.figures if folder == "figures" else layout.profiles


def _place_quiz_file(layout: Layout, path: str, name: str, problems: list[Problem]) -> None:
    if "/" in name:
        problems.append(_misplaced(path, "Put it into the course's quiz folder itself, not deeper."))
    elif name == BLUEPRINT_NAME:
        layout.blueprint = path
    elif (stem := _yaml_stem(path, name, problems)) and (
        bank := _as_id(layout, path, stem, ".yml", problems)
    ):
        layout.banks.setdefault(bank, path)


def _place_modules(layout: Layout, folders: dict[str, list[str]]) -> Iterable[Problem]:
    operations: dict[int, str] = {}
    names: dict[str, str] = {}
    for folder, paths in folders.items():
        found = _MODULE_FOLDER.fullmatch(folder)
        if found is None or len(found[2]) > ID_LENGTH or int(found[1]) == 0:
            layout.unread.extend(paths)
        if found is None or len(found[2]) > ID_LENGTH:
            plain = re.sub(r"[^a-z0-9]+", "-", folder.lower()).strip("-0123456789")
            yield fault(
                "C025",
                whole_file(paths[0]),
                f"The folder `{folder}` is not named like a module: a number, a hyphen and an id.",
                f"Rename it to something like `20-{plain or 'parts'}`; the number is the operation on the "
                "route card.",
            )
            continue
        operation, module_id = int(found[1]), found[2]
        if operation == 0:
            yield fault(
                "C025",
                whole_file(paths[0]),
                f"The folder `{folder}` has the number 0; operations are counted from 1.",
                f"Rename it to something like `10-{module_id}`.",
            )
            continue
        path = f"{layout.course_dir}/modules/{folder}"
        for taken, word in (
            (operations.get(operation), f"number {operation}"),
            (names.get(module_id), f"id {module_id}"),
        ):
            if taken:
                yield fault(
                    "C029",
                    whole_file(paths[0]),
                    f"Two module folders have the {word}.",
                    "Rename one of the two folders.",
                    (whole_file(taken),),
                )
        operations.setdefault(operation, paths[0])
        names.setdefault(module_id, paths[0])
        lessons = sorted((one for one in paths if not one.endswith("/module.yml")), key=_lesson_order)
        layout.modules.append(
            ModuleFolder(id=module_id, operation=operation, path=path, lessons=tuple(lessons))
        )
    layout.modules.sort(key=lambda module: module.operation)


def _lesson_order(path: str) -> tuple[int, str]:
    """By the number in front, then by name, so that 9 comes before 10."""
    name = path.rsplit("/", 1)[-1]
    found = _LEADING_NUMBER.match(name)
    return (int(found[0]) if found else 10**9, name)
