from __future__ import annotations

import re
from gettext import NullTranslations
from importlib.resources import files

import pytest

from journeybook.pages import script_words as module
from journeybook.pages.assets import SCRIPTS
from journeybook.pages.script_words import SCRIPT_WORDS, script_words, words_script

SAID = re.compile(r'Words\.say\(\s*"((?:[^"\\]|\\.)*)"')
CALLED = re.compile(r"Words\.say\(")


def scripts() -> dict[str, str]:
    home = files("journeybook.theme") / "js"
    names = [
        name
        for order in [*SCRIPTS.values(), "order-sitting.txt"]
        for name in (home / order).read_text(encoding="utf-8").split()
        if not name.startswith("vendor/")
    ]
    return {name: (home / name).read_text(encoding="utf-8") for name in names}


def test_every_text_that_a_script_says_is_in_the_table_and_no_other() -> None:
    said = {text for source in scripts().values() for text in SAID.findall(source)}
    assert said == set(SCRIPT_WORDS)


def test_every_text_is_written_where_it_is_said() -> None:
    for name, source in scripts().items():
        assert len(CALLED.findall(source)) == len(SAID.findall(source)), name


def test_no_text_is_listed_twice() -> None:
    assert len(set(SCRIPT_WORDS)) == len(SCRIPT_WORDS)


def test_in_english_nothing_needs_to_be_carried() -> None:
    assert script_words("en") == {}
    assert words_script("en") == "Words.set({});\n"


class Backwards(NullTranslations):
    def gettext(self, message: str) -> str:
        return "Zurück</script>" if message == "Undo" else message


def test_another_language_carries_what_differs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "load_catalogue", lambda _language: (Backwards(), ()))
    assert script_words("de") == {"Undo": "Zurück</script>"}
    assert "</script>" not in words_script("de")
