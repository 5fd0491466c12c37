"""Layouts of the jobs in a file, one JSON line a job, then a line with the totals.

Reads files in the form of the published sets: a job has `sheet` (or `sheets`, each with a cost) and `parts`
(length, width, copies). Every layout is checked by the verifier, which knows no solver. The clock is read
here only: it tells the search when to stop.
"""

from __future__ import annotations

import argparse
import json
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from boardwright.stock.instance import Instance, Item, StockSize
from boardwright.stock.sheets import lay_out_sheets
from boardwright.stock.solution import Answer
from boardwright.stock.verify import verify

STAGES = {"2": 2, "3": 3, "any": None}
EFFORT = 1000.0
"""So much that the clock ends the search."""


def clock(seconds: float) -> Callable[[], bool]:
    """Says stop when so many seconds are over."""
    end = time.monotonic() + seconds
    return lambda: time.monotonic() >= end


def question(job: dict[str, Any], stages: str, turnable: bool, kerf: float) -> Instance:
    """The job; with a kerf, parts and sheets are smaller by it, so that the fewest sheets stay the same."""
    items = tuple(
        Item(f"p{n}", part[0] - kerf, part[1] - kerf, part[2], turnable)
        for n, part in enumerate(job["parts"])
    )
    sheets = job.get("sheets") or [[*job["sheet"], 1]]
    stocks = tuple(
        StockSize(f"s{n}", a - kerf, b - kerf, cost=float(a * b if len(sheets) > 1 else 1))
        for n, (a, b, *_) in enumerate(sheets)
    )
    return Instance(items, stocks, kerf, STAGES[stages], "any")  # type: ignore[arg-type]


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
        **{k: sum(x.get(k, 0) for x in lines) for k in ("sheets", "bound", "left_out")},
        **({"cost": round(sum(x["cost"] for x in lines), 3)} if "cost" in lines[0] else {}),
        "proven": sum(x["proven"] for x in lines),
        "verified": sum(x["verified"] for x in lines),
        "seconds": round(sum(x["seconds"] for x in lines), 1),
        "longest": max(x["seconds"] for x in lines),
    }


def main() -> None:
    """Lay out every job of the file."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--stages", choices=list(STAGES), default="3")
    parser.add_argument("--turnable", action="store_true")
    parser.add_argument("--kerf", type=float, default=0.0)
    parser.add_argument("--seconds", type=float, help="for a job; default 1, 3 or 10 by its number of parts")
    parser.add_argument("--only", default="", help="jobs whose id ends so")
    words = parser.parse_args()
    jobs = [json.loads(text) for text in words.file.read_text(encoding="utf-8").splitlines() if text]
    jobs = [job for job in jobs if job["id"].endswith(words.only)]
    lay_out_sheets(question(jobs[0], words.stages, words.turnable, 0.0), effort=0.1)
    lines = []
    for job in jobs:
        instance = question(job, words.stages, words.turnable, words.kerf)
        seconds = words.seconds or allowed(sum(i.count for i in instance.items))
        start = time.monotonic()
        answer = lay_out_sheets(instance, effort=EFFORT, stop=clock(seconds))
        lines.append(line(job, instance, answer, time.monotonic() - start))
        print(json.dumps(lines[-1]), flush=True)
    print(json.dumps(total(lines)))


if __name__ == "__main__":
    main()
