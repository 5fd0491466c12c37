"""Parting a space into rows or columns: fixed sizes, shares, and what stands between."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys, Length
from boardwright.piece.drafts import Corner, Draft
from boardwright.piece.forms.face_frame import glue_behind, part_openings
from boardwright.piece.forms.fillers import plates_clear
from boardwright.piece.forms.region import WEB_FRAME, Front, Region, rear_rail
from boardwright.piece.forms.web_frame import web_frame
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Chain, Stock
from boardwright.piece.setout import SetOut

LEAST_SPACE = 10.0
"""A space smaller than this in any direction is no space [mm]."""
IN_WEB_FRAME = 1 / 6
"""Depth of a dado for a divider in a rail of a web frame, of its thickness: the groove in its edge stays whole
(common practice)."""


@dataclass(frozen=True, slots=True)
class Item:
    """One space of a row or column: its path and name, a fixed size or a share."""

    path: str
    name: str
    size: tuple[str, Length] | None
    share: float


@dataclass(frozen=True, slots=True)
class Between:
    """What parts the spaces: `none`, `shelf`, `rail`, `web_frame` or `divider`, and how it is made."""

    kind: str
    stock: Stock | None
    joint: JointKeys | None
    path: str
    width: float = 0.0
    dust: Stock | None = None


def split(out: SetOut, region: Region, axis: int, items: Sequence[Item], between: Between) -> list[Region]:
    """Part a region along an axis (0 for columns, 2 for rows), low to high, and put the parts between in.

    Args:
        out: the bench.
        region: the space.
        axis: 0 or 2.
        items: from left to right, or from bottom to top.
        between: what stands between.

    Returns:
        One region an item; empty when the sizes do not add up (a finding says so).
    """
    thick = between.stock.thickness if between.stock is not None and between.kind != "none" else 0.0
    if region.front is not None:
        return _framed(out, region, region.front, axis, items, between, thick)
    sizes = _sizes(out, region, axis, items, thick)
    if sizes is None:
        return []
    bounds = _bounds(out, region, axis, sizes, thick)
    nothing: list[Draft | None] = [None] * (len(items) - 1)
    parts = _parts(out, region, axis, bounds, between) if thick else nothing
    _chain(out, region, axis, items, bounds, thick)
    return _regions(region, axis, items, sizes, bounds, parts)


def _framed(
    out: SetOut,
    region: Region,
    front: Front,
    axis: int,
    items: Sequence[Item],
    between: Between,
    thick: float,
) -> list[Region]:
    """Part a space behind a face frame: sizes are those of the openings of the frame."""
    opening = replace(region, box=front.box, walls=front.walls)
    width = front.middle if thick else 0.0
    sizes = _sizes(out, opening, axis, items, width)
    if sizes is None:
        return []
    bounds = _bounds(out, opening, axis, sizes, width)
    inner, fronts, members = part_openings(out, region, front, axis, bounds, thick, between.kind)
    parts: list[Draft | None] = [None] * (len(items) - 1)
    if thick and between.kind != "rail":
        parts = _parts(out, region, axis, inner, between)
        glue_behind(out, members, parts)
    _chain(out, opening, axis, items, bounds, width)
    made = _regions(region, axis, items, sizes, inner, parts)
    return [replace(r, front=f) for r, f in zip(made, fronts, strict=True)]


def _sizes(out: SetOut, region: Region, axis: int, items: Sequence[Item], thick: float) -> list[float] | None:
    """Wanted sizes [mm], before positions are settled."""
    total = region.box.size(axis)
    word = "height" if axis == 2 else "width"
    fixed = [None if it.size is None else out.sizer.read(it.size[0]) for it in items]
    if any(f is None and it.size is not None for f, it in zip(fixed, items, strict=True)):
        return None
    taken = sum(f for f in fixed if f is not None) + thick * (len(items) - 1)
    shares = sum(it.share for f, it in zip(fixed, items, strict=True) if f is None)
    rest = total - taken
    text = out.text
    if shares == 0:
        if abs(rest) > out.sizer.step * len(items):
            out.find(
                "space.does-not-add-up",
                f"the {word}s in `{region.path}` do not add up to the inside",
                region.path,
                found=out.about(taken) + (f" with {text(thick)} between each" if thick else ""),
                expected=out.about(total),
                remedy=f"{'take' if rest < 0 else 'add'} {out.about(abs(rest))} "
                f"{'off' if rest < 0 else 'to'} one of them, or leave one without `size`",
            )
            return None
        last = max(range(len(items)), key=lambda i: fixed[i] or 0.0)
        fixed[last] = (fixed[last] or 0.0) + rest
        return [f or 0.0 for f in fixed]
    sizes = [rest * it.share / shares if f is None else f for f, it in zip(fixed, items, strict=True)]
    small = min(sizes)
    if small < LEAST_SPACE:
        which = items[sizes.index(small)]
        out.find(
            "space.too-small",
            f"`{which.path}` would have a {word} of {out.about(small)}",
            which.path,
            found=f"inside {out.about(total)}, less {out.about(taken)} for fixed sizes and what stands between",
            expected=f"at least {out.up(LEAST_SPACE)} for each space",
            remedy=_room_for(out, which, LEAST_SPACE * shares / which.share - rest),
        )
        return None
    return sizes


def _room_for(out: SetOut, item: Item, short: float) -> str:
    if item.size is not None:
        return f"make it {out.up(LEAST_SPACE)} or more"
    return f"take {out.up(short)} off the fixed sizes, make the inside that much larger, or have fewer spaces"


def _bounds(
    out: SetOut, region: Region, axis: int, sizes: list[float], thick: float
) -> list[tuple[float, float]]:
    """Low and high end of each space [mm]; what is cut (the place of each divider) lies on the step."""
    wall = region.walls.left if axis == 2 else region.walls.floor
    datum = wall.low[axis] if wall is not None else region.box.low[axis]
    low = region.box.low[axis]
    at = low
    bounds = []
    for i, size in enumerate(sizes):
        at += size
        if i == len(sizes) - 1:
            bounds.append((low, region.box.high[axis]))
            break
        edge = datum + out.sizer.settled(at - datum)
        bounds.append((low, edge))
        low = edge + thick
        at += thick
    return bounds


def _parts(
    out: SetOut, region: Region, axis: int, bounds: list[tuple[float, float]], between: Between
) -> list[Draft | None]:
    ends = (
        (region.walls.left, region.walls.right) if axis == 2 else (region.walls.floor, region.walls.ceiling)
    )
    joint = _inner_joint(out, region, between)
    stock = between.stock
    assert stock is not None
    meets = [e for end in ends if end is not None for e in (end, rear_rail(out, end)) if e is not None]
    if ends[0] is None or ends[1] is None:
        out.find(
            "space.nothing-to-stand-on",
            f"a {between.kind} in `{region.path}` has nothing to be joined to",
            between.path or region.path,
            found="an open side",
            expected="a part at both ends of it",
            remedy="set `between: shelf` in the rows around it, or give the case a full top and bottom",
        )
        return [None] * (len(bounds) - 1)
    if axis == 2:
        plates_clear(
            out, region, [(a, b) for (_, a), (b, _) in pairwise(bounds)], between.path or region.path
        )
    made: list[Draft | None] = []
    length_axis = 0 if axis == 2 else 2
    depth = between.width if between.kind == "rail" else region.inner_depth
    for i, ((_, high), (low, _)) in enumerate(pairwise(bounds)):
        lo = [region.box.low[0], region.box.low[1], region.box.low[2]]
        hi = [region.box.high[0], region.box.low[1] + min(depth, region.inner_depth), region.box.high[2]]
        lo[axis], hi[axis] = high, low
        name = f"{region.name}.{between.kind}.{i + 1}"
        if between.kind == "web_frame":
            where = between.path or region.path
            made.append(web_frame(out, region, name, (high, low), stock, joint, between.dust, where))
            continue
        part = out.add(
            name,
            between.kind,
            stock,
            Box((lo[0], lo[1], lo[2]), (hi[0], hi[1], hi[2])),
            (length_axis, 1),
            show=((1, False), (axis, True), (axis, False)) if between.kind == "shelf" else ((1, False),),
            path=between.path or region.path,
        )
        for end in meets:
            make_joint(
                out,
                f"{name}.joint",
                joint,
                f"{between.path or region.path}.joint",
                "dado",
                end,
                part,
                depth_share=IN_WEB_FRAME if end.name == WEB_FRAME else None,
                both_faces=any(f".{kind}." in end.id for kind in ("divider", "shelf", "rail", "web_frame")),
            )
            _clear_behind(end, part, axis)
        made.append(part)
    return made


def _clear_behind(rail: Draft, part: Draft, axis: int) -> None:
    """Cut away behind a rail what a divider has grown into it: there lie runners, the next divider, a web frame."""
    high = rail.low[2] > part.low[2]
    depth, behind = part.grown.get((2, high), 0.0), part.high[1] - rail.high[1]
    short = ".rail." in rail.id or rail.name == WEB_FRAME
    if axis == 0 and short and depth > 0 and behind > 1e-6:
        part.shape_end(Corner(2, high, depth, 1, True, behind))


def _inner_joint(out: SetOut, region: Region, between: Between) -> JointKeys | None:
    """The joint asked for; a rabbet is refused, since what parts two spaces has wood on both sides of it."""
    if between.joint is None or between.joint.kind != "rabbet":
        return between.joint
    path = f"{between.path or region.path}.joint"
    out.find(
        "joint.not-at-an-end",
        f"a {between.kind} between two spaces does not stand at the end of what it meets",
        path,
        found="rabbet",
        expected="dado, tongue or butt",
        source="common practice",
        remedy="use `dado`",
    )
    return None


def _chain(
    out: SetOut,
    region: Region,
    axis: int,
    items: Sequence[Item],
    bounds: list[tuple[float, float]],
    thick: float,
) -> None:
    members: list[tuple[str, float]] = []
    for i, (item, (low, high)) in enumerate(zip(items, bounds, strict=True)):
        if i and thick:
            members.append(("between", thick))
        members.append((item.name, high - low))
        out.sizer.explain(
            f"{item.name}.{'height' if axis == 2 else 'width'}",
            high - low,
            "" if item.size else _share(item, items),
            "the places of what stands between are settled on the step",
            item.size[0] if item.size else "",
            given=item.size is not None,
        )
    word = "height" if axis == 2 else "width"
    out.chains.append(
        Chain(f"{word} of {region.name}", tuple(members), (f"{region.name} {word}", region.box.size(axis)))
    )


def _share(item: Item, items: Sequence[Item]) -> str:
    shares = [it.share for it in items if it.size is None]
    if len(shares) == 1:
        return "all that is left"
    if max(shares) - min(shares) < 1e-9:
        return f"one of {len(shares)} equal shares of what is left"
    return f"{100 * item.share / sum(shares):.3g} % of what is left"


def _regions(
    region: Region,
    axis: int,
    items: Sequence[Item],
    sizes: list[float],
    bounds: list[tuple[float, float]],
    parts: list[Draft | None],
) -> list[Region]:
    out = []
    for i, (item, (low, high)) in enumerate(zip(items, bounds, strict=True)):
        lo = list(region.box.low)
        hi = list(region.box.high)
        lo[axis], hi[axis] = low, high
        before, after = (parts[i - 1] if i else None), (parts[i] if i < len(parts) else None)
        if axis == 2:
            walls = replace(
                region.walls,
                floor=region.walls.floor if i == 0 else before,
                ceiling=region.walls.ceiling if i == len(items) - 1 else after,
            )
        else:
            walls = replace(
                region.walls,
                left=region.walls.left if i == 0 else before,
                right=region.walls.right if i == len(items) - 1 else after,
            )
        alike = [b[1] - b[0] for b, s in zip(bounds, sizes, strict=True) if abs(s - sizes[i]) < 1e-6]
        fit = list(region.fit)
        fit[0 if axis == 0 else 1] = min(alike)
        first, last = i == 0, i == len(items) - 1
        o = region.outer
        outer = (
            (o[0] and first, o[1] and last, o[2], o[3])
            if axis == 0
            else (o[0], o[1], o[2] and first, o[3] and last)
        )
        out.append(
            Region(
                Box((lo[0], lo[1], lo[2]), (hi[0], hi[1], hi[2])),
                walls,
                item.path,
                item.name,
                region.inner_depth,
                (fit[0], fit[1]),
                outer,
                way=region.way,
                behind=region.behind,
                under_lid=region.under_lid and (axis == 0 or last),
                beside=region.beside,
            )
        )
    return out
