"""A full-size pattern on sheets of paper: how many, and how far off its far edge may be."""

from __future__ import annotations

from math import ceil, sqrt

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "pages": {"overlap": Limit(0, None, "mm")},
    "likely_drift": {"across": Limit(1, None, "pages")},
}


def pages(length: float, width: float, paper: tuple[float, float], overlap: float) -> tuple[int, int]:
    """Pages along and across a pattern, the sheets as they are given.

    Args:
        length: of the pattern [mm].
        width: of the pattern [mm].
        paper: printable length along the pattern, and across it [mm].
        overlap: of neighbours [mm].

    Returns:
        How many along, how many across [-].

    Limits:
        An overlap less than the paper.

    Source:
        Geometry: each page after the first adds its length less the overlap.

    Example:
        34 x 22 in on 7 1/2 x 10 in, 1/2 in over: printed 5 x 3; turned 4 x 4.

        >>> pages(34, 22, (7.5, 10), 0.5), pages(34, 22, (10, 7.5), 0.5)
        ((5, 3), (4, 4))
    """
    along, across = (
        max(1, ceil((size - overlap) / (sheet - overlap) - 1e-9))
        for size, sheet in zip((length, width), paper, strict=True)
    )
    return along, across


def likely_drift(across: int, each: float) -> float:
    """How far off the far edge of a row of pages likely is, when each page is off by as much one way or the other.

    Args:
        across: pages in the row [-].
        each: error of one page [mm].

    Returns:
        Likely error of the far edge; the worst is `across` times `each` [mm].

    Limits:
        Errors that do not depend on each other.

    Source:
        Root of the sum of squares.

    Example:
        Five pages, 0.5 mm each: printed 1.1 mm.

        >>> round(likely_drift(5, 0.5), 1)
        1.1
    """
    return sqrt(across) * each
