"""A released course on disk, keys, a trust list, and a class that has sat and was vouched for. All invented."""

from __future__ import annotations

import hashlib
import os
import shutil
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any, Self

from click.testing import CliRunner, Result

from journeybook.cli import main
from journeybook.marking import canonical
from journeybook.marking import observation as observations
from journeybook.marking.attempt import Asked, Attempt, Card, write
from journeybook.marking.draw import draw_form
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observation import Assessor as Observer
from journeybook.marking.observation import Observation, StepSeen
from journeybook.proof.did_key import did_of
from journeybook.proof.key_file import write_key
from journeybook.proof.key_plate import KeyPlate, plate_text
from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import (
    ALPHABET,
    Assessor,
    CertificateIssued,
    Countersigned,
    ObservationHeld,
    Place,
    Received,
    Sitting,
    Vouched,
)

BASE = Path(__file__).parents[1] / "faults" / "base"
WORDS = "anvil lamp river stone gate oak"
DAY = datetime.now(UTC).date()
"""Of the check: certificates are issued by the clock of the machine."""
COURSE = "pillar-drill"


def right_answer(key: dict[str, Any], variant: int) -> Any:
    """An answer that earns everything."""
    match key["kind"]:
        case "choice" | "spot":
            return key["right"]
        case "choices":
            return [each for each in key["options"] if each in key["right"]]
        case "order":
            left, done = list(key["steps"]), []
            while left:
                one = next(s for s in left if not any(b == s and a in left for a, b in key["before"]))
                left.remove(one)
                done.append(one)
            return done
        case "match":
            return dict(key["pairs"])
        case "number":
            top, _, under = key["variants"][variant]["low"].partition("/")
            value = int(top) / int(under or 1)
            return {"value": f"{value:.9f}".rstrip("0").rstrip("."), "unit": key["unit"]}
        case "triage":
            return dict(key["right"])
        case "setting":
            return dict(zip(key["controls"], key["accepted"][0], strict=True))
        case "drill":
            return _deeds(key, key["start"], ())
    raise AssertionError(key["kind"])


def _deeds(key: dict[str, Any], moment: str, done: tuple[str, ...]) -> list[str] | None:
    """The deeds to an end that is worth everything."""
    if moment in key["ends"]:
        return list(done) if key["ends"][moment] == 1000 else None
    for deed, leads in key["moments"][moment].items():
        if "to" in leads and not leads.get("penalty"):
            found = _deeds(key, leads["to"], (*done, deed))
            if found is not None:
                return found
    return None


def make_key(path: Path, seed: int, *, demo: bool = False, until: date | None = None) -> KeyPlate:
    """Write a key file that ``WORDS`` open; how hard that is to guess is not what is tried here."""
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    private = Ed25519PrivateKey.from_private_bytes(bytes([seed]) * 32)
    plate = KeyPlate(
        did=did_of(private.public_key().public_bytes_raw()),
        holder="T. Märrable",
        role="training lead",
        from_day=DAY - timedelta(days=400),
        until=until or DAY + timedelta(days=60),
        demo=demo,
    )
    write_key(path, bytes([seed]) * 32, WORDS, plate_text(plate, private))
    return plate


