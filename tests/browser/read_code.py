"""Prints what the code on a certificate says, read off its page at 100 dots an inch: ``read_code.py PDF``."""

from __future__ import annotations

import sys

import pypdfium2
import zxingcpp


def main(path: str) -> None:
    """Print the one code of the first page."""
    page = pypdfium2.PdfDocument(path)[0]
    picture = page.render(scale=100 / 72).to_pil()
    (code,) = zxingcpp.read_barcodes(picture)
    sys.stdout.write(code.text)


if __name__ == "__main__":
    main(sys.argv[1])
