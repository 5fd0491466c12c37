"""The same as the command line, from Python. No global state: safe to call from several threads.

result = check(load("ribbon-chest.yaml"))
made = plan(result)
publish(made.plan, "out", paper="letter")
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from boardwright import pipeline
from boardwright.core.findings import Finding, grouped
from boardwright.core.rack import Rack
from boardwright.pipeline import Result

if TYPE_CHECKING:
    from boardwright.plan.schema import Plan


@dataclass(frozen=True, slots=True)
class Loaded:
    """A design file as read: its text and those of its table files; nothing is checked yet."""

    name: str
    text: str
    tables: tuple[tuple[str, str], ...] = ()
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class Made:
    """A plan and what was found on the way; `plan` is None when there was no piece."""

    plan: Plan | None
    findings: tuple[Finding, ...]


def load(path: str | Path) -> Loaded:
    """Read a design file and the table files it names.

    Args:
        path: the design file.

    Returns:
        Its text. A file that cannot be read gives a finding, never an exception.
    """
    text, tables, findings = pipeline.read(path)
    return Loaded(str(path), text, tuple(sorted(tables.items())), tuple(findings))


def check(design: Loaded | str, units: Literal["in", "mm"] | None = None) -> Result:
    """Set out a design and check it.

    Args:
        design: from `load`, or the text of a design file.
        units: settle and print in these units instead of the file's.

    Returns:
        The piece, where there is one, and every finding.
    """
    loaded = Loaded("design", design) if isinstance(design, str) else design
    if not loaded.text and loaded.findings:
        return pipeline.nothing(loaded.findings)
    result = pipeline.check_text(loaded.text, loaded.name, units, dict(loaded.tables))
    return replace(result, findings=tuple(grouped([*loaded.findings, *result.findings])))


def rack(where: str) -> tuple[Rack | None, tuple[Finding, ...]]:
    """What is on a shop's rack now.

    Args:
        where: the rack's file, or the URL of its database.

    Returns:
        The rack, for `plan`; or None, and why it cannot be read.
    """
    from boardwright.store.opening import open_rack
    from boardwright.store.supplies import read_rack

    store, findings = open_rack(where)
    if store is None:
        return None, tuple(findings)
    there, findings = read_rack(store)
    store.close()
    return (None if findings else there), tuple(findings)


def plan(
    result: Result,
    progress: Callable[[str], None] | None = None,
    stop: Callable[[], bool] | None = None,
    rack: Rack | None = None,
) -> Made:
    """Make the plan of a checked design.

    Args:
        result: from `check`.
        progress: told what is being done.
        stop: asked now and then; True ends the search for better layouts.
        rack: what is on the shop's rack, as from `rack`; parts are laid on it first.

    Returns:
        The plan, and all findings, those of the stock included.
    """
    made, findings = pipeline.make_plan(result, progress, stop, rack)
    return Made(made, tuple(findings))


def publish(
    made: Plan,
    out: str | Path,
    paper: Literal["letter", "a4"] = "letter",
    formats: Sequence[str] | None = None,
) -> list[Path]:
    """Write a plan: PDF, plan.json, lists, drawings, STEP.

    Args:
        made: the plan.
        out: folder.
        paper: paper of the PDF.
        formats: some of `json`, `csv`, `svg`, `dxf`, `step`, `pdf`; None for all.

    Returns:
        The files written.

    Raises:
        OSError: the folder or a file cannot be written.
        ValueError: an unknown format.
    """
    from boardwright.publish.run import FORMATS
    from boardwright.publish.run import publish as write

    return write(made, Path(out), paper, formats or FORMATS)
