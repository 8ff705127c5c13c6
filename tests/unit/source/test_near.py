from __future__ import annotations

from journeybook.source.near import choice_of, nearest

KEYS = ("title", "summary", "minutes", "outcomes", "source", "body", "practice", "goes-with", "right", "why")


def test_a_slip_of_one_letter_finds_its_word() -> None:
    assert nearest("tilte", KEYS) == ("title",)
    assert nearest("outcome", KEYS) == ("outcomes",)
    assert nearest("rigth", KEYS) == ("right",)
    assert nearest("whz", KEYS) == ("why",)


def test_case_and_underscores_count_for_nothing() -> None:
    assert nearest("Goes_With", KEYS) == ("goes-with",)


def test_a_word_like_none_of_them_finds_nothing() -> None:
    assert nearest("helicopter", KEYS) == ()
    assert nearest("", KEYS) == ()


def test_a_word_of_one_letter_is_near_to_no_other_letter() -> None:
    assert nearest("a", ("b", "c")) == ()


def test_the_nearest_come_first_and_equals_in_alphabetical_order() -> None:
    assert nearest("flow-01", ("flow-11", "flow-01x", "flow-02", "alarm-01")) == (
        "flow-01x",
        "flow-02",
        "flow-11",
    )


def test_no_more_are_given_than_asked_for() -> None:
    assert nearest("flow-0", [f"flow-{number}" for number in range(1, 10)], most=2) == ("flow-1", "flow-2")


def test_the_order_of_the_allowed_words_does_not_matter() -> None:
    assert nearest("sumary", KEYS) == nearest("sumary", reversed(KEYS)) == ("summary",)


def test_very_long_words_cost_little() -> None:
    assert nearest("x" * 100_000, ["y" * 100_000] * 100) == ()


def test_a_cure_with_one_name_says_to_write_it_and_with_several_to_use_one() -> None:
    assert choice_of(["run"]) == "Write `run`"
    assert choice_of(["run", "look"]) == "Use one of `run`, `look`"
