"""How wide a text is on paper. One font: Source Sans Pro, from the package `font_source_sans_pro`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

FAMILY = "Source Sans Pro"
CAP_HEIGHT = 0.66
"""Height of a capital letter as a share of the font size (the font's OS/2 table)."""
SMALL = 0.64
"""Size of the figures of a fraction as a share of the text's size."""
RAISE = 0.36
"""How far the numerator is raised, as a share of the letter height of the whole text."""
_FRACTION = re.compile(r"(?<![\d/])(?:(\d+) )?(\d+)/(\d+)(?![\d/])")


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text in one size: letter height [mm], raised above the line [mm]."""

    text: str
    size: float
    rise: float = 0.0


@dataclass(frozen=True, slots=True)
class _Face:
    advances: dict[int, float]
    cap_height: float


@cache
def _face(bold: bool) -> _Face:
    import font_source_sans_pro
    from fontTools.ttLib import TTFont

    path = Path(font_source_sans_pro.font_directory) / f"SourceSansPro-{'Bold' if bold else 'Regular'}.ttf"
    with TTFont(path, lazy=True) as font:
        units = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        advances = {code: widths[name][0] / units for code, name in font.getBestCmap().items()}
        return _Face(advances, font["OS/2"].sCapHeight / units)


def font_size(size: float) -> float:
    """The font size that gives a letter height.

    Args:
        size: height of the capital letters [mm].

    Returns:
        Font size [mm].
    """
    return size / CAP_HEIGHT


def runs(text: str, size: float) -> list[Run]:
    """A text cut into runs, fractions set small: `34 19/32` reads the same in order, and takes less room.

    Args:
        text: one line.
        size: letter height [mm].
    """
    out: list[Run] = []
    at = 0
    for m in _FRACTION.finditer(text):
        whole, over, under = m.groups()
        before = text[at : m.start()] + (whole or "")
        if before:
            out.append(Run(before, size))
        if whole:
            out.append(Run(" ", size * 0.4))
        out += [Run(over, size * SMALL, size * RAISE), Run("/", size * 0.86), Run(under, size * SMALL)]
        at = m.end()
    if text[at:]:
        out.append(Run(text[at:], size))
    return out


def text_width(text: str, size: float, bold: bool = False) -> float:
    """Width of a line of text, fractions set small.

    Args:
        text: one line.
        size: letter height [mm].
        bold: True for the bold face.

    Returns:
        Width [mm].
    """
    advances = _face(bold).advances
    missing = advances[ord("n")]
    return sum(
        font_size(run.size) * sum(advances.get(ord(c), missing) for c in run.text) for run in runs(text, size)
    )


def has_letter(letter: str, bold: bool = False) -> bool:
    """True when the font has a shape for a letter."""
    return ord(letter) in _face(bold).advances
