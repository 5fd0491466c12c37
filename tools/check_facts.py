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
MOVES = "Wood Handbook FPL-GTR-190 eq. 13-2"
HELD = "difference of their movement over the length held, at most 1 mm"
HELD_SOURCE = f"{MOVES}; limit: common practice"
YEAR = "moisture 6 to 14 %"
CHAINS = (
    "sizes from one side to the other along the cuts that make them, what is cut at one setting out together; "
    "10,000 builds, each size normal about its plan, the shop's plus or minus three standard deviations; at most 1 in "
    "100"
)
STACKED = "JCGM 100:2008 eq. 10; three standard deviations, 1 in 100, and the shop's figures: common practice"
MACHINE = "the machine's manual as the design file gives it, else common practice"
LISTED = "a part too small in two ways is told once"
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
    "fit.binds-in-year": Facts(
        "Do parts press on each other, or hit each other on their way, at the driest or wettest time?",
        "the solids swollen and shrunk, set where their joints hold them (least squares); each face gives 0.1 mm, "
        "parts that rest on each other 0.25 mm more",
        MOVES + "; what the wood gives: common practice",
        "what meets on the day of cutting is not told again; nor are parts of which another check of movement speaks",
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
    "door.swells": Facts(
        "Does an inset door clear its opening, and a pair each other, at the wettest time?",
        "gap at each edge less what door and opening move towards each other; 1/64 in is left",
        MOVES + "; least gap: common practice",
        YEAR + "; the hinged edge stays where it is",
    ),
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
    "drawer.under-overhang": Facts(
        "How much of a drawer comes out from under a top that reaches over it?",
        "travel less front less overhang, against three quarters of the inside",
        "geometry; three quarters: common practice",
        "edges that reach more than 2 in over the fronts",
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
    "fastener.knob-screw": Facts(
        "Does the screw of a knob or pull reach it through all the wood?",
        "the shortest machine screw on sale with 1/4 in of thread in the knob; lengths to 2 1/2 in (60 mm)",
        "lengths on sale, grip of 1 1/2 diameters: common practice",
        "No. 8 and M4 screws through the front and the front of the box behind it",
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
        HELD,
        HELD_SOURCE,
        YEAR,
    ),
    "wood.solid-on-sheet": Facts("Is solid wood held to a sheet across its grain?", HELD, HELD_SOURCE, YEAR),
    "wood.screwed-fast": Facts(
        "Do screws without slots hold a part across the grain?", HELD, HELD_SOURCE, YEAR
    ),
    "wood.housed-across": Facts(
        "Is a part glued over too wide a housing across the grain of the other?", HELD, HELD_SOURCE, YEAR
    ),
    "wood.mixed-woods": Facts(
        "Are two woods that swell unlike glued along their widths?", HELD, HELD_SOURCE, YEAR
    ),
    "wood.held-all-round": Facts(
        "Is a solid panel held at both edges by a frame that does not move with it?",
        "difference of its movement and the frame's from hold to hold, at most 1 mm",
        HELD_SOURCE,
        YEAR,
    ),
    "wood.panel-bottoms": Facts(
        "Has a panel room to swell in its groove?",
        "room before the edge less what panel and frame move towards each other; an edge that lies on the bottom by "
        "plan may press 0.25 mm",
        MOVES,
        YEAR + "; panels whose edges are square to an axis of the piece",
    ),
    "wood.panel-leaves": Facts(
        "Does a panel stay in its groove at the driest time?",
        "what is held less what panel and frame move apart; at least 1/8 in, or half of what is held when cut",
        MOVES + "; limit: common practice",
        YEAR + "; panels whose edges are square to an axis of the piece",
    ),
    "wood.mitre-opens": Facts(
        "Does a mitre open so far that it is seen?",
        "width x sqrt 2 x the change of width of the members less that of their length, as a share; at most 1/32 in",
        "geometry; case from practice, red oak 3 1/2 in wide; limit: common practice",
        "flat mitres; nothing holds the joint closed",
    ),
    "wood.breadboard-proud": Facts(
        "How far does a breadboard end stand out beside its top?",
        "difference of movement over the width of the top, half of it at each edge; at most 1/32 in",
        HELD_SOURCE,
        YEAR,
    ),
    "wood.lid-moves": Facts(
        "How far does the free edge of a lid move?",
        "movement between lid and case at that edge, hinges standing still; at most 1/8 in, or what the lid hangs over",
        HELD_SOURCE,
        YEAR,
    ),
    "wood.lid-cups": Facts(
        "How far does a bare lid cup when only one face is finished?",
        "width^2 x coefficient x 1 % / (8 x thickness); at most 1/16 in",
        "bending of a strip by unlike swelling of its faces; limit and 1 %: common practice",
        "lids of one board without battens or ends",
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
    "strength.dowels": Facts(
        "Do the dowels that alone carry a panel take its load?",
        "section of the dowels times the shear strength of their wood along the grain, fifth percentile over 2.1",
        "mechanics; ASTM D245 (from memory)",
        "dowels of hard maple; they are sheared across the grain, where wood is stronger, so the figure is on the low "
        "side; glue in end grain is not counted",
    ),
    "strength.knob": Facts(
        "May the head of a knob's screw be pulled into the wood?",
        "30 lb over the ring of a 3/8 in head round its hole, against the strength across the grain over 1.67, x 1.75 "
        "for so small an area",
        "pull: ASTM F2057-23 sec. 9 (from memory); NDS bearing area factor and ASTM D245 (from memory)",
        "solid wood; a note up to the mean strength, a warning beyond; " + AVERAGES,
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
    "strength.door-frame": Facts(
        "Do the joints of a door's frame take its weight and what hangs on it?",
        "half of the door and 65 lb hung 10 in out, as load on the free stile, times the distance of the stiles, "
        "shared by the joints, x 1.2 for the worst; tenons, dowels and long-grain glue as `strength.joint`, x 1.6 for "
        "minutes",
        "frame statics, compared with finite elements; test weight: cabinet maker's page on a door operation test",
        "two stiles and two rails or more of solid wood; mitres are not figured; a panel helps and is not counted; a "
        "note up to the mean strength, a warning beyond",
    ),
    "strength.racking": Facts(
        "Does an open case stay square when it is pushed?",
        "50 lb across its top, times its height, shared by the corners of all parts fixed to both sides, x 1.3 for the "
        "worst; against the lowest mean of published corner tests, fifth percentile over 2.1, x 1.6 for minutes; "
        "fingers and tails: long-grain glue area of their cheeks in torsion, halved and marked as such, or their wood "
        "in bending",
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
    "weight.build": Facts(
        "What is lifted, or turned over, at once while it is built, and can those who build it?",
        "each part and subassembly put on, in the order of assembly; what stands is laid over where something goes in "
        "from below, half of its weight on the edge that is lifted; against the same equation",
        "NIOSH 94-110 (rev. 2021); turning over: mechanics",
        "smooth two-handed lifts; clamps and bought things are not weighed",
    ),
    "passage.size": Facts(
        "Can the door, corner, stair, vehicle or ceiling be as the file gives it?",
        "sizes over 0",
        "geometry",
        "",
    ),
    "passage.vehicle": Facts(
        "Does it go into the vehicle?",
        "the box around it through the opening as through a door, then inside on any side, square or slanting on the "
        "floor or leaning against a wall",
        "geometry, as `passage.door`",
        "one unit at a time; doors shut; the way from the opening to where it lies is not followed",
    ),
    "passage.door": Facts(
        "Does it pass the door: whole, without its drawers and doors, or taken apart at its screws?",
        "each end of the box around it as a rectangle p x q tilted by t: p cos t + q sin t wide, p sin t + q cos t "
        "high, the least width at the height there is",
        "geometry; agrees with Carver, American Mathematical Monthly 64 (1957), p. 114 (from memory); usual door of "
        "30 x 78 in: common practice",
        "carried straight through; room before and behind the door is not looked at; where no door is given a note "
        "comes only when no usual door takes it",
    ),
    "passage.corner": Facts(
        "Does it go round the corner of the corridor?",
        "longest rectangle of width w: the least of (a sin t + b cos t - w)/(sin t cos t), on any side, or tipped up "
        "as far as the height allows; or shoved round unturned",
        "geometry; without width the pipe round a corner of calculus textbooks, (a^(2/3) + b^(2/3))^(3/2)",
        "long straight corridors; no play for hands and blankets",
    ),
    "passage.stair": Facts(
        "Does it go round the landing of the stair?",
        "the corner with the flight and the landing as corridors; a half turn is two of them, and the diagonal no "
        "longer than the landing",
        "geometry, as `passage.corner`",
        "of a half turn what passes for sure; winders and the slope of the flights are not figured",
    ),
    "passage.ceiling": Facts(
        "Can it be stood up under the ceiling?",
        "sqrt(h^2 + d^2), d the smaller side of its foot; its height alone where it comes standing through the door, "
        "the corner and the stair",
        "Pythagoras; a maker's case of a cabinet 94 in tall and 24 in deep, 97.02 in",
        "tipped up over the edge of its foot, not lifted",
    ),
    "tolerance.drawer": Facts(
        "In how many builds does a drawer or tray bind in its opening, or rattle?",
        CHAINS,
        STACKED,
        "least room 0, with slides their thickness, at the wettest time; most: twice the usual play",
    ),
    "tolerance.door": Facts(
        "In how many builds does an inset door bind in its opening?", CHAINS, STACKED, "at the wettest time"
    ),
    "tolerance.shelf": Facts(
        "In how many builds does a loose shelf bind between its sides, or lie too loose?",
        CHAINS,
        STACKED,
        "most room: twice the usual clearance",
    ),
    "tolerance.panel": Facts(
        "In how many builds does a panel push its grooves apart, or slip out of one?",
        CHAINS,
        STACKED,
        "at the wettest and the driest time",
    ),
    "tolerance.joint": Facts(
        "In how many builds does a part not go into its dado or groove, or stand loose?",
        CHAINS,
        STACKED,
        "`shop.joint_play` is what the channel is planned wider; most room 0.012 in",
    ),
    "tolerance.mitre": Facts(
        "In how many builds does the last mitre of a frame stand open?",
        "length x sin of the sum of all cuts' errors, all at one setting and so all alike, against what was seen to "
        "fail: 1/64 in over 3 in",
        "geometry; furniture-making magazine, December 1980",
        "flat frames and boxes of mitres all round; normal errors",
    ),
    "making.thin": Facts(
        "Is a part too thin for the planer?", "thickness against what the planer takes", MACHINE, LISTED
    ),
    "making.short": Facts(
        "Is a part too short to be crosscut?",
        "length against the least at the table saw or the mitre saw, whichever is shorter",
        MACHINE,
        LISTED,
    ),
    "making.narrow": Facts(
        "Is a part too narrow to be ripped at the fence?", "width against the least", MACHINE, LISTED
    ),
    "making.small-at-router": Facts(
        "Is a part small where it is grooved or moulded at the router table?",
        "length of cuts along the grain and width of cuts across it against the least",
        MACHINE,
        "a jig that holds it is not known of",
    ),
    "making.wide-for-jointer": Facts(
        "Is a board or strip wider than the jointer?",
        "width of the part or of its strips against the jointer's",
        MACHINE,
        "finished widths; strips as wide as the shop's widest",
    ),
    "making.wide-for-planer": Facts(
        "Is a solid part wider than the planer?", "its width against the planer's", MACHINE, "finished widths"
    ),
    "making.wide-for-saw": Facts(
        "Is a part wider than the table saw rips?", "its width against the reach of the fence", MACHINE, ""
    ),
    "making.thick-for-saw": Facts(
        "Is a part thicker than the table saw cuts?", "its thickness against the depth of cut", MACHINE, ""
    ),
    "making.long-for-clamps": Facts(
        "Is a glue-up larger than the clamps take?",
        "panels with what is trimmed off after; steps of assembly along the way in which they close",
        "the design file, else common practice",
        "steps that nothing else pulls home",
    ),
    "making.few-clamps": Facts(
        "Are there enough clamps for a panel?",
        "length over twice the strip's width and half a pad, for the spread of the pressure at 45 degrees; pressure x "
        "length x thickness over one clamp's force",
        "trade article on clamping pressure; force of a pipe clamp: the table of allowances",
        "clamps that take the panel's width",
    ),
    "making.open-time": Facts(
        "Does the glue give time for a glue-up?",
        "joints x (spreading + closing) + clamps x placing, a clamp for every two joints and at least four",
        "times: magazine and video notes on a timed dry run; time of the glue: its row of the table",
        "one pair of hands; every joint takes as long as the next",
    ),
    "making.unknown-glue": Facts(
        "Is the glue of the shop known?", "the table of glues", "the design file", ""
    ),
}
"""By finding code, in the order of the page."""
