"""Loose tenons: a mortise in both parts, and a tenon of its own across them.

The ends of the mortises may be round: a router leaves them so, and the edges of the tenon are rounded to match.
"""

from __future__ import annotations

from itertools import pairwise

from boardwright.piece.cuts import Mortise
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.fastening.across import put_across
from boardwright.piece.joints.fastening.spots import SPACING, places, spot
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut

LEFT_BEHIND = 3.0
"""Wood left behind a mortise [mm]: 1/8 in, common practice."""
SHOULDER = 6.35
"""Wood left beyond the ends of a single tenon [mm]: 1/4 in, common practice."""
SINGLE = 127.0
"""Joints up to this long have one tenon [mm]: 5 in, longer ones several (common practice)."""
WIDE = 50.8
"""Width of each of several loose tenons [mm]: 2 in, common practice."""
LEAST_WIDE = 12.0
"""Narrowest loose tenon [mm]: 1/2 in, common practice."""
LEAST_DEPTH = 9.0
"""Shallowest mortise of a loose tenon [mm]: 3/8 in, common practice."""


def loose_tenons(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, run: tuple[float, float]
) -> tuple[str, ...]:
    """Loose tenons across a face where two parts meet."""
    thick, deep = _thickness(out, meet, want), _depths(out, first, second, meet, want)
    spots, wide = _spread(out, want, run)
    if (
        min(deep) < LEAST_DEPTH - 0.6
        or wide < LEAST_WIDE - 0.6
        or thick > meet.box.size(meet.across) / 2 + 1e-6
    ):
        _none_fits(out, first, second, meet, want, run)
        return ()
    settled = out.sizer.settled
    near = meet.box.low[meet.across] + settled((meet.box.size(meet.across) - thick) / 2)
    spare = out.tables.figure("mortise_deeper").value
    length = settled(sum(deep) - spare, "down")
    p = out.sizer.printer
    name = f"{out.text(thick)} x {out.text(wide)} x {p.text(length)} loose tenon"
    face = first.face(meet.axis, meet.high)
    ids = []
    for along in spots:
        low = along - wide / 2
        for draft, high, depth, other in (
            (first, meet.high, deep[0], second.id),
            (second, not meet.high, deep[1], first.id),
        ):
            side = draft.side(meet.axis, high)
            draft.cuts.append(
                Mortise(side, draft.index(meet.along), near, thick, depth, low, low + wide, holds=other)
            )
        at = spot(meet.axis, face, meet.across, near + thick / 2, meet.along, along)
        in_first = deep[0] - (sum(deep) - length) / 2
        size = (length, wide, thick)
        ids.append(put_across(out, "loose tenon", name, first, second, meet, at, size, in_first, want.path))
    return tuple(ids)


def _thickness(out: SetOut, meet: Meeting, want: JointSettings) -> float:
    share = out.tables.figure("loose_tenon_share")
    thin = meet.box.size(meet.across)
    return out.sizer.size(
        f"{want.name}.thickness",
        [(f"{want.path}.thickness", want.keys.thickness if want.keys else None)],
        thin * share.value,
        rule=f"loose tenon {share.value:.3g} of the thickness",
        source=share.reason,
        total=f"{share.value:.3g} × {out.text(thin)}",
        least=out.sizer.step,
    )


def _depths(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings
) -> tuple[float, float]:
    """Depth of the mortise in either part [mm]: as asked, or as much as the part takes."""
    figure = out.tables.figure("loose_tenon_depth")
    depth = out.sizer.size(
        f"{want.name}.length",
        [(f"{want.path}.length", want.keys.length if want.keys else None)],
        figure.value,
        rule="depth of the mortise of a loose tenon in each part; less where the part is thin",
        source=figure.reason,
        least=out.sizer.step,
    )
    settled = out.sizer.settled
    return (
        settled(min(depth, first.size(meet.axis) - LEFT_BEHIND), "down"),
        settled(min(depth, (second.size(meet.axis) - LEFT_BEHIND) / 2), "down"),
    )


def _spread(out: SetOut, want: JointSettings, run: tuple[float, float]) -> tuple[list[float], float]:
    """Middles of the tenons along the joint, and how wide each is [mm]; both ends of each on the step."""
    length, step = run[1] - run[0], out.sizer.step
    if want.count in (None, 1) and length <= SINGLE:
        low = out.sizer.settled(SHOULDER, "up")
        wide = out.sizer.settled(length - 2 * low, "down")
        return [run[0] + low + wide / 2], wide
    spots = places(out, run, want.count, SPACING, max(SHOULDER + WIDE / 2, 38.0))
    apart = min((b - a for a, b in pairwise(spots)), default=length)
    room = min(WIDE, apart - SHOULDER, 2 * (spots[0] - run[0] - SHOULDER))
    return spots, 2 * step * int(max(room, 0.0) / (2 * step) + 1e-6)


def _none_fits(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, run: tuple[float, float]
) -> None:
    least = LEAST_DEPTH + LEFT_BEHIND
    out.find(
        "fastener.none-fits",
        f"no loose tenon fits between the {first.name} and the {second.name}",
        want.path,
        found=f"{out.about(first.size(meet.axis))} of the {first.name} and "
        f"{out.about(second.size(meet.axis))} of the {second.name} to mortise, "
        f"{out.about(meet.box.size(meet.across))} thick, a joint {out.about(run[1] - run[0])} long",
        expected=f"{out.up(least)} of wood to mortise, a tenon of at most half the thickness, and "
        f"{out.up(LEAST_WIDE + 2 * SHOULDER)} of joint for each",
        source="common practice",
        remedy="use thicker or wider stock, or fasten it in another way",
        parts=(first.id, second.id),
    )
