"""Sets out many random designs and looks for what must never happen.

python tools/random_designs.py --count 200 --seed 1 [--units in|mm] [--stock] [--verbose] [--keep DIR]

A design with an error is refused, and that is well; what must not be: a traceback, two parts in one place or
a joint that does not close, a bad layout, a sum that does not hold.
"""

from __future__ import annotations

import argparse
import sys
import time
import traceback
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass, field
from functools import lru_cache
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent))

from boardwright.checks import assembly, doors, drawers, extension_bars, fit
from boardwright.checks.context import context
from boardwright.core.arithmetic import Resolver
from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer, read_step
from boardwright.core.poses import Vec
from boardwright.design.load import load_text
from boardwright.piece.cuts import Cut, Groove, Hole, Notch, Rabbet
from boardwright.piece.records import Part, Piece
from boardwright.piece.run import set_out
from boardwright.pipeline import Result, check_text
from boardwright.solids.assembly import assembly_of
from boardwright.solids.cells import own_cells
from boardwright.solids.dry_fit import dry_fit
from boardwright.solids.frames import Form
from boardwright.solids.mesh import shape
from boardwright.solids.taken import is_planar
from boardwright.stock.records import BoardLayout
from boardwright.stock.records import Result as StockRun
from boardwright.stock.run import run_stock, shop_choices
from boardwright.tables.load import load_tables
from design_dice import Mapping, design, text

OVERLAPS = ("fit.collision", "fit.open-joint", "drawer.hits", "door.hits")
"""Findings that a construction must not earn by itself: it is made so that its parts fit, or is refused."""
GAPS = ("fit.unplanned-gap",)
"""Nor these."""
FITS = (
    fit.collisions,
    fit.open_joints,
    fit.unplanned_gaps,
    assembly.trapped,
    drawers.travel,
    doors.swing,
    extension_bars.way,
)
"""The checks that every design goes through."""
AGAIN = 10
"""Every so many designs are set out a second time with all checks, and one step wider."""
FLAKE = 1e-3
"""A piece of a mesh smaller than this is noise [mm3]."""
NEAR = 1e-6
"""Arithmetic noise in a sum of sizes [mm]."""


@dataclass(slots=True)
class Tally:
    """What came of many designs."""

    designs: int = 0
    pieces: int = 0
    refused: int = 0
    codes: Counter[str] = field(default_factory=Counter)
    trapped: int = 0
    tracebacks: list[str] = field(default_factory=list)
    overlaps: list[str] = field(default_factory=list)
    gaps: list[str] = field(default_factory=list)
    layouts: list[str] = field(default_factory=list)
    sums: list[str] = field(default_factory=list)

    @property
    def lines(self) -> tuple[str, ...]:
        """Everything that must not be, one line each, the design's name first."""
        return (*self.tracebacks, *self.overlaps, *self.gaps, *self.layouts, *self.sums)

    @property
    def bad(self) -> set[str]:
        """Names of the designs with something that must not be."""
        return {line.split(":", 1)[0] for line in self.lines}


def try_design(
    keys: Mapping, name: str, tally: Tally, again: bool = True, stock: bool = False
) -> Result | None:
    """Set out one design and add what is wrong to the tally.

    Args:
        keys: the design. name: for lines of the tally. tally: grows.
        again: also set it out a second time, and one step wider. stock: also lay it out on boards and sheets.
    """
    tally.designs += 1
    try:
        result, refused = fitted(text(keys), name)
        if again:
            whole = check_text(text(keys), name)
            if repr(whole.piece) != repr(result.piece):
                tally.sums.append(f"{name}: a second run gives other numbers")
            check_text(text(_wider(keys)), name)
        laid = _lay_out(result) if stock and result.piece is not None else None
    except Exception:
        tally.tracebacks.append(f"{name}: {traceback.format_exc(limit=-3)}")
        return None
    tally.codes.update(f"{f.severity.value} {f.code}" for f in result.findings)
    tally.refused += bool(refused)
    tally.trapped += any(f.code == "assembly.trapped" for f in result.findings)
    if result.piece is None:
        return result
    tally.pieces += 1
    tally.overlaps += [f"{name}: {_short(f)}" for f in _unsaid(result, refused, OVERLAPS)]
    tally.gaps += [f"{name}: {_short(f)}" for f in _unsaid(result, refused, GAPS)]
    tally.sums += [f"{name}: {line}" for line in faults(result.piece)]
    if laid is not None:
        tally.codes.update(f"{f.severity.value} {f.code}" for f in laid.findings)
        tally.layouts += [f"{name}: {line}" for line in _layout_faults(result.piece, laid)]
    if result.ok:
        tally.sums += [f"{name}: {line}" for line in _unjoined(result.piece)]
        tally.sums += [f"{name}: {line}" for line in _unbuilt(result.piece)]
    return result


