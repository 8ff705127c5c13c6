"""How far two observers agree who watched the same practical without looking at each other's sheet.

Three figures stand together, because each alone misleads: the share of steps on which they agree, Cohen's kappa
(Cohen 1960), which collapses where nearly everything is "yes", and Gwet's AC1 (Gwet 2008, British Journal of
Mathematical and Statistical Psychology 61:29-48), which does not. Exact fractions, so that nothing is rounded before
it is shown.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from journeybook.marking.observation import SEEN, Observation


@dataclass(frozen=True, kw_only=True)
class Agreement:
    """What two observers made of the same steps."""

    steps: int
    agreed: Fraction
    """Share of steps on which both said the same."""
    kappa: Fraction | None
    """None where both said the same one word of every step: nothing is left to agree on beyond chance."""
    ac1: Fraction
    apart: tuple[tuple[str, str, str], ...]
    """(step, what the first saw, what the second saw) wherever they differ, prompting included."""


def agreement(
    first: Sequence[str], second: Sequence[str], categories: int
) -> tuple[Fraction, Fraction | None, Fraction]:
    """Return (share agreed, kappa, AC1) of two lists of words about the same things.

    ``categories`` counts the words that could have been used, used or not: AC1 depends on it. Raises ValueError for
    lists that are empty or of different length, and for fewer than two categories.
    """
    if len(first) != len(second) or not first or categories < 2:
        raise ValueError("two equally long lists that are not empty, and two categories at least")
    count = len(first)
    agreed = Fraction(sum(one == other for one, other in zip(first, second, strict=True)), count)
    ones, others = Counter(first), Counter(second)
    words = ones.keys() | others.keys()
    by_chance = sum(Fraction(ones[word] * others[word], count * count) for word in words)
    kappa = None if by_chance == 1 else (agreed - by_chance) / (1 - by_chance)
    means = [Fraction(ones[word] + others[word], 2 * count) for word in words]
    gwet = sum((mean * (1 - mean) for mean in means), Fraction(0)) / (categories - 1)
    return agreed, kappa, (agreed - gwet) / (1 - gwet)


def of_observations(first: Observation, second: Observation) -> Agreement:
    """Compare two records of one practical. Raises ValueError with a sentence where they cannot be compared."""
    for what, one, other in (
        ("practical", first.practical, second.practical),
        ("course", (first.course, first.digest), (second.course, second.digest)),
        ("person", first.person.id or first.person.name, second.person.id or second.person.name),
        ("day", first.held_on, second.held_on),
    ):
        if one != other:
            raise ValueError(f"The two records are not of the same {what}.")
    if first.assessor.name.casefold() == second.assessor.name.casefold():
        raise ValueError("Both records are by the same assessor.")
    if [step.step for step in first.steps] != [step.step for step in second.steps]:
        raise ValueError("The two records do not have the same steps.")
    pairs = list(zip(first.steps, second.steps, strict=True))
    agreed, kappa, ac1 = agreement(
        [one.seen for one, _ in pairs], [other.seen for _, other in pairs], len(SEEN)
    )
    return Agreement(
        steps=len(pairs),
        agreed=agreed,
        kappa=kappa,
        ac1=ac1,
        apart=tuple(
            (one.step, _words(one.seen, one.prompted), _words(other.seen, other.prompted))
            for one, other in pairs
            if (one.seen, one.prompted) != (other.seen, other.prompted)
        ),
    )


def _words(seen: str, prompted: bool) -> str:
    return seen.replace("-", " ") + (", prompted" if prompted else "")
