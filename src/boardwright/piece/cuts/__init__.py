"""Cuts: named shop features with their own numbers, in the part's own frame.

A part's blank is the box x 0..length (along the grain), y 0..width, z 0..thickness [mm]. Its six sides:

| side | lies at | trade name |
|---|---|---|
| `face` | z = thickness | the face |
| `back` | z = 0 | the other face |
| `edge` | y = 0 | the reference edge |
| `far_edge` | y = width | the other edge |
| `end` | x = 0 | the reference end |
| `far_end` | x = length | the other end |

Solids, drawings, set-ups and strength all read these same records; none of them is ever a bare solid.
"""

from boardwright.piece.cuts.ask import entered, holds, is_plain
from boardwright.piece.cuts.fitted import (
    BiscuitSlot,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Mortise,
    Pins,
    Tails,
    Tenon,
)
from boardwright.piece.cuts.plain import Groove, Hole, Notch, Rabbet
from boardwright.piece.cuts.shaped import Bevel, Curve, Moulding, RaisedField, Taper, VGroove
from boardwright.piece.cuts.sides import Side

Fitted = Mortise | BiscuitSlot | Tenon | Fingers | Tails | Pins | DovetailSlot | DovetailTongue
Shaped = Bevel | Taper | Moulding | RaisedField | Curve | VGroove
Cut = Groove | Rabbet | Notch | Hole | Fitted | Shaped

__all__ = [
    "Bevel",
    "BiscuitSlot",
    "Curve",
    "Cut",
    "DovetailSlot",
    "DovetailTongue",
    "Fingers",
    "Fitted",
    "Groove",
    "Hole",
    "Mortise",
    "Moulding",
    "Notch",
    "Pins",
    "Rabbet",
    "RaisedField",
    "Shaped",
    "Side",
    "Tails",
    "Taper",
    "Tenon",
    "VGroove",
    "entered",
    "holds",
    "is_plain",
]
