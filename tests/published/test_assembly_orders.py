"""How many right orders an assembly has, against counts from outside and a brute force by networkx.

The example is a belt-worn unit of thirteen steps as the trade puts it together (common practice, no source); its
counts 40, 6, 240 and 336 were worked out by hand from the rules: of the seven steps up to the first check one is the
first, one the last, and of five between them one follows two others, so 5!/3 = 40; three free ones make 3! = 6; both
together 40 * 6 = 240.
"""

from __future__ import annotations

import random

import networkx as nx
import pytest

from journeybook.benches.orders import count_right_orders

FOLLOWS = {
    1: [2, 3, 5, 6],
    2: [4],
    3: [4],
    4: [7],
    5: [7],
    6: [7],
    7: [8, 9, 10],
    8: [11],
    9: [11],
    10: [11],
    11: [12],
    12: [13],
}
PAIRS = [(str(first), str(then)) for first, follow in FOLLOWS.items() for then in follow]
THIRTEEN = [str(step) for step in range(1, 14)]


def by_brute_force(steps: list[str], pairs: list[tuple[str, str]]) -> int:
    graph = nx.DiGraph(pairs)
    graph.add_nodes_from(steps)
    return sum(1 for _ in nx.all_topological_sorts(graph))


def among(steps: list[str]) -> list[tuple[str, str]]:
    return [(first, then) for first, then in PAIRS if first in steps and then in steps]


# The alarm test needs only the closed cover and the battery.
EARLY_ALARM = [pair for pair in PAIRS if pair != ("7", "8")] + [("4", "8"), ("5", "8")]


@pytest.mark.parametrize(
    ("steps", "pairs", "orders"),
    [
        (THIRTEEN[:7], among(THIRTEEN[:7]), 40),
        (THIRTEEN[7:10], among(THIRTEEN[7:10]), 6),
        (THIRTEEN, PAIRS, 240),
        (THIRTEEN, EARLY_ALARM, 336),
        # With the alarm test before the last joint, as the demo course has it.
        (THIRTEEN, [*PAIRS, ("8", "10")], 120),
    ],
)
def test_the_counts_of_the_trades_example(
    steps: list[str], pairs: list[tuple[str, str]], orders: int
) -> None:
    assert count_right_orders(steps, pairs) == orders == by_brute_force(steps, pairs)


@pytest.mark.parametrize(("pairs", "orders"), [(1, 1), (2, 2), (3, 5), (4, 14), (5, 42), (6, 132), (7, 429)])
def test_two_rows_side_by_side_give_the_catalan_numbers(pairs: int, orders: int) -> None:
    """OEIS A000108."""
    names = [f"{row}.{column}" for row in range(2) for column in range(pairs)]
    along = [(f"{row}.{column}", f"{row}.{column + 1}") for row in range(2) for column in range(pairs - 1)]
    across = [(f"0.{column}", f"1.{column}") for column in range(pairs)]
    assert count_right_orders(names, along + across) == orders


@pytest.mark.parametrize(
    ("steps", "orders"), [(3, 2), (4, 5), (5, 16), (6, 61), (7, 272), (8, 1385), (12, 2702765)]
)
def test_a_zigzag_gives_the_euler_numbers(steps: int, orders: int) -> None:
    """OEIS A000111."""
    names = [str(step) for step in range(steps)]
    pairs = [
        (str(step), str(step + 1)) if step % 2 == 0 else (str(step + 1), str(step))
        for step in range(steps - 1)
    ]
    assert count_right_orders(names, pairs) == orders


def test_random_rules_give_the_count_of_networkx() -> None:
    numbers = random.Random(20261125)
    for _ in range(300):
        steps = [f"s{index}" for index in range(numbers.randint(1, 7))]
        hidden = numbers.sample(steps, len(steps))
        chance = numbers.random()
        pairs = [(a, b) for at, a in enumerate(hidden) for b in hidden[at + 1 :] if numbers.random() < chance]
        assert count_right_orders(steps, pairs) == by_brute_force(steps, pairs)
