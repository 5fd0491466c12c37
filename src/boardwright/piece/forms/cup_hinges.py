"""Cup hinges: bores in the back of the door, holes for the plates in the case."""

from __future__ import annotations

from itertools import pairwise

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import Hinges
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.records import Hardware
from boardwright.piece.setout import SetOut

LEAST_BEFORE = 3.0
"""Wood before the bottom of the bore [mm]: 1/8 in, common practice."""
PLATE_PITCHES = 1
"""The two holes of a plate stand one pitch of the hole system apart: common practice."""


def cup_hinges(
    out: SetOut,
    id: str,
    keys: Hinges | None,
    path: str,
    door: list[Draft],
    carrier: Draft,
    post: Draft,
    left: bool,
    front: float,
    lap: str,
    group: str,
) -> bool:
    """Bore a door for cup hinges, and the case for their plates; False, with a finding, when it cannot be.

    Args:
        out: the bench.
        id: of the door.
        keys: what the file says of the hinges.
        path: where that stands.
        door: all parts of the door, for its weight.
        carrier: the part of it that is bored.
        post: the part of the case that takes the plates.
        left: hinged at the left.
        front: where the case starts behind the door, or the front of an inset door [mm].
        lap: `inset`, `overlay` or `half_overlay`.
        group: moving group.
    """
    fig = out.tables.figure
    depth, cup = fig("cup_hinge_depth").value, fig("cup_hinge_diameter").value
    room = carrier.size(1)
    depth = depth if room >= depth + LEAST_BEFORE - 1e-6 else (fig("cup_hinge_depth").low or depth)
    edge = out.sizer.size(
        f"{id}.hinges.edge",
        [(f"{path}.edge", keys.edge if keys else None)],
        fig("cup_hinge_edge").value,
        rule="from the edge of the door to the bore",
        source=fig("cup_hinge_edge").reason,
        settle_it=False,
    )
    offset = fig("cup_hinge_dowel_offset").value
    wide = carrier.size(0)
    behind = max(cup / 2, offset + fig("cup_hinge_dowel").value / 2)
    low, high = fig("cup_hinge_edge").low or edge, fig("cup_hinge_edge").high or edge
    why = ""
    if room < depth + LEAST_BEFORE - 1e-6:
        why = f"a door {out.about(room)} thick"
    elif wide < edge + cup / 2 + behind + LEAST_BEFORE - 1e-6:
        why = f"a stile {out.about(wide)} wide"
    elif not low - 1e-6 <= edge <= high + 1e-6:
        why = f"{out.about(edge)} from the edge"
    if why:
        out.find(
            "door.hinge-no-room",
            f"cup hinges have no room at {id.replace('.', ' ')}",
            path,
            found=why,
            expected=f"a door at least {out.up(depth + LEAST_BEFORE)} thick, its hinged side "
            f"{out.up(edge + cup / 2 + behind + LEAST_BEFORE)} wide, {out.about(low)} to {out.about(high)} to the bore",
            source=fig("cup_hinge_edge").reason,
            remedy="use `kind: butt`, or thicker and wider stock",
        )
        return False
    x = (carrier.low[0] + edge + cup / 2) if left else (carrier.high[0] - edge - cup / 2)
    away = 1.0 if left else -1.0
    out.sizer.explain(
        f"{id}.hinges.cup",
        edge + cup / 2,
        f"{out.about(edge)} and half of {out.about(cup)}",
        "from the edge of the door to the middle of the cup",
        fig("cup_hinge_edge").reason,
    )
    beside = post.thickness_axis == 0
    plate = "plate" if beside else "plate for a face frame, screwed to the edge of its stile"
    words = {"inset": "inset", "overlay": "full overlay", "half_overlay": "half overlay"}[lap]
    spots = _spots(out, id, keys, path, door, carrier)
    if spots is None:
        return False
    half = fig("system_hole_pitch").value * PLATE_PITCHES / 2 + fig("system_hole_diameter").value
    if beside and not all(post.low[2] + half <= z <= post.high[2] - half for z in spots):
        out.find(
            "door.hinge-no-room",
            f"the plates of the cup hinges of {id.replace('.', ' ')} have no room on the {post.name}",
            path,
            found=f"a {post.name} {out.about(post.size(2))} high, hinges {out.about(spots[0] - post.low[2])} to "
            f"{out.about(spots[-1] - post.low[2])} up on it",
            expected=f"each at least {out.up(half)} from its ends",
            source=fig("system_hole_pitch").reason,
            remedy="use `kind: butt`, `set: inset`, or a higher opening",
        )
        return False
    for i, z in enumerate(spots):
        _bore(out, carrier, x, z, cup, depth)
        for step in (-0.5, 0.5):
            at: Vec = (x + away * offset, carrier.high[1], z + step * fig("cup_hinge_dowel_spacing").value)
            carrier.cuts.append(
                Bore(
                    1,
                    True,
                    at,
                    fig("cup_hinge_dowel").value,
                    min(fig("cup_hinge_dowel_depth").value, depth),
                    purpose="hardware",
                    for_="cup hinge",
                )
            )
        if beside:
            _plate(out, post, left, front + (room if lap == "inset" else 0.0), z)
        box = Box((x - 5, carrier.high[1] - depth + 1, z - 5), (x + 5, carrier.high[1], z + 5))
        out.hardware.append(
            Hardware(
                f"{id}.hinge.{i + 1}",
                f"cup hinge {cup:g} mm, for {words}, with {plate}; opens at least as far as the plan says",
                "cup_hinge",
                box,
                group,
                place=out.design.place(path),
            )
        )
    return True


