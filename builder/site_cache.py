"""The last sites that were built, kept beside mkdocs.yml, so that unchanged sources are not built again.

A kept site is found by its key, a hash of everything that enters a site: every file of the courses and of the quizzes
(releases included), the settings, the program with its theme, and the versions of the libraries that write HTML. A
byte more or less anywhere gives another key. What cannot be hashed beyond doubt, such as a link to elsewhere, has no
key and is built each time. A record that is cut short, damaged or of another make counts as not there; so does a
folder that cannot be read or written. Nothing in a record is run.
"""

from __future__ import annotations

import hashlib
import json
import os
import sys
import zlib
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, version
from importlib.util import find_spec
from pathlib import Path
from typing import Any

from journeybook.finished import FinishedPage, FinishedSite
from journeybook.project import Project

FORMAT = "journeybook site 1"
KEPT = 3
"""Records kept: switching between two branches and back should not build anew."""

_ENDING = ".site"
_LIBRARIES = ("babel", "jinja2", "markdown-it-py", "markupsafe", "mdurl", "pyyaml")
_IGNORE_ALL = "# Made by journeybook; may be deleted at any time.\n*\n"


class Unsure(Exception):  # noqa: N818 - it says what it means
    """Something that cannot be hashed beyond doubt."""


def key_of(project: Project, name: str) -> str:
    """The key of the site that ``project`` gives under the name ``name``; empty where there can be none."""
    settings = [FORMAT, name, project.profile, project.courses_dir, project.quizzes_dir, *project.courses]
    settings += ["trust", project.trust]
    settings += [sys.version, *(f"{library} {_version_of(library)}" for library in _LIBRARIES)]
    hashed = hashlib.blake2b(json.dumps(settings).encode(), digest_size=32)
    try:
        if project.trust:
            trust = (project.root / project.trust).read_bytes()
            hashed.update(b"%d " % len(trust) + trust)
        for number, folder in enumerate([*_program(), *_sources(project)]):
            for path, content in _files_below(folder, "") if Path(folder).exists() else ():
                # Lengths are written out, so that no two trees of files run together to the same bytes.
                hashed.update(b"%d %d %d " % (number, len(path), len(content)) + path)
                hashed.update(content)
    except (OSError, Unsure):
        return ""
    return hashed.hexdigest()


def fetch(folder: Path, key: str) -> FinishedSite | None:
    """The site kept under a key, or None."""
    try:
        data = (folder / f"{key}{_ENDING}").read_bytes()
        end = data.index(b"\n") + 1
        return _from_record(json.loads(data[:end]), key, memoryview(data)[end:])
    except (OSError, ValueError, KeyError, TypeError):
        return None


def keep(folder: Path, key: str, site: FinishedSite) -> None:
    """Keep a site under a key, and drop the oldest beyond ``KEPT``; does nothing where the folder refuses."""
    contents = [*(page.html for page in site.pages), *site.files.values()]
    check = 0
    for content in contents:
        check = zlib.crc32(content, check)
    head = {
        "format": FORMAT,
        "key": key,
        "check": check,
        "report": site.report,
        "pages": [[page.path, page.title, len(page.html)] for page in site.pages],
        "files": [[path, len(content)] for path, content in site.files.items()],
    }
    unfinished = folder / f"{os.getpid()}.unfinished"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / ".gitignore").write_text(_IGNORE_ALL, encoding="utf-8")
        with unfinished.open("wb") as file:
            file.write(json.dumps(head).encode() + b"\n")
            file.writelines(contents)
        unfinished.replace(folder / f"{key}{_ENDING}")
        kept = sorted(folder.glob(f"*{_ENDING}"), key=lambda path: path.stat().st_mtime_ns, reverse=True)
        for old in [*kept[KEPT:], *folder.glob("*.unfinished")]:
            old.unlink(missing_ok=True)
    except OSError:
        return


def _from_record(head: dict[str, Any], key: str, contents: memoryview) -> FinishedSite | None:
    lengths = [length for _, _, length in head["pages"]] + [length for _, length in head["files"]]
    if head["format"] != FORMAT or head["key"] != key or sum(lengths) != len(contents):
        return None
    if zlib.crc32(contents) != head["check"]:
        return None
    pieces = iter(_cut(contents, lengths))
    return FinishedSite(
        pages=tuple(
            FinishedPage(path=path, title=title, html=next(pieces)) for path, title, _ in head["pages"]
        ),
        files={path: next(pieces) for path, _ in head["files"]},
        report=head["report"],
    )


def _cut(contents: memoryview, lengths: list[int]) -> Iterator[bytes]:
    start = 0
    for length in lengths:
        yield bytes(contents[start : start + length])
        start += length


def _sources(project: Project) -> Iterator[str]:
    """The folders of the courses. Raises Unsure where one is reached through a link."""
    root = os.path.realpath(project.root)
    for home in (project.courses_dir, project.quizzes_dir):
        for course in project.courses:
            folder = os.path.normpath(f"{root}/{home}/{course}")
            if os.path.realpath(folder) != folder:
                raise Unsure(folder)
            yield folder


def _program() -> list[str]:
    """The folders that hold this program and its theme, wherever they are installed."""
    found = [find_spec("journeybook"), find_spec("journeybook.theme")]
    places = [place for spec in found if spec for place in spec.submodule_search_locations or ()]
    return [place for place in places if not place.startswith(f"{places[0]}{os.sep}")]


def _version_of(library: str) -> str:
    try:
        return version(library)
    except PackageNotFoundError:
        return "none"


def _files_below(folder: str, path: str) -> Iterator[tuple[bytes, bytes]]:
    """Path and content of every file, in one order on every machine. Raises OSError, or Unsure at a link."""
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.is_symlink():
            raise Unsure(entry.path)
        inner = f"{path}/{entry.name}"
        if entry.is_dir():
            if entry.name != "__pycache__":
                yield os.fsencode(f"{inner}/"), b""
                yield from _files_below(entry.path, inner)
        elif entry.is_file():
            with open(entry.path, "rb", buffering=0) as file:  # noqa: PTH123 - a Path for each would cost as much again
                yield os.fsencode(inner), file.read()
        else:
            raise Unsure(entry.path)
