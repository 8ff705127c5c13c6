"""What a place of a sitting has earned: the facts of a certificate, or every reason why there is none.

Nothing is taken from an earlier marking: the attempt is marked again from its raw answers, and each observation is
held against the course again. Whether the course is a release, and who signs, is for others to decide.

1. Only an attempt that is in order, belongs to the place and has passed earns anything.
2. The check is *supervised* only where somebody else has vouched for the person and the fingerprint.
3. The practical is *observed* only where of every practical of the course the last countersigned observation says
   competent. Anything less leaves the knowledge check, and is said.
4. Training is due again so many months after the earliest of the training, the check and the oldest observation that
   counts (common practice, no source: the older proof decides), and nothing is issued that has run out already.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from journeybook.marking import attempt as attempts
from journeybook.marking.canonical import NotCanonical
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.kind import in_questions
from journeybook.sittings.class_file import same_name
from journeybook.sittings.inbox import Course
from journeybook.sittings.months import months_later
from journeybook.sittings.practicals_seen import PracticalSeen, practicals_seen
from journeybook.sittings.sitting import Place, Received, Sitting, why_not

MOST_OBSERVATIONS = 8
"""As many as a certificate names (``proof/certificate_shape.py``)."""
_BOTH = "{check} (check); {practical} (practical)"
_LONGEST_NAMES = 200
"""Characters of the assessors' names together, as a certificate holds them."""


@dataclass(frozen=True, kw_only=True)
class Shortfall:
    """One reason why there is no certificate."""

    why: str
    """A sentence."""
    mend: str
    """What to do, a sentence."""


@dataclass(frozen=True, kw_only=True)
class Claim:
    """What was earned; the fields are those of a certificate."""

    marks: int
    of: int
    cut: int
    must_pass: tuple[int, int]
    check: str
    """``self-recorded`` or ``supervised``."""
    practical: str
    """``observed`` or ``not observed``."""
    identity: str
    assessor: str
    checked: date
    observed: date | None
    retrain_by: date
    fingerprint: str
    observations: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Earned:
    """What the records of one place come to."""

    passed: bool | None
    """None where there is nothing that can be marked."""
    claim: Claim | None
    """None where there is a reason against it."""
    reasons: tuple[Shortfall, ...] = ()
    notes: tuple[str, ...] = ()
    """Sentences that go with the claim: which practical is missing, what a clock says."""


def earned(
    sitting: Sitting,
    place: Place,
    course: Course,
    *,
    today: date,
    latest: date,
    self_recorded: bool = False,
) -> Earned:
    """Return what ``place`` has earned.

    ``course`` is the sitting's own. ``today`` is the day of issue (UTC), ``latest`` the latest day that has begun
    anywhere (``clock.latest_day``). ``self_recorded`` lets an attempt through that nobody has vouched for.
    """
    if place.attempt is None:
        return Earned(
            passed=None,
            claim=None,
            reasons=(Shortfall(
                why="Nothing has come back.",
                mend="Take in what was handed in with `journeybook mark FOLDER --sitting SITTING`.",
            ),),
        )  # fmt: skip
    reasons, result = _marked(sitting, place, place.attempt, course)
    if result is None:
        return Earned(passed=None, claim=None, reasons=reasons)
    passed = bool(result["passed"])
    reasons = (*reasons, *_not_passed(result, course.content, sitting.language))
    if place.vouched is None and not self_recorded:
        reasons = (*reasons, Shortfall(
            why="Nobody has vouched that this person sat the check.",
            mend="Compare the signed class sheet with `journeybook vouch`; or add --self-recorded, and the "
            "certificate says that nobody confirmed who answered.",
        ))  # fmt: skip
    if place.vouched is not None and same_name(place.vouched.by, place.name):
        reasons = (*reasons, Shortfall(
            why=f"{place.name} has vouched for {place.name}, and nobody vouches for themselves.",
            mend="Let somebody else compare the class sheet with `journeybook vouch`; of two people of one name, give "
            "the one who vouches a first name or a second.",
        ))  # fmt: skip
    # A zone may put the device's day one ahead of the person's.
    first, last = sitting.held_on - timedelta(days=1), max(sitting.held_on, latest)
    if place.vouched is not None and not first <= place.vouched.on <= last:
        reasons = (*reasons, Shortfall(
            why=f"The check of {sitting.held_on} is said to have been vouched for on {place.vouched.on}.",
            mend="Nobody vouches before it was held, nor on a day still to come: compare the class sheet again with "
            "`journeybook vouch --list`.",
        ))  # fmt: skip
    if sitting.held_on > latest:
        reasons = (*reasons, Shortfall(
            why=f"The check was held on {sitting.held_on}, which is still to come.",
            mend="Set the clock of this computer, or look into how the day came into the record.",
        ))  # fmt: skip
    seen = practicals_seen(place.observations, course.content, sitting.digest, sitting.language, latest)
    proved = _proved(seen)
    retrain_by = _retrain_by(sitting, proved, course.content)
    if retrain_by < today:
        reasons = (*reasons, Shortfall(
            why=f"Training has been due again since {retrain_by}.",
            mend="Train and check again; a certificate that has run out is not issued.",
        ))  # fmt: skip
    assessor = _assessors(place, proved)
    if len(assessor) > _LONGEST_NAMES:
        reasons = (*reasons, Shortfall(
            why=f"The names of those who supervised and observed have more than {_LONGEST_NAMES} characters together.",
            mend="Observe with fewer assessors, or vouch with a shorter form of the name.",
        ))  # fmt: skip
    notes = (*_clock(sitting, place.attempt), *_about_practicals(seen))
    if reasons:
        return Earned(passed=passed, claim=None, reasons=reasons, notes=notes)
    claim = Claim(
        marks=result["marks"],
        of=result["of"],
        cut=result["percent"],
        must_pass=(
            sum(gate["mark"] == 1000 for gate in result["must-pass"]),
            len(result["must-pass"]),
        ),
        check="supervised" if place.vouched else "self-recorded",
        practical="observed" if proved else "not observed",
        identity=place.vouched.identity if place.vouched else "",
        assessor=assessor,
        checked=sitting.held_on,
        observed=max((each.day for each in proved), default=None),
        retrain_by=retrain_by,
        fingerprint=place.attempt.fingerprint,
        observations=tuple(each.fingerprint for each in proved),
    )
    return Earned(passed=passed, claim=claim, notes=notes)


