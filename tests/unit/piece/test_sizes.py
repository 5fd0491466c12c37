"""Sizes that lean on others: names, stocks, parts; loose parts with their own cuts; a change of units."""

import pytest

from bench import codes, grooves, holes, inches, notches, piece_of, rabbets, size
from boardwright.pipeline import check_text

HEAD = """
boardwright: 1
title: Sizes
units: {units}
work_to: {work_to}
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4 in, measured: {measured}}}
"""


def head(units: str = "in", work_to: str = "1/32", measured: str = "23/32 in") -> str:
    return HEAD.format(units=units, work_to=work_to, measured=measured)


CASE = """
sizes: {kick: 2 1/2}
case: {width: 36, height: 30, depth: 12, stock: ply, bottom: {up: kick}, back: {set: none}}
parts:
  kickboard:
    stock: ply
    length: case.inside.width
    width: kick
    along: x
    across: z
    at: [case.side.left.right, 2, 0]
  label:
    stock: ply
    length: parts.kickboard.length / 2
    width: 2 * stock.ply
    along: x
    across: z
    at: [0, 20, 0]
  rest:
    stock: ply
    length: case.width - 2 * stock.ply
    width: 3
    along: x
    across: y
    at: [0, 30, case.bottom.top]
"""


def test_names_of_sizes_stocks_and_parts() -> None:
    piece = piece_of(head() + CASE)
    # 36 - 2 x 23/32 = 34 9/16
    assert size(piece, "parts.kickboard")[:2] == [34.5625, 2.5]
    # half of it, 17 9/32; 2 x 23/32 = 1 7/16
    assert size(piece, "parts.label")[:2] == [17.28125, 1.4375]
    assert size(piece, "parts.rest")[0] == 34.5625
    # the kickboard stands against the inside of the left side; the rest on the bottom: 2 1/2 + 23/32
    assert inches(piece.part("parts.kickboard").box.low[0], piece.part("parts.rest").box.low[2]) == [
        0.71875,
        3.21875,
    ]


def test_a_ring_of_sizes_and_an_unknown_name_are_refused() -> None:
    part = "parts: {a: {stock: ply, length: %s, width: 3, along: x, across: y, at: [0, 0, 0]}}\n"
    assert "size.circular" in codes(head() + "sizes: {one: two + 1, two: one - 1}\n" + part % "one")
    assert codes(head() + part % "case.inside.width") == ["size.unknown-name"]


CUTS = """
parts:
  plate:
    stock: ply
    length: 10
    width: 6
    along: x
    across: y
    at: [0, 0, 0]
    cuts:
      - {kind: groove, side: face, along: width, at: 2, width: 1/2, depth: 1/4}
      - {kind: groove, side: face, along: length, at: 1, width: 1/4, depth: 1/8, start: 4, stop: 9}
      - {kind: rabbet, side: face, edge: far_edge, width: 1/2, depth: 3/8}
      - {kind: notch, end: far_end, edge: edge, length: 1 1/2, width: 3/4}
      - {kind: hole, side: face, from_end: 5, from_edge: 3, diameter: 3/8, depth: 1/2}
      - {kind: hole, side: face, from_end: 7, from_edge: 3, diameter: 1/4}
"""


def test_cuts_of_a_loose_part() -> None:
    part = piece_of(head() + CUTS).part("parts.plate")
    across, along = sorted(grooves(part), key=lambda g: -g.along)
    # it may be laid the other way round: from one end or from the other
    assert inches(across.at)[0] in (2.0, 7.5)  # 10 - 2 - 1/2
    assert inches(across.width, across.depth) == [0.5, 0.25]
    assert inches(along.end - along.start, along.width, along.depth) == [5.0, 0.25, 0.125]
    assert [inches(r.width, r.depth) for r in rabbets(part)] == [[0.5, 0.375]]
    assert [inches(n.length, n.width) for n in notches(part)] == [[1.5, 0.75]]
    blind, through = sorted(holes(part), key=lambda h: h.through)
    assert inches(blind.diameter, blind.depth, through.diameter) == [0.375, 0.5, 0.25]
    assert through.through
    # by hand, in the piece: 5 from the left, 3 from the front
    x, y, _ = part.pose.point((*blind.at, 0.0))
    assert inches(x, y) == [5.0, 3.0]


@pytest.mark.parametrize(
    ("cut", "code"),
    [
        ("{kind: groove, side: face, along: width, at: 9 3/4, width: 1/2, depth: 1/4}", "part.cut-outside"),
        ("{kind: hole, side: edge, from_end: 2, diameter: 1/2}", "part.cut-incomplete"),
        ("{kind: hole, side: face, from_end: 1/16, from_edge: 3, diameter: 3/8}", "part.cut-outside"),
        ("{kind: notch, end: end, edge: edge, length: 10, width: 1}", "part.cut-outside"),
        ("{kind: rabbet, side: face, edge: edge, width: 6, depth: 1/4}", "part.cut-outside"),
    ],
)
def test_a_cut_outside_its_part_is_refused(cut: str, code: str) -> None:
    start = CUTS[: CUTS.index("      - {kind: groove")]
    assert code in codes(head() + start + f"      - {cut}\n")


