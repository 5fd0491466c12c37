"""How much of a drawer is open to the sky when a top reaches over it."""

from __future__ import annotations

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "open_inside": {"travel": Limit(0, None, "mm"), "inside": Limit(0, None, "mm")},
    "travel_to_clear": {"inside": Limit(0, None, "mm")},
}


def open_inside(travel: float, front: float, overhang: float, inside: float) -> float:
    """Length of a drawer's inside that lies clear of the edge over it.

    Args:
        travel: how far it comes out [mm].
        front: thickness of its front, behind which the inside starts [mm].
        overhang: how far the edge over it reaches beyond the face of the shut front [mm].
        inside: length of the inside, front to back [mm].

    Returns:
        The clear length [mm].

    Limits:
        None.

    Source:
        Geometry: extension is counted from the front of the case, use from the edge above it.

    Example:
        Bench top 4 in over, front 3/4, inside 17: 13 1/4 in at 18 in of travel, 8 3/4 at 13 1/2.

        >>> open_inside(18, 0.75, 4, 17), open_inside(13.5, 0.75, 4, 17)
        (13.25, 8.75)
    """
    return min(inside, max(0.0, travel - front - overhang))


def travel_to_clear(front: float, overhang: float, inside: float) -> float:
    """Travel at which the whole inside lies clear of the edge over it.

    Args:
        front: thickness of its front [mm].
        overhang: how far the edge reaches beyond the face of the shut front [mm].
        inside: length of the inside [mm].

    Returns:
        Travel [mm].

    Limits:
        None.

    Source:
        Geometry.

    Example:
        >>> travel_to_clear(0.75, 4, 17)
        21.75
    """
    return front + overhang + inside
