"""What drills/ID.yml may hold."""

from __future__ import annotations

from journeybook.content.formats.parts import ID, LINE, SENTENCES, source_field
from journeybook.content.model.drills import Deed, Drill, Moment
from journeybook.source.listing import Listing
from journeybook.source.scalars import Text, Whole
from journeybook.source.shapes import Field, Record

_DEED = Record(
    Deed,
    "deed",
    [
        Field("id", ID, "An id that no other deed of the drill has.", "stop"),
        Field("text", SENTENCES, "What one does.", "Let the feed lever go."),
        Field("to", ID, "The moment that it leads to.", "stopped", default="", name="leads_to"),
        Field("told", SENTENCES, "What happens then.", "The spindle runs down.", default=""),
        Field("penalty", Whole(0, 1000), "How many of the 1000 marks it costs.", 250, default=0),
        Field(
            "critical",
            Text(4_000, instead="Write here, as a text, what it does to people."),
            "What it does to people. Ends the drill with no marks, and in a check the check is failed.",
            "The swarf takes the glove, and the hand with it.",
            default="",
        ),
    ],
    id_key="id",
)

_MOMENT = Record(
    Moment,
    "moment",
    [
        Field("id", ID, "An id within the drill.", "jam"),
        Field("text", SENTENCES, "Where things stand.", "The drill jams and the work starts to turn."),
        Field(
            "deeds",
            Listing(_DEED, most=12, noun="deed"),
            "What can be done; none where the drill ends.",
            [
                {"id": "stop", "text": "Hit the stop.", "to": "stopped"},
                {"id": "hold", "text": "Hold the work.", "critical": "It breaks the wrist."},
            ],
            default=(),
        ),
        Field("seconds", Whole(3, 600), "How long there is to act.", 8, default=0),
        Field("late", ID, "The deed that happens when nobody has acted in time.", "hold", default=""),
        Field("end", Whole(0, 1000), "Marks for ending here.", 1000, default=None, name="worth"),
    ],
    id_key="id",
)

DRILL = Record(
    Drill,
    "drill",
    [
        Field("title", LINE, "What the drill is called.", "The drill jams"),
        source_field(),
        Field("figure", ID, "A figure shown with it.", "guard-parts", default=""),
        Field("situation", SENTENCES, "Where it begins.", "You open up a hole in a thin plate."),
        Field("start", ID, "The moment with which it begins.", "jam"),
        Field(
            "moments",
            Listing(_MOMENT, least=2, most=60, noun="moment"),
            "The moments, each with what can be done in it.",
            [
                {
                    "id": "jam",
                    "text": "It sticks.",
                    "deeds": [
                        {"id": "stop", "text": "Hit the stop.", "to": "stopped"},
                        {"id": "hold", "text": "Hold the work.", "critical": "It breaks the wrist."},
                    ],
                },
                {"id": "stopped", "text": "All stands still.", "end": 1000},
            ],
        ),
    ],
)