def _marked(
    sitting: Sitting, place: Place, held: Received, course: Course
) -> tuple[tuple[Shortfall, ...], Mapping[str, Any] | None]:
    """What keeps the attempt from being marked or from being this person's, and its result."""
    data = held.text.encode()
    if fingerprint(data) != held.fingerprint:
        return (Shortfall(
            why=f"The attempt held has the fingerprint {fingerprint(data)}, and {held.fingerprint} stands beside it.",
            mend="The file of the sitting was changed by hand; bring back an earlier copy.",
        ),), None  # fmt: skip
    try:
        stranger = why_not(sitting, attempts.read(data))
    except (NotCanonical, attempts.NotAnAttempt):
        stranger = ""  # Marking says what is wrong with it.
    if stranger:
        return (Shortfall(
            why=f"The attempt held is not that of {place.name}. {stranger}",
            mend="The file of the sitting was changed by hand; bring back an earlier copy.",
        ),), None  # fmt: skip
    remarked = course.marker.re_mark(data, held.source or "attempt")
    if remarked.result is None:
        return tuple(Shortfall(why=each.message, mend=each.mend) for each in remarked.problems), None
    return (), remarked.result


def _not_passed(result: Mapping[str, Any], content: Mapping[str, Any], language: str) -> Iterator[Shortfall]:
    if result["passed"]:
        return
    again = (
        "Go through it with the person, and let them sit the check again: another class file, and "
        "`journeybook seal --earlier` with this sitting, so that the attempts are counted."
    )
    texts = content["public"]["texts"]
    facts = texts.get(language, texts[content["languages"][0]])["critical-facts"]
    if result["marks"] * 100 < result["percent"] * result["of"]:
        got, of = in_questions(result["marks"]), in_questions(result["of"])
        yield Shortfall(
            why=f"Not yet passed: {got} of {of}, and {result['percent']} % are needed.", mend=again
        )
    for gate in result["must-pass"]:
        if gate["mark"] != 1000:
            yield Shortfall(
                why=f"Not yet passed: not right on what must be right: “{facts[gate['fact']]['text']}”",
                mend=again,
            )
    for question in result["critical"]:
        yield Shortfall(why=f"Not yet passed: a critical error ended the drill {question}.", mend=again)


def _proved(seen: tuple[PracticalSeen, ...]) -> tuple[PracticalSeen, ...]:
    """The observations that a certificate can stand on: of every practical one, or none at all."""
    complete = 0 < len(seen) <= MOST_OBSERVATIONS and all(each.is_competent for each in seen)
    return seen if complete else ()


def _retrain_by(sitting: Sitting, proved: tuple[PracticalSeen, ...], content: Mapping[str, Any]) -> date:
    """A year after the *previous training* is what rules count, so the earliest day that is recorded counts."""
    days = [sitting.held_on, *(each.day for each in proved)]
    oldest = min([*days, sitting.trained] if sitting.trained else days)
    return months_later(oldest, content["public"]["validity"]["months"])


def _assessors(place: Place, proved: tuple[PracticalSeen, ...]) -> str:
    """Whose word it is. Where one vouched for the check and another saw the practical, it says who did which."""
    vouched = place.vouched.by if place.vouched else ""
    observers = tuple(dict.fromkeys(each.assessor for each in proved))
    if not vouched or not observers or observers == (vouched,):
        return vouched or "; ".join(observers)
    return _BOTH.format(check=vouched, practical=", ".join(observers))


def told_apart(assessor: str) -> tuple[str, str]:
    """Return who vouched for the check and who saw the practical, by the text that a certificate holds.

    The second is empty where one name stands for both.
    """
    check, apart, practical = assessor.partition(" (check); ")
    return (check, practical.removesuffix(" (practical)")) if apart else (assessor, "")


def _clock(sitting: Sitting, held: Received) -> Iterator[str]:
    """A device whose day is more than one off: zones explain one."""
    ended = date.fromisoformat(attempts.read(held.text.encode()).ended[:10])
    if abs((ended - sitting.held_on).days) > 1:
        yield (
            f"By the clock of the device it was handed in on {ended}; the day of the sitting counts, "
            f"{sitting.held_on}."
        )


def _about_practicals(seen: tuple[PracticalSeen, ...]) -> Iterator[str]:
    if not seen:
        yield "The course has no practical, so none was observed."
    for each in seen:
        if each.why:
            yield f"Practical not observed: “{each.title}”. {each.why}"
    if len(seen) > MOST_OBSERVATIONS:
        yield (
            f"The course has {len(seen)} practicals, and a certificate can name {MOST_OBSERVATIONS} observations, "
            "so it says that the practical was not observed."
        )
