"""Open cases that lean sideways when they are pushed: without a back only their corners hold them square."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from boardwright.checks.amounts import mass_text, moment_text
from boardwright.checks.context import Context
from boardwright.checks.held import lies
from boardwright.checks.joint_capacity import GLUE, GLUE_SHARE, JOINT_SHARE, cheeks_moment
from boardwright.checks.legs import SHORT
from boardwright.checks.loads import GRAVITY
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.weights import hung
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part

UNEVEN = 1.3
"""Greatest moment of a corner over the mean, where there are three levels or more: frames by finite elements."""
MOST = 40
PIN_SHARE = 0.25
"""Least share of a corner's width that is pins, one to three of tail; fingers are half (common practice)."""
PINS = "bending strength of pins on a quarter of the width; no test of such joints"
SIDES = ("case.side.left", "case.side.right")


def braced(c: Context) -> bool:
    """True for a case that a back or a face frame holds square."""
    return any(p.id.startswith(("case.face_frame", "case.back")) for p in c.piece.parts)


def corners(c: Context) -> list[Part]:
    """The lying parts that are joined fast to both sides."""
    found = []
    for p in c.piece.parts:
        if not lies(p):
            continue
        fast = {
            j.first if j.second == p.id else j.second
            for j in c.piece.joints
            if p.id in (j.first, j.second) and (j.glued or j.fasteners)
        }
        if fast.issuperset(SIDES):
            found.append(p)
    return found


@dataclass(frozen=True, slots=True)
class Corner:
    """What a corner of a case takes.

    Attributes:
        mean: moment at which it breaks [N mm]. share: of it that is allowed for years.
        what: the same in words, `{}` for the moment. source: of the figure.
    """

    mean: float
    share: float
    what: str
    source: str


def _corner(c: Context, part: Part) -> Corner:
    """The weaker of a part's two corners: glued cheeks of fingers and tails, else the lowest of published tests."""
    fast = [j for j in c.piece.joints if part.id in (j.first, j.second) and {j.first, j.second} & set(SIDES)]
    cheeks = min((cheeks_moment(c, j, 1) for j in fast), default=0.0)
    wood = _pins(c, part) if cheeks > 0 else 0.0
    if cheeks > 0 and wood > 0 and wood * JOINT_SHARE < cheeks * GLUE_SHARE:
        return Corner(wood, JOINT_SHARE, "the fingers or pins break at about {}", PINS)
    if cheeks > 0:
        return Corner(cheeks, GLUE_SHARE, "the glued cheeks break at about {}", GLUE)
    test = c.tables.figure("case_corner_moment")
    return Corner(
        test.value * 1000,
        JOINT_SHARE,
        "screwed case corners broke at {} and more",
        f"{test.reason}, panels of 16 to 18 mm; other joints are taken for no weaker",
    )


def _pins(c: Context, part: Part) -> float:
    """Moment at which the fingers or pins of a corner bend off [N mm]."""
    row = c.tables.species.get(part.stock.table_key)
    mor = row.mor if row is not None and row.mor is not None else 0.0
    return mor * PIN_SHARE * part.box.size(1) * part.size[2] ** 2 / 6


def greatest_corner(whole: float, levels: int) -> float:
    """Greatest moment of a corner, when a push is shared by all of them [N mm].

    Args:
        whole: push times height [N mm].
        levels: lying parts fixed to both sides.
    """
    return whole / (2 * levels) * (UNEVEN if levels > 2 else 1.05)


def measure(c: Context, _: Site) -> Iterator[Margin]:
    """A push at the top of an open case, shared by its corners."""
    if any(id not in c.parts for id in SIDES) or hung(c) or braced(c):
        return
    own = corners(c)
    if not own:
        return
    push = c.tables.figure("racking_push")
    whole = push.value * GRAVITY * c.piece.outside.size(2)
    moment = greatest_corner(whole, len(own))
    weakest = min((_corner(c, p) for p in own), key=lambda k: k.mean * k.share)
    limit = weakest.mean * weakest.share * SHORT
    more = next(n for n in range(1, MOST) if greatest_corner(whole, len(own) + n) <= limit or n == MOST - 1)
    yield Margin(
        "strength.racking",
        tuple(p.id for p in own[:1]),
        "moment in each corner of the open case, pushed sideways at its top",
        moment / 1000,
        limit / 1000,
        "N m",
        tell=lambda: Finding(
            "strength.racking",
            Severity.WARNING if moment > weakest.mean else Severity.NOTE,
            "the open case may lean sideways until its corners give",
            c.parts[SIDES[0]].place,
            found=f"{moment_text(c, moment)} in each of {2 * len(own)} corners by {mass_text(c, push.value)} across "
            "its top",
            expected=f"at most {moment_text(c, limit)} for minutes; "
            + weakest.what.format(moment_text(c, weakest.mean)),
            source=f"{weakest.source}; push: {push.reason}; {CAUTION}",
            remedy="give it a back that is glued or screwed all round (`back: {set: rabbet}`), a face frame, or "
            f"{more} more fixed shelves",
            parts=tuple(p.id for p in own),
        ),
    )
