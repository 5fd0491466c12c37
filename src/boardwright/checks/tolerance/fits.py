"""One fit: what binds or rattles in it, and how that is said."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.tolerance.builds import BUILDS, Builds, Gap
from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.lengths import settle

WORDS = {
    "thickness": "thickness",
    "rip": "rip",
    "crosscut": "crosscut",
    "groove_width": "width of a groove",
    "groove_depth": "depth of a groove",
    "groove_place": "place of a groove or shoulder",
}
SOURCE = (
    "root of the sum of squares: JCGM 100:2008 eq. 10; sizes at one setting are out together; three standard "
    "deviations for the shop's plus or minus (common practice)"
)
FAR = 2.0
"""A limit farther off than this many times the plus or minus that is worst is never met: it is not simulated."""
OFTEN = 0.1
"""One that binds in more builds than this may fail; below it is worth knowing: it takes a shaving to fit."""
SURE = 0.5
"""A fit that binds in more builds than this will fail."""


@dataclass(frozen=True, slots=True)
class Fit:
    """Gaps of which none may close, or all grow too wide.

    Attributes:
        check: code. parts: ids. name: in words, e.g. `drawer 2 in the width of its opening`.
        gaps: of which the least counts.
        binds_under: least of the gap at the wettest time [mm].
        rattles_over: most of the gap, or None. season: at which it rattles.
        rattles: what it does then. binds: what it does else.
        place: in the file.
        fix: how more (True) or less room of so much [mm] is given, in words; the second is the gap that is planned.
        loose: severity of a fit that rattles.
        step: on which a remedy is given, or None for the plan's step [mm].
        by_hand: what to do else.
        alike: how many more are made alike.
    """

    check: str
    parts: tuple[str, ...]
    name: str
    gaps: tuple[Gap, ...]
    place: Place
    fix: Callable[[float, float], str]
    binds_under: float = 0.0
    rattles_over: float | None = None
    season: str = "now"
    binds: str = "binds"
    rattles: str = "rattles"
    loose: Severity = Severity.NOTE
    step: float | None = None
    by_hand: str = "leave it over size and fit it to its place, as measured"
    alike: int = 0

    @property
    def text(self) -> str:
        """Its name, and how many are like it."""
        return self.name + (f" (and {self.alike} alike)" if self.alike else "")

    def least(self, season: str) -> Gap:
        """The gap that is planned smallest."""
        return min(self.gaps, key=lambda g: (g.size + (g.wet if season == "wet" else 0.0), g.errors))


def margins(c: Context, fit: Fit, run: Builds) -> Iterator[Margin]:
    """The share of builds that bind, and that rattle, beside one in a hundred."""
    most = c.tables.figure("share_that_fails").value
    tight = fit.least("wet")
    if tight.size + tight.wet >= fit.binds_under:
        near = any(g.size + g.wet - fit.binds_under < FAR * g.worst(c.shop) for g in fit.gaps)
        share = float(np.mean(run.least(fit.gaps, "wet") < fit.binds_under)) if near else 0.0
        yield Margin(
            fit.check,
            fit.parts,
            f"share of builds in which {fit.text} {fit.binds}",
            share,
            most,
            "share",
            tell=lambda: _binds(c, fit, run, share, most),
        )
    if fit.rattles_over is None or fit.least(fit.season).size > fit.rattles_over:
        return
    wide = fit.least(fit.season)
    near = fit.rattles_over - wide.size - (wide.dry if fit.season == "dry" else 0.0) < FAR * wide.worst(
        c.shop
    )
    loose = float(np.mean(run.least(fit.gaps, fit.season) > fit.rattles_over)) if near else 0.0
    yield Margin(
        fit.check,
        fit.parts,
        f"share of builds in which {fit.text} {fit.rattles}",
        loose,
        most,
        "share",
        tell=lambda: _rattles(c, fit, run, loose, most),
    )


def _stack(c: Context, g: Gap) -> str:
    """The errors of a gap: their sum, and what they are."""
    kinds = Counter()  # type: Counter[str]
    for setting, n in g.errors:
        kinds[setting[0]] += round(abs(n))
    parts = [
        f"{WORDS[k]} ±{c.text(c.shop.precision[k]).removeprefix('about ')}"
        + (f" ({n} times)" if n > 1 else "")
        for k, n in sorted(kinds.items())
    ]
    worst, likely = c.text(g.worst(c.shop)), c.text(g.likely(c.shop))
    return f"±{worst.removeprefix('about ')} at worst, ±{likely.removeprefix('about ')} likely: " + ", ".join(
        parts
    )


def severity(share: float) -> Severity:
    """How much a share of builds that fail matters."""
    return Severity.WARNING if share > OFTEN else Severity.NOTE


def share_text(share: float) -> str:
    """A share of builds in words."""
    if share >= 0.1:
        return f"{share * 100:.0f} of 100 builds"
    return f"{share * 1000:.0f} of 1,000 builds"


def _binds(c: Context, fit: Fit, run: Builds, share: float, most: float) -> Finding:
    tight = fit.least("wet")
    need = _more(run.least(fit.gaps, "wet") - fit.binds_under, most, fit.step or c.piece.step)
    wet = (
        f", {c.text(tight.size + tight.wet)} at {c.piece.moisture.wettest:g} % moisture" if tight.wet else ""
    )
    return _finding(
        c,
        fit,
        Severity.ERROR if share > SURE else severity(share),
        fit.binds,
        share,
        f"{c.text(tight.size)} of room{wet}; {_stack(c, tight)}",
        _remedy(fit, need, tight, _loose_share(fit, run, need) <= most),
    )


def _rattles(c: Context, fit: Fit, run: Builds, share: float, most: float) -> Finding:
    wide = fit.least(fit.season)
    assert fit.rattles_over is not None
    less = _more(fit.rattles_over - run.least(fit.gaps, fit.season), most, fit.step or c.piece.step)
    tight = run.least(fit.gaps, "wet") - fit.binds_under - less
    return _finding(
        c,
        fit,
        fit.loose if share > OFTEN else Severity.NOTE,
        fit.rattles,
        share,
        f"{c.text(wide.size)} of room, {c.text(fit.rattles_over)} is too much; {_stack(c, wide)}",
        _remedy(fit, -less, wide, float(np.mean(tight < 0)) <= most),
    )


def _more(room: Any, most: float, step: float) -> float:
    """Room to add, on the step, so that no more than a share of the builds is short of it [mm]."""
    need = settle(max(0.0, -float(np.quantile(room, most))), step, "up")
    while float(np.mean(room + need < 0)) > most:
        need += step
    return need


def _loose_share(fit: Fit, run: Builds, more: float) -> float:
    if fit.rattles_over is None:
        return 0.0
    return float(np.mean(run.least(fit.gaps, fit.season) + more > fit.rattles_over))


def _remedy(fit: Fit, more: float, g: Gap, enough: bool) -> str:
    return f"{fit.fix(more, g.size + more)}, or {fit.by_hand}" if enough else fit.by_hand


def _finding(
    c: Context, fit: Fit, grade: Severity, does: str, share: float, found: str, remedy: str
) -> Finding:
    return Finding(
        fit.check,
        grade,
        f"{fit.text} {does} in {share_text(share)}",
        fit.place,
        found=found,
        expected=f"at most 1 of 100, of {BUILDS:,} simulated",
        source=SOURCE,
        remedy=remedy,
        parts=fit.parts,
    )
