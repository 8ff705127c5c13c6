"""From the parser's complaint to ours: what a person did, where it began, and how to mend it.

The parser says what it expected when it gave up; the slip is often earlier. Both parsers of PyYAML are
understood, the one in C and the one in Python, whose words differ a little.
"""

from __future__ import annotations

import re

from yaml import YAMLError
from yaml.error import MarkedYAMLError

from journeybook.source.findings import SeenScalar
from journeybook.source.layout import KEY_WITHOUT_SPACE
from journeybook.source.refusals import Refusals

_CURLY = re.compile("[\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019]")
_LOST = re.compile(r"\S[ \t]+#")


def explain(error: YAMLError, refusals: Refusals, before: SeenScalar | None) -> None:
    """Note the problem behind ``error``; ``before`` is the last scalar that was read whole."""
    if not isinstance(error, MarkedYAMLError) or error.problem_mark is None:
        refusals.unreadable(before)
        return
    problem, context = error.problem or "", error.context or ""
    at = min(error.problem_mark.index, len(refusals.lines.text))
    opened = error.context_mark.index if error.context_mark else at
    character = refusals.lines.text[at : at + 1]

    if character == "\t" and ("cannot start" in problem or "tab" in problem):
        refusals.tab(at)
    elif "quoted scalar" in context:
        _quoted(problem, at, opened, refusals)
    elif "block scalar" in context:
        _block_header(opened, refusals)
    elif "directive" in context + problem or (character == "%" and _starts_line(at, refusals)):
        refusals.directive(opened)
    elif "alias" in context or "anchor" in context:
        _alias_or_anchor(opened, refusals)
    elif "tag" in context or "tag" in problem:
        refusals.property_of(opened if refusals.lines.text[opened : opened + 1] == "!" else at)
        if not refusals.problems:
            refusals.unreadable(before)
    elif "cannot start" in problem:
        _stray(at, refusals)
    elif "flow" in context and before is not None and before.end < at and not before.spans_lines:
        _bracket(at, opened, refusals, before)  # a comma is missing, rather than a quote
    elif _ends_in_quote(before, at, refusals):
        pass
    elif "mapping values are not allowed" in problem:
        _colon_in_text(at, refusals, before)
    elif "sequence entries are not allowed" in problem:
        _list_on_key_line(at, refusals)
    elif "expected ':'" in problem:
        _line_without_colon(opened, refusals)
    elif "flow" in context:
        _bracket(at, opened, refusals, before)
    elif "keys are not allowed" in problem or "node content" in problem:
        _stray(at, refusals)
    elif "block" in context:
        _misfit(at, opened, "collection" in context or "sequence" in context, refusals)
    else:
        _after_the_end(at, refusals)


def _starts_line(at: int, refusals: Refusals) -> bool:
    return refusals.lines.at(at)[1] == 1


def _quoted(problem: str, at: int, opened: int, refusals: Refusals) -> None:
    if "end of stream" in problem or "document" in problem:
        refusals.quote_open(opened)
        return
    start = refusals.lines.text.rfind("\\", opened, at + 1)
    start = at if start < 0 else start
    refusals.note(
        "S022",
        start,
        start + 2,
        "In double quotes a backslash changes the character after it, and this one cannot be changed.",
        "Write the backslash twice, or put the text in single quotes.",
    )


def _block_header(opened: int, refusals: Refusals) -> None:
    sign = refusals.lines.text[opened : opened + 1]
    refusals.note(
        "S031",
        opened,
        opened + len(refusals.lines.rest(opened)),
        f"The sign {sign} opens a block of text on the lines below, and something else follows it.",
        f"Write nothing after the {sign} and indent the lines below with spaces; put a text that starts with"
        f" {sign} in quotes.",
    )


def _alias_or_anchor(opened: int, refusals: Refusals) -> None:
    if refusals.lines.text[opened : opened + 1] == "*":
        rest = re.match(r"\*\S*", refusals.lines.rest(opened))
        refusals.alias(opened, opened + (rest.end() if rest else 1))
    else:
        refusals.property_of(opened)


def _stray(at: int, refusals: Refusals) -> None:
    if _starts_line(at, refusals) and refusals.lines.rest(at).startswith("..."):
        refusals.empty()
        return
    character = refusals.lines.text[at : at + 1]
    if not character.strip():
        _after_the_end(at, refusals)
        return
    refusals.note(
        "S026",
        at,
        None,
        f"The sign {character} cannot start a text without quotes.",
        "Put the whole text in quotes.",
    )


def _ends_in_quote(before: SeenScalar | None, at: int, refusals: Refusals) -> bool:
    """True when the complaint is about what follows a closing quote on its line, and has been noted."""
    if before is None or before.style not in ("'", '"'):
        return False
    if at < before.end or refusals.lines.at(at)[0] != refusals.lines.at(before.end)[0]:
        return False
    if not refusals.lines.rest(at).strip() or refusals.lines.text[before.end : at].strip():
        return False
    if before.spans_lines:
        refusals.quote_open(before.start, refusals.lines.at(before.start)[0] + 1)
        return True
    quote = before.style
    mend = (
        "Put the whole text in double quotes, or write the apostrophe twice: ''."
        if quote == "'"
        else 'Put one pair of quotes around the whole text; write a quote inside it as \\".'
    )
    refusals.note(
        "S021",
        at,
        at + len(refusals.lines.rest(at)),
        f"The text ended with the quote {quote} before this.",
        mend,
    )
    return True


