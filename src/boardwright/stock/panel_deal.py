"""Strips of divided boards dealt out to panels, their widths settled; those of one board to one panel if it can be."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from boardwright.stock.master import solve_model
from boardwright.stock.panel_columns import Division
from boardwright.stock.panel_question import Grid, PanelQuestion

WORK = 0.15
"""Longest dealing out, in the solver's deterministic seconds."""

Piece = tuple[int, int]
"""Which of what is wanted, and which copy of it, from 0."""


@dataclass(frozen=True, slots=True)
class DealtStrip:
    """A strip as it is ripped: its width [mm], and its pieces from the near end."""

    width: float
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Dealt:
    """A board as it is cut: which board, and strips section by section."""

    board: int
    sections: tuple[tuple[DealtStrip, ...], ...]


@dataclass(slots=True)
class _Open:
    """A piece of a panel on a strip, before it is known whose it is."""

    board: int
    spot: tuple[int, int, int]
    low: int
    copy: int | None = None
    width: int = 0


def deal(
    question: PanelQuestion,
    grid: Grid,
    chosen: Sequence[Division],
    stop: Callable[[], bool],
    gathered: bool = False,
) -> tuple[tuple[Dealt, ...], list[int]]:
    """Give every strip to a panel and settle its width.

    Args:
        question: the question.
        grid: the same in whole steps.
        chosen: divided boards.
        stop: ends the search when it says True.
        gathered: strips of one board go to one panel as far as can be; else any dealing will do.

    Returns:
        The boards as they are cut, and what is short of each kind (steps of width, or copies); all 0 when nothing is.
    """
    rooms = _rooms(grid, chosen)
    pieces: dict[int, list[_Open]] = {k: [] for k, panel in enumerate(grid.kind) if panel}
    for b, division in enumerate(chosen):
        for n, section in enumerate(division.sections):
            for s, (_, kinds) in enumerate(section):
                low, _ = _limits(grid, kinds, grid.rooms[division.board][1])
                for kind in kinds:
                    if grid.kind[kind]:
                        pieces[kind].append(_Open(b, (b, n, s), low))
    short = [0] * len(grid.kind)
    for kind, own in pieces.items():
        short[kind] = _deal_kind(question, grid, kind, own, rooms, stop, gathered)
    return _cut(question, grid, chosen, pieces, short), short


def _rooms(grid: Grid, chosen: Sequence[Division]) -> dict[tuple[int, int, int], int]:
    """Room of each strip of a panel when those of a section share what is left in it, a saw cut on it (steps)."""
    rooms = {}
    for b, division in enumerate(chosen):
        for n, section in enumerate(division.sections):
            room = grid.rooms[division.board][1]
            limits = [_limits(grid, kinds, room) for _, kinds in section]
            wide = [low for low, _ in limits]
            spare = room - sum(wide)
            for s in sorted(range(len(section)), key=lambda s: limits[s][1] - limits[s][0]):
                if any(grid.kind[k] for k in section[s][1]):
                    more = min(limits[s][1], max(wide[s], section[s][0])) - wide[s]
                    wide[s] += max(0, min(more, spare))
                    spare -= max(0, min(more, spare))
            for s, (low, high) in enumerate(limits):
                if any(grid.kind[k] for k in section[s][1]) and spare > 0:
                    more = min(high - wide[s], spare)
                    wide[s] += more
                    spare -= more
                rooms[b, n, s] = max(low, wide[s])
    return rooms


