"""One board or sheet and what is cut from it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.drawings.cut_words import Printer
from boardwright.drawings.fonts import text_width
from boardwright.drawings.layout_dims import SIZE, Ask, stacked, text_box, texts
from boardwright.drawings.marks import BALLOON, balloon, grain_arrow, leader
from boardwright.drawings.part_details import bounds, shift
from boardwright.drawings.records import Drawing, Entity, Fill, Line, Point, Text
from boardwright.drawings.scales import fitting, scale_text
from boardwright.drawings.spacing import spread

PAD = 1.0
HATCH = 4.0
LETTER = 3.0
ADJACENT = 8.0
"""Alike pieces nearer than this follow each other [mm]: no wider than a saw's cut."""
SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.27, 0.73, 0.14, 0.86, 0.1, 0.9, 0.05, 0.95, 0.02, 0.98)
"""Where along a cut its number may stand, in the order they are tried."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A rectangle on the board [mm]: lower left corner, size along the board and across it.

    Attributes:
        letter: of the part.
        label: its sizes as printed, or "".
    """

    letter: str
    label: str
    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True, slots=True)
class Left:
    """What is left over: a rectangle [mm]; `kept` when it goes back on the rack, under a `name` if it has one."""

    x: float
    y: float
    length: float
    width: float
    kept: bool = False
    name: str = ""


@dataclass(frozen=True, slots=True)
class SawCut:
    """A straight cut from one point to another [mm]; cuts are made in the order in which they are given."""

    first: Point
    second: Point


def layout_drawing(
    id: str,
    title: str,
    length: float,
    width: float,
    placed: Sequence[Laid],
    printer: Printer,
    left: Sequence[Left] = (),
    cuts: Sequence[SawCut] = (),
    hue: str = "light wood",
    grain: bool = True,
    paper: float = 180.0,
    defects: Sequence[Left] = (),
) -> Drawing:
    """The layout of one board or sheet, its length to the right.

    Args:
        id: of the drawing.
        title: what stands over it.
        length: of the board or sheet [mm].
        width: of the board or sheet [mm].
        placed: what is cut from it, kerfs left between.
        printer: writes lengths.
        left: what is left over.
        cuts: in order; each gets its number where it starts. None draws no numbers.
        hue: family of the material, a key of `styles.HUES`.
        grain: True to draw the direction of the grain.
        paper: width of the drawing [mm].
        defects: rectangles that are stayed clear of; each is crossed out.
    """
    reduction = fitting(printer.units, length, width, paper - 18, 120.0)
    k = 1 / reduction
    entities: list[Entity] = [Fill(_corners((0, 0, length * k, width * k)), 0.04)]
    for w in left:
        entities += _waste(w, k, printer)
    for d in defects:
        x0, y0, x1, y1 = d.x * k, d.y * k, (d.x + d.length) * k, (d.y + d.width) * k
        entities += [Fill(_corners((x0, y0, x1, y1)), 0.25), Line(_corners((x0, y0, x1, y1)), "thin", True)]
        entities += [Line(((x0, y0), (x1, y1)), "thin"), Line(((x0, y1), (x1, y0)), "thin")]
    outside: list[tuple[Point, Laid]] = []
    for p in placed:
        box = (p.x * k, p.y * k, (p.x + p.length) * k, (p.y + p.width) * k)
        entities += [Fill(_corners(box), 0.8, hue), Line(_corners(box), "thin", True)]
        words = _label(p, box)
        if words:
            entities += words
        else:
            outside.append((((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), p))
    entities.append(Line(_corners((0, 0, length * k, width * k)), "border", True))
    entities += _small(outside, left, k, length * k, entities)
    entities += _cut_numbers(cuts, k, (length, width), entities)
    asks = [
        Ask((0.0, width * k), (length * k, width * k), printer.size(length), "above"),
        Ask((0.0, 0.0), (0.0, width * k), printer.size(width), "left"),
    ]
    numbered = 4.0 if cuts else 0.0
    entities += stacked(asks, (-numbered, 0.0, length * k, width * k + numbered), 6.0)
    if grain:
        low = bounds(entities)[1]
        entities += grain_arrow((9.0, low - 3.0), 16.0)
        entities.append(Text((18.6, low - 3.0 - SIZE / 2), "grain", SIZE, "left"))
    x0, y0, x1, y1 = bounds(entities)
    dx = max(PAD - x0, (paper - (x1 - x0)) / 2 - x0)
    moved = tuple(shift(e, dx, PAD - y0) for e in entities)
    return Drawing(id, title, scale_text(reduction), paper, round(y1 - y0 + 2 * PAD, 3), moved)


def _corners(box: tuple[float, float, float, float]) -> tuple[Point, ...]:
    return ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))


