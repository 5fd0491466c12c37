"""Facts of the whole piece, and notes on what the plan assumes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from boardwright.checks.building import handled, masses
from boardwright.core.lengths import Printer
from boardwright.design.load import Design
from boardwright.piece.records import Piece
from boardwright.plan.schema import Allowance, Fact
from boardwright.solids.mesh import weigh
from boardwright.stock.wording import sold

POUND = 0.45359237
"""One pound [kg], exact."""


def mass_text(kg: float, units: str) -> str:
    """A mass in both units, that of the plan first: `41 kg (90 lb)`."""
    places = 0 if kg >= 10 else 1
    metric, pounds = f"{kg:.{places}f} kg", f"{kg / POUND:.{places}f} lb"
    return f"{pounds} ({metric})" if units == "in" else f"{metric} ({pounds})"


def facts(piece: Piece, printer: Printer) -> list[Fact]:
    """Weight, centre of gravity, counts, moisture."""
    weight = weigh(piece.parts)
    centre = weight.centre
    hung = any(p.name == "wall cleat" for p in piece.parts)
    low, under = (piece.outside.low[2], "its underside") if hung else (0.0, "the floor")
    out = [
        Fact(
            name="Weight, empty",
            text=f"{mass_text(weight.mass, piece.units)}, wood and sheets without hardware",
        ),
        Fact(
            name="Centre of gravity",
            text=f"{_coarse(centre[2] - low, printer)} above {under}, {_coarse(centre[1], printer)} behind the front "
            "edge",
        ),
        Fact(name="Parts", text=f"{len(piece.parts)} in {len({p.letter for p in piece.parts})} kinds"),
        *_heaviest(piece),
    ]
    for kind, name in (("drawer", "Drawers"), ("tray", "Trays")):
        text = _drawers(piece, kind)
        if text:
            out.append(Fact(name=name, text=text))
    m = piece.moisture
    if any(p.stock.kind == "wood" for p in piece.parts):
        out.append(
            Fact(
                name="Wood moisture",
                text=f"cut at {m.now:g} %; made to work from {m.driest:g} % to {m.wettest:g} %",
            )
        )
    return out


def _heaviest(piece: Piece) -> list[Fact]:
    """The heaviest part, and what is heaviest to lift or lay over while the piece is built."""
    if len(piece.parts) < 2:
        return []
    mass, by_id = masses(piece), {p.id: p for p in piece.parts}
    part = max(piece.parts, key=lambda p: mass[p.id])
    out = [
        Fact(
            name="Heaviest part", text=f"{part.letter} ({part.name}), {mass_text(mass[part.id], piece.units)}"
        )
    ]
    thing = max(handled(piece, mass), key=lambda h: h.lifted)
    if len(thing.parts) > 1:
        first = by_id[max(thing.parts, key=lambda id: mass[id])]
        groups = {by_id[id].group for id in thing.parts}
        name = next((m.name for m in piece.motions if groups == {m.id}), "")
        name = name or f"{first.letter} ({first.name}) and what is on it"
        how = ", laid over on one edge" if thing.turned else ""
        out.append(
            Fact(
                name="Heaviest to handle in building",
                text=f"{name}, {mass_text(thing.mass, piece.units)}{how}",
            )
        )
    return out


def cost_facts(cost: str) -> list[Fact]:
    """What the buying list comes to, where the rack has prices."""
    return [Fact(name="To buy", text=cost)] if cost else []


def _coarse(mm: float, printer: Printer) -> str:
    """A computed place, to 1/2 in or 10 mm; it is not a size that anyone cuts."""
    if printer.units == "in":
        return f"about {Printer('in', 12.7).text(round(mm / 12.7) * 12.7)}"
    return f"about {round(mm / 10) * 10} mm"


WAYS = {
    "bars": "wooden bars",
    "full_extension_bars": "wooden full-extension bars",
    "runners": "wooden runners",
    "centre_guide": "wooden runners with a centre guide",
    "slides": "bought slides",
    "ledgers": "ledgers",
}


def _drawers(piece: Piece, kind: str) -> str:
    counts = Counter(m.runs_on for m in piece.motions if m.kind == kind)
    return ", ".join(f"{n} on {WAYS[k]}" for k, n in counts.items())


def notes(design: Design, piece: Piece, printer: Printer) -> list[str]:
    """What the plan takes for granted, for the reader to check before cutting."""
    out = [
        f"All sizes are finished sizes in {'inches' if piece.units == 'in' else 'millimetres'}, settled on "
        f"{printer.text(piece.step)}. Nothing is to be measured off the paper.",
    ]
    stocks = list(dict.fromkeys(p.stock for p in piece.parts))
    for stock in stocks:
        if stock.kind == "sheet":
            how = "as measured" if stock.measured else "as such sheets usually measure"
            out.append(
                f"{stock.name[:1].upper()}{stock.name[1:]} sold as {sold(printer.units, stock.nominal)} "
                f"is reckoned {printer.text(stock.thickness)} thick, {how}. "
                "If yours differs, put its thickness in the design and print the plan again: "
                "grooves, insides and drawers follow."
            )
    if any(s.kind == "wood" for s in stocks):
        out.append(
            f"Solid wood is reckoned to be cut at {piece.moisture.now:g} % moisture and to live between "
            f"{piece.moisture.driest:g} % and {piece.moisture.wettest:g} % ({piece.moisture.source})."
        )
    if any(m.runs_on == "slides" for m in piece.motions):
        out.append(
            "Slides: holes are drilled by the sheet that comes with the slide in hand. "
            "Buy the slides before cutting the drawers."
        )
        out += _slide_lines(piece, printer)
    if any(m.runs_on == "bars" for m in piece.motions):
        out.append(
            "Bars and grooves run wood on wood: wax or finish them before assembly, "
            "and fit each drawer to its own bars."
        )
    out += _extension_bars(piece)
    if any(m.kind == "drawer" for m in piece.motions):
        out.append(
            "Fit every drawer to its real opening: "
            "measure the opening at front and back before cutting the drawer parts."
        )
    if any(m.runs_on == "bars" for m in piece.motions):
        out.append(
            "Inset drawers need stops: when a drawer runs and stands flush, glue a small block to the case behind "
            "each of its sides. The grooves are longer than the bars, so their round ends never touch them."
        )
    out += _hung(piece)
    out.append(
        "Not in the buying list: pulls that the design does not name, and fixings for the wall. Choose them before you "
        "cut."
    )
    if any(p.mirror_of for p in piece.parts):
        out.append("Letters marked as mirrors are left and right: lay them out in pairs, face to face.")
    return out


def _hung(piece: Piece) -> list[str]:
    """What a reader should know of doors, lids and cases that hang on a wall."""
    out = []
    if any(m.turn for m in piece.motions):
        out.append(
            "Hinges: buy them before cutting, try one on waste, and mark gains and screw holes from the hinge in "
            "hand; the sheet that comes with it goes before this plan. Fit every door to its real opening."
        )
    if any(m.kind == "lid" for m in piece.motions):
        out.append(
            "A lid that falls hurts fingers and worse: choose a stay by the weight of the lid, from its maker's "
            "sheet, that holds it in any position, and try it before the chest is used."
        )
    if any(p.name == "wall cleat" for p in piece.parts):
        out.append(
            "The wall cleat carries the case and all that is in it: screw it into the studs or the masonry of the "
            "wall with fixings chosen for that wall and load, and keep the case from being lifted off. Find pipes "
            "and cables first. Local codes and licensed practice come before this plan."
        )
    return out


def _extension_bars(piece: Piece) -> list[str]:
    """How bars that float between case and drawer are put in; nothing when there are none."""
    if not any(m.runs_on == "full_extension_bars" for m in piece.motions):
        return []
    return [
        "Full-extension bars: put two coats of finish on bars and grooves before assembly, and wax them. Slide the "
        "bars on the drawer, slide both into the case, and pull the drawer out: the screw of the rear slot then "
        "stands free behind the drawer and goes into the case, that of the front slot stands free before the case "
        "and goes into the drawer side. Drive each home, then back it off one turn, so that the bar runs. The screws "
        "are stops and carry nothing.",
    ]


def _slide_lines(piece: Piece, printer: Printer) -> list[str]:
    """Where the middle of each slide lies.

    It is measured from the lower end of the part it is screwed to, and from the lower edge of the drawer's side.
    """
    lines: dict[tuple[str, str], list[str]] = {}
    for h in piece.hardware:
        if not h.id.endswith("slide.left"):
            continue
        drawer = h.id.removesuffix(".slide.left")
        middle = (h.box.low[2] + h.box.high[2]) / 2
        walls = [
            p for p in piece.parts
            if p.group == "case" and abs(p.pose.x[2]) > 0.9
            and abs(p.box.high[0] - h.box.low[0]) < 1e-3 and p.box.low[2] < middle < p.box.high[2]
        ]  # fmt: skip
        sides = [p for p in piece.parts if p.id == f"{drawer}.left"]
        if walls and sides:
            key = (
                printer.auxiliary(middle - walls[0].box.low[2]),
                printer.auxiliary(middle - sides[0].box.low[2]),
            )
            lines.setdefault(key, []).append(drawer.split(".")[1])
    return [
        f"Slides of drawer{'s' if len(numbers) > 1 else ''} {', '.join(numbers)}: middle of the slide "
        f"{wall} from the lower end of the case part, {side} from the lower edge of the drawer side."
        for (wall, side), numbers in lines.items()
    ]


def allowances(rules: Sequence[str]) -> list[Allowance]:
    """Rules of the shop, which the stock stage writes as `what: text (source)`, taken apart."""
    out = []
    for rule in rules:
        what, _, rest = rule.partition(": ")
        text, _, source = rest.partition(" (")
        out.append(Allowance(what=what, text=text, source=source.removesuffix(")")))
    return out
