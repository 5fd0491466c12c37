"""Random but sensible designs over the whole vocabulary of the design file; one seed gives one design."""

from __future__ import annotations

import json
from random import Random
from typing import Any, get_args

import dice_casework
import dice_forms
from boardwright.design.schema import JointKeys

INCH = 25.4
Mapping = dict[str, Any]

WOODS = ("cherry_black", "maple_sugar", "oak_white", "walnut_black", "pine_eastern_white", "yellow_poplar")
SHEETS_IN = (
    ("birch_plywood", "3/4", "0.703"),
    ("hardwood_plywood", "3/4", "23/32"),
    ("birch_plywood", "1/2", "0.472"),
)
SHEETS_MM = (
    ("birch_plywood", "18", "17.7"),
    ("hardwood_plywood", "18", "18.3"),
    ("birch_plywood", "15", "14.8"),
)
THIN_IN = (
    ("hardwood_plywood", "1/4", "0.2015"),
    ("hardwood_plywood", "1/4", "0.2515"),
    ("birch_plywood", "3/8", "9.1 mm"),
)
THIN_MM = (("birch_plywood", "6.5", "6.3"), ("birch_plywood", "4", "3.9"), ("birch_plywood", "9", "9.15"))


KINDS: tuple[str, ...] = get_args(JointKeys.model_fields["kind"].annotation)
"""Every kind of joint that the design file knows."""


class Dice:
    """Chooses; knows the units and the step of the design in hand."""

    def __init__(self, seed: int, units: str | None = None) -> None:
        self.random = Random(seed)
        self.units = units or self.one("in", "mm")
        self.stock = self.one("board", "panel")
        self.step = self.one("1/16", "1/32", "1/64") if self.units == "in" else self.one(0.1, 0.5, 1.0)

    def like(self) -> str:
        """A stock for a part of the case: mostly that of the case, as solid wood and sheets part in time."""
        return self.stock if self.chance(0.9) else str(self.one("board", "panel"))

    def one(self, *choices: Any) -> Any:
        """One of several, all alike."""
        return self.random.choice(choices)

    def chance(self, share: float) -> bool:
        """True that often."""
        return self.random.random() < share

    def between(self, low: float, high: float) -> str:
        """A length between two [mm]."""
        return self.length(self.random.uniform(low, high))

    def length(self, mm: float) -> str:
        """A length [mm] as people write it in the units; now and then off the step."""
        if self.units == "mm":
            return f"{mm:.1f}" if self.chance(0.2) else f"{mm:.0f}"
        parts = self.one(2, 4, 8, 16, 32)
        whole, rest = divmod(max(round(mm / INCH * parts), 1), parts)
        if self.chance(0.1):
            return f"{mm / INCH:.3f}"
        return f"{whole} {rest}/{parts}" if rest and whole else f"{rest}/{parts}" if rest else f"{whole}"

    def maybe(self, share: float, keys: Mapping, **given: Any) -> None:
        """Put keys in, each with a chance of its own."""
        for name, value in given.items():
            if self.chance(share):
                keys[name] = value


def design(seed: int, units: str | None = None) -> Mapping:
    """A random design.

    Args:
        seed: its number.
        units: `in` or `mm`; None for either.
    """
    d = Dice(seed, units)
    keys: Mapping = {"boardwright": 1, "title": f"Random piece {seed}", "units": d.units, "work_to": d.step}
    d.maybe(
        0.3, keys, wood_moisture={"now": d.one(6, 8, 10), "driest": d.one(4, 6), "wettest": d.one(10, 12, 14)}
    )
    keys["stock"] = _stock(d)
    form = d.one("case", "case", "case", "case", "table", "box", "pair")
    if form == "pair":
        return keys | dice_forms.pair(d, KINDS)
    if form != "case":
        keys[form] = dice_forms.table(d) if form == "table" else dice_forms.box(d)
        if d.chance(0.3):
            keys["drawers"] = _drawer(d)
        return keys
    wide, high, deep = (
        d.random.uniform(203, most) for most in (d.one(800, 1600), d.one(900, 2400), d.one(500, 650))
    )
    keys["sizes"] = {"wide": d.length(wide), "high": d.length(high), "deep": d.length(deep)}
    keys["case"] = _case(d, wide, high)
    if d.chance(0.7):
        keys["drawers"] = _drawer(d)
    if d.chance(0.12):
        _loose(d, keys)
    dice_casework.casework(d, keys["case"])
    return keys


