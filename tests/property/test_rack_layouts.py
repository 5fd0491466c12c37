"""Random racks with random defects: every layout passes the check, no part and no named offcut lies on a defect."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from boardwright.core.rack import Defect, RackPiece
from boardwright.stock.boards import board_instance, lay_out_boards
from boardwright.stock.clear import clear_pieces, halves, overlap
from boardwright.stock.instance import Item, StockSize
from boardwright.stock.on_rack import rack_first, usable, with_rack
from boardwright.stock.verify import verify

KERF = 3.0


@st.composite
def boards(draw: st.DrawFn) -> RackPiece:
    length, width = draw(st.integers(300, 2500)), draw(st.integers(60, 300))
    marks = []
    for _ in range(draw(st.integers(0, 4))):
        x, y = draw(st.integers(0, length - 10)), draw(st.integers(0, width - 5))
        size = (draw(st.integers(1, length - x)), draw(st.integers(1, width - y)))
        marks.append(Defect(float(x), float(y), float(min(size[0], 200)), float(size[1])))
    cut_from = draw(st.sampled_from(["", "bought"]))
    return RackPiece(
        "",
        "board",
        "oak_white",
        25.4,
        float(length),
        float(width),
        "4_4",
        defects=tuple(marks),
        cut_from=cut_from,
    )


@given(
    pieces=st.lists(boards(), min_size=1, max_size=5),
    items=st.lists(
        st.tuples(st.integers(100, 900), st.integers(30, 150), st.integers(1, 4)), min_size=1, max_size=4
    ),
    trims=st.tuples(st.integers(0, 40), st.integers(0, 10)),
)
@settings(max_examples=40, deadline=None)
def test_parts_stay_clear_of_defects(
    pieces: list[RackPiece], items: list[tuple[int, int, int]], trims: tuple[int, int]
) -> None:
    named = [replace(p, name=f"B{n}") for n, p in enumerate(pieces)]
    wanted = [Item(f"p{n}", float(a), float(b), count) for n, (a, b, count) in enumerate(items)]
    ends, edges = float(trims[0]), float(trims[1])
    least = (min(i.length for i in wanted), min(i.width for i in wanted))
    rack = usable(named, (ends, edges), least, KERF)
    bought = StockSize("bought", 3000.0, 320.0, None, 1.0, ends, edges)
    instance = with_rack(board_instance(wanted, [bought], KERF), rack)
    answer = lay_out_boards(instance, effort=0.005)
    assert verify(instance, answer) == []
    whole, faults = rack_first(instance, answer, rack)
    assert faults == []
    assert sum(len(b.placed) for b in whole.bins) == sum(i.count for i in wanted)
    assert len({b.stock_id for b in whole.bins if b.stock_id != "bought"}) == sum(
        1 for b in whole.bins if b.stock_id != "bought"
    )  # no board of the rack twice
    assert whole.lower_bound <= whole.cost + 1e-6
    assert whole.bins_bound <= len(whole.bins)
    marks = {f"rack {p.name}": p.defects for p in named}
    for b in whole.bins:
        for d in marks.get(b.stock_id, ()):
            for p in b.placed:
                assert (
                    p.x + p.length <= d.x
                    or d.x + d.length <= p.x
                    or p.y + p.width <= d.y
                    or d.y + d.width <= p.y
                )


@st.composite
def rooms(draw: st.DrawFn) -> tuple[tuple[int, int, int, int], list[tuple[int, int, int, int]]]:
    length, width = draw(st.integers(50, 400)), draw(st.integers(10, 60))
    marks = []
    for _ in range(draw(st.integers(0, 9))):
        x, y = draw(st.integers(0, length - 1)), draw(st.integers(0, width - 1))
        marks.append((x, y, draw(st.integers(x + 1, length)), draw(st.integers(y + 1, width))))
    return (0, 0, length, width), marks


@given(question=rooms(), kerf=st.integers(0, 5))
@settings(max_examples=150, deadline=None)
def test_clear_pieces_come_from_cuts_and_are_clear(
    question: tuple[tuple[int, int, int, int], list[tuple[int, int, int, int]]], kerf: int
) -> None:
    room, marks = question
    found = clear_pieces(room, marks, kerf, (10, 5))
    there = {room}
    for split in found.splits:
        assert split.piece in there
        there.remove(split.piece)
        there |= {h for h in halves(split.piece, split.along, split.position, kerf) if h is not None}
    for piece in found.pieces:
        assert piece in there
        assert not any(overlap(piece, mark) for mark in marks)
        assert piece[2] - piece[0] >= 10
        assert piece[3] - piece[1] >= 5
