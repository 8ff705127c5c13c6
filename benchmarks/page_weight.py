"""What a learner's phone has to fetch and to lay out: gzip sizes of the built site against the budget, and elements.

Build first (``make site``). Budget: first view 60 kB without fonts, fonts 40 kB, each next page 15 kB,
core script 25 kB. The check is one document with every question that may be drawn, and has no budget.
"""

from __future__ import annotations

import gzip
import re
import sys
from pathlib import Path

KB = 1000
_APART = re.compile(r"<(head|template|script)\b.*?</\1>", re.DOTALL)
_ELEMENT = re.compile(r"<[a-z]")


def weight(path: Path) -> int:
    """Bytes over the wire: gzip level 6, as servers do; fonts are compressed already."""
    data = path.read_bytes()
    return len(data) if path.suffix == ".woff2" else len(gzip.compress(data, 6, mtime=0))


def elements(path: Path) -> int:
    """How many elements a browser may have to lay out: not those of the head, nor what waits in a template."""
    return len(_ELEMENT.findall(_APART.sub("", path.read_text(encoding="utf-8"))))


def row(name: str, size: int, budget: int | None = None) -> bool:
    """Print one line; false when over budget."""
    verdict = "" if budget is None else ("within" if size <= budget * KB else "OVER")
    print(f"{size / KB:>9.1f} kB  {'' if budget is None else f'of {budget} kB':<10} {verdict:<7} {name}")
    return verdict != "OVER"


def main() -> int:
    """Print the report; exit code 1 when a budget is broken."""
    site = Path(sys.argv[1] if len(sys.argv) > 1 else "site")
    if not site.is_dir():
        print(f"No folder {site}: build the site first with make site.")
        return 2
    assets = {path.name: weight(path) for path in (site / "assets").rglob("*") if path.is_file()}
    # Letters beyond Latin-1 stand in files of their own, which a browser fetches only where a page uses them.
    fonts = sum(size for name, size in assets.items() if name in {"label.woff2", "read.woff2"})
    every = ("journeybook.css", "journeybook.js")
    shared = sum(assets[name] for name in every)
    fine = row(
        "first view: index.html with styles and scripts, without fonts",
        weight(site / "index.html") + shared,
        60,
    )
    fine &= row("fonts", fonts, 40)
    fine &= row("core script", assets["journeybook.js"], 25)
    pages = sorted(((weight(path), path) for path in site.rglob("*.html")), reverse=True)
    one_file = [(size, path) for size, path in pages if path.parent == site and path.name != "index.html"]
    lessons = [(size, path) for size, path in pages if path.parent != site]
    for size, path in one_file:
        row(f"one-file edition: {path.name}", size)
    for size, path in lessons[:5]:
        check = path.name == "check.html"
        fine &= row(f"{path.relative_to(site)}", size, None if check else 15)
    many = sorted(((elements(path), path) for _, path in lessons), reverse=True)
    for count, path in many[:3]:
        print(f"{count:>9} elements {'':>18} {path.relative_to(site)}")
    print(
        f"{'':>15} median of {len(lessons)} pages: {sorted(size for size, _ in lessons)[len(lessons) // 2] / KB:.1f} kB"
    )
    return 0 if fine else 1


if __name__ == "__main__":
    sys.exit(main())
