from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from journeybook.audit import audit
from journeybook.audit.above_options import find_above_options
from journeybook.audit.alike_texts import groups_of_three
from journeybook.audit.idle_sources import find_idle_sources
from journeybook.audit.lesson_length import find_long_lessons
from journeybook.audit.longest_option import at_least, find_telling_lengths, standing_out
from journeybook.audit.near_duplicates import alike_pairs, find_near_duplicates
from journeybook.audit.outcomes_checked import find_outcomes_not_checked
from journeybook.audit.outcomes_practised import find_outcomes_not_practised
from journeybook.audit.outcomes_taught import find_outcomes_not_taught
from journeybook.content.loader import load_course
from journeybook.content.model import (
    Bank,
    ChoiceQuestion,
    Citation,
    Course,
    Module,
    Option,
    Outcome,
    Outlook,
    Standing,
    Use,
)
from journeybook.diagnostics.problem import Level, Place

BASE = Path(__file__).parents[2] / "faults" / "base"
HERE = Place(file="quizzes/pillar-drill/extra.yml")


@pytest.fixture(scope="module")
def course() -> Course:
    found, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert found is not None, problems
    return found


def question(name: str, texts: list[str], right: int = 0, ask: str = "") -> ChoiceQuestion:
    options = tuple(Option(id=f"o{at}", text=text, place=HERE) for at, text in enumerate(texts))
    return ChoiceQuestion(
        id=name,
        use=Use.PRACTICE,
        outcome="guard-set",
        level=Outlook.RECALL,
        ask=ask or f"What about {name}?",
        options=options,
        right=f"o{right}",
        place=HERE,
    )


def with_bank(course: Course, questions: list[ChoiceQuestion]) -> Course:
    return replace(course, banks=(Bank(id="extra", title="Extra", questions=tuple(questions), place=HERE),))


def with_module(course: Course, **changes: object) -> Course:
    first = course.modules[0]
    lessons = tuple(replace(lesson, **changes) for lesson in first.lessons)  # type: ignore[arg-type]
    module: Module = replace(first, lessons=lessons)
    return replace(course, modules=(module, *course.modules[1:]))


def test_a_good_course_has_nothing_to_say(course: Course) -> None:
    assert audit(course) == []


def test_an_outcome_that_no_lesson_teaches_is_named(course: Course) -> None:
    extra = Outcome(id="guard-clean", text="Clean it.", place=HERE)
    found = list(find_outcomes_not_taught(replace(course, outcomes=(*course.outcomes, extra))))
    assert [problem.message for problem in found] == ["No lesson teaches the outcome guard-clean."]
    assert [problem.level for problem in found] == [Level.WARNING]


def test_an_outcome_that_is_only_read_about_is_named(course: Course) -> None:
    found = list(find_outcomes_not_practised(with_module(course, practice=())))
    assert [problem.message for problem in found] == [
        "No lesson asks a practice question for the outcome guard-parts."
    ]


def test_an_outcome_without_a_cell_is_named(course: Course) -> None:
    assert course.check is not None
    check = replace(course.check, cells=course.check.cells[:1])
    found = list(find_outcomes_not_checked(replace(course, check=check)))
    assert [problem.message for problem in found] == [
        "The check draws no question for the outcome guard-set."
    ]


def test_a_course_without_a_check_is_not_told_about_cells(course: Course) -> None:
    assert list(find_outcomes_not_checked(replace(course, check=None))) == []


@pytest.mark.parametrize(("minutes", "count"), [(12, 0), (13, 1)])
def test_a_lesson_over_twelve_minutes_is_long(course: Course, minutes: int, count: int) -> None:
    assert len(list(find_long_lessons(with_module(course, minutes=minutes)))) == count


def test_an_option_stands_out_beyond_five_quarters_of_the_next() -> None:
    assert standing_out(question("a", ["x" * 101, "x" * 80, "x"])) == "o0"
    assert standing_out(question("a", ["x" * 100, "x" * 80, "x"])) == ""


def test_a_bank_where_length_tells_is_named(course: Course) -> None:
    bank = [question(f"q{at}", ["x" * 40, "y" * 10, "z" * 10]) for at in range(5)]
    found = list(find_telling_lengths(with_bank(course, bank)))
    assert [problem.message for problem in found] == [
        "Where one option is much longer than the rest it is the right one in 5 of 5 questions, "
        "so the length gives it away."
    ]


def test_a_bank_within_chance_is_left_alone(course: Course) -> None:
    bank = [question(f"q{at}", ["x" * 40, "y" * 10, "z" * 10]) for at in range(4)]
    assert at_least(4, [1 / 3] * 4) > 0.01
    assert list(find_telling_lengths(with_bank(course, bank))) == []


