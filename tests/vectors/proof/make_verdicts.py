"""Writes the verdict cases that Python and JavaScript both run: ``python tests/vectors/proof/make_verdicts.py``.

Every expected kind was reasoned out, none was taken from a program. A record is given as edits of one of two sound
records, so that a reader sees what a case is about; where that would be longer, as its text or its bytes.
"""

from __future__ import annotations

import base64
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from verdict_forms import forms
from verdict_shapes import shapes
from verdict_signers import (
    DEMO,
    FIRM,
    LISTS,
    LOST,
    PLAIN,
    SPRING,
    STRANGER,
    TODAY,
    WHOLE,
    WITHDRAWN,
    changed,
    signed,
)  # fmt: skip

from journeybook.proof import base45
from journeybook.proof.certificate_code import to_code
from journeybook.proof.certificate_pack import pack

Case = dict[str, Any]
FILE = Path(__file__).parent / "verdicts.json"
RECORDS = {
    "check alone": signed(PLAIN).decode("utf-8"),
    "supervised and observed": signed(WHOLE).decode("utf-8"),
}
ABOUT = "What is said of a certificate: kind of verdict, and since when it is withdrawn."


def cases() -> Iterator[Case]:
    """Every case, in the order of the file."""
    for name, record, kind in (*shapes(), *forms()):
        yield _case(name, record, kind)
    yield from _trusted()


def _case(
    name: str,
    record: bytes,
    kind: str,
    *,
    trust: str | None = "yard",
    today: str = TODAY,
    withdrawn: str | None = None,
) -> Case:
    return {
        "name": name,
        **_told(record),
        "trust": trust,
        "today": today,
        "kind": kind,
        "withdrawn": withdrawn,
    }


def _trusted() -> Iterator[Case]:
    """Who signed, and when."""
    plain = signed(PLAIN)
    by = {each: signed(changed(PLAIN, key), key) for each, key in
          (("spring", SPRING), ("lost", LOST), ("demo", DEMO), ("stranger", STRANGER))}  # fmt: skip
    taken = signed({**PLAIN, "id": WITHDRAWN})
    example = signed(changed(PLAIN, example=True))
    yield _case("no list", plain, "unknown-signer", trust=None)
    yield _case("an empty list", plain, "unknown-signer", trust="empty")
    yield _case("a signer that the list does not name", by["stranger"], "unknown-signer")
    yield _case("an example without a list", example, "unknown-signer", trust=None)
    yield _case(
        "a stranger's example", signed(changed(PLAIN, STRANGER, example=True), STRANGER), "unknown-signer"
    )
    yield _case("a stranger's, out of date", by["stranger"], "unknown-signer", today="2029-01-01")
    yield _case("no list, out of date", plain, "unknown-signer", trust=None, today="2029-01-01")
    withdrawn = {**changed(PLAIN, STRANGER), "id": WITHDRAWN}
    yield _case("a stranger's, with the id of a withdrawn one", signed(withdrawn, STRANGER), "unknown-signer")
    yield _case("no list, altered", plain.replace(b"1042", b"1043"), "altered", trust=None)
    yield _case("no list, no certificate", b"{}", "unreadable", trust=None)
    yield _case("the last day", plain, "genuine", today="2027-03-01")
    yield _case("the day after the last", plain, "out-of-date", today="2027-03-02")
    yield _case("the first day", plain, "genuine", today="2026-03-02")
    yield _case("the day before the first, by UTC", plain, "genuine", today="2026-03-01")
    yield _case("two days before the first", plain, "out-of-date", today="2026-02-28")
    begins = signed({**PLAIN, "validFrom": "2028-03-01T00:30:00Z"})
    for today, kind in (("2028-02-28", "out-of-date"), ("2028-02-29", "out-of-date")):
        yield _case(
            f"a certificate that ends before it begins, on {today}", begins, kind, trust="always", today=today
        )
    oldest = {**PLAIN, "validFrom": "0001-01-01T00:00:00Z"}
    yield _case("the first day that there is", signed(oldest), "genuine", trust="always")
    yield _case("the last day of the key", by["spring"], "genuine")
    early = {**changed(PLAIN, FIRM), "validFrom": "2025-12-31T23:59:59Z"}
    yield _case("signed the day before the key's first", signed(early), "unknown-signer")
    first = {**early, "validFrom": "2026-01-01T00:00:00Z"}
    yield _case("signed on the key's first day", signed(first), "genuine")
    late = {**changed(PLAIN, SPRING), "validFrom": "2026-03-03T00:00:00Z"}
    yield _case("signed the day after the key's last", signed(late, SPRING), "unknown-signer")
    yield _case("withdrawn", taken, "withdrawn", withdrawn="2026-05-04")
    yield _case("withdrawn, out of date", taken, "withdrawn", today="2029-01-01", withdrawn="2026-05-04")
    yield _case(
        "withdrawn, before its first day", taken, "withdrawn", today="2026-01-01", withdrawn="2026-05-04"
    )
    yield _case("withdrawn, an example", signed({**changed(PLAIN, example=True), "id": WITHDRAWN}), "withdrawn",
                withdrawn="2026-05-04")  # fmt: skip
    yield _case("withdrawn, by a demo key", signed({**changed(PLAIN, DEMO), "id": WITHDRAWN}, DEMO), "withdrawn",
                withdrawn="2026-05-04")  # fmt: skip
    yield _case("withdrawn, altered", taken.replace(b"1042", b"1043"), "altered")
    yield _case("withdrawn, signed outside the key's days", signed({**late, "id": WITHDRAWN}, SPRING), "withdrawn",
                withdrawn="2026-05-04")  # fmt: skip
    yield _case("withdrawn, another list", taken, "unknown-signer", trust="empty")
    yield _case("key withdrawn", by["lost"], "withdrawn", withdrawn="2026-06-01")
    yield _case(
        "key withdrawn, signed before", by["lost"], "withdrawn", today="2026-03-05", withdrawn="2026-06-01"
    )
    yield _case(
        "key withdrawn, out of date", by["lost"], "withdrawn", today="2029-01-01", withdrawn="2026-06-01"
    )
    yield _case("key withdrawn, and the certificate too", signed({**changed(PLAIN, LOST), "id": WITHDRAWN}, LOST),
                "withdrawn", withdrawn="2026-05-04")  # fmt: skip
    dated = {**changed(PLAIN, LOST), "validFrom": "2025-06-01T00:00:00Z"}
    yield _case(
        "key withdrawn, a day before its first", signed(dated, LOST), "withdrawn", withdrawn="2026-06-01"
    )
    yield _case("demo key", by["demo"], "example")
    yield _case("demo key, an example", signed(changed(PLAIN, DEMO, example=True), DEMO), "example")
    yield _case("demo key, supervised and observed", signed(changed(WHOLE, DEMO), DEMO), "example")
    yield _case("demo key, out of date", by["demo"], "out-of-date", today="2029-01-01")
    yield _case("an example of another key", example, "example")
    yield _case("an example, out of date", example, "out-of-date", today="2029-01-01")
    yield _case("an example, the last day", example, "example", today="2027-03-01")
    yield _case("a key listed twice, the second for this day", plain, "genuine", trust="twice")
    yield _case(
        "a key listed twice, once withdrawn", by["spring"], "withdrawn", trust="twice", withdrawn="2026-02-01"
    )
    yield _case("a key listed twice, once as a demo", by["demo"], "example", trust="twice")


