"""Cases: what runs through, inside sizes, backs, rows and columns. Sums worked by hand."""

import pytest

from bench import codes, grooves, inches, piece_of, rabbets, size

PLY = """
boardwright: 1
title: Case
units: in
work_to: 1/32
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: {measured}}}
  back: {{sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}}
  solid: {{wood: cherry_black, thickness: 1/4}}
case:
  width: 36
  height: 30
  depth: 12
  stock: ply
  {more}
"""
NONE = "back: {set: none}"


def case(more: str, measured: str = "3/4") -> str:
    return PLY.format(measured=measured, more=more)


def test_sides_run_through() -> None:
    piece = piece_of(case(NONE))
    assert size(piece, "case.side.left") == [30.0, 12.0, 0.75]
    # between the sides 36 - 1 1/2 = 34 1/2, and 3/8 into the rabbet at each end
    assert size(piece, "case.top") == size(piece, "case.bottom") == [35.25, 12.0, 0.75]


def test_top_and_bottom_run_through() -> None:
    piece = piece_of(case(f"through: top_and_bottom\n  {NONE}"))
    assert size(piece, "case.top") == [36.0, 12.0, 0.75]
    # 30 - 1 1/2 = 28 1/2 between them, and 3/8 into each
    assert size(piece, "case.side.left") == [29.25, 12.0, 0.75]


def test_plywood_bottom_follows_the_measured_sides() -> None:
    """A bottom in 1/4 dados between sides that measure 23/32 (case from practice, recomputed).

    36 - 2 x 0.71875 + 0.5 = 35.0625, not the 35.000 of 3/4 sides; +/- 1/64.
    """
    piece = piece_of(case(f"bottom: {{up: 3, joint: {{kind: dado, depth: 1/4}}}}\n  {NONE}", "23/32"))
    assert size(piece, "case.bottom")[0] == pytest.approx(35.0625, abs=1 / 64)
    assert inches(piece.outside.high[0])[0] == pytest.approx(36.0, abs=1 / 32)


def test_thinner_stock_makes_the_inside_wider() -> None:
    """Sides of 1/2 instead of 3/4, outside kept: inside wider by 2 x 1/4 (case from practice, recomputed)."""
    wide, narrow = (piece_of(case(f"inside: {{open: yes}}\n  {NONE}", m)) for m in ("1/2", "3/4"))
    assert inches(wide.spaces[0].box.size(0) - narrow.spaces[0].box.size(0)) == [0.5]


def test_bottom_above_the_floor_stands_in_dados() -> None:
    piece = piece_of(case(f"bottom: {{up: 4}}\n  {NONE}"))
    [dado] = grooves(piece.part("case.side.left"))
    assert inches(dado.width, dado.depth) == [0.75, 0.25]
    assert inches(piece.part("case.bottom").box.low[2]) == [4.0]
    assert size(piece, "case.bottom")[0] == 35.0  # 34 1/2 + 2 x 1/4


def test_rails_instead_of_a_top() -> None:
    piece = piece_of(case(f"top: {{kind: rails, rail_width: 3}}\n  {NONE}"))
    assert size(piece, "case.top.front") == size(piece, "case.top.rear") == [35.25, 3.0, 0.75]
    assert inches(piece.part("case.top.rear").box.low[1]) == [9.0]  # 12 - 3
    assert "case.rails-too-wide" in codes(case("top: {kind: rails, rail_width: 6}"))


@pytest.mark.parametrize(
    ("keys", "wide", "high", "rear"),
    [
        # inside 34 1/2 x 28 1/2; a lap of 3/8 on each side, less 1/32 of play there; flush with the rear
        ("set: rabbet, stock: back", 35.1875, 29.1875, 12.0),
        # grooves 3/8 deep, 1/32 short in each: 2 x 11/32 more; 3/8 of wood behind
        ("set: groove, stock: back", 35.1875, 29.1875, 11.625),
        ("set: groove, stock: back, inset: 1/2", 35.1875, 29.1875, 11.5),
        # over everything
        ("set: surface, stock: back", 36.0, 30.0, 12.0),
    ],
)
def test_back(keys: str, wide: float, high: float, rear: float) -> None:
    piece = piece_of(case(f"back: {{{keys}}}"))
    box = piece.part("case.back").box
    assert inches(box.size(0), box.size(2), box.high[1]) == [wide, high, rear]


