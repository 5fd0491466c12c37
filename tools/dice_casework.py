"""What random cases stand on, what covers them, how they hang, and web frames between their rows.

Drawn after all else, so that a seed keeps what it had without them.
"""

from __future__ import annotations

from dice_forms import Dice, Mapping


def casework(d: Dice, case: Mapping) -> None:
    """Add these keys to a case, each now and then.

    Args:
        d: the dice.
        case: grows.
    """
    for name, share, make in (("base", 0.3, _base), ("cover", 0.2, _cover), ("wall_cleat", 0.15, _cleat)):
        if d.chance(share):
            case[name] = make(d)
    if d.chance(0.12):
        case["face_frame"] = {}
        d.maybe(0.4, case["face_frame"], stile_width=d.between(35, 60), overhang=d.between(0, 6))
        d.maybe(
            0.3, case["face_frame"], joint=d.one("mortise_tenon", {"kind": "butt", "fasten": "pocket_screws"})
        )
    if "wall_cleat" in case and d.chance(0.7):
        case.pop("back", None)
    top, bottom = case.get("top", {}), case.get("bottom", {})
    if "base" in case and d.chance(0.9):
        bottom.pop("up", None)
        if bottom.get("kind") not in (None, "full"):
            bottom.pop("kind")
    if top.get("kind") in ("lid", "none") and d.chance(0.9):
        case.pop("cover", None)
        case.pop("wall_cleat", None)
    if "wall_cleat" in case and d.chance(0.9):
        case.pop("base", None)
    if top.get("kind") == "lid":
        _well(d, case)
    if "inside" in case:
        _web_frames(d, case["inside"])


def _well(d: Dice, case: Mapping) -> None:
    """Put a well under a lid mostly, with or without a tray in it, and a back that leaves the rail its wood."""
    if d.chance(0.8):
        case["back"] = {"set": d.one("surface", "rabbet")}
    if "inside" in case and d.chance(0.85):
        upper: Mapping = {"panel": "fixed", "size": d.between(120, 200)}
        upper |= d.one({"open": True}, {"tray": {"lift_out": True}}, {"tray": {"lift_out": True, "grip": {}}})
        case["inside"] = {"rows": [upper, case["inside"]]}


def _base(d: Dice) -> Mapping:
    keys: Mapping = {}
    d.maybe(0.8, keys, kind=d.one("plinth", "bracket_feet", "legs"))
    kind = keys.get("kind", "plinth")
    d.maybe(0.4, keys, height=d.between(50, 150), setback=d.between(0, 75))
    if kind == "legs":
        d.maybe(0.8, keys, stock="leg")
    else:
        d.maybe(0.3, keys, stock=d.one("board", "panel"))
    if kind == "bracket_feet":
        d.maybe(0.4, keys, width=d.between(70, 160))
    if kind == "plinth":
        d.maybe(0.4, keys, corner=d.one("butt", "mitre"))
    return keys


def _cover(d: Dice) -> Mapping:
    keys: Mapping = {}
    d.maybe(0.4, keys, stock=d.one("board", "panel"), overhang=d.between(0, 40))
    return keys


def _cleat(d: Dice) -> Mapping:
    keys: Mapping = {}
    d.maybe(0.4, keys, width=d.between(50, 100), angle=d.one(30, 40, 45), play=d.between(1, 8))
    d.maybe(0.3, keys, stock=d.one("board", "panel"))
    return keys


def _web_frames(d: Dice, room: Mapping) -> None:
    """Turn what parts the rows of a space, and of the spaces in it, into web frames now and then."""
    for inner in (*room.get("rows", ()), *room.get("columns", ())):
        _web_frames(d, inner)
    for keys in (room if "rows" in room else None, room.get("drawers")):
        if keys is not None and d.chance(0.3):
            keys["between"] = "web_frame"
            d.maybe(0.5, keys, dust=True)
