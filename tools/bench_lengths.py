"""Lengths from bars: the jobs in a file, one JSON line a job, then a line with the totals.

Reads files in the form of the published sets: a job has `stock` (or `stocks`, each with a cost) and `parts`
(length, copies). Every layout is checked by the verifier, which knows no solver.
"""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

from bench_layouts import EFFORT, Clock, allowed, line, total, warm_up
from boardwright.stock.instance import Instance
from boardwright.stock.lengths import Bar, lay_out_lengths, length_instance


def question(job: dict[str, Any], kerf: float) -> Instance:
    """The job; with a kerf, pieces and bars are shorter by it, so that the fewest bars stay the same."""
    stocks = job.get("stocks") or [[job["stock"], 1]]
    bars = [Bar(f"s{n}", length - kerf, cost=float(cost)) for n, (length, cost) in enumerate(stocks)]
    return length_instance([(f"p{n}", x - kerf, c) for n, (x, c) in enumerate(job["parts"])], bars, kerf)


def one(job: dict[str, Any], kerf: float, seconds: float | None) -> dict[str, Any]:
    """One job."""
    instance = question(job, kerf)
    clock = Clock(seconds or allowed(sum(i.count for i in instance.items)))
    answer = lay_out_lengths(instance, effort=EFFORT, stop=clock.over)
    return {"set": job["set"], **line(job, instance, answer, clock.taken())}


def main() -> None:
    """Lay out every job of the file."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--kerf", type=float, default=0.0)
    parser.add_argument("--seconds", type=float, help="for a job; default 1, 3 or 10 by its number of pieces")
    parser.add_argument("--set", default="", help="jobs of this set only")
    words = parser.parse_args()
    jobs = [json.loads(text) for text in words.file.read_text(encoding="utf-8").splitlines() if text]
    jobs = [job for job in jobs if words.set in job["set"]]
    warm_up()
    sets: dict[str, list[dict[str, Any]]] = {}
    for job in jobs:
        found = one(job, words.kerf, words.seconds)
        sets.setdefault(job["set"], []).append(found)
        print(json.dumps(found), flush=True)
    for name, lines in sets.items():
        print(json.dumps({"set": name, **total(lines)}))


if __name__ == "__main__":
    main()
