"""Whatever lies in the folder, ``mark FOLDER --sitting`` says so quickly, and takes in the good record beside it.

Files that a person made to break it: deep, huge, doubled, cut short, swelling when unpacked. Times are those of the
processor, so that other work on the machine does not count.
"""

from __future__ import annotations

import json
import random
import time
import zlib
from collections.abc import Callable
from pathlib import Path

import pytest
from class_of_three import DATA, KAY, ROBIN, Inbox, attempt, sitting
from click.testing import CliRunner

from journeybook.cli import main
from journeybook.commands import mark as mark_command
from journeybook.proof import base45
from journeybook.proof.record_codes import to_codes
from journeybook.sittings.inbox import course_from

SECOND = 1.0
SLOWER = 4
"""How much slower a machine may be than the one on which each of these took less than a second."""

RANDOM = random.Random(9)
A = b'{"format":"journeybook attempt 1",'
O = b'{"format":"journeybook observation 1",'  # noqa: E741 - as A, for observations
NEAR_CAP = 15 << 20


def letters(count: int) -> list[str]:
    return [
        "".join(RANDOM.choice("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") for _ in range(8)) for _ in range(count)
    ]


def bomb(size: int, name: str = "ABCDEFGH") -> str:
    """Codes of a deflate stream that swells to ``size`` zeros."""
    machine = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    packed = b"".join(machine.compress(bytes(1 << 20)) for _ in range(size >> 20)) + machine.flush()
    signs = base45.encode(packed)
    pieces = [signs[at : at + 699] for at in range(0, len(signs), 699)]
    assert len(pieces) <= 99, len(pieces)
    return "\n".join(f"JB2:{part}/{len(pieces)}:{name}:{piece}" for part, piece in enumerate(pieces, 1))


PDF = b"%PDF-1.7\n1 0 obj\n<< /Length 9999999 /Filter /FlateDecode >>\nstream\n"


def swelling() -> bytes:
    return zlib.compress(bytes(200 << 20), 9)


