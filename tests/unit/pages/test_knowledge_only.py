"""What a browser marks proves knowledge: nothing that it shows calls anybody competent.

The sheet of a practical has both words beside a box, for the assessor: the template for the pen, its scripts for the
form. Nothing of them is loaded on another page.
"""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

from drill_pages import FACTS, drill_course

from journeybook.content.wording import Wording
from journeybook.marking.compiled import compile_course
from journeybook.pages.check_page import check_leaf
from journeybook.pages.script_words import SCRIPT_WORDS

THEME = Path(str(files("journeybook.theme")))
PAGES = Path(str(files("journeybook.pages")))
OF_A_PRACTICAL = {"practical.html", "practical_words.py"} | {
    name.rpartition("/")[2]
    for name in (THEME / "js" / "order-practical.txt").read_text(encoding="utf-8").split()
}
FROM_AN_ASSESSOR = re.compile(
    r"competent\b.*cannot be chosen|^critical, and .*not yet competent\.$|can only say .not yet competent"
)
"""The texts of the form that hold the word."""
SAYS_COMPETENT = re.compile(r"competen(?:t|ce|cy)", re.IGNORECASE)


def test_no_template_script_or_translation_says_competent() -> None:
    read = [
        path
        for folder, endings in ((THEME, {".html", ".js", ".po"}), (PAGES, {".py"}))
        for path in sorted(folder.rglob("*"))
        if path.suffix in endings
    ]
    assert len(read) > 50
    saying = [path.name for path in read if SAYS_COMPETENT.search(path.read_text(encoding="utf-8"))]
    assert "practical.html" in saying
    assert set(saying) <= OF_A_PRACTICAL


def test_of_what_scripts_say_only_the_form_of_a_practical_says_competent() -> None:
    saying = [words for words in SCRIPT_WORDS if SAYS_COMPETENT.search(words)]
    assert len(saying) == 5
    for words in saying:
        assert FROM_AN_ASSESSOR.search(words.lower()), words


def test_the_check_and_its_certificate_do_not_say_competent() -> None:
    course = drill_course()
    leaf = check_leaf(course, Wording(course), FACTS, compile_course(course))
    assert "data-check-certificate" in leaf.body
    assert SAYS_COMPETENT.search(leaf.title + leaf.body) is None
