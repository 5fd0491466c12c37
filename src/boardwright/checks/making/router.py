"""Parts that are small where a groove, rabbet or moulding is cut into them."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import MANUAL, against, kinds, least_of, named
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.cuts import Groove, Moulding, Rabbet, RaisedField
from boardwright.piece.records import Part

RUN = (Groove, Rabbet, Moulding, RaisedField)


def _along(p: Part, axis: int) -> bool:
    """True for a part with a cut that runs along one of its axes."""
    for cut in p.cuts:
        if isinstance(cut, Groove) and cut.along == axis:
            return True
        if isinstance(cut, Rabbet) and 3 - cut.side.axis - cut.edge.axis == axis:
            return True
        if isinstance(cut, Moulding | RaisedField) and axis == 0:
            return True
    return False


def measure(c: Context) -> Iterator[Margin]:
    """Length where cuts run along the grain, width where they run across it."""

    def tell(axis: int, parts: list[Part], sizes: list[float], limit: float) -> Finding:
        long = axis == 0
        return Finding(
            "making.small-at-router",
            Severity.NOTE,
            f"{named(c, parts)}: {'short' if long else 'narrow'} to be grooved or moulded at the router table",
            parts[0].place,
            found=f"{c.text(sizes[0])} {'long' if long else 'wide'}"
            + least_of(sizes, "shortest" if long else "narrowest"),
            expected=f"{c.text(limit)} or more, or held in a jig; {MANUAL}",
            source=c.tables.figure("router_shortest" if long else "router_narrowest").reason,
            remedy=f"cut {'each' if len(parts) > 1 else 'it'} in a blank {c.up(limit)} or more "
            f"{'long' if long else 'wide'}, then cut the part off it",
            parts=tuple(p.id for p in parts),
        )

    for axis, key in ((0, "router_shortest"), (1, "router_narrowest")):
        yield from against(
            c,
            "making.small-at-router",
            "length at the router table" if axis == 0 else "width at the router table",
            key,
            [(p, p.size[axis]) for p in kinds(c) if _along(p, axis)],
            lambda parts, sizes, limit, axis=axis: tell(axis, parts, sizes, limit),  # type: ignore[misc]
        )