def fitted(source: str, name: str) -> tuple[Result, list[Finding]]:
    """A design set out and fitted dry, without what it carries; and the errors by which it was refused before that.

    Args:
        source: the text of a design.
        name: its name.
    """
    tables, _ = load_tables(())
    design, found = load_text(source, name)
    if design is None:
        return Result(None, None, tables, tuple(found)), list(found)
    piece, more = set_out(design, tables)
    found = [*found, *more]
    refused = [f for f in found if f.severity is Severity.ERROR]
    if piece is not None:
        c = context(piece, dry_fit(piece), tables)
        found += [f for check in FITS for f in check(c)]
    return Result(design, piece, tables, tuple(found)), refused


def _wider(keys: Mapping) -> Mapping:
    """The same design, one step wider."""
    step = read_step(keys["work_to"], keys["units"])
    for form in ("case", "table", "box"):
        if form in keys:
            return {**keys, form: {**keys[form], "width": f"{keys[form]['width']} + {step!r} mm"}}
    first = keys["parts"]["first"]
    wider = {**first, "width": f"{first['width']} + {step!r} mm"}
    return {**keys, "parts": {**keys["parts"], "first": wider}}


def _unsaid(result: Result, refused: Sequence[Finding], codes: tuple[str, ...]) -> list[Finding]:
    """Findings of these codes in a design, but those about a part or a line that was refused by name."""
    parts = {id for f in refused for id in f.parts}
    paths = {f.place.path for f in refused}
    found = [f for f in result.findings if f.code in codes]
    return [f for f in found if not parts & set(f.parts) and not any(_about(f.place.path, p) for p in paths)]


def _about(path: str, refused: str) -> bool:
    """Whether a place is where a file was refused, or is the door whose hinges were."""
    return refused in (path, f"{path}.hinges")


def _short(f: Finding) -> str:
    return f"{f.code} {f.message}; {f.found} [{', '.join(f.parts)}]"


def faults(piece: Piece) -> Iterator[str]:
    """Sums and sizes of a piece that do not hold, one line each."""
    printer = Printer("mm" if piece.units == "mm" else "in", piece.step)
    for chain in piece.chains:
        total = sum(size for _, size in chain.members)
        if abs(total - chain.whole[1]) > NEAR:
            yield f"chain {chain.name}: members {total:.6f}, whole {chain.whole[1]:.6f} mm"
    for part in piece.parts:
        for axis, word in enumerate(("length", "width")):
            if not printer.on_step(part.size[axis]):
                yield f"part {part.id}: its {word} of {part.size[axis]:.6f} mm is not on the step"
        if min(part.size) <= 0:
            yield f"part {part.id}: no size {part.size}"
            continue
        yield from (f"part {part.id}: {line}" for cut in part.cuts for line in _outside(part, cut))
        yield from (f"part {part.id}: {line}" for line in _volumes(part.size, part.cuts))
    yield from _letters(piece)


def _outside(part: Part, cut: Cut) -> Iterator[str]:
    """Numbers of a cut that lie outside the blank."""
    spans: list[tuple[float, float, float]] = []
    if isinstance(cut, Groove):
        third = 3 - cut.side.axis - cut.along
        spans = [
            (cut.at, cut.at + cut.width, part.size[third]),
            (cut.start, cut.end, part.size[cut.along]),
            (0.0, cut.depth, part.size[cut.side.axis]),
        ]
    elif isinstance(cut, Rabbet):
        third = 3 - cut.side.axis - cut.edge.axis
        spans = [
            (0.0, cut.width, part.size[cut.edge.axis]),
            (cut.start, cut.end, part.size[third]),
            (0.0, cut.depth, part.size[cut.side.axis]),
        ]
    elif isinstance(cut, Notch):
        spans = [(0.0, cut.length, part.size[0]), (0.0, cut.width, part.size[1])]
    elif isinstance(cut, Hole):
        others = [i for i in range(3) if i != cut.side.axis]
        r = NEAR if cut.purpose == "hardware" or cut.lean else cut.diameter / 2
        spans = [(a - r, a + r, part.size[i]) for a, i in zip(cut.at, others, strict=True)]
        spans.append((0.0, cut.depth, part.size[cut.side.axis]))
    if any(low < -NEAR or high > size + NEAR or high - low <= NEAR for low, high, size in spans):
        yield f"a cut outside the blank {tuple(round(s, 3) for s in part.size)}: {cut}"


