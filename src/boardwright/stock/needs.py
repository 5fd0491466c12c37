"""What a lot needs from random boards, and how much of which grade gives it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.core.lengths import Printer
from boardwright.stock.blanks import ids_of
from boardwright.stock.choices import Allowances
from boardwright.stock.glue_ups import strip_limit
from boardwright.stock.lots import LotRequest
from boardwright.stock.purchase import Purchase, purchase
from boardwright.stock.random_boards import Need, Saw
from boardwright.tables.bundle import Tables

OTHERS = ("fas", "1_common")
"""Grades that are shown beside the one that is asked for."""


COMMONS = ("1_common", "2a_common")
NARROW = 4 * 25.4
"""Pieces wider than this are glued up when they come from the Commons, whose clear cuttings are narrow [mm]: the least
cutting of No. 1 Common is 4 in x 2 ft or 3 in x 3 ft (NHLA)."""


@dataclass(frozen=True, slots=True)
class Purchases:
    """How much to ask for of the grade that the shop wants, and of others; None when it does not give the parts."""

    ask: Purchase | None
    others: tuple[Purchase, ...]


def needs(request: LotRequest, allow: Allowances, printer: Printer) -> list[Need]:
    """What a lot needs: pieces and blanks of fixed size, strips of free width for its panels.

    Args:
        request: the lot.
        allow: allowances.
        printer: prints sizes of the plan.
    """
    inside = {(id, k) for b in request.blanks for _, id, k in b.pieces}
    widest = strip_limit(request.sizes, request.on_hand, allow, printer).strip
    out = [Need(b.length, b.width, 1) for b in request.blanks]
    for part in request.parts:
        ids = ids_of(part)
        keys = [(id, k) for id in ids for k in range(1, part.strips + 1) if (id, k) not in inside]
        if part.strips > 1 and part.rough is not None and keys:
            width = part.rough[1] * len(ids)
            least = min(allow.strip_min, widest)
            out.append(Need(part.strip[0], widest, width, True, least, 2 * allow.edge_joint))
        elif keys:
            out.append(Need(*part.strip, len(keys)))
    return out


def purchases(
    request: LotRequest,
    wanted: Sequence[Need],
    net: float,
    grade: str,
    allow: Allowances,
    tables: Tables,
) -> Purchases:
    """How much of which grade to ask for.

    Args:
        request: the lot.
        wanted: what it needs.
        net: face area of its finished parts [m2].
        grade: key of the grade that the shop wants.
        allow: allowances.
        tables: grades.
    """
    thick = next((p.rough[2] for p in request.parts if p.rough), 25.4)
    saw = Saw(request.kerf, allow.end_trim, allow.edge_trim)
    keys = [grade, *(k for k in OTHERS if k != grade)]
    glued = [_glued(n, allow) for n in wanted]
    found = [purchase(glued if k in COMMONS else wanted, saw, tables.grades[k], thick, net) for k in keys]
    return Purchases(found[0], tuple(p for p in found[1:] if p is not None))


def _glued(need: Need, allow: Allowances) -> Need:
    """What a piece needs when it is glued up of strips."""
    if need.strips or need.width <= NARROW:
        return need
    joint = 2 * allow.edge_joint
    least = min(allow.strip_min, need.width)
    return Need(need.length, need.width, need.width * need.left, True, least, joint)
