"""A drawing as SVG: real text in one font, ISO 128-2 lines, slim filled arrows; millimetres on paper."""

from __future__ import annotations

from html import escape

from boardwright.drawings.fonts import FAMILY, font_size, runs, text_width
from boardwright.drawings.records import (
    Circle,
    Dimension,
    Drawing,
    Entity,
    Fill,
    Line,
    LineStyle,
    Point,
    Text,
)
from boardwright.drawings.styles import (
    ACCENT,
    ARROW_HALF,
    ARROW_LENGTH,
    ARROWS_INSIDE,
    INK,
    TAIL,
    WIDTHS,
    dashes,
    tone_colour,
)

EXTENSION_GAP = 0.8
EXTENSION_OVER = 1.2


def to_svg(drawing: Drawing) -> str:
    """A drawing as an SVG document, at true size on paper."""
    page = _Page(drawing.height)
    body = "\n".join(page.entity(e) for e in drawing.entities)
    w, h = _n(drawing.width), _n(drawing.height)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}" '
        f'font-family="{FAMILY}, sans-serif" fill="none" stroke-linecap="butt" stroke-linejoin="round">\n'
        f"<title>{escape(drawing.title)}</title>\n{body}\n</svg>\n"
    )


def _n(v: float) -> str:
    text = f"{v:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _stroke(style: LineStyle) -> str:
    pattern = dashes(style)
    dash = f' stroke-dasharray="{" ".join(_n(p) for p in pattern)}"' if pattern else ""
    return f'stroke="{INK}" stroke-width="{_n(WIDTHS[style])}"{dash}'


class _Page:
    """Writes entities of one drawing; turns y over, as SVG counts it downwards."""

    def __init__(self, height: float) -> None:
        self.height = height

    def xy(self, p: Point) -> str:
        return f"{_n(p[0])},{_n(self.height - p[1])}"

    def entity(self, e: Entity) -> str:
        if isinstance(e, Line):
            return self.polyline(e.points, e.style, e.closed)
        if isinstance(e, Circle):
            x, y = self.xy(e.at).split(",")
            ground = ' fill="#ffffff"' if e.style == "border" else ""
            line = _stroke(e.style).replace(INK, ACCENT if e.style == "border" else INK)
            return f'<circle cx="{x}" cy="{y}" r="{_n(e.radius)}" {line}{ground}/>'
        if isinstance(e, Fill):
            colour = tone_colour(e.tone, e.hue)
            points = " ".join(self.xy(p) for p in e.points)
            return f'<polygon points="{points}" fill="{colour}" stroke="{colour}" stroke-width="0.15"/>'
        if isinstance(e, Text):
            return self.text(e)
        return self.dimension(e)

    def polyline(self, points: tuple[Point, ...], style: LineStyle, closed: bool = False) -> str:
        tag = "polygon" if closed else "polyline"
        return f'<{tag} points="{" ".join(self.xy(p) for p in points)}" {_stroke(style)}/>'

    def text(self, e: Text) -> str:
        """The text on its base line; turned about its anchor; a white ground under it when asked."""
        x, y = e.at[0], self.height - e.at[1]
        width = text_width(e.text, e.size, e.bold)
        left = x - {"left": 0.0, "middle": width / 2, "right": width}[e.anchor]
        spin = f' transform="rotate({_n(-e.turn)} {_n(x)} {_n(y)})"' if e.turn else ""
        out = ""
        if e.backed:
            out = (
                f'<rect x="{_n(left - 0.5)}" y="{_n(y - e.size - 0.6)}" width="{_n(width + 1)}" '
                f'height="{_n(e.size + 1.2)}" fill="#ffffff"{spin}/>\n'
            )
        weight = ' font-weight="700"' if e.bold else ""
        return (
            f'{out}<text x="{_n(left)}" y="{_n(y)}" font-size="{_n(font_size(e.size))}" fill="{INK}"'
            f'{weight}{spin} xml:space="preserve">{_spans(e.text, e.size)}</text>'
        )

    def dimension(self, d: Dimension) -> str:
        out = []
        for a, b in extension_lines(d):
            out.append(self.polyline((a, b), "thin"))
        line, heads = dimension_line(d)
        out.append(self.polyline(line, "thin"))
        for head in heads:
            out.append(f'<polygon points="{" ".join(self.xy(p) for p in head)}" fill="{INK}"/>')
        out.append(self.text(dimension_text(d)))
        return "\n".join(out)


def _spans(text: str, size: float) -> str:
    out, risen = [], 0.0
    for run in runs(text, size):
        if run.size == size and run.rise == 0 and risen == 0:
            out.append(escape(run.text))
            continue
        shift = f' dy="{_n(risen - run.rise)}"' if run.rise != risen else ""
        out.append(f'<tspan font-size="{_n(font_size(run.size))}"{shift}>{escape(run.text)}</tspan>')
        risen = run.rise
    return "".join(out)


def extension_lines(d: Dimension) -> list[tuple[Point, Point]]:
    """From the measured points to a little beyond the dimension line."""
    out = []
    for p in (d.first, d.second):
        start = p[0] if d.vertical else p[1]
        if abs(d.line_at - start) < 1e-6:
            continue
        way = 1.0 if d.line_at > start else -1.0
        a, b = start + way * EXTENSION_GAP, d.line_at + way * EXTENSION_OVER
        if (b - a) * way > 0:
            out.append(((a, p[1]), (b, p[1])) if d.vertical else ((p[0], a), (p[0], b)))
    return out


def dimension_line(d: Dimension) -> tuple[tuple[Point, Point], list[tuple[Point, Point, Point]]]:
    """The line, run on under a text that stands outside, and its two arrowheads."""
    k = 1 if d.vertical else 0
    low, high = sorted((d.first[k], d.second[k]))
    inside = high - low >= ARROWS_INSIDE
    start, end = (low, high) if inside else (low - TAIL, high + TAIL)
    half = text_width(d.text, d.size) / 2
    if not low - 1e-6 <= d.text_at[k] <= high + 1e-6:
        start, end = min(start, d.text_at[k] - half), max(end, d.text_at[k] + half)

    def at(v: float, off: float = 0.0) -> Point:
        return (d.line_at + off, v) if d.vertical else (v, d.line_at + off)

    heads = []
    for tip, way in ((low, 1.0), (high, -1.0)):
        back = tip + (way if inside else -way) * ARROW_LENGTH
        heads.append((at(tip), at(back, ARROW_HALF), at(back, -ARROW_HALF)))
    return (at(start), at(end)), heads


def dimension_text(d: Dimension) -> Text:
    """The text of a dimension as a text of its own; `text_at` is the middle of its letters."""
    x, y = d.text_at
    at = (x + d.size / 2, y) if d.vertical else (x, y - d.size / 2)
    return Text(at, d.text, d.size, "middle", 90.0 if d.vertical else 0.0)
