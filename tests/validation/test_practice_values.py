"""Situations from practice with right answers, recomputed from first principles where they were found.

Each number stands with its tolerance and source in data/practice.csv; `case` is its number in the collection of
situations. `tools/check_docs.py` prints the same rows.
"""

import csv
import math
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from boardwright.core.lengths import Printer, read_length
from boardwright.core.steps import settle
from boardwright.formulas import (
    beams,
    compound,
    dovetail_layout,
    finger_layout,
    gluing,
    hinges,
    kerf_bending,
    lumber,
    movement,
    passing,
    reach,
    tiling,
    tolerances,
    working_time,
)
from boardwright.pipeline import check_text
from boardwright.stock.buying_finish import surface_lines
from boardwright.tables import default_tables

ROWS = list(csv.DictReader((Path(__file__).parent / "data" / "practice.csv").open(encoding="utf-8")))
INCH = 25.4
PSI = 4.4482216152605 / INCH**2
TABLES = default_tables()
OAK, MAPLE, CHERRY = (TABLES.species[k] for k in ("oak_red_northern", "maple_sugar", "cherry_black"))
PINE, MAHOGANY = TABLES.species["pine_eastern_white"], TABLES.species["mahogany_true"]


def moves(width: float, coefficient: float, start: float, end: float) -> float:
    return movement.change_of_size(width, coefficient, start, end)


def swing(move: float, width: float, coefficient: float) -> float:
    """Change of moisture [%] that makes a board move so far."""
    return move / moves(width, coefficient, 8, 9)


def widest(room: float, coefficient: float, start: float, end: float) -> float:
    """Widest board at the start that is no wider than the room at the end."""
    return room / (1 + moves(1, coefficient, start, end))


def sag(load: float, span: float, thickness: float) -> float:
    even = beams.LOADINGS["uniform"]
    inertia = beams.second_moment(12 * INCH, thickness * INCH)
    N = load * 4.4482216152605
    return beams.deflection(N, span * INCH, 1.2e6 * PSI, inertia, math.inf, even.kb, even.ks) / INCH


def corner_gap(slope: float) -> float:
    """Gap across a mitre of 3/4 in when both tilts are taken for 45 degrees [in]."""
    wrong = 2 * (45 - compound.compound_mitre_tilt(slope, 4))
    return 0.75 * math.sqrt(2) * math.radians(wrong)


def joints_of_the_small_table() -> float:
    return working_time.repeated_work(2, 8, 0.05, 0.7)


def hours_of_the_small_table() -> float:
    # 15 board feet an hour, the joints, two glue-ups of 2 h, 1 h a square foot to finish
    return 15 / 15 + joints_of_the_small_table() + 2 * 2 + 14


def quarts(per_quart: float) -> float:
    """Varnish on the buying list for three coats on 69 square feet, and 15 % left in brush and can [quarts]."""
    finish = replace(
        next(iter(TABLES.finishes.values())),
        first_low=4 * per_quart,
        first_high=4 * per_quart,
        later_low=4 * per_quart,
        later_high=4 * per_quart,
    )
    area = (2 * 42 * 84 / 144 + 20) * 0.3048**2 * 1e6
    line = surface_lines(area, finish, 3, TABLES, Printer("in", INCH / 16))[0]
    return float(line.quantity.split(" fl oz")[0].split(" to ")[-1]) / 32 * 1.15


SPLAY = """
boardwright: 1
title: Night table
units: in
work_to: 1/64
stock: {oak: {wood: oak_white, thickness: 3/4}, leg: {wood: oak_white, thickness: 1 1/2}}
table: {width: 20, depth: 16, height: 16 3/4, stock: oak, top: {overhang: 2},
  legs: {stock: leg, splay: {ends: 10, front: 6}}, aprons: {}}
"""


def splayed(what: str) -> float:
    """The front right leg of a table whose underside is 16 in high."""
    piece = check_text(SPLAY).piece
    assert piece is not None
    leg = piece.part("table.leg.front.right")
    x, foot = leg.pose.x, next(k for k in leg.cuts if type(k).__name__ == "Bevel")
    return {
        "lean": math.degrees(math.acos(x[2])),
        "way": math.degrees(math.atan2(abs(x[1]), abs(x[0]))),
        "length": 16 / x[2],
        "mitre": abs(compound.plane_gauge(foot.over_u)),
        "tilt": abs(compound.plane_tilt(foot.over_u, foot.over_v)),
    }[what]


def dovetails() -> dovetail_layout.DovetailLayout:
    n = INCH
    return dovetail_layout.dovetail_layout(8 * n, 0.75 * n, 1 / 8, n / 4, 3 * n / 8, n / 8, n / 32, tails=5)


def width_of(pair: tuple[float, float]) -> float:
    return (pair[1] - pair[0]) / INCH


def last_out(*needs: int) -> float:
    return max(out for _, out in working_time.out_of_clamps(needs, 8, 0.25, 1.0))


def fingers(pitch: float) -> finger_layout.FingerLayout:
    return finger_layout.finger_layout(4 * INCH, pitch * INCH, INCH / 64)


