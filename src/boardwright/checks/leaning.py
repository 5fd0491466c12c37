"""Whether the piece stands on carpet with everything open, and whether it falls over backward."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.amounts import moment_text
from boardwright.checks.context import Context
from boardwright.checks.loads import GRAVITY
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.tipping import NEWTON_METRES, moment
from boardwright.checks.weights import Mass, Moving, Weighed, opened
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.tipping import lean, righting


def behind(w: Weighed, open_: frozenset[str], angle: float, floor: float) -> float:
    """Righting moment about the rear feet of a piece that leans back by an angle [rad], empty [N mm]."""
    masses = [w.still, *(_at(m, m.motion.id in open_) for m in w.moving)]
    return sum(righting(k.mass * GRAVITY, w.rear - k.at[1], k.at[2] - floor, angle) for k in masses)


def _at(m: Moving, out: bool) -> Mass:
    return Mass(m.own.mass, opened(m.motion, m.own.at)) if out else m.own


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """On carpet with everything open; and about the rear feet, with what turns backward open."""
    w = site.weighed
    if w is None:
        return
    floor = c.piece.outside.low[2]
    block = c.tables.figure("clothing_rule_block")
    angle = lean(block.value, max(1.0, w.rear - w.foot))
    everything = frozenset(m.motion.id for m in w.moving)
    level = min(moment(w, full, everything, 0.0, floor) for full in (False, True))
    carpet = min(moment(w, full, everything, angle, floor) for full in (False, True))
    if everything and level >= 0:
        yield Margin(
            "stability.carpet",
            (),
            "righting moment on carpet, all open",
            carpet / NEWTON_METRES,
            0.0,
            "N m",
            least=True,
            tell=lambda: Finding(
                "stability.carpet",
                Severity.NOTE,
                "on carpet the piece tips forward when everything is open: its rear stands on the strip along the wall",
                c.piece.motions[0].place,
                found=f"{moment_text(c, -carpet)} that tip it, its rear {c.text(block.value)} high; on a hard floor "
                f"{moment_text(c, level)} that hold it",
                expected="more that holds it back than tips it",
                source=f"moments of the weights: mechanics; {block.reason}; {CAUTION}",
                remedy=f"put shims {c.up(block.value)} thick under its front feet, or anchor it to the wall",
            ),
        )
    back = min(behind(w, open_, angle, floor) for open_ in (frozenset[str](), everything))
    yield Margin(
        "stability.backward",
        (),
        "righting moment about the rear feet",
        back / NEWTON_METRES,
        0.0,
        "N m",
        least=True,
        tell=lambda: Finding(
            "stability.backward",
            Severity.WARNING,
            "the piece falls over backward",
            c.piece.parts[0].place,
            found=f"{moment_text(c, -back)} that tip it about its rear feet, its front {c.text(block.value)} high",
            expected="more that holds it than tips it",
            source=f"moments of the weights: mechanics; {block.reason}; {CAUTION}",
            remedy=f"move the rear feet {c.up(-back / (w.mass * GRAVITY))} back, or anchor it to the wall",
        ),
    )
