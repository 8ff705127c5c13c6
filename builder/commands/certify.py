"""``journeybook certify``: signed certificates for a class, or for a single attempt of the open check."""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import UTC, datetime
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journeybook.commands.by_hand import warn_of_names
from journeybook.commands.came_back import said, seat_of, sitting_of
from journeybook.commands.certify_options import CertifyOptions, certify_options
from journeybook.commands.certify_told import as_data, as_words
from journeybook.commands.key import plate_at
from journeybook.commands.passphrase import opened, refusals_said
from journeybook.commands.project_option import project_of, say
from journeybook.diagnostics.excerpt import visible
from journeybook.diagnostics.extras import to_install
from journeybook.project import Project
from journeybook.proof.private_place import published_by
from journeybook.released import NotReleased, released_course
from journeybook.signing import NoSigning, is_demo, no_signing
from journeybook.sittings.inbox import Course, course_from
from journeybook.sittings.sitting import Sitting, SittingRefused
from journeybook.trust_setting import trust_of

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    from journeybook.certifying_desk import Desk, Line
    from journeybook.proof.key_plate import KeyPlate
    from journeybook.proof.trust_list import TrustList


@click.command()
@certify_options
@click.pass_context
def certify(context: click.Context, options: CertifyOptions) -> None:
    """Issue signed certificates to the people of SITTING, or for one attempt of the open check.

    Each attempt is marked again; whoever has passed, and was vouched for, gets a PDF and its record in the folder.
    Running it again goes on where it stopped, and never issues a second one.
    """
    project = project_of(context, options.config_file, as_json=options.as_json)
    try:
        sitting = options.sitting_of_attempt()
    except SittingRefused as refused:
        raise said(refused) from refused
    one = sitting is not None
    if sitting is None:
        assert options.sitting is not None, "the options have seen to it that one of the two is there"
        sitting = sitting_of(options.sitting)
        options = replace(
            options,
            only=tuple(seat_of(sitting, given).ticket for given in options.only),
            again=tuple(seat_of(sitting, given).ticket for given in options.again),
        )
    course = _released(project, sitting, one=one)
    _refuse_place(options.into, project)
    trust = _trusted(context, project)
    with refusals_said():
        plate, _ = plate_at(options.key)
    now = datetime.now(UTC)
    _refuse_signing(no_signing(plate, trust, project.trust, course.content, now.date()))
    _prepare(options)
    from journeybook.certifying_desk import ISSUED, Desk

    desk = Desk(
        course=course, plate=plate, private=None, trust=trust, folder=options.into, now=now, size=options.paper,
        record_only=options.record_only, employer=options.employer, person=options.person,
        self_recorded=options.self_recorded or one,
    )  # fmt: skip
    if _has_work(desk, sitting, options):
        desk = replace(desk, private=_opened(options, plate))
    lines, broken = _issue(desk, sitting, options, one=one)
    text = as_data(lines) if options.as_json else as_words(lines, demo=is_demo(plate, trust))
    click.echo(text, nl=False)
    if not options.record_only:
        warn_of_names((line.name, line.person) for line in lines if line.outcome == ISSUED)
    if broken:
        raise click.ClickException(broken)
    context.exit(1 if any(line.needs_somebody for line in lines) else 0)


def _released(project: Project, sitting: Sitting, *, one: bool) -> Course:
    try:
        data = released_course(project, sitting.course, sitting.version, sitting.digest)
    except NotReleased as refused:
        raise click.ClickException(f"{visible(refused.message)} {refused.mend}") from refused
    course = course_from(data)
    assert course is not None, "there are bytes"
    if one and course.content["public"].get("sealed"):
        raise click.ClickException(
            f"The check of {sitting.course} {sitting.version} is sealed, so its attempts belong to a sitting. "
            "Take them in with `journeybook mark`, and name the sitting's file."
        )
    return course


def _refuse_place(folder: Path, project: Project) -> None:
    why = published_by(folder, (*project.watched(), project.root / "site"))
    if why:
        raise click.ClickException(
            f"Certificates are not written into {folder}: {why}, and they hold names and marks. "
            "Name a folder with --into that only the employer reads."
        )


