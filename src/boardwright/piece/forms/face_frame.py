"""A face frame before a case: stiles and rails on its edges, what parts its openings, fillers behind it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from boardwright.core.poses import Box
from boardwright.design.schema import FaceFrame, JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.drawer_settings import usual_stock
from boardwright.piece.forms.region import Front, Region, Walls
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

PATH = "case.face_frame"
GLUED = JointKeys(kind="butt", fasten="none", glue=True)
LEAST_OPENING = 25.0
"""An opening of a face frame smaller than this is none [mm]: 1 in, common practice."""
Bounds = list[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class FacePlan:
    """Sizes of a face frame, settled before the case is set out [mm]."""

    keys: FaceFrame
    stock: Stock
    stile: float
    rail: float
    middle: float
    overhang: float


def face_plan(out: SetOut, keys: FaceFrame | None, case_stock: Stock) -> FacePlan | None:
    """Settle a face frame; None when none is asked for."""
    if keys is None:
        return None
    thick = out.tables.figure("face_frame_thickness")
    stock = out.stock((f"{PATH}.stock", keys.stock)) if keys.stock else None
    if stock is None:
        stock = usual_stock(out, thick.value, False, case_stock)
        out.sizer.choose(
            f"{PATH}.stock", None, stock.id, "wood nearest to the usual thickness", f"{PATH}.stock"
        )
    figure = out.tables.figure("face_frame_width")

    def size(key: str, default: float, rule: str, source: str, least: float) -> float:
        return out.sizer.size(
            f"{PATH}.{key}",
            [(f"{PATH}.{key}", getattr(keys, key))],
            default,
            rule=rule,
            source=source,
            least=least,
        )

    stile = size("stile_width", figure.value, "usual width", figure.reason, 12.0)
    rail = size("rail_width", stile, "as wide as the stiles", "common practice", 12.0)
    middle = size("middle_width", stile, "as wide as the stiles", "common practice", 12.0)
    overhang = size("overhang", 0.0, "flush with the sides", "common practice", 0.0)
    return FacePlan(keys, stock, stile, rail, middle, overhang)


def face_frame(
    out: SetOut,
    plan: FacePlan,
    left: Draft,
    right: Draft,
    tops: list[Draft],
    bottoms: list[Draft],
    z: tuple[float, float],
    floor: float,
) -> Front | None:
    """Put the frame on the front edges of a case; gives its opening, or None, with a finding, without one.

    Args:
        out: the bench.
        plan: its sizes.
        left: the left side.
        right: the right side.
        tops: what closes the case above, front first.
        bottoms: the same below.
        z: from where to where the frame stands [mm].
        floor: the upper side of the bottom [mm].
    """
    t = plan.stock.thickness
    least = out.tables.figure("face_frame_least")
    flush = floor - z[0] >= least.value - 1e-6
    bottom = out.sizer.size(
        f"{PATH}.bottom_rail_width",
        [(f"{PATH}.bottom_rail_width", plan.keys.bottom_rail_width)],
        floor - z[0] if flush else plan.stile,
        rule="up to the floor of the inside" if flush else "as wide as the stiles",
        source="common practice",
        least=12.0,
    )
    x = (left.low[0] - plan.overhang, right.high[0] + plan.overhang)
    settled = out.sizer.settled
    wide, high = (
        settled(x[1] - x[0] - 2 * plan.stile, "down"),
        settled(z[1] - z[0] - bottom - plan.rail, "down"),
    )
    corner = (x[0] + plan.stile, -t, z[0] + bottom)
    opening = Box(corner, (corner[0] + wide, 0.0, corner[2] + high))
    x, z = (x[0], opening.high[0] + plan.stile), (z[0], opening.high[2] + plan.rail)
    if min(opening.size(0), opening.size(2)) < LEAST_OPENING:
        out.find(
            "frame.no-room",
            "the face frame has no opening",
            PATH,
            found=f"{out.about(x[1] - x[0])} × {out.about(z[1] - z[0])}, stiles {out.text(plan.stile)}, rails "
            f"{out.text(bottom)} and {out.text(plan.rail)}",
            expected=f"an opening of {out.up(LEAST_OPENING)} each way",
            source="common practice",
            remedy="make stiles and rails narrower, or the case larger",
        )
        return None
    spans = {
        "stile.1": ("face frame stile", (x[0], opening.low[0]), z, 2),
        "stile.2": ("face frame stile", (opening.high[0], x[1]), z, 2),
        "rail.1": ("face frame rail", (opening.low[0], opening.high[0]), (z[0], opening.low[2]), 0),
        "rail.2": ("face frame rail", (opening.low[0], opening.high[0]), (opening.high[2], z[1]), 0),
    }
    made = {
        key: _add(out, f"case.face_frame.{key}", name, plan.stock, xs, zs, t, along)
        for key, (name, xs, zs, along) in spans.items()
    }
    joint = plan.keys.joint
    for rail in ("rail.1", "rail.2"):
        for stile in ("stile.1", "stile.2"):
            _meet(out, made[stile], made[rail], joint)
    for behind, before in ((left, "stile.1"), (right, "stile.2")):
        make_joint(out, f"{PATH}.glue", GLUED, PATH, "butt", behind, made[before])
    for decks, before in ((bottoms, "rail.1"), (tops, "rail.2")):
        if decks and decks[0].box.overlap(made[before].box) is not None:
            make_joint(out, f"{PATH}.glue", GLUED, PATH, "butt", decks[0], made[before])
    walls = Walls(made["stile.1"], made["stile.2"], made["rail.1"], made["rail.2"])
    return Front(opening, walls, plan.stock, plan.middle, joint, PATH)


def _add(
    out: SetOut,
    id: str,
    name: str,
    stock: Stock,
    x: tuple[float, float],
    z: tuple[float, float],
    t: float,
    along: int,
) -> Draft:
    return out.add(
        id,
        name,
        stock,
        Box((x[0], -t, z[0]), (x[1], 0.0, z[1])),
        (along, 2 - along),
        show=((1, False),),
        path=PATH,
    )


def _meet(out: SetOut, first: Draft, second: Draft, joint: JointKeys | None) -> None:
    make_joint(out, f"{PATH}.joint", joint, f"{PATH}.joint", "mortise_tenon", first, second)


def part_openings(
    out: SetOut, region: Region, front: Front, axis: int, bounds: Bounds, thick: float, kind: str
) -> tuple[Bounds, list[Front], list[Draft]]:
    """Part an opening: members of the frame between the bounds; where what stands behind them goes.

    Args:
        out: the bench.
        region: the space behind.
        front: its opening.
        axis: 0 for columns, 2 for rows.
        bounds: of the new openings, low to high [mm].
        thick: of what stands behind a member [mm].
        kind: of it; `rail` and `none` have nothing behind.

    Returns:
        Bounds of the spaces behind, the new openings, the members.
    """
    t = front.box.size(1)
    members: list[Draft] = []
    edges = [region.box.low[axis]]
    for i, ((_, a), (b, _)) in enumerate(pairwise(bounds)):
        if kind == "none":
            edges += [a, b]
            continue
        spans = {0: (front.box.low[0], front.box.high[0]), 2: (front.box.low[2], front.box.high[2])}
        spans[axis] = (a, b)
        id = f"{region.name}.face.{i + 1}"
        name = "face frame mullion" if axis == 0 else "face frame rail"
        member = _add(out, id, name, front.stock, spans[0], spans[2], t, 2 - axis)
        w = front.walls
        for wall in (w.floor, w.ceiling) if axis == 0 else (w.left, w.right):
            if wall is not None:
                _meet(out, wall, member, front.joint)
        members.append(member)
        if kind == "rail":
            edges += [a, b]
        elif axis == 0:
            low = a + out.sizer.settled((b - a - thick) / 2)
            edges += [low, low + thick]
        else:
            edges += [b - thick, b]
    edges.append(region.box.high[axis])
    inner = [(edges[i], edges[i + 1]) for i in range(0, len(edges), 2)]
    return inner, _fronts(front, axis, bounds, members), members


def _fronts(front: Front, axis: int, bounds: Bounds, members: list[Draft]) -> list[Front]:
    out = []
    for i, (a, b) in enumerate(bounds):
        low, high = list(front.box.low), list(front.box.high)
        low[axis], high[axis] = a, b
        before = members[i - 1] if members and i else None
        after = members[i] if i < len(members) else None
        first, last = i == 0, i == len(bounds) - 1
        w = front.walls
        if axis == 2:
            w = replace(w, floor=w.floor if first else before, ceiling=w.ceiling if last else after)
        else:
            w = replace(w, left=w.left if first else before, right=w.right if last else after)
        out.append(replace(front, box=Box((low[0], low[1], low[2]), (high[0], high[1], high[2])), walls=w))
    return out


def glue_behind(out: SetOut, members: Sequence[Draft], parts: Sequence[Draft | None]) -> None:
    """Glue members of the frame to the edges of what stands behind them."""
    for member, part in zip(members, parts, strict=False):
        if part is not None:
            make_joint(out, f"{PATH}.glue", GLUED, PATH, "butt", part, member)


def at_front(region: Region) -> Region:
    """The opening of the frame before a space, as the space that a door or a drawer front stands in."""
    front = region.front
    if front is None:
        return region
    low, high = front.box.low, front.box.high
    return replace(
        region,
        box=Box(low, (high[0], region.box.high[1], high[2])),
        walls=front.walls,
        inner_depth=region.inner_depth + front.box.size(1),
        fit=(front.box.size(0), front.box.size(2)),
        front=None,
    )
