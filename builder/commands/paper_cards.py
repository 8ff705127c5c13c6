"""``journeybook paper cards``, ``records``, ``tag``, ``observation`` and ``everything``: the papers of a course."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TypeVar

import click

from journeybook.commands.course_in_print import PAPER_SIZE, course_in_print, moment, write_paper
from journeybook.commands.project_option import CONFIG
from journeybook.paper.course_papers import (
    CoursePaper,
    PaperKind,
    card_papers,
    course_papers,
    kind_of,
    observation_paper,
)
from journeybook.paper.job_cards import job_cards_pdf
from journeybook.source.near import nearest

Named = TypeVar("Named")

_INTO = click.argument("into", type=click.Path(path_type=Path))


@click.command()
@click.argument("course")
@click.argument("cards", metavar="[CARD]...", nargs=-1)
@_INTO
@click.option("--two-up", is_flag=True, help="Two cards side by side, each half a page, to be cut apart.")
@PAPER_SIZE
@CONFIG
@click.pass_context
def cards(
    context: click.Context,
    course: str,
    cards: tuple[str, ...],
    into: Path,
    two_up: bool,
    size: str,
    config_file: Path,
) -> None:
    """Set the job cards of COURSE, all or those named.

    INTO is a folder for a file each, or one file, whose name then ends in .pdf. Tags have a command of their own.
    """
    printed = course_in_print(context, config_file, course)
    have = printed.course.job_cards
    chosen = [_found(have, name, f"{course} has no job card") for name in cards]
    chosen = chosen or [card for card in have.values() if not card.tag]
    if not chosen:
        raise click.ClickException(f"{course} has no job cards yet; write one into its folder job-cards.")
    one_file = _is_file(into)
    if one_file or two_up:
        tag = next((card for card in chosen if card.tag), None)
        if tag is not None:
            raise click.ClickException(
                f"{tag.id} is a tag, which has a page of its own: journeybook paper tag {course} {into}"
            )
        path = into if one_file else into / "cards.pdf"
        write_paper(path, lambda: job_cards_pdf(printed, chosen, made=moment(), paper=size, two_up=two_up))
        click.echo(path)
        return
    _write_each(card_papers(printed, chosen, moment(), size), into)


@click.command()
@click.argument("course")
@_INTO
@PAPER_SIZE
@CONFIG
@click.pass_context
def records(context: click.Context, course: str, into: Path, size: str, config_file: Path) -> None:
    """Set the sheets of COURSE that are filled in and kept: its job cards with `keep`. INTO as for cards."""
    _cards_of(context, config_file, course, PaperKind.RECORD, into, size)


@click.command()
@click.argument("course")
@_INTO
@PAPER_SIZE
@CONFIG
@click.pass_context
def tag(context: click.Context, course: str, into: Path, size: str, config_file: Path) -> None:
    """Set the tags of COURSE, two on a page: its job cards with `tag: true`. INTO as for cards."""
    _cards_of(context, config_file, course, PaperKind.TAG, into, size)


@click.command()
@click.argument("course")
@click.argument("practical")
@_INTO
@PAPER_SIZE
@CONFIG
@click.pass_context
def observation(
    context: click.Context, course: str, practical: str, into: Path, size: str, config_file: Path
) -> None:
    """Set the sheet on which an assessor writes what was seen at a PRACTICAL of COURSE. INTO as for cards."""
    printed = course_in_print(context, config_file, course)
    found = _found(printed.course.practicals, practical, f"{course} has no practical")
    _write_each([observation_paper(printed, found, moment(), size)], into)


@click.command()
@click.argument("course")
@click.argument("into", type=click.Path(path_type=Path, file_okay=False))
@PAPER_SIZE
@CONFIG
@click.pass_context
def everything(context: click.Context, course: str, into: Path, size: str, config_file: Path) -> None:
    """Set every paper of COURSE into a folder: cards, records, tags and observation sheets, a file each."""
    printed = course_in_print(context, config_file, course)
    papers = course_papers(printed, moment(), size)
    if not papers:
        raise click.ClickException(f"{course} has neither job cards nor practicals yet.")
    for number, paper in enumerate(papers, start=1):
        path = into / paper.file_name
        write_paper(path, paper.set)
        click.echo(f"{number}/{len(papers)}  {path}")


def _cards_of(
    context: click.Context, config_file: Path, course: str, kind: PaperKind, into: Path, size: str
) -> None:
    printed = course_in_print(context, config_file, course)
    found = [card for card in printed.course.job_cards.values() if kind_of(card) is kind]
    if not found:
        key = "tag: true" if kind is PaperKind.TAG else 'keep: "…"'
        raise click.ClickException(f"{course} has no {kind}: give a job card of it `{key}`.")
    _write_each(card_papers(printed, found, moment(), size), into)


def _write_each(papers: Sequence[CoursePaper], into: Path) -> None:
    """Write a file for each paper into a folder; a single paper also into the one file that is named."""
    one_file = _is_file(into)
    if one_file and len(papers) > 1:
        listed = ", ".join(paper.id for paper in papers)
        raise click.ClickException(f"There are {len(papers)} papers ({listed}); name a folder for them.")
    for paper in papers:
        path = into if one_file else into / paper.file_name
        write_paper(path, paper.set)
        click.echo(path)


def _is_file(into: Path) -> bool:
    """Whether a place that was named is one PDF; anything else is a folder, and no other file may be there."""
    if into.suffix.lower() == ".pdf" and not into.is_dir():
        return True
    if into.exists() and not into.is_dir():
        raise click.ClickException(f"{into} is a file; name a folder, or a file that ends in .pdf.")
    return False


def _found(have: Mapping[str, Named], name: str, lacking: str) -> Named:
    if name not in have:
        listed = " or ".join(nearest(name, list(have)) or list(have)) or "none"
        raise click.BadParameter(f"{lacking} {name!r}; it has {listed}.")
    return have[name]
