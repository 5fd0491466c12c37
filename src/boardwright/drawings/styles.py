"""Line widths, dash patterns and colours: ISO 128-2 line types, wide lines 0.35 mm, narrow ones 0.18 mm."""

from __future__ import annotations

from boardwright.drawings.records import LineStyle

INK = "#22262b"
ACCENT = "#a8481f"
WIDE = 0.35
NARROW = 0.18
WIDTHS: dict[LineStyle, float] = {
    "visible": WIDE,
    "border": WIDE,
    "cut": WIDE,
    "hidden": NARROW,
    "centre": NARROW,
    "thin": NARROW,
    "moved": NARROW,
}
_DASH, _GAP, _LONG, _DOT = 12.0, 3.0, 24.0, 0.5
PATTERNS: dict[LineStyle, tuple[float, ...]] = {
    "hidden": (_DASH, _GAP),
    "centre": (_LONG, _GAP, _DOT, _GAP),
    "cut": (_LONG, _GAP, _DOT, _GAP),
    "moved": (_LONG, _GAP, _DOT, _GAP, _DOT, _GAP),
}
"""Dash and gap lengths in line widths: ISO 128-2:2020, line types 02, 04 and 05 (lengths from memory)."""
ARROW_LENGTH = 2.2
ARROW_HALF = 0.32
"""A slim filled arrowhead [mm] with an opening of about 16 degrees; ISO 129-1 15 to 90 (from memory)."""
ARROWS_INSIDE = 6.5
"""Shorter dimensions have their arrows outside, pointing in [mm]."""
TAIL = 4.5
"""How far a dimension line runs on beyond arrows that point in [mm]."""

HUES: dict[str, str] = {
    "light wood": "#f1e3c4",
    "red wood": "#eacbb5",
    "dark wood": "#d6c0aa",
    "sheet": "#d5e2dc",
}
"""Pale grounds by family of material."""


def dashes(style: LineStyle) -> tuple[float, ...]:
    """Dash and gap lengths of a line style [mm]; empty for a whole line."""
    return tuple(n * WIDTHS[style] for n in PATTERNS.get(style, ()))


def tone_colour(tone: float, hue: str = "") -> str:
    """The colour of a fill: white at tone 0; at 1 the ground of its hue, or ink without a hue."""
    ground = HUES[hue] if hue else INK
    share = max(0.0, min(1.0, tone))
    parts = [round(255 + (int(ground[i : i + 2], 16) - 255) * share) for i in (1, 3, 5)]
    return "#" + "".join(f"{p:02x}" for p in parts)
