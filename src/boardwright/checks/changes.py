"""Changes that can be tried on a piece: thicker, another wood, a support, a stiffening strip, less load, screws."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from boardwright.checks.context import Context
from boardwright.checks.held import Span
from boardwright.checks.loads import POUND
from boardwright.checks.remedies import Change
from boardwright.core.lengths import settle
from boardwright.core.poses import AXES, Box, Pose, add, cross, scaled
from boardwright.piece.records import Contact, Fastener, Joint, Part, Stock

EIGHTH = 3.175
THICKEST = 2.0
"""No panel is advised to be thicker than this many times what it is."""
TALLEST_EDGE = 76.2
"""No front edge higher than this is advised [mm]: 3 in, common practice."""
UPRIGHT = 0.9
BALLAST = 50.0
"""Height and width of a weight at the back, and half its depth [mm]."""
POST = 19.0
"""Thickness of a support that is tried [mm]."""
WOODS = {
    True: "yellow_poplar walnut_black cherry_black maple_red oak_red_northern oak_white maple_sugar ash_white "
    "birch_yellow hickory_shagbark alder_common oak_european ash_european beech_european birch_european",
    False: "pine_eastern_white pine_ponderosa douglas_fir_coast pine_longleaf spruce_norway pine_scots",
}
"""Woods that are advised, hard and soft: those most shops can buy (common practice)."""


def with_parts(c: Context, *parts: Part, joints: tuple[Joint, ...] = ()) -> Context:
    """The piece with parts in place of those of the same id, or beside the others; and with more joints."""
    new = {p.id: p for p in parts}
    kept = tuple(new.pop(p.id, p) for p in c.piece.parts)
    all_ = (*kept, *new.values())
    piece = replace(c.piece, parts=all_, joints=(*c.piece.joints, *joints))
    return replace(c, piece=piece, parts={p.id: p for p in all_})


def thicker(c: Context, part: Part) -> Iterator[Change]:
    """Thicker stock of the same kind, thinnest first."""
    most = part.size[2] * THICKEST

    def change(stock: Stock, words: str) -> Change:
        size = (part.size[0], part.size[1], stock.thickness)
        return Change(words, lambda c: with_parts(c, replace(part, size=size, stock=stock)))

    if part.stock.kind == "sheet":
        row = c.tables.sheets.get(part.stock.table_key)
        family = row.family if row else ""
        for nominal in c.tables.nominals(family):
            sheet = c.tables.sheet(family, nominal)
            if sheet is None or sheet.name.endswith(" mm") == (c.piece.units == "in"):
                continue
            if part.size[2] < sheet.actual <= most:
                stock = replace(part.stock, table_key=sheet.key, thickness=sheet.actual)
                yield change(stock, f"use {sheet.name}, {c.text(sheet.actual)} thick")
        return
    step = EIGHTH if c.piece.units == "in" else 1.0
    t = settle(part.size[2] + 1e-6, step, "up")
    while t <= most:
        if t > part.size[2] + 0.1:
            yield change(replace(part.stock, thickness=t), f"make it {c.up(t)} thick")
        t += step


def other_wood(c: Context, part: Part) -> Iterator[Change]:
    """The same part of a stiffer wood, the least stiff first."""
    stock = part.stock
    own = c.tables.species.get(stock.table_key)
    if stock.kind != "wood" or own is None or own.moe is None:
        return
    rows = [
        r
        for k in WOODS[stock.hardwood].split()
        if (r := c.tables.species.get(k)) and r.moe and r.moe > own.moe
    ]
    for row in sorted(rows, key=lambda r: (r.moe or 0.0, r.key)):
        gravity = row.sg_12 or stock.specific_gravity
        new = replace(
            stock,
            table_key=row.key,
            name=row.name,
            density=stock.density * gravity / stock.specific_gravity,
            specific_gravity=gravity,
            radial=row.radial,
            tangential=row.tangential,
        )
        yield Change(
            f"make it of `{row.key}`",
            lambda c, new=new: with_parts(c, replace(part, stock=new)),  # type: ignore[misc]
        )


def block(id: str, name: str, stock: Stock, box: Box, along: int, across: int) -> Part:
    """A part that fills a box, its length and its width along two axes of the piece."""
    x, y = AXES[along], AXES[across]
    z = cross(x, y)
    third = 3 - along - across
    origin = add(box.low, scaled(AXES[third], box.size(third))) if z[third] < 0 else box.low
    size = (box.size(along), box.size(across), box.size(third))
    return Part(id, name, stock, size, Pose(origin, x, y, z))


def post(part: Part, span: Span, floor: float) -> Change:
    """A support under the middle of a panel, across its whole width and down to the floor."""
    axis, over = span.axis, 1 - span.axis
    middle = (span.between[0].high + span.between[1].low) / 2
    low, high = list(part.box.low), list(part.box.high)
    low[axis], high[axis] = middle - POST / 2, middle + POST / 2
    low[2], high[2] = floor, part.box.low[2]
    box = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    own = block("tried.post", "post", part.stock, box, 2, over)
    top = Box((low[0], low[1], high[2]), box.high)
    joint = Joint("tried.post.joint", "butt", own.id, part.id, (Contact(top, 2, True),))
    return Change("put a support under the middle", lambda c: with_parts(c, own, joints=(joint,)))


def edge_strip(c: Context, part: Part, span: Span) -> Iterator[Change]:
    """A strip glued to the front edge, as thick as the panel, lowest first; for panels that span across."""
    if span.axis != 0:
        return
    box, t = part.box, part.size[2]
    left, right = span.between[0].high, span.between[1].low
    face = Box((left, box.low[1], box.low[2]), (right, box.low[1], box.high[2]))
    joint = Joint("tried.strip.joint", "butt", part.id, "tried.strip", (Contact(face, 1, False),))
    for steps in range(4, int(TALLEST_EDGE / EIGHTH) + 1):
        deep = steps * EIGHTH
        room = Box((left, box.low[1] - t, box.high[2] - deep), (right, box.low[1], box.high[2]))
        strip = block("tried.strip", "strip", part.stock, room, 0, 2)
        yield Change(
            f"glue a strip {c.up(deep)} high and {c.text(t)} thick along its front edge",
            lambda c, strip=strip: with_parts(c, strip, joints=(joint,)),  # type: ignore[misc]
        )


def higher(c: Context, rail: Part) -> Iterator[Change]:
    """A rail higher, downward, lowest first."""
    axes = (rail.pose.x, rail.pose.y, rail.pose.z)
    i = next(i for i in range(3) if abs(axes[i][2]) > UPRIGHT)
    step = 2 * EIGHTH if c.piece.units == "in" else 5.0
    for more in range(1, int(rail.size[i] * (THICKEST - 1) / step) + 1):
        size = list(rail.size)
        size[i] += more * step
        down = (0.0, 0.0, -more * step if axes[i][2] > 0 else 0.0)
        new = replace(rail, size=(size[0], size[1], size[2]), pose=rail.pose.moved(down))
        yield Change(
            f"make {c.label(rail.id)} {c.up(size[i])} high",
            lambda c, new=new: with_parts(c, new),  # type: ignore[misc]
        )


def load_of(c: Context, key: str, on: str = "it") -> Callable[[int], Change]:
    """So many pounds or kilograms on a shelf, on the top, or in a drawer: `shelves`, `top` or `drawers`."""
    unit, word = (POUND, "lb") if c.piece.units == "in" else (1.0, "kg")

    def change(count: int) -> Change:
        given = (*c.loads.given, key)
        mass = count * unit
        loads = replace(
            c.loads,
            given=given,
            shelves=mass if key == "shelves" else c.loads.shelves,
            drawers=mass if key == "drawers" else c.loads.drawers,
            top=mass if key == "top" else c.loads.top,
        )
        return Change(f"put no more than {count} {word} on {on}", lambda c: replace(c, loads=loads))

    return change


def more_screws(part: str, like: Joint, words: str) -> Callable[[int], Change]:
    """So many more screws in each joint of a part that is like one of them."""

    def change(more: int) -> Change:
        def make(c: Context) -> Context:
            by_id = {f.id: f for f in c.piece.fasteners}
            new: list[Fastener] = []
            joints = []
            for j in c.piece.joints:
                if part in (j.first, j.second) and (j.kind, len(j.fasteners)) == (
                    like.kind,
                    len(like.fasteners),
                ):
                    own = [replace(by_id[j.fasteners[0]], id=f"tried.{j.id}.{i}") for i in range(more)]
                    j = replace(j, fasteners=(*j.fasteners, *(f.id for f in own)))
                    new += own
                joints.append(j)
            piece = replace(c.piece, joints=tuple(joints), fasteners=(*c.piece.fasteners, *new))
            return replace(c, piece=piece)

        return Change(words.format(len(like.fasteners) + more), make)

    return change


def feet_forward(c: Context, foot: float) -> Callable[[int], Change]:
    """The front feet so many steps of the plan farther forward; they weigh nothing.

    Args:
        c: the piece.
        foot: where its front feet stand, in y of the piece [mm].
    """
    step, floor = c.piece.step, c.piece.outside.low[2]

    def change(count: int) -> Change:
        stock = replace(c.piece.parts[0].stock, density=0.0)
        room = Box((0.0, foot - count * step, floor), (1.0, foot, floor + 0.5))
        part = block("tried.foot", "foot", stock, room, 1, 0)
        return Change(f"move the front feet {c.up(count * step)} forward", lambda c: with_parts(c, part))

    return change


def ballast(c: Context, rear: float) -> Callable[[int], Change]:
    """So many pounds or kilograms low at the back.

    Args:
        c: the piece.
        rear: where its rear feet stand, in y of the piece [mm].
    """
    unit, word = (POUND, "lb") if c.piece.units == "in" else (1.0, "kg")
    floor = c.piece.outside.low[2]
    room = Box((0.0, rear - 2 * BALLAST, floor + 1), (BALLAST, rear, floor + 1 + BALLAST))

    def change(count: int) -> Change:
        density = count * unit / (2e-9 * BALLAST**3)
        stock = replace(c.piece.parts[0].stock, density=density)
        part = block("tried.ballast", "ballast", stock, room, 1, 0)
        return Change(f"fix {count} {word} low at its back", lambda c: with_parts(c, part))

    return change
