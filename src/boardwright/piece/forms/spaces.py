"""The tree of spaces inside a form: rows, columns, and what each leaf holds."""

from __future__ import annotations

from dataclasses import replace

from boardwright.design.schema import Drawer, DrawerStack, Room, Shelves, TrayStack
from boardwright.piece.forms.drawer import drawer
from boardwright.piece.forms.drawer_settings import Layers, usual_stock
from boardwright.piece.forms.fillers import with_fillers
from boardwright.piece.forms.fronts import front, slides_only
from boardwright.piece.forms.lid_well import lifts_out, well
from boardwright.piece.forms.pin_shelves import pin_shelves
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.split import Between, Item, split
from boardwright.piece.forms.trays import heights_agree, stack_of_trays, tray, tray_layers
from boardwright.piece.records import Space, Stock
from boardwright.piece.setout import SetOut

CONTENTS = ("rows", "columns", "drawer", "drawers", "tray", "trays", "shelves", "open")


RUNNING = ("drawer", "drawers", "tray", "trays")


def fill(out: SetOut, region: Region, room: Room, case_stock: str | None) -> None:
    """Put into a region what its room in the design file asks for."""
    asked = [c for c in CONTENTS if getattr(room, c) not in (None, False)]
    if len(asked) > 1:
        out.find(
            "space.two-contents",
            f"`{region.path}` holds two things",
            region.path,
            found=" and ".join(asked),
            expected="one of " + ", ".join(CONTENTS),
            remedy="part it into rows or columns first, and give each one thing",
        )
        return
    kind = asked[0] if asked else "open"
    lifted = kind in ("tray", "trays") and lifts_out(out, room, region.path)
    if region.under_lid and kind in RUNNING and not lifted:
        _no_well(out, region, kind)
        return
    behind = front(out, region, room)
    if behind is None:
        return
    if region.under_lid and lifted:
        if all(m.id != "lid.1" for m in out.motions):
            return
        behind = well(out, behind)
    region = with_fillers(out, behind) if behind.way is not None and slides_only(room) else behind
    out.spaces.append(Space(region.path, region.box, kind, out.design.place(region.path)))
    if room.rows is not None:
        _rows(out, region, room, case_stock)
    elif room.columns is not None:
        _columns(out, region, room, case_stock)
    elif room.drawers is not None:
        _stack(out, region, room.drawers, case_stock, room)
    elif room.drawer is not None:
        path = f"{region.path}.drawer"
        _drawer(out, region.at(path, region.name), [(path, room.drawer)])
    elif room.tray is not None:
        path = f"{region.path}.tray"
        tray(out, region.at(path, region.name), tray_layers(out, path, room.tray))
    elif room.trays is not None:
        _trays(out, region, room.trays, case_stock, room)
    elif room.shelves is not None:
        _shelves(out, region, room.shelves, case_stock)


def _no_well(out: SetOut, region: Region, kind: str) -> None:
    figure = out.tables.figure("lid_rail")
    out.find(
        "case.lid-no-well",
        f"`{region.path}` lies right under the lid, where no drawer or tray runs",
        region.path,
        found=kind,
        expected="an open well under the lid, which leaves room for its rail and stay",
        source="common practice",
        remedy="part the inside into rows: on top a well with `panel: fixed` before it, "
        f"at least {out.up(figure.value)} high, and the {kind} below"
        + (", or let the trays be lifted out (`lift_out: true`)" if "tray" in kind else ""),
    )


def _item(path: str, name: str, room: Room) -> Item:
    return Item(path, name, None if room.size is None else (f"{path}.size", room.size), room.share or 1.0)


def _between(out: SetOut, region: Region, room: Room, default: str, case_stock: str | None) -> Between:
    kind = out.sizer.choose(
        f"{region.name}.between",
        room.between,
        default,
        "nothing between drawers and trays that hang at their sides; else shelves in rows, dividers in columns",
        f"{region.path}.between",
    )
    allowed = ("divider",) if room.columns is not None else ("none", "rail", "web_frame", "shelf")
    if kind not in allowed:
        out.find(
            "space.between",
            f"`{kind}` cannot stand between the {'columns' if room.columns else 'rows'} of `{region.path}`",
            f"{region.path}.between",
            found=kind,
            expected=" or ".join(allowed),
            remedy=f"use `{allowed[-1]}`",
        )
        kind = allowed[-1]
    return between_parts(out, region, kind, room, case_stock)


def between_parts(
    out: SetOut, region: Region, kind: str, room: Room | None, case_stock: str | None, dusted: bool = False
) -> Between:
    """What stands between, with stock and joint."""
    if kind == "none":
        return Between("none", None, None, region.path)
    stock = out.stock((f"{region.path}.stock", room.stock if room else None), ("case.stock", case_stock))
    width = out.sizer.settled(out.tables.figure("web_frame_width").value) if kind == "rail" else 0.0
    dust = _dust(out, stock) if kind == "web_frame" and (dusted or (room is not None and room.dust)) else None
    return Between(kind, stock, room.joint if room else None, region.path, width, dust)


def _dust(out: SetOut, own: Stock) -> Stock:
    """Stock of a dust panel."""
    return usual_stock(out, out.tables.figure("dust_panel_thickness").value, True, own)


