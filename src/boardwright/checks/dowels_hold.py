"""Dowels that alone carry a panel's ends: their load across beside what their own wood is allowed in shear."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from math import pi

from boardwright.checks.amounts import mass_text
from boardwright.checks.burdens import Burden
from boardwright.checks.changes import more_screws
from boardwright.checks.context import Context
from boardwright.checks.held import Panel
from boardwright.checks.joint_capacity import DOWEL_WOOD
from boardwright.checks.loads import GRAVITY, source
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.checks.screws_hold import MOST_SCREWS, hung_ends, other
from boardwright.checks.shelf_sag import lighter
from boardwright.checks.stiffness import SHARE_SOURCE, SHEAR_SHARE
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Fastener, Joint


def allowed(c: Context, dowel: Fastener) -> float:
    """Load across one dowel for years [N]: its section at the shear strength of its wood along the grain.

    Across the grain, as it is sheared, wood is two to three times as strong: so the figure is on the low side.
    """
    row = c.tables.species.get(DOWEL_WOOD)
    shear = row.shear if row is not None and row.shear is not None else 0.0
    return pi / 4 * dowel.diameter**2 * shear * SHEAR_SHARE


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """Each end of a panel that hangs on dowels alone."""
    for e in hung_ends(c, site, "dowel", allowed):
        tell = partial(_finding, c, e.panel, e.load, e.joint, e.hold, e.value, e.limit)
        yield Margin(
            "strength.dowels", e.parts, f"load on {len(e.hold)} dowels", e.value, e.limit, "N", tell=tell
        )


def _finding(
    c: Context, panel: Panel, load: Burden, joint: Joint, hold: list[Fastener], value: float, limit: float
) -> Finding:
    trial = Trial(c, measure, "strength.dowels", panel.part.id)
    return Finding(
        "strength.dowels",
        Severity.WARNING,
        f"the dowels at an end of {c.label(panel.part.id)} carry more than they are allowed",
        joint.place,
        found=f"{mass_text(c, value / GRAVITY)} on {len(hold)} dowels of {c.text(hold[0].diameter)}",
        expected=f"at most {mass_text(c, limit / GRAVITY)}",
        source=f"shear strength of the dowels' wood, {SHARE_SOURCE}; glue in end grain not counted; "
        f"{source(c.tables, load.use)}; {CAUTION}",
        remedy=listed(
            [
                "let it into dadoes, or lay it on cleats",
                trial.least(
                    more_screws(panel.part.id, joint, "use {} dowels at each end (`count`)"), MOST_SCREWS
                ),
                lighter(trial, panel, load, load.greatest),
            ],
            "",
        ),
        parts=(panel.part.id, other(joint, panel.part)),
    )
