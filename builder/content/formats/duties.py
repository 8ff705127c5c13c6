"""What duties/PROFILE.yml may hold."""

from __future__ import annotations

from journeybook.content.formats.parts import ID, SENTENCES, source_field
from journeybook.content.model.duties import Covering, Duties, Duty
from journeybook.source.listing import Listing
from journeybook.source.shapes import Field, Record


def _ids(key: str, describe: str, example: str) -> Field:
    shape = Listing(ID, most=200, or_single=True, noun="id")
    return Field(key, shape, describe, [example], default=())


_COVERING = Record(
    Covering,
    "covering",
    [
        _ids("lessons", "Ids of lessons.", "set-the-guard"),
        _ids("questions", "Ids of questions, of practice and of the check.", "guard-01"),
        _ids("practicals", "Ids of steps of practicals.", "isolate"),
        _ids("job-cards", "Names of job cards.", "before-you-drill"),
    ],
    placed=False,
    title="set of what covers a duty",
)

DUTIES = Record(
    Duties,
    "duties",
    [
        Field(
            "duties",
            Listing(
                Record(
                    Duty,
                    "duty",
                    [
                        Field("id", ID, "An id that no other duty of the file has.", "dangerous-parts"),
                        Field("text", SENTENCES, "What the rule asks.", "Nobody can reach a turning part."),
                        source_field(describe="The clauses: one id of sources.yml, or a list."),
                        Field(
                            "covered-by",
                            _COVERING,
                            "What in the course covers it.",
                            {"lessons": ["set-the-guard"], "questions": ["guard-01"]},
                        ),
                    ],
                    id_key="id",
                ),
                least=1,
                most=500,
                noun="duty",
            ),
            "The requirements, one by one.",
            [{"id": "dangerous-parts", "text": "…", "covered-by": {"lessons": ["set-the-guard"]}}],
        ),
    ],
    title="list of duties",
)
