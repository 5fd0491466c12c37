"""Commands. Exit codes: 0 clean, 1 errors found, 2 wrong use. A bug prints one line and where its log is."""

from __future__ import annotations

import sys
import tempfile
import traceback
from enum import StrEnum
from importlib.resources import files
from pathlib import Path
from typing import Annotated

import typer

from boardwright.checks.movement.times import Time
from boardwright.cli import show
from boardwright.cli.rack import rack_app
from boardwright.cli.rack_options import MaybeRackOpt, open_or_end, rack_now
from boardwright.cli.words import Listed
from boardwright.cli.words import words as show_words
from boardwright.core.findings import has_errors
from boardwright.pipeline import Result, check_file

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="From a design file to a checked piece of furniture and a printed plan.",
)
app.add_typer(rack_app, name="rack")


class Units(StrEnum):
    """Units to print in."""

    inches = "in"
    millimetres = "mm"


class Paper(StrEnum):
    """Paper of the PDF."""

    letter = "letter"
    a4 = "a4"


class Format(StrEnum):
    """How findings are printed."""

    text = "text"
    json = "json"


class Start(StrEnum):
    """What a new file starts from."""

    chest = "chest"
    shelves = "shelves"
    cabinet = "cabinet"


DesignArg = Annotated[Path, typer.Argument(metavar="FILE", help="design file")]
UnitsOpt = Annotated[Units | None, typer.Option("--units", help="settle and print in these units")]
FormatOpt = Annotated[Format, typer.Option("--format", help="text, or json for programs")]


def _units(units: Units | None) -> str | None:
    return units.value if units else None


def _need_file(path: Path) -> None:
    if not path.is_file():
        raise typer.BadParameter(f"there is no file `{path}`", param_hint="FILE")


@app.command()
def new(
    start: Annotated[Start, typer.Argument(help="what to start from")],
    file: Annotated[
        Path | None, typer.Argument(metavar="FILE", help="file to write; default START.yaml")
    ] = None,
) -> None:
    """Start a design file."""
    target = file or Path(f"{start.value}.yaml")
    if target.exists():
        raise typer.BadParameter(f"`{target}` is there already; nothing was written", param_hint="FILE")
    text = (files("boardwright.cli") / "starts" / f"{start.value}.yaml").read_text(encoding="utf-8")
    try:
        target.write_text(text, encoding="utf-8")
    except OSError as e:
        raise typer.BadParameter(f"`{target}` cannot be written: {e.strerror}", param_hint="FILE") from None
    typer.echo(f"wrote {target}; next: boardwright check {target}")


def _finish(result: Result, fmt: Format, all_: bool = False) -> None:
    if fmt is Format.json:
        typer.echo(
            show.findings_json(
                result.findings,
                result.passed if all_ else None,
                show.sizes_then(result),
                result.looked if all_ else None,
            )
        )
    else:
        if result.then is not None and result.piece is not None:
            typer.echo(show.sizes_table(result.piece, result.then) + "\n")
        if all_ and result.piece is not None and result.passed:
            typer.echo(show.passed_table(result.piece, result.passed) + "\n")
        if all_ and result.looked:
            typer.echo(show.looked_table(result.looked) + "\n")
        show.show_findings(result.findings, result.passed if all_ else ())
    raise typer.Exit(1 if has_errors(result.findings) or result.piece is None else 0)


def _time(text: str) -> Time:
    """A time by its word."""
    try:
        return Time(text)
    except ValueError:
        raise typer.BadParameter(f"'{text}' is none of {', '.join(Time)}") from None


@app.command()
def check(
    file: DesignArg,
    units: UnitsOpt = None,
    format: FormatOpt = Format.text,
    all_: Annotated[
        bool, typer.Option("--all", help="list also what keeps its limit, with its margin")
    ] = False,
    when: Annotated[
        Time | None,
        typer.Option(
            "--when",
            "--month",
            metavar="TIME",
            parser=_time,
            help="sizes and fits at one time: driest, wettest, or a month",
        ),
    ] = None,
) -> None:
    """Check a design: whether it is understood, fits, moves and holds."""
    _need_file(file)
    _finish(check_file(file, _units(units), when), format, all_)


@app.command()
def explain(
    file: DesignArg,
    only: Annotated[
        str,
        typer.Argument(
            metavar="SIZE",
            help="sizes whose name starts so, e.g. case.back; rough or rough.A for rough sizes",
        ),
    ] = "",
    units: UnitsOpt = None,
) -> None:
    """Show each size with the rule or the sum that gave it."""
    _need_file(file)
    result = check_file(file, _units(units))
    if result.piece is None:
        _finish(result, Format.text)
        return
    if only.startswith("rough"):
        from boardwright.pipeline import rough_sizes

        typer.echo(show.rough_list(rough_sizes(result), only.removeprefix("rough").lstrip(".")))
    else:
        typer.echo(show.explanation(result.piece, only))
    _after(result)


