"""A drawer in its opening: front, box, bottom, and what it runs on."""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft, meeting
from boardwright.piece.forms.drawer_bottom import fit_bottom, groove_place, lift_walls
from boardwright.piece.forms.drawer_settings import Layers, usual_stock
from boardwright.piece.forms.pulls import pulls
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.run_room import Room, Run
from boardwright.piece.forms.running import run_room, set_running
from boardwright.piece.joints.lock import lock
from boardwright.piece.joints.make import join, make_joint
from boardwright.piece.joints.settings import JointSettings, settings
from boardwright.piece.records import Motion, Stock
from boardwright.piece.setout import SetOut

SCREWED = JointKeys(kind="butt", fasten="screws", glue=False)
LEAST_BEYOND = 6.0
"""Wood of a front beyond the dado of a drawer side [mm]: 1/4 in, common practice."""
CORNERS = ("finger", "dovetail", "half_blind")
"""Joints that interlock at a corner, where the front and the sides end flush."""
SET_IN = ("dado", "tongue", "sliding_dovetail")
"""Joints that need wood of the sides beyond the back."""
LEAST_BOX = 25.0
"""Least height, width and length of a drawer box [mm]."""


@dataclass(slots=True)
class DrawerParts:
    """The parts of one drawer or tray while it is set out."""

    id: str
    name: str
    front: Draft
    left: Draft
    right: Draft
    back: Draft
    box_front: Draft | None
    kind: str = "drawer"


def drawer(out: SetOut, region: Region, layers: Layers) -> None:
    """Set out one drawer in a region."""
    number = next_number(out, "drawer")
    id = f"drawer.{number}"
    front_stock = layers.stock(out, "front.stock", out.stock(("case.stock", _case_stock(out))))
    side_stock = layers.stock(
        out,
        "sides.stock",
        usual_stock(out, out.tables.figure("drawer_side_thickness").value, None, front_stock),
    )
    bottom_stock = layers.stock(
        out,
        "bottom.stock",
        usual_stock(out, out.tables.figure("drawer_bottom_thickness").value, True, side_stock),
    )
    back_stock = layers.stock(out, "back.stock", side_stock)
    for part, chosen in (
        ("front", front_stock),
        ("sides", side_stock),
        ("bottom", bottom_stock),
        ("back", back_stock),
    ):
        layers.choose(
            out, id, f"{part}.stock", chosen.id, "stock nearest to the usual thickness of this part"
        )
    runs_on = layers.choose(out, id, "runs_on", "bars", "wooden drawers hang on bars")
    overlay = _overlays(out, id, region, layers)
    made = layers.choose(
        out,
        id,
        "front.made",
        "applied" if runs_on == "slides" or overlay else "one_piece",
        "a front of its own on slides and where it overlays; else the front of the box",
    )
    reveal = _reveal(out, id, layers, front_stock)
    front_back = region.box.low[1] + (0.0 if overlay else front_stock.thickness)
    room = run_room(
        out,
        id,
        region,
        layers,
        runs_on,
        side_stock,
        front_back,
        reveal if made == "one_piece" and not overlay else 0.0,
    )
    if room is None:
        return
    grow = max(swelling(out, side_stock), swelling(out, back_stock))
    box = box_of(out, id, region, layers, room, side_stock, front_back, reveal, overlay, grow)
    if box is None:
        return
    front_box = _front_box(out, id, region, layers, front_stock, reveal, overlay, room)
    if front_box is None:
        return
    corner = _kind(layers, "front.joint") in CORNERS
    if corner and made == "one_piece" and not overlay:
        front_box = _flush(out, id, front_box, box)
    parts = _put(
        out, id, number, box, front_box, front_stock, side_stock, back_stock, made == "applied", layers
    )
    set_bottom = layers.choose(out, id, "bottom.set", "groove", "the bottom floats in a groove")
    if set_bottom == "planted":
        lift_walls(out, parts, bottom_stock, box)
    grooves = (groove_place(out, id, layers, bottom_stock, box),) if corner and set_bottom == "groove" else ()
    _join_front(out, parts, layers, made == "applied", grooves)
    fit_bottom(out, parts.id, parts, bottom_stock, set_bottom, layers, box)
    join_back(out, parts, layers)
    pulls(out, id, parts.front, parts.box_front, layers)
    run = set_running(out, id, region, room, parts.left, parts.right, box, front_back, layers)
    add_motion(out, parts, region, room, box, run)


def _overlays(out: SetOut, id: str, region: Region, layers: Layers) -> bool:
    """Whether the front lies over the case; behind a door it cannot."""
    if region.behind:
        out.sizer.choose(f"{id}.front.set", None, "inset", "a front behind a door stands inside its opening")
        return False
    return layers.choose(out, id, "front.set", "inset", "fronts stand inside their openings") == "overlay"


