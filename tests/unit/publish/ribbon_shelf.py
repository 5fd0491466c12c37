"""A plan made by hand: a wall shelf with three drawers for a haberdasher's shop, in inches or in millimetres.

Sizes are written here in inches; the millimetre plan has the same pieces, settled on a half-millimetre step.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any, Literal

from boardwright.core.letters import letter
from boardwright.drawings.record import to_record
from boardwright.drawings.records import Dimension, Drawing, Entity, Fill, Line, Text
from boardwright.piece.codec import cut_to_data
from boardwright.piece.cuts import Cut, Groove, Hole, Notch, Rabbet, Side
from boardwright.plan.schema import Plan

Units = Literal["in", "mm"]
CHERRY = ("cherry", "black cherry", "black cherry", "wood")
POPLAR = ("poplar", "yellow poplar", "yellow poplar", "wood")
PLY = ("ply", "birch plywood, measured 15/64", "birch plywood, measured 6 mm", "sheet")

# name, count, stock, length, width, thickness, rough (length, width, thickness) or None, strips, mirror
PARTS: list[tuple[Any, ...]] = [
    ("left side", 1, CHERRY, "34 1/2", "8 3/4", "3/4", ("35 1/2", "9 1/4", "1"), [("4 7/8", 2)], ""),
    ("right side", 1, CHERRY, "34 1/2", "8 3/4", "3/4", ("35 1/2", "9 1/4", "1"), [("4 7/8", 2)], "A"),
    ("top", 1, CHERRY, "48", "9 1/2", "3/4", ("49", "10", "1"), [("3 1/2", 2), ("3 3/4", 1)], ""),
    ("bottom", 1, CHERRY, "47", "8 1/2", "3/4", ("48", "9", "1"), [("4 3/4", 2)], ""),
    ("fixed shelf above the drawers", 1, CHERRY, "47", "8 1/2", "3/4", ("48", "9", "1"), [("4 3/4", 2)], ""),
    ("upright between the drawers", 2, CHERRY, "6 1/4", "8 1/2", "3/4", ("7 1/4", "9", "1"), [], ""),
    ("back panel, free to move in its grooves", 1, PLY, "(46 31/32)", "(33 7/16)", "(15/64)", None, [], ""),
    ("hanging cleat, on the case", 1, CHERRY, "46 1/2", "3", "3/4", ("47 1/2", "3 1/2", "1"), [], ""),
    ("hanging cleat, on the wall", 1, POPLAR, "46", "3", "1/2", ("47", "3 1/2", "3/4"), [], ""),
    (
        "rail under the top, with holes for the ribbon rods",
        2,
        CHERRY,
        "46 1/2",
        "2 1/4",
        "3/4",
        ("47 1/2", "2 3/4", "1"),
        [],
        "",
    ),
    ("drawer front", 3, CHERRY, "14 29/32", "5 5/8", "3/4", ("15 7/8", "6 1/8", "1"), [], ""),
    ("drawer side", 6, POPLAR, "7 3/4", "5 19/32", "1/2", ("8 3/4", "6 1/8", "3/4"), [], ""),
    ("drawer back", 3, POPLAR, "14 13/32", "4 27/32", "1/2", ("15 3/8", "5 3/8", "3/4"), [], ""),
    ("drawer bottom", 3, PLY, "(14 25/64)", "(7 15/32)", "(15/64)", None, [], ""),
]
INCH = 25.4


class Writer:
    """Writes sizes in one unit."""

    def __init__(self, units: Units) -> None:
        self.units = units

    def size(self, text: str, negative: bool = False) -> dict[str, Any]:
        bare = text.strip("()")
        inches = float(sum(Fraction(p) for p in bare.split()))
        mm = inches * INCH
        if self.units == "mm":
            mm = round(mm * 2) / 2
            bare = f"{mm:g}"
            text = f"({bare})" if text.startswith("(") else bare
        return {"mm": -mm if negative else mm, "text": ("-" if negative else "") + text}

    def sizes(self, length: str, width: str, thickness: str) -> dict[str, Any]:
        return {"length": self.size(length), "width": self.size(width), "thickness": self.size(thickness)}

    def mm(self, text: str) -> float:
        return float(self.size(text)["mm"])

    def say(self, words: str) -> str:
        """Words with sizes in braces."""
        return re.sub(r"\{([^}]*)\}", lambda m: self.size(m[1])["text"], words)


def side_cuts(u: Writer) -> list[Cut]:
    wide, long = u.mm("8 3/4"), u.mm("34 1/2")
    return [
        Groove(Side.FACE, 1, u.mm("1/2"), u.mm("3/4"), u.mm("1/4"), 0.0, wide, "case.bottom"),
        Groove(Side.FACE, 1, u.mm("7 1/2"), u.mm("3/4"), u.mm("1/4"), 0.0, wide, "case.shelf"),
        Rabbet(Side.FACE, Side.FAR_EDGE, u.mm("1/4"), u.mm("3/8"), 0.0, long, "case.back", "panel"),
    ]


def cleat_cuts(u: Writer) -> list[Cut]:
    xs = ("3", "15", "31", "43")
    return [
        Hole(Side.FACE, (u.mm(x), u.mm("1 1/2")), 5.0, u.mm("3/4"), True, 9.5, for_="No. 8 x 2 1/2 screw")
        for x in xs
    ] + [Notch(Side.END, Side.EDGE, u.mm("1/2"), u.mm("1/2"))]


PREPARATION = {
    "A": [
        "Glue up from 2 strips, each {4 7/8} wide and {35 1/2} long, rough.",
        "Plane to {3/4} after the glue is hard.",
    ],
    "F": ["Rough length {7 1/4}; cut both from one board."],
}
WORK = {
    "A": [
        "Cut two dadoes {3/4} wide and {1/4} deep across the inside face, "
        "{1/2} and {7 1/2} up from the reference end.",
        "Cut a rabbet {1/4} wide and {3/8} deep along the inside back edge, from end to end.",
        "Break the front edges lightly with a block plane.",
    ],
    "B": [
        "Cut two dadoes {3/4} wide and {1/4} deep across the inside face, "
        "{1/2} and {7 1/2} up from the reference end.",
        "Cut a rabbet {1/4} wide and {3/8} deep along the inside back edge, from end to end.",
    ],
    "C": ["Round over the front edge and both ends to a radius of {1/8}, top and underside."],
    "H": [
        "Drill four holes of {13/64} through the face for the screws, {3}, {15}, {31} and {43} from "
        "the reference end, "
        "{1 1/2} from the reference edge; countersink for No. 8.",
        "Notch the corner at the reference end, {1/2} along and {1/2} across, for the picture wire.",
        "Plane the upper edge to 45 degrees, so that it hooks over the cleat on the wall.",
    ],
    "L": [
        "Cut a rabbet {1/2} wide and {3/8} deep at each end of the inside face.",
        "Cut a groove {1/4} wide and {1/4} deep along the inside face, {1/4} up from the lower edge.",
    ],
    "M": ["Cut a groove {1/4} wide and {1/4} deep along the inside face, {1/4} up from the lower edge."],
}


def make(units: Units = "in", findings: bool = True) -> Plan:
    """The plan, with or without its findings."""
    u = Writer(units)
    parts = [_part(u, i, row) for i, row in enumerate(PARTS)]
    drawings = [_pictorial(), _front(u), *(_part_drawing(u, i, row) for i, row in enumerate(PARTS))]
    drawings += [_sheet(u), _board(u)]
    return Plan.model_validate(
        {
            "title": "Ribbon shelf for a haberdasher's counter wall",
            "about": "A wall shelf in cherry with two rods for ribbon and three small drawers for buttons, "
            "hooks and needles. It hangs on a pair of bevelled cleats, so that one person can lift it "
            "off when the shop is painted.",
            "maker": "the shop fitting bench",
            "version": "1.2",
            "units": units,
            "step": u.size("1/32") if units == "in" else {"mm": 0.5, "text": "0.5"},
            "outside": {"width": u.size("48"), "depth": u.size("9 1/2"), "height": u.size("35 1/4")},
            "facts": [
                {"name": "weight", "text": "19 kg (42 lb)"},
                {"name": "wood", "text": "black cherry, yellow poplar"},
                {"name": "moisture planned for", "text": "6 % to 11 %"},
            ],
            "parts": parts,
            "joints": _joints(u),
            "joint_groups": _joint_groups(u),
            "buy": _buy(u),
            "layouts": _layouts(u),
            "layout_summaries": [
                {
                    "stock": "birch plywood",
                    "count": 1,
                    "bound": 1,
                    "waste_share": 0.29,
                    "verified": True,
                    "text": "proven: no layout needs fewer sheets",
                },
                {
                    "stock": "black cherry",
                    "count": 4,
                    "bound": 3,
                    "waste_share": 0.22,
                    "verified": True,
                    "text": "three boards are not ruled out; four are laid out here",
                },
            ],
            "drawings": [to_record(d) for d in drawings],
            "cautions": _cautions(),
            "notes": [
                "Let the cherry lie in the shop for two weeks before it is planed to its last sixteenth.",
                u.say("The back panel has {1/16} of room on every side. Put no glue in its grooves."),
                "Put the same finish on both faces of every panel, so that both take up moisture alike.",
            ],
            "allowances": [
                {"what": "saw cut", "text": u.size("1/8")["text"], "source": "`shop.kerf`"},
                {"what": "length of a rough part", "text": u.size("1")["text"], "source": "common practice"},
            ],
            "findings": _findings(u) if findings else [],
            "reasons": _reasons(u),
            "chains": _chains(u),
        }
    )


def _part(u: Writer, i: int, row: tuple[Any, ...]) -> dict[str, Any]:
    name, count, stock, length, width, thickness, rough, strips, mirror = row
    mark = letter(i)
    cuts = {"A": side_cuts, "B": side_cuts, "H": cleat_cuts}.get(mark, lambda u: [])(u)
    slug = re.sub(r"\W+", "_", name.split(",")[0])
    t = u.size(thickness)["mm"]
    return {
        "letter": mark,
        "name": name,
        "count": count,
        "stock": stock[0],
        "stock_name": stock[1] if u.units == "in" else stock[2],
        "material": stock[3],
        "finished": u.sizes(length, width, thickness),
        "rough": u.sizes(*rough) if rough else None,
        "glue_up": [{"width": u.size(w), "count": n} for w, n in strips],
        "grain": "any" if stock[3] == "sheet" else "long",
        "cut_when": "measure first" if "drawer" in name or name.startswith("back") else "to list",
        "preparation": [u.say(w) for w in PREPARATION.get(mark, [])],
        "work": [u.say(w) for w in WORK.get(mark, [])],
        "mirror_of": mirror,
        "show": ["face", "edge"] if mark in "ABCLK" else [],
        "mass_kg": 1.5,
        "cuts": [cut_to_data(c) for c in cuts],
        "instances": [
            {
                "id": f"case.{slug}" + (f".{n + 1}" if count > 1 else ""),
                "group": "case",
                "pose": [[0, 0, -1, t + 100 * n], [0, 1, 0, 1200 * (i // 4)], [1, 0, 0, 1000 * (i % 4)]],
            }
            for n in range(count)
        ],
        "places": "drawers 1 to 3" if name.startswith("drawer") else f"{name.split(',')[0]}, in the shelf",
        "drawing": f"part-{mark}",
    }


def _joints(u: Writer) -> list[dict[str, Any]]:
    rows = [
        ("dado", "A", "D", 1, "dado {1/4} deep, full width", True),
        ("dado", "B", "D", 1, "dado {1/4} deep, full width", True),
        ("dado", "A", "E", 1, "dado {1/4} deep, full width", True),
        ("butt", "E", "F", 2, "two No. 8 x {1 1/4} screws through the shelf into each upright", False),
        ("groove", "C", "G", 1, "groove {1/4} deep with {1/16} of room; the panel stays free", False),
        ("rabbet", "L", "M", 6, "rabbet {3/8} deep, glued and pinned from the side", True),
        ("groove", "M", "P", 6, "groove {1/4} deep; the bottom slides in from behind", False),
    ]
    keys = ("kind", "first", "second", "count", "summary", "glued")
    return [dict(zip(keys, (k, a, b, n, u.say(s), g), strict=True)) for k, a, b, n, s, g in rows]


def _joint_groups(u: Writer) -> list[dict[str, Any]]:
    rows = [
        ("dado", "{1/4} deep, full width", True, 3, "D into A, B; E into A"),
        ("butt joint", "two No. 8 x {1 1/4} screws through the shelf into each upright", False, 2, "F to E"),
        ("panel in groove", "{1/4} deep with {1/16} of room; the panel stays free", False, 1, "G into C"),
    ]
    keys = ("name", "how", "glued", "count", "pairs")
    return [dict(zip(keys, (n, u.say(h), g, c, p), strict=True)) for n, h, g, c, p in rows]


def _buy(u: Writer) -> list[dict[str, Any]]:
    inch = u.units == "in"
    rows = [
        (
            "lumber",
            "Black cherry, 4/4 rough" if inch else "Black cherry, 27 mm rough",
            "23 board feet" if inch else "0.055 m³",
            "Parts A to F, H, K and L; 22 % over the parts for kerfs, ends and defects",
            "counted from the board layouts",
        ),
        (
            "lumber",
            "Yellow poplar, 4/4 rough" if inch else "Yellow poplar, 27 mm rough",
            "8 board feet" if inch else "0.019 m³",
            "Parts J, M and N; 25 % over",
            "common practice",
        ),
        (
            "sheets",
            u.say("Birch plywood, nominal {1/4}, 5 ply"),
            "1 sheet",
            "Parts G and P; measure it before grooving",
            "",
        ),
        (
            "fasteners",
            u.say("No. 8 x {1 1/4} flat-head wood screw, steel"),
            "12",
            "Uprights and cleats; two spare",
            "",
        ),
        (
            "fasteners",
            u.say("No. 10 x {3} flat-head wood screw, steel"),
            "6",
            "Wall cleat into studs; pick for your wall",
            "",
        ),
        ("hardware", u.say("Turned knob, {1} across"), "3", "One on each drawer", ""),
        ("hardware", u.say("Round rod, {3/4} across, {46} long"), "2", "For ribbon; lifts out", ""),
        (
            "glue",
            "Wood glue, open time 10 minutes or more",
            "250 ml",
            "About 0.9 m² of glue faces at 200 g/m²",
            "common practice",
        ),
    ]
    keys = ("group", "item", "quantity", "detail", "source")
    return [dict(zip(keys, row, strict=True)) for row in rows]


def _cautions() -> list[dict[str, Any]]:
    return [
        {
            "about": "Table saw",
            "source": "common practice",
            "lines": [
                "Guard and riving knife in place for every through cut; the machine's manual says how.",
                "A dado is not a through cut: use the guard that the manual gives for it, and push blocks.",
                "Never cut freehand, and never use the fence and the mitre gauge together for a through cut.",
            ],
        },
        {
            "about": "Jointer and thickness planer",
            "source": "common practice",
            "lines": [
                "No part shorter than the manual's shortest length; leave the drawer parts in long strips.",
                "Hearing protection, and the dust collector running.",
            ],
        },
        {
            "about": "Hanging it on a wall",
            "source": "common practice",
            "lines": [
                "What holds in your wall is a question for local codes and licensed practice; find "
                "the studs and any "
                "cables and pipes first."
            ],
        },
    ]


def _findings(u: Writer) -> list[dict[str, Any]]:
    return [
        {
            "code": "fit.too-wide",
            "severity": "error",
            "message": u.say("drawer front L is {1/32} wider than its opening allows"),
            "where": "ribbon-shelf.yaml:31:7  case.inside.rows[0].columns[1]",
            "found": u.say("{14 29/32}"),
            "expected": u.say("opening {15} less 2 x {1/16} running clearance = {14 7/8}"),
            "source": "common practice",
            "remedy": u.say("set the drawer front's length to {14 7/8} or less"),
            "count": 3,
        },
        {
            "code": "wood.knots",
            "severity": "warning",
            "message": "no board is wide enough for part C without a glue-up",
            "where": "ribbon-shelf.yaml:12:3  stock.cherry",
            "found": u.say("widest board {6 1/2}"),
            "expected": u.say("{10}"),
            "source": "",
            "remedy": "glue it up from three strips, as printed",
        },
        {
            "code": "buy.spare",
            "severity": "note",
            "message": "Screws are counted with two spare",
            "where": "",
            "found": "",
            "expected": "",
            "source": "common practice",
            "remedy": "",
        },
    ]


def _reasons(u: Writer) -> list[dict[str, Any]]:
    rows = [
        ("outside.width", "48", "", "", "ribbon-shelf.yaml:4:3", True),
        (
            "case.bottom.length",
            "47",
            "{46 1/2} + 2 x {1/4}",
            "dadoes a third of the side's thickness deep",
            "common practice",
            False,
        ),
        (
            "case.inside.rows[0].columns[1].drawer.front.length",
            "14 29/32",
            "{15} - 2 x {3/64}",
            "clearance for the wettest month",
            "Wood Handbook FPL-GTR-190 (2010), eq. 13-2",
            False,
        ),
        (
            "case.back.width",
            "(33 7/16)",
            "{33 3/16} + 2 x {1/8}",
            "room for the panel to move",
            "common practice",
            False,
        ),
        ("drawer.bottom.thickness", "(15/64)", "", "", "measured", True),
    ] * 4
    keys = ("path", "size", "sum", "rule", "source", "given")
    return [dict(zip(keys, (p, u.size(s), u.say(t), r, src, g), strict=True)) for p, s, t, r, src, g in rows]


def _chains(u: Writer) -> list[dict[str, Any]]:
    """Sums; a millimetre whole is the sum of its settled members."""
    rows = [
        (
            "Height of the case",
            [
                ("bottom, from the floor of the case", "1/2", 1),
                ("bottom", "3/4", 1),
                ("drawers", "6 1/4", 1),
                ("fixed shelf", "3/4", 1),
                ("ribbon", "26 1/4", 1),
            ],
            "34 1/2",
            "side",
        ),
        (
            "Length of the bottom",
            [("top", "48", 1), ("overhang and sides, less dadoes", "1", -1)],
            "47",
            "bottom",
        ),
    ]
    out = []
    for name, members, whole, label in rows:
        found = [{"label": m, "size": u.size(t, s < 0)} for m, t, s in members]
        total = u.size(whole)
        mm = sum(f["size"]["mm"] for f in found)
        if u.units == "mm":
            total = {"mm": mm, "text": f"{mm:g}"}
        assert abs(total["mm"] - mm) < 1e-9, name
        out.append({"name": name, "members": found, "whole": {"label": label, "size": total}})
    return out


def _layouts(u: Writer) -> list[dict[str, Any]]:
    placed = [
        ("G", 10, 10, 1193, 849),
        ("P", 10, 870, 366, 190),
        ("P", 380, 870, 366, 190),
        ("P", 750, 870, 366, 190),
    ]
    keys = ("letter", "x", "y", "length", "width")
    boxes = [dict(zip(keys, p, strict=True), label=p[0]) for p in placed]
    return [
        {
            "id": "sheet-1",
            "stock": "birch plywood",
            "title": "Sheet 1 of 1",
            "length": u.size("96"),
            "width": u.size("48"),
            "kerf": u.size("1/8"),
            "placed": boxes,
            "used_share": 0.41,
            "drawing": "sheet-1",
        },
        {
            "id": "board-1",
            "stock": "black cherry",
            "title": "Board 1 of 4",
            "length": u.size("120"),
            "width": u.size("7"),
            "kerf": u.size("1/8"),
            "placed": boxes[:1],
            "used_share": 0.78,
            "drawing": "board-1",
        },
    ]


def _rect(x: float, y: float, w: float, h: float) -> tuple[tuple[float, float], ...]:
    return ((x, y), (x + w, y), (x + w, y + h), (x, y + h))


def _pictorial() -> Drawing:
    """The case from the front, right and above, in oblique lines."""
    w, h, dx, dy = 122.0, 88.0, 16.0, 9.0
    front = [_rect(0, 0, w, h), _rect(2, 2, w - 4, 16), _rect(2, 20, w - 4, h - 24)]
    drawers = [_rect(3 + i * 39.5, 2.5, 37.5, 15) for i in range(3)]
    entities: list[Entity] = [
        Fill(_rect(0, 0, w, h), 0.06),
        Fill(((0, h), (dx, h + dy), (w + dx, h + dy), (w, h)), 0.02),
        Fill(((w, 0), (w + dx, dy), (w + dx, h + dy), (w, h)), 0.16),
        *(Fill(d, 0.1) for d in drawers),
        *(Line(r, "visible", True) for r in front + drawers),
        Line(((0, h), (dx, h + dy), (w + dx, h + dy), (w, h))),
        Line(((w, 0), (w + dx, dy), (w + dx, h + dy))),
        Line(((2, 66), (w - 2, 66))),
        Line(((2, 64), (w - 2, 64))),
        Line(((2, 42), (w - 2, 42))),
        Line(((2, 40), (w - 2, 40))),
    ]
    return Drawing("assembled", "The shelf", "not to scale", w + dx, h + dy, tuple(entities))


def _front(u: Writer) -> Drawing:
    x, y, w, h = 18.0, 14.0, 122.0, 88.0
    entities: list[Entity] = [
        *(Line(r, "visible", True) for r in (_rect(x, y, w, h - 2), _rect(x - 2, y + h - 2, w + 4, 2))),
        Line(((x, y + 20), (x + w, y + 20))),
        Line(((x, y + 18), (x + w, y + 18))),
        *(Line(_rect(x + 1 + i * 40.5, y + 2, 38.5, 15), "visible", True) for i in range(3)),
        Dimension((x - 2, y), (x + w + 2, y), 5.0, False, u.size("48")["text"], (x + w / 2, 7.2)),
        Dimension((x, y), (x, y + h), 6.0, True, u.size("35 1/4")["text"], (3.8, y + h / 2)),
    ]
    return Drawing("front", "From the front", "1:10", w + 24, h + 18, tuple(entities))


def _part_drawing(u: Writer, i: int, row: tuple[Any, ...]) -> Drawing:
    mark, length, width = letter(i), u.size(row[3]), u.size(row[4])
    k = 1 / 8 if length["mm"] > 500 else 1 / 4
    w, h = length["mm"] * k, width["mm"] * k
    x, y = 14.0, 13.0
    entities: list[Entity] = [
        Fill(_rect(x, y, w, h), 0.05),
        Line(_rect(x, y, w, h), "visible", True),
        Text((x + w / 2, y + h / 2 - 1.5), mark, 3.5, bold=True),
        Dimension((x, y), (x + w, y), 5.0, False, length["text"], (x + w / 2, 7.2)),
        Dimension((x, y), (x, y + h), 6.0, True, width["text"], (3.8, y + h / 2)),
    ]
    for cut in side_cuts(u) if mark in "AB" else []:
        if isinstance(cut, Groove):
            at = x + cut.at * k
            entities += [
                Line(((at, y), (at, y + h))),
                Line(((at + cut.width * k, y), (at + cut.width * k, y + h))),
            ]
    return Drawing(
        f"part-{mark}",
        f"{mark}, {row[0]}",
        "1:8" if k == 1 / 8 else "1:4",
        x + w + 4,
        y + h + 3,
        tuple(entities),
    )


def _sheet(u: Writer) -> Drawing:
    k = 170 / 2440
    entities: list[Entity] = [Line(_rect(1, 1, 2440 * k, 1220 * k), "visible", True)]
    for mark, x, y, w, h in (
        ("G", 10, 10, 1193, 849),
        ("P", 10, 870, 366, 190),
        ("P", 380, 870, 366, 190),
        ("P", 750, 870, 366, 190),
    ):
        box = _rect(1 + x * k, 1 + y * k, w * k, h * k)
        entities += [
            Fill(box, 0.12),
            Line(box, "thin", True),
            Text((1 + (x + w / 2) * k, (y + h / 2) * k), mark, 3.5, bold=True),
        ]
    return Drawing("sheet-1", "Sheet 1 of 1", "1:14", 173, 88, tuple(entities))


def _board(u: Writer) -> Drawing:
    entities: list[Entity] = [Line(_rect(1, 1, 168, 12.8), "visible", True)]
    for n, mark in enumerate("AABB"):
        box = _rect(2 + n * 41, 2, 40, 8.5)
        entities += [Fill(box, 0.12), Line(box, "thin", True), Text((22 + n * 41, 5), mark, 3.5, bold=True)]
    return Drawing("board-1", "Board 1 of 4", "1:18", 170, 15, tuple(entities))