HOSTILE: dict[str, Callable[[], bytes]] = {
    "arrays.json": lambda: A + b'"a":' + b"[" * 500_000,
    "objects.json": lambda: A + b'"a":' + b'{"a":' * 150_000,
    "closed.json": lambda: A + b'"a":' + b"[" * 30_000 + b"]" * 30_000 + b"}",
    "observation-deep.json": lambda: O + b'"steps":' + b"[{" * 100_000,
    "digits.json": lambda: A + b'"a":' + b"9" * 1_000_000 + b"}",
    "minus.json": lambda: A + b'"a":-' + b"9" * 1_000_000 + b"}",
    "exponent.json": lambda: A + b'"a":1e999999999}',
    "small.json": lambda: A + b'"a":1e-999999999}',
    "float.json": lambda: A + b'"a":0.1}',
    "nan.json": lambda: A + b'"a":NaN}',
    "infinity.json": lambda: A + b'"a":-Infinity}',
    "doubled.json": lambda: A + b'"a":1,"a":1}',
    "doubled-format.json": lambda: A + b'"format":"journeybook attempt 1"}',
    "surrogate.json": lambda: A + b'"a":"\\ud800"}',
    "surrogate-bytes.json": lambda: A + b'"a":"\xed\xa0\x80"}',
    "surrogates-turned.json": lambda: A + b'"a":"\\udc00\\ud800"}',
    "overlong.json": lambda: A + b'"a":"\xc0\xaf"}',
    "nul.json": lambda: A + b'"a":"\x00"}',
    "order-mark.json": lambda: b"\xef\xbb\xbf" + attempt(KAY),
    "wide.json": lambda: attempt(KAY).decode().encode("utf-16"),
    "text.json": lambda: A + b'"a":"' + b"x" * NEAR_CAP + b'"}',
    "escapes.json": lambda: A + b'"a":"' + b"\\u0041" * (NEAR_CAP // 6) + b'"}',
    "numbers.json": lambda: A + b'"a":[' + b"1," * (NEAR_CAP // 2) + b"1]}",
    "members.json": lambda: A + b",".join(b'"%d":1' % at for at in range(90_000)) + b"}",
    "spaces.json": lambda: A + b" " * NEAR_CAP + b"}",
    "cut.json": lambda: attempt(KAY)[:-1],
    "longer.json": lambda: attempt(KAY) + b"\n",
    "twice.json": lambda: attempt(KAY) * 2,
    "cut.pdf": lambda: PDF + swelling()[:1000],
    "swelling.pdf": lambda: PDF + swelling() + b"\nendstream\nendobj\n",
    "streams.pdf": lambda: b"%PDF-1.7\n" + b"stream\n" * 1_000_000,
    "empty.pdf": lambda: b"%PDF-1.7",
    "bomb.txt": lambda: bomb(32 << 20).encode(),
    "bombs.txt": lambda: "\n".join(bomb(32 << 20, name) for name in letters(60)).encode(),
    "parts.txt": lambda: "\n".join(f"JB2:1/99:{name}:00" for name in letters(300_000)).encode(),
    "same-part.txt": lambda: "\n".join(f"JB2:1/2:ABCDEFGH:{at:06d}" for at in range(300_000)).encode(),
    "prefixes.txt": lambda: b"JB2:" * (NEAR_CAP // 4),
    "one-line.txt": lambda: b"JB2:1/2:ABCDEFGH:" + b"0" * NEAR_CAP,
    "spaced.txt": lambda: b"JB2:1/2:ABCDEFGH:" + b" " * NEAR_CAP,
    "nested.txt": lambda: b"JB2:1/1:ABCDEFGH:" * 500_000,
    "wrong-print.txt": lambda: to_codes(attempt(KAY))[0].replace("JB2:1/", "JB2:2/").encode(),
    "deep.keyed.yml": lambda: b"ticket: " + b"[" * 400_000,
    "indent.keyed.yml": lambda: b"".join(b" " * at + b"a:\n" for at in range(1_000)),
    "anchors.keyed.yml": lambda: b"a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\nticket: *c\n",
    "scalar.keyed.yml": lambda: b'ticket: "' + b"x" * 900_000 + b'"',
    "rows.keyed.yml": lambda: b"ticket: x\nanswers:\n" + b"".join(b"  q%d: A\n" % at for at in range(60_000)),
    "digits.keyed.yml": lambda: b"ticket: " + b"9" * 900_000,
    "surrogate.keyed.yml": lambda: b'ticket: "\\ud800"\n',
    "cap.keyed.yml": lambda: b"# " + b"x" * NEAR_CAP,
}  # fmt: skip


@pytest.fixture
def inbox(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Inbox:
    """A sitting whose course is here, beside a mkdocs.yml that names another: only what came back is looked at."""
    (tmp_path / "course_src").mkdir()
    settings = (
        "site_name: x\ndocs_dir: course_src\ntheme: {name: journeybook}\nplugins: [{journeybook: {courses: [drill], "
        "profile: uk}}]\n"
    )
    (tmp_path / "mkdocs.yml").write_text(settings, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    course = course_from(DATA)
    monkeypatch.setattr(mark_command, "course_finder", lambda _: lambda _: course)
    return Inbox(tmp_path)


def marked(inbox: Inbox) -> tuple[dict[str, list[str]], float, str]:
    """Each file's outcomes, the seconds it took, and what was printed."""
    begun = time.process_time()
    result = CliRunner().invoke(main, ["mark", str(inbox.folder), "--sitting", str(inbox.path), "--json"])
    took = time.process_time() - begun
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code in (0, 1)
    assert "Traceback" not in result.output
    found: dict[str, list[str]] = {}
    for line in json.loads(result.stdout):
        found.setdefault(line["from"], []).append(line["outcome"])
        assert line["outcome"] == "taken in" or line["why"], line
        assert "\n" not in line["why"]
    return found, took, result.output


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_is_told_within_a_second_and_hides_no_record(inbox: Inbox, name: str) -> None:
    inbox.put(name, HOSTILE[name]())
    inbox.put("zz-robin.json", attempt(ROBIN))
    found, took, printed = marked(inbox)
    assert found.pop("zz-robin.json") == ["taken in"]
    assert set(found) == {name}
    assert set(found[name]) <= {"refused", "incomplete", "no record"}
    assert took < SECOND * SLOWER, f"{took:.2f} s"
    assert len(printed) < 2 << 20
    robin, *others = inbox.now().people
    assert robin.attempt is not None
    assert robin.attempt.text.encode() == attempt(ROBIN)
    assert others == list(sitting().people[1:])
    assert inbox.path.stat().st_size < 64 << 10


def test_a_file_of_a_hundred_megabytes_is_named_and_not_read(inbox: Inbox) -> None:
    with (inbox.folder / "huge.json").open("wb") as file:
        file.write(A)
        file.truncate(100 << 20)
    found, took, _ = marked(inbox)
    assert found == {"huge.json": ["no record"]}
    assert took < SECOND * SLOWER


def test_all_of_it_at_once_is_told_in_a_table_and_leaves_the_sitting_small(inbox: Inbox) -> None:
    for name, made in HOSTILE.items():
        inbox.put(name, made())
    inbox.put("zz-robin.json", attempt(ROBIN))
    begun = time.process_time()
    result = CliRunner().invoke(main, ["mark", str(inbox.folder), "--sitting", str(inbox.path)])
    assert time.process_time() - begun < SECOND * SLOWER * len(HOSTILE)
    assert result.exit_code == 1
    assert "Taken in      Robin Ashdown" in result.output
    assert "Traceback" not in result.output
    assert all(part.isprintable() for part in result.output.split("\n"))
    robin = inbox.now().people[0]
    assert robin.attempt is not None
    assert robin.attempt.text.encode() == attempt(ROBIN)
    assert inbox.path.stat().st_size < 256 << 10
