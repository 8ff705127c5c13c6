"""The observation sheet: what an assessor reads aloud, watches and fills in by hand while somebody shows a practical.

It says what the practical's page says, in the order in which it is needed: who and where, what has to be so before
anything is begun, when it is ended at once, the steps, and the result with its signatures.
"""

from __future__ import annotations

from datetime import datetime

from journeybook.content.model import Practical
from journeybook.paper.imprint import CourseInPrint, imprint_of, sources_of, standing_of
from journeybook.paper.press import SIZES, press
from journeybook.paper.rich_text import blocks_of, runs_of


def observation_pdf(
    printed: CourseInPrint, practical: Practical, *, made: datetime, paper: str = SIZES[0]
) -> bytes:
    """Return the PDF of one practical's sheet; raises NoPress, NotSet."""
    wording, course = printed.wording, printed.course
    data = {
        "title": wording.plain(practical.title),
        "language": printed.language,
        "paper": paper,
        "standing": standing_of(printed),
        "example": course.kit.is_example,
        "intro": blocks_of(wording, practical.intro),
        "safety": [blocks_of(wording, condition) for condition in practical.safety],
        "stop": blocks_of(wording, practical.stop),
        "steps": [
            {
                "text": blocks_of(wording, step.text),
                "look-for": blocks_of(wording, step.look_for),
                "critical": step.critical,
            }
            for step in practical.steps
        ],
        "limits": [runs_of(wording, limit) for limit in course.certificate_limits],
        "cautions": [runs_of(wording, caution) for caution in course.cautions],
        "sources": sources_of(printed, practical.sources),
        "imprint": imprint_of(printed),
        "words": _words(printed, practical),
    }
    return press("observation", data, made=made)


def _words(printed: CourseInPrint, practical: Practical) -> dict[str, str]:
    say = printed.say
    critical = sum(step.critical for step in practical.steps)
    counted = printed.catalogue.ngettext(
        "%(count)s step, %(critical)s critical",
        "%(count)s steps, %(critical)s of them critical",
        len(practical.steps),
    ) % {"count": len(practical.steps), "critical": critical}
    return {
        "kind": say("Practical: observed by an assessor"),
        "minutes": say("about %(minutes)s min") % {"minutes": practical.minutes},
        "example": say("Example unit: not valid for work"),
        "page": say("Page"),
        "person": say("Person observed"),
        "workplace": say("Workplace"),
        "unit": say("Unit: make, mark or number"),
        "place": say("Date and place"),
        "assessor": say("Assessor: name and role"),
        "second": say("Second observer, where there is one"),
        "basis": say("What makes the assessor fit to judge this: training, experience, who named them"),
        "confirm": say("Confirm first"),
        "nothing-begun": say("Nothing is begun until each of these is so."),
        "stop": say("End it at once"),
        "steps": say("Steps"),
        "counted": f"{counted}. {say('“Prompted” is marked beside yes, no or not seen wherever a hint was given.')}",
        "number": say("No."),
        "aloud": say("Read aloud, and what to look for"),
        "yes": say("Yes"),
        "no": say("No"),
        "not-seen": say("Not seen"),
        "prompted": say("Prompted"),
        "critical": say("Critical"),
        "look-for": say("Look for"),
        "note": say("Note"),
        "result": say("Result, in the assessor’s words"),
        "rule": say(
            "A critical step that is “no” or “not seen”, or that needed a hint, means not yet competent. "
            "It is practised and shown again another time."
        ),
        "competent": say("competent"),
        "not-yet": say("not yet competent"),
        "ended": say("ended before the last step, because"),
        "notes": say("Notes: what was seen, what was prompted, what comes next"),
        "fingerprint": say("Fingerprint of the record, where it was taken on a screen as well"),
        "sign-assessor": say("Assessor: signature, date"),
        "sign-second": say("Second observer: signature, date"),
        "sign-person": say("Person observed: signature, date"),
        "limits": say("It does not prove"),
        "from": say("From"),
    }
