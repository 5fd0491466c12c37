"""Cuts as plain data and back: `{"kind": "groove", "side": "face", …}`, as they stand in `plan.json`."""

from __future__ import annotations

import re
from dataclasses import MISSING, fields
from typing import Any

from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    Cut,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
    Mortise,
    Moulding,
    Notch,
    Pins,
    Rabbet,
    RaisedField,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
)

KINDS: dict[str, type[Cut]] = {
    "groove": Groove,
    "rabbet": Rabbet,
    "notch": Notch,
    "hole": Hole,
    "mortise": Mortise,
    "biscuit slot": BiscuitSlot,
    "tenon": Tenon,
    "fingers": Fingers,
    "tails": Tails,
    "pins": Pins,
    "dovetail slot": DovetailSlot,
    "dovetail tongue": DovetailTongue,
    "bevel": Bevel,
    "taper": Taper,
    "moulding": Moulding,
    "raised field": RaisedField,
    "curve": Curve,
    "V groove": VGroove,
}
_NAMES: dict[type[Cut], str] = {cls: kind for kind, cls in KINDS.items()}


def cut_to_data(cut: Cut) -> dict[str, Any]:
    """A cut as JSON data: its `kind`, then its numbers in the order of the record.

    Args:
        cut: in the part's own frame; lengths [mm].

    Returns:
        Strings, numbers, booleans and lists only. The field `for_` is written `for`.
    """
    data: dict[str, Any] = {"kind": _NAMES[type(cut)]}
    for f in fields(cut):
        value = getattr(cut, f.name)
        data[f.name.rstrip("_")] = _data(value)
    return data


def _data(value: Any) -> Any:
    if isinstance(value, Side):
        return value.value
    return [_data(v) for v in value] if isinstance(value, tuple) else value


def cut_from_data(data: dict[str, Any]) -> Cut:
    """The cut that `cut_to_data` wrote.

    Args:
        data: as given by `cut_to_data`; lengths [mm].

    Returns:
        The cut.

    Raises:
        ValueError: unknown kind, unknown or missing key, a value of the wrong type, or no such side.
    """
    rest = dict(data)
    kind = rest.pop("kind", None)
    if kind not in KINDS:
        raise ValueError(f"unknown kind of cut {kind!r}; expected one of {', '.join(KINDS)}")
    values: dict[str, Any] = {}
    for f in fields(KINDS[kind]):
        key = f.name.rstrip("_")
        if key in rest:
            values[f.name] = _value(kind, key, str(f.type), rest.pop(key))
        elif f.default is MISSING:
            raise ValueError(f"{kind}: `{key}` is missing")
    if rest:
        raise ValueError(f"{kind}: unknown {', '.join(f'`{k}`' for k in rest)}")
    return KINDS[kind](**values)


def _value(kind: str, key: str, type_name: str, value: Any) -> Any:
    """A JSON value as the record holds it; `type_name` is the field's annotation as written."""
    number = isinstance(value, int | float) and not isinstance(value, bool)
    if type_name == "Side" and isinstance(value, str):
        return Side(value)
    if type_name == "float" and number:
        return float(value)
    if type_name == "int" and isinstance(value, int) and number:
        return value
    if type_name in ("str", "bool") and type(value).__name__ == type_name:
        return value
    many = re.fullmatch(r"tuple\[(.*), \.\.\.\]", type_name)
    if many and isinstance(value, list):
        return tuple(_value(kind, key, many[1], v) for v in value)
    some = re.fullmatch(r"tuple\[(float(?:, float)*)\]", type_name)
    if some and isinstance(value, list) and len(value) == some[1].count("float"):
        return tuple(_value(kind, key, "float", v) for v in value)
    raise ValueError(f"{kind}: `{key}` cannot be {value!r}")
