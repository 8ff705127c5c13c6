"""Which texts are alike, found anew at little cost when a few of very many have changed.

Texts are compared by their groups of three letters: alike means that two share 60 per cent of the groups that either
has (Jaccard index). Which pairs are worth comparing is found by their words: two sets of words that are so alike share
several of their rarest members (prefix filtering: Chaudhuri, Ganti and Kaushik 2006, ICDE; cited from memory). How
rare a word is, is counted in powers of two only, so that one more or less seldom changes which words of a text are
its rarest. A word is remembered for the last texts that hold it only, so that the work grows with the texts and not
with their square.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import chain
from typing import Generic, TypeVar

ALIKE_PERCENT = 60
_SHARED = 3
"""How many of the rarest words two texts must share to be compared; fewer where a text has few words."""
_WORDS_PERCENT = 40
"""How many of its words a text must share besides; inflected words are not shared, though their letters are."""
_REMEMBERED = 16
"""For how many texts a word is remembered."""
_FEW = 8
"""Where more than one text in so many is new, beginning again costs no more than catching up."""

Key = TypeVar("Key", bound=Hashable)
Source = TypeVar("Source")


def groups_of_three(plain: str) -> frozenset[str]:
    """The groups of three letters of a text without signs."""
    return frozenset([plain[at : at + 3] for at in range(len(plain) - 2)])


@dataclass(eq=False)
class _Text:
    """One text, and what of it can be compared."""

    source: object
    plain: str
    words: frozenset[str]
    rarest: frozenset[str] = field(default=frozenset())

    @cached_property
    def groups(self) -> frozenset[str]:
        return groups_of_three(self.plain)

    @property
    def least(self) -> int:
        """How many words a text of as many words shares at least with one that is alike."""
        return -(-len(self.words) * ALIKE_PERCENT // 100)

    @property
    def needed(self) -> int:
        return min(_SHARED, self.least)


class AlikeTexts(Generic[Key, Source]):
    """The texts of one course and what was found among them. ``plain`` gives a text without case and signs.

    What is found depends on the texts and their order alone, not on what was there before.
    """

    def __init__(self, plain: Callable[[Source], str]) -> None:
        self._plain = plain
        self._texts: dict[Key, _Text] = {}
        """In the order of the course."""
        self._place: dict[Key, int] = {}
        """The number of each text in that order."""
        self._common: Counter[str] = Counter()
        """In how many texts each word stands."""
        self._holders: dict[str, list[Key]] = {}
        """The texts that have a word among their rarest, in the order of the course."""
        self._alike: dict[Key, Key] = {}
        """Each text that is alike to an earlier one -> the earlier one that is most alike."""

    def pairs(self, sources: Mapping[Key, Source]) -> list[tuple[Key, Key]]:
        """For each text that is alike to an earlier one, the pair (earlier, it) that is most alike.

        A source that is the very object of the last time is not read again.
        """
        changed = {key for key, source in sources.items() if not self._is_as_it_was(key, source)}
        changed.update(self._texts.keys() - sources.keys())
        kept = [key for key in sources if key not in changed]
        if len(changed) * _FEW > len(sources) or kept != [key for key in self._texts if key not in changed]:
            self._begin_again(sources)
        elif changed:
            self._catch_up(sources, changed)
        return [(self._alike[key], key) for key in sources if key in self._alike]

    def _is_as_it_was(self, key: Key, source: Source) -> bool:
        known = self._texts.get(key)
        if known is None:
            return False
        if known.source is not source:
            known.source = source
            return known.plain == self._plain(source)
        return True

    def _read(self, source: Source) -> _Text:
        plain = self._plain(source)
        return _Text(source, plain, frozenset(plain.split()))

    def _begin_again(self, sources: Mapping[Key, Source]) -> None:
        self._texts = {key: self._read(source) for key, source in sources.items()}
        self._place = {key: number for number, key in enumerate(sources)}
        self._common = Counter(chain.from_iterable([text.words for text in self._texts.values()]))
        self._holders, self._alike = {}, {}
        rank = {word: (count.bit_length(), word) for word, count in self._common.items()}
        for key, text in self._texts.items():
            text.rarest = _rarest(text, rank)
            lists = [self._holders.setdefault(word, []) for word in text.rarest]
            self._note(key, text, [holders[-_REMEMBERED:] for holders in lists])
            for holders in lists:
                holders.append(key)

    def _catch_up(self, sources: Mapping[Key, Source], changed: set[Key]) -> None:
        old = [self._texts[key] for key in changed if key in self._texts]
        new = {key: self._read(sources[key]) for key in changed if key in sources}
        touched = frozenset[str]().union(*(text.words for text in (*old, *new.values())))
        was = {word: self._common[word].bit_length() for word in touched}
        again: set[Key] = set()
        for key in changed:
            self._alike.pop(key, None)
            if key in self._texts:
                self._leave(key, self._texts[key].rarest, again)
        for text in old:
            self._common.subtract(text.words)
        for text in new.values():
            self._common.update(text.words)
        self._texts = {key: new[key] if key in new else self._texts[key] for key in sources}
        self._place = {key: number for number, key in enumerate(sources)}
        moved = {word for word in touched if was[word] != self._common[word].bit_length()}
        for key, text in self._texts.items():
            if key in new or not moved.isdisjoint(text.words):
                self._rank_again(key, text, again)
        for word in touched:
            if not self._common[word]:
                del self._common[word]
        for key in again & self._texts.keys():
            text = self._texts[key]
            self._alike.pop(key, None)
            self._note(key, text, [self._before(key, word) for word in text.rarest])

    def _rank_again(self, key: Key, text: _Text, again: set[Key]) -> None:
        rarest = _rarest(text, {word: (self._common[word].bit_length(), word) for word in text.words})
        if rarest != text.rarest:
            self._leave(key, text.rarest - rarest, again)
            self._join(key, rarest - text.rarest, again)
            text.rarest = rarest
            again.add(key)

    def _leave(self, key: Key, words: Iterable[str], again: set[Key]) -> None:
        """Take a text from the holders of words; those that may have remembered it are looked at again."""
        for word in words:
            holders = self._holders[word]
            at = holders.index(key)
            del holders[at]
            again.update(holders[at : at + _REMEMBERED])
            if not holders:
                del self._holders[word]

    def _join(self, key: Key, words: Iterable[str], again: set[Key]) -> None:
        for word in words:
            holders = self._holders.setdefault(word, [])
            at = self._at(key, holders)
            again.update(holders[at : at + _REMEMBERED])
            holders.insert(at, key)

    def _before(self, key: Key, word: str) -> list[Key]:
        holders = self._holders[word]
        at = self._at(key, holders)
        return holders[max(0, at - _REMEMBERED) : at]

    def _at(self, key: Key, holders: list[Key]) -> int:
        return bisect_left(holders, self._place[key], key=self._place.__getitem__)

    def _note(self, key: Key, text: _Text, remembered: Iterable[list[Key]]) -> None:
        """Find the earlier text that is most alike; ``remembered`` are the last holders of each of its rarest words."""
        most, share = None, (0, 1)
        needed, least = text.needed, _WORDS_PERCENT * len(text.words)
        met = Counter(chain.from_iterable(remembered))
        candidates = [earlier for earlier, times in met.items() if times >= needed]
        for earlier in sorted(candidates, key=self._place.__getitem__):  # of equals the first stands
            other = self._texts[earlier]
            if len(text.words & other.words) * 100 < least:
                continue
            shared = len(text.groups & other.groups)
            either = len(text.groups) + len(other.groups) - shared
            if shared * 100 >= ALIKE_PERCENT * either and shared * share[1] > share[0] * either:
                most, share = earlier, (shared, either)
        if most is not None:
            self._alike[key] = most


def _rarest(text: _Text, rank: Mapping[str, tuple[int, str]]) -> frozenset[str]:
    most = len(text.words) - text.least + text.needed
    return frozenset(sorted(text.words, key=rank.__getitem__)[:most])
