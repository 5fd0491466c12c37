"""Panels in the openings of a frame: flat or raised, floating in grooves; glass in rabbets, held by beads."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from boardwright.core.poses import Box
from boardwright.design.schema import Frame, FramePanel
from boardwright.piece.cuts import RaisedField
from boardwright.piece.drafts import Channel, Draft, DraftCut
from boardwright.piece.forms.drawer_settings import usual_stock
from boardwright.piece.forms.frame_glass import GlassPlan, glass_plan, put_glass
from boardwright.piece.forms.frame_lay import Lay, Opening, Span
from boardwright.piece.joints.panel import Wall, float_panel
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

LEAST_WALL = 3.0
"""Wood on each side of a groove in a frame [mm]: 1/8 in, common practice."""
LEAST_SLOPE = 6.0
"""A slope narrower than this makes no raised panel [mm]: 1/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class Field:
    """A raised field: from the edge to it, to the start of the slope, and its step [mm]."""

    width: float
    flat: float
    step: float


@dataclass(frozen=True, slots=True)
class PanelPlan:
    """What stands in the openings, settled before the frame is put on the bench.

    Attributes:
        kind: `flat`, `raised` or `glass`.
        stock: of the panel.
        groove: from where to where the grooves lie in the thickness of the frame [mm].
        depth: of the grooves [mm].
        room: from where to where the panel lies in the thickness [mm].
        field: of a raised panel. glass: of a glazed frame.
        path: of the panel in the file.
    """

    kind: str
    stock: Stock
    groove: tuple[float, float]
    depth: float
    room: tuple[float, float]
    field: Field | None
    glass: GlassPlan | None
    path: str

    @property
    def grooved(self) -> bool:
        """True when the panel stands in grooves."""
        return self.kind != "glass"

    @classmethod
    def of(
        cls,
        out: SetOut,
        id: str,
        keys: Frame | None,
        frame_path: str,
        stock: Stock,
        box: Box,
        lay: Lay,
        width: float,
    ) -> PanelPlan | None:
        """Settle the panels; None, with a finding, when there is no room for them.

        Args:
            out: the bench.
            id: of the frame.
            keys: what the file says of the frame.
            frame_path: where that stands.
            stock: of the frame.
            box: of the frame [mm].
            lay: how it lies.
            width: of the narrowest opening, across the grain of the panel [mm].
        """
        panel, path = (keys.panel if keys else None), f"{frame_path}.panel"
        kind = out.sizer.choose(
            f"{id}.panel.kind", panel.kind if panel else None, "flat", "a flat panel", f"{path}.kind"
        )
        if kind == "glass":
            glass = glass_plan(out, id, panel, path, stock, box, lay)
            if glass is None:
                return None
            return cls(kind, glass.stock, (0.0, 0.0), 0.0, (0.0, 0.0), None, glass, path)
        own = _stock(out, id, kind, panel, path, stock)
        thick = box.size(lay.thick)
        groove = _groove_width(out, kind, own, thick)
        near = out.sizer.settled((thick - groove) / 2)
        depth = _depth(out, id, panel, path, own, width)
        face = _face(own.thickness, kind, near, groove, thick)
        if face is None or groove > thick - 2 * LEAST_WALL + 1e-6:
            _too_thick(out, own, thick, path)
            return None
        span, room = lay.behind(box, near, near + groove), lay.behind(box, face, face + own.thickness)
        field = None
        if kind == "raised":
            field = _field(out, id, panel, path, near - face, depth, width, own)
            if field is None:
                return None
        return cls(kind, own, (span.low, span.high), depth, (room.low, room.high), field, None, path)


def _stock(out: SetOut, id: str, kind: str, panel: FramePanel | None, path: str, stock: Stock) -> Stock:
    named = panel.stock if panel else None
    if named is not None:
        return out.stock((f"{path}.stock", named))
    usual = out.tables.figure("panel_groove_width").value
    own = usual_stock(out, usual, True, stock) if kind == "flat" else stock
    out.sizer.choose(
        f"{id}.panel.stock",
        None,
        own.id,
        "stock nearest to the usual groove, sheets first" if kind == "flat" else "as the frame",
        f"{path}.stock",
    )
    return own


