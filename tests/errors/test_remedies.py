"""A remedy with a number is true: what it says is done, and the finding is gone."""

from pathlib import Path

import pytest

from boardwright.pipeline import check_file, check_text, make_plan, read

HERE = Path(__file__).parent
REMEDIES = [
    ("box.cannot-be-there", "`mitre`", "corner: rabbet", "corner: mitre"),
    ("box.no-room", "and 3 5/8", "at: 4 3/4", "at: 3 5/8"),
    ("table.joint", "`butt`", "joint: dado", "joint: butt"),
    ("table.no-room", "the legs 2 in thick", "  aprons", "  legs: {thickness: 2}\n  aprons"),
    ("case.back-boards-thin", "3/8 in or more", "thickness: 1/4}", "thickness: 3/8}"),
    ("case.no-inside", "3/16 in higher", "height: 3", "height: 3 3/16"),
    ("case.rails-too-wide", "7 25/32 in wide or less", "rail_width: 8", "rail_width: 7 25/32"),
    ("case.up-needs-sides", "`through: sides`", "through: top_and_bottom", "through: sides"),
    ("door.in-the-way", "open to 90 degrees", "opens: 60", "opens: 90"),
    ("door.plate-in-the-way", "`between: none`", ", between: rail", ""),
    ("door.battens-no-room", "use 4 of them", "battens: 6", "battens: 4"),
    (
        "case.lid-no-well",
        "`panel: fixed`",
        "    drawer: {}",
        "    rows:\n      - {panel: fixed}\n      - {size: 6, drawer: {}}",
    ),
    ("drawer.bar-bending", "15/16 in high or more", "height: 11/16", "height: 15/16"),
    ("drawer.bar-droop", "3/4 in high or more", "height: 11/16", "height: 3/4"),
    ("drawer.not-fully-out", "leave 4 1/4 in", "drawer:", "drawer:\n      rear_clearance: 4 1/4"),
    ("drawer.no-room-for-guide", "3/8 in up or more", "up: 1/4", "up: 3/8"),
    ("drawer.bottom-too-thick", "2 in high or more", "box_height: 1", "box_height: 2"),
    ("drawer.depth", "at least 1/8 in behind", "rear_clearance: 1/16", "rear_clearance: 1/8"),
    ("drawer.no-room", "5/32 in wider", "width: 3", "width: 3 5/32"),
    ("drawer.no-slide", "4 5/8 in deeper", "depth: 8", "depth: 12 5/8"),
    ("drawer.slide-too-high", "1 25/32 in high or more", "box_height: 1 1/2", "box_height: 1 25/32"),
    ("drawer.unknown-slide", "use one of these", "side_mount_333", "side_mount_14_in"),
    ("drawer.width", "1/32 in or more", "side_clearance: 0", "side_clearance: 1/32"),
    ("fastener.breaks-through", "1 1/4 in or shorter", "screw_length: 1 3/4", "screw_length: 1 1/4"),
    ("fastener.edge", "`screw: 3`", "screw: 8", "screw: 3"),
    ("fastener.end-grain", "`fasten: dowels`", "fasten: screws", "fasten: dowels"),
    ("fastener.end", "`screw: 3`", "screw: 8, screw_length: 1 1/4", "screw: 3, screw_length: 1"),
    ("fastener.spacing", "no more than 3", "count: 5", "count: 3"),
    ("fastener.head", "`screw: 3`", "screw: 8", "screw: 3"),
    ("door.hinge-screws", "5/8 in long", "screw_length: 3/4", "screw_length: 5/8"),
    ("door.hinge-head", "`screw: 4`", "screw: 8", "screw: 4"),
    ("fastener.not-here", "`fasten: screws`", "fasten: biscuits", "fasten: screws"),
    ("fastener.too-short", "1 1/4 in or longer", "screw_length: 5/8", "screw_length: 1 1/4"),
    ("drawer.box-too-high", "at most 4 13/16 in", "box_height: 6", "box_height: 4 13/16"),
    ("drawer.groove-too-deep", "at most 1/4", "groove: 3/8", "groove: 1/4"),
    ("drawer.runners-too-wide", "at most 9 1/2 in", "width: 12", "width: 9 1/2"),
    ("file.newer-format", "lower the number", "boardwright: 2", "boardwright: 1"),
    ("file.unknown-key", "`thickness`", "thicknes: 3/4, ", ""),
    ("fit.unplanned-gap", "leave 3/32 in or more", "51/64", "3/4 + 3/32"),
    ("joint.cannot-be-there", "`rabbet`", "joint: dado", "joint: rabbet"),
    ("joint.no-wood-beyond", "`rabbet`", "kind: dado", "kind: rabbet"),
    ("joint.not-at-an-end", "`dado`", "kind: rabbet", "kind: dado"),
    ("joint.thin-web", "1/16 in shallower", "depth: 3/8", "depth: 5/16"),
    ("joint.too-deep", "1/4 in", "depth: 3/4}", "depth: 1/4}"),
    ("joint.unknown-part", "`post`", "pots", "post"),
    ("making.few-clamps", "have 9 clamps", "count: 4", "count: 9"),
    ("making.long-for-clamps", "take 30 1/2 in", "length: 24", "length: 30 1/2"),
    (
        "making.open-time",
        "urea resin",
        "shelves: {count: 5}",
        "shelves: {count: 5}\nshop: {glue: urea_powder}",
    ),
    ("making.small-at-router", "blank 12 in or more", "length: 9", "length: 12"),
    ("making.thin", "1/4 in thick", "thickness: 3/16", "thickness: 1/4"),
    ("making.wide-for-jointer", "6 in wide or less", "jointer_width: 6}", "jointer_width: 6}, strip_max: 6"),
    ("tolerance.door", "1/16 in at each gap", "gap: 1/64", "gap: 1/16"),
    ("tolerance.drawer", "1/16 in at each side", "side_clearance: 1/32", "side_clearance: 1/16"),
    ("tolerance.joint", "0.005 in wider", "joint_play: 0", "joint_play: 0.005"),
    ("tolerance.mitre", "±0.043°", "square: 1/64", "square: 0.009"),
    ("tolerance.shelf", "1/16 in at each end", "clearance: 1/32", "clearance: 1/16"),
    ("place.moisture-order", "exchange the two", "driest: 12, wettest: 6", "driest: 6, wettest: 12"),
    ("size.step", "`work_to: 1/32`", "work_to: 1/10", "work_to: 1/32"),
    ("size.too-small", "7/32 in or more", "length: 1/8", "length: 7/32"),
    ("size.unknown-name", "`reach`", "reech", "reach"),
    ("space.between", "`divider`", "between: shelf", "between: divider"),
    ("space.does-not-add-up", "take 1/2 in off", "size: 10", "size: 9 1/2"),
    ("space.nothing-to-stand-on", "`between: shelf`", "between: none", "between: shelf"),
    ("space.too-small", "take 5/32 in off", "18 1/4", "18 1/4 - 5/32"),
    ("stock.no-lumber", "3 1/2 in thick or less", "thickness: 5", "thickness: 3 1/2"),
    ("stock.no-such-thickness", "1/4 in", "thickness: 5/16", "thickness: 1/4"),
    ("stock.larger-than-sheet", "at most 97 × 49 in", "length: 100", "length: 97"),
    ("stock.thickness-not-given", "1/2 in thick or less", "guide: 3/4", "guide: 1/2"),
    ("stock.unknown-sheet", "`birch_plywood`", "burch plywood", "birch_plywood"),
    ("stock.unknown-wood", "`pine_sugar`", "pine_suger", "pine_sugar"),
    ("strength.bending", "no more than 545 lb", "shelves: 700", "shelves: 545"),
    ("strength.bending", "hardwood plywood 1 in", "3/4, measured: 3/4", "1"),
    (
        "strength.door-frame",
        "tenons 3/4 in long",
        "rail_width: 1 1/4",
        "rail_width: 1 1/4, joint: {kind: mortise_tenon, length: 3/4}",
    ),
    ("strength.dowels", "use 4 dowels", "count: 2}}}", "count: 4}}}"),
    ("strength.dowels", "no more than 257 lb", "shelves: 400", "shelves: 257"),
    ("strength.knob", "3/16 in wide", "hole: 5/16", "hole: 3/16"),
    ("strength.sag", "no more than 38 lb", "shelves: books", "shelves: 38"),
    ("strength.sag", "hardwood plywood 1 in", "3/4, measured: 3/4", "1"),
    ("strength.screws", "no more than 154 lb", "shelves: 180", "shelves: 154"),
    ("strength.shear", "no more than 2128 lb", "shelves: 6000", "shelves: 2128"),
    ("strength.racking", "3 more fixed shelves", "count: 4, kind: pins", "count: 3"),
    ("strength.leg", "1 in thick", "thickness: 7/8}", "thickness: 1}"),
    ("strength.leg-slender", "1 3/8 in thick", "thickness: 1}", "thickness: 1 3/8}"),
    ("strength.cleat", "no more than 35 lb", "shelves: 150", "shelves: 35"),
    (
        "strength.hinges",
        "No. 5 screws 5/8 in long",
        "door: {frame: {}}",
        "door: {frame: {}, hinges: {screw: 5, screw_length: 5/8}}",
    ),
    ("passage.door", "no more than 30 in deep", "depth: 34", "depth: 30"),
    ("passage.corner", "no more than 84 in wide", "width: 96", "width: 84"),
    ("passage.stair", "no more than 60 in wide", "width: 76", "width: 60"),
    ("passage.vehicle", "no more than 70 in high", "height: 84", "height: 70"),
    ("passage.ceiling", "no more than 19 15/32 in deep", "depth: 24", "depth: 19 15/32"),
    ("passage.ceiling", "no more than 92 15/16 in high", "height: 94", "height: 92 15/16"),
    ("wood.cross-grain", "over 4 1/2 in or less", "length: 18, width: 14", "length: 18, width: 4 1/2"),
    ("door.swells", "5/32 in there", "gap: 1/32", "gap: 5/32"),
    ("wood.housed-across", "over 4 1/2 in or less", "length: 10, width", "length: 4 1/2, width"),
    ("wood.lid-moves", "by 7/32 in or more", "overhang: 0", "overhang: 7/32"),
    ("wood.mitre-opens", "3 1/16 in wide or less", "length: 24, width: 4", "length: 24, width: 3 1/16"),
    ("wood.mitre-opens", "quartersawn boards", "thickness: 3/4", "thickness: 3/4, sawn: quarter"),
    (
        "wood.panel-bottoms",
        "1/16 in narrower",
        "width: 14, along: z, across: x, at: [1 21/32",
        "width: 13 15/16, along: z, across: x, at: [1 23/32",
    ),
    (
        "wood.panel-bottoms",
        "at 9.5 % instead of 8 %",
        "units: in",
        "units: in\nwood_moisture: {now: 9.5, driest: 6, wettest: 10}",
    ),
    ("wood.panel-leaves", "quartersawn boards", "thickness: 1/4", "thickness: 1/4, sawn: quarter"),
    ("wood.panel-groove-too-shallow", "11/32 in deep", "depth: 1/8}", "depth: 11/32}"),
]


