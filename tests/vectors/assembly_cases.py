"""Cases of putting together: which step is refused, and by which rules."""

from __future__ import annotations

import random
from typing import Any

from case import Case, derived, hand

from journeybook.benches.orders import earlier

GUARD: dict[str, Any] = {
    "steps": ["isolate", "collar", "sleeve", "knob", "start"],
    "before": [
        ["isolate", "collar"],
        ["isolate", "sleeve"],
        ["isolate", "knob"],
        ["isolate", "start"],
        ["collar", "sleeve"],
        ["collar", "knob"],
        ["collar", "start"],
        ["sleeve", "start"],
        ["knob", "start"],
    ],
    "rules": [
        {"first": "collar", "then": ["sleeve", "knob"], "critical": False},
        {"first": "isolate", "then": ["collar", "sleeve"], "critical": True},
        {"first": "knob", "then": ["start"], "critical": False},
        {"first": "sleeve", "then": ["start"], "critical": True},
    ],
}


def _random_key(numbers: random.Random) -> dict[str, Any]:
    steps = [f"s{index}" for index in range(numbers.randint(2, 9))]
    hidden = numbers.sample(steps, len(steps))
    rules = [
        {
            "first": first,
            "then": numbers.sample(hidden[at + 1 :], numbers.randint(1, len(hidden) - at - 1)),
            "critical": numbers.random() < 0.4,
        }
        for at, first in enumerate(hidden[:-1])
        if numbers.random() < 0.7
    ]
    before = earlier(steps, [(rule["first"], then) for rule in rules for then in rule["then"]])
    return {
        "steps": steps,
        "before": [[first, then] for first in steps for then in steps if first in before[then]],
        "rules": rules,
    }


def assembling() -> list[Case]:
    """Steps of an assembly, in their turn and too early; what is refused, and why."""

    def case(name: str, done: list[str], step: str, waits: list[str], rules: list[int]) -> Case:
        given = {"key": GUARD, "done": done, "step": step}
        return hand(name, "refused", given, {"waits": waits, "rules": rules})

    cases = [
        case("the first step may come at once", [], "isolate", [], []),
        case("a step whose turn it is may come", ["isolate"], "collar", [], []),
        case("two that are free may come in either order", ["isolate", "collar", "knob"], "sleeve", [], []),
        case("too early by one", ["isolate"], "knob", ["collar"], [0]),
        case("the critical rule is named first", [], "sleeve", ["isolate", "collar"], [1, 0]),
        case(
            "the last step at once waits for all",
            [],
            "start",
            ["isolate", "collar", "sleeve", "knob"],
            [3, 2],
        ),
        case(
            "only the rules still broken are named", ["isolate", "collar", "sleeve"], "start", ["knob"], [2]
        ),
        case("what no rule of its own names is waited for too", [], "knob", ["isolate", "collar"], [0]),
    ]
    numbers = random.Random(13)
    for number in range(40):
        key = _random_key(numbers)
        done = numbers.sample(key["steps"], numbers.randint(0, len(key["steps"]) - 1))
        step = numbers.choice([each for each in key["steps"] if each not in done])
        cases.append(derived(f"random rules {number}", "refused", {"key": key, "done": done, "step": step}))
    return cases
