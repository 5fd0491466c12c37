"""Boards and sheets for the tests of the rack."""

from boardwright.core.findings import Finding
from boardwright.core.lengths import INCH
from boardwright.core.rack import RackPiece
from boardwright.store.opening import Store
from boardwright.store.pieces import add_pieces
from boardwright.store.supplies import read_rack
from boardwright.store.takings import Wanted


def board(name: str = "", length: float = 96, width: float = 8, cut_from: str = "") -> RackPiece:
    """A cherry board; sizes in inches."""
    return RackPiece(
        name, "board", "cherry_black", INCH, length * INCH, width * INCH, "4_4", cut_from=cut_from
    )


def boards(store: Store, count: int) -> list[RackPiece]:
    """That many boards, put on the rack."""
    added, findings = add_pieces(store, [board() for _ in range(count)])
    assert findings == []
    return added


def names(store: Store) -> list[str]:
    """What is on the rack."""
    rack, findings = read_rack(store)
    assert findings == []
    return [p.name for p in rack.pieces]


def codes(findings: list[Finding]) -> list[str]:
    return [f.code for f in findings]


def wanted(*pieces: RackPiece, plan: str = "Chest", offcuts: tuple[RackPiece, ...] = ()) -> Wanted:
    return Wanted(plan, f"digest of {plan}", pieces, offcuts)