def test_a_stack_of_layers_follows_the_measured_sheet() -> None:
    """Seven layers of "1/2 in" plywood, meant to make 3 1/2 (case from practice, recomputed).

    A mean of 0.4643 makes 3.25; true 12 mm makes 84 mm (3.307 in); +/- 0.005 in.
    """
    rod = (
        "parts: {rod: {stock: ply, length: 7 * stock.ply, width: 3 in, along: x, across: y, at: [0, 0, 0]}}\n"
    )
    assert size(piece_of(head(measured="0.4643 in") + rod), "parts.rod")[0] == pytest.approx(3.25, abs=0.005)
    assert size(piece_of(head("mm", "0.5", "12 mm") + rod), "parts.rod")[0] == 84.0


def test_grooves_that_must_agree_are_dimensioned_from_the_middle() -> None:
    """Divider grooves 5 wide at a pitch of 86 in parts of 683 and 680 mm, both centred (case from practice,
    recomputed): from the end they would lean 1.5 mm; from the middle 258 + 2.5 + 81 = 341.5 = 683 / 2.
    """
    channel = "kind: groove, side: back, along: width, width: 5, depth: 6"
    plate = "stock: ply, width: 60, along: x, across: y"
    text = head("mm", "0.5", "18 mm") + "parts:\n"
    for name, length, z in (("shelf", 683, 0), ("rail", 680, 300)):
        cuts = ", ".join(f"{{{channel}, at: parts.{name}.length / 2 + {86 * k} - 2.5}}" for k in range(-3, 4))
        at = f"[{(683 - length) / 2}, 0, {z}]"
        text += f"  {name}: {{{plate}, length: {length}, at: {at}, cuts: [{cuts}]}}\n"
    piece = piece_of(text)
    middles = {}
    for name in ("shelf", "rail"):
        part = piece.part(f"parts.{name}")
        middles[name] = sorted(
            round(part.pose.point((g.at + g.width / 2, 0, 0))[0], 6) for g in grooves(part)
        )
    assert middles["shelf"] == middles["rail"]
    assert middles["shelf"][0] - 2.5 == pytest.approx(81.0)


SLATS = """
boardwright: 1
title: Slats
units: mm
work_to: 0.5
stock: {ply: {sheet: hardwood_plywood, thickness: 18 mm, measured: 18}}
case:
  width: 690
  height: 400
  depth: 300
  stock: ply
  back: {set: none}
  inside: {columns: [{open: yes}, {open: yes}]}
"""


def test_a_change_of_units_settles_what_is_given_and_recomputes_the_rest() -> None:
    """Rounding every number by itself breaks the sums (case from practice, recomputed: slats in a rail).

    690 mm is 27.165 in, settled 27 5/32; the sheet measures 18 mm = 0.7087, 0.709 on a caliper. The inside is
    recomputed: 27.15625 - 1.418 = 25.738, settled down 25 23/32 (25.71875). All chains add up in both units.
    """
    metric, inch = (piece_of(SLATS, units) for units in ("mm", "in"))
    assert round(metric.outside.size(0), 6) == 690.0
    # 690 - 36 = 654 inside
    assert size(metric, "case.top")[0] == 672.0  # and 9 mm into a rabbet at each end
    inside = next(s for s in inch.spaces if s.path == "case.inside")
    assert inches(inside.box.size(0)) == [25.71875]
    assert inches(inch.outside.size(0)) == [27.13675]  # 25.71875 + 2 x 0.709
    # height 400 mm = 15.748, settled 15 3/4; depth 300 mm = 11.811, settled 11 13/16
    assert size(inch, "case.side.left")[:2] == [15.75, 11.8125]
    for piece in (metric, inch):
        assert piece.chains
        for chain in piece.chains:
            assert sum(m for _, m in chain.members) == pytest.approx(chain.whole[1], abs=1e-9)


def test_a_size_between_two_steps_is_settled_and_said() -> None:
    case = "case: {width: 36.01, height: 30, depth: 12, stock: ply, back: {set: none}}\n"
    result = check_text(head() + case)
    assert [(f.code, f.place.path) for f in result.findings if f.code.startswith("size.")] == [
        ("size.settled", "case.width")
    ]
    assert result.piece is not None
    # 36.01 -> 36; inside 34 9/16
    assert inches(result.piece.outside.size(0)) == [36.0]


def test_sizes_between_two_steps_are_one_note() -> None:
    # 1/32 in = 0.03125: 36.01 -> 36, 12.02 -> 12 1/32 (12.03125)
    case = "case: {width: 36.01, height: 30, depth: 12.02, stock: ply, back: {set: none}}\n"
    (note,) = (f for f in check_text(head() + case).findings if f.code == "size.settled")
    assert note.message == "2 given sizes were settled on the step of 1/32 in"
    assert note.place.path == "case.width"
    assert note.found == "`case.width` 36.01 in, now 36 in; `case.depth` 12.02 in, now 12 1/32 in"


def test_a_measured_thickness_on_the_step_stays_as_it_is() -> None:
    # 23/32 = 0.71875; the caliper's 0.719 would make every sum with it end between two steps
    assert size(piece_of(head() + CASE), "case.side.left")[2] == 0.71875
    # 0.7034 is read as a caliper shows it
    assert size(piece_of(head(measured="0.7034 in") + CASE), "case.side.left")[2] == 0.703
