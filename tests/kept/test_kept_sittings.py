"""Sittings, observations, keyed sheets, codes and sealed records that were written once are read for ever."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Any

import pytest

from journeybook.diagnostics.problem import Level
from journeybook.marking import canonical, observation
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observed import misfits
from journeybook.marking.remark import re_mark
from journeybook.proof.record_codes import from_codes
from journeybook.sittings import keyed, sealed_blob, sitting_file, sitting_format
from journeybook.sittings.seal import place_name

KEPT_IN = Path(__file__).parent / "format-1-sittings"
# The digest of everything kept here: a changed, missing or added file is a mistake.
KEPT = "bd76fd023b283dcdc1f5a716661352fbcdaf18dd13a27a49defb31da8d3695d8"
PASSPHRASE = "guard mango river stone ladder zebra"
LEE = "YZ234-56789"


def kept(name: str) -> bytes:
    return (KEPT_IN / name).read_bytes()


def test_no_kept_file_of_a_sitting_was_ever_touched() -> None:
    lines = [
        f"{path.name} {hashlib.sha256(path.read_bytes()).hexdigest()}\n" for path in sorted(KEPT_IN.iterdir())
    ]
    assert hashlib.sha256("".join(lines).encode()).hexdigest() == KEPT


@pytest.mark.parametrize("name", ["class.sitting.json", "sealed.sitting.json"])
def test_a_kept_sitting_is_read_and_written_again_byte_for_byte(name: str) -> None:
    assert sitting_format.to_bytes(sitting_format.from_bytes(kept(name))) == kept(name)


def test_the_kept_sitting_says_what_happened_on_its_day() -> None:
    day = sitting_file.read(KEPT_IN / "class.sitting.json")
    assert (day.title, day.held_on.isoformat(), day.passphrase) == (
        "Wednesday class",
        "2026-12-02",
        PASSPHRASE,
    )
    robin, kay, lee = day.people
    ways = [place.attempt.by_way_of for place in day.people if place.attempt]
    assert ways == ["file", "code", "keyed"]
    assert [place.attempt_number for place in day.people] == [1, 2, 1]
    assert robin.vouched is not None
    assert robin.vouched.by == "T. Marrable"
    assert [(each.answered_by, each.why) for each in robin.set_aside] == [("0512", "The page was tried out.")]
    assert kay.certificate is not None
    assert kay.certificate.file == "kay.pdf"
    (seen,) = kay.observations
    assert seen.text.encode() == kept("observation.json")
    assert seen.countersigned is not None
    assert lee.vouched is None
    assert [each.source for each in day.refused] == ["kay-again.json"]


@pytest.mark.parametrize("name", ["robin", "kay", "lee"])
def test_an_attempt_of_the_kept_sitting_is_marked_again_to_its_result(name: str) -> None:
    results: Any = canonical.read(kept("results.json"))
    found = re_mark(kept(f"attempt-{name}.json"), kept("compiled.json"))
    assert found.problems == ()
    assert {"fingerprint": found.fingerprint, "result": found.result} == results[name]
    held = {fingerprint(place.attempt.text.encode()) for place in
            sitting_file.read(KEPT_IN / "class.sitting.json").people if place.attempt}  # fmt: skip
    assert found.fingerprint in held


def test_the_kept_observation_is_read_fits_its_course_and_is_written_again() -> None:
    seen = observation.read(kept("observation.json"))
    assert observation.write(seen) == kept("observation.json")
    content: Any = canonical.read(kept("compiled.json"), canonical.COMPILED_SIZE_CAP)
    digest = hashlib.sha256(kept("compiled.json")).hexdigest()
    assert [each for each in misfits(seen, content, digest, "kay") if each.level is Level.FAULT] == []


def test_the_kept_paper_gives_the_kept_record() -> None:
    day = sitting_file.read(KEPT_IN / "class.sitting.json")
    file, problems = keyed.read_keyed(kept(f"{LEE}.keyed.yml"), f"{LEE}.keyed.yml")
    assert file is not None, problems
    content: Any = canonical.read(kept("compiled.json"), canonical.COMPILED_SIZE_CAP)
    seat = day.place(LEE)
    assert seat is not None
    assert keyed.record_of(file, day, seat, content) == (kept("attempt-lee.json"), [])


def test_the_kept_codes_give_the_kept_records() -> None:
    alone = from_codes([kept("codes-kay.txt").decode()])
    assert (alone.records, alone.incomplete, alone.odd) == ((kept("attempt-kay.json"),), (), ())
    both = from_codes([kept("codes-robin-and-observation.txt").decode()])
    assert set(both.records) == {kept("attempt-robin.json"), kept("observation.json")}
    assert (both.incomplete, both.odd) == ((), ())


def test_the_kept_seal_opens_with_its_words_and_holds_what_it_held() -> None:
    content = sealed_blob.unseal(kept("sealed.json"), PASSPHRASE)
    assert content == canonical.read(kept("sealed-content.json"), sealed_blob.CONTENT_CAP)
    made = sitting_file.read(KEPT_IN / "sealed.sitting.json")
    assert content["sitting"] == made.id
    for place in made.people:
        assert content["places"][place_name(made.id, place.ticket)]["person"]["name"] == place.name
