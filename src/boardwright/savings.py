"""What a little would save: one size of a design changed within a range, so that a board or a sheet less is needed.

Every size in the range is tried coarsely, the nearest that saves something is narrowed down step by step, and what is
told is checked again as a whole: set out, dry fit, all checks, full layouts.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from boardwright.core.findings import Severity, has_errors
from boardwright.core.lengths import LengthError, Printer, Units, read_length, settle
from boardwright.design.load import load_text
from boardwright.design.source import read_source
from boardwright.pipeline import check_text, stock_found

TRIES = 16
"""Sizes that are tried over the range, at first."""
_PART = re.compile(r"([^.\[\]]+)|\[(\d+)\]")


class NoSuchSize(ValueError):
    """A size that the file does not give, or a range that cannot be read; `str()` says what to write."""


@dataclass(frozen=True, slots=True)
class Range:
    """A size and the range in which it may lie: its path in the file, least and greatest [mm]."""

    path: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Saving:
    """A size that saves something.

    Attributes:
        size: [mm].
        change: from the size in the file [mm].
        lots: title of each lot that needs less, and how many boards or sheets before and after.
        area: face area that is bought less [m2].
        errors: errors of the design with that size; 0 when it can be built.
        worse: findings that are errors or warnings, more than before.
    """

    size: float
    change: float
    lots: tuple[tuple[str, int, int], ...]
    area: float
    errors: int
    worse: int


@dataclass(frozen=True, slots=True)
class Savings:
    """What was found: the size in the file [mm], savings nearest first, how many sizes were tried."""

    present: float
    found: tuple[Saving, ...]
    tried: int
    units: Units
    step: float


Bought = dict[str, tuple[str, int, float]]
"""Lot: its title, boards or sheets, their area [m2]."""


def read_range(text: str, units: Units) -> Range:
    """A range as it is written: `sizes.width=880..920`.

    Raises:
        NoSuchSize: it is not written so.
    """
    path, found, rest = text.partition("=")
    low, dots, high = rest.partition("..")
    if not found or not dots or not path.strip():
        raise NoSuchSize(f"`{text}` is no range; write it as `sizes.width=880..920`")
    try:
        ends = sorted((read_length(low, units), read_length(high, units)))
    except LengthError as why:
        raise NoSuchSize(f"`{text}`: {why}") from None
    if ends[0] <= 0:
        raise NoSuchSize(f"`{text}`: a size must be over 0")
    return Range(path.strip(), ends[0], ends[1])


def savings(
    text: str,
    name: str,
    within: str,
    tables: Mapping[str, str] | None = None,
    say: Callable[[str], None] = lambda _: None,
) -> Savings:
    """Search a range of one size for what saves a board or a sheet.

    Args:
        text: of the design file.
        name: of the file.
        within: the range, as `sizes.width=880..920`.
        tables: texts of the user's own table files, by name.
        say: told what is tried.

    Returns:
        The savings that were found, each checked again.

    Raises:
        NoSuchSize: the file does not give the size, or the range cannot be read.
    """
    return _Search(text, name, within, dict(tables or {}), say).run()


class _Search:
    """One size, changed again and again."""

    def __init__(
        self, text: str, name: str, within: str, tables: dict[str, str], say: Callable[[str], None]
    ) -> None:
        self.name, self.tables, self.say = name, tables, say
        source, _ = read_source(text, name)
        design, _ = load_text(text, name)
        if source is None or design is None:
            raise NoSuchSize("the file cannot be read; see `boardwright check`")
        self.data = source.data
        self.units: Units = "mm" if design.file.units == "mm" else "in"
        self.printer = Printer(self.units, design.step)
        self.range = read_range(within, self.units)
        self.present = self._present()
        self.known: dict[float, Bought | None] = {}

    def _place(self) -> tuple[Any, Any]:
        """What holds the size, and its key there."""
        keys = [m[1] if m[1] else int(m[2]) for m in _PART.finditer(self.range.path)]
        node: Any = self.data
        for key in keys[:-1]:
            node = _in(node, key)
        if not keys or _in(node, keys[-1]) is None:
            near = ", ".join(f"sizes.{n}" for n in (self.data.get("sizes") or {})) or "case.width"
            raise NoSuchSize(
                f"the file gives no `{self.range.path}`; name a size that it gives, such as {near}"
            )
        return node, keys[-1]

    def _present(self) -> float:
        node, key = self._place()
        raw = node[key]
        try:
            return read_length(raw, self.units)
        except (LengthError, TypeError):
            raise NoSuchSize(
                f"`{self.range.path}` is `{raw}`, which is not one length; name the size that it is worked out from"
            ) from None

    def text(self, size: float) -> str:
        """The design with the size, as text."""
        node, key = self._place()
        before = node[key]
        node[key] = f"{size:.6f} mm"
        try:
            return json.dumps(self.data)
        finally:
            node[key] = before

    def bought(self, size: float, quick: bool = True) -> Bought | None:
        """What is bought with the size; None when the piece cannot be set out or laid out."""
        self.say(f"trying {self.printer.text(size)}")
        found = stock_found(self.text(size), self.name, self.tables, quick)
        if found is None or any(f.severity is Severity.ERROR for f in found.findings):
            return None
        return {x.id: (x.title, x.tally.count, x.tally.bought) for x in found.value.lots}

    def rough(self, size: float) -> Bought | None:
        """As `bought`, each size once."""
        size = settle(size, self.printer.step)
        if size not in self.known:
            self.known[size] = self.bought(size)
        return self.known[size]

    def run(self) -> Savings:
        """Try the range, narrow down, check again."""
        now = self.rough(self.present)
        if now is None:
            raise NoSuchSize("the design as it stands cannot be laid out; see `boardwright check`")
        low, high = (settle(x, self.printer.step) for x in (self.range.low, self.range.high))
        steps = max(1, round((high - low) / self.printer.step))
        each = max(1, -(-steps // TRIES))
        sizes = sorted({low + n * each * self.printer.step for n in range(steps // each + 1)} | {high})
        found: list[Saving] = []
        for side in (-1, 1):
            mine = [s for s in sizes if (s - self.present) * side > 1e-9]
            found += self._side(sorted(mine, key=lambda s: abs(s - self.present)), now)
        found.sort(key=lambda s: (abs(s.change), s.size))
        return Savings(self.present, tuple(found), len(self.known), self.units, self.printer.step)

    def _side(self, sizes: list[float], now: Bought) -> list[Saving]:
        """Savings on one side of the size in the file, each more than the one before."""
        out: list[Saving] = []
        best, last = now, self.present
        for size in sizes:
            then = self.rough(size)
            if then is not None and _less(best, then):
                near = self._narrowed(last, size, best)
                saving = self._checked(near)
                if saving is not None and saving.area > (out[-1].area if out else 0.0) + 1e-9:
                    out.append(saving)
                best = then
            last = size
        return out

    def _narrowed(self, worse: float, better: float, before: Bought) -> float:
        """The size nearest to one that does not save, by halves."""
        step = self.printer.step
        while abs(better - worse) > step * 1.5:
            middle = settle((better + worse) / 2, step)
            then = self.rough(middle)
            if then is not None and _less(before, then):
                better = middle
            else:
                worse = middle
        return better

    def _checked(self, size: float) -> Saving | None:
        """The saving of a size, from whole checks and full layouts; None when it is none after all."""
        now, then = self.bought(self.present, False), self.bought(size, False)
        if now is None or then is None or not _less(now, then):
            return None
        lots = tuple(
            (title, count, then.get(id, (title, 0, 0.0))[1])
            for id, (title, count, area) in now.items()
            if then.get(id, (title, 0, 0.0))[2] < area - 1e-9
        )
        area = sum(a for _, _, a in now.values()) - sum(a for _, _, a in then.values())
        before, after = (
            check_text(self.text(s), self.name, tables=self.tables) for s in (self.present, size)
        )
        serious = [sum(f.severity is not Severity.NOTE for f in r.findings) for r in (before, after)]
        errors = (
            sum(f.severity is Severity.ERROR for f in after.findings) if has_errors(after.findings) else 0
        )
        return Saving(size, size - self.present, lots, area, errors, max(0, serious[1] - serious[0]))


def _in(node: Any, key: Any) -> Any:
    if isinstance(node, dict):
        return node.get(key)
    if isinstance(node, list) and isinstance(key, int) and key < len(node):
        return node[key]
    return None


def _less(before: Bought, after: Bought) -> bool:
    """Whether less is bought in all, and no lot needs more boards or sheets than it saves elsewhere."""
    return sum(a for _, _, a in after.values()) < sum(a for _, _, a in before.values()) - 1e-6 and sum(
        n for _, n, _ in after.values()
    ) <= sum(n for _, n, _ in before.values())