def _waste(w: Left, k: float, printer: Printer) -> list[Entity]:
    """A leftover: hatched, or with its sizes when it goes back on the rack."""
    x0, y0, x1, y1 = w.x * k, w.y * k, (w.x + w.length) * k, (w.y + w.width) * k
    if w.kept:
        text = f"keep {printer.size(w.length)} × {printer.size(w.width)}" + (f", {w.name}" if w.name else "")
        lines: list[Entity] = [Line(_corners((x0, y0, x1, y1)), "moved", True)]
        for turn, room, high in ((0.0, x1 - x0, y1 - y0), (90.0, y1 - y0, x1 - x0)):
            if text_width(text, SIZE) + 2 <= room and high >= SIZE + 1.4:
                return [*lines, _centred(text, ((x0 + x1) / 2, (y0 + y1) / 2), SIZE, turn)]
        return lines
    out: list[Entity] = []
    c = y0 - x1 + HATCH / 2
    while c < y1 - x0:
        low, high = max(x0, y0 - c), min(x1, y1 - c)
        if high - low > 0.3:
            out.append(Line(((low, low + c), (high, high + c)), "thin"))
        c += HATCH
    return out


def _centred(text: str, at: Point, size: float, turn: float = 0.0, bold: bool = False) -> Text:
    x, y = at
    spot = (x + size / 2, y) if turn else (x, y - size / 2)
    return Text(spot, text, size, "middle", turn, bold)


def _label(p: Laid, box: tuple[float, float, float, float]) -> list[Entity]:
    """Letter and sizes inside the rectangle: above each other, in one line, upright, or the letter alone."""
    wide, high = box[2] - box[0], box[3] - box[1]
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    letter, sizes = text_width(p.letter, LETTER, True), text_width(p.label, SIZE)
    for turn, along, across in ((0.0, wide, high), (90.0, high, wide)):

        def at(u: float, v: float, turn: float = turn) -> Point:
            return (x - v, y + u) if turn else (x + u, y + v)

        if p.label and max(letter, sizes) + 2 <= along and across >= LETTER + SIZE + 3.4:
            return [
                _centred(p.letter, at(0.0, 2.1), LETTER, turn, True),
                _centred(p.label, at(0.0, -2.2), SIZE, turn),
            ]
        total = letter + 1.8 + sizes
        if p.label and total + 2 <= along and across >= LETTER + 1.0:
            return [
                _centred(p.letter, at(-total / 2 + letter / 2, 0.0), LETTER, turn, True),
                _centred(p.label, at(total / 2 - sizes / 2, 0.0), SIZE, turn),
            ]
    if letter + 1.0 <= wide and high >= LETTER + 1.0:
        return [_centred(p.letter, (x, y), LETTER, 0.0, True)]
    if letter + 0.8 <= wide and high >= SIZE + 0.6:
        return [_centred(p.letter, (x, y), SIZE, 0.0, True)]
    return []


def _cut_numbers(
    cuts: Sequence[SawCut], k: float, size: tuple[float, float], there: Sequence[Entity]
) -> list[Entity]:
    """The number of each cut: beside the board where it reaches the left or upper edge, else on the cut."""
    above: list[tuple[float, str]] = []
    beside: list[tuple[float, str]] = []
    out: list[Entity] = []
    for n, c in enumerate(cuts, 1):
        upright = abs(c.first[0] - c.second[0]) < abs(c.first[1] - c.second[1])
        if upright and max(c.first[1], c.second[1]) >= size[1] - 1e-6:
            above.append((c.first[0] * k, str(n)))
        elif not upright and min(c.first[0], c.second[0]) <= 1e-6:
            beside.append((c.first[1] * k, str(n)))
        else:
            out += _on_cut(c, k, str(n), [*there, *out])
    order = sorted(above)
    for x, (x0, name) in zip(spread([v[0] for v in order], 4.2, -2.0, size[0] * k + 6), order, strict=True):
        y = size[1] * k
        out += [Line(((x, y + 1.4), (x0, y)), "thin"), Text((x, y + 2.0), name, SIZE)]
    order = sorted(beside)
    apart = SIZE + 1.4
    for y, (y0, name) in zip(spread([v[0] for v in order], apart, 0.0, size[1] * k), order, strict=True):
        out += [Line(((-1.4, y), (0.0, y0)), "thin"), Text((-2.0, y - SIZE / 2), name, SIZE, "right")]
    return out