def next_number(out: SetOut, kind: str) -> int:
    """The number of the next drawer or tray."""
    return sum(m.kind == kind for m in out.motions) + 1


def _case_stock(out: SetOut) -> str | None:
    form = out.design.file.case or out.design.file.table
    return form.stock if form else None


def _reveal(out: SetOut, id: str, layers: Layers, stock: Stock) -> float:
    figure = out.tables.figure("drawer_front_gap_inset" if stock.kind == "wood" else "drawer_front_gap_sheet")
    return out.sizer.size(
        f"{id}.front.reveal",
        layers.choices("front.reveal"),
        figure.value,
        rule="gap between an inset front and its opening, each side",
        source=figure.reason,
        direction="up",
    )


def swelling(out: SetOut, stock: Stock) -> float:
    """Share by which a part of this stock grows across the grain from cutting to the wettest time."""
    return max(0.0, stock.across * (out.moisture.wettest - out.moisture.now))


def box_of(
    out: SetOut,
    id: str,
    region: Region,
    layers: Layers,
    room: Room,
    stock: Stock,
    front_back: float,
    reveal: float,
    overlay: bool,
    grow: float,
) -> Box | None:
    """The outline of the drawer box, without the front [mm]; `grow` is the share its walls swell in height."""
    sizer, text = out.sizer, out.text
    across = region.fit[0] - 2 * room.side
    if not overlay and room.side >= reveal - 1e-6:
        across = min(across, sizer.settled(region.fit[0] - 2 * reveal, "down"))
    inner = sizer.settled(across - 2 * stock.thickness, "down")
    width = inner + 2 * stock.thickness
    sizer.explain(
        f"{id}.box.width",
        width,
        f"opening {text(region.fit[0])} less 2 × {text(room.side)} side clearance, settled down",
        f"a drawer on {room.kind}",
        room.side_source,
    )
    figure = out.tables.figure("drawer_height_base" if stock.kind == "wood" else "drawer_height_plywood")
    running = sizer.size(
        f"{id}.height_clearance",
        layers.choices("height_clearance"),
        figure.value,
        rule="room over the box at the wettest time",
        source=figure.reason,
    )
    low = region.box.low[2] + room.below
    top_gap = running if overlay else max(running, reveal)
    free = region.fit[1] - room.below - room.above - top_gap
    default = min(free, (region.fit[1] - room.below - room.above - running) / (1 + grow))
    height = sizer.size(
        f"{id}.box.height",
        layers.choices("box_height"),
        default,
        rule="opening less running room, less the swelling of the sides to the wettest time",
        source="change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
        total=f"({text(region.fit[1])} - {text(room.below + room.above)} - {text(running)}) / (1 + {grow:.4f})",
        direction="down",
    )
    if height > free + 1e-6 and out.sizer.settled(free, "down") >= LEAST_BOX:
        out.find(
            "drawer.box-too-high",
            f"the box of {id.replace('.', ' ')} is higher than its opening allows",
            layers.path("box_height"),
            found=f"{out.about(height)} in an opening {out.about(region.fit[1])} high",
            expected=f"at most {out.down(free)}: the opening, less what the drawer runs on and its running room",
            remedy=f"make the box {out.down(free)} high or less, or the opening higher",
        )
        height = sizer.settled(free, "down")
    length = room.length
    if inner < LEAST_BOX or min(height, free) < LEAST_BOX or length < LEAST_BOX:
        out.find(
            "drawer.no-room",
            f"there is no room for a drawer in `{region.path}`",
            region.path,
            found=f"box {text(sizer.settled(width))} wide, {text(height)} high, {text(length)} long",
            expected=f"at least {out.up(LEAST_BOX)} each way",
            remedy=f"make the opening {_larger(out, inner, height, length)}, or use thinner stock for the drawer sides",
        )
        return None
    x0 = region.box.low[0] + (region.box.size(0) - width) / 2
    return Box((x0, front_back, low), (x0 + width, front_back + length, low + height))


def _larger(out: SetOut, inner: float, height: float, length: float) -> str:
    """How much more room a drawer box needs; a step more than it lacks, since its sizes are settled down."""
    lacks = ((LEAST_BOX - inner, "wider"), (LEAST_BOX - height, "higher"), (LEAST_BOX - length, "deeper"))
    return " and ".join(f"{out.up(s + out.sizer.step)} {word}" for s, word in lacks if s > 0)


