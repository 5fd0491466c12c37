"""What the file says about a drawer: its own keys first, then those for all drawers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from boardwright.design.schema import Drawer, JointKeys
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut
from boardwright.piece.sizing import Choice


class Layers:
    """Several mappings for one drawer, nearest first."""

    def __init__(self, layers: Sequence[tuple[str, Drawer | None]]) -> None:
        self.layers = [(path, keys) for path, keys in layers if keys is not None]

    def values(self, dotted: str) -> list[tuple[str, Any]]:
        """Every value given for a key such as `front.reveal`, with its path, nearest first."""
        out = []
        for path, keys in self.layers:
            value: Any = keys
            for step in dotted.split("."):
                value = getattr(value, step, None)
                if value is None:
                    break
            if value is not None:
                out.append((f"{path}.{dotted}", value))
        return out

    def choices(self, dotted: str) -> list[Choice]:
        """The lengths given for a key."""
        return [(path, value) for path, value in self.values(dotted)]

    def choose(self, out: SetOut, id: str, dotted: str, default: str, rule: str) -> str:
        """The word given for a key, or the trade's; explained under the drawer's id."""
        found = self.values(dotted)
        given = str(found[0][1]) if found else None
        return out.sizer.choose(f"{id}.{dotted}", given, default, rule, self.path(dotted))

    def joint(self, dotted: str) -> tuple[JointKeys | None, str]:
        """The joint given for a key and its path."""
        found = self.values(dotted)
        return (found[0][1], found[0][0]) if found else (None, self.path(dotted))

    def path(self, dotted: str) -> str:
        """Where a key stands or would stand."""
        found = self.values(dotted)
        base = self.layers[0][0] if self.layers else "drawers"
        return found[0][0] if found else f"{base}.{dotted}"

    def stock(self, out: SetOut, dotted: str, default: Stock) -> Stock:
        """The stock named for a key, or the default."""
        found = self.values(dotted)
        return out.stock((found[0][0], str(found[0][1]))) if found else default


def usual_stock(out: SetOut, wanted: float, sheets: bool | None, fallback: Stock) -> Stock:
    """The stock of the file nearest to a thickness [mm] and no thicker than half as much again.

    Args:
        out: the bench.
        wanted: thickness [mm].
        sheets: True for sheets first, None for no matter.
        fallback: when nothing is near.
    """
    near = [s for s in out.stocks.values() if wanted * 0.6 <= s.thickness <= wanted * 1.5]
    liked = [s for s in near if sheets is None or (s.kind == "sheet") == sheets] or near
    return min(liked, key=lambda s: abs(s.thickness - wanted)) if liked else fallback
