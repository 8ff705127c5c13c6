"""Keys and trust by the commands, as a small firm uses them."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.cli import main
from journeybook.commands.key import window
from journeybook.diagnostics.extras import to_install
from journeybook.proof import pass_words
from journeybook.proof.did_key import did_of
from journeybook.proof.key_file import open_key
from journeybook.proof.trust_list import TrustedKey, TrustList, Withdrawal, read, write

Run = Callable[..., Result]
WORDS = "anvil lamp river stone gate oak"
OTHER = "another long passphrase"
YEAR = datetime.now(UTC).year


@pytest.fixture
def fd() -> Iterator[Callable[[str], str]]:
    """Gives the number of a descriptor through which a text can be read."""
    opened: list[int] = []

    def of(text: str) -> str:
        reading, writing = os.pipe()
        os.write(writing, text.encode() + b"\n")
        os.close(writing)
        opened.append(reading)
        return str(reading)

    yield of
    for each in opened:
        os.close(each)


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """How hard a passphrase is to guess is not what is tried here."""
    monkeypatch.setattr("journeybook.proof.key_file.COST", 2**6)


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    runner = CliRunner()

    def invoke(*arguments: str, typed: str | None = None) -> Result:
        return runner.invoke(main, list(arguments), input=typed, catch_exceptions=False)

    return invoke


@pytest.fixture
def make(run: Run, fd: Callable[[str], str]) -> Callable[..., Result]:
    def made(file: str, *more: str, words: str = WORDS, holder: str = "T. Märrable") -> Result:
        return run(
            "key",
            "make",
            file,
            "--holder",
            holder,
            "--role",
            "training lead",
            *more,
            "--passphrase-fd",
            fd(words),
        )

    return made


def fingerprint(run: Run, file: str) -> str:
    return run("key", "show", file).output.splitlines()[-1].removeprefix("Fingerprint  ")


def test_a_key_is_locked_with_drawn_words_once_they_were_typed_back(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        "journeybook.commands.passphrase.new_passphrase", lambda: "abandon ability zoo able acid age"
    )
    made = run(
        "key",
        "make",
        "k.pem",
        "--holder",
        "T. M.",
        "--role",
        "lead",
        typed="aban abil\nABAN-abil-zoo-able-acid-age\n",
    )
    assert made.exit_code == 0, made.output
    assert "That is another passphrase." in made.output
    assert made.output.count("abandon ability zoo able acid age") == 1
    open_key(Path("k.pem"), "abandon ability zoo able acid age")
    assert stat.S_IMODE(Path("k.pem").stat().st_mode) == 0o600


def test_nothing_is_written_where_the_words_are_not_typed_back(run: Run, tmp_path: Path) -> None:
    made = run("key", "make", "k.pem", "--holder", "T. M.", "--role", "lead", typed="no\nno\nno\n")
    assert made.exit_code == 1
    assert "was not typed back, so nothing was written" in made.output
    assert not list(tmp_path.iterdir())


def test_a_passphrase_of_ones_own_is_asked_for_twice_and_long(run: Run, tmp_path: Path) -> None:
    short = run("key", "make", "k.pem", "--holder", "T", "--role", "r", "--own-words", typed="short\nshort\n")
    assert short.exit_code == 1
    assert "needs 15 or more" in short.output
    assert not list(tmp_path.iterdir())
    made = run(
        "key", "make", "k.pem", "--holder", "T", "--role", "r", "--own-words", typed=f"{OTHER}\n{OTHER}\n"
    )
    assert made.exit_code == 0
    assert OTHER not in made.output


def test_no_option_takes_a_passphrase_itself() -> None:
    runner = CliRunner()
    for command in ("make", "restore", "new-passphrase"):
        assert "--passphrase " not in runner.invoke(main, ["key", command, "--help"]).output


@pytest.mark.parametrize(
    ("home", "why"), [(".git", "under version control"), ("mkdocs.yml", "the folder of a site")]
)
def test_a_key_is_not_made_beside_what_is_published(make: Run, tmp_path: Path, home: str, why: str) -> None:
    (tmp_path / home).touch()
    (tmp_path / "keys").mkdir()
    made = make("keys/k.pem")
    assert made.exit_code == 1
    assert why in made.output
    assert not list((tmp_path / "keys").iterdir())


def test_a_key_is_never_written_over(make: Run) -> None:
    assert make("k.pem").exit_code == 0
    before = Path("k.pem").read_bytes()
    assert make("k.pem").exit_code == 1
    assert Path("k.pem").read_bytes() == before


def test_a_key_of_this_year_signs_from_the_day_it_was_made_into_the_next_january() -> None:
    today = datetime(2026, 11, 25, tzinfo=UTC).date()
    assert [str(day) for day in window(2026, today)] == ["2026-11-25", "2027-01-31"]
    assert [str(day) for day in window(2027, today)] == ["2027-01-01", "2028-01-31"]


def test_a_missing_package_is_a_sentence(run: Run, make: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    make("k.pem")
    monkeypatch.setitem(__import__("sys").modules, "segno", None)
    said = run("key", "paper", "k.pem", "k.html")
    assert said.exit_code == 1
    assert to_install("proof") in said.output
    assert not Path("k.html").exists()


def test_a_wrong_passphrase_is_asked_for_again_and_a_slip_in_a_word_is_named(run: Run, make: Run) -> None:
    make("k.pem", words="abandon ability zoo able acid age")
    typed = f"abandon abiliti zoo able acid age\naban abil zoo able acid age\n{OTHER}\n{OTHER}\n"
    said = run("key", "new-passphrase", "k.pem", "--own-words", typed=typed)
    assert said.exit_code == 0, said.output
    assert "Word 2, “abiliti”, is not in the list of words; near it are ability." in said.output
    open_key(Path("k.pem"), OTHER)


def test_a_new_passphrase_leaves_the_key_and_its_plate(run: Run, make: Run, fd: Callable[[str], str]) -> None:
    make("k.pem")
    before, seed = fingerprint(run, "k.pem"), open_key(Path("k.pem"), WORDS).private_bytes_raw()
    said = run(
        "key", "new-passphrase", "k.pem", "--passphrase-fd", fd(WORDS), "--new-passphrase-fd", fd(OTHER)
    )
    assert said.exit_code == 0
    assert fingerprint(run, "k.pem") == before
    assert open_key(Path("k.pem"), OTHER).private_bytes_raw() == seed
    assert [path.name for path in Path().iterdir()] == ["k.pem"]


def test_a_key_comes_back_from_the_rows_of_its_paper(run: Run, make: Run, fd: Callable[[str], str]) -> None:
    make("k.pem", "--demo")
    assert run("key", "paper", "k.pem", "k.html").exit_code == 0
    rows = Path("k.html").read_text(encoding="utf-8").split("<pre>")[1].split("</pre>")[0]
    Path("paper.txt").write_text(rows.lower(), encoding="utf-8")
    bare = run("key", "restore", "paper.txt", "back.pem", "--passphrase-fd", fd(WORDS))
    assert bare.exit_code == 2
    assert "give --holder, --role, --from and --until" in bare.output
    sheet = [
        "--holder",
        "T. Märrable",
        "--role",
        "training lead",
        "--from",
        f"{YEAR}-01-01",
        "--until",
        f"{YEAR}-12-31",
    ]
    wrong = run("key", "restore", "paper.txt", "back.pem", *sheet, "--passphrase-fd", fd(OTHER))
    assert wrong.exit_code == 1
    assert "The passphrase does not open the key on the paper" in wrong.output
    assert not Path("back.pem").exists()
    back = run("key", "restore", "paper.txt", "back.pem", *sheet, "--demo", "--passphrase-fd", fd(WORDS))
    assert back.exit_code == 0, back.output
    assert fingerprint(run, "back.pem") == fingerprint(run, "k.pem")
    assert "Demo: yes" in run("key", "show", "back.pem").output


def test_a_key_comes_back_from_the_text_of_its_code(run: Run, make: Run, fd: Callable[[str], str]) -> None:
    make("k.pem")
    Path("paper.txt").write_bytes(Path("k.pem").read_bytes().replace(b"\n", b"\r\n"))
    back = run("key", "restore", "paper.txt", "back.pem", "--passphrase-fd", fd(WORDS))
    assert back.exit_code == 0, back.output
    assert run("key", "show", "back.pem").output == run("key", "show", "k.pem").output


@pytest.fixture
def trusted(run: Run, make: Run, fd: Callable[[str], str]) -> Path:
    """A list with the keys of two people."""
    make("k.pem")
    make("spare.pem", holder="I. Vane")
    Path("vane.txt").write_text(run("key", "show", "spare.pem").output, encoding="utf-8")
    start = run("trust", "start", "trust.json", "--key", "k.pem", "--holder", "Quillon Basin Works",
                "--passphrase-fd", fd(WORDS))  # fmt: skip
    assert start.exit_code == 0, start.output
    added = run(
        "trust", "add", "trust.json", "vane.txt", "--key", "k.pem", "--passphrase-fd", fd(WORDS), typed="y\n"
    )
    assert added.exit_code == 0, added.output
    return Path("trust.json")


def test_a_list_is_begun_once(run: Run, trusted: Path, fd: Callable[[str], str]) -> None:
    again = run(
        "trust", "start", "trust.json", "--key", "k.pem", "--holder", "Q", "--passphrase-fd", fd(WORDS)
    )
    assert again.exit_code == 1
    assert read(trusted.read_bytes()).number == 2


def test_a_key_whose_holder_was_not_heard_is_not_added(run: Run, trusted: Path, make: Run) -> None:
    make("third.pem", holder="O. Pell")
    before = trusted.read_bytes()
    unheard = run("trust", "add", "trust.json", "third.pem", "--key", "k.pem", typed="n\n")
    mistaken = run("trust", "add", "trust.json", "third.pem", "--key", "k.pem", "--fingerprint", "AAAA BBBB")
    assert (unheard.exit_code, mistaken.exit_code) == (1, 1)
    assert "another fingerprint" in mistaken.output
    assert trusted.read_bytes() == before


def test_next_years_key_takes_over_with_both_signatures(
    run: Run, trusted: Path, make: Run, fd: Callable[[str], str]
) -> None:
    make("next.pem", "--year", str(YEAR + 1), words=OTHER)
    Path("before.json").write_bytes(trusted.read_bytes())
    said = run("trust", "renew", "trust.json", "--key", "k.pem", "--new-key", "next.pem",
               "--passphrase-fd", fd(WORDS), "--new-passphrase-fd", fd(OTHER))  # fmt: skip
    assert said.exit_code == 0, said.output
    found = read(trusted.read_bytes())
    assert (found.number, len(found.keys), len(found.signers)) == (3, 3, 2)
    assert found.issuer == found.keys[2].did
    assert (
        "It may replace before.json." in run("trust", "show", "trust.json", "--after", "before.json").output
    )
    assert run("trust", "show", "before.json", "--after", "trust.json").exit_code == 1


def test_a_stolen_key_is_withdrawn_by_another_of_the_list_and_vouches_no_more(
    run: Run, trusted: Path, fd: Callable[[str], str]
) -> None:
    gone = fingerprint(run, "k.pem")
    said = run("trust", "withdraw-key", "trust.json", gone, "--key", "spare.pem", "--reason", "stolen",
               "--passphrase-fd", fd(WORDS))  # fmt: skip
    assert said.exit_code == 0, said.output
    assert "(stolen)" in run("trust", "show", "trust.json").output
    before = trusted.read_bytes()
    by_thief = run("trust", "withdraw", "trust.json", "3f0c1e1e-0000-4000-8000-000000000000", "--reason", "mistake",
                   "--key", "k.pem", "--passphrase-fd", fd(WORDS))  # fmt: skip
    assert by_thief.exit_code == 1
    assert "not signed by a key that the one in use trusts" in by_thief.output
    assert trusted.read_bytes() == before


def test_a_key_does_not_withdraw_itself(run: Run, trusted: Path, fd: Callable[[str], str]) -> None:
    said = run("trust", "withdraw-key", "trust.json", fingerprint(run, "k.pem"), "--key", "k.pem", "--reason", "lost",
               "--passphrase-fd", fd(WORDS))  # fmt: skip
    assert said.exit_code == 1
    assert read(trusted.read_bytes()).number == 2


def test_a_certificate_is_withdrawn_once(run: Run, trusted: Path, fd: Callable[[str], str]) -> None:
    def withdraw(id_: str) -> Result:
        return run("trust", "withdraw", "trust.json", id_, "--reason", "mistake", "--key", "k.pem",
                   "--passphrase-fd", fd(WORDS))  # fmt: skip

    id_ = "urn:uuid:3f0c1e1e-0000-4000-8000-000000000000"
    assert withdraw(id_.upper().replace("URN:UUID:", "")).exit_code == 0
    entry = read(trusted.read_bytes()).withdrawal_of(id_)
    assert entry is not None
    assert entry.reason == "mistake"
    assert "already" in withdraw(id_).output
    assert withdraw("certificate 7").exit_code == 2


def test_what_two_people_change_at_once_is_never_lost(
    run: Run, trusted: Path, fd: Callable[[str], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    import journeybook.commands.trust as command

    before, opened = trusted.read_bytes(), command.opened
    first, second = (f"urn:uuid:3f0c1e1e-0000-4000-8000-00000000000{each}" for each in (1, 2))

    def withdraw(id_: str) -> Result:
        return run("trust", "withdraw", "trust.json", id_, "--reason", "mistake", "--key", "k.pem",
                   "--passphrase-fd", fd(WORDS))  # fmt: skip

    def while_somebody_else(*given: Any) -> Any:
        monkeypatch.setattr(command, "opened", opened)
        assert withdraw(first).exit_code == 0
        return opened(*given)

    monkeypatch.setattr(command, "opened", while_somebody_else)
    result = withdraw(second)
    assert (result.exit_code, "somebody else has changed it meanwhile" in result.output) == (1, True)
    assert trusted.read_bytes() != before
    assert [id_ for id_, _ in read(trusted.read_bytes()).withdrawn] == [first]


def test_a_clock_that_was_set_back_dates_no_list_back(
    run: Run, trusted: Path, fd: Callable[[str], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    made = read(trusted.read_bytes()).made
    monkeypatch.setattr("journeybook.commands.trust._now", lambda: "2001-01-01T00:00:00Z")
    result = run("trust", "withdraw", "trust.json", "3f0c1e1e-0000-4000-8000-000000000000", "--reason", "mistake",
                 "--key", "k.pem", "--passphrase-fd", fd(WORDS))  # fmt: skip
    assert result.exit_code == 0, result.output
    assert read(trusted.read_bytes()).made == made


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"holder": "Q\x1b]0;x\x07"}, "List no. 1 of Q␛]0;x␇, made"),
        ({"made": "2026-99-99T00:00:00Z"}, "made 2026-99-99T00:00:00Z, 0 days ago."),
        (
            {"keys": ("did:key:z6Mk" + "1" * 44, "T.\nList no. 9")},
            "  T.␊List no. 9, lead: signs until 2199-01-01\n",
        ),
        ({"keys": ("did:key:z6Mk" + "1" * 44, "T.")}, "    no key of Ed25519\n"),
        (
            {"withdrawn": (("urn:\x9b2J", Withdrawal(on="2026-01-01", reason="a\x1b[2J")),)},
            "urn:<U+009B>2J  a␛[2J\n",
        ),
    ],
    ids=["holder", "day", "name", "key", "withdrawn"],
)
def test_a_list_that_somebody_made_up_writes_nothing_of_its_own_on_the_terminal(
    run: Run, tmp_path: Path, changes: dict[str, Any], said: str
) -> None:
    private = Ed25519PrivateKey.from_private_bytes(bytes([7]) * 32)
    issuer = did_of(private.public_key().public_bytes_raw())
    if "keys" in changes:
        did, holder = changes["keys"]
        changes = {"keys": (TrustedKey(
            did=did, holder=holder, role="lead", from_day="2020-01-01", until="2199-01-01"
        ),)}  # fmt: skip
    whole = TrustList(issuer=issuer, holder="Q", number=1, made="2026-01-01T00:00:00Z")
    (tmp_path / "theirs.json").write_bytes(write(replace(whole, **changes), private))
    result = run("trust", "show", "theirs.json")
    assert result.exit_code == 0
    assert said in result.output


def test_what_is_refused_writes_nothing_of_its_own_either(run: Run, tmp_path: Path) -> None:
    (tmp_path / "a\x1b[2J.pem").write_bytes(b"")
    result = run("key", "show", "a\x1b[2J.pem")
    assert (result.exit_code, result.output) == (1, "Error: a␛[2J.pem: There is no key plate in it.\n")


def test_a_reason_says_nothing_of_a_person(run: Run, trusted: Path) -> None:
    before = trusted.read_bytes()
    said = run("trust", "withdraw", "trust.json", "x", "--reason", "he drank", "--key", "k.pem")
    assert said.exit_code == 2
    assert "'mistake', 'replaced', 'train-again'" in said.output
    assert trusted.read_bytes() == before


def test_the_drawn_words_have_sixty_six_bits() -> None:
    assert pass_words.WORDS * pass_words.BITS_OF_A_WORD == 66
