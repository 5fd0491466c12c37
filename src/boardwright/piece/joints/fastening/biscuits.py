"""Biscuits: which, and the slots they need in both parts."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.piece.cuts import BiscuitSlot
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.fastening.across import put_across
from boardwright.piece.joints.fastening.spots import LEFT_BEYOND_TIP, places, spot
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut

SIZES = (20, 10, 0)
"""Numbers of biscuits, the largest first."""
BETWEEN = 6.0
"""Wood left between two slots along a joint [mm]: 1/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class Biscuit:
    """A biscuit and its slot, as published.

    Attributes:
        number: 0, 10 or 20.
        length, width, thickness: of the biscuit; its width stands half in each part [mm].
        depth: of a slot, on the step [mm].
        radius: of the cutter [mm].
    """

    number: int
    length: float
    width: float
    thickness: float
    depth: float
    radius: float

    @property
    def cut(self) -> float:
        """Length of a slot at the surface [mm]."""
        return float(2 * (2 * self.radius * self.depth - self.depth**2) ** 0.5)

    @property
    def name(self) -> str:
        """As bought."""
        return f"No. {self.number} biscuit"


def biscuit(out: SetOut, number: int) -> Biscuit:
    """The biscuit of a number."""
    value = {key: out.tables.figure(f"biscuit_{key}").value for key in ("thickness", "cutter")}
    length, width, depth = (
        out.tables.figure(f"biscuit_{number}_{key}").value for key in ("length", "width", "slot_depth")
    )
    depth = out.sizer.settled(depth, "up")
    return Biscuit(number, length, width, value["thickness"], depth, value["cutter"] / 2)


def against(out: SetOut, one: Biscuit, thin: float, deep: float, run: float) -> str:
    """What stands against a biscuit; "" when it fits.

    Args:
        out: the bench.
        one: the biscuit.
        thin: thickness of the stock that the slot is cut in the middle of [mm].
        deep: wood that the slot goes into, the lesser of the two parts [mm].
        run: length of the joint [mm].
    """
    least = out.tables.figure("biscuit_20_least")
    if one.number == 20 and thin <= least.value + 1e-6:
        return f"stock over {out.up(least.value)} thick"
    if thin < 3 * one.thickness - 0.1:
        return f"stock {out.up(3 * one.thickness)} thick"
    if deep < one.depth + LEFT_BEYOND_TIP - 1e-6:
        return f"{out.up(one.depth + LEFT_BEYOND_TIP)} of wood to cut the slot into"
    return f"a joint {out.up(one.cut)} long" if run < one.cut - 1e-6 else ""


def choose_biscuit(
    out: SetOut, first: Draft, second: Draft, want: JointSettings, sizes: tuple[float, float, float]
) -> Biscuit | None:
    """The one that is asked for, or the largest that fits; None, with a finding, when none does.

    Args:
        out: the bench.
        first: the part the joint starts in.
        second: the other.
        want: the joint.
        sizes: thickness of the stock, wood that the slot goes into, length of the joint [mm].
    """
    given = want.keys.biscuit if want.keys is not None else None
    offered = [biscuit(out, n) for n in (SIZES if given is None else (given,))]
    one = next((b for b in offered if not against(out, b, *sizes)), None)
    if one is None:
        none_fits(out, first, second, want, offered[-1], sizes)
    return one


def biscuit_places(
    out: SetOut, first: Draft, second: Draft, want: JointSettings, one: Biscuit, run: tuple[float, float]
) -> list[float]:
    """Where biscuits stand along a joint; none, with a finding, when more are asked for than have room.

    Args:
        out: the bench.
        first: the part the joint starts in.
        second: the other.
        want: the joint.
        one: the biscuit.
        run: from where to where the joint runs [mm].
    """
    length = run[1] - run[0]
    from_edge = max(out.tables.figure("biscuit_first").value, one.cut / 2)
    spots = places(out, run, want.count, out.tables.figure("biscuit_spacing").value, from_edge)
    most = max(1, int((length - one.cut / 2) // (one.cut + BETWEEN)))
    if want.count is not None and want.count > most:
        too_many(out, first, second, want, one, most, length)
        return []
    return places(out, run, most, length) if len(spots) > most else spots


def biscuits(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, run: tuple[float, float]
) -> tuple[str, ...]:
    """Biscuits across a face where two parts meet, each half in either part."""
    thin, length = meet.box.size(meet.across), run[1] - run[0]
    deep = min(first.size(meet.axis), second.size(meet.axis) / 2)
    one = choose_biscuit(out, first, second, want, (thin, deep, length))
    if one is None:
        return ()
    spots = biscuit_places(out, first, second, want, one, run)
    middle = meet.box.low[meet.across] + out.sizer.settled(thin / 2)
    face = first.face(meet.axis, meet.high)
    ids = []
    for along in spots:
        at = spot(meet.axis, face, meet.across, middle, meet.along, along)
        _slot(first, meet, meet.high, at, one, second.id)
        _slot(second, meet, not meet.high, at, one, first.id)
        size = (one.width, one.length, one.thickness)
        ids.append(
            put_across(out, "biscuit", one.name, first, second, meet, at, size, one.width / 2, want.path)
        )
    return tuple(ids)


def _slot(draft: Draft, meet: Meeting, high: bool, at: Vec, one: Biscuit, other: str) -> None:
    side = draft.side(meet.axis, high)
    where = [at[axis] for k, axis in enumerate(draft.axes) if k != side.axis]
    draft.cuts.append(
        BiscuitSlot(
            side,
            draft.index(meet.along),
            (where[0], where[1]),
            one.thickness,
            one.depth,
            one.radius,
            one.name,
            other,
        )
    )


def none_fits(
    out: SetOut,
    first: Draft,
    second: Draft,
    want: JointSettings,
    one: Biscuit,
    sizes: tuple[float, float, float],
) -> None:
    """Say that no biscuit fits; `sizes` as in `choose_biscuit`."""
    thin, deep, run = sizes
    out.find(
        "fastener.none-fits",
        f"no biscuit fits between the {first.name} and the {second.name}"
        if want.keys is None or want.keys.biscuit is None
        else f"a No. {one.number} biscuit does not fit between the {first.name} and the {second.name}",
        want.path,
        found=f"stock {out.about(thin)} thick, {out.about(deep)} of wood for the slot, "
        f"a joint {out.about(run)} long",
        expected=against(out, one, *sizes),
        source=out.tables.figure(f"biscuit_{one.number}_slot_depth").reason,
        remedy="use a smaller biscuit, or fasten it in another way"
        if one.number
        else "use thicker stock, or fasten it in another way",
        parts=(first.id, second.id),
    )


def too_many(
    out: SetOut, first: Draft, second: Draft, want: JointSettings, one: Biscuit, most: int, run: float
) -> None:
    """Say that only `most` biscuits have room along `run` [mm]."""
    out.find(
        "fastener.none-fits",
        f"there is no room for {want.count} biscuits between the {first.name} and the {second.name}",
        f"{want.path}.count",
        found=f"a joint {out.about(run)} long, slots {out.about(one.cut)} long",
        expected=f"at most {most}",
        source="common practice",
        remedy=f"use {most}, or a smaller biscuit",
        parts=(first.id, second.id),
    )
