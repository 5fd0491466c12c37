"""Builds by the thousand: each fit as it comes out when every setting is out by chance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Literal

import numpy as np

from boardwright.checks.shop import Exact, Shop
from boardwright.checks.tolerance.chains import Chain, Setting
from boardwright.formulas.tolerances import root_sum_square, worst_case

BUILDS = 10_000
SEED = 20_000_101
SIGMAS = 3.0
"""The shop's plus or minus is so many standard deviations."""
Season = Literal["wet", "dry", "now"]


@dataclass(frozen=True, slots=True)
class Gap:
    """A gap as the plan gives it, and what it comes of.

    Attributes:
        size: planned, on the day the parts are cut [mm].
        wet, dry: its change to the wettest and the driest time [mm].
        errors: settings, and how often each comes in it: above 0 where it widens the gap.
        tapers: settings of crosscuts, and how far a cut that is out of square by 1 makes the gap differ from one
            end to the other [mm].
    """

    size: float
    wet: float
    dry: float
    errors: tuple[tuple[Setting, float], ...]
    tapers: tuple[tuple[Setting, float], ...]

    def tolerances(self, shop: Shop) -> list[float]:
        """Plus or minus of each setting, as often as it comes in the gap [mm]."""
        return [shop.precision[s[0]] * n for s, n in self.errors]

    def worst(self, shop: Shop) -> float:
        """Plus or minus in the worst case [mm]."""
        return worst_case(self.tolerances(shop)) + worst_case(
            [shop.precision["square"] * n / 2 for _, n in self.tapers]
        )

    def likely(self, shop: Shop) -> float:
        """Plus or minus that is likely [mm]: the root of the sum of squares, tapers left out."""
        return root_sum_square(self.tolerances(shop))


def gap(size: float, room: Chain, filled: Chain, moisture: tuple[float, float, float]) -> Gap:
    """The gap between a room and what fills it.

    Args:
        size: planned [mm].
        room: chain from one side of the room to the other.
        filled: chain of what stands in it.
        moisture: content now, wettest, driest [%].
    """
    now, wettest, driest = moisture
    errors: dict[Setting, float] = {}
    tapers: dict[Setting, float] = {}
    move = 0.0
    for chain, sign in ((room, 1.0), (filled, -1.0)):
        for k in chain:
            way = sign * (1.0 if k.size >= 0 else -1.0)
            errors[k.setting] = errors.get(k.setting, 0.0) + way
            move += sign * k.size * k.rate
            if k.across:
                tapers[k.setting] = tapers.get(k.setting, 0.0) + way * 2 * k.across
    return Gap(
        size,
        move * (wettest - now),
        move * (driest - now),
        tuple((s, n) for s, n in errors.items() if n),
        tuple((s, n) for s, n in tapers.items() if n),
    )


@lru_cache(maxsize=64)
def _chances(column: int) -> Any:
    """Standard normal numbers, the same on every run: (builds,) float."""
    numbers = np.random.default_rng((SEED, column)).standard_normal(BUILDS, dtype=np.float32)
    numbers.setflags(write=False)
    return numbers


Noise = tuple[tuple[str, int, float], ...]
"""What a gap is out by: precision it is told for, column of chances, and how often it comes in it."""
Plain = tuple[tuple[float, Noise, Noise], ...]
"""Gaps with nothing but what bears on their builds, so that fits alike are built once: size, errors, tapers."""


def _plain(gaps: Sequence[Gap], season: Season, less: float) -> Plain:
    """Gaps less a limit [mm]; a setting that several of them share has one column."""
    columns: dict[Setting, int] = {}
    rows = []
    for g in gaps:
        size = g.size + (g.wet if season == "wet" else g.dry if season == "dry" else 0.0) - less
        errors = [(s[0], columns.setdefault(s, len(columns)), n) for s, n in g.errors]
        tapers = [("square", columns.setdefault(("square", *s[1:]), len(columns)), n) for s, n in g.tapers]
        rows.append((round(size, 6), tuple(errors), tuple(tapers)))
    return tuple(rows)


@lru_cache(maxsize=512)
def _least(gaps: Plain, exact: Exact) -> Any:
    precision = {k: v / SIGMAS for k, v in exact}

    def sums(noise: Noise) -> Any:
        total = np.zeros(BUILDS, dtype=np.float32)
        for word, column, n in noise:
            total += _chances(column) * np.float32(precision[word] * n)
        return total

    out: Any = np.inf
    for size, errors, tapers in gaps:
        out = np.minimum(out, np.float32(size) + sums(errors) - np.abs(sums(tapers)) / 2)
    out.setflags(write=False)
    return out


def least(gaps: Sequence[Gap], season: Season, exact: Exact, less: float = 0.0) -> Any:
    """The smallest of some gaps in each simulated build.

    Args:
        gaps: of one fit; a setting that several of them share is out by the same in all.
        season: when they are looked at.
        exact: how exactly the shop works, `Shop.exact`.
        less: limit that is taken off [mm].

    Returns:
        (builds,) float [mm].
    """
    return _least(_plain(gaps, season, less), exact)


@lru_cache(maxsize=8192)
def _share_below(gaps: Plain, exact: Exact) -> float:
    return float(np.mean(_least(gaps, exact) < 0))


@lru_cache(maxsize=8192)
def _share_above(gaps: Plain, exact: Exact) -> float:
    return float(np.mean(_least(gaps, exact) > 0))


def share(gaps: Sequence[Gap], season: Season, exact: Exact, limit: float, over: bool) -> float:
    """Share of the builds in which the smallest of some gaps is under a limit [mm], or over it; see `least`."""
    rows = _plain(gaps, season, limit)
    return _share_above(rows, exact) if over else _share_below(rows, exact)
