"""What stands under the views of a part: enlarged details, the key of its cuts, and where sizes start."""

from __future__ import annotations

import re
from collections.abc import Mapping

from boardwright.drawings.fonts import text_width
from boardwright.drawings.layout_dims import SIZE
from boardwright.drawings.marks import balloon, datum
from boardwright.drawings.part_details import Block, shift
from boardwright.drawings.part_features import Feature
from boardwright.drawings.records import Entity, Text
from boardwright.piece.cuts import Side

ROW = 4.6
"""From line to line of the key [mm]."""
SIGN = 36.0
"""Room for the scale and the projection sign at the right of the lowest line [mm]."""
BETWEEN = 8.0
"""Between two details [mm]."""
_HARD = "\N{NO-BREAK SPACE}"
_TOGETHER = re.compile(r"\d+ \d+/\d+|No\. \d+|\d+ × Ø \S+|[x×Ø] (?:\d+ )?[\d./]+(?: in\b| mm\b)?")
"""What stays in one line: a whole number and its fraction, a screw's number, a sign and its size."""


def foot_of(
    found: list[Feature], blocks: list[Block], width: float, seen: Side, toward: Mapping[str, str]
) -> Block:
    """What stands under the views: details, key, and what the triangles mean.

    Args:
        found: the part's features.
        blocks: details.
        width: room on paper [mm].
        seen: which face is towards the reader.
        toward: where each side of the part points in the piece, in words, by `Side` value; may be empty.
    """
    entities: list[Entity] = []
    y = 0.6
    words = _datum_words(seen, toward)
    rows = wrapped(words, width - SIGN)
    for line in reversed(rows):
        entities.append(Text((4.0, y + 0.2), line, SIZE, "left"))
        y += ROW
    entities.append(datum((1.6, y - ROW + 2.4), (0.0, -1.0)))
    y += 1.0
    key_width = max((text_width(f.words, SIZE) + 8.0 for f in found), default=0.0)
    details_width = sum(b.width + BETWEEN for b in blocks)
    if min(key_width, 88.0) + details_width <= width:
        key = _key(found, width - details_width)
        row = max(max((b.height for b in blocks), default=0.0), key.height)
        entities += [shift(e, 0.0, y + row - key.height) for e in key.entities]
        x = width - details_width + BETWEEN
        for b in blocks:
            entities += [shift(e, x, y + row - b.height) for e in b.entities]
            x += b.width + BETWEEN
        return Block(tuple(entities), width, y + row + 1.0)
    key = _key(found, width)
    entities += [shift(e, 0.0, y) for e in key.entities]
    y += key.height
    details = rows_of_details(blocks, width)
    entities += [shift(e, 0.0, y) for e in details.entities]
    return Block(tuple(entities), width, y + details.height)


def _datum_words(seen: Side, toward: Mapping[str, str]) -> str:
    """Where sizes start, and which face is seen."""
    face = "back face" if seen is Side.BACK else "face"
    if not toward:
        return f"reference end and edge: every size starts there. The {face} is towards you."
    return (
        f"sizes start at the reference end ({toward['end']}) and edge ({toward['edge']}); "
        f"towards you: {face} ({toward[seen.value]})"
    )


def _key(found: list[Feature], width: float) -> Block:
    """The numbered lines of the key, the first on top."""
    entities: list[Entity] = []
    y = 0.0
    for f in reversed(found):
        rows = wrapped(f.words, width - 8.0)
        y += ROW * (len(rows) - 1)
        entities += balloon((2.5, y + 2.5), str(f.number))
        for n, row in enumerate(rows):
            entities.append(Text((6.5, y + 2.5 - SIZE / 2 - ROW * n), row, SIZE, "left"))
        y += ROW + 0.9
    return Block(tuple(entities), width, y)


def rows_of_details(blocks: list[Block], width: float) -> Block:
    """Details in as many rows as they need, the first row on top.

    Args:
        blocks: the details.
        width: room on paper [mm].
    """
    entities: list[Entity] = []
    y = 0.0
    rows: list[list[Block]] = []
    used = 0.0
    for b in blocks:
        if not rows or used + b.width > width:
            rows.append([])
            used = 0.0
        rows[-1].append(b)
        used += b.width + BETWEEN
    for row in reversed(rows):
        y += 3.0
        x = 0.0
        high = max(b.height for b in row)
        for b in row:
            entities += [shift(e, x, y + high - b.height) for e in b.entities]
            x += b.width + BETWEEN
        y += high + 1.0
    return Block(tuple(entities), width, y)


def key_and_details(found: list[Feature], blocks: list[Block], width: float) -> Block:
    """Details with the numbered lines of their cuts under them.

    Args:
        found: the part's features.
        blocks: details.
        width: room on paper [mm].
    """
    key = _key(found, width)
    details = rows_of_details(blocks, width)
    over = tuple(shift(e, 0.0, key.height) for e in details.entities)
    return Block((*key.entities, *over), width, key.height + details.height)


def wrapped(text: str, width: float, size: float = SIZE) -> list[str]:
    """A text in lines that are no wider than `width` [mm]."""
    rows: list[str] = []
    for word in _TOGETHER.sub(lambda m: m[0].replace(" ", _HARD), text).split(" "):
        if rows and text_width(f"{rows[-1]} {word}", size) <= width:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return [row.replace(_HARD, " ") for row in rows]
