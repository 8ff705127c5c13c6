"""A question as HTML: what a learner reads with scripts off, and what the scripts enhance.

Decides what each kind of question shows before and after the answer. One function a kind turns the
model into a sheet of ready-made HTML for the templates ``question-CONTROL.html`` and
``answer-CONTROL.html``; ``SHEETS`` says which function serves which kind.

Steps, and the answers of a ``match``, stand in the order of the alphabet until a script shuffles them:
the author's order would give the answer away.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, cached_property
from string import ascii_uppercase
from typing import Any

from jinja2 import Environment
from markupsafe import Markup, escape

from journeybook.content.model import (
    ChoiceQuestion,
    ChoicesQuestion,
    Course,
    DrillQuestion,
    MatchQuestion,
    NumberQuestion,
    OrderQuestion,
    Question,
    SettingQuestion,
    SpotQuestion,
    TriageQuestion,
)
from journeybook.content.wording import Wording
from journeybook.marking.keys import lower
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.bench_html import bench_html
from journeybook.pages.engine import engine
from journeybook.pages.number_words import accepted_words, decimal_words
from journeybook.pages.question_drill import drill_sheet
from journeybook.pages.question_figure import figure_of
from journeybook.pages.question_markup import QuestionWords, options_answer, options_control, section
from journeybook.pages.question_sheet import (
    Html,
    ItemLine,
    Line,
    QuestionSheet,
    RightNumber,
    RuleLine,
    SlipLine,
    SourceLine,
    UnitLine,
)
from journeybook.pages.setting_words import right_settings
from journeybook.pages.spot_figure import letters, spot_figure
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.pages.words_catalogue import to_translate as _

LINK_TAG = re.compile(r"</?a\b[^>]*>")


@dataclass(frozen=True, kw_only=True)
class Desk:
    """What stays the same from question to question of a page."""

    course: Course
    wording: Wording
    slug: str
    """The leaf's slug; every id in its body starts with it."""
    figure_html: Callable[[str], str]
    """Id of a figure to its HTML."""
    language: str

    @cached_property
    def benches(self) -> BenchDesk:
        """The same for the benches above questions."""
        return BenchDesk(course=self.course, wording=self.wording, slug=self.slug, language=self.language)

    @cached_property
    def words(self) -> QuestionWords:
        """What every question says besides its own texts."""
        return QuestionWords(
            right=self.say("Right"),
            wrong=self.say("Not this"),
            answer_and_reasons=self.say("Answer and reasons"),
            source=self.say("Source"),
            not_yet_confirmed=self.say("not yet confirmed"),
        )

    def say(self, words: str) -> str:
        """Return interface words in the reader's language."""
        return load_catalogue(self.language)[0].gettext(words)


def question_html(desk: Desk, question: Question, heading: str = "") -> Markup:
    """Return the section for one question, with ``heading`` over it where one is given.

    The answer and its reasons stand in a ``details`` element after the form.
    """
    sheet = SHEETS[question.kind](desk, question)
    if sheet.control == "options":
        control, answer = options_control(sheet), options_answer(sheet, desk.words)
    else:
        environment = engine(desk.language)
        control = _macros(environment, f"question-{sheet.control}.html").control(sheet)
        answer = _macros(environment, f"answer-{sheet.control}.html").answer(sheet)
    return Markup(section(sheet, escape(heading), desk.words, control=control, answer=answer))


@cache
def _macros(environment: Environment, template: str) -> Any:
    """The macros of a template; a context for each question would cost more than its HTML."""
    return environment.get_template(template).module


def _ink(desk: Desk, text: str) -> Html:
    """Return inline HTML without links: a tap on an option must never lead off the page."""
    return _without_links(desk.wording.inline(text))


def _without_links(html: Html) -> Html:
    return LINK_TAG.sub("", html) if "<a" in html or "</a" in html else html


def _reason(desk: Desk, text: str) -> Html:
    return desk.wording.inline(text) if text else ""


def _words_of(html: Html) -> str:
    """Return what a reader reads, for the order of the alphabet."""
    return Markup(html).striptags()


