"""A lid over a case: a slab or a frame on hinges at the back, and the rail that takes them."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys, Lid
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.back import CHEEK, BackPlan
from boardwright.piece.forms.back_boards import BOARDED
from boardwright.piece.forms.frame import Names, frame
from boardwright.piece.forms.frame_lay import LID, Span
from boardwright.piece.forms.hinge_line import HingeLine, ends_alike
from boardwright.piece.forms.hinges import hang, lid_hinges, pin_out
from boardwright.piece.forms.slab import battens, end_boards, slab
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Hardware, Motion, Stock
from boardwright.piece.setout import SetOut

NAMES = Names(
    ("front of the lid", "rear of the lid"), ("end of the lid",) * 2, "lid rail", "lid rail", "lid panel"
)
PATH = "case.top.lid"
LEAST_UNDER = 20.0
"""Room between the rail under a lid and the bottom [mm]: 3/4 in, common practice."""
CLEAT_ROOM = 6.0
"""Room between a cleat under a lid and the case around it [mm]: 1/4 in, common practice."""


def lid_rail(
    out: SetOut,
    keys: Lid | None,
    joint: JointKeys | None,
    left: Draft,
    right: Draft,
    stock: Stock,
    top: float,
    back: BackPlan,
    floor: float,
) -> Draft | None:
    """The rail between the sides under the rear of the lid; None, with a finding, when the back leaves it no wood.

    Args:
        out: the bench.
        keys: what the file says of the lid.
        joint: of the rail.
        left: the left side.
        right: the right side.
        stock: of the rail.
        top: where the lid lies [mm].
        back: how the back is set.
        floor: upper side of the bottom [mm].
    """
    if not _takes_back(out, stock, back):
        return None
    figure = out.tables.figure("lid_rail")
    height = out.sizer.size(
        f"{PATH}.rail_width",
        [(f"{PATH}.rail_width", keys.rail_width if keys else None)],
        figure.value,
        rule="rail that takes the hinges",
        source=figure.reason,
        least=20.0,
    )
    if top - height < floor + LEAST_UNDER:
        out.find(
            "case.lid-no-well",
            "the rail under the lid has no room over the bottom",
            PATH,
            found=f"a rail {out.text(height)} high in {out.about(top - floor)}",
            expected=f"at least {out.up(LEAST_UNDER)} under it",
            source="common practice",
            remedy=f"make the case {out.up(height + LEAST_UNDER - (top - floor))} higher",
        )
        return None
    rear = left.high[1]
    rail = out.add(
        "case.lid.rail",
        "hinge rail",
        stock,
        Box((left.high[0], rear - stock.thickness, top - height), (right.low[0], rear, top)),
        (0, 2),
        path="case.top",
    )
    usual = "tongue" if back.set == "surface" else "butt"
    for side in (left, right):
        make_joint(out, "case.lid.rail.joint", joint, "case.top.joint", usual, side, rail)
    return rail


def _takes_back(out: SetOut, stock: Stock, back: BackPlan) -> bool:
    """Whether the rail keeps wood before the back that is let into it; a finding when not."""
    source = "common practice: the rail keeps too little wood for its hinges"
    if back.set in BOARDED:
        out.find(
            "case.lid-back",
            "a back of boards cannot be let into the rail that takes the hinges of the lid",
            "case.back.set",
            found=back.set,
            expected="`rabbet`, `groove` or `surface`",
            source=source,
            remedy="use `rabbet`",
        )
        return False
    left = stock.thickness - back.room
    if back.set not in ("rabbet", "groove") or left >= CHEEK - 1e-6:
        return True
    out.find(
        "case.lid-back",
        "the back leaves the rail that takes the hinges of the lid no wood",
        "case.back.set",
        found=f"a rail {out.about(stock.thickness)} thick; the back takes {out.about(back.room)} of it",
        expected=f"at least {out.up(CHEEK)} of wood before the back",
        source=source,
        remedy="use `set: surface`, a thinner back or thicker stock"
        + (", or a smaller `inset`" if back.set == "groove" else ""),
    )
    return False


def lid(
    out: SetOut,
    keys: Lid | None,
    stock: Stock,
    left: Draft,
    right: Draft,
    rail: Draft,
    rear: float,
    front: float = 0.0,
) -> None:
    """Put the lid on the sides and the rail, and hang it.

    Args:
        out: the bench.
        keys: what the file says.
        stock: of the lid.
        left: the left side.
        right: the right side.
        rail: that it hangs on.
        rear: the back of the case [mm].
        front: its front [mm].
    """
    figure = out.tables.figure("lid_overhang")
    over = out.sizer.size(
        f"{PATH}.overhang",
        [(f"{PATH}.overhang", keys.overhang if keys else None)],
        figure.value,
        rule="beyond the front and the sides",
        source=figure.reason,
    )
    z = rail.high[2]
    deep = out.sizer.settled(rear - front + over, "down")
    box = Box((left.low[0] - over, rear - deep, z), (right.high[0] + over, rear, z + stock.thickness))
    hung = _body(out, keys, stock, box, (left.high[0], right.low[0]), (front, rail.low[1]))
    if hung is None:
        return
    back = out.drafts.get("case.back")
    still = (back,) if back is not None and back.high[2] > z - out.sizer.step - 1e-6 else ()
    line = HingeLine(
        hung,
        (*still, rail),
        0,
        2,
        True,
        z,
        0.0,
        1,
        rear + pin_out(out),
        left.high[0],
        right.low[0] - left.high[0],
        ends_alike([d for d in out.drafts.values() if d.group == "lid.1"], hung, ((1, True), (2, False))),
    )
    kind = lid_hinges(
        out,
        keys.hinges.kind if keys and keys.hinges else None,
        f"{PATH}.hinges",
        "butt hinges, let into lid and rail",
    )
    if not hang(out, "lid.1", kind, keys.hinges if keys else None, f"{PATH}.hinges", line, "lid.1"):
        return
    turn = out.tables.figure("lid_turn")
    opens = keys.opens if keys and keys.opens else turn.value
    out.sizer.choose(
        f"{PATH}.opens",
        f"{opens:g} degrees" if keys and keys.opens else None,
        f"{opens:g} degrees",
        "leans a little past upright",
        f"{PATH}.opens",
        turn.reason,
    )
    out.motions.append(
        Motion(
            "lid.1",
            "lid",
            "lid",
            (-1.0, 0.0, 0.0),
            0.0,
            f"{kind} hinges",
            box,
            0.0,
            0.0,
            0.0,
            out.design.place("case.top"),
            opens,
            line.pivot(),
        )
    )
    if keys is None or keys.stay is not False:
        _stay(out, left, front, rail, z)


def _body(
    out: SetOut,
    keys: Lid | None,
    stock: Stock,
    box: Box,
    inside: tuple[float, float],
    deep: tuple[float, float],
) -> Draft | None:
    """The parts of the lid; gives the one that takes the hinges."""
    usual = "frame" if keys is not None and keys.frame is not None else "slab"
    made = out.sizer.choose(
        f"{PATH}.made", keys.made if keys else None, usual, "a frame when one is described", f"{PATH}.made"
    )
    if made == "frame":
        own = out.stock(
            (f"{PATH}.frame.stock", keys.frame.stock if keys and keys.frame else None),
            ("case.top.stock", stock.id),
        )
        glued = out.sizer.choose(
            f"{PATH}.glued_edge",
            keys.glued_edge if keys else None,
            "none",
            "the panel floats all round",
            f"{PATH}.glued_edge",
        )
        framed = frame(
            out,
            "lid.1",
            box,
            LID,
            keys.frame if keys else None,
            f"{PATH}.frame" if keys and keys.frame else "case.top",
            stock=own,
            group="lid.1",
            names=NAMES,
            deeper_bottom=False,
            held=glued == "front",
        )
        return framed.stiles[1] if framed is not None else None
    board = slab(out, "lid.1.slab", "lid", box, LID, stock, "lid.1", "case.top")
    ends = out.sizer.choose(
        f"{PATH}.ends",
        keys.ends if keys else None,
        "cleats" if stock.kind == "wood" else "none",
        "cleats keep boards flat; a sheet needs none",
        f"{PATH}.ends",
    )
    if ends == "none":
        return board
    figure = out.tables.figure("door_batten_width")
    width = out.sizer.size(
        f"{PATH}.end_width",
        [(f"{PATH}.end_width", keys.end_width if keys else None)],
        figure.value,
        rule="usual width",
        source=figure.reason,
        least=20.0,
    )
    if ends == "breadboard":
        end_boards(out, board, LID, width, stock, f"{PATH}.ends" if keys and keys.ends else "case.top")
        return board
    room = out.sizer.settled(CLEAT_ROOM, "up")
    near = out.sizer.settled(inside[0] - box.low[0] + width, "up")
    spots = [box.low[0] + near, box.high[0] - near - width]
    across = Span(deep[0] + stock.thickness + room, deep[1] - room)
    long = out.sizer.settled(across.size, "down")
    if spots[1] - spots[0] < width or long < 2 * width:
        return board
    battens(
        out, board, LID, spots, Span(across.low, across.low + long), width, stock, "lid cleat", "case.top"
    )
    return board


def _stay(out: SetOut, left: Draft, front: float, rail: Draft, top: float) -> None:
    """A stay inside the left side, shut."""
    middle = front + (rail.low[1] - front) / 2
    x = left.high[0]
    box = Box((x + 1.0, middle - 60.0, top - 40.0), (x + 13.0, middle + 60.0, top - 28.0))
    out.hardware.append(
        Hardware("lid.1.stay", "lid stay", "", box, "case", place=out.design.place("case.top"))
    )
