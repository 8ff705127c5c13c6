"""What the templates show of a question: plain values with ready-made HTML in them."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

NOTHING = Markup("")


@dataclass(frozen=True, kw_only=True)
class Line:
    """An option, a step or an answer as shown."""

    id: str
    text: Markup
    reason: Markup = NOTHING
    right: bool = False
    letter: str = ""


@dataclass(frozen=True, kw_only=True)
class RuleLine:
    """A rule of an order, spelt out."""

    first: str
    then: tuple[str, ...]
    first_text: Markup
    then_texts: tuple[Markup, ...]
    reason: Markup
    critical: bool


@dataclass(frozen=True, kw_only=True)
class ItemLine:
    """An item of a match, with the partner it goes with."""

    id: str
    text: Markup
    answer_text: Markup
    reason: Markup


@dataclass(frozen=True, kw_only=True)
class RightNumber:
    """The right number of one variant in words; ``range`` says what else is accepted."""

    text: str
    range: str


@dataclass(frozen=True, kw_only=True)
class SlipLine:
    """The story behind a wrong number; ``variant`` is None where it is the same for all of them."""

    index: int
    variant: int | None
    reason: Markup


@dataclass(frozen=True, kw_only=True)
class SourceLine:
    """A citation under the answer."""

    name: str
    href: str
    confirmed: bool


@dataclass(frozen=True, kw_only=True)
class QuestionSheet:
    """Everything the templates show of one question; fields that a kind does not use stay empty."""

    id: str
    html_id: str
    kind: str
    control: str
    """Which pair of templates: ``options``, ``order``, ``match`` or ``number``."""
    kind_words: str
    asks: tuple[Markup, ...]
    """One for each variant."""
    whys: tuple[Markup, ...]
    figure: Markup
    sources: tuple[SourceLine, ...]
    options: tuple[Line, ...] = ()
    steps: tuple[Line, ...] = ()
    one_order: tuple[Line, ...] = ()
    rules: tuple[RuleLine, ...] = ()
    items: tuple[ItemLine, ...] = ()
    answers: tuple[Line, ...] = ()
    spare_answers: tuple[Line, ...] = ()
    rights: tuple[RightNumber, ...] = ()
    slips: tuple[SlipLine, ...] = ()
    units: tuple[str, ...] = ()
    choose_unit: bool = False