def codes() -> Iterator[Case]:
    """Codes of certificates: whose they are, None for those that are none or damaged."""
    for name, text in RECORDS.items():
        code = to_code(text.encode("utf-8"))
        yield {"name": name, "code": code, "of": name}
        yield {
            "name": f"{name}, small letters and blanks",
            "code": f"\ufeff \n{code.replace('JB1', 'jb1')}\u00a0\r\n",
            "of": name,
        }
        broken = "\r\n".join(code[at : at + 60] for at in range(0, len(code), 60))
        yield {"name": f"{name}, broken by a mail", "code": broken, "of": name}
        for cut in (1, 2, 3, 30, len(code) - 4, len(code) - 3):
            yield {"name": f"{name}, {cut} signs short", "code": code[:-cut], "of": None}
        yield {"name": f"{name}, another number", "code": code.replace("JB1", "JB2"), "of": None}
        yield {"name": f"{name}, a sign more", "code": code + "0", "of": None}
        for what, data in (
            ("a byte more", pack(text.encode("utf-8")) + b"\0"),
            ("nine observations", b"\x09" + bytes(400)),
        ):
            yield {"name": f"{name}, {what}", "code": "JB1:" + base45.encode(data), "of": None}
    yield {"name": "more than 4,000 signs", "code": "JB1:" + "0" * 3999, "of": None}
    yield {"name": "nothing", "code": "", "of": None}


def _told(record: bytes) -> Case:
    """The record as edits of a sound one, as text, or as bytes: whichever is shortest."""
    try:
        text = record.decode("utf-8")
    except UnicodeDecodeError:
        return {"base64": base64.b64encode(record).decode("ascii")}
    told: list[Case] = [{"record": text}]
    for name, base in RECORDS.items():
        edits = _edits(base, text)
        if edits is not None:
            told.append({"of": name, "edits": edits})
    return min(told, key=lambda each: len(json.dumps(each)))


def _edits(base: str, text: str) -> list[list[str]] | None:
    """Pairs of old and new, each old standing once in what is there by then; None where that is no way to say it."""
    word = '"proofValue":'
    if base.count(word) != 1 or text.count(word) != 1:
        return [_edit(base, text)] if text != base else []
    edits: list[list[str]] = []
    for old, new in zip(base.split(word), text.split(word), strict=True):
        if old != new:
            edits.append(_edit(old, new))
    now = base
    for old, new in edits:
        if now.count(old) != 1:
            return None
        now = now.replace(old, new)
    return edits if now == text else None


def _edit(old: str, new: str) -> list[str]:
    start = 0
    while start < min(len(old), len(new)) and old[start] == new[start]:
        start += 1
    end = 0
    while end < min(len(old), len(new)) - start and old[-1 - end] == new[-1 - end]:
        end += 1
    while start and (old.count(old[start : len(old) - end]) != 1 or old[start] != '"'):
        start -= 1
    return [old[start : len(old) - end], new[start : len(new) - end]]


def contents() -> str:
    """Return what the file holds."""
    lines = ",\n".join(json.dumps(case) for case in cases())
    head = {"about": ABOUT, "lists": LISTS, "records": RECORDS, "codes": [*codes()]}
    return f'{json.dumps(head, indent=0)[:-2]},\n"cases": [\n{lines}\n]}}\n'


if __name__ == "__main__":
    FILE.write_text(contents(), encoding="utf-8")
