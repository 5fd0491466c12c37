"""Quick layouts: parts put in one by one, in many orders."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from boardwright.stock.construct import RULES, insert_all, orders, shuffled
from boardwright.stock.master import Column
from boardwright.stock.patterns import Pattern
from boardwright.stock.scaled import Room
from boardwright.stock.search import Search

INSERTIONS = 20_000
"""Places that are looked at by quick layouts at effort 1 or more, roughly."""


def _room_orders(rooms: Sequence[Room]) -> list[list[Room]]:
    """Orders in which stocks are opened: cheap by area, small first, large first."""
    by_area = sorted(rooms, key=lambda r: (r.cost / (r.a * r.b), -r.a * r.b, r.stock))
    small = sorted(rooms, key=lambda r: (r.a * r.b, r.cost, r.stock))
    result = [by_area]
    for order in (small[::-1], small):
        if order not in result:
            result.append(order)
    return result


def quick(search: Search) -> None:
    """Quick layouts in many orders, also disturbed ones."""
    total = sum(search.wanted)
    runs = max(6, min(300, int(INSERTIONS * min(1.0, search.effort) / (total * (4 + total / 8)))))
    random = Random(search.seed)
    plans = [
        (way, order, rule, rooms)
        for rule in (0, 4, 1, 5, 2, 6, 3, 7)
        for rooms in range(len(_room_orders(search.rooms)))
        for order in range(6)
        for way in range(len(search.ways))
    ]
    for n in range(runs):
        if n > 0 and search.done():
            return
        way, order, rule, rooms = plans[n % len(plans)]
        question = search.questions[way]
        copies = orders(question, search.wanted)[order]
        if n >= len(plans) or (runs > 12 and n % 2 == 1):
            copies = shuffled(question, copies, random, 0.05 + 0.4 * random.random())
        filled, _ = insert_all(question, copies, RULES[rule], _room_orders(question.rooms)[rooms])
        for what, _room in filled:
            search.add(way, what)
        search.offer([Column(way, what, _cheapest(search, way, what, room)) for what, room in filled])


def _cheapest(search: Search, way: int, what: Pattern, room: Room) -> Room:
    fitting = [r for r in search.questions[way].rooms if r.count is None and r.a >= what.a and r.b >= what.b]
    return min([room, *fitting], key=lambda r: (r.cost, r.stock != room.stock))