def _groove_width(out: SetOut, kind: str, stock: Stock, thick: float) -> float:
    """A sheet, and a thin panel, stand in the groove with their true thickness."""
    usual = out.sizer.settled(out.tables.figure("panel_groove_width").value)
    if kind == "flat" and stock.thickness <= thick / 2 + 1e-6:
        return stock.thickness
    return min(usual, stock.thickness)


def _face(panel: float, kind: str, near: float, groove: float, thick: float) -> float | None:
    """How far the face of a panel lies behind the face of its frame [mm]; None when it is too thick for it.

    A raised field lies flush with the frame, or behind it when the panel is thin; a flat panel starts at its groove.
    """
    least, most = near + groove - panel, min(near, thick - panel)
    wish = max(0.0, least) if kind == "raised" else near
    return min(wish, most) if most >= max(0.0, least) - 1e-6 else None


def _depth(out: SetOut, id: str, panel: FramePanel | None, path: str, stock: Stock, width: float) -> float:
    figure = out.tables.figure("panel_groove_depth")
    wide = out.tables.figure("panel_deep_groove_width")
    deep = stock.kind == "wood" and width >= wide.value
    return out.sizer.size(
        f"{id}.panel.groove",
        [(f"{path}.groove", panel.groove if panel else None)],
        (figure.high or figure.value) if deep else figure.value,
        rule="deeper grooves for a wide solid panel" if deep else "usual groove for a panel",
        source=wide.reason if deep else figure.reason,
        least=out.sizer.step,
    )


def _too_thick(out: SetOut, stock: Stock, thick: float, path: str) -> None:
    out.find(
        "frame.panel-too-thick",
        "the panel is too thick for its frame",
        path,
        found=f"a panel {out.about(stock.thickness)} thick in a frame {out.about(thick)} thick",
        expected=f"at most {out.down(thick)}, and {out.up(LEAST_WALL)} of wood on both sides of the groove",
        source="common practice",
        remedy="use a thinner panel, or a thicker frame",
    )


def _field(
    out: SetOut,
    id: str,
    panel: FramePanel | None,
    path: str,
    rise: float,
    depth: float,
    opening: float,
    stock: Stock,
) -> Field | None:
    """The slope round a raised panel, from what it has to rise by."""
    tables, sizer = out.tables, out.sizer
    step_figure, width_figure = tables.figure("raised_field_step"), tables.figure("raised_field_width")
    step = sizer.size(
        f"{id}.panel.field_step",
        [(f"{path}.field_step", panel.field_step if panel else None)],
        min(step_figure.value, rise / 3),
        rule="step at the field",
        source=step_figure.reason,
    )
    angle = panel.field_angle if panel else None
    by_angle = depth + max(rise - step, 0.0) / math.tan(math.radians(angle)) if angle else None
    width = sizer.size(
        f"{id}.panel.field_width",
        [(f"{path}.field_width", panel.field_width if panel else None)],
        by_angle or min(width_figure.value, depth + opening / 4),
        rule=f"a slope of {angle:g} degrees" if angle else "usual slope, at most a quarter of the opening",
        source="the design" if angle else width_figure.reason,
        total=f"{out.text(depth)} in the groove, and the slope",
    )
    if rise <= step + 1e-6 or not depth + LEAST_SLOPE <= width + 1e-6 <= depth + opening / 2:
        out.find(
            "frame.no-field",
            "the panel has no room for a raised field",
            path,
            found=f"{out.about(stock.thickness)} thick, {out.about(rise)} over its groove, the field "
            f"{out.about(width)} from its edge",
            expected=f"more than a step of {out.about(step or step_figure.value)} over the groove, "
            f"and a slope from {out.up(LEAST_SLOPE)} "
            f"wide to half of the opening of {out.about(opening)}",
            source="common practice",
            remedy="use a thicker panel, another `field_width`, or `kind: flat`",
        )
        return None
    slope = math.degrees(math.atan((rise - step) / (width - depth)))
    sizer.explain(
        f"{id}.panel.field",
        rise,
        f"{out.text(step)} step, and {slope:.1f} degrees over {out.text(width - depth)}",
        "the field lies flush with the frame where the panel is thick enough",
    )
    return Field(width, depth, step)


