"""From the bytes of a file to its text: UTF-8, of a sensible size, with nothing in it that cannot be seen."""

from __future__ import annotations

import codecs
import re
import unicodedata

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.lines import Lines

MOST_BYTES = 8 * 1024 * 1024
"""A file of 10,000 questions has about 5 MB; anything beyond 8 MiB is not a text that somebody wrote."""

_MARKED = (
    (codecs.BOM_UTF32_LE, "UTF-32"),
    (codecs.BOM_UTF32_BE, "UTF-32"),
    (codecs.BOM_UTF16_LE, "UTF-16"),
    (codecs.BOM_UTF16_BE, "UTF-16"),
)

_NOT_TEXT = (
    (b"PK\x03\x04", "a document of an office program, or an archive"),
    (b"\xd0\xcf\x11\xe0", "a document of an office program"),
    (b"{\\rtf", "a document with formatting (RTF)"),
    (b"%PDF-", "a PDF"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
)
"""How files begin that were only renamed: ZIP, compound file, RTF, PDF, PNG, JPEG."""

_INVISIBLE = "\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff"
"""Outside the printable set of YAML 1.2.2, 5.1; the byte order mark too, which belongs first or nowhere."""

UNSEEN = re.compile(f"[{_INVISIBLE}]")
"""A character that cannot be seen; also looked for in texts that write it with a backslash."""

_ODD_BREAK = re.compile("[\x85\u2028\u2029]")

_SEEN_BYTES = bytes(sorted({0x09, 0x0A, 0x0D, *range(0x20, 0x7F), *range(0x80, 0x100)}))
_SUSPECT_BYTES = re.compile(rb"\xc2[\x80-\x9f]|\xe2\x80[\xa8\xa9]|\xef\xbb\xbf|\xef\xbf[\xbe\xbf]")
"""The characters of the two patterns above, beyond ASCII, as UTF-8: bytes are searched faster than text."""

_MOST_LISTED = 20


def decode(data: bytes, file: str) -> tuple[str, list[Problem]]:
    """The text of a file without its byte order mark, or the reasons why it has none."""
    if len(data) > MOST_BYTES:
        return "", [
            fault(
                "S001",
                Place(file=file, length=0),
                f"The file has {len(data) / 1048576:.1f} MiB; the most is 8 MiB.",
                "Split it into several files.",
            )
        ]
    for beginning, what in _NOT_TEXT:
        if data.startswith(beginning):
            mend = "Copy its words into a file that a text editor makes, and save that as UTF-8."
            return "", [fault("S002", Place(file=file, length=0), f"This is {what}, not a text file.", mend)]
    encoding = _other_encoding(data)
    if encoding:
        return "", [
            fault(
                "S002",
                Place(file=file, length=0),
                f"The file is written in {encoding}.",
                "Save it as UTF-8 (in the editor: Save with encoding, UTF-8).",
            )
        ]
    data = data.removeprefix(codecs.BOM_UTF8)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        return "", [_bad_byte(data, error.start, file)]
    if data.translate(None, _SEEN_BYTES) or (not text.isascii() and _SUSPECT_BYTES.search(data)):
        return text, _unseen(text, file) or _odd_breaks(text, file)
    return text, []


def lines_to_show(data: bytes) -> list[str]:
    """The lines of a file for the excerpt under a problem, whatever its bytes; a bad byte becomes U+FFFD."""
    text = data.removeprefix(codecs.BOM_UTF8).decode("utf-8", errors="replace")
    return re.split(r"\r\n|\n|\r", text)


def name_of(character: str) -> str:
    """A character by number and name: ``U+0007`` or ``U+FEFF (zero width no-break space)``."""
    name = unicodedata.name(character, "").lower()
    return f"U+{ord(character):04X}" + (f" ({name})" if name else "")


def _other_encoding(data: bytes) -> str:
    for mark, name in _MARKED:
        if data.startswith(mark):
            return name
    # Without a mark, YAML 1.2.2, 5.2 goes by where the first character has its zero bytes.
    if len(data) >= 4 and 0 in data[:4]:
        zeros = tuple(byte == 0 for byte in data[:4])
        if zeros in ((True, True, True, False), (False, True, True, True)):
            return "UTF-32"
        if zeros in ((True, False, True, False), (False, True, False, True)):
            return "UTF-16"
    return ""


def _bad_byte(data: bytes, at: int, file: str) -> Problem:
    before = data[:at].decode("utf-8")
    line, column = Lines(before).at(len(before))
    return fault(
        "S003",
        Place(file=file, line=line, column=column),
        f"The byte {data[at]:02X} here is not part of any character in UTF-8.",
        "Open the file in the encoding it was written in, and save it as UTF-8.",
    )


def _unseen(text: str, file: str) -> list[Problem]:
    lines = Lines(text)
    problems: list[Problem] = []
    for match in UNSEEN.finditer(text):
        if len(problems) == _MOST_LISTED:
            break
        problems.append(
            fault(
                "S004",
                lines.place(file, match.start()),
                f"The character {name_of(match.group())} cannot be seen or printed.",
                "Delete it; it often comes along when text is pasted.",
            )
        )
    return problems


def _odd_breaks(text: str, file: str) -> list[Problem]:
    lines = Lines(text)
    problems: list[Problem] = []
    for match in _ODD_BREAK.finditer(text):
        if len(problems) == _MOST_LISTED:
            break
        name = {"\x85": "next line", "\u2028": "line separator", "\u2029": "paragraph separator"}
        problems.append(
            fault(
                "S005",
                lines.place(file, match.start()),
                f"The character U+{ord(match.group()):04X} ({name[match.group()]}) breaks the line for some"
                " programs and not for others.",
                "Delete it, and press Enter where a new line is meant.",
            )
        )
    return problems
