"""The duties of the profile, requirement by requirement, with what in the course covers each."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from journeybook.content.model import Course, Duties, Duty, Use
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue


@dataclass(frozen=True, kw_only=True)
class Cover:
    """What covers one duty, each as a ``page:`` link and its words."""

    duty: Duty
    text: Markup
    lessons: tuple[tuple[str, str], ...]
    practice: tuple[tuple[str, str], ...]
    """The lessons in whose practice it is asked, with a link to the first such question of each."""
    in_check: int
    """How many questions of the check ask it."""
    steps: tuple[tuple[str, str], ...]
    job_cards: tuple[tuple[str, str], ...]


def duties_leaf(course: Course, wording: Wording, duties: Duties) -> Leaf:
    """The leaf; a duty is found at ``duties-ID``."""
    language = course.languages[0]
    words = load_catalogue(language)[0].gettext
    return Leaf(
        path=f"{course.id}/duties.html",
        slug="duties",
        kind="duties",
        title=words("What the rules ask"),
        course=course.id,
        body=render(
            language,
            "duties.html",
            course=course,
            slug="duties",
            covers=[_cover(course, wording, duty) for duty in duties.duties],
        ),
        language=language,
    )


def _cover(course: Course, wording: Wording, duty: Duty) -> Cover:
    by = duty.covered_by
    titles = {lesson.id: wording.plain(lesson.title) for lesson in course.lessons}
    asked_in = {name: lesson.id for lesson in reversed(course.lessons) for name in lesson.practice}
    practice: dict[str, tuple[str, str]] = {}
    in_check = 0
    for name in by.questions:
        # Those of a sealed check are not among the questions that pages are made of.
        if name not in course.questions or course.questions[name].use is Use.CHECK:
            in_check += 1
        elif name in asked_in:
            lesson = asked_in[name]
            practice.setdefault(lesson, (f"page:lesson/{lesson}#q-{name}", titles[lesson]))
    steps = []
    for name in by.practicals:
        practical, step = course.practical_steps[name]
        steps.append((f"page:practical/{practical.id}#{name}", wording.plain(step.text)))
    return Cover(
        duty=duty,
        text=Markup(wording.inline(duty.text)),
        lessons=tuple((f"page:lesson/{name}", titles[name]) for name in by.lessons),
        practice=tuple(practice.values()),
        in_check=in_check,
        steps=tuple(steps),
        job_cards=tuple(
            (f"page:job-card/{name}", wording.plain(course.job_cards[name].title)) for name in by.job_cards
        ),
    )
