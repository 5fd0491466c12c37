"""The sizes of a table: what is asked, the trade's rules, and what does not go together, all told at once."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, cos, degrees, radians, tan

from boardwright.core.poses import Box
from boardwright.design.schema import TableKeys
from boardwright.formulas.movement import change_of_size
from boardwright.piece.records import Chain, Stock
from boardwright.piece.setout import SetOut

ROOT = 2**0.5
LEAST, LARGEST = 100.0, 6000.0
LEAST_BETWEEN = 60.0
"""Least room between two legs [mm]: 2 3/8 in, common practice."""
LEAST_FOOT = 12.0
"""Least thickness of a foot [mm]: 1/2 in, common practice."""
LEAST_LEG = 20.0
"""Least thickness of a leg [mm]: 3/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class LegTaperPlan:
    """A taper: which faces, thickness left at the foot, and where it starts over the floor [mm]."""

    faces: str
    foot: float
    start: float


@dataclass(frozen=True, slots=True)
class TablePlan:
    """Sizes of a table [mm].

    Attributes:
        top: box of the top, None for no top. top_stock: what it is made of.
        frame: round the legs where they meet the top, from the floor.
        leg: width and thickness of a leg. leg_stock: what it is made of.
        splay: to the ends; to the front, in the plane of the end frame [degrees]. taper: or None.
        apron: height. apron_stock: what it is made of. setback: behind the outer face of the legs.
        swells, shrinks: what half the top grows and loses across its grain over the year.
        round: the top is a circle or an ellipse.
    """

    top: Box | None
    top_stock: Stock
    frame: Box
    leg: tuple[float, float]
    leg_stock: Stock
    splay: tuple[float, float]
    taper: LegTaperPlan | None
    apron: float
    apron_stock: Stock
    setback: float
    swells: float
    shrinks: float
    round: bool = False

    @property
    def grain(self) -> int:
        """The axis of the top's grain: its longer side."""
        size = self.top or self.frame
        return 0 if size.size(0) >= size.size(1) - 1e-6 else 1

    @property
    def upright(self) -> bool:
        """True when the legs stand plumb."""
        return self.splay == (0.0, 0.0)


class Problems:
    """What does not go together; kept until all sizes are read."""

    def __init__(self, out: SetOut) -> None:
        self.out = out
        self.any = False

    def no_room(self, path: str, message: str, found: str, expected: str, remedy: str) -> None:
        """A finding: sizes that make no table."""
        self.any = True
        self.out.find(
            "table.no-room",
            message,
            path,
            found=found,
            expected=expected,
            source="common practice",
            remedy=remedy,
        )


def plan_table(out: SetOut, keys: TableKeys) -> TablePlan | None:
    """Settle every size of a table, or tell all that is wrong."""
    problems = Problems(out)
    outside = _outside(out, keys, problems)
    top_keys, aprons = keys.top, keys.aprons
    own = ("table.stock", keys.stock)
    top_stock = out.stock(("table.top.stock", top_keys.stock if top_keys else None), own)
    apron_stock = out.stock(("table.aprons.stock", aprons.stock if aprons else None), own)
    leg_stock = _leg_stock(out, keys)
    leg = _leg(out, keys, leg_stock)
    if outside is None:
        return None
    width, depth, height = outside
    settled = out.sizer.settled
    has_top = out.sizer.choose(
        "table.top.kind", top_keys.kind if top_keys else None, "board", "a board", "table.top.kind"
    )
    t = top_stock.thickness if has_top == "board" else 0.0
    high = settled(height - t, "down")
    out.sizer.explain(
        "table.legs.height", high, f"{out.text(height)} less {out.text(t)} of the top", "settled down"
    )
    rounded = t > 0 and _rounded(out, keys)
    over = (0.0, 0.0, 0.0, 0.0)
    if t:
        over = _round_overhangs(out, keys, width, depth) if rounded else _overhangs(out, keys)
    inner = (
        settled(width - over[0] - over[1] - 2 * leg[0], "down"),
        settled(depth - over[2] - over[3] - 2 * leg[1], "down"),
    )
    low = (over[0], over[2])
    frame = Box((low[0], low[1], 0.0), (low[0] + 2 * leg[0] + inner[0], low[1] + 2 * leg[1] + inner[1], high))
    for word, axis in (("wide", 0), ("deep", 1)):
        if inner[axis] < LEAST_BETWEEN:
            problems.no_room(
                "table",
                f"the table is not {word} enough for its legs",
                f"{out.about(max(inner[axis], 0.0))} between legs {out.about(leg[axis])} thick",
                f"at least {out.up(LEAST_BETWEEN)}",
                f"make it {out.up(LEAST_BETWEEN - inner[axis])} {word}er, its legs thinner or its overhang less",
            )
    apron, setback = _aprons(out, keys, height, leg, apron_stock, problems)
    splay = _splay(out, keys)
    taper = _taper(out, keys, leg, high - apron, problems)
    _inside_leg(out, setback, apron, apron_stock, leg, splay, problems)
    if apron > high / 2:
        problems.no_room(
            "table.aprons.height",
            "the aprons are too high for the legs",
            f"aprons {out.about(apron)} high at legs {out.about(high)} long",
            f"at most half of the legs, {out.down(high / 2)}",
            f"make them {out.down(high / 2)} high or less",
        )
    _chains(out, frame, leg, inner, over, t, high)
    if problems.any:
        return None
    half = (depth if width >= depth else width) / 2
    m = out.moisture
    solid = top_stock.kind == "wood" and t > 0
    swells = max(0.0, change_of_size(half, top_stock.across, m.now, m.wettest)) if solid else 0.0
    shrinks = max(0.0, -change_of_size(half, top_stock.across, m.now, m.driest)) if solid else 0.0
    box = Box((0.0, 0.0, high), (width, depth, high + t)) if t else None
    return TablePlan(
        box,
        top_stock,
        frame,
        leg,
        leg_stock,
        splay,
        taper,
        apron,
        apron_stock,
        setback,
        swells,
        shrinks,
        rounded,
    )


