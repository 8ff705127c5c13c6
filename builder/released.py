"""The compiled course of a release, by its digest: what certificates are issued for."""

from __future__ import annotations

import hashlib

from journeybook.marking.release_shelf import FOLDER, DamagedRelease, read_release
from journeybook.project import Project


class NotReleased(ValueError):  # noqa: N818 - it says what the course is not
    """A course that is not on the shelf of releases as it was released."""

    def __init__(self, message: str, mend: str) -> None:
        """Keep the sentence for people, and what to do about it."""
        self.message = message
        self.mend = mend
        super().__init__(message)


def released_course(project: Project, course: str, version: str, digest: str) -> bytes:
    """Return the compiled.json of the release with that digest. Raises NotReleased."""
    if course not in project.courses:
        raise NotReleased(
            f"The course {course[:80]} is none of this site.",
            "Name the mkdocs.yml of the site that holds it with -f.",
        )
    damaged: list[str] = []
    shelf = project.root / project.courses_dir / course / FOLDER
    for path in sorted(shelf.glob("*/*/release.json")):
        try:
            release = read_release(path)
        except DamagedRelease as error:
            damaged.append(f"{path.relative_to(project.root).as_posix()}: {error.detail}")
            continue
        if release.digest != digest:
            continue
        try:
            data = path.with_name("compiled.json").read_bytes()
        except OSError as error:
            damaged.append(f"{path.parent.relative_to(project.root).as_posix()}: {error.strerror}")
            continue
        if hashlib.sha256(data).hexdigest() == digest:
            return data
        damaged.append(
            f"{path.parent.relative_to(project.root).as_posix()}: compiled.json is not what was released"
        )
    found = f" What is there is damaged: {'; '.join(damaged)}." if damaged else ""
    raise NotReleased(
        f"{course} {version[:40]} with contents {digest[:12]} is not released here, and only a release earns "
        f"certificates.{found}",
        "Bring back the folder releases as it was; a draft is released with "
        f"`journeybook release {course}`, and then sat anew.",
    )
