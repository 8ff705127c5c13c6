"""Which step may come, how many orders are right, and one of them."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st

from journeybook.benches.orders import count_right_orders, earlier, layers, one_right_order, refused

STEPS = ["isolate", "collar", "sleeve", "knob", "start"]
PAIRS = [
    ("isolate", "collar"),
    ("collar", "sleeve"),
    ("collar", "knob"),
    ("sleeve", "start"),
    ("knob", "start"),
]
KEY = {
    "steps": STEPS,
    "before": [[a, b] for b in STEPS for a in STEPS if a in earlier(STEPS, PAIRS)[b]],
    "rules": [
        {"first": "collar", "then": ["sleeve", "knob"], "critical": False},
        {"first": "isolate", "then": ["collar", "sleeve"], "critical": True},
        {"first": "sleeve", "then": ["start"], "critical": True},
        {"first": "knob", "then": ["start"], "critical": False},
    ],
}


@st.composite
def partial_orders(draw: st.DrawFn, most: int = 6) -> tuple[list[str], list[tuple[str, str]]]:
    """Steps in some order, and rules that follow another order, so that they never run in a circle."""
    names = [f"s{index}" for index in range(draw(st.integers(1, most)))]
    hidden = draw(st.permutations(names))
    pairs = draw(st.lists(st.sampled_from(list(itertools.combinations(hidden, 2)) or [("", "")]), max_size=9))
    return draw(st.permutations(names)), [pair for pair in pairs if pair[0]]


def keeps(order: tuple[str, ...], pairs: list[tuple[str, str]]) -> bool:
    return all(order.index(first) < order.index(then) for first, then in pairs)


@given(partial_orders())
def test_the_count_is_that_of_all_orders_that_keep_the_rules(
    case: tuple[list[str], list[tuple[str, str]]],
) -> None:
    steps, pairs = case
    assert count_right_orders(steps, pairs) == sum(
        keeps(order, pairs) for order in itertools.permutations(steps)
    )


@given(partial_orders(12))
def test_the_order_that_is_shown_keeps_the_rules(case: tuple[list[str], list[tuple[str, str]]]) -> None:
    steps, pairs = case
    order = one_right_order(steps, pairs)
    assert sorted(order) == sorted(steps)
    assert keeps(tuple(order), pairs)


def test_the_order_that_is_shown_is_the_authors_own_where_that_is_right() -> None:
    assert one_right_order(STEPS, PAIRS) == STEPS


@given(partial_orders(12))
def test_a_step_lies_one_layer_above_the_highest_that_it_waits_for(
    case: tuple[list[str], list[tuple[str, str]]],
) -> None:
    steps, pairs = case
    found = layers(steps, pairs)
    for step, first in earlier(steps, pairs).items():
        assert found[step] == 1 + max((found[each] for each in first), default=-1)


def test_a_step_whose_turn_it_is_is_not_refused() -> None:
    assert refused(KEY, ["isolate"], "collar") == {"waits": [], "rules": []}


def test_a_step_that_comes_too_early_is_refused_with_what_it_waits_for_and_the_critical_rule_first() -> None:
    assert refused(KEY, [], "sleeve") == {"waits": ["isolate", "collar"], "rules": [1, 0]}


def test_what_follows_only_from_several_rules_is_waited_for_too() -> None:
    assert refused(KEY, ["knob", "sleeve"], "start")["waits"] == ["isolate", "collar"]


@given(partial_orders(8), st.randoms(use_true_random=False))
def test_whoever_does_only_what_is_not_refused_gets_to_the_end(
    case: tuple[list[str], list[tuple[str, str]]], chance: object
) -> None:
    steps, pairs = case
    before = earlier(steps, pairs)
    key = {"steps": steps, "before": [[a, b] for b in steps for a in before[b]], "rules": []}
    done: list[str] = []
    while len(done) < len(steps):
        free = [step for step in steps if step not in done and not refused(key, done, step)["waits"]]
        assert free
        done.append(chance.choice(free))  # type: ignore[attr-defined]
    assert keeps(tuple(done), pairs)


def test_twenty_steps_that_cross_each_other_are_counted_at_once() -> None:
    low, high = [f"a{index}" for index in range(10)], [f"b{index}" for index in range(10)]
    pairs = [(low[index], high[(index + off) % 10]) for index in range(10) for off in (0, 1)]
    assert count_right_orders(low + high, pairs) == 290888851128320
