"""From a cut to the plain bodies it takes away, in the part's own frame. Both kernels read these."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

from boardwright.core.poses import Box, Vec
from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    Cut,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
    Mortise,
    Moulding,
    Notch,
    Pins,
    Rabbet,
    RaisedField,
    Tails,
    Taper,
    Tenon,
    VGroove,
)
from boardwright.solids.primitives import Body, reach_of
from boardwright.solids.taken import fitted, plain, shaped

_TAKES: dict[type[Cut], Callable[[Any, Vec], list[Body]]] = {
    Groove: plain.groove,
    Rabbet: plain.rabbet,
    Notch: plain.notch,
    Hole: plain.hole,
    Mortise: fitted.mortise,
    BiscuitSlot: fitted.biscuit_slot,
    Tenon: fitted.tenon,
    Fingers: fitted.fingers,
    Tails: fitted.tails,
    Pins: fitted.pins,
    DovetailSlot: fitted.dovetail_slot,
    DovetailTongue: fitted.dovetail_tongue,
    Bevel: shaped.bevel,
    Taper: shaped.taper,
    Moulding: shaped.moulding,
    RaisedField: shaped.raised_field,
    Curve: shaped.curve,
    VGroove: shaped.v_groove,
}


@lru_cache(maxsize=16384)
def taken(cut: Cut, size: Vec) -> tuple[Body, ...]:
    """The bodies that a cut takes away from a blank of a given size.

    Args:
        cut: in the part's own frame.
        size: length, width, thickness of the blank [mm].

    Returns:
        Boxes, rounds and sweeps; open sides are passed by `OVER`.
    """
    return tuple(_TAKES[type(cut)](cut, size))


def around(cut: Cut, size: Vec) -> Box:
    """The box around all that a cut takes away [mm]; of no size at the origin when it takes nothing."""
    rooms = [reach_of(b) for b in taken(cut, size)] or [Box((0.0, 0.0, 0.0), (0.0, 0.0, 0.0))]
    low = [min(r.low[i] for r in rooms) for i in range(3)]
    high = [max(r.high[i] for r in rooms) for i in range(3)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def is_planar(cuts: tuple[Cut, ...], size: Vec) -> bool:
    """True when every body taken away is a box."""
    return all(isinstance(b, Box) for c in cuts for b in taken(c, size))
