"""Whatever is edited between two loads: with a memo they give what a load without one gives."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from journeybook.audit import audit
from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.load_memo import LoadMemo
from journeybook.content.loader import load_courses

BASE = Path(__file__).parents[1] / "faults" / "base"
PATHS = sorted(path.relative_to(BASE) for path in BASE.rglob("*") if path.suffix in (".yml", ".svg"))

edit = st.tuples(
    st.sampled_from(PATHS),
    st.sampled_from(
        ["restore", "restore", "comment", "drop line", "double line", "letter", "brace", "remove", "copy"]
    ),
    st.integers(0, 10_000),
)


def apply(site: Path, path: Path, what: str, number: int) -> None:
    """Change one file as a person, or an accident, would."""
    file = site / path
    lines = (BASE / path).read_text(encoding="utf-8").split("\n")
    at = number % len(lines)
    match what:
        case "comment":
            lines.insert(0, "# a note" if path.suffix == ".yml" else "<!-- a note -->")
        case "drop line":
            del lines[at]
        case "double line":
            lines.insert(at, lines[at])
        case "letter":
            lines[at] = lines[at].replace("e", "a", 1)
        case "brace":
            lines[at] = lines[at].replace(' "', ' "{kit.nothing} {word.guard} {x} ', 1)
        case "remove":
            file.unlink(missing_ok=True)
            return
        case "copy":
            file.with_name(f"copy-{file.name}").write_text("\n".join(lines), encoding="utf-8")
            return
    file.write_text("\n".join(lines), encoding="utf-8")


@settings(deadline=None, max_examples=25)
@given(st.lists(edit, min_size=1, max_size=8))
def test_a_load_with_a_memo_equals_a_fresh_one(edits: list[tuple[Path, str, int]]) -> None:
    memo, audits = LoadMemo(), AuditMemo()
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder) / "site"
        shutil.copytree(BASE, site)
        load_courses(site, ["pillar-drill"], profile="uk", memo=memo)
        for path, what, number in edits:
            apply(site, path, what, number)
            courses, problems = load_courses(site, ["pillar-drill"], profile="uk", memo=memo)
            assert (courses, problems) == load_courses(site, ["pillar-drill"], profile="uk")
            for course in courses:
                assert audit(course, audits) == audit(course)
