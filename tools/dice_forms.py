"""Random tables, boxes, doors, lids, trays and pairs of joined parts, for `design_dice`."""

from __future__ import annotations

from typing import Any, Protocol

Mapping = dict[str, Any]


class Dice(Protocol):
    """Chooses (see `design_dice.Dice`)."""

    random: Any
    units: str
    stock: str

    def like(self) -> str:
        """A stock for a part."""

    def one(self, *choices: Any) -> Any:
        """One of several."""

    def chance(self, share: float) -> bool:
        """True that often."""

    def between(self, low: float, high: float) -> str:
        """A length between two [mm]."""

    def length(self, mm: float) -> str:
        """A length [mm]."""

    def maybe(self, share: float, keys: Mapping, **given: Any) -> None:
        """Put keys in, each with a chance of its own."""


FASTENINGS = ("screws", "plugged_screws", "dowels", "biscuits", "pocket_screws", "loose_tenons", "none")


def joint(d: Dice, kind: str) -> Any:
    """A joint of a kind, with some of its own keys."""
    if d.chance(0.4):
        return kind
    keys: Mapping = {"kind": kind}
    d.maybe(0.2, keys, glue=d.chance(0.8))
    own: dict[str, Mapping] = {
        "butt": {"fasten": d.one(*FASTENINGS), "count": d.one(2, 3, 4)},
        "mortise_tenon": {
            "through": d.chance(0.3),
            "tenons": d.one(1, 2),
            "pinned": d.chance(0.3),
            "length": d.between(12, 35),
            "haunch": d.one("0", d.between(3, 8)),
        },
        "mitre": {"with": d.one("none", "spline", "keys", "biscuits", "dowels")},
        "edge": {"with": d.one("none", "spline", "tongue", "biscuits", "dowels")},
        "finger": {"pitch": d.between(5, 14)},
        "dovetail": {"tails": d.one(2, 3, 4, 5), "spacing": d.one("equal", "graduated")},
        "half_blind": {"tails": d.one(2, 3), "lap": d.between(3, 6)},
        "half_lap": {"depth": d.between(5, 9)},
        "tongue": {"shoulders": d.one("one", "two"), "depth": d.between(4, 9)},
        "sliding_dovetail": {"depth": d.between(4, 8)},
    }
    d.maybe(0.4, keys, **own.get(kind, {"depth": d.between(4, 9)}))
    return keys


CORNERS = ("rabbet", "butt", "mitre", "dovetail", "half_blind", "finger", "double_rabbet")
FRAMES = ("tongue", "mortise_tenon", "mitre", "bridle", "half_lap")
ENDS = ("butt", "dado", "tongue", "mortise_tenon", "sliding_dovetail")


def table(d: Dice) -> Mapping:
    """A table, bench or stool."""
    keys: Mapping = {"width": d.between(350, 1800), "depth": d.between(300, 900), "stock": "board"}
    d.maybe(0.7, keys, height=d.between(300, 900))
    legs: Mapping = {"stock": d.one("leg", "leg", "board")}
    d.maybe(0.4, legs, taper=d.one({}, {"faces": d.one("inner", "all"), "foot": d.between(15, 28)}))
    d.maybe(0.25, legs, splay={"ends": d.one(0, 3, 5, 8), "front": d.one(0, 4, 7)})
    keys["legs"] = legs
    if d.chance(0.8):
        keys["top"] = {"kind": d.one("board", "board", "board", "none")}
        d.maybe(
            0.5,
            keys["top"],
            overhang=d.between(0, 60),
            fixed=d.one("buttons", "slotted_screws", "clips", "z_clips", "none"),
            shape=d.one("straight", "straight", "round"),
        )
        d.maybe(0.2, keys["top"], left=d.between(0, 90), stock=d.like())
    if d.chance(0.8):
        keys["aprons"] = {}
        if "fixed" in keys.get("top", {}) and keys["top"]["fixed"] in ("buttons", "z_clips"):
            d.maybe(0.7, keys["aprons"], height=d.between(80, 130))
        d.maybe(0.5, keys["aprons"], height=d.between(50, 130), setback=d.between(0, 12))
        d.maybe(0.4, keys["aprons"], joint=joint(d, d.one("mortise_tenon", "butt")))
        if "splay" not in legs or d.chance(0.1):
            d.maybe(0.3, keys["aprons"], drawers=d.one({}, {"count": d.one(1, 2, 3)}))
    d.maybe(0.35, keys, stretchers={"kind": d.one("box", "h", "ends")})
    return keys


