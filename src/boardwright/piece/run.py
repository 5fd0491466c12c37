"""`Design` → `Piece`."""

from __future__ import annotations

from boardwright.core.findings import Finding, Severity, grouped
from boardwright.core.poses import Box
from boardwright.design.load import Design
from boardwright.piece.cuts import Bevel
from boardwright.piece.drafts import Draft
from boardwright.piece.finish import finish
from boardwright.piece.forms.box import box
from boardwright.piece.forms.case import case
from boardwright.piece.forms.loose import loose_parts
from boardwright.piece.forms.table import table
from boardwright.piece.records import Contact, Joint, Piece
from boardwright.piece.setout import SetOut
from boardwright.piece.sizing import Sizer
from boardwright.piece.stocks import read_stocks
from boardwright.piece.surroundings import read_moisture
from boardwright.tables.bundle import Tables


def set_out(design: Design, tables: Tables) -> tuple[Piece | None, list[Finding]]:
    """Set out a piece: every part, joint and size.

    Args:
        design: as loaded.
        tables: species, sheets, fasteners, figures.

    Returns:
        The piece, or None when nothing can be set out; and findings.
    """
    moisture, findings, year = read_moisture(design, tables)
    drafts: dict[str, Draft] = {}

    def outside(name: str) -> float | None:
        return _part_size(name, drafts, out)

    out: SetOut | None = None
    sizer = Sizer(design, outside)
    stocks, more = read_stocks(design, tables, sizer, moisture)
    findings += more
    if not stocks:
        sizer.check_all()
        return None, grouped([*findings, *sizer.findings, *sizer.moved()])
    out = SetOut(design, tables, sizer, stocks, moisture, drafts)
    outside_of_form = _forms(out)
    sizer.check_all()
    settle_sizes(out)
    findings += [*out.findings, *sizer.findings, *sizer.moved()]
    if not drafts:
        file = design.file
        if file.case is None and file.table is None and file.box is None and not file.parts:
            findings.append(
                Finding(
                    "piece.empty",
                    Severity.ERROR,
                    "the file asks for no part",
                    design.place(""),
                    found="no `case:`, `table:`, `box:` or `parts:`",
                    expected="at least one of them",
                    remedy="add a `case:`",
                )
            )
        return None, grouped(findings)
    parts = finish(list(drafts.values()), design.step)
    outer = _around(outside_of_form, _bounds(drafts, outside_of_form))
    piece = Piece(
        design.file.title,
        design.units,
        design.step,
        outer,
        moisture,
        parts,
        tuple(out.joints),
        tuple(out.fasteners),
        tuple(out.hardware),
        tuple(out.spaces),
        tuple(out.motions),
        tuple(dict.fromkeys([*year, *sizer.reasons])),
        tuple(out.chains),
    )
    return piece, grouped(findings)


def _forms(out: SetOut) -> Box | None:
    file = out.design.file
    outer = [
        case(out, file.case) if file.case is not None else None,
        table(out, file.table) if file.table is not None else None,
        box(out, file.box) if file.box is not None else None,
    ]
    if file.parts or file.joints:
        loose_parts(out, file.parts or {}, file.joints or [])
    found = [b for b in outer if b is not None]
    return found[0] if found else None


def _part_size(name: str, drafts: dict[str, Draft], out: SetOut | None) -> float | None:
    """Names that the file's own lengths do not hold.

    They are `stock.NAME`; PART.length, .width, .thickness, .left, .right, .front, .rear, .under, .top; and whatever
    `explain` shows so far, such as `case.inside.width`.
    """
    head, _, last = name.rpartition(".")
    if out is not None and head == "stock" and last in out.stocks:
        return out.stocks[last].thickness
    draft = drafts.get(head) or drafts.get(f"parts.{head}")
    if draft is None:
        return out.sizer.explained.get(name) if out is not None else None
    axes = {"length": draft.length_axis, "width": draft.width_axis, "thickness": draft.thickness_axis}
    if last in axes:
        return draft.size(axes[last])
    ends = {
        "left": (0, False),
        "right": (0, True),
        "front": (1, False),
        "rear": (1, True),
        "under": (2, False),
        "top": (2, True),
    }
    return draft.face(*ends[last]) if last in ends else None


def _around(case: Box | None, parts: Box | None) -> Box:
    """The outside of the piece: the form's own, and whatever part stands out of it by more than a step's noise."""
    if case is None or parts is None:
        return case or parts or Box((0.0, 0.0, 0.0), (0.0, 0.0, 0.0))
    low = [a if abs(a - b) < 1e-6 else min(a, b) for a, b in zip(case.low, parts.low, strict=True)]
    high = [a if abs(a - b) < 1e-6 else max(a, b) for a, b in zip(case.high, parts.high, strict=True)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _bounds(drafts: dict[str, Draft], form: Box | None) -> Box | None:
    """The box round all parts that stand square; the forms themselves know how far sloping parts reach.

    A bevelled side counts no farther than the form itself: the blank is longer than what is left of it.
    """
    square = [d for d in drafts.values() if d.tilt is None]
    if not square:
        return None
    low = [min(_end(d, i, False, form) for d in square) for i in range(3)]
    high = [max(_end(d, i, True, form) for d in square) for i in range(3)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _end(draft: Draft, axis: int, high: bool, form: Box | None) -> float:
    at = draft.face(axis, high)
    side = draft.side(axis, high)
    if form is None or not any(isinstance(c, Bevel) and c.side is side for c in draft.cuts):
        return at
    return min(at, form.high[axis]) if high else max(at, form.low[axis])


def settle_sizes(out: SetOut) -> None:
    """Bring every length and width that is still between two steps down to the step.

    It happens where a span between measured sheets is left over; the part gets shorter at its high end, and the
    joint there keeps a gap of less than a step, which hides in its dado. Shoulders stay where they are: a tongue
    at that end gets shorter.
    """
    for draft in out.drafts.values():
        for axis in (draft.length_axis, draft.width_axis):
            size = draft.size(axis)
            short = size - out.sizer.settled(size, "down")
            if short > 1e-6:
                draft.shorten(axis, short)
                out.joints[:] = [_with_gap(j, draft.id, axis, draft.high[axis], short) for j in out.joints]


def _with_gap(joint: Joint, id: str, axis: int, end: float, gap: float) -> Joint:
    if id not in (joint.first, joint.second):
        return joint
    contacts = tuple(_clip(c, axis, end, gap) for c in joint.contacts)
    if contacts == joint.contacts:
        return joint
    return Joint(
        joint.id,
        joint.kind,
        joint.first,
        joint.second,
        contacts,
        joint.directions,
        joint.glued,
        joint.floats,
        joint.fasteners,
        joint.summary,
        joint.place,
    )


def _clip(c: Contact, axis: int, end: float, gap: float) -> Contact:
    if c.corners:
        return c
    if c.axis == axis and abs(c.box.low[axis] - end - gap) < 1e-6:
        return Contact(c.box, c.axis, c.from_first, c.glued, c.gap + gap, "settled on the step")
    if c.axis != axis and c.box.high[axis] > end + 1e-6 > c.box.low[axis]:
        high = list(c.box.high)
        high[axis] = end
        return Contact(
            Box(c.box.low, (high[0], high[1], high[2])), c.axis, c.from_first, c.glued, c.gap, c.why
        )
    return c
