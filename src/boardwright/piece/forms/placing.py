"""Where a loose part stands: at a length, against another part, flush with it, between two, or centred on one."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.arithmetic import parse
from boardwright.core.nearest import nearest
from boardwright.design.schema import PlaceKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.setout import SetOut

SIDES = {
    "left": (0, False),
    "right": (0, True),
    "front": (1, False),
    "rear": (1, True),
    "under": (2, False),
    "top": (2, True),
}
"""Sides of a part in the piece: axis, and whether it is the high one."""


@dataclass(frozen=True, slots=True)
class Span:
    """From where to where a part lies on one axis [mm]."""

    low: float
    high: float


def placed(out: SetOut, keys: PlaceKeys, path: str, axis: int, size: float | None) -> Span | None:
    """Where a part lies along an axis; None, with a finding, when that cannot be told.

    Args:
        out: the bench.
        keys: what the file says of this axis.
        path: its path.
        axis: of the piece.
        size: of the part along it [mm]; None when it takes the room it stands between.
    """
    given = [k for k in ("at", "against", "flush", "between", "centred_on") if getattr(keys, k) is not None]
    if len(given) != 1:
        out.find(
            "place.which",
            "a place is told in one way",
            path,
            found=" and ".join(f"`{g}`" for g in given) if given else "none",
            expected="one of `at`, `against`, `flush`, `between`, `centred_on`",
            remedy="keep one of them" if given else "add one of them",
        )
        return None
    off = out.sizer.read(f"{path}.off") if keys.off is not None else 0.0
    if off is None:
        return None
    if keys.between is not None:
        return _between(out, keys.between, path, axis, size, off)
    if size is None:
        out.find(
            "place.no-size",
            "the part has no size along this axis",
            path,
            found="neither a size nor `between`",
            expected="a length or width, or `between` two sides",
            remedy="give the size",
        )
        return None
    if keys.at is not None:
        low = out.sizer.read(f"{path}.at")
        return (
            None if low is None else _from(low if _leans(out, f"{path}.at") else out.sizer.settled(low), size)
        )
    if keys.centred_on is not None:
        other = draft_named(out, keys.centred_on, f"{path}.centred_on")
        if other is None:
            return None
        start = other.low[axis] + (other.size(axis) - size) / 2 + off
        return _from(other.low[axis] + out.sizer.settled(start - other.low[axis]), size)
    key = "against" if keys.against is not None else "flush"
    side = _side(out, keys.against or keys.flush or "", f"{path}.{key}", axis)
    if side is None:
        return None
    at, high = side
    if key == "against":
        return _from(at + off, size) if high else _from(at - off - size, size)
    return _from(at - off - size, size) if high else _from(at + off, size)


def _from(low: float, size: float) -> Span:
    return Span(low, low + size)


def _leans(out: SetOut, path: str) -> bool:
    """True when a length is a sum over other sizes: it follows those exactly."""
    return bool(parse(str(out.design.lengths[path]), out.design.file.units).names)


def _between(
    out: SetOut, names: list[str], path: str, axis: int, size: float | None, off: float
) -> Span | None:
    sides = [_side(out, name, f"{path}.between", axis) for name in names]
    if sides[0] is None or sides[1] is None:
        return None
    low, high = sorted((sides[0][0], sides[1][0]))
    room = high - low
    if size is None:
        if room <= 1e-6:
            out.find(
                "place.no-room",
                "there is no room between the two sides",
                f"{path}.between",
                found=out.about(room),
                expected="some room",
                remedy="name sides that stand apart",
            )
            return None
        return Span(low, high)
    return _from(low + out.sizer.settled((room - size) / 2) + off, size)


def _side(out: SetOut, text: str, path: str, axis: int) -> tuple[float, bool] | None:
    """Where a named side lies [mm], and whether it is the high one of its part."""
    name, _, word = text.rpartition(".")
    if not name or word not in SIDES or SIDES[word][0] != axis:
        fit = [w for w, (a, _) in SIDES.items() if a == axis]
        out.find(
            "place.side",
            f"`{text}` is no side to stand against along this axis",
            path,
            found=text,
            expected=f"PART.{fit[0]} or PART.{fit[1]}",
            remedy=f"write `{name or text}.{fit[0]}` or `{name or text}.{fit[1]}`",
        )
        return None
    draft = draft_named(out, name, path)
    if draft is None:
        return None
    high = SIDES[word][1]
    return draft.face(axis, high), high


def draft_named(out: SetOut, name: str, path: str) -> Draft | None:
    """The part of that name, a loose one by its key; None, with a finding, when there is none."""
    draft = out.drafts.get(name) or out.drafts.get(f"parts.{name}")
    if draft is None:
        known = [id.removeprefix("parts.") for id in out.drafts]
        near = nearest(name, known)
        out.find(
            "joint.unknown-part",
            f"there is no part `{name}`",
            path,
            found=name,
            expected="the name of a part; `boardwright list --ids` shows them",
            remedy=f"did you mean `{near[0]}`?" if near else "use the name of a part",
        )
    return draft
