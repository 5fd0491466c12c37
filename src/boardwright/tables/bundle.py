"""All tables together, and the ways to look something up in them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from boardwright.tables.records import (
    BoardSize,
    Climate,
    Dowel,
    Figure,
    Finish,
    Glue,
    Grade,
    LumberClass,
    MoistureRange,
    Screw,
    Sheet,
    Slide,
    Species,
)

NOMINAL_MATCH = 0.3
"""How far a nominal thickness may be from the one asked for, so that 3/4 in and 19 mm are one sheet [mm]."""


@dataclass(frozen=True, slots=True)
class Tables:
    """Every table, its rows by their keys."""

    species: Mapping[str, Species]
    sheets: Mapping[str, Sheet]
    screws: Mapping[str, Screw]
    dowels: Mapping[str, Dowel]
    glues: Mapping[str, Glue]
    slides: Mapping[str, Slide]
    lumber: Mapping[str, LumberClass]
    boards: Mapping[str, BoardSize]
    grades: Mapping[str, Grade]
    finishes: Mapping[str, Finish]
    moisture: Mapping[str, MoistureRange]
    climate: Mapping[str, Climate]
    figures: Mapping[str, Figure]

    def sheet(self, family: str, nominal: float) -> Sheet | None:
        """The sheet of a family nearest to a nominal thickness [mm], if one is within `NOMINAL_MATCH`.

        Of two equally near, the later row wins, so that a user's own sheet goes before the package's.
        """
        near = [
            s
            for s in self.sheets.values()
            if s.family == family and abs(s.nominal - nominal) <= NOMINAL_MATCH
        ]
        return min(reversed(near), key=lambda s: round(abs(s.nominal - nominal), 6), default=None)

    def families(self) -> list[str]:
        """The families of sheets, in alphabetical order."""
        return sorted({s.family for s in self.sheets.values()})

    def nominals(self, family: str) -> list[float]:
        """The nominal thicknesses of a family of sheets [mm], thinnest first."""
        return sorted({s.nominal for s in self.sheets.values() if s.family == family})

    def class_for(self, finished: float, system: str) -> LumberClass | None:
        """The thinnest lumber of a system (`in` or `mm`) that finishes to a thickness [mm]."""
        enough = [c for c in self.lumber.values() if c.system == system and c.planned >= finished - 1e-6]
        return min(enough, key=lambda c: (c.rough, c.key), default=None)

    def screw(self, gauge: int) -> Screw | None:
        """The wood screw of a gauge number."""
        return next((s for s in self.screws.values() if s.gauge == gauge), None)

    def standard_boards(self, system: str) -> list[BoardSize]:
        """The boards assumed when nobody says what is on the rack, in one system (`in` or `mm`)."""
        return [b for b in self.boards.values() if b.system == system]

    def figure(self, key: str) -> Figure:
        """A figure of the trade by its key; the keys stand in the documentation of this folder.

        Raises:
            KeyError: there is no such figure.
        """
        return self.figures[key]
