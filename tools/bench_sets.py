"""The benchmark table: every published set in a folder, beside a general-purpose packing library.

The sets are numbers that others collected and are not part of this repository; the folder is named by the first
argument or by the environment variable BOARDWRIGHT_BENCHMARKS, and holds `SET/instances.jsonl` as described in
docs/stock.md. Prints one line of a Markdown table a set and way of cutting. Seconds are those that the process
works, one core.
"""

from __future__ import annotations

import argparse
import json
import os
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

import bench_defects
import bench_layouts
import bench_lengths
import packing_library

FOLDER = "BOARDWRIGHT_BENCHMARKS"
Job = dict[str, Any]
HEAD = {
    "line": "line",
    "jobs": "jobs",
    "ours": "ours",
    "best_known": "best known",
    "level_or_better": "level",
    "bound": "bound",
    "library": "library",
    "proven": "proven",
    "verified": "checked",
    "mean_seconds": "mean s",
    "most_seconds": "most s",
}
"""Columns of the table, as docs/stock.md shows it."""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table.

    Attributes:
        set: folder of the set, by its beginning.
        title: what is shown.
        work: lays one job out.
        best: best known value of a job; None when none is known.
        key: what is counted of our answer.
        only: jobs that are taken.
        beside: the packing library on one job; None where it does not apply.
    """

    set: str
    title: str
    work: Callable[[Job], Job]
    best: Callable[[Job], float | None]
    key: str = "sheets"
    only: Callable[[Job], bool] = lambda job: True
    beside: Callable[[Job], int] | None = None


def words(
    stages: str, turnable: bool = False, first: str = "any", kerf: float = 0.0, single: bool = False
) -> Any:
    """What `bench_layouts` is asked for."""
    return argparse.Namespace(stages=stages, turnable=turnable, first=first, kerf=kerf, single=single)


def sheets(asked: Any) -> Callable[[Job], Job]:
    """Fewest sheets of one job."""
    return lambda job: bench_layouts.fewest_sheets(job, asked, None)


def value(asked: Any) -> Callable[[Job], Job]:
    """Most value from one sheet."""
    return lambda job: bench_layouts.most_value(job, asked, 2.0)


def first_ones(job: Job) -> bool:
    """The first job of each class and size."""
    return str(job["id"]).endswith("_01")


def zero_waste(job: Job) -> float | None:
    """One sheet where all parts can be cut from it, else two; unknown where that is open."""
    fits = job["guillotine_fits_fixed"]
    return None if fits is None else 1.0 if fits else 2.0


def rows() -> list[Row]:
    """All lines."""
    found = []
    for stages, turnable, key in (
        ("3", False, "best_3stage_fixed"),
        ("3", True, "best_3stage_rot"),
        ("2", False, "none"),
        ("2", True, "none"),
    ):
        lie = "turnable" if turnable else "fixed"
        beside = partial(packing_library.fewest_sheets, turnable=turnable) if stages == "3" else None
        title = f"A1, first of each, {stages} stages, {lie}"
        work = sheets(words(stages, turnable))
        found.append(Row("A1", title, work, partial(_get, key), only=first_ones, beside=beside))
    for stages, turnable, key in (
        ("2", False, "ref_2stage_fixed_best"),
        ("3", False, "ref_3stage_fixed_best"),
        ("3", True, "ref_3stage_rot_best"),
    ):
        lie = "turnable" if turnable else "fixed"
        beside = partial(packing_library.fewest_sheets, turnable=turnable) if stages == "3" else None
        work = sheets(words(stages, turnable))
        found.append(Row("A6", f"A6, {stages} stages, {lie}", work, partial(_get, key), beside=beside))
    twin = sheets(words("2", kerf=3.2))
    found.append(Row("A6", "A6, 2 stages, fixed, kerf 3.2", twin, partial(_get, "ref_2stage_fixed_best")))
    for first, cut in (("horizontal", "rip"), ("vertical", "crosscut")):
        key = f"opt_2stage_fixed_first_{first}"
        work = value(words("2", first=cut))
        found.append(
            Row(
                "A2",
                f"A2, 2 stages, {first} first, value",
                work,
                partial(_get, key),
                "cost",
                partial(_has, key),
            )
        )
    for turnable, key in ((False, "opt_fixed"), (True, "opt_rot")):
        work = value(words("any", turnable))
        lie = "turnable" if turnable else "fixed"
        found.append(Row("A3", f"A3, any stages, {lie}, value", work, partial(_get, key), "cost"))
    found.append(
        Row(
            "A5",
            "A5, any stages, fixed",
            sheets(words("any")),
            zero_waste,
            only=lambda j: bool(zero_waste(j)),
        )
    )
    single = sheets(words("3", single=True))
    key = "best_3stage_homog_any_fixed_single"
    found.append(Row("A4", "A4, one size, 3 stages, fixed", single, partial(_get, key)))
    for turnable, key in ((False, "multi_2stage_fixed_best_cost"), (True, "multi_2stage_rot_best_cost")):
        work = sheets(words("2", turnable, first="rip"))
        lie = "turnable" if turnable else "fixed"
        found.append(Row("A4", f"A4, three sizes, 2 stages, {lie}, area", work, partial(_get, key), "cost"))
    found.append(
        Row("A7", "A7, several sizes, 3 stages, fixed, area", sheets(words("3")),
            partial(_get, "best_sheet_area_nonguillotine_fixed"), "cost")
    )  # fmt: skip
    for name in ("u250", "u500", "t60", "t120", "t249", "t501"):
        found.append(_lengths("B1", f"falkenauer_{name}", "best"))
    for name in ("scholl1", "scholl2", "scholl3", "waescher", "schwerin", "hard28"):
        found.append(_lengths("B1", name, "best"))
    for name in ("monaci", "haouari_serairi"):
        found.append(_lengths("B2", name, "best_cost", "cost"))
    plates = partial(bench_defects.one, seconds=10.0)
    found.append(Row("C1", "C1, defects, 3 stages, waste", plates, partial(_get, "best_waste"), "waste"))
    return found


def _lengths(folder: str, name: str, best: str, key: str = "sheets") -> Row:
    return Row(
        folder, f"{folder}, {name}", partial(bench_lengths.one, kerf=0.0, seconds=None), partial(_get, best), key,
        only=lambda job: name in job["set"],
    )  # fmt: skip


def _get(key: str, job: Job) -> float | None:
    found = job.get(key)
    return None if found is None else float(found)


def _has(key: str, job: Job) -> bool:
    return job.get(key) is not None


def measured(row: Row, jobs: list[Job]) -> Job:
    """One line's figures."""
    lines = [row.work(job) for job in jobs]
    known = [row.best(job) for job in jobs]
    ours = [float(line[row.key]) for line in lines]
    bound = "cost_bound" if row.key == "cost" else "bound"
    least = max if row.key == "cost" and "value" in row.title else min
    return {
        "line": row.title,
        "jobs": len(jobs),
        "ours": sum(ours),
        "best_known": None if None in known else sum(x for x in known if x is not None),
        "level_or_better": sum(k is not None and least(x, k) == x for x, k in zip(ours, known, strict=True)),
        "bound": None if row.key == "waste" else sum(line[bound] for line in lines),
        "library": sum(row.beside(job) for job in jobs) if row.beside else None,
        "proven": sum(line["proven"] for line in lines),
        "verified": sum(line["verified"] for line in lines),
        "mean_seconds": round(sum(line["seconds"] for line in lines) / len(lines), 2),
        "most_seconds": max(line["seconds"] for line in lines),
    }


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", default=os.environ.get(FOLDER))
    parser.add_argument("--only", default="", help="lines that begin so")
    asked = parser.parse_args()
    if asked.folder is None:
        print(f"no folder of published sets: name one, or set {FOLDER} (see docs/stock.md)")
        return
    bench_layouts.warm_up()
    print("| " + " | ".join(HEAD.values()) + " |")
    print("| --- |" + " ---: |" * (len(HEAD) - 1), flush=True)
    for row in rows():
        files = sorted(Path(asked.folder).glob(f"{row.set}_*/instances.jsonl"))
        if not row.title.startswith(asked.only) or not files:
            continue
        jobs = [json.loads(text) for text in files[0].read_text(encoding="utf-8").splitlines() if text]
        found = measured(row, [job for job in jobs if row.only(job)])
        print("| " + " | ".join(_shown(found[c]) for c in HEAD) + " |", flush=True)


def _shown(x: object) -> str:
    if x is None:
        return "-"
    return f"{x:.0f}" if isinstance(x, float) and x == round(x) else str(x)


if __name__ == "__main__":
    main()
