from __future__ import annotations

import networkx
from hypothesis import given
from hypothesis import strategies as st

from journeybook.content.checks.circles import find_circle

EDGES = st.dictionaries(
    st.sampled_from("abcdefg"), st.lists(st.sampled_from("abcdefg"), max_size=4), max_size=7
)


@given(EDGES)
def test_a_circle_is_found_where_there_is_one_and_only_there(after: dict[str, list[str]]) -> None:
    graph = networkx.DiGraph((one, other) for one, others in after.items() for other in others)
    circle = find_circle(after)
    assert bool(circle) == (not networkx.is_directed_acyclic_graph(graph))
    assert all(
        graph.has_edge(one, other) for one, other in zip(circle, [*circle[1:], *circle[:1]], strict=True)
    )


def test_a_long_chain_is_walked_without_recursion() -> None:
    chain = {f"s{at}": [f"s{at + 1}"] for at in range(5_000)}
    assert find_circle(chain) == []
    assert len(find_circle(chain | {"s5000": ["s0"]})) == 5_001
