"""Drawers: the box from its opening, the bottom, the stack, what it runs on. Sums worked by hand.

The opening is 20 wide and 8 1/2 high, 18 deep, unless said otherwise. Clearances are the tables' (common
practice):
3/32 around an inset front of sheet goods, 1/8 over a plywood box, 3/8 behind it, 1/32 short in each bottom
groove.
"""

import pytest

from bench import IN, codes, grooves, inches, piece_of, rabbets, size
from boardwright.pipeline import check_text

TEXT = """
boardwright: 1
title: Drawer
units: in
work_to: {work_to}
wood_moisture: {{now: 6, driest: 6, wettest: 12}}
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
  half: {{sheet: hardwood_plywood, thickness: 1/2, measured: {half}}}
  thin: {{sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}}
  maple: {{wood: maple_sugar, thickness: 1/2}}
  thick_maple: {{wood: maple_sugar, thickness: 3/4}}
  cherry: {{wood: cherry_black, thickness: 1/2}}
case:
  width: {width}
  height: {height}
  depth: 18
  stock: ply
  back: {{set: none}}
  inside: {inside}
drawers:
  front: {{stock: {front_stock}{front}}}
  sides: {{stock: {sides}}}
  bottom: {{stock: thin{bottom}}}
  {more}
"""


def design(
    more: str,
    *,
    inside: str = "{drawer: {}}",
    width: str = "21 1/2",
    height: str = "10",
    front: str = "",
    bottom: str = "",
    sides: str = "half",
    half: str = "1/2",
    work_to: str = "1/32",
    front_stock: str = "ply",
) -> str:
    return TEXT.format(
        more=more,
        inside=inside,
        width=width,
        height=height,
        front=front,
        bottom=bottom,
        sides=sides,
        half=half,
        work_to=work_to,
        front_stock=front_stock,
    )


def test_on_bars() -> None:
    piece = piece_of(design("runs_on: bars\n  bars: {stock: maple}"))
    # beside the box 1/16, but no less than the gap of its front, 3/32: 20 - 3/16 = 19 13/16 wide
    # 18 - 3/4 front - 3/8 behind = 16 7/8 long, and the sides 3/8 into rabbets of the front
    # 8 1/2 - 1/8 under - 1/8 over = 8 1/4 high
    assert size(piece, "drawer.1.left") == [17.25, 8.25, 0.5]
    # front 20 - 3/16; 8 1/2 - 3/16
    assert size(piece, "drawer.1.front") == [19.8125, 8.3125, 0.75]
    # back between the sides 18 13/16, in dados a quarter of 1/2 deep: 1/8 at each end
    assert size(piece, "drawer.1.back") == [19.0625, 8.25, 0.5]
    # bottom 18 13/16 + 2 x (1/4 - 1/32) = 19 1/4
    assert sorted(size(piece, "drawer.1.bottom")[:2])[1] == 19.25
    # bar: beside the box 3/32 + groove 1/4 - 1/32 of room = 5/16 thick; groove 5/8 high, bar 1/32 lower
    # it starts 1 behind the front and ends with the box: 17 5/8 - 1 3/4 = 15 7/8
    assert size(piece, "drawer.1.bar.left") == [15.875, 0.59375, 0.3125]
    [groove] = [g for g in grooves(piece.part("drawer.1.left")) if g.purpose == "running"]
    assert inches(groove.width, groove.depth) == [0.625, 0.25]
    # a third of the bar stays in the groove: 2/3 of 15 7/8 = 10.58, on the step 10 9/16
    assert inches(piece.motions[0].travel) == [10.5625]


def test_on_runners() -> None:
    piece = piece_of(design("runs_on: runners\n  runners: {stock: maple}"))
    # the bottom of the case carries it: nothing under the box; 8 1/2 - 1/8 over = 8 3/8
    assert size(piece, "drawer.1.left") == [17.25, 8.375, 0.5]
    assert not [p for p in piece.parts if p.name == "runner"]
    # a third stays in: 16 7/8 x 2/3 = 11 1/4
    assert inches(piece.motions[0].travel) == [11.25]


def test_guides_take_their_thickness_from_both_sides() -> None:
    narrow, wide = (
        piece_of(design(f"runs_on: runners\n  runners: {{stock: maple, guide: {g}}}")) for g in ("1/4", "0")
    )
    assert size(wide, "drawer.1.back")[0] - size(narrow, "drawer.1.back")[0] == 0.5


