"""Tables, benches and stools: sizes, dry fit, letters, volumes against closed forms, room for the top to move."""

import math

import pytest

from bench import IN, codes, inches, piece_of, size
from boardwright.formulas.movement import change_of_size
from boardwright.piece.cuts import Groove, Hole, Rabbet
from boardwright.pipeline import check_text
from boardwright.solids import exact
from boardwright.solids.dry_fit import dry_fit
from boardwright.solids.mesh import part_solid

HEAD = """
boardwright: 1
title: Table
units: in
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  leg: {wood: cherry_black, thickness: 1 3/4}
  half: {wood: cherry_black, thickness: 1/2}
  ply: {sheet: birch_plywood, thickness: 1/4, measured: 1/4}
"""
MM = """
boardwright: 1
title: Table
units: mm
stock:
  ash: {wood: ash_white, thickness: 20}
  leg: {wood: ash_white, thickness: 45}
  half: {wood: ash_white, thickness: 12}
  ply: {sheet: birch_plywood, thickness: 6, measured: 6}
"""
BARE = "top: {fixed: none}, aprons: {joint: {kind: butt, fasten: none}}"
LEGS = [f"table.leg.{r}.{s}" for r in ("front", "rear") for s in ("left", "right")]


def volume(piece, id: str) -> float:
    return part_solid(piece.part(id)).volume()


def legs(piece) -> dict[str, str]:
    return {p.id: p.letter for p in piece.parts if p.id in LEGS}


def test_sizes_of_a_plain_table() -> None:
    """Legs 1 3/4, the top 1 beyond them and 3/4 thick: aprons between the legs, legs up to the top."""
    piece = piece_of(HEAD + "table: {width: 40, depth: 20, height: 29}")
    assert size(piece, "table.top") == [40, 20, 0.75]
    assert size(piece, "table.leg.front.left") == [28.25, 1.75, 1.75]
    aprons = [
        (p.box.high[i] - p.box.low[i]) / IN
        for i, p in ((0, piece.part("table.apron.front")), (1, piece.part("table.apron.left")))
    ]
    assert aprons[0] >= 40 - 2 - 3.5 - 1e-6
    assert aprons[1] >= 20 - 2 - 3.5 - 1e-6
    assert piece.part("table.apron.front").size[1] / IN == pytest.approx(3.5)
    assert inches(*piece.outside.high) == [40, 20, 29]


@pytest.mark.parametrize(
    "keys",
    [
        "width: 40, depth: 20, height: 29",
        "width: 20, depth: 34, height: 29",
        "width: 40, depth: 20, height: 29, top: {kind: none}",
        "width: 40, depth: 20, height: 29, top: {fixed: slotted_screws}",
        "width: 40, depth: 20, height: 29, top: {fixed: clips}",
        "width: 40, depth: 20, height: 29, top: {fixed: z_clips}",
        "width: 36, depth: 36, height: 29, top: {shape: round}",
        "width: 40, depth: 26, height: 29, top: {shape: round, fixed: z_clips}",
        "width: 26, depth: 40, height: 29, top: {shape: round, fixed: clips}, legs: {taper: {}}",
        "width: 30, depth: 24, height: 18, top: {shape: round}, legs: {splay: {ends: 8, front: 6}}",
        "width: 40, depth: 20, height: 29, top: {left: 8, right: 3, front: 0, rear: 1/2}",
        "width: 40, depth: 20, height: 29, aprons: {setback: 0}, stretchers: {}",
        "width: 40, depth: 20, height: 29, legs: {taper: {}}, stretchers: {kind: ends}",
        "width: 40, depth: 20, height: 29, legs: {taper: {faces: all, foot: 1}}, stretchers: {kind: h}",
        "width: 16, depth: 12, height: 18, legs: {splay: {ends: 10}}, stretchers: {}",
        "width: 16, depth: 12, height: 18, legs: {splay: {front: 8}}, stretchers: {kind: h}",
        "width: 24, depth: 16, height: 18, legs: {splay: {ends: 12, front: 7}}, stretchers: {kind: h}",
        "width: 24, depth: 16, height: 18, legs: {splay: {ends: 6, front: 5}, taper: {}}, stretchers: {}",
        "width: 36, depth: 20, height: 29, aprons: {drawers: {}}",
        "width: 44, depth: 20, height: 29, legs: {taper: {}}, aprons: {drawers: {count: 2}}",
        "width: 36, depth: 20, height: 29, aprons: {drawers: {drawer: {runs_on: runners}}}",
        "width: 36, depth: 22, height: 29, aprons: {drawers: {drawer: {runs_on: slides}}}",
    ],
)
def test_a_table_closes(keys: str) -> None:
    """No error; nothing overlaps; each planned face touches but for its holes, grooves and what a drawer needs."""
    result = check_text(HEAD + f"table: {{{keys}}}")
    wrong = [
        f.text() for f in result.findings if f.code.startswith(("fit.", "drawer.", "fastener.", "table."))
    ]
    assert wrong == []
    assert result.piece is not None
    fit = dry_fit(result.piece)
    assert (fit.overlaps, fit.hits) == ((), ())
    assert all(t.touching > 0.65 * t.area for t in fit.touches), min(t.touching / t.area for t in fit.touches)


