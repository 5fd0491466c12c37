"""Writes `docs/joints.md` and its pictures: every joint with its example, its rules and its numbers.

python tools/joint_docs.py
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import get_args

sys.path.insert(0, str(Path(__file__).resolve().parent))

import design_docs
from boardwright.core.lengths import Printer
from boardwright.core.poses import Vec, add, scaled
from boardwright.design.schema import JointKeys
from boardwright.drawings.apart import apart, beside
from boardwright.drawings.fastener_parts import fastener_parts
from boardwright.drawings.records import Drawing
from boardwright.drawings.svg import to_svg
from boardwright.formulas.movement import change_of_size
from boardwright.piece.joints.kinds import KINDS
from boardwright.piece.records import Joint, Part, Piece, Reason
from boardwright.pipeline import check_text
from boardwright.plan.steps import build_steps
from boardwright.plan.words import work_lines
from boardwright.solids.assembly import assembly_of
from boardwright.solids.exact import PICTORIAL, view_from
from joint_examples import FASTENINGS, JOINTS, Entry, Example

ROOT = Path(__file__).resolve().parent.parent
PAGE = ROOT / "docs" / "joints.md"
PICTURES = ROOT / "docs" / "pictures" / "joints"
INTRO = """# Joints

Every joint and every fastening that a design can name: a small example drawn apart and together, the sizes that the
joint takes when the file gives none, and what is cut. In the pictures the first part is the one that receives.

Sizes are in inches; every example is of black cherry 3/4 in thick, `cherry: {wood: cherry_black, thickness: 3/4}`. All
keys of a joint stand in [design-file.md](design-file.md). How far glued parts would part over the year is worked out
by the Wood Handbook, FPL-GTR-190, eq. 13-2; more than 1 mm (0.039 in) is a finding.