def test_on_slides() -> None:
    piece = piece_of(design("runs_on: slides"))
    # a front of its own; behind it 17 1/4: the longest slide with its 1/8 is 16
    assert size(piece, "drawer.1.left")[0] == 16.0
    # 12.9 mm (0.508) beside the box at least: 20 - 1.016 - 2 x 1/2 = 17.984 inside, down to 17 31/32
    # box front in rabbets half of 1/2 deep: + 2 x 1/4; back in dados: + 2 x 1/8
    assert size(piece, "drawer.1.box_front")[0] == 18.46875
    assert size(piece, "drawer.1.back")[0] == 18.21875
    assert inches(piece.motions[0].travel) == [16.0]
    assert len(piece.hardware) == 4


def test_slide_arithmetic_with_the_measured_opening_and_sides() -> None:
    """Slides of 1/2 each side in an opening that measures 20 15/16, sides of which two measure 0.945
    (case from practice, recomputed): box 19.875 to 19.9375 wide; front and back at most 18.9925 and at least
    18.930, so 18 31/32; the 19.000 of the drawing binds.
    """
    piece = piece_of(
        design(
            "runs_on: slides\n  slides: {side: 1/2}\n  back: {joint: butt}",
            width="22 7/16",
            half="0.4725",
            front=", joint: butt",
        )
    )
    assert size(piece, "drawer.1.back")[0] == pytest.approx(18 + 31 / 32, abs=1e-6)
    box = piece.part("drawer.1.right").box.high[0] - piece.part("drawer.1.left").box.low[0]
    assert 19.875 <= box / IN <= 19.9375


def test_overlay_fronts_cover_the_case_less_half_a_gap() -> None:
    piece = piece_of(
        design(
            "runs_on: slides",
            front=", set: overlay, gap: 1/8",
            inside="{drawers: {count: 2}}",
            height="13 1/2",
        )
    )
    # 21 1/2 less half a gap on both sides: 21 3/8
    # two openings of 6: 6 + 3/4 of the case - 1/16 outside - 1/16 between = 6 5/8
    assert size(piece, "drawer.1.front") == size(piece, "drawer.2.front") == [21.375, 6.625, 0.75]
    upper, lower = piece.part("drawer.1.front").box, piece.part("drawer.2.front").box
    assert inches(upper.low[2] - lower.high[2]) == [0.125]
    assert inches(upper.high[1]) == [0.0]  # in front of the case


def test_inset_fronts_stand_in_their_opening() -> None:
    piece = piece_of(design("runs_on: slides", front=", reveal: 1/16"))
    box = piece.part("drawer.1.front").box
    # 20 - 1/8; 8 1/2 - 1/8; 1/16 over the floor of the case
    assert inches(box.size(0), box.size(2), box.low[2] - 0.75 * IN) == [19.875, 8.375, 0.0625]


def test_a_front_behind_an_inset_door_stands_inside_its_opening() -> None:
    inside = "{door: {set: inset}, drawer: {}}"
    result = check_text(design("runs_on: slides", front=", set: overlay", inside=inside))
    assert result.piece is not None
    front = result.piece.part("drawer.1.front").box
    assert front.low[1] >= 0.75 * IN  # behind the door
    assert front.low[0] > 0.75 * IN  # and between the sides


def test_bottom_in_a_groove() -> None:
    piece = piece_of(design("runs_on: slides", bottom=", set: groove, up: 1/2"))
    [groove] = [g for g in grooves(piece.part("drawer.1.left")) if g.purpose == "panel"]
    # half of 1/2 deep, as wide as the bottom is thick
    assert inches(groove.width, groove.depth) == [0.25, 0.25]
    assert inches(piece.part("drawer.1.bottom").box.low[2] - piece.part("drawer.1.left").box.low[2]) == [0.5]
    # a sheet is held all round: also in the back
    assert [g for g in grooves(piece.part("drawer.1.back")) if g.purpose == "panel"]


def test_bottom_under_the_back() -> None:
    piece = piece_of(design("runs_on: slides", bottom=", set: groove, back: under, up: 3/8"))
    back, side = piece.part("drawer.1.back").box, piece.part("drawer.1.left").box
    # the back stands on the bottom: 3/8 + 1/4 higher than the sides' lower edge
    assert inches(back.low[2] - side.low[2]) == [0.625]
    assert inches(piece.part("drawer.1.bottom").box.high[1]) == inches(back.high[1])


