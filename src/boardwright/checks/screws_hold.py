"""Screws that alone carry a panel's ends: their load across the shank beside what wood is allowed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from boardwright.checks.amounts import mass_text
from boardwright.checks.burdens import Burden
from boardwright.checks.changes import more_screws
from boardwright.checks.context import Context
from boardwright.checks.held import Panel
from boardwright.checks.loads import GRAVITY, source
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.checks.shelf_sag import lighter
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.screws import screw_lateral_hardwood, screw_lateral_softwood
from boardwright.piece.records import Fastener, Joint, Part

SAFETY = 1.6
"""Load at the proportional limit over the load that is allowed: Wood Handbook, fastenings (from memory)."""
END_GRAIN = 0.67
"""Share that a screw across the grain keeps in end grain: NDS (from memory)."""
FULL_GRIP = 7.0
"""Diameters of thread from which the full load holds: Wood Handbook FPL-GTR-282 eq. 8-13."""
MOST_SCREWS = 12
"""No more than so many screws are advised beyond those that a joint has."""
SOURCE = (
    "Wood Handbook FPL-GTR-282 eq. 8-13 over 1.6 (from memory); end grain 0.67: NDS (from memory); glue in end grain "
    f"not counted; {CAUTION}"
)


@dataclass(frozen=True, slots=True)
class HungEnd:
    """An end of a panel that hangs on level fasteners alone.

    Attributes:
        panel, load: what hangs and what it carries. joint: at this end. hold: its fasteners.
        value: load on them [N]. limit: what they are allowed [N].
    """

    panel: Panel
    load: Burden
    joint: Joint
    hold: list[Fastener]
    value: float
    limit: float

    @property
    def parts(self) -> tuple[str, str]:
        """The panel, and what it hangs on."""
        return self.panel.part.id, other(self.joint, self.panel.part)


def hung_ends(
    c: Context, site: Site, kind: str, allowed: Callable[[Context, Fastener], float]
) -> Iterator[HungEnd]:
    """Each end of a panel that hangs on fasteners of a kind alone; alike ends once.

    Args:
        c: the piece.
        site: its loads.
        kind: of the fasteners.
        allowed: what one of them may carry [N].
    """
    fasteners = {f.id: f for f in c.piece.fasteners if f.kind == kind}
    seen: set[tuple[str, float, float]] = set()
    for panel, load in site.loaded:
        if len(panel.spans) > 1:
            continue
        for joint in panel.joints:
            hold = level_only(panel, joint, fasteners)
            value = load.greatest * panel.part.box.size(0) * panel.part.box.size(1) / 2
            limit = sum(allowed(c, f) for f in hold)
            key = (panel.part.letter, round(value, 3), round(limit, 3))
            if limit > 0 and key not in seen:
                seen.add(key)
                yield HungEnd(panel, load, joint, hold, value, limit)


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """Each end of a panel that hangs on screws alone, in solid wood."""
    for e in hung_ends(c, site, "screw", allowed):
        tell = partial(_finding, c, e.panel, e.load, e.joint, e.hold, e.value, e.limit)
        yield Margin(
            "strength.screws", e.parts, f"load on {len(e.hold)} screws", e.value, e.limit, "N", tell=tell
        )


def other(joint: Joint, part: Part) -> str:
    """The other part of a joint."""
    return joint.second if joint.first == part.id else joint.first


def level_only(panel: Panel, joint: Joint, fasteners: dict[str, Fastener]) -> list[Fastener]:
    """The level ones of some fasteners, in a joint in which nothing lies under the panel and no long grain is glued."""
    own = [fasteners[id] for id in joint.fasteners if id in fasteners]
    ends = {id for s in panel.spans for h in s.between for id in h.parts}
    if joint.kind != "butt" or other(joint, panel.part) not in ends:
        return []
    if any(k.axis == 2 for k in joint.contacts):
        return []
    return [f for f in own if abs(f.direction[2]) < 0.1]


def allowed(c: Context, f: Fastener) -> float:
    """Load across one screw [N]; 0 where what takes its thread is no solid wood."""
    into, held = c.parts.get(f.into), c.parts.get(f.held)
    if into is None or held is None or into.stock.kind != "wood":
        return 0.0
    lateral = screw_lateral_hardwood if into.stock.hardwood else screw_lateral_softwood
    load = lateral(into.stock.specific_gravity, f.diameter) / SAFETY
    along = abs(sum(a * b for a, b in zip(f.direction, into.pose.x, strict=True)))
    axis = max(range(3), key=lambda i: abs(f.direction[i]))
    near = into.box.low[axis] if f.direction[axis] > 0 else into.box.high[axis]
    grip = abs(f.tip[axis] - near)
    return load * (END_GRAIN if along > 0.9 else 1.0) * min(1.0, grip / (FULL_GRIP * f.diameter))


def _finding(
    c: Context, panel: Panel, load: Burden, joint: Joint, hold: list[Fastener], value: float, limit: float
) -> Finding:
    trial = Trial(c, measure, "strength.screws", panel.part.id)
    return Finding(
        "strength.screws",
        Severity.WARNING,
        f"the screws at an end of {c.label(panel.part.id)} carry more than they are allowed",
        joint.place,
        found=f"{mass_text(c, value / GRAVITY)} on {len(hold)} screws, {hold[0].name}",
        expected=f"at most {mass_text(c, limit / GRAVITY)}",
        source=f"{SOURCE}; {source(c.tables, load.use)}",
        remedy=listed(
            [
                "let it into dadoes, or lay it on cleats",
                trial.least(
                    more_screws(panel.part.id, joint, "use {} screws at each end (`count`)"), MOST_SCREWS
                ),
                lighter(trial, panel, load, load.greatest),
            ],
            "",
        ),
        parts=(panel.part.id, other(joint, panel.part)),
    )
