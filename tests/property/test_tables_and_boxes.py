"""Laws of tables and boxes, on random ones: nothing overlaps, joints close, sizes lie on the step."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from boardwright.core.findings import Severity
from boardwright.piece.records import Piece
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import dry_fit

LAWS = settings(
    max_examples=30,
    deadline=None,
    derandomize=True,
    database=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
TAKEN_BY_CUTS = 0.6
"""Share of a planned face that holes, grooves and mortises may leave of it."""
HEAD = """
boardwright: 1
title: Random
units: {units}
stock:
  board: {{wood: cherry_black, thickness: {board}}}
  leg: {{wood: cherry_black, thickness: {leg}}}
  thin: {{sheet: birch_plywood, thickness: {sheet}, measured: {measured}}}
"""
INCH = {"units": "in", "board": "3/4", "leg": "1 3/4", "sheet": "1/4", "measured": "0.23"}
MM = {"units": "mm", "board": "20", "leg": "45", "sheet": "6", "measured": "5.7"}
MAY_BE_REFUSED = ("table.", "box.", "fastener.", "joint.", "drawer.", "size.too-small", "space.", "wood.")
"""What random sizes may well ask in vain; each is told with its numbers."""


@st.composite
def sizes(draw: st.DrawFn, low: int, high: int) -> str:
    """A length in quarter inches or in 6 mm, by the unit of the file: the number alone."""
    return str(draw(st.integers(low, high)))


def length(units: str, quarters: int) -> str:
    return f"{quarters}/4" if units == "in" else str(quarters * 6)


@st.composite
def tables(draw: st.DrawFn) -> tuple[str, str]:
    """A unit and the text of a table."""
    units = draw(st.sampled_from(["in", "mm"]))

    def of(low: int, high: int) -> str:
        return length(units, draw(st.integers(low, high)))

    upright = draw(st.booleans())
    legs = []
    if draw(st.booleans()):
        legs.append(f"taper: {{faces: {draw(st.sampled_from(['inner', 'all']))}, foot: {of(4, 6)}}}")
    if not upright:
        ends, front = draw(st.integers(0, 15)), draw(st.integers(0, 9))
        legs.append(f"splay: {{ends: {ends}, front: {front}}}")
    aprons = [f"height: {of(10, 18)}"] if draw(st.booleans()) else []
    if upright and draw(st.integers(0, 3)) == 0:
        aprons.append(f"drawers: {{count: {draw(st.integers(1, 2))}}}")
    text = f"table: {{width: {of(50, 240)}, depth: {of(44, 140)}, height: {of(64, 140)}"
    fixed = draw(
        st.sampled_from(
            ["slotted_screws", "clips", "none"] + ([] if any("drawers" in a for a in aprons) else ["buttons"])
        )
    )
    text += f", top: {{fixed: {fixed}, overhang: {of(0, 6)}}}"
    text += f", legs: {{{', '.join(legs)}}}, aprons: {{{', '.join(aprons)}}}"
    kind = draw(st.sampled_from(["", "box", "h", "ends"]))
    if kind:
        text += f", stretchers: {{kind: {kind}, up: {of(8, 24)}}}"
    return units, text + "}\n"


@st.composite
def boxes(draw: st.DrawFn) -> tuple[str, str]:
    """A unit and the text of a box."""
    units = draw(st.sampled_from(["in", "mm"]))

    def of(low: int, high: int) -> str:
        return length(units, draw(st.integers(low, high)))

    sides = draw(st.sampled_from([3, 4, 4, 4, 5, 6, 7, 8, 11, 16]))
    slope = draw(st.integers(0, 35))
    text = f"box: {{stock: board, width: {of(32, 120)}, height: {of(16, 60)}, sides: {sides}, slope: {slope}"
    square = sides == 4 and slope == 0
    ways = ["none", "inside", "planted"] + ([] if slope else ["groove"])
    if sides == 4:
        text += f", depth: {of(32, 120)}"
        if draw(st.booleans()):
            ends = draw(st.integers(0, 35))
            text += f", slope_ends: {ends}"
            square = square and ends == 0
            ways = ways if ends == 0 else ["none", "inside", "planted"]
    corner = draw(
        st.sampled_from(["rabbet", "butt"] if square else (["mitre", "butt"] if sides == 4 else ["mitre"]))
    )
    return (
        units,
        text + f", corner: {corner}, bottom: {{stock: thin, set: {draw(st.sampled_from(ways))}}}}}\n",
    )


def _judge(units: str, text: str) -> Piece | None:
    head = HEAD.format(**(INCH if units == "in" else MM))
    result = check_text(head + text)
    errors = [f for f in result.findings if f.severity == Severity.ERROR]
    assert all(f.code.startswith(MAY_BE_REFUSED) for f in errors), [f.text() for f in errors]
    if result.piece is None:
        assert errors
        return None
    fit = dry_fit(result.piece)
    assert fit.overlaps == ()
    assert all(t.touching >= TAKEN_BY_CUTS * t.area for t in fit.touches if t.area > 1)
    for part in result.piece.parts:
        for size in part.size[:2]:
            steps = size / result.piece.step
            free = part.stock.kind == "wood" and abs(size - part.stock.thickness) > 1e-6
            assert abs(steps - round(steps)) < 1e-4 or not free, (part.id, part.size)
    return result.piece


@LAWS
@given(tables())
def test_tables_close_or_are_refused(table: tuple[str, str]) -> None:
    _judge(*table)


@LAWS
@given(boxes())
def test_boxes_close_or_are_refused(box: tuple[str, str]) -> None:
    _judge(*box)