def _sheet(desk: Desk, question: Question, control: str, **more: Any) -> QuestionSheet:
    givens = (question.given or ({},)) if isinstance(question, NumberQuestion) else ({},)
    slug = f"{desk.slug}-q-{question.id}"
    taken: set[str] = set()

    def block(text: str, given: Mapping[str, str]) -> Html:
        # Every variant stands on the page, one of them in sight: their headings share one set of ids.
        return desk.wording.block(text, slug, given=given, taken=taken)

    return QuestionSheet(
        id=question.id,
        html_id=slug,
        kind=question.kind,
        control=control,
        kind_words=escape(desk.say(KIND_WORDS[question.kind])),
        asks=tuple(_without_links(block(question.ask, given)) for given in givens),
        whys=tuple(block(question.why, given) if question.why else "" for given in givens),
        sources=_sources(desk.course, question),
        trial=_trial(desk, question),
        **{"figure": desk.figure_html(figure) if (figure := figure_of(desk.course, question)) else ""} | more,
    )


def _trial(desk: Desk, question: Question) -> Html:
    if question.trial is None:
        return ""
    return bench_html(desk.benches, question.trial.bench, place=f"q-{question.id}", trial=question.trial)


def _sources(course: Course, question: Question) -> tuple[SourceLine, ...]:
    lines = []
    for id in question.sources:
        if id == "kit":
            lines.append(SourceLine(name=escape(course.kit.title), href="page:kit", confirmed=True))
        elif citation := course.sources.get(id):
            name = f"{citation.title} {citation.clause}".strip()
            lines.append(
                SourceLine(name=escape(name), href=f"page:sources#{id}", confirmed=citation.is_confirmed)
            )
    return tuple(lines)


def _options_sheet(desk: Desk, question: ChoiceQuestion | ChoicesQuestion) -> QuestionSheet:
    right = {question.right} if isinstance(question, ChoiceQuestion) else set(question.right)
    options = tuple(
        Line(
            id=option.id,
            text=_ink(desk, option.text),
            reason=_reason(desk, option.reason),
            right=option.id in right,
        )
        for option in question.options
    )
    return _sheet(desk, question, "options", options=options)


def _order_sheet(desk: Desk, question: OrderQuestion) -> QuestionSheet:
    texts = {step.id: _ink(desk, step.text) for step in question.steps}
    lines = {id: Line(id=id, text=text) for id, text in texts.items()}
    return _sheet(
        desk,
        question,
        "order",
        steps=tuple(sorted(lines.values(), key=lambda line: _words_of(line.text).casefold())),
        one_order=tuple(lines[id] for id in one_order(question)),
        rules=tuple(
            RuleLine(
                first=rule.first,
                then=rule.then,
                first_text=texts[rule.first],
                then_texts=tuple(texts[id] for id in rule.then),
                reason=_reason(desk, rule.reason),
                critical=rule.critical,
            )
            for rule in sorted(question.rules, key=lambda rule: not rule.critical)
        ),
    )


def one_order(question: OrderQuestion) -> tuple[str, ...]:
    """Return the step ids in an order that keeps every rule, as near to the author's as can be.

    Kahn 1962, with the earliest listed step first among those that are free.
    """
    waits = {step.id: set[str]() for step in question.steps}
    for rule in question.rules:
        for later in rule.then:
            waits[later].add(rule.first)
    placed: list[str] = []
    while len(placed) < len(waits):
        placed.append(next(id for id in waits if id not in placed and waits[id] <= set(placed)))
    return tuple(placed)


def _match_sheet(desk: Desk, question: MatchQuestion) -> QuestionSheet:
    texts = {answer.id: _ink(desk, answer.text) for answer in question.answers}
    by_alphabet = sorted(question.answers, key=lambda answer: _words_of(texts[answer.id]).casefold())
    answers = tuple(
        Line(
            id=answer.id,
            text=texts[answer.id],
            reason=_reason(desk, answer.reason),
            letter=ascii_uppercase[position % 26],
        )
        for position, answer in enumerate(by_alphabet)
    )
    served = {item.goes_with for item in question.items}
    return _sheet(
        desk,
        question,
        "match",
        items=tuple(
            ItemLine(
                id=item.id,
                text=_ink(desk, item.text),
                answer_text=texts[item.goes_with],
                reason=_reason(desk, item.reason),
            )
            for item in question.items
        ),
        answers=answers,
        spare_answers=tuple(line for line in answers if line.id not in served),
    )