def test_doweled_legs_are_one_kind() -> None:
    piece = piece_of(
        HEAD + "table: {width: 40, depth: 20, height: 29, legs: {taper: {}}, aprons: {joint: butt}}"
    )
    assert len(set(legs(piece).values())) == 1


@pytest.mark.parametrize("keys", ["", "legs: {splay: {ends: 8, front: 6}}, "])
def test_legs_with_two_tenons_or_a_splay_are_two_mirrored_kinds(keys: str) -> None:
    """Two tenons that meet in a leg are not alike, and a leg that leans has a hand: opposite corners are equal."""
    piece = piece_of(HEAD + f"table: {{{keys}width: 24, depth: 16, height: 18}}")
    letter = legs(piece)
    assert letter[LEGS[0]] == letter[LEGS[3]] != letter[LEGS[1]] == letter[LEGS[2]]
    mirrors = {piece.part(i).letter: piece.part(i).mirror_of for i in LEGS}
    assert mirrors == {letter[LEGS[0]]: letter[LEGS[1]], letter[LEGS[1]]: letter[LEGS[0]]}


@pytest.mark.parametrize(("ends", "front"), [(0, 0), (10, 0), (0, 8), (12, 7)])
def test_a_splayed_leg_is_its_section_times_its_length(ends: float, front: float) -> None:
    """A prism cut by two parallel planes: section times the length of its axis, height x (1 + tan2 a + tan2 b)^1/2."""
    splay = f"legs: {{splay: {{ends: {ends}, front: {front}}}}}"
    piece = piece_of(MM + f"table: {{width: 600, depth: 500, height: 450, {splay}, {BARE}}}")
    along = 430 * math.hypot(1, math.tan(math.radians(ends)), math.tan(math.radians(front)))
    for id in LEGS:
        assert volume(piece, id) == pytest.approx(45 * 45 * along, rel=1e-6)
        low, high = (part_placed(piece, id).bounding_box()[i] for i in (2, 5))
        assert (low, high) == (pytest.approx(0, abs=1e-4), pytest.approx(430, abs=1e-4))


def part_placed(piece, id: str):
    from boardwright.solids.mesh import placed

    p = piece.part(id)
    return placed(p.size, p.cuts, p.pose)


@pytest.mark.parametrize("faces", ["inner", "all"])
def test_a_tapered_leg_is_a_block_and_a_frustum(faces: str) -> None:
    """Square sections from 45 down to 25 over the taper: run (a2 + a b + b2) / 3, whichever faces are cut."""
    taper = f"legs: {{taper: {{faces: {faces}, foot: 25, below: 12}}}}"
    piece = piece_of(MM + f"table: {{width: 600, depth: 500, height: 720, {taper}, {BARE}}}")
    apron = piece.part("table.apron.front").size[1]
    run = 700 - apron - 12
    held = 45 * 45 * (apron + 12) + run * (45**2 + 45 * 25 + 25**2) / 3
    for id in LEGS:
        assert volume(piece, id) == pytest.approx(held, rel=1e-6)


def test_the_top_weighs_what_its_board_weighs() -> None:
    piece = piece_of(MM + f"table: {{width: 600, depth: 500, height: 720, {BARE}}}")
    top = piece.part("table.top")
    assert volume(piece, "table.top") == pytest.approx(600 * 500 * 20)
    assert volume(piece, "table.top") * 1e-9 * top.stock.density == pytest.approx(0.006 * top.stock.density)


@pytest.mark.parametrize("moisture", ["{now: 8, driest: 6, wettest: 10}", "{now: 6, driest: 6, wettest: 13}"])
def test_buttons_leave_the_top_its_room(moisture: str) -> None:
    """Half of the top moves by Wood Handbook eq. 13-2; a tongue keeps 3 mm of hold and never meets its shoulder."""
    piece = piece_of(
        MM + f"wood_moisture: {moisture}\ntable: {{width: 1200, depth: 800, height: 740}}",
        allow=("wood.cross-grain",),
    )
    m, stock = piece.moisture, piece.part("table.top").stock
    swells = change_of_size(400, stock.tangential, m.now, m.wettest)
    shrinks = -change_of_size(400, stock.tangential, m.now, m.driest)
    button, apron = piece.part("table.button.front.1"), piece.part("table.apron.front")
    held = apron.box.high[1] - button.box.low[1]
    tongue = next(c for c in button.cuts if isinstance(c, Rabbet)).width
    groove = next(c for c in apron.cuts if isinstance(c, Groove)).depth
    assert held - shrinks >= 3.0 - 1e-6
    assert tongue - held >= swells - 1e-6
    assert groove - held >= swells - 1e-6