def _colon_in_text(at: int, refusals: Refusals, before: SeenScalar | None) -> None:
    if before is not None and not before.style and before.spans_lines:
        return  # noted as a text that runs on; the colon is the same slip seen from the other end
    line, column = refusals.lines.at(at)
    start = refusals.lines.start(line)
    ahead = refusals.lines.line_text(line)[: column - 1]
    first = start + len(ahead) - len(ahead.lstrip())
    if refusals.lacks_space_after_dash(first, ahead.lstrip()):
        refusals.no_space_after_dash(first)
    elif before is not None and not before.style and _CURLY.match(refusals.text, before.start):
        refusals.note(
            "S023",
            at,
            None,
            f"The typographic quote {refusals.text[before.start]} quotes nothing here, so the colon makes the text "
            "before it look like a key.",
            'Put the whole text in straight quotes: "…".',
        )
    elif before is not None and refusals.lines.at(before.end)[0] == line:
        refusals.note(
            "S023",
            at,
            None,
            "The colon here makes the text before it look like a key.",
            "Put the whole text in quotes.",
        )
    else:
        refusals.note(
            "S028",
            first,
            at,
            "This key does not stand where a key can stand.",
            "Indent it like the keys it belongs with.",
        )


def _list_on_key_line(at: int, refusals: Refusals) -> None:
    refusals.note(
        "S030",
        at,
        None,
        "A list cannot start on the line of its key.",
        "Move the dash to the next line; put a text that starts with a dash in quotes.",
    )


def _line_without_colon(opened: int, refusals: Refusals) -> None:
    text = refusals.lines.rest(opened)
    if missing := KEY_WITHOUT_SPACE.match(text):
        refusals.no_space_after_colon(opened, missing)
    elif lost := _LOST.search(text):
        refusals.lost_behind_hash(opened + lost.start() + 1)
    else:
        refusals.note(
            "S029",
            opened,
            opened + len(text.rstrip()),
            "A key and a colon are expected here.",
            "Write key: value; or put the text above in quotes or below a | sign if this line belongs to it.",
        )


def _bracket(at: int, opened: int, refusals: Refusals, before: SeenScalar | None) -> None:
    text = refusals.lines.text
    bracket = text[opened : opened + 1]
    closing = {"[": "]", "{": "}"}.get(bracket, "]")
    if before is not None:
        refusals.withdraw("S017", before.start, before.end)
    if text[at:].strip() and refusals.lines.at(at)[0] == refusals.lines.at(opened)[0]:
        refusals.note(
            "S027",
            at,
            None,
            f"A comma or the closing {closing} is expected here.",
            f"Separate the parts with commas, close with {closing}, and put a text that has commas, colons,"
            " brackets or braces in quotes.",
        )
    else:
        refusals.note(
            "S027",
            opened,
            None,
            f"The {bracket} that opens here is not closed.",
            f"Close it with {closing}; put a text that starts with {bracket} in quotes.",
        )


def _misfit(at: int, opened: int, is_list: bool, refusals: Refusals) -> None:
    line, column = refusals.lines.at(opened)
    here, here_column = refusals.lines.at(at)
    text = refusals.lines.line_text(here)
    lead = len(text) - len(text.lstrip(" "))
    if here_column != lead + 1:
        _after_the_end(at, refusals)
        return
    if text.lstrip().startswith(":"):
        refusals.key_not_text(at, at, "")
        return
    neighbours = refusals.lines.place(refusals.file, opened)
    if is_list and column == here_column:
        refusals.note(
            "S028",
            at,
            at + len(text.strip()),
            f"A list starts on line {line}, and this line does not start with a dash.",
            "Start it with a dash and a space, or indent it like what it belongs with.",
            [neighbours],
        )
        return
    if not is_list and text.lstrip().startswith("- "):
        message = f"This dash starts an entry where the keys of line {line} go on."
        mend = (
            "Indent it like the other dashes of its list; where it starts one, write the list's key above it."
        )
    else:
        what = "list" if is_list else "group of keys"
        message = f"This line has {_spaces(lead)} before it and fits nowhere: the {what} of line {line} has"
        message += f" {_spaces(column - 1)}."
        mend = "Give lines that belong together the same number of spaces"
        mend += ", and each entry of the list its dash." if is_list else "."
    refusals.note(
        "S028",
        at,
        at + len(text.strip()),
        message,
        mend,
        [neighbours],
    )


def _spaces(count: int) -> str:
    return {0: "no spaces", 1: "1 space"}.get(count, f"{count} spaces")


def _after_the_end(at: int, refusals: Refusals) -> None:
    if refusals.any_on_line(refusals.lines.at(at)[0]):
        return  # an alias with text after it, for one: the cause has been noted
    refusals.note(
        "S034",
        at,
        at + len(refusals.lines.rest(at)),
        "From here on the file cannot be read.",
        "Look for a missing quote, bracket or colon on this line and the one above.",
    )
