"""Lines on which a joint holds two parts: how far, along which way, and how much they differ there over the year."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement.fits import SOURCE, Year
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import AXES, Vec, add, dot, scaled
from boardwright.piece.records import Fastener, Joint, Part

LIMIT = 1.0
"""Difference in movement that a glue line takes [mm]: what a cross-grain joint about 90 mm (3 1/2 in) wide
makes over a change of 4 % in wood that moves 0.27 % for each per cent; wider ones fail in time (common
practice)."""
NARROW = 114.3
"""A joint no wider across the grain gives enough in any wood and climate: 4 1/2 in, as rails with one tenon are
(common practice)."""
FAILS, MAY_FAIL = 2.0, 1.25
"""Times the limit above which a glue line will fail, and may fail; a little over it many last (common practice)."""
ACROSS = 0.0005
"""A part that moves more than this for each per cent of moisture moves across its grain [1/%]; two such parts move
together, near enough, and are no cross-grain joint."""
LINE_SOURCE = f"{SOURCE}; limit of a cross-grain glue line: common practice"
HOUSED = ("dado", "rabbet", "tongue", "double_rabbet", "sliding_dovetail")


@dataclass(frozen=True, slots=True)
class Line:
    """A joint that holds two parts along a way in which they move differently.

    Attributes:
        joint: the joint. one, two: its parts.
        way: unit vector. span: how far it holds along it [mm].
        rates: change of each along it [1/%].
        glued: True for glue, False for screws that are fast.
    """

    joint: Joint
    one: Part
    two: Part
    way: Vec
    span: float
    rates: tuple[float, float]
    glued: bool

    def parts_by(self, swing: float) -> float:
        """How far the two part over a change of moisture [mm]."""
        return abs(self.rates[0] - self.rates[1]) * swing * self.span

    def limit(self, swing: float) -> float:
        """How far they may part [mm]: no less than a narrow joint of the two does."""
        return max(LIMIT, self.parts_by(swing) * NARROW / self.span)

    @property
    def code(self) -> str:
        """Which of the checks speaks of it."""
        kinds = {self.one.stock.kind, self.two.stock.kind}
        if min(self.rates) > ACROSS:
            return "wood.mixed-woods"
        if "sheet" in kinds:
            return "wood.solid-on-sheet"
        if not self.glued:
            return "wood.screwed-fast"
        return "wood.housed-across" if self.joint.kind in HOUSED else "wood.cross-grain"


def strain(part: Part, way: Vec) -> float:
    """Change per 1 % of moisture along a direction of the piece [1/%]."""
    own = (part.pose.x, part.pose.y, part.pose.z)
    return sum(rate * dot(axis, way) ** 2 for axis, rate in zip(own, part.stock.rates, strict=True))


def _fixed(joint: Joint, fasteners: dict[str, Fastener]) -> list[tuple[Vec, float, bool]]:
    """Ways and reaches over which a joint holds both parts: glue faces, and rows of screws without slots."""
    out: list[tuple[Vec, float, bool]] = []
    for k in joint.contacts:
        if not (k.glued and joint.glued):
            continue
        if k.corners:
            edges = [add(b, scaled(a, -1.0)) for a, b in pairwise((*k.corners, k.corners[0]))]
            out += [
                (scaled(e, 1 / dot(e, e) ** 0.5), dot(e, e) ** 0.5, True) for e in edges if dot(e, e) > 1e-6
            ]
        else:
            out += [(AXES[i], k.box.size(i), True) for i in range(3)]
    held = [fasteners[id] for id in joint.fasteners if id in fasteners]
    screws = [f for f in held if f.kind == "screw" and not f.slotted]
    if len(screws) > 1:
        out += [
            (AXES[i], max(f.at[i] for f in screws) - min(f.at[i] for f in screws), False) for i in range(3)
        ]
    return out


def lines(year: Year) -> list[Line]:
    """The line of each joint on which its parts differ most; joints whose parts hardly differ have none.

    Where neither part moves across its grain, as a sheet along the edge of a board, there is none either, nor in a
    narrow joint.
    """
    c, swing = year.c, year.swing
    fasteners = {f.id: f for f in c.piece.fasteners}
    square = {id: year.moves.strain[i].diagonal().tolist() for id, i in year.index.items()}
    found: list[Line] = []
    for joint in c.piece.joints:
        one, two = c.parts.get(joint.first), c.parts.get(joint.second)
        if one is None or two is None or "wood" not in (one.stock.kind, two.stock.kind):
            continue
        worst: Line | None = None
        for way, span, glued in _fixed(joint, fasteners):
            i = AXES.index(way) if way in AXES else None
            rates = (
                (strain(one, way), strain(two, way)) if i is None else (square[one.id][i], square[two.id][i])
            )
            if worst is not None and abs(rates[0] - rates[1]) * swing * span <= worst.parts_by(swing):
                continue
            line = Line(joint, one, two, way, span, rates, glued)
            if line.code == "wood.mixed-woods" and not _across_both(line):
                continue
            if max(rates) < ACROSS or span <= NARROW:
                continue
            worst = line
        if worst is not None and worst.parts_by(swing) > 1e-9:
            found.append(worst)
    return found


def _across_both(line: Line) -> bool:
    """True where both parts are wide along the way: their thickness differs from a width without harm."""
    return all(abs(dot(p.pose.y, line.way)) > 0.9 for p in (line.one, line.two))


@dataclass(frozen=True, slots=True)
class Check:
    """A check of lines of one kind.

    Attributes:
        code: of its finding.
        message: with {one} and {two}.
        ways: what else frees them, for the remedy.
    """

    code: str
    message: str
    ways: str


def margins(year: Year, found: Iterable[Line], check: Check) -> Iterator[Margin]:
    """How near each line of a check is to its limit."""
    for line in found:
        if line.code == check.code:
            parts = (line.one.id, line.two.id)
            by = line.parts_by(year.swing)
            tell = partial(_finding, year.c, check, line)
            limit = line.limit(year.swing)
            yield Margin(check.code, parts, "difference in movement", by, limit, "mm", tell=tell)


def severity(share: float) -> Severity:
    """How bad a movement is that is so many times the limit: just over it some joints last."""
    return Severity.ERROR if share > FAILS else Severity.WARNING if share > MAY_FAIL else Severity.NOTE


def _finding(c: Context, check: Check, line: Line) -> Finding:
    m = c.piece.moisture
    swing = m.wettest - m.driest
    by, limit = line.parts_by(swing), line.limit(swing)
    one, two = line.one, line.two
    return Finding(
        check.code,
        severity(by / limit),
        check.message.format(one=c.label(one.id), two=c.label(two.id)),
        line.joint.place,
        found=f"{c.text(line.span)} held; they part by {c.text(by)} "
        f"between {m.driest:.3g} % and {m.wettest:.3g} % moisture",
        expected=f"at most {c.text(limit)}",
        source=LINE_SOURCE,
        remedy=f"hold them over {c.down(line.span * limit / by)} or less, {check.ways}"
        + _quarter(line, swing, limit),
        parts=(one.id, two.id),
    )


def _quarter(line: Line, swing: float, limit: float) -> str:
    """Quartersawn boards, where they are tried and help."""

    def turned(part: Part) -> Part:
        if part.stock.kind != "wood":
            return part
        return replace(part, stock=replace(part.stock, sawn="quarter", rings=None))

    one, two = turned(line.one), turned(line.two)
    other = replace(line, one=one, two=two, rates=(strain(one, line.way), strain(two, line.way)))
    return "; quartersawn boards also keep within it" if other.parts_by(swing) <= limit else ""