def _deal_kind(
    question: PanelQuestion,
    grid: Grid,
    kind: int,
    own: Sequence[_Open],
    rooms: dict[tuple[int, int, int], int],
    stop: Callable[[], bool],
    gathered: bool,
) -> int:
    """Deal out the strips of one kind of panel; strips of a section may take room from each other."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    copies, each = question.wanted[kind].count, int(grid.each[kind])
    most = int(grid.most[kind] - grid.cut)
    spots = {p.spot: p for p in own}
    wide = {spot: model.new_int_var(p.low, max(p.low, int(grid.most[kind])), "") for spot, p in spots.items()}
    for b, n in dict.fromkeys((b, n) for b, n, _ in spots):
        mine = [spot for spot in spots if spot[:2] == (b, n)]
        model.add(sum(wide[m] for m in mine) <= sum(rooms[m] for m in mine))
    taken = [[model.new_bool_var("") for _ in range(copies)] for _ in own]
    share = [[model.new_int_var(0, most, "") for _ in range(copies)] for _ in own]
    for p, piece in enumerate(own):
        for c in range(copies):
            model.add(share[p][c] <= most * taken[p][c])
            model.add(share[p][c] <= wide[piece.spot] - grid.cut)
        model.add_at_most_one(taken[p])
    gaps = [model.new_int_var(0, each, "") for _ in range(copies)]
    terms: list[Any] = [100_000 * gap if gathered else gap for gap in gaps]
    for c in range(copies):
        model.add(sum(share[p][c] for p in range(len(own))) + gaps[c] >= each)
        for b in dict.fromkeys(p.board for p in own) if gathered else ():
            there = model.new_bool_var("")
            for p, piece in enumerate(own):
                if piece.board == b:
                    model.add_implication(taken[p][c], there)
            terms.append(100 * there)
        if gathered:
            terms += [taken[p][c] for p in range(len(own))]
    model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_deterministic_time = WORK
    if solve_model(solver, model, stop) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return each * copies
    for p, piece in enumerate(own):
        piece.copy = next((c for c in range(copies) if solver.value(taken[p][c])), None)
        piece.width = solver.value(share[p][piece.copy]) + grid.cut if piece.copy is not None else 0
    return int(sum(solver.value(gap) for gap in gaps))


def cost_of(question: PanelQuestion, dealt: Dealt) -> float:
    """What is paid for a board as it is cut."""
    return question.paid(dealt.board, used_of(question, dealt))


def used_of(question: PanelQuestion, dealt: Dealt) -> float:
    """How much of its length is cut off a board [mm]."""
    used = 0.0
    for section in dealt.sections:
        lengths = []
        for strip in section:
            own = [question.wanted[k].length for k, _ in strip.pieces]
            lengths.append(sum(own) + question.kerf * (len(own) - 1))
        used += max(lengths) + question.kerf
    return used - question.kerf


def _limits(grid: Grid, kinds: Sequence[int], room: int) -> tuple[int, int]:
    """Least and greatest width of a strip with these pieces, a saw cut on it (steps)."""
    low = max(int(grid.least[k] if grid.kind[k] else grid.claims[k]) for k in kinds)
    high = min([room, *(int(grid.most[k]) for k in kinds if grid.kind[k])])
    return low, max(low, high)


def _evened(strips: Sequence[DealtStrip], step: float, least: float) -> tuple[DealtStrip, ...]:
    """Strips of a section that go to the same panel side by side, made equally wide within a step."""
    out = list(strips)
    for pieces in dict.fromkeys(s.pieces for s in strips if len(s.pieces) == 1):
        same = [n for n, s in enumerate(out) if s.pieces == pieces]
        steps = round(sum(out[n].width for n in same) / step)
        share, more = divmod(steps, len(same))
        if len(same) > 1 and share * step >= least:
            for k, n in enumerate(same):
                out[n] = DealtStrip((share + (k < more)) * step, pieces)
    return tuple(out)


def _cut(
    question: PanelQuestion,
    grid: Grid,
    chosen: Sequence[Division],
    pieces: dict[int, list[_Open]],
    short: list[int],
) -> tuple[Dealt, ...]:
    """The boards with strips as narrow as their panels let them be; pieces that nobody needs are left out."""
    queues = {kind: iter(own) for kind, own in pieces.items()}
    given = {kind: 0 for kind, panel in enumerate(grid.kind) if not panel}
    out = []
    for division in chosen:
        sections = []
        for section in division.sections:
            strips = []
            for _, kinds in section:
                found: list[Piece] = []
                needed = [0]
                for kind in kinds:
                    if grid.kind[kind]:
                        piece = next(queues[kind])
                        if piece.copy is not None:
                            found.append((kind, piece.copy))
                            needed.append(max(int(grid.least[kind]), piece.width))
                    elif given[kind] < question.wanted[kind].count:
                        found.append((kind, given[kind]))
                        given[kind] += 1
                        needed.append(int(grid.claims[kind]))
                if found:
                    strips.append(DealtStrip((max(needed) - grid.kerf) * question.step, tuple(found)))
            if strips:
                sections.append(_evened(strips, question.step, question.least))
        if sections:
            out.append(Dealt(division.board, tuple(sections)))
    for kind, n in given.items():
        short[kind] = question.wanted[kind].count - n
    return tuple(out)
