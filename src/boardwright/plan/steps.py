"""Putting the piece together, step by step, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from boardwright.core.lengths import Printer
from boardwright.core.poses import Vec
from boardwright.piece.records import Fastener, Joint, Piece
from boardwright.plan.joints import joint_name
from boardwright.plan.parts import size
from boardwright.plan.schema import BuildStep, PlanSubassembly
from boardwright.solids.assembly import Assembly, AssemblyStep, Subassembly, assembly_of

MOST_NAMED = 5
"""From more letters than this on, what stands already is not named one by one."""
WAYS = {
    (1.0, 0.0, 0.0): "to the right",
    (-1.0, 0.0, 0.0): "to the left",
    (0.0, 1.0, 0.0): "in from the front, backward",
    (0.0, -1.0, 0.0): "in from behind, forward",
    (0.0, 0.0, 1.0): "up",
    (0.0, 0.0, -1.0): "down",
}
ON = ("rests", "planted", "cleat")
"""Kinds of joints that are on something rather than with it."""
PINS = {"dowel": "dowels", "biscuit": "biscuits", "loose tenon": "loose tenons"}
"""Fasteners that are put in before the joint closes."""


def build_steps(
    piece: Piece, printer: Printer, letters: Mapping[str, str]
) -> tuple[list[BuildStep], list[PlanSubassembly]]:
    """The steps and the subassemblies of a piece: each subassembly whole before the one that uses it, then the piece.

    Args:
        piece: every size known.
        printer: writes lengths.
        letters: part id → letter.
    """
    if len(piece.parts) < 2:
        return [], []
    found = assembly_of(piece)
    words = _Words(piece, printer, letters, found)
    done = {s.sub: i for i, s in enumerate(found.order)}
    in_order = sorted(found.order, key=lambda s: (s.sub == 0, done[s.sub], s.number))
    subs = [
        PlanSubassembly(
            number=s.number,
            name=words.sub_name(s),
            letters=list(dict.fromkeys(letters[i] for copy in s.copies for i in copy)),
            copies=[list(c) for c in s.copies],
        )
        for s in sorted(found.subs, key=lambda s: done[s.number])
    ]
    stops = _stops(piece, found, in_order)
    return [words.step(s, n, stops[n - 1]) for n, s in enumerate(in_order, 1)], subs


def _stops(piece: Piece, found: Assembly, in_order: Sequence[AssemblyStep]) -> list[list[Fastener]]:
    """The screws that only stop what runs, by the step after which both their parts are there."""
    driven = {f for s in in_order for f in s.fasteners}
    others = [set(copy) for sub in found.subs for copy in sub.copies[1:]]
    waiting = [
        f
        for f in piece.fasteners
        if f.slotted and f.id not in driven and not any({f.held, f.into} <= copy for copy in others)
    ]
    out = []
    for s in in_order:
        standing = {*s.adds, *s.onto}
        out.append([f for f in waiting if {f.held, f.into} <= standing])
        waiting = [f for f in waiting if f not in out[-1]]
    return out


class _Words:
    """What a step says."""

    def __init__(self, piece: Piece, printer: Printer, letters: Mapping[str, str], found: Assembly) -> None:
        self.printer, self.letters = printer, letters
        self.names = {p.id: p.name for p in piece.parts}
        self.joints: dict[str, Joint] = {j.id: j for j in piece.joints}
        self.fasteners: dict[str, Fastener] = {f.id: f for f in piece.fasteners}
        self.motions, self.hardware = piece.motions, piece.hardware
        self.groups = {m.id: [p.id for p in piece.parts if p.group == m.id] for m in piece.motions}
        self.subs = {frozenset(copy): s for s in found.subs for copy in s.copies}

    def step(self, s: AssemblyStep, number: int, stops: Sequence[Fastener]) -> BuildStep:
        """One step, under the number that is printed, with the screws that then become stops."""
        return BuildStep(
            number=number,
            sub=s.sub,
            count=s.count,
            title=f"{self._units(s.units)} {self._onto(s.onto)}",
            lines=[
                *self._before(s),
                self._move(s),
                *self._driven(s),
                *self._stopped(stops),
                *self._hung(s),
                *self._each(s),
            ],
            units=[list(u) for u in s.units],
            onto=list(s.onto),
            direction=list(s.direction),
            travel=size(self.printer, s.travel),
            glued=s.glued,
            drawing=f"step-{number}",
        )

    def sub_name(self, sub: Subassembly) -> str:
        """What a subassembly is called: a moving thing by its kind, else by its first part."""
        if sub.name:
            return sub.name.rstrip(" 0123456789")
        return f"{self.names[sub.copies[0][0]]} with {_many(len(sub.copies[0]) - 1, 'part')}"

    def _units(self, units: Sequence[tuple[str, ...]]) -> str:
        named = Counter(self._unit(u) for u in units)
        return _list([f"{n} × {name}" if n > 1 else name for name, n in named.items()])

    def _unit(self, unit: tuple[str, ...]) -> str:
        if len(unit) == 1:
            return f"{self.letters[unit[0]]} ({self.names[unit[0]]})"
        sub = self.subs.get(frozenset(unit))
        return f"{self.sub_name(sub)} (subassembly {sub.number})" if sub else "the parts put together before"

    def _onto(self, onto: Sequence[str]) -> str:
        counted = Counter(self.letters[i] for i in onto)
        return "into what stands so far" if len(counted) > MOST_NAMED else f"to {_counted(counted)}"

    def _before(self, s: AssemblyStep) -> list[str]:
        pins = Counter(self.fasteners[f].kind for f in s.fasteners if self.fasteners[f].kind in PINS)
        put = [f"{n} {PINS[kind] if n > 1 else kind}" for kind, n in pins.items()]
        if s.glued:
            return ["Glue the faces that meet" + (f", and put in {_list(put)}." if put else ".")]
        return [f"Put in {_list(put)}; no glue."] if put else []

    def _move(self, s: AssemblyStep) -> str:
        what = "it" if len(s.units) == 1 else "each"
        how = f"Move {what} {way(s.direction)} into place"
        if s.approach != s.direction:
            how = f"Bring {what} {way(s.approach)}, then {way(s.direction)} into place"
        closing = self._closing(s)
        return f"{how}: {closing}." if closing else f"{how}."

    def _closing(self, s: AssemblyStep) -> str:
        """The joints that close, by name, with the letters of what they are made with."""
        adds = set(s.adds)
        groups: dict[tuple[str, bool], dict[str, None]] = {}
        for joint in (self.joints[j] for j in s.joints):
            other = joint.first if joint.second in adds and joint.first not in adds else joint.second
            free = s.glued and not joint.glued
            name = f"{joint_name(joint.kind, joint.summary)} {'on' if joint.kind in ON else 'with'}"
            groups.setdefault((name, free), {})[other] = None
        return "; ".join(
            f"{name} {_counted(Counter(self.letters[i] for i in others))}{', no glue' if free else ''}"
            for (name, free), others in groups.items()
        )

    def _driven(self, s: AssemblyStep) -> list[str]:
        screws = Counter(self.fasteners[f].name for f in s.fasteners if self.fasteners[f].kind not in PINS)
        lines = [f"Drive {n} × {name}." if n > 1 else f"Drive one {name}." for name, n in screws.items()]
        if s.stubby:
            lines.append(
                f"{_many(len(s.stubby), 'screw')} can only be reached with a stubby or right-angle driver."
            )
        if s.unreached:
            lines.append(f"No driver reaches {_many(len(s.unreached), 'screw')}: see Findings.")
        return lines

    def _stopped(self, stops: Sequence[Fastener]) -> list[str]:
        screws = Counter(f.name for f in stops)
        return [
            f"Drive {n if n > 1 else 'one'} {'× ' if n > 1 else ''}{name} through the slot as a stop: home, then back "
            "a turn, so that what is slotted runs."
            for name, n in screws.items()
        ]

    def _hung(self, s: AssemblyStep) -> list[str]:
        """What doors and lids hang on and are shut with; where a wall cleat goes."""
        adds = set(s.adds)
        turning = [m.id for m in self.motions if m.turn and {*self.groups[m.id]} <= adds]
        bought = Counter(h.name.partition(",")[0] for h in self.hardware if _thing(h.id) in turning)
        lines = []
        if turning:
            lines.append(f"Hang {'it' if len(turning) == 1 else 'each'} on its hinges.")
        if bought:
            lines.append(f"Put on {_list([f'{n} × {name}' for name, n in bought.items()])}.")
        if any(self.names[i] == "wall cleat" for i in adds):
            lines.append(
                "It belongs to the wall, not to the piece: screw it there level, and let the piece down over it."
            )
        return lines

    def _each(self, s: AssemblyStep) -> list[str]:
        return [f"Make {s.count} alike."] if s.count > 1 else []


def way(direction: Vec) -> str:
    """A direction in words, seen from the front of the piece."""
    rounded = (round(direction[0], 6) + 0.0, round(direction[1], 6) + 0.0, round(direction[2], 6) + 0.0)
    if rounded in WAYS:
        return WAYS[rounded]
    words = [WAYS[axis] for axis in WAYS if sum(a * d for a, d in zip(axis, direction, strict=True)) > 0.1]
    return "aslant, " + " and ".join(words)


def _thing(id: str) -> str:
    """The moving thing that something bought belongs to, by its id: `door.1` of `door.1.hinge.2`."""
    return ".".join(id.split(".")[:2])


def _counted(letters: Mapping[str, int]) -> str:
    """Letters with how often each."""
    return _list([f"{n} × {letter}" if n > 1 else letter for letter, n in letters.items()])


def _many(n: int, what: str) -> str:
    return f"one {what}" if n == 1 else f"{n} {what}s"


def _list(items: Sequence[str]) -> str:
    return (
        items[0]
        if len(items) == 1
        else ", ".join(items[:-1]) + (" and " if items else "") + "".join(items[-1:])
    )
