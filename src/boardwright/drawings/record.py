"""A drawing as plain data for `plan.json`, and back. Coordinates are rounded to 0.001 mm of paper."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from boardwright.drawings.records import Circle, Dimension, Drawing, Entity, Fill, Line, Text

_KINDS: dict[str, type[Line] | type[Circle] | type[Fill] | type[Text] | type[Dimension]] = {
    "line": Line,
    "circle": Circle,
    "fill": Fill,
    "text": Text,
    "dimension": Dimension,
}


def to_record(drawing: Drawing) -> dict[str, Any]:
    """The drawing as JSON-ready data; every entity is an object with its `kind`."""
    return {
        "id": drawing.id,
        "title": drawing.title,
        "scale": drawing.scale,
        "width": _plain(drawing.width),
        "height": _plain(drawing.height),
        "entities": [_entity(e) for e in drawing.entities],
    }


def from_record(data: dict[str, Any]) -> Drawing:
    """The drawing that `to_record` wrote.

    Raises:
        KeyError: an entity of an unknown kind.
        TypeError: an entity with unknown or missing fields.
    """
    entities = []
    for entity in data["entities"]:
        values = {k: _frozen(v) for k, v in entity.items() if k != "kind"}
        entities.append(_KINDS[entity["kind"]](**values))
    return Drawing(data["id"], data["title"], data["scale"], data["width"], data["height"], tuple(entities))


def _entity(e: Entity) -> dict[str, Any]:
    kind = next(k for k, t in _KINDS.items() if isinstance(e, t))
    return {"kind": kind, **{f.name: _plain(getattr(e, f.name)) for f in fields(e)}}


def _plain(v: Any) -> Any:
    if isinstance(v, tuple):
        return [_plain(x) for x in v]
    if isinstance(v, float):
        return round(v, 3) + 0.0
    return v


def _frozen(v: Any) -> Any:
    return tuple(_frozen(x) for x in v) if isinstance(v, list) else v
