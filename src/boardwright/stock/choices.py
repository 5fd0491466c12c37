"""What the shop reckons with: its own choices where the file gives them, the trade's figures elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.lengths import INCH, Printer, settle
from boardwright.core.rack import Defect
from boardwright.design.load import Design
from boardwright.design.schema import DefectEntry, Shop
from boardwright.stock.records import PartWish, ShopChoices
from boardwright.tables.bundle import Tables

WIDEST_KERF = INCH / 4
"""A wider saw cut than this is taken for a slip [mm]; circular saws cut 1/16 to 3/16 in (common practice)."""
LEAST_STRIP = INCH
"""A glue-up of narrower strips than this is taken for a slip [mm]."""
USUAL_LEAST_STRIP = {"in": 2 * INCH, "mm": 50.0}
"""Narrowest strip of a glue-up when the shop says nothing [mm]: narrower ones are many joints (common practice)."""
MACHINE_MINIMUM = {"in": 12 * INCH, "mm": 300.0}
"""Shortest piece that jointers and planers are usually fed [mm]: woodworking magazine, Nov. 2007, p. 55."""
LONGEST_LEAST = 48 * INCH
"""A longer least length for machines than this is taken for a slip [mm]."""
MOST_ALLOWED = 12 * INCH
"""A larger allowance than this is taken for a slip [mm]."""
WIDEST_TRIM = 4 * INCH
"""A wider trim of a sheet than this is taken for a slip [mm]."""


def shop_choices(design: Design, read: Callable[[str], float | None]) -> ShopChoices:
    """What the design file says of the shop.

    Args:
        design: the file.
        read: length of a path [mm], e.g. of `shop.kerf`; None, or a ValueError, where it cannot be worked out
            (which is a finding of the stage that sets the piece out).
    """
    shop = design.file.shop or Shop()
    places: list[tuple[str, Place]] = [(p, design.place(p)) for p in ("finish.kind", "shop.prices")]

    def length(path: str, given: object) -> float | None:
        if given is None:
            return None
        places.append((path, design.place(path)))
        try:
            return read(path)
        except ValueError:
            return None

    boards = []
    defects = []
    for n, entry in enumerate(shop.boards or ()):
        path = f"shop.boards[{n}]"
        places.append((path, design.place(path)))
        sizes = (length(f"{path}.length", entry.length), length(f"{path}.width", entry.width))
        if sizes[0] is not None and sizes[1] is not None:
            boards.append((entry.stock, sizes[0], sizes[1], entry.count))
            defects.append(tuple(_defects(path, entry.defects or (), length)))
            own = [f"{path}.defects[{k}]" for k in range(len(defects[-1]))]
            places += [(each, design.place(each)) for each in own]
    sheets = []
    for n, sheet in enumerate(shop.sheets or ()):
        path = f"shop.sheets[{n}]"
        places.append((path, design.place(path)))
        sizes = (length(f"{path}.length", sheet.length), length(f"{path}.width", sheet.width))
        if sizes[0] is not None and sizes[1] is not None:
            sheets.append((sheet.stock, sizes[0], sizes[1], sheet.price))
    given = []
    for name in type(shop.allowances).model_fields if shop.allowances else ():
        mm = length(f"shop.allowances.{name}", getattr(shop.allowances, name))
        if mm is not None:
            given.append((name, mm))
    return ShopChoices(
        length("shop.kerf", shop.kerf),
        length("shop.sheet_trim", shop.sheet_trim),
        length("shop.strip_max", shop.strip_max),
        tuple(boards),
        tuple(given),
        length("shop.strip_min", shop.strip_min),
        length("shop.machine_least", shop.machine_least),
        shop.test_pieces,
        shop.bark_sides or "alternate",
        shop.grade or "fas",
        design.file.finish.kind if design.file.finish else "",
        design.file.finish.coats if design.file.finish else None,
        tuple((name, p.price, p.per) for name, p in (shop.prices or {}).items()),
        tuple(_wishes(design, length, places)),
        tuple(places),
        sheets=tuple(sheets),
        defects=tuple(defects),
    )


def _defects(
    board: str, entries: Sequence[DefectEntry], length: Callable[[str, object], float | None]
) -> Iterator[Defect]:
    """The defects of a board on hand, in the file's order."""
    for n, entry in enumerate(entries):
        path = f"{board}.defects[{n}]"
        keys = (
            ("at[0]", entry.at[0]),
            ("at[1]", entry.at[1]),
            ("length", entry.length),
            ("width", entry.width),
        )
        x, y, long, wide = (length(f"{path}.{key}", given) for key, given in keys)
        if x is not None and y is not None and long is not None and wide is not None:
            yield Defect(x, y, long, wide, entry.what or "")


