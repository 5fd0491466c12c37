"""`Piece` → rough sizes, glue-ups, layouts and the buying list."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from boardwright.core.findings import Finding, grouped
from boardwright.core.lengths import Printer, Units
from boardwright.piece.records import Part, Piece
from boardwright.stock.blanks import short_findings
from boardwright.stock.buying import buying_list
from boardwright.stock.buying_small import glued_area
from boardwright.stock.choices import Allowances, allowances, shop_choices
from boardwright.stock.edging import edging
from boardwright.stock.glue_ups import bark_rule, stage_findings
from boardwright.stock.lots import LotRequest, lay_out
from boardwright.stock.needs import Purchases, needs, purchases
from boardwright.stock.panel_lots import StripChooser, joint_findings
from boardwright.stock.panes import cut_to_size, panes
from boardwright.stock.rack_words import as_bought, rack_findings
from boardwright.stock.racks import defects_on_hand, from_rack, racks_of
from boardwright.stock.records import Lot, Result, RoughPart, ShopChoices, StockResult, Tally
from boardwright.stock.requests import requests_of
from boardwright.stock.rough import by_letter, face
from boardwright.stock.tally import tally_of
from boardwright.stock.trials import lay_out_with_trials
from boardwright.stock.wishes import read_wishes
from boardwright.tables.bundle import Tables

__all__ = ["run_stock", "shop_choices"]

QUICK = 0.02
"""Effort of a quick layout."""


def run_stock(
    piece: Piece,
    tables: Tables,
    choices: ShopChoices,
    progress: Callable[[str], None] | None = None,
    stop: Callable[[], bool] = lambda: False,
    quick: bool = False,
) -> Result:
    """Rough sizes, glue-ups, layouts and the buying list of a piece.

    Args:
        piece: set out, every size known.
        tables: lumber, boards, glues, figures.
        choices: what the shop reckons with, as from `shop_choices`.
        progress: told what is being laid out, and of every better layout.
        stop: when it says True, the best layouts so far are taken.
        quick: layouts after a short search, with equal strips, no test pieces, and nothing on what to ask for: to
            compare designs.

    Returns:
        The result and its findings; the same on every run, as long as `stop` never says stop.
    """
    units: Units = "mm" if piece.units == "mm" else "in"
    printer = Printer(units, piece.step)
    allow, rules, findings = allowances(tables, choices, printer)
    kinds = by_letter(piece.parts)
    racks, more = racks_of(piece, choices, allow, printer)
    findings += more
    wishes, more = read_wishes(piece.parts, choices)
    findings += more
    asked = requests_of(kinds, tables, allow, racks, wishes, choices, printer)
    findings += asked.findings
    blanks = tuple(b for r in asked.requests for b in r.blanks)
    findings += short_findings(asked.rough, blanks, allow, printer)
    chooser = StripChooser(kinds, allow, printer, stop)
    lots: list[Lot] = []
    say = progress or (lambda _: None)
    trials: list[RoughPart] = []
    marks = defects_on_hand(choices)
    for request in asked.requests:
        say(f"laying out {request.title}")
        request = from_rack(request, choices.rack, tables, printer, allow.strip_min)
        request = replace(request, marks=marks)
        tally = partial(_tally, request, kinds, units)
        if cut_to_size(request):
            lots.append(panes(request, tally))
            continue
        lay = partial(lay_out, tally=tally, printer=printer, stop=stop, progress=say)
        if quick:
            lot, more = lay(request, effort=QUICK)
            lots.append(lot)
            findings += more
            continue
        lay = partial(lay, choose=chooser)
        lot, more, tried = lay_out_with_trials(request, kinds, tables, allow, printer, lay)
        lots.append(lot)
        trials += tried
        findings += more
    rough = tuple(chooser.changed.get(r.letter, r) for r in asked.rough)
    findings += stage_findings(rough, tables)
    findings += joint_findings(rough, kinds, allow, printer)
    area = glued_area(piece.joints, rough)
    bought = {} if quick else _purchases(asked.requests, lots, choices, allow, tables, printer, stop)
    sold_apart = as_bought(lots, printer)
    edges = edging(piece, tables, allow.kerf, printer)
    costs, more = buying_list(piece, sold_apart, rough, bought, edges, choices, tables, printer)
    findings += more
    findings += rack_findings(choices.rack, lots, piece, printer)
    notes = (*rules, *asked.rules, *bark_rule(rough, kinds, choices))
    return Result(
        StockResult(
            rough,
            tuple(lots),
            costs.lines,
            notes,
            area,
            costs.text,
            blanks,
            tuple(trials),
            tuple(lot for _, lot in edges),
        ),
        grouped(_with_places(findings, piece)),
    )


def _purchases(
    requests: Sequence[LotRequest],
    lots: Sequence[Lot],
    choices: ShopChoices,
    allow: Allowances,
    tables: Tables,
    printer: Printer,
    stop: Callable[[], bool],
) -> dict[str, Purchases]:
    """How much lumber to ask for, for every lot that is not on hand."""
    found = {}
    for request, lot in zip(requests, lots, strict=True):
        own = request.on_hand or lot.from_rack is not None
        if request.stock.kind == "wood" and not own and lot.layouts and not stop():
            wanted = needs(request, allow, printer)
            found[lot.id] = purchases(request, wanted, lot.tally.net, choices.grade, allow, tables)
    return found


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
    parts = [
        (p.size[0], face(p)[0] if wood else p.size[1]) for r in request.parts for p in kinds.get(r.letter, [])
    ]
    rough = request.parts[0].rough
    thickness = rough[2] if rough else request.stock.thickness
    return tally_of(parts, stocks, thickness, wood and units == "in")
