"""The kept sites: whatever enters a site enters its key, and nothing damaged or foreign is ever handed out."""

from __future__ import annotations

import logging
import shutil
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from journeybook import site_cache
from journeybook.finished import FinishedPage, FinishedSite
from journeybook.making import courses_of
from journeybook.marking.release_shelf import Release, write_release
from journeybook.project import Project
from journeybook.site_cache import KEPT, fetch, keep, key_of

STARTER = Path(__file__).parents[2] / "builder" / "starter"
SOURCES = sorted(
    path.relative_to(STARTER).as_posix()
    for folder in ("course_src", "quizzes")
    for path in (STARTER / folder).rglob("*")
    if path.is_file()
)
SITE = FinishedSite(
    pages=(
        FinishedPage(path="index.html", title="Card – one", html="<main>–</main>".encode()),
        FinishedPage(path="a/b.html", title="B", html=b""),
    ),
    files={"assets/read.woff2": bytes(range(256)), "a.css": b"p{}"},
    report="Warning A004 …",
)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    folder = tmp_path / "ours"
    shutil.copytree(STARTER, folder)
    return folder


@pytest.fixture(autouse=True)
def quiet() -> Iterator[None]:
    """A course that is being edited has warnings; here they are expected."""
    logger = logging.getLogger("mkdocs")
    before = logger.level
    logger.setLevel(logging.CRITICAL)
    yield
    logger.setLevel(before)


def project(root: Path) -> Project:
    return Project(root=root, courses=("first-course",), profile="here")


def site_of(root: Path, cache: str = ".cache/journeybook") -> dict[str, bytes]:
    """Everything that a build of ``root`` puts into the site folder."""
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))
    config.plugins["journeybook"].config["cache"] = cache
    build(config)
    made = {path.relative_to(root / "site"): path for path in (root / "site").rglob("*") if path.is_file()}
    return {name.as_posix(): path.read_bytes() for name, path in made.items() if name.suffix != ".gz"}


@pytest.mark.parametrize("name", SOURCES)
def test_a_change_in_any_source_gives_another_key(root: Path, name: str) -> None:
    before = key_of(project(root), "Ours")
    assert before
    path = root / name
    path.write_bytes(path.read_bytes() + b"\n")
    assert key_of(project(root), "Ours") not in ("", before)


def test_a_file_that_comes_goes_or_is_renamed_gives_another_key(root: Path) -> None:
    bank = root / "quizzes" / "first-course" / "bits.yml"
    keys = [key_of(project(root), "Ours")]
    bank.rename(bank.with_name("pieces.yml"))
    keys.append(key_of(project(root), "Ours"))
    bank.with_name("empty.txt").write_bytes(b"")
    keys.append(key_of(project(root), "Ours"))
    bank.with_name("pieces.yml").unlink()
    keys.append(key_of(project(root), "Ours"))
    assert len(set(keys)) == 4


def test_a_release_gives_another_key(root: Path) -> None:
    before = key_of(project(root), "Ours")
    shelf = root / "course_src" / "first-course" / "releases" / "1.0" / "here"
    shelf.mkdir(parents=True)
    (shelf / "release.json").write_bytes(b"{}")
    assert key_of(project(root), "Ours") not in ("", before)


@pytest.mark.parametrize(
    "changed", [{"profile": "there"}, {"courses": ("first-course", "other")}, {"quizzes_dir": "tests"}]
)
def test_a_setting_gives_another_key(root: Path, changed: dict[str, object]) -> None:
    other = replace(project(root), **changed)  # type: ignore[arg-type]  # fields of Project
    assert key_of(other, "Ours") != key_of(project(root), "Ours")


def test_the_name_of_the_site_gives_another_key(root: Path) -> None:
    assert key_of(project(root), "Ours") != key_of(project(root), "Theirs")


