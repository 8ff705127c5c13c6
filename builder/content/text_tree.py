"""A text of the author's as a small tree of plain data, for what is no web page.

The same CommonMark as ``markup`` renders. Of a link its words are left, because paper leads nowhere; signs that look
like HTML are signs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Required, TypedDict

from markdown_it.token import Token

from journeybook.content.markup import tokens_of


class Run(TypedDict, total=False):
    """Words set in one way; a line break stands in them as ``\\n``."""

    text: Required[str]
    strong: bool
    emphasis: bool
    code: bool


class Block(TypedDict, total=False):
    """One block of a text. Which members it has hangs on ``kind``."""

    kind: Required[str]
    """``paragraph``, ``heading``, ``list``, ``table``, ``code``, ``quote`` or ``rule``."""
    runs: list[Run]
    """Of a paragraph or heading."""
    level: int
    """Of a heading, from 1."""
    numbered: bool
    """Of a list."""
    start: int
    """Of a numbered list: its first number."""
    items: list[list[Block]]
    """Of a list."""
    heads: list[list[Run]]
    """Of a table, one a column."""
    rows: list[list[list[Run]]]
    """Of a table."""
    align: list[str]
    """Of a table, one a column: ``left``, ``center`` or ``right``."""
    text: str
    """Of a block of code."""
    blocks: list[Block]
    """Of a quotation."""


Put = Callable[[str], str]
"""What is done to the words of each run in the end."""


def tree_of(text: str, put: Put = str) -> list[Block]:
    """The blocks of a text."""
    blocks, _ = _blocks(tokens_of(text), 0, "", put)
    return blocks


def runs_of(blocks: Iterable[Block]) -> list[Run]:
    """The words of simple texts such as an option: those of its paragraphs, one after the other."""
    found: list[Run] = []
    for block in blocks:
        if found:
            found.append(Run(text="\n"))
        if block["kind"] in ("paragraph", "heading"):
            found += block["runs"]
        elif block["kind"] == "code":
            found.append(Run(text=block["text"], code=True))
        else:
            found += runs_of(block.get("blocks", []))
            for item in block.get("items", []):
                found += runs_of(item)
    return found


def words_of(runs: Iterable[Run]) -> str:
    """The words alone."""
    return "".join(run["text"] for run in runs)


def _blocks(tokens: Sequence[Token], at: int, until: str, put: Put) -> tuple[list[Block], int]:
    """The blocks from ``at`` on, and where the token ``until`` that ends them stands."""
    found: list[Block] = []
    while at < len(tokens) and tokens[at].type != until:
        token = tokens[at]
        match token.type:
            case "paragraph_open":
                found.append(Block(kind="paragraph", runs=_runs(tokens[at + 1], put)))
                at += 2
            case "heading_open":
                level = int(token.tag[1])
                found.append(Block(kind="heading", level=level, runs=_runs(tokens[at + 1], put)))
                at += 2
            case "bullet_list_open" | "ordered_list_open":
                listed, at = _list(tokens, at, put)
                found.append(listed)
            case "blockquote_open":
                inner, at = _blocks(tokens, at + 1, "blockquote_close", put)
                found.append(Block(kind="quote", blocks=inner))
            case "table_open":
                table, at = _table(tokens, at, put)
                found.append(table)
            case "fence" | "code_block":
                found.append(Block(kind="code", text=put(token.content.rstrip("\n"))))
            case "hr":
                found.append(Block(kind="rule"))
        at += 1
    return found, at


def _list(tokens: Sequence[Token], at: int, put: Put) -> tuple[Block, int]:
    opening = tokens[at]
    numbered = opening.type == "ordered_list_open"
    items: list[list[Block]] = []
    at += 1
    while tokens[at].type == "list_item_open":
        item, at = _blocks(tokens, at + 1, "list_item_close", put)
        items.append(item)
        at += 1
    start = int(opening.attrGet("start") or 1) if numbered else 1
    return Block(kind="list", numbered=numbered, start=start, items=items), at


def _table(tokens: Sequence[Token], at: int, put: Put) -> tuple[Block, int]:
    heads: list[list[Run]] = []
    align: list[str] = []
    rows: list[list[list[Run]]] = []
    while tokens[at].type != "table_close":
        token = tokens[at]
        if token.type == "tr_open":
            rows.append([])
        elif token.type == "th_open":
            heads.append(_runs(tokens[at + 1], put))
            align.append(str(token.attrGet("style") or "").removeprefix("text-align:") or "left")
        elif token.type == "td_open":
            rows[-1].append(_runs(tokens[at + 1], put))
        at += 1
    return Block(kind="table", heads=heads, align=align, rows=[row for row in rows if row]), at


def _runs(inline: Token, put: Put) -> list[Run]:
    runs: list[Run] = []
    strong = emphasis = 0
    for token in inline.children or []:
        match token.type:
            case "strong_open" | "strong_close":
                strong += token.nesting
            case "em_open" | "em_close":
                emphasis += token.nesting
            case "text" | "text_special" | "softbreak" | "hardbreak" | "code_inline":
                words = {"softbreak": " ", "hardbreak": "\n"}.get(token.type, token.content)
                _add(
                    runs,
                    words,
                    strong=strong > 0,
                    emphasis=emphasis > 0,
                    code=token.type == "code_inline",
                )
    for run in runs:
        run["text"] = put(run["text"])
    return [run for run in runs if run["text"]]


def _add(runs: list[Run], words: str, *, strong: bool, emphasis: bool, code: bool) -> None:
    """Add words; those set as the ones before them go with them."""
    run = Run(text=words)
    if strong:
        run["strong"] = True
    if emphasis:
        run["emphasis"] = True
    if code:
        run["code"] = True
    last = runs[-1] if runs else None
    if last is not None and {**last, "text": ""} == {**run, "text": ""}:
        last["text"] += words
    else:
        runs.append(run)