def test_the_depth_of_the_case_holds_a_back_on_its_surface() -> None:
    piece = piece_of(case("back: {set: surface, stock: back}"))
    assert size(piece, "case.side.left")[1] == 11.75  # 12 - 1/4


def test_rabbet_of_the_back_is_as_deep_as_the_back_and_a_half_of_the_side() -> None:
    piece = piece_of(case("back: {set: rabbet, stock: back}"))
    [step] = [r for r in rabbets(piece.part("case.side.left")) if r.holds == "case.back"]
    assert sorted(inches(step.width, step.depth)) == [0.25, 0.375]


SOLID_BACK = """
boardwright: 1
title: Panel
units: in
work_to: 1/32
wood_moisture: {{now: 6, driest: 6, wettest: 12}}
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
  cherry: {{wood: cherry_black, thickness: 1/4}}
case:
  width: {width}
  height: {height}
  depth: 12
  stock: ply
  back: {{set: groove, stock: cherry, depth: 3/8}}
"""


def test_a_solid_panel_made_dry_has_the_whole_summer_growth_as_room() -> None:
    """Solid cherry, 8 clear across its grain, grooves 3/8 deep, 6 to 12 % (case from practice, recomputed).

    Groove to groove 8.750; at most 8.750 / (1 + 0.00248 x 6) = 8.622; cut 8 9/16; +/- 1/32.
    """
    panel = piece_of(SOLID_BACK.format(width=30, height="9 1/2")).part("case.back")
    # its grain lies from side to side, so it swells in height
    assert panel.pose.y[2] != 0
    assert panel.size[1] / 25.4 == pytest.approx(8.5625, abs=1 / 32)
    assert panel.size[1] / 25.4 * (1 + 0.00248 * 6) < 8.75
    # a narrow and high one: 20 clear, 20 x 0.0149 = 0.298 of growth, 0.149 at each side, and 1/32: 3/16
    high = piece_of(SOLID_BACK.format(width=12, height="21 1/2")).part("case.back")
    assert high.size[1] / 25.4 == 20.375  # 20 + 2 x (3/8 - 3/16)


def test_shelves_stop_before_the_back() -> None:
    piece = piece_of(case("back: {set: rabbet, stock: back}\n  inside: {shelves: {count: 1}}"))
    assert size(piece, "inside.shelf.1")[1] == 11.75  # 12 - 1/4


def test_rows_and_shares_add_up() -> None:
    # inside 28 1/2 high, two shelves: 27 of room; 9 fixed, the rest 18 as 1 to 2: 6 and 12
    rows = "inside: {rows: [{size: 9}, {open: yes}, {share: 2, open: yes}]}"
    piece = piece_of(case(f"{NONE}\n  {rows}"))
    heights = {s.path: inches(s.box.size(2))[0] for s in piece.spaces if "rows" in s.path}
    assert heights == {"case.inside.rows[0]": 9.0, "case.inside.rows[1]": 6.0, "case.inside.rows[2]": 12.0}
    # the first row is the highest
    assert inches(next(s for s in piece.spaces if s.path == "case.inside.rows[0]").box.high[2]) == [29.25]
    [chain] = [c for c in piece.chains if c.name == "height of inside"]
    assert inches(chain.whole[1], sum(m for _, m in chain.members)) == [28.5, 28.5]


def test_columns_and_shares_add_up() -> None:
    # inside 34 1/2 wide, one divider: 33 3/4 of room, as 1 to 2: 11 1/4 and 22 1/2
    piece = piece_of(case(f"{NONE}\n  inside: {{columns: [{{open: yes}}, {{share: 2, open: yes}}]}}"))
    widths = [inches(s.box.size(0))[0] for s in piece.spaces if "columns" in s.path]
    assert widths == [11.25, 22.5]
    # the divider 28 1/2 and 1/4 into the top and the bottom
    assert size(piece, "inside.divider.1")[0] == 29.0


def test_fixed_rows_that_do_not_add_up_are_refused_and_their_twin_is_not() -> None:
    # 13 7/8 + 13 7/8 + 3/4 = 28 1/2
    good, bad = (f"{{rows: [{{size: {first}}}, {{size: 13 7/8}}]}}" for first in ("13 7/8", "14"))
    assert not codes(case(f"{NONE}\n  inside: {good}"))
    assert codes(case(f"{NONE}\n  inside: {bad}")) == ["space.does-not-add-up"]


