"""The dry fit at both ends of the year: what meets then, and did not when it was built."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from boardwright.checks.context import Context
from boardwright.checks.movement.fits import Year
from boardwright.core.findings import Finding, Severity
from boardwright.solids.year_fit import Season, ends, seasons, year_fit

SOURCE = "dry fit of the solids, swollen by Wood Handbook FPL-GTR-190 eq. 13-2"


def check(year: Year, known: Collection[str]) -> Iterator[Finding]:
    """What meets at the driest or wettest time.

    Args:
        year: the piece through the year.
        known: parts that other checks of movement speak of already; nothing more is said of them.
    """
    for s in seasons(year.moves, year.c.fit, ends(year.c.piece.moisture)):
        yield from of_season(year.c, s, known)


def of_season(c: Context, s: Season, known: Collection[str] = ()) -> Iterator[Finding]:
    """What meets at one time of the year."""
    for o in s.fit.overlaps:
        if o.first in known or o.second in known:
            continue
        shared = " × ".join(c.text(o.box.size(i)) for i in range(3))
        yield Finding(
            "fit.binds-in-year",
            Severity.ERROR,
            f"{c.label(o.first)} and {c.label(o.second)} press on each other at {s.percent:.3g} % moisture",
            c.parts[o.second].place,
            found=f"{shared} shared",
            expected=f"room at {s.percent:.3g} %",
            source=SOURCE,
            remedy="leave more room between them" + _cut_at(c, s),
            parts=(o.first, o.second),
        )
    motions = {m.id: m for m in c.piece.motions}
    for h in s.fit.hits:
        m = motions[h.motion]
        if h.part in known or h.obstacle in known:
            continue
        how = f"{h.opening:.0f} degrees" if m.turn else c.text(h.opening)
        yield Finding(
            "fit.binds-in-year",
            Severity.ERROR,
            f"{m.name} hits {c.label(h.obstacle)} at {s.percent:.3g} % moisture",
            m.place,
            found=f"{c.label(h.part)} meets it {how} open",
            expected="a free way through the year",
            source=SOURCE,
            remedy="leave more room between the two" + _cut_at(c, s),
            parts=(h.part, h.obstacle),
        )


def _cut_at(c: Context, s: Season) -> str:
    """The moisture nearest to today's at which the parts could be cut so that nothing meets, if one is found."""
    m = c.piece.moisture
    for step in range(1, 5):
        now = m.now + (s.percent - m.now) * step / 4
        other = replace(c.piece, moisture=replace(m, now=now))
        if not any(t.fit.overlaps or t.fit.hits for t in year_fit(other, c.fit)):
            return f", or cut the parts when the wood is at {now:.3g} % instead of {m.now:.3g} %"
    return ""
