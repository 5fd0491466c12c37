"""How findings, sizes and lists look in the terminal."""

from __future__ import annotations

import json
from collections.abc import Sequence

import typer

from boardwright.checks.amounts import told
from boardwright.checks.looked import Looked
from boardwright.checks.margins import Margin, caution
from boardwright.checks.movement.times import Then
from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer
from boardwright.piece.records import Part, Piece
from boardwright.pipeline import Result
from boardwright.plan.schema import RoughLine
from boardwright.savings import Savings
from boardwright.solids.seasons import grown

COLOURS = {
    Severity.ERROR: typer.colors.RED,
    Severity.WARNING: typer.colors.YELLOW,
    Severity.NOTE: typer.colors.BLUE,
}


def findings_json(
    findings: Sequence[Finding],
    passed: Sequence[Margin] | None = None,
    then: dict[str, object] | None = None,
    looked: Sequence[Looked] | None = None,
) -> str:
    """Findings as JSON, one object with a list.

    Args:
        findings: all of them.
        passed: what keeps its limit; None leaves the list out.
        then: sizes at one time of the year, from `sizes_then`; None leaves them out.
        looked: checks without a figure that found nothing; None leaves the list out.
    """
    data: dict[str, object] = {"findings": [f.as_dict() for f in findings]}
    if passed is not None:
        data["passed"] = [m.as_dict() for m in passed]
    if looked is not None:
        data["looked"] = [k.as_dict() for k in looked]
    if then is not None:
        data["when"] = then
    said = caution([*(f.code for f in findings), *(m.check for m in passed or ())])
    if said:
        data["caution"] = said
    return json.dumps(data, indent=1, ensure_ascii=False)


def _solid(piece: Piece) -> list[Part]:
    """A part of each letter that is of solid wood."""
    by_letter = {p.letter: p for p in reversed(piece.parts) if p.stock.kind == "wood"}
    return sorted(by_letter.values(), key=lambda p: (len(p.letter), p.letter))


def sizes_then(result: Result) -> dict[str, object] | None:
    """Sizes of the solid parts [mm] at the time that was asked for; None when none was."""
    then, piece = result.then, result.piece
    if then is None or piece is None:
        return None
    now = piece.moisture.now
    sizes = {p.letter: [round(v, 3) for v in grown(p, then.percent, now)] for p in _solid(piece)}
    return {"time": then.time.value, "moisture": round(then.percent, 2), "cut_at": now, "sizes": sizes}


def sizes_table(piece: Piece, then: Then) -> str:
    """Width and thickness of the solid parts as cut and at a time of the year."""
    now, printer = piece.moisture.now, Printer("mm" if piece.units == "mm" else "in", piece.step)
    rows = []
    for p in _solid(piece):
        _, width, thickness = grown(p, then.percent, now)
        rows.append(
            [
                p.letter,
                p.name,
                printer.text(p.size[1]),
                told(piece.units, width - p.size[1], "mm"),
                printer.text(p.size[2]),
                told(piece.units, thickness - p.size[2], "mm"),
            ]
        )
    head = ["part", "", "width as cut", "changes by", "thickness", "changes by"]
    said = f"{then.words} the wood is at {then.percent:.3g} %, cut at {now:.3g} %"
    return said[0].upper() + said[1:] + "\n\n" + table(head, rows, right=(2, 3, 4, 5))


def passed_table(piece: Piece, passed: Sequence[Margin]) -> str:
    """What keeps its limit: figure, limit, and how much of the limit is used up."""
    names = {p.id: f"{p.name} {p.letter}" for p in piece.parts}
    rows = []
    for m in passed:
        limit = told(piece.units, m.limit, m.unit)
        used = f"{m.used:.0%}" if m.used is not None else ""
        parts = ", ".join(names.get(id, id.replace(".", " ")) for id in m.parts)
        value = told(piece.units, m.value, m.unit)
        rows.append([m.check, parts, m.what, value, f"{'at least' if m.least else 'at most'} {limit}", used])
    head = ["check", "parts", "what", "found", "limit", "used"]
    return f"{len(passed)} figures within their limits\n\n" + table(head, rows, right=(3, 5))


def looked_table(looked: Sequence[Looked]) -> str:
    """Checks without a figure that found nothing, and how many places they looked at."""
    rows = [[k.check, f"nothing found; {k.count} {k.what}"] for k in looked]
    return table(["check", "looked at"], rows)


def show_findings(findings: Sequence[Finding], passed: Sequence[Margin] = ()) -> None:
    """Findings as text, each after a blank line; the standing caution, and their count at the end.

    Args:
        findings: all of them.
        passed: what else was printed, for the caution.
    """
    for f in findings:
        head, _, rest = f.text().partition("\n")
        typer.echo(typer.style(head, fg=COLOURS[f.severity], bold=f.severity is Severity.ERROR))
        if rest:
            typer.echo(rest)
        typer.echo()
    said = caution([*(f.code for f in findings), *(m.check for m in passed)])
    if said:
        typer.echo(said + "\n")
    typer.echo(tally(findings))


