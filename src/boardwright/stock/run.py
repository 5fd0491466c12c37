"""`Piece` → rough sizes, glue-ups, layouts and the buying list."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from boardwright.core.findings import Finding, grouped
from boardwright.core.lengths import Printer, Units
from boardwright.piece.records import Part, Piece, Stock
from boardwright.stock.buying import buying_list, glued_area
from boardwright.stock.choices import Allowances, allowances, shop_choices
from boardwright.stock.glue_ups import short_findings, stage_findings, strip_limit
from boardwright.stock.instance import StockSize
from boardwright.stock.lots import LotRequest, lay_out
from boardwright.stock.racks import racks_of, sizes_for
from boardwright.stock.records import Lot, Result, RoughPart, ShopChoices, StockResult, Tally
from boardwright.stock.rough import (
    MACHINE_MINIMUM,
    board_thickness,
    by_letter,
    face,
    sheet_part,
    wood_part,
)
from boardwright.stock.tally import tally_of
from boardwright.stock.wording import plain_name, sold
from boardwright.tables.bundle import Tables

__all__ = ["run_stock", "shop_choices"]


def run_stock(
    piece: Piece,
    tables: Tables,
    choices: ShopChoices,
    progress: Callable[[str], None] | None = None,
    stop: Callable[[], bool] = lambda: False,
) -> Result:
    """Rough sizes, glue-ups, layouts and the buying list of a piece.

    Args:
        piece: set out, every size known.
        tables: lumber, boards, glues, figures.
        choices: what the shop reckons with, as from `shop_choices`.
        progress: told what is being laid out, and of every better layout.
        stop: when it says True, the best layouts so far are taken.

    Returns:
        The result and its findings; the same on every run, as long as `stop` never says stop.
    """
    units: Units = "mm" if piece.units == "mm" else "in"
    printer = Printer(units, piece.step)
    allow, rules, findings = allowances(tables, choices, printer)
    kinds = by_letter(piece.parts)
    racks, more = racks_of(piece, choices, allow, printer)
    findings += more
    requests, rough, limits = _requests(kinds, tables, allow, racks, printer)
    findings += stage_findings(rough, tables)
    findings += short_findings(rough, MACHINE_MINIMUM[units], allow.kerf, printer)
    lots: list[Lot] = []
    say = progress or (lambda _: None)
    for request in requests:
        say(f"laying out {request.title}")
        lot, more = lay_out(request, partial(_tally, request, kinds, units), printer, stop, say)
        lots.append(lot)
        findings += more
    area = glued_area(piece.joints, rough)
    buy = buying_list(piece, lots, area, tables, printer)
    return Result(
        StockResult(rough, tuple(lots), buy, (*rules, *limits), area), grouped(_with_places(findings, piece))
    )


def _with_places(findings: Sequence[Finding], piece: Piece) -> list[Finding]:
    """Findings that name a part and no place get the place where the file asks for that part."""
    places = {p.id: p.place for p in piece.parts}
    return [
        replace(f, place=places[f.parts[0]]) if not f.place.line and f.parts and f.parts[0] in places else f
        for f in findings
    ]


def _tally(
    request: LotRequest, kinds: dict[str, list[Part]], units: Units, stocks: Sequence[tuple[float, float]]
) -> Tally:
    """What boards or sheets of a lot come to."""
    wood = request.stock.kind == "wood"
    parts = [(p.size[0], face(p)[0] if wood else p.size[1]) for r in request.parts for p in kinds[r.letter]]
    rough = request.parts[0].rough
    thickness = rough[2] if rough else request.stock.thickness
    return tally_of(parts, stocks, thickness, wood and units == "in")


def _lot_of(part: Part, tables: Tables, units: Units) -> tuple[str, str]:
    """Id and title of the lot that a part is cut from."""
    stock = part.stock
    if stock.kind != "wood":
        return stock.id, f"{_bare(stock)} {sold(units, stock.nominal)}"
    lumber = tables.class_for(board_thickness(part), units)
    key = lumber.key if lumber else "thick"
    return f"{stock.id}.{key}", f"{lumber.name if lumber else 'thick'} {plain_name(stock.name)}"


def _bare(stock: Stock) -> str:
    return stock.name.removesuffix(f" {sold('mm', stock.nominal)}")


def _requests(
    kinds: dict[str, list[Part]],
    tables: Tables,
    allow: Allowances,
    racks: dict[str, tuple[StockSize, ...]],
    printer: Printer,
) -> tuple[list[LotRequest], tuple[RoughPart, ...], tuple[str, ...]]:
    """What is to be laid out, wood first; rough sizes in the order of the letters; the rules on strips."""
    rough: dict[str, RoughPart] = {}
    lots: dict[str, list[str]] = {}
    heads: dict[str, tuple[str, Stock, tuple[StockSize, ...], bool, str]] = {}
    rules: dict[str, None] = {}
    for letter, kind in kinds.items():
        one = kind[0]
        id, title = _lot_of(one, tables, printer.units)
        sizes, on_hand, assumed = sizes_for(one, tables, allow, racks, printer)
        if one.stock.kind == "wood":
            limit = strip_limit(sizes, on_hand, allow, printer)
            lumber = tables.class_for(board_thickness(one), printer.units)
            rough[letter] = wood_part(kind, id, lumber, limit, allow, printer)
            if rough[letter].strips > 1:
                rules[f"{title}: {limit.rule}"] = None
        else:
            rough[letter] = sheet_part(kind, id)
        heads.setdefault(id, (title, one.stock, sizes, on_hand, assumed))
        lots.setdefault(id, []).append(letter)
    requests = [
        LotRequest(id, title, stock, tuple(rough[x] for x in lots[id]), sizes, allow.kerf, on_hand, assumed)
        for id, (title, stock, sizes, on_hand, assumed) in heads.items()
    ]
    requests.sort(key=lambda r: r.stock.kind != "wood")
    return requests, tuple(rough[k] for k in sorted(rough, key=lambda k: (len(k), k))), tuple(rules)
