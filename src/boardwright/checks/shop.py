"""What the shop has and how exactly it works, as the design file says or as is usual."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from boardwright.core.arithmetic import ArithmeticProblem, Resolver
from boardwright.core.lengths import LengthError
from boardwright.design.load import Design
from boardwright.tables.bundle import Tables

PRECISION = ("thickness", "rip", "crosscut", "groove_width", "groove_depth", "groove_place", "square")
"""What the shop's precision is told for; `square` is in each 12 in."""
FOOT = 304.8


@dataclass(frozen=True, slots=True)
class Shop:
    """The shop.

    Attributes:
        precision: plus or minus of each of `PRECISION` [mm], three standard deviations; `square` [mm/mm].
        joint_play: how much wider a dado is cut than what goes into it [mm].
        given: paths of the keys that the file gives.
    """

    precision: Mapping[str, float] = field(default_factory=dict)
    joint_play: float = 0.0
    given: tuple[str, ...] = ()


def usual_shop(tables: Tables) -> Shop:
    """The shop that is assumed where the file says nothing."""
    return _shop(tables, lambda path: None, FOOT)


def shop_of(design: Design, tables: Tables) -> Shop:
    """The shop of a design file."""
    if design.file.shop is None:
        return usual_shop(tables)
    return _shop(tables, reader(design), FOOT if design.file.units == "in" else 300.0)


def reader(design: Design) -> Callable[[str], float | None]:
    """Lengths of a design file by their paths [mm]; None for one that is not given, or comes to nothing."""
    sizes = Resolver(design.lengths, "mm" if design.file.units == "mm" else "in", lambda _: None)

    def read(path: str) -> float | None:
        if path not in design.lengths:
            return None
        try:
            return sizes.value(path)
        except (ArithmeticProblem, LengthError, ValueError):
            return None

    return read


def _shop(tables: Tables, read: Callable[[str], float | None], over: float) -> Shop:
    given: list[str] = []

    def length(path: str, key: str) -> float:
        value = read(path)
        if value is None or value < 0:
            return tables.figure(key).value
        given.append(path)
        return value

    precision = {k: length(f"shop.precision.{k}", f"precision_{k}") for k in PRECISION}
    precision["square"] /= over if "shop.precision.square" in given else FOOT
    return Shop(precision, length("shop.joint_play", "dado_fit"), tuple(given))
