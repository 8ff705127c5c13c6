"""Questions, one class a kind."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from typing import ClassVar

from journeybook.content.model.benches import BenchReading, Trial
from journeybook.diagnostics.problem import Place
from journeybook.source.placed import Placed


class Use(StrEnum):
    """Where a question may be shown."""

    PRACTICE = "practice"
    CHECK = "check"


class Outlook(StrEnum):
    """What a question asks of the learner."""

    RECALL = "recall"
    APPLY = "apply"
    DECIDE = "decide"


@dataclass(frozen=True, kw_only=True)
class Question(Placed):
    """What every kind of question has. ``kind`` is the YAML word and names the subclass."""

    kind: ClassVar[str]
    offers: ClassVar[str] = ""
    """Which field holds what is ``offered``; empty for a kind that offers nothing."""

    id: str
    use: Use
    outcome: str
    level: Outlook
    ask: str
    why: str = ""
    """Said after the answer: why the right answer is right."""
    sources: tuple[str, ...] = ()
    """YAML key ``source``: one id or a list; ``kit`` means the kit sheet."""
    critical: str = ""
    """Id of the critical fact it asks; such a question is must-pass in a check."""
    figure: str = ""
    trial: Trial | None = None
    """A bench above it, set up for it."""
    draft: bool = False
    retired: date | None = None
    bank: str = ""
    """Name of the bank's file without its ending."""
    place: Place

    @property
    def offered(self) -> tuple[Option, ...]:
        """What there is to choose from or to put in order."""
        found: tuple[Option, ...] = getattr(self, self.offers) if self.offers else ()
        return found

    @property
    def partnered(self) -> tuple[MatchItem, ...]:
        """What is to be given a partner out of what is offered."""
        return ()

    @property
    def rows(self) -> tuple[dict[str, str], ...]:
        """The given numbers of each variant; a question without variants has one row, which is empty."""
        return ({},)


@dataclass(frozen=True, kw_only=True)
class Option(Placed):
    """Something to choose."""

    id: str
    text: str
    reason: str = ""
    """Why it is wrong, or, where it is right, why it is right."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class ChoiceQuestion(Question):
    """One right answer among options."""

    kind: ClassVar[str] = "choice"
    offers: ClassVar[str] = "options"
    options: tuple[Option, ...]
    right: str
    keep_order: bool = False


@dataclass(frozen=True, kw_only=True)
class ChoicesQuestion(Question):
    """Several right answers among options."""

    kind: ClassVar[str] = "choices"
    offers: ClassVar[str] = "options"
    options: tuple[Option, ...]
    right: tuple[str, ...]
    keep_order: bool = False


@dataclass(frozen=True, kw_only=True)
class Rule(Placed):
    """``first`` comes before each of ``then``."""

    first: str
    then: tuple[str, ...]
    critical: bool = False
    """Breaking it scores nothing, whatever else is right."""
    reason: str = ""
    """What would happen if it were broken."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class OrderQuestion(Question):
    """Steps to put in any order that keeps every rule."""

    kind: ClassVar[str] = "order"
    offers: ClassVar[str] = "steps"
    steps: tuple[Option, ...]
    rules: tuple[Rule, ...]


@dataclass(frozen=True, kw_only=True)
class MatchItem(Placed):
    """Something that has one partner."""

    id: str
    text: str
    goes_with: str
    """Id of an answer. YAML key ``goes-with``."""
    reason: str = ""
    place: Place


@dataclass(frozen=True, kw_only=True)
class MatchQuestion(Question):
    """Each item has one partner among the answers; answers may be left over, none serves twice."""

    kind: ClassVar[str] = "match"
    offers: ClassVar[str] = "answers"
    items: tuple[MatchItem, ...]
    answers: tuple[Option, ...]

    @property
    def partnered(self) -> tuple[MatchItem, ...]:
        """The items."""
        return self.items


@dataclass(frozen=True, kw_only=True)
class Slip(Placed):
    """A wrong number that has a known cause."""

    value: str
    """A number or an expression over ``given``."""
    reason: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class NumberQuestion(Question):
    """A number to work out or to read off."""

    kind: ClassVar[str] = "number"
    right: str
    """A number or an arithmetic expression over the names in ``given``, in ``unit``."""
    tolerance: str = "0"
    """A number in ``unit``, or a percentage of the right value such as ``3 %``; inclusive."""
    unit: str = ""
    units: tuple[str, ...] = ()
    """Units that are also accepted, from the table of exact factors in ``content.units``."""
    unit_needed: bool = False
    """True where stating the unit is part of the skill. YAML key ``unit-needed``."""
    given: tuple[dict[str, str], ...] = ()
    """One mapping of names to numbers for each variant; ``{name}`` in ``ask`` and ``why`` shows it."""
    slips: tuple[Slip, ...] = ()
    reads: Mapping[str, BenchReading] = field(default_factory=dict)
    """Names of numbers that stand on a bench, for ``right`` and ``slips``; the same in every row."""

    @property
    def rows(self) -> tuple[dict[str, str], ...]:
        """The rows of ``given``."""
        return self.given or super().rows


@dataclass(frozen=True, kw_only=True)
class Bank:
    """One file of questions."""

    id: str
    title: str
    questions: tuple[Question, ...]
    place: Place
