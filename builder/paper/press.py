"""Sets one paper: a template of ours and plain data become the bytes of a PDF.

Every paper is PDF/A-3a (ISO 19005-3: to be kept) and PDF/UA-1 (ISO 14289-1: to be read aloud) at once, in our own
type faces, and the same input gives the same bytes. Data reach a template as JSON and are never part of its text, so
that no name can be taken for a command. Nothing is fetched and no font of the machine is used.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import cache
from importlib import resources
from typing import Any

from journeybook.diagnostics.extras import to_install

STANDARDS = ("a-3a", "ua-1")
SIZES = ("a4", "us-letter")
"""Papers that a printer holds; the first unless something else is asked for."""
UNSHOWN = "\ufffd"
"""Stands in a paper for a character that no face of ours has, and for one that would turn the writing round."""
_SHEETS = resources.files("journeybook.paper") / "sheets"
_WITHOUT_A_SHAPE = re.compile(r'the text `"((?:[^"\\]|\\.)+)"` could not be displayed')
_ESCAPED = re.compile(r"\\u\{([0-9a-f]+)\}|\\(.)")
_TURNING = str.maketrans("\u202d\u202e", UNSHOWN * 2)
"""A name that holds an override of direction (Unicode Standard Annex 9, 2.2) would read as another one."""


class NoPress(RuntimeError):  # noqa: N818 - what is missing
    """The typesetter is not installed; the text says how to install it."""


class NotSet(RuntimeError):  # noqa: N818 - what happened to the paper
    """A paper that could not be set; the text says why."""


@dataclass(frozen=True, kw_only=True)
class Attachment:
    """A file that travels inside the PDF."""

    name: str
    """As a reader shows it: ``record.json``."""
    data: bytes
    kind: str
    """Media type."""
    says: str
    """What it is, in words."""


def press(
    template: str,
    data: Mapping[str, Any],
    *,
    made: datetime,
    pictures: Mapping[str, bytes] | None = None,
    attachment: Attachment | None = None,
) -> bytes:
    """Return the PDF of ``sheets/<template>.typ`` with ``data``, dated ``made``.

    A template reads its data with ``json("data.json")`` and a picture by its name (``code.svg``); the attachment is
    put in for it. A character that no face has prints as UNSHOWN. Raises NoPress without the typesetter, NotSet for
    what cannot be set.
    """
    text = json.dumps(data, ensure_ascii=False).translate(_TURNING)
    files = {name: source for name, source in _templates().items() if name != "main.typ"} | dict(
        pictures or {}
    )
    main = f'#include "{template}.typ"\n'
    if attachment is not None:
        files["attached"] = attachment.data
        main = (
            f'#pdf.attach({_quoted("/" + attachment.name)}, read("attached", encoding: none), '
            f'relationship: "data", mime-type: {_quoted(attachment.kind)}, '
            f"description: {_quoted(attachment.says)})\n"
        ) + main
    files["main.typ"] = main.encode()
    try:
        return _set(template, files | {"data.json": text.encode()}, made)
    except _NoShape as lacking:
        # The typesetter names them all at once, so the second time is the last.
        text = text.translate({ord(character): UNSHOWN for character in lacking.characters})
    return _set(template, files | {"data.json": text.encode()}, made)


def unprintable(text: str, made: datetime) -> frozenset[str]:
    """Return the characters of a text that no face of ours has, which a paper shows as UNSHOWN.

    Raises NoPress without the typesetter.
    """
    if text.isascii():
        return frozenset()
    main = b'#set document(title: "Letters")\n#set text(lang: "en")\n#json("data.json")\n'
    data = json.dumps(text, ensure_ascii=False).encode()
    try:
        _set("letters", {"main.typ": main, "data.json": data}, made)
    except _NoShape as lacking:
        return lacking.characters
    return frozenset()


class _NoShape(NotSet):
    """Some characters are in no face."""

    def __init__(self, said: str, characters: frozenset[str]) -> None:
        super().__init__(said)
        self.characters = characters


def _set(template: str, files: Mapping[str, bytes], made: datetime) -> bytes:
    """Return the PDF of ``main.typ``."""
    typesetter = _typesetter()
    try:
        made_pdf: bytes = typesetter.compile(
            dict(files),
            format="pdf",
            pdf_standards=list(STANDARDS),
            timestamp=int(made.astimezone(UTC).timestamp()),
            ignore_system_fonts=True,
            font_paths=[str(_fonts())],
        )
    except Exception as error:
        if type(error).__name__ != "TypstError":
            raise
        said = f"The paper “{template}” could not be set: {error}"
        lacking = frozenset(
            character
            for text in _WITHOUT_A_SHAPE.findall(getattr(error, "diagnostic", ""))
            for character in _ESCAPED.sub(lambda found: _escaped(found[1], found[2]), text)
        )
        # A plain letter is in every face: it is only named beside a mark that is not.
        lacking = frozenset(character for character in lacking if not character.isascii())
        if lacking:
            raise _NoShape(said, lacking) from error
        raise NotSet(said) from error
    return made_pdf


def _escaped(code: str | None, sign: str | None) -> str:
    """What the typesetter's message wrote with a backslash."""
    return chr(int(code, 16)) if code else sign or ""


def _quoted(text: str) -> str:
    """A text as a string of the template language, which reads JSON's escapes of these two."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _typesetter() -> Any:
    try:
        import typst
    except ModuleNotFoundError as missing:
        raise NoPress(f"Papers need the typesetter: {to_install('print')}.") from missing
    return typst


@cache
def _templates() -> dict[str, bytes]:
    return {entry.name: entry.read_bytes() for entry in _SHEETS.iterdir() if entry.name.endswith(".typ")}


@cache
def _fonts() -> str:
    """The folder of our faces; an installed package lies unpacked on disk."""
    with resources.as_file(resources.files("journeybook.paper") / "fonts") as folder:
        return str(folder)
