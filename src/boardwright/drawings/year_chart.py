"""A line through the twelve months, with the limits it should keep: small, so that many stand side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.drawings.fonts import text_width
from boardwright.drawings.marks import dot
from boardwright.drawings.records import Drawing, Entity, Fill, Line, Point, Text

WIDE, HIGH = 54.0, 31.0
"""Three stand side by side on Letter and on A4 [mm]."""
MONTHS = "JFMAMJJASOND"
SIDE, BASE, ZONE, TOP = 2.5, 4.6, 4.4, 4.6
"""Beside the first and last month; under the chart, for the months; what lies beyond a limit; over the line [mm]."""
SMALL, VALUE = 1.7, 2.0
"""Letter heights [mm]."""
CLEAR = 4.4
"""A value needs so much room between its point and a limit [mm]."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A level line across a chart.

    Attributes:
        value: where it is. text: what stands beside it.
        beyond: -1 where what lies below it is tinted, 1 for above, 0 for a dashed line alone.
    """

    value: float
    text: str
    beyond: int = 0


@dataclass(frozen=True, slots=True)
class Scale:
    """What a height on the paper means: two values and their heights [mm]."""

    low: float
    high: float
    bottom: float
    top: float

    def y(self, value: float) -> float:
        """The height of a value [mm]."""
        return self.bottom + (self.top - self.bottom) * (value - self.low) / max(self.high - self.low, 1e-9)


def year_chart(
    id: str,
    title: str,
    values: Sequence[float],
    texts: Sequence[str],
    marks: Sequence[Mark],
    reach: tuple[float, float],
) -> Drawing:
    """A chart of one year.

    Args:
        id: of the drawing.
        title: what stands over it.
        values: of the twelve months from January.
        texts: what is printed of each; the least and the greatest are.
        marks: level lines.
        reach: least and greatest value that the chart takes in.
    """
    under = any(m.beyond < 0 for m in marks)
    over = any(m.beyond > 0 for m in marks)
    bottom = BASE + (ZONE if under else TOP)
    scale = Scale(*reach, bottom, HIGH - (TOP + (ZONE if over else 0.0)))
    least, most = (k(range(12), key=lambda i: values[i]) for k in (min, max))
    out: list[Entity] = []
    points = tuple((_x(i), scale.y(v)) for i, v in enumerate(values))
    for m in marks:
        out += _mark(m, scale, points, alone=len(marks) == 1)
    out.append(Line(((SIDE, BASE), (WIDE - SIDE, BASE)), "thin"))
    for i, name in enumerate(MONTHS):
        out.append(Line(((_x(i), BASE), (_x(i), BASE - 0.7)), "thin"))
        out.append(Text((_x(i), 1.2), name, SMALL))
    out.append(Line(points, "visible"))
    for i, above in ((least, False), (most, True)):
        out += _value(points[i], texts[i], _above(points[i][1], above, marks, scale))
    return Drawing(id, title, "not to scale", WIDE, HIGH, tuple(out))


def _x(month: int) -> float:
    return SIDE + (WIDE - 2 * SIDE) * month / 11


def _mark(m: Mark, scale: Scale, points: Sequence[Point], *, alone: bool) -> list[Entity]:
    """A level line, what lies beyond it, and its text where the line of the year leaves most room."""
    y, ends = scale.y(m.value), (0.6, WIDE - 0.6)
    out: list[Entity] = []
    if m.beyond:
        far = BASE if m.beyond < 0 else HIGH
        out.append(Fill(((ends[0], y), (ends[1], y), (ends[1], far), (ends[0], far)), 0.45, "red wood"))
    out.append(Line(((ends[0], y), (ends[1], y)), "thin" if m.beyond else "hidden"))
    wide = text_width(m.text, SMALL)
    over, under = y + 1.0, y - SMALL - 1.1
    spots = [(left, base) for base in ((under,) if m.beyond < 0 else (over,)) for left in (True, False)]
    if alone and not m.beyond:
        spots += [(left, under) for left in (True, False)]

    def room(spot: tuple[bool, float]) -> float:
        left, base = spot
        near = [p[1] for p in points if (p[0] < wide + 4 if left else p[0] > WIDE - wide - 4)]
        return min(max(base - high, high - base - SMALL) for high in near)

    best = max(spots, key=lambda spot: min(round(room(spot), 3), 2.0))
    return [
        *out,
        Text((1.6 if best[0] else WIDE - 1.6, best[1]), m.text, SMALL, "left" if best[0] else "right"),
    ]


def _above(y: float, above: bool, marks: Sequence[Mark], scale: Scale) -> bool:
    """Whether a value stands above its point: on the side away from a limit that is near."""
    if above:
        return not any(0 <= scale.y(m.value) - y < CLEAR for m in marks)
    texts = 0.0 if len(marks) == 1 else SMALL + 1.0
    return any(0 <= y - scale.y(m.value) < CLEAR + (0.0 if m.beyond else texts) for m in marks)


def _value(at: tuple[float, float], text: str, above: bool) -> list[Entity]:
    half = text_width(text, VALUE, True) / 2
    x = min(max(at[0], half + 0.6), WIDE - half - 0.6)
    return [dot(at, 0.6), Text((x, at[1] + 1.3 if above else at[1] - VALUE - 1.3), text, VALUE, bold=True)]
