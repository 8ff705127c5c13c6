"""Pages that are made when a browser asks for them: a WSGI application in front of the one that serves files.

``mkdocs serve`` empties its folder at each change and serves what it then finds there. Filling the folder again with a
thousand pages takes seconds, and somebody looks at one of them; so a page is put there when it is asked for, and the
server behind serves it as it serves any file, with what makes it reload itself. WSGI is PEP 3333.
"""

from __future__ import annotations

import posixpath
import threading
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any

Application = Callable[[dict[str, Any], Callable[..., Any]], Iterable[bytes]]

_MOST_TRIES = 3
"""A page can be swept away by a rebuild between being made and being served, though hardly twice in a row."""


class PagesOnDemand:
    """Puts a page into the folder of the server behind just before that server looks for it."""

    def __init__(self, behind: Application, folder: Path, mount: str) -> None:
        """``folder`` is what ``behind`` serves, under the path ``mount``."""
        self._behind = behind
        self._folder = folder
        self._mount = mount.rstrip("/") + "/"
        self._parts: Mapping[str, Callable[[], bytes]] = {}
        self._put: set[Path] = set()
        self._lock = threading.Lock()  # the server answers each request in a thread of its own

    def show(self, parts: Mapping[str, Callable[[], bytes]]) -> None:
        """From now on show these: what makes each page and file, by its path."""
        with self._lock:
            # Made from what was shown before, perhaps after the folder had been emptied.
            for path in self._put:
                path.unlink(missing_ok=True)
            self._put.clear()
            self._parts = parts

    def __call__(self, environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        """Answer one request."""
        path = self._path_of(str(environ["PATH_INFO"]))
        for _ in range(_MOST_TRIES):
            self._put_in_place(path)
            answer: list[tuple[Any, ...]] = []
            # The server behind waits here until a rebuild that is going on is done.
            body = self._behind(environ, lambda *told, to=answer: to.append(told))
            if path not in self._parts or not answer[-1][0].startswith("404"):
                break
        start_response(*answer[-1])
        return body

    def _path_of(self, asked: str) -> str:
        """The path below the site's root, as ``parts`` has it; empty for one that is not below it."""
        # WSGI gives the bytes of an address as Latin-1.
        path = asked.encode("latin-1").decode("utf-8", "ignore")
        if not path.startswith(self._mount):
            return ""
        below = path[len(self._mount) :] + ("index.html" if path.endswith("/") else "")
        return posixpath.normpath(below)

    def _put_in_place(self, path: str) -> None:
        with self._lock:
            make = self._parts.get(path)
            place = self._folder / path
            if make is None or (place in self._put and place.exists()):
                return
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(make())
            self._put.add(place)
