"""Certificates for a class, as the employer issues them: by the command, with real keys and real papers."""

from __future__ import annotations

import errno
import json
import os
import resource
import shutil
import signal
import stat
import subprocess
import sys
import time
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from certified_class import COURSE, DAY, WORDS, Shop, make_key
from click.testing import Result
from pypdf import PdfReader

from journeybook.diagnostics.extras import to_install
from journeybook.marking.attempt import Card
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observation import Assessor as Observer
from journeybook.proof import private_file
from journeybook.proof.certificate import Certificate
from journeybook.proof.certificate import read as read_certificate
from journeybook.proof.record_in_pdf import find
from journeybook.proof.trust_list import read as read_list
from journeybook.proof.verdict import verdict
from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import Place

COMMAND = shutil.which("journeybook", path=str(Path(sys.executable).parent)) or ""


@pytest.fixture(scope="session")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A shop with a trust list, and one whose kit sheet is still an example; made once."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("journeybook.proof.key_file.COST", 2**6)
        folder = tmp_path_factory.mktemp("shops")
        for name, example in (("own", False), ("example", True)):
            (folder / name).mkdir()
            Shop(folder / name, example=example).with_trust()
    return folder


@pytest.fixture
def shop(made: Path, tmp_path: Path) -> Shop:
    """A shop of one's own."""
    return copied(made / "own", tmp_path / "shop")


def copied(there: Path, here: Path) -> Shop:
    shutil.copytree(there, here)
    return Shop.at(here)


def one(shop: Shop, *more: str, **given: Any) -> dict[str, Any]:
    """What became of the only person."""
    result = shop.certify("--json", *more, **given)
    (line,) = json.loads(result.stdout)
    return dict(line)


def read(shop: Shop, name: str) -> Certificate:
    return read_certificate((shop.into / name).read_bytes())


def kind(shop: Shop, record: bytes) -> str:
    return verdict(record, read_list(shop.trust.read_bytes()), DAY).kind


def test_a_class_gets_papers_and_records_that_are_genuine(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)), shop.sat(shop.place(2)))
    result = shop.certify()
    assert result.exit_code == 0, result.output
    assert "In all: 2 issued." in result.output
    assert sorted(path.name for path in shop.into.iterdir()) == [
        f"Robin-Ashdown-{number}-000{number}-{COURSE}.{end}" for number in (1, 2) for end in ("json", "pdf")
    ]
    for path in shop.into.glob("*.pdf"):
        record = path.with_suffix(".json").read_bytes()
        assert find(path.read_bytes()) == record
        assert kind(shop, record) == "genuine"
        assert (
            stat.S_IMODE(path.stat().st_mode)
            == stat.S_IMODE(path.with_suffix(".json").stat().st_mode)
            == 0o600
        )


def test_whose_name_cannot_be_printed_is_told_once(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)), shop.sat(shop.place(2, name="李娜")))
    result = shop.certify()
    assert result.exit_code == 0, result.output
    warning = result.stderr.split("Warning:")[1]
    assert "李娜 (" in warning
    assert "Ashdown" not in warning
    assert "Warning" not in shop.certify().stderr


def test_the_certificate_says_what_was_earned(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    shop.seat(place)
    line = one(shop)
    said = read(shop, line["file"].replace(".pdf", ".json"))
    assert (said.check, said.practical, said.identity, said.assessor) == (
        "supervised", "observed", "Works pass", "T. Marrable",
    )  # fmt: skip
    assert (said.name, said.person, said.employer, said.workplace) == (
        "Robin Ashdown 1", "0001", "Quillon Basin Works", "Bay 3",
    )  # fmt: skip
    assert place.attempt is not None
    assert said.fingerprint == place.attempt.fingerprint
    assert said.observations == (place.observations[0].fingerprint,)
    assert (said.trainer, said.trained, said.checked, said.observed) == (
        "A. Fenwright", DAY - timedelta(days=1), DAY, DAY,
    )  # fmt: skip
    assert (said.marks, said.of, said.cut, said.must_pass, said.attempt) == (4000, 4000, 80, (1, 1), 1)
    assert (said.title, said.equipment) == (
        "Set the guard on a pillar drill",
        "Pillar drill with telescopic guard",
    )
    assert (said.version, said.digest, said.profile, said.language) == ("1.0", shop.digest, "uk", "en")
    assert said.valid_until == f"{said.retrain_by}T23:59:59Z"
    assert not said.example
    (issued,) = shop.noted()
    assert issued is not None
    assert (issued.id, issued.file, issued.issued) == (said.id, line["file"], said.valid_from)


def test_who_was_not_vouched_for_is_told_what_to_do_and_the_command_fails(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1), vouched=False), shop.place(2))
    result = shop.certify(words=None)
    assert result.exit_code == 1
    assert "Nobody has vouched" in result.output
    assert "> Compare the signed class sheet with `journeybook vouch`" in result.output
    assert "Nothing has come back." in result.output
    assert "In all: 2 not issued." in result.output
    assert shop.noted() == [None, None]


