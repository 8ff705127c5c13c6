"""A course from the bytes of its files: read, cross-check, put together. Touches no disk."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from functools import partial
from typing import Any

from journeybook.content.checks import cross_check
from journeybook.content.formats.questions import BankFile
from journeybook.content.formats.sheets import SheetFile
from journeybook.content.gathered import Gathered
from journeybook.content.layout import arrange
from journeybook.content.limited_sources import SourcesOfProfile
from journeybook.content.load_memo import LoadMemo
from journeybook.content.misnamed import rename
from journeybook.content.model import Bank, Course, Module, Sheet
from journeybook.content.reading import gather
from journeybook.diagnostics.problem import Level, Problem


def course_from_files(
    files: Mapping[str, bytes],
    course_id: str,
    *,
    profile: str,
    course_dir: str,
    quiz_dir: str,
    unread: Iterable[str] = (),
    today: date | None = None,
    memo: LoadMemo | None = None,
) -> tuple[Course | None, list[Problem]]:
    """The course, or None where any fault was found, and every problem, sorted by file, line and column.

    ``files`` are paths (forward slashes, relative to the folder of mkdocs.yml) and their bytes; ``unread``
    are paths of files that are there but could not be read, and whose problems the caller has noted. ``today``
    is the latest day that has begun; without it no day counts as still to come. ``memo`` saves what the last load
    did already; the caller stands inside its ``one_round``.
    """
    unread = list(unread)
    renamed = rename(files, unread, course_dir=course_dir, quiz_dir=quiz_dir)
    layout, misplaced = arrange(renamed.paths, course_dir=course_dir, quiz_dir=quiz_dir)
    gathered, found = gather(files, [*unread, *renamed.unread], layout, course_id, profile, memo=memo)
    gathered.today = today
    problems = [*renamed.problems, *misplaced, *found, *cross_check(gathered)]
    problems = _each_place_once(problems)
    problems.sort(key=lambda problem: (problem.place, problem.code))
    if unread or any(problem.level is Level.FAULT for problem in problems):
        return None, problems
    return _put_together(gathered, memo or LoadMemo()), problems


def _each_place_once(problems: list[Problem]) -> list[Problem]:
    """Without what follows from a fault in the text of a file at the same place: `yes` there is no wrong word too.

    A key that is no plain text gives way to a key that is not known here: quotes round it would not make it one.
    """
    unknown = {_start(problem) for problem in problems if problem.code == "C001"}
    problems = [one for one in problems if one.code != "S011" or _start(one) not in unknown]
    places = {_start(one) for one in problems if one.code.startswith("S") and one.place.length}
    if not places:
        return problems
    return [one for one in problems if one.code.startswith("S") or _start(one) not in places]


def _start(problem: Problem) -> tuple[str, int, int]:
    return problem.place.file, problem.place.line, problem.place.column


def _sheet(sheet_id: str, file: SheetFile) -> Sheet:
    values = {value.id: value for value in file.values}
    return Sheet(id=sheet_id, title=file.title, values=values, place=file.place)


def _bank(name: str, file: BankFile, ours: SourcesOfProfile) -> Bank:
    return Bank(id=name, title=file.title, questions=ours.without_others(file.questions), place=file.place)


def _named(got: Gathered, memo: LoadMemo, ours: SourcesOfProfile, folder: str) -> dict[str, Any]:
    """The things of one folder by id, without the sources of other profiles."""
    return {
        name: memo.same((folder, name), (thing, ours.others), partial(ours.without_others_in, thing))
        for name, thing in got.named[folder].items()
    }


def _put_together(got: Gathered, memo: LoadMemo) -> Course | None:
    """The model; None only if a part is missing, which always comes with a fault."""
    course, kit, profile, sources = got.course, got.kit, got.profile, got.sources
    if course is None or kit is None or profile is None or sources is None:
        return None
    ours = SourcesOfProfile(sources.sources, got.profile_id)
    modules = tuple(
        Module(
            id=module.folder.id,
            operation=module.folder.operation,
            title=module.file.title,
            summary=module.file.summary,
            lessons=tuple(
                memo.same(
                    ("lesson", lesson.place.file),
                    (lesson, ours.others),
                    partial(ours.without_others_in, lesson),
                )
                for lesson in module.lessons
            ),
            place=module.file.place,
        )
        for module in got.modules
        if module.file is not None
    )
    banks = tuple(
        memo.same(("bank", file.place.file), (file, ours.others), partial(_bank, name, file, ours))
        for name, file in got.banks.items()
    )
    return Course(
        id=got.course_id,
        title=course.title,
        summary=course.summary,
        version=course.version,
        languages=course.languages,
        equipment=course.equipment,
        issuer=course.issuer,
        contact=course.contact,
        approved=course.approved,
        validity=ours.without_others_in(course.validity),
        outcomes=course.outcomes,
        critical_facts=ours.without_others(course.critical_facts),
        cautions=course.cautions,
        certificate_limits=course.certificate_limits,
        modules=modules,
        kit=_sheet("kit", kit),
        profile=_sheet(got.profile_id, profile),
        sources=ours.citations,
        terms={one.id: one for one in got.words.words} if got.words else {},
        figures=got.figures,
        banks=banks,
        check=got.blueprint,
        drills=_named(got, memo, ours, "drills"),
        practicals=_named(got, memo, ours, "practicals"),
        job_cards=_named(got, memo, ours, "job-cards"),
        duties=_named(got, memo, ours, "duties").get(got.profile_id),
        benches=_named(got, memo, ours, "benches"),
        calculators=_named(got, memo, ours, "calculators"),
        place=course.place,
        unfinished=course.draft,
    )
