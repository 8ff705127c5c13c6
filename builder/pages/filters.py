"""How plain values read on a page: durations, days, data for scripts, a drawing made safe to repeat."""

from __future__ import annotations

import json
import re
from datetime import date
from gettext import NullTranslations

from markupsafe import Markup

from journeybook.content.model import Figure
from journeybook.pages.words_catalogue import to_translate as _

_VIEW_BOX = re.compile(r'\bviewBox="[-\d.]+[\s,]+[-\d.]+[\s,]+([\d.]+)[\s,]')
_ENLARGED = 1.25
_MONTHS = (
    _("Jan"),
    _("Feb"),
    _("Mar"),
    _("Apr"),
    _("May"),
    _("Jun"),
    _("Jul"),
    _("Aug"),
    _("Sep"),
    _("Oct"),
    _("Nov"),
    _("Dec"),
)


def duration(minutes: int, words: NullTranslations) -> str:
    """``45 min``, ``2 h``, ``2 h 40 min``."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return words.gettext("%(minutes)d min") % {"minutes": rest}
    if not rest:
        return words.gettext("%(hours)d h") % {"hours": hours}
    return words.gettext("%(hours)d h %(minutes)d min") % {"hours": hours, "minutes": rest}


def day(when: date, words: NullTranslations) -> str:
    """``20 Nov 2026``; the month's short name is a word of the catalogue, so no locale data are needed."""
    return f"{when.day} {words.gettext(_MONTHS[when.month - 1])} {when.year}"


def script_json(data: object) -> Markup:
    """JSON that can stand in a ``<script>`` element: nothing in it closes the element or opens a comment.

    Source: HTML Living Standard, "Restrictions for contents of script elements".
    """
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    # Also the two line separators, so that the same text may stand in a script file.
    for character in "<>&\u2028\u2029":
        text = text.replace(character, f"\\u{ord(character):04x}")
    return Markup(text)


def drawing_id(figure: str, slug: str) -> str:
    """The id of the drawing itself, for a ``use`` element elsewhere on the leaf."""
    return f"{slug}-figure-{figure}-drawing"


def svg_for(figure: Figure, slug: str) -> Markup:
    """The drawing with its ids prefixed by the leaf's slug, because one drawing may stand on several leaves.

    The loader has checked the SVG and begun each of its ids with the figure's id. A width is set, so that the
    lettering of all drawings comes out a little larger than the text, whatever the size of the drawing.
    """
    name = re.escape(figure.id)
    svg = re.sub(
        rf'(\bid="|\bhref="#|url\(#|aria-(?:labelledby|describedby)=")(?={name})',
        lambda found: f"{found.group(1)}{slug}-",
        figure.svg,
    )
    view = _VIEW_BOX.search(svg)
    width = f' width="{round(float(view[1]) * _ENLARGED)}"' if view else ""
    svg = svg.replace("<svg ", f'<svg id="{drawing_id(figure.id, slug)}"{width} ', 1)
    return Markup(svg)