def test_screws_in_cleats_stand_in_slots_across_the_grain_of_the_top() -> None:
    piece = piece_of(MM + "table: {width: 1200, depth: 600, height: 740, top: {fixed: slotted_screws}}")
    m, stock = piece.moisture, piece.part("table.top").stock
    moves = max(
        change_of_size(300, stock.tangential, m.now, m.wettest),
        -change_of_size(300, stock.tangential, m.now, m.driest),
    )
    for side, across in (("front", 1), ("left", 0)):
        cleat = piece.part(f"table.cleat.{side}")
        slots = [c for c in cleat.cuts if isinstance(c, Hole) and c.slot > 0]
        assert len(slots) >= 2
        way = (cleat.pose.x, cleat.pose.y, cleat.pose.z)
        for s in slots:
            assert s.slot >= 2 * moves - 1e-6
            assert abs(way[s.slot_along][1]) == pytest.approx(1)
        assert across in (0, 1)


def test_a_sheet_needs_no_slots() -> None:
    text = MM.replace("thickness: 6, measured: 6", "thickness: 18, measured: 18")
    piece = piece_of(
        text + "table: {width: 900, depth: 500, height: 740, top: {stock: ply, fixed: slotted_screws}}"
    )
    holes = [c for p in piece.parts if p.name == "cleat" for c in p.cuts if isinstance(c, Hole)]
    assert holes
    assert all(h.slot == 0 for h in holes)


def test_clips_lie_in_recesses_as_deep_as_they_are_thick() -> None:
    piece = piece_of(HEAD + "table: {width: 40, depth: 20, height: 29, top: {fixed: clips}}")
    clips = [h for h in piece.hardware if h.name == "figure-eight clip"]
    recesses = [
        c
        for p in piece.parts
        if "apron" in p.id
        for c in p.cuts
        if isinstance(c, Hole) and c.for_ == clips[0].name
    ]
    assert len(recesses) == len(clips)
    assert all(h.box.size(2) / IN == pytest.approx(1 / 8) for h in clips)
    assert all(inches(c.depth, c.diameter) == [1 / 8, 13 / 16] for c in recesses)


@pytest.mark.parametrize("moisture", ["", "wood_moisture: {now: 6, driest: 6, wettest: 14}"])
def test_z_shaped_clips_keep_a_leg_in_their_groove(moisture: str) -> None:
    """The clip stands off the apron by what half the top swells (Wood Handbook FPL-GTR-190 eq. 13-2)."""
    piece = piece_of(
        HEAD + moisture + "\ntable: {width: 40, depth: 20, height: 29, top: {fixed: z_clips}}",
        allow=("wood.cross-grain",),
    )
    apron = piece.part("table.apron.front")
    clips = [h for h in piece.hardware if h.name == "Z-shaped clip" and ".front." in h.id]
    grooves = [c for c in apron.cuts if isinstance(c, Groove)]
    assert len(clips) >= 2
    assert [(c.width / IN, c.depth / IN) for c in grooves] == [(pytest.approx(1 / 8), pytest.approx(17 / 32))]
    top, m = piece.part("table.top").stock, piece.moisture
    free = clips[0].box.low[1] - apron.box.high[1]
    swells = max(change_of_size(10 * IN, top.across, m.now, m.wettest), 0.0)
    assert swells - 1e-6 <= free <= swells + IN / 32 + 1e-6


@pytest.mark.parametrize(("width", "depth", "over"), [(36, 36, 1), (40, 26, 1), (24, 40, 2.5), (20, 20, 0)])
def test_a_round_top_is_a_circle_or_an_ellipse(width: float, depth: float, over: float) -> None:
    """Its area is pi times both half axes; both kernels agree; the legs' corners stand on an ellipse inside it."""
    piece = piece_of(
        HEAD
        + f"table: {{width: {width}, depth: {depth}, top: {{shape: round, overhang: {over}, fixed: none}}}}",
        allow=("wood.cross-grain", "strength.sag", "strength.tips"),
    )
    top = piece.part("table.top")
    assert size(piece, "table.top")[:2] == [max(width, depth), min(width, depth)]
    closed = math.pi * width * depth / 4 * 0.75 * IN**3
    assert exact.volume(exact.part_shape(top)) == pytest.approx(closed, rel=3e-5)
    assert part_solid(top).volume() == pytest.approx(closed, rel=2e-4)
    corner = piece.part("table.leg.front.left").box.low
    x, y = width / 2 - corner[0] / IN, depth / 2 - corner[1] / IN
    inside = (x / (width / 2 - over)) ** 2 + (y / (depth / 2 - over)) ** 2
    assert 0.98 < inside <= 1 + 1e-9


