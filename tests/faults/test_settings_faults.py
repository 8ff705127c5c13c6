"""Each mkdocs.yml in settings/ is wrong in what it tells our plugin; beside it stands what its author reads then."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from journeybook.diagnostics.render_text import render_text
from journeybook.settings import settings_problems
from journeybook.source.decoding import lines_to_show

FOLDER = Path(__file__).parent / "settings"
FILES = sorted(FOLDER.glob("*.yml"))
GOOD = """\
site_name: "Quillon Basin Works training"
docs_dir: course_src
theme: {name: journeybook}
plugins:
  - journeybook: {courses: [pillar-drill, "spare-course"], profile: uk, quizzes: quizzes, cache: "", enabled: true}
"""


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_faulty_settings_give_the_text_beside_them(file: Path) -> None:
    data = file.read_bytes()
    rendered = render_text(settings_problems(data, "mkdocs.yml"), lambda _: lines_to_show(data))
    expected = file.with_suffix(".txt")
    if os.environ.get("JOURNEYBOOK_REWRITE_EXPECTED"):
        expected.write_text(rendered, encoding="utf-8")
    assert rendered == expected.read_text(encoding="utf-8")
    assert "Mend " in rendered


def test_every_expected_text_has_its_file() -> None:
    assert [file.stem for file in sorted(FOLDER.glob("*.txt"))] == [file.stem for file in FILES]


@pytest.mark.parametrize(
    "written",
    [
        pytest.param(GOOD, id="all keys"),
        pytest.param(
            GOOD.replace("{name: journeybook}", "{name: journeybook, custom_dir: ours}"),
            id="a folder of theirs",
        ),
        pytest.param(GOOD.replace(": uk", ": !ENV [PROFILE, uk]"), id="a tag that MkDocs reads"),
        pytest.param(GOOD.replace(": uk", ": &uk uk") + "extra: {country: *uk}\n", id="an anchor"),
        pytest.param(
            "theme: journeybook\nplugins:\n  - journeybook:  # ours\n"
            "      courses: [a]  # one\n      profile: uk # here\n",
            id="comments behind values",
        ),
        pytest.param("INHERIT: ../mkdocs.yml\n", id="settings in an inherited file"),
        pytest.param(
            "INHERIT: ../mkdocs.yml\nplugins: {journeybook: {profile: uk}}\n",
            id="some of them in an inherited file",
        ),
        pytest.param("site_name: Ours\nplugins: [search]\n", id="another plugin"),
        pytest.param("site_name: no\n" + GOOD.split("\n", 1)[1], id="a slip that is not ours"),
        pytest.param("plugins: search\n", id="plugins as text"),
        pytest.param("- a\n", id="a list"),
        pytest.param("", id="nothing"),
    ],
)
def test_what_is_right_or_for_mkdocs_to_judge_is_let_be(written: str) -> None:
    assert settings_problems(written.encode(), "mkdocs.yml") == []
