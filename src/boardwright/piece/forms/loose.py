"""Loose parts: whatever no form covers, with its own size, place, cuts and joints."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.arithmetic import ArithmeticProblem, parse
from boardwright.core.poses import Box
from boardwright.design.schema import LooseJoint, LoosePart
from boardwright.piece.forms.loose_cuts import loose_cut
from boardwright.piece.forms.placing import Span, draft_named, placed
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

AXIS = {"x": 0, "y": 1, "z": 2}


def loose_parts(out: SetOut, parts: dict[str, LoosePart], joints: list[LooseJoint]) -> None:
    """Put loose parts on the bench, cut them, and join what is named."""
    for key in _in_order(out, parts):
        _loose(out, key, parts[key])
    for i, joint in enumerate(joints):
        _joint(out, joint, f"joints[{i}]")


def _in_order(out: SetOut, parts: dict[str, LoosePart]) -> list[str]:
    """Keys of the parts, each after those that its sizes and place speak of; the file's order otherwise."""
    leans = {key: _speaks_of(keys) for key, keys in parts.items()}
    for path, raw in out.design.lengths.items():
        key = path.split(".")[1] if path.startswith("parts.") else ""
        if key not in leans:
            continue
        try:
            names = parse(str(raw), out.design.file.units).names
        except ArithmeticProblem:
            continue
        leans[key] |= {n.removeprefix("parts.").split(".")[0] for n in names}
    for key in leans:
        leans[key] &= set(parts) - {key}
    done: list[str] = []
    while len(done) < len(parts):
        ready = [k for k in parts if k not in done and leans[k] <= set(done)]
        done += ready or [k for k in parts if k not in done]
    return done


def _speaks_of(keys: LoosePart) -> set[str]:
    """Keys of parts that a place names."""
    if keys.place is None:
        return set()
    names: list[str] = []
    for p in (keys.place.x, keys.place.y, keys.place.z):
        names += [n for n in (p.against, p.flush, p.centred_on) if n is not None] + (p.between or [])
    return {n.removeprefix("parts.").split(".")[0] for n in names}


def _loose(out: SetOut, key: str, keys: LoosePart) -> None:
    path = f"parts.{key}"
    if keys.along == keys.across:
        out.find(
            "part.axes",
            f"part `{key}` has its length and its width along the same axis",
            f"{path}.across",
            found=keys.along,
            expected="two different axes",
            remedy="change one of them",
        )
        return
    stock = _sawn(out.stock((f"{path}.stock", keys.stock)), keys)
    axes = (AXIS[keys.along], AXIS[keys.across])
    spans = _spans(out, keys, path, axes, stock)
    if spans is None:
        return
    draft = out.add(
        path,
        keys.name or key.replace("_", " "),
        stock,
        Box((spans[0].low, spans[1].low, spans[2].low), (spans[0].high, spans[1].high, spans[2].high)),
        axes,
        group="case",
        show=tuple((i, h) for i in range(3) for h in (False, True)),
        path=path,
    )
    for i, cut in enumerate(keys.cuts or []):
        loose_cut(out, draft, cut, f"{path}.cuts[{i}]")


def _sawn(stock: Stock, keys: LoosePart) -> Stock:
    """The stock as the boards of this part were sawn."""
    if stock.kind != "wood" or (keys.sawn is None and keys.rings is None):
        return stock
    return replace(stock, sawn=keys.sawn or stock.sawn, rings=keys.rings)


def _spans(out: SetOut, keys: LoosePart, path: str, axes: tuple[int, int], stock: Stock) -> list[Span] | None:
    """Where a part lies on each axis; None, with findings, when its size or place cannot be told."""
    sizes: list[float | None] = [stock.thickness] * 3
    bad = False
    for name, axis, least in (("length", axes[0], 5.0), ("width", axes[1], 3.0)):
        given = getattr(keys, name)
        if given is None:
            sizes[axis] = None
            continue
        value = out.sizer.read(f"{path}.{name}")
        if value is None:
            bad = True
            continue
        sizes[axis] = out.sizer.size(f"{path}.{name}", [(f"{path}.{name}", given)], value, least=least)
    if (keys.at is None) == (keys.place is None):
        out.find(
            "place.which",
            f"part `{path.removeprefix('parts.')}` needs a place",
            path,
            found="neither `at` nor `place`" if keys.at is None else "both `at` and `place`",
            expected="one of them",
            remedy="add `at: [x, y, z]`" if keys.at is None else "keep one of them",
        )
        return None
    spans: list[Span] = []
    for axis, word in enumerate("xyz"):
        if keys.place is not None:
            where, at = getattr(keys.place, word), f"{path}.place.{word}"
            span = placed(out, where, at, axis, sizes[axis])
        else:
            span = _at(out, f"{path}.at[{axis}]", sizes[axis], keys, axes, axis, path)
        if span is None:
            bad = True
            continue
        name = "length" if axis == axes[0] else "width"
        if axis in axes and sizes[axis] is None:
            size = span.high - span.low
            out.sizer.explain(
                f"{path}.{name}", size, "the room between", "", f"{path}.place.{word}", given=True
            )
        spans.append(span)
    return None if bad else spans


def _at(
    out: SetOut,
    path: str,
    size: float | None,
    keys: LoosePart,
    axes: tuple[int, int],
    axis: int,
    part: str,
) -> Span | None:
    """A place given as the low corner: a plain length is settled; a sum over other sizes follows those exactly."""
    if size is None:
        name = "length" if axis == axes[0] else "width"
        out.find(
            "place.no-size",
            f"the part has no {name}",
            part,
            found=f"no `{name}`, and `at` instead of `between`",
            expected=f"`{name}: …`",
            remedy="give it, or place the part `between` two others",
        )
        return None
    value = out.sizer.read(path)
    if value is None:
        return None
    names = parse(str(out.design.lengths[path]), out.design.file.units).names
    low = value if names else out.sizer.settled(value)
    return Span(low, low + size)


def _joint(out: SetOut, keys: LooseJoint, path: str) -> None:
    first, second = (draft_named(out, getattr(keys, k), f"{path}.{k}") for k in ("first", "second"))
    if first is not None and second is not None and first is not second:
        make_joint(out, path, keys, path, keys.kind, first, second)
