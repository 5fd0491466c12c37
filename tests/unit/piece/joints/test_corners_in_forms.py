"""Fingers and dovetails in drawers and cases: nothing overlaps, every joint closes, everything goes together."""

import pytest
from manifold3d import Manifold

from boardwright.piece.cuts import Groove, Pins, Tails
from boardwright.piece.records import Piece
from boardwright.pipeline import Result, check_text
from boardwright.solids.mesh import part_solid

DRAWER = """
boardwright: 1
title: A drawer
units: in
work_to: 1/32
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
  half: {side}
  thin: {{sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}}
case: {{width: 20, height: 9, depth: 18, stock: ply, back: {{set: none}}, inside: {{drawer: {{}}}}}}
drawers:
  front: {{stock: cherry, {front}}}
  sides: {{stock: half}}
  back: {{joint: {back}}}
  bottom: {{stock: thin{bottom}}}
  runs_on: {runs}
  runners: {{stock: ply}}
"""
SIDES = ["{wood: maple_sugar, thickness: 1/2}", "{sheet: hardwood_plywood, thickness: 1/2, measured: 0.472}"]


def manifold_box(low: tuple[float, float, float], high: tuple[float, float, float]) -> Manifold:
    """A box between two corners [mm]."""
    return Manifold.cube([b - a for a, b in zip(low, high, strict=True)]).translate(list(low))


def drawer(
    front: str, back: str = "dado", runs: str = "runners", bottom: str = "", side: str = SIDES[0]
) -> Result:
    return check_text(DRAWER.format(front=front, back=back, runs=runs, bottom=bottom, side=side))


def sound(result: Result) -> Piece:
    """The piece; no error, and nothing said of its fit or of putting it together."""
    wrong = [
        f.text() for f in result.findings if f.severity == "error" or f.code.startswith(("fit.", "assembly."))
    ]
    assert not wrong, "\n".join(wrong)
    assert result.piece is not None
    return result.piece


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("back", ["dado", "dovetail", "finger", "half_blind", "sliding_dovetail"])
@pytest.mark.parametrize(
    "front",
    [
        "joint: half_blind",
        "joint: dovetail",
        "joint: finger",
        "made: applied, joint: dovetail",
        "made: applied, joint: finger",
    ],
)
def test_a_drawer_with_such_corners(front: str, back: str, side: str) -> None:
    piece = sound(drawer(front, back, side=side))
    # the bottom lies in its grooves all round, or passes under the back
    held = {j.first.rpartition(".")[2] for j in piece.joints if j.second == "drawer.1.bottom"}
    behind = {"back"} if back != "sliding_dovetail" else set()
    assert held == {"left", "right", "box_front" if "applied" in front else "front"} | behind


@pytest.mark.parametrize("bottom", [", set: rabbet", ", set: planted", ", back: under"])
@pytest.mark.parametrize("kind", ["dovetail", "finger"])
def test_every_way_to_set_the_bottom(bottom: str, kind: str) -> None:
    sound(drawer(f"joint: {kind}", kind, bottom=bottom))
    sound(drawer("joint: half_blind", kind, bottom=bottom))


@pytest.mark.parametrize("front", ["joint: half_blind", "joint: dovetail", "joint: dovetail, made: applied"])
def test_the_sides_of_a_drawer_have_the_tails(front: str) -> None:
    """A pull on the front cannot open the joint: tails on the sides, pins on front and back (common practice)."""
    piece = sound(drawer(front, "dovetail"))
    tails = {p.id for p in piece.parts if any(isinstance(c, Tails) for c in p.cuts)}
    pins = {p.id for p in piece.parts if any(isinstance(c, Pins) for c in p.cuts)}
    assert tails == {"drawer.1.left", "drawer.1.right"}
    assert pins == {"drawer.1.back", "drawer.1.box_front" if "applied" in front else "drawer.1.front"}
    for joint in piece.joints:
        if joint.kind in ("dovetail", "half_blind") and joint.first == "drawer.1.front":
            assert all(way[1] == 0 for way in joint.directions)  # the side comes off sideways, never backward


def test_the_groove_of_a_front_ends_in_a_tail() -> None:
    """Half-blind sides, bottom 3/8 up and 0.2 thick: nothing of its groove is seen, and nothing is said."""
    result = drawer("joint: half_blind", bottom=", back: under")
    piece = sound(result)
    assert "joint.groove-shows" not in {f.code for f in result.findings}
    front = piece.part("drawer.1.front")
    side = piece.part("drawer.1.left")
    for pins in (c for c in front.cuts if isinstance(c, Pins)):
        low = next(c for c in front.cuts if isinstance(c, Groove))
        # the groove is measured from the same edge as the sockets
        assert any(a <= low.at + 1e-6 and low.at + low.width <= b + 1e-6 for a, b in pins.sockets)
    assert any(isinstance(c, Tails) for c in side.cuts)


def test_a_front_that_interlocks_ends_flush_with_the_sides() -> None:
    """Bars leave 1/16 beside the box and the reveal of the front is 1/16 (tables): the same width in any case."""
    piece = sound(drawer("joint: half_blind, reveal: 1/32", runs="bars"))
    front, left, right = (piece.part(f"drawer.1.{n}").box for n in ("front", "left", "right"))
    assert (front.low[0], front.high[0]) == pytest.approx((left.low[0], right.high[0]))
    rabbeted = sound(drawer("joint: rabbet, reveal: 1/32", runs="bars"))
    assert rabbeted.part("drawer.1.front").box.low[0] < rabbeted.part("drawer.1.left").box.low[0] - 0.1


