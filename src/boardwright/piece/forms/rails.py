"""Rails between the legs of a table: aprons under the top, stretchers near the floor.

Those at the front and rear stand plumb. Those at the ends lean with the legs, so that each end of a table with
splayed legs is a flat frame.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, radians
from typing import cast

from boardwright.core.poses import Box, Pose, Vec
from boardwright.design.schema import JointKeys, Stretchers
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.legs import Leg, about, inner_face, lean, middle_at
from boardwright.piece.forms.planes import level
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.sloping import SQUARE, End, Plane, cut_to, side_plane, sloping_butt, stretch
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

APRON_JOINT = "mortise_tenon"
SIDES = ("front", "rear", "left", "right")

FORKED = ("bridle", "half_lap")
"""Joints that take the whole middle, or half, of a leg."""


@dataclass(frozen=True, slots=True)
class Rails:
    """What all rails of one kind share.

    Attributes:
        name: for people. path: of their keys. id: head of their ids.
        stock: what they are made of. height: [mm]. low: their lower edge over the floor [mm].
        joint: what the file asks of their joints, and its path.
        all_round: each leg takes two of them at one height.
    """

    name: str
    id: str
    path: str
    stock: Stock
    height: float
    low: float
    joint: JointKeys | None
    joint_path: str
    all_round: bool = True


def of_side(legs: list[Leg], side: str) -> tuple[Leg, Leg]:
    """The two legs at a side of the table, the left or front one first."""
    k = {"front": (0, 1), "rear": (2, 3), "left": (0, 2), "right": (1, 3)}[side]
    return legs[k[0]], legs[k[1]]


def put_aprons(out: SetOut, plan: TablePlan, legs: list[Leg], sides: tuple[str, ...]) -> dict[str, Draft]:
    """Put aprons at some sides of the table and join them to the legs."""
    table = out.design.file.table
    keys = table.aprons if table else None
    top = plan.frame.high[2]
    rails = Rails(
        name="apron",
        id="table.apron",
        path="table.aprons",
        stock=plan.apron_stock,
        height=plan.apron,
        low=top - plan.apron,
        joint=keys.joint if keys else None,
        joint_path="table.aprons.joint",
    )
    made = {}
    for side in sides:
        axis = 0 if side in ("front", "rear") else 1
        across = 1 - axis
        pair = of_side(legs, side)
        outer = pair[0].outward(across)
        face = plan.frame.high[across] if outer else plan.frame.low[across]
        rail = _put(out, plan, rails, side, face, plan.setback)
        if rail.tilt is not None:
            _level_top(out, rail, top)
        _join(out, plan, rails, pair, rail, axis)
        made[side] = rail
    return made


def _no_fork(out: SetOut, rails: Rails) -> None:
    """A finding, once: rails that come to a leg from two sides cannot both take its middle."""
    out.find(
        "table.joint",
        f"{rails.name}s from two sides cannot both take the middle of a leg",
        rails.joint_path,
        found=rails.joint.kind if rails.joint else "",
        expected="`mortise_tenon`, `butt`, `dado`, `tongue` or `sliding_dovetail`",
        source="common practice",
        remedy="use `mortise_tenon`",
    )


def _put(out: SetOut, plan: TablePlan, rails: Rails, side: str, face: float, inset: float) -> Draft:
    """A rail whose outer face lies behind that of the legs [mm]."""
    axis = 0 if side in ("front", "rear") else 1
    across = 1 - axis
    outer = side in ("rear", "right")
    t = rails.stock.thickness
    at = sorted((face - inset, face - inset - t) if outer else (face + inset, face + inset + t))
    low, high = [0.0, 0.0, rails.low], [0.0, 0.0, rails.low + rails.height]
    low[across], high[across] = at
    low[axis] = plan.frame.low[axis] + plan.leg[axis]
    high[axis] = plan.frame.high[axis] - plan.leg[axis]
    word = {"front": "front", "rear": "rear"}.get(side, "end")
    rail = out.add(
        f"{rails.id}.{side}",
        f"{word} {rails.name}",
        rails.stock,
        Box((low[0], low[1], low[2]), (high[0], high[1], high[2])),
        (axis, 2),
        show=((across, outer),),
        path=rails.path,
    )
    rail.tilt = _tilt(plan, side)
    return rail


def _tilt(plan: TablePlan, side: str) -> Pose | None:
    """How the end frame of a table with splayed legs leans; None for what stands plumb."""
    if side in ("front", "rear") or not plan.splay[0]:
        return None
    right = side == "right"
    x = plan.frame.high[0] if right else plan.frame.low[0]
    return about((x, 0.0, plan.frame.high[2]), lean(plan.splay[0], 0.0, right, False))


def _level_top(out: SetOut, rail: Draft, top: float) -> None:
    """Bevel the upper edge of a leaning apron level with the tops of the legs."""
    stretch(out, rail, 2, side_plane(rail, 2, False), level(top), even=False)
    cut_to(rail, 2, True, level(top))


def _join(out: SetOut, plan: TablePlan, rails: Rails, pair: tuple[Leg, Leg], rail: Draft, axis: int) -> None:
    """Join a rail to the two legs it stands between."""
    under = rails.low + rails.height
    tapered = plan.taper is not None and rails.low < plan.taper.start - 1e-6
    if plan.upright and not tapered:
        if rails.all_round and rails.joint is not None and rails.joint.kind in FORKED:
            _no_fork(out, rails)
            rails = replace(rails, joint=None)
        for leg in pair:
            make_joint(
                out, f"{rails.path}.joint", rails.joint, rails.joint_path, APRON_JOINT, leg.draft, rail
            )
        return
    planes = [inner_face(plan, leg, axis, under) for leg in pair]
    ends = [End(leg.draft, axis, not leg.outward(axis), rails.all_round) for leg in pair]
    fit_between(out, rails, rail, axis, (planes[0], planes[1]), (ends[0], ends[1]))


def fit_between(
    out: SetOut,
    rails: Rails,
    rail: Draft,
    axis: int,
    planes: tuple[Plane, Plane],
    ends: tuple[End, End],
) -> None:
    """Cut a rail to two sloping faces and hold it there with dowels.

    Args:
        out: the bench.
        rails: what the rail is.
        rail: the part.
        axis: of its length.
        planes: the faces at its low and high end; the normals point into the rail.
        ends: the parts that have these faces.
    """
    stretch(out, rail, axis, planes[0], planes[1])
    fasten = _sloping_fasten(out, rails)
    for high, plane, end in zip((False, True), planes, ends, strict=True):
        cut_to(rail, axis, high, plane, end.draft.id)
        sloping_butt(out, end, End(rail, axis, high), plane, fasten, rails.joint_path)


def _sloping_fasten(out: SetOut, rails: Rails) -> str:
    keys = rails.joint
    if keys is None:
        return "dowels"
    fasten = keys.fasten or "dowels"
    if keys.kind == "butt" and fasten in ("dowels", "none"):
        return fasten
    out.find(
        "table.joint",
        f"a sloping shoulder of the {rails.name}s takes dowels or glue alone",
        rails.joint_path,
        found=keys.kind if keys.kind != "butt" else f"butt with {fasten}",
        expected="`butt`, with `fasten: dowels` or `fasten: none`",
        source="common practice",
        remedy="use `butt`, or let the legs stand plumb",
    )
    return "dowels"


def put_stretchers(out: SetOut, plan: TablePlan, legs: list[Leg], keys: Stretchers) -> None:
    """Put stretchers between the legs."""
    aprons = out.design.file.table.aprons if out.design.file.table else None
    stock = out.stock(("table.stretchers.stock", keys.stock)) if keys.stock else plan.apron_stock
    kind = out.sizer.choose(
        "table.stretchers.kind", keys.kind, "box", "four rails round the legs", "table.stretchers.kind"
    )
    sizes = []
    for name in ("height", "up"):
        figure = out.tables.figure(f"stretcher_{name}")
        sizes.append(
            out.sizer.size(
                f"table.stretchers.{name}",
                [(f"table.stretchers.{name}", getattr(keys, name))],
                figure.value,
                rule="height of a stretcher" if name == "height" else "room under a stretcher",
                source=figure.reason,
                least=12.0 if name == "height" else 0.0,
            )
        )
    joint, path = keys.joint, "table.stretchers.joint"
    if joint is None and aprons is not None and plan.upright and plan.taper is None:
        joint, path = aprons.joint, "table.aprons.joint"
    rails = Rails(
        name="stretcher",
        id="table.stretcher",
        path="table.stretchers",
        stock=stock,
        height=sizes[0],
        low=sizes[1],
        joint=joint,
        joint_path=path,
        all_round=kind == "box",
    )
    if not _stands(out, plan, rails, kind):
        return
    sides = {"box": SIDES, "h": ("left", "right"), "ends": ("left", "right")}[kind]
    made = {side: _stretcher(out, plan, rails, legs, side) for side in sides}
    if kind == "h":
        _cross_rail(out, plan, rails, made["left"], made["right"])


def _stands(out: SetOut, plan: TablePlan, rails: Rails, kind: str) -> bool:
    """False, with a finding, when stretchers meet the aprons, the start of a taper, or are thicker than the legs."""
    top, apron = rails.low + rails.height, plan.frame.high[2] - plan.apron
    start = plan.taper.start if plan.taper else None
    thin = min(plan.leg) if plan.taper is None else min(plan.taper.foot, *plan.leg)
    wrong = ""
    if top > apron - 10.0:
        wrong = f"their upper edge {out.about(top)} over the floor, the aprons at {out.about(apron)}"
    elif start is not None and rails.low < start < top:
        wrong = f"from {out.about(rails.low)} to {out.about(top)}, the taper starts at {out.about(start)}"
    elif rails.stock.thickness > thin + 1e-6:
        wrong = f"{out.about(rails.stock.thickness)} thick at legs {out.about(thin)} thick"
    if wrong:
        out.find(
            "table.no-room",
            "the stretchers have no place at the legs",
            "table.stretchers",
            found=wrong,
            expected="clear of the aprons, of the start of a taper, and no thicker than the legs",
            source="common practice",
            remedy="set them lower (`up`), make them less high, or use thinner stock",
        )
    return not wrong


def _stretcher(out: SetOut, plan: TablePlan, rails: Rails, legs: list[Leg], side: str) -> Draft:
    """A stretcher in the middle of its two legs, its own middle at the height that is asked."""
    axis = 0 if side in ("front", "rear") else 1
    across = 1 - axis
    pair = of_side(legs, side)
    outer = pair[0].outward(across)
    middle = (_tilt(plan, side) or SQUARE).inverse_point(
        middle_at(plan, pair[0], rails.low + rails.height / 2)
    )
    face = plan.frame.high[across] if outer else plan.frame.low[across]
    inset = (face - middle[across]) * (1.0 if outer else -1.0) - rails.stock.thickness / 2
    here = replace(rails, low=middle[2] - rails.height / 2)
    rail = _put(out, plan, here, side, face, out.sizer.settled(inset))
    _join(out, plan, here, pair, rail, axis)
    return rail


def _cross_rail(out: SetOut, plan: TablePlan, rails: Rails, left: Draft, right: Draft) -> None:
    """The rail between two end stretchers, low enough to lie on them where they lean."""
    t = rails.stock.thickness
    y = plan.frame.low[1] + out.sizer.settled((plan.frame.size(1) - t) / 2)
    low: Vec = (left.high[0], y, rails.low)
    high = out.sizer.settled(rails.height * cos(radians(plan.splay[0])), "down")
    low = (low[0], low[1], rails.low + (rails.height - high) / 2)
    box = Box(low, (right.low[0], y + t, low[2] + high))
    rail = out.add("table.stretcher.middle", "middle stretcher", rails.stock, box, (0, 2), path=rails.path)
    if left.tilt is None:
        for end in (left, right):
            make_joint(out, f"{rails.path}.joint", rails.joint, rails.joint_path, APRON_JOINT, end, rail)
        return
    planes = cast(tuple[Plane, Plane], tuple(side_plane(d, 0, h) for d, h in ((left, True), (right, False))))
    fit_between(out, rails, rail, 0, planes, (End(left, 0, True, False), End(right, 0, False, False)))
