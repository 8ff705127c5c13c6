"""Python and JavaScript give the same marks, remarks, forms, bytes and fingerprints for whatever comes.

One node process lives through the whole file and answers a line for a line; see tests/js/answer.mjs.
"""

from __future__ import annotations

import importlib.util
import json
import subprocess
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from journeybook.content.arithmetic import Expression, Flaw, parse
from journeybook.content.postfix import Stopped, work_out_steps
from journeybook.marking.precedence import closure

TESTS = Path(__file__).parents[1]
_spec = importlib.util.spec_from_file_location("operations", TESTS / "vectors" / "operations.py")
assert _spec is not None
assert _spec.loader is not None
_module = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(_module)
OPERATIONS = _module.OPERATIONS

EVERY_CASE = [
    pytest.param(200, id="200"),
    pytest.param(20_000, id="20000", marks=pytest.mark.long),
]


class Twin:
    """The scripts, asked over a pipe."""

    def __init__(self) -> None:
        self.process = subprocess.Popen(
            ["node", str(TESTS / "js" / "answer.mjs")],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            encoding="utf-8",
        )

    def ask(self, operation: str, facts: Any) -> Any:
        assert self.process.stdin is not None
        assert self.process.stdout is not None
        self.process.stdin.write(json.dumps({"do": operation, "given": facts}) + "\n")
        self.process.stdin.flush()
        reply = json.loads(self.process.stdout.readline())
        assert "value" in reply, reply
        return reply["value"]

    def close(self) -> None:
        assert self.process.stdin is not None
        assert self.process.stdout is not None
        self.process.stdin.close()
        self.process.wait(timeout=10)
        self.process.stdout.close()


@pytest.fixture(scope="module")
def twin() -> Iterator[Twin]:
    started = Twin()
    yield started
    started.close()


def agree(twin: Twin, operation: str, facts: Any) -> Any:
    """Ask both, and return what they agree on."""
    mine = OPERATIONS[operation](facts)
    assert mine == twin.ask(operation, facts)
    return mine


def many(strategy: SearchStrategy[Any], cases: int, check: Any) -> None:
    """Run ``check`` over ``cases`` examples of a strategy."""

    @settings(max_examples=cases, deadline=None, suppress_health_check=list(HealthCheck))
    @given(strategy)
    def run(value: Any) -> None:
        check(value)

    run()


# Ids that objects of JavaScript know without being told, and ids that sort in unlike ways.
ids = st.sampled_from(["constructor", "valueof", "a", "b", "c", "a-1", "a-10", "a-2", "z9"]) | st.from_regex(
    r"[a-z][a-z0-9]{0,3}(-[a-z0-9]{1,2})?", fullmatch=True
)
seeds = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)


def id_lists(least: int, most: int) -> SearchStrategy[list[str]]:
    return st.lists(ids, min_size=least, max_size=most, unique=True)


ratios = st.fractions(min_value=-1000, max_value=1000, max_denominator=1000)


def ratio_text(value: Any) -> str:
    return f"{value.numerator}/{value.denominator}" if value.denominator != 1 else str(value.numerator)


@st.composite
def intervals(draw: DrawFn) -> dict[str, Any]:
    low, high = sorted((draw(ratios), draw(ratios)))
    return {"low": ratio_text(low), "high": ratio_text(high)}


@st.composite
def order_rules(draw: DrawFn, steps: list[str]) -> list[tuple[str, str]]:
    forward = [(a, b) for at, a in enumerate(steps) for b in steps[at + 1 :]]
    return draw(st.lists(st.sampled_from(forward), min_size=1, max_size=8, unique=True))


@st.composite
def drill_keys(draw: DrawFn) -> dict[str, Any]:
    """Moments in a row, each leading only to later ones; the last is an end, and others may be."""
    names = draw(id_lists(2, 6))
    deeds = iter(draw(id_lists(12, 20)))
    moments: dict[str, Any] = {}
    ends = {names[-1]: draw(st.integers(0, 1000))}
    for at, name in enumerate(names[:-1]):
        if at > 0 and draw(st.integers(0, 4)) == 0:
            ends[name] = draw(st.integers(0, 1000))
            continue
        moments[name] = {
            next(deeds): {"critical": True}
            if draw(st.integers(0, 3)) == 0
            else {"to": draw(st.sampled_from(names[at + 1 :])), "penalty": draw(st.integers(0, 1000))}
            for _ in range(2)
        }
    every = [deed for possible in moments.values() for deed in possible]
    return {"kind": "drill", "start": names[0], "moments": moments, "ends": ends, "deeds": every}