@pytest.mark.parametrize(
    ("front", "back", "runs"),
    [
        ("made: applied, joint: half_blind", "dado", "runners"),  # the tails would be on the wrong board
        ("made: one_piece, joint: dovetail", "dado", "slides"),  # the front reaches 1/2 in beyond the sides
        ("joint: sliding_dovetail", "dado", "runners"),  # no wood beyond
    ],
)
def test_where_such_a_joint_cannot_be(front: str, back: str, runs: str) -> None:
    assert "joint.cannot-be-there" in {f.code for f in drawer(front, back, runs).findings}


CASE = """
boardwright: 1
title: A case
units: {units}
work_to: {step}
stock:
  board: {board}
  thin: {{sheet: hardwood_plywood, thickness: 1/4 in, measured: 0.2 in}}
case:
  width: {width}
  height: {height}
  depth: {depth}
  stock: board
  through: {through}
  top: {{joint: {top}, kind: {kind}}}
  bottom: {{joint: {bottom}}}
  back: {{set: {back}, stock: thin}}
  inside: {{shelves: {{count: 1}}}}
"""
BOARDS = {
    "in": ("{wood: cherry_black, thickness: 3/4}", "1/32", 30, 24, 12),
    "mm": ("{sheet: birch_plywood, thickness: 18, measured: 17.7}", "0.5", 760, 600, 300),
}


def case(
    top: str, bottom: str, through: str, back: str = "rabbet", units: str = "in", kind: str = "full"
) -> Result:
    board, step, width, height, depth = BOARDS[units]
    return check_text(
        CASE.format(
            units=units,
            step=step,
            board=board,
            width=width,
            height=height,
            depth=depth,
            through=through,
            top=top,
            bottom=bottom,
            kind=kind,
            back=back,
        )
    )


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("through", ["sides", "top_and_bottom"])
@pytest.mark.parametrize("back", ["rabbet", "groove", "none"])
@pytest.mark.parametrize(
    ("top", "bottom"),
    [("dovetail", "dovetail"), ("finger", "half_blind"), ("half_blind", "finger"), ("mitre", "dovetail")],
)
def test_a_case_with_such_corners(top: str, bottom: str, back: str, through: str, units: str) -> None:
    piece = sound(case(top, bottom, through, back, units))
    assert {j.kind for j in piece.joints} >= {top, bottom, "dado"}
    if back == "none":
        return
    around = {j.first for j in piece.joints if j.second == "case.back"}
    around |= {j.second for j in piece.joints if j.first == "case.back"}
    assert around >= {"case.side.left", "case.side.right"}


@pytest.mark.parametrize("through", ["sides", "top_and_bottom"])
def test_the_sides_of_a_case_have_the_tails(through: str) -> None:
    """What stands in the case cannot push the bottom off downwards: tails on the uprights (common practice)."""
    piece = sound(case("dovetail", "dovetail", through))
    assert {p.id for p in piece.parts if any(isinstance(c, Tails) for c in p.cuts)} == {
        "case.side.left",
        "case.side.right",
    }


@pytest.mark.parametrize("kind", ["dovetail", "half_blind", "finger"])
def test_rails_at_the_top_of_a_case(kind: str) -> None:
    sound(case(kind, "dovetail", "sides", kind="rails"))


RAILS = """
boardwright: 1
title: Two rails over the sides
units: {units}
stock:
  walnut: {{wood: walnut_black, thickness: {thick}}}
  thin: {{sheet: birch_plywood, thickness: 6.5 mm, measured: 6.4 mm}}
case:
  width: 600 mm
  height: 500 mm
  depth: 350 mm
  through: top_and_bottom
  top: {{kind: rails, joint: {top}}}
  bottom: {{kind: {bottom}, joint: {top}}}
  back: {{set: {back}}}
"""


@pytest.mark.parametrize(("units", "thick"), [("in", "3/4"), ("mm", "20")])
@pytest.mark.parametrize("back", ["none", "rabbet", "groove"])
@pytest.mark.parametrize("bottom", ["full", "rails"])
@pytest.mark.parametrize("kind", ["dovetail", "{kind: dovetail, tails_on: first}", "half_blind", "finger"])
def test_rails_over_the_ends_of_sides(kind: str, bottom: str, back: str, units: str, thick: str) -> None:
    """Both rails interlock with one end of the side; between them the end lies at their lower face."""
    piece = sound(check_text(RAILS.format(units=units, thick=thick, top=kind, bottom=bottom, back=back)))
    rail, side = piece.part("case.top.front"), piece.part("case.side.left")
    front, rear = rail.box.high[1], piece.part("case.top.rear").box.low[1]
    between = manifold_box((side.box.low[0], front, rail.box.low[2]), (side.box.high[0], rear, 1e4))
    assert float((part_solid(side) ^ between).volume()) < 1e-3


@pytest.mark.parametrize(("units", "thick"), [("in", "3/4"), ("mm", "20")])
@pytest.mark.parametrize("back", ["none", "rabbet", "groove", "surface"])
@pytest.mark.parametrize("how", ["none", "spline", "keys", "dowels"])
def test_mitred_cases_with_every_back(how: str, back: str, units: str, thick: str) -> None:
    """A spline in a corner of the case ends before the back."""
    kind = f"{{kind: mitre, with: {how}}}"
    text = RAILS.format(units=units, thick=thick, top=kind, bottom="full", back=back)
    sound(
        check_text(
            text.replace("kind: rails", "kind: full").replace("through: top_and_bottom", "through: sides")
        )
    )
