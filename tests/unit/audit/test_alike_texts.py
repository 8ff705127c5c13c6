from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from journeybook.audit.alike_texts import AlikeTexts

WORDS = [
    "the",
    "sleeve",
    "covers",
    "drill",
    "down",
    "to",
    "work",
    "knob",
    "collar",
    "locks",
    "before",
    "starting",
]
Texts = dict[int, list[str]]


def plain(words: list[str]) -> str:
    return " ".join(words)


def fresh(texts: Texts) -> list[tuple[int, int]]:
    return AlikeTexts[int, list[str]](plain).pairs(texts)


sentences = st.lists(st.sampled_from(WORDS), min_size=1, max_size=10)
edits = st.lists(
    st.tuples(st.sampled_from(["write", "remove", "again"]), st.integers(0, 59), sentences), max_size=12
)


@given(texts=st.lists(sentences, min_size=20, max_size=60), edits=edits)
def test_what_is_found_after_edits_is_what_is_found_at_once(
    texts: list[list[str]], edits: list[tuple[str, int, list[str]]]
) -> None:
    now: Texts = dict(enumerate(texts))
    alike = AlikeTexts[int, list[str]](plain)
    assert alike.pairs(now) == fresh(now)
    for what, key, words in edits:
        if what == "remove":
            now.pop(key, None)
        else:  # an equal text may come as another object
            now[key] = list(words if what == "write" else now.get(key, words))
        now = dict(sorted(now.items()))
        assert alike.pairs(now) == fresh(now)


def test_texts_in_another_order_are_compared_in_that_order() -> None:
    texts: Texts = {number: [*WORDS[:6], f"number{number}"] for number in range(20)}
    alike = AlikeTexts[int, list[str]](plain)
    assert alike.pairs(texts)[0] == (0, 1)
    backwards = dict(reversed(texts.items()))
    assert alike.pairs(backwards)[0] == (19, 18)


def test_only_what_is_new_is_read() -> None:
    read: list[str] = []

    def reading(words: list[str]) -> str:
        read.append(plain(words))
        return plain(words)

    texts: Texts = {number: [*WORDS[:5], f"number{number}"] for number in range(40)}
    alike = AlikeTexts[int, list[str]](reading)
    alike.pairs(texts)
    read.clear()
    alike.pairs({**texts, 17: ["quite", "another"]})
    assert set(read) == {"quite another"}
