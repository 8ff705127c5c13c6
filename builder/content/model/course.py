"""The whole course, and who answers for it."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from journeybook.content.model.aims import CriticalFact, Outcome
from journeybook.content.model.benches import Bench
from journeybook.content.model.calculators import Calculator
from journeybook.content.model.check import Blueprint
from journeybook.content.model.drills import Drill
from journeybook.content.model.duties import Duties
from journeybook.content.model.figures import Figure, Term
from journeybook.content.model.job_cards import JobCard
from journeybook.content.model.lessons import Lesson, Module
from journeybook.content.model.practicals import Practical, PracticalStep
from journeybook.content.model.questions import Bank, Question
from journeybook.content.model.sheets import Sheet
from journeybook.content.model.sources import Citation
from journeybook.diagnostics.problem import Place


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
    drills: dict[str, Drill] = field(default_factory=dict)
    practicals: dict[str, Practical] = field(default_factory=dict)
    job_cards: dict[str, JobCard] = field(default_factory=dict)
    duties: Duties | None = None
    """Those of the profile that is built; None where the course lists none."""
    benches: dict[str, Bench] = field(default_factory=dict)
    calculators: dict[str, Calculator] = field(default_factory=dict)
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

    @cached_property
    def practical_steps(self) -> dict[str, tuple[Practical, PracticalStep]]:
        """Every step of every practical, by the step's id."""
        return {step.id: (each, step) for each in self.practicals.values() for step in each.steps}

    @property
    def minutes(self) -> int:
        """Reading time of all lessons; the check comes on top."""
        return sum(module.minutes for module in self.modules)
