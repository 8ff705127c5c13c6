"""What the templates show of a question: ids, flags, and texts that are finished HTML."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

if TYPE_CHECKING:
    from journeybook.pages.question_drill import DrillSheet

Html: TypeAlias = str
"""A text that stands in the page as it is: whoever makes a sheet has escaped it."""


class Line(NamedTuple):
    """An option, a step or an answer as shown; by far the commonest part, so it is the quickest to make."""

    id: str
    text: Html
    reason: Html = ""
    right: bool = False
    letter: str = ""


@dataclass(frozen=True, kw_only=True)
class RuleLine:
    """A rule of an order, spelt out."""

    first: str
    then: tuple[str, ...]
    first_text: Html
    then_texts: tuple[Html, ...]
    reason: Html
    critical: bool


@dataclass(frozen=True, kw_only=True)
class ItemLine:
    """An item of a match, with the partner it goes with."""

    id: str
    text: Html
    answer_text: Html
    reason: Html


@dataclass(frozen=True, kw_only=True)
class UnitLine:
    """A unit of a triage: its condition, and where it belongs."""

    id: str
    text: Html
    figure: Html
    place_text: Html
    reason: Html
    dangerous: bool


@dataclass(frozen=True, kw_only=True)
class RightNumber:
    """The right number of one variant in words; ``range`` says what else is accepted."""

    text: Html
    range: Html


@dataclass(frozen=True, kw_only=True)
class SlipLine:
    """The story behind a wrong number; ``variant`` is None where it is the same for all of them."""

    index: int
    variant: int | None
    reason: Html


@dataclass(frozen=True, kw_only=True)
class SourceLine:
    """A citation under the answer."""

    name: Html
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
    kind_words: Html
    asks: tuple[Html, ...]
    """One for each variant."""
    whys: tuple[Html, ...]
    figure: Html
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
    units: tuple[Html, ...] = ()
    choose_unit: bool = False
    trial: Html = ""
    """The bench above it."""
    settings: tuple[Html, ...] = ()
    """What is right on the bench, in words."""
    places: tuple[Line, ...] = ()
    sorted_units: tuple[UnitLine, ...] = ()
    drill: DrillSheet | None = None
