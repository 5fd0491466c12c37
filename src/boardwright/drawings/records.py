"""A drawing as a record: lines, circles, fills, texts, dimensions; millimetres on the paper, y upwards."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Point = tuple[float, float]
LineStyle = Literal["visible", "hidden", "centre", "thin", "cut", "moved", "border"]
"""ISO 128-2 line types: visible, border 01.2, hidden 02.1, centre 04.1, thin 01.1, cut 04.2, moved 05.1."""
Anchor = Literal["left", "middle", "right"]


@dataclass(frozen=True, slots=True)
class Line:
    """A polyline."""

    points: tuple[Point, ...]
    style: LineStyle = "visible"
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Circle:
    """A whole circle."""

    at: Point
    radius: float
    style: LineStyle = "visible"


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled polygon. Tone 0 is white, 1 is the darkest; hue names a material family for layouts, or ""."""

    points: tuple[Point, ...]
    tone: float = 0.1
    hue: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; `size` is the letter height [mm on paper], `turn` in degrees anticlockwise."""

    at: Point
    text: str
    size: float = 2.5
    anchor: Anchor = "middle"
    turn: float = 0.0
    bold: bool = False
    backed: bool = False
    """True when a white ground is laid under it."""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A linear dimension, horizontal or vertical.

    Attributes:
        first, second: the two measured points on the paper.
        line_at: y of the dimension line when horizontal, x when vertical.
        vertical: direction.
        text: what it says; the settled size, never measured from the paper.
        text_at: centre of the text.
    """

    first: Point
    second: Point
    line_at: float
    vertical: bool
    text: str
    text_at: Point
    size: float = 2.5


Entity = Line | Circle | Fill | Text | Dimension


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing.

    Attributes:
        id: steady name, e.g. `part-A`, `assembled`, `sheet-1`.
        title: what stands over it.
        scale: as printed, e.g. `1:8`, or `not to scale`.
        width, height: of the drawing on paper [mm]; entities lie within 0..width, 0..height.
        entities: drawn in order.
    """

    id: str
    title: str
    scale: str
    width: float
    height: float
    entities: tuple[Entity, ...] = ()
