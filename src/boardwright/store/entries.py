"""Cells of one entry (a board, a sheet, a supply, a price) → its record, or everything that is wrong with it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import TypeVar

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.length_text import LengthError, Units
from boardwright.core.lengths import read_length
from boardwright.core.rack import PRICE_UNITS, SUPPLY_KINDS, Price, RackPiece, Supply
from boardwright.store import words
from boardwright.tables.bundle import NOMINAL_MATCH, Tables
from boardwright.tables.records import LumberClass

Entry = RackPiece | Supply | Price
KINDS = ("board", "sheet", *SUPPLY_KINDS, "price")
COLUMNS = (
    "kind", "name", "material", "thickness", "length", "width", "measured", "moisture", "grade", "defects",
    "cut_from", "quantity", "unit", "amount", "currency", "day", "seller", "note", "picture",
)  # fmt: skip
"""Columns of a CSV file of a rack, in the order in which they are written."""
_SUPPLY = ("name", "quantity")
_PIECE = ("material", "thickness", "length", "width")
NEEDED: dict[str, tuple[str, ...]] = {
    "board": _PIECE,
    "sheet": _PIECE,
    "price": ("material", "amount", "unit", "day"),
    "hardware": _SUPPLY,
    "glue": _SUPPLY,
    "finish": _SUPPLY,
}
"""Cells that must be filled, by kind."""
_OF_A_PIECE = (
    "kind", "name", *_PIECE, "measured", "moisture", "grade", "defects", "cut_from", "quantity", "note", "picture",
)  # fmt: skip
_OF_A_SUPPLY = ("kind", "name", "quantity", "unit", "note")
ALLOWED: dict[str, tuple[str, ...]] = {
    "board": _OF_A_PIECE,
    "sheet": _OF_A_PIECE,
    "price": ("kind", "material", "thickness", "amount", "unit", "currency", "day", "seller"),
    "hardware": _OF_A_SUPPLY,
    "glue": _OF_A_SUPPLY,
    "finish": _OF_A_SUPPLY,
}
"""Cells that may be filled, by kind."""
MOST_AT_ONCE = 500
"""Most pieces alike in one entry."""
_T = TypeVar("_T")


@dataclass(slots=True)
class _Reading:
    """One entry as it is read."""

    cells: Mapping[str, str]
    units: Units
    tables: Tables
    place: Callable[[str], Place]
    findings: list[Finding] = field(default_factory=list)

    def text(self, column: str) -> str:
        """Words of a cell; "" when it is empty."""
        return words.plain(self.cells.get(column, ""))

    def value(self, column: str, read: Callable[[str], _T], blank: _T) -> _T:
        """What a cell holds; `blank` when it is empty or not understood."""
        text = self.text(column)
        if not text:
            return blank
        try:
            return read(text)
        except words.NotUnderstood as expected:
            self.wrong(column, text, str(expected))
            return blank

    def wrong(self, column: str, found: str, expected: str) -> None:
        """A cell that cannot be used."""
        self.findings.append(
            Finding(
                "rack.bad-value", Severity.ERROR, f"the {column.replace('_', ' ')} cannot be used",
                self.place(column), found, expected, remedy="correct it; nothing was written",
            )
        )  # fmt: skip

    def length(self, column: str) -> float:
        """A length over 0 [mm]; 0 when it is empty or not understood."""
        return self.value(column, lambda t: words.length(t, self.units), 0.0)


def read_entry(
    cells: Mapping[str, str], units: Units, tables: Tables, place: Callable[[str], Place]
) -> tuple[list[Entry], list[Finding]]:
    """The records of one entry.

    Args:
        cells: text by column, see `COLUMNS`; empty ones may be left out.
        units: of bare numbers.
        tables: woods, sheets and thickness classes that are known.
        place: where the cell of a column stands.

    Returns:
        One record, or several pieces alike where a board or sheet has a quantity; none when there is an
        error. Warnings come with records.
    """
    out = _Reading(cells, units, tables, place)
    kind = out.text("kind").lower()
    if kind not in KINDS:
        out.wrong("kind", kind or "nothing", "one of " + ", ".join(KINDS))
        return [], out.findings
    for column in NEEDED[kind]:
        if not out.text(column):
            out.findings.append(_missing(kind, column, place(column)))
    for column in COLUMNS:
        if column not in ALLOWED[kind] and out.text(column):
            out.wrong(column, out.text(column), f"nothing: a {kind} has none")
    found: list[Entry]
    if kind == "price":
        found = [_price(out)]
    elif kind in SUPPLY_KINDS:
        found = [_supply(out, kind)]
    else:
        found = [*_pieces(out, kind)]
    return ([] if any(f.severity is Severity.ERROR for f in out.findings) else found), out.findings


def _missing(kind: str, column: str, place: Place) -> Finding:
    return Finding(
        "rack.missing-value", Severity.ERROR, f"a {kind} needs its {column.replace('_', ' ')}", place, "nothing",
        remedy=f"give the {column.replace('_', ' ')}; nothing was written",
    )  # fmt: skip


def _pieces(out: _Reading, kind: str) -> list[RackPiece]:
    is_board = kind == "board"
    material = (_wood if is_board else _sheet)(out)
    lumber = _lumber(out) if is_board else None
    thickness = lumber.rough if lumber else (0.0 if is_board else _nominal(out, material))
    piece = RackPiece(
        out.text("name"),
        "board" if is_board else "sheet",
        material,
        thickness,
        out.length("length"),
        out.length("width"),
        lumber.key if lumber else "",
        out.length("measured") or None,
        out.value("moisture", lambda t: words.number(t.removesuffix("%").rstrip(), 0, 100), None),
        out.text("grade"),
        out.value("defects", lambda t: words.defects(t, out.units), ()),
        out.text("cut_from"),
        out.text("note"),
        out.text("picture"),
    )
    for d in piece.defects if piece.length and piece.width else ():
        if d.x + d.length > piece.length + 1e-6 or d.y + d.width > piece.width + 1e-6:
            out.wrong("defects", words.written_defects((d,), out.units), "a defect within the face")
    count = round(out.value("quantity", lambda t: words.number(t, 1, MOST_AT_ONCE), 1.0))
    if count > 1 and piece.name:
        out.wrong("name", piece.name, "no name where there is more than one; each gets a number")
    return [piece] * count


def _wood(out: _Reading) -> str:
    """Key of a wood, which may also be given by its name; one that is not known is kept, with a warning."""
    text = out.text("material")
    spoken = _spoken(text)
    key = next(
        (s.key for s in out.tables.species.values() if text == s.key or spoken in (_spoken(s.name), _spoken(s.key))),
        "",
    )  # fmt: skip
    return key or _unknown(out, text, list(out.tables.species), "species")


def _sheet(out: _Reading) -> str:
    """Family of a sheet, likewise."""
    text = out.text("material")
    families = out.tables.families()
    spoken = _spoken(text)
    family = next((f for f in families if spoken == _spoken(f)), "")
    return family or _unknown(out, text, families, "sheet")


def _unknown(out: _Reading, text: str, known: list[str], table: str) -> str:
    if text:
        key = text.lower().replace(" ", "_")
        near = get_close_matches(key, known, 3, 0.5)
        listed = ", ".join(near) if near else f"a key of the {table} table"
        out.findings.append(
            Finding(
                "rack.unknown-material", Severity.WARNING, f"`{text}` is not in the {table} table",
                out.place("material"), text, listed,
                remedy="correct the name, unless it is a row of your own tables: a design uses only what it names",
            )
        )  # fmt: skip
        return key
    return ""


def _spoken(name: str) -> frozenset[str]:
    return frozenset(name.lower().replace("_", " ").replace(",", " ").split())


def _lumber(out: _Reading) -> LumberClass | None:
    """The thickness class of a board: by its name, its key, or its rough thickness."""
    text = out.text("thickness")
    if not text:
        return None
    classes = sorted(out.tables.lumber.values(), key=lambda c: (c.system != out.units, c.rough))
    for row in classes:
        if text in (row.name, row.key):
            return row
    try:
        mm = read_length(text, out.units)
    except LengthError:
        mm = -1.0
    same = next((c for c in classes if abs(c.rough - mm) < 0.01), None)
    if same is None:
        names = ", ".join(c.name for c in classes if c.system == out.units)
        out.wrong("thickness", text, f"a thickness that lumber is sold in: {names}")
    return same


def _nominal(out: _Reading, family: str) -> float:
    """The nominal thickness of a sheet."""
    mm = out.length("thickness")
    known = out.tables.nominals(family)
    if mm and known and not any(abs(mm - n) <= NOMINAL_MATCH for n in known):
        listed = ", ".join(words.written(n, out.units) for n in known)
        out.wrong("thickness", out.text("thickness"), f"a thickness that {family} is sold in: {listed}")
    return mm


def _supply(out: _Reading, kind: str) -> Supply:
    return Supply(
        out.text("name"),
        next(k for k in SUPPLY_KINDS if k == kind),
        out.value("quantity", lambda t: words.number(t, 0, 1e9), 0.0),
        out.text("unit") or "piece",
        out.text("note"),
    )


def _price(out: _Reading) -> Price:
    unit = out.value("unit", lambda t: words.one_of(t.replace("_", " "), PRICE_UNITS), "piece")
    item, thickness = _priced(out, unit)
    return Price(
        item,
        thickness,
        out.value("amount", words.amount, words.amount("0")),
        next(u for u in PRICE_UNITS if u == unit),
        out.value("day", words.day, ""),
        out.text("currency"),
        out.text("seller"),
    )


def _priced(out: _Reading, unit: str) -> tuple[str, float | None]:
    """What a price is of: a wood or a sheet with its thickness, or a supply by its name."""
    text, spoken = out.text("material"), _spoken(out.text("material"))
    if any(spoken in (_spoken(s.key), _spoken(s.name)) for s in out.tables.species.values()):
        lumber = _lumber(out)
        return _wood(out), lumber.rough if lumber else None
    if any(spoken == _spoken(f) for f in out.tables.families()):
        family = _sheet(out)
        return family, _nominal(out, family) or None
    if unit != "piece" and text:
        _unknown(out, text, [*out.tables.species, *out.tables.families()], "species or sheet")
    return text, (out.length("thickness") or None)


def cells_of(entry: Entry, units: Units) -> dict[str, str]:
    """The cells of a record; `read_entry` makes the same record of them."""
    if isinstance(entry, RackPiece):
        cells = _cells_of_piece(entry, units)
    elif isinstance(entry, Supply):
        cells = {
            "kind": entry.kind, "name": entry.name, "quantity": words.written_number(entry.quantity),
            "unit": entry.unit, "note": entry.note,
        }  # fmt: skip
    else:
        cells = {
            "kind": "price", "material": entry.item, "amount": str(entry.amount), "unit": entry.unit,
            "thickness": words.written(entry.thickness, units) if entry.thickness else "",
            "currency": entry.currency, "day": entry.day, "seller": entry.seller,
        }  # fmt: skip
    return {column: cells.get(column, "") for column in COLUMNS}


def _cells_of_piece(piece: RackPiece, units: Units) -> dict[str, str]:
    return {
        "kind": piece.kind,
        "name": piece.name,
        "material": piece.material,
        "thickness": piece.lumber or words.written(piece.thickness, units),
        "length": words.written(piece.length, units),
        "width": words.written(piece.width, units),
        "measured": words.written(piece.measured, units) if piece.measured else "",
        "moisture": words.written_number(piece.moisture) if piece.moisture is not None else "",
        "grade": piece.grade,
        "defects": words.written_defects(piece.defects, units),
        "cut_from": piece.cut_from,
        "note": piece.note,
        "picture": piece.picture,
    }
