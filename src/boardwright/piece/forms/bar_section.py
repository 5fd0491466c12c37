"""The section of a full-extension bar: its grooves, slot and recess, and the screws that fit them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from boardwright.formulas.extension_bars import bar_thickness, recess_width, screw_grip, sunk_head
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.bars import LEAST_HELD, groove_room
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.joints.fastening.screws import EDGE_DIAMETERS
from boardwright.piece.joints.settings import LEAST_BETWEEN
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Screw

KEYS = "full_extension_bars"
USUAL_SCREW = 4
USUAL_LENGTH = 19.05
"""A 3/4 in No. 4 screw: common practice."""
HEIGHT = 19.05
DEPTH_SHARE = 16
"""Height of the groove for a bar that stands out like a bracket: a sixteenth of the depth of the space, at least 3/4 in
[mm], at most a third of the drawer side (common practice)."""
LEAST_GRIP = 1.5
"""Least grip of a screw that is a stop only and carries nothing, in shank diameters: common practice."""
BEYOND = 1.5
"""Wood left beyond the tip of a screw that is driven home [mm]: 1/16 in, common practice."""
LEAST_UNDER = 3.0
"""Wood left under the point of the recess [mm]: 1/8 in, common practice."""
LEAST_LAND = 1.5
"""Least of a bar's face left above and below the recess [mm]: 1/16 in, common practice."""
GRAIN = 0.5
"""Depths of grooves are tried in steps of at least this [mm]."""


@dataclass(frozen=True, slots=True)
class Wall:
    """A wall that carries bars: the part, and whether bars may lie in both of its faces."""

    part: Draft
    both: bool

    def left(self, depth: float) -> float:
        """Wood at the bottom of a groove [mm]."""
        return self.part.size(0) - depth * (2 if self.both else 1)

    @property
    def most(self) -> float:
        """Deepest groove [mm]: half of it, or what leaves some wood between two grooves."""
        return (self.part.size(0) - LEAST_BETWEEN) / 2 if self.both else self.part.size(0) / 2


@dataclass(frozen=True, slots=True)
class Section:
    """A bar across its length, with its screws [mm].

    Attributes:
        screw: the gauge. case_screw, drawer_screw: lengths.
        height, thickness: of the bar. slot: height of the slots. recess: width of the V for a head; it is half as deep.
        case_groove, groove: depth of the grooves in the case and in the drawer side.
        play: how much higher the grooves are than the bar. turn: how far a screw goes in one turn.
    """

    screw: Screw
    case_screw: float
    drawer_screw: float
    height: float
    thickness: float
    slot: float
    recess: float
    case_groove: float
    groove: float
    play: float
    turn: float

    @property
    def sunk(self) -> float:
        """How far the head of a screw that is backed off a turn lies below the face [mm]."""
        return sunk_head(self.recess, self.screw.head) - self.turn

    def home(self, length: float) -> float:
        """How deep a screw stands in the wood behind the bar when it is driven home [mm]."""
        return screw_grip(length, self.thickness, self.sunk + self.turn)


@dataclass(frozen=True, slots=True)
class _Wants:
    """What a section must fit: the screw, its length if given, room beside the drawer, play across, height [mm]."""

    screw: Screw
    length: float | None
    beside: float
    play: float
    turn: float
    height: float

    def length_for(self, thickness: float, recess: float, room: float) -> float | None:
        """The length on sale nearest to the usual that grips and leaves wood beyond the tip [mm]."""
        sold = [self.length] if self.length is not None else list(self.screw.lengths)
        sunk = sunk_head(recess, self.screw.head)
        good = [x for x in sold if self._grips(screw_grip(x, thickness, sunk), room)]
        return min(good, key=lambda x: (abs(x - USUAL_LENGTH), x), default=None)

    def _grips(self, home: float, room: float) -> bool:
        """Whether a screw driven home into the wood so deep leaves enough of it, and grips when it is backed off."""
        return home - self.turn >= LEAST_GRIP * self.screw.shank - 1e-6 and home + BEYOND <= room + 1e-6


def even(out: SetOut, mm: float, direction: str) -> float:
    """A size of an even number of steps [mm], so that its middle lies on a step."""
    return 2 * out.sizer.settled(mm / 2, "up" if direction == "up" else "down")


def section(
    out: SetOut,
    id: str,
    side: Draft,
    walls: Sequence[Wall],
    beside: float,
    high: float,
    deep: float,
    layers: Layers,
) -> Section | None:
    """The section for one drawer, or None when nothing fits (a finding says so).

    Args:
        out: the bench.
        id: the drawer's id.
        side: one of its sides, which are alike.
        walls: what the bars hang on.
        beside: room between drawer and wall, one side [mm].
        high: height of the drawer sides [mm].
        deep: depth of the space [mm].
        layers: what the file says.
    """
    tables, settled = out.tables, out.sizer.settled
    gauges = layers.values(f"{KEYS}.screw")
    screw = tables.screw(int(gauges[0][1]) if gauges else USUAL_SCREW)
    assert screw is not None
    turn = 25.4 / screw.threads_per_inch
    recess = even(out, recess_width(screw.head, turn), "up")
    slot = even(out, screw.clearance_drill, "up")
    play = settled(tables.figure("bar_height_clearance").value, "up")
    height = _height(out, id, layers, screw, recess, min(max(HEIGHT, deep / DEPTH_SHARE), high / 3) - play)
    if height + play > high - 4 * play + 1e-6 or recess > height - 2 * LEAST_LAND + 1e-6:
        _too_low(out, id, layers, high, height, play, recess)
        return None
    given = out.sizer.given(layers.choices(f"{KEYS}.screw_length"))
    across = tables.figure("bar_depth_clearance").value
    wants = _Wants(screw, given[1] if given else None, beside, across, turn, height)
    best = _best(out, id, side, walls, wants, recess, layers)
    if best is None:
        _no_screw(out, id, side, walls, wants, layers)
        return None
    groove, case_groove = _grooves(out, id, layers, best[0], best[1])
    thickness = settled(bar_thickness(case_groove, groove, beside, across), "down")
    return Section(screw, best[3], best[4], height, thickness, slot, best[2], case_groove, groove, play, turn)


