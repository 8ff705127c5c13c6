"""The page behind each code: why it is refused, an example that fails, and the same mended."""

from __future__ import annotations

from importlib.resources import files

from journeybook.diagnostics.codes import CODES


def story(code: str) -> str:
    """The page of a code, as CommonMark. Raises ``KeyError`` for a code that there is not."""
    if code not in CODES:
        raise KeyError(code)
    return files("journeybook.diagnostics").joinpath("why", f"{code}.md").read_text(encoding="utf-8")
