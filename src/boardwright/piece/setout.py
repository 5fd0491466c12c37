"""The bench on which a piece is set out: drafts, joints, fasteners and findings, gathered by the forms."""

from __future__ import annotations

from dataclasses import dataclass, field

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.poses import Box, Vec
from boardwright.design.load import Design
from boardwright.piece.drafts import Draft
from boardwright.piece.records import (
    Chain,
    Contact,
    Fastener,
    Hardware,
    Joint,
    Moisture,
    Motion,
    Space,
    Stock,
)
from boardwright.piece.sizing import Sizer
from boardwright.tables.bundle import Tables


@dataclass(slots=True)
class SetOut:
    """Everything that is known so far while a piece is set out. One per run; never shared."""

    design: Design
    tables: Tables
    sizer: Sizer
    stocks: dict[str, Stock]
    moisture: Moisture
    drafts: dict[str, Draft] = field(default_factory=dict)
    joints: list[Joint] = field(default_factory=list)
    fasteners: list[Fastener] = field(default_factory=list)
    hardware: list[Hardware] = field(default_factory=list)
    spaces: list[Space] = field(default_factory=list)
    motions: list[Motion] = field(default_factory=list)
    chains: list[Chain] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)

    def find(
        self,
        code: str,
        message: str,
        path: str,
        *,
        severity: Severity = Severity.ERROR,
        found: str = "",
        expected: str = "",
        source: str = "",
        remedy: str = "",
        parts: tuple[str, ...] = (),
    ) -> None:
        """Keep a finding at a path of the design file."""
        self.findings.append(
            Finding(code, severity, message, self.design.place(path), found, expected, source, remedy, parts)
        )

    def stock(self, *names: tuple[str, str | None]) -> Stock:
        """The first stock that is named; the first of the file when none is.

        Args:
            names: path in the file and the name that stands there, nearest first.
        """
        for path, name in names:
            if name is None:
                continue
            if name in self.stocks:
                return self.stocks[name]
            if name not in self.design.file.stock:
                self.find(
                    "stock.unknown",
                    f"there is no stock `{name}`",
                    path,
                    found=name,
                    expected="one of " + ", ".join(self.design.file.stock),
                    remedy="name it under `stock:`, or use one of these",
                )
        return next(iter(self.stocks.values()))

    def add(
        self,
        id: str,
        name: str,
        stock: Stock,
        box: Box,
        axes: tuple[int, int],
        *,
        group: str = "case",
        show: tuple[tuple[int, bool], ...] = (),
        path: str = "",
    ) -> Draft:
        """Put a part on the bench.

        Args:
            id: unique id.
            name: for people.
            stock: what it is made of.
            box: where it is [mm].
            axes: piece axes of its length and of its width.
            group: moving group.
            show: sides seen.
            path: where the file asks for it.
        """
        draft = Draft(
            id,
            name,
            stock,
            list(box.low),
            list(box.high),
            axes[0],
            axes[1],
            group,
            set(show),
            [],
            self.design.place(path),
        )
        self.drafts[id] = draft
        return draft

    def joint(
        self,
        kind: str,
        first: Draft,
        second: Draft,
        contacts: list[Contact],
        directions: list[Vec],
        summary: str,
        *,
        glued: bool = True,
        floats: tuple[int, ...] = (),
        fasteners: tuple[str, ...] = (),
        place: Place | None = None,
    ) -> Joint:
        """Keep a joint."""
        joint = Joint(
            f"{kind}:{first.id}:{second.id}:{len(self.joints)}",
            kind,
            first.id,
            second.id,
            tuple(contacts),
            tuple(directions),
            glued,
            floats,
            fasteners,
            summary,
            place or second.place,
        )
        self.joints.append(joint)
        return joint

    def at_most(self, depth: float, most: float, what: str, path: str, thickness: float) -> float:
        """A depth that is given, or the greatest that the part takes [mm]; a finding says so.

        Args:
            depth: of a groove or rabbet [mm].
            most: the greatest [mm].
            what: what is cut, for people.
            path: where the file gives it.
            thickness: of the thinnest part [mm].
        """
        good = max(self.sizer.settled(most, "down"), self.sizer.step)
        if depth <= good + 1e-6:
            return depth
        self.find(
            "joint.too-deep",
            f"{what} is too deep",
            path,
            found=f"{self.about(depth)} in a part {self.about(thickness)} thick",
            expected=f"at most {self.down(good)}",
            source="common practice",
            remedy=f"make it {self.down(good)}",
        )
        return good

    def text(self, mm: float) -> str:
        """A size in the plan's units, without the unit."""
        return self.sizer.text(mm)

    def about(self, mm: float) -> str:
        """A size that may lie between two steps, with its unit, as a finding gives it."""
        return self.sizer.about(mm)

    def up(self, mm: float) -> str:
        """A least size, with its unit, on the step above it."""
        return self.sizer.printer.text(self.sizer.settled(mm, "up"))

    def down(self, mm: float) -> str:
        """A greatest size, with its unit, on the step below it."""
        return self.sizer.printer.text(self.sizer.settled(mm, "down"))
