"""Builds by the thousand: each fit as it comes out when every setting is out by chance."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.checks.shop import Shop
from boardwright.checks.tolerance.chains import Chain, Setting
from boardwright.formulas.tolerances import root_sum_square, worst_case

BUILDS = 10_000
SEED = 20_000_101
SIGMAS = 3.0
"""The shop's plus or minus is so many standard deviations."""


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


@lru_cache(maxsize=8)
def _chances(columns: int) -> Any:
    """Standard normal numbers, the same on every run: (builds, columns) float."""
    numbers = np.random.default_rng(SEED).standard_normal((columns, BUILDS), dtype=np.float32)
    numbers.setflags(write=False)
    return numbers


@dataclass(frozen=True, slots=True)
class Builds:
    """Simulated builds of a piece: one number for each setting and build, shared by all fits."""

    shop: Shop
    columns: dict[Setting, int]
    numbers: Any

    def least(self, gaps: Sequence[Gap], season: str = "wet") -> Any:
        """The smallest of some gaps in each build, `wet`, `dry` or `now`: (builds,) float [mm]."""
        return np.min([self._gap(g, season) for g in gaps], axis=0)

    def _gap(self, g: Gap, season: str) -> Any:
        out = np.full(BUILDS, g.size + {"wet": g.wet, "dry": g.dry, "now": 0.0}[season])
        for setting, n in g.errors:
            out += self.numbers[self.columns[setting]] * (self.shop.precision[setting[0]] * n / SIGMAS)
        if g.tapers:
            taper = np.zeros(BUILDS)
            for setting, n in g.tapers:
                taper += self.numbers[self.columns[("square", *setting[1:])]] * (
                    self.shop.precision["square"] * n / SIGMAS
                )
            out -= np.abs(taper) / 2
        return out


def builds(shop: Shop, gaps: Iterable[Gap]) -> Builds:
    """Simulate builds.

    Args:
        shop: its precision.
        gaps: all that will be asked for.
    """
    columns: dict[Setting, int] = {}
    for g in gaps:
        for s, _ in g.errors:
            columns.setdefault(s, len(columns))
        for s, _ in g.tapers:
            columns.setdefault(("square", *s[1:]), len(columns))
    size = max(32, 1 << (len(columns) - 1).bit_length()) if columns else 32
    return Builds(shop, columns, _chances(size))
