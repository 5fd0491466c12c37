"""Edge joints, double rabbets, tongues with one shoulder: sizes worked by hand beside each test.

Tongue a third of the thickness, 1/4 to 3/8 in long; corner rabbet half of the thickness: common practice.
"""

import pytest
from shape import misfits
from test_fastenings import EDGES

from bench import IN, codes, grooves, inches, piece_of, rabbets, size, two_parts
from boardwright.pipeline import check_text

ONE, TWO = "parts.one", "parts.two"


@pytest.mark.parametrize("first", ["one", "two"])
@pytest.mark.parametrize(
    "joint",
    [
        "with: none",
        "with: spline",
        "with: spline, stopped: 1",
        "with: spline, width: 1/4",
        "with: tongue",
        "with: biscuits",
        "with: dowels",
        "fasten: loose_tenons",
        "fasten: pocket_screws",
    ],
)
def test_every_edge_joint_sets_out(joint: str, first: str) -> None:
    text = EDGES.format(joint=f"kind: edge, {joint}")
    if first == "two":
        text = text.replace("first: one, second: two", "first: two, second: one")
    found = misfits(check_text(text).findings)
    assert not found


def test_a_plain_edge_joint_is_one_glued_face() -> None:
    [joint] = piece_of(EDGES.format(joint="kind: edge")).joints
    [face] = joint.contacts
    assert joint.glued
    assert face.glued
    assert inches(face.box.size(0), face.box.size(2)) == [30.0, 0.75]
    assert joint.summary == "edge joint, glued"


def test_a_tongued_edge() -> None:
    piece = piece_of(EDGES.format(joint="kind: edge, with: tongue"))
    # 3/4 / 3 = 1/4 thick, 3/8 long: the second board is 5 + 3/8 wide
    assert size(piece, TWO) == [30.0, 5.375, 0.75]
    assert size(piece, ONE) == [30.0, 5.0, 0.75]
    [groove] = grooves(piece.part(ONE))
    assert inches(groove.width, groove.depth, groove.at) == [0.25, 0.375, 0.25]
    assert [inches(r.width, r.depth) for r in rabbets(piece.part(TWO))] == [[0.375, 0.25]] * 2


def test_a_spline_of_the_sheet_lies_half_in_either_edge() -> None:
    piece = piece_of(EDGES.format(joint="kind: edge, with: spline"))
    spline = piece.part("parts.two.spline.1")
    assert spline.stock.id == "ply"
    # two grooves 3/8 deep, 1/32 short of the bottom of each: 3/4 - 1/16
    assert inches(*spline.size) == [30.0, 0.6875, 0.2]
    for id in (ONE, TWO):
        [groove] = grooves(piece.part(id))
        assert inches(groove.width, groove.depth) == [0.2, 0.375]
        assert groove.holds == spline.id
    assert sorted(j.kind for j in piece.joints) == ["edge", "spline", "spline"]


def test_without_a_sheet_the_spline_is_planed_from_the_wood() -> None:
    text = EDGES.format(joint="kind: edge, with: spline").replace(
        "  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}\n", ""
    )
    spline = piece_of(text).part("parts.two.spline.1")
    assert inches(*spline.size) == [30.0, 0.6875, 0.25]  # 3/4 / 3


def test_a_stopped_spline_does_not_show_at_the_ends() -> None:
    piece = piece_of(EDGES.format(joint="kind: edge, with: spline, stopped: 1"))
    [groove] = grooves(piece.part(ONE))
    assert inches(groove.start, groove.end) == [1.0, 29.0]
    assert inches(piece.part("parts.two.spline.1").size[0]) == [28.0]


@pytest.mark.parametrize(
    ("change", "to"),
    [
        ("at: [0, 5, 0]", "at: [0, 0, 3/4]"),
        ("along: x, across: y, at: [0, 5, 0]", "along: y, across: x, at: [0, 5, 0]"),
    ],
)
def test_faces_and_ends_make_no_edge_joint(change: str, to: str) -> None:
    text = EDGES.format(joint="kind: edge")
    assert text.count(change) == 1
    assert "joint.cannot-be-there" in codes(text.replace(change, to))


@pytest.mark.parametrize("at", ["0", "11 1/4", "11"])
def test_a_double_rabbet(at: str) -> None:
    piece = piece_of(two_parts("kind: double_rabbet", at=at))
    [first] = rabbets(piece.part("parts.upright"))
    [second] = rabbets(piece.part("parts.shelf"))
    # 3/4: half deep, half left of the end; 1/4 of the upright beyond the shelf at 11 goes with the rabbet
    beyond = 0.25 if at == "11" else 0.0
    assert inches(first.width, first.depth) == [0.375 + beyond, 0.375]
    assert inches(second.width, second.depth) == [0.375, 0.375]
    assert size(piece, "parts.shelf")[0] == 20.375
    [joint] = piece.joints
    # seat 3/8, wall 3/8 and shoulder 3/8, each 10 long
    areas = [
        c.box.size(a) * c.box.size(b) / IN**2
        for c in joint.contacts
        for a, b in [[i for i in range(3) if i != c.axis]]
    ]
    assert areas == pytest.approx([3.75, 3.75, 3.75])


def test_a_double_rabbet_only_at_an_end() -> None:
    assert "joint.not-at-an-end" in codes(two_parts("kind: double_rabbet", at="5"))


@pytest.mark.parametrize(
    ("shoulders", "at", "near"),
    [
        ("one", "5", 5.5),  # the shoulder below, so the tongue lies at the top: 5 + 3/4 - 1/4
        ("two", "5", 5.25),
        ("one", "11 1/4", 11.25),  # wood is left beyond the groove: 1/2 over it
        ("two", "11 1/4", 11.5),
        ("one", "0", 0.5),
    ],
)
def test_a_tongue_with_one_shoulder_or_two(shoulders: str, at: str, near: float) -> None:
    piece = piece_of(two_parts(f"kind: tongue, shoulders: {shoulders}", at=at))
    upright = piece.part("parts.upright")
    [groove] = grooves(upright)
    from_low = upright.box.low[2] + (
        groove.at if upright.pose.x[2] > 0 else upright.size[0] - groove.at - groove.width
    )
    assert from_low / IN == pytest.approx(near)
    assert len(rabbets(piece.part("parts.shelf"))) == (1 if shoulders == "one" else 2)
