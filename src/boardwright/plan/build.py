"""Design, piece and stock → the plan record."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from boardwright.checks.movement.curves import Curve
from boardwright.core.findings import Finding
from boardwright.core.lengths import Printer
from boardwright.design.load import Design
from boardwright.piece.records import Chain, Piece
from boardwright.plan.cautions import cautions
from boardwright.plan.facts import allowances, cost_facts, facts, notes
from boardwright.plan.joints import joint_groups, plan_joints
from boardwright.plan.parts import exact, kinds, letters_of, plan_part, size, sizes
from boardwright.plan.pictures import pictures
from boardwright.plan.places import chain_words
from boardwright.plan.reasons import plan_reasons
from boardwright.plan.rough import rough_lines
from boardwright.plan.schema import ChainMember, Plan, PlanChain, PlanFinding, PlanPart, Size
from boardwright.plan.steps import build_steps
from boardwright.plan.stock import buy_lines, layouts, length_layouts, preparation, strips
from boardwright.plan.year import plan_year
from boardwright.stock.records import StockResult


def build_plan(
    design: Design,
    piece: Piece,
    stock: StockResult,
    findings: Sequence[Finding],
    curves: Sequence[Curve],
    say: Callable[[str], None],
) -> Plan:
    """Gather everything that is printed.

    Args:
        design: for title, maker and version.
        piece: every size known.
        stock: rough sizes, layouts, buying list.
        findings: of all stages.
        curves: the fits that move through the year.
        say: told what is being done.
    """
    printer = Printer("mm" if piece.units == "mm" else "in", piece.step)
    letters = letters_of(piece)
    boards, summaries, drawn = layouts(stock, printer)
    file = design.file
    joints = plan_joints(piece, letters)
    say("finding the order of assembly")
    steps, subassemblies = build_steps(piece, printer, letters)
    year, charts = plan_year(piece, curves, printer)
    outside = {
        name: size(printer, piece.outside.size(i)) for i, name in enumerate(("width", "depth", "height"))
    }
    data: dict[str, Any] = {
        "title": file.title.strip(),
        "about": (file.about or "").strip(),
        "maker": (file.maker or "").strip(),
        "version": str(file.version) if file.version is not None else "1",
        "units": piece.units,
        "step": Size(mm=piece.step, text=printer.size(piece.step)),
        "outside": outside,
        "facts": [*facts(piece, printer), *cost_facts(stock.cost)],
        "parts": _parts(piece, printer, letters, stock),
        "joints": joints,
        "joint_groups": joint_groups(joints),
        "steps": steps,
        "subassemblies": subassemblies,
        "buy": buy_lines(stock),
        "supplies": [{"name": b.supply, "quantity": b.taken} for b in stock.buy if b.taken],
        "layouts": boards,
        "layout_summaries": summaries,
        "lengths": length_layouts(stock, printer),
        "drawings": pictures(piece, printer, letters, drawn, steps, charts, say),
        "cover": "assembled",
        "cautions": cautions(piece),
        "notes": notes(design, piece, printer),
        "year": year,
        "allowances": allowances(stock.rules),
        "rough": rough_lines(stock),
        "findings": [_finding(f) for f in findings],
        "reasons": plan_reasons(piece, printer),
        "chains": [_chain(c, printer) for c in piece.chains],
        "hardware": [
            {"name": h.name, "group": h.group, "low": list(h.box.low), "high": list(h.box.high)}
            for h in piece.hardware
        ],
    }
    return Plan.model_validate(data)


def _parts(piece: Piece, printer: Printer, letters: Mapping[str, str], stock: StockResult) -> list[PlanPart]:
    rough = {r.letter: r for r in stock.rough}
    out = []
    for letter, same in kinds(piece).items():
        r = rough[letter]
        out.append(
            plan_part(
                same,
                printer,
                letters,
                sizes(printer, r.rough) if r.rough else None,
                strips(r, printer),
                preparation(r, printer),
            )
        )
    return out


def _finding(f: Finding) -> PlanFinding:
    return PlanFinding(
        code=f.code,
        severity=f.severity.value,
        message=f.message,
        where=str(f.place),
        found=f.found,
        expected=f.expected,
        source=f.source,
        remedy=f.remedy,
        count=f.count,
    )


def _chain(chain: Chain, printer: Printer) -> PlanChain:
    return PlanChain(
        name=chain_words(chain.name),
        members=[
            ChainMember(label=chain_words(label), size=exact(printer, mm)) for label, mm in chain.members
        ],
        whole=ChainMember(label=chain_words(chain.whole[0]), size=exact(printer, chain.whole[1])),
    )
