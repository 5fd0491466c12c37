"""Shelves, bottoms and tops: stress in bending and shear beside what their stock is allowed."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.amounts import mass_text, stress_text
from boardwright.checks.bending import bent
from boardwright.checks.burdens import Burden
from boardwright.checks.changes import other_wood, post, thicker
from boardwright.checks.context import Context
from boardwright.checks.held import Panel
from boardwright.checks.loads import GRAVITY, source
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.checks.shelf_sag import lighter
from boardwright.checks.stiffness import BENDING_SHARE, SHARE_SOURCE, SHEAR_SHARE
from boardwright.core.findings import Finding, Severity


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """Bending and shear of every panel that carries something; alike panels once."""
    seen: set[tuple[str, float, float]] = set()
    for panel, load in site.loaded:
        b = bent(c, panel, load.greatest)
        if b is None:
            continue
        key = (panel.part.letter, round(load.greatest, 9), round(b.stress, 4))
        if key in seen:
            continue
        seen.add(key)
        if b.allowed is not None:
            yield _margin(c, "strength.bending", panel, load, b.stress, b.allowed, BENDING_SHARE)
        if b.stiff.shear is not None:
            yield _margin(c, "strength.shear", panel, load, b.shear, b.stiff.shear, SHEAR_SHARE)


def _margin(
    c: Context, code: str, panel: Panel, load: Burden, value: float, allowed: float, share: float
) -> Margin:
    return Margin(
        code,
        (panel.part.id,),
        "bending stress" if code.endswith("bending") else "shear stress",
        value,
        allowed,
        "N/mm2",
        tell=lambda: _finding(c, panel, load, code, value, allowed, share),
    )


def _finding(
    c: Context, panel: Panel, load: Burden, code: str, value: float, allowed: float, share: float
) -> Finding:
    part = panel.part
    area = part.size[0] * part.size[1]
    mass = load.greatest * area / GRAVITY
    bending = code == "strength.bending"
    fails = value > allowed / share
    words = (
        ("breaks under its load" if fails else "is bent too hard")
        if bending
        else "is sheared too hard at its ends"
    )
    design = c.tables.figure("shelf_load_books").reason if load.greatest > load.everyday else ""
    return Finding(
        code,
        Severity.ERROR if fails else Severity.WARNING,
        f"{c.label(part.id)} {words}",
        part.place,
        found=f"{stress_text(c, value)} in {'bending' if bending else 'shear'} "
        f"under {mass_text(c, mass)}, spread evenly",
        expected=f"at most {stress_text(c, allowed)} for years; the mean strength is {stress_text(c, allowed / share)}",
        source=f"{SHARE_SOURCE}; {design or source(c.tables, load.use)}; {CAUTION}",
        remedy=_remedies(c, panel, load, code),
        parts=(part.id,),
    )


def _remedies(c: Context, panel: Panel, load: Burden, code: str) -> str:
    """What brings the stress within its limit; each is tried."""
    part = panel.part
    trial = Trial(c, measure, code, part.id)
    found = [
        trial.smallest(thicker(c, part)),
        trial.smallest(other_wood(c, part)),
        trial.smallest([post(part, panel.spans[0], c.piece.outside.low[2])]),
        lighter(trial, panel, load, load.greatest),
    ]
    return listed(found, "shorten its span and carry less")
