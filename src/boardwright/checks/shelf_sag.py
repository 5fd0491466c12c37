"""Shelves, bottoms and tops: how far they sag under what they carry, at once and after ten years."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.amounts import mass_down, modulus_text
from boardwright.checks.bending import Bent, Trial, bent
from boardwright.checks.burdens import Burden
from boardwright.checks.context import Context
from boardwright.checks.held import Panel
from boardwright.checks.loads import GRAVITY, said, source
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import settle
from boardwright.piece.records import Part

EIGHTH = 3.175
TALLEST_EDGE = 76.2
"""No front edge higher than this is advised [mm]: 3 in, common practice."""
THICKEST = 2.0
"""No panel is advised to be thicker than this many times what it is."""


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
        remedy=_remedies(c, panel, load),
        parts=(part.id, b.rail) if b.rail else (part.id,),
    )


def _remedies(c: Context, panel: Panel, load: Burden) -> str:
    """What brings the sag within its limit: each is tried with the same figures."""
    out = []
    for trial, words in _thicker(c, panel.part):
        if _keeps(c, panel, load, trial):
            out.append(words)
            break
    if load.role != "bottom":
        for steps in range(4, int(TALLEST_EDGE / EIGHTH) + 1):
            high = steps * EIGHTH
            trial = Trial(edge=(high, panel.part.size[2]))
            if _keeps(c, panel, load, trial):
                out.append(
                    f"glue a strip {c.up(high)} high and {c.text(panel.part.size[2])} thick along its front edge"
                )
                break
    if _keeps(c, panel, load, Trial(halved=True)):
        out.append("put a support under the middle")
    out.append(_less(c, panel, load))
    out = [o for o in out if o]
    return ", or ".join(out) if out else "shorten the span"


def _keeps(c: Context, panel: Panel, load: Burden, trial: Trial) -> bool:
    b = bent(c, panel, load.everyday, trial)
    return b is not None and sag(load, b) <= limit(c, load, b.span)


def _thicker(c: Context, part: Part) -> Iterator[tuple[Trial, str]]:
    """Thicker stock of the same kind, thinnest first."""
    most = part.size[2] * THICKEST
    if part.stock.kind == "sheet":
        row = c.tables.sheets.get(part.stock.table_key)
        family = row.family if row else ""
        for nominal in c.tables.nominals(family):
            sheet = c.tables.sheet(family, nominal)
            if sheet is None or sheet.name.endswith(" mm") == (c.piece.units == "in"):
                continue
            if part.size[2] < sheet.actual <= most:
                yield (
                    Trial(thickness=sheet.actual, row=sheet.key),
                    f"use {sheet.name}, {c.text(sheet.actual)} thick",
                )
        return
    t = settle(part.size[2] + 1e-6, EIGHTH if c.piece.units == "in" else 1.0, "up")
    while t <= most:
        if t > part.size[2] + 0.1:
            yield Trial(thickness=t), f"make it {c.up(t)} thick"
        t += EIGHTH if c.piece.units == "in" else 1.0


def _less(c: Context, panel: Panel, load: Burden) -> str:
    """The load that it takes within its limit."""
    b = bent(c, panel, load.everyday)
    if b is None or sag(load, b) <= 0:
        return ""
    own = panel.part.stock.density * 1e-9 * panel.part.size[2] * GRAVITY
    most = load.everyday * limit(c, load, b.span) / sag(load, b) - own
    area = panel.part.size[0] * panel.part.size[1]
    mass = most * area / GRAVITY
    if mass < 1:
        return ""
    return f"put no more than {mass_down(c, mass)} on it"
