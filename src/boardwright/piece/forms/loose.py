"""Loose parts: whatever no form covers, with its own size, place, cuts and joints."""

from __future__ import annotations

import difflib

from boardwright.core.arithmetic import ArithmeticProblem, parse
from boardwright.core.poses import Box
from boardwright.design.schema import CutKeys, LooseJoint, LoosePart
from boardwright.piece.cuts import Side
from boardwright.piece.drafts import Bore, Channel, Corner, Draft, Step
from boardwright.piece.joints.make import make_joint
from boardwright.piece.setout import SetOut

AXIS = {"x": 0, "y": 1, "z": 2}
_AXIS_WORD = ("length", "width", "thickness")
PART_AXIS = {"length": 0, "width": 1, "thickness": 2}


def loose_parts(out: SetOut, parts: dict[str, LoosePart], joints: list[LooseJoint]) -> None:
    """Put loose parts on the bench, cut them, and join what is named."""
    for key in _in_order(out, parts):
        _loose(out, key, parts[key])
    for i, joint in enumerate(joints):
        _joint(out, joint, f"joints[{i}]")


def _in_order(out: SetOut, parts: dict[str, LoosePart]) -> list[str]:
    """Keys of the parts, each after those that its sizes and place speak of; the file's order otherwise."""
    leans: dict[str, set[str]] = {key: set() for key in parts}
    for path, raw in out.design.lengths.items():
        key = path.split(".")[1] if path.startswith("parts.") else ""
        if key not in leans:
            continue
        try:
            names = parse(str(raw), out.design.file.units).names
        except ArithmeticProblem:
            continue
        leans[key] |= {n.removeprefix("parts.").split(".")[0] for n in names} & (set(parts) - {key})
    done: list[str] = []
    while len(done) < len(parts):
        ready = [k for k in parts if k not in done and leans[k] <= set(done)]
        done += ready or [k for k in parts if k not in done]
    return done


def _loose(out: SetOut, key: str, keys: LoosePart) -> None:
    path = f"parts.{key}"
    sizer = out.sizer
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
    stock = out.stock((f"{path}.stock", keys.stock))
    length, width = sizer.read(f"{path}.length"), sizer.read(f"{path}.width")
    at = [sizer.read(f"{path}.at[{i}]") for i in range(3)]
    if length is None or width is None or any(a is None for a in at):
        return
    length = sizer.size(f"{path}.length", [(f"{path}.length", keys.length)], length, least=5.0)
    width = sizer.size(f"{path}.width", [(f"{path}.width", keys.width)], width, least=3.0)
    low = [_place(out, f"{path}.at[{i}]", a or 0.0) for i, a in enumerate(at)]
    axes = (AXIS[keys.along], AXIS[keys.across])
    high = list(low)
    high[axes[0]] += length
    high[axes[1]] += width
    high[3 - axes[0] - axes[1]] += stock.thickness
    draft = out.add(
        path,
        keys.name or key.replace("_", " "),
        stock,
        Box((low[0], low[1], low[2]), (high[0], high[1], high[2])),
        axes,
        group="case",
        show=tuple((i, h) for i in range(3) for h in (False, True)),
        path=path,
    )
    for i, cut in enumerate(keys.cuts or []):
        _cut(out, draft, cut, f"{path}.cuts[{i}]")


def _place(out: SetOut, path: str, mm: float) -> float:
    """A place [mm]: a plain length is settled; a sum over other sizes follows those exactly."""
    names = parse(str(out.design.lengths[path]), out.design.file.units).names
    return mm if names else out.sizer.settled(mm)


def _cut(out: SetOut, draft: Draft, keys: CutKeys, path: str) -> None:
    """One cut given in the part's own frame: length from the low end, width from the low edge."""
    values = {
        name: out.sizer.read(f"{path}.{name}")
        for name in CutKeys.model_fields
        if getattr(keys, name) is not None and name not in ("kind", "side", "along", "edge", "end")
    }
    if any(v is None for v in values.values()):
        return
    numbers = {k: out.sizer.settled(v or 0.0) for k, v in values.items()}
    needed = {
        "groove": ("side", "along", "at", "width", "depth"),
        "rabbet": ("side", "edge", "width", "depth"),
        "notch": ("end", "edge", "length", "width"),
        "hole": ("side", "from_end", "from_edge", "diameter"),
    }[keys.kind]
    missing = [n for n in needed if getattr(keys, n) is None]
    if missing:
        out.find(
            "part.cut-incomplete",
            f"the {keys.kind} on the {draft.name} is not complete",
            path,
            found="no " + ", ".join(missing),
            expected=", ".join(needed),
            remedy="add the missing keys",
        )
        return
    axes = (draft.length_axis, draft.width_axis, draft.thickness_axis)
    size = [draft.size(a) for a in axes]
    wrong = _outside(out, keys, numbers, size)
    if wrong:
        out.find(
            "part.cut-outside",
            f"the {keys.kind} on the {draft.name} lies outside the part",
            path,
            found=wrong,
            expected=f"inside {out.text(size[0])} × {out.text(size[1])} × {out.about(size[2])}",
            remedy="move it, or make it smaller",
        )
        return
    _make(draft, keys, numbers, axes)


