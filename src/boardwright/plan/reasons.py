"""Why each size is what it is; drawers that share a reason share a line."""

from __future__ import annotations

import re

from boardwright.core.lengths import Printer
from boardwright.piece.records import Piece, Reason
from boardwright.plan.parts import size
from boardwright.plan.places import numbers_words, path_words
from boardwright.plan.schema import PlanReason, Size

_NUMBERED = re.compile(r"^drawer\.(\d+)\.(.*)$")


def plan_reasons(piece: Piece, printer: Printer) -> list[PlanReason]:
    """One line a size; the same size of several drawers stands once, as `drawers 1, 2, 5: front reveal`."""
    groups: dict[tuple[object, ...], list[tuple[str, Reason]]] = {}
    for r in piece.reasons:
        match = _NUMBERED.match(r.path)
        number, tail = match.groups() if match else ("", r.path)
        key: tuple[object, ...] = (bool(match), tail, round(r.value, 6), r.word, r.sum, r.rule, r.source)
        groups.setdefault(key, []).append((number, r))
    out = []
    for shared, members in groups.items():
        r = members[0][1]
        numbers = list(dict.fromkeys(n for n, _ in members if n))
        path = path_words(r.path)
        if numbers:
            path = f"{numbers_words('drawer', map(int, numbers))}: {_tail(str(shared[1]))}"
        out.append(
            PlanReason(
                path=path,
                size=Size(mm=0.0, text=r.word.replace("_", " ")) if r.word else size(printer, r.value),
                sum=r.sum,
                rule=r.rule,
                source=r.source,
                given=r.given,
            )
        )
    return out


def _tail(path: str) -> str:
    """`front.joint.depth` as `front joint depth`."""
    return path.replace(".", " ").replace("_", " ")
