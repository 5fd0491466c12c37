"""Cut list and buying list as CSV (RFC 4180, UTF-8): one line of heads, then one line a row."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from boardwright.plan.schema import Plan, PlanPart, Sizes

SIDES = ("length", "width", "thickness")
CUT_LIST_HEAD = (
    "letter",
    "part",
    "count",
    "material",
    *(f"finished {side}{unit}" for side in SIDES for unit in ("", " mm")),
    *(f"rough {side}{unit}" for side in SIDES for unit in ("", " mm")),
    "grain",
    "cut",
    "notes",
)
BUYING_HEAD = ("group", "item", "quantity", "detail", "source", "cost")
ROUGH_HEAD = ("letter", "part", "count", "from", "length", "width", "thickness", "strips", "note")


def cut_list_csv(plan: Plan) -> str:
    """The cut list, one line a letter.

    Args:
        plan: the plan.

    Returns:
        CSV text; each size as printed and in millimetres. Rough sizes are empty for parts cut from a sheet at
        their finished size.
    """
    return _csv(CUT_LIST_HEAD, (_row(part) for part in plan.parts))


def buying_csv(plan: Plan) -> str:
    """The buying list, one line an item, in the plan's order."""
    return _csv(BUYING_HEAD, buying_rows(plan))


def buying_rows(plan: Plan) -> list[list[str]]:
    """The lines of the buying list under `BUYING_HEAD`."""
    return [[b.group, b.item, b.quantity, b.detail, b.source, b.cost] for b in plan.buy]


def cut_list_rows(plan: Plan) -> list[list[str]]:
    """The lines of the cut list under `CUT_LIST_HEAD`."""
    return [_row(part) for part in plan.parts]


def rough_rows(plan: Plan) -> list[list[str]]:
    """The lines of the rough list under `ROUGH_HEAD`."""
    return [
        [r.letter, r.name, str(r.count), r.lumber, r.length, r.width, r.thickness, r.strips, r.note]
        for r in plan.rough
    ]


def rough_csv(plan: Plan) -> str:
    """The rough list, one line a letter, each size with its sum."""
    return _csv(ROUGH_HEAD, rough_rows(plan))


def notes(part: PlanPart) -> str:
    """What the cut list adds to a row: the glue-up, and what the part mirrors."""
    found = []
    if part.glue_up:
        strips = ", ".join(f"{s.count} of {s.width.text}" for s in part.glue_up)
        found.append(f"glue up from {sum(s.count for s in part.glue_up)} strips, rough width: {strips}")
    if part.mirror_of:
        found.append(f"mirror of {part.mirror_of}")
    return "; ".join(found)


def _row(part: PlanPart) -> list[str]:
    return [
        part.letter,
        part.name,
        str(part.count),
        part.stock_name,
        *_sizes(part.finished),
        *(_sizes(part.rough) if part.rough else [""] * 6),
        part.grain,
        part.cut_when,
        notes(part),
    ]


def _sizes(sizes: Sizes) -> list[str]:
    out = []
    for size in (sizes.length, sizes.width, sizes.thickness):
        out += [size.text, f"{size.mm:.4f}".rstrip("0").rstrip(".")]
    return out


def _csv(head: Iterable[str], rows: Iterable[Iterable[str]]) -> str:
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows(rows)
    return text.getvalue()
