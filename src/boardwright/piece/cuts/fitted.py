"""Cuts of joints that go into each other: mortises and tenons, biscuits, fingers, dovetails, sliding dovetails.

`wide` is the part axis across which a joint is laid out (1, the width, for a board on its end); the axis that is
neither that nor the axis of `end` is called the third.
"""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.piece.cuts.sides import Side


@dataclass(frozen=True, slots=True)
class Mortise:
    """A pocket with four walls, or a hole with square corners when it goes through.

    Attributes:
        side: the side it is cut into.
        along: part axis of its length.
        at: from the low end of the third axis to its near cheek [mm].
        width: from cheek to cheek [mm].
        depth: from `side` [mm].
        start, end: of its length along `along`, from the low end [mm].
        through: True when it goes right through.
        holds: id of the part whose tenon sits in it, or "".
    """

    side: Side
    along: int
    at: float
    width: float
    depth: float
    start: float
    end: float
    through: bool = False
    holds: str = ""


@dataclass(frozen=True, slots=True)
class BiscuitSlot:
    """A slot for a biscuit: what the round cutter of a plate joiner takes when it is pushed in.

    Attributes:
        side: the side it is cut into.
        along: part axis of its length.
        at: its middle in the two part axes other than the side's axis, lower axis first, from their low ends [mm].
        width: thickness of the cutter [mm].
        depth: from `side` at its deepest [mm].
        radius: of the cutter; the slot is a chord of it [mm].
        lean: how far the cutter goes in off square to `side`, towards the high end of `lean_along` [degrees]: into a
            mitred face. lean_along: part axis it leans along.
        sunk: how deep below `side` the middle of the slot lies on the face that it is cut into [mm].
        for_: what goes in it, e.g. `No. 20 biscuit`.
        holds: id of the part on the other side of the joint, or "".
    """

    side: Side
    along: int
    at: tuple[float, float]
    width: float
    depth: float
    radius: float
    for_: str = ""
    holds: str = ""
    lean: float = 0.0
    lean_along: int = 0
    sunk: float = 0.0


@dataclass(frozen=True, slots=True)
class Tenon:
    """What is left of an end: one tenon or several, a haunch, a long stub.

    Attributes:
        end: the side it stands out of; its tip lies there.
        wide: part axis across which its steps are laid out.
        length: from the shoulder to the tip [mm].
        low, high: shoulders cut from the low and the high side of the third axis [mm].
        steps: what stands: from, to across `wide` from the low end, and how long it is [mm]. Between steps all is
            cut to the shoulder; a step shorter than `length` is a haunch or a stub.
        holds: id of the part it goes into, or "".
    """

    end: Side
    wide: int
    length: float
    low: float
    high: float
    steps: tuple[tuple[float, float, float], ...]
    holds: str = ""


@dataclass(frozen=True, slots=True)
class Fingers:
    """Sockets between fingers at an end, through the whole third axis.

    Attributes:
        end: the side they are cut into.
        wide: part axis across which they are laid out.
        length: how deep the sockets are [mm].
        sockets: from, to of each across `wide`, from the low end [mm].
        holds: id of the part that goes in, or "".
    """

    end: Side
    wide: int
    length: float
    sockets: tuple[tuple[float, float], ...]
    holds: str = ""


@dataclass(frozen=True, slots=True)
class Tails:
    """Sockets between the tails of a dovetail joint; what stands between them are the tails.

    Attributes:
        end: the side they are cut into.
        wide: part axis across which they are laid out.
        length: how deep the sockets are [mm].
        sockets: from, to of each at the tip of the tails, across `wide`, from the low end [mm]; below the tip
            they grow wider by `slope` on each side. One that reaches the edge takes it all.
        slope: widening of a socket on each side for each mm of depth, e.g. 1/8.
        holds: id of the pin board, or "".
    """

    end: Side
    wide: int
    length: float
    sockets: tuple[tuple[float, float], ...]
    slope: float
    holds: str = ""


@dataclass(frozen=True, slots=True)
class Pins:
    """Sockets between the pins of a dovetail joint, for the tails.

    Attributes:
        end: the side they are cut into.
        wide: part axis across which they are laid out.
        length: how far in from `end` [mm]: the thickness of the tail board.
        side: the side they are entered from, square to `end` and `wide`.
        depth: from `side` [mm]; less than the part's size there for half-blind pins.
        sockets: from, to of each at `side`, across `wide`, from the low end [mm]; they grow wider into the wood.
        slope: widening on each side for each mm of depth.
        holds: id of the tail board, or "".
    """

    end: Side
    wide: int
    length: float
    side: Side
    depth: float
    sockets: tuple[tuple[float, float], ...]
    slope: float
    holds: str = ""


@dataclass(frozen=True, slots=True)
class DovetailSlot:
    """The channel of a sliding dovetail: narrow at its mouth, wide at its bottom.

    Attributes:
        side: the side it is cut into.
        along: part axis it runs along.
        at: from the low end of the third axis to the near edge of its mouth [mm].
        width: of its mouth [mm].
        depth: [mm].
        slope: widening on each side for each mm of depth.
        start, end: from where to where it runs along `along` [mm].
        holds: id of the part that slides in, or "".
    """

    side: Side
    along: int
    at: float
    width: float
    depth: float
    slope: float
    start: float
    end: float
    holds: str = ""


@dataclass(frozen=True, slots=True)
class DovetailTongue:
    """The tongue of a sliding dovetail, wide at its tip, along the whole of an end or edge.

    Attributes:
        end: the side its tip lies at.
        wide: part axis it runs along.
        length: from the shoulder to the tip [mm].
        low, high: cut from the low and the high side of the third axis at the tip [mm]; at the shoulder it is
            more by `length` times `slope`.
        slope: see above.
        holds: id of the part it slides into, or "".
    """

    end: Side
    wide: int
    length: float
    low: float
    high: float
    slope: float
    holds: str = ""