@lru_cache(maxsize=4096)
def _volumes(size: Vec, cuts: tuple[Cut, ...]) -> tuple[str, ...]:
    """Blank less cuts, as boxes and as a mesh."""
    lines = []
    if sum(abs(piece.volume()) > FLAKE for piece in shape(size, cuts).decompose()) != 1:
        lines.append("its cuts take it apart")
    cuts = tuple(c for c in cuts if not isinstance(c, Hole))
    if is_planar(cuts, size):
        boxes = own_cells(Form(size, cuts))
        one = float(np.prod(boxes[:, 1] - boxes[:, 0], axis=1).sum())
        two = float(shape(size, cuts).volume())
        if abs(one - two) > 1e-6 * max(one, 1.0) or one <= 0:
            lines.append(f"volume {one:.3f} as boxes, {two:.3f} as a mesh")
    return tuple(lines)


def _letters(piece: Piece) -> Iterator[str]:
    """Parts of one letter must be the same solid; a mirror image has a letter of its own."""
    first: dict[str, Part] = {}
    for part in piece.parts:
        other = first.setdefault(part.letter, part)
        if part.mirror_of == part.letter:
            yield f"part {part.id}: {part.letter} mirrors itself"
        if other is part:
            continue
        if (
            other.stock != part.stock
            or max(abs(p - q) for p, q in zip(other.size, part.size, strict=True)) > 1e-3
        ):
            yield f"part {part.id}: not the size of {other.id}, with the same letter"
        elif not _same_cuts(part, other):
            a, b = shape(other.size, _by_measure(other)), shape(part.size, _by_measure(part))
            if float((a - b).volume()) + float((b - a).volume()) > 1e-3 * part.size[0] * part.size[1]:
                yield f"part {part.id}: not the shape of {other.id}, with the same letter"


def _lay_out(result: Result) -> StockRun:
    """Boards and sheets of a design, as the plan has them."""
    assert result.design is not None
    assert result.piece is not None
    sizes = Resolver(result.design.lengths, result.design.file.units, lambda _: None)
    return run_stock(result.piece, result.tables, shop_choices(result.design, sizes.value))


def _layout_faults(piece: Piece, laid: StockRun) -> Iterator[str]:
    """Layouts looked at again, from its numbers alone: inside, apart by the kerf, nothing left out."""
    yield from (_short(f) for f in laid.findings if f.code == "stock.layout-invalid")
    refused = {id for f in laid.findings if f.severity is Severity.ERROR for id in f.parts}
    placed: Counter[str] = Counter()
    for lot in laid.value.lots:
        for board in lot.layouts:
            placed.update(p.part for p in board.placed)
            yield from (f"{board.id}: {line}" for line in _board_faults(board, lot.kerf))
    for rough in laid.value.rough:
        for id in rough.parts:
            if id not in refused and placed[id] != rough.strips:
                yield f"part {id}: {placed[id]} of {rough.strips} strips are laid out"
    missing = {p.id for p in piece.parts} - {id for r in laid.value.rough for id in r.parts} - refused
    yield from (f"part {id}: no rough size" for id in sorted(missing))


def _board_faults(board: BoardLayout, kerf: float) -> Iterator[str]:
    boxes = []
    for p in board.placed:
        size = (p.width, p.length) if p.turned else (p.length, p.width)
        boxes.append((p.x, p.y, p.x + p.length, p.y + p.width))
        inside = (
            p.x >= board.trim_length - 0.01
            and p.y >= board.trim_width - 0.01
            and boxes[-1][2] <= board.length - board.trim_length + 0.01
            and boxes[-1][3] <= board.width - board.trim_width + 0.01
        )
        if not inside:
            yield f"{p.label} {size} lies outside the board"
    for i, a in enumerate(boxes):
        for b in boxes[:i]:
            if max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3]) < kerf - 0.01:
                yield f"pieces at {a[:2]} and {b[:2]} are nearer than the kerf"


