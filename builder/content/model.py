"""The model: what a course is, as frozen data.

Text fields hold the author's CommonMark as written, references such as ``{kit.minimum-flow}`` included;
``content.wording`` expands and renders them. The order of tuples is the order in the files.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from functools import cached_property
from typing import ClassVar

from journeybook.diagnostics.problem import Place


class Standing(StrEnum):
    """How well a citation is known."""

    READ = "read"
    """Somebody read the original text."""
    REPORTED = "reported"
    """Seen quoted or described elsewhere."""
    FROM_MEMORY = "from memory"
    """Nobody looked it up."""
    COMMON_PRACTICE = "common practice"
    """What the trade does; there is no single source."""


class Outlook(StrEnum):
    """What a question asks of the learner."""

    RECALL = "recall"
    APPLY = "apply"
    DECIDE = "decide"


class Use(StrEnum):
    """Where a question may be shown."""

    PRACTICE = "practice"
    CHECK = "check"


@dataclass(frozen=True, kw_only=True)
class Confirmation:
    """Who looked at the original, and when."""

    by: str
    on: date
    edition: str = ""


@dataclass(frozen=True, kw_only=True)
class Citation:
    """One source, named once in sources.yml."""

    id: str
    title: str
    clause: str = ""
    year: str = ""
    standing: Standing
    """YAML key ``status``."""
    confirmed: Confirmation | None = None
    only: tuple[str, ...] = ()
    """Ids of the profiles in whose builds it exists; empty means all."""
    place: Place

    @property
    def is_confirmed(self) -> bool:
        """True when the original was read by somebody, or a person has recorded that they checked it."""
        return self.standing is Standing.READ or self.confirmed is not None

    def is_for(self, profile: str) -> bool:
        """True when it exists in a build for that profile."""
        return not self.only or profile in self.only


@dataclass(frozen=True, kw_only=True)
class Value:
    """A fact of the equipment (kit.yml) or the jurisdiction (profiles/ID.yml) that texts refer to by name."""

    id: str
    label: str
    value: str
    unit: str = ""
    note: str = ""
    sources: tuple[str, ...] = ()
    """Ids of citations, YAML key ``source``; none means the sheet itself."""
    page: str = ""
    confirmed: Confirmation | None = None
    example: bool = False
    """True where the value is invented."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """A titled set of values: the kit sheet, or a profile."""

    id: str
    title: str
    values: dict[str, Value]
    place: Place

    @property
    def is_example(self) -> bool:
        """True while any value is invented."""
        return any(value.example for value in self.values.values())


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What a learner can do after the course."""

    id: str
    text: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class CriticalFact:
    """Something nobody may get wrong; each form asks exactly one question for it, as must-pass."""

    id: str
    text: str
    why: str
    sources: tuple[str, ...]
    place: Place


@dataclass(frozen=True, kw_only=True)
class Term:
    """A word of the trade, in words.yml."""

    id: str
    word: str
    meaning: str
    figure: str = ""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Figure:
    """A drawing: figures/ID.yml names the SVG file beside it."""

    id: str
    title: str
    alt: str
    """What the drawing shows, for someone who cannot see it; complete enough to learn from."""
    caption: str = ""
    svg: str
    """The checked SVG text, ids prefixed with the figure's id."""
    place: Place


class BlockKind(StrEnum):
    """What a block of a lesson is."""

    TEXT = "text"
    STEPS = "steps"
    WARNING = "warning"
    STOP = "stop"
    """Stop and ask."""
    WHY = "why"
    EXAMPLE = "example"
    MISTAKE = "mistake"
    """A common mistake, and what it leads to."""
    FIGURE = "figure"


@dataclass(frozen=True, kw_only=True)
class Block:
    """A block of a lesson."""

    kind: BlockKind
    text: str = ""
    """CommonMark; for ``figure`` the figure's id; empty for ``steps``."""
    steps: tuple[str, ...] = ()
    place: Place


