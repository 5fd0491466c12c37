"""Parts and a small chest, made by hand, for the drawing tests. Lengths in mm."""

from boardwright.core.lengths import INCH, Printer
from boardwright.core.poses import Box, Pose
from boardwright.piece.cuts import Groove, Hole, Notch, Rabbet, Side
from boardwright.piece.records import Joint, Moisture, Motion, Part, Piece, Space, Stock

MM = Printer("mm", 0.5)
IN = Printer("in", INCH / 32)
WOOD = Stock("wood", "wood", "cherry", "", 19.0, 25.0, False, 560.0, sawn="flat")
PLY = Stock("ply", "sheet", "birch plywood", "", 18.0, 18.0, False, 650.0)
LETTERS = {"bottom": "C", "shelf": "E", "back": "G"}


def inches(*values):
    return tuple(v * INCH for v in values)


def _screw(x, y):
    at = inches(x, y)
    return Hole(Side.BACK, at, 0.1875 * INCH, 0.75 * INCH, True, 0.375 * INCH, for_="No. 8 x 1 1/4 screw")


CHEST_SIDE = Part(
    "side", "side", WOOD, inches(34.59375, 18, 0.75), Pose(),
    (
        Groove(Side.FACE, 1, *inches(2.25, 0.75, 0.25, 0, 17.625), "bottom"),
        Groove(Side.FACE, 1, *inches(12, 0.75, 0.25, 0, 17.625), "shelf"),
        Rabbet(Side.FACE, Side.FAR_EDGE, *inches(0.25, 0.375, 0, 34.59375), "back"),
        Groove(Side.FACE, 0, *inches(1, 0.25, 0.25, 4, 11)),
        *(_screw(x, y) for x in (2.625, 12.375) for y in (3, 9, 15)),
        *(Hole(Side.FACE, inches(x, y), *inches(0.25, 0.375)) for x in range(14, 20) for y in (2, 16)),
    ),
    "A",
)  # fmt: skip
DRAWER_SIDE = Part(
    "drawer.side", "drawer side", WOOD, (450.0, 120.0, 12.0), Pose(),
    (
        Groove(Side.FACE, 0, 10.0, 6.0, 6.0, 0.0, 450.0),
        Groove(Side.FACE, 1, 420.0, 12.0, 6.0, 0.0, 120.0),
        Rabbet(Side.FACE, Side.END, 12.0, 6.0, 0.0, 120.0),
        Groove(Side.BACK, 0, 60.0, 20.0, 6.0, 0.0, 450.0, purpose="running"),
    ),
    "D",
)  # fmt: skip
RAIL = Part(
    "rail", "rail", WOOD, (1200.0, 60.0, 19.0), Pose(),
    (
        Groove(Side.EDGE, 0, 6.5, 6.0, 10.0, 0.0, 1200.0),
        Groove(Side.BACK, 1, 591.0, 18.0, 5.0, 0.0, 60.0),
        *(Hole(Side.FAR_EDGE, (x, 9.5), 4.5, 60.0, True, 9.0) for x in (100.0, 1100.0)),
        Hole(Side.END, (30.0, 9.5), 8.0, 25.0, purpose="dowel"),
        Hole(Side.FAR_END, (30.0, 9.5), 8.0, 25.0, purpose="dowel"),
    ),
    "F",
)  # fmt: skip
SHELF = Part(
    "shelf", "shelf", PLY, (860.0, 400.0, 18.0), Pose(),
    (
        Notch(Side.END, Side.EDGE, 20.0, 40.0),
        Notch(Side.FAR_END, Side.EDGE, 20.0, 40.0),
        Rabbet(Side.BACK, Side.END, 6.0, 12.0, 40.0, 400.0),
    ),
    "E",
)  # fmt: skip
STRIP = Part("strip", "edge strip", WOOD, (1500.0, 20.0, 8.0), Pose(), (), "S")
CLEAT = Part(
    "cleat", "cleat", WOOD, inches(16, 1.5, 0.75), Pose(),
    (
        Hole(Side.FACE, inches(2, 0.75), 0.1875 * INCH, 0.75 * INCH, True, slot=0.5 * INCH),
        Hole(Side.FACE, inches(8, 0.75), 0.1875 * INCH, 0.75 * INCH, True),
    ),
    "L",
)  # fmt: skip
PINNED = Part(
    "pinned", "pinned side", PLY, (1800.0, 280.0, 18.0), Pose(),
    tuple(Hole(Side.BACK, (200.0 + 32.0 * i, y), 5.0, 12.0) for i in range(20) for y in (37.0, 243.0)),
    "B",
)  # fmt: skip
PARTS = ((CHEST_SIDE, IN), (CHEST_SIDE, MM), (DRAWER_SIDE, MM), (DRAWER_SIDE, IN), (RAIL, MM), (SHELF, MM),
         (STRIP, MM), (CLEAT, IN), (PINNED, MM))  # fmt: skip


def chest():
    """A case 600 wide, 400 deep, 500 high with two drawers; every part in its place."""
    wide, deep, high, t = 600.0, 400.0, 500.0, 18.0
    dados = tuple(Groove(Side.FACE, 1, z, t, 6.0, 0.0, deep) for z in (40.0, 260.0))
    left = Pose((0, deep, 0), (0, 0, 1), (0, -1, 0), (1, 0, 0))
    right = Pose((wide, 0, 0), (0, 0, 1), (0, 1, 0), (-1, 0, 0))
    parts = [
        Part("left", "side", WOOD, (high - t, deep, t), left, dados, "A"),
        Part("right", "side", WOOD, (high - t, deep, t), right, dados, "B"),
        Part("top", "top", WOOD, (wide, deep, t), Pose((0, 0, high - t)), (), "D"),
    ]
    joints = [Joint("top", "butt", "left", "top", directions=((0, 0, 1),))]
    motions, spaces = [], []
    for n, (z, top) in enumerate(((40.0, 260.0), (260.0, high - t)), 1):
        parts.append(
            Part(f"floor{n}", "floor", WOOD, (wide - 2 * t + 12, deep, t), Pose((t - 6, 0, z)), (), "C")
        )
        joints.append(Joint(f"floor{n}", "dado", "left", f"floor{n}", directions=((1, 0, 0),)))
        x0, x1, z0, z1, group = t + 2, wide - t - 2, z + t + 2, top - 2, f"drawer.{n}"
        front = Pose((x0, t, z0), (1, 0, 0), (0, 0, 1), (0, -1, 0))
        side = Pose((x0, t, z0), (0, 1, 0), (0, 0, 1), (1, 0, 0))
        letters = "GH" if n == 1 else "JK"
        parts.append(
            Part(f"{group}.front", "drawer front", WOOD, (x1 - x0, z1 - z0, t), front, (), letters[0], group)
        )
        parts.append(
            Part(
                f"{group}.side", "drawer side", WOOD, (deep - 40, z1 - z0, 12.0), side, (), letters[1], group
            )
        )
        room = Box((t, 0, z + t), (wide - t, deep, top))
        motions.append(Motion(group, "drawer", f"drawer {n}", (0, -1, 0), 300.0, "runners", room, 2, 2, 20))
        spaces.append(Space(f"row{n}", room, "drawer"))
    outside = Box((0, 0, 0), (wide, deep, high))
    return Piece(
        "chest", "mm", 0.5, outside, Moisture(8, 6, 11), tuple(parts), tuple(joints),
        spaces=tuple(spaces), motions=tuple(motions),
    )  # fmt: skip
