from __future__ import annotations

import ast
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.content.arithmetic import (
    MOST_CHARACTERS,
    MOST_DEEP,
    Expression,
    Flaw,
    decimal_text,
    parse,
    round_half_away,
)


def value(text: str, **names: int) -> Fraction | Flaw:
    expression = parse(text)
    assert isinstance(expression, Expression), expression
    return expression.value({name: Fraction(number) for name, number in names.items()})


def flaw(text: str, **names: int) -> Flaw:
    expression = parse(text)
    found = (
        expression
        if isinstance(expression, Flaw)
        else expression.value({n: Fraction(v) for n, v in names.items()})
    )
    assert isinstance(found, Flaw)
    return found


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("170", Fraction(170)),
        ("10.2", Fraction(51, 5)),
        ("0.1 + 0.2", Fraction(3, 10)),
        ("2 + 3 * 4", Fraction(14)),
        ("(2 + 3) * 4", Fraction(20)),
        ("10 - 3 - 2", Fraction(5)),
        ("16 / 4 / 2", Fraction(2)),
        ("1 / 3", Fraction(1, 3)),
        ("-3 * -2", Fraction(6)),
        ("- (1 + 2)", Fraction(-3)),
        ("min(3, 2, 5)", Fraction(2)),
        ("max(3, 2)", Fraction(3)),
        ("ceil(7 / 2)", Fraction(4)),
        ("ceil(-7 / 2)", Fraction(-3)),
        ("floor(-7 / 2)", Fraction(-4)),
        ("round(2.5)", Fraction(3)),
        ("round(-2.5)", Fraction(-3)),
        ("round(2.345, 2)", Fraction(235, 100)),
        ("round(1250, -2)", Fraction(1300)),
    ],
)
def test_an_expression_has_its_exact_value(text: str, expected: Fraction) -> None:
    assert value(text) == expected


def test_names_stand_for_given_numbers() -> None:
    assert value("flow * 60 * hours / 1000", flow=170, hours=4) == Fraction(204, 5)


def test_a_reference_is_a_name_with_a_dot() -> None:
    expression = parse("{kit.guard-gap} * 2")
    assert isinstance(expression, Expression)
    assert expression.names == ("kit.guard-gap",)
    assert expression.value({"kit.guard-gap": Fraction(6)}) == 12


@pytest.mark.parametrize("text", ["170", "-5.5", "{kit.guard-gap}", "-{profile.limit}"])
def test_a_number_or_reference_alone_is_plain(text: str) -> None:
    expression = parse(text)
    assert isinstance(expression, Expression)
    assert expression.is_plain


@pytest.mark.parametrize("text", ["1 + 1", "flow", "(5)", "min(1, 2)"])
def test_anything_else_is_not_plain(text: str) -> None:
    expression = parse(text)
    assert isinstance(expression, Expression)
    assert not expression.is_plain


@pytest.mark.parametrize(
    ("text", "column", "message"),
    [
        ("", 1, "The expression ends too early"),
        ("2 +", 4, "The expression ends too early"),
        ("3 4", 3, "Nothing was expected before `4`"),
        ("(1 + 2", 1, "A bracket is not closed"),
        ("1 + )", 5, "A number or a name was expected before `)`"),
        ("a ^ 2", 3, "`^` cannot stand in an expression"),
        ("2 × 3", 3, "`×` cannot stand in an expression"),
        ("170 %", 5, "`%` cannot stand in an expression"),
        ("{flow} * 2", 1, "`{` cannot stand in an expression"),
        ("sqrt(4)", 1, "`sqrt` cannot be called"),
        ("min(1)", 1, "`min` has 1 values in its brackets"),
        ("round(1, 2, 3)", 1, "`round` has 3 values in its brackets"),
        ("round(1, 0.5)", 1, "`round` cannot round to that many places"),
        ("1 / (2 - 2)", 3, "It divides by zero"),
        ("flow + 1", 1, "`flow` has no value"),
        ("1,5", 2, "A comma stands in a number, where it could mean decimals or thousands"),
    ],
)
def test_what_cannot_be_worked_out_is_a_flaw_with_its_column(text: str, column: int, message: str) -> None:
    found = flaw(text)
    assert (found.column, found.message) == (column, message)


def test_size_is_capped() -> None:
    product = " * ".join(["9" * 60] * 6)
    assert flaw(product).message == "The number becomes far too large"


def test_length_is_capped() -> None:
    assert (
        flaw("1" * (MOST_CHARACTERS + 1)).message
        == f"The expression has more than {MOST_CHARACTERS} characters"
    )


def test_depth_is_capped() -> None:
    assert isinstance(parse("(" * (MOST_DEEP - 1) + "1" + ")" * (MOST_DEEP - 1)), Expression)
    assert "inside one another" in flaw("(" * MOST_DEEP + "1" + ")" * MOST_DEEP).message


def _written(tree: tuple[str, object, object] | int) -> str:
    if isinstance(tree, int):
        return str(tree)
    return f"({_written(tree[1])} {tree[0]} {_written(tree[2])})"  # type: ignore[arg-type]


def _worked_out(node: ast.expr) -> Fraction:
    match node:
        case ast.Constant(value=int(number)):
            return Fraction(number)
        case ast.BinOp(left=left, op=ast.Add(), right=right):
            return _worked_out(left) + _worked_out(right)
        case ast.BinOp(left=left, op=ast.Sub(), right=right):
            return _worked_out(left) - _worked_out(right)
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return _worked_out(left) * _worked_out(right)
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return _worked_out(left) / _worked_out(right)
    raise AssertionError(ast.dump(node))


TREES = st.recursive(
    st.integers(0, 99), lambda inner: st.tuples(st.sampled_from("+-*/"), inner, inner), max_leaves=12
)


@given(TREES)
def test_the_value_is_that_of_pythons_own_grammar_over_fractions(
    tree: tuple[str, object, object] | int,
) -> None:
    text = _written(tree)
    try:
        expected = _worked_out(ast.parse(text, mode="eval").body)
    except ZeroDivisionError:
        assert flaw(text).message == "It divides by zero"
        return
    assert value(text) == expected


@given(st.text(alphabet="0123456789abc+-*/(),. {}kit", max_size=60))
def test_no_text_raises(text: str) -> None:
    expression = parse(text)
    if isinstance(expression, Expression):
        expression.value({})


@pytest.mark.parametrize(
    ("number", "places", "expected"),
    [
        ("0.5", 0, 1),
        ("-0.5", 0, -1),
        ("0.4999", 0, 0),
        ("1.005", 2, "1.01"),
        ("15", -1, 20),
        ("-15", -1, -20),
    ],
)
def test_a_half_rounds_away_from_zero(number: str, places: int, expected: int | str) -> None:
    assert round_half_away(Fraction(number), places) == Fraction(expected)


@pytest.mark.parametrize(
    ("number", "text"),
    [
        ("170", "170"),
        ("1/8", "0.125"),
        ("-10/3", "-3.333333333333"),
        ("0", "0"),
        ("51/5", "10.2"),
        ("-1/2", "-0.5"),
    ],
)
def test_a_fraction_is_written_as_people_write_it(number: str, text: str) -> None:
    assert decimal_text(Fraction(number)) == text
