"""Checks that have no figure: how many places each of them looks at."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.checks.fit import grooves_and_rabbets
from boardwright.core.findings import Finding
from boardwright.solids.assembly import assembly_of


@dataclass(frozen=True, slots=True)
class Looked:
    """A check that found nothing.

    Attributes:
        check: code of the finding it would give.
        count: how many places it looked at.
        what: these places in words, e.g. `joints`.
    """

    check: str
    count: int
    what: str

    def as_dict(self) -> dict[str, object]:
        """The same as plain data."""
        return {"check": self.check, "count": self.count, "what": self.what}


def _fasteners(*kinds: str) -> Callable[[Context], int]:
    return lambda c: sum(not kinds or f.kind in kinds for f in c.piece.fasteners)


def _parts(c: Context) -> int:
    return len(c.piece.parts)


def _letters(c: Context) -> int:
    return len({p.letter for p in c.piece.parts})


def _pairs(c: Context) -> int:
    return len(c.piece.parts) * (len(c.piece.parts) - 1) // 2


def _bars(c: Context) -> int:
    return sum(2 for m in c.piece.motions if m.runs_on == "full_extension_bars" and m.travel > 0)


def _hinges(c: Context) -> int:
    return sum(h.screws > 0 for h in c.piece.hardware)


PLACES: tuple[tuple[str, str, Callable[[Context], int]], ...] = (
    ("fit.collision", "pairs of parts", _pairs),
    ("fit.open-joint", "faces of joints", lambda c: len(c.fit.touches)),
    ("fit.unplanned-gap", "pairs of parts", _pairs),
    ("joint.thin-web", "pairs of cuts in one part", grooves_and_rabbets),
    ("assembly.trapped", "steps of assembly", lambda c: len(assembly_of(c.piece).order)),
    ("assembly.driver", "screws", _fasteners("screw", "pocket screw")),
    ("assembly.wrong-way", "kinds of parts", _letters),
    ("drawer.hits", "drawers and trays", lambda c: sum(not m.turn for m in c.piece.motions)),
    ("door.hits", "doors and lids", lambda c: sum(m.turn != 0 for m in c.piece.motions)),
    ("drawer.not-fully-out", "extension bars", _bars),
    ("drawer.bar-engagement", "extension bars", _bars),
    ("drawer.bar-bending", "extension bars", _bars),
    ("drawer.bar-bearing", "extension bars", _bars),
    ("drawer.bar-droop", "extension bars", _bars),
    ("door.hinge-screws", "hinges", _hinges),
    ("door.hinge-head", "hinges", _hinges),
    ("fastener.too-short", "fasteners", _fasteners()),
    (
        "fastener.breaks-through",
        "tips",
        _fasteners("screw", "pocket screw", "dowel", "biscuit", "loose tenon"),
    ),
    ("fastener.meet", "fasteners", _fasteners()),
    ("fastener.pilot", "screws", _fasteners("screw")),
    ("fastener.end-grain", "screws", _fasteners("screw", "pocket screw")),
    ("stock.thickness-not-given", "parts", _parts),
    (
        "stock.no-lumber",
        "kinds of wood",
        lambda c: len({p.stock.id for p in c.piece.parts if p.stock.kind == "wood"}),
    ),
    (
        "stock.larger-than-sheet",
        "parts of sheets",
        lambda c: sum(p.stock.kind == "sheet" for p in c.piece.parts),
    ),
)
"""Code, what it looks at, and how many of these there are; in the order of the checks."""


def looked(c: Context, findings: Iterable[Finding]) -> list[Looked]:
    """What found nothing, and had something to look at."""
    given = {f.code for f in findings}
    found = [Looked(code, count(c), what) for code, what, count in PLACES if code not in given]
    return [k for k in found if k.count]
