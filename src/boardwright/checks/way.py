"""The way from the shop to the place, as the design file gives it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from boardwright.core.findings import Place
from boardwright.design.load import Design
from boardwright.design.schema import Delivery, DoorOpening


@dataclass(frozen=True, slots=True)
class Opening:
    """A door or the opening of a vehicle: clear width and height [mm]."""

    width: float
    height: float
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True)
class Turn:
    """A corner of a corridor, or the landing of a stair.

    Attributes:
        width: before the corner. into: behind it; of a half turn the depth of the landing [mm].
        height: clear, or None where it is not given [mm].
        half: True where the flights run beside each other. well: between them [mm].
    """

    width: float
    into: float
    height: float | None
    half: bool = False
    well: float = 0.0
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True)
class Space:
    """The load space of a vehicle, and its opening where that is smaller [mm]."""

    length: float
    width: float
    height: float
    opening: Opening | None = None
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True)
class Way:
    """The way from the shop to the place; what is None is not given.

    Attributes:
        ceiling: height of the room [mm]. ceiling_at: where the file gives it.
        nonsense: sizes that cannot be: path [mm].
    """

    door: Opening | None = None
    corner: Turn | None = None
    stair: Turn | None = None
    vehicle: Space | None = None
    ceiling: float | None = None
    ceiling_at: Place = field(default_factory=Place)
    nonsense: tuple[tuple[Place, float], ...] = ()


def way_of(design: Design, read: Callable[[str], float | None]) -> Way:
    """The way of a design file; what cannot be read, or is nonsense, is left out.

    Args:
        design: the file.
        read: length of a path [mm]; None, or a ValueError, where it cannot be worked out (a finding of the stage
            that sets the piece out).
    """
    keys = design.file.delivery
    if keys is None:
        return Way()
    return _Reader(design, keys, read).way()


class _Reader:
    """Reads the lengths of `delivery`, and keeps those that are nonsense."""

    def __init__(self, design: Design, keys: Delivery, read: Callable[[str], float | None]) -> None:
        self._design = design
        self._keys = keys
        self._read = read
        self._wrong: list[tuple[Place, float]] = []

    def _length(self, path: str, given: object, least: float = 1e-6) -> float | None:
        if given is None:
            return None
        try:
            mm = self._read(f"delivery.{path}")
        except ValueError:
            return None
        if mm is not None and mm < least:
            self._wrong.append((self._design.place(f"delivery.{path}"), mm))
            return None
        return mm

    def _opening(self, path: str, keys: DoorOpening | None) -> Opening | None:
        if keys is None:
            return None
        width = self._length(f"{path}.width", keys.width)
        height = self._length(f"{path}.height", keys.height)
        if width is None or height is None:
            return None
        return Opening(width, height, self._design.place(f"delivery.{path}"))

    def _corner(self) -> Turn | None:
        keys = self._keys.corner
        if keys is None:
            return None
        width = self._length("corner.width", keys.width)
        into = self._length("corner.into", keys.into)
        height = self._length("corner.height", keys.height)
        if width is None:
            return None
        return Turn(width, into or width, height, place=self._design.place("delivery.corner"))

    def _stair(self) -> Turn | None:
        keys = self._keys.stair
        if keys is None:
            return None
        width = self._length("stair.width", keys.width)
        landing = self._length("stair.landing", keys.landing)
        well = self._length("stair.well", keys.well, 0.0)
        headroom = self._length("stair.headroom", keys.headroom)
        if width is None:
            return None
        place = self._design.place("delivery.stair")
        return Turn(width, landing or width, headroom, keys.turn == "half", well or 0.0, place)

    def _vehicle(self) -> Space | None:
        keys = self._keys.vehicle
        if keys is None:
            return None
        length = self._length("vehicle.length", keys.length)
        width = self._length("vehicle.width", keys.width)
        height = self._length("vehicle.height", keys.height)
        opening = self._opening("vehicle.opening", keys.opening)
        if length is None or width is None or height is None:
            return None
        place = self._design.place("delivery.vehicle")
        return Space(length, width, height, opening, place)

    def way(self) -> Way:
        """All of it."""
        ceiling = self._length("ceiling", self._keys.ceiling)
        return Way(
            self._opening("door", self._keys.door),
            self._corner(),
            self._stair(),
            self._vehicle(),
            ceiling,
            self._design.place("delivery.ceiling"),
            tuple(self._wrong),
        )
