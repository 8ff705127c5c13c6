"""The classes that a drawing may use; ``css/figure.css`` of the theme gives each its look in light, dark and print."""

from __future__ import annotations

CLASSES: frozenset[str] = frozenset(
    {
        "figure",
        # Lines.
        "ink",
        "thin",
        "bold",
        "hidden-line",
        "act",
        "hold",
        "air",
        "hatch",
        "dots",
        "dots-fine",
        # Areas.
        "fill-paper",
        "fill-card",
        "fill-ink",
        "fill-act",
        "fill-hold",
        "tint-1",
        "tint-2",
        # Lettering.
        "label",
        "label-strong",
        "small",
        "number",
        "middle",
        "end",
    }
)