def _trusted(context: click.Context, project: Project) -> TrustList | None:
    text, problems = trust_of(project)
    if problems:
        say(problems, project.root)
        context.exit(1)
    if not text:
        click.echo(
            "Warning: this site names no trust list, so every page that checks these certificates will say that the "
            "signer is unknown. Begin one with `journeybook trust start`, and write `trust:` into mkdocs.yml.",
            err=True,
        )
        return None
    from journeybook.proof.trust_list import read

    return read(text.encode())


def _refuse_signing(reasons: Iterable[NoSigning]) -> None:
    found = list(reasons)
    if found:
        raise click.ClickException("\n".join(f"{visible(each.why)} {each.mend}" for each in found))


def _prepare(options: CertifyOptions) -> None:
    """Have everything there before a passphrase is typed: the typesetter, and a folder that can be written to."""
    if not options.record_only:
        for package in ("typst", "segno"):
            if find_spec(package) is None:
                raise click.ClickException(
                    f"The papers need the package {package}, which is not installed; install it with: "
                    f"{to_install('print')}. Or issue signed records alone, with --record-only."
                )
    if options.into.exists() and not options.into.is_dir():
        raise click.ClickException(f"{options.into} is a file; name a folder with --into.")
    try:
        options.into.mkdir(mode=0o700, parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=options.into):
            pass
    except OSError as error:
        raise click.ClickException(
            f"Nothing can be written into {options.into}: {error.strerror}. Name another folder with --into."
        ) from error


def _has_work(desk: Desk, sitting: Sitting, options: CertifyOptions) -> bool:
    """Whether there is anything to sign, so that a passphrase is asked for."""
    return any(
        place.certificate is None or place.ticket in options.again
        for place in sitting.people
        if options.wants(place.ticket) and desk.earned(sitting, place).claim is not None
    )


def _opened(options: CertifyOptions, plate: KeyPlate) -> Ed25519PrivateKey:
    private = opened(options.key, options.passphrase_fd)
    with refusals_said():
        # The plate was read before the key was opened; only now it is known to be the key's.
        again, _ = plate_at(options.key, private)
    if again != plate:
        raise click.ClickException(f"{options.key} was changed meanwhile. Run this again.")
    return private


def _issue(desk: Desk, sitting: Sitting, options: CertifyOptions, *, one: bool) -> tuple[list[Line], str]:
    """The lines of everybody, and what broke the work off; empty where nothing did."""
    from journeybook.certifying import certified, certify_sitting
    from journeybook.paper.press import NoPress, NotSet

    lines: list[Line] = []
    try:
        if one:
            lines.append(certified(sitting, sitting.people[0], desk))
        else:
            assert options.sitting is not None, "it is a class"
            chosen = [place.ticket for place in sitting.people if options.wants(place.ticket)]
            steps = certify_sitting(options.sitting, desk, chosen, options.again)
            _with_progress(steps, len(chosen), lines.append)
    except SittingRefused as refused:
        return lines, f"{refused.message} {refused.mend} {_so_far(lines)}"
    except OSError as error:
        return lines, f"{error.filename or options.into}: {error.strerror or error}. {_so_far(lines)}"
    except (NoPress, NotSet) as error:
        return lines, f"{error} {_so_far(lines)}"
    return lines, ""


def _so_far(lines: list[Line]) -> str:
    return (
        f"The {len(lines)} above are done and noted. Mend that and run the same command again: it goes on from there."
        if lines
        else "Nothing is noted yet. Mend that and run the same command again: it goes on from there."
    )


def _with_progress(steps: Iterable[Line], length: int, take: Callable[[Line], None]) -> None:
    """Go through the steps, with a bar on a terminal's other output."""
    with click.progressbar(
        steps,
        length=length,
        label="Certificates",
        file=sys.stderr,
        hidden=not sys.stderr.isatty(),
    ) as bar:
        for line in bar:
            take(line)
