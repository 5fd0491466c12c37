"""`plan.json` and everything that is made from it, written into one folder."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path

from boardwright.plan.schema import DrawingRecord, Plan
from boardwright.publish.dxf import dxf_text
from boardwright.publish.files import file_name, write_whole
from boardwright.publish.pdf import Paper, write_pdf
from boardwright.publish.step import write_step
from boardwright.publish.svg import svg_text
from boardwright.publish.tables import buying_csv, cut_list_csv, rough_csv
from boardwright.publish.xlsx import write_xlsx

FORMATS = ("json", "csv", "xlsx", "svg", "dxf", "step", "pdf")
"""In this order they are written: quick ones first."""
Progress = Callable[[Path], None]
Write = Callable[[Path], None]


def publish(
    plan: Plan,
    out_dir: Path,
    paper: Paper,
    formats: Sequence[str] = FORMATS,
    progress: Progress | None = None,
) -> list[Path]:
    """Writes the plan in every format asked for.

    Each file is written under a temporary name and renamed when it is whole.

    Args:
        plan: the plan.
        out_dir: folder for the files; made when it is not there.
        paper: paper of the PDF, `letter` or `a4`.
        formats: any of `FORMATS`.
        progress: called with the path of every file that was written.

    Returns:
        Paths of all files, in the order in which they were written.

    Raises:
        ValueError: a format that is not one of `FORMATS`.
        OSError: the folder or a file cannot be written.
    """
    unknown = [f for f in formats if f not in FORMATS]
    if unknown:
        raise ValueError(f"unknown format {', '.join(unknown)}; expected any of {', '.join(FORMATS)}")
    out_dir.mkdir(parents=True, exist_ok=True)
    written: list[Path] = []
    for name, write in _jobs(plan, paper, formats):
        path = out_dir / name
        path.parent.mkdir(exist_ok=True)
        write_whole(path, write)
        written.append(path)
        if progress:
            progress(path)
    return written


def plan_json(plan: Plan) -> str:
    """The plan as it stands in `plan.json`."""
    return json.dumps(plan.model_dump(mode="json"), indent=1, ensure_ascii=False) + "\n"


def _jobs(plan: Plan, paper: Paper, formats: Sequence[str]) -> Iterator[tuple[str, Write]]:
    """Name of each file and what writes it; nothing is worked out before its turn."""
    if "json" in formats:
        yield "plan.json", lambda p: _text(p, plan_json(plan))
    if "csv" in formats:
        yield "cut-list.csv", lambda p: _text(p, cut_list_csv(plan))
        yield "buying-list.csv", lambda p: _text(p, buying_csv(plan))
        yield "rough-list.csv", lambda p: _text(p, rough_csv(plan))
    if "xlsx" in formats:
        yield "lists.xlsx", lambda p: write_xlsx(plan, p)
    for suffix, text in (("svg", svg_text), ("dxf", dxf_text)):
        if suffix in formats:
            for drawing in plan.drawings:
                yield f"drawings/{file_name(drawing.id)}.{suffix}", partial(_drawing, drawing, text)
    if "step" in formats:
        yield "piece.step", lambda p: write_step(plan, p)
    if "pdf" in formats:
        yield "plan.pdf", lambda p: write_pdf(plan, p, paper)


def _drawing(drawing: DrawingRecord, text: Callable[[DrawingRecord], str], path: Path) -> None:
    _text(path, text(drawing))


def _text(path: Path, text: str) -> None:
    """Writes UTF-8, line ends as they are in `text`."""
    path.write_bytes(text.encode("utf-8"))
