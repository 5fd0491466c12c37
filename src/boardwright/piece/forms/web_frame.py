"""A web frame between two rows: front and rear rail, runners between them, and a dust panel if asked for."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Channel, Draft
from boardwright.piece.forms.region import WEB_FRAME, Region
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.panel import Wall, float_panel
from boardwright.piece.joints.stub import stub
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

Range = tuple[float, float]
LEAST_PLAY = 2.0
"""A web frame that stays behind a back does so by at least this [mm]: 5/64 in, common practice."""


def web_frame(
    out: SetOut,
    region: Region,
    name: str,
    z: Range,
    stock: Stock,
    joint: JointKeys | None,
    dust: Stock | None,
    path: str,
) -> Draft | None:
    """Put a web frame between the sides of a space; gives its front rail, None without room or walls.

    It is glued to the sides at the front only: solid sides move past the rest of it.

    Args:
        out: the bench.
        region: the space that it parts.
        name: id of its front rail.
        z: from where to where it lies in height [mm].
        stock: of its members.
        joint: how it meets the sides.
        dust: stock of the dust panel; None for an open frame.
        path: where the file asks for it.
    """
    left, right = region.walls.left, region.walls.right
    if left is None or right is None:
        return None
    figure = out.tables.figure("web_frame_width")
    wide = out.sizer.settled(figure.value)
    out.sizer.explain(f"{name}.width", wide, "", "width of the members of a web frame", figure.reason)
    x = (region.box.low[0], region.box.high[0])
    y = (
        region.box.low[1],
        region.box.low[1] + out.sizer.settled(region.inner_depth - _play(out, left), "down"),
    )
    if y[1] - y[0] < 3 * wide or x[1] - x[0] < 3 * wide:
        out.find(
            "space.web-frame-no-room",
            f"there is no room for a web frame in `{region.path}`",
            path,
            found=f"{out.about(x[1] - x[0])} wide, {out.about(y[1] - y[0])} deep",
            expected=f"at least {out.up(3 * wide)} each way",
            source="common practice",
            remedy="use `between: rail` or `between: shelf`",
        )
        return None

    def add(id: str, word: str, xs: Range, ys: Range, along: int) -> Draft:
        box = Box((xs[0], ys[0], z[0]), (xs[1], ys[1], z[1]))
        return out.add(id, word, stock, box, (along, 1 - along), show=((1, False),), path=path)

    front = add(name, WEB_FRAME, x, (y[0], y[0] + wide), 0)
    rear = add(f"{name}.rear", WEB_FRAME, x, (y[1] - wide, y[1]), 0)
    inner = (y[0] + wide, y[1] - wide)
    runners = [
        add(f"{name}.runner.1", "web frame runner", (x[0], x[0] + wide), inner, 1),
        add(f"{name}.runner.2", "web frame runner", (x[1] - wide, x[1]), inner, 1),
    ]
    _frame(out, name, front, rear, runners, dust, z, path)
    dry = (joint or JointKeys(kind="dado")).model_copy(update={"glue": False})
    for side, runner in zip((left, right), runners, strict=True):
        before = len(side.cuts)
        for part, keys in ((front, joint), (runner, dry), (rear, dry)):
            make_joint(out, f"{name}.joint", keys, f"{path}.joint", "dado", side, part)
        _in_one_line(side, before)
    return front


def _play(out: SetOut, side: Draft) -> float:
    """How much the depth of a solid side shrinks: the frame stays behind by it, and never stands against the back."""
    m = out.moisture
    rate = side.stock.across if side.stock.kind == "wood" else 0.0
    shrinks = side.size(1) * rate * max(m.now - m.driest, 0.0)
    return max(shrinks, LEAST_PLAY) if shrinks > 0 else 0.0


def _frame(
    out: SetOut,
    name: str,
    front: Draft,
    rear: Draft,
    runners: list[Draft],
    dust: Stock | None,
    z: Range,
    path: str,
) -> None:
    """Groove the members, put the dust panel in, and the stub tongues of the runners."""
    depth = out.sizer.settled(out.tables.figure("dust_panel_groove").value)
    usual = out.sizer.settled(out.tables.figure("panel_groove_width").value)
    wide = min(dust.thickness if dust is not None else usual, (z[1] - z[0]) / 2)
    low = z[0] + out.sizer.settled((z[1] - z[0] - wide) / 2)
    groove = (low, low + wide)
    if dust is None:
        for rail, high in ((front, True), (rear, False)):
            rail.cuts.append(Channel(1, high, 0, *groove, depth, purpose="panel"))
    else:
        under = low - min(dust.thickness - wide, low - z[0])
        box = Box(
            (runners[0].high[0], front.high[1], under),
            (runners[1].low[0], rear.low[1], under + dust.thickness),
        )
        panel = out.add(f"{name}.dust", "dust panel", dust, box, (0, 1), path=path)
        walls = [
            Wall(front, 1, True),
            Wall(rear, 1, False),
            Wall(runners[0], 0, True),
            Wall(runners[1], 0, False),
        ]
        float_panel(out, panel, walls, depth=depth, path=path, name="dust panel", groove=groove, through=True)
    for runner in runners:
        for rail in (front, rear):
            stub(out, rail, runner, groove, depth, path)


def _in_one_line(side: Draft, before: int) -> None:
    """The dado in a side runs on past all members of the frame."""
    kept = side.cuts[:before]
    for cut in side.cuts[before:]:
        last = kept[-1] if len(kept) > before else None
        if isinstance(cut, Channel) and isinstance(last, Channel) and cut.along == 1:
            kept[-1] = replace(last, end=cut.end)
        else:
            kept.append(cut)
    side.cuts[:] = kept
