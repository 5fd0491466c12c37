"""Lines of the buying list for the surface: finish by area, coats and coverage; abrasives; consumables."""

from __future__ import annotations

from math import ceil, floor

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer
from boardwright.piece.records import Piece
from boardwright.stock.records import BuyLine, ShopChoices
from boardwright.stock.wording import counted
from boardwright.tables.bundle import Tables
from boardwright.tables.records import Finish

COVERAGE = 0.02454
"""1 ft2 to the US gallon [m2/L]."""
OUNCES = 33.814
"""Fluid ounces (US) in a litre."""
GRITS = (120, 150, 180)
"""After planer or jointer (common practice; ANSI/AWI grades ask for 120 or 150 on exposed faces)."""
FEET = 0.3048**2


def face_area(piece: Piece, glue_area: float) -> float:
    """Area of all faces of all parts that are not glued to each other [mm2]; glass left out.

    Args:
        piece: its parts, at their finished sizes.
        glue_area: faces that joints glue, one side counted [mm2].
    """
    total = 0.0
    for part in piece.parts:
        if "glass" not in part.stock.table_key:
            a, b, c = part.size
            total += 2 * (a * b + b * c + a * c)
    return max(0.0, total - 2 * glue_area)


def chosen_finish(choices: ShopChoices, tables: Tables) -> tuple[Finish | None, list[Finding]]:
    """The finish that the file names; a finding when there is no such finish."""
    if not choices.finish or choices.finish in tables.finishes:
        return tables.finishes.get(choices.finish), []
    return None, [
        Finding(
            "stock.unknown-finish", Severity.ERROR, f"`{choices.finish}` is no finish of the tables",
            choices.place("finish.kind"), choices.finish, "one of " + ", ".join(tables.finishes),
            remedy="use one of these, or add a row in a file under `tables:`",
        )
    ]  # fmt: skip


def surface_lines(
    area: float, finish: Finish | None, coats: int | None, tables: Tables, printer: Printer
) -> list[BuyLine]:
    """Finish, abrasives and consumables for an area [mm2].

    Args:
        area: of all faces.
        finish: which; None when none is chosen.
        coats: how many, when the file says.
        tables: what a sanding disc does.
        printer: for the units of the plan.
    """
    if area <= 0:
        return []
    metres = area / 1e6
    shown = f"{metres / FEET:.0f} ft²" if printer.units == "in" else f"{metres:.1f} m²"
    disc = tables.figure("disc_area")
    discs = ceil(metres / disc.value)
    lines = []
    if finish is None:
        lines.append(
            BuyLine("finish", "finish of your choice", f"for {shown} a coat", "all faces, inside and out")
        )
    else:
        lines.append(_finish(metres, shown, finish, coats or finish.coats, printer))
    lines.append(
        BuyLine(
            "abrasives", f"sanding discs 125 mm (5 in), {', '.join(map(str, GRITS))} grit",
            f"{discs} of each", f"{shown} of faces", f"{disc.value:g} m² a disc ({disc.reason})",
        )
    )  # fmt: skip
    if finish is not None:
        sheets = max(1, ceil((coats or finish.coats) / 2))
        lines.append(
            BuyLine(
                "abrasives", f"sheets of {finish.between} grit", str(sheets), "by hand between coats", "common practice"
            )
        )  # fmt: skip
        if finish.rags:
            lines.append(
                BuyLine(
                    "consumables", "lint-free rags", counted(coats or finish.coats, "rag"),
                    "dry them flat outdoors, never in a heap: they can heat and burn",
                    "university safety page, citing the fire association",
                )
            )  # fmt: skip
        else:
            lines.append(BuyLine("consumables", "brush or pad for the finish", "1", "", "common practice"))
    return lines


def _finish(metres: float, shown: str, finish: Finish, coats: int, printer: Printer) -> BuyLine:
    most = metres / (finish.first_low * COVERAGE) + (coats - 1) * metres / (finish.later_low * COVERAGE)
    least = metres / (finish.first_high * COVERAGE) + (coats - 1) * metres / (finish.later_high * COVERAGE)
    if printer.units == "in":
        quantity = _range(least * OUNCES, most * OUNCES, 1, "fl oz")
    else:
        quantity = _range(least * 1000, most * 1000, 10, "mL")
    low, high = sorted((finish.later_low, finish.later_high))
    covers = f"{low:g} to {high:g} ft² a gallon ({low * COVERAGE:.0f} to {high * COVERAGE:.0f} m²/L)"
    return BuyLine(
        "finish", finish.name, quantity, f"{counted(coats, 'coat')} on {shown}", f"{covers}: {finish.source}"
    )


def _range(low: float, high: float, step: int, unit: str) -> str:
    a, b = floor(low / step) * step, ceil(high / step - 1e-9) * step
    return f"{b} {unit}" if a >= b else f"{a} to {b} {unit}"
