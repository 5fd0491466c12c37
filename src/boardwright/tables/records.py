"""One row of each table. The names of the fields are the headers of the columns.

Every row says where its figures come from: `source`, and in `provenance` whether the page was read, the
figure was computed, or it is from memory or common practice.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from boardwright.tables.cells import (
    FilledLength,
    FilledNumber,
    Length,
    Lengths,
    MaybeLength,
    MaybeNumber,
    Note,
    Number,
    Numbers,
    Positive,
    Sizes,
    Text,
    Whole,
    YesNo,
    choice,
)

System = Annotated[str, choice("in", "mm")]
WoodKind = Annotated[str, choice("hardwood", "softwood")]
SheetKind = Annotated[str, choice("plywood", "mdf", "particleboard", "hardboard", "glass")]
Origin = Annotated[str, choice("printed", "derived", "stand-in", blank="printed")]
FigureUnit = Annotated[
    str,
    choice(
        "mm",
        "in",
        "ft",
        "share",
        "%",
        "ratio",
        "count",
        "degree",
        "h",
        "min",
        "psf",
        "psi",
        "lb",
        "lb/ft",
        "lb/ft3",
        "N/mm2",
        "N m",
        "kg",
        "kg/m",
        "kg/m3",
    ),
]


@dataclass(frozen=True, slots=True)
class Species:
    """A wood.

    Attributes:
        radial, tangential: change of size per 1 % of moisture [1/%].
        coefficients: where these two come from: `printed` in a table, `derived` from the shrinkage, or those
            of a similar wood (`stand-in`).
        shrink_radial, shrink_tangential, shrink_volumetric: green to ovendry [%].
        shrink_start: moisture at which shrinkage starts [%].
        sg_12, sg_green: specific gravity, ovendry mass on the volume at 12 % and on the green volume [-].
        mor, moe: bending strength [MPa] and stiffness [GPa] at 12 %, as tabulated: shear deflection included.
        comp_parallel, comp_perp, shear: strengths at 12 % [MPa]. hardness: side hardness [N].
    """

    key: Text
    name: Text
    botanical: Note
    kind: WoodKind
    radial: FilledNumber
    tangential: FilledNumber
    coefficients: Origin
    shrink_radial: MaybeNumber
    shrink_tangential: MaybeNumber
    shrink_volumetric: MaybeNumber
    shrink_start: FilledNumber
    sg_12: MaybeNumber
    sg_green: MaybeNumber
    mor: MaybeNumber
    moe: MaybeNumber
    comp_parallel: MaybeNumber
    comp_perp: MaybeNumber
    shear: MaybeNumber
    hardness: MaybeNumber
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet material in one thickness.

    Attributes:
        family: the material, e.g. `birch_plywood`; a family has several thicknesses.
        nominal: the thickness it is sold by [mm]. actual: what it usually measures [mm].
        actual_min, actual_max: least and most it may measure [mm].
        tolerance_plus, tolerance_minus: allowed by the standard, on the nominal [mm].
        density: [kg/m3]. moe: bending stiffness along the length [GPa].
        sizes: length and width of sheets as sold [mm]. has_grain: the face shows grain.
    """

    key: Text
    family: Text
    name: Text
    kind: SheetKind
    nominal: Length
    actual: Length
    actual_min: FilledLength
    actual_max: FilledLength
    tolerance_plus: MaybeLength
    tolerance_minus: MaybeLength
    density: Positive
    moe: MaybeNumber
    sizes: Sizes
    has_grain: YesNo
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Screw:
    """A flat-head wood screw gauge.

    Attributes:
        shank, root, head: diameters [mm]. threads_per_inch: [1/in].
        clearance_drill: hole for the shank [mm]. pilot_soft, pilot_hard: hole for the thread, in wood of
            specific gravity to 0.6, and over [mm].
        countersink: included angle [degrees]. lengths: as sold [mm].
    """

    key: Text
    gauge: Whole
    shank: Length
    root: Length
    head: Length
    threads_per_inch: Positive
    clearance_drill: Length
    pilot_soft: Length
    pilot_hard: Length
    countersink: Number
    lengths: Lengths
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Dowel:
    """A dowel pin as sold: diameter and length [mm]."""

    key: Text
    diameter: Length
    length: Length
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Glue:
    """A class of glue.

    Attributes:
        open_time, closed_time, clamp_time: [min]. full_cure: [h]. min_temperature: [degrees C].
        spread_min, spread_max: one face [g/m2].

    A figure of None is not known, or depends on the glue's formula: see `note`.
    """

    key: Text
    name: Text
    open_time: MaybeNumber
    closed_time: MaybeNumber
    clamp_time: MaybeNumber
    full_cure: MaybeNumber
    min_temperature: MaybeNumber
    spread_min: MaybeNumber
    spread_max: MaybeNumber
    water_resistance: Note
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Slide:
    """A bought drawer slide, of no particular maker.

    Attributes:
        length: closed, which is also the drawer's length [mm]. thickness: of one slide [mm].
        side_space_min, side_space_max: to leave between drawer and case, each side [mm].
        height: [mm]. rear_clearance: least depth of the case beyond the slide [mm].
    """

    key: Text
    name: Text
    length: Length
    thickness: Length
    side_space_min: Length
    side_space_max: Length
    height: Length
    rear_clearance: Length
    extension: Annotated[str, choice("full", "three-quarter")]
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class LumberClass:
    """A thickness that lumber is sold in.

    Attributes:
        system: `in` for the quarter system, `mm` for metric sawn boards.
        rough: as sawn [mm]. s1s, s2s: surfaced on one face and on two [mm].
        planned: finished thickness to plan for [mm].
    """

    key: Text
    name: Text
    system: System
    rough: Length
    s1s: MaybeLength
    s2s: MaybeLength
    planned: Length
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class BoardSize:
    """A board assumed when nobody says what is on the rack: rough width and length [mm]."""

    key: Text
    system: System
    width: Length
    length: Length
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Finish:
    """A class of finish.

    Attributes:
        coats: usual number of coats.
        first_low, first_high: what the first coat covers, bare wood [ft2 to the US gallon].
        later_low, later_high: the same, later coats.
        rags: it is wiped with rags that can heat by themselves. between: grit between coats.
    """

    key: Text
    name: Text
    coats: Whole
    first_low: Positive
    first_high: Positive
    later_low: Positive
    later_high: Positive
    rags: YesNo
    between: Whole
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Grade:
    """A grade of hardwood lumber.

    Attributes:
        min_width, min_length: of the least board [mm].
        surface_measure: mean of its boards [ft2].
        defect_share: share of the face that is defects, on average.
        clear_yield: share of the face that comes out in clear cuttings of random lengths, on average.
    """

    key: Text
    name: Text
    min_width: Length
    min_length: Length
    surface_measure: Positive
    defect_share: Number
    clear_yield: Positive
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class MoistureRange:
    """Moisture content that wood settles at in use: average, lowest, highest [%]."""

    key: Text
    use: Text
    region: Text
    average: Number
    low: Number
    high: Number
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Climate:
    """Moisture content of wood outdoors under cover [%]: `months` from January, `low` and `high` of all.

    `january` and `july` are mean outdoor temperatures [degrees F].
    """

    key: Text
    city: Text
    country: Note
    months: Numbers
    low: Number
    high: Number
    january: Number
    july: Number
    source: Note
    provenance: Note
    note: Note


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of the trade.

    Attributes:
        value: the figure to use; lengths [mm], masses [kg], pressures [N/mm2], the rest as `unit` says.
        low, high: the range met in the trade, in the same unit, where there is one.
        unit: after reading: mm, share, %, ratio, count, degree, h, min, N/mm2, N m, kg, kg/m or kg/m3 [name].
        applies_to: what it is the figure of.
    """

    key: Text
    value: Number
    low: MaybeNumber
    high: MaybeNumber
    unit: FigureUnit
    applies_to: Note
    source: Note
    provenance: Note

    @property
    def reason(self) -> str:
        """Where the figure comes from, in a few words."""
        if self.source in ("", "common practice"):
            return self.provenance or "common practice"
        return f"{self.source} (from memory)" if self.provenance == "from memory" else self.source