class Shop:
    """A folder with a site, keys, a trust list and a class."""

    def __init__(self, folder: Path, *, example: bool = False, sealed: bool = False) -> None:
        """Copy the course, release it, make the keys."""
        self._name(folder)
        for part in ("course_src", "quizzes"):
            shutil.copytree(BASE / part, self.site / part)
        if not example:
            kit = self.site / "course_src" / COURSE / "kit.yml"
            kit.write_text(kit.read_text(encoding="utf-8").replace(", example: true", ""), encoding="utf-8")
        with (self.site / "course_src" / COURSE / "course.yml").open("a", encoding="utf-8") as file:
            file.write('approved: {by: "T. Marrable", on: 2026-11-20}\n')
        if sealed:
            with (self.site / "quizzes" / COURSE / "competence-check.yml").open(
                "a", encoding="utf-8"
            ) as file:
                file.write("sealed: true\n")
        make_key(self.key, 41)
        make_key(self.demo, 42, demo=True)
        make_key(self.stranger, 43)
        self.without_trust()
        released = self.run("release", COURSE)
        assert released.exit_code == 0, released.output
        self._look()

    @classmethod
    def at(cls, folder: Path) -> Self:
        """A shop that was made before, and copied."""
        shop = cls.__new__(cls)
        shop._name(folder)
        shop._look()
        return shop

    def _name(self, folder: Path) -> None:
        self.folder = folder
        self.site = folder / "site-of-ours"
        self.config = self.site / "mkdocs.yml"
        self.key, self.demo, self.stranger = (folder / f"{name}.pem" for name in ("key", "demo", "stranger"))
        self.trust = self.site / "trust.json"
        self.into = folder / "certificates"
        self.path = folder / "class.sitting.json"

    def _look(self) -> None:
        (self.compiled,) = (self.site / "course_src" / COURSE / "releases").glob("*/*/compiled.json")
        data = self.compiled.read_bytes()
        self.content: Any = canonical.read(data, canonical.COMPILED_SIZE_CAP)
        self.digest = hashlib.sha256(data).hexdigest()

    def without_trust(self) -> None:
        """A site that names no list."""
        self._configure("")

    def _configure(self, more: str) -> None:
        self.config.write_text(
            "site_name: ours\ndocs_dir: course_src\ntheme: {name: journeybook}\nplugins:\n  - journeybook:\n"
            f"      courses: [{COURSE}]\n      profile: uk\n{more}",
            encoding="utf-8",
        )

    def with_trust(self) -> None:
        """Begin a list with the key, and the demo key beside it."""
        started = self.run(
            "trust", "start", str(self.trust), "--key", str(self.key), "--holder", "Quillon Basin Works", words=WORDS,
            config=False,
        )  # fmt: skip
        assert started.exit_code == 0, started.output
        plate = self.folder / "demo-plate.txt"
        plate.write_text(self.run("key", "show", str(self.demo), config=False).output, encoding="utf-8")
        added = self.run(
            "trust", "add", str(self.trust), str(plate), "--key", str(self.key), "--fingerprint",
            plate.read_text(encoding="utf-8").splitlines()[-1].removeprefix("Fingerprint  "), words=WORDS, config=False,
        )  # fmt: skip
        assert added.exit_code == 0, added.output
        self._configure("      trust: trust.json\n")

    def run(self, *arguments: str, words: str | None = None, config: bool = True) -> Result:
        """Run a command; ``words`` come through a descriptor."""
        more = ["-f", str(self.config)] if config else []
        if words is None:
            return CliRunner().invoke(main, [*arguments, *more], catch_exceptions=False)
        reading, writing = os.pipe()
        os.write(writing, words.encode() + b"\n")
        os.close(writing)
        try:
            more += ["--passphrase-fd", str(reading)]
            return CliRunner().invoke(main, [*arguments, *more], catch_exceptions=False)
        finally:
            os.close(reading)

    def certify(self, *more: str, key: Path | None = None, words: str | None = WORDS) -> Result:
        """Certify the class."""
        return self.run(
            "certify",
            str(self.path),
            "--key",
            str(key or self.key),
            "--into",
            str(self.into),
            *more,
            words=words,
        )

    def attempt(self, place: Place, **changes: Any) -> bytes:
        """An attempt with every answer right."""
        plan, keys = self.content["public"]["plan"], self.content["private"]["keys"]
        form = draw_form(plan, place.ticket, place.avoid)
        whole = Attempt(
            course=COURSE,
            version=self.content["version"],
            digest=self.digest,
            profile=self.content["profile"],
            language="en",
            seed=place.ticket,
            avoid=place.avoid,
            form=tuple(
                Asked(question=one["q"], variant=one["variant"], options=tuple(one["options"]))
                for one in form
            ),
            answers={one["q"]: right_answer(keys[one["q"]], one["variant"]) for one in form},
            shown=tuple(one["q"] for one in form),
            started=f"{DAY}T00:00:00Z",
            ended=f"{DAY}T00:20:00Z",
            card=Card(id=place.id, name=place.name, workplace=place.workplace),
        )
        return write(replace(whole, **changes))

    def observation(self, place: Place, **changes: Any) -> bytes:
        """An observation of the course's only practical, all of it shown."""
        ((id_, practical),) = self.content["public"]["practicals"].items()
        whole = Observation(
            course=COURSE,
            version=self.content["version"],
            digest=self.digest,
            profile=self.content["profile"],
            language="en",
            practical=id_,
            person=Card(id=place.id, name=place.name, workplace=place.workplace),
            unit="drill 4",
            held_on=DAY,
            location="Bay 3",
            assessor=Observer(name="T. Marrable", role="Foreman", basis="Named by the works manager"),
            second=None,
            safety=tuple(True for _ in practical["texts"]["en"]["safety"]),
            steps=tuple(
                StepSeen(step=step["id"], seen="yes", prompted=False, note="") for step in practical["steps"]
            ),
            stopped=False,
            note="",
            result="competent",
            started=f"{DAY}T00:30:00Z",
            ended=f"{DAY}T00:40:00Z",
        )
        return observations.write(replace(whole, **changes))

    def place(self, number: int, name: str = "", **changes: Any) -> Place:
        """A place; nothing has come back."""
        letters = "".join(ALPHABET[number // 28**at % 28] for at in range(10))
        whole = Place(
            ticket=f"{letters[:5]}-{letters[5:]}",
            id=f"{number:04}",
            name=name or f"Robin Ashdown {number}",
            workplace="Bay 3",
        )
        return replace(whole, **changes)

    def sat(self, place: Place, *, vouched: bool = True, seen: bool = True, **changes: Any) -> Place:
        """The place with an attempt, somebody's word, and a countersigned observation."""
        data = self.attempt(place, **changes)
        held = Received(
            text=data.decode(),
            fingerprint=fingerprint(data),
            received=f"{DAY}T01:00:00Z",
            by_way_of="file",
            source="",
        )
        place = replace(
            place,
            attempt=held,
            vouched=Vouched(by="T. Marrable", on=DAY, identity="Works pass") if vouched else None,
        )
        return replace(place, observations=(self.held(self.observation(place)),)) if seen else place

    def held(self, data: bytes, *, signed: bool = True) -> ObservationHeld:
        """An observation as a sitting holds it."""
        return ObservationHeld(
            text=data.decode(),
            fingerprint=fingerprint(data),
            received=f"{DAY}T01:00:00Z",
            countersigned=Countersigned(by="T. Marrable", on=DAY) if signed else None,
        )

    def sitting(self, *people: Place, **changes: Any) -> Sitting:
        """A sitting of these people."""
        whole = Sitting(
            id="3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11",
            course=COURSE,
            version=self.content["version"],
            digest=self.digest,
            profile=self.content["profile"],
            language="en",
            title="Wednesday class",
            held_on=DAY,
            location="Training room 2",
            assessor=Assessor(name="T. Marrable", basis="Foreman"),
            identity="Works pass",
            trainer="A. Fenwright",
            trained=DAY - timedelta(days=1),
            minutes=30,
            made=f"{DAY}T00:00:00Z",
            passphrase="guard mango river stone ladder zebra",
            people=people,
        )
        return replace(whole, **changes)

    def seat(self, *people: Place, **changes: Any) -> None:
        """Write the private file of a sitting of these people."""
        sitting_file.write(self.path, self.sitting(*people, **changes))

    def noted(self) -> list[CertificateIssued | None]:
        """What the sitting's file says of each person's certificate."""
        return [place.certificate for place in sitting_file.read(self.path).people]
