"""The kit sheet: the facts of the very equipment used here, and those of the jurisdiction."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue


def kit_leaf(course: Course, wording: Wording) -> Leaf:
    """The sheet's values with source, page and who confirmed them; a value is found at ``kit-ID``."""
    language = course.languages[0]
    sheets = ((course.kit, "", ""), (course.profile, "profile-", course.profile.title))
    notes = {
        value.note: Markup(wording.inline(value.note))
        for sheet, _, _ in sheets
        for value in sheet.values.values()
        if value.note
    }
    return Leaf(
        path=f"{course.id}/kit.html",
        slug="kit",
        kind="kit",
        title=load_catalogue(language)[0].gettext("Kit sheet"),
        course=course.id,
        body=render(
            language, "kit.html", course=course, slug="kit", wording=wording, sheets=sheets, notes=notes
        ),
        language=language,
    )
