"""Vectors of observations: what keeps *competent* from standing, and the bytes of a record."""

from __future__ import annotations

import json
from hashlib import sha256
from typing import Any

from byte_cases import base32_by_hand
from case import Case, hand

FACTS: dict[str, Any] = {
    "course": "pillar-drill",
    "version": "1.0",
    "digest": "5a" * 32,
    "profile": "uk",
    "language": "en",
    "practical": "prove-the-guard",
    "person": {"id": "0417", "name": "Åsa O'Neill", "workplace": "Quillon Basin Works"},
    "unit": "drill 2",
    "held-on": "2026-11-24",
    "location": "the shed",
    "assessor": {"name": "R. Tansley", "role": "foreman", "basis": "named by the works manager"},
    "second": {"name": "T. Marrable", "role": "training lead"},
    "safety": [True, True],
    "steps": [
        {"id": "isolate", "seen": "yes", "prompted": False, "note": ""},
        {"id": "close-the-gap", "seen": "not-seen", "prompted": True, "note": "said “6 mm”\nthen measured"},
    ],
    "stopped": False,
    "note": "",
    "result": "not-yet-competent",
    "started": "2026-11-24T09:00:00Z",
    "ended": "2026-11-24T09:20:00Z",
}


def observing() -> list[Case]:
    """What keeps a practical from being competent, and the bytes of an observation."""

    def step(id: str, seen: str = "yes", prompted: bool = False) -> Case:
        return {"id": id, "seen": seen, "prompted": prompted}

    def against(name: str, expect: list[list[str]], **changes: Any) -> Case:
        whole = {
            "safety": [True, True],
            "stopped": False,
            "steps": [step("isolate"), step("close-the-gap"), step("name-parts")],
            "critical": ["close-the-gap", "isolate"],
        }
        return hand(name, "against-competent", whole | changes, expect)

    def written(name: str, facts: Case) -> Case:
        text = json.dumps(
            {"format": "journeybook observation 1", **facts},
            sort_keys=True,
            separators=(",", ":"),
            ensure_ascii=False,
        )
        expect = {"text": text, "fingerprint": base32_by_hand(sha256(text.encode()).hexdigest()[:20])}
        return hand(name, "observation-file", {"facts": facts}, expect)

    def steps(*changed: Case) -> list[Case]:
        by_id = {each["id"]: each for each in changed}
        return [by_id.get(id, step(id)) for id in ("isolate", "close-the-gap", "name-parts")]

    return [
        against("a whole sheet bears it out", []),
        against("a practical without a critical step", [], critical=[]),
        against("a condition that was not confirmed", [["safety", ""]], safety=[True, False]),
        against("a practical without conditions", [], safety=[]),
        against("ended before its last step", [["stopped", ""]], stopped=True),
        against("a critical step marked no", [["step", "isolate"]], steps=steps(step("isolate", "no"))),
        against("a critical step not seen", [["step", "isolate"]], steps=steps(step("isolate", "not-seen"))),
        against(
            "a critical step that needed a hint",
            [["step", "isolate"]],
            steps=steps(step("isolate", "yes", True)),
        ),
        against("a lesser step marked no", [], steps=steps(step("name-parts", "no"))),
        against("a lesser step with a hint", [], steps=steps(step("name-parts", "yes", True))),
        against(
            "every reason, the steps in their own order",
            [["safety", ""], ["stopped", ""], ["step", "isolate"], ["step", "close-the-gap"]],
            safety=[False, False],
            stopped=True,
            steps=[step("isolate", "no", True), step("close-the-gap", "yes", True), step("name-parts", "no")],
        ),
        written("an observation file", FACTS),
        written("an observation without a second observer", FACTS | {"second": None}),
        written("an observation that was ended", FACTS | {"stopped": True, "safety": [True, False]}),
    ]
