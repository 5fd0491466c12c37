"""What stands in the way: how much of each the box around a piece needs, and how much there is."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import inf

from boardwright.checks.context import Context
from boardwright.checks.way import Opening, Space, Turn
from boardwright.core.findings import Place
from boardwright.core.poses import Vec
from boardwright.formulas.passing import (
    height_to_stand_up,
    longest_round_corner,
    longest_round_half_turn,
    opening_needed,
    tipped_length,
)

PAIRS = ((0, 1, 2), (0, 2, 1), (1, 2, 0))
"""Two sides of a box, and the third."""


@dataclass(frozen=True, slots=True)
class Obstacle:
    """One thing on the way.

    Attributes:
        code: of its finding. verb: `pass the door`.
        what: is figured.
        needs: of a box: what it needs and what there is; it passes when the first is no more than the second [mm].
        found: the figures in words, of what it needs and what there is.
        expected: what there is, in words. source: of the figures.
        at: place in the file; None where nothing is given and a usual size is taken.
    """

    code: str
    verb: str
    what: str
    needs: Callable[[Vec], tuple[float, float]]
    found: Callable[[float, float], str]
    expected: str
    source: str
    at: Place | None

    def passes(self, size: Vec) -> bool:
        """True when a box of this size passes."""
        need, there = self.needs(size)
        return need <= there + 1e-6


def obstacles(c: Context) -> Iterator[Obstacle]:
    """Everything on the way, in its order; a usual door where no door is given."""
    way = c.way
    if way.vehicle is not None:
        if way.vehicle.opening is not None:
            yield _opening("passage.vehicle", c, way.vehicle.opening, "vehicle's opening")
        yield _space(c, way.vehicle)
    yield _door(c)
    if way.corner is not None:
        yield _turn("passage.corner", c, way.corner, "the corner of the corridor")
    if way.stair is not None:
        yield _turn("passage.stair", c, way.stair, "the turn of the stair")
    if way.ceiling is not None:
        yield _ceiling(c, way.ceiling)


def _door(c: Context) -> Obstacle:
    door = c.way.door
    if door is not None:
        return _opening("passage.door", c, door, "door")
    width, height = (c.tables.figure(f"usual_door_{side}") for side in ("width", "height"))
    usual = Opening(width.value, height.value)
    return _opening("passage.door", c, usual, "usual door", f"; {width.reason}", given=False)


def door_needed(size: Vec, height: float) -> float:
    """Least width of a door of a height that lets a box through, whichever end goes first [mm]."""
    return min(opening_needed(size[i], size[j], height) for i, j, _ in PAIRS)


def space_needed(size: Vec, width: float, height: float) -> float:
    """Least length of a load space of a width and height that takes a box, whichever way it lies [mm]."""
    least = inf
    for i, j, k in PAIRS:
        if size[k] <= height:
            least = min(least, opening_needed(size[i], size[j], width))
        if size[k] <= width:
            least = min(least, opening_needed(size[i], size[j], height))
        if opening_needed(size[i], size[j], height) <= width:
            least = min(least, size[k])
    return least


def _opening(code: str, c: Context, o: Opening, name: str, more: str = "", given: bool = True) -> Obstacle:
    def found(need: float, there: float) -> str:
        if need == inf:
            return "no side of it is low enough"
        return f"its best way through needs {c.text(need)} of width"

    return Obstacle(
        code,
        f"pass {'a' if not given else 'the'} {name}",
        f"width of {name} that it needs",
        lambda size: (door_needed(size, o.height), o.width),
        found,
        f"an opening {c.text(o.width)} wide and {c.text(o.height)} high",
        "geometry: the box around it, any end first, upright, lying or tilted in the opening" + more,
        o.place if given else None,
    )


def _space(c: Context, s: Space) -> Obstacle:
    return Obstacle(
        "passage.vehicle",
        "go into the vehicle",
        "length of load space that it needs",
        lambda size: (space_needed(size, s.width, s.height), s.length),
        lambda need, there: (
            "no side of it is small enough"
            if need == inf
            else f"its best way in needs {c.text(need)} of length"
        ),
        f"a load space {c.text(s.length)} long, {c.text(s.width)} wide and {c.text(s.height)} high",
        "geometry: the box around it, any side down, square or slanting",
        s.place,
    )


def turn_needed(size: Vec, turn: Turn) -> tuple[float, float]:
    """The box on the floor at its best: its length there, and the longest of its width that turns [mm]."""
    best = (inf, 0.0)
    for i, j, k in PAIRS:
        if turn.height is not None and size[k] > turn.height:
            continue
        long, wide = max(size[i], size[j]), min(size[i], size[j])
        if turn.height is not None:
            tipped = tipped_length(long, size[k], turn.height)
            long, wide = max(tipped, wide), min(tipped, wide)
        most = (
            longest_round_half_turn(wide, turn.width, turn.into, turn.well)
            if turn.half
            else longest_round_corner(wide, turn.width, turn.into)
        )
        if most > 0 and (best[1] == 0 or long * best[1] < best[0] * most):
            best = (long, most)
    return best


def _turn(code: str, c: Context, t: Turn, name: str) -> Obstacle:
    def found(need: float, there: float) -> str:
        if need == inf:
            return "not even its smallest side passes"
        return f"at its best it lies {c.text(need)} long on the floor, and {c.down(there)} would go round"

    high = f", {c.text(t.height)} high" if t.height is not None else ""
    stair = code == "passage.stair"
    one, two = ("flights", "the landing") if stair else ("corridor", "behind the corner")
    deep = f", {two} {c.text(t.into)}{' deep' if stair else ''}"
    return Obstacle(
        code,
        f"go round {name}",
        f"length at {name}",
        lambda size: turn_needed(size, t),
        found,
        f"{one} {c.text(t.width)} wide{deep}{high}",
        "geometry: a rectangle round a right-angled corner, on any side"
        + (" or tipped up" if t.height is not None else "")
        + (", twice on one landing" if t.half else ""),
        t.place,
    )


def _upright(c: Context, size: Vec) -> bool:
    """True when it comes standing the whole way, so that it is not stood up in the room."""
    way = c.way
    if way.door is None or size[2] > way.door.height or min(size[0], size[1]) > way.door.width:
        return False
    return all(t is None or (t.height is not None and size[2] <= t.height) for t in (way.corner, way.stair))


def _ceiling(c: Context, ceiling: float) -> Obstacle:
    def needs(size: Vec) -> tuple[float, float]:
        if _upright(c, size):
            return size[2], ceiling
        return height_to_stand_up(size[2], min(size[0], size[1])), ceiling

    return Obstacle(
        "passage.ceiling",
        "stand up under the ceiling",
        "height that it needs to stand up",
        needs,
        lambda need, there: f"its side is {c.text(need)} from corner to corner",
        f"a ceiling {c.text(ceiling)} high",
        "Pythagoras: tipped up over the edge of its foot",
        c.way.ceiling_at,
    )
