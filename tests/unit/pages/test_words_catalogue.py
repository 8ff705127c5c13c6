from __future__ import annotations

import builtins
from pathlib import Path
from typing import Any

import pytest

from journeybook.diagnostics.extras import to_install
from journeybook.diagnostics.problem import Place
from journeybook.pages import words_catalogue
from journeybook.pages.words_catalogue import catalogue_problems, load_catalogue

HERE = Place(file="course_src/pillar-drill/course.yml", line=4)

PO = """
msgid ""
msgstr ""
"Content-Type: text/plain; charset=UTF-8\\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<12 || n%100>14) ? 1 : 2);\\n"

msgid "Route card"
msgstr "Karta drogowa"

#, fuzzy
msgid "Search"
msgstr "Zgadnięte"

msgid "Words"
msgstr ""

msgid "%(lessons)s lesson"
msgid_plural "%(lessons)s lessons"
msgstr[0] "jedna"
msgstr[1] "kilka"
msgstr[2] "wiele"
"""


@pytest.fixture
def polish_theme(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "locale").mkdir()
    (tmp_path / "locale" / "pl.po").write_text(PO, encoding="utf-8")
    monkeypatch.setattr(words_catalogue, "files", lambda _package: tmp_path)
    load_catalogue.cache_clear()
    return tmp_path


@pytest.fixture(autouse=True)
def fresh() -> Any:
    yield
    load_catalogue.cache_clear()


def test_english_needs_no_file_and_has_no_problem() -> None:
    words, problems = load_catalogue("en-GB")
    assert words.gettext("Route card") == "Route card"
    assert (words.ngettext("one", "more", 1), words.ngettext("one", "more", 0)) == ("one", "more")
    assert problems == ()


@pytest.mark.usefixtures("polish_theme")
def test_words_come_from_the_file_of_the_language() -> None:
    words, problems = load_catalogue("pl-PL")
    assert words.gettext("Route card") == "Karta drogowa"
    assert problems == ()


@pytest.mark.usefixtures("polish_theme")
def test_a_word_that_is_missing_or_only_guessed_stays_english() -> None:
    words, _ = load_catalogue("pl")
    assert [words.gettext(word) for word in ("Search", "Words", "Unknown")] == ["Search", "Words", "Unknown"]


@pytest.mark.usefixtures("polish_theme")
def test_the_plural_follows_the_rule_of_the_language() -> None:
    words, _ = load_catalogue("pl")
    forms = [words.ngettext("%(lessons)s lesson", "%(lessons)s lessons", n) for n in (1, 2, 5, 22)]
    assert forms == ["jedna", "kilka", "wiele", "kilka"]


def with_text(theme: Path, english: str, polish: str) -> None:
    path = theme / "locale" / "pl.po"
    path.write_text(f'{PO}\nmsgid "{english}"\nmsgstr "{polish}"\n', encoding="utf-8")


@pytest.mark.parametrize(
    ("english", "polish"),
    [
        pytest.param("Put the card of {name} away", "Odłóż kartę {nmae}", id="misspelt"),
        pytest.param("Put the card of {name} away", "Odłóż kartę", id="left out"),
        pytest.param("Fig. %(number)s", "Rys. %(number)s z %(total)s", id="one too many"),
        pytest.param("Fig. %(number)s", "Rys. %(number)q", id="of another kind"),
        pytest.param("Fig. %(number)s", "Rys. %(number)", id="cut short"),
        pytest.param("Route", "100 % drogi", id="a sign that is taken for a gap"),
    ],
)
def test_a_text_with_other_gaps_than_the_english_stays_english_and_is_named(
    polish_theme: Path, english: str, polish: str
) -> None:
    with_text(polish_theme, english, polish)
    assert load_catalogue("pl")[0].gettext(english) == english
    (problem,) = catalogue_problems(["pl"], HERE)
    assert (problem.code, problem.level.value, problem.place) == ("T003", "warning", HERE)
    assert f"“{english}”" in problem.message


@pytest.mark.parametrize(
    ("english", "polish"),
    [
        pytest.param("{done} of {total} answered", "Z {total} odpowiedzi jest {done}", id="turned round"),
        pytest.param("The cut is {percent} %.", "Próg: {percent} procent.", id="a percent sign in words"),
    ],
)
def test_a_text_with_the_same_gaps_is_taken(polish_theme: Path, english: str, polish: str) -> None:
    with_text(polish_theme, english, polish)
    words, problems = load_catalogue("pl")
    assert (words.gettext(english), problems) == (polish, ())


def test_a_plural_form_with_a_gap_that_the_english_lacks_stays_english(polish_theme: Path) -> None:
    path = polish_theme / "locale" / "pl.po"
    path.write_text(PO.replace('"wiele"', '"%(lekcje)s lekcji"'), encoding="utf-8")
    words, problems = load_catalogue("pl")
    assert words.ngettext("%(lessons)s lesson", "%(lessons)s lessons", 5) == "%(lessons)s lessons"
    assert [problem.code for problem in problems] == ["T003"]


def test_a_language_without_words_is_a_warning_where_the_author_names_it() -> None:
    (problem,) = catalogue_problems(["en", "qtz"], HERE)
    assert (problem.code, problem.place) == ("T001", HERE)
    assert problem.message == "The interface has no words in 'qtz': buttons and headings would stay English."


@pytest.mark.usefixtures("polish_theme")
def test_without_babel_the_mend_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def without_babel(name: str, *rest: Any) -> Any:
        if name.startswith("babel"):
            raise ImportError(name)
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", without_babel)
    (problem,) = catalogue_problems(["pl"], HERE)
    assert (problem.code, problem.level.value) == ("T002", "fault")
    assert problem.mend == f"Install it with: {to_install('words')}."
