"""What is set into joints is on the buying list, counted: a tenth over, up to the next five (common practice)."""

import pytest
from stock_pieces import stocked

TWO = """
boardwright: 1
title: Two parts
units: {units}
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4 in, measured: 3/4 in}}
parts:
  upright: {{stock: ply, length: 12 in, width: 10 in, along: z, across: y, at: [0, 0, 0]}}
  shelf: {{stock: ply, length: 20 in, width: 10 in, along: x, across: y, at: [stock.ply, 0, 5 in]}}
joints:
  - {{first: upright, second: shelf, kind: butt, count: 3, fasten: {fasten}}}
"""


@pytest.mark.parametrize(
    ("fasten", "units", "names"),
    [
        # 3 x 1.1 = 3.3, so 5 of each
        ("plugged_screws", "in", ["No. 6 x 1 in flat-head wood screw", "3/8 in wood plug"]),
        # 6 mm sunk: twice 13 under the head is 26, so 1 1/4
        ("plugged_screws", "mm", ["3.5 x 32 mm (No. 6 x 1 1/4 in) flat-head wood screw", "10 mm wood plug"]),
        ("biscuits", "in", ["No. 20 biscuit"]),
        ("biscuits", "mm", ["No. 20 biscuit"]),
        ("pocket_screws", "in", ["1 1/4 in pocket screw, coarse thread"]),
        ("pocket_screws", "mm", ["32 mm (1 1/4 in) pocket screw, coarse thread"]),
        # 1/4 thick, 2 wide; 5/8 and 1 of mortise less 1/16
        ("loose_tenons", "in", ["1/4 x 2 x 1 9/16 in loose tenon"]),
    ],
)
def test_each_kind_is_counted(fasten: str, units: str, names: list[str]) -> None:
    lines = [b for b in stocked(TWO.format(units=units, fasten=fasten)).value.buy if b.group == "fasteners"]
    assert [b.item for b in lines] == names
    assert {b.quantity for b in lines} == {"5"}
    assert all("3 are used" in b.detail for b in lines)