@st.composite
def drill_ways(draw: DrawFn, key: dict[str, Any]) -> list[str]:
    """Mostly a way that can be gone; sometimes it stops too soon, or has a deed too many."""
    way: list[str] = []
    here = key["start"]
    while here in key["moments"] and draw(st.integers(0, 9)):
        deed = draw(st.sampled_from(sorted(key["moments"][here])))
        way.append(deed)
        here = key["moments"][here][deed].get("to", "")
    return way + draw(st.lists(st.sampled_from(key["deeds"]) | ids, max_size=1)) * draw(st.integers(0, 1))


@st.composite
def keys(draw: DrawFn) -> dict[str, Any]:
    kind = draw(st.sampled_from(["choice", "choices", "order", "match", "number", "drill", "spot", "triage"]))
    if kind == "choice":
        options = draw(id_lists(2, 6))
        return {"kind": kind, "options": options, "right": draw(st.sampled_from(options))}
    if kind == "choices":
        options = draw(id_lists(2, 7))
        number = draw(st.integers(1, len(options) - 1))
        right = sorted(draw(st.permutations(options))[:number], key=options.index)
        return {"kind": kind, "options": options, "right": right, "whole": draw(st.booleans())}
    if kind == "order":
        right_order = draw(id_lists(2, 8))
        stated = draw(order_rules(right_order))
        steps = draw(st.permutations(right_order))
        critical = draw(st.lists(st.sampled_from(stated), max_size=2, unique=True))
        before = [list(pair) for pair in closure(steps, stated)]
        return {"kind": kind, "steps": steps, "before": before, "critical": [list(pair) for pair in critical]}
    if kind == "match":
        items = draw(id_lists(1, 6))
        answers = draw(id_lists(len(items), len(items) + 3))
        partners = draw(st.permutations(answers))
        return {
            "kind": kind,
            "items": items,
            "answers": answers,
            "pairs": dict(zip(items, partners, strict=False)),
        }
    if kind == "drill":
        return draw(drill_keys())
    if kind == "spot":
        spots = draw(id_lists(2, 6))
        return {"kind": kind, "spots": spots, "right": draw(st.sampled_from(spots))}
    if kind == "triage":
        units, places = draw(id_lists(2, 7)), draw(id_lists(2, 4))
        return {
            "kind": kind,
            "places": places,
            "units": units,
            "right": {unit: draw(st.sampled_from(places)) for unit in units},
            "dangerous": [unit for unit in units if draw(st.integers(0, 3)) == 0],
            "whole": draw(st.booleans()),
        }
    units = draw(
        st.dictionaries(ids, st.fractions(min_value="1/1000", max_value=1000).map(ratio_text), max_size=3)
    )
    unit = draw(st.sampled_from(["", *units]))
    variants = draw(st.lists(intervals(), min_size=1, max_size=3))
    if draw(st.booleans()):
        variants = [each | {"slips": draw(st.lists(intervals(), max_size=2))} for each in variants]
    return {
        "kind": kind,
        "unit": unit,
        "unit-needed": draw(st.booleans()),
        "units": units,
        "variants": variants,
    }


typed_texts = st.one_of(
    st.from_regex(r"[ \u00a0]?[+\-\u2212]?[0-9]{0,17}([.,][0-9]{0,6})?[ \u202f]?", fullmatch=True),
    st.decimals(min_value=-1000, max_value=1000, places=2).map(str),
    st.text(
        st.sampled_from(
            "0123456789.,+-\u2212 \u00a0\u2009\u202f\u2007\u200a\t\n\r\ufeff\u0085\u001ceEx'٣１½"
        ),
        max_size=8,
    ),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=6),
)
# Halves of surrogate pairs survive JSON's escapes, so even they may come as an answer.
wild_texts = st.text(max_size=6) | ids
wild = st.recursive(
    st.none() | st.booleans() | st.integers(-5, 5) | wild_texts,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(wild_texts, inner, max_size=3),
    max_leaves=8,
)


@st.composite
def answers_to(draw: DrawFn, key: dict[str, Any]) -> Any:
    if draw(st.integers(0, 4)) == 0:
        return draw(wild)
    match key["kind"]:
        case "choice":
            return draw(st.sampled_from(key["options"]) | ids)
        case "choices":
            return draw(st.lists(st.sampled_from(key["options"]), max_size=len(key["options"])))
        case "order":
            return draw(st.permutations(key["steps"]))
        case "match":
            return draw(st.dictionaries(st.sampled_from(key["items"]), st.sampled_from(key["answers"])))
        case "drill":
            return draw(drill_ways(key))
        case "spot":
            return draw(st.sampled_from(key["spots"]) | ids)
        case "triage":
            return draw(st.dictionaries(st.sampled_from(key["units"]), st.sampled_from(key["places"])))
    unit = draw(st.sampled_from(["", *key["units"]]) | ids)
    return {"value": draw(typed_texts), "unit": unit}


