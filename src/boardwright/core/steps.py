"""The step that a plan is worked to: settling sizes on it, and sharing a length out in whole steps."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import Literal

_NOISE = 1e-6
"""A difference below this, in millimetres or in steps, is noise of the arithmetic and not a size."""


def steps_in(mm: float, step: float) -> int | None:
    """How many whole steps a length is, or None when it is not on the step.

    Args:
        mm: a length [mm].
        step: the finest step [mm].
    """
    near = round(mm / step)
    return near if abs(mm - near * step) <= _NOISE else None


def on_grid(count: int, step: float) -> float:
    """The length of so many steps [mm]; decimal steps give the float that the decimal text gives."""
    whole = round(1.0 / step)
    if whole >= 1 and abs(whole * step - 1.0) < 1e-12:
        return count / whole
    return count * step


def settle(mm: float, step: float, direction: Literal["nearest", "down", "up"] = "nearest") -> float:
    """A length brought to the step; one that is on it within the noise of the arithmetic stays there.

    Args:
        mm: a length [mm].
        step: the step [mm].
        direction: which way; half a step goes up with `nearest`.

    Returns:
        A whole number of steps [mm].

    Raises:
        ValueError: step <= 0.
    """
    if step <= 0:
        raise ValueError("step must be positive")
    count = mm / step
    near = round(count)
    if abs(count - near) <= _NOISE:
        return on_grid(near, step)
    if direction == "down":
        return on_grid(math.floor(count), step)
    if direction == "up":
        return on_grid(math.ceil(count), step)
    return on_grid(math.floor(count + 0.5 + _NOISE), step)


def share_out(total: float, weights: Sequence[float], step: float) -> list[float]:
    """A length split in proportion to weights, in whole steps.

    What is left when `total` is not on the step, less than one step, goes to the last piece. Pieces of equal
    weight differ by at most one step; odd steps go to the middle first, so that the outer pieces, which the
    eye compares, stay equal (common practice).

    Args:
        total: the length to split, 0 or more [mm].
        weights: one positive weight a piece.
        step: the step [mm].

    Returns:
        One length a piece, each less than a step from its exact share; they add up to `total` [mm].

    Raises:
        ValueError: total < 0, step <= 0, no weights, or a weight that is not positive.
    """
    if total < 0 or step <= 0 or not weights or min(weights) <= 0:
        raise ValueError("share_out needs a total of 0 or more, a positive step and positive weights")
    whole = math.floor(total / step + _NOISE)
    rest = max(0.0, total - whole * step)
    rest = rest if rest > _NOISE * step else 0.0
    last = len(weights) - 1
    part = Fraction(rest) / Fraction(step)
    sum_of_weights = sum(Fraction(w) for w in weights)
    ideal = [(whole + part) * Fraction(w) / sum_of_weights for w in weights]
    ideal[last] -= part
    counts = [max(0, math.floor(x)) for x in ideal]
    left = whole - sum(counts)
    groups: dict[tuple[Fraction, float], list[int]] = {}
    for i, weight in enumerate(weights):
        groups.setdefault((counts[i] - ideal[i], -weight), []).append(i)
    for key in sorted(groups):
        for i in _from_the_middle(groups[key], left):
            counts[i] += 1
            left -= 1
    pieces = [on_grid(c, step) for c in counts]
    if rest:
        pieces[last] = total - math.fsum(pieces[:last])
    return pieces


def _from_the_middle(places: list[int], count: int) -> list[int]:
    """Which `count` of the places get one step more: an odd one to the middle, then pairs outward."""
    if count >= len(places):
        return places
    half = len(places) // 2
    pairs = [(half - 1 - k, len(places) - half + k) for k in range(half)]
    if count % 2 == 0:
        chosen = [i for pair in pairs[: count // 2] for i in pair]
    elif len(places) % 2:
        chosen = [half, *(i for pair in pairs[: count // 2] for i in pair)]
    else:
        chosen = [half - 1, *(i for pair in pairs[1 : count // 2 + 1] for i in pair)]
    return [places[i] for i in sorted(chosen)]
