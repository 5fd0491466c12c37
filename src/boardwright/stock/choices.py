"""What the shop reckons with: its own choices where the file gives them, the trade's figures elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.lengths import INCH, Printer, settle
from boardwright.design.load import Design
from boardwright.stock.records import ShopChoices
from boardwright.tables.bundle import Tables

WIDEST_KERF = INCH / 4
"""A wider saw cut than this is taken for a slip [mm]; circular saws cut 1/16 to 3/16 in (common practice)."""
LEAST_STRIP = INCH
"""A glue-up of narrower strips than this is taken for a slip [mm]."""
WIDEST_TRIM = 4 * INCH
"""A wider trim of a sheet than this is taken for a slip [mm]."""


def shop_choices(design: Design, read: Callable[[str], float | None]) -> ShopChoices:
    """What the design file says of the shop.

    Args:
        design: the file.
        read: length of a path [mm], e.g. of `shop.kerf`; None, or a ValueError, where it cannot be worked out
            (which is a finding of the stage that sets the piece out).
    """
    shop = design.file.shop
    if shop is None:
        return ShopChoices()
    places: list[tuple[str, Place]] = []

    def length(path: str, given: object) -> float | None:
        if given is None:
            return None
        places.append((path, design.place(path)))
        try:
            return read(path)
        except ValueError:
            return None

    boards = []
    for n, entry in enumerate(shop.boards or ()):
        path = f"shop.boards[{n}]"
        places.append((path, design.place(path)))
        sizes = (length(f"{path}.length", entry.length), length(f"{path}.width", entry.width))
        if sizes[0] is not None and sizes[1] is not None:
            boards.append((entry.stock, sizes[0], sizes[1], entry.count))
    return ShopChoices(
        length("shop.kerf", shop.kerf),
        length("shop.sheet_trim", shop.sheet_trim),
        length("shop.strip_max", shop.strip_max),
        tuple(boards),
        tuple(places),
    )


@dataclass(frozen=True, slots=True)
class Allowances:
    """What is added and taken off, in round figures of the plan's units [mm].

    Attributes:
        planing: thickness, both faces together.
        width, length: a part cut from a jointed board.
        panel_width, panel_length: a glued-up panel before it is trimmed.
        edge_joint: each edge in a glue-up.
        end_trim: each end of a board. edge_trim: each edge of a board, half of its jointing and ripping.
        kerf: the saw's cut. sheet_trim: each edge of a sheet.
        strip_max: widest strip as the file gives it, or None.
    """

    planing: float
    width: float
    length: float
    panel_width: float
    panel_length: float
    edge_joint: float
    end_trim: float
    edge_trim: float
    kerf: float
    sheet_trim: float
    strip_max: float | None


def allowances(
    tables: Tables, choices: ShopChoices, printer: Printer
) -> tuple[Allowances, tuple[str, ...], list[Finding]]:
    """Allowances in the plan's units, a line on each that the file gives or the trade uses, and findings.

    In inches a figure goes up to the plan's step; in millimetres the trade's inch figures go to the nearest
    whole millimetre, and the kerf up to the next 0.1 mm.
    """
    findings: list[Finding] = []
    rules: list[str] = []

    def figure(key: str, what: str, halves: int = 1) -> float:
        row = tables.figure(key)
        mm = row.value / halves
        settled = settle(mm, printer.step, "up") if printer.units == "in" else max(1.0, settle(mm, 1.0))
        rules.append(f"{what}: {printer.text(settled)} ({row.reason})")
        return settled

    def chosen(name: str, what: str, given: float | None, low: float, high: float) -> float | None:
        if given is None:
            return None
        if low <= given <= high:
            rules.append(f"{what}: {printer.text(given)} (`shop.{name}`)")
            return given
        findings.append(
            Finding(
                "stock.shop-value", Severity.ERROR, f"`shop.{name}` is not a size to work with",
                choices.place(f"shop.{name}"), printer.text(given),
                f"from {printer.text(low)} to {printer.text(high)}", "common practice",
                "give it as it is in the shop, or leave it out",
            )
        )  # fmt: skip
        return None

    kerf = chosen("kerf", "saw cut", choices.kerf, 0.0, WIDEST_KERF)
    if kerf is None:
        row = tables.figure("kerf_table_saw")
        kerf = row.value if printer.units == "in" else settle(row.value, 0.1, "up")
        rules.append(f"saw cut: {printer.text(kerf)} ({row.applies_to}, {row.reason})")
    trim = chosen("sheet_trim", "each edge of a sheet", choices.sheet_trim, 0.0, WIDEST_TRIM)
    return (
        Allowances(
            figure("planing_allowance", "planing, both faces together"),
            figure("rough_width_allowance", "width of a rough part, over finished"),
            figure("rough_length_allowance", "length of a rough part, over finished"),
            figure("panel_width_oversize", "width of a glued-up panel, over finished"),
            figure("panel_length_oversize", "length of a glued-up panel, over finished"),
            figure("edge_joint_allowance", "each edge of a strip, for the last jointing"),
            figure("end_trim", "each end of a board, for checks"),
            figure("board_width_allowance", "each edge of a board, to joint one and rip the other", 2),
            kerf,
            trim if trim is not None else figure("sheet_edge_trim", "each edge of a sheet"),
            chosen("strip_max", "widest strip in a glue-up", choices.strip_max, LEAST_STRIP, 100 * INCH),
        ),
        tuple(rules),
        findings,
    )
