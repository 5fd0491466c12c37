"""Letters: parts that can be exchanged share one; mirror images say so."""

from bench import piece_of

LEGS = """
boardwright: 1
title: Legs
units: in
stock:
  post: {{wood: cherry_black, thickness: 1 3/4}}
parts:
{legs}
"""
LEG = (
    "  {name}: {{stock: post, length: 29, width: {wide}, along: z, across: x, at: [{x}, {y}, 0], cuts: ["
    "{{kind: groove, side: {side}, along: length, at: {off}, width: 3/8, depth: 1, "
    "start: {start}, stop: 28}}, "
    "{{kind: groove, side: {edge}, along: length, at: {off2}, width: 3/8, depth: {deep}, "
    "start: {end}, stop: 28}}]}}"
)


def legs(end_start: str, deep: str = "7/8", wide: str = "2") -> str:
    """Four legs with mortises in two sides, for aprons around a table, each 1/2 from the outer face of its
    leg."""
    rows = []
    for name, x, y, side, edge, off, off2 in (
        ("left_front", 0, 0, "face", "far_edge", "1/2", "1/2"),
        ("right_front", 40, 0, "face", "edge", f"{wide} - 1/2 - 3/8", "1/2"),
        ("left_rear", 0, 20, "back", "far_edge", "1/2", "7/8"),
        ("right_rear", 40, 20, "back", "edge", f"{wide} - 1/2 - 3/8", "7/8"),
    ):
        rows.append(
            LEG.format(
                name=name,
                x=x,
                y=y,
                side=side,
                edge=edge,
                off=off,
                off2=off2,
                start=24,
                end=end_start,
                deep=deep,
                wide=wide,
            )
        )
    return LEGS.format(legs="\n".join(rows))


def test_legs_with_narrower_end_aprons_are_two_mirror_kinds() -> None:
    """Long aprons 4 wide, end aprons 3 wide: two mirror kinds, diagonally opposite legs are equal
    (case from practice, recomputed)."""
    piece = piece_of(legs("25"))
    letter = {p.name: p.letter for p in piece.parts}
    assert letter["left front / right rear"] != letter["right front / left rear"]
    one, two = (next(p for p in piece.parts if p.name.startswith(n)) for n in ("left front", "right front"))
    assert (one.mirror_of, two.mirror_of) == (two.letter, one.letter)


def test_one_leg_that_differs_is_a_kind_of_its_own() -> None:
    whole, _, last = legs("25").rpartition("  right_rear")
    text = f"{whole}  right_rear{last.replace('depth: 1,', 'depth: 7/8,')}"
    assert len({p.letter for p in piece_of(text).parts}) == 3


def test_a_part_that_is_its_own_mirror_image_is_mirror_of_none() -> None:
    text = LEGS.format(
        legs="  board: {stock: post, length: 20, width: 6, along: x, across: y, at: [0, 0, 0], "
        "cuts: [{kind: groove, side: face, along: width, at: 9, width: 2, depth: 1/2}]}"
    )
    assert [p.mirror_of for p in piece_of(text).parts] == [""]


def test_poses_put_every_cut_where_it_was_asked_for() -> None:
    """However a leg is laid, its mortises face the middle of the table (40 x 20 apart)."""
    for part in piece_of(legs("25")).parts:
        x, y = part.box.middle()[:2]
        for cut in part.cuts:
            own = [(0.0, 0.0, 1.0), (0.0, 1.0, 0.0)][cut.side.axis == 1]
            sign = 1.0 if cut.side.high else -1.0
            way = part.pose.direction((own[0] * sign, own[1] * sign, own[2] * sign))
            to_middle = (21 * 25.4 - x, 11 * 25.4 - y)
            assert way[0] * to_middle[0] + way[1] * to_middle[1] > 0


def test_square_legs_with_equal_mortises_are_interchangeable() -> None:
    """All aprons alike on a square leg: one kind of four, whose halves mirror about the diagonal
    (case from practice, recomputed)."""
    assert len({p.letter for p in piece_of(legs("24", "1", "1 3/4")).parts}) == 1
    # end aprons 3 wide: two kinds again
    assert len({p.letter for p in piece_of(legs("25", "1", "1 3/4")).parts}) == 2
