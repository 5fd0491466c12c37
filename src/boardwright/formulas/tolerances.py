"""How the errors of several sizes add up in one gap: worst case, likely case, and the share that is out."""

from __future__ import annotations

from collections.abc import Sequence
from math import asin, degrees, erf, inf, radians, sin, sqrt
from statistics import NormalDist

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "share_below": {"sigma": Limit(0, None, "mm")},
    "room_for_share": {"sigma": Limit(0, None, "mm"), "share": Limit(0.0001, 0.5, "-")},
    "mitre_gap": {"error": Limit(0, 2, "degrees")},
    "mitre_error": {"cuts": Limit(1, None, "-")},
    "taper_reach": {"depth": Limit(1, None, "mm")},
}


def worst_case(tolerances: Sequence[float]) -> float:
    """Error of a sum of sizes when every one of them is out by all its tolerance, the bad way.

    Args:
        tolerances: plus-or-minus of each size, times how often it comes in the sum [mm].

    Returns:
        Plus-or-minus of the sum [mm].

    Limits:
        None: it holds for sizes that hang together, too.

    Source:
        Arithmetic of a chain of sizes. Worked in the trade on four stiles of a pair of doors, each 1/64 in
        too wide: 1/16 in.

    Example:
        >>> worst_case([1 / 64] * 4) * 16
        1.0
    """
    return sum(abs(t) for t in tolerances)


def root_sum_square(tolerances: Sequence[float]) -> float:
    """Likely error of a sum of sizes whose errors do not hang together.

    Args:
        tolerances: plus-or-minus of each size, all at the same number of standard deviations [mm].

    Returns:
        Plus-or-minus of the sum, at the same number of standard deviations [mm].

    Limits:
        Errors that do not hang together; those that do are summed first.

    Source:
        JCGM 100:2008 (Guide to the expression of uncertainty in measurement), eq. 10; example H.1, an end gauge:
        25, 9.7, 2.9 and 16.6 nm together 32 nm (figures from memory).

    Example:
        >>> round(root_sum_square([25, 9.7, 2.9, 16.6]))
        32
    """
    return sqrt(sum(t * t for t in tolerances))


def share_below(limit: float, mean: float, sigma: float) -> float:
    """Share of a normally distributed size that comes out below a limit.

    Args:
        limit: the limit [mm].
        mean: the size as planned [mm].
        sigma: its standard deviation [mm].

    Returns:
        Share, 0 to 1 [-].

    Limits:
        Normally distributed errors, centred on the plan.

    Source:
        NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, table of the standard normal distribution:
        0.47500 between 0 and 1.96 standard deviations.

    Example:
        >>> round(0.5 - share_below(-1.96, 0, 1), 5)
        0.475
    """
    if sigma <= 0:
        return 1.0 if mean < limit else 0.0
    return (1 + erf((limit - mean) / (sigma * sqrt(2)))) / 2


def room_for_share(share: float, sigma: float) -> float:
    """Gap to plan so that only a share of it comes out below nothing.

    Args:
        share: that may bind [-].
        sigma: standard deviation of the gap [mm].

    Returns:
        Gap [mm].

    Limits:
        Normally distributed errors, centred on the plan.

    Source:
        NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: one in a hundred lies beyond 2.326 standard
        deviations (from memory).

    Example:
        >>> round(room_for_share(0.01, 1), 3)
        2.326
    """
    return -NormalDist().inv_cdf(share) * sigma


def mitre_gap(length: float, cuts: int, error: float) -> float:
    """How far the last mitre of a ring stands open when all others are pulled tight.

    Args:
        length: of the mitre [mm].
        cuts: mitre cuts in the ring, two a joint [-].
        error: by which every cut is out, the same way [degrees].

    Returns:
        Gap at the open end of the last joint [mm].

    Limits:
        Small errors; the other joints close.

    Source:
        Geometry: the errors add up round the ring. Worked in a tool-setting article: eight parts, 2 in long,
        0.25 degrees each cut: 0.140 in.

    Example:
        >>> round(mitre_gap(2, 16, 0.25), 3)
        0.14
    """
    return length * sin(radians(cuts * error))


def mitre_error(gap: float, length: float, cuts: int) -> float:
    """Error of each mitre cut that opens the last joint by a gap.

    Args:
        gap: at the open end [mm].
        length: of the mitre [mm].
        cuts: mitre cuts in the ring, two a joint [-].

    Returns:
        Error of each cut [degrees].

    Limits:
        Small errors; the other joints close.

    Source:
        As `mitre_gap`; worked there: four sides, 3 in long, 1/64 in: 0.037 degrees.

    Example:
        >>> round(mitre_error(1 / 64, 3, 8), 3)
        0.037
    """
    return degrees(asin(min(1.0, gap / length))) / cuts


def taper_reach(front: float, back: float, depth: float, width: float) -> float:
    """How far something parallel goes into an opening that tapers, before it binds.

    Args:
        front: width of the opening at the front [mm].
        back: at the back [mm].
        depth: from front to back [mm].
        width: of what goes in [mm].

    Returns:
        How far it goes in; infinite when it never binds, 0 when it does not enter [mm].

    Limits:
        Straight sides.

    Source:
        Geometry; worked in magazine articles on fitting drawers: opening 20 in at the front, 19.94 at the back,
        18 deep; a drawer 19.969 wide goes in 9.3 in.

    Example:
        >>> round(taper_reach(20, 19.94, 18, 19.969), 1)
        9.3
    """
    if width > front:
        return 0.0
    if width <= back:
        return inf
    return (front - width) / (front - back) * depth
