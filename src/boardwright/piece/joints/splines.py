"""Splines: strips that lie half in a groove of either part."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.piece.drafts import Channel, Draft, Meeting
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

THINNEST, THICKEST = 1 / 6, 1 / 2
"""Thickness of a sheet that splines are cut from, as shares of the thickness of the parts (common practice)."""
SHORT = 0.75
"""A spline is so much narrower than its two grooves are deep, on each side [mm]: 1/32 in, common practice."""


def spline_of(out: SetOut, second: Draft, want: JointSettings, thick: float) -> tuple[Stock, float]:
    """What a spline is made of, and its thickness [mm].

    The sheet of the file nearest to a third of the thickness; without one, and when the thickness is given, a strip
    planed from the stock of the second part.
    """
    share = out.tables.figure("tongue_thickness_share")
    sheets = [
        s
        for s in out.stocks.values()
        if s.kind == "sheet" and THINNEST * thick - 1e-6 <= s.thickness <= THICKEST * thick + 1e-6
    ]
    given = want.keys.width if want.keys is not None else None
    if sheets and given is None:
        stock = min(sheets, key=lambda s: (abs(s.thickness - thick * share.value), s.id))
        out.sizer.explain(
            f"{want.name}.width",
            stock.thickness,
            stock.id,
            "spline of the sheet nearest to a third",
            share.reason,
        )
        return stock, stock.thickness
    width = out.sizer.size(
        f"{want.name}.width",
        [(f"{want.path}.width", given)],
        thick * share.value,
        rule=f"spline {share.value:.3g} of the thickness",
        source=share.reason,
        total=f"{share.value:.3g} × {out.text(thick)}",
        least=out.sizer.step,
    )
    return second.stock, width


def add_spline(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    want: JointSettings,
    stock: Stock,
    lows: tuple[float, float],
    run: tuple[float, float],
) -> Draft:
    """Groove both parts, and put a spline in, joined to each.

    Args:
        out: the bench.
        first: the part on one side.
        second: the part on the other.
        meet: how the two stand.
        want: the joint; `want.depth` is how deep either groove is [mm].
        stock: of the spline.
        lows: from where to where it lies on the axis of the thickness [mm].
        run: from where to where it runs [mm].
    """
    near, far = lows
    face = first.face(meet.axis, meet.high)
    reach = want.depth - out.sizer.settled(SHORT, "up")
    low, high = [0.0] * 3, [0.0] * 3
    low[meet.axis], high[meet.axis] = face - reach, face + reach
    low[meet.across], high[meet.across] = near, far
    low[meet.along], high[meet.along] = run
    same = sum(1 for id in out.drafts if id.startswith(f"{second.id}.spline."))
    spline = out.add(
        f"{second.id}.spline.{same + 1}",
        "spline",
        stock,
        Box((low[0], low[1], low[2]), (high[0], high[1], high[2])),
        (meet.along, meet.axis),
        group=second.group,
        path=want.path,
    )
    for part, at_high in ((first, meet.high), (second, not meet.high)):
        ends = (part.low[meet.along], part.high[meet.along])
        part.cuts.append(
            Channel(
                meet.axis,
                at_high,
                meet.along,
                near,
                far,
                want.depth,
                None if abs(run[0] - ends[0]) < 1e-6 else run[0],
                None if abs(run[1] - ends[1]) < 1e-6 else run[1],
                holds=spline.id,
            )
        )
        deep = (face - reach, face) if at_high else (face, face + reach)
        out.joint(
            "spline",
            part,
            spline,
            [
                plane(meet.across, near, {meet.axis: deep, meet.along: run}, True, glued=want.glue),
                plane(meet.across, far, {meet.axis: deep, meet.along: run}, False, glued=want.glue),
            ],
            [unit(meet.axis, at_high)],
            f"spline in a groove {out.text(want.depth)} deep{', glued' if want.glue else ', dry'}",
            glued=want.glue,
            place=out.design.place(want.path),
        )
    return spline
