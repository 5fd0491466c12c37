"""The moment in its own plane that a joint of a frame breaks at: by published regressions, else by its glue area."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import hypot

from boardwright.checks.context import Context
from boardwright.formulas.joint_strength import dowel_withdrawal, tenon_moment
from boardwright.piece.cuts import Tenon
from boardwright.piece.records import Contact, Joint, Part

JOINT_SHARE = (1 - 1.645 * 0.16) / 2.1
"""Allowed for years, of the mean: spread of 16 %, over 2.1; ASTM D245 (from memory)."""
GLUE_SHARE = JOINT_SHARE / 2
"""The same where only the glue area is counted, which no test stands for."""
DOWEL_WOOD = "maple_sugar"
"""Wood that dowels are reckoned to be made of."""
TENON = "Forest Products Journal 55(12) 2005, mortise and tenon (from memory)"
DOWEL = "Forest Products Journal, dowels in withdrawal (from memory), the dowel in tension alone"
GLUE = "long-grain glue area at the wood's shear strength, halved: by figures, no test of such joints"


@dataclass(frozen=True, slots=True)
class Capacity:
    """What a joint takes.

    Attributes:
        moment: mean at which it breaks [N mm]. share: of it that is allowed for years.
        source: of the figure. found: what it is made of, in words.
        tenon: the rail's tenon, where it has one.
    """

    moment: float
    share: float
    source: str
    found: Callable[[Context], str]
    tenon: Tenon | None = None


def capacity(c: Context, joint: Joint, leg: Part, rail: Part) -> Capacity | None:
    """What the joint of a leg and a rail takes in the plane of both; None where nothing is known."""
    row = c.tables.species.get(leg.stock.table_key)
    if row is None or row.shear is None or abs(rail.pose.y[2]) < 0.9:
        return None
    tenon = next((k for k in rail.cuts if isinstance(k, Tenon) and k.holds == leg.id and k.wide == 1), None)
    if tenon is not None and joint.glued:
        return _tenon(rail, tenon, row.shear)
    if any(id.startswith("dowel") for id in joint.fasteners):
        return _dowels(c, joint, leg, rail, row.shear)
    return _glue(joint, rail, row.shear)


def _tenon(rail: Part, tenon: Tenon, shear: float) -> Capacity | None:
    wide = sum(b - a for a, b, length in tenon.steps if length >= tenon.length - 0.5)
    if wide <= 0:
        return None
    moment = tenon_moment(rail.size[1], wide, tenon.length, shear)
    return Capacity(
        moment,
        JOINT_SHARE,
        TENON,
        lambda c: f"a tenon {c.text(wide)} wide and {c.text(tenon.length)} long",
        tenon,
    )


def _dowels(c: Context, joint: Joint, leg: Part, rail: Part, shear: float) -> Capacity | None:
    dowel_row = c.tables.species.get(DOWEL_WOOD)
    own = [f for f in c.piece.fasteners if f.id in joint.fasteners and f.kind == "dowel"]
    if not own or dowel_row is None or dowel_row.shear is None:
        return None
    axis = max(range(2), key=lambda i: abs(own[0].direction[i]))
    face = leg.box.high[axis] if rail.box.middle()[axis] > leg.box.middle()[axis] else leg.box.low[axis]
    inside = min(min(abs(f.at[axis] - face), abs(f.tip[axis] - face)) for f in own)
    pull = dowel_withdrawal(own[0].diameter, inside, shear, dowel_row.shear)
    heights = [f.at[2] for f in own]
    box = rail.box
    arm = min(max(heights) - box.low[2], box.high[2] - min(heights))
    return Capacity(
        pull * arm,
        JOINT_SHARE,
        DOWEL,
        lambda c: f"{len(own)} dowels of {c.text(own[0].diameter)}, {c.text(inside)} in the leg",
    )


def _glue(joint: Joint, rail: Part, shear: float) -> Capacity | None:
    """Torsion of the glued faces that lie in the plane of the frame."""
    normal = next(i for i in range(3) if abs(rail.pose.z[i]) > 0.9) if _square(rail) else None
    faces = [k for k in joint.contacts if joint.glued and k.glued and k.axis == normal]
    if normal is None or not faces:
        return None
    moment = sum(_twisted(k, shear) for k in faces)
    area = sum(k.area for k in faces)
    return Capacity(
        moment,
        GLUE_SHARE,
        GLUE,
        lambda c: (
            f"{area / (645.16 if c.piece.units == 'in' else 100):.1f} "
            f"{'sq in' if c.piece.units == 'in' else 'cm2'} of long-grain glue"
        ),
    )


def cheeks_moment(c: Context, joint: Joint, axis: int) -> float:
    """Moment square to an axis that breaks the glued cheeks of fingers or tails: 0 where there are none [N mm].

    Each cheek is long grain on long grain, crosswise, and is twisted like the face of a lap.
    """
    woods = [c.tables.species.get(c.parts[id].stock.table_key) for id in (joint.first, joint.second)]
    shear = min((w.shear for w in woods if w is not None and w.shear is not None), default=0.0)
    if not joint.glued or any(w is None for w in woods):
        return 0.0
    faces = [k for k in joint.contacts if k.glued and k.axis == axis]
    return sum(_twisted(k, shear) for k in faces)


def _twisted(face: Contact, shear: float) -> float:
    """Torsion at which a glued rectangle reaches a shear stress, on the low side [N mm]."""
    b, h = (face.box.size(i) for i in range(3) if i != face.axis)
    return shear * b * h * hypot(b, h) / 6


def _square(part: Part) -> bool:
    return any(abs(v) > 0.9 for v in part.pose.z)
