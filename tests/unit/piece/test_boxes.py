"""Boxes: square, many-sided, sloping; volumes against closed forms, dry fit, letters, refusals."""

import math

import pytest
from shape import misfits

from bench import IN, codes, inches, piece_of, size
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import dry_fit
from boardwright.solids.mesh import part_solid

HEAD = """
boardwright: 1
title: Box
units: in
stock:
  board: {wood: pine_sugar, thickness: 1/2}
  ply: {sheet: birch_plywood, thickness: 1/4, measured: 1/4}
"""
MM = """
boardwright: 1
title: Box
units: mm
stock:
  board: {wood: pine_sugar, thickness: 12}
  ply: {sheet: birch_plywood, thickness: 6, measured: 6}
"""


def volume(piece, start: str = "box.") -> float:
    return sum(part_solid(p).volume() for p in piece.parts if p.id.startswith(start))


def closes(piece) -> None:
    """No overlap, and every planned face touches but for what grooves and holes take of it."""
    fit = dry_fit(piece)
    assert fit.overlaps == ()
    assert all(t.touching > 0.8 * t.area for t in fit.touches), min(t.touching / t.area for t in fit.touches)


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 12, 16])
@pytest.mark.parametrize("slope", [0, 10, 25])
def test_a_mitred_shell_holds_what_two_frusta_leave_between_them(sides: int, slope: float) -> None:
    """Area of a regular polygon n tan(pi/n) r2; over the height r changes by tan s, so Simpson's rule is exact."""
    if sides == 4 and slope == 0:
        return
    width, height, t = 400.0, 120.0, 12.0
    piece = piece_of(
        MM
        + f"box: {{width: {width}, height: {height}, sides: {sides}, slope: {slope}, bottom: {{set: none}}}}"
    )
    tan = math.tan(math.radians(slope))
    wall = t / math.cos(math.radians(slope))

    def ring(z: float) -> float:
        outer = width / 2 - (height - z) * tan
        return sides * math.tan(math.pi / sides) * (outer**2 - (outer - wall) ** 2)

    held = height / 6 * (ring(0) + 4 * ring(height / 2) + ring(height))
    assert volume(piece) == pytest.approx(held, rel=1e-6)
    assert all(t.touching == pytest.approx(t.area, rel=0.01) for t in dry_fit(piece).touches)


def test_a_hopper_with_square_edges_is_as_wide_as_its_boards() -> None:
    """A board of width w with square edges, mitred: w t times its mean length at half of its width and thickness."""
    s, wide = math.radians(15), None
    piece = piece_of(
        HEAD + "box: {width: 12, depth: 9, height: 6, slope: 15, edges: square, bottom: {set: none}}"
    )
    front = piece.part("box.front")
    wide = front.size[1] / IN
    top = wide * math.cos(s)
    assert top + 0.5 * math.sin(s) <= 6 + 1e-9
    mean = [w - 2 * (top - wide / 2 * math.cos(s)) * math.tan(s) - 2 * 0.25 / math.cos(s) for w in (12, 9)]
    # The middle of the section lies half a thickness in along the normal: 0.25/cos s at that height, less the height
    # it rises by, 0.25 sin s, times tan s.
    mean = [m + 2 * 0.25 * math.sin(s) * math.tan(s) for m in mean]
    assert volume(piece) / IN**3 == pytest.approx(2 * wide * 0.5 * sum(mean), rel=1e-6)
    closes(piece)


@pytest.mark.parametrize(
    "keys",
    [
        "width: 12, depth: 8, height: 5",
        "width: 12, depth: 8, height: 5, corner: butt, bottom: {set: inside}",
        "width: 12, depth: 8, height: 5, bottom: {set: planted}",
        "width: 12, depth: 8, height: 5, dividers: {across: 3}",
        "width: 12, depth: 8, height: 5, dividers: {across: 2, along: 1}",
        "width: 12, depth: 8, height: 5, corner: mitre",
        "width: 12, depth: 8, height: 5, corner: {kind: mitre, with: spline}",
        "width: 12, depth: 8, height: 6, lid: {made: sawn, at: 4}",
        "width: 12, height: 6, sides: 6",
        "width: 12, height: 6, sides: 5, bottom: {set: inside}",
        "width: 12, height: 6, sides: 8, slope: 12",
        "width: 12, height: 6, sides: 3, slope: 12, bottom: {set: planted}",
        "width: 12, depth: 9, height: 6, slope: 20, slope_ends: 8",
        "width: 12, depth: 9, height: 6, slope: 20, slope_ends: 0",
        "width: 12, depth: 9, height: 6, slope: 15, corner: butt, bottom: {set: planted}",
        "width: 12, depth: 9, height: 6, slope: 15, corner: butt, bottom: {up: 1/2}",
    ],
)
def test_a_box_closes(keys: str) -> None:
    result = check_text(HEAD + f"box: {{{keys}}}")
    assert misfits(result.findings) == []
    assert result.piece is not None
    closes(result.piece)