def _outside(out: SetOut, keys: CutKeys, n: dict[str, float], size: list[float]) -> str:
    """What is wrong with a cut, in words; "" when it lies in its part. Settled sizes in the part's own frame [mm]."""
    nothing = [
        f"a {k} of {out.text(n[k])}" for k in ("length", "width", "depth", "diameter") if n.get(k, 1.0) <= 0
    ]
    if nothing:
        return nothing[0]
    side = Side(keys.side) if keys.side else None
    if keys.kind == "groove" and side is not None and keys.along is not None:
        along = PART_AXIS[keys.along]
        if along == side.axis:
            return f"a groove into the {side.value} cannot run along the {keys.along}"
        third = 3 - side.axis - along
        if n["at"] < 0 or n["at"] + n["width"] > size[third] + 1e-6:
            return (
                f"from {out.text(n['at'])} to {out.text(n['at'] + n['width'])} "
                f"on a {_AXIS_WORD[third]} of {out.about(size[third])}"
            )
        if n["depth"] > size[side.axis]:
            return f"{out.text(n['depth'])} deep in {out.about(size[side.axis])}"
        return _run(out, n, size[along])
    if keys.kind == "rabbet" and side is not None and keys.edge is not None:
        edge = Side(keys.edge)
        if edge.axis == side.axis:
            return f"{side.value} and {edge.value} do not meet"
        if n["width"] >= size[edge.axis] or n["depth"] >= size[side.axis]:
            return f"{out.text(n['width'])} wide, {out.text(n['depth'])} deep"
        return _run(out, n, size[3 - side.axis - edge.axis])
    if keys.kind == "notch":
        if keys.edge not in ("edge", "far_edge"):
            return f"`edge: {keys.edge}`; a notch is measured from `edge` or `far_edge`"
        if n["length"] >= size[0] or n["width"] >= size[1]:
            return f"{out.text(n['length'])} long, {out.text(n['width'])} wide"
    if keys.kind == "hole":
        if side is None or side.axis != 2:
            return "holes of loose parts are drilled from the face or the back"
        r = n["diameter"] / 2
        if not (r <= n["from_end"] <= size[0] - r and r <= n["from_edge"] <= size[1] - r):
            return (
                f"{out.text(n['diameter'])} at {out.text(n['from_end'])} from the end, "
                f"{out.text(n['from_edge'])} from the edge"
            )
        if n.get("countersink", 0.0) < 0:
            return f"a countersink of {out.text(n['countersink'])}"
    return ""


def _run(out: SetOut, n: dict[str, float], length: float) -> str:
    start, stop = n.get("start", 0.0), n.get("stop", length)
    if 0 <= start < stop <= length + 1e-6:
        return ""
    return f"from {out.text(start)} to {out.text(stop)} of {out.text(length)}"


def _make(draft: Draft, keys: CutKeys, n: dict[str, float], axes: tuple[int, int, int]) -> None:
    low = [draft.low[a] for a in axes]
    if keys.kind == "notch":
        draft.cuts.append(
            Corner(axes[0], keys.end == "far_end", n["length"], axes[1], keys.edge == "far_edge", n["width"])
        )
        return
    assert keys.side is not None
    side = Side(keys.side)
    axis = axes[side.axis]
    if keys.kind == "groove":
        along = PART_AXIS[keys.along or "length"]
        third = 3 - side.axis - along
        at = low[third] + n["at"]
        draft.cuts.append(
            Channel(
                axis,
                side.high,
                axes[along],
                at,
                at + n["width"],
                n["depth"],
                low[along] + n["start"] if "start" in n else None,
                low[along] + n["stop"] if "stop" in n else None,
            )
        )
    elif keys.kind == "rabbet":
        edge = Side(keys.edge or "edge")
        third = 3 - side.axis - edge.axis
        draft.cuts.append(
            Step(
                axis,
                side.high,
                axes[edge.axis],
                edge.high,
                n["width"],
                n["depth"],
                low[third] + n["start"] if "start" in n else None,
                low[third] + n["stop"] if "stop" in n else None,
            )
        )
    else:
        at3 = [0.0, 0.0, 0.0]
        at3[axes[0]], at3[axes[1]] = low[0] + n["from_end"], low[1] + n["from_edge"]
        at3[axis] = draft.face(axis, side.high)
        draft.cuts.append(
            Bore(
                axis,
                side.high,
                (at3[0], at3[1], at3[2]),
                n["diameter"],
                n.get("depth", draft.size(axis)),
                "depth" not in n,
                n.get("countersink", 0.0),
            )
        )


def _joint(out: SetOut, keys: LooseJoint, path: str) -> None:
    found = []
    for key, name in (("first", keys.first), ("second", keys.second)):
        draft = out.drafts.get(name) or out.drafts.get(f"parts.{name}")
        if draft is None:
            known = [id.removeprefix("parts.") for id in out.drafts]
            near = difflib.get_close_matches(name, known, 3, 0.4)
            out.find(
                "joint.unknown-part",
                f"there is no part `{name}` to join",
                f"{path}.{key}",
                found=name,
                expected="the name of a part; `boardwright list --ids` shows them",
                remedy=f"did you mean `{near[0]}`?" if near else "use the name of a part",
            )
        else:
            found.append(draft)
    if len(found) == 2 and found[0] is not found[1]:
        make_joint(out, path, keys, path, keys.kind, found[0], found[1])
