"""What the checks of assembly say, on pieces whose answer is plain."""

import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "solids"))

from assembly_pieces import joint, part, piece
from test_assembly import ring_of_three, shelf_between_sides, wall

from boardwright.checks.assembly import drivers, trapped, wrong_ways
from boardwright.checks.context import Context, context
from boardwright.core.findings import Severity
from boardwright.piece.cuts import Rabbet, Side
from boardwright.piece.records import Piece
from boardwright.pipeline import check_file
from boardwright.solids.dry_fit import dry_fit
from boardwright.tables.load import load_tables

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.yaml"))


def told(whole: Piece) -> Context:
    return context(whole, dry_fit(whole), load_tables(())[0])


def test_a_ring_that_holds_itself_is_an_error_with_the_joints_that_free_it() -> None:
    [finding] = trapped(told(ring_of_three()))
    assert (finding.code, finding.severity) == ("assembly.trapped", Severity.ERROR)
    assert finding.parts == ("a", "b", "c")
    assert "a a, b b and c c cannot be put together" in finding.message
    assert "dowels" in finding.found
    assert finding.remedy.startswith("join ")
    assert not list(trapped(told(shelf_between_sides())))


@pytest.mark.parametrize(
    ("gap", "severity", "clear"),
    [(40.0, Severity.WARNING, "60"), (100.0, Severity.NOTE, "150"), (160.0, None, "")],
)
def test_room_for_the_driver(gap: float, severity: Severity | None, clear: str) -> None:
    found = list(drivers(told(wall(gap, apart=False))))
    assert [f.severity for f in found] == ([severity] if severity else [])
    for f in found:
        assert f.code == "assembly.driver"
        assert f.found == f"left left within {clear} mm behind the head"
    assert not list(drivers(told(wall(gap))))


def test_a_board_that_also_goes_in_end_for_end_gets_a_mark() -> None:
    rabbet = Rabbet(Side.FACE, Side.END, 10.0, 5.0, 0.0, 40.0)
    fellow = replace(rabbet, side=Side.BACK)
    board = part("a", (0, 0, 0), (200.0, 40.0, 20.0), rabbet, fellow)
    assert not list(wrong_ways(told(piece([board]))))
    whole = piece([board, part("b", (0, 100, 0), (100.0, 40.0, 20.0))])
    [finding] = wrong_ways(told(whole))
    assert (finding.code, finding.severity) == ("assembly.wrong-way", Severity.NOTE)
    assert finding.message == "a a can also be put in end for end or turned over and end for end"
    # turned over it is the same: only its ends must be told
    assert finding.remedy == "write `left` on its left end"
    assert not list(wrong_ways(told(piece([part("a", (0, 0, 0), (200.0, 40.0, 20.0))], [joint("a", "b")]))))


def test_all_boards_that_go_in_wrong_are_one_note() -> None:
    rabbet = Rabbet(Side.FACE, Side.END, 10.0, 5.0, 0.0, 40.0)
    cuts = (rabbet, replace(rabbet, side=Side.BACK))
    boards = [
        part(id, (0, y, 0), (long, 40.0, 20.0), *cuts) for id, y, long in (("a", 0, 200.0), ("b", 90, 150.0))
    ]
    [finding] = wrong_ways(told(piece(boards)))
    assert finding.message == "a a and b b can also be put in wrong"
    # both need the same mark: it is given once
    assert finding.remedy == "write `left` on its left end (a a and b b)"
    assert finding.parts == ("a", "b")


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_the_examples_go_together(path: Path) -> None:
    whole = check_file(path).piece
    assert whole is not None
    assert not list(trapped(told(whole)))
    assert not [f for f in drivers(told(whole)) if f.severity is not Severity.NOTE]
