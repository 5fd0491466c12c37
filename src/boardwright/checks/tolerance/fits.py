"""One fit: what binds or rattles in it, and how that is said."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.tolerance.builds import BUILDS, Gap, Season, least, share
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
SURE = 0.6
"""A fit that binds in more builds than this will fail."""
FELT = 0.05
"""A movement smaller than this is not told [mm]."""
NAMED = 3
"""So many kinds of fits are named in one finding, and the rest counted."""
FITTED = "leave it over size and fit it to its place, as measured"


@dataclass(frozen=True, slots=True)
class Fit:
    """Gaps of which none may close, or all grow too wide.

    Attributes:
        check: code. parts: ids. name: in words, e.g. `drawer 2 in the width of its opening`.
        of: what kind of fit it is; those of one kind are told together, e.g. `drawers in their openings`.
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
    of: str
    gaps: tuple[Gap, ...]
    place: Place
    fix: Callable[[float, float], str]
    binds_under: float = 0.0
    rattles_over: float | None = None
    season: Season = "now"
    binds: str = "binds"
    rattles: str = "rattles"
    loose: Severity = Severity.NOTE
    step: float | None = None
    by_hand: str = FITTED
    alike: int = 0

    @property
    def text(self) -> str:
        """Its name, and how many are like it."""
        return self.name + (f" (and {self.alike} alike)" if self.alike else "")

    def least(self, season: Season) -> Gap:
        """The gap that is planned smallest."""
        return min(self.gaps, key=lambda g: (g.size + (g.wet if season == "wet" else 0.0), g.errors))


@dataclass(frozen=True, slots=True)
class Failing:
    """A fit that binds or rattles too often.

    Attributes:
        does: what it does then. share: of the builds. grade: of its finding.
        found: its room, and what that is out by. gap: the one that is told.
        more: room that it is to have more, below 0 less [mm]; None where no size of it keeps both limits.
    """

    fit: Fit
    does: str
    share: float
    grade: Severity
    found: str
    gap: Gap
    more: float | None


def margins(c: Context, fits: Sequence[Fit]) -> Iterator[Margin]:
    """Shares of builds that bind, and that rattle, of the worst of some fits, beside one in a hundred.

    What fails is told once, by the first margin beyond the limit.
    """
    tight = [(s, f) for f in fits if (s := binding(c, f)) is not None]
    loose = [(s, f) for f in fits if (s := rattling(c, f)) is not None]
    most = c.tables.figure("share_that_fails").value
    told = False
    for shares, word in ((tight, "binds"), (loose, "rattles")):
        if not shares:
            continue
        worst, fit = max(shares, key=lambda s: s[0])
        speaks = worst > most and not told
        told = told or speaks
        yield Margin(
            fit.check,
            fit.parts,
            f"{fit.of}: builds in which one {getattr(fit, word)}",
            worst,
            most,
            "share",
            tell=(lambda: _finding(c, _failing(c, tight, loose, most))) if speaks else None,
        )


def binding(c: Context, fit: Fit) -> float | None:
    """Share of the builds in which a fit binds; None where it is planned to."""
    tight = fit.least("wet")
    if tight.size + tight.wet < fit.binds_under:
        return None
    near = any(g.size + g.wet - fit.binds_under < FAR * g.worst(c.shop) for g in fit.gaps)
    return share(fit.gaps, "wet", c.shop.exact, fit.binds_under, False) if near else 0.0


def rattling(c: Context, fit: Fit) -> float | None:
    """Share of the builds in which it rattles; None where nothing does, or it is planned to."""
    wide = fit.least(fit.season)
    if fit.rattles_over is None or wide.size > fit.rattles_over:
        return None
    room = fit.rattles_over - wide.size - (wide.dry if fit.season == "dry" else 0.0)
    near = room < FAR * wide.worst(c.shop)
    return share(fit.gaps, fit.season, c.shop.exact, fit.rattles_over, True) if near else 0.0


def severity(share: float) -> Severity:
    """How much a share of builds that fail matters."""
    return Severity.WARNING if share > OFTEN else Severity.NOTE


