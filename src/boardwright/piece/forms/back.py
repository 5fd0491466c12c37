"""The back of a case: in a rabbet, in a groove, or on the surface."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import Back, JointKeys
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.forms.back_boards import BOARDED, set_boards
from boardwright.piece.forms.back_screws import back_screws
from boardwright.piece.forms.drawer_settings import usual_stock
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import SPACING, places
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.panel import Wall, float_panel
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

CHEEK = 3.0
"""Wood of the rail under a lid before and behind the back [mm]: 1/8 in, common practice."""


class BackPlan:
    """How the back is set, settled before the parts around it are placed.

    Attributes:
        set: `rabbet`, `groove`, `surface`, `shiplap`, `tongued` or `none`.
        stock: its stock.
        room: depth it takes at the rear of the inside [mm].
        behind: depth it takes behind the sides [mm].

    `rail` is the thickness of the rail under a lid that the back goes into [mm].
    """

    def __init__(
        self,
        out: SetOut,
        keys: Back | None,
        case_stock: Stock,
        behind: float | None = None,
        rail: float | None = None,
    ) -> None:
        self.keys = keys
        self.set = out.sizer.choose(
            "case.back.set",
            keys.set if keys else None,
            "rabbet" if behind is None else "groove",
            "a back is let into a rabbet" if behind is None else "a groove leaves room for the wall cleats",
            "case.back.set",
        )
        boarded = self.set in BOARDED
        wanted = 12.7 if boarded else 6.35
        default = usual_stock(out, wanted, not boarded, case_stock)
        self.stock = out.stock(("case.back.stock", keys.stock)) if keys and keys.stock else default
        if self.set != "none":
            out.sizer.choose(
                "case.back.stock",
                keys.stock if keys else None,
                self.stock.id,
                "wood nearest to 1/2 in (12.7 mm)"
                if boarded
                else "stock nearest to 1/4 in (6 mm), sheets first",
                "case.back.stock",
            )
        t = self.stock.thickness
        self.inset = 0.0
        if self.set == "groove":
            usual = 9.525 if behind is None else behind
            most = usual if rail is None else rail - t - CHEEK
            fits = rail is None or out.sizer.settled(usual, "up") <= most + 1e-6 or most < CHEEK
            rule = "wood behind the groove of the back" if behind is None else "room for the wall cleats"
            self.inset = out.sizer.size(
                "case.back.inset",
                [("case.back.inset", keys.inset if keys else None)],
                usual if fits else most,
                rule=rule if fits else "the rail under the lid keeps wood before the groove",
                direction="up" if fits else "down",
                least=out.sizer.step,
            )
        self.room = {"groove": t + self.inset, "surface": 0.0, "none": 0.0}.get(self.set, t)
        self.behind = t if self.set == "surface" else 0.0


def set_back(
    out: SetOut, plan: BackPlan, left: Draft, right: Draft, top: Draft | None, bottom: Draft | None
) -> None:
    """Put the back in. `top` and `bottom` are whole boards, or None where there are rails or nothing."""
    if plan.set == "none":
        return
    if plan.set == "surface":
        _surface(out, plan, left, right, top, bottom)
        return
    share = out.tables.figure("panel_groove_depth" if plan.set == "groove" else "back_rabbet_width")
    boarded = plan.set in BOARDED
    thin = min(d.size(d.thickness_axis) for d in (left, right, top, bottom) if d is not None)
    depth = out.sizer.size(
        "case.back.depth",
        [("case.back.depth", plan.keys.depth if plan.keys else None)],
        min(share.high or share.value, thin * 2 / 3) if boarded else min(share.value, thin / 2),
        rule="lap of the boards; at most two thirds of the thinnest part"
        if boarded
        else "lap of the back; at most half of the thinnest part",
        source=share.reason,
        direction="down",
        least=out.sizer.step,
    )
    depth = out.at_most(
        depth,
        thin * 2 / 3,
        f"the {'groove' if plan.set == 'groove' else 'rabbet'} for the back",
        "case.back.depth",
        thin,
    )
    if boarded:
        x0, x1, z0, z1 = _spans(left, right, top, bottom, depth)
        rear = left.high[1]
        room = Box((x0, rear - plan.stock.thickness, z0), (x1, rear, z1))
        set_boards(out, plan.keys, plan.set, plan.stock, _around(left, right, top, bottom), room, depth)
    elif plan.set == "rabbet":
        _rabbet(out, plan, left, right, top, bottom, depth)
    else:
        _groove(out, plan, left, right, top, bottom, depth)


def _add(out: SetOut, plan: BackPlan, box: Box) -> Draft:
    """The panel, with its length and height settled down."""
    hi = list(box.high)
    for axis in (0, 2):
        hi[axis] = box.low[axis] + out.sizer.settled(box.size(axis), "down")
    upright = (
        plan.stock.kind == "sheet"
        and plan.stock.grain
        and not _lies_only(plan.stock, hi[0] - box.low[0], hi[2] - box.low[2])
    )
    axes = (2, 0) if upright else (0, 2)
    return out.add(
        "case.back", "back", plan.stock, Box(box.low, (hi[0], hi[1], hi[2])), axes, path="case.back"
    )


def _lies_only(stock: Stock, width: float, height: float) -> bool:
    """True when a sheet gives the back only with its grain across the case."""
    if stock.sheet_size is None:
        return False
    length, across = stock.sheet_size
    return not (height <= length and width <= across) and width <= length and height <= across


def _spans(
    left: Draft, right: Draft, top: Draft | None, bottom: Draft | None, reach: float
) -> tuple[float, float, float, float]:
    x0, x1 = left.high[0] - reach, right.low[0] + reach
    z0 = bottom.high[2] - reach if bottom is not None else left.low[2]
    z1 = top.low[2] + reach if top is not None else left.high[2]
    return x0, x1, z0, z1


def _around(
    left: Draft, right: Draft, top: Draft | None, bottom: Draft | None
) -> list[tuple[Draft, int, bool]]:
    """Parts around the back with the side of each that faces in."""
    out: list[tuple[Draft, int, bool]] = [(left, 0, True), (right, 0, False)]
    if bottom is not None:
        out.append((bottom, 2, True))
    if top is not None:
        out.append((top, 2, False))
    return out


BACK_PLAY = 0.4
"""A back is cut this much short of its rabbet at each side [mm]: 1/64 in, common practice."""


def _rabbet(
    out: SetOut,
    plan: BackPlan,
    left: Draft,
    right: Draft,
    top: Draft | None,
    bottom: Draft | None,
    depth: float,
) -> None:
    t = plan.stock.thickness
    x0, x1, z0, z1 = _spans(left, right, top, bottom, depth)
    rear = left.high[1]
    play = out.sizer.settled(BACK_PLAY, "up")
    low_play = play if bottom is not None else 0.0
    panel = _add(
        out,
        plan,
        Box((x0 + play, rear - t, z0 + low_play), (x1 - play, rear, z1 - (play if top is not None else 0.0))),
    )
    fasten = plan.keys.fasten if plan.keys else None
    glued = fasten == "none" or (plan.stock.kind == "sheet" and fasten != "screws")
    for part, axis, high in _around(left, right, top, bottom):
        stop = _under_rail(out, part, top, z1)
        part.cuts.append(Step(axis, high, 1, True, t, depth, None, stop, holds=panel.id, purpose="panel"))
        face = part.face(axis, high)
        lap = sorted((face, face - depth if high else face + depth))
        along = 2 - axis
        lap_on = (max(lap[0], panel.low[axis]), min(lap[1], panel.high[axis]))
        run = (max(part.low[along], panel.low[along]), min(part.high[along], panel.high[along]))
        ids = (
            ()
            if glued
            else back_screws(out, panel, part, axis, lap_on, places(out, run, None, SPACING), depth / 2)
        )
        out.joint(
            "panel",
            part,
            panel,
            [plane(1, rear - t, {axis: lap_on, along: run}, True, glued=glued)],
            [(0.0, 1.0, 0.0)],
            f"back in a rabbet {out.text(t)} wide, {out.text(depth)} deep"
            + (", glued" if glued else f", {len(ids)} screws"),
            glued=glued,
            fasteners=ids,
            place=panel.place,
        )


def _under_rail(out: SetOut, part: Draft, top: Draft | None, end: float) -> float | None:
    """Where the rabbet or groove in a side stops under a rail between the sides [mm]; None where it runs through."""
    if top is None or part.length_axis != 2 or top.thickness_axis == 2:
        return None
    return part.low[2] + out.sizer.settled(end - part.low[2], "up")


def _groove(
    out: SetOut,
    plan: BackPlan,
    left: Draft,
    right: Draft,
    top: Draft | None,
    bottom: Draft | None,
    depth: float,
) -> None:
    t = plan.stock.thickness
    x0, x1, z0, z1 = _spans(left, right, top, bottom, 0.0)
    rear = left.high[1] - plan.inset
    panel = _add(out, plan, Box((x0, rear - t, z0), (x1, rear, z1)))
    walls = [Wall(part, axis, high) for part, axis, high in _around(left, right, top, bottom)]
    float_panel(out, panel, walls, depth=depth, path="case.back", name="back", through=True)
    for part in (left, right):
        stop = _under_rail(out, part, top, z1 + depth)
        part.cuts[:] = [
            replace(c, end=stop) if isinstance(c, Channel) and c.holds == panel.id else c for c in part.cuts
        ]


def _surface(
    out: SetOut, plan: BackPlan, left: Draft, right: Draft, top: Draft | None, bottom: Draft | None
) -> None:
    t = plan.stock.thickness
    z0 = bottom.low[2] if bottom is not None else left.low[2]
    z1 = max(left.high[2], top.high[2] if top is not None else 0.0)
    x0, x1 = left.low[0], right.high[0]
    if top is not None:
        x0, x1 = min(x0, top.low[0]), max(x1, top.high[0])
    rear = left.high[1]
    panel = _add(out, plan, Box((x0, rear, z0), (x1, rear + t, z1)))
    keys = JointKeys(kind="butt", fasten="screws", glue=plan.stock.kind == "sheet")
    if plan.keys is not None and plan.keys.fasten == "none":
        keys = JointKeys(kind="butt", fasten="none", glue=True)
    for part in (left, right, *(d for d in (bottom, top) if d is not None)):
        make_joint(out, "case.back.joint", keys, "case.back", "butt", panel, part)
