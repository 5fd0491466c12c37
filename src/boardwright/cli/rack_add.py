"""Putting things on the rack: boards, sheets, offcuts, supplies, prices."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Annotated

import typer

from boardwright.cli.rack_options import (
    DEFAULT,
    CountOpt,
    DefectOpt,
    GradeOpt,
    LengthOpt,
    MeasuredOpt,
    MoistureOpt,
    NameOpt,
    NoteOpt,
    OffcutOpt,
    PictureOpt,
    RackOpt,
    WidthOpt,
    end,
    finish,
    open_or_end,
)
from boardwright.core.findings import Place, has_errors
from boardwright.core.rack import PieceKind, RackPiece

add_app = typer.Typer(no_args_is_help=True, rich_markup_mode=None, help="Put something on the rack.")


def _add(where: str, cells: dict[str, str]) -> None:
    from boardwright.store.entries import read_entry
    from boardwright.store.pieces import add_pieces
    from boardwright.store.supplies import write_price, write_supply
    from boardwright.tables.load import default_tables

    store = open_or_end(where)
    entries, findings = read_entry(cells, store.units, default_tables(), option_place)
    if has_errors(findings):
        end(findings)
    pieces = [e for e in entries if isinstance(e, RackPiece)]
    if pieces:
        added, more = add_pieces(store, pieces)
        names = ", ".join(p.name for p in added)
        finish([*findings, *more], f"on the rack: {names}")
        return
    from boardwright.core.rack import Supply

    for entry in entries:
        if isinstance(entry, Supply):
            kept = f"{entry.name}, {entry.quantity:g} {entry.unit}"
            finish([*findings, *write_supply(store, entry)], f"on the rack: {kept}")
        elif not isinstance(entry, RackPiece):
            what = f"{entry.amount} {entry.currency}".strip() + f" a {entry.unit}"
            finish([*findings, *write_price(store, entry)], f"{entry.item}: {what} on {entry.day}")


def option_place(column: str) -> Place:
    """The place of a cell that was given on the command line."""
    return Place(path=column.replace("_", "-"))


WoodArg = Annotated[str, typer.Argument(metavar="WOOD", help="key or name of the wood, e.g. cherry_black")]
SheetArg = Annotated[str, typer.Argument(metavar="SHEET", help="family of the sheet, e.g. birch_plywood")]
ClassArg = Annotated[str, typer.Argument(metavar="THICKNESS", help="as sold, e.g. 4/4 or '25 mm'")]
NominalArg = Annotated[str, typer.Argument(metavar="THICKNESS", help="as sold, e.g. '12 mm' or 3/4")]


def _piece_command(kind: PieceKind, material_arg: object, thickness_arg: object, text: str) -> None:
    """The command that puts a board or a sheet on the rack; the two differ in their first words only."""

    def add(
        material: str,
        thickness: str,
        length: LengthOpt,
        width: WidthOpt,
        rack: RackOpt = DEFAULT,
        moisture: MoistureOpt = "",
        grade: GradeOpt = "",
        defect: DefectOpt = None,
        measured: MeasuredOpt = "",
        cut_from: OffcutOpt = "",
        name: NameOpt = "",
        count: CountOpt = "1",
        note: NoteOpt = "",
        picture: PictureOpt = "",
    ) -> None:
        _add(
            rack,
            {
                "kind": kind, "name": name, "material": material, "thickness": thickness, "length": length,
                "width": width, "measured": measured, "moisture": moisture, "grade": grade,
                "defects": "; ".join(defect or ()), "cut_from": cut_from, "quantity": count, "note": note,
                "picture": picture,
            },
        )  # fmt: skip

    add.__annotations__ |= {"material": material_arg, "thickness": thickness_arg}
    add_app.command(kind, help=text)(add)


_piece_command("board", WoodArg, ClassArg, "Put a board on the rack, or an offcut of one.")
_piece_command("sheet", SheetArg, NominalArg, "Put a sheet on the rack, or an offcut of one.")


SupplyArg = Annotated[str, typer.Argument(metavar="NAME", help="what it is")]
QuantityArg = Annotated[str, typer.Argument(metavar="QUANTITY", help="how much there is now")]
UnitOpt = Annotated[str, typer.Option("--unit", help="of the quantity: piece, g, ml, ...")]


@add_app.command("hardware")
def add_hardware(
    name: SupplyArg,
    quantity: QuantityArg,
    unit: UnitOpt = "piece",
    note: NoteOpt = "",
    rack: RackOpt = DEFAULT,
) -> None:
    """Say how much of some hardware there is: screws, hinges, slides."""
    _add(rack, {"kind": "hardware", "name": name, "quantity": quantity, "unit": unit, "note": note})


@add_app.command("glue")
def add_glue(
    name: SupplyArg, quantity: QuantityArg, unit: UnitOpt = "g", note: NoteOpt = "", rack: RackOpt = DEFAULT
) -> None:
    """Say how much of a glue there is."""
    _add(rack, {"kind": "glue", "name": name, "quantity": quantity, "unit": unit, "note": note})


@add_app.command("finish")
def add_finish(
    name: SupplyArg, quantity: QuantityArg, unit: UnitOpt = "ml", note: NoteOpt = "", rack: RackOpt = DEFAULT
) -> None:
    """Say how much of a finish there is."""
    _add(rack, {"kind": "finish", "name": name, "quantity": quantity, "unit": unit, "note": note})


def price(
    item: Annotated[
        str, typer.Argument(metavar="ITEM", help="a wood, a sheet, or the name of a supply on the rack")
    ],
    amount: Annotated[str, typer.Argument(metavar="AMOUNT", help="for one unit, e.g. 6.15")],
    unit: Annotated[str, typer.Option("--unit", help="board foot, square metre, sheet or piece")],
    thickness: Annotated[
        str, typer.Option("--thickness", help="of a wood or a sheet; default: any thickness")
    ] = "",
    day: Annotated[str, typer.Option("--day", help="year-month-day; default: today")] = "",
    currency: Annotated[str, typer.Option("--currency", help="as you write it")] = "",
    seller: Annotated[str, typer.Option("--seller", help="where")] = "",
    rack: RackOpt = DEFAULT,
) -> None:
    """Put down what something costs; older prices are kept."""
    _add(
        rack,
        {
            "kind": "price", "material": item, "amount": amount, "unit": unit, "thickness": thickness,
            "day": day or datetime.now(UTC).astimezone().date().isoformat(), "currency": currency,
            "seller": seller,
        },
    )  # fmt: skip
