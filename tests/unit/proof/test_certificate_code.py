"""The code on paper gives back the certificate, fits a QR code that a phone reads, and is refused where damaged."""

from __future__ import annotations

import dataclasses
import hashlib
import random
import re
import zlib
from datetime import date

import pytest
import segno
from yard_certificates import KEY, OBSERVED

from journeybook.marking.fingerprint import fingerprint
from journeybook.proof import base45
from journeybook.proof.certificate import write
from journeybook.proof.certificate_code import LONGEST, NoCode, begins, from_code, to_code
from journeybook.proof.certificate_pack import _dictionary, pack

LONG = dataclasses.replace(
    OBSERVED,
    id="urn:uuid:7f3c9d12-5b8e-4c61-a9d0-3e52b7c1f804",
    valid_from="2026-11-27T00:00:00Z",
    valid_until="2027-11-24T23:59:59Z",
    name="Maximiliane-Theodora von Hohenstein-Wassermann",
    person="QBW-2026-004417",
    employer="Quillon Basin Works, Engineering and Repair Division",
    workplace="Shed 3, lower basin, bay 12",
    equipment="Belt-worn powered air-purifying respirator, hose-fed welding head-top (generic example unit)",
    title="Powered respirator for welders: set it up, wear it, look after it",
    version="2026.1",
    digest=hashlib.sha256(b"a course").hexdigest(),
    profile="uk",
    marks=21_500,
    of=24_000,
    must_pass=(8, 8),
    identity="Works pass with photograph, compared by the assessor",
    trainer="Konstantin Abernathy-Fairweather",
    assessor="Bartholomew Featherstonehaugh",
    trained=date(2026, 11, 23),
    checked=date(2026, 11, 24),
    observed=date(2026, 11, 26),
    retrain_by=date(2027, 11, 24),
    fingerprint=fingerprint(b"an attempt"),
    observations=(fingerprint(b"an observation"), fingerprint(b"another")),
)
RECORD = write(LONG, KEY)
CODE = to_code(RECORD)
KEPT = (
    "JB1:+D0NVJFFV%H4UUS Q1TNUDYGHAKRHNH:J6NGBP33 CQ%GN*0X%UK*FD5W 6OFRK%B8SM8Z$UNEBG6KL6I86K%KE/*S/9"
    "BJ1UNV0XDH$:RPB1C/IGLAFW59PN1NE71DA7OGWI0O3.WEV90 .1VTBVEH+1UDYK*QB7/0X33A$5IAUVI9HZN7AH:112BWT0"
    "5K-5-+U$T7JE2N:HQFCUEQPKALNOIN02D6.ZB$YPL8V28MQET5P1V4TDV5 3B-T88FP+-9D%9MVCAPI0Q9J36G6PFYU8+ROF"
    "864R2:0+DBC11247A7V4XMLV46/N%T6WYT+BUARJ3.OYYIF%9W1IZFV90K*YP:U4+2HMU1S3PJ.8KR8A+0JD54YASVI:5Q4U"
    "6HTUB3R$9Q9GM.G3*-7T%VI%1E 8/CCU8W8$S9EVC:MVG426WK*SX-3A2ORWOV/6X0FWOMFETPEREUM.ZAC$F-PF+7KRL12U"
    "T2QEA BX05T+1PE1-+S$DO896U%G.TO:X0*81J528K7NFBVJ3IF6 HOSEG.VDKOD.5MOQPZ AUN9B56261L*AP+KH4HKRR.+"
    "P1G4NJOXS9D$20WFGQNKNI*VBU.5UFCRQI4BE3Y420STG0AHMH1II4DJ-5AYTA%SFN0+FFAVN1RURG7P6CU-UFAI2ZH.TMT6"
    "O TDN:SW EH.K:91WDS8IP6MAVYOPW9E2TS4AQ.KPZ7F.S4R4ESI:.V9.T3:U"
)
"""The same, as it was first written."""


def refusal(text: str) -> str:
    with pytest.raises(NoCode) as refused:
        from_code(text)
    return refused.value.detail


def test_the_dictionary_is_frozen() -> None:
    # Codes on paper refer to these bytes for ever: another dictionary needs another prefix, not another sum here.
    digest = "64570c14fe9505736de9967fed116c2d2718dbdafb1932b153893451ebaced7f"
    assert hashlib.sha256(_dictionary()).hexdigest() == digest


def test_a_code_printed_earlier_still_gives_its_certificate() -> None:
    assert from_code(KEPT) == RECORD


