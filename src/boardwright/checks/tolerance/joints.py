"""What goes into dados and grooves: it goes in, and does not stand loose."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.tolerance.builds import gap
from boardwright.checks.tolerance.chains import Chain, Faces, Link, Sides
from boardwright.checks.tolerance.fits import Fit
from boardwright.core.findings import Severity
from boardwright.piece.records import Joint

KINDS = ("dado", "groove", "tongue", "panel")


def fits(c: Context, sides: Sides) -> Iterator[Fit]:
    """Each kind of joint between two kinds of parts once."""
    seen: set[tuple[str, ...]] = set()
    for j in c.piece.joints:
        one, two = c.parts.get(j.first), c.parts.get(j.second)
        if j.kind not in KINDS or one is None or two is None:
            continue
        key = (j.kind, two.stock.id, f"{min(two.size):.2f}", two.name)
        walls = _walls(j)
        if key in seen or walls is None:
            continue
        seen.add(key)
        yield _fit(c, sides.along(walls[0]), j, walls)


def _walls(j: Joint) -> tuple[int, float, float] | None:
    """Axis on which the cheeks of a joint face each other, and where they lie [mm]."""
    for axis in range(3):
        low = [k.box.low[axis] for k in j.contacts if k.axis == axis and not k.corners and k.from_first]
        high = [k.box.low[axis] for k in j.contacts if k.axis == axis and not k.corners and not k.from_first]
        pairs = [(a, b) for a in low for b in high if a < b]
        if pairs:
            a, b = min(pairs, key=lambda p: p[1] - p[0])
            return axis, a, b
    return None


def _fit(c: Context, faces: Faces, j: Joint, walls: tuple[int, float, float]) -> Fit:
    axis, low, high = walls
    two = c.parts[j.second]
    groove: Chain = (Link(("groove_width", "dado", round(high - low, 2)), high - low, 0.0),)
    whole = abs(two.box.low[axis] - low) < 0.02 and abs(two.box.high[axis] - high) < 0.02
    own = faces.whole(two) if whole else None
    tongue: Chain = (
        (own,) if own else (Link(("groove_width", "tongue", round(high - low, 2)), high - low, 0.0),)
    )
    now = c.piece.moisture.now
    planned = c.shop.joint_play
    return Fit(
        "tolerance.joint",
        (j.first, j.second),
        f"{c.label(two.id)} in its {'groove' if j.kind == 'panel' else j.kind}",
        "play in dados and grooves",
        (gap(planned, groove, tongue, (now, now, now)),),
        j.place,
        lambda more, total: f"cut the channel {c.text(total)} wider than what goes in (`shop.joint_play`)",
        binds="is too tight",
        rattles_over=c.tables.figure("joint_gap_largest").value,
        rattles="stands loose",
        loose=Severity.WARNING if j.glued else Severity.NOTE,
        by_hand="cut the channel in a test piece first, and fit it to what goes in",
        step=0.0254 if c.piece.units == "in" else 0.02,
    )
