"""Stock that does not give a part."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part


def stock_gives(c: Context) -> Iterator[Finding]:
    """Parts thicker than their stock, larger than their sheet, or of a thickness no lumber on sale gives."""
    seen: set[tuple[str, str]] = set()
    for part in c.piece.parts:
        stock = part.stock
        thin = min(part.size)
        if thin > stock.thickness + 1e-6 or (
            stock.kind == "sheet" and abs(part.size[2] - stock.thickness) > 1e-6
        ):
            if ("thick", part.letter) in seen:
                continue
            seen.add(("thick", part.letter))
            yield Finding(
                "stock.thickness-not-given",
                Severity.ERROR,
                f"no part of `{stock.id}` can be as thick as {c.label(part.id)}",
                part.place,
                found=f"{c.text(thin)} of stock {c.text(stock.thickness)} thick",
                expected=f"at most {c.text(stock.thickness)}",
                remedy=f"name a stock {c.up(thin)} thick, or make the part {c.down(stock.thickness)} thick "
                "or less",
                parts=(part.id,),
            )
        elif stock.sheet_size is not None:
            yield from _sheet(c, part, seen)
        elif ("class", stock.id) not in seen and _no_class(c, part):
            seen.add(("class", stock.id))
            most = max(
                (k.planned for k in c.tables.lumber.values() if k.system == c.piece.units), default=0.0
            )
            yield Finding(
                "stock.no-lumber",
                Severity.ERROR,
                f"no lumber on sale planes to the thickness of `{stock.id}`",
                part.place,
                found=c.text(stock.thickness),
                expected=f"at most {c.text(most)}",
                source="lumber table",
                remedy=f"use stock {c.down(most)} thick or less, or glue it up from layers",
                parts=(part.id,),
            )


def _no_class(c: Context, part: Part) -> bool:
    return c.tables.class_for(part.stock.thickness, c.piece.units) is None


def _sheet(c: Context, part: Part, seen: set[tuple[str, str]]) -> Iterator[Finding]:
    assert part.stock.sheet_size is not None
    length, width = part.stock.sheet_size
    fits = part.size[0] <= length and part.size[1] <= width
    turned = part.size[1] <= length and part.size[0] <= width and not part.stock.grain
    if fits or turned or ("sheet", part.letter) in seen:
        return
    seen.add(("sheet", part.letter))
    yield Finding(
        "stock.larger-than-sheet",
        Severity.ERROR,
        f"{c.label(part.id)} is larger than its sheet",
        part.place,
        found=f"{c.printer.size(part.size[0])} × {c.printer.text(part.size[1])}",
        expected=f"at most {c.printer.size(length)} × {c.printer.text(width)}",
        source=part.stock.source,
        remedy="use a larger sheet (`sheet_length`, `sheet_width`), or a smaller part",
        parts=(part.id,),
    )