def _number_sheet(desk: Desk, question: NumberQuestion) -> QuestionSheet:
    rights = []
    key: dict[str, Any] = dict(lower(question, desk.course))
    for interval in key["variants"]:
        low, high = Fraction(interval["low"]), Fraction(interval["high"])
        # The tolerance is the same on both sides, so the right number is the middle.
        words = f"{decimal_words((low + high) / 2)} {question.unit}".strip()
        spread = ""
        if low < high:
            least, most = accepted_words(low, high)
            spread = desk.say("accepted from {low} to {high}").format(low=least, high=most)
        rights.append(RightNumber(text=escape(words), range=escape(spread)))
    units = tuple(dict.fromkeys(unit for unit in (question.unit, *question.units) if unit))
    return _sheet(
        desk,
        question,
        "number",
        rights=tuple(rights),
        slips=tuple(_slips(desk, question)),
        # By the alphabet, so that the first button is not always the right unit.
        units=tuple(escape(unit) for unit in sorted(units, key=str.casefold)),
        choose_unit=question.unit_needed or len(units) > 1,
    )


def _slips(desk: Desk, question: NumberQuestion) -> list[SlipLine]:
    lines = []
    for index, slip in enumerate(question.slips):
        reasons = [desk.wording.inline(slip.reason, given) for given in question.given or ({},)]
        if len(set(reasons)) == 1:
            lines.append(SlipLine(index=index, variant=None, reason=reasons[0]))
        else:
            lines.extend(
                SlipLine(index=index, variant=variant, reason=reason)
                for variant, reason in enumerate(reasons)
            )
    return lines


def _drill_sheet(desk: Desk, question: DrillQuestion) -> QuestionSheet:
    drill = desk.course.drills[question.drill]
    slug = f"{desk.slug}-q-{question.id}-drill"
    return _sheet(desk, question, "drill", drill=drill_sheet(drill, desk.wording, slug, _without_links))


def _spot_sheet(desk: Desk, question: SpotQuestion) -> QuestionSheet:
    figure = desk.course.figures[question.figure]
    letter = letters(question)
    slug = f"{desk.slug}-q-{question.id}"
    options = tuple(
        Line(
            id=spot.id,
            text=_ink(desk, spot.text),
            reason=_reason(desk, spot.reason),
            right=spot.id == question.right,
            letter=letter[spot.id],
        )
        for spot in question.spots
    )
    drawing = spot_figure(question, figure, slug, desk.wording.plain(figure.alt))
    return _sheet(desk, question, "spot", options=options, figure=drawing)


def _triage_sheet(desk: Desk, question: TriageQuestion) -> QuestionSheet:
    places = {place.id: Line(id=place.id, text=_ink(desk, place.text)) for place in question.places}
    units = tuple(
        UnitLine(
            id=unit.id,
            text=_ink(desk, unit.text),
            figure=desk.figure_html(unit.figure) if unit.figure else "",
            place_text=places[unit.belongs].text,
            reason=_reason(desk, unit.reason),
            dangerous=unit.dangerous,
        )
        for unit in question.units
    )
    return _sheet(desk, question, "triage", places=tuple(places.values()), sorted_units=units)


def _setting_sheet(desk: Desk, question: SettingQuestion) -> QuestionSheet:
    settings = tuple(escape(line) for line in right_settings(desk.benches, question))
    return _sheet(desk, question, "setting", settings=settings)


KIND_WORDS = {
    "choice": _("Choose one"),
    "choices": _("Choose all that are right"),
    "order": _("Put in order"),
    "match": _("Find the partners"),
    "number": _("Work out the number"),
    "drill": _("Go through it"),
    "spot": _("Point at it, or choose in the list"),
    "triage": _("Sort each one"),
    "setting": _("Set the bench"),
}
"""What the learner is asked to do, by kind; English source texts, translated when shown."""

SHEETS: dict[str, Callable[[Desk, Any], QuestionSheet]] = {
    "choice": _options_sheet,
    "choices": _options_sheet,
    "order": _order_sheet,
    "match": _match_sheet,
    "number": _number_sheet,
    "drill": _drill_sheet,
    "spot": _spot_sheet,
    "triage": _triage_sheet,
    "setting": _setting_sheet,
}
"""Which function makes the sheet of which kind."""
