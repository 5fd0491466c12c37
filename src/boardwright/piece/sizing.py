"""Sizes while a piece is set out: from the file, or from the trade's default; settled on the step; explained."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

from boardwright.core.arithmetic import ArithmeticProblem, CircularSizes, Resolver, UnknownSize, parse
from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import INCH, LengthError, Printer, settle
from boardwright.design.load import Design, length_finding, unreadable
from boardwright.design.schema import Length
from boardwright.piece.records import Reason

Direction = Literal["nearest", "down", "up"]
Choice = tuple[str, Length | None]
"""A path in the file and what stands there, or None when it is not given."""


_READING = {"in": INCH / 1000, "mm": 0.01}
"""Finest reading that a size between two steps is given in [mm]: 0.001 in or 0.01 mm, as a caliper shows it."""


def about(printer: Printer, mm: float) -> str:
    """A size found by computing, with its unit: on the step as it is, else to the nearest caliper reading.

    `about` stands before it when the reading is not the size itself, so that no number claims more than it knows.
    """
    grain = _READING[printer.units]
    if printer.on_step(mm):
        return printer.text(mm)
    near = round(mm / grain) * grain
    return printer.text(near) if abs(near - mm) < 1e-6 else f"about {printer.text(near)}"


NOT_CUT = ("sizes.", "stock.", "shop.", "delivery.")
AS_BOUGHT = (".screw_length", ".diameter", ".countersink", ".slides.length", ".slides.side")
"""Lengths that are no cut of the maker's: names for sums, thicknesses, tools, bought things, doors on the way."""


