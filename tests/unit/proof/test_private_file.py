"""A private file is there whole and for its owner alone, or it is not there at all."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest

from journeybook.proof.private_file import put


@pytest.fixture(params=[0o000, 0o022, 0o077], ids=oct)
def _mask(request: pytest.FixtureRequest) -> Iterator[None]:
    before = os.umask(request.param)
    yield
    os.umask(before)


@pytest.mark.usefixtures("_mask")
def test_nobody_else_reads_it_whatever_the_system_lets_others_read(tmp_path: Path) -> None:
    put(tmp_path / "a.json", b"one")
    put(tmp_path / "a.json", b"two")
    assert (tmp_path / "a.json").read_bytes() == b"two"
    assert stat.S_IMODE((tmp_path / "a.json").stat().st_mode) == 0o600
    assert [path.name for path in tmp_path.iterdir()] == ["a.json"]


def test_a_file_that_others_could_read_before_is_its_owners_afterwards(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    path.write_bytes(b"before")
    path.chmod(0o666)
    put(path, b"now")
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_what_is_for_everybody_is_as_open_as_the_system_lets_it(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        put(tmp_path / "trust.json", b"list", for_everybody=True)
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "trust.json").stat().st_mode) == 0o640


def test_a_link_that_somebody_laid_is_not_written_through(tmp_path: Path) -> None:
    theirs = tmp_path / "theirs"
    theirs.write_bytes(b"as it was")
    for name in ("a.json", "a.json.unfinished"):
        (tmp_path / name).symlink_to(theirs)
    put(tmp_path / "a.json", b"secret")
    assert (theirs.read_bytes(), (tmp_path / "a.json").is_symlink()) == (b"as it was", False)
    assert (tmp_path / "a.json").read_bytes() == b"secret"


def test_one_laid_at_the_last_moment_is_not_written_through_either(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    theirs, real = tmp_path / "theirs", os.open

    def raced(path: Path, *given: int) -> int:
        if str(path).endswith(".unfinished"):
            Path(path).symlink_to(theirs)
        return real(path, *given)

    monkeypatch.setattr(os, "open", raced)
    with pytest.raises(FileExistsError):
        put(tmp_path / "a.json", b"secret")
    assert not list(tmp_path.iterdir())


def test_a_disk_without_room_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.json"
    put(path, b"before")

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left"):
        put(path, b"now")
    assert ([each.name for each in tmp_path.iterdir()], path.read_bytes()) == (["a.json"], b"before")
