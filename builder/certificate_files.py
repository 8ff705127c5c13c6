"""The two files of a certificate, ``NAME-ID-COURSE.pdf`` and ``.json``: how they are called, and found again.

What is found again counts only where its signature holds.
"""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from journeybook.proof.certificate import SIZE_CAP, Certificate, NotACertificate, of_document, parsed
from journeybook.proof.data_integrity import NotGenuine, verify
from journeybook.sittings import sitting_file

RECORD, PAPER = ".json", ".pdf"
_PDF_CAP = 16 << 20
"""Bytes of a PDF that are looked into: ours have a tenth of a megabyte."""
_LONGEST = {"name": 80, "person": 40, "course": 60}
"""Bytes of each part, so that the whole stays below the 255 that most disks take."""
_IN_LATIN = str.maketrans({
    "ß": "ss", "ẞ": "SS", "æ": "ae", "Æ": "Ae", "ø": "o", "Ø": "O", "œ": "oe", "Œ": "Oe", "ł": "l", "Ł": "L",
    "đ": "d", "Đ": "D", "ð": "d", "Ð": "D", "þ": "th", "Þ": "Th", "ı": "i", "ħ": "h", "Ħ": "H", "ŋ": "n", "Ŋ": "N",
})  # fmt: skip
"""Latin letters that have no plain letter inside."""


@dataclass(frozen=True, kw_only=True)
class Held:
    """A certificate that lies in a folder."""

    certificate: Certificate
    record: bytes
    stem: str
    """Name of its files without their ends."""
    has_record: bool
    has_paper: bool

    @property
    def file(self) -> str:
        """The file to name to people: the paper where there is one."""
        return self.stem + (PAPER if self.has_paper else RECORD)


def stem_of(name: str, person: str, course: str) -> str:
    """Return the name of somebody's files without their ends; every system takes it.

    Latin letters lose their marks; letters and digits of other scripts stay; everything else becomes a hyphen.
    """
    parts = [
        _part(text, _LONGEST[part])
        for part, text in (("name", name), ("person", person), ("course", course))
    ]  # fmt: skip
    return "-".join(part for part in parts if part) or "certificate"


def _part(text: str, most: int) -> str:
    plain = "".join(_plain(letter) for letter in unicodedata.normalize("NFC", text).translate(_IN_LATIN))
    return re.sub(r"[\W_]+", "-", plain).strip("-").encode()[:most].decode(errors="ignore").strip("-")


def _plain(letter: str) -> str:
    """A Latin letter without its marks; of other scripts the letter as it is: its marks are part of it."""
    base = unicodedata.normalize("NFD", letter)[0]
    return base if base.isascii() else letter


@contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """Have a folder to oneself from looking what lies there to writing: one attempt gets one certificate.

    Raises SittingRefused where somebody else is there for too long.
    """
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        # Not every system opens a folder, and one that is not there is told of when it is written to.
        yield
        return
    try:
        # Some disks of a network lock files alone.
        with suppress(OSError):
            sitting_file.hold(handle, folder.name)
        yield
    finally:
        os.close(handle)


def held(folder: Path, stem: str, fits: Callable[[Certificate], bool]) -> Held | None:
    """Return the certificate among somebody's files that ``fits`` and whose signature holds, or None."""
    files = _files_of(folder, stem)
    for each in sorted(files, key=lambda one: (len(one), one)):
        record = _record(folder, each, files[each])
        certificate = None if record is None else _genuine(record)
        if record is not None and certificate is not None and fits(certificate):
            return Held(
                certificate=certificate,
                record=record,
                stem=each,
                has_record=RECORD in files[each],
                has_paper=PAPER in files[each],
            )
    return None


def free_stem(folder: Path, stem: str) -> str:
    """Return ``stem``, or the first of ``stem-2``, ``stem-3`` … whose files are not there, capitals or not."""
    taken = {each.casefold() for each in _files_of(folder, stem)}
    number = 1
    while (found := stem if number == 1 else f"{stem}-{number}").casefold() in taken:
        number += 1
    return found


def _files_of(folder: Path, stem: str) -> dict[str, set[str]]:
    """The names that may be somebody's, without their ends, and which ends there are."""
    wanted = re.compile(rf"{re.escape(stem.casefold())}(-[0-9]{{1,6}})?")
    found: dict[str, set[str]] = {}
    with suppress(FileNotFoundError), os.scandir(folder) as entries:
        for entry in entries:
            name, end = Path(entry.name).stem, Path(entry.name).suffix
            if end in (RECORD, PAPER) and wanted.fullmatch(unicodedata.normalize("NFC", name).casefold()):
                found.setdefault(name, set()).add(end)
    return found


def _record(folder: Path, stem: str, ends: set[str]) -> bytes | None:
    for data in _read(folder, stem, ends):
        if data is not None:
            return data
    return None


def _read(folder: Path, stem: str, ends: set[str]) -> Iterator[bytes | None]:
    """The bytes that may be a record, from its own file first."""
    from journeybook.proof.record_in_pdf import find

    for end in (RECORD, PAPER):
        if end not in ends:
            continue
        with suppress(OSError), (folder / f"{stem}{end}").open("rb") as file:
            if end == RECORD:
                data = file.read(SIZE_CAP + 1)
                yield data if _genuine(data) else None
            else:
                yield find(file.read(_PDF_CAP))


def _genuine(record: bytes) -> Certificate | None:
    """The certificate, where the signature of the issuer that it names holds."""
    try:
        document = parsed(record)
        verify(document)
    except (NotACertificate, NotGenuine):
        return None
    return of_document(document)
