"""An author's text as plain data that ``sheets/rich.typ`` sets: no word of it can become a command.

A text is read once, by the renderer of the pages; what comes here is its HTML, which holds no other elements than
CommonMark with tables gives. Paragraphs, lists, headings, tables and code become *blocks*; what stands in a line
becomes *runs* of text in one look. Links keep their words alone: paper leads nowhere.
"""

from __future__ import annotations

from collections.abc import Mapping
from html.parser import HTMLParser
from typing import Any

from journeybook.content.wording import Wording

Run = dict[str, Any]
"""``{"text": …}`` with ``strong``, ``slanted``, ``code``, ``example`` where it looks so; or ``{"break": true}``."""
Block = dict[str, Any]
"""``kind`` is paragraph, heading, list, table, code or rule, beside what that kind has."""

_LOOKS = {"strong": "strong", "em": "slanted", "code": "code"}
_TITLES = {f"h{level}" for level in range(1, 7)}


def runs_of(wording: Wording, text: str, given: Mapping[str, str] | None = None) -> list[Run]:
    """The runs of a text that makes no paragraphs: a title, an option, a cell."""
    lines = _read(f"<p>{wording.inline(text, given)}</p>")
    return list(lines[0]["runs"]) if lines else []


def blocks_of(wording: Wording, text: str, given: Mapping[str, str] | None = None) -> list[Block]:
    """The blocks of a text with paragraphs, lists, tables and headings."""
    return _read(wording.block(text, given=given))


def _read(html: str) -> list[Block]:
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.blocks


class _Reader(HTMLParser):
    """Puts the blocks together, the innermost list that is open last in ``_open``."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.blocks: list[Block] = []
        self._open: list[list[Block]] = [self.blocks]
        """Where the next block goes: the text itself, an item of a list, a quote."""
        self._lists: list[Block] = []
        self._tables: list[Block] = []
        self._runs: list[Run] | None = None
        """The line that is being read; words outside one begin a paragraph."""
        self._looks: list[str] = []
        """One entry for each element of a line that is open; empty for one without a look."""
        self._code: list[str] | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        match tag:
            case "p":
                self._begin({"kind": "paragraph"})
            case _ if tag in _TITLES:
                self._begin({"kind": "heading", "level": int(tag[1])})
            case "ul" | "ol":
                self._runs = None
                start = next((int(value) for name, value in attrs if name == "start" and value), 1)
                made: Block = {"kind": "list", "ordered": tag == "ol", "start": start, "items": []}
                self._open[-1].append(made)
                self._lists.append(made)
            case "li":
                self._runs = None
                item: list[Block] = []
                self._lists[-1]["items"].append(item)
                self._open.append(item)
            case "table":
                self._runs = None
                table: Block = {"kind": "table", "rows": []}
                self._open[-1].append(table)
                self._tables.append(table)
            case "tr":
                self._tables[-1]["rows"].append([])
            case "th" | "td":
                self._runs = []
                self._tables[-1]["rows"][-1].append(self._runs)
            case "pre":
                self._runs, self._code = None, []
            case "hr":
                self._runs = None
                self._open[-1].append({"kind": "rule"})
            case "br":
                self._line().append({"break": True})
            case "strong" | "em" | "code" if self._code is None:
                self._looks.append(_LOOKS[tag])
            case "span":
                classes = next((value or "" for name, value in attrs if name == "class"), "")
                self._looks.append("example" if "example" in classes.split() else "")
            case _:
                pass

    def handle_endtag(self, tag: str) -> None:
        match tag:
            case "p" | "th" | "td":
                self._runs = None
            case _ if tag in _TITLES:
                self._runs = None
            case "li":
                self._runs = None
                self._open.pop()
            case "ul" | "ol":
                self._lists.pop()
            case "table":
                self._tables.pop()
            case "pre":
                self._open[-1].append({"kind": "code", "text": "".join(self._code or []).rstrip("\n")})
                self._code = None
            case "strong" | "em" | "code" | "span" if self._code is None:
                self._looks.pop()
            case _:
                pass

    def handle_data(self, data: str) -> None:
        if self._code is not None:
            self._code.append(data)
            return
        text = data.replace("\n", " ")
        if self._runs is None and not text.strip():
            return
        if self._runs and "break" in self._runs[-1]:
            text = text.lstrip()
        self._line().append({"text": text, **{look: True for look in self._looks if look}})

    def _begin(self, block: Block) -> None:
        self._runs = []
        self._open[-1].append({**block, "runs": self._runs})

    def _line(self) -> list[Run]:
        if self._runs is None:
            self._begin({"kind": "paragraph"})
        assert self._runs is not None
        return self._runs
