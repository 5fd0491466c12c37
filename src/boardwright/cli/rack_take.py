"""Taking wood for a plan from the rack, and putting it back."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from boardwright.cli.rack_options import DEFAULT, RackOpt, end, open_or_end
from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.rack import BOUGHT, Defect, RackPiece

if TYPE_CHECKING:
    from boardwright.plan.schema import Layout, Plan, RackDefect
    from boardwright.plan.schema import RackPiece as PlanPiece
    from boardwright.store.opening import Store
    from boardwright.store.takings import Wanted

PlanArg = Annotated[Path, typer.Argument(metavar="PLAN", help="plan.json of the plan")]


def take(plan: PlanArg, rack: RackOpt = DEFAULT) -> None:
    """Take what a plan cuts off the rack, and put what is left of it there as offcuts."""
    from boardwright.store.takings import take as take_wood

    store = open_or_end(rack)
    made = _plan(plan)
    taking, findings = take_wood(store, wanted_by(made), _now())
    if taking is None:
        end(findings)
    typer.echo(f"taking {taking.number}, for {taking.plan}")
    typer.echo(f"taken: {', '.join(taking.pieces) or 'nothing; all of it is bought'}")
    typer.echo(f"offcuts now on the rack: {', '.join(taking.offcuts) or 'none'}")
    bought = [(x, o) for x in made.layouts if x.rack is not None for o in x.offcuts]
    for name, (layout, o) in zip(taking.offcuts, bought, strict=True):
        if name != o.name:
            size = f"{_written(o.length, store)} × {_written(o.width, store)}"
            typer.echo(f"write {name} on the offcut {size} of {layout.title}")
    for name, many in taking.supplies:
        typer.echo(f"used: {many:g} of {name}")


def put_back(
    what: Annotated[
        str, typer.Argument(metavar="PLAN", help="plan.json of the plan, or the number of the taking")
    ],
    rack: RackOpt = DEFAULT,
) -> None:
    """Put everything back that was taken for a plan, and take its offcuts off again."""
    from boardwright.store.takings import put_back as put_wood_back

    store = open_or_end(rack)
    which = what if what.isdigit() and not Path(what).exists() else wanted_by(_plan(Path(what))).digest
    taking, findings = put_wood_back(store, which, _now())
    if taking is None:
        end(findings)
    typer.echo(f"back on the rack: {', '.join(taking.pieces) or 'nothing'}")
    typer.echo(f"offcuts no longer there: {', '.join(taking.offcuts) or 'none'}")


def _written(mm: float, store: Store) -> str:
    from boardwright.store.words import written

    return written(mm, store.units)


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="seconds")


def _plan(path: Path) -> Plan:
    from pydantic import ValidationError

    from boardwright.plan.schema import Plan

    if not path.is_file():
        raise typer.BadParameter(f"there is no file `{path}`", param_hint="PLAN")
    try:
        return Plan.model_validate_json(path.read_text(encoding="utf-8"))
    except ValidationError:
        end([_not_a_plan(path, "text of another shape")])
    except (UnicodeDecodeError, OSError):
        end([_not_a_plan(path, "a file that cannot be read as text")])


def _not_a_plan(path: Path, said: str) -> Finding:
    return Finding(
        "rack.not-a-plan", Severity.ERROR, "this is not a plan", Place(str(path)), said,
        "a plan.json written by `boardwright plan`", remedy="make the plan again",
    )  # fmt: skip


def _piece(on: PlanPiece, layout: Layout) -> RackPiece:
    """A piece of the rack as the plan knew it."""
    size = (layout.length.mm, layout.width.mm)
    return RackPiece(
        on.name, on.kind, on.material, on.thickness, *size, on.lumber, defects=_marks(on.defects)
    )


def _marks(defects: Sequence[RackDefect]) -> tuple[Defect, ...]:
    return tuple(Defect(d.x, d.y, d.length, d.width, d.what) for d in defects)


def wanted_by(plan: Plan) -> Wanted:
    """What a plan takes from the rack and leaves, as it stands in its record."""
    from boardwright.store.takings import Wanted

    taken = tuple(_piece(x.rack, x) for x in plan.layouts if x.rack is not None and x.rack.name)
    left = tuple(
        RackPiece(
            o.name, x.rack.kind, x.rack.material, x.rack.thickness, o.length, o.width, x.rack.lumber,
            cut_from=x.rack.name or BOUGHT, defects=_marks(o.defects), note=f"of {plan.title}",
        )
        for x in plan.layouts
        if x.rack is not None
        for o in x.offcuts
    )  # fmt: skip
    text = plan.model_dump_json()
    digest = hashlib.sha256(text.encode()).hexdigest()
    supplies = tuple((s.name, s.quantity) for s in plan.supplies)
    return Wanted(f"{plan.title}, version {plan.version}", digest, taken, left, supplies)