def share_text(share: float) -> str:
    """A share of builds in words."""
    if share >= 0.1:
        return f"{share * 100:.0f} of 100 builds"
    return f"{share * 1000:.0f} of 1,000 builds"


def _failing(
    c: Context, tight: Iterable[tuple[float, Fit]], loose: Iterable[tuple[float, Fit]], most: float
) -> list[Failing]:
    """What is beyond the limit, the worst first."""
    found = [_binds(c, f, s, most) for s, f in tight if s > most]
    found += [_rattles(c, f, s, most) for s, f in loose if s > most]
    return sorted(found, key=lambda f: -f.share)


def _binds(c: Context, fit: Fit, often: float, most: float) -> Failing:
    tight = fit.least("wet")
    room = least(fit.gaps, "wet", c.shop.exact, fit.binds_under)
    more = _more(room, most, fit.step or c.piece.step)
    then = least(fit.gaps, fit.season, c.shop.exact) + more
    enough = fit.rattles_over is None or float(np.mean(then > fit.rattles_over)) <= most
    wet = (
        f", {c.text(tight.size + tight.wet)} at {c.piece.moisture.wettest:g} % moisture"
        if abs(tight.wet) > FELT
        else ""
    )
    return Failing(
        fit,
        fit.binds,
        often,
        Severity.ERROR if often > SURE else severity(often),
        f"{c.text(tight.size)} of room{wet}; {_stack(c, tight)}",
        tight,
        more if enough else None,
    )


def _rattles(c: Context, fit: Fit, often: float, most: float) -> Failing:
    wide = fit.least(fit.season)
    assert fit.rattles_over is not None
    room = least(fit.gaps, fit.season, c.shop.exact)
    less = _more(fit.rattles_over - room, most, fit.step or c.piece.step)
    then = least(fit.gaps, "wet", c.shop.exact, fit.binds_under) - less
    return Failing(
        fit,
        fit.rattles,
        often,
        fit.loose if often > OFTEN else Severity.NOTE,
        f"{c.text(wide.size)} of room, {c.text(fit.rattles_over)} is too much; {_stack(c, wide)}",
        wide,
        -less if float(np.mean(then < 0)) <= most else None,
    )


def _more(room: Any, most: float, step: float) -> float:
    """Room to add, on the step, so that no more than a share of the builds is short of it [mm]."""
    need = settle(max(0.0, -float(np.quantile(room, most))), step, "up")
    while float(np.mean(room + need < 0)) > most:
        need += step
    return need


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


def _finding(c: Context, failing: Sequence[Failing]) -> Finding:
    worst = failing[0]
    told: dict[str, list[str]] = {}
    for f in failing:
        told.setdefault(f.fit.text, []).append(f"{f.does} in {share_text(f.share)}")
    says = [f"{name} {' and '.join(does)}" for name, does in told.items()][:NAMED]
    if len(told) > NAMED:
        says.append(f"and {len(told) - NAMED} more kinds of it")
    return Finding(
        worst.fit.check,
        min((f.grade for f in failing), key=list(Severity).index),
        "; ".join(says),
        worst.fit.place,
        found=worst.found,
        expected=f"at most 1 of 100, of {BUILDS:,} simulated",
        source=SOURCE,
        remedy=_remedy(failing),
        parts=tuple(dict.fromkeys(id for f in failing for id in f.fit.parts)),
    )


def _remedy(failing: Sequence[Failing]) -> str:
    """The rooms that were tried and are enough, then what else can be done."""
    rooms: dict[str, list[str]] = {}
    for f in failing:
        if f.more is not None:
            rooms.setdefault(f.fit.fix(f.more, f.gap.size + f.more), []).append(f.fit.name)
    alone = len(rooms) == 1 and all(f.more is not None for f in failing)
    words = list(rooms) if alone else [f"{w} ({' and '.join(names)})" for w, names in rooms.items()]
    by_hand = dict.fromkeys(f.fit.by_hand for f in failing)
    return ", or ".join(part for part in (", ".join(words), *by_hand) if part)
