"""Whatever happens to a certificate, a code or a PDF on its way, the page and the command say the same of it."""

from __future__ import annotations

import base64
import copy
import json
import random
import shutil
import subprocess
import zlib
from collections import Counter
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from yard_certificates import KEY, OBSERVED, PASSED

from journeybook.marking import canonical
from journeybook.proof import base45
from journeybook.proof.certificate import write
from journeybook.proof.certificate_code import NoCode, from_code, to_code
from journeybook.proof.certificate_pack import pack
from journeybook.proof.data_integrity import sign
from journeybook.proof.record_in_pdf import find
from journeybook.proof.verdict import verdict

ROOT = Path(__file__).parents[3]
RECORDS = [write(PASSED, KEY), write(OBSERVED, KEY)]
TODAY = "2026-11-27"
SCRIPT = """
import { readFileSync } from 'node:fs';
const { scripts } = await import(process.argv[1]);
const { CertificateCode, NobleEd25519, RecordInPdf, Verdict } = scripts;
const said = [];
for (const [what, data] of JSON.parse(readFileSync(0, 'utf8'))) {
  const bytes = new Uint8Array(Buffer.from(data, 'base64'));
  if (what === 'record') said.push((await Verdict.of(bytes, null, '2026-11-27', NobleEd25519.verify)).kind);
  else if (what === 'pdf') {
    const found = RecordInPdf.find(bytes);
    said.push(found && Buffer.from(found).toString('base64'));
  } else try {
    said.push(Buffer.from(CertificateCode.read(Buffer.from(bytes).toString('latin1'))).toString('base64'));
  } catch (error) {
    if (!(error instanceof CertificateCode.NoCode)) throw error;
    said.push(null);
  }
}
console.log(JSON.stringify(said));
"""
TEXT_BYTES = (
    b'{}[]":,\\ 0123456789eE.-+nulltruefalse\xc3\xa9\xe2\x80\xa8\xef\xbb\xbf\xed\xa0\x80\x00\x1f\x7f\xff'
)
ODD: list[Any] = [
    None,
    True,
    0,
    1,
    -1,
    2**53 - 1,
    "",
    " ",
    "x",
    "e\u0301",
    "\u2028",
    "\U00010400" * 200,
    [],
    ["x"],
    {},
]


def harmed(data: bytes, made: random.Random) -> bytes:
    """With a few bytes lost, doubled, swapped, or put in another's place."""
    for _ in range(made.choice([1, 1, 1, 2, 3])):
        at = made.randrange(len(data))
        size = made.choice([1, 1, 1, 2, 5, 40])
        now = [
            data[:at] + data[at + size :],
            data[: at + size] + data[at:],
            data[:at] + bytes(made.choice(TEXT_BYTES) for _ in range(size)) + data[at + size :],
            data[:at] + data[at : at + size][::-1] + data[at + size :],
        ]
        data = made.choice(now) or data
    return data


def reformed(made: random.Random) -> bytes:
    """With a member or two of another value, and signed as it then is."""
    document = json.loads(made.choice(RECORDS))
    del document["proof"]
    for _ in range(made.choice([1, 2])):
        where = made.choice([document, document["credentialSubject"], document["credentialSubject"]])
        value = made.choice([*ODD, *document["credentialSubject"].values()])
        where[made.choice([*where, "note"])] = copy.deepcopy(value)
        if not isinstance(document["credentialSubject"], dict):
            break
    return canonical.write(sign(document, KEY))


def pdf(made: random.Random) -> bytes:
    """Streams of several sorts, harmed now and then."""
    pieces = [b"%PDF-1.7\n"]
    for _ in range(made.randrange(4)):
        record = made.choice(RECORDS)
        sorts: list[Callable[[], bytes]] = [
            lambda record=record: record,  # type: ignore[misc]
            lambda record=record: zlib.compress(record),  # type: ignore[misc]
            lambda record=record: zlib.compress(record, 0),  # type: ignore[misc]
            lambda: zlib.compress(b"BT (a page) Tj ET"),
            lambda: zlib.compress(bytes(20_000)),
            lambda: b"",
        ]
        pieces.append(b"stream" + made.choice([b"\n", b"\r\n", b"\r", b""]) + made.choice(sorts)())
        pieces.append(made.choice([b"\nendstream", b"\r\nendstream", b"endstream", b""]))
    whole = b"".join(pieces)
    return whole if made.random() < 0.7 else harmed(whole, made)


def things() -> Iterator[tuple[str, bytes]]:
    """What to look at, from a fixed seed."""
    made = random.Random(20261127)
    codes = [to_code(record).encode("ascii") for record in RECORDS]
    for _ in range(600):
        yield "record", harmed(made.choice(RECORDS), made)
        yield "record", reformed(made)
    for _ in range(300):
        yield "code", harmed(made.choice(codes), made)
        packed = harmed(pack(made.choice(RECORDS)), made)
        yield "code", b"JB1:" + base45.encode(packed).encode("ascii")
    for _ in range(300):
        yield "pdf", pdf(made)


def said(what: str, data: bytes) -> str | None:
    if what == "record":
        return verdict(data, None, date.fromisoformat(TODAY)).kind
    if what == "pdf":
        found = find(data)
    else:
        try:
            found = from_code(data.decode("latin-1"))
        except NoCode:
            found = None
    return None if found is None else base64.b64encode(found).decode("ascii")


def test_both_say_the_same_of_what_was_harmed() -> None:
    node = shutil.which("node")
    if node is None:
        pytest.skip("no node here")
    given = list(things())
    done = subprocess.run(
        [node, "--input-type=module", "-e", SCRIPT, str(ROOT / "tests" / "js" / "load-proof.mjs")],
        input=json.dumps([(what, base64.b64encode(data).decode("ascii")) for what, data in given]),
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    seen = Counter[tuple[str, bool]]()
    for (what, data), on_page in zip(given, json.loads(done.stdout), strict=True):
        here = said(what, data)
        seen[what, here in {None, "unreadable"}] += 1
        assert here == on_page, (what, data)
    assert min(seen.values()) >= 15, seen
    assert len(seen) == 6
