"""The rack's commands: parse, ask the store, print. Every problem is a finding; nothing is half done."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from boardwright.cli import rack_list, rack_show
from boardwright.cli.rack_add import add_app, option_place, price
from boardwright.cli.rack_options import (
    DEFAULT,
    DefectOpt,
    GradeOpt,
    LengthOpt,
    MeasuredOpt,
    MoistureOpt,
    NoteOpt,
    PictureOpt,
    RackOpt,
    WidthOpt,
    end,
    finish,
    open_or_end,
    rack_now,
)
from boardwright.cli.rack_take import put_back, take
from boardwright.core.rack import RackPiece

if TYPE_CHECKING:
    from boardwright.store.opening import Store
    from boardwright.store.takings import Taking

rack_app = typer.Typer(
    no_args_is_help=True,
    rich_markup_mode=None,
    help="The rack: boards, sheets, offcuts, hardware, glue, finish, prices.",
)


class Units(StrEnum):
    """Units of the rack."""

    inches = "in"
    millimetres = "mm"


class What(StrEnum):
    """What to list."""

    all = "all"
    boards = "boards"
    sheets = "sheets"
    offcuts = "offcuts"
    supplies = "supplies"
    prices = "prices"
    taken = "taken"


class ListFormat(StrEnum):
    """How the list is written."""

    text = "text"
    json = "json"
    csv = "csv"


@rack_app.command()
def new(
    rack: RackOpt = DEFAULT,
    units: Annotated[Units, typer.Option("--units", help="units that bare numbers are in")] = Units.inches,
) -> None:
    """Make an empty rack."""
    from boardwright.store.opening import start_rack

    finish(start_rack(rack, units.value), f"made the rack {rack}; next: boardwright rack add board --help")


rack_app.add_typer(add_app, name="add")
rack_app.command()(price)


@rack_app.command("list")
def list_(
    what: Annotated[What, typer.Argument(help="what to list")] = What.all,
    rack: RackOpt = DEFAULT,
    format: Annotated[
        ListFormat, typer.Option("--format", help="text; json (lengths in mm) or csv for programs")
    ] = ListFormat.text,
) -> None:
    """List what is on the rack, what is taken and for which plan, and prices."""
    from boardwright.store.opening import Refused
    from boardwright.store.takings import read_takings
    from boardwright.tables.load import default_tables

    store = open_or_end(rack)
    there = rack_now(store)
    takings: list[Taking] = []
    if what in (What.all, What.taken):
        try:
            with store.reading() as connection:
                takings = read_takings(connection)
        except Refused as refused:
            end(refused.findings)
    if format is ListFormat.json:
        typer.echo(rack_list.as_json(there, takings, what.value, store.units))
    elif format is ListFormat.csv:
        typer.echo(rack_list.as_csv(there, takings, what.value, store.units))
    else:
        typer.echo(rack_show.listing(there, takings, what.value, store.units, default_tables()))


@rack_app.command("show")
def show_piece(
    name: Annotated[str, typer.Argument(metavar="NAME", help="of a board, sheet or offcut")],
    rack: RackOpt = DEFAULT,
) -> None:
    """Show everything about one piece."""
    from boardwright.tables.load import default_tables

    store = open_or_end(rack)
    typer.echo(rack_show.piece_text(_piece(store, name), store.units, default_tables()))


def _piece(store: Store, name: str) -> RackPiece:
    from boardwright.store.pieces import find_piece

    piece, findings = find_piece(store, name)
    return piece if piece is not None else end(findings)


@rack_app.command()
def change(
    name: Annotated[str, typer.Argument(metavar="NAME", help="of a board, sheet or offcut")],
    length: LengthOpt = "",
    width: WidthOpt = "",
    thickness: Annotated[str, typer.Option("--thickness", help="as sold")] = "",
    measured: MeasuredOpt = "",
    moisture: MoistureOpt = "",
    grade: GradeOpt = "",
    defect: DefectOpt = None,
    no_defects: Annotated[bool, typer.Option("--no-defects", help="forget its defects")] = False,
    note: NoteOpt = "",
    picture: PictureOpt = "",
    rack: RackOpt = DEFAULT,
) -> None:
    """Change what is known of a piece; what is not given stays. Defects are added to those it has."""
    from boardwright.store.entries import cells_of, read_entry
    from boardwright.store.pieces import change_piece
    from boardwright.tables.load import default_tables

    store = open_or_end(rack)
    piece = _piece(store, name)
    cells = cells_of(replace(piece, defects=()) if no_defects else piece, store.units)
    given = {
        "length": length, "width": width, "thickness": thickness, "measured": measured, "moisture": moisture,
        "grade": grade, "note": note, "picture": picture,
        "defects": "; ".join(d for d in (cells["defects"], *(defect or ())) if d),
    }  # fmt: skip
    cells.update({column: text for column, text in given.items() if text})
    entries, findings = read_entry(cells, store.units, default_tables(), option_place)
    changed = [e for e in entries if isinstance(e, RackPiece)]
    if changed:
        findings = [*findings, *change_piece(store, changed[0])]
    finish(findings, f"changed: {name}")


@rack_app.command()
def remove(
    names: Annotated[list[str], typer.Argument(metavar="NAME...", help="of pieces, or of one supply")],
    rack: RackOpt = DEFAULT,
) -> None:
    """Take pieces or a supply off the rack for good. What was cut for a plan is taken with `take` instead."""
    from boardwright.store.pieces import remove_pieces
    from boardwright.store.supplies import remove_supply

    store = open_or_end(rack)
    supplies = {s.name for s in rack_now(store).supplies}
    if len(names) == 1 and names[0] in supplies:
        findings = remove_supply(store, names[0])
    else:
        findings = remove_pieces(store, names)
    finish(findings, f"removed: {', '.join(names)}")


rack_app.command()(take)
rack_app.command("put-back")(put_back)


@rack_app.command("import")
def import_(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="CSV file, as `export` writes it")],
    rack: RackOpt = DEFAULT,
) -> None:
    """Put the entries of a CSV file on the rack: all of them, or none."""
    from boardwright.store.csv_files import import_csv
    from boardwright.tables.load import default_tables

    if not file.is_file():
        raise typer.BadParameter(f"there is no file `{file}`", param_hint="FILE")
    store = open_or_end(rack)
    try:
        text = file.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        raise typer.BadParameter(f"`{file}` is not UTF-8 text that can be read", param_hint="FILE") from None
    done, findings = import_csv(store, text, str(file), default_tables())
    there = f"; {done.same} were there already" if done.same else ""
    finish(findings, f"{done.added} entries added{there}")


@rack_app.command("export")
def export(
    file: Annotated[
        Path | None, typer.Argument(metavar="FILE", help="CSV file to write; default: the terminal")
    ] = None,
    rack: RackOpt = DEFAULT,
) -> None:
    """Write everything that is on the rack as CSV; `import` reads it back. What is taken is not in it."""
    from boardwright.store.csv_files import export_csv

    store = open_or_end(rack)
    text = export_csv(rack_now(store), store.units)
    if file is None:
        typer.echo(text, nl=False)
        return
    try:
        file.write_text(text, encoding="utf-8")
    except OSError as e:
        raise typer.BadParameter(f"`{file}` cannot be written: {e.strerror}", param_hint="FILE") from None
    typer.echo(f"wrote {file}: {len(text.splitlines()) - 1} entries")
