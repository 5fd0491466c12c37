"""The box of a tray: sides, a low front between them, a back, a bottom, and hand holes."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.piece.cuts import Curve
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.forms.drawer import DrawerParts, join_back
from boardwright.piece.forms.drawer_bottom import fit_bottom, lift_walls
from boardwright.piece.forms.drawer_settings import Layers, usual_stock
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

OVER_BOTTOM = 12.0
"""Least height of a low front over the bottom [mm]: 1/2 in, common practice."""
GRIP_WIDTH, GRIP_HEIGHT = 95.0, 32.0
"""A hand hole [mm]: 3 3/4 x 1 1/4 in, common practice."""
GRIP_EDGE = 15.0
"""Wood over a hand hole, and at both ends of it [mm]: 5/8 in, common practice."""
SLOT_FROM = 60.0
"""Least wood over the bottom for a slot that takes a hand by the usual rule [mm]: 2 3/8 in, common practice."""
GRIP_UNDER = 6.0
"""Wood between a hand hole and the bottom [mm]: 1/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class TrayStocks:
    """What the parts of a tray are made of."""

    sides: Stock
    front: Stock
    back: Stock
    bottom: Stock


def tray_stocks(out: SetOut, id: str, layers: Layers) -> TrayStocks:
    """The stocks of a tray: its front is made of what its sides are, unless it is named."""
    first = next(iter(out.stocks.values()))
    figures = out.tables.figure
    sides = layers.stock(
        out, "sides.stock", usual_stock(out, figures("drawer_side_thickness").value, None, first)
    )
    bottom = layers.stock(
        out, "bottom.stock", usual_stock(out, figures("drawer_bottom_thickness").value, True, sides)
    )
    stocks = TrayStocks(
        sides, layers.stock(out, "front.stock", sides), layers.stock(out, "back.stock", sides), bottom
    )
    for part, stock in (
        ("sides", stocks.sides),
        ("front", stocks.front),
        ("back", stocks.back),
        ("bottom", stocks.bottom),
    ):
        layers.choose(out, id, f"{part}.stock", stock.id, "stock nearest to the usual thickness of this part")
    return stocks


def put_tray(
    out: SetOut,
    id: str,
    name: str,
    box: Box,
    stocks: TrayStocks,
    layers: Layers,
    path: str,
    *,
    low_front: bool,
) -> DrawerParts:
    """Put the parts of a tray on the bench and join them; the grips come last."""
    t, f, b = stocks.sides.thickness, stocks.front.thickness, stocks.back.thickness
    (x0, y0, z0), (x1, y1, z1) = box.low, box.high
    how = layers.choose(out, id, "bottom.set", "groove", "the bottom floats in a groove")
    high = _front_height(out, id, box, stocks, layers, how) if low_front else z1 - z0
    sides = [
        out.add(
            f"{id}.{which}",
            "tray side",
            stocks.sides,
            Box((x, y0, z0), (x + t, y1, z1)),
            (1, 2),
            group=id,
            path=path,
        )
        for which, x in (("left", x0), ("right", x1 - t))
    ]
    front = out.add(
        f"{id}.front",
        "tray front",
        stocks.front,
        Box((x0 + t, y0, z0), (x1 - t, y0 + f, z0 + high)),
        (0, 2),
        group=id,
        show=((1, False), (2, True)),
        path=path,
    )
    keys, _ = layers.joint("back.joint")
    kind = keys.kind if keys else "dado"
    set_in = out.sizer.settled(max(t * 0.75, 8.0)) if kind in ("dado", "tongue") else 0.0
    back = out.add(
        f"{id}.back",
        "tray back",
        stocks.back,
        Box((x0 + t, y1 - set_in - b, z0), (x1 - t, y1 - set_in, z1)),
        (0, 2),
        group=id,
        path=path,
    )
    parts = DrawerParts(id, name, front, sides[0], sides[1], back, front, "tray")
    if how == "planted":
        lift_walls(out, parts, stocks.bottom, box)
    joint, where = layers.joint("front.joint")
    for side in sides:
        make_joint(out, f"{id}.front.joint", joint, where, "rabbet", side, front)
    fit_bottom(out, id, parts, stocks.bottom, how, layers, box)
    join_back(out, parts, layers)
    return parts


