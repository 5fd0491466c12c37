"""A board fixed before a space, between the parts at its left and right."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import FixedPanel, JointKeys
from boardwright.piece.forms.drawer import swelling
from boardwright.piece.forms.region import Region
from boardwright.piece.joints.make import make_joint
from boardwright.piece.setout import SetOut

GLUED = JointKeys(kind="butt", fasten="none", glue=True)


def fixed_panel(out: SetOut, region: Region, keys: FixedPanel, path: str) -> float:
    """Put the board in; gives how far it reaches into the space from its front [mm].

    Solid wood stands dry in its grooves, glued to what it stands on, so that it can swell upward.
    """
    form = out.design.file.case
    stock = out.stock((f"{path}.stock", keys.stock), ("case.stock", form.stock if form else None))
    box, t = region.box, stock.thickness
    sides = region.walls.left, region.walls.right
    if sides[0] is None or sides[1] is None:
        out.find(
            "space.nothing-to-stand-on",
            f"the panel of `{region.path}` has nothing to be joined to",
            path,
            found="an open side",
            expected="a part at both ends of it",
            remedy="set `between: divider` in the columns around it",
        )
        return 0.0
    over = out.sizer.settled(box.size(2) * swelling(out, stock), "up")
    if over:
        out.sizer.explain(
            f"{region.name}.panel.over",
            over,
            f"{out.text(box.size(2))} of wood across its grain, to the wettest time",
            "room over the panel",
            "change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
        )
    board = out.add(
        f"{region.name}.panel",
        "front panel",
        stock,
        Box(box.low, (box.high[0], box.low[1] + t, box.high[2] - over)),
        (0, 2),
        show=((1, False), (2, True)),
        path=path,
    )
    floor = region.walls.floor
    dry = stock.kind == "wood" and floor is not None
    usual = JointKeys(kind="tongue", glue=False) if dry else None
    for side in sides:
        if side is not None:
            joint = keys.joint or usual
            make_joint(out, f"{region.name}.panel.joint", joint, f"{path}.joint", "tongue", side, board)
    if floor is not None and floor.thickness_axis == 2:
        make_joint(out, f"{region.name}.panel.foot", GLUED, path, "butt", floor, board)
    return t