def _on_cut(c: SawCut, k: float, name: str, there: Sequence[Entity]) -> list[Text]:
    """The number on a white ground on the cut, where no other text stands; none where there is no room for it."""
    taken = [text_box(t) for t in texts(there)]
    tries = []
    for share in SHARES:
        x = (c.first[0] + (c.second[0] - c.first[0]) * share) * k
        y = (c.first[1] + (c.second[1] - c.first[1]) * share) * k
        tries.append(Text((x, y - SIZE / 2), name, SIZE, backed=True))
    for gap in (0.8, 0.3):
        free = next((t for t in tries if not any(_near(text_box(t), b, gap) for b in taken)), None)
        if free is not None:
            return [free]
    return []


def _near(a: tuple[float, ...], b: tuple[float, ...], gap: float) -> bool:
    return a[0] < b[2] + gap and b[0] < a[2] + gap and a[1] < b[3] + gap and b[1] < a[3] + gap


def _small(
    spots: list[tuple[Point, Laid]], left: Sequence[Left], k: float, length: float, there: Sequence[Entity]
) -> list[Entity]:
    """Balloons for rectangles too small for their letter: in the nearest leftover, else under the board."""
    taken = [text_box(t) for t in texts(there)]
    out: list[Entity] = []
    under: list[tuple[Point, Laid, int]] = []
    for spot, p, count in _rows(sorted(spots, key=lambda s: (s[1].letter, s[1].y, s[0]))):
        free = [
            q
            for w in left
            for q in _grid((w.x * k, w.y * k, (w.x + w.length) * k, (w.y + w.width) * k))
            if not any(_near((q[0], q[1], q[0], q[1]), b, BALLOON + 0.8) for b in taken)
        ]
        at = min(free, key=lambda q: (math.hypot(q[0] - spot[0], q[1] - spot[1]), q), default=None)
        if at is None or math.hypot(at[0] - spot[0], at[1] - spot[1]) > spot[1] + 5.0:
            under.append((_clear_below(spot, p, k, taken), p, count))
            continue
        out += [*leader(at, spot), *_counted(at, p.letter, count)]
        taken.append((at[0] - BALLOON, at[1] - BALLOON, at[0] + BALLOON, at[1] + BALLOON))
    under.sort(key=lambda u: (u[0], u[1].letter))
    for x, (spot, p, count) in zip(spread([s[0][0] for s in under], 5.4, 0.0, length), under, strict=True):
        out += [*leader((x, -5.0), spot), *_counted((x, -5.0), p.letter, count)]
    return out


def _rows(spots: Sequence[tuple[Point, Laid]]) -> list[tuple[Point, Laid, int]]:
    """Pieces alike that follow each other along the board, as one with their count; others each for itself."""
    out: list[tuple[Point, Laid, int]] = []
    end: Laid | None = None
    for spot, p in spots:
        follows = (
            end is not None
            and (end.letter, end.y, end.length, end.width) == (p.letter, p.y, p.length, p.width)
            and p.x - end.x - end.length < ADJACENT
        )
        if follows:
            out[-1] = (*out[-1][:2], out[-1][2] + 1)
        else:
            out.append((spot, p, 1))
        end = p
    return out


def _counted(at: Point, letter: str, count: int) -> list[Entity]:
    """A balloon, with how many pieces it stands for below it."""
    if count == 1:
        return balloon(at, letter)
    low = at[1] - BALLOON - 0.6 - SIZE
    return [*balloon(at, letter), Text((at[0], low), f"{count} ×", SIZE, backed=True)]


def _clear_below(spot: Point, p: Laid, k: float, taken: Sequence[tuple[float, ...]]) -> Point:
    """A place on the piece from which a leader straight down crosses no text; its middle when there is none."""
    for share in (0.5, 0.3, 0.7, 0.15, 0.85):
        x = (p.x + p.length * share) * k
        if not any(b[0] - 0.6 < x < b[2] + 0.6 and b[1] < spot[1] for b in taken):
            return (x, spot[1])
    return spot


def _grid(box: tuple[float, float, float, float]) -> list[Point]:
    """Places for a balloon inside a box, about 2 mm apart."""
    inset = BALLOON + 0.6
    wide, high = box[2] - box[0] - 2 * inset, box[3] - box[1] - 2 * inset
    if wide < 0 or high < 0:
        return []
    columns, rows = int(wide / 2) + 1, int(high / 2) + 1
    return [
        (box[0] + inset + wide * i / max(1, columns - 1), box[1] + inset + high * j / max(1, rows - 1))
        for i in range(columns)
        for j in range(rows)
    ]
