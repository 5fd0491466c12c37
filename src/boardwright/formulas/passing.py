"""What passes through an opening, round a corner, and up from lying to standing: geometry of boxes."""

from __future__ import annotations

from math import asin, atan2, cos, hypot, inf, pi, sin, sqrt

from boardwright.formulas.limits import Limit, Limits

_ABOVE_0 = Limit(0, None, "mm")
LIMITS: Limits = {
    "opening_needed": {"p": _ABOVE_0, "q": _ABOVE_0, "height": _ABOVE_0},
    "longest_round_corner": {"width": _ABOVE_0, "a": _ABOVE_0, "b": _ABOVE_0},
    "longest_round_half_turn": {
        "width": _ABOVE_0,
        "flight": _ABOVE_0,
        "landing": _ABOVE_0,
        "well": _ABOVE_0,
    },
    "tipped_length": {"length": _ABOVE_0, "thick": _ABOVE_0, "height": _ABOVE_0},
    "height_to_stand_up": {"height": _ABOVE_0, "depth": _ABOVE_0},
    "tallest_that_stands_up": {"ceiling": _ABOVE_0, "depth": _ABOVE_0},
}
HALVINGS = 60


def opening_needed(p: float, q: float, height: float) -> float:
    """Least width of a rectangular opening through which a rectangle passes, square to it or tilted in it.

    Tilted by t it is p cos t + q sin t wide and p sin t + q cos t high. Both are concave in t, so the least width
    stands at an end of a range of t in which the height fits: at 0, at 90 degrees, or where it just fits.

    Args:
        p: one side of the rectangle [mm].
        q: its other side [mm].
        height: of the opening [mm].

    Returns:
        Least width; infinite where no tilt fits under the height [mm].

    Limits:
        The rectangle goes through without turning on the way.

    Source:
        Geometry. It agrees with Carver's condition for a rectangle in a rectangle, American Mathematical Monthly 64
        (1957), p. 114, problem E 1225 (from memory).

    Example:
        12 x 1 tilted by the 3-4-5 triangle: 12 x 4/5 + 3/5 = 10.2 high, 12 x 3/5 + 4/5 = 8 wide.

        >>> round(opening_needed(12, 1, 10.2), 9)
        8.0
    """
    diagonal = hypot(p, q)
    if height >= diagonal:
        return min(p, q)
    least = inf
    if p <= height:
        least = min(least, q)
    if q <= height:
        least = min(least, p)
    turned = asin(max(0.0, height) / diagonal)
    for t in (turned - atan2(q, p), pi - turned - atan2(q, p)):
        if 0 <= t <= pi / 2:
            least = min(least, p * cos(t) + q * sin(t))
    return least


def longest_round_corner(width: float, a: float, b: float) -> float:
    """Longest rectangle of a width that goes round a right-angled corner, flat on the floor.

    With its ends on the two outer walls and turned by t, its inner long side passes the inner corner as long as
    a sin t + b cos t - l sin t cos t >= w: l is the least of (a sin t + b cos t - w) / (sin t cos t), where
    a sin^3 t - b cos^3 t = w (cos^2 t - sin^2 t). Shoved round without turning, it may be as long as one corridor
    is wide when its width fits the other.

    Args:
        width: of the rectangle [mm].
        a: width of the corridor before the corner [mm].
        b: width of the corridor behind it [mm].

    Returns:
        Length; 0 where not even its width passes [mm].

    Limits:
        Straight corridors, longer than the rectangle.

    Source:
        Derived as above; without width (a^(2/3) + b^(2/3))^(3/2), the pipe round a corner of calculus textbooks.

    Example:
        Pipe from a hallway 9 ft wide into one 6 ft wide: 21.07 ft (calculus textbooks, from memory).

        >>> round(longest_round_corner(0, 9, 6), 2)
        21.07
    """
    if width > min(a, b):
        return 0.0
    shoved = max(a, b)
    low, high = 0.0, pi / 2
    for _ in range(HALVINGS):
        t = (low + high) / 2
        s, c = sin(t), cos(t)
        if a * s**3 - b * c**3 + width * (c * c - s * s) < 0:
            low = t
        else:
            high = t
    s, c = sin(high), cos(high)
    turned = (a * s + b * c - width) / (s * c) if s * c > 1e-9 else inf
    return max(shoved, turned) if turned != inf else shoved


