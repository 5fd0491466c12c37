"""Whole frames and a table's legs and aprons: joints at every corner of the same parts, together."""

import pytest
from joint_bench import FEW, Laid, Turn, set_out, tried, volume

from boardwright.piece.cuts import Tenon
from boardwright.solids.dry_fit import dry_fit

GROOVE = "{{kind: groove, side: {side}, along: length, at: 1/4, width: 1/4, depth: 3/8}}"


def frame(joint: str, grooved: bool, corner: bool = True) -> tuple[list[Laid], list[str]]:
    """Two stiles, a top and a bottom rail, and one between, that all share one groove round the openings."""
    names = {"left": "far_edge", "right": "edge"}
    groove = {n: ((GROOVE.format(side=s),) if grooved else ()) for n, s in names.items()}
    both = (GROOVE.format(side="edge"), GROOVE.format(side="far_edge")) if grooved else ()
    parts = [
        Laid("left", "cherry", (0, 0, 0), (2.25, 30, 0.75), (1, 0), groove["left"]),
        Laid("right", "cherry", (16.25, 0, 0), (18.5, 30, 0.75), (1, 0), groove["right"]),
        Laid("top", "cherry", (2.25, 27.75, 0), (16.25, 30, 0.75), (0, 1), both[:1]),
        Laid("bottom", "cherry", (2.25, 0, 0), (16.25, 3, 0.75), (0, 1), both[1:]),
        Laid("middle", "cherry", (2.25, 14, 0), (16.25, 16.25, 0.75), (0, 1), both),
    ]
    rails = ["top", "bottom", "middle"] if corner else ["top", "bottom"]
    if not corner:
        parts.pop()
    joints = [f"first: {s}, second: {r}, {joint}" for s in ("left", "right") for r in rails]
    return parts, joints


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize(
    ("joint", "grooved", "middle"),
    [
        ("kind: mortise_tenon", False, True),
        ("kind: mortise_tenon", True, True),
        ("kind: mortise_tenon, length: 3/8", True, True),
        ("kind: mortise_tenon, through: true, wedges: 2", False, True),
        ("kind: bridle", False, True),
        ("kind: half_lap", False, True),
        ("kind: mitre", False, False),
        ("kind: mitre, with: spline", False, False),
        ("kind: mitre, with: keys", False, False),
    ],
)
def test_a_whole_frame_goes_together(joint: str, grooved: bool, middle: bool, turn: Turn) -> None:
    parts, joints = frame(joint, grooved, middle)
    piece = set_out(parts, joints, turn)
    assert not dry_fit(piece).overlaps
    tried(piece)
    for p in parts:
        assert volume(piece, p.name) > 0
    one, two = (piece.part(f"parts.{name}") for name in ("left", "right"))
    assert one.letter == two.letter or one.letter == two.mirror_of or two.letter == one.mirror_of


def test_the_groove_sets_thickness_place_and_haunch() -> None:
    """A groove is as wide as the tenon is thick (old handbook on panel frames); the haunch fills it."""
    parts, joints = frame("kind: mortise_tenon", True)
    piece = set_out(parts, joints)
    for name in ("top", "bottom"):
        for cut in (c for c in piece.part(f"parts.{name}").cuts if isinstance(c, Tenon)):
            lengths = sorted(round(long / 25.4, 6) for _, _, long in cut.steps)
            assert lengths == [0.375, 1.5]
            assert cut.low / 25.4 == pytest.approx(0.25)
            assert cut.high / 25.4 == pytest.approx(0.25)


@pytest.mark.parametrize("turn", FEW)
def test_four_legs_and_four_aprons(turn: Turn) -> None:
    legs = [
        Laid(f"leg_{i}{j}", "leg", (x, y, 0), (x + 1.75, y + 1.75, 28), (2, 0))
        for i, x in enumerate((0, 38.25))
        for j, y in enumerate((0, 22.25))
    ]
    aprons = [
        Laid("front", "cherry", (1.75, 0.25, 24), (38.25, 1, 28), (0, 2)),
        Laid("rear", "cherry", (1.75, 23, 24), (38.25, 23.75, 28), (0, 2)),
        Laid("west", "cherry", (0.25, 1.75, 24), (1, 22.25, 28), (1, 2)),
        Laid("east", "cherry", (39, 1.75, 24), (39.75, 22.25, 28), (1, 2)),
    ]
    at = {"front": ("00", "10"), "rear": ("01", "11"), "west": ("00", "01"), "east": ("10", "11")}
    joints = [f"first: leg_{leg}, second: {a}, kind: mortise_tenon" for a in at for leg in at[a]]
    piece = set_out([*legs, *aprons], joints, turn)
    tried(piece)
    tenons = {p.name: [c for c in p.cuts if isinstance(c, Tenon)] for p in piece.parts}
    for group in ("front", "west"):
        found = next(v for k, v in tenons.items() if group in k)
        assert len(found) == 2
        assert found[0].length == pytest.approx(found[1].length)