def box(d: Dice) -> Mapping:
    """A box, plumb or sloping, with four sides or more."""
    keys: Mapping = {
        "width": d.between(120, 800),
        "depth": d.between(120, 500),
        "height": d.between(60, 400),
        "stock": d.one("side", "board", "panel"),
    }
    if d.chance(0.3):
        keys["sides"] = d.one(3, 5, 6, 8)
        del keys["depth"]
    d.maybe(0.3, keys, slope=d.one(5, 10, 20, 35), edges=d.one("level", "square"))
    if "sides" not in keys and "slope" in keys and keys.get("edges") != "square":
        d.maybe(0.3, keys, slope_ends=d.one(0, 8, 15))
    plain = "slope" not in keys and "sides" not in keys
    loose = "sides" not in keys and keys.get("edges") != "square"
    d.maybe(
        0.7, keys, corner=joint(d, d.one(*CORNERS)) if plain else d.one("mitre", "butt" if loose else "mitre")
    )
    d.maybe(0.6, keys, bottom={"set": d.one("groove" if plain else "inside", "planted", "inside", "none")})
    if plain:
        d.maybe(0.2, keys, dividers={"across": d.one(0, 1, 3), "along": d.one(1, 2)})
        d.maybe(0.2, keys, lid={"made": "sawn", "at": d.between(30, 60)})
        if "lid" in keys:
            d.maybe(0.6, keys["lid"], hinges=d.one("butt", "continuous"), opens=d.one(90, 95, 110), stay=True)
        d.maybe(0.2, keys, trays={"count": 1, "heights": [d.between(40, 70)], "tray": tray(d)})
    return keys


def frame(d: Dice) -> Mapping:
    """A frame with panels."""
    keys: Mapping = {}
    d.maybe(
        0.5, keys, stile_width=d.between(40, 80), rail_width=d.between(40, 80), joint=joint(d, d.one(*FRAMES))
    )
    d.maybe(0.3, keys, across=d.one(1, 2), up=d.one(1, 2, 3))
    d.maybe(0.6, keys, panel={"kind": d.one("flat", "raised", "glass")})
    if keys.get("panel", {}).get("kind") == "glass":
        keys["panel"]["stock"] = "glass"
    return keys


def doors(d: Dice, room: Mapping) -> None:
    """A door or a pair before a space."""
    keys: Mapping = {"set": d.one("inset", "overlay", "half_overlay")}
    if d.chance(0.6):
        keys |= {"made": "frame", "frame": frame(d)}
    d.maybe(0.4, keys, hinges=d.one("butt", "cup", "continuous"), stock=d.like(), opens=d.one(90, 100, 110))
    if keys["set"] == "half_overlay" and keys.get("hinges") != "cup" and d.chance(0.9):
        keys.pop("hinges", None)
    if d.chance(0.5):
        room["doors"] = keys
        d.maybe(0.3, keys, strip=d.one("none", "left", "right"))
    else:
        room["door"] = keys | {"hinged": d.one("left", "right")}


def lid(d: Dice) -> Mapping:
    """A lid over a case."""
    keys: Mapping = {}
    if d.chance(0.5):
        keys |= {"made": "frame", "frame": frame(d)}
        d.maybe(0.5, keys, glued_edge=d.one("front", "none"))
    else:
        d.maybe(0.7, keys, ends=d.one("cleats", "breadboard", "none"))
    d.maybe(0.4, keys, overhang=d.between(0, 30), hinges=d.one("butt", "continuous"), stay=d.chance(0.7))
    return keys


