"""A design in, its piece out; sizes read back in the unit of the design."""

from boardwright.piece.cuts import Groove, Hole, Notch, Rabbet
from boardwright.piece.records import Part, Piece
from boardwright.pipeline import check_text

IN = 25.4


def piece_of(text: str, units: str | None = None, allow: tuple[str, ...] = ()) -> Piece:
    """The piece of a design that has no error but those allowed."""
    result = check_text(text, units=units)
    wrong = [f.text() for f in result.findings if f.severity == "error" and f.code not in allow]
    assert not wrong, "\n".join(wrong)
    assert result.piece is not None
    return result.piece


def codes(text: str) -> list[str]:
    return [f.code for f in check_text(text).findings if f.severity == "error"]


def inches(*mm: float) -> list[float]:
    return [round(v / IN, 6) for v in mm]


def size(piece: Piece, id: str) -> list[float]:
    """Length, width, thickness of a part in the unit of the plan."""
    return [round(v / (IN if piece.units == "in" else 1.0), 6) for v in piece.part(id).size]


def grooves(part: Part) -> list[Groove]:
    return [c for c in part.cuts if isinstance(c, Groove)]


def rabbets(part: Part) -> list[Rabbet]:
    return [c for c in part.cuts if isinstance(c, Rabbet)]


def notches(part: Part) -> list[Notch]:
    return [c for c in part.cuts if isinstance(c, Notch)]


def holes(part: Part) -> list[Hole]:
    return [c for c in part.cuts if isinstance(c, Hole)]


def places(groove: Groove, whole: float) -> set[float]:
    """Where a channel lies, from the one end and from the other [in]."""
    return {round(groove.at / IN, 6), round((whole - groove.at - groove.width) / IN, 6)}


def two_parts(
    joint: str, at: str = "5", upright: str = "cherry", shelf: str = "cherry", work_to: str = "1/32"
) -> str:
    """An upright 12 x 10 and a shelf 20 x 10 that stands against its right face, its underside at a
    height."""
    return f"""
boardwright: 1
title: Two parts
units: in
work_to: {work_to}
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
  thin: {{sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}}
parts:
  upright: {{stock: {upright}, length: 12, width: 10, along: z, across: y, at: [0, 0, 0]}}
  shelf: {{stock: {shelf}, length: 20, width: 10, along: x, across: y, at: [stock.{upright}, 0, {at}]}}
joints:
  - {{first: upright, second: shelf, {joint}}}
"""
