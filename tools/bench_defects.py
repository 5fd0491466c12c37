"""Layouts on plates with defects: the jobs in a file, one JSON line a job, then a line with the totals.

Reads files in the form of the published set: a job has `sheet`, `parts_w_h_stack` (width, height, stack; parts of
one stack come off in the given order and may be turned) and `defects_sheet_x_y_w_h`. Plates are used in order, the
first cuts are vertical, in three stages and one trimming cut; first cuts lie 100 to 3500 apart, second ones 100 or
more; no cut goes through a defect, and no waste is thinner than 20. Waste is what is not a part on all plates, the
last one counted up to its last first cut. Every layout is checked by the verifier, which knows no solver.
"""

from __future__ import annotations

import argparse
import json
from collections import defaultdict
from pathlib import Path
from typing import Any

from bench_layouts import EFFORT, Clock, line, total
from boardwright.stock.engine import solve
from boardwright.stock.instance import Instance, Item, Limits, Rectangle, StockSize
from boardwright.stock.solution import Answer

LIMITS = Limits(100.0, 3500.0, 100.0, 20.0, through_defects=False)
MORE = 10
"""Plates without defects after those that the file gives; no good layout reaches them."""


def question(job: dict[str, Any]) -> Instance:
    """The job."""
    items, stacks = [], defaultdict(list)
    for n, (a, b, stack) in enumerate(job["parts_w_h_stack"]):
        items.append(Item(f"p{n}", a, b, 1, turnable=True))
        stacks[stack].append(f"p{n}")
    marks = defaultdict(list)
    for plate, x, y, w, h in job["defects_sheet_x_y_w_h"]:
        marks[plate].append(Rectangle(x, y, x + w, y + h))
    length, width = job["sheet"]
    stocks = tuple(
        StockSize(f"s{n}", length, width, count=1, defects=tuple(marks[n]))
        for n in range(job["sheets_kept"] + MORE)
    )
    sequences = tuple(tuple(names) for names in stacks.values())
    return Instance(tuple(items), stocks, 0.0, 3, "crosscut", LIMITS, sequences, in_order=True)


def waste(instance: Instance, answer: Answer) -> float:
    """Area that is no part, the last plate counted up to its last first cut."""
    if not answer.bins:
        return 0.0
    length, width = instance.stocks[0].length, instance.stocks[0].width
    last = answer.bins[-1]
    ends = [c.position for c in last.cuts if c.stage == 1]
    beyond = [p for p in last.placed if not ends or p.x >= max(ends)]
    used = length if beyond else max(ends)
    parts = sum(p.length * p.width for b in answer.bins for p in b.placed)
    return (len(answer.bins) - 1) * length * width + used * width - parts


def most_trims(answer: Answer) -> int:
    """Most trimming cuts that free one part."""
    found = 0
    for b in answer.bins:
        for p in b.placed:
            inside = [
                c
                for c in b.cuts
                if c.trimming
                and c.piece.x0 <= p.x
                and p.x + p.length <= c.piece.x1
                and c.piece.y0 <= p.y
                and p.y + p.width <= c.piece.y1
            ]
            found = max(found, len(inside))
    return found


def one(job: dict[str, Any], seconds: float) -> dict[str, Any]:
    """One job."""
    instance, clock = question(job), Clock(seconds)
    answer = solve(instance, "places", effort=EFFORT, stop=clock.over)
    found = line(job, instance, answer, clock.taken())
    return {
        **found,
        "waste": waste(instance, answer),
        "best": job.get("best_waste"),
        "trims": most_trims(answer),
    }


def main() -> None:
    """Lay out every job of the file."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0, help="for a job")
    parser.add_argument("--only", default="", help="jobs whose id is this")
    words = parser.parse_args()
    jobs = [json.loads(text) for text in words.file.read_text(encoding="utf-8").splitlines() if text]
    jobs = [job for job in jobs if words.only in ("", job["id"])]
    solve(question({**jobs[0], "parts_w_h_stack": jobs[0]["parts_w_h_stack"][:3]}), "", effort=0.01)
    lines = []
    for job in jobs:
        found = one(job, words.seconds)
        lines.append(found)
        print(json.dumps(found), flush=True)
    sums = total(lines)
    known = [x for x in lines if x["best"]]
    over = [x["waste"] / x["best"] - 1 for x in known]
    print(
        json.dumps(
            {
                **sums,
                "waste": sum(x["waste"] for x in lines),
                "over_best": round(sum(x["waste"] for x in known) / sum(x["best"] for x in known) - 1, 4),
                "mean_over_best": round(sum(over) / len(over), 4),
                "most_over_best": round(max(over), 4),
            }
        )
    )


if __name__ == "__main__":
    main()