def test_bottom_in_a_rabbet() -> None:
    piece = piece_of(design("runs_on: slides", bottom=", set: rabbet"))
    [step] = [r for r in rabbets(piece.part("drawer.1.left")) if r.purpose == "panel"]
    assert inches(step.width, step.depth) == [0.25, 0.25]
    # full in the rabbets: 17 31/32 + 1/2
    assert 18.46875 in size(piece, "drawer.1.bottom")


def test_bottom_planted_under_the_box() -> None:
    piece = piece_of(design("runs_on: slides", bottom=", set: planted"))
    # as wide and long as the box, 18 31/32 x 16; the box above it is 1/4 lower: 8 1/2 - 1/8 - 1/8 - 1/4 = 8
    assert sorted(size(piece, "drawer.1.bottom")) == [0.25, 16.0, 18.96875]
    assert size(piece, "drawer.1.left")[1] == 8.0


def test_a_stack_grows_downwards() -> None:
    # inside 34 - 1 1/2 = 32 1/2; four openings growing by 3/4: (32 1/2 - 4 1/2) / 4 = 7, 7 3/4, 8 1/2, 9 1/4
    piece = piece_of(design("runs_on: slides", inside="{drawers: {count: 4, grow: 3/4}}", height="34"))
    openings = [inches(m.opening.size(2))[0] for m in piece.motions]
    assert openings == [7.0, 7.75, 8.5, 9.25]
    assert inches(piece.motions[0].opening.high[2]) == [33.25]  # the first is the top one


def test_heights_of_a_stack() -> None:
    inside = "{drawers: {count: 2, heights: [3, 4 3/4], between: shelf}}"
    piece = piece_of(design("runs_on: slides", inside=inside))
    assert [inches(m.opening.size(2))[0] for m in piece.motions] == [3.0, 4.75]
    assert codes(design("runs_on: slides", inside=inside.replace("count: 2", "count: 3"))) == [
        "space.heights-count"
    ]


def test_equal_openings_get_equal_drawers() -> None:
    # 40 1/2 - 1 1/2 - 3/4 = 38 1/4, halved on the step: 19 1/8 each
    piece = piece_of(
        design("runs_on: slides", inside="{columns: [{drawer: {}}, {drawer: {}}]}", width="40 17/32")
    )
    one, two = (piece.part(f"drawer.{n}.front") for n in (1, 2))
    assert one.letter == two.letter


def test_solid_sides_are_made_low_enough_for_the_wettest_time() -> None:
    """An inset drawer of flat-sawn hard maple in an opening 7 1/16 high, made at 6 %, 12 % in August
    (case from practice, recomputed; coefficient 0.00353 per 1 %, Wood Handbook table 13-5).

    Largest at 6 % with 1/32 left in August: (7.0625 - 0.03125) / (1 + 0.00353 x 6) = 6.885; +/- 1/64.
    """
    maple = {"height": "8 9/16", "sides": "maple", "front_stock": "thick_maple", "work_to": "1/64"}
    piece = piece_of(design("runs_on: runners\n  runners: {stock: maple}", **maple))
    assert size(piece, "drawer.1.left")[1] == pytest.approx(6.885, abs=1 / 64)
    assert size(piece, "drawer.1.left")[1] <= 6.885


@pytest.mark.parametrize(
    ("more", "changes", "code"),
    [
        ("runs_on: slides\n  slides: {length: 18}", {}, "drawer.no-slide"),
        ("runs_on: slides", {"height": "2 11/16"}, "drawer.no-room"),
        ("runs_on: slides\n  box_height: 3", {"bottom": ", up: 2 3/4"}, "drawer.bottom-too-thick"),
        (
            "runs_on: bars\n  bars: {stock: maple, height: 1}",
            {"height": "2 13/16"},
            "drawer.no-room-for-bars",
        ),
        ("runs_on: slides", {"front": ", joint: dado"}, "joint.cannot-be-there"),
        ("runs_on: slides\n  box_height: 9", {}, "drawer.box-too-high"),
    ],
)
def test_refused(more: str, changes: dict[str, str], code: str) -> None:
    assert code in codes(design(more, **changes))
