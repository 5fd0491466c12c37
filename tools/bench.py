"""How long the work takes: a changed number checked again, a cold check, a whole plan. Prints a table.

The loop of a live editor comes first: the same design again and again, each time with another size in it. Those rows
count processor time, so that other work on the machine does not; the other rows count the clock.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from boardwright.library import check, load, plan
from re_checks import with_size

ROOT = Path(__file__).parent.parent
RUNS = 20


def seconds(work: Callable[[], object], clock: Callable[[], float] = time.perf_counter) -> float:
    """How long one call takes [s]."""
    start = clock()
    work()
    return clock() - start


def rechecks(source: str) -> list[float]:
    """Checks of a design, each with a width that was not seen before [s of the processor]."""
    check(source)
    texts = [with_size(source, 0, n) for n in range(1, RUNS + 1)]
    return [seconds(partial(check, text), time.process_time) for text in texts]


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
    print(f"{what:52} {len(times):4} {middle:9.0f} {least:9.0f} {most:9.0f}", flush=True)


def main() -> None:
    """Time everything and print it."""
    print(f"{'[ms]':52} {'runs':>4} {'median':>9} {'least':>9} {'most':>9}")
    examples = sorted((ROOT / "examples").glob("*.yaml"))
    designs = [*examples, *sorted((ROOT / "tools/bench_designs").glob("*.yaml"))]
    for path in designs:
        piece = check(load(path)).piece
        assert piece is not None
        row(f"another width: {path.stem}, {len(piece.parts)} parts", rechecks(path.read_text()))
    for path in designs:
        row(f"check in a new process: {path.stem}", [cold(path) for _ in range(3)])
    for path in examples:
        result = check(load(path))
        row(f"plan without printing: {path.stem}", [seconds(partial(plan, result)) for _ in range(2)])


if __name__ == "__main__":
    main()
