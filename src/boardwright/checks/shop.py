"""What the shop has and how exactly it works, as the design file says or as is usual."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

from boardwright.core.arithmetic import ArithmeticProblem, Resolver
from boardwright.core.findings import Place
from boardwright.core.lengths import LengthError, settle
from boardwright.design.load import Design
from boardwright.design.schema import Shop as ShopKeys
from boardwright.tables.bundle import Tables

PRECISION = ("thickness", "rip", "crosscut", "groove_width", "groove_depth", "groove_place", "square")
"""What the shop's precision is told for; `square` is in each 12 in."""
MACHINES = (
    "jointer_width",
    "planer_width",
    "planer_thinnest",
    "saw_rip",
    "saw_depth",
    "saw_shortest_rip",
    "saw_shortest_crosscut",
    "saw_narrowest",
    "mitre_saw_shortest",
    "router_shortest",
    "router_narrowest",
)
"""Sizes that the shop's machines take."""
Exact = tuple[tuple[str, float], ...]
GLUE = "pva_yellow"
FOOT = 304.8


@dataclass(frozen=True, slots=True)
class Shop:
    """The shop.

    Attributes:
        precision: plus or minus of each of `PRECISION` [mm], three standard deviations; `square` [mm/mm].
        joint_play: how much wider a dado is cut than what goes into it [mm].
        machines: each of `MACHINES` [mm].
        clamps: widest that they take [mm] and how many, longest first.
        glue: row of the table of glues; "" where there is no such row.
        glue_asked: as the file names it.
        spread, close, clamp: times for one joint, one joint, one clamp [min].
        open: what the file gives as the time of the glue [min], or None.
        boards: widest board that the shop says it has, or strip that it wants [mm]; None where it says nothing.
        given: paths of the keys that the file gives.
        place: where the file speaks of glue, else of the shop.
    """

    precision: Mapping[str, float] = field(default_factory=dict)
    joint_play: float = 0.0
    machines: Mapping[str, float] = field(default_factory=dict)
    clamps: tuple[tuple[float, int], ...] = ()
    glue: str = GLUE
    glue_asked: str = ""
    spread: float = 0.0
    close: float = 0.0
    clamp: float = 0.0
    open: float | None = None
    boards: float | None = None
    given: tuple[str, ...] = ()
    place: Place = field(default_factory=Place)

    @property
    def exact(self) -> Exact:
        """Its precision as something that can be looked up."""
        return tuple(self.precision.items())


def usual_shop(tables: Tables, units: str = "in") -> Shop:
    """The shop that is assumed where the file says nothing, for a plan printed in some units."""
    return _in_whole(_shop(tables, lambda path: None, FOOT, None), units)


def shop_of(design: Design, tables: Tables) -> Shop:
    """The shop of a design file."""
    if design.file.shop is None:
        return usual_shop(tables, design.units)
    shop = _shop(tables, reader(design), FOOT if design.file.units == "in" else 300.0, design.file.shop)
    shop = _in_whole(shop, design.units)
    return replace(shop, place=design.place("shop.glue" if shop.glue_asked else "shop"))


def _in_whole(shop: Shop, units: str) -> Shop:
    """What is assumed of machines and clamps in whole millimetres where the plan is in mm: 13 in is 330."""
    if units == "in":
        return shop
    machines = {
        k: v if f"shop.machines.{k}" in shop.given else settle(v, 1.0) for k, v in shop.machines.items()
    }
    clamps = shop.clamps
    if "shop.clamps" not in shop.given:
        clamps = tuple((settle(size, 1.0), count) for size, count in clamps)
    return replace(shop, machines=machines, clamps=clamps)


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


def _shop(tables: Tables, read: Callable[[str], float | None], over: float, keys: ShopKeys | None) -> Shop:
    given: list[str] = []

    def length(path: str, key: str) -> float:
        value = read(path)
        if value is None or value < 0:
            return tables.figure(key).value
        given.append(path)
        return value

    precision = {k: length(f"shop.precision.{k}", f"precision_{k}") for k in PRECISION}
    precision["square"] /= over if "shop.precision.square" in given else FOOT
    machines = {k: length(f"shop.machines.{k}", k) for k in MACHINES}
    play = length("shop.joint_play", "dado_fit")
    clamps = [
        (size, entry.count)
        for n, entry in enumerate((keys.clamps if keys else None) or ())
        if (size := read(f"shop.clamps[{n}].length")) is not None
    ]
    if clamps:
        given.append("shop.clamps")
    else:
        clamps = [(tables.figure("clamp_longest").value, round(tables.figure("clamp_count").value))]
    times = keys.glue_times if keys else None

    def time(given: float | None, key: str) -> float:
        return tables.figure(key).value if given is None else given

    asked = keys.glue if keys and keys.glue else ""
    boards = [
        w
        for n in range(len((keys.boards if keys else None) or ()))
        if (w := read(f"shop.boards[{n}].width")) is not None
    ]
    strip = read("shop.strip_max")
    return Shop(
        precision,
        play,
        machines,
        tuple(sorted(clamps, reverse=True)),
        (asked or GLUE) if (asked or GLUE) in tables.glues else "",
        asked,
        time(times.spread if times else None, "glue_spread_time"),
        time(times.close if times else None, "glue_close_time"),
        time(times.clamp if times else None, "glue_clamp_time"),
        times.open if times else None,
        strip if strip is not None else max(boards, default=None),
        tuple(given),
    )
