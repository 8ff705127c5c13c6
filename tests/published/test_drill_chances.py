"""Chances of somebody who guesses his way through a drill, against counting every way.

The rule (a moment's chance is the mean of the chances where its deeds lead) is elementary: total probability over a
graph without a circle. It is checked against every path that networkx finds, each weighed by the product of one over
the number of deeds at its moments, and on a test of three moments whose chance of full marks is 1/3.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

import networkx as nx
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from journeybook.marking.drill_chances import chances
from journeybook.marking.mark import mark

THREE_MOMENTS: dict[str, Any] = {
    "kind": "drill",
    "start": "one",
    "moments": {
        "one": {
            "on": {"to": "two", "penalty": 0},
            "out": {"to": "out", "penalty": 0},
            "hurt": {"critical": True},
        },
        "two": {"well": {"to": "good", "penalty": 0}, "well-too": {"to": "good", "penalty": 0}},
    },
    "ends": {"good": 1000, "out": 400},
    "deeds": ["on", "out", "hurt", "well", "well-too"],
}


def test_the_three_moments_are_gone_through_rightly_every_third_time() -> None:
    found = chances(THREE_MOMENTS)
    assert found.full == Fraction(1, 3)
    assert found.critical == Fraction(1, 3)
    assert found.mean == Fraction(1000 + 400, 3)


@st.composite
def drills(draw: DrawFn) -> dict[str, Any]:
    """Up to six moments in a row, each leading only to later ones or to one of two ends."""
    count = draw(st.integers(1, 6))
    ends = {"good": 1000, "poor": draw(st.integers(0, 1000))}
    moments: dict[str, Any] = {}
    for at in range(count):
        later = [f"m{other}" for other in range(at + 1, count)] + list(ends)
        moments[f"m{at}"] = {
            f"d{at}-{deed}": {"critical": True}
            if draw(st.integers(0, 3)) == 0
            else {"to": draw(st.sampled_from(later)), "penalty": draw(st.sampled_from([0, 0, 300, 800]))}
            for deed in range(draw(st.integers(2, 4)))
        }
    every = [deed for possible in moments.values() for deed in possible]
    return {"kind": "drill", "start": "m0", "moments": moments, "ends": ends, "deeds": every}


def every_way(key: dict[str, Any]) -> list[tuple[list[str], Fraction]]:
    """Each way through, and how often somebody who guesses goes it. Edges of the graph are deeds."""
    graph = nx.MultiDiGraph()
    for moment, deeds in key["moments"].items():
        for deed, done in deeds.items():
            graph.add_edge(moment, done.get("to", "critical"), key=deed)
    targets = [name for name in (*key["ends"], "critical") if name in graph]
    return [
        (
            [deed for _, _, deed in path],
            math.prod((Fraction(1, len(key["moments"][moment])) for moment, _, _ in path), start=Fraction(1)),
        )
        for path in nx.all_simple_edge_paths(graph, key["start"], targets)
    ]


@given(drills())
def test_chances_are_those_of_every_way_gone_by_itself(key: dict[str, Any]) -> None:
    ways = [(mark(key, 0, deeds), chance) for deeds, chance in every_way(key)]
    found = chances(key)
    assert sum(chance for _, chance in ways) == 1
    assert found.full == sum(chance for marked, chance in ways if marked.mark == 1000)
    assert found.critical == sum(chance for marked, chance in ways if marked.remarks["critical"])
    assert found.mean == sum(marked.mark * chance for marked, chance in ways)
