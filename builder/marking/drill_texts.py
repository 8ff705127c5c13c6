"""A drill as the compiled course holds it: what is shown while it goes on, and what gives the answer away.

What follows a deed, and which deed happens when time is up, says which deeds are right, so both are private.
"""

from __future__ import annotations

from journeybook.content.model import Drill
from journeybook.marking.kind import Json
from journeybook.marking.question_texts import Say


def public_drill(drill: Drill, language: str, say: Say) -> dict[str, Json]:
    """Return ``{"source", "figure", "start", "moments": [{"id", "seconds", "deeds"}], "texts"}``."""
    return {
        "source": list(drill.sources),
        "figure": drill.figure,
        "start": drill.start,
        "moments": [
            {"id": moment.id, "seconds": moment.seconds, "deeds": [deed.id for deed in moment.deeds]}
            for moment in drill.moments
        ],
        "texts": {
            language: {
                "title": say(drill.title),
                "situation": say(drill.situation),
                "moments": {moment.id: say(moment.text) for moment in drill.moments},
                "deeds": {deed.id: say(deed.text) for deed in drill.deeds},
            }
        },
    }


def private_drill(drill: Drill, language: str, say: Say) -> dict[str, Json]:
    """Return ``{"late": {moment: deed}, "ends", "deeds": {id: {"to", "penalty"}}, "texts"}``.

    The texts are ``{language: {"told": {deed: text}, "critical": {deed: text}}}``.
    """
    return {
        "late": {moment.id: moment.late for moment in drill.moments if moment.late},
        "ends": {moment.id: moment.worth for moment in drill.moments if moment.worth is not None},
        "deeds": {deed.id: {"to": deed.leads_to, "penalty": deed.penalty} for deed in drill.deeds},
        "texts": {
            language: {
                "told": {deed.id: say(deed.told) for deed in drill.deeds if deed.told},
                "critical": {deed.id: say(deed.critical) for deed in drill.deeds if deed.critical},
            }
        },
    }
