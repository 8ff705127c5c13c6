"""Collects every word of the interface into ``site_overrides/locale/journeybook.pot``, the template for a language.

Run it after changing a word: ``.venv/bin/python tools/extract_words.py``. A test fails while the file is stale.
A language is then one file: copy the template to ``LANGUAGE.po`` beside it and fill in each ``msgstr``.
"""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import write_po

ROOT = Path(__file__).parents[1]
TEMPLATE = ROOT / "site_overrides" / "locale" / "journeybook.pot"
# ``words``, ``say`` and ``gettext`` are how the pages' code names the lookup; ``_`` only marks a word for this tool.
KEYWORDS: dict[str, tuple[int, ...] | None] = {
    "_": None,
    "gettext": None,
    "say": None,
    "words": None,
    "ngettext": (1, 2),
}


def template() -> bytes:
    """The template's bytes: the same for the same sources, without dates and line numbers."""
    catalogue = Catalog(project="Journeybook", charset="utf-8", fuzzy=False)
    catalogue.header_comment = "# Words of the interface. Copy to LANGUAGE.po and fill in each msgstr."
    for folder, method in (
        (ROOT / "builder" / "pages", ("**.py", "python")),
        (ROOT / "builder" / "paper", ("**.py", "python")),
        (ROOT / "builder" / "paper", ("**.py", "python")),
        (ROOT / "site_overrides" / "templates", ("**.html", "jinja2")),
    ):
        options = {"**.html": {"encoding": "utf-8", "trimmed": "true"}}
        for name, _line, message, _comments, _context in extract_from_dir(
            folder, method_map=[method], options_map=options, keywords=KEYWORDS
        ):
            catalogue.add(message, locations=[((folder / name).relative_to(ROOT).as_posix(), 0)])
    out = BytesIO()
    write_po(out, catalogue, omit_header=False, sort_output=True, include_lineno=False, width=110)
    dated = (
        b'"POT-Creation-Date:',
        b'"PO-Revision-Date:',
        b'"Generated-By:',
        b'"Last-Translator:',
        b'"Language-Team:',
    )
    lines = [line for line in out.getvalue().splitlines(keepends=True) if not line.startswith(dated)]
    return b"".join(lines)


if __name__ == "__main__":
    TEMPLATE.write_bytes(template())
    print(f"{TEMPLATE.relative_to(ROOT)}: {TEMPLATE.read_text(encoding='utf-8').count('msgid') - 1} texts")