@pytest.mark.parametrize(("code", "says", "old", "new"), REMEDIES, ids=[f"{r[0]}: {r[1]}" for r in REMEDIES])
def test_the_remedy_removes_the_finding(
    code: str, says: str, old: str, new: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(HERE)
    text, tables, _ = read(f"{code}.yaml")
    before = [f for f in check_text(text, tables=tables).findings if f.code == code]
    assert any(says in f.remedy + f.expected for f in before), [f.remedy for f in before]
    assert text.count(old) == 1
    after = check_text(text.replace(old, new), tables=tables).findings
    assert code not in {f.code for f in after}, [f.text() for f in after if f.code == code]


def test_every_part_of_a_drawer_that_jams_is_freed_by_its_own_number(monkeypatch: pytest.MonkeyPatch) -> None:
    """`drawer.height` names how much lower the part must be; the largest of them frees the whole drawer."""
    monkeypatch.chdir(HERE)
    text = (HERE / "drawer.height.yaml").read_text(encoding="utf-8")
    jams = [f for f in check_text(text).findings if f.code == "drawer.height"]
    lower = sorted(f.remedy.removeprefix("make it ").split(" in lower")[0] for f in jams)
    assert lower == ["1/32"] * len(jams)
    freed = text.replace("10 13/16", "10 13/16 - 1/32")
    assert "drawer.height" not in {f.code for f in check_text(freed).findings}


def test_a_board_of_the_size_that_is_named_takes_the_part(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(HERE)
    found = {f.code: f for f in make_plan(check_file("stock.does-not-fit.yaml"))[1]}
    assert "205 long and 3 3/4 wide (in)" in found["stock.does-not-fit"].remedy
    text = (HERE / "stock.does-not-fit.yaml").read_text(encoding="utf-8")
    text += "shop:\n  boards: [{stock: pine, length: 205, width: 3 3/4}]\n"
    assert "stock.does-not-fit" not in {f.code for f in make_plan(check_text(text))[1]}