def longest_round_half_turn(width: float, flight: float, landing: float, well: float) -> float:
    """Longest rectangle of a width that goes round a half turn, flat on the floor: two corners on one landing.

    After the first corner it must lie along the landing. On the way it reaches at most its diagonal along it, so
    with a diagonal up to the landing's length it passes for sure. Or it is shoved round without turning.

    Args:
        width: of the rectangle [mm].
        flight: width of each flight or corridor [mm].
        landing: depth of the landing, in the direction of the flights [mm].
        well: between the two flights [mm].

    Returns:
        Length that passes for sure; 0 where not even its width passes [mm].

    Limits:
        Sufficient, not necessary: a longer one may pass by other ways of turning.

    Source:
        Geometry, from the right-angled corner.

    Example:
        9 wide, flights 20, well 1, landing 35: along it sqrt(41^2 - 9^2) = 40 by the triple 9, 40, 41; each corner
        alone would let more pass.

        >>> round(longest_round_half_turn(9, 20, 35, 1), 9)
        40.0
    """
    if width > min(flight, landing):
        return 0.0
    shoved = max(flight, landing)
    along = 2 * flight + well
    lying = sqrt(max(0.0, along * along - width * width))
    return max(shoved, min(lying, longest_round_corner(width, flight, landing)))


def tipped_length(length: float, thick: float, height: float) -> float:
    """Length on the floor of a box that is carried with one end up, as steep as the height allows.

    Tipped by t it is l sin t + h cos t high and l cos t + h sin t long on the floor.

    Args:
        length: of the box, lying [mm].
        thick: its height, lying [mm].
        height: from floor to ceiling [mm].

    Returns:
        Length on the floor, no more than lying flat; infinite where not even that fits [mm].

    Limits:
        A height under the box's diagonal; with more it can stand on its end.

    Source:
        Geometry.

    Example:
        12 long, 1 high, by the 3-4-5 triangle up to 12 x 4/5 + 3/5 = 10.2: 12 x 3/5 + 4/5 = 8.

        >>> round(tipped_length(12, 1, 10.2), 9)
        8.0
    """
    if thick > height:
        return inf
    diagonal = hypot(length, thick)
    if height >= diagonal:
        return min(length, thick)
    t = asin(height / diagonal) - atan2(thick, length)
    return min(length, length * cos(t) + thick * sin(t)) if t > 0 else length


def height_to_stand_up(height: float, depth: float) -> float:
    """Room over the floor that a piece needs while it is stood up over the edge of its foot.

    Args:
        height: of the piece [mm].
        depth: from that edge to the other side of its foot [mm].

    Returns:
        The diagonal of its side [mm].

    Limits:
        Tipped over its edge on the floor, not lifted on the way; ceilings without lamps or beams.

    Source:
        Pythagoras; a maker's own mistake: a cabinet 94 in tall and 24 in deep needs 97.02 in.

    Example:
        >>> round(height_to_stand_up(94, 24), 2)
        97.02
    """
    return hypot(height, depth)


def tallest_that_stands_up(ceiling: float, depth: float) -> float:
    """Tallest piece of a depth that can be stood up under a ceiling.

    Args:
        ceiling: height of the room [mm].
        depth: from the edge it is tipped over to the other side of its foot [mm].

    Returns:
        Height; 0 where it is deeper than the room is high [mm].

    Limits:
        As `height_to_stand_up`.

    Source:
        Pythagoras; the same maker's case: under 96 in a cabinet 24 in deep may be 92.95 in tall.

    Example:
        >>> round(tallest_that_stands_up(96, 24), 2)
        92.95
    """
    return sqrt(max(0.0, ceiling * ceiling - depth * depth))
