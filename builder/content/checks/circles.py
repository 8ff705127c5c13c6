"""A circle among things of which one leads to another: rules of an order, moments of a drill."""

from __future__ import annotations

from collections.abc import Mapping, Sequence


def find_circle(after: Mapping[str, Sequence[str]]) -> list[str]:
    """The names along one circle, or nothing. Walks without recursion: there may be many."""
    done: set[str] = set()
    for start in after:
        path: list[str] = []
        on_path: set[str] = set()
        stack: list[tuple[str, int]] = [(start, 0)]
        while stack:
            name, at = stack.pop()
            if at == 0:
                if name in done:
                    continue
                if name in on_path:
                    return path[path.index(name) :]
                path.append(name)
                on_path.add(name)
            followers = after.get(name, ())
            if at < len(followers):
                stack.append((name, at + 1))
                stack.append((followers[at], 0))
            else:
                path.pop()
                on_path.discard(name)
                done.add(name)
    return []
