"""The options of ``journeybook certify``, gathered: a class with its sitting, or a single attempt and who vouches."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from functools import wraps
from pathlib import Path
from typing import Any

import click

from journeybook.commands.passphrase import PASSPHRASE_FD
from journeybook.commands.project_option import CONFIG
from journeybook.commands.typed import DAY
from journeybook.marking.canonical import SIZE_CAP
from journeybook.one_attempt import Word, sitting_of_one
from journeybook.paper.press import SIZES
from journeybook.sittings.class_file import composed
from journeybook.sittings.sitting import Sitting

_ONE_ALONE = (
    "vouched_by", "identity", "fingerprint", "observations", "countersigned_by", "countersigned_on", "on",
    "attempt_number", "person", "trainer", "trained",
)  # fmt: skip
"""What only a single attempt takes; a sitting holds it."""
_FILE = click.Path(path_type=Path, exists=True, dir_okay=False)


@dataclass(frozen=True, kw_only=True)
class CertifyOptions:
    """What was asked for."""

    sitting: Path | None
    attempt: Path | None
    key: Path
    into: Path
    only: tuple[str, ...]
    """Tickets, as they were typed."""
    again: tuple[str, ...]
    self_recorded: bool
    employer: str
    paper: str
    record_only: bool
    as_json: bool
    config_file: Path
    passphrase_fd: int | None
    vouched: Word | None
    observations: tuple[Path, ...]
    countersigned: Word | None
    attempt_number: int
    person: str
    trainer: str
    trained: date | None

    def wants(self, ticket: str) -> bool:
        """Whether somebody is among those who were asked for."""
        return not (self.only or self.again) or ticket in (*self.only, *self.again)

    def sitting_of_attempt(self) -> Sitting | None:
        """The single attempt as a sitting of one; None where a class was named. Raises SittingRefused."""
        if self.attempt is None:
            return None
        return sitting_of_one(
            _read(self.attempt),
            source=self.attempt.name,
            number=self.attempt_number,
            vouched=self.vouched,
            seen=[(path.name, _read(path)) for path in self.observations],
            countersigned=self.countersigned,
            person=self.person,
            trainer=self.trainer,
            trained=self.trained,
        )


def certify_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """Give the command its options, which come to it as one ``CertifyOptions``."""

    @wraps(command)
    def gathered(**given: Any) -> Any:
        return command(_gathered(given))

    for option in reversed(_OPTIONS):
        gathered = option(gathered)
    return gathered


_OPTIONS: tuple[Callable[[Any], Any], ...] = (
    click.argument("sitting", metavar="[SITTING]", required=False, type=_FILE),
    click.option("--key", required=True, type=_FILE, help="The key file of who signs."),
    click.option(
        "--into",
        required=True,
        type=click.Path(path_type=Path),
        help="The folder for the certificates; outside the site and of version control.",
    ),
    click.option("--only", metavar="TICKET", multiple=True, help="Only this person; may be given several times."),
    click.option(
        "--again",
        metavar="TICKET",
        multiple=True,
        help="Issue anew to this person, whose certificate is withdrawn; may be given several times.",
    ),
    click.option(
        "--self-recorded",
        is_flag=True,
        help="Also to those whom nobody vouched for; their certificates say so.",
    ),
    click.option("--employer", default="", help="Whose people they are; the course's issuer unless given."),
    click.option("--paper", type=click.Choice(SIZES), default=SIZES[0], show_default=True, help="Size of the paper."),
    click.option("--record-only", is_flag=True, help="Signed records alone, without papers."),
    click.option(
        "--attempt", type=_FILE, help="A single saved attempt of the open check, in place of a sitting."
    ),
    click.option("--vouched-by", help="With --attempt: who confirms who took the check."),
    click.option("--identity", help="With --vouched-by: how it was checked who the person was."),
    click.option("--on", type=DAY, help="With --vouched-by: the day on which it was confirmed; today unless given."),
    click.option("--fingerprint", help="With --vouched-by: the fingerprint on their paper."),
    click.option(
        "--observation", "observations", multiple=True, type=_FILE,
        help="With --attempt: a saved observation of the person; may be given several times.",
    ),
    click.option("--countersigned-by", help="With --observation: who confirms that its paper is signed."),
    click.option("--countersigned-on", type=DAY, help="The day of that; today unless given."),
    click.option(
        "--attempt-number", type=click.IntRange(1, 999),
        help="With --attempt: which attempt it was, as the employer's records count; 1 unless given.",
    ),
    click.option(
        "--person", help="With --attempt: the person's number; that of their card unless given.",
    ),
    click.option("--trainer", help="With --attempt: who gave the training."),
    click.option("--trained", type=DAY, help="With --attempt: the last day of the training."),
    PASSPHRASE_FD,
    CONFIG,
    click.option("--json", "as_json", is_flag=True, help="For programs: a list of what became of each."),
)  # fmt: skip


def _gathered(given: dict[str, Any]) -> CertifyOptions:
    if (given["sitting"] is None) == (given["attempt"] is None):
        raise click.UsageError("Name the sitting of a class, or one attempt with --attempt.")
    if given["sitting"] is not None:
        for name in _ONE_ALONE:
            if given[name]:
                option = "observation" if name == "observations" else name.replace("_", "-")
                raise click.UsageError(
                    f"--{option} belongs to --attempt; of a class, the sitting says it (`journeybook vouch`)."
                )
    elif given["only"] or given["again"]:
        raise click.UsageError("--only and --again belong to a class; an attempt is of one person.")
    return CertifyOptions(
        **{name: given[name] for name in (
            "sitting", "attempt", "key", "into", "self_recorded", "paper", "record_only", "as_json",
            "config_file", "passphrase_fd", "observations",
        )},
        only=given["only"],
        again=given["again"],
        employer=composed(given["employer"]),
        vouched=_vouched(given),
        countersigned=_countersigned(given),
        attempt_number=given["attempt_number"] or 1,
        person=composed(given["person"] or ""),
        trainer=composed(given["trainer"] or ""),
        trained=_day(given["trained"]),
    )  # fmt: skip


def _vouched(given: dict[str, Any]) -> Word | None:
    with_it = ("identity", "fingerprint", "on")
    if not composed(given["vouched_by"] or ""):
        for name in with_it:
            if given[name]:
                raise click.UsageError(f"--{name} needs --vouched-by: who confirms it?")
        return None
    for name in with_it[:2]:
        if not composed(given[name] or ""):
            raise click.UsageError(
                f"--vouched-by needs --{name}: a supervised check says how identity was checked, and is bound to the "
                "fingerprint on paper."
            )
    return Word(
        by=composed(given["vouched_by"]),
        on=_day(given["on"]) or _today(),
        identity=composed(given["identity"]),
        fingerprint=given["fingerprint"],
    )


def _countersigned(given: dict[str, Any]) -> Word | None:
    if not composed(given["countersigned_by"] or ""):
        if given["countersigned_on"]:
            raise click.UsageError("--countersigned-on needs --countersigned-by: who confirms it?")
        return None
    if not given["observations"]:
        raise click.UsageError("--countersigned-by needs --observation: what is countersigned?")
    return Word(by=composed(given["countersigned_by"]), on=_day(given["countersigned_on"]) or _today())


def _day(given: datetime | None) -> date | None:
    if given is None:
        return None
    if given.date() > _today():
        raise click.UsageError(f"{given.date()} is still to come.")
    return given.date()


def _today() -> date:
    return date.today()


def _read(path: Path) -> bytes:
    with path.open("rb") as file:
        # One byte past the cap is enough to see that a file is too large.
        return file.read(SIZE_CAP + 1)