def _wishes(
    design: Design, length: Callable[[str, object], float | None], places: list[tuple[str, Place]]
) -> Iterator[PartWish]:
    """What the file wants of some parts, in its order."""
    for n, entry in enumerate(design.file.rough or ()):
        path = f"rough[{n}]"
        places.append((path, design.place(path)))
        trim = entry.trim_later
        longer = length(f"{path}.trim_later.length", trim.length if trim else None)
        wider = length(f"{path}.trim_later.width", trim.width if trim else None)
        names = (entry.parts,) if isinstance(entry.parts, str) else tuple(entry.parts)
        yield PartWish(path, names, entry.matched or "", longer or 0.0, wider or 0.0, entry.spare or 0)


@dataclass(frozen=True, slots=True)
class Allowances:
    """What is added and taken off, in round figures of the plan's units [mm].

    Attributes:
        planing: thickness, both faces together. planing_long: the same, for parts over 6 ft.
        width, length: a part cut from a jointed board.
        panel_width, panel_length: a glued-up panel before it is trimmed.
        edge_joint: each edge in a glue-up. flatten: left on the thickness of its strips.
        end_trim: each end of a board. edge_trim: each edge of a board, half of its jointing and ripping; sapwood in it.
        kerf: the saw's cut. sheet_trim: each edge of a sheet.
        strip_max: widest strip as the file gives it, or None. strip_min: narrowest.
        snipe: more on each end of what is planed. apart: on each piece of a blank.
        machine_least: shortest piece for the jointer and the planer.
        face_given: the file gives what is planed off, so the table of lumber is not asked what it is planned for.
        test_pieces: for trying set-ups, of each thickness with joints.
        resaw_kerf, resaw_face: of resawing: the cut, and what is planed off each sawn face.
    """

    planing: float
    planing_long: float
    width: float
    length: float
    panel_width: float
    panel_length: float
    edge_joint: float
    flatten: float
    end_trim: float
    edge_trim: float
    kerf: float
    sheet_trim: float
    strip_max: float | None
    strip_min: float
    snipe: float
    apart: float
    machine_least: float
    face_given: bool
    test_pieces: int
    resaw_kerf: float
    resaw_face: float


def allowances(
    tables: Tables, choices: ShopChoices, printer: Printer
) -> tuple[Allowances, tuple[str, ...], list[Finding]]:
    """Allowances in the plan's units, a line on each that the file gives or the trade uses, and findings.

    In inches a figure goes up to the plan's step; in millimetres the trade's inch figures go to the nearest
    whole millimetre, and the kerf up to the next 0.1 mm.
    """
    reader = _Reader(tables, choices, printer)
    allow = reader.read()
    return allow, tuple(reader.rules), reader.findings


