"""What is right in a setting question, in words: the places of the moved controls, runs of neighbours as from-to."""

from __future__ import annotations

from collections.abc import Sequence

from journeybook.content.bench_of import fan_of
from journeybook.content.fan_values import ShownControl
from journeybook.content.model import SettingQuestion
from journeybook.marking.keys import lower
from journeybook.marking.kind import Key
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.fan_bench_html import place_words
from journeybook.pages.words_catalogue import load_catalogue

_MOST = 8


def right_settings(desk: BenchDesk, question: SettingQuestion) -> list[str]:
    """A line for each run of accepted places along the last control; the rest in one line where there are many."""
    if question.trial is None:
        return []
    say = load_catalogue(desk.language)[0].gettext
    known = {one.control.of: one for one in fan_of(desk.course, question.trial.bench).controls}
    controls = [known[name] for name in question.trial.moves]
    key: Key = lower(question, desk.course)
    accepted = key["accepted"]
    lines = [_line(desk, controls, run, say("{first} to {last}")) for run in _runs(accepted)]
    if len(lines) > _MOST:
        more = say("and {n} more").format(n=len(lines) - _MOST)
        return [*lines[:_MOST], more]
    return lines


def _runs(accepted: Sequence[Sequence[int]]) -> list[tuple[Sequence[int], int]]:
    """Each run as its first combination and the last place of the last control."""
    runs: list[tuple[Sequence[int], int]] = []
    for places in accepted:
        if runs and list(runs[-1][0][:-1]) == list(places[:-1]) and runs[-1][1] == places[-1] - 1:
            runs[-1] = (runs[-1][0], places[-1])
        else:
            runs.append((places, places[-1]))
    return runs


def _line(
    desk: BenchDesk, controls: Sequence[ShownControl], run: tuple[Sequence[int], int], span: str
) -> str:
    first, last = run
    parts = []
    for number, (control, place) in enumerate(zip(controls, first, strict=True)):
        words = place_words(desk, control, place)
        if number == len(controls) - 1 and last != place:
            words = span.format(first=words, last=place_words(desk, control, last))
        parts.append(f"{desk.wording.plain(control.control.label)}: {words}")
    return "; ".join(parts)
