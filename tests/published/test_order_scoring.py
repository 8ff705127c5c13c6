"""Order scoring against independent computations: brute force, topological sorts, and published counts.

Sources: Stanley, Enumerative Combinatorics, for Catalan and Euler numbers as counts of right orders (from
memory); OEIS A000108 (Catalan), A000111 (Euler up/down), A046873 (Boolean lattices).
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterable, Sequence

import networkx as nx
import pytest
from scipy.stats import kendalltau

from journeybook.marking.mark import mark
from journeybook.marking.precedence import Circle, broken_pairs, closure, fewest_moves

Edge = tuple[str, str]
# The example network of eight steps with twelve right orders.
EXAMPLE = [("0", "1"), ("1", "2"), ("0", "3"), ("3", "4"), ("2", "5"), ("4", "5"), ("5", "6"), ("5", "7")]
STEPS = [str(step) for step in range(8)]


def key_of(steps: Sequence[str], edges: Iterable[Edge]) -> dict[str, object]:
    before = [list(pair) for pair in closure(steps, edges)]
    return {"kind": "order", "steps": list(steps), "before": before, "critical": []}


def graph_of(steps: Iterable[str], edges: Iterable[Edge]) -> nx.DiGraph:
    graph = nx.DiGraph()
    graph.add_nodes_from(steps)
    graph.add_edges_from(edges)
    return graph


def right_orders(steps: Sequence[str], edges: Iterable[Edge]) -> list[list[str]]:
    return list(nx.all_topological_sorts(graph_of(steps, edges)))


def extensions(steps: Sequence[str], edges: Iterable[Edge]) -> int:
    """Count right orders by the closure alone: down-sets, each step added once all that precede it are in."""
    place = {step: at for at, step in enumerate(steps)}
    needs = [0] * len(steps)
    for first, then in closure(steps, edges):
        needs[place[then]] |= 1 << place[first]
    ways = [1] + [0] * ((1 << len(steps)) - 1)
    for chosen in range(1, 1 << len(steps)):
        for step in range(len(steps)):
            rest = chosen & ~(1 << step)
            if rest != chosen and needs[step] & ~rest == 0:
                ways[chosen] += ways[rest]
    return ways[-1]


def random_order(numbers: random.Random) -> tuple[list[str], list[Edge]]:
    steps = [f"s{at}" for at in range(numbers.randint(2, 6))]
    hidden = numbers.sample(steps, len(steps))
    chance = numbers.random()
    edges = [(a, b) for at, a in enumerate(hidden) for b in hidden[at + 1 :] if numbers.random() < chance]
    return steps, edges


def longest_common(one: Sequence[str], other: Sequence[str]) -> int:
    table = [[0] * (len(other) + 1) for _ in range(len(one) + 1)]
    for i, a in enumerate(one):
        for j, b in enumerate(other):
            table[i + 1][j + 1] = table[i][j] + 1 if a == b else max(table[i][j + 1], table[i + 1][j])
    return table[-1][-1]


def grid(rows: int, columns: int) -> tuple[list[str], list[Edge]]:
    names = [f"{row}.{column}" for row in range(rows) for column in range(columns)]
    down = [(f"{r}.{c}", f"{r + 1}.{c}") for r in range(rows - 1) for c in range(columns)]
    across = [(f"{r}.{c}", f"{r}.{c + 1}") for r in range(rows) for c in range(columns - 1)]
    return names, down + across


def zigzag(length: int) -> tuple[list[str], list[Edge]]:
    names = [f"z{at}" for at in range(length)]
    return names, [
        (names[at], names[at + 1]) if at % 2 == 0 else (names[at + 1], names[at]) for at in range(length - 1)
    ]


def boolean_lattice(size: int) -> tuple[list[str], list[Edge]]:
    names = [str(subset) for subset in range(1 << size)]
    return names, [
        (str(s), str(s | 1 << bit)) for s in range(1 << size) for bit in range(size) if not s >> bit & 1
    ]


@pytest.mark.parametrize(
    ("structure", "count"),
    [
        pytest.param(grid(2, 3), 5, id="2 x 3 grid: Catalan 5"),
        pytest.param(grid(2, 5), 42, id="2 x 5 grid: Catalan 42"),
        pytest.param(grid(2, 6), 132, id="2 x 6 grid: Catalan 132"),
        pytest.param(grid(3, 4), 462, id="3 x 4 grid: hook lengths 462"),
        pytest.param(zigzag(5), 16, id="zigzag of 5: Euler 16"),
        pytest.param(zigzag(8), 1385, id="zigzag of 8: Euler 1385"),
        pytest.param(zigzag(12), 2702765, id="zigzag of 12: Euler 2702765"),
        pytest.param(boolean_lattice(3), 48, id="Boolean lattice of 3: 48"),
        pytest.param((STEPS, EXAMPLE), 12, id="the example: 12 of 40320"),
    ],
)
def test_the_closure_leaves_as_many_right_orders_as_are_published(
    structure: tuple[list[str], list[Edge]], count: int
) -> None:
    assert extensions(*structure) == count


def test_the_boolean_lattice_of_four_has_1680384_right_orders() -> None:
    assert extensions(*boolean_lattice(4)) == 1680384


def test_the_closure_is_the_transitive_closure_of_networkx() -> None:
    numbers = random.Random(1950)
    for _ in range(500):
        steps, edges = random_order(numbers)
        assert set(closure(steps, edges)) == set(nx.transitive_closure_dag(graph_of(steps, edges)).edges)


def test_rules_that_go_round_in_a_circle_are_found_wherever_networkx_finds_them() -> None:
    numbers = random.Random(7)
    found = 0
    for _ in range(500):
        steps = [f"s{at}" for at in range(numbers.randint(2, 6))]
        edges = [(a, b) for a, b in itertools.permutations(steps, 2) if numbers.random() < 0.25]
        if nx.is_directed_acyclic_graph(graph_of(steps, edges)):
            closure(steps, edges)
            continue
        found += 1
        with pytest.raises(Circle) as raised:
            closure(steps, edges)
        around = raised.value.steps
        assert all(pair in edges for pair in zip(around, (*around[1:], around[0]), strict=True))
    assert found > 50


def test_the_worked_example_of_two_broken_pairs() -> None:
    key = key_of(STEPS, EXAMPLE)
    answer = list("01253467")
    broken = broken_pairs(key["before"], answer)
    assert len(key["before"]) == 23
    assert len(broken) == 2
    assert fewest_moves(broken) == 1
    assert mark(key, 0, answer).mark == round(1000 * 19 / 23)


def test_all_40320_orders_break_half_of_the_pairs_on_average() -> None:
    before = closure(STEPS, EXAMPLE)
    total = right = 0
    for answer in itertools.permutations(STEPS):
        broken = len(broken_pairs(before, answer))
        total += broken
        right += broken == 0
    assert total / 40320 == 11.5
    assert right == 12


def test_a_right_order_earns_everything_though_kendalls_tau_with_the_listed_one_is_below_1() -> None:
    answer = list("03142576")
    ranks = [answer.index(step) for step in STEPS]
    assert kendalltau(range(8), ranks).statistic == pytest.approx(0.7142857143, abs=1e-10)
    assert mark(key_of(STEPS, EXAMPLE), 0, answer).mark == 1000


def test_exactly_the_orders_that_networkx_lists_earn_everything() -> None:
    numbers = random.Random(12941)
    for _ in range(60):
        steps, edges = random_order(numbers)
        if not edges:
            continue
        key = key_of(steps, edges)
        full = {order for order in itertools.permutations(steps) if mark(key, 0, list(order)).mark == 1000}
        assert full == {tuple(order) for order in right_orders(steps, edges)}


def test_moves_are_what_is_left_beside_the_longest_common_run_with_the_nearest_right_order() -> None:
    numbers = random.Random(1910134)
    for _ in range(400):
        steps, edges = random_order(numbers)
        answer = numbers.sample(steps, len(steps))
        moves = fewest_moves(broken_pairs(closure(steps, edges), answer))
        longest = max(longest_common(answer, order) for order in right_orders(steps, edges))
        assert moves == len(steps) - longest


# Assembly of a generic belt-worn unit in thirteen steps; the project's own analysis of common practice (no
# published source): 1..7 in 40 orders, 8..10 in 6, all thirteen in 240; 336 where step 8 needs only 4 and 5.
def assembly(eight_needs: Sequence[int]) -> tuple[list[str], list[Edge]]:
    table = {
        1: [2, 3, 5, 6], 2: [4], 3: [4], 4: [7], 5: [7], 6: [7], 7: [9, 10], 8: [11], 9: [11], 10: [11],
        11: [12], 12: [13],
    }  # fmt: skip
    edges = [(f"n{first}", f"n{then}") for first, every in table.items() for then in every]
    edges += [(f"n{first}", "n8") for first in eight_needs]
    return [f"n{number}" for number in range(1, 14)], edges


def test_seven_steps_of_assembly_have_40_right_orders() -> None:
    steps, edges = assembly([7])
    first_seven = steps[:7]
    inner = [edge for edge in edges if edge[0] in first_seven and edge[1] in first_seven]
    assert extensions(first_seven, inner) == len(right_orders(first_seven, inner)) == 40


def test_thirteen_steps_of_assembly_have_240_right_orders() -> None:
    assert extensions(*assembly([7])) == len(right_orders(*assembly([7]))) == 240


def test_an_alarm_test_that_needs_less_gives_336_right_orders() -> None:
    assert extensions(*assembly([4, 5])) == len(right_orders(*assembly([4, 5]))) == 336
