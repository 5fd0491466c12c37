"""A clear space inside a form and the parts around it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

WEB_FRAME = "web frame rail"
"""What the rails of a web frame are called: behind its front rail its runners carry a drawer."""


def carries(part: Draft, depth: float) -> bool:
    """True for a part under or over a drawer that runs to its rear [mm], or the front rail of a web frame."""
    return part.size(1) >= depth - 1.0 or part.name == WEB_FRAME


@dataclass(frozen=True, slots=True)
class Walls:
    """The parts that bound a space; None where another space or nothing is."""

    left: Draft | None = None
    right: Draft | None = None
    floor: Draft | None = None
    ceiling: Draft | None = None
    front: Draft | None = None
    back: Draft | None = None


def rear_rail(out: SetOut, front: Draft | None) -> Draft | None:
    """The rear rail behind a front rail of the case's top or bottom; None for any other part."""
    if front is None or front.id not in ("case.top.front", "case.bottom.front"):
        return None
    return out.drafts.get(front.id.replace(".front", ".rear"))


@dataclass(frozen=True, slots=True)
class Front:
    """The opening of a face frame before a space.

    Attributes:
        box: the opening, as deep as the frame is thick [mm].
        walls: the parts of the frame round it.
        stock, middle: stock and width [mm] of what parts two openings.
        joint: how parts of the frame meet. path: of the frame in the file.
    """

    box: Box
    walls: Walls
    stock: Stock
    middle: float
    joint: JointKeys | None
    path: str


@dataclass(frozen=True, slots=True)
class Way:
    """What open doors leave of the width of the space behind them [mm].

    Attributes:
        low, high: between these a drawer comes out past them.
        least: thickness that a filler has at least.
        plates: heights of the plates of cup hinges on the left and on the right wall. plates_to: where they end.
    """

    low: float
    high: float
    least: float
    plates: tuple[tuple[float, ...], tuple[float, ...]] = ((), ())
    plates_to: float = 0.0


@dataclass(frozen=True, slots=True)
class Region:
    """A clear space.

    Attributes:
        box: its room [mm]; y from the front edge of the case to its back.
        walls: what bounds it.
        path: its path in the design file.
        name: its name in `explain`.
        inner_depth: depth to which shelves and dividers are made [mm], on the step.
        fit: width and height that things made to fit should reckon with [mm]: the least of the equal spaces
            beside it, so that equal spaces get equal drawers.
        front: the opening of a face frame before it; None without one.
        outer: True for the low and high side of x and z that face the outside of the case.
        way: what doors before it leave of its width when they stand open; None when it is all free, or filled.
        under_lid: True when a lid closes it above.
        beside: room at each side that the stay of a lid takes over a tray that is lifted out [mm].
        behind: True behind a door or a fixed panel, where no front can lie over the parts around.
    """

    box: Box
    walls: Walls
    path: str
    name: str
    inner_depth: float
    fit: tuple[float, float]
    outer: tuple[bool, bool, bool, bool] = (True, True, True, True)
    front: Front | None = None
    way: Way | None = None
    behind: bool = False
    under_lid: bool = False
    beside: float = 0.0

    def at(self, path: str, name: str) -> Region:
        """The same space under another path."""
        return replace(self, path=path, name=name)
