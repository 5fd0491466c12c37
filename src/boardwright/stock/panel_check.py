"""The check of panels from boards. It knows no solver: it adds up what lies on the boards."""

from __future__ import annotations

from collections import Counter

from boardwright.stock.panel_deal import cost_of
from boardwright.stock.panel_question import PanelQuestion
from boardwright.stock.panels import PanelAnswer

NOISE = 1e-6


def faults(question: PanelQuestion, answer: PanelAnswer) -> list[str]:
    """Faults of an answer: boards overfull or used twice, strips out of limits, panels too narrow, pieces missing.

    Args:
        question: the question.
        answer: the answer.

    Returns:
        One sentence a fault; empty when the answer is sound.
    """
    found: list[str] = []
    used = Counter(d.board for d in answer.boards)
    for n, board in enumerate(question.boards):
        if board.count is not None and used[n] > board.count:
            found.append(f"board {board.id} is used {used[n]} times")
    made: dict[tuple[int, int], float] = {}
    pieces: Counter[tuple[int, int]] = Counter()
    for dealt in answer.boards:
        board = question.boards[dealt.board]
        room = (board.length - 2 * board.trim_length, board.width - 2 * board.trim_width)
        lengths = []
        for section in dealt.sections:
            wide = sum(s.width for s in section) + question.kerf * (len(section) - 1)
            if wide > room[1] + NOISE:
                found.append(f"a section of {board.id} is {wide - room[1]:.3f} mm too wide")
            long = 0.0
            for strip in section:
                own = [question.wanted[k] for k, _ in strip.pieces]
                long = max(long, sum(w.length for w in own) + question.kerf * (len(own) - 1))
                for kind, copy in strip.pieces:
                    want = question.wanted[kind]
                    pieces[kind, copy] += 1
                    if not want.panel and strip.width < want.width - NOISE:
                        found.append(f"{want.id} lies on a strip of {strip.width:.2f} mm")
                    if want.panel:
                        made[kind, copy] = made.get((kind, copy), 0.0) + strip.width - question.joint
                        if not question.least - NOISE <= strip.width <= question.most + NOISE:
                            found.append(f"a strip of {want.id} is {strip.width:.2f} mm wide")
            lengths.append(long)
        whole = sum(lengths) + question.kerf * (len(lengths) - 1)
        if whole > room[0] + NOISE:
            found.append(f"{board.id} is {whole - room[0]:.3f} mm too short")
    for kind, want in enumerate(question.wanted):
        if want.id in answer.missing:
            continue
        for copy in range(want.count):
            if want.panel and made.get((kind, copy), 0.0) < want.width - NOISE:
                found.append(f"{want.id} copy {copy + 1} is only {made.get((kind, copy), 0.0):.2f} mm wide")
            if not want.panel and pieces[kind, copy] != 1:
                found.append(f"{want.id} copy {copy + 1} is there {pieces[kind, copy]} times")
    cost = sum(cost_of(question, d) for d in answer.boards)
    if abs(cost - answer.cost) > NOISE * max(1.0, cost):
        found.append(f"the cost is {cost:g}, not {answer.cost:g}")
    if answer.bound > cost + NOISE:
        found.append(f"the bound {answer.bound:g} is above the cost {cost:g}")
    return found
