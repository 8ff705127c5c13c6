"""What a browser marks proves knowledge: nothing that it shows calls anybody competent.

The sheet of a practical has both words beside a box, for the assessor's pen.
"""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

from drill_pages import FACTS, drill_course

from journeybook.content.wording import Wording
from journeybook.marking.compiled import compile_course
from journeybook.pages.check_page import check_leaf

THEME = Path(str(files("journeybook.theme")))
PAGES = Path(str(files("journeybook.pages")))
ONLY_ON_PAPER = {"practical.html"}
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
    assert set(saying) == ONLY_ON_PAPER


def test_the_check_and_its_certificate_do_not_say_competent() -> None:
    course = drill_course()
    leaf = check_leaf(course, Wording(course), FACTS, compile_course(course))
    assert "data-check-certificate" in leaf.body
    assert SAYS_COMPETENT.search(leaf.title + leaf.body) is None