@st.composite
def marked_answers(draw: DrawFn) -> dict[str, Any]:
    key = draw(keys())
    variant = draw(st.integers(0, len(key.get("variants", [1])) - 1))
    return {"key": key, "variant": variant, "answer": draw(answers_to(key))}


@st.composite
def plans(draw: DrawFn) -> dict[str, Any]:
    every = draw(id_lists(1, 14))
    shapes: dict[str, Any] = {}
    for id_ in every:
        key = draw(keys())
        # The units of a number are no list of things to arrange.
        options = (
            []
            if key["kind"] == "number"
            else next(
                (
                    key[name]
                    for name in ("options", "steps", "answers", "deeds", "spots", "units")
                    if name in key
                ),
                [],
            )
        )
        shapes[id_] = {
            "kind": key["kind"],
            "options": options,
            "shuffle": bool(options) and (key["kind"] in ("order", "match") or draw(st.booleans())),
            "variants": len(key.get("variants", [1])),
        }
        if key["kind"] == "order":
            shapes[id_]["before"] = key["before"]
    gates: list[Any] = []
    cells: list[Any] = []
    at = 0
    while at < len(every):
        group = every[at : at + draw(st.integers(1, 5))]
        at += len(group)
        if draw(st.booleans()):
            gates.append({"fact": f"fact-{at}", "questions": group})
        else:
            number = draw(st.integers(1, len(group)))
            cells.append({"outcome": f"o-{at % 2}", "level": "apply", "draw": number, "questions": group})
    return {"form-algorithm": 1, "gates": gates, "cells": cells, "questions": shapes}


@st.composite
def drawings(draw: DrawFn) -> dict[str, Any]:
    plan = draw(plans())
    avoid = draw(st.lists(st.sampled_from(list(plan["questions"])) | ids, max_size=6, unique=True))
    return {"plan": plan, "seed": draw(seeds), "avoid": avoid}


@st.composite
def whole_checks(draw: DrawFn) -> dict[str, Any]:
    questions = draw(id_lists(1, 6))
    of_each = {id_: draw(keys()) for id_ in questions}
    form = [
        {"q": id_, "variant": draw(st.integers(0, len(key.get("variants", [1])) - 1)), "options": []}
        for id_, key in of_each.items()
    ]
    gated = draw(st.lists(st.sampled_from(questions), max_size=3, unique=True))
    answers = {id_: draw(answers_to(key)) for id_, key in of_each.items() if draw(st.integers(0, 3))}
    return {
        "plan": {
            "form-algorithm": 1,
            "gates": [{"fact": f"fact-{id_}", "questions": [id_, "other"]} for id_ in gated],
            "cells": [],
            "questions": {},
        },
        "percent": draw(st.integers(1, 100)),
        "outcomes": {id_: draw(st.sampled_from(["constructor", "o-1", "o-2"])) for id_ in questions},
        "keys": of_each,
        "form": form,
        "answers": answers,
    }


json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**54), 2**54)
    | st.floats(-10, 10).filter(lambda x: x != int(x))
    | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text(max_size=4), inner, max_size=5),
    max_leaves=20,
)
good_text = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)


@st.composite
def almost_canonical(draw: DrawFn) -> str:
    """Canonical text, perhaps with one character changed, or written in another form."""
    value = draw(json_values)
    text = draw(
        st.sampled_from(
            [
                json.dumps(value, ensure_ascii=False, separators=(",", ":"), sort_keys=True),
                json.dumps(value, separators=(",", ":")),
                json.dumps(value, ensure_ascii=False),
            ]
        )
    )
    if draw(st.booleans()) and text:
        at = draw(st.integers(0, len(text) - 1))
        put = draw(st.sampled_from(["", text[at] * 2, " ", "0", '"', ",", "\\", ".0", "e1", "\u2028"]))
        text = text[:at] + put + text[at + 1 :]
    return text.encode("utf-8", "replace").decode("utf-8")


@st.composite
def attempt_facts(draw: DrawFn) -> dict[str, Any]:
    drawing = draw(drawings())
    form = OPERATIONS["form"](drawing)
    return {
        "course": draw(ids),
        "version": "1.0",
        "digest": "0" * 64,
        "profile": "us",
        "language": "en",
        "seed": drawing["seed"],
        "avoid": drawing["avoid"],
        "form": form,
        "answers": {each["q"]: draw(st.none() | ids | st.lists(ids, max_size=3)) for each in form},
        "shown": [each["q"] for each in form],
        "started": "2026-11-24T09:00:00Z",
        "ended": "2026-11-24T09:30:00Z",
        # The page puts names into composed form; Python reads what the page wrote.
        "card": {"id": "c", "name": draw(st.sampled_from(["Åsa", "R. Adeyemi-Holt", "李", '"\\/']))}
        | {"workplace": ""},
    }


_leaves = st.sampled_from(
    ["x", "y", "0", "1", "2", "2.5", "0.06", "1000", "28.316846592", "99999999999999999999"]
)


