"""What a course is, byte for byte: everything that was asked, shown and marked, in one file.

The same course gives the same bytes on every machine. Their SHA-256 is the course's digest: it stands in each
attempt and on each certificate, and whoever holds the file can mark again.
"""

from __future__ import annotations

import hashlib
import unicodedata
from collections.abc import Mapping
from functools import cached_property
from typing import Any

from journeybook.content.model import BlockKind, Course, DrillQuestion, Lesson, Question
from journeybook.content.wording import Wording
from journeybook.marking import canonical
from journeybook.marking.calculator_texts import public_calculator
from journeybook.marking.described import private_goal, public_bench, public_trial
from journeybook.marking.draw import keeps_order, plan, questions_in_a_form
from journeybook.marking.drill_texts import private_drill, public_drill
from journeybook.marking.keys import lower
from journeybook.marking.kind import WEIGHT, Json, Key
from journeybook.marking.question_texts import Say, pointed_at, private_texts, public_texts
from journeybook.marking.shown import shown_around
from journeybook.marking.shown_at_work import shown_at_work

FORMAT = "journeybook compiled course 1"


class Compiled:
    """A compiled course and its digests, each worked out when it is first asked for.

    A release keeps everything; most pages of the preview need nothing of it. Asking raises ValueError for a question
    that cannot be lowered and ``canonical.NotCanonical`` for a text that has no bytes; the loader refuses both with
    their line.
    """

    def __init__(self, course: Course) -> None:
        self._course = course

    @property
    def data(self) -> bytes:
        """The contents of compiled.json."""
        return self._written[0]

    @property
    def content(self) -> Mapping[str, Json]:
        """What ``data`` holds."""
        return self._written[1]

    @cached_property
    def digest(self) -> str:
        """SHA-256 of ``data``, in hex."""
        return hashlib.sha256(self.data).hexdigest()

    @cached_property
    def digests(self) -> bytes:
        """The contents of digests.json: ``{"compiled", "texts": {language: hex}, "questions": {id: hex}}``."""
        return canonical.write(_digests(self.digest, self.content))

    @cached_property
    def _written(self) -> tuple[bytes, dict[str, Json]]:
        return _written(self._course)


def compile_course(course: Course) -> Compiled:
    """Return the compiled course, its bytes worked out already. Raises what asking for them raises."""
    compiled = Compiled(course)
    compiled.data  # noqa: B018 - asking works it out
    return compiled


def _written(course: Course) -> tuple[bytes, dict[str, Json]]:
    """Return the bytes of a course and what they hold."""
    keys = {question.id: lower(question, course) for question in course.questions.values()}
    language, say = course.languages[0], Wording(course).source
    private: dict[str, Json] = {
        "keys": dict(keys),
        "reasons": _reasons(course),
        "drills": {drill.id: private_drill(drill, language, say) for drill in course.drills.values()},
    }
    content: dict[str, Json] = {
        "format": FORMAT,
        "course": course.id,
        "version": course.version,
        "profile": course.profile.id,
        "languages": list(course.languages),
        "public": _public(course, keys),
        "private": private,
    }
    data = canonical.write(content)
    # No sign of JSON's own composes with a letter, so the whole is in composed form just when each text is.
    if not data.isascii() and not unicodedata.is_normalized("NFC", data.decode()):
        composed = _composed(content)
        assert isinstance(composed, dict)
        content, data = composed, canonical.write(composed)
    return data, content


def _public(course: Course, keys: Mapping[str, Key]) -> dict[str, Json]:
    """Return what may be seen before the answers."""
    language = course.languages[0]
    say = Wording(course).source
    how_drawn = plan(course, keys)
    cut: Json = None
    if course.check is not None and how_drawn is not None:
        cut = {"percent": course.check.percent, "of": WEIGHT * questions_in_a_form(how_drawn)}
    return {
        **shown_around(course, say),
        **shown_at_work(course, say),
        "cut": cut,
        **({"sealed": True} if course.check is not None and course.check.sealed else {}),
        "plan": how_drawn,
        "lessons": {
            lesson.id: {
                "minutes": lesson.minutes,
                "outcomes": list(lesson.outcomes),
                "source": list(lesson.sources),
                "practice": list(lesson.practice),
                "texts": {language: _lesson(lesson, say)},
            }
            for lesson in course.lessons
        },
        "questions": {
            question.id: _question(question, language, say) for question in course.questions.values()
        },
        "drills": {drill.id: public_drill(drill, language, say) for drill in course.drills.values()},
        "benches": {bench.id: public_bench(bench, language, say) for bench in course.benches.values()},
        "calculators": {
            each.id: public_calculator(each, course, language, say) for each in course.calculators.values()
        },
        "figures": {
            figure.id: {
                "drawing": hashlib.sha256(figure.svg.encode()).hexdigest(),
                "texts": {
                    language: {
                        "title": say(figure.title),
                        "alt": say(figure.alt),
                        "caption": say(figure.caption),
                    }
                },
            }
            for figure in course.figures.values()
        },
        "words": {
            term.id: {
                "figure": term.figure,
                **({"part": term.part} if term.part else {}),
                "texts": {language: {"word": term.word, "meaning": say(term.meaning)}},
            }
            for term in course.terms.values()
        },
    }