def _front_box(
    out: SetOut,
    id: str,
    region: Region,
    layers: Layers,
    stock: Stock,
    reveal: float,
    overlay: bool,
    room: Room,
) -> Box | None:
    sizer = out.sizer
    t = stock.thickness
    face = region.box.low[1]
    if overlay:
        x0, x1, z0, z1 = _overlay_edges(out, id, region, layers)
        width, height = sizer.settled(x1 - x0, "down"), sizer.settled(z1 - z0, "down")
        x0 += (x1 - x0 - width) / 2
        sizer.explain(f"{id}.front.width", width, "opening and overlap, less half a gap where fronts meet")
        return Box((x0, face - t, z0), (x0 + width, face, z0 + height))
    width = sizer.settled(region.fit[0] - 2 * reveal, "down")
    grow = swelling(out, stock)
    least = out.tables.figure("drawer_height_base").value
    half = sizer.settled(reveal / 2, "up")
    under = reveal if region.walls.floor is not None else half
    over = reveal if region.walls.ceiling is not None else half
    height = sizer.settled(
        min(region.fit[1] - under - over, (region.fit[1] - least - under) / (1 + grow)), "down"
    )
    if width < LEAST_BOX or height < LEAST_BOX:
        out.find(
            "drawer.no-room",
            f"there is no room for a drawer front in `{region.path}`",
            region.path,
            found=f"{out.text(sizer.settled(region.fit[0]))} × {out.text(sizer.settled(region.fit[1]))}",
            expected=f"at least {out.up(LEAST_BOX)} each way after the reveal",
            remedy=f"make the opening {_larger(out, width, height, LEAST_BOX)}",
        )
        return None
    sizer.explain(f"{id}.front.width", width, f"{out.text(region.fit[0])} less 2 × {out.text(reveal)} reveal")
    sizer.explain(
        f"{id}.front.height",
        height,
        f"{out.text(region.fit[1])} less {out.text(under)} below and {out.text(over)} above, "
        f"or less for its swelling of {grow * 100:.2g} %",
    )
    x0 = region.box.low[0] + (region.box.size(0) - width) / 2
    z0 = region.box.low[2] + under
    return Box((x0, face, z0), (x0 + width, face + t, z0 + height))


def _kind(layers: Layers, dotted: str) -> str:
    """The kind of joint that the file names for a key, or ""."""
    keys, _ = layers.joint(dotted)
    return keys.kind if keys else ""


def _flush(out: SetOut, id: str, front: Box, box: Box) -> Box:
    """A front that ends flush with the sides which interlock with it; one that reaches far beyond them is left."""
    if not 1e-6 < box.low[0] - front.low[0] <= LEAST_BEYOND:
        return front
    out.sizer.explain(
        f"{id}.front.width", box.size(0), "as wide as the box: the joint of its sides ends flush with it"
    )
    return Box((box.low[0], front.low[1], front.low[2]), (box.high[0], front.high[1], front.high[2]))


def _overlay_edges(out: SetOut, id: str, region: Region, layers: Layers) -> tuple[float, float, float, float]:
    """Edges of an overlay front: over the outer parts to the outside less half a gap, to the middle of shared ones."""
    figure = out.tables.figure("overlay_front_gap")
    gap = out.sizer.size(
        f"{id}.front.gap",
        layers.choices("front.gap"),
        figure.value,
        rule="gap between two overlay fronts",
        source=figure.reason,
    )
    walls = region.walls
    edges = []
    for wall, axis, high, outer in (
        (walls.left, 0, False, region.outer[0]),
        (walls.right, 0, True, region.outer[1]),
        (walls.floor, 2, False, region.outer[2]),
        (walls.ceiling, 2, True, region.outer[3]),
    ):
        own = region.box.high[axis] if high else region.box.low[axis]
        if wall is None:
            edge = own
        else:
            thick = wall.size(axis)
            edge = own + (1 if high else -1) * (thick if outer else thick / 2)
        edges.append(edge - (gap / 2 if high else -gap / 2))
    return (edges[0], edges[1], edges[2], edges[3])


