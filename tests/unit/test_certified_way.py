"""From a sealed class to certificates that anybody can check, by the commands alone: what a trainer does in a day."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from certified_class import COURSE, DAY, WORDS, Shop

from journeybook.marking.fingerprint import fingerprint
from journeybook.sittings import sitting_file

CLASS = f"""\
title: "Wednesday class"
date: {DAY}
place: "Training room 2"
assessor: {{name: "T. Marrable", basis: "Foreman"}}
identity: "Works pass"
trainer: "A. Fenwright"
trained: {DAY}
people:
  - {{id: "0417", name: "Robin Ashdown", workplace: "Bay 3"}}
  - {{id: "0512", name: "Kay Ferriby"}}
  - {{id: "0613", name: "Lee Thornaby"}}
"""


@pytest.fixture(params=["own", "example"])
def shop(request: pytest.FixtureRequest, tmp_path: Path) -> Shop:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("journeybook.proof.key_file.COST", 2**6)
        made = Shop(tmp_path, example=request.param == "example")
        made.with_trust()
    return made


def test_from_the_seal_to_the_envelope(shop: Shop) -> None:
    example = bool(shop.content["public"]["kit"]["values"][0]["example"])
    shop.folder.joinpath("class.yml").write_text(CLASS, encoding="utf-8")
    sealed = shop.run("seal", COURSE, "--class", str(shop.folder / "class.yml"), "--into", str(shop.folder))
    assert sealed.exit_code == 0, sealed.output

    robin, kay, lee = sitting_file.read(shop.path).people
    back = shop.folder / "back"
    back.mkdir()
    attempts = {place.ticket: shop.attempt(place) for place in (robin, kay, lee)}
    observation = shop.observation(robin)
    for name, data in (*attempts.items(), ("observation", observation)):
        (back / f"{name}.json").write_bytes(data)
    marked = shop.run("mark", str(back), "--sitting", str(shop.path))
    assert "In all: 4 taken in." in marked.output

    sheet = shop.folder / "sheet.csv"
    rows = [
        f"{robin.ticket},{fingerprint(attempts[robin.ticket])},yes",
        f"{robin.ticket},{fingerprint(observation)},yes",
        f"{kay.ticket},{fingerprint(attempts[kay.ticket])},yes",
    ]
    sheet.write_text("\n".join(["ticket,fingerprint,identity", *rows]) + "\n", encoding="utf-8")
    vouched = shop.run("vouch", str(shop.path), "--by", "T. Marrable", "--list", str(sheet), config=False)
    assert vouched.exit_code == 0, vouched.output

    certified = shop.certify(key=shop.demo if example else shop.key)
    assert certified.exit_code == 1  # Nobody has vouched for Lee, who passed.
    assert "In all: 2 issued, 1 not issued." in certified.output

    state = json.loads(shop.run("class-state", str(shop.path), "--json").output)
    assert [bool(person["certificate"]) for person in state["people"]] == [True, True, False]
    papers = sorted(shop.into.glob("*.pdf"))
    checked = shop.run("verify", *map(str, papers), "--json")
    found = json.loads(checked.output)
    assert [each["kind"] for each in found] == ["example" if example else "genuine"] * 2
    told = shop.run("verify", *map(str, papers)).output
    assert "Robin Ashdown" in told
    assert "Kay Ferriby" in told


def test_a_paper_that_was_withdrawn_says_so_and_its_successor_does_not(shop: Shop) -> None:
    key = shop.demo if shop.content["public"]["kit"]["values"][0]["example"] else shop.key
    place = shop.sat(shop.place(1))
    shop.seat(place)
    assert shop.certify(key=key).exit_code == 0
    (issued,) = shop.noted()
    assert issued is not None
    shop.run(
        "trust", "withdraw", str(shop.trust), issued.id, "--reason", "mistake", "--key", str(shop.key), words=WORDS,
        config=False,
    )  # fmt: skip
    assert shop.certify("--again", place.ticket, key=key).exit_code == 0
    kinds = {
        path.name: json.loads(shop.run("verify", str(path), "--json").output)[0]["kind"]
        for path in shop.into.glob("*.pdf")
    }
    assert kinds.pop(issued.file) == "withdrawn"
    assert list(kinds.values()) == ["example" if key == shop.demo else "genuine"]