def mixed() -> float:
    return sum(read_length(text, "in") for text in ("2.52 in", "2 5/32 in", "37.5 mm"))


COMPUTED: dict[str, Callable[[], float]] = {
    "drawer_summer": lambda: moves(7, MAPLE.tangential, 6, 12),
    "drawer_front": lambda: widest(7.0625 - 1 / 32, MAPLE.tangential, 6, 12),
    "coin_4": lambda: moves(4, CHERRY.tangential, 6, 12),
    "coin_10": lambda: moves(10, CHERRY.tangential, 6, 12),
    "coin_even": lambda: 1.95 / INCH / moves(1, CHERRY.tangential, 6, 12),
    "rule_oak": lambda: swing(0.125, 12, OAK.tangential),
    "rule_pine": lambda: swing(0.125, 12, PINE.tangential),
    "rule_quarter": lambda: swing(0.125, 12, OAK.radial),
    "shelf_limit_span": lambda: 48 * (0.08 / sag(80, 48, 0.75)) ** (1 / 3),
    "cherry_side": lambda: moves(20, 0.0025, 6, 12),
    "maple_base": lambda: moves(20, 0.0035, 6, 12),
    "mismatch": lambda: moves(20, 0.0035, 6, 12) - moves(20, 0.0025, 6, 12),
    "runner_slot": lambda: moves(10, CHERRY.tangential, 6, 12),
    "runner_end": lambda: moves(18 - 5, CHERRY.tangential, 6, 12),
    "lid_in": lambda: -moves(9, MAPLE.tangential, 8, 6),
    "lid_out": lambda: moves(9, MAPLE.tangential, 8, 12),
    "lid_slot": lambda: moves(9, MAPLE.tangential, 8, 12) - moves(9, MAPLE.tangential, 8, 6),
    "lid_all": lambda: moves(22, MAPLE.tangential, 6, 12),
    "breadboard_dry": lambda: moves(36, OAK.tangential, 8, 6),
    "breadboard_wet": lambda: moves(36, OAK.tangential, 8, 11),
    "breadboard_hole": lambda: 0.375 + moves(14, OAK.tangential, 6, 11),
    "breadboard_proud": lambda: (0.399 - moves(36, OAK.tangential, 8, 6)) / 2,
    "strike_flat": lambda: moves(24, PINE.tangential, 6, 12),
    "strike_framed": lambda: moves(2 * 3, PINE.tangential, 6, 12),
    "octagon": lambda: tolerances.mitre_gap(2, 16, 0.25),
    "octagon_error": lambda: tolerances.mitre_error(1 / 64, 2, 16),
    "square_error": lambda: tolerances.mitre_error(1 / 64, 3, 8),
    "finger_low": lambda: fingers(0.375).exact[0] / INCH,
    "finger_high": lambda: fingers(0.375).exact[1] / INCH,
    "finger_11": lambda: width_of(fingers(4 / 11).outer[5]),
    "slab_swells": lambda: moves(15.8125, OAK.tangential, 7, 12),
    "frame_swells": lambda: moves(2 * 2.25, OAK.tangential, 7, 12),
    "panel_most": lambda: widest(8.75, CHERRY.tangential, 6, 12),
    "panel_wet": lambda: 8.5625 + moves(8.5625, CHERRY.tangential, 6, 12),
    "panel_held": lambda: 3 / 8 - (8.75 - 8.5625) / 2,
    "tray_tilt": lambda: compound.compound_mitre_tilt(8, 4),
    "tray_gauge": lambda: compound.compound_mitre_gauge(8, 4),
    "tray_15": lambda: compound.compound_mitre_tilt(15, 4),
    "tray_15_gauge": lambda: compound.compound_mitre_gauge(15, 4),
    "tray_gap": lambda: corner_gap(8),
    "tray_15_gap": lambda: corner_gap(15),
    "datum_gauge": lambda: compound.compound_mitre_gauge(30, 4),
    "datum_tilt": lambda: compound.compound_mitre_tilt(30, 4),
    "wrong_gauge": lambda: compound.compound_mitre_gauge(90 - 30, 4),
    "wrong_tilt": lambda: compound.compound_mitre_tilt(90 - 30, 4),
    "kerfs": lambda: kerf_bending.kerfs_to_close(math.pi / 2, 1 / 8, 11 / 16),
    "flats": lambda: kerf_bending.flat_depth(12.375 * math.pi / 2 / 9, 12),
    "fair": lambda: kerf_bending.spacing_for_flat(0.004, 12),
    "joint_hours": joints_of_the_small_table,
    "job_hours": hours_of_the_small_table,
    "job_price": lambda: working_time.price(hours_of_the_small_table(), 35, 15 * 9, 0.25),
    "varnish_mid": lambda: quarts(125),
    "varnish_low": lambda: quarts(75),
    "tiles": lambda: math.prod(tiling.pages(34, 22, (7.5, 10), 0.5)),
    "tiles_turned": lambda: math.prod(tiling.pages(34, 22, (10, 7.5), 0.5)),
    "drift": lambda: tiling.likely_drift(5, 0.5),
    "bare_line": lambda: moves(19.5, MAPLE.tangential, 10, 6),
    "bare_held": lambda: 0.25 + moves(19.5, MAPLE.tangential, 10, 6) / 2,
    "clamps": lambda: gluing.clamps_for_length(60, gluing.largest_clamp_spacing(0, 4), 4),
    "clamps_cauls": lambda: gluing.clamps_for_length(60, gluing.largest_clamp_spacing(0, 4 + 2), 6),
    "clamp_force": lambda: gluing.clamp_force(150 * PSI, 60 * INCH, 0.75 * INCH) / 4.4482216152605,
    "gain": lambda: hinges.gain_depth(0.190, 0),
    "gain_shallow": lambda: hinges.gap_shut(0.190, 0.060, 0.060),
    "gain_deep": lambda: hinges.gap_shut(0.190, 0.110, 0.110),
    "blank_a": lambda: lumber.board_feet(1, 3 + 0.5, (24 + 1) / 12),
    "blank_b": lambda: lumber.board_feet(1, 1.5 + 0.5, (12 + 1) / 12),
    "stand_up": lambda: passing.height_to_stand_up(94, 24),
    "tallest": lambda: passing.tallest_that_stands_up(96, 24),
    "stand_up_loose": lambda: passing.height_to_stand_up(90, 24),
    "splay_lean": lambda: splayed("lean"),
    "splay_way": lambda: splayed("way"),
    "splay_length": lambda: splayed("length"),
    "splay_mitre": lambda: splayed("mitre"),
    "splay_tilt": lambda: splayed("tilt"),
    "charged": lambda: 2 * lumber.board_feet(1.5, 6, 8),
    "actual": lambda: 2 * lumber.board_feet(1.25, 5.5, 7 + 4 / 12),
    "taper": lambda: tolerances.taper_reach(20, 19.94, 18, 19.969),
    "mitre_wide": lambda: -math.sqrt(2) * moves(3.5, OAK.tangential, 9, 6),
    "mitre_narrow": lambda: -math.sqrt(2) * moves(1.5, OAK.tangential, 9, 6),
    "trapped_top": lambda: moves(20, OAK.tangential, 6, 11),
    "mahogany_swing": lambda: swing(3 / 16, 12, MAHOGANY.tangential),
    "mahogany": lambda: moves(30, MAHOGANY.tangential, 8, 8 + swing(3 / 16, 12, MAHOGANY.tangential)),
    "bracket_oak": lambda: moves(6, OAK.tangential, 8, 10.5),
    "bracket_cherry": lambda: moves(6, CHERRY.tangential, 8, 10.5),
    "apron_gap": lambda: swing(0.3125, 44, CHERRY.tangential),
    "tail_tip": lambda: width_of(dovetails().tails[2]),
    "tail_root": lambda: width_of(dovetails().roots[2]),
    "pin_inside": lambda: width_of(dovetails().pin_roots[2]),
    "clamps_top_last": lambda: working_time.out_of_clamps([4, 4, 4, 4, 6], 8, 0.25, 1.0)[-1][0],
    "clamps_out": lambda: last_out(4, 4, 4, 4, 6),
    "clamps_top_first": lambda: last_out(6, 4, 4, 4, 4),
    "clamps_top_middle": lambda: last_out(4, 4, 6, 4, 4),
    "reach_full": lambda: reach.open_inside(18, 0.75, 4, 17),
    "reach_part": lambda: reach.open_inside(13.5, 0.75, 4, 17),
    "reach_all": lambda: reach.travel_to_clear(0.75, 4, 17),
    "table_oak": lambda: moves(12, OAK.tangential, 5, 10),
    "table_maple": lambda: moves(12, MAPLE.tangential, 5, 10),
    "table_cherry": lambda: moves(12, CHERRY.tangential, 5, 10),
    "table_top": lambda: moves(36, OAK.tangential, 5, 10),
    "thinner": lambda: sag(40, 24, 0.5) / sag(40, 24, 0.75),
    "thinner_span": lambda: 24 * (sag(40, 24, 0.75) / sag(40, 24, 0.5)) ** 0.25,
    "lid_cup": lambda: 22**2 * moves(1, MAPLE.tangential, 8, 9) / (8 * 0.75),
    "lid_cup_small": lambda: 7**2 * moves(1, 0.00315, 8, 9) / (8 * 0.5),
    "mixed_sum": lambda: mixed() / INCH,
    "mixed_shown": lambda: settle(mixed(), INCH / 64) / INCH,
}


def test_every_row_is_computed() -> None:
    assert [r["id"] for r in ROWS] == list(COMPUTED)


@pytest.mark.parametrize("row", ROWS, ids=lambda r: f"{r['case']} {r['id']}")
def test_answer(row: dict[str, str]) -> None:
    # 1e-9 where the answer is a count
    tolerance = float(Fraction(row["tolerance"])) + 1e-9
    assert COMPUTED[row["id"]]() == pytest.approx(float(row["expected"]), abs=tolerance)
