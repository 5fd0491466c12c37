"""What a case stands on: a plinth, a base sawn out to bracket feet, or four legs."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.design.schema import CaseBase, JointKeys
from boardwright.piece.cuts import Curve
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.run_room import strip_stock
from boardwright.piece.forms.slab import hold_free
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

PATH = "case.base"
GLUED = JointKeys(kind="butt", fasten="none", glue=True)
FIGURES = {"plinth": "plinth_height", "bracket_feet": "bracket_foot_height", "legs": "base_leg_height"}
BLOCK = 63.5
"""Longest glue block in a corner [mm]: 2 1/2 in, common practice; longer ones are glued too far across the grain."""
Span = tuple[float, float]


@dataclass(frozen=True, slots=True)
class BasePlan:
    """A base, settled before the case is set out [mm]."""

    keys: CaseBase
    kind: str
    stock: Stock
    height: float
    setback: float


def base_plan(out: SetOut, keys: CaseBase | None, case_stock: Stock) -> BasePlan | None:
    """Settle the base; None when none is asked for."""
    if keys is None:
        return None
    kind = out.sizer.choose(
        f"{PATH}.kind", keys.kind, "plinth", "a plinth set back under the case", f"{PATH}.kind"
    )
    woods = [s for s in out.stocks.values() if s.kind == "wood"]
    usual = max(woods, key=lambda s: s.thickness) if kind == "legs" and woods else case_stock
    stock = out.stock((f"{PATH}.stock", keys.stock)) if keys.stock else usual
    figure = out.tables.figure(FIGURES[kind])
    height = out.sizer.size(
        f"{PATH}.height",
        [(f"{PATH}.height", keys.height)],
        figure.value,
        rule="usual height",
        source=figure.reason,
        least=25.0,
    )
    back = out.tables.figure("plinth_setback")
    setback = out.sizer.size(
        f"{PATH}.setback",
        [(f"{PATH}.setback", keys.setback)],
        back.value if kind == "plinth" else 0.0,
        rule="room for the toes" if kind == "plinth" else "flush with the case",
        source=back.reason if kind == "plinth" else "common practice",
    )
    return BasePlan(keys, kind, stock, height, setback)


LEAST_BETWEEN_LEGS = 20.0
"""Between two legs of a base [mm]: 3/4 in, common practice."""


def base(
    out: SetOut, plan: BasePlan, bottom: Draft | None, x: Span, inside: Span, y: Span, up: float
) -> None:
    """Put the base under a case.

    Args:
        out: the bench.
        plan: the base.
        bottom: the whole board it is fixed to, None without one.
        x: from where to where the case stands from left to right [mm].
        inside: the same between its sides [mm].
        y: from front to rear [mm].
        up: height of the bottom over the lower edges of the sides [mm].
    """
    front = (y[0] + plan.setback, y[1])
    inner = x[1] - x[0] - 2 * plan.stock.thickness
    if (
        bottom is None
        or up > 1e-6
        or front[1] - front[0] < 4 * plan.stock.thickness
        or inner < plan.stock.thickness
    ):
        out.find(
            "case.base-no-room",
            "the base has nothing to be fixed to, or no room",
            PATH,
            found="no whole bottom"
            if bottom is None
            else f"bottom {out.text(up)} up, {out.about(front[1] - front[0])} deep",
            expected="a whole bottom at the lower edges of the sides, and room for the members",
            source="common practice",
            remedy="use `bottom: {kind: full}` without `up`, and a smaller `setback`",
        )
        return
    if plan.kind == "legs":
        _legs(out, plan, bottom, inside, front)
        return
    members = _frame(out, plan, x, front)
    _strips(out, plan, bottom, members)
    if plan.kind == "bracket_feet":
        _feet(out, plan, members)


def _legs(out: SetOut, plan: BasePlan, bottom: Draft, inside: Span, y: Span) -> None:
    """Four square legs under the corners of the inside, doweled into the bottom."""
    t, z = plan.stock.thickness, bottom.low[2]
    inset = max(plan.setback, 0.0)
    low_x, high_x = inside[0] + inset, inside[1] - inset
    if min(high_x - low_x, y[1] - y[0]) < 2 * t + LEAST_BETWEEN_LEGS:
        out.find(
            "case.base-no-room",
            "the legs of the base do not stand apart",
            PATH,
            found=f"{out.about(high_x - low_x)} and {out.about(y[1] - y[0])} for two legs {out.about(t)} thick",
            expected=f"{out.up(LEAST_BETWEEN_LEGS)} between them",
            source="common practice",
            remedy="use thinner legs, a smaller `setback`, or `kind: plinth`",
        )
        return
    for i, (x0, y0) in enumerate(
        ((low_x, y[0]), (high_x - t, y[0]), (low_x, y[1] - t), (high_x - t, y[1] - t))
    ):
        box = Box((x0, y0, z - plan.height), (x0 + t, y0 + t, z))
        leg = out.add(
            f"case.base.leg.{i + 1}", "leg", plan.stock, box, (2, 0), show=((1, False), (0, False)), path=PATH
        )
        make_joint(out, f"{PATH}.joint", plan.keys.corner, f"{PATH}.corner", "butt", bottom, leg)


def _frame(out: SetOut, plan: BasePlan, x: Span, y: Span) -> dict[str, Draft]:
    """Two ends from front to rear, front and rear between them."""
    t, h = plan.stock.thickness, plan.height
    wide, deep = out.sizer.settled(x[1] - x[0] - 2 * t, "down"), out.sizer.settled(y[1] - y[0], "down")
    x = (x[0], x[0] + wide + 2 * t)
    y = (y[1] - deep, y[1])
    between = (x[0] + t, x[1] - t)
    spans = {
        "left": ("base end", (x[0], x[0] + t), y, 1),
        "right": ("base end", (x[1] - t, x[1]), y, 1),
        "front": ("base front", between, (y[0], y[0] + t), 0),
        "rear": ("base rear", between, (y[1] - t, y[1]), 0),
    }
    made = {
        key: out.add(
            f"case.base.{key}",
            name,
            plan.stock,
            Box((xs[0], ys[0], 0.0), (xs[1], ys[1], h)),
            (along, 2),
            show=((1, False),) if key == "front" else ((0, key == "right"),),
            path=PATH,
        )
        for key, (name, xs, ys, along) in spans.items()
    }
    feet = plan.kind == "bracket_feet"
    spline = "spline" if plan.stock.kind == "wood" else "none"
    usual = JointKeys.model_validate({"kind": "mitre", "with": spline}) if feet else None
    corner = plan.keys.corner or usual
    for end in ("left", "right"):
        make_joint(out, f"{PATH}.corner", corner, f"{PATH}.corner", "butt", made[end], made["front"])
        make_joint(out, f"{PATH}.rear", None, PATH, "butt", made[end], made["rear"])
    return made


def _strips(out: SetOut, plan: BasePlan, bottom: Draft, members: dict[str, Draft]) -> None:
    """Strips inside the members, screwed up into the bottom.

    A solid bottom is held at its front: the strips of the ends have slots towards the rear, which has no strip.
    """
    stock, moves = strip_stock(out), bottom.stock.kind == "wood"
    t, high = stock.thickness, out.sizer.settled(min(stock.thickness, plan.height / 3), "down")
    z = (plan.height - high, plan.height)
    inside = {
        0: (members["left"].seen().high[0], members["right"].seen().low[0]),
        1: (members["front"].seen().high[1], members["rear"].seen().low[1]),
    }
    keys = (
        (("front", 0), ("left", 1), ("right", 1))
        if moves
        else (("front", 0), ("rear", 0), ("left", 1), ("right", 1))
    )
    for key, along in keys:
        member = members[key]
        across = 1 - along
        face = inside[across][0 if key in ("front", "left") else 1]
        span = (face, face + t) if key in ("front", "left") else (face - t, face)
        run = inside[along]
        if along == 1:
            run = (run[0] + t, run[1] - (0.0 if moves else t))
        long = out.sizer.settled(run[1] - run[0], "down")
        spans = {along: (run[0], run[0] + long), across: span}
        box = Box((spans[0][0], spans[1][0], z[0]), (spans[0][1], spans[1][1], z[1]))
        strip = out.add(f"case.base.strip.{key}", "base strip", stock, box, (along, 2), path=PATH)
        make_joint(out, f"{PATH}.strip", GLUED, PATH, "butt", member, strip)
        at = out.sizer.settled(t / 2)
        hold_free(out, bottom, strip, 2, True, along, at, PATH, from_low=moves and along == 1)


def _feet(out: SetOut, plan: BasePlan, members: dict[str, Draft]) -> None:
    """Saw an arch out of front and ends, and glue blocks into the front corners."""
    figure = out.tables.figure("bracket_foot_width")
    foot = out.sizer.size(
        f"{PATH}.width",
        [(f"{PATH}.width", plan.keys.width)],
        figure.value,
        rule="length of each bracket",
        source=figure.reason,
        least=25.0,
    )
    t = plan.stock.thickness
    rise = out.sizer.settled(plan.height - max(plan.height / 3, t + 12.0))
    for key, along in (("front", 0), ("left", 1), ("right", 1)):
        member = members[key]
        low, high = member.low[along], member.high[along]
        if high - low < 3 * foot or rise < 12.0:
            out.find(
                "case.feet-no-room",
                "the base has no room between its feet",
                f"{PATH}.width" if plan.keys.width is not None else PATH,
                found=f"feet {out.about(foot)} long under {out.about(high - low)}, {out.about(plan.height)} high",
                expected=f"at least {out.up(3 * foot)} along each side, and an arch {out.up(12.0)} high",
                source="common practice",
                remedy=f"make the feet {out.down((high - low) / 3)} or shorter, or the base higher",
            )
            return
        a, b = low + foot, high - foot
        middle = (a + b) / 2
        points = ((a, 0.0), (middle, rise), (b, 0.0))
        member.cuts.append(Curve(member.side(2, False), member.index(along), "arc", points))
    block_stock = strip_stock(out)
    t = block_stock.thickness
    length = min(BLOCK, out.sizer.settled(plan.height - t - 6.0, "down"))
    if length < t:
        return
    for key in ("left", "right"):
        end, front = members[key], members["front"]
        x = end.face(0, key == "left")
        x_span = (x, x + t) if key == "left" else (x - t, x)
        y0 = front.seen().high[1]
        top = plan.height - out.sizer.settled(min(t, plan.height / 3), "down")
        box = Box((x_span[0], y0, top - length), (x_span[1], y0 + t, top))
        block = out.add(f"case.base.block.{key}", "glue block", block_stock, box, (2, 0), path=PATH)
        make_joint(out, f"{PATH}.block", GLUED, PATH, "butt", end, block)
        make_joint(out, f"{PATH}.block", GLUED, PATH, "butt", front, block)
