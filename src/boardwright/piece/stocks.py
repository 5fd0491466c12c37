"""Stock of the design file put together with its table rows."""

from __future__ import annotations

from collections.abc import Callable

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer
from boardwright.core.nearest import nearest
from boardwright.design.load import Design
from boardwright.design.schema import StockEntry
from boardwright.piece.records import Moisture, Stock
from boardwright.piece.sizing import Sizer
from boardwright.tables.bundle import Tables

LENGTHWISE = 0.00006
"""Change of length per 1 % of moisture [1/%]: 0.1 to 0.2 % from green (30 %) to ovendry (trade figure)."""
SPREAD = {"plywood": 0.00014, "particleboard": 0.00035, "mdf": 0.00035, "hardboard": 0.00035}
"""Change of length and width of a sheet per 1 % that wood changes in the same air [1/%]: plywood 0.2 % from 30 to 90 %
of humidity (typical, parallel to the face), particleboard 0.35 to 0.40 % from 50 to 90 % (ANSI A208.1), the others as
it; such air changes wood by about 14 and 11 %."""
STAND_IN_DENSITY = 600.0
"""Density of a stock that is not known [kg/m3]; an error stands beside every figure it goes into."""
LEAST_THICKNESS, LARGEST_THICKNESS = 1.0, 150.0
CALIPER = {"in": 0.0254, "mm": 0.01}
"""Finest reading of a measured thickness that is carried [mm]: 0.001 in or 0.01 mm."""


def read_stocks(
    design: Design, tables: Tables, sizer: Sizer, moisture: Moisture
) -> tuple[dict[str, Stock], list[Finding]]:
    """Every stock of the file that makes sense, by name; and findings for those that do not."""
    out: dict[str, Stock] = {}
    findings: list[Finding] = []
    for name, entry in design.file.stock.items():
        path = f"stock.{name}"
        if (entry.wood is None) == (entry.sheet is None):
            findings.append(
                Finding(
                    "stock.wood-or-sheet",
                    Severity.ERROR,
                    f"stock `{name}` must be a wood or a sheet",
                    design.place(path),
                    found="neither" if entry.wood is None else "both",
                    expected="`wood: …` or `sheet: …`",
                    remedy="add one of them" if entry.wood is None else "delete one of them",
                )
            )
            continue
        make: Callable[..., Stock | None] = _wood if entry.wood is not None else _sheet
        stock = make(design, tables, sizer, moisture, name, entry, findings)
        if stock is None:
            stock = _stand_in(sizer, name, entry)
        if stock is not None:
            out[name] = stock
    return out, findings


def _stand_in(sizer: Sizer, name: str, entry: StockEntry) -> Stock | None:
    """A stock of the thickness asked for in place of one that is not known.

    It stands for the rest of the check only, so that one wrong word does not bring on other findings.
    """
    sizes = _thickness(sizer, name, entry)
    if sizes is None or not LEAST_THICKNESS < sizes[1] <= LARGEST_THICKNESS:
        return None
    kind = "wood" if entry.wood is not None else "sheet"
    return Stock(name, kind, name, "", sizes[1], sizes[0], entry.measured is not None, STAND_IN_DENSITY)


def _unknown(design: Design, code: str, path: str, what: str, key: str, known: list[str]) -> Finding:
    near = nearest(key.replace(" ", "_"), known)
    return Finding(
        code,
        Severity.ERROR,
        f"`{key}` is no {what} of the tables",
        design.place(path),
        found=key,
        expected="one of "
        + ", ".join(near or sorted(known)[:12])
        + (" …" if not near and len(known) > 12 else ""),
        remedy=f"did you mean `{near[0]}`?"
        if near
        else "use a key of the table, or add a row in a file under `tables:`",
    )


def _thickness(sizer: Sizer, name: str, entry: StockEntry) -> tuple[float, float] | None:
    nominal = sizer.read(f"stock.{name}.thickness")
    if nominal is None:
        return None
    if entry.measured is None:
        return nominal, nominal
    measured = sizer.read(f"stock.{name}.measured")
    return None if measured is None else (nominal, measured)


def _caliper(sizer: Sizer, mm: float) -> float:
    """A measured thickness as a caliper shows it [mm]; one on the step, such as 23/32, stays as it is."""
    grid = CALIPER[sizer.printer.units]
    return mm if sizer.printer.on_step(mm) else round(mm / grid) * grid


def _own(path: str, entry: StockEntry) -> str:
    """The key that gives the thickness."""
    return f"{path}.thickness" if entry.measured is None else f"{path}.measured"


def _refuse_thickness(design: Design, path: str, sizer: Sizer, mm: float) -> Finding:
    return Finding(
        "stock.thickness",
        Severity.ERROR,
        "stock cannot be that thick",
        design.place(path),
        found=sizer.about(mm),
        expected="more than 1 mm, at most 150 mm (6 in)",
        remedy="give the thickness of the finished part",
    )


