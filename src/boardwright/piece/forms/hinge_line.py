"""Where hinges hang a door or lid: the two parts, the pin, and which way the leaves lie."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.lengths import settle
from boardwright.core.poses import Box, Vec
from boardwright.piece.drafts import Draft, Step


@dataclass(frozen=True, slots=True)
class HingeLine:
    """The pin of a row of hinges, and the parts that take the leaves.

    Attributes:
        moving: the part that turns; also: others of it that end at the same edge, such as rails lapped over it.
        still: those that stay, all of them under the leaf. beside: parts let into them, which the leaves lie over too.
        along: the axis of the pin. across: from the still part to the moving one, square to the leaves.
        from_low: True when the moving part lies at the high side of the still one.
        middle: half-way between the two on `across` [mm]. gap: between them [mm].
        outward: +1 when the pin stands out at the high end of the third axis, else -1.
        pin: where the pin is on that axis [mm].
        length: of the edge that is hung [mm]; low: where it starts.
    """

    moving: Draft
    still: tuple[Draft, ...]
    along: int
    across: int
    from_low: bool
    middle: float
    gap: float
    outward: int
    pin: float
    low: float
    length: float
    also: tuple[Draft, ...] = ()
    beside: tuple[Draft, ...] = ()

    @property
    def out_axis(self) -> int:
        """The axis on which the pin stands out."""
        return 3 - self.along - self.across

    def end(self, leaf: float) -> float:
        """Where a leaf of that width ends [mm]."""
        return self.pin - self.outward * leaf

    def reach(self, part: Draft) -> float:
        """From the pin to the far face of a part [mm]: the widest leaf that it could take."""
        return self.outward * (self.pin - part.face(self.out_axis, self.outward < 0))

    def cover(self, part: Draft, leaf: float) -> float:
        """How far a leaf lies over a part, from the edge at the pin [mm]."""
        edge = part.face(self.out_axis, self.outward > 0)
        return self.outward * (edge - self.end(leaf))

    def pivot(self) -> Vec:
        """A point of the pin [mm]."""
        v = [0.0, 0.0, 0.0]
        v[self.along], v[self.across], v[self.out_axis] = self.low, self.middle, self.pin
        return (v[0], v[1], v[2])

    def room(self, a: float, b: float, leaf: float, knuckle: float) -> Box:
        """The room of a hinge from `a` to `b` along the pin, shut [mm]."""
        low, high = [0.0] * 3, [0.0] * 3
        low[self.along], high[self.along] = a, b
        low[self.across], high[self.across] = self.middle - knuckle / 2, self.middle + knuckle / 2
        end, out = self.end(leaf), self.pin + self.outward * knuckle / 2
        low[self.out_axis], high[self.out_axis] = min(end, out), max(end, out)
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))

    def gains(self, a: float, b: float, leaf: float, depth: float, step: float) -> None:
        """Let the leaves of a hinge from `a` to `b` into the parts that they lie over [mm], on a step."""
        for parts, moving in (((self.moving, *self.also), True), ((*self.still, *self.beside), False)):
            for part in parts:
                width = settle(self.cover(part, leaf), step, "up")
                self._gain(part, moving, a, b, min(width, part.size(self.out_axis)), depth)

    def _gain(self, part: Draft, moving: bool, a: float, b: float, width: float, depth: float) -> None:
        a, b = max(a, part.low[self.along]), min(b, part.high[self.along])
        if width <= 1e-6 or depth <= 1e-6 or b - a <= 1e-6:
            return
        high = self.from_low != moving
        part.cuts.append(
            Step(self.across, high, self.out_axis, self.outward > 0, width, depth, a, b, purpose="hinge")
        )


def ends_alike(parts: list[Draft], one: Draft, axes: tuple[tuple[int, bool], ...]) -> tuple[Draft, ...]:
    """The other parts whose sides lie in one plane with those of a part."""
    return tuple(
        p for p in parts if p is not one and all(abs(p.face(*side) - one.face(*side)) < 1e-6 for side in axes)
    )
