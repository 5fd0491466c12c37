"""Panels from random boards: boards bought against the bound of the linear programme.

python tools/bench_glue_ups.py [--cases N] [--effort E]

Every case is a pile of boards of random width and length, as they come from a yard (widths from 5 to 11 in, lengths
from 8 to 12 ft: common practice), each there once, and a piece of casework with panels and narrow parts. What is left
of a board, whole across and 12 in or longer, goes back on the rack and is not counted as used. The bound is that of the
linear choice of all ways to crosscut, rip and crosscut a board, with widths of strips free.
"""

from __future__ import annotations

import argparse
import json
import time
from random import Random

from boardwright.core.lengths import INCH
from boardwright.stock.instance import StockSize
from boardwright.stock.panel_check import faults
from boardwright.stock.panel_question import PanelQuestion, Wanted
from boardwright.stock.panels import lay_out_panels


def case(seed: int) -> PanelQuestion:
    """A pile of boards and what is wanted of it."""
    random = Random(seed)
    wanted = []
    for n in range(random.randint(2, 5)):
        length = random.randint(16 * 8, 44 * 8) / 8 * INCH
        width = random.randint(12 * 8, 22 * 8) / 8 * INCH
        wanted.append(Wanted(f"panel {n + 1}", length, width, random.randint(1, 4), True))
    for n in range(random.randint(2, 4)):
        length = random.randint(13 * 8, 36 * 8) / 8 * INCH
        width = random.randint(16, 40) / 8 * INCH
        wanted.append(Wanted(f"rail {n + 1}", length, width, random.randint(2, 8)))
    area = sum(w.length * w.width * w.count for w in wanted)
    boards: list[StockSize] = []
    pile = 0.0
    while pile < 1.8 * area or len(boards) < 6:
        long, wide = random.randint(8, 12) * 12 * INCH, random.randint(5 * 8, 11 * 8) / 8 * INCH
        pile += long * wide
        boards.append(
            StockSize(f"board {len(boards) + 1}", long, wide, 1, long * wide / 1e6, 2 * INCH, INCH / 4)
        )
    return PanelQuestion(
        tuple(wanted), tuple(boards), INCH / 8, 2 * INCH, 6 * INCH, INCH / 8, INCH / 16, 12 * INCH
    )


def main() -> None:
    """Print a line a case and a total."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--cases", type=int, default=20)
    ask.add_argument("--effort", type=float, default=1.0)
    given = ask.parse_args()
    over, seconds, area, bound = [], 0.0, 0.0, 0.0
    for seed in range(1, given.cases + 1):
        question = case(seed)
        start = time.process_time()
        answer = lay_out_panels(question, effort=given.effort)
        took = time.process_time() - start
        wrong = faults(question, answer)
        gap = answer.cost / answer.bound - 1 if answer.bound else 0.0
        line = {
            "id": seed,
            "boards": len(answer.boards),
            "area": round(answer.cost, 4),
            "bound": round(answer.bound, 4),
            "over": round(100 * gap, 2),
            "seconds": round(took, 2),
            "verified": not wrong,
            "missing": answer.missing,
        }
        print(json.dumps(line), *wrong[:3], flush=True)
        over.append(gap)
        area, bound = area + answer.cost, bound + answer.bound
        seconds += took
    print(
        json.dumps(
            {
                "cases": len(over),
                "mean over bound, %": round(100 * sum(over) / len(over), 2),
                "all wood over all bounds, %": round(100 * (area / bound - 1), 2),
                "most, %": round(100 * max(over), 2),
                "seconds": round(seconds, 1),
            }
        )
    )


if __name__ == "__main__":
    main()