def put_panel(
    out: SetOut,
    plan: PanelPlan,
    opening: Opening,
    lay: Lay,
    id: str,
    name: str,
    group: str,
    *,
    through: bool,
    held: bool,
) -> None:
    """Fill one opening of a frame.

    Args:
        out: the bench.
        plan: the panels of the frame.
        opening: the opening.
        lay: how the frame lies.
        id: of the panel.
        name: what it is called.
        group: moving group.
        through: the grooves run through the ends of the parts round it, else they stop.
        held: glued to the part at the low end across it.
    """
    walls = [
        Wall(part, axis, not high)
        for axis, pair in ((lay.cross, opening.at_cross), (lay.through, opening.at_through))
        for high, part in zip((False, True), pair, strict=True)
    ]
    if plan.glass is not None:
        put_glass(out, plan.glass, opening, walls, lay, id, group, plan.path)
        return
    low, high = plan.room
    if plan.field is not None:
        low, high = (low, plan.groove[1]) if lay.face_high else (plan.groove[0], high)
    panel = out.add(
        id,
        name,
        plan.stock,
        lay.box(opening.cross, opening.through, Span(low, high)),
        (lay.through, lay.cross),
        group=group,
        show=((lay.thick, lay.face_high), (lay.thick, not lay.face_high)),
        path=plan.path,
    )
    before = {w.part.id: len(w.part.cuts) for w in walls}
    float_panel(
        out,
        panel,
        walls,
        depth=plan.depth,
        path=plan.path,
        name=name,
        groove=plan.groove,
        through=through,
        held=walls[0] if held else None,
    )
    for wall in walls:
        _once(wall.part, before[wall.part.id])
    if plan.field is not None:
        _raise(panel, plan, plan.field, lay)


def _raise(panel: Draft, plan: PanelPlan, field: Field, lay: Lay) -> None:
    """Give a panel its whole thickness, and slope it down to its tongue."""
    axis = lay.thick
    panel.low[axis], panel.high[axis] = plan.room
    face, wall = panel.face(axis, lay.face_high), plan.groove[1 if lay.face_high else 0]
    sides = tuple(panel.side(a, h) for a in (lay.cross, lay.through) for h in (False, True))
    panel.cuts.append(
        RaisedField(
            panel.side(axis, lay.face_high),
            field.width,
            field.flat,
            panel.size(axis) - abs(face - wall),
            field.step,
            sides,
        )
    )


def _once(part: Draft, before: int) -> None:
    """One groove along a part serves all openings beside it; stopped ones run on past what stands between."""
    kept = part.cuts[:before]
    for cut in part.cuts[before:]:
        same = next((i for i, c in enumerate(kept) if _in_line(c, cut)), None)
        if same is None:
            kept.append(cut)
            continue
        one = kept[same]
        if isinstance(one, Channel) and isinstance(cut, Channel):
            ends = (one.start, cut.start), (one.end, cut.end)
            start = None if None in ends[0] else min(v for v in ends[0] if v is not None)
            end = None if None in ends[1] else max(v for v in ends[1] if v is not None)
            kept[same] = replace(one, start=start, end=end)
    part.cuts[:] = kept


def _in_line(one: DraftCut, two: DraftCut) -> bool:
    """True for two panel grooves of a part that lie in one line."""
    if not (isinstance(one, Channel) and isinstance(two, Channel)) or one.purpose != "panel":
        return False
    return (one.axis, one.high, one.along, one.lo, one.hi, one.depth) == (
        two.axis,
        two.high,
        two.along,
        two.lo,
        two.hi,
        two.depth,
    )