def _wood(
    design: Design,
    tables: Tables,
    sizer: Sizer,
    moisture: Moisture,
    name: str,
    entry: StockEntry,
    findings: list[Finding],
) -> Stock | None:
    path = f"stock.{name}"
    row = tables.species.get(entry.wood or "")
    if row is None:
        findings.append(
            _unknown(
                design, "stock.unknown-wood", f"{path}.wood", "wood", str(entry.wood), list(tables.species)
            )
        )
        return None
    sizes = _thickness(sizer, name, entry)
    if sizes is None:
        return None
    nominal, actual = sizes
    if entry.measured is None:
        actual = sizer.size(
            f"{path}.thickness", [(f"{path}.thickness", entry.thickness)], nominal, least=sizer.step
        )
    else:
        actual = _caliper(sizer, actual)
        sizer.explain(f"{path}.thickness", actual, "as measured", "", f"{path}.measured", given=True)
    if not LEAST_THICKNESS < actual <= LARGEST_THICKNESS:
        findings.append(_refuse_thickness(design, _own(path, entry), sizer, actual))
        return None
    if row.sg_12 is None and row.sg_green is None:
        findings.append(
            Finding(
                "stock.no-density",
                Severity.NOTE,
                f"the tables have no specific gravity for {row.name}; 0.5 is assumed for weight and screws",
                design.place(f"{path}.wood"),
                source="common practice",
                remedy="add a row with `sg_12` in a file under `tables:`",
            )
        )
    gravity = row.sg_12 or row.sg_green or 0.5
    return Stock(
        name,
        "wood",
        row.name,
        row.key,
        actual,
        nominal,
        entry.measured is not None,
        gravity * 1000 * (1 + moisture.now / 100),
        row.radial,
        row.tangential,
        LENGTHWISE,
        entry.sawn or "flat",
        None,
        True,
        gravity,
        row.kind == "hardwood",
        row.source,
        entry.rings,
    )


def _sheet(
    design: Design,
    tables: Tables,
    sizer: Sizer,
    moisture: Moisture,
    name: str,
    entry: StockEntry,
    findings: list[Finding],
) -> Stock | None:
    path = f"stock.{name}"
    family = (entry.sheet or "").strip().lower().replace(" ", "_")
    if family not in tables.families():
        findings.append(
            _unknown(
                design, "stock.unknown-sheet", f"{path}.sheet", "sheet", str(entry.sheet), tables.families()
            )
        )
        return None
    sizes = _thickness(sizer, name, entry)
    if sizes is None:
        return None
    nominal, actual = sizes
    row = tables.sheet(family, nominal)
    if row is None:
        if entry.measured is None:
            have = ", ".join(_sold_as(n) for n in tables.nominals(family))
            findings.append(
                Finding(
                    "stock.no-such-thickness",
                    Severity.ERROR,
                    f"{family.replace('_', ' ')} is not sold {sizer.about(nominal)} thick",
                    design.place(f"{path}.thickness"),
                    found=sizer.about(nominal),
                    expected=f"one of {have}",
                    source="sheet table",
                    remedy="use one of these, or give `measured:` for a sheet of your own",
                )
            )
            return None
        row = min(
            (s for s in tables.sheets.values() if s.family == family),
            key=lambda s: (abs(s.nominal - nominal), s.key),
        )
    elif entry.measured is None:
        actual = row.actual
        findings.append(_measure_it(design, path, sizer, row.actual, nominal, row.source))
    actual = _caliper(sizer, actual)
    if not LEAST_THICKNESS < actual <= LARGEST_THICKNESS:
        findings.append(_refuse_thickness(design, _own(path, entry), sizer, actual))
        return None
    sizer.explain(
        f"{path}.thickness",
        actual,
        "as measured" if entry.measured else "usual thickness of the sheet",
        "",
        f"{path}.measured" if entry.measured else row.source,
        given=entry.measured is not None,
    )
    size = _sheet_size(sizer, name, entry, row.sizes, design.units)
    grain = row.has_grain if entry.grain is None else entry.grain == "along"
    label = f"{row.name.rsplit(' ', 2 if row.name.endswith(' in') or row.name.endswith(' mm') else 0)[0]}"
    return Stock(
        name,
        "sheet",
        label,
        row.key,
        actual,
        nominal,
        entry.measured is not None,
        row.density,
        0.0,
        0.0,
        0.0,
        "",
        size,
        grain,
        row.density / 1000,
        True,
        row.source,
        spread=SPREAD.get(row.kind, 0.0),
    )


def _sold_as(nominal: float) -> str:
    """A thickness in the unit that it is sold in: inches when it is a whole number of 1/64 in."""
    inches = Printer("in", 25.4 / 64)
    return inches.text(nominal) if inches.on_step(nominal) else f"{nominal:g} mm"


def _measure_it(
    design: Design, path: str, sizer: Sizer, actual: float, nominal: float, source: str
) -> Finding:
    return Finding(
        "stock.not-measured",
        Severity.NOTE,
        f"`{path}` has no measured thickness: {sizer.about(actual)} is assumed",
        design.place(path),
        found=f"sold as {_sold_as(nominal)}",
        expected="the thickness of the sheet in hand",
        source=source,
        remedy="measure the sheet and give `measured:`; every size that depends on it follows",
    )


def _sheet_size(
    sizer: Sizer, name: str, entry: StockEntry, sold: tuple[tuple[float, float], ...], units: str
) -> tuple[float, float]:
    usual = (2438.4, 1219.2) if units == "in" else (2440.0, 1220.0)
    near = [s for s in sold if s[0] >= s[1] * 1.5] or list(sold) or [usual]
    best = min(near, key=lambda s: (abs(s[0] - usual[0]) + abs(s[1] - usual[1]), s))
    length = sizer.read(f"stock.{name}.sheet_length") if entry.sheet_length is not None else None
    width = sizer.read(f"stock.{name}.sheet_width") if entry.sheet_width is not None else None
    return (length if length and length > 10 else best[0], width if width and width > 10 else best[1])
