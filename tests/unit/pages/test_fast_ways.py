"""The short cuts that make a build fast change no byte: with each of them barred the site is the same."""

from __future__ import annotations

import posixpath

import pytest
from drill_pages import drill_course
from hypothesis import given
from hypothesis import strategies as st

from journeybook.content import markup
from journeybook.content.wording import Wording
from journeybook.marking import canonical
from journeybook.marking.compiled import compile_course
from journeybook.pages import links
from journeybook.pages.site import Ready, Site


def whole_site() -> dict[str, bytes]:
    course = drill_course()
    site = Site([Ready(course=course, compiled=compile_course(course))], name="Quillon Basin Works")
    pages = {path: site.page(path)[1] for path in site.paths}
    return pages | {path: make() for path, make in site.files.items()}


@pytest.mark.parametrize(
    ("owner", "name", "slow_way"),
    [
        (markup, "_is_plain", lambda _text: False),
        (canonical, "_is_usual", lambda _value: False),
        (links, "_relative", posixpath.relpath),
        (
            Wording,
            "block",
            lambda self, text, slug="", **more: Wording(self.course)._block(text, slug, **more),
        ),
    ],
)
def test_the_site_is_the_same_the_slow_way(
    monkeypatch: pytest.MonkeyPatch, owner: object, name: str, slow_way: object
) -> None:
    fast = whole_site()
    if owner is Wording:
        monkeypatch.setattr(Wording, "_block", Wording.block, raising=False)
    monkeypatch.setattr(owner, name, slow_way)
    assert whole_site() == fast


@given(st.text(st.sampled_from("ab1 .)-+#>=|\"'&<*_`~[]{}\\\n\r\t!:é\u00a0\u2028"), max_size=14))
def test_a_line_of_words_reads_as_commonmark_reads_it(text: str) -> None:
    tokens = markup._MARKDOWN.parse(text, {"slug": "", "taken": set()})
    slow = markup._MARKDOWN.renderer.render(tokens, markup._MARKDOWN.options, {"slug": "", "taken": set()})
    assert markup.render_block_and_plain(text) == (slow, markup._plain_of(tokens))
    assert markup.render_inline(text) == markup._MARKDOWN.renderInline(text)


def test_two_blocks_with_the_same_words_keep_their_own_headings() -> None:
    wording = Wording(drill_course())
    taken: set[str] = set()
    text = "## The guard\n\nIt *telescopes*.\n"
    assert 'id="x-the-guard"' in wording.block(text, "x", taken=taken)
    assert 'id="x-the-guard-2"' in wording.block(text, "x", taken=taken)
    assert wording.plain(text) == "The guard\nIt telescopes."