class _Reader:
    """Reads allowances: the file's, else the trade's; notes a line on each, and findings."""

    def __init__(self, tables: Tables, choices: ShopChoices, printer: Printer) -> None:
        self.tables, self.choices, self.printer = tables, choices, printer
        self.given = dict(choices.allowances)
        self.rules: list[str] = []
        self.findings: list[Finding] = []

    def figure(self, key: str, what: str, halves: int = 1, high: bool = False) -> float:
        """A figure of the trade in round units of the plan."""
        row = self.tables.figure(key)
        mm = (row.high if high and row.high is not None else row.value) / halves
        printer = self.printer
        settled = settle(mm, printer.step, "up") if printer.units == "in" else max(1.0, settle(mm, 1.0))
        if what:
            self.rules.append(f"{what}: {printer.text(settled)} ({row.reason})")
        return settled

    def chosen(self, name: str, what: str, given: float | None, low: float, high: float) -> float | None:
        """What the file gives, when it is a size to work with."""
        if given is None:
            return None
        if low <= given <= high:
            if what:
                self.rules.append(f"{what}: {self.printer.text(given)} (`shop.{name}`)")
            return given
        self.findings.append(
            Finding(
                "stock.shop-value", Severity.ERROR, f"`shop.{name}` is not a size to work with",
                self.choices.place(f"shop.{name}"), self.printer.text(given),
                f"from {self.printer.text(low)} to {self.printer.text(high)}", "common practice",
                "give it as it is in the shop, or leave it out",
            )
        )  # fmt: skip
        return None

    def own(self, name: str, key: str, what: str, sides: int = 1, halves: int = 1) -> float:
        """An allowance: the file's for one side, times `sides`; or the trade's figure."""
        each = self.chosen(f"allowances.{name}", "", self.given.get(name), 0.0, MOST_ALLOWED)
        if each is None:
            return self.figure(key, what, halves)
        total = each * sides
        self.rules.append(f"{what}: {self.printer.text(total)} (`shop.allowances.{name}`)")
        return total

    def extra(self, name: str, what: str) -> float:
        """An allowance that is nothing unless the file gives it."""
        return self.chosen(f"allowances.{name}", what, self.given.get(name), 0.0, MOST_ALLOWED) or 0.0

    def kerf(self) -> float:
        """The saw's cut."""
        kerf = self.chosen("kerf", "saw cut", self.choices.kerf, 0.0, WIDEST_KERF)
        if kerf is None:
            row = self.tables.figure("kerf_table_saw")
            kerf = row.value if self.printer.units == "in" else settle(row.value, 0.1, "up")
            self.rules.append(f"saw cut: {self.printer.text(kerf)} ({row.applies_to}, {row.reason})")
        return kerf

    def read(self) -> Allowances:
        """All of them, in the order in which they are printed."""
        choices, units = self.choices, self.printer.units
        kerf = self.kerf()
        trim = self.chosen("sheet_trim", "each edge of a sheet", choices.sheet_trim, 0.0, WIDEST_TRIM)
        planing = self.own("face", "planing_allowance", "planing, both faces together", 2)
        face_given = "face" in self.given
        long = planing if face_given else self.figure("planing_allowance", "", high=True)
        width = self.own("edge", "rough_width_allowance", "width of a rough part, over finished", 2)
        length = self.own("end", "rough_length_allowance", "length of a rough part, over finished", 2)
        panel_width = self.own(
            "panel_edge", "panel_width_oversize", "width of a glued-up panel, over finished", 2
        )
        panel_length = self.own(
            "panel_end", "panel_length_oversize", "length of a glued-up panel, over finished", 2
        )
        joint = self.own("joint", "edge_joint_allowance", "each edge of a strip, for the last jointing")
        flatten = self.own(
            "flatten", "panel_flattening", "strips of a panel, thicker than finished where the lumber has it"
        )
        end_trim = self.own("end_trim", "end_trim", "each end of a board, for checks")
        edge = self.own(
            "board_edge",
            "board_width_allowance",
            "each edge of a board, to joint one and rip the other",
            1,
            2,
        )
        edge += self.extra("sapwood", "each edge of a board besides, sapwood")
        snipe = self.extra("snipe", "each end of what is planed, for the planer's dip")
        apart = self.own("apart", "ganged_length_allowance", "each piece of a blank that is cut apart later")
        sheet_trim = trim if trim is not None else self.figure("sheet_edge_trim", "each edge of a sheet")
        strip_max = self.chosen(
            "strip_max", "widest strip in a glue-up", choices.strip_max, LEAST_STRIP, 100 * INCH
        )
        usual = min(USUAL_LEAST_STRIP[units], strip_max or USUAL_LEAST_STRIP[units])
        strip_min = self.chosen(
            "strip_min",
            "narrowest strip in a glue-up",
            choices.strip_min,
            LEAST_STRIP,
            strip_max or 100 * INCH,
        )
        least = self.chosen(
            "machine_least", "shortest piece at the machines", choices.machine_least, 0.0, LONGEST_LEAST
        )
        return Allowances(
            planing, long, width, length, panel_width, panel_length, joint, flatten, end_trim, edge, kerf,
            sheet_trim, strip_max, usual if strip_min is None else strip_min, snipe, apart,
            MACHINE_MINIMUM[units] if least is None else least, face_given,
            1 if choices.test_pieces is None else choices.test_pieces,
            self.figure("resaw_kerf", ""), self.figure("resaw_face_allowance", ""),
        )  # fmt: skip