def _put(
    out: SetOut,
    id: str,
    number: int,
    box: Box,
    front_box: Box,
    front_stock: Stock,
    side_stock: Stock,
    back_stock: Stock,
    applied: bool,
    layers: Layers,
) -> DrawerParts:
    t = side_stock.thickness
    path = layers.path("front") if layers.layers else "drawers"
    path = path.rsplit(".", 1)[0]
    (x0, y0, z0), (x1, y1, z1) = box.low, box.high
    front = out.add(
        f"{id}.front",
        "drawer front",
        front_stock,
        front_box,
        (0, 2),
        group=id,
        show=((1, False), (0, False), (0, True), (2, True)),
        path=path,
    )
    left = out.add(
        f"{id}.left",
        "drawer side",
        side_stock,
        Box((x0, y0, z0), (x0 + t, y1, z1)),
        (1, 2),
        group=id,
        path=path,
    )
    right = out.add(
        f"{id}.right",
        "drawer side",
        side_stock,
        Box((x1 - t, y0, z0), (x1, y1, z1)),
        (1, 2),
        group=id,
        path=path,
    )
    box_front = None
    if applied:
        box_front = out.add(
            f"{id}.box_front",
            "drawer box front",
            side_stock,
            Box((x0 + t, y0, z0), (x1 - t, y0 + t, z1)),
            (0, 2),
            group=id,
            path=path,
        )
    keys, _ = layers.joint("back.joint")
    kind = keys.kind if keys else "dado"
    set_in = out.sizer.settled(max(t * 0.75, 8.0)) if kind in SET_IN else 0.0
    tb = back_stock.thickness
    back = out.add(
        f"{id}.back",
        "drawer back",
        back_stock,
        Box((x0 + t, y1 - set_in - tb, z0), (x1 - t, y1 - set_in, z1)),
        (0, 2),
        group=id,
        path=path,
    )
    return DrawerParts(id, f"drawer {number}", front, left, right, back, box_front)


def _join_front(
    out: SetOut, parts: DrawerParts, layers: Layers, applied: bool, grooves: tuple[tuple[float, float], ...]
) -> None:
    keys, path = layers.joint("front.joint")
    name = f"{parts.id}.front.joint"
    beyond = (parts.left.low[0] - parts.front.low[0], parts.front.high[0] - parts.right.high[0])
    if keys is not None and keys.kind == "dado" and (applied or min(beyond) < LEAST_BEYOND):
        out.find(
            "joint.cannot-be-there",
            "a dado at the end of a drawer front has no wood beyond it",
            path,
            found="dado",
            expected="rabbet, tongue or butt",
            remedy="use `rabbet`, or `tongue` for a groove and tongue",
        )
        keys = None
    if applied:
        assert parts.box_front is not None
        keys = _not_half_blind(out, keys, path)
        for side in (parts.left, parts.right):
            want = settings(out, name, keys, path, "rabbet", side, parts.box_front)
            join(out, side, parts.box_front, _with_grooves(want, parts.box_front, grooves))
        want = settings(out, f"{parts.id}.false_front", SCREWED, path, "butt", parts.box_front, parts.front)
        join(out, parts.box_front, parts.front, replace(want, marked=True))
        return
    for side, over in zip((parts.left, parts.right), beyond, strict=True):
        usual = "dado" if over > side.size(0) else "rabbet"
        want = _with_grooves(settings(out, name, keys, path, usual, parts.front, side), parts.front, grooves)
        meet = meeting(parts.front, side)
        if want.kind == "tongue" and meet is not None:
            lock(out, parts.front, side, meet, want)
        else:
            join(out, parts.front, side, want)


def _with_grooves(
    want: JointSettings, front: Draft, grooves: tuple[tuple[float, float], ...]
) -> JointSettings:
    """The joint, told of the groove for the bottom that both parts get later on, if the front reaches down to it."""
    held = tuple(g for g in grooves if g[0] > front.low[2] + 1e-6)
    return replace(want, grooves=held) if held else want


def _not_half_blind(out: SetOut, keys: JointKeys | None, path: str) -> JointKeys | None:
    """The joint of a box front behind an applied front; half-blind tails would stand on the wrong board."""
    if keys is None or keys.kind != "half_blind":
        return keys
    out.find(
        "joint.cannot-be-there",
        "there are no half-blind dovetails behind an applied drawer front",
        path,
        found="half_blind, and a front of its own before the box",
        expected="tails on the sides, so that a pull cannot open the joint",
        source="common practice",
        remedy="use `dovetail`, whose ends the applied front hides, or `made: one_piece`",
    )
    return None


def join_back(out: SetOut, parts: DrawerParts, layers: Layers) -> None:
    """Join the back to both sides."""
    keys, path = layers.joint("back.joint")
    for side in (parts.left, parts.right):
        make_joint(out, f"{parts.id}.back.joint", keys, path, "dado", side, parts.back, depth_share=0.25)


def add_motion(out: SetOut, parts: DrawerParts, region: Region, room: Room, box: Box, run: Run) -> None:
    """Keep how a drawer or tray is pulled out to the front."""
    top = max(
        box.high[2], parts.front.high[2] if parts.front.low[1] >= region.box.low[1] - 1e-6 else box.high[2]
    )
    out.motions.append(
        Motion(
            parts.id,
            parts.kind,
            parts.name,
            (0.0, -1.0, 0.0),
            run.travel,
            room.kind,
            region.box,
            (region.box.size(0) - box.size(0)) / 2,
            region.box.high[2] - top,
            region.box.high[1] - box.high[1],
            out.design.place(region.path),
            load=run.load,
        )
    )
