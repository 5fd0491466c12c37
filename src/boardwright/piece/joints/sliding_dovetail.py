"""Sliding dovetail: a tongue wider at its tip slides along a slot of the same shape."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.piece.cuts import DovetailSlot, DovetailTongue
from boardwright.piece.drafts import Corner, Draft, Meeting
from boardwright.piece.joints.faces import facet, plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

NECK_SHARE = 0.5
"""Thickness of the tongue at its neck for a thickness of 1 of its part (common practice)."""
SLOPE = "1:4"
"""As the common cutter of 14 degrees cuts it: tan 14° = 0.249 (common practice)."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a sliding dovetail; "" for nothing."""
    lo, hi = second.low[meet.across], second.high[meet.across]
    if lo < first.low[meet.across] + 1e-6 or hi > first.high[meet.across] - 1e-6:
        return f"the {second.name} lies flush with the end of the {first.name}, with no wood beyond the slot"
    if second.thickness_axis != meet.across:
        return f"the {second.name} lies with a face on the {first.name}, and has no end or edge to cut the tongue on"
    if (
        second.low[meet.along] < first.low[meet.along] - 1e-6
        or second.high[meet.along] > first.high[meet.along] + 1e-6
    ):
        return f"the {second.name} stands out beside the {first.name}"
    return ""


@dataclass(frozen=True, slots=True)
class Slot:
    """A slot that is settled.

    Attributes:
        depth: [mm]. slope: widening on each side for each mm of depth.
        mouth: from, to on `across` [mm].
        cut: from, to on `along`, as it is cut [mm]; run: as far as the tongue stands in it.
        stop: how far the tongue stops short of the front edge [mm].
        ways: ends at which it is open, False for the low one.
    """

    depth: float
    slope: float
    mouth: tuple[float, float]
    cut: tuple[float, float]
    run: tuple[float, float]
    stop: float
    ways: tuple[bool, ...]

    @property
    def bottom(self) -> tuple[float, float]:
        """From, to on `across` at its bottom [mm]."""
        more = self.depth * self.slope
        return self.mouth[0] - more, self.mouth[1] + more


