from __future__ import annotations

import gc
import os
import re
import shutil
from pathlib import Path

import pytest

from journeybook.content import loader
from journeybook.content.assembly import course_from_files
from journeybook.content.load_memo import LoadMemo
from journeybook.content.loader import load_course, load_courses
from journeybook.content.model import ChoiceQuestion, NumberQuestion, OrderQuestion
from journeybook.diagnostics.problem import Level, Problem
from journeybook.drawing.svg_check import LARGEST
from journeybook.source.decoding import MOST_BYTES

BASE = Path(__file__).parents[2] / "faults" / "base"
COURSE = Path("course_src/pillar-drill")


@pytest.fixture
def site(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    return tmp_path


def problems_of(site: Path, course: str = "pillar-drill", profile: str = "uk") -> list[Problem]:
    return load_course(site, course, profile=profile)[1]


def only(problems: list[Problem]) -> Problem:
    assert len(problems) == 1, problems
    return problems[0]


def test_a_good_course_is_read_whole() -> None:
    course, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None
    assert problems == []
    assert (course.id, course.title, course.languages) == (
        "pillar-drill",
        "Set the guard on a pillar drill",
        ("en",),
    )
    assert [module.id for module in course.modules] == ["guard", "setting"]
    assert [module.operation for module in course.modules] == [10, 20]
    assert [lesson.id for lesson in course.lessons] == ["parts-of-the-guard", "set-the-guard", "when-it-jams"]
    assert course.kit.is_example
    assert course.profile.id == "uk"
    assert course.sources["guard-rule"].is_confirmed
    assert course.draft
    assert course.check is not None
    assert course.minutes == 18


def test_questions_know_their_bank_and_place() -> None:
    course, _ = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None
    question = course.questions["guard-03"]
    assert isinstance(question, OrderQuestion)
    assert question.bank == "guard"
    assert question.place.file == "quizzes/pillar-drill/guard.yml"
    assert question.place.trail == "question guard-03"
    assert question.rules[0].then == ("key", "set")
    assert question.rules[1].then == ("start",)


def test_defaults_stand_where_nothing_was_written() -> None:
    course, _ = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None
    choice = course.questions["guard-06"]
    assert isinstance(choice, ChoiceQuestion)
    assert (choice.keep_order, choice.figure, choice.critical, choice.why) == (False, "", "", "")
    number = course.questions["guard-05"]
    assert isinstance(number, NumberQuestion)
    assert number.given[0] == {"above": "40", "gap": "{kit.guard-gap}"}


def test_a_retired_question_is_kept_and_not_asked() -> None:
    course, _ = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None
    assert "guard-07" not in course.questions
    assert any(question.id == "guard-07" for bank in course.banks for question in bank.questions)


def test_lesson_files_run_by_their_number(site: Path) -> None:
    folder = site / COURSE / "modules" / "20-setting"
    text = (folder / "10-set.yml").read_text()
    (folder / "9-before.yml").write_text(
        text.replace("set-the-guard", "before").replace("lesson.before", "lesson.set-the-guard")
    )
    course, problems = load_course(site, "pillar-drill", profile="uk")
    assert course is not None, problems
    assert [lesson.id for lesson in course.modules[1].lessons] == ["before", "set-the-guard", "when-it-jams"]


def test_a_course_without_words_figures_or_check_is_a_course(site: Path) -> None:
    (site / COURSE / "words.yml").unlink()
    for folder in ("figures", "practicals", "job-cards", "duties", "drills", "benches", "calculators"):
        shutil.rmtree(site / COURSE / folder)
    shutil.rmtree(site / "quizzes")
    shutil.rmtree(site / COURSE / "modules" / "20-setting")
    lesson = site / COURSE / "modules" / "10-guard" / "10-parts.yml"
    lesson.write_text(
        'id: parts\ntitle: "Parts"\nminutes: 5\noutcomes: guard-parts\nsource: kit\n'
        'body:\n  - text: "A sleeve."\n'
    )
    course, problems = load_course(site, "pillar-drill", profile="uk")
    assert course is not None, problems
    assert (course.terms, course.figures, course.banks, course.check) == ({}, {}, (), None)


def test_a_missing_course_names_the_nearest_folder(site: Path) -> None:
    problem = only(problems_of(site, "pilar-drill"))
    assert (problem.code, problem.place.file) == ("C020", "course_src/pilar-drill")
    assert "`pillar-drill`" in problem.mend


@pytest.mark.parametrize("course", ["../pillar-drill", "Pillar", "", "a/b"])
def test_a_course_that_cannot_be_a_folder_here_is_not_looked_for(site: Path, course: str) -> None:
    assert only(problems_of(site, course)).code == "C020"


@pytest.mark.parametrize("name", ["index", "assets", "con", "lpt9"])
def test_a_course_that_would_take_a_name_of_the_site_or_of_windows_is_refused(site: Path, name: str) -> None:
    shutil.move(site / COURSE, site / "course_src" / name)
    shutil.move(site / "quizzes" / "pillar-drill", site / "quizzes" / name)
    problem = only(problems_of(site, name))
    assert (problem.code, problem.place.file) == ("C037", f"course_src/{name}")
    assert f"`the-{name}`" in problem.mend


def test_a_missing_profile_names_those_there_are(site: Path) -> None:
    problem = only(problems_of(site, profile="us"))
    assert (problem.code, problem.place.file) == ("C028", "course_src/pillar-drill/profiles/us.yml")
    assert problem.mend == "Write `profile: uk` in mkdocs.yml, or add that file."


@pytest.mark.parametrize("name", ["course.yml", "kit.yml", "sources.yml"])
def test_a_missing_file_is_one_problem(site: Path, name: str) -> None:
    (site / COURSE / name).unlink()
    problem = only(problems_of(site))
    assert (problem.code, problem.place.file) == ("C021", f"course_src/pillar-drill/{name}")


def test_a_course_folder_that_is_a_link_out_of_the_site_is_one_problem(
    site: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = tmp_path_factory.mktemp("outside") / "pillar-drill"
    shutil.move(site / COURSE, outside)
    (site / COURSE).symlink_to(outside)
    problem = only(problems_of(site))
    assert (problem.code, problem.place.file) == ("C024", "course_src/pillar-drill")


def test_a_missing_quiz_folder_is_one_problem(site: Path) -> None:
    shutil.rmtree(site / "quizzes")
    problem = only(problems_of(site))
    assert (problem.code, problem.place.file) == ("C021", "quizzes/pillar-drill")


def test_check_questions_without_a_check_are_one_warning(site: Path) -> None:
    (site / "quizzes" / "pillar-drill" / "competence-check.yml").unlink()
    course, problems = load_course(site, "pillar-drill", profile="uk")
    assert course is not None
    problem = only(problems)
    assert (problem.code, problem.level) == ("B005", Level.WARNING)


def test_what_a_release_froze_is_no_part_of_the_course(site: Path) -> None:
    frozen = site / COURSE / "releases" / "1.0" / "uk"
    frozen.mkdir(parents=True)
    (frozen / "compiled.json").write_text("{}")
    assert problems_of(site) == []


@pytest.mark.parametrize("name", ["Thumbs.db", "desktop.ini", "~$check.yml", "check.yml~", ".check.yml.swp"])
def test_what_programs_leave_in_a_folder_is_passed_over(site: Path, name: str) -> None:
    (site / "quizzes" / "pillar-drill" / name).write_bytes(b"\x00")
    assert problems_of(site) == []


def test_a_photograph_among_the_figures_is_told_apart_from_yaml(site: Path) -> None:
    (site / COURSE / "figures" / "photo.JPG").write_bytes(b"\xff\xd8\xff")
    problem = only(problems_of(site))
    assert (problem.code, problem.level) == ("C026", Level.WARNING)
    assert "drawing in SVG" in problem.message


def test_a_course_without_modules_says_so(site: Path) -> None:
    shutil.rmtree(site / COURSE / "modules")
    assert {problem.code for problem in problems_of(site)} == {"C021"}


def test_another_profiles_faults_are_found_too(site: Path) -> None:
    (site / COURSE / "profiles" / "us.yml").write_text('title: "United States"\nvalues: none\n')
    problem = only(problems_of(site))
    assert (problem.code, problem.place.file) == ("C011", "course_src/pillar-drill/profiles/us.yml")


def test_a_file_that_is_too_large_is_not_opened(site: Path) -> None:
    path = site / COURSE / "kit.yml"
    with path.open("r+b") as file:
        file.truncate(MOST_BYTES + 1)
    assert only(problems_of(site)).code == "C023"


def test_a_drawing_that_is_too_large_is_not_opened(site: Path) -> None:
    path = site / COURSE / "figures" / "guard-laid-out.svg"
    with path.open("r+b") as file:
        file.truncate(LARGEST + 1)
    assert only(problems_of(site)).code == "C023"


def test_too_many_files_are_not_read(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(loader, "MOST_FILES", 5)
    course, problems = load_course(site, "pillar-drill", profile="uk")
    assert course is None
    assert "C023" in {problem.code for problem in problems}


def test_a_link_out_of_the_site_is_not_followed(site: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside") / "kit.yml"
    shutil.move(site / COURSE / "kit.yml", outside)
    (site / COURSE / "kit.yml").symlink_to(outside)
    problem = only(problems_of(site))
    assert (problem.code, problem.place.file) == ("C024", "course_src/pillar-drill/kit.yml")


def test_a_linked_folder_is_not_followed(site: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (site / COURSE / "figures" / "more").symlink_to(outside)
    assert only(problems_of(site)).code == "C024"


def test_a_link_within_the_site_is_read(site: Path) -> None:
    shutil.move(site / COURSE / "kit.yml", site / "shared-kit.yml")
    (site / COURSE / "kit.yml").symlink_to(site / "shared-kit.yml")
    assert problems_of(site) == []


def test_a_folder_with_a_files_name_cannot_be_read(site: Path) -> None:
    path = site / COURSE / "figures" / "guard-laid-out.svg"
    path.unlink()
    os.mkfifo(path)
    problem = only(problems_of(site))
    assert problem.code == "C022"
    assert "not a plain file" in problem.message


def test_a_file_that_may_not_be_read_is_a_problem(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = LoadMemo.bytes_of

    def refuse(memo: LoadMemo, path: str, seen: os.stat_result) -> bytes:
        if path.endswith("words.yml"):
            raise PermissionError(13, "Permission denied")
        return real(memo, path, seen)

    monkeypatch.setattr(LoadMemo, "bytes_of", refuse)
    problem = only(problems_of(site))
    assert (problem.code, problem.message) == ("C022", "This file cannot be read: Permission denied.")


def test_a_file_name_that_is_not_text_is_still_printable(site: Path) -> None:
    try:
        (site / os.fsdecode(b"quizzes/pillar-drill/caf\xe9.txt")).write_text("x")
    except OSError:
        pytest.skip("this disk refuses such names")
    problem = only(problems_of(site))
    assert problem.place.file.encode("utf-8")
    assert problem.code == "C026"


def test_hidden_and_reading_files_are_left_alone(site: Path) -> None:
    for name in (".notes.yml", "README.md", "course.yml~"):
        (site / COURSE / name).write_text("x")
    assert problems_of(site) == []


def test_paths_that_differ_in_capitals_only_are_a_fault() -> None:
    files = {
        path.relative_to(BASE).as_posix(): path.read_bytes() for path in BASE.rglob("*") if path.is_file()
    }
    files["course_src/pillar-drill/Kit.yml"] = files["course_src/pillar-drill/kit.yml"]
    course, problems = course_from_files(
        files,
        "pillar-drill",
        profile="uk",
        course_dir="course_src/pillar-drill",
        quiz_dir="quizzes/pillar-drill",
    )
    assert course is None
    assert "C027" in {problem.code for problem in problems}


def test_a_warning_does_not_stop_the_course(site: Path) -> None:
    (site / COURSE / "notes.txt").write_text("x")
    course, problems = load_course(site, "pillar-drill", profile="uk")
    assert course is not None
    assert only(problems).code == "C026"


def test_problems_are_sorted_by_place(site: Path) -> None:
    for path in site.rglob("*.yml"):
        path.write_text(path.read_text() + "odd: 1\n")
    places = [problem.place for problem in problems_of(site)]
    assert len(places) > 5
    assert places == sorted(places)


def test_several_courses_are_loaded_in_the_order_asked_for(site: Path) -> None:
    shutil.copytree(site / COURSE, site / "course_src" / "again")
    shutil.copytree(site / "quizzes" / "pillar-drill", site / "quizzes" / "again")
    courses, problems = load_courses(site, ["pillar-drill", "again", "pillar-drill", "nowhere"], profile="uk")
    assert [course.id for course in courses] == ["pillar-drill", "again"]
    assert [problem.code for problem in problems] == ["C020"]


def test_other_folders_can_be_named(site: Path) -> None:
    shutil.move(site / "course_src", site / "courses")
    shutil.move(site / "quizzes", site / "banks")
    course, problems = load_course(
        site, "pillar-drill", profile="uk", courses_dir="courses", quizzes_dir="banks"
    )
    assert course is not None, problems
    assert course.place.file == "courses/pillar-drill/course.yml"


@pytest.mark.parametrize("written", ["./quizzes", "quizzes/", "course_src/../quizzes"])
def test_a_folder_may_be_written_in_any_way(site: Path, written: str) -> None:
    course, problems = load_course(site, "pillar-drill", profile="uk", quizzes_dir=written)
    assert problems == []
    assert course is not None
    assert course.check is not None


def test_courses_may_lie_beside_mkdocs_yml_but_no_folder_outside_of_it_is_read(site: Path) -> None:
    course, problems = load_course(
        site / "course_src", "pillar-drill", profile="uk", courses_dir=".", quizzes_dir="../quizzes"
    )
    assert course is None
    assert {problem.code for problem in problems} == {"C024", "L001", "U004"}


def test_a_folder_into_which_nobody_may_look_is_not_there(
    site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "stat", refuse)
    monkeypatch.setattr(os, "listdir", refuse)
    assert only(problems_of(site)).code == "C020"


def test_two_spellings_of_one_letter_do_not_make_two_options(site: Path) -> None:
    path = site / "quizzes/pillar-drill/guard.yml"
    text = path.read_text(encoding="utf-8")
    first, second = re.findall(r'\{id: \w+, text: "([^"]+)"', text)[:2]
    text = text.replace(f'"{first}"', '"caf\u00e9"').replace(f'"{second}"', '"cafe\u0301"')
    path.write_text(text, encoding="utf-8")
    assert "Q014" in {problem.code for problem in problems_of(site)}


def test_the_collector_of_circles_is_on_again_afterwards() -> None:
    assert gc.isenabled()
    load_course(BASE, "pillar-drill", profile="uk")
    assert gc.isenabled()
