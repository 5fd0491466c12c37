"""Bought slides: which, the room they need, and where they lie."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.run_room import Room, Run
from boardwright.piece.records import Hardware, Stock
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Slide


def slide_room(
    out: SetOut, id: str, region: Region, layers: Layers, front_back: float, least_side: float, stock: Stock
) -> Room | None:
    """The room that bought slides leave for the box, or None when none fits (a finding says so)."""
    sizer = out.sizer
    deep = region.box.high[1] - front_back
    slide = _choose_slide(out, id, layers, deep)
    if slide is None:
        _no_slide(out, region, layers, deep)
        return None
    side = sizer.size(
        f"{id}.side_clearance",
        [*layers.choices("slides.side"), *layers.choices("side_clearance")],
        max(slide.side_space_min, least_side),
        rule=f"room beside the box for a {slide.name}, each side",
        source=slide.source,
        least=max(slide.thickness, least_side),
        settle_it=False,
    )
    below = sizer.settled(out.tables.figure("drawer_height_plywood").value, "up")
    return Room(
        "slides", side, slide.source, max(below, least_side), 0.0, sizer.settled(slide.length), stock, slide
    )


def _no_slide(out: SetOut, region: Region, layers: Layers, deep: float) -> None:
    """A finding: the slide that is asked for, or the shortest of all, is too long for the opening, or not on sale."""
    slides = _own_slides(out)
    asked = [
        s for _, key in layers.values("slides.kind") for s in out.tables.slides.values() if s.key == str(key)
    ][:1]
    length = out.sizer.given(layers.choices("slides.length"))
    if not asked and length is not None:
        asked = [s for s in slides if abs(s.length - length[1]) < 1.0]
        if not asked:
            out.find(
                "drawer.unknown-slide",
                f"no slide of the tables is {out.about(length[1])} long",
                length[0],
                found=out.about(length[1]),
                expected="one of " + ", ".join(out.about(x) for x in sorted({s.length for s in slides})),
                remedy="use one of these, or add a row in a file under `tables:`",
            )
            return
    least = min(asked or slides, key=lambda s: s.length)
    need = least.length + least.rear_clearance
    out.find(
        "drawer.no-slide",
        f"no bought slide fits the depth of `{region.path}`"
        if not asked
        else f"the slide is too long for `{region.path}`",
        layers.path("slides"),
        found=f"{out.about(deep)} behind the front",
        expected=f"at least {out.up(need)}: slide {out.about(least.length)}, "
        f"{out.about(least.rear_clearance)} behind it",
        source=least.source,
        remedy=f"make the case {out.up(need - deep)} deeper, or run the drawer on bars or runners",
    )


def _own_slides(out: SetOut) -> list[Slide]:
    """Slides of the plan's unit system: those of whole 50 mm in millimetres, the others in inches."""
    slides = list(out.tables.slides.values())
    metric = out.design.units == "mm"
    return [s for s in slides if (abs(s.length / 50 - round(s.length / 50)) < 1e-6) == metric] or slides


def _choose_slide(out: SetOut, id: str, layers: Layers, deep: float) -> Slide | None:
    kinds = layers.values("slides.kind")
    if kinds:
        path, key = kinds[0]
        if str(key) in out.tables.slides:
            row = out.tables.slides[str(key)]
            return row if row.length + row.rear_clearance <= deep + 1e-6 else None
        out.find(
            "drawer.unknown-slide",
            f"`{key}` is no slide of the tables",
            path,
            found=str(key),
            expected="one of " + ", ".join(s.key for s in _own_slides(out)),
            remedy="use one of these, or add a row in a file under `tables:`",
        )
    given = out.sizer.given(layers.choices("slides.length"))
    fitting = [s for s in _own_slides(out) if s.length + s.rear_clearance <= deep + 1e-6]
    if given is not None:
        fitting = [s for s in fitting if abs(s.length - given[1]) < 1.0]
    best = max(fitting, key=lambda s: s.length, default=None)
    if best is not None:
        out.sizer.explain(
            f"{id}.slide.length",
            best.length,
            "longest that the depth takes",
            "length of a bought slide",
            best.source,
        )
    return best


def slides(out: SetOut, id: str, region: Region, room: Room, box: Box, front_back: float) -> Run:
    """Put in the two slides of one drawer."""
    slide = room.slide
    assert slide is not None
    half = slide.thickness / 2
    if slide.height > box.size(2) + 1e-6:
        out.find(
            "drawer.slide-too-high",
            f"the slide is higher than the sides of {id.replace('.', ' ')}",
            region.path,
            found=f"sides {out.about(box.size(2))}, slide {out.about(slide.height)} high",
            expected="sides at least as high as the slide",
            source=slide.source,
            remedy=f"make the sides {out.up(slide.height)} high or more (`box_height`, or a higher opening)",
        )
    z0 = box.low[2] + out.sizer.settled(max(box.size(2) - slide.height, 0.0) / 2)
    z1 = z0 + min(slide.height, box.size(2))
    ys = (front_back, front_back + slide.length)
    for face, at_left, side in (
        (region.box.low[0], True, box.low[0]),
        (region.box.high[0], False, box.high[0]),
    ):
        toward = 1.0 if at_left else -1.0
        case = sorted((face, face + toward * half))
        drawer = sorted((side, side - toward * half))
        name = "left" if at_left else "right"
        place = out.design.place(region.path)
        out.hardware.append(
            Hardware(
                f"{id}.slide.{name}",
                slide.name,
                slide.key,
                Box((case[0], ys[0], z0), (case[1], ys[1], z1)),
                "case",
                0.5,
                0.0,
                place,
            )
        )
        out.hardware.append(
            Hardware(
                f"{id}.slide.{name}.moving",
                slide.name,
                slide.key,
                Box((drawer[0], ys[0], z0), (drawer[1], ys[1], z1)),
                id,
                0.5,
                0.0,
                place,
            )
        )
    travel = slide.length if slide.extension == "full" else slide.length * 0.75
    out.sizer.explain(
        f"{id}.travel", travel, f"{slide.extension} extension", "travel of a bought slide", slide.source
    )
    return Run(travel)
