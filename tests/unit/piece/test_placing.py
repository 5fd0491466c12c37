"""Where loose parts stand: against, flush with, between and centred on others, in both units."""

from __future__ import annotations

import pytest

from boardwright.piece.records import Piece
from boardwright.pipeline import Result, check_text


def placed(rest: str, units: str = "mm") -> Result:
    return check_text(
        f"""
boardwright: 1
title: Bench
units: {units}
stock: {{oak: {{wood: maple_sugar, thickness: 20 mm}}}}
parts:
  left: {{stock: oak, length: 400 mm, width: 100 mm, along: z, across: y, at: [0, 0, 0]}}
  right: {{stock: oak, length: 400 mm, width: 100 mm, along: z, across: y, at: [480 mm, 0, 0]}}
{rest}
"""
    )


def box(result: Result, name: str) -> list[tuple[float, float]]:
    """From where to where a part lies on each axis [mm]."""
    assert isinstance(result.piece, Piece), [f.text() for f in result.findings]
    b = result.piece.part(f"parts.{name}").box
    return [(round(lo, 6), round(hi, 6)) for lo, hi in zip(b.low, b.high, strict=True)]


def test_a_rail_takes_the_room_between_two_posts() -> None:
    # the posts are 20 thick: their faces stand at 20 and 480
    result = placed(
        "  rail: {stock: oak, width: 60, along: x, across: z, "
        "place: {x: {between: [left.right, right.left]}, y: {flush: left.front}, z: {flush: left.top, off: 30}}}"
    )
    assert box(result, "rail") == [(20, 480), (0, 20), (310, 370)]
    assert not result.findings


def test_a_part_stands_against_either_side_of_another() -> None:
    result = placed(
        "  on: {stock: oak, length: 520, width: 120, along: x, across: y, "
        "place: {x: {flush: left.left, off: -10}, y: {centred_on: left}, z: {against: left.top}}}\n"
        "  before: {stock: oak, length: 100, width: 50, along: x, across: z, "
        "place: {x: {between: [left.right, right.left]}, y: {against: left.front, off: 5}, z: 40}}"
    )
    assert box(result, "on") == [(-10, 510), (-10, 110), (400, 420)]
    assert box(result, "before") == [(200, 300), (-25, -5), (40, 90)]


def test_flush_measures_inward_from_the_named_side() -> None:
    result = placed(
        "  strip: {stock: oak, length: 200, width: 40, along: z, across: y, "
        "place: {x: {against: left.right}, y: {flush: left.rear, off: 7}, z: {flush: left.under}}}"
    )
    assert box(result, "strip") == [(20, 40), (53, 93), (0, 200)]


def test_places_may_name_parts_that_come_later_in_the_file() -> None:
    result = placed(
        "  shelf: {stock: oak, length: 200, width: 40, along: x, across: y, "
        "place: {x: {against: left.right}, y: 0, z: {against: ledge.top}}}\n"
        "  ledge: {stock: oak, length: 90, width: 40, along: y, across: z, at: [20, 0, 100]}"
    )
    assert box(result, "shelf")[2] == (140, 160)


def test_a_middle_between_two_steps_is_settled() -> None:
    # about 460 mm of room and a part of 101 mm: 179.5 on each side, on a step of 1/32 in = 0.79375 mm
    result = placed(
        "  peg: {stock: oak, length: 101 mm, width: 40 mm, along: x, across: y, "
        "place: {x: {between: [left.right, right.left]}, y: 0, z: 0}}",
        "in",
    )
    start = box(result, "peg")[0][0] - box(result, "left")[0][1]
    assert start / 0.79375 == pytest.approx(round(start / 0.79375), abs=1e-6)
    assert abs(start - 179.5) <= 1.2


@pytest.mark.parametrize(
    ("place", "code"),
    [
        ("x: {}, y: 0, z: 0", "place.which"),
        ("x: {at: 1, against: left.right}, y: 0, z: 0", "place.which"),
        ("x: {against: left.top}, y: 0, z: 0", "place.side"),
        ("x: {against: left}, y: 0, z: 0", "place.side"),
        ("x: {against: lift.right}, y: 0, z: 0", "joint.unknown-part"),
        ("x: {centred_on: lift}, y: 0, z: 0", "joint.unknown-part"),
        ("x: {between: [left.right, rihgt.left]}, y: 0, z: 0", "joint.unknown-part"),
    ],
)
def test_a_place_that_tells_nothing_is_refused(place: str, code: str) -> None:
    result = placed(f"  rail: {{stock: oak, length: 90, width: 60, along: x, across: z, place: {{{place}}}}}")
    assert code in {f.code for f in result.findings}


@pytest.mark.parametrize(
    ("keys", "code"),
    [
        ("width: 60, along: x, across: z, at: [0, 0, 0]", "place.no-size"),
        ("length: 90, along: x, across: z, place: {x: 0, y: 0, z: {against: left.top}}", "place.no-size"),
        ("length: 90, width: 60, along: x, across: z", "place.which"),
        (
            "width: 60, along: x, across: z, place: {x: {between: [left.right, left.right]}, y: 0, z: 0}",
            "place.no-room",
        ),
    ],
)
def test_a_part_without_size_or_place_is_refused(keys: str, code: str) -> None:
    assert code in {f.code for f in placed(f"  rail: {{stock: oak, {keys}}}").findings}
