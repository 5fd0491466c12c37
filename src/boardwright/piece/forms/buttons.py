"""Wooden buttons: their tongues stand in grooves of the aprons, their screws in the top, which can move."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box, Vec
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.forms.under_top import PATH, Apron, screw_up, spread
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.setout import SetOut

LEAST_HELD = 3.0
"""Least of a tongue that stays in its groove at the driest time [mm]: 1/8 in, common practice."""
LEAST_WALL = 5.0
"""Least wood of an apron behind or under the groove [mm]: 3/16 in, common practice."""


@dataclass(frozen=True, slots=True)
class Button:
    """Sizes of a button [mm].

    Attributes:
        held: of its tongue in the groove. free: between its shoulder and the apron.
        body, width, thickness: of it. down: from its upper side to the tongue.
        gap: between it and the top. play: under the tongue in the groove. groove: depth.
    """

    held: float
    free: float
    body: float
    width: float
    thickness: float
    down: float
    gap: float
    groove: float

    @property
    def tongue(self) -> float:
        """Thickness of the tongue."""
        return self.thickness - self.down


def buttons(out: SetOut, plan: TablePlan, top: Draft, aprons: list[Apron]) -> None:
    """Hold the top with buttons at some aprons."""
    button = _sizes(out, plan)
    if not _fits(out, plan, button):
        return
    for apron in aprons:
        _along(out, plan, top, apron, button)


def _sizes(out: SetOut, plan: TablePlan) -> Button:
    tables, settled = out.tables, out.sizer.settled
    figure = tables.figure("button_tongue")
    thick = plan.apron_stock.thickness
    free = settled(plan.swells + tables.figure("button_gap").value, "up")
    room = settled(thick - LEAST_WALL - free, "down")
    held = max(min(settled(figure.value), room), settled(plan.shrinks + LEAST_HELD, "up"))
    down = settled(thick / 2)
    out.sizer.explain(
        "table.top.button.tongue",
        held + free,
        f"{out.text(held)} in the groove, {out.text(free)} of room for the top",
        f"at least {out.about(LEAST_HELD)} stays in the groove at the driest time",
        figure.reason,
    )
    return Button(
        held,
        free,
        settled(tables.figure("button_length").value),
        settled(tables.figure("button_width").value),
        thick,
        down,
        settled(tables.figure("button_gap").value, "up"),
        held + free,
    )


def _fits(out: SetOut, plan: TablePlan, b: Button) -> bool:
    room = plan.apron_stock.thickness - LEAST_WALL
    under = plan.apron - b.gap - b.thickness - b.gap - LEAST_WALL
    if b.groove <= room + 1e-6 and under >= -1e-6:
        return True
    out.find(
        "table.no-room",
        "the aprons have no room for the groove of the buttons",
        "table.aprons",
        found=f"a groove {out.about(b.groove)} deep and {out.about(b.thickness + b.gap)} down, in aprons "
        f"{out.about(plan.apron_stock.thickness)} thick and {out.about(plan.apron)} high",
        expected=f"{out.up(LEAST_WALL)} of wood behind and under it",
        source="common practice",
        remedy=f"make the aprons at least {out.up(b.groove + LEAST_WALL)} thick and "
        f"{out.up(plan.apron - under)} high, or fix the top with `clips`",
    )
    return False


def _along(out: SetOut, plan: TablePlan, top: Draft, apron: Apron, b: Button) -> None:
    run = apron.run(out)
    middles = spread(out, run, b.width)
    if not middles:
        return
    under = plan.frame.high[2]
    wall = under - b.gap - b.down
    # along an end apron the top carries its buttons to and fro
    aside = 0.0 if apron.along == plan.grain else max(plan.swells, plan.shrinks)
    beyond = out.sizer.settled(aside + b.gap, "up") if aside > 0 else 0.0
    apron.draft.cuts.append(
        Channel(
            apron.axis,
            apron.inward,
            apron.along,
            wall - b.tongue - b.gap,
            wall,
            b.groove,
            run[0] - beyond,
            run[1] + beyond,
            purpose="joint",
        )
    )
    for i, middle in enumerate(middles):
        _button(out, top, apron, b, f"table.button.{apron.side}.{i + 1}", middle, under)


def _button(out: SetOut, top: Draft, apron: Apron, b: Button, id: str, middle: float, under: float) -> None:
    span = {
        apron.axis: apron.inside(-b.held, b.free + b.body),
        apron.along: (middle - b.width / 2, middle + b.width / 2),
    }
    box = Box((span[0][0], span[1][0], under - b.gap - b.thickness), (span[0][1], span[1][1], under - b.gap))
    part = out.add(id, "button", apron.draft.stock, box, (apron.axis, apron.along), path=PATH)
    part.cuts.append(
        Step(
            2,
            True,
            apron.axis,
            not apron.inward,
            b.held + b.free,
            b.down,
            holds=apron.draft.id,
            purpose="tongue",
        )
    )
    tongue = {apron.axis: apron.inside(-b.held, 0.0), apron.along: span[apron.along]}
    wall = under - b.gap - b.down
    out.joint(
        "button",
        apron.draft,
        part,
        [plane(2, wall, tongue, False, glued=False)],
        [unit(apron.axis, apron.inward)],
        f"tongue {out.text(b.tongue)} thick, {out.text(b.held)} into a groove {out.text(b.tongue + b.gap)} wide and "
        f"{out.text(b.groove)} deep, dry",
        glued=False,
        floats=(0, 1),
        place=part.place,
    )
    body = {apron.axis: apron.inside(b.free, b.free + b.body), apron.along: span[apron.along]}
    at = [0.0, 0.0, part.low[2]]
    at[apron.along] = middle
    at[apron.axis] = (body[apron.axis][0] + body[apron.axis][1]) / 2
    place: Vec = (at[0], at[1], at[2])
    screw = screw_up(out, part, top, place, b.gap)
    out.joint(
        "screwed",
        top,
        part,
        [plane(2, under, body, False, glued=False, gap=b.gap, why="so that the screw pulls the top down")],
        [unit(2, False)],
        "1 screw, no glue",
        glued=False,
        fasteners=(screw,) if screw else (),
        place=part.place,
    )
