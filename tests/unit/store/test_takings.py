"""Wood is taken for a plan and put back whole, or not at all; two programs never take the same board."""

from __future__ import annotations

import threading
from dataclasses import replace

from rack_pieces import board, boards, codes, names, wanted

from boardwright.core.rack import Defect, Supply
from boardwright.store.opening import Store, open_rack
from boardwright.store.pieces import add_pieces, change_piece, remove_pieces
from boardwright.store.supplies import read_rack, write_supply
from boardwright.store.takings import Taking, Wanted, put_back, read_takings, take

NOON = "2026-03-05T12:00:00+00:00"
EVENING = "2026-03-05T18:00:00+00:00"


def test_taking_removes_boards_and_leaves_offcuts(store: Store) -> None:
    first, second, _ = boards(store, 3)
    left = (board("B1-1", 20, 8, "B1"), board("", 15, 5, "bought"))
    taking, findings = take(store, wanted(first, second, offcuts=left), NOON)
    assert findings == []
    assert taking == Taking(1, "Chest", "digest of Chest", NOON, "", ("B1", "B2"), ("B1-1", "O1"))
    assert names(store) == ["B1-1", "B3", "O1"]


def test_what_is_put_back_is_as_it_was(store: Store) -> None:
    first, second, _ = boards(store, 3)
    before = names(store)
    take(store, wanted(first, second, offcuts=(board("B1-1", 20, 8, "B1"),)), NOON)
    taking, findings = put_back(store, "1", EVENING)
    assert findings == []
    assert taking is not None
    assert (taking.pieces, taking.offcuts, taking.put_back_at) == (("B1", "B2"), ("B1-1",), EVENING)
    assert names(store) == before
    assert codes(put_back(store, "1", EVENING)[1]) == ["rack.nothing-taken"]


def test_a_plan_is_known_by_its_digest(store: Store) -> None:
    [first] = boards(store, 1)
    take(store, wanted(first), NOON)
    assert codes(put_back(store, "digest of Table", EVENING)[1]) == ["rack.nothing-taken"]
    assert put_back(store, "digest of Chest", EVENING)[1] == []
    again, findings = take(store, wanted(first), EVENING)
    assert findings == []
    assert again is not None
    assert again.number == 2


def test_nothing_is_taken_twice(store: Store) -> None:
    first, second = boards(store, 2)
    take(store, wanted(first), NOON)
    _, findings = take(store, wanted(first, second, plan="Table"), NOON)
    assert codes(findings) == ["rack.taken"]
    assert "Chest" in findings[0].message
    assert names(store) == ["B2"]  # the second board stays, since the first could not be had
    assert codes(take(store, wanted(second, plan="Chest"), NOON)[1]) == ["rack.taken-already"]


def test_every_reason_is_told_at_once(store: Store) -> None:
    first, second = boards(store, 2)
    remove_pieces(store, ["B2"])
    change_piece(store, replace(first, length=first.length - 100))
    _, findings = take(store, wanted(first, second, board("B9")), NOON)
    assert codes(findings) == ["rack.changed", "rack.no-such-piece", "rack.no-such-piece"]
    assert names(store) == ["B1"]


def test_a_defect_that_was_found_since_is_a_change(store: Store) -> None:
    [first] = boards(store, 1)
    change_piece(store, replace(first, defects=(Defect(100.0, 0.0, 50.0, 50.0, "shake"),)))
    _, findings = take(store, wanted(first), NOON)
    assert codes(findings) == ["rack.changed"]
    assert "shake" in findings[0].found
    assert names(store) == ["B1"]


def test_an_offcut_in_use_keeps_its_board_out(store: Store) -> None:
    [first] = boards(store, 1)
    offcut = board("B1-1", 20, 8, "B1")
    take(store, wanted(first, offcuts=(offcut,)), NOON)
    take(store, wanted(offcut, plan="Box"), NOON)
    assert codes(put_back(store, "1", EVENING)[1]) == ["rack.offcut-used"]
    assert put_back(store, "2", EVENING)[1] == []
    assert put_back(store, "1", EVENING)[1] == []
    assert names(store) == ["B1"]


def test_what_is_taken_can_neither_be_changed_nor_removed(store: Store) -> None:
    [first] = boards(store, 1)
    take(store, wanted(first), NOON)
    assert codes(change_piece(store, first)) == ["rack.taken"]
    assert codes(remove_pieces(store, ["B1", "B7"])) == ["rack.no-such-piece", "rack.taken"]


def test_a_name_that_is_in_use_gives_way(store: Store) -> None:
    [first] = boards(store, 1)
    add_pieces(store, [board("B1-1")])
    taking, _ = take(store, wanted(first, offcuts=(board("B1-1", 20, 8, "B1"),)), NOON)
    assert taking is not None
    assert taking.offcuts == ("O1",)


def test_supplies_are_taken_with_the_wood_and_come_back(store: Store) -> None:
    [first] = boards(store, 1)
    write_supply(store, Supply("screw", "hardware", 30))
    plan = Wanted("Chest", "digest", (first,), (), (("screw", 24),))
    assert take(store, plan, NOON)[1] == []
    assert [s.quantity for s in read_rack(store)[0].supplies] == [6]
    more = Wanted("Table", "other", (), (), (("screw", 7), ("hinge", 2)))
    _, findings = take(store, more, NOON)
    assert codes(findings) == ["rack.too-little", "rack.too-little"]
    assert [s.quantity for s in read_rack(store)[0].supplies] == [6]
    taking, _ = put_back(store, "1", EVENING)
    assert taking is not None
    assert taking.supplies == (("screw", 24.0),)
    assert [s.quantity for s in read_rack(store)[0].supplies] == [30]


def test_numbers_are_not_given_out_again(store: Store) -> None:
    boards(store, 2)
    remove_pieces(store, ["B2"])
    assert [p.name for p in boards(store, 1)] == ["B3"]


def test_many_at_once_take_each_board_once(store: Store, where: str) -> None:
    """Eight threads, each a connection of its own, try to take the same three boards."""
    three = boards(store, 3)
    got: list[Taking] = []
    refused: list[str] = []
    ready = threading.Barrier(8)

    def run(n: int) -> None:
        own, _ = open_rack(where)
        assert own is not None
        ready.wait()
        left = (board("", 10, 4, "B1"),)
        taking, findings = take(own, wanted(*three, plan=f"Plan {n}", offcuts=left), NOON)
        if taking is not None:
            got.append(taking)
        refused.extend(codes(findings))
        own.close()

    threads = [threading.Thread(target=run, args=(n,)) for n in range(8)]
    for t in threads:
        t.start()
    for t in threads:
        t.join()
    assert len(got) == 1
    assert refused == ["rack.taken"] * 3 * 7
    assert names(store) == ["O1"]
    with store.reading() as connection:
        assert [t.plan for t in read_takings(connection)] == [got[0].plan]


def test_many_at_once_share_what_is_there(store: Store, where: str) -> None:
    """Eight threads take one board each, of four boards: each board goes to one of them."""
    four = boards(store, 4)
    got: list[str] = []
    ready = threading.Barrier(8)

    def run(n: int) -> None:
        own, _ = open_rack(where)
        assert own is not None
        ready.wait()
        taking, _ = take(own, wanted(four[n % 4], plan=f"Plan {n}"), NOON)
        if taking is not None:
            got.extend(taking.pieces)
        own.close()

    threads = [threading.Thread(target=run, args=(n,)) for n in range(8)]
    for t in threads:
        t.start()
    for t in threads:
        t.join()
    assert sorted(got) == ["B1", "B2", "B3", "B4"]
    assert names(store) == []