def text(keys: Mapping) -> str:
    """A design as the text of a file (a flow mapping is YAML too)."""
    return json.dumps(keys, indent=1) + "\n"


def _stock(d: Dice) -> Mapping:
    inches = d.units == "in"
    out: Mapping = {}
    thick = d.one("3/4", "13/16", "5/8", "1") if inches else d.one("19", "20", "18", "22")
    out["board"] = {"wood": d.one(*WOODS), "thickness": thick}
    d.maybe(0.4, out["board"], sawn=d.one("flat", "quarter", "rift"))
    d.maybe(0.2, out["board"], measured=d.one("0.745", "0.781") if inches else d.one("18.85", "19.4"))
    out["side"] = {
        "wood": d.one(*WOODS),
        "thickness": d.one("1/2", "7/16", "5/8") if inches else d.one("12", "13", "15"),
    }
    thick = d.one("1 1/4", "1 1/2", "1 3/4", "2 1/4") if inches else d.one("32", "38", "45", "60")
    out["leg"] = {"wood": d.one(*WOODS), "thickness": thick}
    out["glass"] = {"sheet": "glass", "thickness": d.one("3 mm", "4 mm")}
    for name, rows in (
        ("panel", SHEETS_IN if inches else SHEETS_MM),
        ("thin", THIN_IN if inches else THIN_MM),
    ):
        family, nominal, measured = d.one(*rows)
        out[name] = {"sheet": family, "thickness": nominal}
        d.maybe(0.7, out[name], measured=measured)
        d.maybe(0.2, out[name], grain="free")
    return out


def _case(d: Dice, wide: float, high: float) -> Mapping:
    keys: Mapping = {
        "width": d.one("wide", "wide", f"wide + {d.between(10, 60)}"),
        "height": "high",
        "depth": "deep",
    }
    keys["stock"] = d.stock
    d.maybe(0.5, keys, through=d.one("sides", "top_and_bottom"))
    d.maybe(0.2, keys, sides={"stock": d.like()})
    for name in ("top", "bottom"):
        if d.chance(0.6):
            keys[name] = _deck(d, name, keys.get("through") != "top_and_bottom")
    if keys.get("through") != "top_and_bottom" and d.chance(0.12):
        keys["top"] = {"kind": "lid", "lid": dice_forms.lid(d)}
    if d.chance(0.8):
        keys["back"] = _back(d)
    if d.chance(0.95):
        keys["inside"] = _room(d, 0, wide - 50, high - 120)
    return keys


def _deck(d: Dice, name: str, under: bool) -> Mapping:
    keys: Mapping = {}
    d.maybe(0.7, keys, kind=d.one("full", "full", "full", "full", "rails", "rails", "none"))
    if name == "bottom" and (under or d.chance(0.02)):
        d.maybe(0.4, keys, up=d.between(40, 120))
    inner = "up" in keys
    d.maybe(0.3, keys, joint=_joint(d, "butt", "dado" if inner else "rabbet", "tongue"), stock=d.like())
    if not inner and d.chance(0.15):
        keys["joint"] = dice_forms.joint(d, d.one(*dice_forms.CORNERS))
    d.maybe(0.3, keys, rail_width=d.between(40, 90))
    return keys


