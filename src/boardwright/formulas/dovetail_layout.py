"""Where the tails and pins of a dovetail joint stand, so that the layout closes. Lengths in mm.

Widths of tails and pins are those at the tip of the tails, where tails are widest and pins narrowest; a half pin lies
at both edges.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.core.steps import settle

TAIL_FOR_PIN = 2.75
"""Width of a tail for a pin of 1: 2 to 3 (common practice)."""
TAIL_RANGE = (19.0, 38.0)
"""Usual width of a tail [mm]: 3/4 to 1 1/2 in (common practice)."""
GRADED = 1.6
"""Widest tail of a graduated row for a narrowest of 1 (common practice: so that it is seen)."""


@dataclass(frozen=True, slots=True)
class DovetailLayout:
    """A layout across the width of a joint.

    Attributes:
        tails: from, to of each at its tip [mm].
        width: of the joint [mm].
        root: how much narrower a tail is at its root, on each side [mm].
    """

    tails: tuple[tuple[float, float], ...]
    width: float
    root: float

    @property
    def roots(self) -> tuple[tuple[float, float], ...]:
        """From, to of each tail at its root [mm]."""
        return tuple((a + self.root, b - self.root) for a, b in self.tails)

    @property
    def pins(self) -> tuple[tuple[float, float], ...]:
        """From, to of each pin at its narrow side, the half pins at both edges first and last [mm]."""
        ends = [0.0, *(v for tail in self.tails for v in tail), self.width]
        return tuple((ends[i], ends[i + 1]) for i in range(0, len(ends), 2))


def dovetail_layout(
    width: float,
    depth: float,
    slope: float,
    pin: float,
    half_pin: float,
    tool: float,
    step: float,
    *,
    tails: int | None = None,
    graduated: bool = False,
    hide: Sequence[tuple[float, float]] = (),
) -> DovetailLayout:
    """Lay out tails and pins across a width.

    Args:
        width: of the joint [mm].
        depth: length of the tails [mm].
        slope: run out for each mm of depth, e.g. 1/8.
        pin: width of a pin at its narrow side [mm].
        half_pin: least width of the half pins there [mm].
        tool: the narrowest that is cut with [mm]; no pin and no root of a tail is narrower.
        step: finest printed step [mm]; all places lie on it as far as the width does.
        tails: how many; None for what comes nearest to the usual width of a tail.
        graduated: tails grow narrower from the first to the last.
        hide: places of grooves that must fall within a tail: from, to [mm].

    Returns:
        The layout. Where no number of tails hides every groove, the one that hides most.

    Raises:
        ValueError: no tail fits; the text gives the least width that takes one.
    """
    narrowest = max(pin, tool), max(half_pin, tool)
    wanted = min(max(TAIL_FOR_PIN * narrowest[0], TAIL_RANGE[0]), TAIL_RANGE[1])
    if tails is None:
        usual = max(1, round((width - 2 * narrowest[1] + narrowest[0]) / (wanted + narrowest[0])))
        counts = sorted(range(1, usual + 3), key=lambda n: (abs(n - usual), n))
    else:
        counts = [tails]
    found: list[tuple[int, int, DovetailLayout]] = []
    for rank, count in enumerate(counts):
        for more in (0.0, 0.25, 0.5, 0.75, 1.0) if hide else (0.0,):
            layout = _laid(width, depth * slope, narrowest, tool, step, count, more, graduated)
            if layout is not None:
                shows = sum(1 for groove in hide if not _hidden(layout, groove))
                found.append((shows, rank, layout))
                if not shows and rank == 0:
                    return layout
    if not found:
        least = 2 * narrowest[1] + (tails or 1) * (tool + 2 * depth * slope) + ((tails or 1) - 1) * narrowest[0]
        raise ValueError(f"{least:.6f}")
    return min(found, key=lambda f: f[:2])[2]


def _hidden(layout: DovetailLayout, groove: tuple[float, float]) -> bool:
    """True when a groove lies within the root of a tail, or beside the joint."""
    a, b = groove
    if b <= 0 or a >= layout.width:
        return True
    return any(low - 1e-6 <= a and b <= high + 1e-6 for low, high in layout.roots)


def _laid(
    width: float,
    root: float,
    narrowest: tuple[float, float],
    tool: float,
    step: float,
    count: int,
    more: float,
    graduated: bool,
) -> DovetailLayout | None:
    """A layout with so many tails, its first half pin wider by a share of a pin; None when they do not fit."""
    pin, half = settle(narrowest[0], step, "up"), settle(narrowest[1], step, "up")
    first = half + settle(more * pin, step, "down")
    room = width - first - half - (count - 1) * pin
    shares = _shares(count, graduated)
    sizes = [settle(room * s, step, "down") for s in shares]
    if min(sizes) < tool + 2 * root - 1e-6:
        return None
    spare = room - sum(sizes)
    at = first + (settle(spare / 2, step, "down") if more == 0.0 else 0.0)
    placed = []
    for size in sizes:
        placed.append((at, at + size))
        at += size + pin
    return DovetailLayout(tuple(placed), width, root)


def _shares(count: int, graduated: bool) -> list[float]:
    """Share of the room that each tail gets."""
    if not graduated or count < 2:
        return [1 / count] * count
    weights = [GRADED + (1 - GRADED) * i / (count - 1) for i in range(count)]
    return [w / sum(weights) for w in weights]
