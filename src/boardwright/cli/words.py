"""The words of the tables that a design file may use, listed."""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum

from boardwright.cli.show import table
from boardwright.core.lengths import INCH
from boardwright.tables import Tables


class Listed(StrEnum):
    """What is listed."""

    woods = "woods"
    sheets = "sheets"
    glues = "glues"
    finishes = "finishes"
    regions = "regions"
    cities = "cities"


def words(tables: Tables, what: Listed, mm: bool) -> str:
    """A row for each word, with what it stands for.

    Args:
        tables: those of the package, with the user's own rows.
        what: which of them.
        mm: True for thicknesses in mm.
    """
    head, rows = _KINDS[what](tables, mm)
    return table(head, rows)


_Rows = tuple[list[str], list[list[str]]]


def _woods(t: Tables, mm: bool) -> _Rows:
    return ["wood", "name", "botanical"], [[w.key, w.name, w.botanical or ""] for w in t.species.values()]


def _sheets(t: Tables, mm: bool) -> _Rows:
    families: dict[str, list[float]] = {}
    for s in t.sheets.values():
        families.setdefault(s.family, []).append(s.nominal)
    sizes = {f: sorted(set(n)) for f, n in families.items()}
    one = 1.0 if mm else INCH
    head = ["sheet", f"sold as [{'mm' if mm else 'in'}]"]
    return head, [[family, ", ".join(f"{v / one:.3g}" for v in of)] for family, of in sizes.items()]


def _glues(t: Tables, mm: bool) -> _Rows:
    return ["glue", "name"], [[g.key, g.name] for g in t.glues.values()]


def _finishes(t: Tables, mm: bool) -> _Rows:
    return ["finish", "name", "coats"], [[f.key, f.name, str(f.coats)] for f in t.finishes.values()]


def _regions(t: Tables, mm: bool) -> _Rows:
    rows = [[r.key, f"{r.use}, {r.region}", f"{r.low:g} to {r.high:g} %"] for r in t.moisture.values()]
    return ["region", "where", "moisture of wood"], rows


def _cities(t: Tables, mm: bool) -> _Rows:
    return ["city", "country"], [[c.city, c.country or ""] for c in t.climate.values()]


_KINDS: dict[Listed, Callable[[Tables, bool], _Rows]] = {
    Listed.woods: _woods,
    Listed.sheets: _sheets,
    Listed.glues: _glues,
    Listed.finishes: _finishes,
    Listed.regions: _regions,
    Listed.cities: _cities,
}
