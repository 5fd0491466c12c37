"""Layouts against published optima. The sources stand in published.json beside each set."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from boardwright.stock.boards import board_instance, lay_out_boards
from boardwright.stock.instance import Axis, Instance, Item, Stages, StockSize
from boardwright.stock.lengths import Bar, lay_out_lengths, length_instance
from boardwright.stock.pricing import Pricer
from boardwright.stock.scaled import scale
from boardwright.stock.sheets import lay_out_sheets
from boardwright.stock.verify import verify

SETS = json.loads((Path(__file__).parent / "published.json").read_text(encoding="utf-8"))


def jobs(name: str) -> list[Any]:
    return [pytest.param(job, id=job["id"]) for job in SETS[name]["jobs"]]


def sheet_instance(job: dict[str, Any], turnable: bool, stages: Stages | None, kerf: float = 0.0) -> Instance:
    """The job; with a kerf, parts and sheet are smaller by it, so that the fewest sheets stay the same."""
    items = tuple(
        Item(f"p{n}", part[0] - kerf, part[1] - kerf, part[2], turnable)
        for n, part in enumerate(job["parts"])
    )
    length, width = job["sheet"]
    return Instance(items, (StockSize("sheet", length - kerf, width - kerf),), kerf, stages, "any")


@pytest.mark.parametrize("turnable", [False, True], ids=["fixed", "turnable"])
@pytest.mark.parametrize("job", jobs("panels"))
def test_panel_jobs_are_at_most_one_sheet_over_the_optimum(job: dict[str, Any], turnable: bool) -> None:
    """The optimum is over any number of stages, ours has three: one sheet is allowed for that."""
    optimum = job["turnable" if turnable else "fixed"]
    if optimum is None:
        pytest.skip("no proven optimum is published")
    instance = sheet_instance(job, turnable, 3)
    answer = lay_out_sheets(instance, effort=0.5)
    assert verify(instance, answer) == []
    assert answer.unplaced == ()
    assert optimum <= len(answer.bins) <= optimum + 1
    assert answer.bins_bound <= len(answer.bins)
    if answer.proven:
        assert len(answer.bins) >= optimum


@pytest.mark.parametrize("job", jobs("panels"))
def test_two_stage_panel_jobs_reach_the_best_known_with_and_without_kerf(job: dict[str, Any]) -> None:
    for kerf in (0.0, 3.2):
        instance = sheet_instance(job, False, 2, kerf)
        answer = lay_out_sheets(instance, effort=0.5)
        assert verify(instance, answer) == []
        assert len(answer.bins) <= job["two_stage"]
        assert answer.bins_bound <= job["two_stage"]


@pytest.mark.parametrize("turnable", [False, True], ids=["fixed", "turnable"])
@pytest.mark.parametrize("job", jobs("unbounded"))
def test_best_patterns_against_the_published_optima(job: dict[str, Any], turnable: bool) -> None:
    """Three stages can never beat the optimum over any number of stages; 1 % is what they may lose to it."""
    items = tuple(Item(f"p{n}", *part, 99, turnable) for n, part in enumerate(job["parts"]))
    instance = Instance(items, (StockSize("sheet", *job["sheet"]),), 0.0, 3, "any")
    areas = [round(i.length * i.width) for i in items]
    best = 0
    ways: tuple[Axis, ...] = ("rip", "crosscut")
    for way in ways:
        question = scale(instance, way)
        room = question.rooms[0]
        priced = Pricer(question, areas, question.counts, (room.a, room.b), every=True)
        best = max(best, priced.value(room.a))
    optimum = job["opt_rot" if turnable else "opt_fixed"]
    assert 0.99 * optimum <= best <= optimum


@pytest.mark.parametrize("job", jobs("perfect"))
def test_no_layout_is_claimed_where_none_exists(job: dict[str, Any]) -> None:
    instance = sheet_instance(job, False, None)
    answer = lay_out_sheets(instance, effort=0.3)
    assert verify(instance, answer) == []
    if not job["guillotine_fits_fixed"]:
        assert len(answer.bins) >= 2
    assert answer.bins_bound <= (1 if job["guillotine_fits_fixed"] else 2)


@pytest.mark.parametrize("job", jobs("lengths"))
def test_lengths_are_exactly_optimal_with_and_without_kerf(job: dict[str, Any]) -> None:
    for kerf in (0.0, 3.0):
        wanted = [(f"p{n}", part[0] - kerf, part[1]) for n, part in enumerate(job["parts"]) if part[0] > kerf]
        instance = length_instance(wanted, [Bar("bar", job["stock"] - kerf)], kerf)
        answer = lay_out_lengths(instance)
        assert verify(instance, answer) == []
        assert len(answer.bins) == job["best"]
        assert answer.proven


def test_parts_from_boards_are_never_turned_and_cheap_sizes_are_taken() -> None:
    """Six 20 x 5 in parts fill two 61 x 5 in boards exactly, kerfs 1/2 in; one of 125 x 5 is more wood."""
    inch = 25.4
    items = [Item("slat", 20 * inch, 5 * inch, 6, turnable=True)]
    yard = [StockSize("short", 61 * inch, 5 * inch), StockSize("long", 125 * inch, 5 * inch)]
    instance = board_instance(items, yard, 0.5 * inch)
    answer = lay_out_boards(instance)
    assert verify(instance, answer) == []
    assert [b.stock_id for b in answer.bins] == ["short", "short"]
    assert answer.proven
    assert not any(p.turned for b in answer.bins for p in b.placed)


def test_a_rack_that_runs_out_says_so() -> None:
    rack = [StockSize("r1", 1000, 150, count=1), StockSize("r2", 700, 150, count=1)]
    instance = board_instance([Item("leg", 600, 140, 3), Item("rail", 1100, 60, 1)], rack, 3.0)
    answer = lay_out_boards(instance)
    assert verify(instance, answer) == []
    assert [(u.item_id, u.reason) for u in answer.unplaced] == [
        ("leg", "no stock left that takes it"),
        ("rail", "larger than every stock"),
    ]


def test_sixteenths_fit_exactly() -> None:
    """Five pieces of 9 11/16 in and four kerfs of 1/8 in are 48 15/16 in; a bar 1/64 shorter takes four."""
    inch = 25.4
    pieces = [("stick", (9 + 11 / 16) * inch, 5)]
    whole = 5 * (9 + 11 / 16) + 4 / 8
    fits = lay_out_lengths(length_instance(pieces, [Bar("bar", whole * inch)], inch / 8))
    short = lay_out_lengths(length_instance(pieces, [Bar("bar", (whole - 1 / 64) * inch)], inch / 8))
    assert (len(fits.bins), len(short.bins)) == (1, 2)


def test_the_last_sheet_keeps_its_leftover_in_one_piece() -> None:
    """Two 400 x 300 parts on 1000 x 600 side by side leave 600 x 600, the most there can be."""
    instance = Instance((Item("p", 400, 300, 2),), (StockSize("s", 1000, 600),), 0.0, 3, "any")
    largest = lay_out_sheets(instance).bins[-1].leftovers[0]
    assert (largest.x1 - largest.x0) * (largest.y1 - largest.y0) == 600 * 600