def test_a_long_wrong_option_counts_against_the_suspicion(course: Course) -> None:
    bank = [question(f"q{at}", ["x" * 40, "y" * 10, "z" * 10], right=at % 3) for at in range(12)]
    assert list(find_telling_lengths(with_bank(course, bank))) == []


def test_the_probability_is_that_of_the_binomial_where_chances_are_equal() -> None:
    # 18 of 40 at one in four: scipy.stats.binom.sf(17, 40, 0.25)
    assert at_least(18, [0.25] * 40) == pytest.approx(0.0047, abs=5e-5)


def test_the_probability_of_unequal_chances_is_exact() -> None:
    # 10 at 1/4, 6 at 1/3, 4 at 1/2, 14 or more: 1573001/3057647616, by exact fractions
    chances = [1 / 4] * 10 + [1 / 3] * 6 + [1 / 2] * 4
    assert at_least(14, chances) == pytest.approx(1573001 / 3057647616, rel=1e-9)


@pytest.mark.parametrize("text", ["All of the above", "none of the above.", "Both of these answers"])
def test_an_option_that_points_at_the_others_is_named(course: Course, text: str) -> None:
    assert len(list(find_above_options(with_bank(course, [question("a", [text, "x"])])))) == 1


@pytest.mark.parametrize("text", ["All of the sleeve", "The knob above the sleeve"])
def test_an_option_that_only_sounds_like_it_is_left_alone(course: Course, text: str) -> None:
    assert list(find_above_options(with_bank(course, [question("a", [text, "x"])]))) == []


def test_other_languages_are_not_searched_for_english_words(course: Course) -> None:
    french = replace(with_bank(course, [question("a", ["All of the above", "x"])]), languages=("fr",))
    assert list(find_above_options(french)) == []


def test_nearly_equal_questions_are_named_once(course: Course) -> None:
    options = ["Leave it isolated and ask", "Tie it up and drill"]
    bank = [
        question("a", options, ask="The sleeve sticks half way. What now?"),
        question("b", options, ask="The sleeve sticks half way. What do you do now?"),
        question("c", ["The knob", "The collar"], ask="What holds the sleeve?"),
    ]
    found = list(find_near_duplicates(with_bank(course, bank)))
    assert [problem.message for problem in found] == ["This question asks nearly the same as a."]


def test_a_source_that_nothing_cites_is_named_with_its_line(course: Course) -> None:
    place = Place(file="course_src/pillar-drill/sources.yml", line=11, trail="source old-rule")
    extra = Citation(id="old-rule", title="Rules of 1990", standing=Standing.REPORTED, place=place)
    found = list(find_idle_sources(replace(course, sources={**course.sources, "old-rule": extra})))
    assert [(problem.message, problem.place) for problem in found] == [
        ("Nothing cites the source old-rule.", place)
    ]


def test_one_citation_anywhere_is_enough(course: Course) -> None:
    everywhere = replace(
        course,
        banks=(),
        critical_facts=(),
        validity=replace(course.validity, sources=()),
        kit=replace(course.kit, values={}),
        drills={},
        benches={},
        calculators={},
        practicals={},
        job_cards={},
        duties=None,
    )
    lessons_cite = {"guard-rule"}
    assert {problem.message for problem in find_idle_sources(everywhere)} == {
        f"Nothing cites the source {name}." for name in course.sources if name not in lessons_cite
    }
    assert list(find_idle_sources(replace(everywhere, kit=course.kit, validity=course.validity))) == []


def test_pairs_found_by_their_rarest_words_are_those_of_comparing_all() -> None:
    words = ["the", "sleeve", "covers", "drill", "down", "to", "work", "knob", "collar", "locks", "before"]
    texts = [" ".join(words[(at * step) % len(words)] for at in range(9)) for step in range(1, 40)]
    sets = [groups_of_three(text) for text in texts]
    later_of_all = {
        later
        for later in range(len(sets))
        for earlier in range(later)
        if len(sets[later] & sets[earlier]) * 100 >= 60 * len(sets[later] | sets[earlier])
    }
    assert later_of_all
    assert {later for _, later in alike_pairs(texts)} == later_of_all


def test_the_work_of_comparing_grows_with_the_texts_even_where_all_are_alike() -> None:
    text = "what has to be done before the guard is moved up by hand"
    pairs = list(alike_pairs([f"{text} {number}" for number in range(2_000)]))
    assert len(pairs) == 1_999
    assert all(later - earlier <= 16 for earlier, later in pairs)