def sliding_dovetail(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut the slot across the first part and the tongue along the end of the second."""
    not_here(out, first, second, want)
    slot = _slot(out, first, second, meet, want)
    if slot is None:
        return
    lo, hi = second.low[meet.across], second.high[meet.across]
    if slot.stop:
        second.shape_end(
            Corner(meet.axis, not meet.high, slot.depth, meet.along, False, slot.stop, holds=first.id)
        )
    second.grow(meet.axis, not meet.high, slot.depth)
    second.cuts.append(
        DovetailTongue(
            second.side(meet.axis, not meet.high),
            second.index(meet.along),
            slot.depth,
            slot.bottom[0] - lo,
            hi - slot.bottom[1],
            slot.slope,
            first.id,
        )
    )
    first.cuts.append(
        DovetailSlot(
            first.side(meet.axis, meet.high),
            first.index(meet.along),
            slot.mouth[0],
            slot.mouth[1] - slot.mouth[0],
            slot.depth,
            slot.slope,
            *slot.cut,
            second.id,
        )
    )
    out.joint(
        "sliding_dovetail",
        first,
        second,
        _contacts(first, (lo, hi), meet, slot, want.glue),
        [unit(meet.along, high) for high in slot.ways],
        f"sliding dovetail, neck {out.text(slot.mouth[1] - slot.mouth[0])}, {out.text(slot.depth)} deep, "
        f"1:{1 / slot.slope:.3g}{', stopped' if slot.stop else ''}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _slot(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> Slot | None:
    keys, sizer, path = want.keys, out.sizer, want.path
    thick, deep = second.size(meet.across), first.size(meet.axis)
    figure = out.tables.figure("sliding_dovetail_share")
    depth = sizer.size(
        f"{want.name}.depth",
        [(f"{path}.depth", keys.depth if keys else None)],
        max(figure.value * deep, sizer.step),
        rule=f"{figure.value:.3g} of the thickness",
        source=figure.reason,
        total=f"{figure.value:.3g} × {out.text(deep)}",
        direction="down",
        least=sizer.step,
    )
    depth = out.at_most(depth, deep / 2, "the slot", f"{path}.depth", deep)
    word = sizer.choose(
        f"{want.name}.slope",
        keys.slope if keys else None,
        SLOPE,
        "as a cutter of 14 degrees cuts it",
        f"{path}.slope",
    )
    slope = 1 / float(word.split(":")[1])
    most = thick - 2 * depth * slope
    neck = sizer.size(
        f"{want.name}.width",
        [(f"{path}.width", keys.width if keys else None)],
        max(min(NECK_SHARE * thick, most), sizer.step),
        rule="half of the thickness at the neck",
        total=f"{out.text(thick)} / 2",
        direction="down",
        least=sizer.step,
    )
    if neck > most + 1e-6:
        out.find(
            "joint.no-room",
            f"the tongue is wider at its tip than the {second.name} is thick",
            path,
            found=f"{out.about(neck + 2 * depth * slope)} in {out.about(thick)}",
            expected=f"a neck of at most {out.down(max(most, 0.0))}",
            source="the neck and what the slope adds on both sides",
            remedy="make the neck thinner or the slot shallower",
            parts=(first.id, second.id),
        )
        return None
    near = second.low[meet.across] + sizer.settled((thick - neck) / 2)
    cut, run, stop, ways = _reach(out, first, second, meet, want)
    return Slot(depth, slope, (near, near + neck), cut, run, stop, ways)


def _reach(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings
) -> tuple[tuple[float, float], tuple[float, float], float, tuple[bool, ...]]:
    """From where to where the slot and the tongue run, how far it is stopped, and at which ends it is open [mm].

    A slot that is open at neither edge by the place of the second part runs on to the far edge of the first.
    """
    low, high = first.low[meet.along], first.high[meet.along]
    start, end = second.low[meet.along], second.high[meet.along]
    stop = _stop(out, second, want, end - start) if abs(start - low) < 1e-6 else 0.0
    at_low, at_high = abs(start - low) < 1e-6 and not stop, abs(end - high) < 1e-6
    ways = ((False,) if at_low else ()) + ((True,) if at_high or not at_low else ())
    return (start + stop, end if at_low else high), (start + stop, end), stop, ways


def _stop(out: SetOut, second: Draft, want: JointSettings, run: float) -> float:
    """How far the slot stops short of the front edge [mm]; at least half of the joint must be left."""
    if want.keys is None or want.keys.stopped is None:
        return 0.0
    path = f"{want.path}.stopped"
    stop = out.sizer.size(f"{want.name}.stopped", [(path, want.keys.stopped)], 0.0)
    if stop <= run / 2 + 1e-6:
        return stop
    out.find(
        "joint.cannot-be-there",
        f"the slot for the {second.name} stops too far from its end",
        path,
        found=f"{out.about(stop)} of a joint {out.about(run)} long",
        expected=f"at most half of it, {out.down(run / 2)}",
        source="common practice",
        remedy="let it stop nearer to the end, or run it through",
        parts=(second.id,),
    )
    return 0.0


def _contacts(
    first: Draft, whole: tuple[float, float], meet: Meeting, slot: Slot, glued: bool
) -> list[Contact]:
    face = first.face(meet.axis, meet.high)
    seat = face - slot.depth if meet.high else face + slot.depth
    out = [plane(meet.axis, seat, {meet.across: slot.bottom, meet.along: slot.run}, meet.high, glued=glued)]
    for a, b in ((whole[0], slot.mouth[0]), (slot.mouth[1], whole[1])):
        if b - a > 1e-6:
            out.append(
                plane(meet.axis, face, {meet.across: (a, b), meet.along: slot.run}, meet.high, glued=False)
            )
    for neck, tip, high in (
        (slot.mouth[0], slot.bottom[0], True),
        (slot.mouth[1], slot.bottom[1], False),
    ):
        places = ((face, neck, 0), (face, neck, 1), (seat, tip, 1), (seat, tip, 0))
        ring = tuple(_point(meet, at, across, slot.run[end]) for at, across, end in places)
        contact = facet(ring, glued=glued)
        turned = (contact.normal[meet.across] > 0) != high
        out.append(facet(tuple(reversed(ring)), glued=glued) if turned else contact)
    return out


def _point(meet: Meeting, at: float, across: float, along: float) -> Vec:
    v = [0.0, 0.0, 0.0]
    v[meet.axis], v[meet.across], v[meet.along] = at, across, along
    return (v[0], v[1], v[2])
