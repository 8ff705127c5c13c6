"""The page of a sitting: one file with everything in it, that opens from a stick, a share or a server.

It holds the sealed record and nothing else of the course's check. The policy names its one style and its one script
by their SHA-256, so nothing else in the file can run, and nothing can be loaded or sent.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.marking.kind import Json
from journeybook.pages import assets
from journeybook.pages.build_facts import short_digest
from journeybook.pages.engine import render
from journeybook.pages.filters import script_json
from journeybook.pages.gaps import Cut, gap
from journeybook.pages.one_file import policy
from journeybook.pages.route_card import check_questions
from journeybook.pages.script_words import words_script
from journeybook.pages.shell import ICON, direction_of
from journeybook.pages.words_catalogue import SOURCE_LANGUAGE
from journeybook.sittings.sitting import Sitting


def sitting_page(course: Course, sitting: Sitting, record: Mapping[str, Json], words: Sequence[str]) -> bytes:
    """The whole document; ``words`` is the list that passphrases are made of."""
    language, wording = course.languages[0], Wording(course)
    assert course.check is not None
    style = assets.style_with_fonts()
    script = assets.sitting_script()
    if language != SOURCE_LANGUAGE:
        script = f"{script}\n{words_script(language)}"
    assert "</script" not in script.lower(), "a script that closes its own element"
    frame = render(
        language,
        "sitting.html",
        language=language,
        direction=direction_of(language),
        policy=policy(style, script),
        icon=ICON,
        course=course,
        course_title=wording.plain(course.title),
        check_title=wording.plain(course.check.title),
        check=course.check,
        questions=check_questions(course),
        cautions=[Markup(wording.inline(caution)) for caution in course.cautions],
        sitting=sitting,
        digest=short_digest(sitting.digest),
        style=Markup(gap("style")),
        script=Markup(gap("script")),
        sealed=Markup(gap("sealed")),
        beginnings=" ".join(word[:4] for word in words),
    )
    return Cut(frame).filled(
        {
            "style": style.encode(),
            "script": script.encode(),
            "sealed": script_json(dict(record)).encode(),
        }
    )
