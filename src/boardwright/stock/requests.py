"""What is to be laid out: every kind of part with its rough size, by lots of one wood and thickness or one sheet."""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.findings import Finding
from boardwright.core.lengths import Printer, Units
from boardwright.piece.records import Part, Stock
from boardwright.stock.blanks import gather
from boardwright.stock.choices import Allowances
from boardwright.stock.glue_ups import strip_limit
from boardwright.stock.instance import StockSize
from boardwright.stock.lots import LotRequest
from boardwright.stock.racks import sizes_for
from boardwright.stock.records import RoughPart, ShopChoices
from boardwright.stock.rough import before_resawing, lumber_for, sheet_part, wood_part
from boardwright.stock.wishes import Wishes
from boardwright.stock.wording import plain_name, sold
from boardwright.tables.bundle import Tables
from boardwright.tables.records import LumberClass


@dataclass(frozen=True, slots=True)
class Asked:
    """What is to be laid out.

    Attributes:
        requests: wood first.
        rough: rough sizes, in the order of the letters.
        rules: on strips, one line each.
        findings: of parts that cannot be matched.
    """

    requests: tuple[LotRequest, ...]
    rough: tuple[RoughPart, ...]
    rules: tuple[str, ...]
    findings: tuple[Finding, ...]


def requests_of(
    kinds: dict[str, list[Part]],
    tables: Tables,
    allow: Allowances,
    racks: dict[str, tuple[StockSize, ...]],
    wishes: Wishes,
    choices: ShopChoices,
    printer: Printer,
) -> Asked:
    """Rough sizes of all parts, and what is to be laid out.

    Args:
        kinds: parts by letter.
        tables: lumber, boards.
        allow: allowances.
        racks: boards on hand of each stock.
        wishes: what the file wants of some parts.
        choices: sizes of sheet and their prices; places in the file.
        printer: prints sizes of the plan.
    """
    lots: dict[str, list[RoughPart]] = {}
    heads: dict[str, tuple[str, Stock, tuple[StockSize, ...], bool, str]] = {}
    rules: dict[str, None] = {}
    booked = wishes.booked()
    for letter, kind in kinds.items():
        one, leaves = kind[0], 1
        if any(p.id in booked for p in kind):
            one, leaves = before_resawing(one, allow), 2
        lumber = lumber_for(one, tables, allow, printer) if one.stock.kind == "wood" else None
        id, title = _lot_of(one, lumber, printer.units)
        sizes, on_hand, assumed = sizes_for(one, tables, allow, racks, choices, printer)
        if one.stock.kind == "wood":
            limit = strip_limit(sizes, on_hand, allow, printer)
            extra = (wishes.longer.get(letter, 0.0), wishes.wider.get(letter, 0.0))
            part = wood_part(kind, id, lumber, limit, allow, printer, *extra, leaves)
            if part.strips > 1:
                rules[f"{title}: {limit.rule}"] = None
        else:
            part = sheet_part(kind, id)
        part = replace(part, spare=wishes.spare.get(letter, 0))
        heads.setdefault(id, (title, kind[0].stock, sizes, on_hand, assumed))
        lots.setdefault(id, []).append(part)
    requests: list[LotRequest] = []
    findings: list[Finding] = []
    rough: dict[str, RoughPart] = {}
    for id, (title, stock, sizes, on_hand, assumed) in heads.items():
        longest = max((b.length - 2 * b.trim_length for b in sizes), default=0.0)
        got = gather(id, lots[id], wishes.matched, longest, allow, choices, printer)
        findings += got.findings
        rough |= {p.letter: p for p in got.parts}
        requests.append(
            LotRequest(id, title, stock, got.parts, sizes, allow.kerf, on_hand, assumed, blanks=got.blanks)
        )
    requests.sort(key=lambda r: r.stock.kind != "wood")
    ordered = tuple(rough[k] for k in sorted(rough, key=lambda k: (len(k), k)))
    return Asked(tuple(requests), ordered, tuple(rules), tuple(findings))


def _lot_of(part: Part, lumber: LumberClass | None, units: Units) -> tuple[str, str]:
    """Id and title of the lot that a part is cut from."""
    stock = part.stock
    if stock.kind != "wood":
        return stock.id, f"{_bare(stock)} {sold(units, stock.nominal)}"
    key = lumber.key if lumber else "thick"
    return f"{stock.id}.{key}", f"{lumber.name if lumber else 'thick'} {plain_name(stock.name)}"


def _bare(stock: Stock) -> str:
    return stock.name.removesuffix(f" {sold('mm', stock.nominal)}")