This page and its pictures are drawn by `tools/joint_docs.py` from the code; a test compares them.
"""
ELSEWHERE = ("the dado of a drawer back", "where a part between two spaces")
"""Starts of what holds for forms, not for a joint of two loose parts."""
KNOWN = {w for entry in JOINTS.values() for w in entry.words}
"""Every name that the table of keys has for a joint or a fastening."""
AXES = ("from left to right", "from front to back", "up and down")
WIDTH, HEIGHT = 150.0, 75.0
"""Of a picture [mm]."""
BELOW = view_from("from below", (0.55, -1.0, -0.5))
PRINTER = Printer("in", 25.4 / 32)


def set_out(example: Example) -> Piece:
    """The piece of an example.

    Raises:
        ValueError: it has errors.
    """
    result = check_text(example.text)
    if result.piece is None or not result.ok:
        raise ValueError("\n".join([example.text, *(f.text() for f in result.findings)]))
    return result.piece


def letters_of(piece: Piece) -> dict[str, str]:
    """Part id → letter."""
    return {p.id: p.letter for p in piece.parts}


def drawing_of(piece: Piece, name: str, example: Example) -> Drawing:
    """The parts apart, their fasteners between them, and beside them the joint together."""
    shifts = _shifts(piece)
    fasteners = [p for f in piece.fasteners for p in fastener_parts(f)]
    driven = {p.id: f for f in piece.fasteners for p in fastener_parts(f)}
    longest = max((f.length for f in piece.fasteners), default=0.0)
    held = {i: shifts.get(f.into, (0.0, 0.0, 0.0)) for i, f in driven.items()}
    for i, f in driven.items():
        other = shifts.get(f.held, (0.0, 0.0, 0.0))
        held[i] = scaled(add(held[i], other), 0.5)
        if f.kind in ("screw", "pocket screw", "plug", "peg"):
            held[i] = add(
                other, scaled(f.direction, -(2.1 * longest if f.kind == "plug" else 1.3 * f.length))
            )
    view = BELOW if example.below else PICTORIAL
    parts = [*piece.parts, *fasteners, *beside([*piece.parts], shifts, view)]
    first = f"parts.{example.first}"
    faint = {p.id for p in parts if p.id.removesuffix(", in place") == first} | {p.id for p in fasteners}
    title = name.replace("_", " ")
    moves = shifts | held
    return apart(
        parts, moves, faint, piece.joints, id=name, title=title, width=WIDTH, height=HEIGHT, view=view
    )


def _shifts(piece: Piece) -> dict[str, Vec]:
    """How far each part is drawn off, by the order in which the parts go together."""
    reach = min(max(p.size) for p in piece.parts)
    pinned = max((f.length for f in piece.fasteners if f.kind not in ("screw", "plug", "peg")), default=0.0)
    shifts: dict[str, Vec] = {}
    for step in assembly_of(piece).order:
        far = max(step.travel * 1.25, 0.3 * reach, 2.4 * pinned)
        for id in step.adds:
            shifts[id] = add(shifts.get(id, (0.0, 0.0, 0.0)), scaled(step.direction, -far))
    return shifts


def movement(piece: Piece) -> str:
    """Whether the joint lets the wood move, and how much it holds."""
    joint, parts = piece.joints[0], {p.id: p for p in piece.parts}
    one, two = parts[joint.first], parts[joint.second]
    if joint.floats:
        ways = " and ".join(AXES[i] for i in joint.floats)
        return f"The {two.name} is free to move {ways} in the {one.name}: the joint lets the wood move."
    if not joint.glued:
        return "No glue: the joint lets the wood move as far as what holds it does."
    apart_by, held = _held(joint, one, two, piece)
    if apart_by < 0.05:
        return "Glue holds it, and the two parts move together."
    m = piece.moisture
    return (
        f"Glue holds it over {PRINTER.auxiliary(held)} in across the grain of one of the two: from {m.driest:g} to "
        f"{m.wettest:g} % moisture they would part by {apart_by / 25.4:.3f} in."
    )


def _held(joint: Joint, one: Part, two: Part, piece: Piece) -> tuple[float, float]:
    """The largest difference of movement over a glue face, and how long that face is [mm]."""
    m, best = piece.moisture, (0.0, 0.0)
    for contact in joint.contacts:
        for i in range(3):
            span = contact.box.size(i)
            rates = [_rate(p, i) for p in (one, two)]
            if not contact.glued or min(rates) > 0.0005:
                continue
            changes = [change_of_size(span, r, m.driest, m.wettest) for r in rates]
            best = max(best, (abs(changes[0] - changes[1]), span))
    return best


def _rate(part: Part, axis: int) -> float:
    """Change per 1 % of moisture along an axis of the piece [1/%]."""
    rates = (part.stock.lengthwise, part.stock.across, part.stock.through)
    return sum(
        r * way[axis] ** 2 for r, way in zip(rates, (part.pose.x, part.pose.y, part.pose.z), strict=True)
    )


def _rules(piece: Piece) -> list[str]:
    """The sizes that the joint settles, and why."""
    rows = [r for r in piece.reasons if r.path.startswith("joints[0].") and not r.given and not r.word]
    if not rows:
        return []
    return [
        "| size | in the example | rule | source |",
        "|---|---|---|---|",
        *(f"| {_name(r)} | {PRINTER.size(r.value)} | {_rule(r)} | {r.source} |" for r in rows),
        "",
    ]


def _name(reason: Reason) -> str:
    return reason.path.split(".", 1)[1].replace("_", " ").replace(".", ", ")


def _rule(reason: Reason) -> str:
    return f"{reason.rule}: {reason.sum}" if reason.sum else reason.rule


def _keys(entry: Entry) -> list[str]:
    """What its keys mean, and what is taken when they are left out."""
    fields = {f.alias or name: f for name, f in JointKeys.model_fields.items()}
    rows = []
    for key in entry.keys:
        if key in fields:
            texts = (fields[key].description or "", design_docs.left_out(fields[key]))
            meaning, taken = (_own(design_docs._filled(t), entry.words) for t in texts)
            rows.append(f"| `{key}` | {meaning} | {taken} |")
    return ["| key | meaning | when left out |", "|---|---|---|", *rows, ""] if rows else []


def _own(text: str, words: Sequence[str]) -> str:
    """The parts of a text that belong to a joint: those that name it, and those that name no joint at all."""
    own = [p for p in text.split("; ") if (heads := _heads(p)) == set() or heads & set(words)]
    return "; ".join(own) or text


def _heads(piece: str) -> set[str]:
    """The joints that a part of a text names before its colon, or that it is known to be about."""
    if any(piece.startswith(start) for start in ELSEWHERE):
        return {piece}
    heads = re.split(r",| and ", piece.split(":")[0]) if ":" in piece else []
    return {h.strip().lower() for h in heads} & KNOWN


def _section(name: str, said: str, example: Example) -> Iterator[str]:
    """One example: picture, file, numbers, how it goes together, movement."""
    piece = set_out(example)
    letters = letters_of(piece)
    if example.title:
        yield f"### {example.title}\n"
        said = f"{said}, {example.title[0].lower()}{example.title[1:]}"
    if example.note:
        yield f"{example.note}\n"
    yield f"![{said}: the parts apart, and together](pictures/joints/{name}.svg)\n"
    yield f"```yaml\nparts:\n{example.parts}joints:{example.text.split('joints:')[1]}```\n"
    yield from _rules(piece)
    for part in _one_of_each(piece.parts):
        lines = work_lines(part, PRINTER, letters)
        if lines:
            yield f"{part.letter}, {part.name}:\n"
            yield from (f"- {line}" for line in lines)
            yield ""
    steps, _ = build_steps(piece, PRINTER, letters)
    steps_said = " ".join(line for step in steps for line in step.lines)
    yield f"Putting it together: {steps_said}\n"
    yield f"{movement(piece)}\n"


def _one_of_each(parts: Sequence[Part]) -> list[Part]:
    return list({p.letter: p for p in reversed(parts)}.values())[::-1]


def examples() -> dict[str, Example]:
    """Every example by the name of its picture."""
    out: dict[str, Example] = {}
    for kind, entry in JOINTS.items():
        if kind in KINDS:
            for n, example in enumerate(entry.examples):
                out[_picture(kind, n)] = example
    known = _fastenings()
    return out | {name: example for name, (_, example) in FASTENINGS.items() if name in known}


def _picture(kind: str, n: int) -> str:
    return kind if n == 0 else f"{kind}-{n + 1}"


def _fastenings() -> list[str]:
    """What `fasten` may name."""
    found: list[str] = []
    for option in get_args(JointKeys.model_fields["fasten"].annotation):
        found += [str(a) for a in get_args(option)]
    return [f for f in found if f != "none"]


def page_text() -> str:
    """The page."""
    out = [INTRO]
    for kind in KINDS:
        entry = JOINTS[kind]
        trade = KINDS[kind].trade
        out.append(f"## {trade[0].upper()}{trade[1:]}\n")
        out.append(f"`kind: {kind}`. It needs {KINDS[kind].needs}.\n")
        out.append(f"{entry.use}\n")
        out += _keys(entry)
        for n, example in enumerate(entry.examples):
            out += _section(_picture(kind, n), f"{trade[0].upper()}{trade[1:]}", example)
    out.append("## What holds a joint beside its glue\n")
    for name in _fastenings():
        use, example = FASTENINGS[name]
        out.append(f"### {name.replace('_', ' ').capitalize()}\n")
        out.append(f"`fasten: {name}`. {use}\n")
        out += _section(name, name.replace("_", " ").capitalize(), example)
    return "\n".join(out).rstrip() + "\n"


def pictures() -> dict[str, str]:
    """Every picture by its name, as SVG."""
    return {name: to_svg(drawing_of(set_out(example), name, example)) for name, example in examples().items()}


def main() -> None:
    """Write the page and the pictures; pictures of examples that are gone are removed."""
    drawn = pictures()
    PICTURES.mkdir(parents=True, exist_ok=True)
    for old in PICTURES.glob("*.svg"):
        if old.stem not in drawn:
            old.unlink()
    for name, svg in drawn.items():
        (PICTURES / f"{name}.svg").write_text(svg, encoding="utf-8")
    PAGE.write_text(page_text(), encoding="utf-8")


if __name__ == "__main__":
    main()
