"""Layouts of the jobs in a file, one JSON line a job, then a line with the totals.

Reads files in the form of the published sets: a job has `sheet` (or `sheets`, each with a cost) and `parts`
(length, width, copies). Every layout is checked by the verifier, which knows no solver. The clock is read
here only: it tells the search when to stop. It counts the seconds that this process works, not those that it
waits for others.
"""

from __future__ import annotations

import argparse
import json
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path
from typing import Any

from boardwright.stock.instance import Instance, Item, Stages, StockSize
from boardwright.stock.one_stock import fill_one
from boardwright.stock.sheets import lay_out_sheets
from boardwright.stock.solution import NO_STOCK_LEFT, Answer, Unplaced
from boardwright.stock.verify import verify

STAGES: dict[str, Stages | None] = {"2": 2, "3": 3, "any": None}
EFFORT = 1000.0
"""So much that the clock ends the search."""


class Clock:
    """Says when so many seconds are over: of this process's own work, so that what else runs does not count."""

    def __init__(self, seconds: float) -> None:
        self.start = time.process_time()
        self.end = self.start + seconds

    def over(self) -> bool:
        """Whether they are."""
        return time.process_time() >= self.end

    def taken(self) -> float:
        """Seconds since the start."""
        return time.process_time() - self.start


def question(job: dict[str, Any], words: argparse.Namespace, kerf: float) -> Instance:
    """The job; with a kerf, parts and sheets are smaller by it, so that the fewest sheets stay the same.

    Where several sheet sizes are given their cost is their area. A part without a count may be cut from one
    sheet as often as it fits.
    """
    sheets = job.get("sheets") if "sheet" not in job else [job["sheet"]]
    if words.single and "single_sheet" in job:
        sheets = [job["single_sheet"]]
    assert sheets
    area = max(sheet[0] * sheet[1] for sheet in sheets)
    items = tuple(
        Item(f"p{n}", a - kerf, b - kerf, more[0] if more else area // (a * b), words.turnable)
        for n, (a, b, *more) in enumerate(job["parts"])
    )
    stocks = tuple(
        StockSize(f"s{n}", a - kerf, b - kerf, cost=float(a * b if len(sheets) > 1 else 1))
        for n, (a, b, *_) in enumerate(sheets)
    )
    return Instance(items, stocks, kerf, STAGES[words.stages], words.first)


def warm_up() -> None:
    """Load and compile everything once."""
    import ortools.sat.python.cp_model  # noqa: F401

    sizes = [(5, 5), (4, 6), (6, 4), (3, 7), (7, 3)]
    items = tuple(Item(f"p{n}", a, b, 5) for n, (a, b) in enumerate(sizes))
    for stages in STAGES.values():
        lay_out_sheets(Instance(items, (StockSize("s", 13, 11),), 0.0, stages), effort=0.1)


def allowed(parts: int) -> float:
    """Seconds for a job with so many parts: 1 up to 50, 3 up to 100, 10 above."""
    return 1.0 if parts <= 50 else 3.0 if parts <= 100 else 10.0


def line(job: dict[str, Any], instance: Instance, answer: Answer, seconds: float) -> dict[str, Any]:
    """What is printed of a job."""
    faults = verify(instance, answer)
    several = len(instance.stocks) > 1
    return {
        "id": job["id"],
        "parts": sum(i.count for i in instance.items),
        "sheets": len(answer.bins),
        **({"cost": round(answer.cost, 3), "cost_bound": round(answer.lower_bound, 3)} if several else {}),
        "bound": answer.bins_bound,
        "proven": answer.proven,
        "left_out": len(answer.unplaced),
        "seconds": round(seconds, 2),
        "verified": not faults,
        **({"faults": faults[:3]} if faults else {}),
    }


def total(lines: list[dict[str, Any]]) -> dict[str, Any]:
    """The sums over all jobs."""
    return {
        "total": len(lines),
        **{k: sum(x.get(k, 0) for x in lines) for k in ("sheets", "bound", "left_out", "cost", "cost_bound")},
        "proven": sum(x["proven"] for x in lines),
        "verified": sum(x["verified"] for x in lines),
        "seconds": round(sum(x["seconds"] for x in lines), 1),
        "longest": max(x["seconds"] for x in lines),
    }


def fewest_sheets(job: dict[str, Any], words: argparse.Namespace, seconds: float | None) -> dict[str, Any]:
    """One job on as few sheets, or sheets of as little area, as can be."""
    instance = question(job, words, words.kerf)
    limit = seconds or allowed(sum(i.count for i in instance.items))
    clock = Clock(limit)
    answer = lay_out_sheets(instance, effort=EFFORT, stop=clock.over)
    return line(job, instance, answer, clock.taken())


def most_value(job: dict[str, Any], words: argparse.Namespace, seconds: float | None) -> dict[str, Any]:
    """One job as the choice of parts for one sheet."""
    instance = question(job, words, words.kerf)
    one = replace(instance, stocks=(replace(instance.stocks[0], count=1),))
    values = {f"p{n}": p[3] if len(p) > 3 else p[0] * p[1] for n, p in enumerate(job["parts"])}
    clock = Clock(seconds or 2.0)
    filled = fill_one(one, values, effort=2.0, stop=clock.over)
    took = clock.taken()
    placed = filled.bin.placed if filled.bin else ()
    held = Counter(p.item_id for p in placed)
    left = [Unplaced(i.id, n, NO_STOCK_LEFT) for i in one.items for n in range(held[i.id] + 1, i.count + 1)]
    bins = (filled.bin,) if filled.bin else ()
    answer = Answer(bins, tuple(left), float(len(bins)), 0.0, 0, False, "", 0, 0)
    found = line(job, one, answer, took)
    proven = filled.value == filled.bound
    del found["left_out"]
    worth = sum(values[p.item_id] for p in placed)
    return {**found, "cost": worth, "cost_bound": filled.bound, "proven": proven}


def main() -> None:
    """Lay out every job of the file."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--stages", choices=list(STAGES), default="3")
    parser.add_argument("--first", choices=["rip", "crosscut", "any"], default="any", help="first cut")
    parser.add_argument("--turnable", action="store_true")
    parser.add_argument("--one-sheet", action="store_true", help="most value from one sheet")
    parser.add_argument("--single", action="store_true", help="the job's `single_sheet` only")
    parser.add_argument("--kerf", type=float, default=0.0)
    parser.add_argument("--seconds", type=float, help="for a job; default 1, 3 or 10 by its number of parts")
    parser.add_argument("--only", default="", help="jobs whose id ends so")
    words = parser.parse_args()
    jobs = [json.loads(text) for text in words.file.read_text(encoding="utf-8").splitlines() if text]
    jobs = [job for job in jobs if job["id"].endswith(words.only)]
    work = most_value if words.one_sheet else fewest_sheets
    warm_up()
    lines = []
    for job in jobs:
        lines.append(work(job, words, words.seconds))
        print(json.dumps(lines[-1]), flush=True)
    print(json.dumps(total(lines)))


if __name__ == "__main__":
    main()