def _height(out: SetOut, id: str, layers: Layers, screw: Screw, recess: float, usual: float) -> float:
    least = even(out, max(2 * EDGE_DIAMETERS * screw.shank, recess + 2 * LEAST_LAND), "up")
    return out.sizer.size(
        f"{id}.{KEYS}.height",
        layers.choices(f"{KEYS}.height"),
        max(even(out, usual, "down"), least),
        rule="height of a bar: its groove a sixteenth of the depth, less the play; wood around the screw",
        least=2 * EDGE_DIAMETERS * screw.shank,
    )


def _grooves(out: SetOut, id: str, layers: Layers, groove: float, case_groove: float) -> tuple[float, float]:
    sizes = []
    for key, value, where in (("groove", groove, "drawer side"), ("case_groove", case_groove, "case")):
        sizes.append(
            out.sizer.size(
                f"{id}.{KEYS}.{key}",
                layers.choices(f"{KEYS}.{key}"),
                value,
                rule=f"groove in the {where}: as near the usual depth as leaves wood for the tip of a screw",
                source=out.tables.figure("bar_groove_depth").reason,
                direction="down",
                least=LEAST_HELD,
            )
        )
    return sizes[0], sizes[1]


def _best(
    out: SetOut,
    id: str,
    side: Draft,
    walls: Sequence[Wall],
    wants: _Wants,
    recess: float,
    layers: Layers,
) -> tuple[float, float, float, float, float] | None:
    """Depth in the drawer side and in the case, width of the recess, lengths of the screws there [mm].

    Of all that fit, those nearest to the usual depths, the usual screw and the least recess.
    """
    own = _depths(out, layers, "groove", groove_room(id, side))
    cases = _depths(out, layers, "case_groove", min(w.most for w in walls))
    usual = out.tables.figure("bar_groove_depth").value
    wide = [recess]
    while wide[-1] + 2 * out.sizer.step <= wants.height - 2 * LEAST_LAND + 1e-6:
        wide.append(wide[-1] + 2 * out.sizer.step)
    found: list[tuple[float, float, float, float, float, float]] = []
    for groove, case, v in product(own, cases, wide):
        thick = out.sizer.settled(bar_thickness(case, groove, wants.beside, wants.play), "down")
        if thick < v / 2 + LEAST_UNDER:
            continue
        in_case = wants.length_for(thick, v, min(w.left(case) for w in walls))
        in_drawer = wants.length_for(thick, v, side.size(0) - groove)
        if in_case is not None and in_drawer is not None:
            far = abs(in_case - USUAL_LENGTH) + abs(in_drawer - USUAL_LENGTH) + v - recess
            cost = round(abs(groove - usual) + abs(case - usual) + far, 6)
            found.append((cost, groove, case, v, in_case, in_drawer))
    return min(found)[1:] if found else None


def _depths(out: SetOut, layers: Layers, key: str, most: float) -> list[float]:
    """Depths of a groove that may be [mm]: the one that is given, or all from the least to the most."""
    given = out.sizer.given(layers.choices(f"{KEYS}.{key}"))
    if given is not None:
        return [out.sizer.settled(given[1])] if given[1] <= most + 1e-6 else []
    step = out.sizer.step * math.ceil(GRAIN / out.sizer.step - 1e-9)
    first = out.sizer.settled(LEAST_HELD + out.tables.figure("bar_depth_clearance").value, "up")
    return [first + step * i for i in range(max(0, math.floor((most - first) / step + 1e-6) + 1))]


def _too_low(
    out: SetOut, id: str, layers: Layers, high: float, height: float, play: float, recess: float
) -> None:
    need = height + 5 * play
    out.find(
        "drawer.no-room-for-bars",
        f"the bars of {id.replace('.', ' ')} have no room",
        layers.path(f"{KEYS}.height"),
        found=f"sides {out.about(high)} high, bar {out.about(height)} high",
        expected=f"sides at least {out.up(need)} high, a bar at least {out.up(recess + 2 * LEAST_LAND)} high",
        source="common practice",
        remedy=f"give the drawer {out.up(max(need - high, out.sizer.step))} more height, or run it on slides",
    )


def _no_screw(
    out: SetOut, id: str, side: Draft, walls: Sequence[Wall], wants: _Wants, layers: Layers
) -> None:
    """A finding: no depth of grooves leaves wood for a screw on sale."""
    tight = min(walls, key=lambda w: w.most)
    need = wants.turn + BEYOND + LEAST_GRIP * wants.screw.shank
    out.find(
        "drawer.no-room-for-bars",
        f"no screw on sale holds the bars of {id.replace('.', ' ')}",
        layers.path(KEYS),
        found=f"drawer sides {out.about(side.size(0))} thick, {tight.part.name} {out.about(tight.part.size(0))} thick"
        f"{' with bars in both faces' if tight.both else ''}, {out.about(wants.beside)} between them",
        expected=f"behind each groove {out.up(need)}: a grip of {LEAST_GRIP:g} shank diameters, a turn of the screw, "
        f"and {out.up(BEYOND)} of wood beyond its tip",
        source="common practice",
        remedy=f"use thicker stock for the {'divider' if tight.both else 'drawer sides'}, "
        "leave out `groove`, `case_groove` and `screw_length`, or run the drawer on slides",
        parts=(side.id, tight.part.id),
    )
