"""What course.yml may hold."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.formats.parts import ID, LINE, NAME, SENTENCES, source_field
from journeybook.content.model import Approval, Contact, CriticalFact, Issuer, Outcome, Validity
from journeybook.diagnostics.problem import Place
from journeybook.source.listing import Listing
from journeybook.source.scalars import Day, Flag, Text, Whole
from journeybook.source.shapes import Field, Record


@dataclass(frozen=True, kw_only=True)
class CourseFile:
    """course.yml as read."""

    title: str
    summary: str
    version: str
    languages: tuple[str, ...]
    equipment: str
    issuer: Issuer
    contact: Contact
    approved: Approval | None
    validity: Validity
    outcomes: tuple[Outcome, ...]
    critical_facts: tuple[CriticalFact, ...]
    cautions: tuple[str, ...]
    certificate_limits: tuple[str, ...]
    draft: bool
    """True where missing reasons and sources are warnings for now."""
    place: Place


VERSION = Text(
    40,
    pattern=r"[0-9A-Za-z][0-9A-Za-z._-]*",
    rule=(
        "a version is letters, digits, points and hyphens without spaces",
        "Write something like `1.0` in quotes, and raise it with each release.",
    ),
    code="C014",
)
LANGUAGE = Text(
    35,
    pattern=r"[a-z]{2,3}(-[A-Z][a-z]{3})?(-([A-Z]{2}|[0-9]{3}))?(-([0-9a-z]{5,8}|[0-9][0-9a-z]{3}))*",
    rule=(
        "that is not a language tag",
        "Write a BCP 47 tag such as `en`, `pl` or `pt-BR`.",
    ),
    code="C015",
)

COURSE = Record(
    CourseFile,
    "course",
    [
        Field("title", NAME, "What the course is called.", "Set the guard on a pillar drill"),
        Field(
            "summary",
            SENTENCES,
            "One or two sentences about whom it is for.",
            "For everyone who drills in the fitting bay.",
        ),
        Field("version", VERSION, "The version, in quotes; raise it with each release.", "1.0"),
        Field(
            "languages",
            Listing(LANGUAGE, least=1, most=40, noun="language"),
            "BCP 47 tags; the first is the language the files are written in.",
            ["en"],
        ),
        Field(
            "equipment",
            NAME,
            "The type of equipment the training is for.",
            "Pillar drill with telescopic guard",
        ),
        Field(
            "issuer",
            Record(
                Issuer,
                "issuer",
                [
                    Field("name", NAME, "In whose name the certificate stands.", "Quillon Basin Works"),
                    Field("place", NAME, "Where that is.", "Basin Lane", default="", name="location"),
                ],
                placed=False,
            ),
            "In whose name the certificate stands.",
            {"name": "Quillon Basin Works"},
        ),
        Field(
            "contact",
            Record(
                Contact,
                "contact",
                [
                    Field("name", NAME, "The human being to ask.", "T. Marrable"),
                    Field("role", NAME, "What they do here.", "training lead"),
                    Field(
                        "reach",
                        NAME,
                        "How to reach them: a room, a time, a number.",
                        "the office by the slip",
                    ),
                ],
                placed=False,
            ),
            "The human being to ask.",
            {"name": "T. Marrable", "role": "training lead", "reach": "the office by the slip"},
        ),
        Field(
            "approved",
            Record(
                Approval,
                "approval",
                [
                    Field("by", NAME, "Who approved this version for use.", "T. Marrable"),
                    Field("on", Day(), "The day of the approval.", "2026-11-20"),
                ],
                placed=False,
            ),
            "Who approved this version, and when; without it the course stays a draft.",
            {"by": "T. Marrable", "on": "2026-11-20"},
            default=None,
        ),
        Field(
            "validity",
            Record(
                Validity,
                "validity",
                [
                    Field("months", Whole(1, 120), "After how many months training is due again.", 12),
                    Field(
                        "grounds",
                        SENTENCES,
                        "Why it is that long.",
                        "Once a year, and when the drill changes.",
                    ),
                    source_field(),
                ],
                placed=False,
            ),
            "How long training counts before it is due again.",
            {"months": 12, "grounds": "Once a year, and when the drill changes."},
        ),
        Field(
            "outcomes",
            Listing(
                Record(
                    Outcome,
                    "outcome",
                    [
                        Field("id", ID, "The id that lessons and questions name.", "guard-set"),
                        Field(
                            "text",
                            SENTENCES,
                            "What a learner can do afterwards.",
                            "Set the guard to the drill's length.",
                        ),
                    ],
                    id_key="id",
                ),
                least=1,
                most=200,
                noun="outcome",
            ),
            "What a learner can do after the course.",
            [{"id": "guard-set", "text": "Set the guard to the drill's length."}],
        ),
        Field(
            "critical-facts",
            Listing(
                Record(
                    CriticalFact,
                    "critical fact",
                    [
                        Field("id", ID, "The id that questions name with `critical`.", "isolate-first"),
                        Field(
                            "text",
                            SENTENCES,
                            "What nobody may get wrong.",
                            "Isolate before you touch the guard.",
                        ),
                        Field(
                            "why",
                            SENTENCES,
                            "What happens otherwise.",
                            "A spindle that starts takes the glove with it.",
                        ),
                        source_field(),
                    ],
                    id_key="id",
                ),
                most=50,
                noun="critical fact",
            ),
            "What nobody may get wrong; each check asks one question for each.",
            [
                {
                    "id": "isolate-first",
                    "text": "Isolate first.",
                    "why": "It starts by itself.",
                    "source": ["kit"],
                }
            ],
            default=(),
        ),
        Field(
            "cautions",
            Listing(SENTENCES, least=1, most=20, noun="caution"),
            "What stands at the foot of every page.",
            ["Training aid. The maker's instructions come first."],
        ),
        Field(
            "does-not-prove",
            Listing(LINE, least=1, most=20, noun="limit"),
            "What a certificate of this course does not prove.",
            ["medical fitness"],
            name="certificate_limits",
        ),
        Field(
            "draft",
            Flag(),
            "While true, missing reasons and sources are warnings.",
            True,
            default=False,
        ),
    ],
)