def _question(question: Question, language: str, say: Say) -> dict[str, Json]:
    found: dict[str, Json] = {
        "kind": question.kind,
        "use": question.use.value,
        "outcome": question.outcome,
        "level": question.level.value,
        "critical": question.critical,
        "source": list(question.sources),
        "figure": question.figure,
        "options": [option.id for option in question.offered],
        "keep-order": keeps_order(question),
        "texts": {language: public_texts(question, say)},
    }
    if isinstance(question, DrillQuestion):
        found["drill"] = question.drill
    return found | pointed_at(question) | public_trial(question, say)


def _reasons(course: Course) -> dict[str, Json]:
    say = Wording(course).source
    return {
        question.id: {course.languages[0]: private_texts(question, say) | private_goal(question, say)}
        for question in course.questions.values()
    }


def _lesson(lesson: Lesson, say: Say) -> dict[str, Json]:
    body: list[Json] = [
        {"kind": block.kind.value, "steps": [say(step) for step in block.steps]}
        if block.kind is BlockKind.STEPS
        else {"kind": block.kind.value, "text": say(block.text)}
        for block in lesson.body
    ]
    return {"title": say(lesson.title), "body": body}


def _digests(digest: str, content: Mapping[str, Any]) -> dict[str, Json]:
    """Return the digests that go beside the course's own.

    One covers each language's texts; one covers each question: public part, key and reasons together.
    """
    public, private = content["public"], content["private"]
    return {
        "compiled": digest,
        "texts": {
            language: _sha256(
                {
                    "course": public["texts"][language],
                    "modules": {each["id"]: each["texts"][language] for each in public["modules"]},
                    "kit": _sheet_texts(public["kit"], language),
                    "profile": _sheet_texts(public["profile"], language),
                    "reasons": {id_: reasons[language] for id_, reasons in private["reasons"].items()},
                    "told": {id_: drill["texts"][language] for id_, drill in private["drills"].items()},
                }
                | {
                    part: {id_: each["texts"][language] for id_, each in public[part].items()}
                    for part in (
                        "lessons",
                        "questions",
                        "drills",
                        "benches",
                        "calculators",
                        "figures",
                        "words",
                        "practicals",
                        "job-cards",
                        "duties",
                    )
                }
            )
            for language in content["languages"][:1]
        },
        "questions": {
            id_: _sha256(
                {"public": question, "key": private["keys"][id_], "reasons": private["reasons"][id_]}
                | _drill_of(question, content)
                | _bench_of(question, content)
            )
            for id_, question in public["questions"].items()
        },
    }


def _drill_of(question: Mapping[str, Any], content: Mapping[str, Any]) -> dict[str, Json]:
    """Return the drill that a question leads through, for its digest."""
    if "drill" not in question:
        return {}
    return {"drill": [content[part]["drills"][question["drill"]] for part in ("public", "private")]}


def _bench_of(question: Mapping[str, Any], content: Mapping[str, Any]) -> dict[str, Json]:
    """Return the bench above a question, for its digest."""
    if "trial" not in question:
        return {}
    return {"bench": content["public"]["benches"][question["trial"]["bench"]]}


def _sheet_texts(sheet: Mapping[str, Any], language: str) -> dict[str, Json]:
    values = {value["id"]: value["texts"][language] for value in sheet["values"]}
    return {"sheet": sheet["texts"][language], "values": values}


def _sha256(value: Json) -> str:
    return hashlib.sha256(canonical.write(value)).hexdigest()


def _composed(value: Json) -> Json:
    """Return ``value`` with every text in Unicode's composed form (NFC): one spelling, one digest."""
    match value:
        case str():
            return unicodedata.normalize("NFC", value)
        case list():
            return [_composed(each) for each in value]
        case dict():
            return {key: _composed(each) for key, each in value.items()}
        case _:
            return value
