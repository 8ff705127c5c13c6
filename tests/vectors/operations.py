"""What the shared vectors and the two-languages test ask of the Python, by name.

Twin of tests/js/operations.mjs.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from fractions import Fraction
from typing import Any

from journeybook.benches.interpolation import Column
from journeybook.benches.orders import refused
from journeybook.content.arithmetic import decimal_text, fraction_text, round_half_away
from journeybook.content.postfix import Stopped, work_out_all
from journeybook.marking import canonical
from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.marking.draw import arranged, draw_form
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.mark import mark
from journeybook.marking.observation import FORMAT, StepSeen
from journeybook.marking.observation import read as read_observation
from journeybook.marking.observation import write as write_observation
from journeybook.marking.observed import against_competent
from journeybook.marking.result import check_result
from journeybook.marking.stream import Stream, rank, stream
from journeybook.marking.typed_number import read_typed
from journeybook.proof.record_codes import codes_of_packed
from journeybook.sittings.seal import place_name
from journeybook.sittings.sealed_blob import typed_form


def or_reason(act: Callable[[], Any]) -> dict[str, Any]:
    """Return what ``act`` returns, or the one-word reason for which it refused."""
    try:
        return {"value": act()}
    except canonical.NotCanonical as refused:
        return {"refused": refused.reason}


def or_refused(act: Callable[[], Any]) -> dict[str, Any]:
    """Return what ``act`` returns, or that it refused.

    The reasons differ when reading: JavaScript's parser forgives a key given twice or ``1.0``, and the file
    is then refused because writing it again gives other bytes.
    """
    found = or_reason(act)
    return {"refused": True} if "refused" in found else found


def attempt_of(facts: dict[str, Any]) -> Attempt:
    """Return the attempt with the given members."""
    return Attempt(
        **{
            **facts,
            "avoid": tuple(facts["avoid"]),
            "shown": tuple(facts["shown"]),
            "form": tuple(
                Asked(question=each["q"], variant=each["variant"], options=tuple(each["options"]))
                for each in facts["form"]
            ),
            "card": Card(**facts["card"]),
        }
    )


def _mark(given: dict[str, Any]) -> dict[str, Any]:
    marked = mark(given["key"], given["variant"], given["answer"])
    return {"mark": marked.mark, "remarks": marked.remarks}


def _against_competent(given: dict[str, Any]) -> list[list[str]]:
    steps = [
        StepSeen(step=each["id"], seen=each["seen"], prompted=each["prompted"], note="")
        for each in given["steps"]
    ]
    found = against_competent(
        safety=given["safety"], stopped=given["stopped"], steps=steps, critical=given["critical"]
    )
    return [[each.why, each.step] for each in found]


def _observation_file(given: dict[str, Any]) -> dict[str, str]:
    """Through the strict reader, so that the page can write nothing that it would refuse."""
    data = write_observation(read_observation(canonical.write({"format": FORMAT, **given["facts"]})))
    return {"text": data.decode(), "fingerprint": fingerprint(data)}


def _stream(given: dict[str, Any]) -> list[int]:
    run = Stream(tuple(given["state"]))
    return [run.next() for _ in range(given["count"])]


def _below(given: dict[str, Any]) -> list[int]:
    run = stream(given["seed"], given["question"], given["purpose"])
    return [run.below(bound) for bound in given["bounds"]]


def _below_from_state(given: dict[str, Any]) -> list[int]:
    run = Stream(tuple(given["state"]))
    return [run.below(bound) for bound in given["bounds"]]


def _shuffle_from_digest(given: dict[str, Any]) -> list[str]:
    digest = hashlib.sha256(given["seed"].encode()).digest()
    words = [int.from_bytes(digest[start : start + 4], "big") for start in (0, 4, 8, 12)]
    return Stream((words[0], words[1], words[2], words[3])).shuffled(given["things"])


def _rank(given: dict[str, Any]) -> list[str]:
    return sorted(given["questions"], key=lambda each: rank(given["seed"], each))[: given["count"]]


def _typed(given: dict[str, Any]) -> dict[str, str]:
    typed = read_typed(given["text"])
    return {"problem": typed.problem, "read": typed.read}


def _result(given: dict[str, Any]) -> dict[str, Any]:
    return check_result(**given)


def _calculate(given: dict[str, Any]) -> dict[str, Any]:
    places = given["places"]
    found = work_out_all(given["programs"], {name: Fraction(text) for name, text in given["inputs"].items()})
    return {
        name: {"stopped": value.value}
        if isinstance(value, Stopped)
        else {
            "value": fraction_text(value),
            "shown": decimal_text(value, places),
            "exact": value == round_half_away(value, places),
        }
        for name, value in found.items()
    }


def _read_off(given: dict[str, Any]) -> float:
    counts = [given["counts"][axis] for axis in given["along"]]
    return Column.from_steps(given["along"], counts, given["steps"]).at(given["places"])


def _attempt_file(given: dict[str, Any]) -> dict[str, str]:
    data = write(attempt_of(given["facts"]))
    return {"text": data.decode(), "fingerprint": fingerprint(data)}


OPERATIONS: dict[str, Callable[[dict[str, Any]], Any]] = {
    "sha256": lambda given: hashlib.sha256(given["text"].encode()).hexdigest(),
    "sha256-bytes": lambda given: hashlib.sha256(bytes.fromhex(given["hex"])).hexdigest(),
    "stream": _stream,
    "below": _below,
    "below-from-state": _below_from_state,
    "shuffle-from-digest": _shuffle_from_digest,
    "rank": _rank,
    "typed": _typed,
    "mark": _mark,
    "form": lambda given: draw_form(given["plan"], given["seed"], given["avoid"]),
    "arranged": lambda given: arranged(given["shape"], given["seed"], given["question"]),
    "result": _result,
    "canonical-write": lambda given: or_reason(lambda: canonical.write(given["value"]).decode()),
    "canonical-read": lambda given: or_refused(lambda: canonical.read(given["text"].encode())),
    "fingerprint": lambda given: fingerprint(given["text"].encode()),
    "attempt-file": _attempt_file,
    "against-competent": _against_competent,
    "observation-file": _observation_file,
    "refused": lambda given: refused(given["key"], given["done"], given["step"]),
    "calculate": _calculate,
    "read-off": _read_off,
    "codes-of-packed": lambda given: codes_of_packed(bytes.fromhex(given["hex"]), given["fingerprint"]),
    "typed-passphrase": lambda given: typed_form(given["text"]).decode(),
    "place-of-ticket": lambda given: place_name(given["sitting"], given["ticket"]),
}
