"""Drawers in the front of a table: two rails instead of the front apron, fillers that bring the end aprons flush."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import ApronDrawers, JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.cleats import hold_top
from boardwright.piece.forms.drawer import drawer
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.legs import Leg
from boardwright.piece.forms.rails import APRON_JOINT, of_side
from boardwright.piece.forms.region import Region, Walls
from boardwright.piece.forms.split import Between, Item, split
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Space, Stock
from boardwright.piece.setout import SetOut

PATH = "table.aprons.drawers"
LEAST_OPENING = 25.0
"""Least height of an opening for a drawer [mm]: 1 in, common practice."""
DOWELED = JointKeys(kind="butt", fasten="dowels")
FILLED = JointKeys(kind="butt", fasten="none", glue=True)


def put_drawers(
    out: SetOut, plan: TablePlan, legs: list[Leg], aprons: dict[str, Draft], keys: ApronDrawers
) -> None:
    """Put rails, fillers and drawers into the front of a table; `aprons` then holds the walls beside them."""
    t = plan.apron_stock.thickness
    face = plan.frame.low[1] + plan.setback
    low, high = plan.frame.high[2] - plan.apron, plan.frame.high[2]
    if high - low - 2 * t < LEAST_OPENING:
        out.find(
            "table.no-room",
            "the aprons are too low for a drawer",
            "table.aprons.height",
            found=f"{out.about(plan.apron)}, less two rails {out.about(t)} thick",
            expected=f"an opening at least {out.up(LEAST_OPENING)} high",
            source="common practice",
            remedy=f"make the aprons at least {out.up(LEAST_OPENING + 2 * t)} high, or their stock thinner",
        )
        return
    pair = of_side(legs, "front")
    figure = out.tables.figure("web_frame_width")
    wide = out.sizer.size(
        "table.aprons.drawers.rail",
        [("table.aprons.drawers.rail", keys.rail)],
        min(figure.value, plan.leg[1] - plan.setback),
        rule="width of the rails over and under a drawer, at most what the leg takes",
        source=figure.reason,
        direction="down",
        least=20.0,
    )
    rails = {}
    x = (pair[0].draft.high[0], pair[1].draft.low[0])
    for name, z in (("lower", low), ("upper", high - t)):
        rails[name] = out.add(
            f"table.rail.{name}",
            f"{name} rail",
            plan.apron_stock,
            Box((x[0], face, z), (x[1], face + wide, z + t)),
            (0, 1),
            show=((1, False),),
            path=PATH,
        )
        asked = keys.joint or (DOWELED if name == "upper" else None)
        for leg in pair:
            make_joint(out, f"{PATH}.joint", asked, f"{PATH}.joint", APRON_JOINT, leg.draft, rails[name])
    walls = [_wall(out, plan, legs, aprons[side], side) for side in ("left", "right")]
    aprons["left"], aprons["right"] = walls
    rear = aprons["rear"].low[1]
    region = Region(
        Box((x[0], face, low + t), (x[1], rear, high - t)),
        Walls(walls[0], walls[1], rails["lower"], rails["upper"]),
        PATH,
        "apron",
        rear - face,
        (x[1] - x[0], high - low - 2 * t),
        (False, False, False, False),
        behind=plan.setback > 1e-6,
    )
    out.spaces.append(Space(PATH, region.box, "drawer", out.design.place(PATH)))
    for part in _openings(out, plan, region, keys.count or 1, aprons["rear"]):
        drawer(out, part, Layers([(f"{PATH}.drawer", keys.drawer), ("drawers", out.design.file.drawers)]))
    top = out.drafts.get("table.top")
    if top is not None:
        hold_top(out, plan, top, rails["upper"])


def _wall(out: SetOut, plan: TablePlan, legs: list[Leg], apron: Draft, side: str) -> Draft:
    """A filler that brings an end apron flush with the legs; the apron itself where it is."""
    left = side == "left"
    pair = of_side(legs, side)
    flush = pair[0].draft.face(0, left)
    face = apron.face(0, left)
    if abs(flush - face) < 1e-6:
        return apron
    x = sorted((face, flush))
    box = Box((x[0], pair[0].draft.high[1], apron.low[2]), (x[1], pair[1].draft.low[1], apron.high[2]))
    filler = out.add(f"table.filler.{side}", "filler", _stock(plan, x[1] - x[0]), box, (1, 2), path=PATH)
    make_joint(out, "table.filler.joint", FILLED, PATH, "butt", apron, filler)
    return filler


def _stock(plan: TablePlan, thick: float) -> Stock:
    """What a filler is made of: the stock of the aprons, or of the legs where it is thicker."""
    return plan.apron_stock if plan.apron_stock.thickness >= thick - 1e-6 else plan.leg_stock


def _openings(out: SetOut, plan: TablePlan, region: Region, count: int, rear: Draft) -> list[Region]:
    """The openings of drawers side by side, with a divider between two, which is held by the rear apron too."""
    if count == 1:
        return [region]
    items = [Item(PATH, f"apron.drawer{i + 1}", None, 1.0) for i in range(count)]
    regions = split(out, region, 0, items, Between("divider", plan.apron_stock, None, PATH))
    for i in range(count - 1):
        divider = out.drafts.get(f"apron.divider.{i + 1}")
        if divider is not None:
            make_joint(out, "apron.divider.rear", None, PATH, "butt", rear, divider)
    return regions
