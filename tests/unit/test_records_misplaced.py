"""What somebody could do to a sitting with an editor or a slip of the hand, and what becomes of it."""

from __future__ import annotations

import stat
from dataclasses import replace
from pathlib import Path

import pytest
from certified_class import Shop
from click.testing import CliRunner, Result

from journeybook.cli import main
from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import Countersigned, Place, SittingRefused, Vouched


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("journeybook.proof.key_file.COST", 2**6)
        return Shop(tmp_path_factory.mktemp("shop"))


@pytest.fixture
def shop(made: Shop, tmp_path: Path) -> Shop:
    """The shop, whose class is this test's own."""
    made.path, made.into = tmp_path / "class.sitting.json", tmp_path / "certificates"
    return made


def vouch(shop: Shop, by: str, *more: str, typed: str = "") -> Result:
    return CliRunner().invoke(
        main, ["vouch", str(shop.path), "--by", by, *more], input=typed, catch_exceptions=False
    )


def sheet(shop: Shop, place: Place, fingerprint: str) -> list[str]:
    path = shop.path.with_name("sheet.csv")
    path.write_text(f"ticket,fingerprint,identity\n{place.ticket},{fingerprint},yes\n", encoding="utf-8")
    return ["--list", str(path)]


def test_a_signed_observation_moved_to_somebody_else_makes_the_file_unreadable(shop: Shop) -> None:
    robin, kay = shop.sat(shop.place(1)), shop.sat(shop.place(2, "Kay Ferriby"), seen=False)
    shop.seat(robin, replace(kay, observations=robin.observations))
    with pytest.raises(SittingRefused) as refused:
        sitting_file.read(shop.path)
    assert refused.value.message == (
        "The file is not the private file of a sitting. An observation at the ticket "
        f"{kay.ticket} does not belong there: The observation is of Robin Ashdown 1 (0001), the ticket {kay.ticket} "
        "is that of Kay Ferriby (0002)."
    )


def test_an_observation_of_another_state_of_the_course_makes_it_unreadable_too(shop: Shop) -> None:
    robin = shop.sat(shop.place(1), seen=False)
    shop.seat(replace(robin, observations=(shop.held(shop.observation(robin, digest="b" * 64)),)))
    with pytest.raises(SittingRefused, match="state bbbbbbbbbbbb; the sitting to pillar-drill"):
        sitting_file.read(shop.path)


@pytest.mark.parametrize(
    "by", ["", "   ", "T" * 121, "T. \x1b[2J", "T. \u202eelbarraM", "T. \udcff"], ids=ascii
)
def test_who_vouches_is_named_in_a_line_that_can_be_read(shop: Shop, by: str) -> None:
    shop.seat(shop.sat(shop.place(1), vouched=False))
    result = vouch(shop, by, typed="y\ny\n")
    assert result.exit_code == 2
    assert "This has to be a text of 1 to 120 letters." in result.output
    assert sitting_file.read(shop.path).people[0].vouched is None


def test_a_step_after_which_the_file_could_not_be_read_is_not_taken(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    before = shop.path.read_bytes()
    for by in ("x" * 5000, "\udcff"):
        word = Vouched(by=by, on=shop.sitting().held_on, identity="pass")
        with pytest.raises(SittingRefused, match="stays as it is, for with this it could not be read again"):
            sitting_file.update(
                shop.path,
                lambda now, word=word: replace(now, people=(replace(now.people[0], vouched=word),)),  # type: ignore[misc]
            )
    assert shop.path.read_bytes() == before


def test_nobody_is_asked_about_themselves(shop: Shop) -> None:
    robin, kay = shop.sat(shop.place(1), vouched=False, seen=False), shop.place(2, "Kay Ferriby")
    shop.seat(robin, shop.sat(kay, vouched=False, seen=False))
    result = vouch(shop, "robin  ASHDOWN 1", typed="y\ny\n")
    assert result.exit_code == 1
    assert "Robin Ashdown 1 (0001): nobody vouches for themselves" in result.output
    assert "Let somebody else look at the sheet" in result.output
    assert [place.vouched is not None for place in sitting_file.read(shop.path).people] == [False, True]


def test_nor_taken_at_their_own_word_in_a_list(shop: Shop) -> None:
    robin = shop.sat(shop.place(1), vouched=False, seen=False)
    shop.seat(robin)
    assert robin.attempt is not None
    result = vouch(shop, robin.name, *sheet(shop, robin, robin.attempt.fingerprint))
    assert "Line 2: not vouched for: nobody vouches for themselves." in result.output
    assert sitting_file.read(shop.path).people[0].vouched is None


def test_a_word_for_oneself_that_is_there_already_gives_way_to_somebody_elses(shop: Shop) -> None:
    robin = shop.sat(shop.place(1))
    (seen,) = robin.observations
    own = robin.name
    shop.seat(replace(
        robin,
        vouched=Vouched(by=own, on=shop.sitting().held_on, identity="pass"),
        observations=(replace(seen, countersigned=Countersigned(by=own, on=shop.sitting().held_on)),),
    ))  # fmt: skip
    told = shop.certify("--self-recorded", words=None).output
    assert "nobody vouches for themselves" in told
    assert "is said by the very person who was observed" in " ".join(told.split())
    assert vouch(shop, "T. Marrable", typed="y\ny\ny\n").exit_code == 0
    (place,) = sitting_file.read(shop.path).people
    assert place.vouched is not None
    assert (place.vouched.by, place.observations[0].countersigned) == (
        "T. Marrable", Countersigned(by="T. Marrable", on=shop.sitting().held_on)
    )  # fmt: skip


def test_only_the_owner_can_hold_the_lock(shop: Shop) -> None:
    shop.seat(shop.place(1))
    lock = sitting_file.lock_of(shop.path)
    assert stat.S_IMODE(lock.stat().st_mode) == 0o600


def test_a_link_to_the_file_stays_a_link(shop: Shop, tmp_path: Path) -> None:
    shop.seat(shop.sat(shop.place(1), vouched=False, seen=False))
    link = tmp_path / "there" / "link.sitting.json"
    link.parent.mkdir()
    link.symlink_to(shop.path)
    shop.path, there = link, shop.path
    assert vouch(shop, "T. Marrable", typed="y\ny\n").exit_code == 0
    assert link.is_symlink()
    assert sitting_file.read(there).people[0].vouched is not None


def test_what_shows_a_sitting_shows_no_passphrase(shop: Shop) -> None:
    sitting = shop.sitting(shop.place(1))
    assert sitting.passphrase not in repr(sitting)


def test_nor_is_an_attempt_set_aside_by_a_text_that_cannot_be_kept(shop: Shop) -> None:
    robin = shop.sat(shop.place(1))
    shop.seat(robin)
    for by, why in (("T. \udcff", "a trial"), ("T. Marrable", "a trial\x1b[2J"), ("T. Marrable", "x" * 301)):
        asked = ["set-aside", str(shop.path), robin.ticket, "--by", by, "--why", why]
        result = CliRunner().invoke(main, asked, input="y\n", catch_exceptions=False)
        assert (result.exit_code, "This has to be a text of 1 to 300 letters." in result.output) == (2, True)
    assert sitting_file.read(shop.path).people[0].attempt is not None
