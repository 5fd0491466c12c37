"""The piece as a STEP file, built again from the sizes, cuts and poses that stand in the plan."""

from __future__ import annotations

from pathlib import Path

from boardwright.core.poses import Pose, Vec
from boardwright.piece.codec import cut_from_data
from boardwright.piece.records import Part, Stock
from boardwright.plan.schema import Plan, PlanPart


def parts_of(plan: Plan) -> list[Part]:
    """Every part of the piece, one for each instance, as the plan gives it.

    Args:
        plan: the plan.

    Returns:
        Parts with size, cuts and pose [mm]. Their stock carries its name only, no table values.
    """
    return [part for kind in plan.parts for part in _instances(kind)]


def write_step(plan: Plan, path: Path) -> None:
    """Writes all parts in their places as one STEP file [mm], each named by its letter and id.

    Args:
        plan: the plan.
        path: the file to write.

    Raises:
        OSError: the file cannot be written.
    """
    from boardwright.solids import exact

    shapes = [(f"{p.letter} {p.id}", exact.placed(exact.part_shape(p), p.pose)) for p in parts_of(plan)]
    exact.write_step(shapes, path, plan.title)


def _instances(kind: PlanPart) -> list[Part]:
    size = (kind.finished.length.mm, kind.finished.width.mm, kind.finished.thickness.mm)
    stock = Stock(
        id=kind.stock,
        kind=kind.material,
        name=kind.stock_name,
        table_key="",
        thickness=size[2],
        nominal=size[2],
        measured=False,
        density=0.0,
    )
    cuts = tuple(cut_from_data(c) for c in kind.cuts)
    return [
        Part(
            i.id,
            kind.name,
            stock,
            size,
            _pose(i.pose),
            cuts,
            kind.letter,
            i.group,
            tuple(kind.show),
            kind.mirror_of,
        )
        for i in kind.instances
    ]


def _pose(rows: list[list[float]]) -> Pose:
    """The pose whose 3 x 4 matrix is given row by row (see `Pose.rows`)."""
    x, y, z, origin = (_column(rows, i) for i in range(4))
    return Pose(origin, x, y, z)


def _column(rows: list[list[float]], i: int) -> Vec:
    return (rows[0][i], rows[1][i], rows[2][i])