def _rows(out: SetOut, region: Region, room: Room, case_stock: str | None) -> None:
    rooms = room.rows or []
    named = [_item(f"{region.path}.rows[{i}]", f"{region.name}.row{i + 1}", r) for i, r in enumerate(rooms)]
    order = list(range(len(rooms)))[::-1]
    default = "none" if all(r.drawer or r.drawers or r.tray or r.trays for r in rooms) else "shelf"
    if default == "none" and any(
        r.drawer is not None and _guided(out, region, f"{n.path}.drawer", r.drawer)
        for r, n in zip(rooms, named, strict=True)
    ):
        default = "web_frame"
    regions = split(
        out, region, 2, [named[i] for i in order], _between(out, region, room, default, case_stock)
    )
    for i, sub in sorted(zip(order, regions, strict=False)):
        fill(out, sub, rooms[i], case_stock)


def _columns(out: SetOut, region: Region, room: Room, case_stock: str | None) -> None:
    rooms = room.columns or []
    items = [
        _item(f"{region.path}.columns[{i}]", f"{region.name}.column{i + 1}", r) for i, r in enumerate(rooms)
    ]
    regions = split(out, region, 0, items, _between(out, region, room, "divider", case_stock))
    for r, sub in zip(rooms, regions, strict=False):
        fill(out, sub, r, case_stock)


def _shelves(out: SetOut, region: Region, shelves: Shelves, case_stock: str | None) -> None:
    path = f"{region.path}.shelves"
    stock = out.stock((f"{path}.stock", shelves.stock), ("case.stock", case_stock))
    region = replace(region, front=None)
    if shelves.kind == "pins":
        pin_shelves(out, region, shelves, stock, path)
        return
    items = [Item(path, f"{region.name}.shelf_space{i + 1}", None, 1.0) for i in range(shelves.count + 1)]
    for sub in split(out, region, 2, items, Between("shelf", stock, shelves.joint, path)):
        out.spaces.append(Space(sub.path, sub.box, "open", out.design.place(path)))


def _stack(out: SetOut, region: Region, stack: DrawerStack, case_stock: str | None, room: Room) -> None:
    path = f"{region.path}.drawers"
    guided = stack.count > 1 and _guided(out, region, f"{path}.drawer", stack.drawer)
    kind = stack.between or ("web_frame" if guided else "none")
    between = replace(between_parts(out, region, kind, room, case_stock, bool(stack.dust)), path=path)
    sizes = _stack_sizes(out, region, stack, between)
    if sizes is None:
        return
    items = []
    for i in range(stack.count - 1, -1, -1):
        given = (f"{path}.heights[{i}]", stack.heights[i]) if stack.heights else None
        items.append(Item(path, f"{region.name}.drawer{i + 1}", given, sizes[i]))
    regions = split(out, region, 2, items, between)
    layers: list[tuple[str, Drawer | None]] = [(f"{path}.drawer", stack.drawer)]
    for sub in reversed(regions):
        out.spaces.append(Space(sub.name, sub.box, "drawer", out.design.place(path)))
        _drawer(out, sub, layers)


def _trays(out: SetOut, region: Region, stack: TrayStack, case_stock: str | None, room: Room) -> None:
    path = f"{region.path}.trays"
    between = replace(between_parts(out, region, stack.between or "none", room, case_stock), path=path)
    if heights_agree(out, path, stack):
        stack_of_trays(out, region.at(path, region.name), stack, between)


def _guided(out: SetOut, region: Region, path: str, keys: Drawer | None) -> bool:
    """Whether drawers run over a centre guide, for which something must lie under each, in room for a web frame."""
    runs_on = Layers([(path, keys), ("drawers", out.design.file.drawers)]).values("runs_on")
    least = 3 * out.tables.figure("web_frame_width").value
    wide, deep = region.box.size(0), region.box.size(1)
    return bool(runs_on) and runs_on[0][1] == "centre_guide" and min(wide, deep) >= least + 10.0


def _stack_sizes(out: SetOut, region: Region, stack: DrawerStack, between: Between) -> list[float] | None:
    """Heights of the openings, top to bottom, as shares."""
    path = f"{region.path}.drawers"
    n = stack.count
    if stack.heights is not None:
        if len(stack.heights) != n:
            out.find(
                "space.heights-count",
                f"`{path}` has {n} drawers and {len(stack.heights)} heights",
                f"{path}.heights",
                found=str(len(stack.heights)),
                expected=str(n),
                remedy="give one height for each drawer, from top to bottom",
            )
            return None
        return [1.0] * n
    if stack.grow is None:
        return [1.0] * n
    grow = out.sizer.read(f"{path}.grow")
    if grow is None:
        return None
    thick = between.stock.thickness if between.stock is not None else 0.0
    total = region.box.size(2) - thick * (n - 1)
    first = (total - grow * n * (n - 1) / 2) / n
    sizes = [first + i * grow for i in range(n)]
    if min(sizes) <= 0:
        out.find(
            "space.too-small",
            f"the drawers of `{path}` grow so fast that one has no height",
            f"{path}.grow",
            found=f"smallest {out.about(min(sizes))}",
            expected="more than nothing",
            remedy=f"let them grow by less than {out.about(2 * total / (n * max(n - 1, 1)))}",
        )
        return None
    return sizes


def _drawer(out: SetOut, region: Region, own: list[tuple[str, Drawer | None]]) -> None:
    drawer(out, with_fillers(out, region), Layers([*own, ("drawers", out.design.file.drawers)]))
