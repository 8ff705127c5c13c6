"""The private file of a sitting: read exactly as written, changed only forwards, nothing that came in is lost."""

from __future__ import annotations

import stat
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.sittings import sitting_file as file
from journeybook.sittings.sitting import (
    Assessor,
    Place,
    Sitting,
    SittingRefused,
    Taken,
    vouched,
    with_attempt,
)
from journeybook.sittings.sitting_format import from_bytes, to_bytes

STAMP = "2026-12-02T09:40:00Z"
ROBIN, KAY = "ABCDE-FGHJK", "MNPQR-STVWX"


def sitting() -> Sitting:
    return Sitting(
        id="3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11",
        course="pillar-drill",
        version="1.0",
        digest="a" * 64,
        profile="uk",
        language="en",
        title="Wednesday class",
        held_on=date(2026, 12, 2),
        location="Training room 2",
        assessor=Assessor(name="T. Marrable", basis="Foreman"),
        identity="Works pass",
        trainer="A. Fenwright",
        trained=None,
        minutes=30,
        made="2026-11-30T08:00:00Z",
        passphrase="guard mango river stone ladder zebra",
        people=(
            Place(ticket=ROBIN, id="0417", name="Robin Ashdown", workplace="Bay 3"),
            Place(ticket=KAY, id="0512", name="Kay Ferriby", workplace="", extra_minutes=8, oral=True),
        ),
    )


def attempt(ticket: str = ROBIN, answer: str = "a", card: Card | None = None) -> bytes:
    return write(
        Attempt(
            course="pillar-drill",
            version="1.0",
            digest="a" * 64,
            profile="uk",
            language="en",
            seed=ticket,
            avoid=(),
            form=(Asked(question="guard-01", variant=0, options=("a", "b")),),
            answers={"guard-01": answer},
            shown=("guard-01",),
            started="2026-12-02T09:00:00Z",
            ended="2026-12-02T09:30:00Z",
            card=card or Card(id="0417", name="Robin Ashdown", workplace="Bay 3"),
        )
    )


def entered(data: bytes) -> Taken:
    return with_attempt(sitting(), data, received=STAMP, by_way_of="file", source="robin.json")


def test_what_was_written_is_read_again(tmp_path: Path) -> None:
    path = tmp_path / "class.sitting.json"
    whole = vouched(
        entered(attempt()).sitting, ROBIN, by="T. Marrable", on=date(2026, 12, 2), identity="pass"
    )
    file.write(path, whole)
    assert file.read(path) == whole


def test_only_its_owner_may_read_it(tmp_path: Path) -> None:
    path = tmp_path / "class.sitting.json"
    file.write(path, sitting())
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_an_attempt_is_entered_at_its_ticket() -> None:
    taken = entered(attempt())
    place = taken.sitting.place(ROBIN)
    assert taken.outcome == "entered"
    assert place is not None
    assert place.attempt is not None
    assert place.attempt.fingerprint == taken.fingerprint


def test_the_same_attempt_again_changes_nothing() -> None:
    once = entered(attempt()).sitting
    again = with_attempt(once, attempt(), received="2026-12-02T10:00:00Z", by_way_of="code")
    assert (again.outcome, again.sitting) == ("already held", once)


def test_another_attempt_on_a_used_ticket_is_refused_and_kept() -> None:
    once = entered(attempt()).sitting
    other = with_attempt(once, attempt(answer="b"), received=STAMP, by_way_of="file", source="again.json")
    assert other.outcome == "refused"
    assert other.sitting.people == once.people
    assert [line.fingerprint for line in other.sitting.refused] == [other.fingerprint]
    assert "is used" in other.why


def test_a_stranger_on_a_ticket_is_refused_and_kept() -> None:
    taken = entered(attempt(card=Card(id="0999", name="Nobody", workplace="")))
    assert taken.outcome == "refused"
    assert "Nobody" in taken.sitting.refused[0].why


def test_an_unknown_ticket_is_refused_and_kept() -> None:
    taken = entered(attempt(ticket="ZZZZZ-ZZZZZ"))
    assert (taken.outcome, len(taken.sitting.refused)) == ("refused", 1)


def test_nobody_can_vouch_where_nothing_was_handed_in() -> None:
    with pytest.raises(SittingRefused, match="handed in nothing yet"):
        vouched(sitting(), ROBIN, by="T. Marrable", on=date(2026, 12, 2), identity="pass")


def test_a_file_with_any_byte_changed_is_refused_or_says_something_else() -> None:
    data = to_bytes(entered(attempt()).sitting)
    before = from_bytes(data)
    for at in range(0, len(data), 7):
        changed = data[:at] + bytes([data[at] ^ 1]) + data[at + 1 :]
        try:
            assert from_bytes(changed) != before
        except SittingRefused:
            continue


def test_an_attempt_swapped_to_another_place_is_refused() -> None:
    whole = entered(attempt()).sitting
    robin, kay = whole.people
    swapped = replace(whole, people=(replace(robin, attempt=None), replace(kay, attempt=robin.attempt)))
    with pytest.raises(SittingRefused, match=KAY):
        from_bytes(to_bytes(swapped))


def test_a_step_that_fails_leaves_the_file_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "class.sitting.json"
    file.write(path, sitting())
    before = path.read_bytes()
    with pytest.raises(SittingRefused):
        file.update(path, lambda one: vouched(one, ROBIN, by="x", on=date(2026, 12, 2), identity="y"))
    assert path.read_bytes() == before