def test_sides_of_one_shape_share_a_letter() -> None:
    eight = piece_of(HEAD + "box: {width: 12, height: 6, sides: 8, slope: 12}")
    assert len({p.letter for p in eight.parts if ".side." in p.id}) == 1
    four = piece_of(HEAD + "box: {width: 12, depth: 9, height: 6, slope: 12}")
    letter = {p.id: p.letter for p in four.parts}
    assert letter["box.front"] == letter["box.rear"] != letter["box.left"] == letter["box.right"]


def test_sizes_of_a_square_box() -> None:
    """12 x 8 outside, sides 1/2: rabbets half of the front deep, the bottom 1/4 in deep grooves, 1/32 short."""
    piece = piece_of(HEAD + "box: {width: 12, depth: 8, height: 5}")
    assert size(piece, "box.front") == [12, 5, 0.5]
    assert size(piece, "box.left") == [8 - 2 * 0.5 + 2 * 0.25, 5, 0.5]
    assert size(piece, "box.bottom") == [12 - 1 + 2 * (0.25 - 1 / 32), 8 - 1 + 2 * (0.25 - 1 / 32), 0.25]
    assert inches(*piece.outside.high) == [12, 8, 5]


def test_a_sawn_lid_loses_the_kerf() -> None:
    piece = piece_of(
        HEAD + "shop: {kerf: 1/8}\nbox: {width: 12, depth: 8, height: 6, lid: {made: sawn, at: 4}}"
    )
    low, high = piece.part("box.front"), piece.part("box.lid.front")
    assert inches(low.box.high[2], high.box.low[2], high.box.high[2]) == [4, 4, 5.875]
    assert inches(low.size[1] + 3.175 + high.size[1]) == [6]


LIDDED = """
boardwright: 1
title: Box with a lid
units: {units}
stock:
  walnut: {{wood: walnut_black, thickness: {thick}}}
  ply: {{sheet: birch_plywood, thickness: 6.5 mm, measured: 6.3 mm}}
box: {{width: 300 mm, depth: 200 mm, height: 150 mm, corner: {corner}, lid: {{made: sawn, at: 105 mm{hung}}}}}
"""


@pytest.mark.parametrize(("units", "thick"), [("in", "1/2"), ("mm", "14"), ("mm", "19")])
@pytest.mark.parametrize(
    "hung", ["", ", hinges: butt, stay: true", ", hinges: continuous, opens: 110", ", hinges: {count: 3}"]
)
@pytest.mark.parametrize(
    "corner",
    ["rabbet", "butt", "finger", "dovetail", "half_blind", "mitre", "{kind: mitre, with: spline}",
     "{kind: mitre, with: keys}"],
)  # fmt: skip
def test_a_sawn_lid_lies_on_its_box_or_turns_on_hinges(
    corner: str, hung: str, units: str, thick: str
) -> None:
    """Every wall of the lid touches the one under it; hung, it clears the box to its full turn (dry fit)."""
    result = check_text(LIDDED.format(units=units, thick=thick, corner=corner, hung=hung))
    assert [f.text() for f in result.findings if f.severity != "note"] == []
    piece = result.piece
    assert piece is not None
    for side in ("front", "right", "rear", "left"):
        under, over = piece.part(f"box.{side}").box, piece.part(f"box.lid.{side}").box
        assert over.low[2] == pytest.approx(under.high[2])
    hinges = [h for h in piece.hardware if h.table_key.endswith("_hinge")]
    assert len(hinges) == (0 if not hung else 1 if "continuous" in hung else 3 if "count" in hung else 2)
    assert [m.turn for m in piece.motions] == ([] if not hung else [110] if "opens" in hung else [95])
    floating = [j for j in piece.joints if j.kind == "rests"]
    assert len(floating) == (0 if hung else 4)


def test_cup_hinges_hold_no_box_lid() -> None:
    found = check_text(LIDDED.format(units="mm", thick=14, corner="rabbet", hung=", hinges: cup")).findings
    assert [f.code for f in found if f.severity == "error"] == ["door.hinge-no-room"]


