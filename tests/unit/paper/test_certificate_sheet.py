"""What the printed certificate says: two strengths apart, a stamp only where an assessor stands, what is not proven."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from gettext import NullTranslations
from typing import Any

import pytest
from certificate_demo import CHECK_ONLY, OBSERVED

from journeybook.paper.certificate import sheet_data
from journeybook.paper.certificate_sheet import CertificateSheet

ENGLISH = NullTranslations()


class Bracketed(NullTranslations):
    """A language in which every word of ours is the English one in brackets."""

    def gettext(self, message: str) -> str:
        return f"⟦{message}⟧"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return f"⟦{msgid1 if n == 1 else msgid2}⟧"


def said(sheet: CertificateSheet) -> dict[str, Any]:
    return sheet_data(sheet, ENGLISH)


def marks_of(sheet: CertificateSheet) -> list[dict[str, str]]:
    return [row["mark"] for row in said(sheet)["operations"]["rows"]]


def strengths_of(sheet: CertificateSheet) -> list[str]:
    return [row["strength"] for row in said(sheet)["operations"]["rows"]]


def test_an_observed_practical_makes_a_certificate() -> None:
    assert said(OBSERVED)["title"] == "Training certificate"
    assert said(OBSERVED)["document"] == f"Training certificate: Ines Okafor, {OBSERVED.title}"


def test_without_an_observed_practical_its_title_is_knowledge_check_only() -> None:
    assert said(CHECK_ONLY)["title"] == "Knowledge check only"
    assert said(CHECK_ONLY)["outcomes"]["label"] == "Outcomes, checked by questions only"
    supervised = replace(CHECK_ONLY, supervised=True, identity="staff card", assessor="S. Reyes")
    assert said(supervised)["title"] == "Knowledge check only"


def test_the_two_strengths_stand_apart_in_words() -> None:
    assert strengths_of(OBSERVED)[1:] == [
        "Supervised: Samuel Reyes confirmed who answered. Identity: photo on the staff card, compared by eye.",
        "Observed by Samuel Reyes on 27 Nov 2026: competent.",
    ]
    assert strengths_of(CHECK_ONLY)[1:] == [
        "Self-recorded: nobody confirmed who answered.",
        "Not observed: no assessor vouches that this person can do the work.",
    ]
    mixed = replace(OBSERVED, supervised=False, identity="")
    assert strengths_of(mixed)[1:] == [
        "Self-recorded: nobody confirmed who answered.",
        "Observed by Samuel Reyes on 27 Nov 2026: competent.",
    ]


def test_a_stamp_is_struck_only_where_an_assessor_stands_behind_it() -> None:
    assert marks_of(OBSERVED) == [
        {"kind": "ink", "word": "Trained", "day": "24 Nov 2026"},
        {"kind": "stamp", "word": "Supervised", "name": "Samuel Reyes", "day": "25 Nov 2026"},
        {"kind": "stamp", "word": "Observed", "name": "Samuel Reyes", "day": "27 Nov 2026"},
    ]
    assert marks_of(CHECK_ONLY) == [
        {"kind": "empty", "word": "Not recorded"},
        {"kind": "ink", "word": "Passed", "day": "25 Nov 2026"},
        {"kind": "empty", "word": "Not observed"},
    ]


def test_marks_are_those_of_the_record_counted_in_questions() -> None:
    rows = said(replace(OBSERVED, of=33000, marks=27667, cut=81))["operations"]["rows"]
    assert rows[1]["lines"] == [
        "Passed: 27.667 of 33 marks. The cut is 26.73, which is 81\u00a0%.",
        "Must-pass questions: 8 of 8 right.",
        "Attempt 2.",
    ]
    # A cut between two marks is reached at the upper.
    rows = said(replace(OBSERVED, of=3001, marks=3001, cut=50))["operations"]["rows"]
    assert "The cut is 1.501, " in rows[1]["lines"][0]


def test_the_day_of_retraining_never_stands_without_what_makes_it_sooner() -> None:
    for sheet in (OBSERVED, CHECK_ONLY):
        assert said(sheet)["retrain"]["sooner"].startswith("Sooner if the work or the equipment changes")


def test_what_it_does_not_prove_grows_with_what_was_not_done() -> None:
    assert said(OBSERVED)["limits"]["items"] == list(OBSERVED.limits)
    assert said(CHECK_ONLY)["limits"]["items"] == [
        "who answered the questions",
        "that the holder can do the work",
        *CHECK_ONLY.limits,
    ]


def test_whoever_is_told_to_ask_is_told_whom() -> None:
    named = said(replace(OBSERVED, contact="A. Fenwright, foreman, the office."))["cautions"]["items"]
    assert named == [*OBSERVED.cautions, "Whom to ask: A. Fenwright, foreman, the office."]
    assert said(replace(OBSERVED, contact=""))["cautions"]["items"] == list(OBSERVED.cautions)


def test_where_no_assessor_stands_there_is_no_line_for_one() -> None:
    assert said(OBSERVED)["signatures"]["lines"] == [
        "Holder: signature, date",
        "Assessor: signature, date",
        "Issuer: name, signature, date",
    ]
    assert said(CHECK_ONLY)["signatures"]["lines"] == [
        "Holder: signature, date",
        "Issuer: name, signature, date",
    ]


def test_whoever_signs_for_one_part_alone_signs_for_that_part() -> None:
    supervised = replace(CHECK_ONLY, supervised=True, identity="staff card", assessor="S. Reyes")
    assert said(supervised)["signatures"]["lines"][1] == "Assessor (check): signature, date"
    observed = replace(OBSERVED, supervised=False, identity="")
    assert said(observed)["signatures"]["lines"][1] == "Assessor (practical): signature, date"


def test_two_assessors_each_have_their_words_their_stamp_and_their_line() -> None:
    two = replace(OBSERVED, observer="Maud Ferris")
    assert strengths_of(two)[1].startswith("Supervised: Samuel Reyes confirmed")
    assert strengths_of(two)[2] == "Observed by Maud Ferris on 27 Nov 2026: competent."
    assert [mark["name"] for mark in marks_of(two)[1:]] == ["Samuel Reyes", "Maud Ferris"]
    assert said(two)["signatures"]["lines"][1:3] == [
        "Assessor (check): signature, date",
        "Assessor (practical): signature, date",
    ]


def test_an_example_says_that_it_is_not_valid_for_work() -> None:
    assert said(OBSERVED)["hazard"] == "Example unit, not valid for work"
    assert said(replace(OBSERVED, example=False))["hazard"] == ""


def test_the_reader_is_told_how_to_check_it() -> None:
    checking = said(replace(OBSERVED, site="https://training.example/"))["checking"]
    assert checking["calm"] == "Scanning shows a long code. That is normal."
    assert "journeybook verify FILE.pdf" in checking["ways"][1]
    assert "W3C Verifiable Credentials 2.0" in checking["ways"][2]
    assert "record.json" in checking["ways"][2]
    assert checking["site"] == "https://training.example/"
    assert checking["key"][1] == ["QX3F", "7KLA", "M2ZD", "P4RT", "6YHN", "WJ5S", "B7CE", "4GUV"]
    assert [value for _, value in checking["facts"]] == [
        "6f1d2c3a-9b8e-4d7f-a1b2-0c3d4e5f6a7b",
        "3f9c 2b7e 61d0 4a58",
    ]


def test_every_word_of_ours_goes_through_the_catalogue() -> None:
    own = {value for value in vars(OBSERVED).values() if isinstance(value, str)}
    own |= {*OBSERVED.outcomes, *OBSERVED.cautions, *OBSERVED.limits, *OBSERVED.observations}
    own |= {"6f1d2c3a-9b8e-4d7f-a1b2-0c3d4e5f6a7b", "3f9c 2b7e 61d0 4a58", "ink", "stamp", "empty"}
    own |= set(OBSERVED.key.split())

    def english(value: object) -> list[str]:
        if isinstance(value, dict):
            return [text for part in value.values() for text in english(part)]
        if isinstance(value, list):
            return [text for part in value for text in english(part)]
        return [value] if isinstance(value, str) and value and "⟦" not in value and value not in own else []

    for sheet in (OBSERVED, CHECK_ONLY):
        assert english(sheet_data(sheet, Bracketed())) == []


@pytest.mark.parametrize(
    ("changes", "mistake"),
    [
        ({"assessor": ""}, "An assessor stands exactly where somebody supervised or observed."),
        (
            {"observer": "M. Ferris", "supervised": False, "identity": ""},
            "An observer stands apart only where somebody else supervised.",
        ),
        ({"identity": ""}, "How identity was checked stands exactly where the check was supervised."),
        (
            {"observations": ()},
            "Fingerprints of observations stand exactly where the practical was observed.",
        ),
        (
            {"supervised": False, "identity": "", "observed": None, "observations": ()},
            "An assessor stands exactly where somebody supervised or observed.",
        ),
    ],
)
def test_what_does_not_stand_together_is_no_sheet(changes: dict[str, Any], mistake: str) -> None:
    with pytest.raises(ValueError, match=f"^{mistake}$"):
        replace(OBSERVED, **changes)


def test_a_stamp_without_an_assessor_cannot_be_made() -> None:
    with pytest.raises(ValueError, match="An assessor stands"):
        replace(CHECK_ONLY, observed=date(2026, 11, 27), observations=("B7CE-4GUV-QX3F-7KLA",))
