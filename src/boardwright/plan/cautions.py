"""The usual cautions for the machines and materials a plan involves. They never say that anything is safe."""

from __future__ import annotations

from boardwright.checks.margins import STANDING
from boardwright.piece.cuts import Groove, Hole, Rabbet
from boardwright.piece.records import Piece
from boardwright.plan.schema import Caution

MANUAL = "The manual of the machine, local codes and licensed practice come before this plan."


TALL = 600.0
"""A piece higher than this can tip on to a child even without drawers [mm]: 24 in, common practice."""


def cautions(piece: Piece) -> list[Caution]:
    """Cautions for what this piece involves, in the order of the work."""
    cuts = [c for p in piece.parts for c in p.cuts]
    wood = any(p.stock.kind == "wood" for p in piece.parts)
    channels = any(isinstance(c, (Groove, Rabbet)) for c in cuts)
    out = [_always()]
    if wood:
        out.append(_jointer())
    out.append(_saw())
    if channels:
        out.append(_grooving())
    if any(isinstance(c, Hole) for c in cuts):
        out.append(_drilling())
    if any(j.glued for j in piece.joints):
        out.append(_gluing())
    out.append(_finishing())
    out.append(_carrying())
    if any(p.name == "wall cleat" for p in piece.parts):
        out.append(_hanging())
    elif piece.motions or piece.outside.size(2) > TALL:
        out.append(_tipping(piece))
    if any(p.stock.kind == "glass" for p in piece.parts):
        out.append(_glass())
    return out


def _always() -> Caution:
    return Caution(
        about="All machine work",
        lines=[
            MANUAL,
            "Guards on, eyes and ears protected, sleeves and hair tied back, blade at rest before hands come near it.",
            (
                "Wood dust harms the lungs; dust of oak and beech is listed as causing cancer. "
                "Collect it at the machine and wear a mask that fits."
            ),
        ],
        source="wood dust: OSHA and ACGIH listings; the rest common practice",
    )


def _jointer() -> Caution:
    return Caution(
        about="Jointer and planer",
        lines=[
            "Guard over the cutter head; push blocks, never bare hands over the head; light passes.",
            (
                "Pieces under 12 in (305 mm) long or 1/4 in (6 mm) thick "
                "are jointed or planed as part of a longer or thicker one, then cut off."
            ),
        ],
        source="29 CFR 1910.213(j), via NIOSH 2004-101; school rule for the least length",
    )


def _saw() -> Caution:
    return Caution(
        about="Table saw and other saws",
        lines=[
            (
                "Blade guard, riving knife or spreader and anti-kickback fingers in place for ripping; "
                "stand out of line with the blade."
            ),
            (
                "Push stick for narrow rips; no free-hand cuts; "
                "fence and mitre gauge never together on a through cut without a stop block."
            ),
            "A whole sheet is more than one person can feed: cut it down first with a track saw or with a helper.",
        ],
        source="29 CFR 1910.213(c) and (d), via NIOSH 2004-101; the rest common practice",
    )


def _grooving() -> Caution:
    return Caution(
        about="Grooves, dadoes and rabbets",
        lines=[
            "Where the usual guard cannot stay on, use hold-downs and a push block, and put the guard back at once.",
            "Never drop a part on to a turning cutter; stopped cuts start and end against stop blocks.",
            "Set each cut on a test piece of the same stock before the part itself.",
        ],
        source="California Title 8 sec. 4296(a); the rest common practice",
    )


def _drilling() -> Caution:
    return Caution(
        about="Drilling and driving",
        lines=[
            "Clamp the part; a depth stop for every hole that must not come through; drill pilots before driving."
        ],
        source="common practice",
    )


def _gluing() -> Caution:
    return Caution(
        about="Gluing",
        lines=[
            "Read the label for open time, least temperature and skin contact; dry fit the whole glue-up first."
        ],
        source="common practice",
    )


def _finishing() -> Caution:
    return Caution(
        about="Finishing",
        lines=[
            (
                "Rags with oil or oil varnish can heat by themselves and burn within hours: "
                "spread them flat outdoors until hard, or keep them under water in a lidded metal can."
            ),
            "Read the label for vapour, flame and gloves; air the room.",
        ],
        source="university safety pages citing the fire association; insurers' notes",
    )


def _carrying() -> Caution:
    return Caution(about="What it carries", lines=[STANDING], source="common practice")


def _hanging() -> Caution:
    return Caution(
        about="Hanging on a wall",
        lines=[
            (
                "A piece that comes off its wall hurts whoever stands below: fixings that suit the wall and the load, "
                "and something that keeps the piece from being lifted off. They are not in the buying list."
            ),
            "Find pipes and cables before drilling. Two people lift it.",
        ],
        source="common practice",
    )


def _glass() -> Caution:
    return Caution(
        about="Glass",
        lines=[
            (
                "Order panes cut to size, with their edges seamed. Wear gloves that resist cuts, and eye protection. "
                "Where someone can fall against it, local codes may ask for safety glazing."
            ),
        ],
        source="common practice; local codes govern",
    )


def _tipping(piece: Piece) -> Caution:
    mm, inches = f"{round(piece.outside.size(2))} mm", f"{round(piece.outside.size(2) / 25.4)} in"
    high = f"{inches} ({mm})" if piece.units == "in" else f"{mm} ({inches})"
    return Caution(
        about="Tipping over",
        lines=[
            (
                f"A piece with {'drawers' if piece.motions else 'shelves'} can fall on a child who climbs or pulls. "
                f"This one is {high} high: fix it to the wall, with fixings that suit the wall. They are not in "
                "the buying list."
            ),
            *(
                [
                    "Clothing storage in the USA has a law of its own (16 CFR 1261, ASTM F2057-23); "
                    "a maker who sells it must meet it."
                ]
                if piece.motions
                else []
            ),
        ],
        source="16 CFR 1261.2; US Consumer Product Safety Commission guidance",
    )
