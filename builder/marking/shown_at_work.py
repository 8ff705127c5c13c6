"""What a course shows for the shop as plain data: practicals, job cards, and the duties that it covers.

As in ``shown``, a text stands by language under ``texts`` and everything else beside it.
"""

from __future__ import annotations

from journeybook.content.model import CardBlock, Course, Duties, JobCard, Practical
from journeybook.marking.kind import Json
from journeybook.marking.question_texts import Say


def shown_at_work(course: Course, say: Say) -> dict[str, Json]:
    """Return the members ``practicals``, ``job-cards`` and ``duties`` of the public part, each by id."""
    language = course.languages[0]
    return {
        "practicals": {each.id: _practical(each, language, say) for each in course.practicals.values()},
        "job-cards": {each.id: _job_card(each, language, say) for each in course.job_cards.values()},
        "duties": {} if course.duties is None else _duties(course.duties, language, say),
    }


def _practical(practical: Practical, language: str, say: Say) -> Json:
    return {
        "minutes": practical.minutes,
        "steps": [
            {
                "id": step.id,
                "critical": step.critical,
                "outcome": step.outcome,
                "source": list(step.sources),
            }
            for step in practical.steps
        ],
        "texts": {
            language: {
                "title": say(practical.title),
                "intro": say(practical.intro),
                "safety": [say(condition) for condition in practical.safety],
                "steps": {
                    step.id: {"text": say(step.text), "look-for": say(step.look_for)}
                    for step in practical.steps
                },
                "stop": say(practical.stop),
            }
        },
    }


def _job_card(card: JobCard, language: str, say: Say) -> Json:
    texts: dict[str, Json] = {
        "title": say(card.title),
        "when": say(card.when),
        "body": [_block(block, say) for block in card.body],
    }
    # Only where it is said: the digests of releases from before there was such a text stay what they are.
    if card.keep:
        texts["keep"] = say(card.keep)
    return {"source": list(card.sources), "tag": card.tag, "texts": {language: texts}}


def _block(block: CardBlock, say: Say) -> Json:
    said: dict[str, Json] = {"kind": block.kind.value, "text": say(block.text)}
    if block.lines:
        said["lines"] = [say(line) for line in block.lines]
    if block.table is not None:
        said["columns"] = [say(column) for column in block.table.columns]
        said["rows"] = [[say(cell) for cell in row] for row in block.table.rows]
    return said


def _duties(duties: Duties, language: str, say: Say) -> dict[str, Json]:
    return {
        duty.id: {
            "source": list(duty.sources),
            "covered-by": {
                "lessons": list(duty.covered_by.lessons),
                "questions": list(duty.covered_by.questions),
                "practicals": list(duty.covered_by.practicals),
                "job-cards": list(duty.covered_by.job_cards),
            },
            "texts": {language: {"text": say(duty.text)}},
        }
        for duty in duties.duties
    }
