"""A frame: two stiles that run through, rails and mullions between them, and panels in the openings."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from boardwright.core.poses import Box
from boardwright.design.schema import Frame, JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.frame_lay import Lay, Opening, Span, cells
from boardwright.piece.forms.frame_panel import PanelPlan, put_panel
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.stub import stub
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

LEAST_OPENING = 25.0
"""An opening of a frame smaller than this is no opening [mm]: 1 in, common practice."""
BEFORE_PANELS = ("mitre", "bridle", "half_lap")
"""Joints whose grooves stop short of the corner, or are cut by it: they are made before the panels."""


@dataclass(frozen=True, slots=True)
class Names:
    """What the parts of a frame are called: the two stiles, the two rails, what stands between, and the panel."""

    stiles: tuple[str, str] = ("stile", "stile")
    rails: tuple[str, str] = ("bottom rail", "top rail")
    middle: str = "middle rail"
    mullion: str = "mullion"
    panel: str = "panel"


@dataclass(frozen=True, slots=True)
class Made:
    """A frame that is set out: stiles and outer rails from low to high."""

    stiles: tuple[Draft, Draft]
    rails: tuple[Draft, Draft]


@dataclass(frozen=True, slots=True)
class _Sizes:
    stile: float
    low_rail: float
    high_rail: float
    middle: float


def frame(
    out: SetOut,
    id: str,
    box: Box,
    lay: Lay,
    keys: Frame | None,
    path: str,
    *,
    stock: Stock,
    group: str,
    names: Names,
    deeper_bottom: bool = True,
    held: bool = False,
) -> Made | None:
    """Set out a frame and its panels; None, with a finding, when it has no openings.

    Args:
        out: the bench.
        id: of the frame; its parts stand under it.
        box: its outside [mm], as thick as its stock.
        lay: which way it lies.
        keys: what the file says.
        path: where it stands in the file.
        stock: of stiles and rails.
        group: moving group.
        names: of its parts.
        deeper_bottom: the rail at the low end is wider, as of a door.
        held: panels are glued to the stile at the low end, and move towards the other.
    """
    sizes = _sizes(out, id, keys, path, deeper_bottom)
    up, across = (keys.up or 1, keys.across or 1) if keys else (1, 1)
    inner_u = Span(box.low[lay.cross] + sizes.stile, box.high[lay.cross] - sizes.stile)
    inner_v = Span(box.low[lay.through] + sizes.low_rail, box.high[lay.through] - sizes.high_rail)
    rows = cells(out, inner_v, up, sizes.middle)
    columns = cells(out, inner_u, across, sizes.middle)
    if min(s.size for s in (*rows, *columns)) < LEAST_OPENING:
        _no_room(out, id, box, lay, sizes, path, (across, up))
        return None
    plan = PanelPlan.of(out, id, keys, path, stock, box, lay, min(c.size for c in columns))
    if plan is None:
        return None
    bench = _Bench(out, id, box, lay, stock, group, path)
    stiles = (
        bench.add("stile.1", names.stiles[0], Span(box.low[lay.cross], inner_u.low), None),
        bench.add("stile.2", names.stiles[1], Span(inner_u.high, box.high[lay.cross]), None),
    )
    rails = [bench.add("rail.1", names.rails[0], inner_u, Span(box.low[lay.through], inner_v.low))]
    for i, (a, b) in enumerate(pairwise(rows)):
        rails.append(bench.add(f"middle.{i + 1}", names.middle, inner_u, Span(a.high, b.low)))
    rails.append(bench.add("rail.2", names.rails[1], inner_u, Span(inner_v.high, box.high[lay.through])))
    mullions = [
        [
            bench.add(f"mullion.{r + 1}.{c + 1}", names.mullion, Span(a.high, b.low), row, upright=True)
            for c, (a, b) in enumerate(pairwise(columns))
        ]
        for r, row in enumerate(rows)
    ]
    openings = [
        Opening(
            column,
            row,
            ([stiles[0], *mullions[r]][c], [*mullions[r], stiles[1]][c]),
            (rails[r], rails[r + 1]),
        )
        for r, row in enumerate(rows)
        for c, column in enumerate(columns)
    ]
    _join(bench, keys, plan, stiles, rails, mullions, openings, names.panel, held)
    return Made(stiles, (rails[0], rails[-1]))


@dataclass(frozen=True, slots=True)
class _Bench:
    out: SetOut
    id: str
    box: Box
    lay: Lay
    stock: Stock
    group: str
    path: str

    def add(self, id: str, name: str, u: Span, v: Span | None, upright: bool = False) -> Draft:
        """A member: from where to where along rails and along stiles; None for the whole height."""
        lay = self.lay
        v = v or Span(self.box.low[lay.through], self.box.high[lay.through])
        along = lay.through if upright or v.size == self.box.size(lay.through) else lay.cross
        return self.out.add(
            f"{self.id}.{id}",
            name,
            self.stock,
            lay.box(u, v, Span(self.box.low[lay.thick], self.box.high[lay.thick])),
            (along, lay.cross + lay.through - along),
            group=self.group,
            show=((lay.thick, lay.face_high), (lay.thick, not lay.face_high)),
            path=self.path,
        )


def _sizes(out: SetOut, id: str, keys: Frame | None, path: str, deeper_bottom: bool) -> _Sizes:
    def size(key: str, default: float, rule: str, source: str) -> float:
        given = getattr(keys, key) if keys is not None else None
        return out.sizer.size(
            f"{id}.{key}", [(f"{path}.{key}", given)], default, rule=rule, source=source, least=12.0
        )

    figure = out.tables.figure("door_stile_width")
    extra = out.tables.figure("door_bottom_rail_extra")
    stile = size("stile_width", figure.value, "usual width of a stile", figure.reason)
    rail = size("rail_width", stile, "as wide as the stiles", "common practice")
    bottom = rail
    mitred = keys is not None and keys.joint is not None and keys.joint.kind == "mitre"
    if deeper_bottom:
        bottom = size(
            "bottom_rail_width",
            rail if mitred else rail + extra.value,
            "as wide as the top rail: mitres of a half square angle all round"
            if mitred
            else "wider than the top rail",
            "common practice" if mitred else extra.reason,
        )
    middle = size("middle_width", stile, "as wide as the stiles", "common practice")
    return _Sizes(stile, bottom, rail, middle)


def _no_room(
    out: SetOut, id: str, box: Box, lay: Lay, sizes: _Sizes, path: str, count: tuple[int, int]
) -> None:
    least_u = 2 * sizes.stile + (count[0] - 1) * sizes.middle + count[0] * LEAST_OPENING
    least_v = sizes.low_rail + sizes.high_rail + (count[1] - 1) * sizes.middle + count[1] * LEAST_OPENING
    out.find(
        "frame.no-room",
        f"the frame of {id.replace('.', ' ')} has no openings",
        path,
        found=f"{out.about(box.size(lay.cross))} × {out.about(box.size(lay.through))}, stiles {out.text(sizes.stile)}, "
        f"rails {out.text(sizes.low_rail)} and {out.text(sizes.high_rail)}",
        expected=f"at least {out.up(least_u)} × {out.up(least_v)}: {out.up(LEAST_OPENING)} for each opening",
        source="common practice",
        remedy="make stiles and rails narrower, have fewer openings, or use `made: slab`",
    )


def _join(
    bench: _Bench,
    keys: Frame | None,
    plan: PanelPlan,
    stiles: tuple[Draft, Draft],
    rails: list[Draft],
    mullions: list[list[Draft]],
    openings: list[Opening],
    panel_name: str,
    held: bool,
) -> None:
    """Joints and panels, in the order in which their cuts lean on each other."""
    out, lay = bench.out, bench.lay
    joint = keys.joint if keys else None
    path = f"{bench.path}.joint"
    usual = "tongue" if plan.kind == "flat" and plan.stock.kind == "sheet" else "mortise_tenon"
    kind = joint.kind if joint is not None else usual
    outer = [(stile, rail) for rail in (rails[0], rails[-1]) for stile in stiles]
    inner = [(stile, rail) for rail in rails[1:-1] for stile in stiles]
    inner += [(rail, m) for r, row in enumerate(mullions) for m in row for rail in rails[r : r + 2]]
    first = kind in BEFORE_PANELS
    if first:
        taken = plan.glass.lap if plan.glass is not None else plan.depth
        _make(out, bench.id, joint, path, kind, outer, taken)
    for i, opening in enumerate(openings):
        put_panel(
            out,
            plan,
            opening,
            lay,
            f"{bench.id}.panel.{i + 1}",
            panel_name,
            bench.group,
            through=kind not in ("bridle", "half_lap"),
            held=held,
        )
    if kind == "tongue" and plan.grooved:
        out.sizer.choose(
            f"{bench.id}.joint",
            kind if joint is not None else None,
            kind,
            "stub tongues in the grooves of the panel",
            path,
        )
        for one, two in (*outer, *inner):
            stub(out, one, two, plan.groove, plan.depth, path)
        return
    if kind == "tongue" and joint is not None and joint.shoulders is None:
        joint = joint.model_copy(update={"shoulders": "two"})
    if not first:
        _make(out, bench.id, joint, path, kind, [*outer, *inner])
    elif plan.grooved and inner:
        for one, two in inner:
            stub(out, one, two, plan.groove, plan.depth, path)
    else:
        _make(out, bench.id, None, path, "mortise_tenon", inner)


def _make(
    out: SetOut,
    id: str,
    keys: JointKeys | None,
    path: str,
    kind: str,
    pairs: list[tuple[Draft, Draft]],
    taken: float = 0.0,
) -> None:
    for one, two in pairs:
        make_joint(out, f"{id}.joint", keys, path, kind, one, two, taken=taken)
