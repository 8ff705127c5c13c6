"""The commands, run as a user runs them, on a course that `journeybook new` makes."""

from __future__ import annotations

import errno
import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from journeybook.cli import main
from journeybook.content.loader import load_course
from journeybook.marking import canonical
from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.marking.compiled import compile_course
from journeybook.marking.draw import draw_form

Run = Callable[..., Result]
COURSE = Path("course_src/first-course")
QUIZZES = Path("quizzes/first-course")


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs commands in a fresh first course; never lets an exception through as anything but a failure."""
    runner = CliRunner()
    made = runner.invoke(main, ["new", str(tmp_path / "ours")], catch_exceptions=False)
    assert made.exit_code == 0, made.output
    monkeypatch.chdir(tmp_path / "ours")

    def invoke(*arguments: str) -> Result:
        return runner.invoke(main, list(arguments), catch_exceptions=False)

    return invoke


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_a_new_course_has_no_faults(run: Run) -> None:
    result = run("faults")
    assert result.exit_code == 0, result.output


def test_new_says_how_to_call_mkdocs_from_a_folder_with_a_space_in_its_name(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, ["new", "Unsere Übung"], catch_exceptions=False)
    assert '  cd "Unsere Übung"\n' in result.output
    command = next(line.strip() for line in result.output.splitlines() if line.endswith(" serve"))
    assert Path(command.removesuffix(" serve").strip('"')).is_file()


def test_new_refuses_a_folder_that_holds_something(run: Run) -> None:
    result = run("new", ".")
    assert result.exit_code == 1
    assert "is there already and is not an empty folder" in result.output


def test_faults_names_file_line_and_cure_and_exits_with_1(run: Run) -> None:
    change(QUIZZES / "bits.yml", "right: b", "right: d")
    result = run("faults")
    assert result.exit_code == 1
    assert "Fault Q012   The right answer names an option that is not there." in result.output
    where = "quizzes/first-course/bits.yml, line 46, column 12; question isolate-check-2"
    assert where in " ".join(result.output.split())
    assert "Use one of `a`, `b`, `c`, or add an option with id `d`." in result.output


def test_faults_as_json_is_for_programs(run: Run) -> None:
    change(QUIZZES / "bits.yml", "right: b", "right: d")
    problems = json.loads(run("faults", "--json").output)
    assert [problem["code"] for problem in problems if problem["level"] == "fault"] == ["Q012"]


def test_a_missing_mkdocs_yml_is_said_plainly(run: Run) -> None:
    result = run("faults", "-f", "other.yml")
    assert result.exit_code == 2
    assert "There is no other.yml here; go to the folder that holds it, or name it with -f." in result.output


def test_why_tells_the_story_of_a_code(run: Run) -> None:
    result = run("why", "q012")
    assert result.exit_code == 0
    assert result.output.startswith("# Q012 ")
    assert "## Mended" in result.output


def test_why_of_an_unknown_code_names_near_ones(run: Run) -> None:
    result = run("why", "Q0123")
    assert result.exit_code == 2
    assert "Q012" in result.output


def test_schema_writes_a_schema_for_each_kind_of_file(run: Run) -> None:
    result = run("schema", "schemas")
    assert result.exit_code == 0
    written = {path.name for path in Path("schemas").iterdir()}
    assert {"course.schema.json", "bank.schema.json", "lesson.schema.json"} <= written


def test_release_refuses_a_draft_and_says_why(run: Run) -> None:
    result = run("release", "first-course")
    assert result.exit_code == 1
    assert "R00" in result.output
    assert not (COURSE / "releases").exists()


def test_release_of_a_course_that_is_not_named_offers_the_near_one(run: Run) -> None:
    result = run("release", "first-curse")
    assert result.exit_code == 2
    assert "first-course" in result.output


def test_mark_says_what_is_wrong_with_a_file_that_is_no_attempt(run: Run) -> None:
    Path("returned.json").write_text("{}", encoding="utf-8")
    result = run("mark", "returned.json")
    assert result.exit_code == 1
    assert "returned.json" in result.output
    assert "Traceback" not in result.output


def test_mark_says_that_the_course_of_a_record_is_not_here(run: Run) -> None:
    kept = Path(__file__).parents[1] / "kept" / "format-1" / "attempt-passed.json"
    result = run("mark", str(kept))
    assert result.exit_code == 1
    assert "M013" in result.output
    assert "which this project does not hold" in " ".join(result.output.split())


def hand_in(right: bool) -> Path:
    """An attempt at the check of the course as it stands, every answer right or every answer left out."""
    course, problems = load_course(Path(), "first-course", profile="here")
    assert course is not None, problems
    compiled = compile_course(course)
    public, private = compiled.content["public"], compiled.content["private"]
    form = draw_form(public["plan"], "a seed", [])
    answers = {"isolate-check-1": "a", "isolate-check-2": "b", "bit-size": {"value": "13", "unit": "mm"}}
    assert set(answers) <= set(private["keys"])
    attempt = Attempt(
        course=course.id,
        version=course.version,
        digest=compiled.digest,
        profile="here",
        language="en",
        seed="a seed",
        avoid=(),
        form=tuple(
            Asked(question=line["q"], variant=line["variant"], options=tuple(line["options"]))
            for line in form
        ),
        answers={line["q"]: answers[line["q"]] for line in form} if right else {},
        shown=tuple(line["q"] for line in form),
        started="2026-11-24T09:00:00Z",
        ended="2026-11-24T09:05:00Z",
        card=Card(id="0" * 32, name="R. Adeyemi-Holt", workplace="Quillon Basin Works"),
    )
    path = Path("returned.json")
    path.write_bytes(write(attempt))
    return path


def test_mark_gives_marks_must_pass_and_fingerprint(run: Run) -> None:
    result = run("mark", str(hand_in(right=True)))
    assert result.exit_code == 0, result.output
    assert "knowledge check passed, self-recorded; practical not observed" in result.output
    assert "Marks        2 of 2; 80 % needed" in result.output
    assert "Must-pass    isolate-first: right" in result.output
    assert "version 0.1 (draft)" in result.output


def test_mark_of_an_empty_attempt_is_not_yet_passed(run: Run) -> None:
    result = run("mark", str(hand_in(right=False)), "--json")
    content = json.loads(result.output)
    assert content["result"]["passed"] is False
    assert content["result"]["marks"] == 0


def with_the_clock_set_back(returned: Path) -> Path:
    content = json.loads(returned.read_bytes())
    returned.write_bytes(canonical.write(content | {"ended": "2026-11-24T08:00:00Z"}))
    return returned


def test_mark_gives_the_result_of_a_record_whose_clock_was_set_back_and_warns(run: Run) -> None:
    result = run("mark", str(with_the_clock_set_back(hand_in(right=True))))
    assert result.exit_code == 0, result.output
    assert "Marks        2 of 2" in result.output
    assert "Warning M011" in result.output


def test_mark_tells_a_program_of_a_warning_within_the_one_object(run: Run) -> None:
    result = run("mark", str(with_the_clock_set_back(hand_in(right=True))), "--json")
    content = json.loads(result.output)
    assert content["result"]["passed"] is True
    assert [(problem["code"], problem["level"]) for problem in content["problems"]] == [("M011", "warning")]


def test_mark_names_a_file_beside_mkdocs_yml_as_seen_from_there(run: Run) -> None:
    Path("returned.json").write_text("{}", encoding="utf-8")
    result = run("mark", str(Path("returned.json").resolve()))
    assert "Where        returned.json\n" in result.output


def test_a_course_that_says_draft_is_not_released_though_somebody_approved_it(run: Run) -> None:
    approval = 'approved: {by: "T. Marrable", on: 2026-11-20}\n'
    change(COURSE / "course.yml", "draft: true\n", f"draft: true\n{approval}")
    result = run("release", "first-course")
    assert result.exit_code == 1
    assert "R001" in result.output
    assert not (COURSE / "releases").exists()


def test_a_second_version_is_released_beside_the_first_with_its_warnings_told_once(run: Run) -> None:
    change(COURSE / "course.yml", "draft: true\n", 'approved: {by: "T. Marrable", on: 2026-11-20}\n')
    assert run("release", "first-course").exit_code == 0
    assert run("faults").output == "No faults and no warnings.\n"
    change(QUIZZES / "bits.yml", 'right: "13"', 'right: "16"')
    change(COURSE / "course.yml", 'version: "0.1"', 'version: "0.2"')
    result = run("release", "first-course")
    assert result.exit_code == 0, result.output
    assert result.output.count("Warning R005") == 1
    assert sorted(each.name for each in (COURSE / "releases").iterdir()) == ["0.1", "0.2"]


def test_a_released_attempt_is_marked_when_the_course_has_moved_on(run: Run) -> None:
    change(COURSE / "course.yml", "draft: true\n", 'approved: {by: "T. Marrable", on: 2026-11-20}\n')
    released = run("release", "first-course")
    assert released.exit_code == 0, released.output
    returned = hand_in(right=True)
    change(QUIZZES / "bits.yml", "What is the largest bit for this drill?", "What is the largest bit here?")
    change(COURSE / "course.yml", 'version: "0.1"', 'version: "0.2"')
    result = run("mark", str(returned))
    assert result.exit_code == 0, result.output
    assert "version 0.1, here" in result.output


def test_a_name_with_a_line_break_cannot_write_a_line_of_its_own(run: Run) -> None:
    returned = hand_in(right=False)
    content = json.loads(returned.read_bytes())
    content["card"] |= {"name": "Ada\nResult       knowledge check passed", "workplace": "\x1b[2J\u202edehs"}
    returned.write_bytes(canonical.write(content))
    lines = run("mark", str(returned)).output.splitlines()
    assert [line for line in lines if line.startswith("Result")] == [
        "Result       not yet passed, self-recorded; practical not observed"
    ]
    assert lines[0] == "Card of      Ada\u240aResult       knowledge check passed, \u241b[2J<U+202E>dehs"


def test_a_release_that_cannot_be_read_is_passed_over(run: Run) -> None:
    returned = hand_in(right=True)
    (COURSE / "releases/0.0/here/compiled.json").mkdir(parents=True)
    assert run("mark", str(returned)).exit_code == 0


@pytest.mark.parametrize("command", ["new", "schema"])
def test_a_disk_that_refuses_is_told_in_a_sentence(run: Run, command: str) -> None:
    result = run(command, "mkdocs.yml/folder")
    assert result.exit_code == 1
    assert result.output.startswith("Error: mkdocs.yml")
    assert result.output.endswith(": Not a directory.\n")


def test_a_release_that_cannot_be_written_is_told_in_a_sentence(run: Run) -> None:
    change(COURSE / "course.yml", "draft: true\n", 'approved: {by: "T. Marrable", on: 2026-11-20}\n')
    (COURSE / "releases").mkdir()
    (COURSE / "releases/0.1").write_text("not a folder", encoding="utf-8")
    result = run("release", "first-course")
    assert result.exit_code == 1
    assert result.output.startswith("Error: ")


def test_a_release_that_finds_no_room_is_told_with_its_folder(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    change(COURSE / "course.yml", "draft: true\n", 'approved: {by: "T. Marrable", on: 2026-11-20}\n')

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("journeybook.commands.release.freeze", full)
    result = run("release", "first-course")
    assert result.exit_code == 1
    said = f"Error: The release could not be written to {Path.cwd() / COURSE / 'releases'}: No space left on device.\n"
    assert result.output == said


@pytest.mark.parametrize(
    "arguments",
    [("--help",), ("--version",), ("faults", "--help"), ("faults",), ("faults", "--json"), ("why", "Q012")],
)
@pytest.mark.skipif(not Path("/dev/full").exists(), reason="/dev/full is a device of Linux")
def test_output_that_finds_no_room_is_told_in_a_sentence(run: Run, arguments: tuple[str, ...]) -> None:
    run("faults")
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(
            [sys.executable, "-c", "from journeybook.cli import main; main()", *arguments],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )
    assert done.returncode == 1
    assert done.stderr == "Error: The output cannot be written: No space left on device.\n"


def test_a_first_course_that_finds_no_room_is_told_with_the_file(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(here: Path, there: Path, **_: object) -> None:
        # As shutil.copytree says it.
        reason = f"[Errno 28] No space left on device: '{here / 'kit.yml'}' -> '{there / 'kit.yml'}'"
        raise shutil.Error([(str(here / "kit.yml"), str(there / "kit.yml"), reason)])

    monkeypatch.setattr("journeybook.commands.new.shutil.copytree", full)
    result = run("new", "Zweiter Kurs ä")
    assert result.exit_code == 1
    assert result.output == (
        "Error: Zweiter Kurs ä/kit.yml could not be written: No space left on device. "
        "Take Zweiter Kurs ä away before you try again.\n"
    )


def test_a_schema_that_finds_no_room_is_told_with_its_file(run: Run) -> None:
    Path("Schemata ä/bank.schema.json").mkdir(parents=True)
    result = run("schema", "Schemata ä")
    assert result.exit_code == 1
    assert result.output.endswith(
        "Error: Schemata ä/bank.schema.json could not be written: Is a directory.\n"
    )


@pytest.mark.parametrize("command", ["mark", "new", "release", "schema", "why"])
def test_an_argument_left_out_is_not_understood(run: Run, command: str) -> None:
    result = run(command)
    assert result.exit_code == 2
    assert "Error: Missing argument " in result.output


@pytest.mark.parametrize("command", [("faults",), ("release", "first-course"), ("mark", "mkdocs.yml")])
def test_a_folder_in_place_of_mkdocs_yml_is_not_understood(run: Run, command: tuple[str, ...]) -> None:
    result = run(*command, "-f", "quizzes")
    assert result.exit_code == 2
    assert "File 'quizzes' is a directory." in result.output


def test_names_with_spaces_and_umlauts_are_names_like_others(run: Run) -> None:
    returned = hand_in(right=True).rename("Ergebnis von Åsa, 2. Versuch.json")
    Path("mkdocs.yml").rename("Übung eins.yml")
    assert run("mark", str(returned), "-f", "Übung eins.yml").exit_code == 0
    assert run("faults", "-f", "Übung eins.yml").exit_code == 0


@pytest.mark.parametrize("command", [("faults",), ("release", "first-course"), ("mark", "mkdocs.yml")])
def test_settings_that_are_wrong_are_told_like_any_fault(run: Run, command: tuple[str, ...]) -> None:
    change(Path("mkdocs.yml"), "      profile: here\n", "")
    result = run(*command)
    assert result.exit_code == 1
    assert result.output.startswith("Fault C002   This journeybook plugin has no `profile`.\n")


def test_settings_that_are_wrong_are_told_to_a_program_as_json(run: Run) -> None:
    change(Path("mkdocs.yml"), "[first-course]", "first-course")
    result = run("faults", "--json")
    assert result.exit_code == 1
    assert [(problem["code"], problem["file"]) for problem in json.loads(result.output)] == [
        ("C011", "mkdocs.yml")
    ]


def test_settings_that_only_mkdocs_knows_are_left_to_its_words(run: Run) -> None:
    change(Path("mkdocs.yml"), "docs_dir: course_src", "docs_dir: nowhere")
    result = run("faults")
    assert result.exit_code == 1
    assert result.output == "Error: mkdocs.yml cannot be used until that is mended.\n"


def test_a_day_to_come_is_warned_of_and_keeps_a_release_back(run: Run) -> None:
    change(COURSE / "course.yml", "draft: true\n", 'approved: {by: "T. Marrable", on: 9999-11-20}\n')
    result = run("faults")
    assert (result.exit_code, result.output.count("Warning C038")) == (0, 1)
    assert run("release", "first-course").exit_code == 1
    assert not (COURSE / "releases").exists()


def test_a_site_without_the_plugin_is_told_in_a_sentence(run: Run) -> None:
    Path("other.yml").write_text("site_name: Other\ndocs_dir: course_src\nplugins: []\n", encoding="utf-8")
    result = run("faults", "-f", "other.yml")
    assert result.exit_code == 1
    assert (
        result.output
        == "Error: other.yml: `plugins` does not name journeybook, with its courses and profile.\n"
    )


def test_what_another_course_lacks_does_not_keep_a_release_back(run: Run) -> None:
    change(COURSE / "course.yml", "draft: true\n", 'approved: {by: "T. Marrable", on: 2026-11-20}\n')
    change(Path("mkdocs.yml"), "[first-course]", "[first-course, second-course]")
    assert run("faults").exit_code == 1
    result = run("release", "first-course")
    assert result.exit_code == 0, result.output


def test_a_draft_attempt_cannot_be_marked_once_its_questions_changed(run: Run) -> None:
    returned = hand_in(right=True)
    change(QUIZZES / "bits.yml", "What is the largest bit for this drill?", "What is the largest bit here?")
    result = run("mark", str(returned))
    assert result.exit_code == 1
    assert "M008" in result.output or "M007" in result.output
