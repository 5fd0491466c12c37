"""The rack for programs: JSON with lengths in millimetres, or CSV as `export` writes it."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING

from boardwright.core.length_text import Units
from boardwright.core.rack import Rack

if TYPE_CHECKING:
    from boardwright.store.takings import Taking

TAKEN = ("number", "at", "plan", "pieces", "offcuts")
"""Columns of what is taken."""


def of_group(rack: Rack, what: str) -> Rack:
    """What is listed when `what` names one group; all of it for `all`."""
    if what == "all":
        return rack
    return Rack(
        tuple(p for p in rack.pieces if p.group == what),
        rack.supplies if what == "supplies" else (),
        rack.prices if what == "prices" else (),
    )


def as_json(rack: Rack, takings: Sequence[Taking], what: str, units: Units) -> str:
    """The rack, or one group of it, as JSON.

    Args:
        rack: what is on it.
        takings: what was taken.
        what: `all`, or one group.
        units: that bare numbers of the rack are in; lengths are in mm whatever they are.
    """
    there = of_group(rack, what)
    found: dict[str, object] = {"units": units}
    found["pieces"] = [{**asdict(p), "group": p.group} for p in there.pieces]
    found["supplies"] = [asdict(s) for s in there.supplies]
    found["prices"] = [{**asdict(p), "amount": str(p.amount)} for p in there.prices]
    out = [t for t in takings if not t.put_back_at]
    found["taken"] = [
        {"number": t.number, "at": t.at, "plan": t.plan, "pieces": t.pieces, "offcuts": t.offcuts}
        for t in (out if what in ("all", "taken") else ())
    ]
    return json.dumps(found, indent=2, ensure_ascii=False)


def as_csv(rack: Rack, takings: Sequence[Taking], what: str, units: Units) -> str:
    """The rack, or one group of it, as CSV; `taken` has columns of its own and stands alone.

    Args:
        rack: what is on it.
        takings: what was taken.
        what: `all`, or one group.
        units: to write lengths in; each has its unit beside it.
    """
    from boardwright.store.csv_files import export_csv

    if what != "taken":
        return export_csv(of_group(rack, what), units).rstrip("\n")
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(TAKEN)
    for t in takings:
        if not t.put_back_at:
            writer.writerow([t.number, t.at, t.plan, "; ".join(t.pieces), "; ".join(t.offcuts)])
    return out.getvalue().rstrip("\n")
