"""Pages are put before the server just in time, and a rebuild in between does not lose them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest

from journeybook.pages_on_demand import PagesOnDemand

Told = tuple[Any, ...]


class FolderServer:
    """As ``mkdocs serve``: serves what it finds in a folder; ``meanwhile`` happens before it looks."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.meanwhile: list[Callable[[], object]] = []

    def __call__(self, environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        if self.meanwhile:
            self.meanwhile.pop(0)()
        path = environ["PATH_INFO"].removeprefix("/site/")
        file = self.folder / (path or "index.html")
        if not file.is_file():
            start_response("404 Not Found", [])
            return [b"not there"]
        start_response("200 OK", [("Content-Type", "text/html")])
        return [file.read_bytes()]


@pytest.fixture
def server(tmp_path: Path) -> FolderServer:
    return FolderServer(tmp_path)


@pytest.fixture
def pages(server: FolderServer) -> PagesOnDemand:
    return PagesOnDemand(server, server.folder, "/site/")


def ask(pages: PagesOnDemand, address: str) -> tuple[str, bytes]:
    """Status and body."""
    told: list[Told] = []
    body = b"".join(pages({"PATH_INFO": address}, lambda *what: told.append(what)))
    assert len(told) == 1, "an answer begins once"
    return told[0][0], body


def empty(folder: Path) -> None:
    for file in folder.rglob("*"):
        if file.is_file():
            file.unlink()


def test_a_page_is_made_for_whoever_asks(pages: PagesOnDemand, server: FolderServer) -> None:
    pages.show({"drill/a.html": lambda: b"A", "drill/b.html": lambda: b"B"})
    assert ask(pages, "/site/drill/a.html") == ("200 OK", b"A")
    assert [file.name for file in server.folder.rglob("*.html")] == ["a.html"]


def test_it_is_made_once(pages: PagesOnDemand) -> None:
    made = iter([b"once", b"twice"])
    pages.show({"a.html": lambda: next(made)})
    assert ask(pages, "/site/a.html") == ask(pages, "/site/a.html") == ("200 OK", b"once")


def test_a_folder_is_asked_for_its_front_page(pages: PagesOnDemand) -> None:
    pages.show({"index.html": lambda: b"front"})
    assert ask(pages, "/site/") == ("200 OK", b"front")


@pytest.mark.parametrize("address", ["/site/none.html", "/livereload/1/2", "/a.html", "/site/../a.html"])
def test_what_is_not_a_page_of_ours_is_left_to_the_server_behind(pages: PagesOnDemand, address: str) -> None:
    pages.show({"a.html": lambda: b"A"})
    assert ask(pages, address) == ("404 Not Found", b"not there")


def test_after_a_change_the_new_page_is_shown_though_the_old_one_was_made_too_late(
    pages: PagesOnDemand,
) -> None:
    pages.show({"a.html": lambda: b"old"})
    ask(pages, "/site/a.html")
    pages.show({"a.html": lambda: b"new"})
    assert ask(pages, "/site/a.html") == ("200 OK", b"new")
    pages.show({})
    assert ask(pages, "/site/a.html")[0] == "404 Not Found"


def test_a_page_that_a_rebuild_swept_away_is_made_again(pages: PagesOnDemand, server: FolderServer) -> None:
    def rebuild() -> None:
        empty(server.folder)
        pages.show({"a.html": lambda: b"new"})

    pages.show({"a.html": lambda: b"old"})
    server.meanwhile.append(rebuild)
    assert ask(pages, "/site/a.html") == ("200 OK", b"new")
