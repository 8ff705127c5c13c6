"""The house knows no trade: a course on another job runs through the same code, end to end, in memory."""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path

from journeybook.audit import audit
from journeybook.content.loader import load_course
from journeybook.content.model import BlockKind, Course, NumberQuestion, Outlook, Question, Standing, Use
from journeybook.content.references import Reference, RefersTo, references_in
from journeybook.making import courses_of
from journeybook.marking.draw import draw_form
from journeybook.marking.mark import mark
from journeybook.pages.site import Ready, Site
from journeybook.project import Project

BASE = Path(__file__).parents[1] / "faults" / "base"
DEMO = Path(__file__).parents[2]
COURSE = "pillar-drill"

WORDS_OF_THE_DEMO = re.compile(
    r"\b(respirat\w*|breath\w*|air|airflow|blower|battery|head-?tops?|hoods?|visors?|weld\w*|fumes?|hoses?|filters?|"
    r"pre-?filters?|spark\w*|particulate|floats?|flow|alarms?|oxygen|lungs?|narrowboats?|lock-gates?|osha|coshh|niosh|"
    r"hsg53)\b",
    re.IGNORECASE,
)


@cache
def ready() -> Ready:
    courses, problems = courses_of(Project(root=BASE, courses=(COURSE,), profile="uk"))
    assert problems == []
    (only,) = courses
    return only


@cache
def site() -> Site:
    return Site([ready()], name="Quillon Basin Works")


@cache
def pages() -> dict[str, str]:
    """Every page and the one-file edition, by path."""
    texts = {path: site().page(path)[1].decode() for path in site().paths}
    return texts | {f"{COURSE}.html": site().files[f"{COURSE}.html"]().decode()}


def without_code(page: str) -> str:
    """A page without its scripts and styles, which have words of their own (``filter`` is one of JavaScript's)."""
    page = re.sub(r"<style>.*?</style>", "", page, flags=re.DOTALL)
    return re.sub(r"<script(?![^>]*application/json).*?</script>", "", page, flags=re.DOTALL)


def blocks(course: Course) -> list[BlockKind]:
    return [block.kind for lesson in course.lessons for block in lesson.body]


def texts_of(course: Course) -> str:
    parts = [
        text for lesson in course.lessons for block in lesson.body for text in (block.text, *block.steps)
    ]
    parts += [question.ask for question in course.questions.values()]
    for question in course.questions.values():
        if isinstance(question, NumberQuestion):
            parts += [number for row in question.given for number in row.values()]
    return "\n".join(parts)


def test_it_loads_and_the_audit_has_nothing_to_say() -> None:
    course, problems = load_course(BASE, COURSE, profile="uk")
    assert course is not None
    assert problems == []
    assert audit(course) == []


def test_it_uses_every_kind_of_block() -> None:
    assert set(blocks(ready().course)) == set(BlockKind)


def test_it_uses_every_kind_of_question_level_and_use() -> None:
    questions = ready().course.questions.values()
    assert {question.kind for question in questions} == {kind.kind for kind in Question.__subclasses__()}
    assert {question.level for question in questions} == set(Outlook)
    assert {question.use for question in questions} == set(Use)
    assert any(question.figure for question in questions)
    assert any(question.critical for question in questions)


def test_it_uses_figures_words_kit_profile_and_sources() -> None:
    course = ready().course
    named = {one.to for one in references_in(texts_of(course)) if isinstance(one, Reference)}
    assert named == set(RefersTo)
    assert course.figures
    assert course.terms
    assert course.kit.values
    assert course.profile.values
    assert {citation.standing for citation in course.sources.values()} >= {
        Standing.READ,
        Standing.COMMON_PRACTICE,
    }


def test_its_pages_are_all_there() -> None:
    assert set(pages()) == {
        "index.html",
        "pillar-drill.html",
        *(
            f"{COURSE}/{path}.html"
            for path in (
                "index",
                "10-guard",
                "10-guard/parts-of-the-guard",
                "20-setting",
                "20-setting/set-the-guard",
                "20-setting/when-it-jams",
                "practical/prove-the-guard",
                "job-cards",
                "job-card/before-you-drill",
                "job-card/out-of-use",
                "duties",
                "check",
                "words",
                "kit",
                "sources",
                "search",
                "checking",
            )
        ),
    }


def test_every_lesson_question_and_value_stands_in_the_one_file_edition() -> None:
    course, whole = ready().course, pages()[f"{COURSE}.html"]
    for lesson in course.lessons:
        assert lesson.title in whole
    for question in course.questions.values():
        assert f'data-question="{question.id}"' in whole
    for value in course.kit.values.values():
        assert value.value in whole
    for term in course.terms.values():
        assert term.meaning in whole


def test_its_check_draws_and_marks_a_form() -> None:
    content = json.loads(ready().compiled.data)
    form = draw_form(content["public"]["plan"], "a seed", ())
    assert len(form) == 4
    keys = content["private"]["keys"]
    through_the_drill = ["stop", "isolate", "clamp"]
    answers = {drawn["q"]: keys[drawn["q"]].get("right", through_the_drill) for drawn in form}
    assert [mark(keys[drawn["q"]], drawn["variant"], answers[drawn["q"]]).mark for drawn in form] == [
        1000
    ] * 4


def test_no_word_of_the_demo_courses_trade_stands_in_it() -> None:
    for path, page in pages().items():
        # What the theme says on a bench of kind `fan` is about fans, whatever the trade.
        text = re.sub(
            r'<section(?: role="group")? class="bench bench-fan.*?</section>'
            r'|<script type="application/json" id="bench-data">.*?</script>',
            "",
            without_code(page),
            flags=re.DOTALL,
        )
        found = WORDS_OF_THE_DEMO.search(text)
        assert found is None, f"{path} says {text[found.start() - 60 : found.end() + 60]!r}"
    found = WORDS_OF_THE_DEMO.search(site().files[f"{COURSE}/search-data.js"]().decode())
    assert found is None


def test_no_title_word_or_value_of_the_demo_course_stands_in_it() -> None:
    demo, _ = load_course(DEMO, "powered-respirator", profile="us")
    assert demo is not None
    own = {value.label for value in ready().course.kit.values.values()}
    texts = [
        *(lesson.title for lesson in demo.lessons),
        *(term.meaning for term in demo.terms.values()),
        *(value.label for value in demo.kit.values.values() if value.label not in own),
        *(outcome.text for outcome in demo.outcomes),
        *(fact.text for fact in demo.critical_facts),
    ]
    for page in pages().values():
        assert [text for text in texts if len(text) > 20 and text in page] == []