@app.command()
def words(
    what: Annotated[
        Listed, typer.Argument(metavar="WHAT", help="woods, sheets, glues, finishes, regions or cities")
    ],
    units: UnitsOpt = None,
) -> None:
    """List the words of the tables that a design file may use."""
    from boardwright.tables import load_tables

    typer.echo(show_words(load_tables()[0], what, units is Units.millimetres))


@app.command()
def save(
    file: DesignArg,
    between: Annotated[
        str, typer.Option("--between", help="a size and the range it may lie in, e.g. sizes.width=880..920")
    ],
) -> None:
    """Find what a little would save: a size changed within a range, so that a board or a sheet less is needed."""
    from boardwright.pipeline import read
    from boardwright.savings import NoSuchSize, savings

    _need_file(file)
    text, tables, findings = read(file)
    if has_errors(findings):
        show.show_findings(findings)
        raise typer.Exit(1)
    try:
        with _progress(Format.text) as say:
            found = savings(text, str(file), between, tables, say)
    except NoSuchSize as why:
        raise typer.BadParameter(str(why), param_hint="--between") from None
    typer.echo(show.saved(found, between.partition("=")[0].strip()))


@app.command("list")
def list_(
    file: DesignArg,
    units: UnitsOpt = None,
    ids: Annotated[
        bool, typer.Option("--ids", help="a row for each part, with its name in sums and joints")
    ] = False,
) -> None:
    """Print the cut list: finished sizes by letter."""
    _need_file(file)
    result = check_file(file, _units(units))
    if result.piece is None:
        _finish(result, Format.text)
        return
    typer.echo(show.part_ids(result.piece) if ids else show.cut_list(result.piece))
    _after(result)


def _after(result: Result) -> None:
    """Errors are never hidden behind a list."""
    if has_errors(result.findings):
        typer.echo(f"\n{show.tally(result.findings)}; see `boardwright check`", err=True)
        raise typer.Exit(1)


@app.command()
def plan(
    file: DesignArg,
    out: Annotated[Path, typer.Option("--out", help="folder for the plan")] = Path("out"),
    paper: Annotated[Paper, typer.Option("--paper", help="paper of the PDF")] = Paper.letter,
    units: UnitsOpt = None,
    format: FormatOpt = Format.text,
    files_: Annotated[
        str, typer.Option("--files", help="what to write, of json, csv, xlsx, svg, dxf, step, pdf; or all")
    ] = "json,csv,svg,step,pdf",
    rack: MaybeRackOpt = None,
) -> None:
    """Make the whole plan: PDF, plan.json, cut list, drawings, STEP."""
    from boardwright.pipeline import make_plan
    from boardwright.publish.run import FORMATS, publish

    kinds = FORMATS if files_ == "all" else tuple(k.strip() for k in files_.split(",") if k.strip())
    unknown = [k for k in kinds if k not in FORMATS]
    if unknown or not kinds:
        raise typer.BadParameter(
            f"`{', '.join(unknown) or files_}` is not one of {', '.join(FORMATS)}", param_hint="--files"
        )

    _need_file(file)
    there = rack_now(open_or_end(rack)) if rack is not None else None
    with _progress(format) as say:
        result = check_file(file, _units(units))
        made, findings = make_plan(result, progress=say, rack=there)
        if made is not None:
            try:
                paths = publish(made, out, paper.value, kinds, progress=lambda p: say(f"wrote {p.name}"))
            except OSError as e:
                raise typer.BadParameter(
                    f"`{out}` cannot be written: {e.strerror}", param_hint="--out"
                ) from None
    if format is Format.json:
        typer.echo(show.findings_json(findings))
    else:
        show.show_findings(findings)
        if made is not None:
            pdf = next((p for p in paths if p.suffix == ".pdf"), None)
            typer.echo(
                f"{len(paths)} {'file' if len(paths) == 1 else 'files'} in {out}"
                + (f"; the plan is {pdf}" if pdf else "")
            )
    raise typer.Exit(1 if has_errors(findings) or made is None else 0)


class _progress:
    """One line that says what is being done; only on a terminal, and only for people."""

    def __init__(self, format: Format) -> None:
        self.live = format is Format.text and sys.stderr.isatty()

    def __enter__(self) -> _progress:
        return self

    def __call__(self, text: str) -> None:
        if self.live:
            sys.stderr.write(f"\r\x1b[K{text}")
            sys.stderr.flush()

    def __exit__(self, *_: object) -> None:
        if self.live:
            sys.stderr.write("\r\x1b[K")
            sys.stderr.flush()


def main() -> None:
    """Run the command line; no traceback ever reaches the user."""
    try:
        app()
    except KeyboardInterrupt:
        typer.echo("stopped", err=True)
        sys.exit(130)
    except Exception as e:
        with tempfile.NamedTemporaryFile(
            "w", prefix="boardwright-", suffix=".log", delete=False, encoding="utf-8"
        ) as log:
            log.write(traceback.format_exc())
        typer.echo(
            f"error: a bug in Boardwright stopped it ({type(e).__name__}). The log is {log.name}; "
            "please report it with the design file.",
            err=True,
        )
        sys.exit(70)
