"""How the files of format-1/ were made, once.

``PYTHONPATH=tests/unit/marking python tests/kept/make_format_1.py``. It never writes over a kept file. A
later format gets a folder of its own; these stay readable for ever.
"""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from pillar_drill import course

from journeybook.marking import canonical
from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.marking.draw import draw_form
from journeybook.marking.release import release
from journeybook.marking.release_shelf import folder_of
from journeybook.marking.remark import re_mark

FOLDER = Path(__file__).parent / "format-1"

RIGHT: dict[str, Any] = {
    "isolate-1": "a",
    "isolate-2": "a",
    "set-order": ["isolate", "loosen", "slide", "tighten", "start"],
    "guard-several": ["crack", "screw", "bent"],
    "parts-match": {"collar": "holds", "sleeve": "covers"},
    "speed-number": "by-variant",
    "height-number": {"value": "0.6", "unit": "cm"},
}
# Two passes, one of them on questions not seen before; a fail by the must-pass question; a fail by the cut.
ATTEMPTS: dict[str, tuple[str, list[str], dict[str, Any]]] = {
    "passed": ("kept-1", [], RIGHT | {"guard-several": ["crack", "screw"]}),
    "passed-avoiding": ("kept-2", ["isolate-1", "height-number"], RIGHT),
    "must-pass-missed": ("kept-3", [], RIGHT | {"isolate-1": "b", "isolate-2": "c"}),
    "below-the-cut": (
        "kept-5",
        [],
        RIGHT
        | {
            "set-order": ["loosen", "isolate", "slide", "tighten", "start"],
            "parts-match": {"collar": "cools"},
            "speed-number": {"value": "2500", "unit": ""},
            "height-number": {"value": "6", "unit": ""},
            "guard-several": None,
        },
    ),
}

SPEEDS = ("796,2", "1327")
"""Right answers to the two variants of speed-number."""


def answered(asked: dict[str, Any], answers: dict[str, Any]) -> Any:
    """Return the answer to one question of a form."""
    answer = answers[asked["q"]]
    return {"value": SPEEDS[asked["variant"]], "unit": "rpm"} if answer == "by-variant" else answer


def main() -> None:
    """Write the folder, or refuse."""
    if FOLDER.exists():
        sys.exit("format-1 is kept; nothing is written over it")
    made, problems = release(course(), FOLDER, datetime(2026, 11, 24, 12, tzinfo=UTC))
    assert made is not None, problems
    shelf = folder_of(FOLDER, made.version, made.profile)
    compiled = (shelf / "compiled.json").read_bytes()
    content: Any = canonical.read(compiled)
    for name, (seed, avoid, answers) in ATTEMPTS.items():
        form = draw_form(content["public"]["plan"], seed, avoid)
        asked = [each["q"] for each in form]
        attempt = Attempt(
            course="pillar-drill",
            version=made.version,
            digest=made.digest,
            profile=made.profile,
            language="en",
            seed=seed,
            avoid=tuple(avoid),
            form=tuple(
                Asked(question=each["q"], variant=each["variant"], options=tuple(each["options"]))
                for each in form
            ),
            answers={each["q"]: answered(each, answers) for each in form},
            shown=tuple(asked),
            started="2026-11-24T13:00:00Z",
            ended="2026-11-24T13:12:30Z",
            card=Card(id="card-7", name="R. Adeyemi-Holt", workplace="Quillon Basin Works, größere Werft"),
        )
        data = write(attempt)
        found = re_mark(data, compiled)
        assert found.result is not None, found.problems
        (FOLDER / f"attempt-{name}.json").write_bytes(data)
        expected = {
            "fingerprint": found.fingerprint,
            "result": dict(found.result),
            "remarks": dict(found.remarks),
        }
        (FOLDER / f"remarked-{name}.json").write_bytes(canonical.write(expected))


if __name__ == "__main__":
    main()
