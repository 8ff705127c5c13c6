"""Several right answers among options.

The balanced rule: with m right of k options, h hits and f false picks the mark is
max(0, h/m - f/(k - m)), which is sensitivity plus specificity less one. An answer chosen without
looking at the question, "everything" and "nothing" included, then expects 0 before the floor.
W. J. Youden, Index for rating diagnostic tests, Cancer 3 (1950) 32-35 (from memory); compared as a way to
score questions of this kind: Betts, Muntean, Kim and Kao, Educ. Psychol. Meas. 82 (2022) 151-176.
"""

from __future__ import annotations

from journeybook.content.model import ChoicesQuestion, Course
from journeybook.marking.kind import (
    WEIGHT,
    Json,
    Key,
    Kind,
    Marked,
    distinct_texts,
    is_must_pass,
    malformed,
    thousandths,
    unanswered,
)


def lower(question: ChoicesQuestion, course: Course) -> dict[str, Json]:  # noqa: ARG001 - Kind.lower
    """Return ``{"kind", "options", "right", "whole"}``; ``right`` stands in the order of ``options``."""
    return {
        "kind": "choices",
        "options": [option.id for option in question.options],
        "right": [option.id for option in question.options if option.id in question.right],
        "whole": is_must_pass(question),
    }


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark a list of option ids; in which order they stand does not matter."""
    if answer is None:
        return unanswered("choices")
    options: list[str] = key["options"]
    chosen = distinct_texts(answer, options)
    if chosen is None:
        return malformed("choices")
    right: list[str] = key["right"]
    missed: list[Json] = [option for option in right if option not in chosen]
    extra: list[Json] = [option for option in options if option in chosen and option not in right]
    hits = len(right) - len(missed)
    wrong_options = len(options) - len(right)
    if key["whole"]:
        earned = 0 if missed or extra else WEIGHT
    else:
        numerator = hits * wrong_options - len(extra) * len(right)
        earned = thousandths(max(0, numerator), len(right) * wrong_options)
    return Marked(earned, {"kind": "choices", "missed": missed, "extra": extra})


KIND = Kind(name="choices", lower=lower, mark=mark, arranged="options")
