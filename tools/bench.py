"""How long the work takes: a changed number checked again, a cold check, a whole plan. Prints a table.

The loop of a live editor is the first row: the same design again and again, each time with another number in
it.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from boardwright.library import check, load, plan

ROOT = Path(__file__).parent.parent
RUNS = 20

FORTY_PARTS = """
boardwright: 1
title: Forty parts
units: in
work_to: 1/32
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  maple: {{wood: maple_sugar, thickness: 1/2}}
  bottom: {{sheet: birch_plywood, thickness: 6.5 mm, measured: 0.252}}
case:
  width: {width}
  height: 44
  depth: 18
  stock: cherry
  bottom: {{up: 3}}
  back: {{set: rabbet, stock: bottom}}
  inside: {{drawers: {{count: 5, grow: 1/2, between: shelf}}}}
drawers:
  front: {{stock: cherry, made: applied}}
  sides: {{stock: maple}}
  bottom: {{stock: bottom}}
  runs_on: slides
parts:
  kickboard:
    stock: cherry
    length: case.inside.width
    width: 3
    along: x
    across: z
    at: [case.side.left.right, 2, 0]
joints:
  - {{kind: butt, first: case.side.left, second: parts.kickboard}}
  - {{kind: butt, first: case.side.right, second: parts.kickboard}}
"""


def seconds(work: Callable[[], object]) -> float:
    """How long one call takes [s]."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def rechecks() -> list[float]:
    """Checks of the forty parts, each with a width that was not seen before [s]."""
    check(FORTY_PARTS.format(width=33))
    texts = [FORTY_PARTS.format(width=f"34 {n}/32") for n in range(1, RUNS + 1)]
    return [seconds(partial(check, text)) for text in texts]


def cold(path: Path) -> float:
    """A check in a new process, with everything to be loaded [s]."""
    command = [
        sys.executable,
        "-c",
        "import sys; from boardwright.library import *; check(load(sys.argv[1]))",
        str(path),
    ]
    return seconds(lambda: subprocess.run(command, check=True, capture_output=True))


def row(what: str, times: list[float]) -> None:
    """One line of the table: median, least and greatest, in milliseconds."""
    middle, least, most = (1000 * f(times) for f in (statistics.median, min, max))
    print(f"{what:44} {len(times):4} {middle:9.0f} {least:9.0f} {most:9.0f}", flush=True)


def main() -> None:
    """Time everything and print it."""
    piece = check(FORTY_PARTS.format(width=33)).piece
    assert piece is not None
    print(f"{'[ms]':44} {'runs':>4} {'median':>9} {'least':>9} {'most':>9}")
    row(f"check again, a number changed ({len(piece.parts)} parts)", rechecks())
    for path in sorted((ROOT / "examples").glob("*.yaml")):
        row(f"check in a new process: {path.stem}", [cold(path) for _ in range(3)])
        result = check(load(path))
        row(f"plan without printing: {path.stem}", [seconds(partial(plan, result)) for _ in range(2)])


if __name__ == "__main__":
    main()
