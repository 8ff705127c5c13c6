"""The theme's files as a site serves them."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

import pytest

from journeybook.pages import assets

JS = Path(str(files("journeybook.theme") / "js"))


def test_every_script_of_the_theme_is_served_once() -> None:
    listed = [
        name for order in assets.SCRIPTS.values() for name in (JS / order).read_text(encoding="utf-8").split()
    ]
    # A sitting is a file of its own: it takes some of what pages have, and more that no page has.
    listed += set((JS / "order-sitting.txt").read_text(encoding="utf-8").split()) - set(listed)
    assert sorted(listed) == sorted(path.relative_to(JS).as_posix() for path in JS.rglob("*.js"))


def test_every_script_has_one_name_at_its_top_and_no_two_share_it() -> None:
    names = []
    for path in JS.rglob("*.js"):
        own = re.findall(
            r"^(?:const|let|var|function|class) (\w+)", path.read_text(encoding="utf-8"), re.MULTILINE
        )
        assert len(own) == 1, path.name
        names += own
    assert len(names) == len(set(names))


@pytest.mark.parametrize("path", sorted(JS.rglob("*.js")), ids=lambda path: path.name)
def test_no_text_in_a_script_runs_over_several_lines(path: Path) -> None:
    # Indentation is taken off what is served, and would be missing in such a text.
    for line in path.read_text(encoding="utf-8").splitlines():
        if not line.lstrip().startswith(("*", "/*", "//")):
            assert line.count("`") % 2 == 0, line


def test_what_is_served_keeps_every_line_of_code() -> None:
    served = f"{assets.script()}\n{assets.sitting_script()}"
    kept = {line.strip() for line in served.splitlines() if line.strip()}
    for path in JS.rglob("*.js"):
        code = re.sub(
            r"^[ \t]*/\*.*?\*/[ \t]*$", "", path.read_text(encoding="utf-8"), flags=re.DOTALL | re.MULTILINE
        )
        for line in code.splitlines():
            if line.strip() and not line.lstrip().startswith("//"):
                assert line.strip() in kept, f"{path.name}: {line}"


def test_fonts_are_inlined_for_a_page_that_stands_alone() -> None:
    assert "url(fonts/" in assets.style()
    assert "url(fonts/" not in assets.style_with_fonts()
    assert assets.style_with_fonts().count("url(data:font/woff2;base64,") == assets.style().count(
        "url(fonts/"
    )
