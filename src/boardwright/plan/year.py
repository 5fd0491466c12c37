"""The moving fits of a piece through the year, and a chart of each."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.checks.movement.curves import Curve
from boardwright.core.lengths import INCH, Printer
from boardwright.drawings.records import Drawing
from boardwright.drawings.year_chart import Mark, year_chart
from boardwright.formulas.moisture import humidity_for
from boardwright.piece.records import Motion, Part, Piece
from boardwright.plan.schema import Size, Year, YearFit, YearLimit

ROOM = 21.0
"""Temperature at which the humidity of the air is given [degrees C]: 70 F, a heated room."""
HARD = {
    "drawer.height": "binds",
    "drawer.width": "binds",
    "drawer.depth": "stands proud",
    "door.swells": "binds",
    "wood.panel-bottoms": "binds",
    "wood.panel-leaves": "lets go",
    "wood.slot-short": "binds",
}
"""What a fit does when nothing is left of it, in the order of the page."""
ORDER = (*HARD, "wood.breadboard-proud", "wood.lid-moves")


def plan_year(piece: Piece, curves: Sequence[Curve], printer: Printer) -> tuple[Year | None, list[Drawing]]:
    """The year of a piece and its charts; None when nothing in it moves so far that it is seen.

    Args:
        piece: as cut.
        curves: its moving fits.
        printer: writes lengths.
    """
    m = piece.moisture
    if not curves or len(m.months) != 12:
        return None, []
    parts = {p.id: p for p in piece.parts}
    motions = {motion.id: motion for motion in piece.motions}
    changes = [month - m.now for month in m.months]
    groups = _alike(curves, parts, changes)
    reach = {code: _reach([g[0] for g in groups if g[0].code == code], changes) for code in ORDER}
    fits, drawings = [], [_moisture(m.months, m.now)]
    for number, group in enumerate(groups, 1):
        fit = _fit(f"year-{number}", group, parts, motions, changes, printer)
        fits.append(fit)
        drawings.append(_chart(fit, reach[group[0].code]))
    year = Year(
        place=m.source,
        cut_at=m.now,
        moisture=[round(v, 2) for v in m.months],
        humidity=[round(humidity_for(ROOM, v)) for v in m.months],
        fits=fits,
        drawing=drawings[0].id,
    )
    return year, drawings


def _alike(curves: Sequence[Curve], parts: dict[str, Part], changes: list[float]) -> list[list[Curve]]:
    """Fits of one thing, of which only the one with the least left is kept; then those that move alike together."""
    tightest: dict[tuple[str, ...], Curve] = {}
    for c in curves:
        subject = _subject(c, parts)
        if subject not in tightest or c.left(changes) < tightest[subject].left(changes) - 1e-6:
            tightest[subject] = c
    groups: dict[tuple[object, ...], list[Curve]] = {}
    for c in sorted(tightest.values(), key=lambda c: ORDER.index(c.code)):
        named = c.parts[:1] if c.code == "wood.slot-short" else c.parts
        kinds = tuple(parts[p].name for p in named) if not c.motion else ()
        line = tuple(round(c.at(change), 1) for change in changes)
        groups.setdefault((c.code, line, kinds), []).append(c)
    return [sorted(g, key=lambda c: round(c.left(changes), 3)) for g in groups.values()]


def _subject(c: Curve, parts: dict[str, Part]) -> tuple[str, ...]:
    """What a fit is one of: a drawer in its height, a panel in its grooves, screws of one kind of part."""
    letters = [parts[p].letter for p in c.parts]
    if c.code == "door.swells":
        return (c.code, c.motion, *letters)
    if c.motion:
        return (c.code, c.motion)
    return (c.code, letters[0]) if c.code.startswith("wood.panel") else (c.code, *letters)


def _reach(curves: Sequence[Curve], changes: list[float]) -> tuple[float, float]:
    """What the charts of one kind take in, so that they can be compared."""
    values = [c.at(change) for c in curves for change in changes]
    values += [v for c in curves for v in (c.low, c.high) if v is not None]
    if curves and curves[0].code in HARD:
        values.append(0.0)
    return (min(values), max(values)) if values else (0.0, 1.0)


def _fit(
    drawing: str,
    group: Sequence[Curve],
    parts: dict[str, Part],
    motions: dict[str, Motion],
    changes: list[float],
    printer: Printer,
) -> YearFit:
    c = group[0]
    moved = [motions[m] for g in group for m in (g.motion, parts[g.parts[-1]].group) if m in motions]
    of = joined([m.name for m in moved if m.kind == moved[0].kind])
    one, other = (
        joined([f"{parts[g.parts[i]].name} {parts[g.parts[i]].letter}" for g in group]) for i in (0, -1)
    )
    what, detail = {
        "drawer.height": (f"Room over {of}", one),
        "drawer.width": (f"Room beside {of}", "both sides together"),
        "drawer.depth": (f"Room behind {of}", "to the back of the case"),
        "door.swells": (f"Gap of {of}", f"{one} to {other}"),
        "wood.panel-bottoms": (f"Room for {one}", f"in the groove of {other}"),
        "wood.panel-leaves": (f"Hold of {one}", f"in the groove of {other}"),
        "wood.slot-short": (f"Slots in {one}", "from the screw to the end of its slot"),
        "wood.breadboard-proud": (f"{other} past {one}", "the step at each edge"),
        "wood.lid-moves": (f"Overhang of {of}", f"at its free edge, {one}"),
    }[c.code]
    return YearFit(
        what=what[:1].upper() + what[1:],
        detail=detail,
        letters=list(dict.fromkeys(parts[p].letter for g in group for p in g.parts)),
        as_cut=_size(c.now, printer),
        months=[_size(c.at(change), printer) for change in changes],
        limits=_limits(c, printer),
        drawing=drawing,
    )


def joined(names: Sequence[str]) -> str:
    """Names in words: `drawers 1, 2 and 5`, `drawers 1 to 6`, `bars N and P`."""
    once = list(dict.fromkeys(names))
    found = [n.rsplit(" ", 1) for n in once]
    if len(once) < 2 or any(len(f) < 2 for f in found) or len({f[0] for f in found}) > 1:
        return ", ".join(once)
    ends = [f[1] for f in found]
    base = f"{found[0][0]}s"
    numbers = [int(e) for e in ends if e.isdigit()]
    if len(numbers) == len(ends) > 2 and numbers == list(range(numbers[0], numbers[0] + len(ends))):
        return f"{base} {ends[0]} to {ends[-1]}"
    return f"{base} {', '.join(ends[:-1])} and {ends[-1]}"


def _limits(c: Curve, printer: Printer) -> list[YearLimit]:
    if c.code in HARD:
        low = c.low or 0.0
        hard = YearLimit(size=_size(min(low, 0.0), printer), says=HARD[c.code], beyond="below")
        least = [YearLimit(size=_size(low, printer), says="least")] if low > 0 else []
        return [hard, *least]
    says = ("end stands out", "top stands out")
    if c.code == "wood.lid-moves":
        says = ("too far" if c.high is not None else "behind the case", "too far")
    ends = ((c.low, says[0], "below"), (c.high, says[1], "above"))
    return [
        YearLimit.model_validate({"size": _size(v, printer), "says": s, "beyond": b})
        for v, s, b in ends
        if v is not None
    ]


def _size(mm: float, printer: Printer) -> Size:
    """A computed fit as a caliper or a feeler gauge reads it: 0.001 in, or 0.01 mm."""
    value, places = (mm / INCH, 3) if printer.units == "in" else (mm, 2)
    text = f"{value:.{places}f}"
    return Size(mm=round(mm, 4), text=text.replace("-", "−") if float(text) else "0")


def _chart(fit: YearFit, reach: tuple[float, float]) -> Drawing:
    ways = {"below": -1, "above": 1, "": 0}
    marks = [Mark(x.size.mm, f"{x.says} {_at(x)}{x.size.text}", ways[x.beyond]) for x in fit.limits]
    months = fit.months
    return year_chart(
        fit.drawing,
        f"{fit.what}: {fit.detail}",
        [s.mm for s in months],
        [s.text for s in months],
        marks,
        reach,
    )


def _at(limit: YearLimit) -> str:
    return {"below": "at ", "above": "at ", "": ""}[limit.beyond]


def _moisture(months: Sequence[float], now: float) -> Drawing:
    """The moisture of the wood, as the key to all other charts."""
    texts = [f"{v:.1f} %" for v in months]
    marks = [Mark(now, f"as cut {now:.3g} %")]
    low, high = min(*months, now), max(*months, now)
    return year_chart("year-moisture", "Moisture of the wood", months, texts, marks, (low, high))
