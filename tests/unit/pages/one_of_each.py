"""A question of every kind about the pillar drill, invented, and the desk they are written out at."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from drill_pages import drill_course

from journeybook.content.model import (
    Bank,
    ChoiceQuestion,
    ChoicesQuestion,
    Course,
    MatchItem,
    MatchQuestion,
    NumberQuestion,
    Option,
    OrderQuestion,
    Outlook,
    Question,
    Rule,
    Slip,
    Spot,
    SpotQuestion,
    TriageQuestion,
    TriageUnit,
    Use,
)
from journeybook.content.wording import Wording
from journeybook.diagnostics.problem import Place
from journeybook.pages.question_html import Desk, question_html

HERE = Place(file="quizzes/pillar-drill/guard.yml")


def option(id_: str, text: str, reason: str = "") -> Option:
    return Option(id=id_, text=text, reason=reason, place=HERE)


CHOICE = ChoiceQuestion(
    id="guard-01",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.DECIDE,
    ask="The sleeve is *cracked* & the screw < 3 mm. What do you do?",
    why="A cracked sleeve bursts.",
    sources=("kit",),
    options=(option("a", "Tape it.", "Tape holds nothing."), option("b", "Tag it out.")),
    right="b",
    place=HERE,
)
CHOICES = ChoicesQuestion(
    id="guard-02",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="What sends a guard back?",
    options=(option("a", "A crack"), option("b", "Dust", "Wipe it off."), option("c", "A missing screw")),
    right=("a", "c"),
    place=HERE,
)
ORDER = OrderQuestion(
    id="guard-03",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="Put the steps in order.",
    steps=(
        option("isolate", "Isolate"),
        option("loosen", "Loosen the collar"),
        option("slide", "Adjust the sleeve"),
    ),
    rules=(
        Rule(first="loosen", then=("slide",), reason="It would bind.", place=HERE),
        Rule(first="isolate", then=("loosen", "slide"), critical=True, reason="It could start.", place=HERE),
    ),
    place=HERE,
)
MATCH = MatchQuestion(
    id="guard-04",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.RECALL,
    ask="What does each part do?",
    items=(
        MatchItem(id="collar", text="Collar", goes_with="holds", reason="It clamps.", place=HERE),
        MatchItem(id="sleeve", text="Sleeve", goes_with="covers", reason="It slides.", place=HERE),
    ),
    answers=(
        option("holds", "Holds the guard"),
        option("covers", "Covers the bit"),
        option("cools", "Cools the bit", "Nothing here cools."),
    ),
    place=HERE,
)
NUMBER = NumberQuestion(
    id="guard-05",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="Two sleeves of {a} mm: how long together?",
    why="Twice {a} mm.",
    right="2 * a",
    tolerance="1",
    unit="mm",
    units=("cm",),
    unit_needed=True,
    given=({"a": "30"}, {"a": "45"}),
    slips=(Slip(value="a", reason="That is one sleeve of {a} mm.", place=HERE),),
    place=HERE,
)
SPOT = SpotQuestion(
    id="guard-06s",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.RECALL,
    figure="guard-from-the-side",
    ask="Which part slides?",
    why="The sleeve slides inside the collar.",
    spots=(
        Spot(id="sleeve", text="The *sleeve*", part="sleeve", place=HERE),
        Spot(
            id="collar",
            text="The collar",
            part="guard-from-the-side-collar",
            reason="It is clamped.",
            place=HERE,
        ),
        Spot(id="knob", text="The knob", part="knob", reason="It locks.", place=HERE),
    ),
    right="sleeve",
    place=HERE,
)
TRIAGE = TriageQuestion(
    id="guard-07t",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.DECIDE,
    ask="What is done with each?",
    why="A cracked sleeve holds nothing back.",
    places=(option("use", "Use it"), option("tag", "Tag it out")),
    units=(
        TriageUnit(
            id="d1", text="Drill 1. Sleeve whole.", belongs="use", reason="Nothing is wrong.", place=HERE
        ),
        TriageUnit(
            id="d2",
            text="Drill 2. Sleeve *cracked*.",
            figure="guard-laid-out",
            belongs="tag",
            dangerous=True,
            reason="It gives way.",
            place=HERE,
        ),
    ),
    place=HERE,
)
EVERY: tuple[Question, ...] = (CHOICE, CHOICES, ORDER, MATCH, NUMBER, SPOT, TRIAGE)


@cache
def course() -> Course:
    """The small course with these questions for practice in its first lesson."""
    base = drill_course()
    bank = Bank(id="each", title="One of each", questions=EVERY, place=HERE)
    module = base.modules[0]
    lesson = replace(module.lessons[0], practice=tuple(question.id for question in EVERY))
    modules = (replace(module, lessons=(lesson, *module.lessons[1:])), *base.modules[1:])
    return replace(base, banks=(*base.banks, bank), modules=modules)


def written(question: Question, heading: str = "", *, of: Course | None = None) -> str:
    """The question's HTML on a leaf with the slug ``lesson-x``, perhaps of a changed course."""
    desk = Desk(
        course=of or course(),
        wording=Wording(of or course()),
        slug="lesson-x",
        figure_html=lambda id_: f"[{id_}]",
        language="en",
    )
    return str(question_html(desk, question, heading))