def test_who_has_not_passed_is_no_failure_of_the_command(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1), answers={}))
    result = shop.certify(words=None)
    assert result.exit_code == 0
    assert "Not yet passed: 0 of 4, and 80 % are needed." in result.output


def test_self_recorded_ones_are_issued_when_asked_for(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1), vouched=False, seen=False))
    line = one(shop, "--self-recorded")
    assert (line["outcome"], line["check"], line["practical"]) == ("issued", "self-recorded", "not observed")
    assert line["notes"] == [
        "Practical not observed: “Set the guard, and prove it”. No observation has come in."
    ]


def test_a_second_run_issues_nothing_and_asks_no_passphrase(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.certify()
    before = {path: path.stat().st_mtime_ns for path in shop.into.iterdir()}
    again = shop.certify(words=None)
    assert again.exit_code == 0
    assert "Already issued  Robin Ashdown 1" in again.output
    assert {path: path.stat().st_mtime_ns for path in shop.into.iterdir()} == before


def test_only_the_people_asked_for(shop: Shop) -> None:
    people = [shop.sat(shop.place(number)) for number in (1, 2, 3)]
    shop.seat(*people)
    assert shop.certify("--only", people[1].ticket.lower().replace("-", "")).exit_code == 0
    assert [issued is not None for issued in shop.noted()] == [False, True, False]


def test_a_ticket_that_nobody_has_is_said(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    result = shop.certify("--only", "BAAAA-AAAAB", words=None)
    assert result.exit_code == 1
    assert "No place of this sitting has the ticket 'BAAAA-AAAAB'." in result.output


def test_without_signatures_it_names_the_package(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.without_trust()
    words = [
        "certify",
        str(shop.path),
        "--key",
        str(shop.key),
        "--into",
        str(shop.into),
        "-f",
        str(shop.config),
    ]
    program = (
        f"import sys; sys.modules['cryptography'] = None\nfrom journeybook.cli import main; main({words!r})"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert "This needs the package cryptography" in done.stderr
    assert to_install("proof") in done.stderr


# Whose key.


def test_a_key_that_is_not_on_the_list_signs_nothing(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    result = shop.certify(key=shop.stranger, words=None)
    assert result.exit_code == 1
    assert "is not on the trust list trust.json" in result.output
    assert "journeybook trust add trust.json" in result.output
    assert not shop.into.exists()


def test_a_withdrawn_key_signs_nothing(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    print_of_it = shop.run("key", "show", str(shop.demo), config=False).output.splitlines()[-1][13:]
    done = shop.run(
        "trust", "withdraw-key", str(shop.trust), print_of_it, "--reason", "stolen", "--key", str(shop.key),
        words=WORDS, config=False,
    )  # fmt: skip
    assert done.exit_code == 0, done.output
    result = shop.certify(key=shop.demo, words=None)
    assert (result.exit_code, "was withdrawn on" in result.output) == (1, True)


def test_a_key_signs_only_between_its_days(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("journeybook.proof.key_file.COST", 2**6)
    late = shop.folder / "late.pem"
    make_key(late, 44, until=DAY - timedelta(days=1))
    shop.without_trust()
    shop.seat(shop.sat(shop.place(1)))
    result = shop.certify(key=late, words=None)
    assert result.exit_code == 1
    assert f"until {DAY - timedelta(days=1)}, and today is {DAY} (UTC)" in result.output


def test_without_a_list_it_is_said_that_nobody_will_know_the_signer(shop: Shop) -> None:
    shop.without_trust()
    shop.seat(shop.sat(shop.place(1)))
    result = shop.certify()
    assert result.exit_code == 0
    assert result.stderr.startswith("Warning: this site names no trust list")
    assert "In all: 1 issued." in result.stdout


def test_a_list_that_was_changed_is_not_relied_on(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.trust.write_bytes(shop.trust.read_bytes().replace(b"Quillon", b"Quillen"))
    result = shop.certify(words=None)
    assert (result.exit_code, "V003" in result.output) == (1, True)


def test_a_wrong_passphrase_issues_nothing(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    result = shop.certify(words="another long passphrase")
    assert (result.exit_code, "The passphrase does not open" in result.output) == (1, True)
    assert shop.noted() == [None]


def test_a_course_with_example_values_is_signed_with_a_demo_key_only(made: Path, tmp_path: Path) -> None:
    shop = copied(made / "example", tmp_path / "example")
    shop.seat(shop.sat(shop.place(1)))
    refused = shop.certify(words=None)
    assert refused.exit_code == 1
    assert "still holds example values" in refused.output
    assert "guard-gap, table-travel, guard-lock" in refused.output
    issued = shop.certify(key=shop.demo)
    assert issued.exit_code == 0, issued.output
    assert "every certificate says EXAMPLE" in issued.output
    (record,) = (path.read_bytes() for path in shop.into.glob("*.json"))
    assert read_certificate(record).example
    assert kind(shop, record) == "example"


def test_a_demo_key_makes_an_example_of_any_course(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    assert shop.certify(key=shop.demo).exit_code == 0
    (record,) = (path.read_bytes() for path in shop.into.glob("*.json"))
    assert read_certificate(record).example


# For what.


def test_a_course_that_is_not_released_earns_nothing(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shutil.rmtree(shop.compiled.parents[2])
    result = shop.certify(words=None)
    assert result.exit_code == 1
    assert f"{COURSE} 1.0 with contents {shop.digest[:12]} is not released here" in result.output


def test_a_release_that_was_changed_earns_nothing(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.compiled.write_bytes(shop.compiled.read_bytes().replace(b"Basin Lane", b"Basin Road"))
    result = shop.certify(words=None)
    assert result.exit_code == 1
    assert "compiled.json is not what was released" in result.output


def test_an_attempt_changed_by_hand_is_never_certified(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    shop.seat(place)
    text = shop.path.read_text(encoding="utf-8").replace("Works pass", "Works card")
    shop.path.write_text(text.replace('\\"ended\\":', '\\"Ended\\":'), encoding="utf-8")
    result = shop.certify(words=None)
    assert result.exit_code == 1
    assert "Traceback" not in result.output


# Where to.


@pytest.mark.parametrize("inside", ["course_src", "quizzes", "site"])
def test_certificates_are_not_written_beside_what_is_published(shop: Shop, inside: str) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.into = shop.site / inside / "certificates"
    result = shop.certify(words=None)
    assert (result.exit_code, "they hold names and marks" in result.output) == (1, True)


def test_nor_into_a_work_tree(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    (shop.folder / ".git").mkdir()
    result = shop.certify(words=None)
    assert (result.exit_code, "under version control" in result.output) == (1, True)


def test_a_folder_that_takes_nothing_is_said_before_a_passphrase_is_typed(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.into = Path("/proc/self/certificates")
    result = shop.certify(words=None)
    assert result.exit_code == 1
    assert "Nothing can be written into /proc/self/certificates" in result.output


def test_a_file_is_no_folder(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.into.write_text("x", encoding="utf-8")
    result = shop.certify(words=None)
    assert (result.exit_code, "is a file; name a folder" in result.output) == (1, True)


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("../../etc/passwd", "etc-passwd"),
        ("CON", "CON"),
        ("-rf .", "rf"),
        ("Zoë Ørsted-Åß", "Zoe-Orsted-Ass"),
        ("Łukasz Żółć", "Lukasz-Zolc"),
        ("李 小龍", "李-小龍"),
        ("Олена Їжак", "Олена-Їжак"),
        ("<script>alert(1)</script>", "script-alert-1-script"),
        ('a"b\\c$(d)`e', "a-b-c-d-e"),
        ("👷", ""),
        ("N" * 120, "N" * 80),
        ("長" * 60, "長" * 26),
    ],
)
def test_a_name_is_a_safe_file_on_every_system_and_stays_whole_on_the_certificate(
    shop: Shop, name: str, stem: str
) -> None:
    shop.seat(shop.sat(shop.place(1, name)))
    line = one(shop, "--record-only")
    assert line["outcome"] == "issued", line
    assert line["file"] == f"{stem}{'-' if stem else ''}0001-{COURSE}.json"
    assert [path.name for path in shop.into.iterdir()] == [line["file"]]
    assert read(shop, line["file"]).name == name


def test_a_name_that_turns_the_writing_around_is_refused_in_words(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1, "Robin \u202enwodhsA")))
    line = one(shop)
    assert line["outcome"] == "not issued"
    assert line["reasons"][0]["why"].startswith("The name does not fit a certificate: ")
    assert list(shop.into.iterdir()) == []


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"trainer": "\u2066A. Fenwright"}, "The name of the trainer does not fit"),
        ({"trained": None, "title": "x"}, ""),
    ],
)
def test_what_else_was_typed_is_named_in_the_words_of_people(
    shop: Shop, changes: dict[str, Any], told: str
) -> None:
    shop.seat(shop.sat(shop.place(1)), **changes)
    line = one(shop)
    assert [reason["why"][: len(told)] for reason in line["reasons"]] == ([told] if told else [])


def test_two_people_whose_files_would_be_called_the_same_get_one_each(shop: Shop) -> None:
    ids = ("04/17", "04-17", "04.17")
    shop.seat(*(shop.sat(replace(shop.place(at, "Robin Ashdown"), id=id_)) for at, id_ in enumerate(ids)))
    assert shop.certify("--record-only").exit_code == 0
    assert sorted(path.name for path in shop.into.iterdir()) == [
        f"Robin-Ashdown-04-17-{COURSE}{more}.json" for more in ("-2", "-3", "")
    ]
    assert {read(shop, path.name).person for path in shop.into.iterdir()} == set(ids)
    again = json.loads(shop.certify("--json", "--record-only", words=None).stdout)
    assert [line["outcome"] for line in again] == ["already issued"] * 3
    assert [read(shop, line["file"]).person for line in again] == list(ids)


def test_names_that_differ_in_capitals_alone_stay_apart_on_every_disk(shop: Shop) -> None:
    shop.seat(*(shop.sat(replace(shop.place(at, "Robin"), id=id_)) for at, id_ in enumerate(("a1", "A1"))))
    assert shop.certify("--record-only").exit_code == 0
    names = [path.name for path in shop.into.iterdir()]
    assert sorted(names) == [f"Robin-A1-{COURSE}-2.json", f"Robin-a1-{COURSE}.json"]


def test_a_file_of_somebody_else_is_left_alone(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.into.mkdir()
    foreign = shop.into / f"Robin-Ashdown-1-0001-{COURSE}.pdf"
    foreign.write_bytes(b"mine")
    line = one(shop)
    assert line["file"] == f"Robin-Ashdown-1-0001-{COURSE}-2.pdf"
    assert foreign.read_bytes() == b"mine"


def test_records_alone_get_their_papers_later_from_the_same_record(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    first = one(shop, "--record-only")
    assert first["file"].endswith(".json")
    record = (shop.into / first["file"]).read_bytes()
    later = one(shop, words=None)
    assert later["outcome"] == "already issued"
    assert later["notes"] == ["Its paper was missing and was set again from its record."]
    assert find((shop.into / first["file"].replace(".json", ".pdf")).read_bytes()) == record


def test_a_lost_paper_is_set_again_the_same_to_the_byte(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    paper = shop.into / one(shop)["file"]
    before = paper.read_bytes()
    paper.unlink()
    one(shop, words=None)
    assert paper.read_bytes() == before


def test_a_lost_record_comes_back_out_of_its_paper(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    record = shop.into / one(shop)["file"].replace(".pdf", ".json")
    before = record.read_bytes()
    record.unlink()
    one(shop, words=None)
    assert record.read_bytes() == before


@pytest.mark.parametrize("package", ["typst", "segno"])
def test_without_the_typesetter_it_names_the_package_and_the_way_round(
    shop: Shop, monkeypatch: pytest.MonkeyPatch, package: str
) -> None:
    shop.seat(shop.sat(shop.place(1)))
    from importlib.util import find_spec

    monkeypatch.setattr(
        "journeybook.commands.certify.find_spec", lambda name: None if name == package else find_spec(name)
    )
    result = shop.certify(words=None)
    assert result.exit_code == 1
    assert f"The papers need the package {package}" in result.output
    assert to_install("print") in result.output
    assert one(shop, "--record-only")["outcome"] == "issued"


def test_what_was_earned_since_is_told_with_the_way_to_it(shop: Shop) -> None:
    bare = shop.sat(shop.place(1), seen=False)
    shop.seat(bare)
    first = one(shop)
    assert first["practical"] == "not observed"
    (noted,) = shop.noted()
    shop.seat(replace(bare, observations=(shop.held(shop.observation(bare)),), certificate=noted))
    (note,) = one(shop, words=None)["notes"]
    assert note.startswith(
        "Since then the practical was observed. For a certificate that says so, withdraw this one"
    )
    assert first["certificate"] in note
    withdraw(shop, first["certificate"])
    second = one(shop, "--again", bare.ticket)
    assert (second["outcome"], second["practical"]) == ("issued", "observed")


def test_without_a_list_a_second_run_still_knows_what_it_signed(shop: Shop) -> None:
    shop.without_trust()
    shop.seat(shop.sat(shop.place(1)))
    paper = shop.into / one(shop)["file"]
    paper.unlink()
    again = one(shop, words=None)
    assert (again["outcome"], again["check"]) == ("already issued", "supervised")
    assert paper.exists()


def test_a_certificate_that_lies_elsewhere_is_said_to(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    one(shop)
    shop.into = shop.folder / "elsewhere"
    (note,) = one(shop, words=None)["notes"]
    assert note.startswith(f"It does not lie in {shop.into}. Name the folder that holds it with --into;")


def test_what_cannot_be_printed_gets_a_record_alone_and_holds_nobody_else_up(shop: Shop) -> None:
    long = "".join(chr(0x4E00 + at * 37) for at in range(190))
    people = shop.sat(shop.place(1, long)), shop.sat(shop.place(2))
    shop.seat(*people)
    refused, issued = json.loads(shop.certify("--json").stdout)
    assert (refused["outcome"], issued["outcome"]) == ("not issued", "issued")
    assert "at most 800 can be scanned" in refused["reasons"][0]["why"]
    assert "--record-only" in refused["reasons"][0]["mend"]
    assert not list(shop.into.glob(f"*-0001-{COURSE}*"))
    assert shop.certify("--record-only").exit_code == 0
    told, other = json.loads(shop.certify("--json", words=None).stdout)
    assert (told["outcome"], other["outcome"]) == ("already issued", "already issued")
    assert told["notes"][0].startswith("It has no paper.")


# What breaks off.


def whole(shop: Shop, count: int) -> None:
    """Exactly one certificate a person: none lost, none doubled, every file right, nothing left lying about."""
    noted = [issued for issued in shop.noted() if issued is not None]
    assert len(noted) == len({issued.id for issued in noted}) == count
    assert len(list(shop.into.iterdir())) == 2 * count
    for issued in noted:
        record = find((shop.into / issued.file).read_bytes())
        assert record is not None
        assert record == (shop.into / issued.file).with_suffix(".json").read_bytes()
        assert read_certificate(record).id == issued.id
        assert kind(shop, record) == "genuine"
    people = sitting_file.read(shop.path).people
    said = [read_certificate(path.read_bytes()).person for path in shop.into.glob("*.json")]
    assert sorted(said) == [place.id for place in people]


def started(shop: Shop, **more: Any) -> subprocess.Popen[str]:
    reading, writing = os.pipe()
    os.write(writing, WORDS.encode() + b"\n")
    os.close(writing)
    try:
        return subprocess.Popen(
            [
                COMMAND, "certify", str(shop.path), "--key", str(shop.key), "--into", str(shop.into),
                "-f", str(shop.config), "--passphrase-fd", str(reading),
            ],
            stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, pass_fds=[reading], **more,
        )  # fmt: skip
    finally:
        os.close(reading)


def test_a_class_of_thirty_survives_being_killed_twice(shop: Shop) -> None:
    shop.seat(*(shop.sat(shop.place(number)) for number in range(30)))
    for least in (4, 16):
        process = started(shop)
        until = time.monotonic() + 60
        while len(list(shop.into.glob("*.json"))) < least and process.poll() is None:
            assert time.monotonic() < until
            time.sleep(0.002)
        process.send_signal(signal.SIGKILL)
        process.communicate()
        assert process.returncode == -signal.SIGKILL
        assert sum(issued is not None for issued in shop.noted()) < 30
    last = started(shop)
    told, errors = last.communicate()
    assert last.returncode == 0, errors
    assert errors == ""
    assert "In all:" in told
    whole(shop, 30)


@pytest.mark.parametrize("last", [".json", ".pdf", "note"])
def test_whatever_was_written_last_the_next_run_goes_on_from_there(
    shop: Shop, monkeypatch: pytest.MonkeyPatch, last: str
) -> None:
    shop.seat(shop.sat(shop.place(1)), shop.sat(shop.place(2)))
    real = private_file.put

    def breaks(path: Path, data: bytes) -> None:
        if last == ".json" and path.suffix == ".pdf":
            raise OSError(errno.EIO, "Input/output error", str(path))
        real(path, data)
        if path.suffix == last:
            raise OSError(errno.EIO, "Input/output error", str(path))

    with monkeypatch.context() as patch:
        if last == "note":
            patch.setattr(sitting_file, "_write", lambda path, _: breaks_note(path))
        else:
            patch.setattr("journeybook.certifying.put", breaks)
        broken = shop.certify()
    assert broken.exit_code == 1
    assert "Input/output error. Nothing is noted yet." in broken.output
    assert shop.noted() == [None, None]
    signed = {path: path.read_bytes() for path in shop.into.glob("*.json")}
    assert len(signed) == (2 if last == "note" else 1)
    result = shop.certify("--json")
    lines = json.loads(result.stdout)
    assert [line["outcome"] for line in lines[: len(signed)]] == ["already issued"] * len(signed)
    assert lines[0]["notes"] == ["A run that broke off had signed it; it is noted now."]
    assert {path: path.read_bytes() for path in signed} == signed
    whole(shop, 2)


def breaks_note(path: Path) -> None:
    raise OSError(errno.EIO, "Input/output error", str(path))


def test_a_disk_that_fills_up_is_said_and_what_was_done_stays_done(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop.seat(*(shop.sat(shop.place(number)) for number in range(4)))
    real, papers = private_file.put, [0]

    def full(path: Path, data: bytes) -> None:
        papers[0] += path.suffix == ".pdf"
        if papers[0] > 1:
            raise OSError(errno.ENOSPC, "No space left on device", str(path))
        real(path, data)

    with monkeypatch.context() as patch:
        patch.setattr("journeybook.certifying.put", full)
        broken = shop.certify()
    assert broken.exit_code == 1
    assert "No space left on device. The 1 above are done and noted." in broken.output
    assert "In all: 1 issued." in broken.output
    assert [issued is not None for issued in shop.noted()] == [True, False, False, False]
    assert shop.certify().exit_code == 0
    whole(shop, 4)


def test_a_disk_that_takes_nothing_more_leaves_no_half_a_file(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop.seat(shop.sat(shop.place(1)), shop.sat(shop.place(2)))

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", full)
        broken = shop.certify()
    assert (broken.exit_code, "No space left on device" in broken.output) == (1, True)
    assert list(shop.into.iterdir()) == []
    assert not list(shop.folder.glob("*.unfinished"))
    assert shop.certify().exit_code == 0
    whole(shop, 2)


def test_a_file_that_may_not_grow_leaves_nothing_half_written(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    shop.into.mkdir()
    process = started(shop, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000)))
    _, errors = process.communicate()
    assert process.returncode == 1
    assert "File too large. Nothing is noted yet." in errors
    assert [path.suffix for path in shop.into.iterdir()] == [".json"]
    assert shop.certify().exit_code == 0
    whole(shop, 1)


def hold(path: Path, seconds: float) -> subprocess.Popen[str]:
    lock = path.with_name(path.name + ".lock")
    script = (
        "import fcntl,sys,time; f=open(sys.argv[1],'ab'); fcntl.flock(f,fcntl.LOCK_EX); print('held',flush=True); "
        "time.sleep(float(sys.argv[2]))"
    )
    process = subprocess.Popen(
        [sys.executable, "-c", script, str(lock), str(seconds)], stdout=subprocess.PIPE, text=True
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def test_it_waits_for_another_command_at_the_sitting(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    with hold(shop.path, 0.7):
        assert shop.certify().exit_code == 0
    whole(shop, 1)


def test_it_does_not_wait_for_ever(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    shop.seat(shop.sat(shop.place(1)))
    monkeypatch.setattr(sitting_file, "PATIENCE", 0.1)
    with hold(shop.path, 60) as other:
        result = shop.certify()
        other.kill()
    assert result.exit_code == 1
    assert "Somebody else is at class.sitting.json." in result.output
    assert list(shop.into.iterdir()) == []


def test_two_runs_at_the_same_time_issue_one_each(shop: Shop) -> None:
    shop.seat(*(shop.sat(shop.place(number)) for number in range(6)))
    both = [started(shop), started(shop)]
    for process in both:
        _, errors = process.communicate()
        # On a machine that is very busy one may have been turned away, in words; the next run goes on.
        assert process.returncode == 0 or "Somebody else is at" in errors, errors
    assert shop.certify().exit_code == 0
    whole(shop, 6)


# Issued anew.


def withdraw(shop: Shop, id_: str) -> Result:
    return shop.run(
        "trust", "withdraw", str(shop.trust), id_, "--reason", "mistake", "--key", str(shop.key), words=WORDS,
        config=False,
    )  # fmt: skip


def test_another_is_issued_only_once_the_first_is_withdrawn(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    shop.seat(place)
    first = one(shop)
    refused = one(shop, "--again", place.ticket)
    assert refused["outcome"] == "not issued"
    assert "is not withdrawn" in refused["reasons"][0]["why"]
    assert withdraw(shop, first["certificate"]).exit_code == 0
    told = one(shop, words=None)
    assert told["notes"] == [f"It was withdrawn on {DAY}. To issue another: --again {place.ticket}"]
    second = one(shop, "--again", place.ticket)
    assert second["outcome"] == "issued"
    assert second["certificate"] != first["certificate"]
    assert second["file"] == first["file"].replace(".pdf", "-2.pdf")
    (issued,) = shop.noted()
    assert issued is not None
    assert issued.id == second["certificate"]
    kinds = {path.name: kind(shop, path.read_bytes()) for path in shop.into.glob("*.json")}
    assert sorted(kinds.values()) == ["genuine", "withdrawn"]
    assert one(shop, "--again", place.ticket)["outcome"] == "not issued"


def test_without_a_list_nothing_is_withdrawn_and_none_issued_again(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    shop.seat(place)
    shop.certify()
    shop.without_trust()
    assert one(shop, "--again", place.ticket)["outcome"] == "not issued"


def test_what_a_stolen_key_signed_is_signed_again_with_another(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    shop.seat(place)
    first = one(shop, key=shop.demo)
    print_of_it = shop.run("key", "show", str(shop.demo), config=False).output.splitlines()[-1][13:]
    shop.run(
        "trust", "withdraw-key", str(shop.trust), print_of_it, "--reason", "stolen", "--key", str(shop.key),
        words=WORDS, config=False,
    )  # fmt: skip
    second = one(shop, "--again", place.ticket)
    assert second["outcome"] == "issued"
    assert second["certificate"] != first["certificate"]


def test_a_withdrawn_certificate_in_the_folder_is_never_noted(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    shop.seat(place)
    first = one(shop)
    withdraw(shop, first["certificate"])
    shop.seat(place)  # As after an earlier copy of the sitting was brought back.
    second = one(shop)
    assert (second["outcome"], second["certificate"] == first["certificate"]) == ("issued", False)


def test_a_forged_file_in_the_folder_is_never_noted(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    first = one(shop, "--record-only")
    path = shop.into / first["file"]
    path.write_bytes(path.read_bytes().replace(b"Bay 3", b"Bay 4"))
    shop.seat(shop.sat(shop.place(1)))
    second = one(shop, "--record-only")
    assert (second["outcome"], second["file"]) == ("issued", first["file"].replace(".json", "-2.json"))


def test_the_certificate_of_another_attempt_of_the_same_person_is_not_taken_for_this_one(shop: Shop) -> None:
    place = shop.place(1)
    shop.seat(shop.sat(place))
    first = one(shop, "--record-only")
    shop.seat(shop.sat(replace(place, attempt_number=2), ended=f"{DAY}T00:25:00Z"))
    second = one(shop, "--record-only")
    assert (second["outcome"], second["file"]) == ("issued", first["file"].replace(".json", "-2.json"))
    assert [read(shop, each["file"]).attempt for each in (first, second)] == [1, 2]


def test_what_a_stranger_signed_is_not_taken_for_ours(shop: Shop) -> None:
    place = shop.sat(shop.place(1))
    trust = shop.config.read_text(encoding="utf-8")
    shop.without_trust()
    shop.seat(place)
    theirs = one(shop, "--record-only", key=shop.stranger)
    shop.config.write_text(trust, encoding="utf-8")
    shop.seat(place)
    ours = one(shop, "--record-only")
    assert (ours["outcome"], ours["file"]) == ("issued", theirs["file"].replace(".json", "-2.json"))
    assert kind(shop, (shop.into / ours["file"]).read_bytes()) == "genuine"


# One attempt of the open check.


def single(shop: Shop, *more: str, place: Place | None = None, **changes: Any) -> dict[str, Any]:
    result = attempted(shop, "--json", *more, place=place, **changes)
    assert result.stdout, result.output
    (line,) = json.loads(result.stdout)
    return dict(line)


def attempted(
    shop: Shop, *more: str, place: Place | None = None, words: str | None = WORDS, **changes: Any
) -> Result:
    file = shop.folder / "attempt.json"
    file.write_bytes(shop.attempt(place or shop.place(1), **changes))
    return shop.run(
        "certify",
        "--attempt",
        str(file),
        "--key",
        str(shop.key),
        "--into",
        str(shop.into),
        *more,
        words=words,
    )


def test_a_single_attempt_is_self_recorded_unless_somebody_vouches(shop: Shop) -> None:
    line = single(shop, "--employer", "Basin Boats", "--attempt-number", "3", "--person", "0417")
    assert (line["outcome"], line["check"], line["practical"]) == ("issued", "self-recorded", "not observed")
    assert line["id"] == "0417"
    said = read(shop, line["file"].replace(".pdf", ".json"))
    assert (said.employer, said.attempt, said.person, said.checked) == ("Basin Boats", 3, "0417", DAY)
    assert (said.assessor, said.identity, said.trained) == ("", "", None)


def test_run_again_it_is_issued_already(shop: Shop) -> None:
    first, second = single(shop), single(shop)
    assert (second["outcome"], second["certificate"]) == ("already issued", first["certificate"])


def vouching(shop: Shop) -> list[str]:
    print_of_it = fingerprint(shop.attempt(shop.place(1)))
    return ["--vouched-by", "T. Marrable", "--identity", "Works pass", "--fingerprint", print_of_it]


def test_who_gives_the_fingerprint_back_makes_it_supervised(shop: Shop) -> None:
    file = shop.folder / "observation.json"
    file.write_bytes(shop.observation(shop.place(1)))
    line = single(
        shop, *vouching(shop), "--observation", str(file), "--countersigned-by", "T. Marrable",
        "--trainer", "A. Fenwright", "--trained", DAY.isoformat(),
    )  # fmt: skip
    assert (line["check"], line["practical"]) == ("supervised", "observed")
    said = read(shop, line["file"].replace(".pdf", ".json"))
    assert (said.identity, said.assessor, said.trainer, said.trained) == (
        "Works pass", "T. Marrable", "A. Fenwright", DAY,
    )  # fmt: skip


def test_an_observation_that_nobody_countersigned_does_not_count(shop: Shop) -> None:
    file = shop.folder / "observation.json"
    file.write_bytes(shop.observation(shop.place(1)))
    line = single(shop, "--observation", str(file))
    assert line["practical"] == "not observed"
    assert "Nobody has confirmed that the paper" in line["notes"][0]


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (["--vouched-by", "T. Marrable"], "--vouched-by needs --identity"),
        (["--vouched-by", "T. Marrable", "--identity", "pass"], "--vouched-by needs --fingerprint"),
        (["--identity", "pass"], "--identity needs --vouched-by"),
        (["--countersigned-by", "T. Marrable"], "--countersigned-by needs --observation"),
        (["--countersigned-on", "2026-01-01"], "--countersigned-on needs --countersigned-by"),
        (["--only", "BAAAA-AAAAA"], "--only and --again belong to a class"),
        (["--trained", "2999-01-01"], "2999-01-01 is still to come."),
    ],
)
def test_options_that_do_not_go_together_are_told(shop: Shop, more: list[str], told: str) -> None:
    result = attempted(shop, *more, words=None)
    assert (result.exit_code, told in result.output) == (2, True), result.output


@pytest.mark.parametrize("more", [["--trainer", "X"], ["--vouched-by", "X"], ["--attempt-number", "2"]])
def test_what_the_sitting_says_is_not_said_again(shop: Shop, more: list[str]) -> None:
    shop.seat(shop.sat(shop.place(1)))
    result = shop.certify(*more, words=None)
    assert (result.exit_code, "belongs to --attempt" in result.output) == (2, True)


def test_neither_or_both_is_not_understood(shop: Shop) -> None:
    result = shop.run("certify", "--key", str(shop.key), "--into", str(shop.into))
    assert (result.exit_code, "Name the sitting of a class, or one attempt" in result.output) == (2, True)


def test_another_fingerprint_on_paper_vouches_for_nothing(shop: Shop) -> None:
    words = vouching(shop)
    words[-1] = "AAAA-BBBB-CCCC-DDDD"
    result = attempted(shop, *words, words=None)
    assert (result.exit_code, "The fingerprint given is AAAA-BBBB-CCCC-DDDD" in result.output) == (1, True)


def test_nobody_vouches_before_the_check(shop: Shop) -> None:
    result = attempted(shop, *vouching(shop), "--on", "2026-01-01", words=None)
    assert (result.exit_code, "Nobody can vouch on 2026-01-01" in result.output) == (1, True)


def test_the_observation_of_somebody_else_is_refused(shop: Shop) -> None:
    file = shop.folder / "observation.json"
    file.write_bytes(shop.observation(shop.place(2)))
    result = attempted(shop, "--observation", str(file), words=None)
    assert (result.exit_code, "is of Robin Ashdown 2 (0002)" in result.output) == (1, True)


def test_an_attempt_of_a_sealed_check_belongs_to_its_sitting(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("journeybook.proof.key_file.COST", 2**6)
    shop = Shop(tmp_path, sealed=True)
    result = attempted(shop, words=None)
    assert result.exit_code == 1
    assert "is sealed, so its attempts belong to a sitting" in result.output
    shop.seat(shop.sat(shop.place(1)))
    assert shop.certify().exit_code == 0


def test_a_card_without_a_name_is_refused(shop: Shop) -> None:
    result = attempted(shop, card=Card(id="1", name=" ", workplace=""), words=None)
    assert (result.exit_code, "has no name" in result.output) == (1, True)


@pytest.mark.parametrize("data", [b"", b"{}", b"not json", b"\xff\xfe", b"[" * 100_000])
def test_a_file_that_is_no_attempt_is_a_sentence(shop: Shop, data: bytes) -> None:
    file = shop.folder / "attempt.json"
    file.write_bytes(data)
    result = shop.run("certify", "--attempt", str(file), "--key", str(shop.key), "--into", str(shop.into))
    assert result.exit_code == 1
    assert "attempt.json is no record of ours." in result.output


def test_a_device_that_lives_in_the_future_is_refused(shop: Shop) -> None:
    ahead = (DAY + timedelta(days=9)).isoformat()
    result = attempted(shop, ended=f"{ahead}T00:20:00Z", words=None)
    assert (result.exit_code, "still to come" in result.output) == (1, True)


def test_an_attempt_that_has_run_out_gets_none(shop: Shop) -> None:
    result = attempted(shop, started="2020-01-01T00:00:00Z", ended="2020-01-01T00:20:00Z", words=None)
    assert (result.exit_code, "Training has been due again since 2022-01-01." in result.output) == (1, True)


def test_who_supervised_and_who_observed_have_a_stamp_each(shop: Shop) -> None:
    place = shop.sat(shop.place(1), seen=False)
    seen = shop.observation(place, assessor=Observer(name="A. Fenwright", role="", basis=""))
    shop.seat(replace(place, observations=(shop.held(seen),)))
    line = one(shop)
    said = read(shop, line["file"].replace(".pdf", ".json"))
    assert said.assessor == "T. Marrable (check); A. Fenwright (practical)"
    text = " ".join(PdfReader(shop.into / line["file"]).pages[0].extract_text().split())
    assert "Supervised: T. Marrable confirmed who answered." in text
    assert "Observed by A. Fenwright on" in text
