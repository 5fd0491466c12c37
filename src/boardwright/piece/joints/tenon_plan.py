"""Where tenons stand on the end of a part: their shoulders, the set-in at a corner, several beside each other."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.piece.drafts import Channel, Draft
from boardwright.piece.joints.areas import EPS, Range, Rect, extent
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.tenon_sizes import LEAST, WALL, Slot, Stand
from boardwright.piece.setout import SetOut


@dataclass(frozen=True, slots=True)
class Plan:
    """Where the tenons stand.

    Attributes:
        wides: from where to where each reaches along the grain of the first part [mm].
        thicks: the same on the axis of its thickness [mm].
        beyond: what is left to the end of the first part at a corner, for a haunch [mm]; None elsewhere.
        at_high: the corner lies at the high end.
    """

    wides: list[Range]
    thicks: list[Range]
    beyond: Range | None = None
    at_high: bool = False

    @property
    def holes(self) -> list[Rect]:
        """Each tenon as a rectangle on the axes `wide` and `thick` [mm]."""
        return [(w, t) for w in self.wides for t in self.thicks]


def _shoulders(out: SetOut, second: Draft, how: Stand, want: JointSettings) -> tuple[float, float]:
    """Shoulders at the two edges of a tenon [mm]: as asked, or by the rule, and never less than a groove takes."""
    figure = out.tables.figure("tenon_bottom_shoulder")
    edge = out.sizer.size(
        f"{want.name}.shoulder",
        [(f"{want.path}.shoulder", want.keys.shoulder if want.keys else None)],
        figure.value,
        rule="shoulder at the edge of a tenon",
        source=figure.reason,
        direction="up",
    )
    edge = out.at_most(
        edge, second.size(how.wide) / 3, "the shoulder", f"{want.path}.shoulder", second.size(how.wide)
    )
    low, high = within_grooves(second, how)
    return max(edge, low - second.low[how.wide]), max(edge, second.high[how.wide] - high)


def within_grooves(second: Draft, how: Stand) -> Range:
    """The end of a part along `wide`, less the grooves that run along its edges [mm]."""
    low, high = extent(second, how.wide)
    for cut in second.cuts:
        if isinstance(cut, Channel) and (cut.axis, cut.along) == (how.wide, how.axis):
            if cut.high:
                high = min(high, second.high[how.wide] - cut.depth)
            else:
                low = max(low, second.low[how.wide] + cut.depth)
    return low, high


def lay_out(
    out: SetOut,
    first: Draft,
    second: Draft,
    how: Stand,
    want: JointSettings,
    n: int,
    axis: int,
    thick: float,
    slot: Slot | None,
) -> Plan | None:
    """Lay the tenons out over the end of the second part."""
    settled = out.sizer.settled
    low, high = extent(second, how.wide)
    below, above = _shoulders(out, second, how, want)
    corner = [h for h in (False, True) if abs(second.face(how.wide, h) - first.face(how.wide, h)) < EPS]
    beyond = None
    if corner:
        figure = out.tables.figure("haunch_share")
        set_in = settled(second.size(how.wide) * figure.value)
        out.sizer.explain(
            f"{want.name}.set_in",
            set_in,
            f"{figure.value:.3g} × {out.text(second.size(how.wide))}",
            "at a corner the tenon is set in from the end by a third",
            figure.reason,
        )
        below, above = (below, max(above, set_in)) if corner[0] else (max(below, set_in), above)
        beyond = (high - above, high) if corner[0] else (low, low + below)
    wide = (low + below, high - above)
    near, far = extent(second, how.thick)
    if axis == how.wide:
        at = slot.low if slot is not None else near + settled((far - near - thick) / 2)
        if slot is not None and abs(slot.width - thick) > EPS:
            at = slot.low + settled((slot.width - thick) / 2)
        wides, thicks = _split(out, wide, n), [(at, at + thick)]
    else:
        gap = settled((far - near - n * thick) / (n + 1), "down")
        start = near + settled((far - near - n * thick - (n - 1) * gap) / 2)
        wides = [wide]
        thicks = [(start + i * (thick + gap), start + i * (thick + gap) + thick) for i in range(n)]
    plan = Plan(wides, thicks, beyond, bool(corner and corner[0]))
    return plan if _fits(out, first, second, how, want, plan) else None


def _split(out: SetOut, wide: Range, n: int) -> list[Range]:
    """Tenons one above the other, with a third of each between them, alike in width [mm]."""
    if n == 1:
        return [wide]
    whole = wide[1] - wide[0]
    each = out.sizer.settled(whole / (n + (n - 1) / 3), "down")
    starts = [wide[0] + out.sizer.settled(i * (whole - each) / (n - 1)) for i in range(n)]
    return [(a, a + each) for a in starts]


def _fits(out: SetOut, first: Draft, second: Draft, how: Stand, want: JointSettings, plan: Plan) -> bool:
    """True when tenons have a size and mortises wood beside them; else a finding says what there is."""
    widest = min(b - a for a, b in plan.wides)
    if widest < LEAST - EPS or min(b - a for a, b in plan.thicks) < out.sizer.step - EPS:
        out.find(
            "joint.cannot-be-there",
            f"no tenon is left on the {second.name}",
            want.path,
            found=f"an end {out.about(second.size(how.wide))} × {out.about(second.size(how.thick))}",
            expected="room for its shoulders and the tenons between them",
            source="common practice",
            remedy="use fewer tenons, smaller shoulders, or wider stock",
            parts=(first.id, second.id),
        )
        return False
    beside = min(plan.thicks[0][0] - first.low[how.thick], first.high[how.thick] - plan.thicks[-1][1])
    if beside < WALL - EPS:
        out.find(
            "joint.no-wood-beyond",
            f"the mortise for the {second.name} has too little wood beside it",
            want.path,
            found=f"{out.about(max(beside, 0.0))} at one side of it",
            expected=f"at least {out.up(WALL)}",
            source="common practice",
            remedy=f"make the tenon thinner, or move the {second.name} by {out.up(WALL - beside)} or more",
            parts=(first.id, second.id),
        )
        return False
    return True
