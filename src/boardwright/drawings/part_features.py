"""The cuts of a part as numbered features, in words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from typing import Any

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words import Printer, words_for_key
from boardwright.piece.cuts import (
    BiscuitSlot,
    Cut,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
    Mortise,
    Moulding,
    Pins,
    Side,
    Tails,
    Tenon,
    VGroove,
)
from boardwright.piece.records import Part

STANDING = (Tenon, Fingers, Tails, Pins, DovetailTongue)
"""Cuts that shape a whole end: both ends may be cut alike."""


@dataclass(frozen=True, slots=True)
class Feature:
    """Equal cuts of a part under one number.

    Attributes:
        number: as in the balloon, from 1.
        cuts: all of one kind and one section.
        words: one line for the key.
    """

    number: int
    cuts: tuple[Cut, ...]
    words: str


def features(part: Part, printer: Printer, letters: Mapping[str, str]) -> list[Feature]:
    """The part's cuts grouped and numbered, in the order in which they stand in the part.

    Args:
        part: the part.
        printer: writes lengths.
        letters: letter of every part id, for what a cut holds.
    """
    return [
        Feature(n, tuple(cuts), words_for_key(cuts, part.size, printer, letters, part.cuts))
        for n, cuts in enumerate(alike(part.cuts, part.size), 1)
    ]


def alike(cuts: tuple[Cut, ...], size: Vec) -> list[list[Cut]]:
    """Cuts that differ only in where the views measure them, and in what they hold.

    Args:
        cuts: of one part.
        size: of the part [mm].
    """
    groups: dict[Cut, list[Cut]] = {}
    for cut in cuts:
        groups.setdefault(_kind(cut, size), []).append(cut)
    return list(groups.values())


def _kind(cut: Cut, size: Vec) -> Cut:
    """The cut without what may differ inside a group, free of the noise of sums."""
    changes: dict[str, Any] = {
        name: "" for name in ("holds", "purpose") if hasattr(cut, name) and not isinstance(cut, Hole)
    }
    if isinstance(cut, Groove | Mortise | DovetailSlot | VGroove):
        third = 3 - cut.side.axis - cut.along
        changes["at"] = round(cut.at, 4) if third == 2 else 0.0
    if isinstance(cut, Mortise) and cut.along != 2:
        changes |= {"start": 0.0, "end": round(cut.end - cut.start, 4)}
    if isinstance(cut, STANDING) and cut.end.axis == 0:
        changes["end"] = Side.END
    if isinstance(cut, BiscuitSlot):
        axes = [k for k in range(3) if k != cut.side.axis]
        changes["at"] = tuple(round(v, 4) if k == 2 else 0.0 for k, v in zip(axes, cut.at, strict=True))
    if isinstance(cut, Moulding) and cut.side.axis == 2:
        whole = size[3 - cut.side.axis - cut.edge.axis]
        if cut.start <= 1e-6 and cut.end >= whole - 1e-6:
            changes |= {"edge": Side.EDGE, "start": 0.0, "end": 0.0}
    if isinstance(cut, Hole):
        changes["at"] = (0.0, round(cut.at[1], 4) if cut.side.axis != 2 else 0.0)
    noisy = {f.name: round(v, 4) for f in fields(cut) if isinstance(v := getattr(cut, f.name), float)}
    return replace(cut, **(noisy | changes))