def test_a_certificate_with_long_names_fits_a_qr_code_of_version_18() -> None:
    assert len(CODE) <= LONGEST
    plate = segno.make_qr(CODE, error="m", boost_error=False)
    assert plate.mode == "alphanumeric"
    assert isinstance(plate.version, int)
    assert plate.version <= 18


def test_the_longest_code_that_is_written_fits_version_18() -> None:
    assert segno.make_qr("A" * LONGEST, error="m", boost_error=False).version == 18


@pytest.mark.parametrize(
    "text",
    [
        CODE,
        f"  {CODE}\n",
        f"\ufeff{CODE}",
        CODE.replace("JB1:", "jb1:"),
        re.sub(r"(.{60})", "\\1\r\n", CODE),
        f"{CODE[:9]}\t{CODE[9:]}",
    ],
    ids=["as it is", "blanks around", "a byte order mark", "small letters", "broken by a mail", "a tab"],
)
def test_a_pasting_may_break_the_code(text: str) -> None:
    assert begins(text)
    assert from_code(text) == RECORD


def test_no_code_ends_in_a_blank_that_a_pasting_would_lose() -> None:
    made = random.Random(45)
    for size in range(1, 200):
        assert base45.encode(made.randbytes(size))[-1] != " "


@pytest.mark.parametrize("text", ["", "JB2:1/1:AAAA", "hello", "JB1", "JB1:" + "0" * 3997])
def test_what_is_no_code_is_told(text: str) -> None:
    assert refusal(text) == "This is not the code of a certificate."


def code_of(packed: bytes) -> str:
    return "JB1:" + base45.encode(packed)


def with_lines(lines: bytes) -> str:
    machine = zlib.compressobj(9, zlib.DEFLATED, -15)
    return code_of(pack(RECORD)[: 1 + 64 + 32 + 32 + 16 + 30] + machine.compress(lines) + machine.flush())


@pytest.mark.parametrize(
    "text",
    [
        CODE[:-1],
        CODE[:-3],
        CODE[:-60],
        CODE[:100],
        "JB1:",
        CODE.replace(" ", "") + "Ä",
        code_of(pack(RECORD) + b"\0"),
        code_of(b"\x09" + pack(RECORD)[1:]),
        with_lines(b"\n" * 24),
        with_lines(b"\n" * 25),
        with_lines(b"\xff" * 26),
        with_lines(b"A" * (50 << 20)),
    ],
    ids=[
        "a sign",
        "three",
        "sixty",
        "most",
        "nothing",
        "a strange sign",
        "more",
        "nine",
        "25",
        "empty",
        "utf-8",
        "swollen",
    ],
)
def test_a_damaged_code_is_told(text: str) -> None:
    assert refusal(text[:4000]) == "The code is damaged or cut short."


def test_a_damaged_code_never_gives_the_certificate() -> None:
    made = random.Random(1)
    for _ in range(2000):
        at = made.randrange(4, len(CODE))
        changed = CODE[:at] + made.choice(base45.ALPHABET.replace(CODE[at], "")) + CODE[at + 1 :]
        try:
            assert from_code(changed) != RECORD
        except NoCode:
            continue


def test_only_certificates_have_a_code() -> None:
    with pytest.raises(ValueError, match=r"^Line 1, column 1"):
        to_code(b"hello")
    with pytest.raises(ValueError, match=r"^The certificate holds more than its code can say\.$"):
        to_code(RECORD.replace(b'"cryptosuite"', b'"created":"2026-11-27T00:00:00Z","cryptosuite"'))


def test_a_code_that_nobody_could_scan_is_not_written() -> None:
    texts = {
        each: (hashlib.sha512(each.encode()).hexdigest() * 2)[:200] for each in ("name", "employer", "title")
    }
    with pytest.raises(
        ValueError, match=r"^The code of this certificate would have \d+ signs, and at most 800 can be"
    ):
        to_code(write(dataclasses.replace(LONG, **texts), KEY))


@pytest.mark.parametrize(
    "quoted",
    [
        f"\u201c{CODE}\u201d",
        f'> "{CODE}"',
        f"({CODE})\n",
        "> " + "\r\n> ".join(CODE[at : at + 72] for at in range(0, len(CODE), 72)),
        ">> " + "\n>> ".join(CODE[at : at + 76] for at in range(0, len(CODE), 76)),
    ],
)
def test_a_code_that_a_mail_has_quoted_is_the_code(quoted: str) -> None:
    assert begins(quoted)
    assert from_code(quoted) == RECORD
