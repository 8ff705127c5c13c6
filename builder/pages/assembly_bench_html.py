"""A bench of kind ``assembly`` on a page: the parts drawn apart, what is to be done, the rules, one right order."""

from __future__ import annotations

import re
from dataclasses import dataclass

from markupsafe import Markup

from journeybook.benches.orders import count_right_orders, earlier, one_right_order
from journeybook.content.exploded_parts import assembly_of
from journeybook.content.model import AssemblyBench, BenchPart
from journeybook.drawing.exploded.draw import Exploded, draw_exploded
from journeybook.pages.bench_desk import BenchDesk, BenchOnPage
from journeybook.pages.engine import render
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.pages.words_catalogue import to_translate as _

_PREFIX = "exploded"
_NAMED = re.compile(rf'<g id="{_PREFIX}-(part|label|way|tick)-([a-z0-9-]+)">')

_GOES_ON = {
    "above": _("%(part)s goes on %(other)s from above."),
    "below": _("%(part)s goes on %(other)s from below."),
    "left": _("%(part)s goes on %(other)s from the left."),
    "right": _("%(part)s goes on %(other)s from the right."),
}


@dataclass(frozen=True, kw_only=True)
class _ShownRule:
    """A rule in words."""

    first: str
    then: tuple[str, ...]
    critical: bool
    reason: Markup


def assembly_bench(desk: BenchDesk, bench: AssemblyBench) -> BenchOnPage:
    """Everything as it is read with scripts off; the data let a script refuse what comes too early."""
    exploded = draw_exploded(assembly_of(bench), _PREFIX)
    assert exploded is not None, "the loader refuses what does not fit on a sheet"
    said = {part.id: part.said for part in bench.parts}
    order = one_right_order([step.id for step in bench.steps], bench.pairs)
    body = render(
        desk.language,
        "assembly-bench.html",
        title=desk.wording.plain(bench.title),
        drawing=_drawing(exploded),
        words=_in_words(desk, bench),
        steps=_lettered(bench),
        rules=[
            _ShownRule(
                first=said[rule.first],
                then=tuple(said[then] for then in rule.then),
                critical=rule.critical,
                reason=Markup(desk.wording.inline(rule.reason)),
            )
            for rule in bench.rules
        ],
        order=[said[step] for step in order],
        orders=_grouped(count_right_orders([step.id for step in bench.steps], bench.pairs)),
    )
    return BenchOnPage(
        body=Markup(body),
        data={
            "key": assembly_key(bench),
            "moves": {part: list(move) for part, move in exploded.moves.items()},
            "ways": {part: list(carried) for part, carried in exploded.ways.items()},
        },
    )


def _grouped(number: int) -> str:
    """In groups of three digits from five digits on, apart by a narrow space (ISO 80000-1, 7.3.1, from memory)."""
    return f"{number:,}".replace(",", "\N{NARROW NO-BREAK SPACE}") if number > 9999 else str(number)


def assembly_key(bench: AssemblyBench) -> dict[str, object]:
    """What ``benches.orders.refused`` and its twin look at."""
    steps = [step.id for step in bench.steps]
    before = earlier(steps, bench.pairs)
    return {
        "steps": steps,
        "before": [[first, then] for first in steps for then in steps if first in before[then]],
        "rules": [
            {"first": rule.first, "then": list(rule.then), "critical": rule.critical} for rule in bench.rules
        ],
    }


def _drawing(exploded: Exploded) -> Markup:
    """The drawing without ids, since a page may show one bench twice."""
    return Markup(_NAMED.sub(r'<g data-\1="\2">', exploded.svg))


def _lettered(bench: AssemblyBench) -> list[tuple[str, BenchPart]]:
    """The steps with their letters, by letter."""
    letters = assembly_of(bench).letters
    return sorted(((letters[step.id], step) for step in bench.steps), key=lambda each: each[0])


def _in_words(desk: BenchDesk, bench: AssemblyBench) -> list[str]:
    """What the drawing shows: what goes where, what is done besides, what comes before what."""
    say = load_catalogue(desk.language)[0].gettext
    names = {part.id: part.name for part in bench.parts}
    said = {part.id: part.said for part in bench.parts}
    told = [say("%(part)s stands there from the beginning.") % {"part": bench.bases[0].name}]
    told += [
        say(_GOES_ON[part.side]) % {"part": part.name, "other": names[part.joins]}
        for part in bench.parts
        if part.joins
    ]
    deeds = [step.said for step in bench.steps if step.is_deed]
    if deeds:
        told.append(say("Done besides: %(deeds)s.") % {"deeds": "; ".join(deeds)})
    told += [
        say("%(first)s comes before: %(then)s.")
        % {"first": said[rule.first], "then": "; ".join(said[then] for then in rule.then)}
        for rule in bench.rules
    ]
    return told
