"""Where the piece lives: cities, air, regions, and how boards were sawn."""

import pytest

from boardwright.piece.records import Moisture, Piece
from boardwright.pipeline import check_text

HEAD = """
boardwright: 1
title: Stool board
units: {units}
{place}
stock:
  oak: {{wood: oak_red_northern, thickness: {thick}{sawn}}}
parts:
  board: {{stock: oak, length: {long}, width: {wide}, along: x, across: y, at: [0, 0, 0]{own}}}
"""


def made(place: str, units: str = "in", sawn: str = "", own: str = "") -> Piece:
    sizes = (
        {"thick": "3/4", "long": 20, "wide": 6} if units == "in" else {"thick": 19, "long": 500, "wide": 150}
    )
    result = check_text(HEAD.format(place=place, units=units, sawn=sawn, own=own, **sizes))
    assert result.piece is not None, result.findings
    assert not [f for f in result.findings if f.severity.value == "error"], result.findings
    return result.piece


def moisture(place: str, units: str = "in") -> Moisture:
    return made(place, units).moisture


def test_region_is_driest_in_february_and_wettest_in_august():
    m = moisture("")
    assert (m.now, m.driest, m.wettest) == (8, 6, 10)
    assert m.months.index(m.driest) == 1
    assert m.months.index(m.wettest) == 7


def test_southern_houses_turn_the_year_round():
    m = moisture("place: {wettest_month: 2}")
    assert m.months.index(m.wettest) == 1


def test_air_is_read_in_the_units_of_the_plan():
    # Wood Handbook table 4-2, 70 F: 30 % gives 6.2, 65 % 12.0, 40 % 7.7
    inch = moisture("place: {air: {driest: {humidity: 30}, wettest: {humidity: 65}, today: {humidity: 40}}}")
    assert (inch.driest, inch.wettest, inch.now) == (6.2, 12.0, 7.7)
    mm = moisture("place: {air: {driest: {humidity: 30, temperature: 21.1}, wettest: {humidity: 65}}}", "mm")
    assert (mm.driest, mm.wettest) == (6.2, 12.0)


def test_unheated_rooms_of_a_city_follow_the_table():
    # Wood Handbook table 13-1 (from memory), Denver: 9.4 to 11.0
    m = moisture("place: {city: 'Denver, CO', rooms: unheated}")
    assert (m.driest, m.wettest) == (9.4, 11.0)
    assert m.months[0] == pytest.approx(10.7)


def test_heated_rooms_are_dry_in_winter_and_cooled_ones_less_damp_in_summer():
    heated, cooled = (
        moisture("place: {city: chicago_il}"),
        moisture("place: {city: chicago_il, rooms: cooled}"),
    )
    assert heated.months.index(heated.driest) == 0
    assert heated.driest == cooled.driest < 7
    assert cooled.wettest < heated.wettest


def test_numbers_come_before_the_city_and_stretch_its_year():
    m = moisture("place: {city: 'Denver, CO'}\nwood_moisture: {wettest: 12}")
    assert m.wettest == max(m.months) == 12
    assert m.driest == min(m.months)


def test_explain_says_where_the_moisture_comes_from():
    shown = {r.path: r for r in made("place: {air: {driest: {humidity: 30}}}").reasons}
    assert shown["wood_moisture.driest"].word == "6.2 %"
    assert "30 %" in shown["wood_moisture.driest"].rule
    assert "T13-2" in shown["wood_moisture.wettest"].source


@pytest.mark.parametrize(
    ("sawn", "own", "across"),
    [
        ("", "", 0.00369),  # Wood Handbook table 13-5, northern red oak: tangential
        (", sawn: quarter", "", 0.00158),  # radial
        ("", ", sawn: quarter", 0.00158),
        (", rings: 90", "", 0.00158),
        (", sawn: rift", "", (0.00369 + 0.00158) / 2),
        (", sawn: mixed", "", 0.00369),
        (", sawn: quarter", ", rings: 0", 0.00369),
    ],
)
def test_how_a_board_was_sawn(sawn: str, own: str, across: float):
    [part] = made("", sawn=sawn, own=own).parts
    assert part.stock.across == pytest.approx(across, abs=1e-9)


def test_parts_sawn_otherwise_have_their_own_letter():
    text = HEAD.format(place="", units="in", sawn="", own="", thick="3/4", long=20, wide=6)
    more = "  other: {stock: oak, length: 20, width: 6, along: x, across: y, at: [0, 10, 0]"
    same, other = (check_text(text + more + end).piece for end in ("}\n", ", sawn: quarter}\n"))
    assert same is not None
    assert other is not None
    assert len({p.letter for p in same.parts}) == 1
    assert len({p.letter for p in other.parts}) == 2