def tray(d: Dice) -> Mapping:
    """A tray of a box: it lifts out or slides on ledgers."""
    found: Mapping = d.one({"lift_out": True}, {"slides": "sideways"}, {"lift_out": True, "grip": {}})
    return found


def trays(d: Dice) -> Mapping:
    """Trays of a case."""
    keys: Mapping = {"count": d.one(1, 2, 3, 4)}
    one: Mapping = {"runs_on": d.one("bars", "runners", "slides", "full_extension_bars")}
    d.maybe(0.3, keys, tray=d.one(one, {"lift_out": True}, {"grip": {"shape": d.one("slot", "curve")}}))
    return keys


PLACED = (
    # second part as (along, across), its place against the first, which lies along x and across y
    ("z", "y", {"x": {"centred_on": "first"}, "y": {"flush": "first.front"}, "z": {"against": "first.top"}}),
    ("z", "y", {"x": {"flush": "first.left"}, "y": {"flush": "first.front"}, "z": {"against": "first.top"}}),
    ("z", "x", {"x": {"centred_on": "first"}, "y": {"centred_on": "first"}, "z": {"against": "first.top"}}),
    ("x", "y", {"x": {"flush": "first.left"}, "y": {"against": "first.rear"}, "z": {"flush": "first.top"}}),
    ("y", "x", {"x": {"flush": "first.left"}, "y": {"against": "first.rear"}, "z": {"flush": "first.top"}}),
    ("y", "x", {"x": {"centred_on": "first"}, "y": {"centred_on": "first"}, "z": {"flush": "first.top"}}),
    (
        "y",
        "z",
        {"x": {"against": "first.right"}, "y": {"flush": "first.front"}, "z": {"flush": "first.under"}},
    ),
)
SUITS = (
    ENDS,
    ("butt", "rabbet", "double_rabbet", "mitre", "dovetail", "half_blind", "finger", "tongue"),
    ENDS,
    ("edge", "butt"),
    ("butt", "mortise_tenon", "half_lap", "bridle", "mitre"),
    ("half_lap",),
    ("butt", "mortise_tenon"),
)
"""Joints that a maker would think of at each of these places."""
TURNED = ({"x": "x", "y": "y", "z": "z"}, {"x": "y", "y": "z", "z": "x"}, {"x": "z", "y": "x", "z": "y"})
SIDES = {"left": "x", "right": "x", "front": "y", "rear": "y", "under": "z", "top": "z"}
LOW = {"x": "left", "y": "front", "z": "under"}
HIGH = {"x": "right", "y": "rear", "z": "top"}


def pair(d: Dice, kinds: tuple[str, ...]) -> Mapping:
    """Two loose parts joined in some way, turned any way round."""
    turned = d.one(*TURNED)
    along, across, place = d.one(*PLACED)
    stocks = ("board", "side", "panel", "leg")
    first: Mapping = {
        "stock": d.one(*stocks),
        "length": d.between(150, 600),
        "width": d.between(35, 200),
        "along": turned["x"],
        "across": turned["y"],
        "at": [0, 0, 0],
    }
    second: Mapping = {
        "stock": d.one(first["stock"], d.one(*stocks)),
        "length": d.between(150, 600),
        "width": d.one(first["width"], d.between(35, 200)),
        "along": turned[along],
        "across": turned[across],
        "place": {turned[axis]: _turned(keys, turned) for axis, keys in place.items()},
    }
    which = PLACED.index((along, across, place))
    made = joint(d, d.one(*kinds) if d.chance(0.25) else d.one(*SUITS[which]))
    return {
        "parts": {"first": first, "second": second},
        "joints": [
            {"first": "first", "second": "second", **({"kind": made} if isinstance(made, str) else made)}
        ],
    }


def _turned(keys: Mapping, turned: Mapping) -> Mapping:
    """A place with its axis and sides turned."""
    out: Mapping = {}
    for key, text in keys.items():
        name, _, side = text.partition(".")
        if side:
            axis = turned[SIDES[side]]
            side = (LOW if LOW[SIDES[side]] == side else HIGH)[axis]
        out[key] = f"{name}.{side}" if side else name
    return out
