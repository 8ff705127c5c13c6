"""Exact arithmetic in number questions: an expression is parsed once and worked out over fractions.

Grammar: sums of products of factors; a factor is a number such as ``60`` or ``0.5``, a name, a reference
such as ``{kit.minimum-flow}``, a minus before a factor, brackets, or a call of min, max, round, ceil or
floor. ``round(x)`` and ``round(x, places)`` round half away from zero. Errors are values (``Flaw``), never
exceptions.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

MOST_CHARACTERS = 400
MOST_DEEP = 30
"""Brackets, calls and minus signs inside one another."""
MOST_BITS = 700
"""Size of a numerator or denominator: about 210 digits. No quantity of a trade needs a tenth of it."""
MOST_PLACES = 12


@dataclass(frozen=True, kw_only=True)
class Flaw:
    """Why an expression cannot be read or worked out."""

    column: int
    """Counted from 1, within the expression."""
    message: str
    """What is wrong, one sentence."""
    mend: str
    """What to do, one sentence that starts with a verb."""


Node = Callable[[Mapping[str, Fraction]], Fraction]
Step = tuple[str, str] | tuple[str, str, int]
"""One step of an expression in postfix order: ``("n", "95/100")``, ``("in", name)``, ``("op", "+ - * / or neg")``,
``("call", name, how many values)``. Nothing else, so that another language can work it out too."""


class _Raised(Exception):  # noqa: N818 - it carries a Flaw out of the recursion and never leaves this file
    def __init__(self, flaw: Flaw) -> None:
        super().__init__(flaw.message)
        self.flaw = flaw


@dataclass(frozen=True, kw_only=True)
class Expression:
    """An expression that has been read."""

    text: str
    names: tuple[str, ...]
    """Names it uses, each once, in order of appearance; references as ``kit.minimum-flow``."""
    is_plain: bool
    """True for a number or a reference alone, perhaps with a minus before it."""
    postfix: tuple[Step, ...]
    """The same expression as steps that each take their values from a stack and leave one there."""
    _work_out: Node

    def value(self, names: Mapping[str, Fraction]) -> Fraction | Flaw:
        """The exact value where every name has one."""
        try:
            return self._work_out(names)
        except _Raised as raised:
            return raised.flaw


@lru_cache(maxsize=2048)
def parse(text: str) -> Expression | Flaw:
    """Read an expression; a ``Flaw`` with the column where reading stopped when it cannot be read."""
    try:
        return _Parser(text).whole()
    except _Raised as raised:
        return raised.flaw


def round_half_away(value: Fraction, places: int = 0) -> Fraction:
    """``value`` to a number of decimal places (negative: tens, hundreds), a half going away from zero."""
    scale = Fraction(10) ** places
    scaled = abs(value) * scale
    whole = (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator)
    return Fraction(whole if value >= 0 else -whole) / scale


def fraction_text(value: Fraction) -> str:
    """``n`` or ``n/d``, in lowest terms: how data for scripts and keys hold a fraction."""
    return str(value.numerator) if value.denominator == 1 else f"{value.numerator}/{value.denominator}"


def decimal_text(value: Fraction, places: int = 12) -> str:
    """A fraction as people write it: exact where its decimals end within ``places``, else rounded to them."""
    rounded = round_half_away(value, places)
    sign = "-" if rounded < 0 else ""
    scaled = abs(rounded) * 10**places
    digits = str(scaled.numerator).rjust(places + 1, "0")
    whole, part = digits[: len(digits) - places], digits[len(digits) - places :].rstrip("0")
    return f"{sign}{whole}.{part}" if part else f"{sign}{whole}"


def _fail(column: int, message: str, mend: str) -> _Raised:
    return _Raised(Flaw(column=column, message=message, mend=mend))


def _capped(value: Fraction, column: int) -> Fraction:
    if value.numerator.bit_length() > MOST_BITS or value.denominator.bit_length() > MOST_BITS:
        raise _fail(
            column,
            "The number becomes far too large",
            "Check the expression; no real quantity has 200 digits.",
        )
    return value


_TOKEN = re.compile(
    r"\s*(?:(?P<number>[0-9]+(?:\.[0-9]+)?)|(?P<name>[a-z][a-z0-9_]*)"
    r"|\{(?P<ref>(?:kit|profile)\.[a-z0-9-]+)(?:\.number)?\}"
    r"|(?P<sign>[-+*/(),]))"
)
_SIGN_CURES = {
    "×": "Write `*` for times.",
    "·": "Write `*` for times.",
    "÷": "Write `/` for divided by.",
    ":": "Write `/` for divided by.",
    "−": "Write a plain `-` for minus.",
    "–": "Write a plain `-` for minus.",
    "^": "Write the product out, such as `d * d`.",
    "%": "Write `/ 100`.",
    "=": "Write only what stands on the right of the equals sign.",
    "[": "Use round brackets.",
    "{": "Write names without braces here; only `{kit.NAME}` and `{profile.NAME}` have them.",
}


class _Parser:
    def __init__(self, text: str) -> None:
        self.text = text
        self.names: dict[str, None] = {}
        self.at = 0
        self.depth = 0
        self.tokens: list[tuple[str, str, int]] = []
        self.postfix: list[Step] = []

    def whole(self) -> Expression:
        if len(self.text) > MOST_CHARACTERS:
            raise _fail(1, f"The expression has more than {MOST_CHARACTERS} characters", "Shorten it.")
        self._split()
        node = self._sum()
        kind, token, column = self._peek()
        if token == "," and re.fullmatch(r"[^,]*\d,\d[^,]*", self.text):
            raise _fail(
                column,
                "A comma stands in a number, where it could mean decimals or thousands",
                "Write a point before decimals, such as `1.5`, and nothing between thousands, such as `1500`.",
            )
        if kind != "end":
            raise self._unexpected()
        kinds = [one[0] for one in self.tokens[:-1]]
        bare = kinds[1:] if self.tokens[0][1] == "-" else kinds
        return Expression(
            text=self.text,
            names=tuple(self.names),
            is_plain=bare in (["number"], ["ref"]),
            postfix=tuple(self.postfix),
            _work_out=node,
        )

    def _split(self) -> None:
        at = 0
        end = len(self.text.rstrip())
        while at < end:
            found = _TOKEN.match(self.text, at)
            if found is None:
                column = at + len(self.text[at:]) - len(self.text[at:].lstrip())
                sign = self.text[column]
                cure = _SIGN_CURES.get(sign, "Use numbers with a point, names, + - * / and brackets.")
                raise _fail(column + 1, f"`{sign}` cannot stand in an expression", cure)
            kind = str(found.lastgroup)
            self.tokens.append((kind, found[kind], found.start(kind) + 1))
            at = found.end()
        self.tokens.append(("end", "", end + 1))

    def _peek(self) -> tuple[str, str, int]:
        return self.tokens[self.at]

    def _take(self) -> tuple[str, str, int]:
        token = self.tokens[self.at]
        self.at += 1
        return token

    def _sum(self) -> Node:
        left = self._product()
        while self._peek()[1] in ("+", "-") and self._peek()[0] == "sign":
            _, sign, column = self._take()
            left = _added(left, self._product(), sign, column)
            self.postfix.append(("op", sign))
        return left

    def _product(self) -> Node:
        left = self._factor()
        while self._peek()[1] in ("*", "/") and self._peek()[0] == "sign":
            _, sign, column = self._take()
            left = _multiplied(left, self._factor(), sign, column)
            self.postfix.append(("op", sign))
        return left

    def _factor(self) -> Node:
        kind, token, column = self._take()
        self.depth += 1
        if self.depth > MOST_DEEP:
            raise _fail(
                column, f"More than {MOST_DEEP} brackets stand inside one another", "Simplify the expression."
            )
        try:
            if kind == "number":
                self.postfix.append(("n", fraction_text(Fraction(token))))
                return _number(token, column)
            if kind == "ref" or (kind == "name" and self._peek()[1] != "("):
                return self._name(token, column)
            if kind == "name":
                return self._call(token, column)
            if token == "-":
                inner = self._factor()
                self.postfix.append(("op", "neg"))
                return lambda names: -inner(names)
            if token == "(":
                inner = self._sum()
                self._close(column)
                return inner
        finally:
            self.depth -= 1
        if kind == "end":
            raise _fail(column, "The expression ends too early", "Complete it with a number or a name.")
        raise _fail(
            column, f"A number or a name was expected before `{token}`", "Add it, or take the sign out."
        )

    def _close(self, opened: int) -> None:
        if self._peek()[1] == ")":
            self._take()
        elif self._peek()[0] == "end":
            raise _fail(opened, "A bracket is not closed", "Add `)` where it belongs.")
        else:
            raise self._unexpected()

    def _unexpected(self) -> _Raised:
        """What stands where a sum could have ended: mostly a sign is missing before it."""
        kind, token, column = self._peek()
        if kind == "sign":
            mend = (
                "Take it out." if token == ")" else "Take it out, or put what belongs before it in brackets."
            )
            return _fail(column, f"Nothing was expected before `{token}`", mend)
        if token in ("x", "X"):
            return _fail(column, f"`{token}` is a name here, and no sign for times", "Write `*` for times.")
        return _fail(
            column,
            f"Nothing was expected before `{token}`",
            "Put a sign such as `*` or `+` between the two.",
        )

    def _name(self, name: str, column: int) -> Node:
        self.names.setdefault(name)
        self.postfix.append(("in", name))

        def look_up(names: Mapping[str, Fraction]) -> Fraction:
            if name not in names:
                raise _fail(column, f"`{name}` has no value", "Give it a number.")
            return names[name]

        return look_up

    def _call(self, name: str, column: int) -> Node:
        if name not in _CALLS:
            raise _fail(
                column,
                f"`{name}` cannot be called",
                f"Use one of {', '.join(_CALLS)}, or put `*` before the bracket.",
            )
        self._take()
        arguments = [self._sum()]
        while self._peek()[1] == ",":
            self._take()
            arguments.append(self._sum())
        self._close(column)
        least, most, work = _CALLS[name]
        if not least <= len(arguments) <= most:
            wanted = f"{least}" if least == most else f"{least} to {most}"
            raise _fail(column, f"`{name}` has {len(arguments)} values in its brackets", f"Give it {wanted}.")
        self.postfix.append(("call", name, len(arguments)))
        return lambda names: work([one(names) for one in arguments], column)


def _number(token: str, column: int) -> Node:
    value = _capped(Fraction(token), column)
    return lambda _: value


def _added(left: Node, right: Node, sign: str, column: int) -> Node:
    if sign == "+":
        return lambda names: _capped(left(names) + right(names), column)
    return lambda names: _capped(left(names) - right(names), column)


def _multiplied(left: Node, right: Node, sign: str, column: int) -> Node:
    if sign == "*":
        return lambda names: _capped(left(names) * right(names), column)

    def divide(names: Mapping[str, Fraction]) -> Fraction:
        below = right(names)
        if below == 0:
            raise _fail(column, "It divides by zero", "Change the given numbers, or the expression.")
        return _capped(left(names) / below, column)

    return divide


def _round(values: list[Fraction], column: int) -> Fraction:
    places = values[1] if len(values) == 2 else Fraction(0)
    if places.denominator != 1 or abs(places) > MOST_PLACES:
        raise _fail(
            column,
            "`round` cannot round to that many places",
            f"Give a whole number of places, {MOST_PLACES} at most.",
        )
    return _capped(round_half_away(values[0], int(places)), column)


_CALLS: dict[str, tuple[int, int, Callable[[list[Fraction], int], Fraction]]] = {
    "min": (2, 20, lambda values, _: min(values)),
    "max": (2, 20, lambda values, _: max(values)),
    "round": (1, 2, _round),
    "ceil": (1, 1, lambda values, _: Fraction(-((-values[0].numerator) // values[0].denominator))),
    "floor": (1, 1, lambda values, _: Fraction(values[0].numerator // values[0].denominator)),
}