def _outside(out: SetOut, keys: TableKeys, problems: Problems) -> tuple[float, float, float] | None:
    figure = out.tables.figure("table_height")
    found = []
    for name in ("width", "depth", "height"):
        path = f"table.{name}"
        given = getattr(keys, name)
        value = figure.value if given is None else out.sizer.read(path)
        if value is None:
            continue
        if not LEAST <= value <= LARGEST:
            problems.any = True
            out.find(
                "table.size",
                f"the {name} of the table is out of range",
                path,
                found=out.about(value),
                expected=f"{out.up(LEAST)} to {out.down(LARGEST)}",
                remedy="check the number and its unit",
            )
            continue
        rule, source = ("height of a table", figure.reason) if given is None else ("", "")
        found.append(out.sizer.size(path, [(path, given)], value, rule=rule, source=source))
    return (found[0], found[1], found[2]) if len(found) == 3 else None


def _leg_stock(out: SetOut, keys: TableKeys) -> Stock:
    named = keys.legs.stock if keys.legs else None
    if named is not None:
        return out.stock(("table.legs.stock", named))
    usual = out.tables.figure("leg_thickness").value
    near = [s for s in out.stocks.values() if s.kind == "wood" and usual * 0.6 <= s.thickness <= usual * 1.5]
    if not near:
        return out.stock(("table.stock", keys.stock))
    best = min(near, key=lambda s: abs(s.thickness - usual))
    out.sizer.choose("table.legs.stock", None, best.id, "the wood nearest to the usual thickness of a leg")
    return best


def _leg(out: SetOut, keys: TableKeys, stock: Stock) -> tuple[float, float]:
    legs = keys.legs
    thick = out.sizer.size(
        "table.legs.thickness",
        [("table.legs.thickness", legs.thickness if legs else None)],
        stock.thickness,
        rule="thickness of its stock",
        least=LEAST_LEG,
        settle_it=bool(legs and legs.thickness),
    )
    wide = out.sizer.size(
        "table.legs.width",
        [("table.legs.width", legs.width if legs else None)],
        thick,
        rule="a square leg",
        least=LEAST_LEG,
        settle_it=bool(legs and legs.width),
    )
    return wide, thick


def _overhangs(out: SetOut, keys: TableKeys) -> tuple[float, float, float, float]:
    figure = out.tables.figure("table_overhang")
    top = keys.top
    found = []
    for side in ("left", "right", "front", "rear"):
        own = (f"table.top.{side}", getattr(top, side) if top else None)
        usual = ("table.top.overhang", top.overhang if top else None)
        found.append(
            out.sizer.size(
                f"table.top.{side}",
                [own, usual],
                figure.value,
                rule="overhang of the top beyond the legs",
                source=figure.reason,
            )
        )
    return (found[0], found[1], found[2], found[3])


def _rounded(out: SetOut, keys: TableKeys) -> bool:
    shape = keys.top.shape if keys.top else None
    path = "table.top.shape"
    return out.sizer.choose(path, shape, "straight", "four straight sides", path) == "round"


def _round_overhangs(
    out: SetOut, keys: TableKeys, width: float, depth: float
) -> tuple[float, float, float, float]:
    """What a round top reaches beyond the frame of the legs, whose corners stand on a curve inside its edge [mm]."""
    top, figure = keys.top, out.tables.figure("table_overhang")
    for side in ("left", "right", "front", "rear"):
        if top is not None and getattr(top, side) is not None:
            out.find(
                "table.joint",
                "a round top reaches beyond the corners of the legs alike all round",
                f"table.top.{side}",
                found=f"`{side}`",
                expected="`overhang` alone",
                source="common practice",
                remedy="leave it out",
            )
    over = out.sizer.size(
        "table.top.overhang",
        [("table.top.overhang", top.overhang if top else None)],
        figure.value,
        rule="overhang of a round top beyond the corners of the legs",
        source=figure.reason,
    )
    found = []
    for whole in (width, depth):
        inset = out.sizer.settled((whole - (whole - 2 * over) / ROOT) / 2, "up")
        found += [inset, inset]
    out.sizer.explain(
        "table.top.inset",
        found[0],
        f"({out.text(width)} less ({out.text(width)} less 2 × {out.text(over)}) / √2) / 2",
        "outer faces of the legs behind the edge of a round top: their corners stand on a curve inside it",
        "closed form: the rectangle of the same proportions in an ellipse",
    )
    return (found[0], found[1], found[2], found[3])


