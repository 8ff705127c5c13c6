"""A table's examples and sentences as parts of a message."""

from __future__ import annotations

from typing import Any


def written(example: Any) -> str:
    """An example in one line of YAML; nested ones are cut short to their first keys."""
    if isinstance(example, bool):
        return "true" if example else "false"
    if isinstance(example, list):
        return "[" + ", ".join(written(one) for one in example) + "]"
    if isinstance(example, dict):
        return "{" + ", ".join(f"{key}: {written(one)}" for key, one in example.items()) + "}"
    if isinstance(example, str) and (example.isdigit() or not example.replace("-", "").isalnum()):
        return '"' + example + '"'
    return str(example)


def clause(sentence: str) -> str:
    """A sentence as part of another: no capital (unless an abbreviation), no full stop."""
    start = sentence[0].lower() if sentence[1:2].islower() or sentence[1:2] == " " else sentence[0]
    return start + sentence[1:].removesuffix(".")
