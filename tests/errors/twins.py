"""The near twin of a design that fires a check: one change, and the check is silent.

Each row: the finding's code; what stands in its design in this folder; what stands there in the twin.
`tools/check_docs.py` prints them, `test_twins.py` runs them. A remedy of `test_remedies.py` is a twin too.
"""

TWINS = [
    ("assembly.driver", "aprons: {drawers: {count: 2}}", "aprons: {}"),
    (
        "assembly.trapped",
        "second: fin, kind: butt, fasten: dowels}\n  - {first: base",
        "second: fin, kind: butt, fasten: none}\n  - {first: base",
    ),
    (
        "assembly.wrong-way",
        "    cuts:\n      - {kind: groove, side: face, along: length, at: 4, width: 1/4, depth: 1/4}\n",
        "",
    ),
    ("door.hits", "[0, -8, 0]", "[0, -24, 0]"),
    ("drawer.bar-bearing", "load: 450", "load: 45"),
    ("drawer.bar-engagement", "overlap: 0.1", "overlap: 0.4"),
    ("drawer.height", "10 13/16", "10 25/32"),
    ("drawer.hits", "[0, -4, 2]", "[0, -20, 2]"),
    ("fastener.meet", "at: [0, 0, -2]", "at: [0, 2, -2]"),
    ("fastener.dowel-wall", "count: 2", "count: 1"),
    ("fastener.pilot", "screw: 8", "screw: 10"),
    ("fit.collision", "[14, 0, 1/2]", "[14, 0, 3/4]"),
    ("fit.open-joint", "width: 3,", "width: 1,"),
    ("stability.backward", "at: [0, 5, 3/4]", "at: [0, 2, 3/4]"),
    ("stability.carpet", "depth: 11", "depth: 13"),
    ("stability.anchor", "height: 40", "height: 30"),
    ("stability.clothing-rule", "height: 36", "height: 26 7/8"),
    ("stability.tips", "runs_on: slides", "runs_on: bars"),
    ("strength.bending", "shelves: 700", "shelves: 250"),
    ("strength.sag", "width: 44", "width: 31"),
    ("strength.cleat", "shelves: 150", "shelves: 20"),
    ("strength.hinges", "height: 10", "height: 24"),
    ("strength.joint", "height: 2, joint: {kind: mortise_tenon, length: 1/2}", "height: 5"),
    (
        "strength.leg",
        "leg: {wood: cherry_black, thickness: 7/8}",
        "leg: {wood: cherry_black, thickness: 1 1/8}",
    ),
    ("strength.leg-slender", "top: 250", "top: 60"),
    ("strength.racking", "back: {set: none}", "back: {stock: thin}"),
    ("strength.screws", "shelves: 180", "shelves: 60"),
    ("strength.shear", "shelves: 6000", "shelves: 600"),
    ("weight.lift", "one person", "two persons"),
]
