"""The form of a seed as the text that stands in a record, for marking very many: the same form as ``draw.draw_form``.

Everything that does not depend on the seed is worked out once for a plan. Where a number might be rejected, or a plan
has what is not foreseen here, None is returned and ``draw_form`` decides.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from journeybook.marking.canonical import write
from journeybook.marking.draw import arranged
from journeybook.marking.lanes import first_numbers, numbers
from journeybook.marking.precedence import broken_pairs

_NEVER_REJECTED = 64
"""A number from here on is kept by every bound up to it: rejected is what lies below 2^32 mod bound, so below it."""
_MOST_OPTIONS = 64
_REMEMBERED = 5040
"""Orders of one question whose text is kept."""


class _Orders:
    """The orders of one question's options as text, by which draws led to them."""

    def __init__(self, shape: Mapping[str, Any], question: str) -> None:
        self.shape = shape
        self._options: list[str] = list(shape["options"])
        self._before: Sequence[Sequence[str]] = shape.get("before", ())
        self._question = write(question).decode()
        self.bounds = tuple(range(len(self._options), 1, -1)) if shape["shuffle"] else ()
        self.known: dict[int, str] = {}
        """Index of the draws -> text up to the variant; empty where the draw has to be repeated."""

    def text(self, index: int) -> str:
        """The text for an index that is not known yet."""
        order = list(self._options)
        drawn: list[int] = []
        for bound in reversed(self.bounds):
            index, one = divmod(index, bound)
            drawn.append(one)
        for last, other in zip(range(len(order) - 1, 0, -1), reversed(drawn), strict=False):
            order[last], order[other] = order[other], order[last]
        if self._before and self.bounds and not broken_pairs(self._before, order):
            return ""
        return self.written(order)

    def written(self, order: Sequence[str]) -> str:
        """The text of an order, up to the variant."""
        options = write([*order]).decode()
        return f'{{"options":{options},"q":{self._question},"variant":'


def _index(count: int) -> Callable[[Sequence[Sequence[int]], int], int]:
    """How the draws of one lane become one number; written out for the usual counts of options."""
    if count == 2:
        return lambda r, i: r[0][i] % 2
    if count == 3:
        return lambda r, i: r[0][i] % 3 * 2 + r[1][i] % 2
    if count == 4:
        return lambda r, i: (r[0][i] % 4 * 3 + r[1][i] % 3) * 2 + r[2][i] % 2
    if count == 5:
        return lambda r, i: ((r[0][i] % 5 * 4 + r[1][i] % 4) * 3 + r[2][i] % 3) * 2 + r[3][i] % 2
    if count == 6:
        return lambda r, i: (
            (((r[0][i] % 6 * 5 + r[1][i] % 5) * 4 + r[2][i] % 4) * 3 + r[3][i] % 3) * 2 + r[4][i] % 2
        )

    def many(r: Sequence[Sequence[int]], i: int) -> int:
        index = 0
        for step, bound in enumerate(range(count, 1, -1)):
            index = index * bound + r[step][i] % bound
        return index

    return many


class QuickForms:
    """Draws forms of one plan."""

    def __init__(self, plan: Mapping[str, Any]) -> None:
        """Work out what no seed changes."""
        self._groups: list[tuple[int, list[bytes]]] = []
        self._fixed: list[bytes] = []
        self.usable = True
        seen: set[str] = set()
        for count, ids in (
            *((1, gate["questions"]) for gate in plan["gates"]),
            *((cell["draw"], cell["questions"]) for cell in plan["cells"]),
        ):
            self.usable &= seen.isdisjoint(ids)
            seen.update(ids)
            if count >= len(ids):
                self._fixed += [each.encode() for each in ids]
            else:
                self._groups.append((count, [each.encode() for each in ids]))
        # Id; what is hashed after the seed for position, variant and options; variants; options to shuffle; orders.
        self._rows: dict[bytes, tuple[str, bytes, bytes, bytes, int, int, _Orders]] = {}
        for question in seen:
            shape, name = plan["questions"][question], question.encode()
            orders = _Orders(shape, question)
            shuffled = len(orders.bounds) + 1 if orders.bounds else 0
            self.usable &= shuffled <= _MOST_OPTIONS and shape["variants"] <= _NEVER_REJECTED
            self._rows[name] = (
                question, name + b"\nposition", name + b"\nvariant", name + b"\noptions",
                shape["variants"], shuffled, orders,
            )  # fmt: skip
        self._index = [_index(count) for count in range(_MOST_OPTIONS + 1)]

    def form(self, seed: str) -> tuple[str, list[tuple[str, int]]] | None:
        """The text between the brackets of ``form``, and each question with its variant; or None."""
        sha = hashlib.sha256
        line = seed.encode() + b"\n"
        drawn = list(self._fixed)
        for count, ids in self._groups:
            ranked = {sha(line + each).digest(): each for each in ids}
            drawn += [ranked[each] for each in sorted(ranked)[:count]]
        rows = [self._rows[each] for each in drawn]
        varied = [row for row in rows if row[4] > 1]
        firsts = first_numbers(
            [sha(line + row[1]).digest() for row in rows] + [sha(line + row[2]).digest() for row in varied]
        )
        if varied and min(firsts[len(rows) :]) < _NEVER_REJECTED:
            return None
        placed = sorted(zip(firsts, drawn, rows, strict=False))
        variants = {row[0]: number % row[4] for row, number in zip(varied, firsts[len(rows) :], strict=True)}
        shuffled = [row for _, _, row in placed if row[5]]
        if shuffled:
            rounds = numbers(
                [sha(line + row[3]).digest() for row in shuffled], max(row[5] for row in shuffled) - 1
            )
            if min(map(min, rounds)) < _NEVER_REJECTED:
                return None
        texts: list[str] = []
        form: list[tuple[str, int]] = []
        lane, index_of = 0, self._index
        for _, _, row in placed:
            question, orders = row[0], row[6]
            index = 0
            if row[5]:
                index = index_of[row[5]](rounds, lane)
                lane += 1
            text = orders.known.get(index)
            if text is None:
                text = orders.text(index)
                if len(orders.known) < _REMEMBERED:
                    orders.known[index] = text
            if not text:
                # Steps that came out in a right order: drawn again, one step after the other.
                text = orders.written(arranged(orders.shape, seed, question))
            variant = variants.get(question, 0)
            texts.append(f"{text}{variant}}}")
            form.append((question, variant))
        return ",".join(texts), form