@dataclass(frozen=True, kw_only=True)
class Lesson:
    """One sitting's reading, with practice after it."""

    id: str
    title: str
    minutes: int
    outcomes: tuple[str, ...]
    sources: tuple[str, ...]
    body: tuple[Block, ...]
    practice: tuple[str, ...] = ()
    """Ids of ``use: practice`` questions."""
    draft: bool = False
    place: Place


@dataclass(frozen=True, kw_only=True)
class Module:
    """One operation of the route card: a folder ``20-parts`` has operation 20 and id ``parts``."""

    id: str
    operation: int
    title: str
    summary: str
    lessons: tuple[Lesson, ...]
    place: Place

    @property
    def minutes(self) -> int:
        """The lessons' minutes added up."""
        return sum(lesson.minutes for lesson in self.lessons)


@dataclass(frozen=True, kw_only=True)
class Question:
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
class Option:
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
class Rule:
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
class MatchItem:
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
class Slip:
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


@dataclass(frozen=True, kw_only=True)
class Cell:
    """How many questions of one outcome and level a check draws."""

    outcome: str
    level: Outlook
    draw: int
    place: Place


@dataclass(frozen=True, kw_only=True)
class Blueprint:
    """competence-check.yml: what a check draws and what passes it."""

    title: str
    percent: int
    """The cut, in percent of the marks, 1 to 100."""
    grounds: str
    """Why the cut is where it is."""
    minutes: int
    """About how long it takes; nothing is timed."""
    cells: tuple[Cell, ...]
    place: Place


@dataclass(frozen=True, kw_only=True)
class Issuer:
    """In whose name the certificate stands."""

    name: str
    location: str = ""
    """YAML key ``place``."""


@dataclass(frozen=True, kw_only=True)
class Contact:
    """The human being to ask."""

    name: str
    role: str
    reach: str
    """How to reach them: a room, a time, a number."""


@dataclass(frozen=True, kw_only=True)
class Approval:
    """Who approved this version for use, and when."""

    by: str
    on: date


@dataclass(frozen=True, kw_only=True)
class Validity:
    """How long training counts before it is due again."""

    months: int
    grounds: str
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Course:
    """A whole course, built for one profile."""

    id: str
    """Name of its folder in course_src."""
    title: str
    summary: str
    version: str
    languages: tuple[str, ...]
    """BCP 47 tags; the first is the one the files are written in."""
    equipment: str
    """The type of equipment the training is for."""
    issuer: Issuer
    contact: Contact
    approved: Approval | None
    validity: Validity
    outcomes: tuple[Outcome, ...]
    critical_facts: tuple[CriticalFact, ...]
    cautions: tuple[str, ...]
    """Printed at the foot of every page, before anything else."""
    certificate_limits: tuple[str, ...]
    """What a certificate of this course does not prove. YAML key ``does-not-prove``."""
    modules: tuple[Module, ...]
    kit: Sheet
    profile: Sheet
    sources: dict[str, Citation]
    terms: dict[str, Term]
    figures: dict[str, Figure]
    banks: tuple[Bank, ...]
    check: Blueprint | None
    place: Place
    draft: bool = field(default=True)
    """True unless this very content is a release."""
    unfinished: bool = False
    """course.yml says ``draft: true``: some reasons and sources may be missing, so it cannot be released."""

    @cached_property
    def lessons(self) -> tuple[Lesson, ...]:
        """Every lesson, in course order."""
        return tuple(lesson for module in self.modules for lesson in module.lessons)

    @cached_property
    def questions(self) -> dict[str, Question]:
        """Every question that is not retired, by id, in file order."""
        return {q.id: q for bank in self.banks for q in bank.questions if q.retired is None}

    @property
    def minutes(self) -> int:
        """Reading time of all lessons; the check comes on top."""
        return sum(module.minutes for module in self.modules)
