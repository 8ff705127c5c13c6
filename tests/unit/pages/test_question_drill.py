"""A drill on the page: a text that branches, with what follows a deed only among the answers."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from drill_pages import drill_course, leaves, page, words_in

from journeybook.content.model import Course, Drill
from journeybook.content.wording import Wording
from journeybook.pages.practice import practice_data, practice_figures
from journeybook.pages.question_figure import figure_of
from journeybook.pages.question_html import Desk, question_html

LESSON = next(lesson for lesson in drill_course().lessons if lesson.id == "when-it-jams")
HOSTILE = "<script>alert(1)</script>"


def with_drill(drill: Drill) -> Course:
    return replace(drill_course(), drills={drill.id: drill})


DRILL = drill_course().drills["drill-jams"]


def written(course: Course | None = None) -> str:
    """The question's HTML on a leaf with the slug ``lesson-x``."""
    course = course or drill_course()
    desk = Desk(
        course=course,
        wording=Wording(course),
        slug="lesson-x",
        figure_html=lambda id_: f"[{id_}]",
        language="en",
    )
    return str(question_html(desk, course.questions["jam-01"]))


def form_and_answer(html: str) -> tuple[str, str]:
    form, answer = html.split('<details class="answer">')
    return form, answer


def test_every_moment_and_deed_stands_in_the_form() -> None:
    form, _ = form_and_answer(written())
    assert re.findall(r'data-moment="([^"]+)"', form) == ["jam", "stopped", "free", "good", "luck"]
    assert sorted(re.findall(r'data-deed="([^"]+)"', form)) == sorted(deed.id for deed in DRILL.deeds)


def test_deeds_stand_by_the_alphabet_until_they_are_shuffled() -> None:
    form, _ = form_and_answer(written())
    assert re.findall(r'data-deed="([^"]+)"', form)[:3] == ["stop", "hold", "lift"]
    assert [deed.id for deed in DRILL.moments[0].deeds] == ["stop", "hold", "lift"]
    assert re.findall(r'data-deed="([^"]+)"', form)[3:5] == ["isolate", "reverse"]
    back = with_drill(
        replace(
            DRILL,
            moments=tuple(replace(one, deeds=tuple(reversed(one.deeds))) for one in DRILL.moments),
        )
    )
    assert re.findall(r'data-deed="([^"]+)"', form_and_answer(written(back))[0])[:3] == [
        "stop",
        "hold",
        "lift",
    ]


def test_each_deed_says_at_which_number_it_goes_on() -> None:
    form, _ = form_and_answer(written())
    places = dict(re.findall(r'data-deed="([^"]+)".*?href="#([^"]+)">go to \d+<', form))
    assert places["stop"] == "lesson-x-q-jam-01-m-2"
    assert places["again"] == "lesson-x-q-jam-01-m-5"
    assert places["hold"] == places["reverse"] == "lesson-x-q-jam-01-m-6"
    ids = re.findall(r'\bid="([^"]+)"', written())
    assert set(places.values()) <= set(ids)
    assert len(set(ids)) == len(ids)


def test_the_moment_with_which_it_begins_has_number_one() -> None:
    moved = with_drill(replace(DRILL, moments=(*DRILL.moments[1:], DRILL.moments[0])))
    assert re.findall(r'data-moment="([^"]+)"', written(moved))[0] == "jam"


def test_what_follows_a_deed_stands_only_among_the_answers() -> None:
    form, answer = form_and_answer(written())
    for words in ("The spindle runs down.", "A turning plate cuts to the bone"):
        assert words not in form
        assert words in answer


def test_the_answers_say_what_is_right_what_costs_and_what_is_critical() -> None:
    _, answer = form_and_answer(written())
    said = dict(re.findall(r'data-deed="([^"]+)"[^>]*><span class="verdict">([^<]+)</span>', answer))
    assert said == {
        "stop": "Right",
        "lift": "Costs 40 % of the mark",
        "hold": "Critical",
        "isolate": "Right",
        "reverse": "Critical",
        "clamp": "Right",
        "again": "Not the best way",
    }


def test_time_and_what_happens_after_it_are_for_the_script() -> None:
    assert re.findall(r'data-seconds="(\d+)" data-late="([^"]+)"', written()) == [("8", "hold")]


def test_a_drill_without_critical_errors_has_no_place_for_them() -> None:
    calm = replace(
        DRILL,
        moments=tuple(
            replace(
                one,
                deeds=tuple(
                    replace(deed, critical="", leads_to="luck") if deed.critical else deed
                    for deed in one.deeds
                ),
            )
            for one in DRILL.moments
        ),
    )
    assert "It ends here, with a critical error." in words_in(written())
    assert "It ends here, with a critical error." not in words_in(written(with_drill(calm)))


def test_references_are_replaced_and_lead_nowhere_while_it_is_answered() -> None:
    form, _ = form_and_answer(written())
    assert "the sleeve is down to the work" in words_in(form)
    assert 'href="page:' not in form


@pytest.mark.parametrize("field", ["title", "situation"])
def test_the_authors_markup_stays_text_around_the_moments(field: str) -> None:
    hostile = replace(DRILL, **{field: HOSTILE})
    assert "<script" not in written(with_drill(hostile))


def test_the_authors_markup_stays_text_in_moments_and_deeds() -> None:
    moments = tuple(
        replace(
            one,
            text=HOSTILE,
            deeds=tuple(replace(deed, text=HOSTILE, told=HOSTILE) for deed in one.deeds),
        )
        for one in DRILL.moments
    )
    html = written(with_drill(replace(DRILL, moments=moments)))
    assert "<script" not in html
    assert html.count("&lt;script&gt;") >= len(DRILL.deeds)


def test_a_drills_figure_is_shown_with_its_question() -> None:
    assert "[guard-laid-out]" in written()
    assert figure_of(drill_course(), drill_course().questions["jam-01"]) == "guard-laid-out"


def test_a_figure_of_the_questions_own_comes_before_the_drills() -> None:
    question = replace(drill_course().questions["jam-01"], figure="other")
    assert figure_of(drill_course(), question) == "other"


def test_a_drill_that_shows_a_drawing_of_the_lesson_leads_to_it_and_back() -> None:
    parts = next(lesson for lesson in drill_course().lessons if lesson.id == "parts-of-the-guard")
    lesson = replace(parts, practice=("jam-01",))
    figures = practice_figures(drill_course(), Wording(drill_course()), lesson, "lesson-x")
    assert 'href="#lesson-x-figure-guard-laid-out"' in figures("guard-laid-out")
    assert 'href="#lesson-x-q-jam-01-ask"' in figures.ways_back("guard-laid-out")


def test_practice_is_given_the_key_and_every_deed_to_put_in_order() -> None:
    data = practice_data(drill_course(), LESSON)["practice"]
    assert isinstance(data, dict)
    assert data["jam-01"]["key"]["kind"] == "drill"
    assert data["jam-01"]["shape"] == {
        "kind": "drill",
        "options": [deed.id for deed in DRILL.deeds],
        "shuffle": True,
        "variants": 1,
    }


def test_only_leaves_with_a_drill_load_the_script_of_drills() -> None:
    assert [slug for slug, leaf in leaves().items() if "drill" in leaf.scripts] == ["lesson-when-it-jams"]
    assert 'src="../../assets/drill.js"' in page("lesson-when-it-jams")
