"""Bytes of a course's files to ``Gathered``: which table reads which file, and which names it holds."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import partial
from pathlib import PurePosixPath
from typing import Any

from journeybook.content.file_read import FileRead, read_file
from journeybook.content.formats.blueprint import BLUEPRINT
from journeybook.content.formats.course import COURSE
from journeybook.content.formats.figure import FIGURE, FigureFile
from journeybook.content.formats.lesson import LESSON, MODULE
from journeybook.content.formats.named import NAMED_FILES
from journeybook.content.formats.plan_files import BenchLineFile, ChartFile
from journeybook.content.formats.questions import BANK
from journeybook.content.formats.sheets import KIT, PROFILE, SOURCES, WORDS
from journeybook.content.gathered import Gathered, ModuleRead, Naming, UnusedProfile
from journeybook.content.layout import Layout, ModuleFolder
from journeybook.content.load_memo import LoadMemo
from journeybook.content.model import Figure, Lesson
from journeybook.content.plans.as_words import as_commonmark
from journeybook.content.plans.values import Known
from journeybook.content.plans.worked_out import work_out_plan
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.plans.every_kind import Plan, draw_plan
from journeybook.drawing.svg_check import check_svg
from journeybook.source.near import nearest
from journeybook.source.shapes import FileShape, Record


def gather(
    files: Mapping[str, bytes],
    unread: Iterable[str],
    layout: Layout,
    course_id: str,
    profile_id: str,
    *,
    memo: LoadMemo | None = None,
) -> tuple[Gathered, list[Problem]]:
    """Read every file of the layout.

    ``unread`` are paths that are there but could not be read from the disk; ``memo`` knows what came of files that
    are as they were.
    """
    cannot = {*unread, *layout.unread}
    gathered = Gathered(course_id=course_id, profile_id=profile_id, layout=layout)
    reader = _Reader(files, cannot, gathered, memo or LoadMemo())
    if any(path.startswith(f"{layout.course_dir}/modules/") for path in layout.unread):
        reader.gathered.names[Naming.LESSON].whole = False
    reader.read_everything()
    return reader.gathered, reader.problems


def _figure(name: str, file: FigureFile, svg: str) -> Figure:
    return Figure(id=name, title=file.title, alt=file.alt, caption=file.caption, svg=svg, place=file.place)


def _drawn_figure(name: str, file: FigureFile, plan: Plan) -> Figure:
    drawn = draw_plan(plan)
    svg, problems = check_svg(drawn.svg.encode(), file.place.file, name)
    assert svg is not None, problems
    # The words are read as CommonMark later on, as an author's would be; nothing in them is meant so.
    alt = file.alt or as_commonmark(drawn.words)
    lines = file.draw.lines if isinstance(file.draw, ChartFile) else ()
    return Figure(
        id=name,
        title=file.title,
        alt=alt,
        caption=file.caption,
        svg=svg,
        drawn_from=tuple(line.bench for line in lines if isinstance(line, BenchLineFile)),
        place=file.place,
    )


class _Reader:
    def __init__(
        self, files: Mapping[str, bytes], unread: set[str], gathered: Gathered, memo: LoadMemo
    ) -> None:
        self.files = files
        self.unread = unread
        self.gathered = gathered
        self.memo = memo
        self.problems: list[Problem] = []

    def read_everything(self) -> None:
        layout, got = self.gathered.layout, self.gathered
        got.course = self._read_top(
            "course.yml", COURSE, outcomes=Naming.OUTCOME, **{"critical-facts": Naming.FACT}
        )
        got.draft = got.course is not None and got.course.draft
        got.kit = self._read_top("kit.yml", KIT, values=Naming.KIT)
        got.sources = self._read_top("sources.yml", SOURCES, sources=Naming.SOURCE)
        got.names[Naming.SOURCE].known.add("kit")
        if "words.yml" in layout.top:
            got.words = self._read_top("words.yml", WORDS, words=Naming.WORD)
        got.profile = self._read_profile()
        for folder in layout.modules:
            got.modules.append(self._read_module(folder))
        if not layout.modules:
            got.names[Naming.LESSON].whole = False
            path = f"{layout.course_dir}/modules"
            self._fault(
                "C021",
                path,
                "The course has no modules.",
                f"Add a folder such as `{path}/10-why` with module.yml.",
            )
        self._read_figures()
        self._read_named()
        self._draw_figures()
        for bank, path in layout.banks.items():
            file = self._read(path, BANK, {"questions": Naming.QUESTION}, {"question": {"bank": bank}})
            if file is not None:
                got.banks[bank] = file
        if layout.blueprint:
            got.blueprint = self._read(layout.blueprint, BLUEPRINT, {})

    def _fault(self, code: str, path: str, message: str, mend: str) -> None:
        self.problems.append(fault(code, whole_file(path), message, mend))

    def _read(
        self,
        path: str,
        shape: FileShape,
        names: Mapping[str, Naming],
        given: Mapping[str, Mapping[str, Any]] | None = None,
    ) -> Any:
        """The file's object, or None after its problems are noted.

        ``names``: key of a list -> what its ids name.
        """
        file = self._file(path, shape, given)
        if file is None:
            for naming in names.values():
                self.gathered.names[naming].whole = False
            return None
        for key, naming in names.items():
            self.gathered.names[naming].known.update(file.ids(key))
            if not file.has_list(key):
                self.gathered.names[naming].whole = False
        self.gathered.files.append(file)
        return file.value

    def _file(
        self, path: str, shape: FileShape, given: Mapping[str, Mapping[str, Any]] | None = None
    ) -> FileRead | None:
        """The file as read, its problems noted; None where its text could not be read to its end."""
        if path in self.unread:
            return None
        data = self.files[path]
        file = self.memo.same((path, shape), (data, given), partial(read_file, data, path, shape, given))
        self.problems.extend(file.problems)
        return None if file.root is None else file

    def _read_top(self, name: str, shape: Record, **names: Naming) -> Any:
        path = self.gathered.layout.top.get(name)
        if path is not None:
            return self._read(path, shape, names)
        for naming in names.values():
            self.gathered.names[naming].whole = False
        self._fault(
            "C021",
            f"{self.gathered.layout.course_dir}/{name}",
            f"The course has no {name}.",
            f"Add {name} to {self.gathered.layout.course_dir}/, starting with "
            f"{' and '.join(f'`{one.key}:`' for one in shape.fields[:2])}.",
        )
        return None

    def _read_profile(self) -> Any:
        layout, wanted = self.gathered.layout, self.gathered.profile_id
        chosen = None
        for name, path in layout.profiles.items():
            if name == wanted:
                chosen = self._read(path, PROFILE, {"values": Naming.PROFILE})
            else:
                self._read_unused_profile(name, path)
        if wanted not in layout.profiles:
            self.gathered.names[Naming.PROFILE].whole = False
            near = nearest(wanted, layout.profiles) or tuple(sorted(layout.profiles))[:8]
            if len(near) == 1:
                mend = f"Write `profile: {near[0]}` in mkdocs.yml, or add that file."
            elif near:
                mend = f"Write `profile:` with one of {', '.join(near)} in mkdocs.yml, or add that file."
            else:
                mend = "Add that file with `title:` and `values:`."
            self._fault(
                "C028",
                f"{layout.course_dir}/profiles/{wanted}.yml",
                f"The course has no profile called `{wanted}`.",
                mend,
            )
        return chosen

    def _read_unused_profile(self, name: str, path: str) -> None:
        """Read a profile that this build is not for: another country's must not rot unseen."""
        file = self._file(path, PROFILE)
        if file is not None and file.value is not None:
            self.gathered.unused_profiles.append(
                UnusedProfile(id=name, file=file.value, origins=file.origins)
            )

    def _read_module(self, folder: ModuleFolder) -> ModuleRead:
        file = None
        path = f"{folder.path}/module.yml"
        if path in self.files or path in self.unread:
            file = self._read(path, MODULE, {})
        else:
            self._fault(
                "C021",
                path,
                f"The module folder {folder.path.rsplit('/', 1)[-1]} has no module.yml.",
                "Add module.yml to it, with `title:` and `summary:`.",
            )
        if not folder.lessons:
            self._fault(
                "L003",
                path,
                f"The module {folder.id} has no lessons.",
                "Add a lesson file such as `10-first.yml` beside module.yml, or take the folder out.",
            )
        lessons = [lesson for one in folder.lessons if (lesson := self._read_lesson(one)) is not None]
        return ModuleRead(folder=folder, file=file, lessons=lessons)

    def _read_lesson(self, path: str) -> Lesson | None:
        names = self.gathered.names[Naming.LESSON]
        file = self._file(path, LESSON)
        if file is None:
            names.whole = False
            return None
        name = file.root.get("id") if isinstance(file.root, dict) else None
        if isinstance(name, str):
            names.known.add(name)
        else:
            names.whole = False
        self.gathered.files.append(file)
        return file.value if isinstance(file.value, Lesson) else None

    def _read_named(self) -> None:
        for folder, (shape, naming) in NAMED_FILES.items():
            for name, path in self.gathered.layout.named[folder].items():
                self.gathered.names[naming].known.add(name)
                ids = {"steps": Naming.STEP} if folder == "practicals" else {}
                thing = self._read(path, shape, ids, {shape.noun: {"id": name}})
                if thing is not None:
                    self.gathered.named[folder][name] = thing

    def _read_figures(self) -> None:
        layout, got = self.gathered.layout, self.gathered
        got.names[Naming.FIGURE].known.update(layout.figures)
        for name, path in layout.figures.items():
            drawing = layout.drawings.get(name)
            file = self._read(path, FIGURE, {})
            if drawing is None and path in self.unread:
                continue
            if file is not None and file.draw is not None:
                if drawing is not None:
                    self.problems.append(
                        fault(
                            "F026",
                            got.files[-1].place(file, "draw"),
                            f"The figure {name} has `draw`, and {name}.svg lies beside it.",
                            f"Take `draw` out, or the file {name}.svg.",
                            (whole_file(drawing),),
                        )
                    )
                continue
            if drawing is None and file is None:
                continue
            if drawing is None:
                self._fault(
                    "F001",
                    path,
                    f"The figure {name} has no drawing beside it.",
                    f"Add `{name}.svg` to the same folder or `draw:` to {name}.yml, or take {name}.yml out.",
                )
                continue
            if drawing in self.unread:
                continue
            data = self.files[drawing]
            svg, problems = self.memo.same(drawing, (data, name), partial(check_svg, data, drawing, name))
            self.problems.extend(problems)
            if svg is not None and file is not None:
                got.figures[name] = self.memo.same(
                    (path, drawing), (file, svg), partial(_figure, name, file, svg)
                )
        for name, drawing in layout.drawings.items():
            if name not in layout.figures and drawing not in self.unread:
                self._fault(
                    "F002",
                    drawing,
                    f"The drawing {name}.svg has no {name}.yml beside it, so nothing says what it shows.",
                    f"Add `{name}.yml` with `title:` and `alt:`, or take the drawing out.",
                )

    def _draw_figures(self) -> None:
        """Make the drawings that stand in their files as data; they show values of the sheets."""
        got = self.gathered
        known = Known(
            got.sheets.values,
            {one.id: one.word for one in got.words.words} if got.words else {},
            got.named["benches"],
        )
        for read in got.files:
            for file in read.every(FigureFile):
                if file.draw is None or read.value is not file:
                    continue
                plan, problems = read.worked_out(work_out_plan, known)
                self.problems.extend(problems)
                if plan is not None:
                    name = PurePosixPath(file.place.file).stem
                    got.figures[name] = self.memo.same(
                        (file.place.file, "drawn"), (file, plan), partial(_drawn_figure, name, file, plan)
                    )
