"""The rack as records: boards, sheets and offcuts, what else the shop keeps, and what things cost.

The store fills them, the stock stage lays parts on them; neither knows the other. Lengths are millimetres.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

PieceKind = Literal["board", "sheet"]
SupplyKind = Literal["hardware", "glue", "finish"]
PriceUnit = Literal["board foot", "square metre", "sheet", "piece"]
SUPPLY_KINDS: tuple[SupplyKind, ...] = ("hardware", "glue", "finish")
PRICE_UNITS: tuple[PriceUnit, ...] = ("board foot", "square metre", "sheet", "piece")
BOUGHT = "bought"
"""What an offcut was cut from when it was no piece of the rack."""


@dataclass(frozen=True, slots=True)
class Defect:
    """A rectangle of a face that no part may be cut from: knot, check, wane, stain.

    Attributes:
        x, y: its near corner, from the left end and the near edge of the piece [mm].
        length, width: along the grain and across it [mm].
        what: `knot` or the like, for people.
    """

    x: float
    y: float
    length: float
    width: float
    what: str = ""


@dataclass(frozen=True, slots=True)
class RackPiece:
    """One board, one sheet, or an offcut of one.

    Attributes:
        name: what is written on it, unique on the rack.
        kind: `board` or `sheet`.
        material: key of the wood in the species table, or family in the sheet table.
        thickness: as sold [mm]: of a board rough, by its class; of a sheet nominal.
        length, width: along the grain and across it [mm].
        lumber: key of the thickness class of a board; "" for a sheet.
        measured: thickness as measured [mm], where it was.
        moisture: moisture content when it was measured [%].
        grade: as the yard wrote it.
        defects: rectangles to stay clear of.
        cut_from: name of the piece that an offcut was cut from, or `bought`; "" for a whole piece.
        note, picture: words, and the name of a file.
    """

    name: str
    kind: PieceKind
    material: str
    thickness: float
    length: float
    width: float
    lumber: str = ""
    measured: float | None = None
    moisture: float | None = None
    grade: str = ""
    defects: tuple[Defect, ...] = ()
    cut_from: str = ""
    note: str = ""
    picture: str = ""

    @property
    def group(self) -> str:
        """`boards`, `sheets` or `offcuts`."""
        return "offcuts" if self.cut_from else f"{self.kind}s"


@dataclass(frozen=True, slots=True)
class Supply:
    """Hardware, glue or finish that the shop keeps: `quantity` of a `unit` (piece, g, ml, ...)."""

    name: str
    kind: SupplyKind
    quantity: float
    unit: str = "piece"
    note: str = ""


@dataclass(frozen=True, slots=True)
class Price:
    """What something cost on a day.

    Attributes:
        item: key of a wood, family of a sheet, or name of a supply.
        thickness: of a wood or sheet [mm], as on a `RackPiece`; None for a supply, or for any thickness.
        amount: in `currency`, for one `unit`.
        day: year-month-day.
        currency: as the shop writes it; may be empty.
        seller: where it was bought.
    """

    item: str
    thickness: float | None
    amount: Decimal
    unit: PriceUnit
    day: str
    currency: str = ""
    seller: str = ""


@dataclass(frozen=True, slots=True)
class Rack:
    """Everything on the rack at one moment.

    Attributes:
        pieces: in the order of their names; those taken for a plan are not among them.
        supplies, prices: likewise in a steady order.
    """

    pieces: tuple[RackPiece, ...] = ()
    supplies: tuple[Supply, ...] = ()
    prices: tuple[Price, ...] = ()

    def latest_price(self, item: str, thickness: float | None) -> Price | None:
        """The newest price of an item: of that thickness [mm], else of any."""
        near = [p for p in self.prices if p.item == item]
        own = [
            p
            for p in near
            if p.thickness is not None and thickness is not None and abs(p.thickness - thickness) < 0.05
        ]
        return max(own or [p for p in near if p.thickness is None], key=lambda p: p.day, default=None)


def by_name(names: Iterable[str]) -> list[str]:
    """Names in the order of people: B2 before B10."""
    return sorted(names, key=name_key)


def name_key(name: str) -> tuple[tuple[int, int, str], ...]:
    """What names are sorted by, so that B2 stands before B10."""
    pieces = re.findall(r"\d+|\D+", name)
    return tuple((0, int(p), p) if p.isdigit() and p.isascii() else (1, 0, p) for p in pieces)