def _bore(out: SetOut, carrier: Draft, x: float, z: float, cup: float, depth: float) -> None:
    carrier.cuts.append(
        Bore(1, True, (x, carrier.high[1], z), cup, depth, purpose="hardware", for_="cup hinge")
    )


def _plate(out: SetOut, post: Draft, left: bool, front: float, z: float) -> None:
    """Two holes for a plate, in line with the rows of shelf holes."""
    fig = out.tables.figure
    pitch = fig("system_hole_pitch").value * PLATE_PITCHES
    depth = min(fig("shelf_pin_depth").value, (post.size(0) - LEAST_BEFORE) / 2)
    for step in (-0.5, 0.5):
        at: Vec = (post.face(0, left), front + fig("system_hole_setback").value, z + step * pitch)
        post.cuts.append(
            Bore(
                0,
                left,
                at,
                fig("system_hole_diameter").value,
                depth,
                purpose="hardware",
                for_="hinge plate",
            )
        )


def _spots(
    out: SetOut, id: str, keys: Hinges | None, path: str, door: list[Draft], carrier: Draft
) -> list[float] | None:
    """Heights of the cups, clear of the joints of the rails [mm]; None, with a finding, when there is no room."""
    height = carrier.size(2)
    count = cup_count(out, id, keys, path, height, mass(door))
    end = out.tables.figure("cup_hinge_end")
    first = out.sizer.settled(min(end.value, height / 4))
    span = height - 2 * first
    wished = [carrier.low[2] + out.sizer.settled(first + span * i / (count - 1)) for i in range(count)]
    half = (
        out.tables.figure("cup_hinge_dowel_spacing").value + out.tables.figure("cup_hinge_dowel").value
    ) / 2
    rails = [
        p for p in door if p.length_axis == 0 and p is not carrier and carrier.box.overlap(p.box) is not None
    ]
    closed = sorted((p.low[2] - half - LEAST_BEFORE, p.high[2] + half + LEAST_BEFORE) for p in rails)
    spots = [_clear(out, z, carrier.low[2], closed) for z in wished]
    near = min(b - a for a, b in pairwise(spots))
    if (
        near < 2 * half + LEAST_BEFORE
        or spots[0] < carrier.low[2] + half
        or spots[-1] > carrier.high[2] - half
    ):
        out.find(
            "door.hinge-no-room",
            f"cup hinges have no room at {id.replace('.', ' ')}",
            path,
            found=f"a door {out.about(height)} high"
            + (f", {count} hinges between the joints of its rails" if rails else f", {count} hinges"),
            expected=f"{out.up(2 * half + 2 * LEAST_BEFORE)} for each, clear of the joints",
            source="common practice",
            remedy="use `kind: butt`, or a higher door",
        )
        return None
    out.sizer.explain(
        f"{id}.hinges.first",
        spots[0] - carrier.low[2],
        "clear of the rail" if abs(spots[0] - wished[0]) > 1e-6 else "",
        "from the end of the door to the middle of the cup",
        end.reason,
    )
    return spots


def _clear(out: SetOut, z: float, low: float, closed: list[tuple[float, float]]) -> float:
    """The place nearest to one that lies in none of some spans [mm]."""
    marks = [z, *(v for span in closed for v in span)]
    settled = [low + out.sizer.settled(v - low, "down") for v in marks]
    settled += [low + out.sizer.settled(v - low, "up") for v in marks]
    free = [v for v in settled if not any(a + 1e-6 < v < b - 1e-6 for a, b in closed)]
    return min(free, key=lambda v: (abs(v - z), v))


def mass(parts: list[Draft]) -> float:
    """Mass of some parts, their cuts filled [kg]."""
    return sum(p.size(0) * p.size(1) * p.size(2) * 1e-9 * p.stock.density for p in parts)


def cup_count(out: SetOut, id: str, keys: Hinges | None, path: str, height: float, kilograms: float) -> int:
    """How many cup hinges a door needs: by its height and by its weight, the larger."""
    most = {
        what: next(
            (n for n in (2, 3, 4) if value <= out.tables.figure(f"cup_hinge_{what}_{n}").value + 1e-6), 5
        )
        for what, value in (("height", height), ("weight", kilograms))
    }
    figure = out.tables.figure(
        "cup_hinge_height_2" if most["height"] >= most["weight"] else "cup_hinge_weight_2"
    )
    given = keys.count if keys is not None else None
    count = out.sizer.choose(
        f"{id}.hinges.count",
        None if given is None else str(given),
        str(max(most.values())),
        f"by height {most['height']}, by weight of {kilograms:.1f} kg {most['weight']}; "
        "the hinge maker's sheet governs",
        f"{path}.count",
        figure.reason,
    )
    return int(count)