class Sizer:
    """Reads, settles and explains sizes; collects what is wrong with them."""

    def __init__(self, design: Design, outside: Callable[[str], float | None]) -> None:
        self.design = design
        self.printer = Printer("mm" if design.units == "mm" else "in", design.step)
        self.step = design.step
        self.findings: list[Finding] = []
        self.reasons: list[Reason] = []
        self.explained: dict[str, float] = {}
        self._reported: set[str] = set()
        self._moved: dict[str, tuple[str, float]] = {}
        self._as_written: dict[str, float] = {}
        lengths = {path: self._independent(path, raw) for path, raw in design.lengths.items()}
        self._resolver = Resolver(lengths, design.file.units, outside)

    def _independent(self, path: str, raw: str | int | float) -> str | int | float:
        """A size that leans on no other is settled before anything is worked out from it; sums stay as written."""
        if path.startswith(NOT_CUT) or path.endswith(AS_BOUGHT):
            return raw
        try:
            expression = parse(str(raw), self.design.file.units)
            if expression.names:
                return raw
            mm = expression.value(lambda _: 0.0)
        except (ArithmeticProblem, ZeroDivisionError):
            return raw
        self._as_written[path] = mm
        return f"{self.settled(mm):.9f} mm"

    def text(self, mm: float) -> str:
        """A size in the plan's units, without the unit."""
        return self.printer.size(mm)

    def about(self, mm: float) -> str:
        """A size that may lie between two steps, with its unit, as a finding gives it."""
        return about(self.printer, mm)

    def settled(self, mm: float, direction: Direction = "nearest") -> float:
        """A size on the step [mm]."""
        return settle(mm, self.step, direction)

    def read(self, path: str) -> float | None:
        """What a length in the file comes to [mm]; None, with a finding, when it comes to nothing."""
        try:
            return self._resolver.value(path)
        except CircularSizes as problem:
            key = "ring:" + " ".join(problem.ring)
            ring = " -> ".join(problem.ring)
            self._once(
                key,
                Finding(
                    "size.circular",
                    Severity.ERROR,
                    "sizes lean on each other in a ring",
                    self.design.place(path),
                    found=ring,
                    expected="each size to rest on sizes that do not rest on it",
                    remedy="give one of them a number",
                ),
            )
        except UnknownSize as problem:
            if problem.name not in self._names(path):
                return None
            near = f"did you mean `{problem.near[0]}`?" if problem.near else "name it under `sizes:`"
            self._once(
                f"unknown:{path}:{problem.name}",
                Finding(
                    "size.unknown-name",
                    Severity.ERROR,
                    f"`{problem.name}` is no size that is known",
                    self.design.place(path),
                    found=str(self.design.lengths.get(path, "")),
                    expected="a name under `sizes:`, the path of another length, `stock.NAME`, or PART.length",
                    remedy=near,
                ),
            )
        except (ArithmeticProblem, LengthError) as problem:
            if not self._rests_on_unreadable(path):
                raw = self.design.lengths.get(path, path)
                self._once(f"sum:{path}", length_finding(self.design.source, path, raw, f"at {problem}"))
        return None

    def _names(self, path: str) -> tuple[str, ...]:
        """The names in the sum at a path; none when it cannot be read."""
        raw = self.design.lengths.get(path)
        if not isinstance(raw, str) or unreadable(raw, self.design.file.units):
            return ()
        return parse(raw, self.design.file.units).names

    def _rests_on_unreadable(self, path: str) -> bool:
        """True when a length, or one that it needs, cannot be read as it stands: the file's own check says so."""
        waiting, seen = [path], set()
        while waiting:
            at = waiting.pop()
            key = at if at in self.design.lengths else f"sizes.{at}"
            if key in seen or key not in self.design.lengths:
                continue
            seen.add(key)
            if unreadable(self.design.lengths[key], self.design.file.units):
                return True
            waiting += self._names(key)
        return False

    def _once(self, key: str, finding: Finding) -> None:
        if key not in self._reported:
            self._reported.add(key)
            self.findings.append(finding)

    def check_all(self) -> None:
        """Read every length in the file, so that each wrong one is reported even when no form asks for it."""
        for path in self.design.lengths:
            self.read(path)

    def given(self, choices: Sequence[Choice]) -> tuple[str, float] | None:
        """The first of several keys that the file gives: its path and value [mm]."""
        for path, length in choices:
            if length is not None:
                value = self.read(path)
                if value is not None:
                    return path, value
        return None

    def size(
        self,
        name: str,
        choices: Sequence[Choice],
        default: float,
        *,
        rule: str = "",
        source: str = "common practice",
        total: str = "",
        direction: Direction = "nearest",
        least: float = 0.0,
        settle_it: bool = True,
    ) -> float:
        """A size of the piece: given, or by the trade's rule; settled on the step and explained.

        Args:
            name: what it is called in `explain`.
            choices: keys that may give it, nearest first.
            default: the rule's value [mm].
            rule: the rule in words.
            source: where the rule comes from.
            total: the rule's sum.
            direction: safe direction to settle in.
            least: a given size below this is refused with a finding [mm].
            settle_it: False for what is not cut, such as a measured thickness.

        Returns:
            The size [mm].
        """
        found = self.given(choices)
        if found is None:
            value = self.settled(default, direction) if settle_it else default
            self.explain(name, value, total, rule, source)
            return value
        path, raw = found
        value = self.settled(raw) if settle_it else raw
        raw = self._as_written.get(path, raw)
        text = str(self.design.lengths.get(path, ""))
        if value < least - 1e-9:
            self._once(
                f"least:{path}",
                Finding(
                    "size.too-small",
                    Severity.ERROR,
                    f"`{path}` is too small",
                    self.design.place(path),
                    found=self.about(raw),
                    expected=f"at least {self.printer.text(self.settled(least, 'up'))}",
                    remedy=f"make it {self.printer.text(self.settled(least, 'up'))} or more",
                ),
            )
            value = max(self.settled(default, direction), least)
        elif settle_it and abs(value - raw) > 1e-4:
            own = text in (self.text(raw), self.printer.text(raw))
            self._moved.setdefault(path, (self.about(raw) if own else f"{text} = {self.about(raw)}", value))
        self.explain(name, value, text, "", path, given=True)
        return value

    def moved(self) -> list[Finding]:
        """One note for all given sizes that lie between two steps, the first in the file where it stands."""
        if not self._moved:
            return []
        design = self.design
        places = {path: design.place(path) for path in self._moved}
        paths = sorted(places, key=lambda path: (places[path].line, places[path].column))
        now = {path: self.printer.text(value) for path, (_, value) in self._moved.items()}
        alone = len(paths) == 1
        what = f"`{paths[0]}` was" if alone else f"{len(paths)} given sizes were"
        sizes = [f"`{path}` {self._moved[path][0]}, now {now[path]}" for path in paths]
        return [
            Finding(
                "size.settled",
                Severity.NOTE,
                f"{what} settled on the step of {self.printer.text(self.step)}",
                places[paths[0]],
                found=self._moved[paths[0]][0] if alone else "; ".join(sizes),
                expected=now[paths[0]] if alone else "",
                remedy="none needed; give a size on the step, or a finer `work_to`, to keep it as it stands",
            )
        ]

    def choose(
        self,
        name: str,
        given: str | None,
        default: str,
        rule: str,
        path: str = "",
        source: str = "common practice",
    ) -> str:
        """A choice that is no size, such as a kind of joint: given, or the trade's; explained.

        Args:
            name: what it is called in `explain`.
            given: what the file says, or None.
            default: the trade's choice.
            rule: why.
            path: the key in the file.
            source: of the rule.
        """
        word = default if given is None else given
        reason = Reason(
            name, 0.0, "", "" if given else rule, path if given else source, given is not None, word
        )
        self.reasons.append(reason)
        return word

    def explain(
        self, name: str, value: float, total: str, rule: str = "", source: str = "", given: bool = False
    ) -> None:
        """Keep why a size is what it is."""
        self.explained[name] = value
        self.reasons.append(Reason(name, value, total, rule, source, given))
