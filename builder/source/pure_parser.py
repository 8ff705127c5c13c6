"""PyYAML's parser in Python alone, for a PyYAML built without its C half: the same events, far slower."""

from __future__ import annotations

from yaml.parser import Parser
from yaml.reader import Reader
from yaml.scanner import Scanner


class PureParser(Reader, Scanner, Parser):
    """Reader, scanner and parser in one, as PyYAML's own loaders put them together."""

    def __init__(self, stream: str) -> None:
        Reader.__init__(self, stream)
        Scanner.__init__(self)
        Parser.__init__(self)
