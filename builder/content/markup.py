"""CommonMark with tables to HTML: one renderer for the whole program; no HTML, images or style attributes.

CommonMark as in its specification 0.31.2. Links lead to http, https and mailto addresses only; to a page of the
course an author refers with ``{lesson.ID}``, which is checked, and not with a ``page:`` link, which could lead
nowhere.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import MutableMapping, Sequence
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token

_SPECIAL = re.compile(r"[\\`*_\[\]<&!\n\r~:\x00]")
"""A text without any of these is its own rendering, apart from escapes."""
_LINK = re.compile(r"(?:https?://|mailto:)(?:(?!%EE%80%8[01])[^\ue000\ue001])*", re.IGNORECASE)
"""Addresses are seen here percent-encoded; a reference inside one makes no link."""
_ALIGN = {"text-align:right": "right", "text-align:center": "center", "text-align:left": ""}
_LEAST_HEADING = 2
_PIECE = re.compile("\ue000[0-9]+\ue001")
"""Where ``wording`` puts finished HTML later; it must not end up inside an attribute."""


def escape(text: str) -> str:
    """Text safe inside HTML and inside a quoted attribute."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


class _Renderer(RendererHTML):
    """The library's renderer with our headings, tables and links."""

    def heading_open(
        self, tokens: Sequence[Token], at: int, _options: Any, env: MutableMapping[str, Any]
    ) -> str:
        level = max(_LEAST_HEADING, int(tokens[at].tag[1]))
        slug = env.get("slug", "")
        if not slug:
            return f"<h{level}>"
        base = f"{slug}-{_slug_of(_attribute_text(tokens[at + 1]))}"
        name = _not_taken(base, "{}-{}", env["taken"])
        return f'<h{level} id="{escape(name)}">'

    def heading_close(self, tokens: Sequence[Token], at: int, _options: Any, _env: Any) -> str:
        return f"</h{max(_LEAST_HEADING, int(tokens[at].tag[1]))}>\n"

    def table_open(
        self, tokens: Sequence[Token], at: int, _options: Any, env: MutableMapping[str, Any]
    ) -> str:
        heads: list[str] = []
        for token in tokens[at:]:
            if token.type == "thead_close":
                break
            if token.type == "inline":
                heads.append(_attribute_text(token))
        label = _not_taken(", ".join(head for head in heads if head), "{} ({})", env["taken"])
        # A group, not a region: a page with many tables would be full of landmarks.
        return f'<div class="table-scroll" tabindex="0" role="group" aria-label="{escape(label)}"><table>\n'

    def table_close(self, _tokens: Sequence[Token], _at: int, _options: Any, _env: Any) -> str:
        return "</table></div>\n"

    def _cell(self, tokens: Sequence[Token], at: int) -> str:
        name = _ALIGN.get(str(tokens[at].attrGet("style") or ""), "")
        scope = ' scope="col"' if tokens[at].tag == "th" else ""
        return f'<{tokens[at].tag}{scope} class="{name}">' if name else f"<{tokens[at].tag}{scope}>"

    def th_open(self, tokens: Sequence[Token], at: int, _options: Any, _env: Any) -> str:
        # A corner without words heads nothing.
        return self._cell(tokens, at) if tokens[at + 1].content else "<td>"

    def th_close(self, tokens: Sequence[Token], at: int, _options: Any, _env: Any) -> str:
        return "</th>\n" if tokens[at - 1].content else "</td>\n"

    def td_open(self, tokens: Sequence[Token], at: int, _options: Any, _env: Any) -> str:
        return self._cell(tokens, at)

    def fence(self, tokens: Sequence[Token], at: int, _options: Any, _env: Any) -> str:
        return f"<pre><code>{escape(tokens[at].content)}</code></pre>\n"

    def link_open(self, tokens: Sequence[Token], at: int, _options: Any, _env: Any) -> str:
        href = str(tokens[at].attrGet("href") or "")
        title = tokens[at].attrGet("title")
        shown = f' title="{escape(_PIECE.sub("", str(title)))}"' if title else ""
        return f'<a href="{escape(href)}"{shown} rel="noopener">'