def test_openings_from_a_fixed_pitch_do_not_fit() -> None:
    """Five drawers on a jig of 7/8 pitch (case from practice, recomputed).

    4 3/8, 5 1/4, 6 1/8, 7, 7 7/8 with 1/8 of room each and four dividers of 3/4: 30 5/8 + 5/8 + 3 = 34 1/4
    in an inside of 33 1/2: 3/4 too much. One step (7/8) off one of them leaves 1/8 to spare.
    """
    text = """
boardwright: 1
title: Jig
units: in
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
  thin: {{sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}}
case:
  width: 24
  height: 35
  depth: 20
  stock: ply
  back: {{set: none}}
  inside: {{drawers: {{count: 5, between: shelf, heights: [4 1/2, 5 3/8, 6 1/4, {fourth}, 8]}}}}
drawers: {{front: {{set: overlay}}, sides: {{stock: thin}}, runs_on: slides}}
"""
    from boardwright.pipeline import check_text

    [finding] = [
        f for f in check_text(text.format(fourth="7 1/8")).findings if f.code == "space.does-not-add-up"
    ]
    assert "take 3/4 in off" in finding.remedy
    # 7 1/8 - 7/8 + 1/8 to spare = 6 3/8
    assert "space.does-not-add-up" not in codes(text.format(fourth="6 3/8"))


def test_dados_back_to_back_in_a_divider() -> None:
    """Shelves at one height on both sides of a divider that measures 0.715 (case from practice, recomputed).

    Half the thickness, or 3/8, on both faces cuts it through: 0.715 - 0.750. Sound: 3/16, at most 1/4.
    """
    inside = "inside: {columns: [{shelves: {count: 1%s}}, {shelves: {count: 1%s}}]}"
    piece = piece_of(case(f"{NONE}\n  {inside % ('', '')}", "0.715"))
    divider = piece.part("inside.divider.1")
    depths = [g.depth / 25.4 for g in grooves(divider)]
    assert len(depths) == 2
    assert all(3 / 16 - 1 / 64 <= d <= 1 / 4 + 1 / 64 for d in depths)
    assert 0.715 - sum(depths) >= 0.215
    # all dados are of one depth, so each shelf is its space and twice the depth, less what settling takes off
    assert len({round(g.depth, 6) for p in piece.parts for g in grooves(p) if ".shelf." in g.holds}) == 1
    spaces = [
        s.box.size(0) / 25.4
        for s in piece.spaces
        if s.path.startswith("case.inside.columns") and s.holds == "shelves"
    ]
    for space, shelf in zip(spaces, (p for p in piece.parts if p.name == "shelf"), strict=True):
        assert 0 <= space + 2 * depths[0] - shelf.size[0] / 25.4 < 1 / 32
    deep = ", joint: {kind: dado, depth: 3/8}"
    assert "joint.too-deep" in codes(case(f"{NONE}\n  {inside % (deep, deep)}", "0.715"))


def test_identical_parts_share_a_letter_and_mirrored_ones_do_not() -> None:
    shelves_in = "inside: {shelves: {count: 3, joint: {kind: dado, stopped: 1/2}}}"
    piece = piece_of(case(f"bottom: {{up: 3}}\n  {NONE}\n  {shelves_in}"))
    shelves = {p.letter for p in piece.parts if p.name == "shelf"}
    assert len(shelves) == 1
    left, right = piece.part("case.side.left"), piece.part("case.side.right")
    # dados that stop at the front, and a bottom above the floor: a left side is no right side
    assert left.letter != right.letter
    assert (left.mirror_of, right.mirror_of) == (right.letter, left.letter)


def test_sides_with_dados_right_through_are_one_kind() -> None:
    # top and bottom alike, one shelf in the middle, no back: turned end for end a left side is a right side
    piece = piece_of(case(f"{NONE}\n  inside: {{shelves: {{count: 1}}}}"))
    assert piece.part("case.side.left").letter == piece.part("case.side.right").letter


def test_case_without_inside_is_refused() -> None:
    assert codes(case(NONE).replace("width: 36", "width: 2 1/2")) == ["case.no-inside"]
    assert codes(case(NONE).replace("depth: 12", "depth: 1")) == ["case.size"]
