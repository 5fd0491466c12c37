"""Shelves, bottoms and tops: how far they sag under what they carry, at once and after ten years."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.amounts import modulus_text
from boardwright.checks.bending import Bent, bent
from boardwright.checks.burdens import Burden
from boardwright.checks.changes import edge_strip, higher, load_of, other_wood, post, thicker
from boardwright.checks.context import Context
from boardwright.checks.held import Panel
from boardwright.checks.loads import GRAVITY, POUND, said, source
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.core.findings import Finding, Severity


def limit(c: Context, burden: Burden, span: float) -> float:
    """Largest sag [mm]: of what is seen, after ten years; of a bottom, when it is loaded."""
    key = "shelf_deflection_ratio" if burden.role == "bottom" else "sag_visible_ratio"
    return span / c.tables.figure(key).value


def sag(burden: Burden, b: Bent) -> float:
    """The sag that has the limit [mm]."""
    return b.first if burden.role == "bottom" else b.last


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """Sag of every panel that carries something; alike panels once."""
    seen: set[tuple[str, float, float]] = set()
    for panel, load in site.loaded:
        b = bent(c, panel, load.everyday)
        if b is None:
            continue
        key = (panel.part.letter, round(load.everyday, 9), round(b.first, 4))
        if key in seen:
            continue
        seen.add(key)
        yield Margin(
            "strength.sag",
            (panel.part.id,),
            "sag when loaded" if load.role == "bottom" else "sag after ten years",
            sag(load, b),
            limit(c, load, b.span),
            "mm",
            tell=lambda panel=panel, load=load, b=b: _finding(c, panel, load, b),  # type: ignore[misc]
        )


def _finding(c: Context, panel: Panel, load: Burden, b: Bent) -> Finding:
    part = panel.part
    ratio = c.tables.figure("shelf_deflection_ratio" if load.role == "bottom" else "sag_visible_ratio")
    when = "when it is loaded" if load.role == "bottom" else "in ten years"
    rail = f", most of it in {c.label(b.rail)}" if b.rail else ""
    inches = c.piece.units == "in"
    return Finding(
        "strength.sag",
        Severity.WARNING,
        f"{c.label(part.id)} sags {c.text(sag(load, b))} {when}{rail}",
        part.place,
        found=f"{c.text(b.first)} at once, {c.text(b.last)} in ten years over a clear span of {c.text(b.span)}, "
        f"with {said(c.tables, load.use, inches)}; E {modulus_text(c, b.stiff.E)}",
        expected=f"at most {c.text(limit(c, load, b.span))} {when}: 1/{ratio.value:.0f} of the span",
        source=f"{ratio.reason}; {source(c.tables, load.use)}; {b.stiff.source}; {CAUTION}",
        remedy=_remedies(c, panel, load, b),
        parts=(part.id, b.rail) if b.rail else (part.id,),
    )


def _remedies(c: Context, panel: Panel, load: Burden, b: Bent) -> str:
    """What brings the sag within its limit; each is tried."""
    part = panel.part
    trial = Trial(c, measure, "strength.sag", part.id)
    found = [
        trial.smallest(higher(c, c.parts[b.rail])) if b.rail in c.parts else "",
        trial.smallest(thicker(c, part)),
        trial.smallest(other_wood(c, part)),
        trial.smallest(edge_strip(c, part, panel.spans[0])) if load.role != "bottom" else "",
        trial.smallest([post(part, panel.spans[0], c.piece.outside.low[2])]),
        lighter(trial, panel, load, load.everyday),
    ]
    return listed(found, "shorten the span")


def lighter(trial: Trial, panel: Panel, load: Burden, pressure: float) -> str:
    """The load that a panel takes within its limit, in whole pounds or kilograms, where it is beyond it now."""
    key = {"shelf": "shelves", "bottom": "drawers", "top": "top"}[load.role]
    now = pressure * panel.part.size[0] * panel.part.size[1] / GRAVITY
    return trial.greatest(load_of(trial.c, key), int(now / (POUND if trial.c.piece.units == "in" else 1.0)))
