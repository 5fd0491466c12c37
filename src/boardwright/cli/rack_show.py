"""How the rack looks in the terminal."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from boardwright.cli.show import table
from boardwright.core.length_text import Units
from boardwright.core.rack import Rack, RackPiece
from boardwright.tables.bundle import Tables

if TYPE_CHECKING:
    from boardwright.store.takings import Taking


def listing(rack: Rack, takings: Sequence[Taking], what: str, units: Units, tables: Tables) -> str:
    """The rack as tables, one a group; only one group when `what` names it.

    Args:
        rack: what is on it.
        takings: what was taken.
        what: `all`, or one group.
        units: to print in.
        tables: names of thickness classes.
    """
    parts = []
    for group in ("boards", "sheets", "offcuts"):
        own = [p for p in rack.pieces if p.group == group]
        if what in ("all", group) and (own or what == group):
            parts.append(_pieces(group, own, units, tables))
    if what in ("all", "supplies") and (rack.supplies or what == "supplies"):
        rows = [[s.kind, s.name, f"{s.quantity:g}", s.unit, s.note] for s in rack.supplies]
        parts.append(
            _titled("supplies", table(["kind", "name", "quantity", "unit", "note"], rows, right=(2,)))
        )
    if what in ("all", "prices") and (rack.prices or what == "prices"):
        parts.append(_prices(rack, units, tables))
    out = [t for t in takings if not t.put_back_at]
    if what in ("all", "taken") and (out or what == "taken"):
        lines = [[str(t.number), t.at, t.plan, ", ".join(t.pieces), ", ".join(t.offcuts)] for t in out]
        head = ["taking", "when", "plan", "pieces", "left on the rack"]
        parts.append(_titled("taken", table(head, lines)))
    return "\n\n".join(parts) if parts else "the rack is empty"


def _titled(title: str, text: str) -> str:
    return f"{title}\n{text}"


def _size(mm: float, units: Units) -> str:
    from boardwright.store.words import written

    return written(mm, units).removesuffix(f" {units}")


def _thickness(piece: RackPiece, units: Units, tables: Tables) -> str:
    row = tables.lumber.get(piece.lumber)
    return row.name if row else _size(piece.thickness, units)


def _pieces(group: str, pieces: Sequence[RackPiece], units: Units, tables: Tables) -> str:
    rows = [
        [
            p.name, p.material, _thickness(p, units, tables), _size(p.length, units), _size(p.width, units),
            f"{p.moisture:g}" if p.moisture is not None else "", p.grade,
            str(len(p.defects)) if p.defects else "",
            p.cut_from or p.note, p.note if p.cut_from else "",
        ]
        for p in pieces
    ]  # fmt: skip
    last = ["cut from", "note"] if group == "offcuts" else ["note"]
    head = ["name", "material", "thickness", f"length ({units})", "width", "moisture %", "grade", "defects"]
    used = len(head) + len(last)
    return _titled(group, table([*head, *last], [r[:used] for r in rows], right=(2, 3, 4, 5, 7)))


def _prices(rack: Rack, units: Units, tables: Tables) -> str:
    def thickness(mm: float | None) -> str:
        row = next((c for c in tables.lumber.values() if mm is not None and abs(c.rough - mm) < 0.01), None)
        return "any" if mm is None else row.name if row else _size(mm, units)

    rows = [
        [p.item, thickness(p.thickness), f"{p.amount} {p.currency}".strip(), p.unit, p.day, p.seller]
        for p in rack.prices
    ]
    return _titled(
        "prices", table(["item", "thickness", "amount", "for a", "day", "seller"], rows, right=(2,))
    )


def piece_text(piece: RackPiece, units: Units, tables: Tables) -> str:
    """Everything about one piece, a line each.

    Args:
        piece: of the rack.
        units: to print in.
        tables: names of woods and thickness classes.
    """
    from boardwright.store.words import written, written_defects

    wood = tables.species.get(piece.material)
    rows = [
        ("name", piece.name),
        ("kind", f"offcut of {piece.cut_from}" if piece.cut_from else piece.kind),
        ("material", f"{piece.material} ({wood.name})" if wood else piece.material),
        ("thickness", _thickness(piece, units, tables)),
        ("measured", written(piece.measured, units) if piece.measured else ""),
        ("length", written(piece.length, units)),
        ("width", written(piece.width, units)),
        ("moisture", f"{piece.moisture:g} %" if piece.moisture is not None else ""),
        ("grade", piece.grade),
        *(("defect", written_defects((d,), units)) for d in piece.defects),
        ("note", piece.note),
        ("picture", piece.picture),
    ]
    return "\n".join(f"{name:<10} {text}" for name, text in rows if text)
