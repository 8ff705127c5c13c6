"""Files of a course under a name that is not quite theirs: `flow.yaml`, `flow.yml.txt`, `Course.yml`, `stack.SVG`.

Such a file is told once, as the fault it is, and then counts as there but unread: what other files name in it is
not called missing as well. Decides from paths, and for `.txt` from what stands in it, because notes end in that too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from journeybook.content.layout import BLUEPRINT_NAME, NAMED, PICTURES, TOP
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import nearest
from journeybook.source.scalars import ID_LENGTH, ID_PATTERN

_ENDINGS = ("yml", "yaml", "svg", "txt")
_OUR_KEY = re.compile(
    rb"^(?:alt|body|cells|moments|outcomes|questions|sources|summary|values|words):", re.MULTILINE
)
"""A key at the left edge that each sort of file has, and a note to people has not."""


@dataclass(kw_only=True)
class Renamed:
    """What is left once each misnamed file has been told."""

    paths: list[str] = field(default_factory=list)
    """All paths, a misnamed one as it should be called."""
    unread: list[str] = field(default_factory=list)
    """Those of them that are misnamed on the disk."""
    problems: list[Problem] = field(default_factory=list)


def rename(files: Mapping[str, bytes], others: list[str], *, course_dir: str, quiz_dir: str) -> Renamed:
    """Sort out misnamed files. ``others`` are paths that are there and could not be read."""
    renamed = Renamed()
    there = {*files, *others}
    for path in sorted(there):
        proper = _proper_path(path, there, course_dir=course_dir, quiz_dir=quiz_dir)
        if proper is None or (path.endswith(".txt") and not _is_ours(path, files)):
            renamed.paths.append(path)
        elif proper in there and proper.casefold() == path.casefold():
            renamed.paths.append(path)  # The layout says that the two cannot be told apart.
        elif proper in there or proper in renamed.unread:
            renamed.problems.append(_spare(path, proper, is_read=proper in there))
        else:
            renamed.paths.append(proper)
            renamed.unread.append(proper)
            renamed.problems.append(_told(path, proper))
    return renamed


def _told(path: str, proper: str) -> Problem:
    name, right = path.rsplit("/", 1)[-1], proper.rsplit("/", 1)[-1]
    ending = name.rpartition(".")[2]
    if ending in PICTURES:
        message = "A figure is a drawing in SVG; this picture is not shown."
        mend = f"Draw what matters, and save that as `{right}`."
        return fault("C026", whole_file(path), message, mend)
    mend = f"Rename it to `{right}`."
    if ending == "txt":
        mend += " In Windows, switch on *File name extensions* to see how it ends."
    what = "Drawings end in `.svg` here" if right.endswith(".svg") else "Files end in `.yml` here"
    message = (
        f"{what}; `{name}` is not read."
        if not name.endswith((".yml", ".svg"))
        else f"`{name}` is not how this file is called; it is not read."
    )
    return fault("C026", whole_file(path), message, mend)


def _spare(path: str, proper: str, *, is_read: bool) -> Problem:
    name, right = path.rsplit("/", 1)[-1], proper.rsplit("/", 1)[-1]
    message = (
        f"`{right}` stands beside it and is read; `{name}` is not."
        if is_read
        else f"Another file stands for `{right}` as well; `{name}` is not read."
    )
    mend = f"Move what is needed of it into `{right}`, and take it out."
    return warning("C026", whole_file(path), message, mend)


def _proper_path(path: str, there: set[str], *, course_dir: str, quiz_dir: str) -> str | None:
    """How a misnamed file should be called; None for one that is called well, or belongs nowhere by any name."""
    folder, _, name = path.rpartition("/")
    if name.startswith((".", "~$")) or name.endswith("~"):
        return None
    stem = _without_endings(name)
    drawing = folder == f"{course_dir}/figures" and _ends_in_svg(name)
    right = f"{stem}.svg" if drawing else f"{stem}.yml"
    if folder == course_dir:
        missing = [one.removesuffix(".yml") for one in TOP if f"{course_dir}/{one}" not in there]
        near = (stem.lower(),) if right.lower() in TOP else nearest(stem, missing)
        right = f"{near[0]}.yml" if near else name
    elif folder == quiz_dir:
        right = _fixed(right, BLUEPRINT_NAME)
    elif folder.startswith(f"{course_dir}/modules/") and folder.count("/") == course_dir.count("/") + 2:
        right = _fixed(right, "module.yml")
    elif folder == f"{course_dir}/figures" and name.rpartition(".")[2] in PICTURES:
        described = any(f"{folder}/{stem}.{ending}" in there for ending in ("yml", "yaml"))
        drawn = f"{folder}/{stem}.svg" in there
        right = f"{stem}.svg" if described and not drawn else name
    elif folder not in [f"{course_dir}/{one}" for one in ("figures", "profiles", *NAMED)]:
        return None
    if right == name or not (right in (*TOP, BLUEPRINT_NAME) or _could_be_named(right, name)):
        return None
    return f"{folder}/{right}"


def _could_be_named(right: str, name: str) -> bool:
    stem, known = right.rpartition(".")[0], name.rpartition(".")[2].lower()
    is_id = re.fullmatch(rf"(?:[0-9]+-)?{ID_PATTERN}", stem) is not None and len(stem) <= ID_LENGTH
    return is_id and (known in _ENDINGS or known in PICTURES)


def _fixed(right: str, one: str) -> str:
    return one if right.lower() == one else right


def _without_endings(name: str) -> str:
    """The name before every ending that a program may have put behind it: `flow` of `flow.yml.txt`."""
    stem, dot, ending = name.rpartition(".")
    while dot and stem and (ending.lower() in _ENDINGS or ending in PICTURES):
        name = stem
        stem, dot, ending = name.rpartition(".")
    return name


def _ends_in_svg(name: str) -> bool:
    return "svg" in _endings_of(name)


def _endings_of(name: str) -> Iterator[str]:
    yield from (part.lower() for part in name.split(".")[1:])


def _is_ours(path: str, files: Mapping[str, bytes]) -> bool:
    """Whether a `.txt` is a file of the course: by the ending before it, its name, or its keys."""
    name = path.rsplit("/", 1)[-1]
    if any(ending in ("yml", "yaml", "svg") for ending in _endings_of(name)):
        return True
    fixed = {f"{one.rpartition('.')[0]}.txt" for one in (*TOP, BLUEPRINT_NAME, "module.yml")}
    return name.lower() in fixed or _OUR_KEY.search(files.get(path, b"")) is not None