def _made() -> MarkdownIt:
    markdown = MarkdownIt("commonmark", {"html": False}, renderer_cls=_Renderer)
    markdown.enable("table")
    markdown.disable(["image", "html_block", "html_inline"])
    markdown.validateLink = lambda url: _LINK.fullmatch(url) is not None  # type: ignore[method-assign]
    return markdown


_MARKDOWN = _made()
"""Making one costs more than rendering a page; it holds no state between texts."""


def render_inline(text: str) -> str:
    """HTML of a text that makes no paragraphs; equal to the slow way for every text."""
    if _SPECIAL.search(text) is None and text == text.strip():
        return _escaped_plain(text)
    return str(_MARKDOWN.renderInline(text))


def render_block(text: str, slug: str = "", taken: set[str] | None = None) -> str:
    """HTML of a text with paragraphs, headings, lists and tables.

    With ``slug`` headings get ids that start with it; ``taken`` holds the ids and the names of tables that
    the page has already, and grows.
    """
    return render_block_and_plain(text, slug, taken)[0]


def render_block_and_plain(text: str, slug: str = "", taken: set[str] | None = None) -> tuple[str, str]:
    """What ``render_block`` and ``render_plain`` give, for one reading of the text: reading is what costs."""
    line = text.strip("\n")
    if line and line == line.strip() and _is_plain(line):
        return f"<p>{_escaped_plain(line)}</p>\n", line
    env = {"slug": slug, "taken": set() if taken is None else taken}
    tokens = _MARKDOWN.parse(text, env)
    return str(_MARKDOWN.renderer.render(tokens, _MARKDOWN.options, env)), _plain_of(tokens)


def render_plain(text: str) -> str:
    """The words alone: no marks, one line a paragraph, cell or list item."""
    return text.strip() if _is_plain(text) else _plain_of(_MARKDOWN.parse(text))


def code_in(text: str) -> str:
    """What stands in a text as code, where signs are meant as signs; empty where there is none."""
    if "`" not in text and "    " not in text and "\t" not in text and "~~~" not in text:
        return ""
    pieces: list[str] = []
    for token in _MARKDOWN.parse(text):
        if token.type in ("fence", "code_block"):
            pieces.append(token.content)
        pieces.extend(child.content for child in token.children or [] if child.type == "code_inline")
    return "\n".join(pieces)


def _is_plain(text: str) -> bool:
    """True for one line of words without any mark."""
    return _SPECIAL.search(text) is None and _STARTS_BLOCK.search(text) is None


def _escaped_plain(text: str) -> str:
    """A text without special characters, escaped."""
    return text.replace(">", "&gt;").replace('"', "&quot;")


def _plain_of(tokens: Sequence[Token]) -> str:
    lines: list[str] = []
    for token in tokens:
        if token.type == "inline":
            lines.append(_text_of(token.children or []))
        elif token.type in ("fence", "code_block"):
            lines.append(token.content.strip("\n"))
    return "\n".join(line for line in lines if line).strip()


_STARTS_BLOCK = re.compile(r"^\s*(?:[-+#>=]|\d{1,9}[.)]|\t| {4})|\|")


def _text_of(tokens: Sequence[Token]) -> str:
    parts: list[str] = []
    for token in tokens:
        if token.type in ("softbreak", "hardbreak"):
            parts.append(" ")
        elif token.type in ("text", "code_inline", "text_special"):
            parts.append(token.content)
    return "".join(parts)


def _attribute_text(inline: Token) -> str:
    return " ".join(_PIECE.sub("", _text_of(inline.children or [])).split())


def _not_taken(name: str, numbered: str, taken: set[str]) -> str:
    """The name, or with the first number from 2 that makes it new; joins ``taken``."""
    new, number = name, 1
    while new in taken:
        number += 1
        new = numbered.format(name, number)
    taken.add(new)
    return new


def _slug_of(text: str) -> str:
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")[:60].rstrip("-") or "part"
