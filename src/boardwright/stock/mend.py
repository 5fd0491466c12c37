"""Local search: some stocks of the best layout are laid out again, so that what is empty gathers on one."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from boardwright.stock.beam import GUIDES
from boardwright.stock.master import Column
from boardwright.stock.search import Search

MOST_PARTS = 90
"""Most parts that are laid out again at once."""
FEW = 3
"""So few stocks are laid out all at once by the beams anyway."""
MOST_STOCKS = 10
"""Most stocks that are laid out again at once."""
WIDTHS = (8, 16, 32, 64, 128, 256)


def mend(search: Search, random: Random, work: float) -> float:
    """Lay out parts of the best layout again until so much work is done; the work that was done comes back.

    An answer that is as good but gathers more empty space on few stocks is taken, and one that is equal too.
    """
    done = 0.0
    while done < work and len(search.best) > FEW and not search.done():
        taken = _some(search, random)
        others = [c for n, c in enumerate(search.best) if n not in taken]
        held = [sum(c.what.counts[i] for c in others) for i in range(len(search.wanted))]
        needed = tuple(max(0, w - h) for w, h in zip(search.wanted, held, strict=True))
        if not any(needed):
            search.offer(others)
            continue
        done += _again(search, random, others, needed, sum(search.best[n].room.cost for n in taken))
    return done


def _again(
    search: Search, random: Random, others: Sequence[Column], needed: tuple[int, ...], cost: float
) -> float:
    """One try at the copies that the other stocks do not hold; the work comes back."""
    way = random.randrange(len(search.ways))
    work, fresh = search.beam(way, needed, others, random.choice(WIDTHS), random.randrange(GUIDES), cost)
    if fresh:
        search.offer([*others, *fresh], ties=True)
    search.tried += 1
    return work


def _some(search: Search, random: Random) -> set[int]:
    """A few stocks, the emptier the likelier."""
    sizes = search.sizes()
    empty = []
    for column in search.best:
        area = sum(n * x for n, x in zip(column.what.counts, sizes, strict=True))
        empty.append(1 - area / (column.room.a * column.room.b))
    wanted = random.randint(2, min(MOST_STOCKS, len(empty)))
    taken: set[int] = set()
    parts = 0
    while len(taken) < wanted:
        rest = [n for n in range(len(empty)) if n not in taken]
        n = random.choices(rest, [0.02 + max(0.0, empty[k]) for k in rest])[0]
        parts += sum(search.best[n].what.counts)
        if parts > MOST_PARTS and len(taken) >= 2:
            break
        taken.add(n)
    return taken
