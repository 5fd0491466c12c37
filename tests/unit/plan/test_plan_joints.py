"""Joints that are made alike share a line; none is lost."""

from boardwright.plan.joints import joint_groups
from boardwright.plan.schema import PlanJoint


def joint(kind: str, first: str, second: str, count: int, summary: str, glued: bool = True) -> PlanJoint:
    return PlanJoint(kind=kind, first=first, second=second, count=count, summary=summary, glued=glued)


JOINTS = [
    joint("rabbet", "A", "C", 1, "rabbet 3/4 wide, 3/8 deep, glued"),
    joint("dado", "A", "D", 1, "dado 1/4 deep, glued"),
    joint("panel", "A", "E", 1, "back in a rabbet 0.252 wide, 3/8 deep, glued"),
    joint("rabbet", "B", "C", 1, "rabbet 3/4 wide, 3/8 deep, glued"),
    joint("dado", "B", "D", 1, "dado 1/4 deep, glued"),
    joint("dado", "B", "F", 2, "dado 1/4 deep, dry", False),
    joint("panel", "H", "M", 2, "groove 0.252 wide, 1/4 deep, dry", False),
    joint("hung", "J", "N", 2, "runs on a bar in a groove 5/8 wide, 1/4 deep", False),
    joint("screwed", "A", "N", 5, "2 screws, the first fixed, the others in slots; no glue", False),
]


def test_joints_made_alike_share_a_line() -> None:
    said = [(g.name, g.how, g.glued, g.count, g.pairs) for g in joint_groups(JOINTS)]
    assert said == [
        ("rabbet", "3/4 wide, 3/8 deep", True, 2, "C into A, B"),
        ("dado", "1/4 deep", True, 2, "D into A, B"),
        ("panel in rabbet", "back in a rabbet 0.252 wide, 3/8 deep", True, 1, "E into A"),
        ("dado", "1/4 deep", False, 2, "F into B"),
        ("panel in groove", "groove 0.252 wide, 1/4 deep", False, 2, "M into H"),
        ("drawer on bar", "runs on a bar in a groove 5/8 wide, 1/4 deep", False, 2, "N on J"),
        ("strip, screwed", "2 screws, the first fixed, the others in slots", False, 5, "N on A"),
    ]


def test_no_joint_is_lost() -> None:
    assert sum(g.count for g in joint_groups(JOINTS)) == sum(j.count for j in JOINTS)
