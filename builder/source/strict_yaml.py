"""The strict reader: a YAML file becomes plain data with positions, or problems that say what to mend.

It reads the parser's events in one pass and refuses whatever makes two people, or two programs, read the same
file differently: implicit types, keys that stand twice, anchors, aliases, tags, second documents, texts that
swallow the next line or lose their end behind a ``#``. What can be read past is collected, so that one run
shows every fault.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from journeybook.diagnostics.problem import Problem
from journeybook.source.decoding import decode
from journeybook.source.document import Document
from journeybook.source.findings import Enough, SeenScalar
from journeybook.source.layout import ends_before_hash
from journeybook.source.lines import Lines
from journeybook.source.parse_errors import explain
from journeybook.source.plain_values import FIRST_OF_NOT_TEXT, UNSURE, is_text_key, plain_value
from journeybook.source.pure_parser import PureParser
from journeybook.source.refusals import Refusals

try:
    from yaml.cyaml import CParser  # type: ignore[attr-defined]  # imported there, not declared

    _Parser: Any = CParser
except ImportError:  # a PyYAML built without its C half
    _Parser = PureParser

MOST_DEEP = 40
"""Lists and mappings inside one another; a course needs seven."""


def read_document(data: bytes, file: str) -> tuple[Document | None, list[Problem]]:
    """Read the bytes of a file; ``file`` is the path that problems name.

    Returns the document and the problems. The document is ``None`` when reading could not go on to the end of
    the file, or there was nothing to read; then there is at least one fault. When there are faults beside a
    document, a refused value is its text, and of two equal keys the first stands. Never raises, whatever the
    bytes.
    """
    text, problems = decode(data, file)
    if problems:
        return None, problems
    lines = Lines(text)
    refusals = Refusals(file, lines)
    reader = _Reader(text, refusals)
    complete = False
    try:
        complete = reader.read()
    except Enough:
        pass
    except yaml.YAMLError as error:
        explain(error, refusals, reader.last_scalar)
    except (ValueError, OverflowError):
        # The pure parser turns an escape such as "\UFFFFFFFF" into a character without looking at it.
        refusals.unreadable(reader.last_scalar)
    problems = refusals.problems
    if not complete:
        return None, problems
    return Document(file=file, root=reader.root, lines=lines, starts=reader.starts), problems


class _Reader:
    """Builds the data from the events of one file."""

    def __init__(self, text: str, refusals: Refusals) -> None:
        self._text = text
        self._refusals = refusals
        self.root: object = None
        self.starts: dict[int, list[int]] = {}
        self._last: Any = None

    @property
    def last_scalar(self) -> SeenScalar | None:
        """The scalar before the place where the parser gave up: the cause is often there."""
        if self._last is None:
            return None
        start, end = self._last.start_mark, self._last.end_mark
        return SeenScalar(start.index, end.index, self._last.style or "", start.line != end.line)

    def read(self) -> bool:
        """Read to the end; False when there is no document to give back."""
        parser = _Parser(self._text)
        try:
            return self._read(iter(parser.get_event, None))
        finally:
            parser.dispose()

    def _read(self, events: Iterator[Any]) -> bool:
        text, refusals, starts = self._text, self._refusals, self.starts
        lost = ends_before_hash(text)
        has_tab = "\t" in text
        spans: list[tuple[int, int]] = []
        keys: dict[str, str] = {}  # keys seen to be text; one object for each spelling
        documents = 0
        stack: list[tuple[dict[str, object] | list[object] | None, list[int], str | None, bool]] = []
        mapping: dict[str, object] | None = None
        items: list[object] | None = None
        here: list[int] = []
        key: str | None = None  # None while a mapping waits for a key
        skip = False  # the value belongs to a key that stands twice

        for event in events:
            kind = type(event)
            value: object
            if kind is ScalarEvent:
                self._last = event
                written = event.value
                index = event.start_mark.index
                value = written
                style = event.style
                if style:
                    # A text that stands between its quotes as it reads has no escapes and is on one line. Asking for
                    # its end, and looking for what an escape may hide, is then saved.
                    if style == '"' and text.startswith(f'"{written}"', index):
                        end = index + len(written) + 2
                    else:
                        end = event.end_mark.index
                        if text[index] not in "'\"|>":
                            refusals.property_of(index)
                        elif style == '"' or style == "'":
                            if event.start_mark.line != event.end_mark.line:
                                refusals.check_quoted_lines(index, end)
                            if style == '"':
                                refusals.check_escapes(index, end, written)
                    if has_tab:
                        spans.append((index, end))
                    if mapping is not None and key is None:
                        key = keys.get(written, written)
                        skip = key in mapping
                        if skip:
                            refusals.twice(index, end, written, mapping, here)
                        else:
                            here.append(index)
                        continue
                else:
                    if written and text.startswith(written, index):  # likewise: on one line, no anchor or tag
                        end = index + len(written)
                    else:
                        end = event.end_mark.index
                        if event.start_mark.line != event.end_mark.line:
                            refusals.runs_on(index, end, written)
                        elif end - index != len(written):
                            refusals.property_of(index)
                    if lost and end in lost:
                        refusals.lost_behind_hash(end)
                    if mapping is not None and key is None:
                        known = keys.get(written)
                        if known is None:
                            known = written
                            if is_text_key(written):
                                keys[written] = written
                            else:
                                refusals.key_not_text(index, end, written)
                        key = known
                        skip = key in mapping
                        if skip:
                            refusals.twice(index, end, written, mapping, here)
                        else:
                            here.append(index)
                        continue
                    if not written or written[0] in FIRST_OF_NOT_TEXT:
                        value = plain_value(written)
                        if value is UNSURE:
                            refusals.unsure(index, end, written)
                            value = written
                        elif value == written and written[0] == "-":
                            refusals.check_dash(index, written)
                    if items is not None and ":" in written:
                        refusals.check_colon(index, written)
            elif kind is MappingStartEvent or kind is SequenceStartEvent:
                index = event.start_mark.index
                if event.anchor is not None or event.tag is not None or text[index : index + 1] in ("&", "!"):
                    refusals.property_of(index)
                if mapping is not None and key is None:
                    refusals.key_is_collection(index)
                if len(stack) >= MOST_DEEP:
                    refusals.too_deep(index)
                stack.append((mapping if items is None else items, here, key, skip))
                here = [index]
                key, skip = None, False
                if kind is MappingStartEvent:
                    mapping, items = {}, None
                else:
                    mapping, items = None, []
                continue
            elif kind is MappingEndEvent or kind is SequenceEndEvent:
                value = mapping if items is None else items
                index = here[0]
                starts[id(value)] = here
                outer, here, key, skip = stack.pop()
                mapping = outer if isinstance(outer, dict) else None
                items = outer if isinstance(outer, list) else None
            elif kind is AliasEvent:
                index = event.start_mark.index
                refusals.alias(index, event.end_mark.index)
                if mapping is not None and key is None:
                    refusals.key_is_collection(index)
                value = None
            elif kind is DocumentStartEvent:
                documents += 1
                if documents > 1:
                    refusals.second_document(event.start_mark.index)
                if event.version or event.tags:
                    refusals.directive(event.start_mark.index)
                continue
            else:
                continue

            if items is not None:
                items.append(value)
                here.append(index)
            elif mapping is not None:
                if skip:
                    skip = False
                    _forget(value, starts)
                else:
                    mapping[key] = value  # type: ignore[index]  # a value follows only after its key
                    here.append(index)
                key = None
            else:
                self.root = value

        if has_tab:
            refusals.check_tabs(spans)
        if self.root is None:
            refusals.empty()
            return False
        if not isinstance(self.root, dict | list):
            refusals.no_keys(self.last_scalar)
            return False
        return True


def _forget(value: object, starts: dict[int, list[int]]) -> None:
    """Drop the positions of a value that is thrown away, lest another object get its id."""
    waiting = [value]
    while waiting:
        dropped = waiting.pop()
        if isinstance(dropped, dict):
            waiting.extend(dropped.values())
        elif isinstance(dropped, list):
            waiting.extend(dropped)
        else:
            continue
        del starts[id(dropped)]
