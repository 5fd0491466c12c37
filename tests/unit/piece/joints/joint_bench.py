"""Loose parts laid any way round in the piece, joined, and tried: shut, whole, and free to come apart one way only.

A test describes parts in axes of its own: u, v, w. A turn lays those along the axes of the piece in one of 48 ways,
so that a joint is tried in every place and hand.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import permutations, product

from boardwright.core.poses import scaled
from boardwright.piece.records import Joint, Part, Piece
from boardwright.pipeline import check_text
from boardwright.solids import exact, mesh
from boardwright.solids.dry_fit import dry_fit

IN = 25.4
Turn = tuple[tuple[int, int, int], tuple[int, int, int]]
"""Which axis of the piece each of u, v, w lies along, and its sign."""

TURNS: tuple[Turn, ...] = tuple((p, s) for p in permutations(range(3)) for s in product((1, -1), repeat=3))
FEW: tuple[Turn, ...] = tuple((p, s) for p in permutations(range(3)) for s in ((1, 1, 1), (-1, -1, -1)))
"""Every way the axes can lie, each with all signs and with none."""
STRAIGHT: Turn = ((0, 1, 2), (1, 1, 1))

STOCKS = {
    "in": """
  cherry: {wood: cherry_black, thickness: 3/4}
  thick: {wood: cherry_black, thickness: 1 1/2}
  leg: {wood: cherry_black, thickness: 1 3/4}
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
""",
    "mm": """
  cherry: {wood: cherry_black, thickness: 20}
  thick: {wood: cherry_black, thickness: 40}
  leg: {wood: cherry_black, thickness: 45}
  ply: {sheet: hardwood_plywood, thickness: 18, measured: 18}
""",
}


@dataclass(frozen=True)
class Laid:
    """A part in the axes of a test: low and high corner in the unit of the plan; length and width axis; its cuts."""

    name: str
    stock: str
    low: tuple[float, float, float]
    high: tuple[float, float, float]
    axes: tuple[int, int]
    cuts: tuple[str, ...] = field(default=())


def text_of(parts: list[Laid], joints: list[str], turn: Turn = STRAIGHT, units: str = "in") -> str:
    """A design file with loose parts, laid so."""
    lines = ["boardwright: 1", "title: A joint", f"units: {units}"]
    lines.append(f"work_to: {'1/32' if units == 'in' else '0.5'}")
    lines.append("stock:" + STOCKS[units].rstrip())
    lines.append("parts:")
    where, signs = turn
    for p in parts:
        low = [0.0] * 3
        for i in range(3):
            low[where[i]] = p.low[i] if signs[i] > 0 else 100.0 - p.high[i]
        a, b = p.axes
        cuts = f", cuts: [{', '.join(_turned(c, signs[b] < 0) for c in p.cuts)}]" if p.cuts else ""
        lines.append(
            f"  {p.name}: {{stock: {p.stock}, length: {p.high[a] - p.low[a]}, width: {p.high[b] - p.low[b]}, "
            f"along: {'xyz'[where[a]]}, across: {'xyz'[where[b]]}, at: {low}{cuts}}}"
        )
    lines.append("joints:")
    lines += [f"  - {{{joint}}}" for joint in joints]
    return "\n".join(lines) + "\n"


def _turned(cut: str, swapped: bool) -> str:
    """A cut whose side is an edge, with the edges swapped."""
    if not swapped:
        return cut
    return (
        cut.replace("side: far_edge", "side: x")
        .replace("side: edge", "side: far_edge")
        .replace("side: x", "side: edge")
    )


def set_out(
    parts: list[Laid],
    joints: list[str],
    turn: Turn = STRAIGHT,
    units: str = "in",
    allow: tuple[str, ...] = (),
) -> Piece:
    """The piece of such a design; it has no error and no finding about its fit, but those allowed."""
    result = check_text(text_of(parts, joints, turn, units))
    wrong = [
        f.text()
        for f in result.findings
        if (f.severity == "error" or f.code.startswith("fit.")) and f.code not in allow
    ]
    assert not wrong, "\n".join(wrong)
    assert result.piece is not None
    return result.piece


def codes(parts: list[Laid], joints: list[str], units: str = "in") -> list[str]:
    """Codes of the errors of such a design."""
    return [f.code for f in check_text(text_of(parts, joints, units=units)).findings if f.severity == "error"]


def volume(piece: Piece, name: str) -> float:
    """Volume of a part in cubic units of the plan; both kernels must have found the same."""
    part = piece.part(f"parts.{name}")
    one, two = mesh.volume(part), exact.volume(exact.part_shape(part))
    assert abs(one - two) < 1e-4 * two, (name, one, two)
    return one / (IN**3 if piece.units == "in" else 1.0)


def fits(piece: Piece, holes: bool = False) -> None:
    """Nothing overlaps; every face that should touch touches all over, but for round holes where there are any.

    At a sharp edge a face that is pressed 0.02 mm loses as much of its width.
    """
    fit = dry_fit(piece)
    assert not fit.overlaps
    assert fit.touches
    for t in fit.touches:
        least = 0.75 if holes else 0.998
        assert least * t.area <= t.touching <= 1.001 * t.area, (t.joint, t.contact, t.area, t.touching)


def comes_apart(piece: Piece) -> None:
    """Every second part moves freely the ways that its joint says, and is stopped the other way."""
    parts = {p.id: p for p in piece.parts}
    for joint in piece.joints:
        assert joint.directions
        for way in joint.directions:
            moved = [_shared(parts, joint, way, by) for by in (0.05, 0.5, 2.0, 8.0, 40.0, 120.0)]
            assert max(moved) < 0.05, (joint.id, way, moved)
        first = joint.directions[0]
        assert _shared(parts, joint, scaled(first, -1.0), 3.0) > 1.0, (joint.id, "not stopped")


def _shared(parts: dict[str, Part], joint: Joint, way: tuple[float, float, float], by: float) -> float:
    second = mesh.part_solid(parts[joint.second]).translate(list(scaled(way, by)))
    return mesh.shared_volume(mesh.part_solid(parts[joint.first]), second)


def tried(piece: Piece, holes: bool = False) -> None:
    """All of it."""
    fits(piece, holes)
    comes_apart(piece)
