"""What can be asked of any cut: where it is worked from, what it holds, the room around what it takes."""

from __future__ import annotations

from boardwright.piece.cuts.fitted import DovetailTongue, Fingers, Tails, Tenon
from boardwright.piece.cuts.plain import Groove, Hole, Notch, Rabbet
from boardwright.piece.cuts.sides import Side


def entered(cut: object) -> Side | None:
    """The side a cut goes into; for one that shapes a whole end or corner the end itself.

    None for something that is no cut.
    """
    if isinstance(cut, Tenon | Fingers | Tails | DovetailTongue | Notch):
        return cut.end
    side = getattr(cut, "side", None)
    return side if isinstance(side, Side) else None


def holds(cut: object) -> str:
    """Id of the part that sits in a cut, or ""."""
    found = getattr(cut, "holds", "")
    return found if isinstance(found, str) else ""


def is_plain(cut: object) -> bool:
    """True for a channel, step, notch or hole."""
    return isinstance(cut, Groove | Rabbet | Notch | Hole)
