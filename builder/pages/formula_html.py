"""A formula as people read it: × and ÷ for the signs, words for what is rounded, letters for the lines.

Written from its steps, so that what stands on the page is what is worked out, and with no brackets but those it needs.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import NamedTuple

from markupsafe import Markup, escape

from journeybook.content.arithmetic import Step, decimal_text
from journeybook.pages.words_catalogue import to_translate as _

MINUS = "\N{MINUS SIGN}"
_SIGNS = {
    "+": "+",
    "-": MINUS,
    "*": "\N{MULTIPLICATION SIGN}",
    "/": "\N{DIVISION SIGN}",
}
_TIGHT = {"+": 1, "-": 1, "*": 2, "/": 2}
"""How tightly a sign binds; what binds less than its surroundings stands in brackets."""
_ALONE = 3
_CALLS = {
    "min": _("the least of"),
    "max": _("the most of"),
    "ceil": _("rounded up"),
    "floor": _("rounded down"),
    "round": _("rounded"),
}


class _Part(NamedTuple):
    html: Markup
    tight: int


def formula_html(
    steps: Sequence[Step], name_html: Callable[[str], Markup], say: Callable[[str], str]
) -> Markup:
    """The formula; ``name_html`` writes a name and ``say`` translates the words of the calls."""
    stack: list[_Part] = []
    for step in steps:
        if step[0] == "n":
            stack.append(_Part(escape(number_words(Fraction(step[1]))), _ALONE))
        elif step[0] == "in":
            stack.append(_Part(name_html(step[1]), _ALONE))
        elif step[0] == "op":
            stack.append(_joined(stack, step[1]))
        else:
            assert len(step) == 3
            stack.append(_called(stack, step[1], step[2], say))
    return stack[-1].html


def number_words(value: Fraction) -> str:
    """A number of a formula, with a proper minus."""
    return decimal_text(value).replace("-", MINUS)


def _joined(stack: list[_Part], sign: str) -> _Part:
    right = stack.pop()
    if sign == "neg":
        return _Part(Markup("{}{}").format(MINUS, _bracketed(right, _ALONE)), 1)
    left = stack.pop()
    tight = _TIGHT[sign]
    # What is taken away or divided by keeps its own brackets: a − (b − c), a ÷ (b × c).
    needed = tight + 1 if sign in "-/" else tight
    html = Markup("{} {} {}").format(_bracketed(left, tight), _SIGNS[sign], _bracketed(right, needed))
    return _Part(html, tight)


def _bracketed(part: _Part, needed: int) -> Markup:
    return part.html if part.tight >= needed else Markup("({})").format(part.html)


def _called(stack: list[_Part], name: str, count: int, say: Callable[[str], str]) -> _Part:
    parts = stack[-count:]
    del stack[-count:]
    # A semicolon, because a comma may stand in a number.
    inside = Markup("; ").join(part.html for part in parts)
    return _Part(
        Markup('<span class="formula-call">{}</span>&nbsp;({})').format(say(_CALLS[name]), inside), _ALONE
    )
