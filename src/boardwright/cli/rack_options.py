"""Options that the rack's commands share, and how they end."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Annotated, NoReturn

import typer

from boardwright.cli import show
from boardwright.core.findings import Finding, has_errors

if TYPE_CHECKING:
    from boardwright.core.rack import Rack
    from boardwright.store.opening import Store

RackOpt = Annotated[
    str,
    typer.Option(
        "--rack", envvar="BOARDWRIGHT_RACK", help="the rack: a file, or the URL of a PostgreSQL database"
    ),
]
MaybeRackOpt = Annotated[
    str | None,
    typer.Option("--rack", help="lay parts on what is on this rack first: a file, or a database's URL"),
]
LengthOpt = Annotated[str, typer.Option("--length", help="along the grain, e.g. 96 or 2440 mm")]
WidthOpt = Annotated[str, typer.Option("--width", help="across the grain")]
MeasuredOpt = Annotated[str, typer.Option("--measured", help="thickness as measured")]
MoistureOpt = Annotated[str, typer.Option("--moisture", help="moisture content [%]")]
GradeOpt = Annotated[str, typer.Option("--grade", help="as the yard wrote it")]
DefectOpt = Annotated[
    list[str] | None,
    typer.Option(
        "--defect",
        help="rectangle to stay clear of, from the left end and the near edge, e.g. '6 x 2 at 40, 1 1/2 "
        "knot'; may be given again",
    ),
]
OffcutOpt = Annotated[
    str, typer.Option("--cut-from", help="it is an offcut: name of the piece it was cut from, or bought")
]
NameOpt = Annotated[str, typer.Option("--name", help="what is written on it; default: the next number")]
NoteOpt = Annotated[str, typer.Option("--note", help="anything worth knowing")]
PictureOpt = Annotated[str, typer.Option("--picture", help="name of a picture file")]
CountOpt = Annotated[str, typer.Option("--count", help="how many alike")]
DEFAULT = "rack.db"


def open_or_end(where: str) -> Store:
    """The rack, or its findings and the end of the program."""
    from boardwright.store.opening import open_rack

    store, findings = open_rack(where)
    if store is None:
        end(findings)
    return store


def end(findings: Sequence[Finding]) -> NoReturn:
    """Print what was found and end: 1 with errors, else 0."""
    show.show_findings(findings)
    raise typer.Exit(1 if has_errors(findings) else 0)


def rack_now(store: Store) -> Rack:
    """What is on the rack, or the findings and the end of the program."""
    from boardwright.store.supplies import read_rack

    rack, findings = read_rack(store)
    if findings:
        end(findings)
    return rack


def finish(findings: Sequence[Finding], said: str) -> None:
    """Warnings, then what was done; or errors and the end."""
    if has_errors(findings):
        end(findings)
    if findings:
        show.show_findings(findings)
    typer.echo(said)
