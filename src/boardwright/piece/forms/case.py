"""A case: two sides, top, bottom, back; then what is inside."""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.poses import Box
from boardwright.design.schema import Case, Deck, Lid
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.back import BackPlan, set_back
from boardwright.piece.forms.base import base, base_plan
from boardwright.piece.forms.cover import cover, cover_stock
from boardwright.piece.forms.face_frame import face_frame, face_plan
from boardwright.piece.forms.lid import lid, lid_rail
from boardwright.piece.forms.region import Region, Walls
from boardwright.piece.forms.spaces import fill
from boardwright.piece.forms.wall_cleat import cleat_stock, wall_cleat
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Chain, Stock
from boardwright.piece.setout import SetOut

LEAST_CASE = 60.0
LARGEST_CASE = 6000.0


@dataclass(frozen=True, slots=True)
class DeckPlan:
    """Top or bottom: kind, stock, rail width [mm], thickness taken from the height [mm]."""

    kind: str
    stock: Stock
    rail: float
    thickness: float
    keys: Deck | None
    name: str


def case(out: SetOut, keys: Case) -> Box | None:
    """Set out a case; gives its outside, or None when its sizes make no case."""
    outer = _outside(out, keys)
    if outer is None:
        return None
    width, height, depth = outer
    stock = out.stock(("case.stock", keys.stock))
    side_stock = out.stock(
        ("case.sides.stock", keys.sides.stock if keys.sides else None), ("case.stock", keys.stock)
    )
    through = out.sizer.choose("case.through", keys.through, "sides", "the sides run through", "case.through")
    top = _deck(out, keys.top, "top", keys)
    bottom = _deck(out, keys.bottom, "bottom", keys)
    cleat = cleat_stock(out, keys.wall_cleat, stock)
    back = BackPlan(
        out,
        keys.back,
        stock,
        cleat.thickness if cleat is not None else None,
        stock.thickness if top.kind == "lid" else None,
    )
    up = _up(out, keys, through)
    foot = base_plan(out, keys.base, stock)
    over = cover_stock(out, keys.cover, stock)
    on_top = over.thickness if over is not None else 0.0
    height -= on_top
    lift = foot.height if foot is not None else 0.0
    t = side_stock.thickness
    settled = out.sizer.settled
    face = face_plan(out, keys.face_frame, stock)
    before = face.stock.thickness if face is not None else 0.0
    deep = settled(depth - back.behind - before, "down")
    inside = width - 2 * t
    net = height - top.thickness - bottom.thickness - up - lift
    if through == "sides":
        inside = settled(inside, "down")
        width = inside + 2 * t
    else:
        net = settled(net, "down")
        height = net + top.thickness + bottom.thickness + up + lift
    if inside < LEAST_CASE / 2 or net < LEAST_CASE / 2 or deep - back.room < LEAST_CASE / 2:
        out.find(
            "case.no-inside",
            "the case has no inside",
            "case",
            found=f"{out.text(settled(inside))} wide, {out.text(settled(net))} high, "
            f"{out.text(settled(deep - back.room))} deep inside",
            expected=f"at least {out.up(LEAST_CASE / 2)} each way",
            remedy="make the case "
            + _larger(out, (inside, net, deep - back.room))
            + ", or its parts thinner",
        )
        return None
    out.sizer.explain(
        "case.inside.width", inside, f"{out.text(width)} less 2 × {out.text(t)}", "settled down on the step"
    )
    out.sizer.explain(
        "case.inside.height",
        net,
        f"{out.text(height)} less {out.text(top.thickness)}, {out.text(bottom.thickness)}, {out.text(up + lift)}",
    )
    z_floor = lift + up + bottom.thickness
    z_ceiling = z_floor + net
    z0 = lift if through == "sides" else z_floor
    z1 = height if through == "sides" and top.kind != "lid" else z_ceiling
    left = _side(out, "left", side_stock, Box((0.0, 0.0, z0), (t, deep, z1)), (0, False))
    right = _side(out, "right", side_stock, Box((t + inside, 0.0, z0), (width, deep, z1)), (0, True))
    xs = (t, t + inside) if through == "sides" else (0.0, width)
    tops = _place_deck(out, top, xs, deep, back, z_ceiling)
    bottoms = _place_deck(out, bottom, xs, deep, back, lift + up)
    for deck, drafts in ((top, tops), (bottom, bottoms)):
        _join_deck(out, deck, drafts, left, right, through, up, deep - back.room)
    full_top = tops[0] if top.kind == "full" else None
    if top.kind == "lid":
        full_top = lid_rail(
            out,
            lid_keys(keys),
            top.keys.joint if top.keys else None,
            left,
            right,
            stock,
            z_ceiling,
            back,
            z_floor,
        )
    full_bottom = bottoms[0] if bottom.kind == "full" else None
    if full_top is not None or top.kind != "lid":
        set_back(out, back, left, right, full_top, full_bottom)
    if top.kind == "lid" and full_top is not None:
        lid(out, lid_keys(keys), top.stock, left, right, full_top, deep + back.behind)
    _chains(out, width, height, inside, net, t, top, bottom, up, lift, on_top)
    region = Region(
        Box((t, 0.0, z_floor), (t + inside, deep - back.room, z_ceiling)),
        Walls(left, right, bottoms[0] if bottoms else None, tops[0] if tops else None),
        "case.inside",
        "inside",
        settled(deep - back.room, "down"),
        (inside, net),
        under_lid=top.kind == "lid",
    )
    if cleat is not None and keys.wall_cleat is not None:
        whole = tops[0] if top.kind == "full" else None
        wall_cleat(out, keys.wall_cleat, cleat, left, right, whole, z_ceiling, back.inset, z_floor)
    if face is not None:
        under = lift + (up if through == "sides" else 0.0)
        front = face_frame(
            out,
            face,
            left,
            right,
            tops,
            bottoms,
            (under, z_ceiling if top.kind == "lid" else height),
            z_floor,
        )
        region = replace(region, front=front)
    if keys.inside is not None:
        fill(out, region, keys.inside, keys.stock)
    if over is not None and keys.cover is not None:
        cover(out, keys.cover, over, tops, (left, right), -before, deep + back.behind)
    if foot is not None:
        base(out, foot, full_bottom, (0.0, width), (t, t + inside), (0.0, deep), up)
    return Box((0.0, -before, 0.0), (width, deep + back.behind, height + on_top))