def _same_cuts(one: Part, two: Part) -> bool:
    """The same cuts in some order, whatever they hold, each number within 0.002 mm."""
    first, second = _numbers(one), _numbers(two)
    if [words for words, _ in first] != [words for words, _ in second]:
        return False
    pairs = [(x, y) for (_, a), (_, b) in zip(first, second, strict=True) for x, y in zip(a, b, strict=True)]
    return all(abs(x - y) < 2e-3 for x, y in pairs)


def _by_measure(part: Part) -> tuple[Cut, ...]:
    """The cuts but the holes marked in place through another part: those may differ in one letter."""
    return tuple(c for c in part.cuts if not (isinstance(c, Hole) and c.marked_through))


def _numbers(part: Part) -> list[tuple[str, list[float]]]:
    """The words and the numbers of each cut."""
    out = []
    for cut in _by_measure(part):
        values = [v for k, v in asdict(cut).items() if k not in ("holds", "for_", "marked_through")]
        flat = [x for v in values for x in (v if isinstance(v, tuple) else (v,))]
        words = type(cut).__name__ + " ".join(str(v) for v in flat if not isinstance(v, float))
        out.append((words, [v for v in flat if isinstance(v, float)]))
    return sorted(out, key=lambda c: (c[0], [round(x, 1) for x in c[1]]))


def _unjoined(piece: Piece) -> Iterator[str]:
    """Parts that nothing holds, neither a joint nor a hinge."""
    joined = {id for j in piece.joints for id in (j.first, j.second)}
    hung = {h.group for h in piece.hardware if h.table_key.endswith("_hinge")}
    for part in piece.parts:
        if part.id not in joined and part.group not in hung and len(piece.parts) > 1:
            yield f"part {part.id}: no joint holds it"


def _unbuilt(piece: Piece) -> Iterator[str]:
    """Parts that no step of the assembly puts in their place, in a piece without a finding that says why."""
    assembly = assembly_of(piece)
    if assembly.trapped:
        yield f"trapped without a finding: {', '.join(i for t in assembly.trapped for i in t.parts)}"
    built = {i for s in assembly.order for i in (*s.adds, *s.onto)}
    built |= {i for sub in assembly.subs for copy in sub.copies for i in copy}
    for part in piece.parts:
        if part.id not in built and len(piece.parts) > 1:
            yield f"part {part.id}: no step puts it on"


def main() -> int:
    """Run from the command line."""
    ask = argparse.ArgumentParser(description="set out random designs and look for what must never happen")
    ask.add_argument("--count", type=int, default=200)
    ask.add_argument("--seed", type=int, default=1, help="number of the first design")
    ask.add_argument("--stock", action="store_true", help="lay each piece out on boards and sheets as well")
    ask.add_argument("--units", choices=("in", "mm"))
    ask.add_argument(
        "--verbose", action="store_true", help="print every fault, not only the first ten of a kind"
    )
    ask.add_argument("--keep", type=Path, help="folder for the files of designs with a fault")
    args = ask.parse_args()
    tally = Tally()
    began = time.perf_counter()
    for seed in range(args.seed, args.seed + args.count):
        keys = design(seed, args.units)
        before = len(tally.lines)
        try_design(keys, f"design-{seed}", tally, again=seed % AGAIN == 0, stock=args.stock)
        if args.keep and before != len(tally.lines):
            args.keep.mkdir(parents=True, exist_ok=True)
            (args.keep / f"design-{seed}.yaml").write_text(text(keys), encoding="utf-8")
    report(tally, args.verbose, time.perf_counter() - began)
    return 1 if tally.bad else 0


def report(tally: Tally, verbose: bool, seconds: float) -> None:
    """Print the counts and the faults."""
    for code, count in sorted(tally.codes.items()):
        print(f"{count:6}  {code}")
    kinds = {
        "tracebacks": tally.tracebacks,
        "overlaps": tally.overlaps,
        "unplanned gaps": tally.gaps,
        "bad layouts": tally.layouts,
        "wrong sums": tally.sums,
    }
    for title, lines in kinds.items():
        for line in lines if verbose else lines[:10]:
            print(f"  {title}: {line}")
    print(
        f"{tally.designs} designs, {tally.pieces} pieces, {tally.refused} refused, {tally.trapped} trapped; "
        + ", ".join(f"{len(lines)} {title}" for title, lines in kinds.items())
        + f" in {len(tally.bad)} designs; "
        f"{tally.designs / max(seconds, 1e-9):.1f} designs/s"
    )


if __name__ == "__main__":
    sys.exit(main())
