"""The trust list that mkdocs.yml names: read, and checked as anybody would check it who is sent the file."""

from __future__ import annotations

from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.extras import to_install
from journeybook.diagnostics.problem import Problem
from journeybook.project import Project

SIZE_CAP = 1 << 20
"""Bytes. A list of a hundred keys and a thousand withdrawn certificates is a fifth of it."""


def trust_of(project: Project) -> tuple[str, list[Problem]]:
    """The canonical text of the project's trust list, empty where it names none, and what is wrong with it."""
    if not project.trust:
        return "", []
    where = whole_file(project.trust)
    try:
        with (project.root / project.trust).open("rb") as file:
            data = file.read(SIZE_CAP + 1)
    except OSError as error:
        message = f"The trust list {project.trust} cannot be read: {error.strerror or error}."
        mend = "Put the file there, write its right name at `trust` in mkdocs.yml, or take that line out."
        return "", [fault("V001", where, message, mend)]
    # Signatures take a while to load, so only a site that names a list does so.
    try:
        from journeybook.proof.trust_list import Refused, read

        read(data)
    except Refused as refused:
        if refused.reason == "altered":
            mend = "Take the list as it was signed, from where `journeybook trust` wrote it."
            return "", [fault("V003", where, refused.detail, mend)]
        mend = "Name at `trust` in mkdocs.yml what `journeybook trust start` has written."
        return "", [fault("V002", where, refused.detail, mend)]
    except ModuleNotFoundError as missing:
        message = f"The signatures of the trust list cannot be checked without the package {missing.name}."
        return "", [fault("V004", where, message, f"Install it with: {to_install('proof')}")]
    return data.decode("utf-8").strip(), []