def lid_keys(keys: Case) -> Lid | None:
    """What the file says of the lid."""
    return keys.top.lid if keys.top is not None else None


def _larger(out: SetOut, clear: tuple[float, float, float]) -> str:
    short = zip((LEAST_CASE / 2 - c for c in clear), ("wider", "higher", "deeper"), strict=True)
    return " and ".join(f"{out.up(s)} {word}" for s, word in short if s > 0)


def _outside(out: SetOut, keys: Case) -> tuple[float, float, float] | None:
    sizes = []
    for name in ("width", "height", "depth"):
        path = f"case.{name}"
        value = out.sizer.read(path)
        if value is None:
            continue
        if not LEAST_CASE <= value <= LARGEST_CASE:
            out.find(
                "case.size",
                f"the {name} of the case is out of range",
                path,
                found=out.about(value),
                expected=f"{out.up(LEAST_CASE)} to {out.down(LARGEST_CASE)}",
                remedy="check the number and its unit",
            )
            continue
        sizes.append(out.sizer.size(path, [(path, getattr(keys, name))], value))
    return (sizes[0], sizes[1], sizes[2]) if len(sizes) == 3 else None


def _deck(out: SetOut, keys: Deck | None, name: str, case_keys: Case) -> DeckPlan:
    path = f"case.{name}"
    lidded = name == "top" and keys is not None and keys.lid is not None
    kind = out.sizer.choose(
        f"{path}.kind",
        keys.kind if keys else None,
        "lid" if lidded else "full",
        "a lid is described" if lidded else "a whole board",
        f"{path}.kind",
    )
    if name == "bottom" and keys is not None and (kind == "lid" or keys.lid is not None):
        out.find(
            "case.lid-at-bottom",
            "a lid lies on top",
            f"{path}.lid" if keys.lid is not None else f"{path}.kind",
            found="a lid at the bottom",
            expected="a lid under `top`",
            remedy="give it under `case.top`",
        )
        kind = "full" if kind == "lid" else kind
    stock = out.stock((f"{path}.stock", keys.stock if keys else None), ("case.stock", case_keys.stock))
    rail = 0.0
    if kind == "rails":
        figure = out.tables.figure("web_frame_width")
        rail = out.sizer.size(
            f"{path}.rail_width",
            [(f"{path}.rail_width", keys.rail_width if keys else None)],
            figure.value,
            rule="width of a rail",
            source=figure.reason,
            least=15.0,
        )
    return DeckPlan(kind, stock, rail, 0.0 if kind == "none" else stock.thickness, keys, name)


