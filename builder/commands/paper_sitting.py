"""``journeybook paper questions``, ``answers`` and ``class``: the papers of a sitting.

They are as secret as the sitting itself: only the employer may read the files, and none is written where it would be
published or over another one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import click

from journeybook.commands.by_hand import warn_of_names
from journeybook.commands.came_back import SITTING, course_finder, seat_of, sitting_of
from journeybook.commands.course_in_print import PAPER_SIZE
from journeybook.commands.project_option import CONFIG, project_of
from journeybook.making import courses_of
from journeybook.pages.course_pages import Ready
from journeybook.paper.answer_sheet import answer_sheet_pdf
from journeybook.paper.class_sheet import class_sheet_pdf
from journeybook.paper.code_picture import NoCodePicture
from journeybook.paper.form_on_paper import TYPES, FormOnPaper
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.press import NoPress, NotSet
from journeybook.paper.question_paper import question_paper_pdf
from journeybook.project import Project
from journeybook.proof.private_file import put
from journeybook.proof.private_place import published_by
from journeybook.release_sources import NoSources, course_of_release
from journeybook.sittings.papers import class_sheet, form_on_paper
from journeybook.sittings.sitting import Place, Sitting

_INTO = click.argument("into", type=click.Path(path_type=Path))
_TICKET = click.option(
    "--ticket", "tickets", multiple=True, help="Only the paper of this ticket; may stand several times."
)
_TYPE = click.option(
    "--type",
    "type_size",
    type=click.Choice(TYPES),
    default=TYPES[0],
    show_default=True,
    help="Size of type; large for those who need it.",
)
_ENDING = ".sitting.json"


@click.command()
@SITTING
@_INTO
@_TICKET
@_TYPE
@PAPER_SIZE
@CONFIG
@click.pass_context
def questions(
    context: click.Context,
    sitting_path: Path,
    into: Path,
    tickets: tuple[str, ...],
    type_size: str,
    size: str,
    config_file: Path,
) -> None:
    """Set the question paper of each ticket of SITTING.

    It is for those who answer with a pen, on the sheet that `paper answers` sets.
    INTO is a folder, or a .pdf file for a single paper.
    """
    project = project_of(context, config_file)
    _set_forms(
        project,
        sitting_path,
        into,
        tickets,
        "questions",
        lambda form: question_paper_pdf(form, paper=size, type_size=type_size),
    )


@click.command()
@SITTING
@_INTO
@_TICKET
@_TYPE
@PAPER_SIZE
@CONFIG
@click.pass_context
def answers(
    context: click.Context,
    sitting_path: Path,
    into: Path,
    tickets: tuple[str, ...],
    type_size: str,
    size: str,
    config_file: Path,
) -> None:
    """Set the answer sheet of each ticket of SITTING.

    What is written on it is keyed in with `from-paper` and taken in with `mark`.
    INTO is a folder, or a .pdf file for a single sheet.
    """
    project = project_of(context, config_file)
    _set_forms(
        project,
        sitting_path,
        into,
        tickets,
        "answers",
        lambda form: answer_sheet_pdf(form, paper=size, type_size=type_size),
    )


@click.command("class")
@SITTING
@_INTO
@PAPER_SIZE
@CONFIG
@click.pass_context
def class_(context: click.Context, sitting_path: Path, into: Path, size: str, config_file: Path) -> None:
    """Set the class sheet of SITTING, to be signed in ink.

    It says who sat, whose identity was checked and whose fingerprint was shown. INTO is a folder or a .pdf file.
    """
    project = project_of(context, config_file)
    sitting = sitting_of(sitting_path)
    course = course_finder(project)(sitting)
    if course is None:
        raise click.ClickException(
            f"The course {sitting.course} {sitting.version} with contents {sitting.digest[:12]} is not here. "
            "Run this beside the mkdocs.yml of the site that holds its release."
        )
    path = into if _is_file(into) else into / f"{_stem(sitting_path)}-class.pdf"
    _refuse([path], project)
    with _set_in_sentences():
        made = class_sheet_pdf(class_sheet(sitting, course.content), paper=size)
    _write({path: made})
    warn_of_names((place.name, place.id) for place in sitting.people)


def _set_forms(
    project: Project,
    sitting_path: Path,
    into: Path,
    tickets: tuple[str, ...],
    what: str,
    pdf_of: Callable[[FormOnPaper], bytes],
) -> None:
    """Set one paper for each place that is asked for, and write all of them or none."""
    sitting = sitting_of(sitting_path)
    places = _places(sitting, tickets)
    if _is_file(into):
        if len(places) != 1:
            raise click.ClickException(
                f"{into} is one file, and there are {len(places)} papers: name a folder, or one --ticket."
            )
        paths = [into]
    else:
        stem = _stem(sitting_path)
        paths = [into / f"{stem}-{number:02d}-{place.ticket}-{what}.pdf" for number, place in places]
    _refuse(paths, project)
    with _course_of(project, sitting) as ready, _set_in_sentences():
        printed = CourseInPrint(course=ready.course, digest=sitting.digest)
        content = ready.compiled.content
        made = {
            path: pdf_of(form_on_paper(sitting, place, printed, content))
            for path, (_, place) in zip(paths, places, strict=True)
        }
    _write(made)
    warn_of_names((place.name, place.id) for _, place in places)


def _places(sitting: Sitting, tickets: tuple[str, ...]) -> list[tuple[int, Place]]:
    """The places of these tickets, or all; each with its number on the class sheet."""
    numbered = list(enumerate(sitting.people, 1))
    if not tickets:
        return numbered
    wanted = {seat_of(sitting, given).ticket for given in tickets}
    return [(number, place) for number, place in numbered if place.ticket in wanted]


@contextmanager
def _course_of(project: Project, sitting: Sitting) -> Iterator[Ready]:
    """The course that the sitting was drawn from: as it stands, or from the sources beside its release."""
    if sitting.course not in project.courses:
        raise click.ClickException(
            f"The sitting is one of {sitting.course}, which this mkdocs.yml does not name. "
            "Run this beside the mkdocs.yml of the site that holds the course."
        )
    ready, _ = courses_of(replace(project, courses=(sitting.course,)))
    same = next((one for one in ready if one.compiled.digest == sitting.digest), None)
    if same is not None:
        yield replace(same, course=replace(same.course, draft=False))
        return
    try:
        with course_of_release(project, sitting.course, sitting.version, sitting.digest) as older:
            yield older
    except NoSources as missing:
        raise click.ClickException(f"{missing.message} {missing.mend}") from missing


@contextmanager
def _set_in_sentences() -> Iterator[None]:
    try:
        yield
    except (NoPress, NotSet, NoCodePicture) as refused:
        raise click.ClickException(str(refused)) from refused


def _is_file(into: Path) -> bool:
    return into.suffix.lower() == ".pdf" and not into.is_dir()


def _stem(sitting_path: Path) -> str:
    name = sitting_path.name
    return name.removesuffix(_ENDING) if name.endswith(_ENDING) else sitting_path.stem


def _refuse(paths: list[Path], project: Project) -> None:
    """End the command where a paper would be published, or would stand in the place of another file."""
    why = published_by(paths[0].parent, project.watched())
    if why:
        raise click.ClickException(
            f"Papers of a sitting are not written into {paths[0].parent}: {why}, and they are as secret as the "
            "sitting. Name a folder of its own, one that only the employer reads."
        )
    there = [path for path in paths if path.exists()]
    if there:
        more = f" (and {len(there) - 1} more)" if len(there) > 1 else ""
        raise click.ClickException(
            f"{there[0]} is there already{more}; no paper is written over another. Name another folder, or delete it."
        )


def _write(papers: Mapping[Path, bytes]) -> None:
    for path, data in papers.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        put(path, data)
        click.echo(path)


COMMANDS = (questions, answers, class_)
