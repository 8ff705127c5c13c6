"""Where there is no terminal, a passphrase is not read from what everybody sees."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path


def test_who_has_no_terminal_is_told_what_to_do_and_nothing_is_written(tmp_path: Path) -> None:
    said = subprocess.run(
        [
            *(sys.executable, "-c", "from journeybook.cli import main; main()"),
            *("key", "make", "k.pem", "--holder", "T. Marrable", "--role", "training lead"),
        ],
        cwd=tmp_path,
        input="what everybody sees\n",
        capture_output=True,
        text=True,
        start_new_session=True,
        check=False,
    )
    assert said.returncode == 1
    assert "There is no terminal" in said.stderr
    assert "--passphrase-fd" in said.stderr
    assert "GetPassWarning" not in said.stderr
    assert not (tmp_path / "k.pem").exists()
