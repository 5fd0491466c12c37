"""What a joint is asked to be, after the file and the trade's defaults have been put together."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.setout import SetOut

LEAST_BETWEEN = 3.0
"""Wood left between two dados from opposite faces, when their depth is given [mm]: 1/8 in, common practice."""


@dataclass(frozen=True, slots=True)
class JointSettings:
    """A joint with every number settled.

    Attributes:
        kind: as the file names it, e.g. `butt`, `dado`.
        depth: of the dado, rabbet or tongue [mm]; 0 for a kind that settles its own.
        width: thickness of the tongue [mm].
        stopped: how far a dado stops short of the front [mm].
        fasten: as the file names it, e.g. `screws`, `biscuits`, `none`.
        count: number of fasteners, None for by length.
        screw: gauge, None for by thickness. screw_length: [mm], None for by thickness.
        glue: glued or not.
        path: where the file asks for it.
        marked: True when the holes of the second part are marked in place, through those of the first.
        name: what it is called in `explain`.
        keys: what the file says, None for nothing.
        taken: how deep grooves or rabbets for a panel go later on into the inner edges of a frame's corner [mm].
        back: how much of the rear end of a corner on edge a back takes later on: splines end before it [mm].
        grooves: places along a corner where both parts get a groove later on: from, to [mm].
    """

    kind: str
    depth: float = 0.0
    width: float = 0.0
    stopped: float = 0.0
    fasten: str = "none"
    count: int | None = None
    screw: int | None = None
    screw_length: float | None = None
    glue: bool = True
    path: str = ""
    marked: bool = False
    name: str = ""
    keys: JointKeys | None = None
    taken: float = 0.0
    back: float = 0.0
    grooves: tuple[tuple[float, float], ...] = ()


def settings(
    out: SetOut,
    name: str,
    keys: JointKeys | None,
    path: str,
    default_kind: str,
    first: Draft,
    second: Draft,
    *,
    depth_share: float | None = None,
    both_faces: bool = False,
) -> JointSettings:
    """Settle a joint between two parts by the trade's proportions.

    Args:
        out: the bench.
        name: what it is called in `explain`.
        keys: what the file says, or None.
        path: its path.
        default_kind: kind when the file names none.
        first: the part that receives.
        second: the part that goes in.
        depth_share: depth as a share of the first part's thickness, instead of the kind's own.
        both_faces: True when the same part may be cut at the same place from its other face.
    """
    kind = out.sizer.choose(
        name, keys.kind if keys is not None else None, default_kind, "usual joint at this place", path
    )
    t1 = first.size(first.thickness_axis)
    t2 = second.size(second.thickness_axis)
    sizer = out.sizer
    depth = width = stopped = 0.0
    if kind in ("rabbet", "double_rabbet", "dado", "tongue"):
        depth = _depth(out, name, keys, path, kind, t1, depth_share, both_faces)
    if kind == "tongue":
        share = out.tables.figure("tongue_thickness_share")
        width = sizer.size(
            f"{name}.width",
            [(f"{path}.width", keys.width if keys else None)],
            max(t2 * share.value, sizer.step),
            rule=f"tongue {share.value:.3g} of the part's thickness",
            source=share.reason,
            total=f"{share.value:.3g} × {out.text(t2)}",
            least=sizer.step,
        )
        width = min(width, t2)
    if kind == "dado" and keys is not None and keys.stopped is not None:
        stopped = sizer.size(f"{name}.stopped", [(f"{path}.stopped", keys.stopped)], 0.0)
    fasten = (keys.fasten if keys else None) or _fasten(kind, second)
    length = None
    if keys is not None and keys.screw_length is not None:
        length = sizer.read(f"{path}.screw_length")
    glue = keys.glue if keys is not None and keys.glue is not None else True
    return JointSettings(
        kind,
        depth,
        width,
        stopped,
        fasten,
        keys.count if keys else None,
        keys.screw if keys else None,
        length,
        glue,
        path,
        name=name,
        keys=keys,
    )


def _depth(
    out: SetOut,
    name: str,
    keys: JointKeys | None,
    path: str,
    kind: str,
    t1: float,
    depth_share: float | None,
    both_faces: bool,
) -> float:
    sizer = out.sizer
    figure = out.tables.figure("rabbet_depth_share" if "rabbet" in kind else "dado_depth_share")
    share = depth_share if depth_share is not None else figure.value
    source = figure.reason if depth_share is None else "common practice"
    rule = f"{kind.replace('_', ' ')} depth {share:.3g} of the thickness it is cut in"
    total = f"{share:.3g} × {out.text(t1)}"
    default = t1 * share
    most, left = t1 - sizer.step, out.tables.figure("dado_web").value
    if both_faces:
        most = (t1 - LEAST_BETWEEN) / 2
        room = (t1 - left) / 2
        if room < default:
            default = room
            rule, total = (
                f"both faces are cut: {out.text(left)} is left between",
                f"({out.text(t1)} - {out.text(left)}) / 2",
            )
    default = max(default, sizer.step)
    depth = sizer.size(
        f"{name}.depth",
        [(f"{path}.depth", keys.depth if keys else None)],
        default,
        rule=rule,
        source=source,
        total=total,
        direction="down",
        least=sizer.step,
    )
    if depth > most + 1e-9:
        good = max(sizer.settled(min(most, t1 / 2), "down"), min(sizer.step, t1 / 2))
        out.find(
            "joint.too-deep",
            f"the {kind} is too deep where both faces are cut"
            if both_faces
            else f"the {kind.replace('_', ' ')} is as deep as the part is thick",
            f"{path}.depth",
            found=f"{out.about(depth)} in a part {out.about(t1)} thick",
            expected=f"at most {out.down(good)}",
            source="common practice: 1/8 in (3 mm) left between" if both_faces else figure.reason,
            remedy=f"make it {out.down(max(min(default, good), sizer.step))}",
        )
        depth = good
    return depth


def _fasten(kind: str, second: Draft) -> str:
    """A butt joint needs more than glue: dowels in solid wood, screws in sheet goods (common practice)."""
    if kind != "butt":
        return "none"
    return "dowels" if second.stock.kind == "wood" else "screws"
