"""Where the tails and pins of a dovetail joint stand, so that the layout closes. Lengths in mm.

Widths of tails and pins are those at the tip of the tails, where tails are widest and pins narrowest.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from boardwright.core.steps import settle, share_out
from boardwright.formulas.limits import Limit, Limits

TAIL_FOR_PIN = 2.75
"""Width of a tail for a pin of 1: 2 to 3 (common practice)."""
TAIL_RANGE = (19.05, 38.1)
"""Usual width of a tail [mm]: 3/4 to 1 1/2 in (common practice)."""
GRADED = 1.6
"""Widest tail of a graduated row for a narrowest of 1 (common practice: so that it is seen)."""
TRIED = 48
"""How many steps a first half pin is moved to bring a groove into a tail."""

LIMITS: Limits = {
    "dovetail_layout": {"slope": Limit(0, 0.5, "ratio"), "tails": Limit(1, None, "count")},
    "least_width": {"slope": Limit(0, 0.5, "ratio"), "tails": Limit(1, None, "count")},
}
Ends = tuple[bool, bool]


@dataclass(frozen=True, slots=True)
class DovetailLayout:
    """A layout across the width of a joint.

    Attributes:
        tails: from, to of each at its tip [mm].
        width: of the joint [mm].
        root: how much narrower a tail is at its root, on each side that has a pin [mm].
    """

    tails: tuple[tuple[float, float], ...]
    width: float
    root: float

    @property
    def roots(self) -> tuple[tuple[float, float], ...]:
        """From, to of each tail at its root [mm]; a tail at the edge of the joint is straight there."""
        return tuple(
            (a + self.root if a > 0 else a, b - self.root if b < self.width else b) for a, b in self.tails
        )

    @property
    def pins(self) -> tuple[tuple[float, float], ...]:
        """From, to of each pin at its narrow side, half pins at the edges with it [mm]."""
        return _between(self.tails, self.width)

    @property
    def pin_roots(self) -> tuple[tuple[float, float], ...]:
        """From, to of each pin at its wide side [mm]."""
        return _between(self.roots, self.width)


def _between(tails: Sequence[tuple[float, float]], width: float) -> tuple[tuple[float, float], ...]:
    ends = [0.0, *(v for tail in tails for v in tail), width]
    gaps = ((ends[i], ends[i + 1]) for i in range(0, len(ends), 2))
    return tuple((a, b) for a, b in gaps if b - a > 1e-9)


def least_width(
    depth: float,
    slope: float,
    pin: float,
    half_pin: float,
    tool: float,
    tails: int,
    ends: Ends = (True, True),
) -> float:
    """Least width of a joint that takes so many tails, none of them narrower at its root than the tool.

    Args:
        depth: length of the tails [mm].
        slope: run out for each mm of depth [ratio].
        pin: width of a pin at its narrow side [mm].
        half_pin: width of a half pin there [mm].
        tool: the narrowest tool [mm].
        tails: how many [count].
        ends: a half pin at the low and at the high edge [yes or no].

    Returns:
        The width [mm].

    Limits:
        One tail or more.

    Source:
        Sum of the pins, half pins and tails; a tail is wider at its tip by its depth times the slope, each side.

    Example:
        One tail 8 deep at 1:8, root 4: 6 at the tip, and two half pins of 5.

        >>> least_width(8, 1 / 8, 3, 5, 4, 1)
        16.0
    """
    return sum(ends) * half_pin + tails * (tool + 2 * depth * slope) + (tails - 1) * pin


def dovetail_layout(
    width: float,
    depth: float,
    slope: float,
    pin: float,
    half_pin: float,
    tool: float,
    step: float,
    tails: int | None = None,
    graduated: bool = False,
    ends: Ends = (True, True),
    hide: Sequence[tuple[float, float]] = (),
    least_half: float | None = None,
) -> DovetailLayout:
    """Lay out tails and pins across a width.

    Tails and pins are whole steps wide; what is left over goes to the half pins, or makes some tails a step wider where
    an edge has none. Where no layout brings every groove into a tail, the one that brings in most is given.

    Args:
        width: of the joint [mm].
        depth: length of the tails [mm].
        slope: run out for each mm of depth [ratio].
        pin: width of a pin at its narrow side [mm].
        half_pin: usual width of the half pins there [mm].
        tool: the narrowest that is cut with; no pin and no root of a tail is narrower [mm].
        step: finest printed step; all places lie on it as far as the width does [mm].
        tails: how many; None for what comes nearest to the usual width of a tail [count].
        graduated: tails grow narrower from the low to the high edge [yes or no].
        ends: a half pin at the low and at the high edge, else a tail [yes or no].
        hide: places of grooves that should fall within the root of a tail: from, to [mm].
        least_half: a half pin may be made as narrow as this to hide a groove; None for the usual width [mm].

    Returns:
        The layout, from the low edge [mm].

    Limits:
        A width that takes one tail, or two where no half pin stands; ValueError below.

    Source:
        Tail 2 to 3 times a pin, 3/4 to 1 1/2 in; a groove that runs out falls within a tail (common practice).

    Example:
        46 wide, two half pins of 6, one pin of 4, two tails of 15.

        >>> dovetail_layout(46, 16, 1 / 8, 4, 6, 3, 0.5, tails=2).tails
        ((6.0, 21.0), (25.0, 40.0))
    """
    pin, half = settle(max(pin, tool), step, "up"), settle(max(half_pin, tool), step, "up")
    least = half if least_half is None else settle(max(least_half, tool), step, "up")
    best: tuple[int, DovetailLayout] | None = None
    for count in _counts(width, pin, half, tails, ends):
        for first, last in _half_pins(half, min(least, half), step, ends, bool(hide)):
            layout = _laid(width, depth * slope, pin, (first, last), tool, step, count, graduated, ends)
            if layout is None:
                continue
            shows = sum(1 for groove in hide if not hidden_in(layout.roots, groove, width))
            if best is None or shows < best[0]:
                best = shows, layout
            if not shows:
                return layout
    if best is None:
        raise ValueError("no tail fits")
    return best[1]


def hidden_in(tails: Sequence[tuple[float, float]], groove: tuple[float, float], width: float) -> bool:
    """Whether a groove lies within one of several places, or beside the joint altogether.

    Args:
        tails: the places: from, to [mm].
        groove: from, to [mm].
        width: of the joint [mm].

    Returns:
        True when it does [yes or no].

    Limits:
        None.

    Source:
        Definition.

    Example:
        A groove from 5 to 8 in a tail from 4 to 9, of a joint 20 wide.

        >>> hidden_in([(4, 9)], (5, 8), 20), hidden_in([(4, 9)], (3, 8), 20), hidden_in([], (-5, 0), 20)
        (True, False, True)
    """
    a, b = groove
    if b <= 1e-6 or a >= width - 1e-6:
        return True
    return any(low <= a + 1e-6 and b <= high + 1e-6 for low, high in tails)


def _counts(width: float, pin: float, half: float, tails: int | None, ends: Ends) -> list[int]:
    """Numbers of tails to try, the usual first."""
    if tails is not None:
        return [tails]
    wanted = min(max(TAIL_FOR_PIN * pin, TAIL_RANGE[0]), TAIL_RANGE[1])
    least = 1 if any(ends) else 2
    usual = max(least, round((width - sum(ends) * half + pin) / (wanted + pin)))
    return sorted(range(least, usual + 3), key=lambda n: (abs(n - usual), n))


def _half_pins(
    half: float, least: float, step: float, ends: Ends, moved: bool
) -> Iterator[tuple[float, float]]:
    """Widths of the low and the high half pin to try, the usual first, then further and further from it."""
    yield half if ends[0] else 0.0, half if ends[1] else 0.0
    if not moved:
        return
    for i in range(1, TRIED):
        for value in (half - i * step, half + i * step):
            if value < least - 1e-9:
                continue
            if ends[0]:
                yield value, half if ends[1] else 0.0
            if ends[1]:
                yield half if ends[0] else 0.0, value


def _laid(
    width: float,
    root: float,
    pin: float,
    half_pins: tuple[float, float],
    tool: float,
    step: float,
    count: int,
    graduated: bool,
    ends: Ends,
) -> DovetailLayout | None:
    """A layout with so many tails and such half pins; None when they do not fit."""
    if count < 2 and not any(ends):
        return None
    first, last = half_pins
    room = width - first - last - (count - 1) * pin
    if room <= 0:
        return None
    if all(ends):
        sizes = [settle(room * s, step, "down") for s in _shares(count, graduated)]
        first += settle((room - sum(sizes)) / 2, step, "down") if first == last else 0.0
    else:
        sizes = share_out(room, _shares(count, graduated), step)
        sizes[-1] = settle(sizes[-1], step, "down") if ends[1] else sizes[-1]
    if min(sizes) < tool + 2 * root - 1e-6:
        return None
    at, placed = first, []
    for size in sizes:
        placed.append((at, at + size))
        at += size + pin
    if not ends[1]:
        placed[-1] = (placed[-1][0], width)
    return DovetailLayout(tuple(placed), width, root)


def _shares(count: int, graduated: bool) -> list[float]:
    """Share of the room that each tail gets."""
    if not graduated or count < 2:
        return [1 / count] * count
    weights = [GRADED + (1 - GRADED) * i / (count - 1) for i in range(count)]
    return [w / sum(weights) for w in weights]
