"""The certificate as a file: one page to be kept and read aloud, in our faces, its record inside and in its code."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO
from typing import Any

import pdfua
import pikepdf
import pypdf
import pypdfium2
import pytest
import zxingcpp
from certificate_demo import CHECK_ONLY, CODE, MADE, OBSERVED, RECORD
from PIL import Image

from journeybook.paper.certificate import certificate_pdf
from journeybook.paper.certificate_sheet import CertificateSheet
from journeybook.paper.code_picture import NoCodePicture
from journeybook.paper.press import SIZES, UNSHOWN, NotSet

SHEETS = pytest.mark.parametrize("sheet", [OBSERVED, CHECK_ONLY], ids=["observed", "check-only"])
PAPERS = pytest.mark.parametrize("size", SIZES)
OURS = {
    "JourneybookLabel-Regular",
    "JourneybookRead-Regular",
    "JourneybookRead-Bold",
    "JourneybookRead-Italic",
}


@cache
def made(sheet: CertificateSheet, size: str = "a4") -> bytes:
    return certificate_pdf(sheet, RECORD, CODE, MADE, size)


def opened(pdf: bytes) -> pikepdf.Pdf:
    return pikepdf.open(BytesIO(pdf))


def printed(pdf: bytes) -> str:
    """What is printed, in the order in which it is read."""
    return " ".join(pypdf.PdfReader(BytesIO(pdf)).pages[0].extract_text().split())


def rendered(pdf: bytes, dots: int) -> Image.Image:
    """The page as a picture of so many dots an inch."""
    picture: Image.Image = pypdfium2.PdfDocument(pdf)[0].render(scale=dots / 72).to_pil()
    return picture


def fonts(pdf: bytes) -> set[str]:
    """Names of the faces that are used and lie inside the file."""
    found = set()
    for page in opened(pdf).pages:
        for font in page.Resources.Font.values():
            below = font.DescendantFonts[0]
            assert "/FontFile2" in below.FontDescriptor or "/FontFile3" in below.FontDescriptor
            found.add(str(font.BaseFont).lstrip("/").partition("+")[2])
    return found


def structure(pdf: pikepdf.Pdf) -> list[tuple[str, Any]]:
    """The elements of the structure tree with their kind, in reading order."""
    found: list[tuple[str, Any]] = []

    def walk(element: Any) -> None:
        if isinstance(element, pikepdf.Array):
            for each in element:
                walk(each)
        elif isinstance(element, pikepdf.Dictionary):
            if "/S" in element:
                found.append((str(element.S).lstrip("/"), element))
            if "/K" in element:
                walk(element.K)

    walk(pdf.Root.StructTreeRoot.K)
    return found


def assert_well_set(pdf: bytes) -> None:
    """Nothing runs out of the frame, no text runs into another, and none across a line between two cells.

    The outer 6 mm are as white as paper; the frame's lines stand at 10 mm. Stamps are turned, so their boxes may
    touch: what begins in their column is left out.
    """
    picture = rendered(pdf, 100).convert("L")
    edge = round(6 / 25.4 * 100)
    wide, tall = picture.size
    for box in (
        (0, 0, wide, edge),
        (0, tall - edge, wide, tall),
        (0, 0, edge, tall),
        (wide - edge, 0, wide, tall),
    ):
        assert picture.crop(box).getextrema() == (255, 255)
    page = pypdfium2.PdfDocument(pdf)[0]
    texts = page.get_textpage()
    boxes = [texts.get_rect(number) for number in range(texts.count_rects())]
    boxes = [box for box in boxes if box[0] < 0.7 * page.get_width()]
    for at, one in enumerate(boxes):
        for other in boxes[at + 1 :]:
            across, up = _shared(one, other)
            smaller = min(_area(one), _area(other))
            assert across < 1 or up < 0 or across * up < 0.25 * smaller, (
                f"{texts.get_text_bounded(*one)!r} runs into {texts.get_text_bounded(*other)!r}"
            )
    paths = [path.get_bounds() for path in page.get_objects([pypdfium2.raw.FPDF_PAGEOBJ_PATH])]
    uprights = [path for path in paths if path[2] - path[0] < 1.5 and path[3] - path[1] > 15]
    assert len(uprights) >= 6
    for line in uprights:
        for box in boxes:
            assert not (box[0] + 1 < line[0] < box[2] - 1 and _shared(line, box)[1] > 1), (
                f"{texts.get_text_bounded(*box)!r} runs across a line"
            )


Box = tuple[float, float, float, float]
"""Left, bottom, right, top; points."""


def _shared(one: Box, other: Box) -> tuple[float, float]:
    """How much of two boxes is the same, across and up; negative where they stand apart."""
    return min(one[2], other[2]) - max(one[0], other[0]), min(one[3], other[3]) - max(one[1], other[1])


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


@SHEETS
@PAPERS
def test_it_is_one_page_of_the_paper_asked_for(sheet: CertificateSheet, size: str) -> None:
    pages = opened(made(sheet, size)).pages
    assert len(pages) == 1
    box = [round(float(side)) for side in pages[0].MediaBox]
    assert box == {"a4": [0, 0, 595, 842], "us-letter": [0, 0, 612, 792]}[size]
    assert_well_set(made(sheet, size))


def test_another_paper_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^A certificate is printed on a4 or us-letter\.$"):
        certificate_pdf(OBSERVED, RECORD, CODE, MADE, "a5")


@SHEETS
def test_it_says_of_itself_what_it_conforms_to(sheet: CertificateSheet) -> None:
    pdf = opened(made(sheet))
    with pdf.open_metadata() as metadata:
        # ISO 19005-3, 6.6.4; ISO 14289-1, 5.
        assert metadata["pdfaid:part"] == "3"
        assert metadata["pdfaid:conformance"] == "A"
        assert metadata["pdfuaid:part"] == "1"
        assert metadata["dc:title"] == f"{_title(sheet)}: Ines Okafor, {sheet.title}"
    root = pdf.Root
    assert str(root.Lang) == "en"
    assert bool(root.MarkInfo.Marked)
    assert bool(root.ViewerPreferences.DisplayDocTitle)
    assert [str(intent.S) for intent in root.OutputIntents] == ["/GTS_PDFA1"]


def _title(sheet: CertificateSheet) -> str:
    return "Training certificate" if sheet.observed else "Knowledge check only"


@SHEETS
@PAPERS
def test_the_checker_for_accessible_files_finds_nothing(sheet: CertificateSheet, size: str) -> None:
    report = pdfua.validate(BytesIO(made(sheet, size)))
    assert [finding for finding in report.findings if finding.severity >= pdfua.Severity.ERROR] == []


@SHEETS
def test_headings_follow_each_other_and_the_code_has_words(sheet: CertificateSheet) -> None:
    pdf = opened(made(sheet))
    parts = structure(pdf)
    kinds = [kind for kind, _ in parts]
    headings = [kind for kind in kinds if kind.startswith("H") and kind[1:].isdigit()]
    assert headings == ["H1", *["H2"] * 7]
    assert kinds.count("TH") == 3
    assert kinds.count("TR") == 4
    figures = [element for kind, element in parts if kind == "Figure"]
    assert [str(figure.Alt) for figure in figures] == [
        "Code that holds the signed record of this certificate"
    ]


def test_the_record_travels_inside_byte_for_byte() -> None:
    pdf = opened(made(OBSERVED))
    assert list(pdf.attachments) == ["record.json"]
    file = pdf.attachments["record.json"].get_file()
    assert file.read_bytes() == RECORD
    assert file.mime_type == "application/vc"
    # ISO 19005-3, 6.8: associated with the whole document, and in which relationship.
    assert [str(each.AFRelationship) for each in pdf.Root.AF] == ["/Data"]


@SHEETS
@PAPERS
@pytest.mark.parametrize("dots", [100, 200])
def test_a_camera_reads_the_code(sheet: CertificateSheet, size: str, dots: int) -> None:
    found = zxingcpp.read_barcodes(rendered(made(sheet, size), dots))
    assert [code.text for code in found] == [CODE]


def test_a_square_of_the_code_is_at_least_two_fifths_of_a_millimetre() -> None:
    [code] = zxingcpp.read_barcodes(rendered(made(OBSERVED), 300))
    across = code.position.top_right.x - code.position.top_left.x
    assert across / 300 * 25.4 / 89 >= 0.4


def test_the_same_input_gives_the_same_bytes() -> None:
    assert certificate_pdf(OBSERVED, RECORD, CODE, MADE) == made(OBSERVED)


@SHEETS
def test_only_our_faces_are_in_it(sheet: CertificateSheet) -> None:
    assert fonts(made(sheet)) == OURS


def test_letters_of_other_scripts_fall_back_to_one_known_face() -> None:
    foreign = replace(OBSERVED, name="Иван Ηλίας", employer="Хутор")
    assert {name for name in fonts(made(foreign)) - OURS if "Libertinus" not in name} == set()
    assert fonts(made(foreign)) > OURS
    assert "Иван Ηλίας" in printed(made(foreign))


@pytest.mark.parametrize(
    "name", ["Nguyễn Thị Ánh Tuyết Đặng", "Żaneta Brzęczyszczykiewicz", "İpek Şahin", "Þórður"]
)
def test_latin_names_stand_in_our_own_faces(name: str) -> None:
    pdf = made(replace(OBSERVED, name=name, employer=name, assessor=name, trainer=name))
    assert fonts(pdf) <= OURS
    assert name in printed(pdf)


def test_a_language_of_one_region_is_said_with_it() -> None:
    assert str(opened(made(replace(OBSERVED, tongue="pt-BR"))).Root.Lang) == "pt-BR"
    assert str(opened(made(replace(OBSERVED, tongue="sr-Latn"))).Root.Lang) == "sr"


def test_two_assessors_have_four_lines_to_sign() -> None:
    pdf = made(replace(OBSERVED, observer="Maud Ferris"), "us-letter")
    assert_well_set(pdf)
    assert "OBSERVED Maud Ferris 27 Nov 2026" in printed(pdf)
    assert printed(pdf).count("SIGNATURE, DATE") == 4


def test_it_reads_in_the_order_in_which_it_matters() -> None:
    said = printed(made(OBSERVED))
    parts = [
        "Training certificate",
        "KNOWLEDGE CHECK AND PRACTICAL",
        "28 Nov 2026",
        "EXAMPLE UNIT, NOT VALID FOR WORK",
        "Ines Okafor",
        "QBW-0417",
        "RETRAIN BY 25 Nov 2027",
        OBSERVED.title,
        OBSERVED.equipment,
        "10 Training",
        "20 Knowledge check",
        "Fingerprint of the attempt K7QD-M2XA-PR4T-6YHN",
        "SUPERVISED Samuel Reyes 25 Nov 2026",
        "30 Practical",
        "OBSERVED Samuel Reyes 27 Nov 2026",
        *OBSERVED.outcomes,
        "IT DOES NOT PROVE",
        *OBSERVED.limits,
        "BEFORE ANYTHING ELSE",
        *OBSERVED.cautions,
        "HOLDER: SIGNATURE, DATE",
        "Scanning shows a long code. That is normal.",
        "QX3F 7KLA M2ZD P4RT 6YHN WJ5S B7CE 4GUV",
        "6f1d2c3a-9b8e-4d7f-a1b2-0c3d4e5f6a7b",
        "3f9c 2b7e 61d0 4a58",
    ]
    at = 0
    for part in parts:
        found = said.find(part, at)
        assert found >= at, f"{part!r} does not follow"
        at = found + len(part)


LONG = {
    "one word": "M" * 200,
    "many words": ("Aleksandra Katarzyna " * 10)[:200].strip(),
    "Vietnamese": ("Nguyễn Đặng Tuyết " * 12)[:200].strip(),
}


@PAPERS
@pytest.mark.parametrize("text", LONG.values(), ids=LONG)
def test_long_names_shrink_until_they_fit(text: str, size: str) -> None:
    pdf = made(replace(OBSERVED, name=text, employer=text, assessor=text), size)
    assert len(opened(pdf).pages) == 1
    assert_well_set(pdf)
    # Name, employer, twice in words and twice in stamps, each whole.
    assert printed(pdf).replace(" ", "").count(text.replace(" ", "")) == 6


@pytest.mark.parametrize(
    "field", ["workplace", "equipment", "title", "person", "identity", "trainer", "profile", "issuer"]
)
def test_any_text_may_be_as_long_as_a_record_allows(field: str) -> None:
    for text in ("W" * 200, LONG["many words"]):
        pdf = made(replace(OBSERVED, **{field: text}), "us-letter")
        assert_well_set(pdf)
        assert text.replace(" ", "") in printed(pdf).replace(" ", "")


def test_twenty_outcomes_and_eight_observations_fit() -> None:
    full = replace(
        OBSERVED,
        outcomes=(*OBSERVED.outcomes, *OBSERVED.outcomes)[:20],
        observations=tuple(f"B7CE-4GUV-QX3F-7KL{letter}" for letter in "ABCDEFGH"),
    )
    for size in SIZES:
        assert_well_set(made(full, size))
        assert "B7CE-4GUV-QX3F-7KLH" in printed(made(full, size))


@PAPERS
def test_a_short_course_fills_its_page_and_its_code_grows(size: str) -> None:
    short = replace(
        CHECK_ONLY,
        title="Set the guard",
        equipment="Pillar drill",
        outcomes=CHECK_ONLY.outcomes[:2],
        cautions=CHECK_ONLY.cautions[:1],
        limits=("permission to work",),
        practicals=(),
        example=False,
    )
    pdf = certificate_pdf(short, RECORD, CODE[:300], MADE, size)
    assert_well_set(pdf)
    picture = rendered(pdf, 300)
    [code] = zxingcpp.read_barcodes(picture)
    assert code.text == CODE[:300]
    side = (code.position.top_right.x - code.position.top_left.x) / 300 * 25.4
    assert 32 < side < 40
    # The foot of the page is not empty: the frame's lower line stands at 10 mm, the code just above it.
    assert code.position.bottom_left.y > picture.height - (10 + 12) / 25.4 * 300


def test_what_cannot_be_set_on_one_page_is_refused_in_a_sentence() -> None:
    with pytest.raises(NotSet) as refused:
        certificate_pdf(replace(OBSERVED, outcomes=("word " * 80,) * 30), RECORD, CODE, MADE)
    assert str(refused.value) == (
        "The certificate of Ines Okafor cannot be set on one page: its texts, and the outcomes, cautions and limits "
        "of the course, are too long together. Shorten the longest."
    )


def test_a_code_that_is_too_long_is_refused() -> None:
    with pytest.raises(NoCodePicture, match="too many for a code of version 18"):
        certificate_pdf(OBSERVED, RECORD, "A" * 900, MADE)


@pytest.mark.parametrize(
    "text",
    [
        "#sys.version *b* _i_ @ref <x> $x^2$",
        "\"quoted\" 'single' `code` \\n \\u{41} // no",
        '#include "/etc/passwd"',
        "= + - / [a] {b} ~ -- ... https://nobody.example",
    ],
)
def test_a_hostile_text_is_printed_as_it_is(text: str) -> None:
    pdf = made(replace(OBSERVED, name=text, trainer=text, outcomes=(text,)))
    # A long address may be broken at the end of a line.
    assert printed(pdf).replace(" ", "").count(text.replace(" ", "")) == 3


def test_what_no_face_has_prints_as_a_mark_and_the_paper_says_so() -> None:
    said = printed(made(replace(OBSERVED, name="李小龍 😀")))
    assert f"NAME {UNSHOWN * 3} {UNSHOWN}" in said
    assert (
        f"A letter that reads as {UNSHOWN} is not in the type of this paper. The signed record has it."
        in said
    )
    assert "A letter that reads as" not in printed(made(OBSERVED))


def test_right_to_left_names_are_set_and_an_override_is_shown() -> None:
    said = printed(made(replace(OBSERVED, employer="Dock \u202egnorw", workplace="مرحبا")))
    assert f"Dock {UNSHOWN}gnorw" in said
    assert_well_set(made(replace(OBSERVED, name="مرحبا שלום")))
