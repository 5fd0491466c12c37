"""Screws under plugs: counterbored holes, and plugs of wood over the heads."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.faces import unit
from boardwright.piece.joints.fastening.screws import drive, heads, joint_screw
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Screw

PLUGS = {"in": (9.525, 12.7), "mm": (10.0, 12.0)}
"""Diameters of wood plugs [mm]: 3/8 and 1/2 in; 10 and 12 mm (common practice)."""
PLUG_DEPTH = 6.35
"""Depth of the counterbore for a plug [mm]: 1/4 in, and at most half of the wood there (common practice)."""
LEAST_PLUG = 3.0
"""Depth below which a plug does not hold [mm]: 1/8 in, common practice."""


def plugged_screws(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    want: JointSettings,
    seat: float,
    run: tuple[float, float],
) -> tuple[str, ...]:
    """Screws whose heads lie under plugs of wood in the first part."""
    through = abs(seat - first.face(meet.axis, not meet.high))
    sunk = _sunk(out, first, want, through)
    chosen = joint_screw(out, first, second, meet, want, through - sunk) if sunk else None
    if chosen is None:
        return ()
    screw, length = chosen
    plug = choose_plug(out, screw)
    if plug is None:
        largest = max(_plugs(out))
        out.find(
            "fastener.none-fits",
            f"no plug covers the head of the screws of the {first.name}",
            f"{want.path}.screw",
            found=f"No. {screw.gauge}, head {out.about(screw.head)}",
            expected=f"a head of at most {out.about(largest)}, the widest plug",
            source="common practice",
            remedy=f"use a No. {max(s.gauge for s in out.tables.screws.values() if s.head <= largest)} screw",
            parts=(first.id, second.id),
        )
        return ()
    ids = []
    for at in heads(out, first, meet, want, run):
        ids.append(
            drive(
                out,
                first,
                second,
                meet.axis,
                meet.high,
                at,
                screw,
                length,
                through,
                path=want.path,
                marked=want.marked,
                counterbore=plug,
                sunk=sunk,
            )
        )
        ids.append(_plug(out, first, meet, at, plug, sunk, want.path))
    return tuple(ids)


def _plugs(out: SetOut) -> tuple[float, ...]:
    return PLUGS["mm" if out.design.units == "mm" else "in"]


def choose_plug(out: SetOut, screw: Screw) -> float | None:
    """Diameter of the smallest plug that covers the head of a screw [mm]; None when none does."""
    return next((d for d in _plugs(out) if d >= screw.head - 1e-6), None)


def _sunk(out: SetOut, first: Draft, want: JointSettings, through: float) -> float:
    """Depth of the counterbore for a plug [mm]; 0, with a finding, when the wood is too thin for one."""
    depth = out.sizer.settled(min(PLUG_DEPTH, through / 2), "down")
    if depth >= LEAST_PLUG - 1e-6:
        return depth
    least = 2 * out.sizer.settled(LEAST_PLUG, "up")
    out.find(
        "fastener.none-fits",
        f"the {first.name} is too thin for plugs over its screws",
        want.path,
        found=f"{out.about(through)} under the heads",
        expected=f"at least {out.up(least)}: half of it for the plug",
        source="common practice",
        remedy=f"use stock {out.up(least - through)} thicker, or `fasten: screws`",
        parts=(first.id,),
    )
    return 0.0


def _plug(out: SetOut, first: Draft, meet: Meeting, at: Vec, diameter: float, depth: float, path: str) -> str:
    id = f"plug.{len(out.fasteners) + 1}"
    out.fasteners.append(
        Fastener(
            id,
            "plug",
            f"{out.sizer.printer.text(diameter)} wood plug",
            "plug",
            at,
            unit(meet.axis, meet.high),
            depth,
            diameter,
            diameter,
            first.id,
            first.id,
            place=out.design.place(path),
        )
    )
    return id
