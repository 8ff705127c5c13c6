"""The generator and the draws against published vectors and against chance.

Sources: rand_xoshiro of rust-random/rngs (xoshiro128** 1.1); FIPS 180-4; RFC 3797 for the idea of ranking
by hash. The chi-square of 14, 22, 15, 9 was computed by R's chisq.test, and is recomputed by scipy.
"""

from __future__ import annotations

import hashlib
from collections import Counter
from itertools import permutations
from typing import Any

import pytest
from scipy.stats import chisquare

from journeybook.marking.draw import arranged, draw_form, shape
from journeybook.marking.stream import Stream, rank, stream

XOSHIRO = [
    11520,
    0,
    5927040,
    70819200,
    2031721883,
    1637235492,
    1287239034,
    3734860849,
    3729100597,
    4258142804,
]


def test_xoshiro128_starstar_version_1_1() -> None:
    run = Stream((1, 2, 3, 4))
    assert [run.next() for _ in range(10)] == XOSHIRO


def test_it_is_not_the_older_version_with_the_other_first_word() -> None:
    # The form of 2018 scrambles s[0]: it starts 5760, 40320 from the same state.
    assert Stream((1, 2, 3, 4)).next() != 5760


def test_the_state_is_the_first_sixteen_bytes_of_the_digest_in_big_endian_words() -> None:
    digest = hashlib.sha256(b"seed\nflow-03\nvariant").digest()
    words = [int(digest[at : at + 4].hex(), 16) for at in (0, 4, 8, 12)]
    by_hand = Stream((words[0], words[1], words[2], words[3]))
    named = stream("seed", "flow-03", "variant")
    assert [named.next() for _ in range(4)] == [by_hand.next() for _ in range(4)]


def test_a_bounded_draw_throws_away_what_would_not_divide_evenly() -> None:
    # 2^32 mod 3,000,000,000 is 1,294,967,296; from 1, 2, 3, 4 the first number not below it is the fifth.
    assert Stream((1, 2, 3, 4)).below(3_000_000_000) == 2031721883


def test_chi_square_as_published() -> None:
    found = chisquare([14, 22, 15, 9])
    assert found.statistic == pytest.approx(5.733333, abs=1e-6)
    assert found.pvalue == pytest.approx(0.12533, abs=1e-5)


def test_ranking_by_hash_draws_each_question_equally_often() -> None:
    questions = [f"q{number:02}" for number in range(20)]
    drawn = Counter(
        question
        for seed in range(4000)
        for question in sorted(questions, key=lambda each: rank(str(seed), each))[:5]
    )
    assert sum(drawn.values()) == 20_000
    assert chisquare([drawn[question] for question in questions]).pvalue > 0.001


def test_ranking_by_hash_draws_each_pair_equally_often() -> None:
    questions = list("abcde")
    drawn = Counter(
        tuple(sorted(sorted(questions, key=lambda each: rank(f"seed-{seed}", each))[:2]))
        for seed in range(5000)
    )
    assert len(drawn) == 10
    assert chisquare(list(drawn.values())).pvalue > 0.001


def test_every_order_of_options_is_shown_equally_often() -> None:
    key = {"kind": "choice", "options": list("abcd"), "right": "a"}
    shown = Counter("".join(arranged(shape(key, keep_order=False), str(seed), "q")) for seed in range(7200))
    assert len(shown) == 24
    assert chisquare(list(shown.values())).pvalue > 0.001


def test_every_wrong_order_of_steps_is_shown_first_equally_often_and_no_right_one_ever() -> None:
    key = {"kind": "order", "steps": list("abcd"), "before": [["a", "b"]], "critical": []}
    shown = Counter("".join(arranged(shape(key, keep_order=False), str(seed), "q")) for seed in range(3600))
    wrong = {"".join(order) for order in permutations("abcd") if order.index("a") > order.index("b")}
    assert set(shown) == wrong
    assert chisquare(list(shown.values())).pvalue > 0.001


def test_positions_and_variants_are_uniform_over_forms() -> None:
    shape = {"kind": "number", "options": [], "shuffle": False, "variants": 3}
    plan: dict[str, Any] = {
        "form-algorithm": 1,
        "gates": [],
        "cells": [{"outcome": "o", "level": "apply", "draw": 4, "questions": list("abcd")}],
        "questions": dict.fromkeys("abcd", shape),
    }
    forms = [draw_form(plan, str(seed), []) for seed in range(3000)]
    first = Counter(form[0]["q"] for form in forms)
    variants = Counter(form[0]["variant"] for form in forms)
    assert chisquare([first[each] for each in "abcd"]).pvalue > 0.001
    assert chisquare([variants[each] for each in range(3)]).pvalue > 0.001