def _up(out: SetOut, keys: Case, through: str) -> float:
    given = keys.bottom.up if keys.bottom else None
    up = out.sizer.size(
        "case.bottom.up", [("case.bottom.up", given)], 0.0, rule="the bottom lies at the floor"
    )
    if up > 0 and through == "top_and_bottom":
        out.find(
            "case.up-needs-sides",
            "a bottom that runs through cannot stand above the floor: nothing is under it",
            "case.bottom.up",
            found=f"up {out.text(up)}, through: top_and_bottom",
            expected="`through: sides`, or no `up`",
            remedy="set `through: sides`",
        )
        return 0.0
    return up


def _side(out: SetOut, which: str, stock: Stock, box: Box, shown: tuple[int, bool]) -> Draft:
    return out.add(
        f"case.side.{which}",
        "side",
        stock,
        box,
        (2, 1),
        show=(shown, (1, False)),
        path="case.sides" if out.design.file.case and out.design.file.case.sides else "case",
    )


def _place_deck(
    out: SetOut, deck: DeckPlan, xs: tuple[float, float], deep: float, back: BackPlan, z: float
) -> list[Draft]:
    path = f"case.{deck.name}" if deck.keys is not None else "case"
    t = deck.thickness
    show = (((2, True),) if deck.name == "top" else ()) + ((1, False),)
    if deck.kind == "full":
        box = Box((xs[0], 0.0, z), (xs[1], deep, z + t))
        return [out.add(f"case.{deck.name}", deck.name, deck.stock, box, (0, 1), show=show, path=path)]
    if deck.kind in ("none", "lid"):
        return []
    rear = out.sizer.settled(deep - back.room, "down")
    if rear < 2 * deck.rail + 10:
        out.find(
            "case.rails-too-wide",
            f"the two {deck.name} rails do not fit the depth",
            f"{path}.rail_width",
            found=f"2 × {out.text(deck.rail)} in a depth of {out.text(rear)}",
            expected=f"at least {out.up(10.0)} between them",
            remedy=f"make the rails {out.down((rear - 10.0) / 2)} wide or less, or use a full board",
        )
        return []
    name = f"{deck.name} rail"
    front = out.add(
        f"case.{deck.name}.front",
        name,
        deck.stock,
        Box((xs[0], 0.0, z), (xs[1], deck.rail, z + t)),
        (0, 1),
        show=((1, False),),
        path=path,
    )
    behind = out.add(
        f"case.{deck.name}.rear",
        name,
        deck.stock,
        Box((xs[0], rear - deck.rail, z), (xs[1], rear, z + t)),
        (0, 1),
        path=path,
    )
    return [front, behind]


def _join_deck(
    out: SetOut,
    deck: DeckPlan,
    drafts: list[Draft],
    left: Draft,
    right: Draft,
    through: str,
    up: float,
    rear: float,
) -> None:
    """Join the top or the bottom to the sides; the back begins at `rear` [mm]."""
    path = f"case.{deck.name}.joint"
    keys = deck.keys.joint if deck.keys else None
    default = "dado" if deck.name == "bottom" and up > 0 and through == "sides" else "rabbet"
    for draft in drafts:
        for side in (left, right):
            first, second = (side, draft) if through == "sides" else (draft, side)
            behind = out.sizer.settled(max(draft.high[1] - rear, 0.0), "up")
            make_joint(out, f"case.{deck.name}.joint", keys, path, default, first, second, back=behind)


def _chains(
    out: SetOut,
    width: float,
    height: float,
    inside: float,
    net: float,
    t: float,
    top: DeckPlan,
    bottom: DeckPlan,
    up: float,
    lift: float,
    on_top: float,
) -> None:
    out.chains.append(
        Chain("width of the case", (("side", t), ("inside", inside), ("side", t)), ("outside width", width))
    )
    members = [
        ("cover", on_top),
        ("top", top.thickness),
        ("inside", net),
        ("bottom", bottom.thickness),
        ("under the bottom", up),
        ("base", lift),
    ]
    out.chains.append(
        Chain(
            "height of the case", tuple(m for m in members if m[1] > 0), ("outside height", height + on_top)
        )
    )