@pytest.mark.parametrize("held", ["pinned: true", "drawbore: 1/32"])
@pytest.mark.parametrize("height", ["2 1/4", "3 1/2", "5"])
def test_pegs_of_two_aprons_pass_each_other_in_a_leg(height: str, held: str) -> None:
    """Pegs that cross keep wood between them; those of one tenon lie inside it (common practice)."""
    aprons = f"{{height: {height}, joint: {{kind: mortise_tenon, {held}}}}}"
    piece = piece_of(
        HEAD + f"table: {{width: 40, depth: 20, height: 29, aprons: {aprons}}}",
        allow=("strength.joint", "fastener.meet") if height == "2 1/4" else ("strength.joint",),
    )
    pegs = [f for f in piece.fasteners if f.kind == "peg" and f.held == "table.leg.front.left"]
    assert {abs(round(f.direction[0])) for f in pegs} == {0, 1}
    if height == "2 1/4":  # one peg each way, in a tenon too low for two heights: told, not hidden
        return
    for one in pegs:
        for two in pegs:
            if abs(one.direction[0]) > abs(two.direction[0]):
                assert abs(one.at[2] - two.at[2]) >= (one.diameter + two.diameter) / 2 + IN / 8 - 0.1


def test_a_bridle_takes_no_leg_from_two_sides() -> None:
    assert set(codes(HEAD + "table: {width: 40, depth: 20, height: 29, aprons: {joint: bridle}}")) == {
        "table.joint"
    }


def test_drawers_run_between_the_rails_of_the_apron() -> None:
    piece = piece_of(
        HEAD + "table: {width: 44, depth: 20, height: 29, aprons: {drawers: {count: 2}}}",
        allow=("wood.cross-grain",),
    )
    assert [m.name for m in piece.motions] == ["drawer 1", "drawer 2"]
    lower, upper = piece.part("table.rail.lower").box, piece.part("table.rail.upper").box
    for m in piece.motions:
        assert (m.opening.low[2], m.opening.high[2]) == (
            pytest.approx(lower.high[2]),
            pytest.approx(upper.low[2]),
        )
    front = piece.part("drawer.1.front").box
    assert front.low[1] == pytest.approx(lower.low[1])


@pytest.mark.parametrize(
    ("keys", "code"),
    [
        ("width: 3, depth: 20, height: 29", "table.size"),
        ("width: 7, depth: 20, height: 29", "table.no-room"),
        ("width: 40, depth: 20, height: 29, aprons: {setback: 1 1/2}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, aprons: {height: 15}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, legs: {taper: {foot: 1/4}}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, legs: {taper: {below: 23}}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, stretchers: {up: 24}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, legs: {taper: {}}, stretchers: {up: 23}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, aprons: {height: 1}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, aprons: {height: 2, drawers: {}}", "table.no-room"),
        ("width: 40, depth: 20, height: 29, legs: {splay: {ends: 5}}, aprons: {drawers: {}}", "table.joint"),
        ("width: 40, depth: 20, height: 29, legs: {splay: {ends: 5}}, aprons: {joint: dado}", "table.joint"),
        ("width: 40, depth: 20, height: 29, top: {fixed: buttons}, aprons: {drawers: {}}", "table.joint"),
        ("width: 40, depth: 20, height: 29, top: {fixed: z_clips}, aprons: {drawers: {}}", "table.joint"),
        ("width: 40, depth: 40, height: 29, top: {fixed: z_clips}, aprons: {stock: half}", "table.no-room"),
        ("width: 40, depth: 28, height: 29, top: {shape: round, left: 3}", "table.joint"),
    ],
)
def test_what_makes_no_table_is_told(keys: str, code: str) -> None:
    assert code in codes(HEAD + f"table: {{{keys}}}")


def test_all_that_is_wrong_is_told_at_once() -> None:
    found = codes(
        HEAD + "table: {width: 40, depth: 20, height: 29, legs: {taper: {foot: 3}}, "
        "aprons: {setback: 1 1/2, height: 20}}"
    )
    assert found.count("table.no-room") == 4
