"""How packages that only some work needs are added: to the very environment that runs this, whatever else is there."""

from __future__ import annotations

import sys


def to_install(extra: str) -> str:
    """Return the command, as a terminal of any system takes it; bare ``pip`` may be that of another environment."""
    program = f'"{sys.executable}"' if " " in sys.executable else sys.executable
    return f'{program} -m pip install "journeybook[{extra}]"'