def _front_height(out: SetOut, id: str, box: Box, stocks: TrayStocks, layers: Layers, how: str) -> float:
    up = out.tables.figure("drawer_bottom_groove_up").value if how == "groove" else 0.0
    given = out.sizer.given(layers.choices("bottom.up"))
    over = (given[1] if given else up) + stocks.bottom.thickness + OVER_BOTTOM
    whole = box.size(2)
    return min(
        whole,
        out.sizer.size(
            f"{id}.front_height",
            layers.choices("front_height"),
            min(max(whole / 2, over), whole),
            rule="half of the sides, and over the bottom",
            direction="up",
            least=min(over, whole),
        ),
    )


def cut_grips(out: SetOut, id: str, layers: Layers, parts: list[Draft], bottom_top: float) -> None:
    """Hand holes in parts whose thickness lies along x or y; nothing when none are asked for.

    Args:
        out: the bench.
        id: the tray's id.
        layers: what the file says.
        parts: to be cut.
        bottom_top: upper side of the bottom; no hole goes below it [mm].
    """
    if not layers.values("grip"):
        return
    low = min(out.drafts[p.id].seen().high[2] for p in parts) - bottom_top
    slotted = low >= SLOT_FROM
    shape = layers.choose(
        out,
        id,
        "grip.shape",
        "slot" if slotted else "curve",
        "a slot through the part" if slotted else "a hollow in the edge of a part too low for a slot",
    )
    for part in dict.fromkeys(p.id for p in parts):
        _grip(out, id, layers, out.drafts[part], shape, bottom_top)


def _grip(out: SetOut, id: str, layers: Layers, part: Draft, shape: str, bottom_top: float) -> None:
    through = part.thickness_axis
    along = 1 - through
    seen = part.seen()
    long, high = seen.size(along), seen.high[2] - max(bottom_top, seen.low[2])
    settled = out.sizer.settled
    width = out.sizer.size(
        f"{id}.grip.width",
        layers.choices("grip.width"),
        min(GRIP_WIDTH, long / 2),
        rule="width of a hand hole, at most half of the part",
        direction="down",
    )
    height = out.sizer.size(
        f"{id}.grip.height",
        layers.choices("grip.height"),
        min(GRIP_HEIGHT, high / 3),
        rule="height of a hand hole, at most a third of the part",
        direction="down",
    )
    over = GRIP_EDGE if shape == "slot" else 0.0
    if width > long - 2 * GRIP_EDGE or height + over + GRIP_UNDER > high or width < height + out.sizer.step:
        out.find(
            "drawer.grip-too-large",
            f"there is no room for the hand hole in the {part.name} of {id.replace('.', ' ')}",
            layers.path("grip"),
            found=f"{out.about(width)} × {out.about(height)} in a part {out.about(long)} long with "
            f"{out.about(max(high, 0.0))} over the bottom",
            expected=f"wider than high, {out.up(over + height + GRIP_UNDER)} of wood over the bottom, and "
            f"{out.up(GRIP_EDGE)} at both ends",
            source="common practice",
            remedy="make the tray higher or the hand hole smaller (`grip.width`, `grip.height`)"
            + (", or use `shape: curve`" if shape == "slot" else ""),
            parts=(part.id,),
        )
        return
    middle = seen.low[along] + settled(long / 2)
    if shape == "curve":
        half = settled(width / 2, "down")
        axis = part.index(along)
        points = ((middle - half, 0.0), (middle, height), (middle + half, 0.0))
        part.cuts.append(Curve(part.side(2, True), axis, "arc", points))
        return
    at = [0.0, 0.0, 0.0]
    at[along], at[2] = middle, part.low[2] + settled(part.size(2) - GRIP_EDGE - height / 2, "down")
    at[through] = part.face(through, False)
    part.cuts.append(
        Bore(
            through,
            False,
            (at[0], at[1], at[2]),
            height,
            part.size(through),
            through=True,
            slot=width - height,
            slot_axis=along,
            for_="the hand",
        )
    )