def tally(findings: Sequence[Finding]) -> str:
    """How many of each: `2 errors, 1 note`."""
    counts = [(s, sum(1 for f in findings if f.severity is s)) for s in Severity]
    words = [f"{n} {s.value}{'' if n == 1 else 's'}" for s, n in counts if n]
    return ", ".join(words) if words else "nothing found: no error, no warning, no note"


def table(head: Sequence[str], rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> str:
    """Rows in columns; columns named in `right` are set to the right."""
    widths = [max(len(str(r[i])) for r in [head, *rows]) for i in range(len(head))]

    def line(cells: Sequence[str]) -> str:
        out = [
            str(c).rjust(w) if i in right else str(c).ljust(w)
            for i, (c, w) in enumerate(zip(cells, widths, strict=True))
        ]
        return "  ".join(out).rstrip()

    return "\n".join([line(head), line(["-" * w for w in widths]), *(line(r) for r in rows)])


def cut_list(piece: Piece) -> str:
    """The cut list: one row a letter, finished sizes."""
    p = Printer("mm" if piece.units == "mm" else "in", piece.step)
    kinds: dict[str, list[Part]] = {}
    for part in piece.parts:
        kinds.setdefault(part.letter, []).append(part)
    rows = []
    for letter, same in kinds.items():
        part = same[0]
        note = f"mirror of {part.mirror_of}" if part.mirror_of else ""
        rows.append([letter, part.name, str(len(same)), *(p.size(s) for s in part.size), part.stock.id, note])
    head = ["", "part", "count", f"length ({piece.units})", "width", "thickness", "stock", ""]
    return table(head, rows, right=(2, 3, 4, 5))


def saved(found: Savings, path: str) -> str:
    """What a little would save: one row a size."""
    p = Printer(found.units, found.step)
    if not found.found:
        return f"no size of `{path}` in this range saves a board or a sheet ({found.tried} tried)"
    rows = []
    for s in found.found:
        lots = (
            "; ".join(f"{title}: {before} → {after}" for title, before, after in s.lots) or "smaller boards"
        )
        area = f"{s.area / 0.3048**2:.1f} ft²" if found.units == "in" else f"{s.area:.2f} m²"
        sign = "+" if s.change > 0 else "-"
        state = (
            "can be built" if not s.errors and not s.worse else f"{s.errors} errors, {s.worse} more findings"
        )
        rows.append([p.size(s.size), f"{sign}{p.size(abs(s.change))}", lots, area, state])
    head = [f"{path} ({found.units})", "change", "boards or sheets", "less", "checked again"]
    note = (
        f"now {p.text(found.present)}; {found.tried} sizes tried, those shown laid out and checked as a whole"
    )
    return f"{table(head, rows, right=(0, 1, 3))}\n{note}"


def rough_list(lines: Sequence[RoughLine], letter: str = "") -> str:
    """Rough sizes with their sums: one row a letter, and a row on strips and blanks under it."""
    rows = []
    for r in lines:
        if letter and r.letter != letter:
            continue
        rows.append([r.letter, r.name, str(r.count), r.length, r.width, r.thickness, r.lumber])
        rows += [["", f"  {more}", "", "", "", "", ""] for more in (r.strips, r.note) if more]
    short = [r for r in rows if not r[1].startswith("  ")]
    if not short:
        return f"no wood part has the letter {letter}" if letter else "no part is of wood"
    head = ["", "part", "count", "length", "width", "thickness", "from"]
    widths = [max(len(r[i]) for r in [head, *short]) for i in range(len(head))]

    def line(cells: Sequence[str]) -> str:
        if cells[1].startswith("  "):
            return " " * widths[0] + cells[1]
        return "  ".join(c.ljust(w) for c, w in zip(cells, widths, strict=True)).rstrip()

    return "\n".join([line(head), line(["-" * w for w in widths]), *(line(r) for r in rows)])


def part_ids(piece: Piece) -> str:
    """Every part by the name that sums and joints of the file use."""
    p = Printer("mm" if piece.units == "mm" else "in", piece.step)
    rows = [[part.id, part.letter, part.name, *(p.size(s) for s in part.size)] for part in piece.parts]
    return table(
        ["name in the file", "", "part", f"length ({piece.units})", "width", "thickness"],
        rows,
        right=(3, 4, 5),
    )


def explanation(piece: Piece, only: str = "") -> str:
    """Every size with the rule or the sum that gave it."""
    p = Printer("mm" if piece.units == "mm" else "in", piece.step)
    rows = []
    for r in piece.reasons:
        if only and not r.path.startswith(only):
            continue
        why = " ".join(s for s in (r.sum, f"({r.rule})" if r.rule else "") if s)
        rows.append([r.path, r.word or p.text(r.value), why, f"file: {r.source}" if r.given else r.source])
    return table(["size", "value", "how it came about", "from"], rows, right=(1,))
