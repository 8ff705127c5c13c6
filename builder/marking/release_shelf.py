"""Where releases are kept: ``releases/VERSION/PROFILE/`` in the course's folder, three files each.

``compiled.json`` holds the compiled course, ``digests.json`` its digests, ``release.json`` when it was
released. The last is written last: a folder without it is no release. Beside them ``sources.zip`` may lie, which
``release_sources.py`` writes and reads.
"""

from __future__ import annotations

import errno
import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from journeybook.marking import canonical
from journeybook.marking.compiled import Compiled
from journeybook.marking.kind import Json, Key

FOLDER = "releases"
FORMAT = "journeybook release 1"
_TEXTS = ("version", "profile", "digest", "released")
_FOLDER_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,99}")


class DamagedRelease(ValueError):  # noqa: N818 - it says what was found
    """A release on the shelf that cannot be read, or whose compiled course is not what was released."""

    def __init__(self, path: Path, detail: str) -> None:
        """Keep which file, and half a sentence about what is wrong."""
        self.path = path
        self.detail = detail
        super().__init__(f"{path}: {detail}")


@dataclass(frozen=True, kw_only=True)
class Release:
    """One frozen version of a course, for one profile."""

    version: str
    profile: str
    digest: str
    """SHA-256 of its compiled.json, in hex."""
    released: str
    """RFC 3339, UTC, whole seconds."""
    questions: tuple[str, ...]
    """Ids of its questions, sorted; the retired ones too, which stay taken for ever."""
    keys: Mapping[str, Key] = field(default_factory=dict, repr=False)
    """Its marking keys by question id, where they were read: ``with_keys``."""


def folder_of(course_folder: Path, version: str, profile: str) -> Path:
    """Return the folder of a release.

    Raises ValueError for a version or profile that cannot name a folder on every disk.
    """
    for name in (version, profile):
        if not _FOLDER_NAME.fullmatch(name) or name.endswith("."):
            raise ValueError(f"“{name}” cannot name a folder; use letters, digits, dots and dashes")
    return course_folder / FOLDER / version / profile


def read_shelf(course_folder: Path) -> list[Release]:
    """Return every release of the course, oldest first, without keys. Raises DamagedRelease."""
    found = [read_release(path) for path in sorted((course_folder / FOLDER).glob("*/*/release.json"))]
    return sorted(found, key=lambda release: (release.released, release.version, release.profile))


def read_release(path: Path) -> Release:
    """Return what a release.json says. Raises DamagedRelease."""
    try:
        found = canonical.read(path.read_bytes(), canonical.COMPILED_SIZE_CAP)
    except OSError as error:
        raise DamagedRelease(path, "it cannot be read") from error
    except canonical.NotCanonical as refused:
        raise DamagedRelease(path, f"it was changed ({refused.reason})") from refused
    if not isinstance(found, dict) or found.get("format") != FORMAT:
        raise DamagedRelease(path, f"it does not say that it is a “{FORMAT}”")
    record: dict[str, Any] = found
    texts, questions = [record.get(member) for member in _TEXTS], record.get("questions")
    if not isinstance(questions, list) or not all(isinstance(text, str) for text in [*texts, *questions]):
        raise DamagedRelease(path, "a member is missing or of the wrong shape")
    if (record["version"], record["profile"]) != (path.parent.parent.name, path.parent.name):
        raise DamagedRelease(path, f"it is of version {record['version']} for {record['profile']}")
    return Release(**{member: record[member] for member in _TEXTS}, questions=tuple(questions))


def with_keys(course_folder: Path, release: Release) -> Release:
    """Return the release with its marking keys, its compiled course checked against the digest.

    Raises DamagedRelease.
    """
    path = folder_of(course_folder, release.version, release.profile) / "compiled.json"
    try:
        data = path.read_bytes()
    except OSError as error:
        raise DamagedRelease(path, "it cannot be read") from error
    if hashlib.sha256(data).hexdigest() != release.digest:
        raise DamagedRelease(path, "its contents are not those that were released")
    try:
        # The digest has shown that these are the very bytes that were written, so a plain reader will do.
        keys: Mapping[str, Key] = json.loads(data)["private"]["keys"]
    except (ValueError, KeyError, TypeError) as error:
        raise DamagedRelease(path, "it is not a compiled course") from error
    return replace(release, keys=keys)


def write_release(course_folder: Path, release: Release, compiled: Compiled) -> None:
    """Put a release on the shelf. Raises OSError, also where one stands in its place already."""
    folder = folder_of(course_folder, release.version, release.profile)
    folder.mkdir(parents=True, exist_ok=True)
    if (folder / "release.json").exists():
        raise FileExistsError(errno.EEXIST, "a release is never written over", str(folder / "release.json"))
    record: dict[str, Json] = {
        "format": FORMAT,
        "version": release.version,
        "profile": release.profile,
        "digest": release.digest,
        "released": release.released,
        "questions": list(release.questions),
    }
    for name, data in (
        ("compiled.json", compiled.data),
        ("digests.json", compiled.digests),
        ("release.json", canonical.write(record)),
    ):
        unfinished = folder / f"{name}.unfinished"
        unfinished.write_bytes(data)
        unfinished.replace(folder / name)
