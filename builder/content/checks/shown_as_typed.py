"""Pictures and HTML in texts: neither does anything there, and a learner would read the bare signs.

Only what a browser would take for HTML counts: the name of one of its elements (HTML, Living Standard, index of
elements) between angle brackets. ``5 < 6`` and ``<3 bar`` are prose.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from journeybook.content.checks.wording import place_within
from journeybook.content.file_read import FileRead
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.reading import Origin

_ELEMENT = (
    "a|abbr|acronym|address|area|article|aside|audio|b|base|bdi|bdo|big|blockquote|body|"
    "br|button|canvas|caption|center|cite|code|col|colgroup|data|datalist|dd|del|details|"
    "dfn|dialog|div|dl|dt|em|embed|fieldset|figcaption|figure|font|footer|form|h1|h2|h3|"
    "h4|h5|h6|head|header|hgroup|hr|html|i|iframe|img|input|ins|kbd|label|legend|li|"
    "link|main|map|mark|math|menu|meta|meter|nav|nobr|noscript|object|ol|optgroup|option|"
    "output|p|param|picture|pre|progress|q|rp|rt|ruby|s|samp|script|search|section|select|"
    "slot|small|source|span|strike|strong|style|sub|summary|sup|svg|table|tbody|td|"
    "template|textarea|tfoot|th|thead|time|title|tr|track|tt|u|ul|var|video|wbr"
)
"""With those that were elements once and are still typed, such as ``font``."""
_ATTRIBUTE = r"""\s+[a-z][a-z0-9:_-]*(?:\s*=\s*(?:"[^"]*"|'[^']*'|[^\s"'=<>`]+))"""
_HTML = re.compile(
    rf"(?<!\\)(?:<(?P<close>/?)(?P<name>{_ELEMENT})(?:{_ATTRIBUTE})*\s*/?>|<!--.*?-->)",
    re.IGNORECASE | re.DOTALL,
)
_PICTURE = re.compile(r"(?<!\\)!\[[^\]\n]*\](?:\([^)\n]*\)|\[[^\]\n]*\])")
_INSTEAD = {
    "**bold**": ("b", "strong"),
    "*slanted*": ("i", "em", "cite", "dfn", "var"),
    "an empty line in a text below `|`": ("br", "p"),
    "[words](https://…)": ("a",),
    "lines that start with `- `": ("ul", "ol", "li"),
    "lines that start with `## `": ("h1", "h2", "h3", "h4", "h5", "h6"),
    "a table of | columns |": ("table", "tr", "td", "th", "thead", "tbody"),
    "a letter such as ² or ₂": ("sup", "sub"),
    "a drawing in figures/": ("img", "svg", "picture"),
    "`code`": ("code", "kbd", "samp", "tt", "pre"),
}
_MEND_FOR = {name: f"Write {instead} instead" for instead, names in _INSTEAD.items() for name in names}


def check_shown_as_typed(file: FileRead) -> Iterator[Problem]:
    """No text holds a picture or HTML, except as code or behind a backslash."""
    if not file.origins:
        return
    document = next(iter(file.origins.values())).document
    if document.holds("<") or document.holds("!["):
        for origin in file.origins.values():
            yield from _check_texts(origin)


def _check_texts(origin: Origin) -> Iterator[Problem]:
    data = origin.container
    for key, value in data.items():
        if type(value) is str:
            yield from _check_text(origin, data, key, value)
        elif type(value) is list:
            for index, entry in enumerate(value):
                if type(entry) is str:
                    yield from _check_text(origin, value, index, entry)
                elif type(entry) is list:  # a row of a table
                    for column, cell in enumerate(entry):
                        if type(cell) is str:
                            yield from _check_text(origin, entry, column, cell)


def _check_text(origin: Origin, container: object, at: str | int, text: str) -> Iterator[Problem]:
    if "<" not in text and "![" not in text:
        return
    pictures, tags = list(_PICTURE.finditer(text)), list(_HTML.finditer(text))
    if not pictures and not tags:
        return
    # Loading the renderer takes longer than checking a small course, and hardly any text needs it.
    from journeybook.content.markup import code_in

    code = code_in(text)
    told: set[str] = set()
    for found in pictures:
        if found[0] not in told and found[0] not in code:
            told.add(found[0])
            yield _picture(found[0], place_within(origin, container, at, found[0]))
    for found in tags:
        name = (found["name"] or "").lower()
        # One of a pair is enough.
        if name not in told and found[0] not in code:
            told.add(name)
            yield _html(found[0], name, place_within(origin, container, at, found[0].split("\n")[0]))


def _picture(written: str, place: Place) -> Problem:
    return warning(
        "W008",
        place,
        f"The picture `{written[:60]}` is not shown: a text holds no pictures.",
        "Make it a drawing in figures/, and show it with `figure:`, or name it with `{figure.NAME}`.",
    )


def _html(written: str, name: str, place: Place) -> Problem:
    mend = _MEND_FOR.get(
        name, "Take it out" if name else "Put a `#` comment on a line of its own, outside the text"
    )
    shown = written.split("\n")[0][:60]
    return warning(
        "W009",
        place,
        f"`{shown}` is shown as it is typed: HTML does nothing in a text.",
        f"{mend}; put a backslash before a `<` that is meant as such.",
    )