def _aprons(
    out: SetOut,
    keys: TableKeys,
    height: float,
    leg: tuple[float, float],
    stock: Stock,
    problems: Problems,
) -> tuple[float, float]:
    aprons = keys.aprons
    drawers = aprons is not None and aprons.drawers is not None
    figure = out.tables.figure("apron_drawer_height" if drawers else "apron_height")
    apron = out.sizer.size(
        "table.aprons.height",
        [("table.aprons.height", aprons.height if aprons else None)],
        min(figure.value, height / 3),
        rule="height of the aprons, at most a third of the table's",
        source=figure.reason,
        direction="down",
        least=25.0,
    )
    back = out.tables.figure("apron_setback")
    setback = out.sizer.size(
        "table.aprons.setback",
        [("table.aprons.setback", aprons.setback if aprons else None)],
        0.0 if drawers else min(back.value, max(min(leg) - stock.thickness, 0.0)),
        rule="the rails over a drawer lie flush with the legs"
        if drawers
        else "apron behind the face of the leg",
        source="common practice" if drawers else back.reason,
        direction="down",
    )
    return apron, setback


def _splay(out: SetOut, keys: TableKeys) -> tuple[float, float]:
    """Splay seen from the front, and that seen from the side as it is in the leaning end frame [degrees]."""
    splay = keys.legs.splay if keys.legs else None
    ends, front = (splay.ends or 0.0, splay.front or 0.0) if splay else (0.0, 0.0)
    return float(ends), degrees(atan(tan(radians(front)) * cos(radians(ends))))


def _taper(
    out: SetOut, keys: TableKeys, leg: tuple[float, float], under_apron: float, problems: Problems
) -> LegTaperPlan | None:
    keys_ = keys.legs.taper if keys.legs else None
    if keys_ is None:
        return None
    share, below = out.tables.figure("leg_foot_share"), out.tables.figure("leg_taper_below")
    faces = out.sizer.choose(
        "table.legs.taper.faces", keys_.faces, "inner", "the two faces that look in", "table.legs.taper.faces"
    )
    foot = out.sizer.size(
        "table.legs.taper.foot",
        [("table.legs.taper.foot", keys_.foot)],
        min(leg) * share.value,
        rule=f"foot {share.value:.3g} of the leg",
        source=share.reason,
    )
    down = out.sizer.size(
        "table.legs.taper.below",
        [("table.legs.taper.below", keys_.below)],
        below.value,
        rule="the taper starts below the apron",
        source=below.reason,
    )
    if not LEAST_FOOT <= foot < min(leg) - out.sizer.step / 2 or under_apron - down < 2 * min(leg):
        problems.no_room(
            "table.legs.taper",
            "the legs leave no room for this taper",
            f"a leg {out.about(min(leg))} thick, its foot {out.about(foot)}, "
            f"tapered over {out.about(max(under_apron - down, 0.0))}",
            f"a foot from {out.up(LEAST_FOOT)} to less than the leg, and a taper at least {out.up(2 * min(leg))} long",
            "make the foot thinner than the leg, or start the taper higher (`below`)",
        )
    return LegTaperPlan(faces, foot, under_apron - down)


def _inside_leg(
    out: SetOut,
    setback: float,
    apron: float,
    stock: Stock,
    leg: tuple[float, float],
    splay: tuple[float, float],
    problems: Problems,
) -> None:
    """The end of each apron must lie on the leg; a plumb apron stands farther in on a leg that leans."""
    for axis, word, leans in ((1, "front", tan(radians(splay[1])) * apron), (0, "end", 0.0)):
        need = setback + stock.thickness + leans
        if need > leg[axis] + 1e-6:
            problems.no_room(
                "table.aprons",
                f"the {word} aprons do not stand within the legs",
                f"{out.about(need)}: setback {out.about(setback)}, apron {out.about(stock.thickness)}"
                + (f", lean of the leg {out.about(leans)}" if leans else ""),
                f"at most the leg, {out.down(leg[axis])}",
                f"make the legs {out.up(need)} thick, or the aprons thinner or less set back",
            )


def _chains(
    out: SetOut,
    frame: Box,
    leg: tuple[float, float],
    inner: tuple[float, float],
    over: tuple[float, float, float, float],
    top: float,
    high: float,
) -> None:
    for axis, word in ((0, "width"), (1, "depth")):
        members = (("leg", leg[axis]), ("between the legs", inner[axis]), ("leg", leg[axis]))
        out.chains.append(
            Chain(f"{word} over the legs", members, (f"{word} over the legs", frame.size(axis)))
        )
    if top:
        out.chains.append(Chain("height of the table", (("leg", high), ("top", top)), ("height", high + top)))