def _joint(d: Dice, *kinds: str) -> Any:
    if d.chance(0.05):
        return dice_forms.joint(d, d.one(*KINDS))
    kind = d.one(*kinds)
    if d.chance(0.4):
        return kind
    keys: Mapping = {"kind": kind}
    d.maybe(0.4, keys, depth=d.between(4, 10), glue=d.chance(0.8))
    d.maybe(
        0.2, keys, fasten=d.one("screws", "dowels" if kind == "butt" or d.chance(0.1) else "screws", "none")
    )
    if "fasten" in keys:
        d.maybe(0.3, keys, count=d.one(2, 3, 5), screw=d.one(6, 8))
    if kind == "tongue":
        d.maybe(0.4, keys, width=d.between(4, 8))
    if kind == "dado":
        d.maybe(0.4, keys, stopped=d.between(8, 20))
    return keys


def _back(d: Dice) -> Mapping:
    keys: Mapping = {
        "set": d.one("rabbet", "rabbet", "groove", "groove", "surface", "shiplap", "tongued", "none")
    }
    d.maybe(0.4, keys, stock=d.one("thin", "thin", "thin", "side"))
    d.maybe(0.3, keys, depth=d.between(5, 12), fasten=d.one("screws", "none"))
    d.maybe(0.3, keys, inset=d.between(5, 20))
    return keys


INNER = ("butt", "dado", "dado", "tongue")
"""Joints that stand in from the end of a part."""


def _room(d: Dice, level: int, wide: float, high: float) -> Mapping:
    """A space of about so much [mm]: parted while it is not deep in the tree, else what it holds."""
    keys: Mapping = {}
    kind = d.random.random()
    rows = d.chance(0.3 + 0.4 * (high > wide))
    most = int(high / 110 if rows else wide / 160) + d.chance(0.03)
    if level < 3 and most >= 2 and kind < (0.6, 0.4, 0.2)[level]:
        count = min(d.one(2, 2, 3, 3, 4), most)
        one = (wide, high / count - 20) if rows else (wide / count - 20, high)
        keys["rows" if rows else "columns"] = spaces = [
            _sized(d, _room(d, level + 1, *one), i, max(one)) for i in range(count)
        ]
        parted = any("columns" in s for s in spaces)
        d.maybe(
            0.6, keys, between=d.one("rail", "shelf", *() if parted else ("none",)) if rows else "divider"
        )
        d.maybe(0.2, keys, stock=d.like(), joint=_joint(d, *INNER))
        return keys
    if d.chance(0.2):
        dice_forms.doors(d, keys)
    content = d.one("drawer", "drawers", "drawers", "shelves", "open", "trays")
    if content == "drawers" and high > 240:
        keys["drawers"] = _stack(d, high)
        d.maybe(0.2, keys, joint=_joint(d, *INNER), stock=d.like())
    elif content == "shelves" and high > 240:
        keys["shelves"] = {"count": d.random.randint(1, min(4, int(high / 120)))}
        d.maybe(0.3, keys["shelves"], kind=d.one("fixed", "pins"))
        d.maybe(0.4, keys["shelves"], joint=_joint(d, *INNER), stock=d.like())
    elif content == "trays" and high > 160:
        keys["trays"] = dice_forms.trays(d)
    elif content != "open" and high < 400:
        keys["drawer"] = _drawer(d) if d.chance(0.4) else {}
    else:
        keys["open"] = True
    return keys


def _sized(d: Dice, room: Mapping, index: int, most: float) -> Mapping:
    if index and d.chance(0.25):
        room["size"] = d.one(
            d.between(min(100, most / 2), min(250, most)), f"(case.height + case.width) / {d.one(12, 16)}"
        )
    elif d.chance(0.3):
        room["share"] = d.one(0.8, 1, 1.25, 1.5)
    return room


