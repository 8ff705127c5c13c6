"""A record goes through codes unharmed: in any order, doubled, mixed; whatever else comes is named and not guessed."""

from __future__ import annotations

import json
import random
import subprocess
import zlib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journeybook.marking.fingerprint import fingerprint
from journeybook.proof import base45
from journeybook.proof.record_codes import LONGEST_PIECE, MOST_ODD, MOST_RECORDS, from_codes, to_codes

ROOT = Path(__file__).parents[3]
RANDOM = random.Random(7)
LONG, OTHER = RANDOM.randbytes(2000), RANDOM.randbytes(900)


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"AB", "BB8"),
        (b"Hello!!", "%69 VD92EX0"),
        (b"base-45", "UJCLQE7W581"),
        (b"ietf!", "QED8WEX0"),
        (b"", ""),
    ],
)
def test_base45_gives_the_examples_of_rfc_9285(data: bytes, text: str) -> None:
    assert base45.encode(data) == text
    assert base45.decode(text) == data


@pytest.mark.parametrize("text", ["A", "GGW", "::", "abc", "A\u00e4B"])
def test_base45_refuses_what_stands_for_no_bytes(text: str) -> None:
    with pytest.raises(ValueError, match="base45"):
        base45.decode(text)


@given(st.binary(max_size=200))
def test_base45_gives_back_any_bytes(data: bytes) -> None:
    assert base45.decode(base45.encode(data)) == data


@settings(deadline=None, max_examples=50)
@given(st.binary(min_size=1, max_size=4000), st.randoms(use_true_random=False))
def test_any_record_comes_back_from_its_codes_shuffled_and_doubled(
    data: bytes, chance: random.Random
) -> None:
    codes = [*to_codes(data), *to_codes(data)]
    chance.shuffle(codes)
    found = from_codes(codes)
    assert found.records == (data,)
    assert (found.incomplete, found.odd) == ((), ())


def test_codes_of_several_records_in_one_text_are_told_apart() -> None:
    codes = [code for pair in zip(to_codes(LONG), reversed(to_codes(LONG)), strict=True) for code in pair]
    text = "From the hall:\n" + "\n".join([*codes, *to_codes(OTHER)]) + "\nRegards"
    assert set(from_codes([text]).records) == {LONG, OTHER}


def test_codes_in_one_line_are_read() -> None:
    assert from_codes([" ".join(to_codes(LONG))]).records == (LONG,)


def test_the_parts_that_are_not_there_are_named() -> None:
    codes = to_codes(LONG)
    found = from_codes(codes[1:-1])
    (one,) = found.incomplete
    assert one.missing == (1, len(codes))
    assert f"parts 1, {len(codes)} of {len(codes)}" in one.sentence()
    assert (found.records, found.odd) == ((), ())


def test_no_changed_sign_gives_another_record() -> None:
    record = b'{"a":1}'
    (code,) = to_codes(record)
    head = code.rindex(":") + 1
    for at in range(head, len(code)):
        for sign in "0Z $":
            if code[at] != sign:
                # The last bits of a deflate stream may be anything, so the same record may come out.
                assert from_codes([code[:at] + sign + code[at + 1 :]]).records in ((), (record,))


def test_two_parts_with_one_number_are_not_chosen_between() -> None:
    codes = to_codes(LONG)
    changed = codes[0][:-1] + ("0" if codes[0][-1] != "0" else "1")
    found = from_codes([changed, *codes])
    assert found.records == ()
    assert "came twice with different signs" in found.odd[0].why


@pytest.mark.parametrize(
    "text", ["JB2:3/2:ABCDEFGH:AA", "JB2:1/1:abcdefgh:AA", "JB2:", "JB2:1/100:ABCDEFGH:AA"]
)
def test_what_begins_as_a_code_and_is_none_is_named(text: str) -> None:
    found = from_codes([text])
    assert [odd.text for odd in found.odd] == [text]


def test_a_code_that_unpacks_without_end_is_refused() -> None:
    machine = zlib.compressobj(9, zlib.DEFLATED, -15)
    packed = machine.compress(bytes(40 << 20)) + machine.flush()
    whole = base45.encode(packed)
    pieces = [whole[at : at + 700] for at in range(0, len(whole), 700)]
    codes = [f"JB2:{n}/{len(pieces)}:ABCDEFGH:{piece}" for n, piece in enumerate(pieces, 1)]
    found = from_codes(codes)
    assert found.records == ()
    assert found.odd


def test_the_script_writes_codes_that_are_read_here() -> None:
    script = """
      const fs = require('fs'), zlib = require('zlib');
      const given = JSON.parse(fs.readFileSync(0, 'utf8'));
      const RecordCodes = new Function(fs.readFileSync(given.file, 'utf8') + '; return RecordCodes;')();
      const record = Buffer.from(given.record, 'base64');
      const deflate = (bytes) => zlib.deflateRawSync(bytes, {level: 9});
      console.log(JSON.stringify(RecordCodes.texts(record, given.print, deflate)));
    """
    import base64

    given = {
        "file": str(ROOT / "site_overrides" / "js" / "pure" / "record-codes.js"),
        "record": base64.b64encode(LONG).decode(),
        "print": fingerprint(LONG),
    }
    done = subprocess.run(
        ["node", "-e", script], input=json.dumps(given), capture_output=True, text=True, check=True
    )
    codes = json.loads(done.stdout)
    assert from_codes(codes).records == (LONG,)
    assert {len(code) for code in codes[:-1]} == {LONGEST_PIECE + len("JB2:1/7:ABCDEFGH:")}


def test_a_heap_of_too_many_records_is_read_as_far_as_a_class_goes() -> None:
    chance = random.Random(3)
    names = {
        "".join(chance.choice("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") for _ in range(8)) for _ in range(2100)
    }
    found = from_codes(["\n".join(f"JB2:1/2:{name}:00" for name in sorted(names)), *to_codes(OTHER)])
    assert len(found.incomplete) == MOST_RECORDS
    assert found.records == ()
    assert [each.why for each in found.odd] == [
        f"It has codes of more than {MOST_RECORDS} records; {len(names) - MOST_RECORDS + len(to_codes(OTHER))} codes "
        "beyond were left out. Part the file."
    ]  # fmt: skip


def test_odd_things_are_told_one_by_one_and_then_counted_and_a_record_among_them_is_read() -> None:
    found = from_codes(["JB2:oops\n" * (MOST_ODD + 5), *to_codes(OTHER)])
    assert found.records == (OTHER,)
    assert len(found.odd) == MOST_ODD + 1
    assert found.odd[-1].text == "5 more"


def test_spaces_that_a_mail_program_left_behind_a_code_are_no_part_of_it() -> None:
    codes = to_codes(LONG)
    assert from_codes(["".join(f"{code}{' ' * 40}" for code in codes)]).records == (LONG,)
    assert from_codes([f"{code}{' ' * 4000}\n" for code in codes]).records == (LONG,)
