from __future__ import annotations

from xml.sax import saxutils

from hypothesis import given
from hypothesis import strategies as st

from journeybook.drawing.xml_text import escape, quoteattr

texts = st.text(alphabet="&<>\"'\n\r\t a;é")


@given(texts)
def test_texts_are_escaped_as_the_standard_library_does_it(text: str) -> None:
    assert escape(text) == saxutils.escape(text)
    assert quoteattr(text) == saxutils.quoteattr(text)