def test_the_mouth_of_many_sides_stands_at_the_corner_of_the_piece() -> None:
    """From flat to flat 12; over the corners of a hexagon that stands on a flat 12 / cos 30."""
    outside = piece_of(HEAD + "box: {width: 12, height: 6, sides: 6, slope: 10}").outside
    assert inches(*outside.low) == [0, 0, 0]
    assert inches(*outside.high) == pytest.approx([12 / math.cos(math.pi / 6), 12, 6], abs=1e-5)


@pytest.mark.parametrize(
    ("keys", "code"),
    [
        ("width: 1, depth: 1, height: 500", "box.size"),
        ("width: 3, depth: 1.75, height: 5", "box.no-room"),
        ("width: 8, height: 8, slope: 30", "box.no-room"),
        ("width: 8, depth: 8, height: 3, bottom: {up: 2}", "box.no-room"),
        ("width: 8, depth: 8, height: 3, lid: {made: sawn, at: 2 3/4}", "box.no-room"),
        ("width: 8, depth: 8, height: 3, dividers: {across: 12}", "box.no-room"),
        ("width: 12, height: 6, slope: 10, corner: rabbet", "box.cannot-be-there"),
        ("width: 12, height: 6, slope: 10, bottom: {set: groove}", "box.cannot-be-there"),
        ("width: 12, height: 6, sides: 6, corner: butt", "box.cannot-be-there"),
        ("width: 12, height: 6, slope: 10, slope_ends: 5, edges: square", "box.cannot-be-there"),
        ("width: 12, height: 6, sides: 6, slope: 10, slope_ends: 5", "box.cannot-be-there"),
        ("width: 12, height: 6, sides: 6, dividers: {across: 1}", "box.cannot-be-there"),
        ("width: 12, height: 6, slope: 9, lid: {made: sawn, at: 4}", "box.cannot-be-there"),
        ("width: 12, height: 6, slope: 9, corner: {kind: mitre, with: keys}", "box.cannot-be-there"),
    ],
)
def test_what_makes_no_box_is_told(keys: str, code: str) -> None:
    assert code in codes(HEAD + f"box: {{{keys}}}")


def test_all_wrong_sizes_are_told_at_once() -> None:
    assert codes(HEAD + "box: {width: 1, depth: 1, height: 500}").count("box.size") == 3


@pytest.mark.parametrize("keys", ["height: 8, slope: 35, sides: 6", "height: 8, slope: 30, slope_ends: 20"])
def test_the_number_that_gives_a_hopper_an_inside_is_true(keys: str) -> None:
    """Made as much wider and deeper as the remedy says, it has one."""
    depth = "" if "sides" in keys else "depth: SIZE, "
    text = HEAD + f"box: {{width: SIZE, {depth}{keys}, bottom: {{set: none}}}}"
    wrong = [f for f in check_text(text.replace("SIZE", "9")).findings if f.code == "box.no-room"]
    said = wrong[0].remedy.removeprefix("make the box ").split(" in wider")[0]
    assert codes(text.replace("SIZE", f"9 + {said}")) == []


def test_a_mitred_box_of_a_measured_sheet_keeps_its_outside() -> None:
    """Sides 0.47 thick: mitred, all four are cut to the outside sizes, and only those are on the step."""
    text = HEAD.replace("thickness: 1/4, measured: 1/4", "thickness: 1/2, measured: 0.47")
    piece = piece_of(
        text + "box: {width: 12, depth: 8, height: 5, stock: ply, corner: mitre, bottom: {set: none}}"
    )
    assert inches(*piece.outside.low, *piece.outside.high) == [0, 0, 0, 12, 8, 5]
    fit = dry_fit(piece)
    assert all(t.touching == pytest.approx(t.area, rel=0.01) for t in fit.touches)


def test_a_rabbeted_box_of_a_measured_sheet_is_cut_on_the_step() -> None:
    text = HEAD.replace("thickness: 1/4, measured: 1/4", "thickness: 1/2, measured: 0.47")
    piece = piece_of(text + "box: {width: 12, depth: 8, height: 5, stock: ply, bottom: {set: none}}")
    assert size(piece, "box.front")[:2] == [12, 5]
    closes(piece)
    for part in piece.parts:
        steps = [v / piece.step for v in part.size[:2]]
        assert steps == pytest.approx([round(s) for s in steps])
