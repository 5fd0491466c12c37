"""What each check asks, how it is figured, where that comes from, and where it ends. `check_docs.py` prints it."""

from __future__ import annotations

from typing import NamedTuple


class Facts(NamedTuple):
    """One check.

    Attributes:
        asks: the question, in one sentence.
        figured: formula or method.
        source: published source, or `common practice`, or `from memory`.
        limits: what is assumed or left out.
    """

    asks: str
    figured: str
    source: str
    limits: str


SOLIDS = "the solids themselves; no published figure"
AVERAGES = "published averages, no test of this piece"
FACTS: dict[str, Facts] = {
    "fit.collision": Facts(
        "Do two parts fill the same room?",
        "volumes of all pairs that meet, intersected",
        SOLIDS,
        "sizes as drawn",
    ),
    "fit.open-joint": Facts(
        "Do the faces that a joint brings together touch?",
        "area that touches over area that should, at least one half",
        SOLIDS,
        "sizes as drawn; what the shop misses is not in it",
    ),
    "fit.unplanned-gap": Facts(
        "Is there a narrow gap that nobody asked for?",
        "parts that come near each other without a joint or a planned gap",
        SOLIDS,
        "gaps under 1/16 in (1.6 mm)",
    ),
    "joint.thin-web": Facts(
        "Is enough wood left between cuts from two sides?",
        "least thickness between them, 1/8 in",
        "common practice",
        "",
    ),
    "assembly.trapped": Facts(
        "Can the piece be put together in some order?",
        "a search that takes the solids apart along straight lines, groups of parts included",
        SOLIDS,
        "no part is bent or sprung into place",
    ),
    "assembly.driver": Facts(
        "Does a driver reach each screw when it is driven?",
        "a cylinder of the driver's size before the head, in the order of assembly",
        "size of drivers: common practice",
        "straight drivers",
    ),
    "assembly.wrong-way": Facts(
        "Can a part also go in wrong?",
        "each part turned and mirrored in its place; all its joints still close and its shape is another",
        SOLIDS,
        "half turns only",
    ),
    "drawer.hits": Facts(
        "Is a drawer free on its whole travel?", "the drawer's solids moved along their travel", SOLIDS, ""
    ),
    "door.hits": Facts("Is a door or lid free on its turn?", "its solids turned about its hinge", SOLIDS, ""),
    "drawer.height": Facts(
        "Does a drawer still run at the wettest time?",
        "height x coefficient x change of moisture, against the gap; 1/64 in is left",
        "Wood Handbook FPL-GTR-190 eq. 13-2; running room: common practice",
        "moisture 6 to 14 %",
    ),
    "drawer.width": Facts(
        "Has a drawer room at its sides?",
        "side clearances against 1/64 in",
        "common practice",
        "sides along the grain",
    ),
    "drawer.depth": Facts(
        "Has a drawer room behind it at the driest time?",
        "shrinkage of the case's depth against the gap behind",
        "Wood Handbook FPL-GTR-190 eq. 13-2",
        "moisture 6 to 14 %",
    ),
    "drawer.not-fully-out": Facts(
        "Does a full-extension drawer clear its front?", "slots less screws: kinematics", "geometry", ""
    ),
    "drawer.bar-engagement": Facts(
        "Is enough of a bar left in its grooves?", "a third of the bar at full pull", "common practice", ""
    ),
    "drawer.bar-bending": Facts(
        "Does the bar take its load at full pull?",
        "M/S of the slotted section, and the lands of the slot as a frame",
        "mechanics; fifth percentile of the species table over 2.1: ASTM D245 (from memory)",
        AVERAGES,
    ),
    "drawer.bar-bearing": Facts(
        "Do the walls of the grooves bear the bar?",
        "load and its moment over the engaged length, as pressure across the grain",
        "mechanics; compression across the grain over 1.67: ASTM D245 (from memory)",
        AVERAGES,
    ),
    "drawer.bar-droop": Facts(
        "How far does the drawer's front hang down?",
        "play over engagement, and bending; at most 1 in 50 of the travel",
        "geometry; limit: common practice",
        "",
    ),
    "fastener.too-short": Facts(
        "Does the fastener reach its part?",
        "length less the way to it; a grip of 3 diameters",
        "common practice",
        "",
    ),
    "fastener.breaks-through": Facts(
        "Does a tip come out, or into a groove?",
        "the point 1/16 in beyond the tip, in the solid with all its cuts",
        "common practice; worked case of hinge screws in a 3/4 in side",
        "",
    ),
    "fastener.meet": Facts(
        "Do two fasteners meet?",
        "distance of their axes, at least half of both diameters and 2 mm",
        "common practice",
        "also from both faces of a divider",
    ),
    "fastener.edge": Facts(
        "Is a screw too near an edge?",
        "2.5 shank diameters",
        "NDS commentary on wood screws (from memory)",
        "",
    ),
    "fastener.end": Facts(
        "May a screw split the end of its part?",
        "7 d from an unloaded end, in the part that takes the thread; in the other the shank runs free",
        "EN 1995-1-1, screws in bored holes, as printed in a structural handbook of 2025",
        "solid wood; loads along the grain towards the end need more",
    ),
    "fastener.spacing": Facts(
        "Are two screws in one line along the grain too near each other?",
        "5 d along the grain, where they lie less than 3 d beside each other",
        "EN 1995-1-1, screws in bored holes, as printed in a structural handbook of 2025",
        "solid wood, screws of one joint",
    ),
    "fastener.head": Facts(
        "Does a countersunk head pull through?",
        "height of the head's cone against half of the wood under it",
        "geometry; ASME B18.6.1 heads; limit: common practice",
        "flat heads",
    ),
    "fastener.pilot": Facts(
        "Does the pilot split dense wood, or leave the thread nothing to hold?",
        "90 % of the root in wood over 0.6 specific gravity, to the nearest 1/64 in; nowhere wider than the root",
        "National Design Specification, lead holes of wood screws",
        "",
    ),
    "fastener.dowel-wall": Facts(
        "Is enough wood left beside a dowel?",
        "distance to the nearest side less the radius, at least the radius",
        "trade question-and-answer page on dowel drilling (1998)",
        "",
    ),
    "door.hinge-screws": Facts(
        "Are the screws of a hinge longer than the wood?",
        "their length against the wood under the leaf less 1/16 in",
        "common practice; magazine question on screws that come out of a 3/4 in side",
        "screws as they come with the hinge, when `screw_length` is given",
    ),
    "door.hinge-head": Facts(
        "Are the heads of hinge screws deeper than the leaf?",
        "height of the head's cone against the leaf's thickness",
        "geometry; common practice",
        "when `plate` is given",
    ),
    "fastener.end-grain": Facts(
        "Does a screw go along the grain?",
        "angle of the screw to the grain of what takes its thread",
        "60 % of side grain: builders' handbook; NDS allows no withdrawal load (from memory)",
        "",
    ),
    "wood.cross-grain": Facts(
        "Are two parts held across the grain?",
        "difference of their movement over the length held, at most 1 mm",
        "Wood Handbook FPL-GTR-190 eq. 13-2; limit: common practice",
        "moisture 6 to 14 %",
    ),
    "stock.thickness-not-given": Facts(
        "Can the stock be as thick as the part?", "thickness of part and stock", "the design file", ""
    ),
    "stock.no-lumber": Facts(
        "Is there lumber that planes to this thickness?", "thickness classes on sale", "lumber table", ""
    ),
    "stock.larger-than-sheet": Facts("Does the part fit its sheet?", "length and width", "sheet table", ""),
    "strength.sag": Facts(
        "How far do shelves, bottoms and tops sag in ten years?",
        "5 W L^3/(384 E I), the section with its grooves and edge strips, on supports that give; held on four sides: "
        "crossed strips; x (1 + creep)",
        "Wood Handbook FPL-GTR-282 eq. 9-2; limit 1/384 seen, 1/144 for bottoms: magazine page and Architectural "
        "Woodwork Standards cl. 1.2.21; creep: European k_def (from memory)",
        "even loads; ends held simply; plates without twist, so the figure is on the large side",
    ),
    "strength.bending": Facts(
        "Is a panel bent too hard?",
        "M/S at mid-span and at each cut across, against the fifth percentile of the mean strength over 2.1",
        "mechanics; ASTM D245 (from memory); loads: Architectural Woodwork Standards cl. 1.2.21",
        AVERAGES + "; knots and slope of grain are not in it",
    ),
    "strength.shear": Facts(
        "Is a panel sheared too hard at its ends?",
        "1.5 V/A against the fifth percentile over 2.1",
        "Wood Handbook FPL-GTR-282 ch. 9; ASTM D245 (from memory)",
        AVERAGES,
    ),
    "strength.screws": Facts(
        "Do the screws that alone carry a panel take its load?",
        "K D^2 over 1.6, times 0.67 in end grain, less with under 7 D of thread",
        "Wood Handbook FPL-GTR-282 eq. 8-13, table 8-4; 1.6 and 0.67 from memory",
        "solid wood; glue in end grain is not counted",
    ),
    "strength.leg": Facts(
        "May a leg break when the piece is pushed or dragged?",
        "6 F L/(t b^2), F 50 lb across its foot, L under what holds it; fifth percentile over 2.1, x 1.6 for minutes",
        "mechanics; ANSI/BIFMA X5.5 leg strength (from memory); ASTM D245 (from memory)",
        "a note up to the mean strength, a warning beyond; " + AVERAGES,
    ),
    "strength.leg-slender": Facts(
        "May a slender leg buckle?",
        "pi^2 E I/(2 L)^2 at the foot's section, a third of it, against twice the leg's share of piece and loads",
        "Euler; Wood Handbook FPL-GTR-282 ch. 9, long columns (form from memory); share and safety: common practice",
        "legs held at their heads alone",
    ),
    "strength.joint": Facts(
        "Does the joint at the head of a leg take a push at its foot?",
        "tenons: S (0.25 D + 0.78 d) L^0.8; dowels: 0.834 D L^0.89 (0.95 S1 + S2) of one dowel at its arm; laps and "
        "bridles: long-grain glue area in torsion, halved and marked as such",
        "Forest Products Journal (both from memory); push: ANSI/BIFMA X5.5 (from memory)",
        "legs with one rail each way; a note up to the mean strength, a warning beyond; " + AVERAGES,
    ),
    "strength.cleat": Facts(
        "Do the screws of a wall cleat carry the case and all that is in it?",
        "load across them and the pull of its overhang, W a/h, each over what a No. 10 screw in a softwood stud is "
        "allowed, added; two screws in each stud that is sure to be behind the cleat",
        "Wood Handbook FPL-GTR-282 eq. 8-13 over 1.6; National Design Specification, 2850 G^2 D; studs 16 in apart: "
        "common practice",
        "wood-framed walls; the wall, its lining and its fixings are not looked at",
    ),
    "strength.hinges": Facts(
        "Do the screws of a door's upper hinge hold?",
        "weight of the door and 65 lb hung 10 in out, at their arms, over the distance of the hinges, against "
        "2850 G^2 D for two thirds of each screw, x 1.6 for minutes",
        "National Design Specification; test weight: cabinet maker's page on a door operation test",
        "butt and continuous hinges in solid wood; a note up to the mean strength, a warning beyond",
    ),
    "strength.racking": Facts(
        "Does an open case stay square when it is pushed?",
        "50 lb across its top, times its height, shared by the corners of all parts fixed to both sides, x 1.3 for the "
        "worst; against the lowest mean of published corner tests, fifth percentile over 2.1, x 1.6 for minutes",
        "frame statics; Materials & Design 29(2) 2008, screwed case corners (abstract read); push: common practice",
        "cases without back and face frame; the tests are of 16 to 18 mm panels, other joints are taken for no weaker",
    ),
    "stability.tips": Facts(
        "Does it stand with everything open, empty and filled?",
        "moments of all weights about the front feet",
        "mechanics",
        "level floor, feet that do not sink",
    ),
    "stability.clothing-rule": Facts(
        "Is it in the scope of the US clothing-storage rule, and does it stand in the tests that can be figured?",
        "moments with the rear raised 0.43 in and 60 lb on a drawer, and with a pull of 10 lb",
        "16 CFR 1261, ASTM F2057-23 cl. 1.1; parts of the tests from memory",
        "no certification; drop and dynamic tests are not figured",
    ),
    "stability.carpet": Facts(
        "Does it stand on carpet with everything open?",
        "the same moments with the rear raised 0.43 in, as by the strip that holds a carpet along the wall",
        "mechanics; block of ASTM F2057-23, test laboratory page",
        "asked of pieces that stand on a hard floor",
    ),
    "stability.backward": Facts(
        "Does it fall over backward, lids and doors open or shut?",
        "moments of all weights about the rear feet with the front raised 0.43 in",
        "mechanics; block of ASTM F2057-23, test laboratory page",
        "empty; nobody leans on it",
    ),
    "stability.anchor": Facts(
        "Is it so tall that it is anchored?", "height over 30 in", "common practice", ""
    ),
    "weight.lift": Facts(
        "Can those who lift it lift it?",
        "51 lb x 10/H x (1 - 0.0075 |V - 30|) x (0.82 + 1.8/D) x grip; two persons: two thirds of the sum",
        "NIOSH 94-110 (rev. 2021); two persons: HSE L23 (from memory)",
        "smooth two-handed lifts",
    ),
}
"""By finding code, in the order of the page."""
