"""Splines and keys of a mitre: what they are made of, and how they are put on the bench, turned with the corner."""

from __future__ import annotations

from boardwright.core.poses import Box, Pose, Vec
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut


def strip_stock(out: SetOut, second: Draft, want: JointSettings, most: float) -> tuple[Stock, float] | None:
    """Stock and thickness of a spline or key [mm]; None, with a finding, when the file has none that is thin enough.

    Planed from the wood of the second part, or from the first wood of the file; where the file has none, the sheet
    nearest in thickness.

    Args:
        out: the bench.
        second: the part that goes in.
        want: the joint; its `width` is the thickness.
        most: the thickest there is room for [mm].
    """
    figure = out.tables.figure("spline_thickness")
    wood = second.stock if second.stock.kind == "wood" else _first(out, "wood")
    if wood is None:
        thin = [s for s in out.stocks.values() if s.thickness <= most]
        sheet = min(thin, key=lambda s: (abs(s.thickness - figure.value), s.id), default=None)
        if sheet is None:
            _no_stock(out, second, want, most)
            return None
        out.sizer.explain(
            f"{want.name}.width", sheet.thickness, sheet.id, "the sheet nearest to a spline", figure.reason
        )
        return sheet, sheet.thickness
    thick = out.sizer.size(
        f"{want.name}.width",
        [(f"{want.path}.width", want.keys.width if want.keys else None)],
        figure.value,
        rule="thickness of a spline or key in a mitre",
        source=figure.reason,
        least=out.sizer.step,
    )
    return wood, out.at_most(thick, most, "the slot", f"{want.path}.width", 2 * most)


def _no_stock(out: SetOut, second: Draft, want: JointSettings, most: float) -> None:
    out.find(
        "fastener.none-fits",
        f"the file has no stock for a spline or key in the mitre of the {second.name}",
        f"{want.path}.with",
        found=f"sheets from {out.about(min(s.thickness for s in out.stocks.values()))} thick, and no wood",
        expected=f"a wood, or a sheet at most {out.down(most)} thick",
        source="common practice",
        remedy="add a wood or a thin sheet under `stock:`, or leave `with` out",
        parts=(second.id,),
    )


def _first(out: SetOut, kind: str) -> Stock | None:
    return next((s for s in out.stocks.values() if s.kind == kind), None)


def strip(
    out: SetOut,
    second: Draft,
    name: str,
    stock: Stock,
    low: Vec,
    high: Vec,
    axes: tuple[int, int],
    tilt: Pose,
    path: str,
) -> Draft:
    """Put a spline or key on the bench.

    Args:
        out: the bench.
        second: the part that it is named after.
        name: `spline` or `key`.
        stock: of it.
        low: lowest corner of its box in its own frame [mm].
        high: highest corner of it [mm].
        axes: of its length and width there.
        tilt: from its own frame to the piece.
        path: where the file asks for it.
    """
    same = sum(1 for id in out.drafts if id.startswith(f"{second.id}.{name}."))
    draft = out.add(
        f"{second.id}.{name}.{same + 1}", name, stock, Box(low, high), axes, group=second.group, path=path
    )
    draft.tilt = tilt
    return draft