def _grown(inner: SearchStrategy[str]) -> SearchStrategy[str]:
    two = st.tuples(inner, st.sampled_from(["+", "-", "*", "/"]), inner).map(
        lambda parts: f"({parts[0]} {parts[1]} {parts[2]})"
    )
    several = st.tuples(st.sampled_from(["min", "max"]), st.lists(inner, min_size=2, max_size=4)).map(
        lambda parts: f"{parts[0]}({', '.join(parts[1])})"
    )
    one = st.tuples(st.sampled_from(["ceil", "floor", "round", "-"]), inner).map(
        lambda parts: f"{parts[0]}({parts[1]})"
    )
    placed = st.tuples(inner, st.sampled_from(["-2", "0", "3", "12", "13", "y"])).map(
        lambda parts: f"round({parts[0]}, {parts[1]})"
    )
    return two | several | one | placed


formulas = st.recursive(_leaves, _grown, max_leaves=24).filter(
    lambda text: isinstance(parse(text), Expression)
)


@st.composite
def calculations(draw: DrawFn) -> dict[str, Any]:
    texts = [draw(formulas), draw(formulas)]
    programs = []
    for name, text in zip(["a", "b"], texts, strict=True):
        expression = parse(text)
        assert isinstance(expression, Expression)
        programs.append([name, [list(step) for step in expression.postfix]])
    # The second formula uses the first.
    programs[1][1] += [["in", "a"], ["op", draw(st.sampled_from(["+", "*", "/"]))]]
    inputs = {name: ratio_text(draw(ratios)) for name in ("x", "y")}
    return {"programs": programs, "inputs": inputs, "places": draw(st.integers(0, 6)), "text": texts[0]}


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_calculation_comes_to_the_same(twin: Twin, cases: int) -> None:
    many(calculations(), cases, lambda facts: agree(twin, "calculate", facts))


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_steps_give_what_the_expression_gives(cases: int) -> None:
    def check(facts: Any) -> None:
        expression = parse(facts["text"])
        assert isinstance(expression, Expression)
        values = {name: Fraction(text) for name, text in facts["inputs"].items()}
        direct = expression.value(values)
        stepped = work_out_steps(expression.postfix, values)
        if isinstance(direct, Flaw):
            assert isinstance(stepped, Stopped)
        else:
            assert stepped == direct

    many(calculations(), cases, check)


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_answer_is_marked_alike(twin: Twin, cases: int) -> None:
    def check(facts: Any) -> None:
        marked = agree(twin, "mark", facts)
        assert 0 <= marked["mark"] <= 1000

    many(marked_answers(), cases, check)


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_typed_number_is_read_alike(twin: Twin, cases: int) -> None:
    many(typed_texts, cases, lambda text: agree(twin, "typed", {"text": text}))


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_form_is_drawn_alike(twin: Twin, cases: int) -> None:
    def check(drawing: Any) -> None:
        form = agree(twin, "form", drawing)
        plan = drawing["plan"]
        assert len(form) == len(plan["gates"]) + sum(cell["draw"] for cell in plan["cells"])
        assert len({each["q"] for each in form}) == len(form)

    many(drawings(), cases, check)


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_check_comes_to_the_same_result(twin: Twin, cases: int) -> None:
    many(whole_checks(), cases, lambda facts: agree(twin, "result", facts))


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_bounded_draw_is_alike(twin: Twin, cases: int) -> None:
    bounds = st.lists(st.integers(1, 1 << 32), min_size=1, max_size=8)
    facts = st.builds(
        lambda seed, question, purpose, bounds: {
            "seed": seed,
            "question": question,
            "purpose": purpose,
            "bounds": bounds,
        },
        seeds,
        ids,
        st.sampled_from(["options", "variant", "position"]),
        bounds,
    )
    many(facts, cases, lambda given_: agree(twin, "below", given_))


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_value_is_written_alike_or_refused_for_the_same_reason(twin: Twin, cases: int) -> None:
    many(json_values, cases, lambda value: agree(twin, "canonical-write", {"value": value}))


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_file_is_read_alike_or_refused_by_both(twin: Twin, cases: int) -> None:
    many(almost_canonical(), cases, lambda text: agree(twin, "canonical-read", {"text": text}))


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_text_has_the_same_digest_and_fingerprint(twin: Twin, cases: int) -> None:
    def check(text: str) -> None:
        agree(twin, "sha256", {"text": text})
        agree(twin, "fingerprint", {"text": text})

    many(good_text, cases, check)


@pytest.mark.parametrize("cases", EVERY_CASE)
def test_every_attempt_is_written_to_the_same_bytes(twin: Twin, cases: int) -> None:
    many(attempt_facts(), cases, lambda facts: agree(twin, "attempt-file", {"facts": facts}))