def _stack(d: Dice, high: float) -> Mapping:
    count = max(1, min(d.one(1, 2, 3, 4, 5, 6), int(high / 110)))
    keys: Mapping = {"count": count}
    if d.chance(0.4):
        keys["grow"] = d.between(3, min(25, high / count / count))
    elif d.chance(0.1):
        keys["heights"] = [d.length(high / count) for _ in range(count)]
    d.maybe(0.5, keys, between=d.one("none", "rail", "shelf"))
    d.maybe(0.3, keys, drawer=_drawer(d))
    return keys


def _drawer(d: Dice) -> Mapping:
    keys: Mapping = {}
    front: Mapping = {}
    d.maybe(0.5, front, set=d.one("inset", "overlay"), made=d.one("one_piece", "applied"))
    d.maybe(0.3, front, stock=d.like(), joint=_joint(d, "butt", "rabbet", "tongue"))
    d.maybe(0.2, front, reveal=d.between(1.5, 4), gap=d.between(2, 5))
    bottom: Mapping = {}
    d.maybe(0.5, bottom, set=d.one("groove", "rabbet", "planted"), back=d.one("captured", "under"))
    d.maybe(0.3, bottom, stock=d.one("thin", "thin", "side"), up=d.between(6, 16), depth=d.between(3, 8))
    back: Mapping = {}
    d.maybe(
        0.3, back, joint=_joint(d, "butt", "dado", "dado", "tongue", "rabbet"), stock=d.one("side", d.like())
    )
    runs_on = d.one("bars", "runners", "slides", "full_extension_bars", "centre_guide")
    d.maybe(0.8, keys, front=front, bottom=bottom, back=back, runs_on=runs_on)
    d.maybe(
        0.3 if d.stock == "board" else 0.8,
        keys,
        sides={"stock": d.one("side", d.like()) if d.stock == "board" else d.like()},
    )
    if d.chance(0.3) and runs_on in ("bars", "runners", "slides"):
        keys[runs_on] = {
            "bars": {"stock": "side", "height": d.between(9, 16), "groove": d.between(4, 7)},
            "runners": {
                "stock": "board",
                "width": d.between(20, 50),
                "thickness": d.between(10, 22),
                "guide": d.one(0, d.between(6, 15)),
            },
            "slides": {"side": d.between(12.8, 14)},
        }[runs_on]
    d.maybe(
        0.1,
        keys,
        side_clearance=d.between(0.5, 4),
        height_clearance=d.between(1, 6),
        rear_clearance=d.between(3, 20),
    )
    d.maybe(0.08, keys, box_height=d.between(50, 120))
    return {k: v for k, v in keys.items() if v != {}}


def _loose(d: Dice, keys: Mapping) -> None:
    """A block and a rail away from the case, joined to each other, with cuts of their own."""
    keys["parts"] = {
        "post": {
            "stock": "board",
            "length": d.between(300, 500),
            "width": d.between(60, 100),
            "along": "z",
            "across": "y",
            "at": ["case.width + 2 * wide", 0, 0],
            "cuts": [
                {
                    "kind": "hole",
                    "side": "face",
                    "from_end": d.between(30, 60),
                    "from_edge": d.between(20, 40),
                    "diameter": d.between(4, 8),
                },
                {
                    "kind": "groove",
                    "side": "back",
                    "along": "length",
                    "at": d.between(5, 10),
                    "width": d.between(4, 8),
                    "depth": d.between(3, 6),
                },
            ],
        },
        "arm": {
            "stock": "board",
            "length": d.between(200, 400),
            "width": d.between(30, 50),
            "along": "x",
            "across": "y",
            "at": ["parts.post.right", 0, d.between(100, 200)],
            "cuts": [
                {
                    "kind": "notch",
                    "end": "far_end",
                    "edge": "edge",
                    "length": d.between(10, 30),
                    "width": d.between(8, 15),
                }
            ],
        },
    }
    keys["joints"] = [
        {"first": "post", "second": "arm", **({"kind": j} if isinstance(j := _joint(d, *INNER), str) else j)}
    ]
