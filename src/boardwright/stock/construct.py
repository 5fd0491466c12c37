"""Quick layouts: parts are put in one by one, each where it wastes least."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random

from boardwright.stock.patterns import Pattern, pattern
from boardwright.stock.scaled import Room, Scaled, Shape


@dataclass(slots=True)
class _Strip:
    b: int
    used_a: int
    parts: list[Shape]


@dataclass(slots=True)
class _Section:
    a: int
    used_b: int
    strips: list[_Strip]


@dataclass(slots=True)
class _Open:
    """A stock that is being filled."""

    room: Room
    used_a: int = 0
    sections: list[_Section] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Rule:
    """How parts are put in.

    Attributes:
        first_fit: take the first stock with a place, not the best place of all stocks.
        strip_waste: weight of waste in a strip against that in a section.
        new_section: dislike of opening a section while an old one has a place (0 to 1).
    """

    first_fit: bool
    strip_waste: float
    new_section: float


RULES = tuple(Rule(f, s, n) for f in (True, False) for s in (1.0, 0.5) for n in (1.0, 0.2))

MEASURES = 6
"""Measures of large by which items are put in order."""

_Place = tuple[float, int, int, Shape]
"""Score, section (-1: new), strip (-1: new), shape."""


def _places(question: Scaled, stock: _Open, shape: Shape, rule: Rule) -> _Place | None:
    room, a, b = stock.room, shape.a, shape.b
    best: _Place | None = None
    slack = room.a - stock.used_a
    for n, section in enumerate(stock.sections):
        if question.sections:
            for m, strip in enumerate(section.strips):
                if b <= strip.b and strip.used_a + a <= section.a:
                    score = rule.strip_waste * (strip.b - b) / room.b
                    if best is None or score < best[0]:
                        best = (score, n, m, shape)
        grow = a - section.a
        if section.used_b + b <= room.b and grow <= slack:
            score = (-grow if grow <= 0 else 2 * grow) / room.a
            if question.sections and grow < 0:
                score *= 0.5
            if best is None or score < best[0]:
                best = (score, n, -1, shape)
    if a <= slack and b <= room.b:
        score = rule.new_section + (room.b - b) / room.b * 0.1
        if best is None or score < best[0]:
            best = (score, -1, -1, shape)
    return best


def _put(stock: _Open, place: _Place) -> None:
    _, n, m, shape = place
    if n < 0:
        stock.sections.append(_Section(shape.a, shape.b, [_Strip(shape.b, shape.a, [shape])]))
        stock.used_a += shape.a
        return
    section = stock.sections[n]
    if m >= 0:
        section.strips[m].parts.append(shape)
        section.strips[m].used_a += shape.a
        return
    section.strips.append(_Strip(shape.b, shape.a, [shape]))
    section.used_b += shape.b
    if shape.a > section.a:
        stock.used_a += shape.a - section.a
        section.a = shape.a


def insert_all(
    question: Scaled, order: Sequence[int], rule: Rule, rooms: Sequence[Room]
) -> tuple[list[tuple[Pattern, Room]], list[int]]:
    """Put items in, in the given order.

    Args:
        question: the question.
        order: items, one entry a copy.
        rule: how to choose a place.
        rooms: stocks in the order in which they are opened; counts are kept.

    Returns:
        The filled stocks, and the items for which there was no stock left.
    """
    opened: list[_Open] = []
    used = {room.stock: 0 for room in rooms}
    outside: list[int] = []
    for item in order:
        found: tuple[float, int, _Place] | None = None
        for k, stock in enumerate(opened):
            for shape in question.by_item[item]:
                place = _places(question, stock, shape, rule)
                if place is not None and (found is None or place[0] < found[0]):
                    found = (place[0], k, place)
            if found is not None and rule.first_fit:
                break
        if found is not None:
            _put(opened[found[1]], found[2])
            continue
        fresh = _open(question, item, rule, rooms, used)
        if fresh is None:
            outside.append(item)
        else:
            opened.append(fresh)
    filled = [
        (pattern(question, [tuple(tuple(t.parts) for t in s.strips) for s in o.sections]), o.room)
        for o in opened
    ]
    return filled, outside


def _open(
    question: Scaled, item: int, rule: Rule, rooms: Sequence[Room], used: dict[int, int]
) -> _Open | None:
    for room in rooms:
        if room.count is not None and used[room.stock] >= room.count:
            continue
        stock = _Open(room)
        places = [p for s in question.by_item[item] if (p := _places(question, stock, s, rule)) is not None]
        if places:
            _put(stock, min(places, key=lambda p: p[0]))
            used[room.stock] += 1
            return stock
    return None


def orders(question: Scaled, wanted: Sequence[int]) -> list[list[int]]:
    """Orders that make sense: the large ones first, by several measures of large."""
    shapes = {i: ways[0] for i, ways in enumerate(question.by_item) if ways}
    measured = {
        i: (
            (s.a * s.b, s.a),
            (s.a, s.b),
            (s.b, s.a),
            (max(s.a, s.b), s.a * s.b),
            (min(s.a, s.b), s.a * s.b),
            (s.a + s.b, s.a),
        )
        for i, s in shapes.items()
    }
    ranked = [
        sorted(shapes, key=lambda i: (-measured[i][m][0], -measured[i][m][1], i)) for m in range(MEASURES)
    ]
    return [[i for i in items for _ in range(wanted[i])] for items in ranked]


def shuffled(question: Scaled, order: Sequence[int], random: Random, strength: float) -> list[int]:
    """The order with its places disturbed: each moves by up to `strength` of the whole."""
    reach = strength * len(order)
    keys = dict.fromkeys(order, 0.0)
    for item in keys:
        keys[item] = random.random() * reach
    return [i for _, i in sorted((k + keys[i], i) for k, i in enumerate(order))]
