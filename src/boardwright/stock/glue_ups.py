"""Wide parts glued up of strips: how wide a strip may be, how many there are, what is worth knowing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import INCH, Printer, settle
from boardwright.piece.records import Part
from boardwright.stock.choices import LEAST_STRIP, Allowances
from boardwright.stock.instance import StockSize
from boardwright.stock.records import RoughPart, ShopChoices
from boardwright.tables.bundle import Tables

BARK_SIDES = {
    "alternate": "bark side up and down in turn (common practice)",
    "same": "bark side to the show face on all of them (`shop.bark_sides`)",
    "any": "as they look best (`shop.bark_sides`)",
}
USUAL_STRIP = {"in": 6 * INCH, "mm": 150.0}
"""Widest strip of a glue-up when the shop says nothing [mm]: wider boards cup more (common practice)."""


@dataclass(frozen=True, slots=True)
class StripLimit:
    """How wide one board of a part may be.

    Attributes:
        strip: widest strip of a glue-up, as it is cut [mm].
        board: widest piece that any board gives [mm].
        rule: where the limit comes from, for people.
    """

    strip: float
    board: float
    rule: str


@dataclass(frozen=True, slots=True)
class GlueUp:
    """Strips of one part: how many, width of each as cut [mm], and the sum for people."""

    strips: int
    width: float
    sum: str


def strip_limit(
    boards: Sequence[StockSize], on_hand: bool, allow: Allowances, printer: Printer
) -> StripLimit:
    """The widest strip that is cut from boards.

    Args:
        boards: sizes that can be had; none gives the usual strip.
        on_hand: they are the shop's own, not assumed.
        allow: allowances; `strip_max` wins when it is given.
        printer: prints sizes of the plan.
    """
    widest = max((b.width - 2 * b.trim_width for b in boards), default=USUAL_STRIP[printer.units])
    widest = settle(widest, printer.step, "down")
    if allow.strip_max is not None:
        limit, rule = min(allow.strip_max, widest), "`shop.strip_max`"
    elif on_hand:
        limit, rule = widest, "widest board on hand, less its edges"
    else:
        limit = min(USUAL_STRIP[printer.units], widest)
        rule = "common practice: wider boards cup more"
    return StripLimit(
        limit,
        widest,
        f"parts too wide for one board are glued up of strips to {printer.text(limit)} wide ({rule})",
    )


def glue_up(width: float, limit: StripLimit, allow: Allowances, printer: Printer) -> GlueUp | None:
    """Equal strips for a part that is too wide for one board.

    Args:
        width: finished width of the part [mm].
        limit: how wide one board may be.
        allow: allowances.
        printer: prints sizes of the plan.

    Returns:
        The fewest strips of which each stays within the limit; None when one board does.
    """
    if width + allow.width <= limit.board + 1e-6:
        return None
    joints = 2 * allow.edge_joint
    room = max(settle(limit.strip, printer.step, "down") - joints, LEAST_STRIP / 2)
    n = max(2, ceil((width + allow.panel_width) / room - 1e-9))
    strip = settle((width + allow.panel_width) / n + joints, printer.step, "up")
    s = printer.size
    text = f"({s(width)} + {s(allow.panel_width)} + {n} × 2 × {s(allow.edge_joint)}) / {n} = {s(strip)}"
    return GlueUp(n, strip, text)


def stage_findings(rough: Sequence[RoughPart], tables: Tables) -> list[Finding]:
    """Glue-ups of more boards than one glue-up takes.

    Args:
        rough: rough sizes of the piece.
        tables: number of boards in one glue-up, open time of the glue.
    """
    most = tables.figure("glue_up_boards")
    glue = tables.glues["pva_yellow"]
    low = f"{most.low:g} to " if most.low is not None and most.low < most.value else ""
    found = []
    for part in rough:
        if part.strips <= most.value:
            continue
        first, second = ceil(part.strips / 2), part.strips // 2
        found.append(
            Finding(
                "stock.glue-up-stages",
                Severity.NOTE,
                f"part {part.letter} ({part.name}) is glued up of {part.strips} strips",
                found=f"{part.strips} strips, {part.strips - 1} glue lines",
                expected=f"at most {low}{most.value:g} boards in one glue-up; "
                f"{glue.name} stays open about {glue.open_time:g} min",
                source=f"{most.reason}; open time: {glue.source}",
                remedy=f"glue {first} and {second} strips first, then the two halves to each other",
                parts=part.parts,
            )
        )
    return found


def bark_rule(
    rough: Sequence[RoughPart], kinds: Mapping[str, Sequence[Part]], choices: ShopChoices
) -> tuple[str, ...]:
    """How strips of panels are turned: one line; none when nothing flat sawn is glued up.

    Args:
        rough: rough sizes of the piece.
        kinds: parts by letter.
        choices: what the shop wants.
    """
    flat = [r.letter for r in rough if r.strips > 1 and kinds[r.letter][0].stock.sawn != "quarter"]
    if not flat:
        return ()
    return (f"strips of {', '.join(flat)}: {BARK_SIDES[choices.bark_sides]}",)
