"""Kinds of parts as they stand in the plan: one record a letter."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from boardwright.core.lengths import Printer
from boardwright.piece.codec import cut_to_data
from boardwright.piece.cuts import Curve, Cut, Hole, Moulding, RaisedField, Taper, VGroove
from boardwright.piece.records import Part, Piece
from boardwright.plan.places import places_words, toward
from boardwright.plan.schema import Instance, PlanPart, Size, Sizes, Strip
from boardwright.plan.words import work_lines
from boardwright.solids.mesh import volume
from boardwright.stock.wording import plain_name

FITTED = frozenset({"back", "bar", "runner", "kicker", "guide"})
"""Words in the names of parts of the case that are fitted to what stands already (common practice)."""


def size(printer: Printer, mm: float) -> Size:
    """A length as value and text; in parentheses when it holds a measured thickness."""
    return Size(mm=round(mm, 6), text=printer.auxiliary(mm))


def exact(printer: Printer, mm: float) -> Size:
    """A length of a sum: never rounded, so that printed members add up to the printed whole."""
    return Size(mm=round(mm, 6), text=printer.size(mm))


def sizes(printer: Printer, lwt: tuple[float, float, float]) -> Sizes:
    """Length, width, thickness. A measured thickness prints as measured, without parentheses."""
    return Sizes(
        length=size(printer, lwt[0]),
        width=size(printer, lwt[1]),
        thickness=Size(mm=round(lwt[2], 6), text=printer.size(lwt[2])),
    )


def kinds(piece: Piece) -> dict[str, list[Part]]:
    """Letter → parts, in the order of the letters."""
    out: dict[str, list[Part]] = {}
    for part in piece.parts:
        out.setdefault(part.letter, []).append(part)
    return out


def letters_of(piece: Piece) -> dict[str, str]:
    """Part id → letter."""
    return {p.id: p.letter for p in piece.parts}


def plan_part(
    same: list[Part],
    printer: Printer,
    letters: Mapping[str, str],
    rough: Sizes | None,
    strips: list[Strip],
    preparation: list[str],
) -> PlanPart:
    """One kind of part.

    Args:
        same: all parts of the letter.
        printer: writes lengths.
        letters: part id → letter.
        rough: rough size, None when it is cut to size.
        strips: of its glue-up.
        preparation: lines that come before its cuts.
    """
    part = same[0]
    stock = part.stock
    cuts = [_lettered(c, letters) for c in part.cuts]
    return PlanPart(
        letter=part.letter,
        name=part.name,
        count=len(same),
        stock=stock.id,
        stock_name=plain_name(stock.name),
        material="wood" if stock.kind == "wood" else "sheet",
        finished=sizes(printer, part.size),
        rough=rough,
        glue_up=strips,
        grain=grain_words(part),
        cut_when=cut_when(part),
        toward=toward(same),
        preparation=preparation,
        work=work_lines(part, printer, letters),
        mirror_of=part.mirror_of,
        show=list(part.show),
        mass_kg=round(volume(part) * 1e-9 * stock.density, 4),
        cuts=[cut_to_data(c) for c in cuts],
        instances=[Instance(id=p.id, group=p.group, pose=p.pose.rows()) for p in same],
        places=places_words(p.id for p in same),
        drawing=f"part-{part.letter}",
    )


def _lettered(cut: Cut, letters: Mapping[str, str]) -> Cut:
    """A cut with letters in place of part ids."""
    if isinstance(cut, Hole):
        return replace(cut, marked_through=letters.get(cut.marked_through, ""))
    if isinstance(cut, Taper | Moulding | RaisedField | Curve | VGroove):
        return cut
    return replace(cut, holds=letters.get(cut.holds, ""))


def grain_words(part: Part) -> str:
    """Which way the grain runs: `long`, with the length, or `any` for a sheet without one."""
    if part.stock.kind == "sheet" and not part.stock.grain:
        return "any"
    return "long"


def cut_when(part: Part) -> Literal["to list", "measure first"]:
    """Whether a part can be cut from the list, or is measured on the case first: drawers, backs, strips."""
    if part.group != "case" or FITTED & set(part.name.split()):
        return "measure first"
    return "to list"
