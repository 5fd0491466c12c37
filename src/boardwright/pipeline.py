"""The one place that knows the order of the stages. Pure: text in, records out; results are kept by what was read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from boardwright.checks.loads import loads_of
from boardwright.checks.looked import Looked
from boardwright.checks.margins import Margin
from boardwright.checks.movement.times import Then, Time, then_of
from boardwright.checks.run import run_checks
from boardwright.checks.shop import shop_of
from boardwright.checks.way import way_of
from boardwright.core.arithmetic import Resolver
from boardwright.core.findings import Finding, Place, Severity, grouped, has_errors
from boardwright.core.rack import Rack
from boardwright.design.load import Design, load_text
from boardwright.piece.records import Piece
from boardwright.piece.run import set_out
from boardwright.solids.dry_fit import dry_fit
from boardwright.tables.bundle import Tables
from boardwright.tables.load import load_tables

if TYPE_CHECKING:
    from boardwright.plan.schema import Plan, RoughLine
    from boardwright.stock.records import Result as StockFound

Progress = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class Result:
    """What came of a design.

    Attributes:
        design: None when the file has the wrong shape.
        piece: None when nothing could be set out.
        tables: with the user's own rows.
        findings: all of them, errors first.
        passed: what was figured and keeps its limit, in the order of the checks.
        looked: checks without a figure that found nothing.
        then: the time up to which the wood moves; None for the whole year.
    """

    design: Design | None
    piece: Piece | None
    tables: Tables
    findings: tuple[Finding, ...]
    passed: tuple[Margin, ...] = ()
    looked: tuple[Looked, ...] = ()
    then: Then | None = None

    @property
    def ok(self) -> bool:
        """True when there is a piece and no error."""
        return self.piece is not None and not has_errors(self.findings)


def read(path: str | Path) -> tuple[str, dict[str, str], list[Finding]]:
    """The text of a design file and of the table files it names.

    Args:
        path: the design file.

    Returns:
        Its text, the texts of its table files by name, and findings for files that cannot be read.
    """
    file = Path(path)
    text, why = _read(file)
    if why:
        return "", {}, [_unreadable(str(path), why, Place(str(path)))]
    design, _ = load_text(text, str(path))
    tables: dict[str, str] = {}
    findings: list[Finding] = []
    for i, name in enumerate((design.file.tables or []) if design else []):
        rows, why = _read(file.parent / name)
        if why:
            findings.append(_unreadable(name, why, design.place(f"tables[{i}]") if design else Place(name)))
        else:
            tables[name] = rows
    return text, tables, findings


def _read(file: Path) -> tuple[str, str]:
    """The text of a file, or why there is none."""
    try:
        return file.read_text(encoding="utf-8-sig"), ""
    except OSError as e:
        return "", e.strerror or "it cannot be opened"
    except ValueError:
        return "", "it is not UTF-8 text, or its name is no file name"


def _unreadable(name: str, why: str, place: Place) -> Finding:
    return Finding(
        "file.unreadable",
        Severity.ERROR,
        f"`{name}` cannot be read",
        place,
        found=why,
        expected="a UTF-8 text file",
        remedy="check the name and that the file can be opened",
    )


@lru_cache(maxsize=8)
def _tables(extra: tuple[tuple[str, str], ...]) -> tuple[Tables, tuple[Finding, ...]]:
    tables, findings = load_tables(extra)
    return tables, tuple(findings)


def check_text(
    text: str,
    name: str = "design",
    units: str | None = None,
    tables: dict[str, str] | None = None,
    when: Time | None = None,
) -> Result:
    """Load, set out and check a design.

    Args:
        text: the design file's text.
        name: its name, for places.
        units: `in` or `mm` to settle and print in other units than the file's.
        tables: texts of the user's own table files, by name.
        when: a time of the year up to which the wood moves; None for the whole year.
    """
    rows, findings = _tables(tuple(sorted((tables or {}).items())))
    all_findings = list(findings)
    design, more = load_text(text, name, units)
    all_findings += more
    if design is None:
        return Result(None, None, rows, tuple(grouped(all_findings)))
    piece, more = set_out(design, rows)
    all_findings += [f for f in more if f not in all_findings]
    passed: tuple[Margin, ...] = ()
    looked: tuple[Looked, ...] = ()
    then = None
    if piece is not None:
        then = then_of(piece.moisture, when) if when is not None else None
        sizes = Resolver(design.lengths, design.file.units, lambda _: None)
        way = way_of(design, sizes.value)
        shop = shop_of(design, rows)
        checked = run_checks(piece, dry_fit(piece), rows, loads_of(design), shop, way, then)
        all_findings += checked.findings
        passed, looked = checked.passed, checked.looked
    return Result(design, piece, rows, tuple(grouped(all_findings)), passed, looked, then)


def nothing(findings: Sequence[Finding]) -> Result:
    """The result of a file that could not be read."""
    rows, _ = _tables(())
    return Result(None, None, rows, tuple(findings))


def check_file(path: str | Path, units: str | None = None, when: Time | None = None) -> Result:
    """`check_text` of a file."""
    text, tables, findings = read(path)
    if not text and findings:
        return nothing(findings)
    result = check_text(text, str(path), units, tables, when)
    return replace(result, findings=tuple(grouped([*findings, *result.findings])))


def stock_found(text: str, name: str, tables: dict[str, str], quick: bool) -> StockFound | None:
    """The stock of a design that is set out, but not checked.

    Args:
        text: the design file's text.
        name: its name, for places.
        tables: texts of the user's own table files, by name.
        quick: layouts after a short search, to compare designs.

    Returns:
        What is bought and cut, or None when the piece cannot be set out.
    """
    rows, _ = _tables(tuple(sorted(tables.items())))
    design, _ = load_text(text, name)
    if design is None:
        return None
    piece, found = set_out(design, rows)
    if piece is None or has_errors(found):
        return None
    return _stock(Result(design, piece, rows, ()), lambda _: None, lambda: False, quick)


def _stock(
    result: Result,
    say: Progress,
    stop: Callable[[], bool],
    quick: bool = False,
    rack: Rack | None = None,
) -> StockFound:
    """The stock stage of a checked design."""
    from boardwright.stock.run import run_stock, shop_choices

    assert result.design is not None
    assert result.piece is not None
    sizes = Resolver(result.design.lengths, result.design.file.units, lambda _: None)
    choices = replace(shop_choices(result.design, sizes.value), rack=rack)
    return run_stock(result.piece, result.tables, choices, say, stop, quick)


def rough_sizes(result: Result) -> list[RoughLine]:
    """Rough sizes of the wood parts of a checked design, each with its sum; none when there is no piece."""
    if result.design is None or result.piece is None:
        return []
    from boardwright.plan.rough import rough_lines

    return rough_lines(_stock(result, lambda _: None, lambda: False).value)


def make_plan(
    result: Result,
    progress: Progress | None = None,
    stop: Callable[[], bool] | None = None,
    rack: Rack | None = None,
) -> tuple[Plan | None, list[Finding]]:
    """The plan of a checked design: stock, drawings, record.

    Args:
        result: from `check_text` or `check_file`.
        progress: told what is being done.
        stop: asked now and then; True ends the search for better layouts.
        rack: what is on the shop's rack; parts are laid on it first. None when there is none.

    Returns:
        The plan, or None when there is no piece; and all findings, those of the stock included.
    """
    if result.design is None or result.piece is None:
        return None, list(result.findings)
    from boardwright.checks.movement.curves import curves
    from boardwright.plan.build import build_plan

    say = progress or (lambda _: None)
    say("laying out boards and sheets")
    stock = _stock(result, say, stop or (lambda: False), rack=rack)
    findings = grouped([*result.findings, *stock.findings])
    say("drawing")
    moving = curves(result.piece, result.tables)
    return build_plan(result.design, result.piece, stock.value, findings, moving, say), findings