def test_a_template_or_a_line_of_the_program_gives_another_key(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    theme = tmp_path / "theme"
    (theme / "templates").mkdir(parents=True)
    (theme / "templates" / "lesson.html").write_text("<h1>", encoding="utf-8")
    monkeypatch.setattr(site_cache, "_program", lambda: [str(theme)])
    before = key_of(project(root), "Ours")
    (theme / "templates" / "lesson.html").write_text("<h2>", encoding="utf-8")
    assert key_of(project(root), "Ours") != before


def test_the_program_is_this_package_with_its_theme() -> None:
    names = {
        Path(path.decode()).name
        for folder in site_cache._program()
        for path, _ in site_cache._files_below(folder, "")
    }
    assert {"site_cache.py", "question_html.py", "lesson.html", "tokens.css", "start.js"} <= names


def test_another_version_of_a_library_gives_another_key(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = key_of(project(root), "Ours")
    monkeypatch.setattr(site_cache, "_version_of", lambda library: f"next {library}")
    assert key_of(project(root), "Ours") != before


def test_what_is_reached_through_a_link_has_no_key(root: Path, tmp_path: Path) -> None:
    (root / "quizzes" / "first-course" / "linked.yml").symlink_to(tmp_path / "elsewhere.yml")
    assert key_of(project(root), "Ours") == ""


def test_a_folder_of_quizzes_that_is_a_link_has_no_key(root: Path, tmp_path: Path) -> None:
    shutil.move(root / "quizzes" / "first-course", tmp_path / "moved")
    (root / "quizzes" / "first-course").symlink_to(tmp_path / "moved")
    assert key_of(project(root), "Ours") == ""


def test_a_kept_site_comes_back_as_it_was(tmp_path: Path) -> None:
    keep(tmp_path / "cache", "k1", SITE)
    assert fetch(tmp_path / "cache", "k1") == SITE
    assert fetch(tmp_path / "cache", "k2") is None


def cut_short(record: bytes) -> bytes:
    return record[:-1]


def with_another_byte(record: bytes) -> bytes:
    return record[:-1] + bytes([record[-1] ^ 1])


def with_more(record: bytes) -> bytes:
    return record + b"x"


def of_another_format(record: bytes) -> bytes:
    return record.replace(site_cache.FORMAT.encode(), b"journeybook site 0")


def without_a_member(record: bytes) -> bytes:
    return record.replace(b'"check"', b'"chess"')


def of_another_shape(record: bytes) -> bytes:
    return b"[]\n" + record


def without_lines(record: bytes) -> bytes:
    return record.replace(b"\n", b"")


@pytest.mark.parametrize(
    "damage",
    [
        cut_short,
        with_another_byte,
        with_more,
        of_another_format,
        without_a_member,
        of_another_shape,
        without_lines,
    ],
)
def test_a_damaged_record_is_not_there(tmp_path: Path, damage: Callable[[bytes], bytes]) -> None:
    keep(tmp_path, "k1", SITE)
    record = tmp_path / "k1.site"
    record.write_bytes(damage(record.read_bytes()))
    assert fetch(tmp_path, "k1") is None


def test_a_record_under_the_name_of_another_is_not_there(tmp_path: Path) -> None:
    keep(tmp_path, "k1", SITE)
    (tmp_path / "k1.site").rename(tmp_path / "k2.site")
    assert fetch(tmp_path, "k2") is None


def test_only_the_newest_records_stay(tmp_path: Path) -> None:
    for number in range(KEPT + 3):
        keep(tmp_path, f"k{number}", SITE)
    assert len(list(tmp_path.glob("*.site"))) == KEPT
    assert fetch(tmp_path, f"k{KEPT + 2}") == SITE


def test_a_folder_that_cannot_be_made_is_no_trouble(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    keep(tmp_path / "file" / "cache", "k1", SITE)
    assert fetch(tmp_path / "file" / "cache", "k1") is None


def test_version_control_is_told_to_leave_the_records_alone(tmp_path: Path) -> None:
    keep(tmp_path, "k1", SITE)
    assert (tmp_path / ".gitignore").read_text(encoding="utf-8").endswith("*\n")


def test_an_unchanged_course_is_not_made_again_and_gives_the_same_site(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = site_of(root)

    def made_again(*_: object, **__: object) -> FinishedSite:
        raise AssertionError("nothing has changed")

    monkeypatch.setattr("journeybook.building.finished_site", made_again)
    assert site_of(root) == first
    with pytest.raises(AssertionError, match="nothing has changed"):
        site_of(root, cache="")


def test_a_site_whose_warning_goes_away_by_waiting_is_not_kept(root: Path) -> None:
    course = root / "course_src" / "first-course" / "course.yml"
    text = course.read_text(encoding="utf-8")
    course.write_text(text + 'approved: {by: "T. Marrable", on: 9999-11-20}\n', encoding="utf-8")
    site_of(root)
    assert list((root / ".cache").rglob("*.site")) == []
    course.write_text(text + 'approved: {by: "T. Marrable", on: 2026-11-20}\n', encoding="utf-8")
    site_of(root)
    assert len(list((root / ".cache").rglob("*.site"))) == 1


@pytest.mark.parametrize("name", [name for name in SOURCES if name.endswith((".yml", ".svg"))])
def test_after_any_edit_the_site_is_that_of_a_build_without_the_cache(root: Path, name: str) -> None:
    site_of(root)
    path = root / name
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace('title: "', 'title: "New ', 1) + "\n", encoding="utf-8")
    assert site_of(root) == site_of(root, cache="")


def test_once_released_the_site_is_no_draft_any_more(root: Path) -> None:
    draft = site_of(root)
    (ready,), _ = courses_of(project(root))
    course, compiled = ready.course, ready.compiled
    release = Release(
        version=course.version,
        profile=course.profile.id,
        digest=compiled.digest,
        released="2026-11-24T12:00:00Z",
        questions=tuple(sorted(course.questions)),
    )
    write_release(root / "course_src" / "first-course", release, compiled)
    released = site_of(root)
    assert released == site_of(root, cache="")
    assert b"draft, not released" in draft["index.html"]
    assert b"draft, not released" not in released["index.html"]


def test_pages_are_the_same_bytes_whether_other_plugins_look_at_them_or_not(root: Path) -> None:
    alone = site_of(root)
    config = root / "mkdocs.yml"
    config.write_text(config.read_text(encoding="utf-8") + "  - search\n", encoding="utf-8")
    beside_another = site_of(root)
    assert alone.keys() <= beside_another.keys()
    assert {name: beside_another[name] for name in alone} == alone


def test_with_an_address_the_site_map_lists_every_page_once_made_and_once_kept(root: Path) -> None:
    config = root / "mkdocs.yml"
    config.write_text(
        config.read_text(encoding="utf-8") + 'site_url: "https://example.org/"\n', encoding="utf-8"
    )
    made, kept = site_of(root), site_of(root)
    pages = [name for name in made if name.endswith(".html") and name != "first-course.html"]
    assert made["sitemap.xml"].count(b"<loc>") == len(pages)
    assert kept == made
