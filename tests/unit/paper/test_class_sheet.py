"""The class sheet: every person has a row, what is held is printed, and the passphrase is nowhere."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from paper_checks import FACES, faces_of, findings_of, pages_of, size_of_page, standards_of
from sitting_on_paper import demo, misplaced

from journeybook.paper.class_sheet import ClassSheet, class_sheet_data, class_sheet_pdf
from journeybook.sittings.papers import class_sheet
from journeybook.sittings.sitting import Place, Received

PRINT = "ABCD-EFGH-2345-MNOP"


def of_people(count: int) -> ClassSheet:
    people = tuple(
        Place(
            ticket=f"ABCDE-{number:05d}",
            id=f"{number:04d}",
            name=f"Robin Ashdown the {number}th",
            workplace="Bay 3",
            extra_minutes=12 if number == 1 else 0,
            oral=number == 1,
            attempt=Received(
                text="{}", fingerprint=PRINT, received="2026-12-02T10:00:00Z", by_way_of="file", source=""
            )
            if number == 2
            else None,
        )
        for number in range(count)
    )
    return class_sheet(replace(demo().sitting, people=people), demo().content)


def test_it_says_what_the_class_was_and_who_held_it() -> None:
    pdf = class_sheet_pdf(of_people(3))
    (page,) = pages_of(pdf)
    for told in (
        "Wednesday class", "Training room 2", "2 Dec 2026", "45 min", "T. Marrable, Foreman",
        "A. Fenwright, 1 Dec 2026", "Works pass", demo().sitting.digest[:4], "version 0.1",
        "EXAMPLE UNIT: NOT VALID FOR WORK",
        "The assessor reads the passphrase out in the room", "Passing does not prove: that somebody can do the work;",
        "+12 min", "read out",
        "SIGNATURE OF THE ASSESSOR",
    ):  # fmt: skip
        assert told in page
    for word in demo().sitting.passphrase.split():
        assert word not in page.casefold().split()


def test_what_is_held_already_is_printed_and_the_rest_is_left_to_write() -> None:
    rows = class_sheet_data(of_people(3))["rows"]
    assert [row["held"] for row in rows] == [False, False, True]
    assert rows[2]["fingerprint"] == PRINT.split("-")
    assert [len(group) for group in rows[0]["fingerprint"]] == [4, 4, 4, 4]
    (page,) = pages_of(class_sheet_pdf(of_people(3)))
    assert "ABCD EFGH 2345 MNOP" in page or "A B C D E F G H 2 3 4 5 M N O P" in page


@pytest.mark.parametrize(("count", "pages"), [(1, 1), (7, 1), (12, 2), (40, 4)])
def test_a_long_class_goes_on_below_the_same_head(count: int, pages: int, tmp_path: Path) -> None:
    pdf = class_sheet_pdf(of_people(count))
    read = pages_of(pdf)
    assert len(read) == pages
    assert misplaced(pdf) == []
    assert findings_of(pdf, tmp_path) == []
    assert faces_of(pdf) <= FACES
    holding = [page for page in read if "Robin Ashdown" in page]
    assert all("FINGERPRINT ON HANDING IN" in page for page in holding)
    assert all("Robin Ashdown" in page for page in read if "SIGNATURE OF THE ASSESSOR" in page)
    assert all("SIGNATURE OF THE ASSESSOR" in page for page in holding)
    whole = " ".join(read)
    assert all(whole.count(f"Robin Ashdown the {number}th") == 1 for number in range(count))


def test_it_lies_across_the_page_and_claims_both_standards() -> None:
    pdf = class_sheet_pdf(of_people(2))
    assert size_of_page(pdf) == (297, 210)
    assert size_of_page(class_sheet_pdf(of_people(2), paper="us-letter")) == (279, 216)
    assert standards_of(pdf) == {
        "pdf/a": "3A",
        "pdf/ua": "1",
        "language": "en",
        "title": "Class sheet: Wednesday class",
    }
    assert pdf == class_sheet_pdf(of_people(2))


def test_a_name_that_looks_like_a_command_is_a_name() -> None:
    sheet = of_people(1)
    name = '#panic("x") $1$ *a*'
    pdf = class_sheet_pdf(replace(sheet, rows=(replace(sheet.rows[0], name=name),), title=name))
    assert " ".join(pages_of(pdf)).count(name) >= 2


def test_a_very_long_name_is_broken_and_cuts_nothing_off() -> None:
    sheet = of_people(1)
    long = "Bartholomew-Featherstonehaugh " * 6
    pdf = class_sheet_pdf(
        replace(sheet, rows=(replace(sheet.rows[0], name=long.strip(), workplace="Workshop " * 12),))
    )
    assert misplaced(pdf) == []


def test_a_row_is_never_parted_between_two_pages() -> None:
    sheet = of_people(12)
    rows = tuple(
        replace(row, name=f"{row.name} of the long quay", workplace="Workshop " * 5) for row in sheet.rows
    )
    for page in pages_of(class_sheet_pdf(replace(sheet, rows=rows))):
        assert page.count("of the long quay") == page.count("· Workshop")
