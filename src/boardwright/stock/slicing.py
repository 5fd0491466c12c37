"""Whether rectangles can be sawn apart by cuts that go right across, found from the rectangles alone."""

from __future__ import annotations

from collections.abc import Sequence

Box = tuple[int, int, int, int]
"""x0, y0, x1, y1 in whole units."""


def slabs(boxes: Sequence[Box], kerf: int, along: int) -> list[list[Box]]:
    """Boxes in the groups that cuts in one direction can part.

    Args:
        boxes: rectangles (units).
        kerf: width of a cut (units); neighbours nearer than this stay together.
        along: 0 parts them along x (crosscuts), 1 along y (rips).

    Returns:
        The groups, in the order in which they lie.
    """
    groups: list[list[Box]] = []
    end = 0
    for box in sorted(boxes, key=lambda b: (b[along], b)):
        if groups and box[along] < end + kerf:
            groups[-1].append(box)
            end = max(end, box[along + 2])
        else:
            groups.append([box])
            end = box[along + 2]
    return groups


def separable(boxes: Sequence[Box], kerf: int, along: int, stages: int | None) -> bool:
    """Whether the boxes can be sawn apart.

    Cutting as finely as one direction allows never hurts: a set of boxes that can be parted stays so when
    others are taken away. So each stage makes all the cuts that it can.

    Args:
        boxes: rectangles (units).
        kerf: width of a cut (units).
        along: direction of the first stage, as for `slabs`.
        stages: how many stages there may be; None for no limit.

    Returns:
        True when every box ends up alone. A box that is alone may still be trimmed.
    """
    if len(boxes) <= 1:
        return True
    if stages == 0:
        return False
    groups = slabs(boxes, kerf, along)
    if len(groups) == 1 and len(slabs(boxes, kerf, 1 - along)) == 1:
        return False
    left = None if stages is None else stages - 1
    return all(separable(group, kerf, 1 - along, left) for group in groups)
