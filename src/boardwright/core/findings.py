"""A problem is a record: where, what was found, what was expected, where that comes from, what to do."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import StrEnum


class Severity(StrEnum):
    """How much a finding matters."""

    ERROR = "error"
    """Will fail: the file is not understood, or the piece cannot be built or will not work."""
    WARNING = "warning"
    """May fail."""
    NOTE = "note"
    """Worth knowing."""


@dataclass(frozen=True, slots=True)
class Place:
    """A place in a design file. Lines and columns count from 1; 0 means unknown."""

    file: str = ""
    line: int = 0
    column: int = 0
    path: str = ""
    """Dotted path of the key, e.g. `case.inside.rows[1].drawer`."""

    def __str__(self) -> str:
        where = f"{self.file}:{self.line}:{self.column}" if self.line else self.file
        return "  ".join(s for s in (where, self.path) if s)


@dataclass(frozen=True, slots=True)
class Finding:
    """One problem, or one thing worth knowing.

    Attributes:
        code: `group.name`, stable; every code has a heading in docs/findings.md.
        severity: error, warning or note.
        message: one sentence with part letters or names, values and units.
        place: where in the file.
        found: what was found, as a sum where there is one.
        expected: what was expected, or the limit.
        source: where the limit comes from (`common practice` and `from memory` included).
        remedy: what to do, with numbers.
        parts: ids of the parts it speaks of.
        count: how many times the same thing was found (set by `grouped`).
    """

    code: str
    severity: Severity
    message: str
    place: Place = field(default_factory=Place)
    found: str = ""
    expected: str = ""
    source: str = ""
    remedy: str = ""
    parts: tuple[str, ...] = ()
    count: int = 1

    def as_dict(self) -> dict[str, object]:
        """The finding as plain data, the same in every output."""
        return {
            "code": self.code,
            "severity": self.severity.value,
            "message": self.message,
            "place": {
                "file": self.place.file,
                "line": self.place.line,
                "column": self.place.column,
                "path": self.place.path,
            },
            "found": self.found,
            "expected": self.expected,
            "source": self.source,
            "remedy": self.remedy,
            "parts": list(self.parts),
            "count": self.count,
        }

    def text(self) -> str:
        """The finding as it stands in the terminal."""
        times = f" (x {self.count})" if self.count > 1 else ""
        lines = [f"{self.severity.value} {self.code}: {self.message}{times}"]
        if str(self.place):
            lines.append(f"  {self.place}")
        middle = "; ".join(
            s
            for s in (
                f"found {self.found}" if self.found else "",
                f"expected {self.expected}" if self.expected else "",
            )
            if s
        )
        if middle or self.source:
            lines.append("  " + "   ".join(s for s in (middle, self.source) if s))
        if self.remedy:
            lines.append(f"  remedy: {self.remedy}")
        return "\n".join(lines)


_RANK = {Severity.ERROR: 0, Severity.WARNING: 1, Severity.NOTE: 2}


def ordered(findings: Iterable[Finding]) -> list[Finding]:
    """Findings in a steady order: errors first, then by place, then by code and message."""
    return sorted(
        findings, key=lambda f: (_RANK[f.severity], f.place.line, f.place.column, f.code, f.message, f.parts)
    )


def grouped(findings: Iterable[Finding]) -> list[Finding]:
    """Repeats joined into one finding with a count: same code, severity, message and place."""
    seen: dict[tuple[object, ...], Finding] = {}
    for f in findings:
        key = (f.code, f.severity, f.message, f.place)
        if key in seen:
            first = seen[key]
            parts = first.parts + tuple(p for p in f.parts if p not in first.parts)
            seen[key] = Finding(
                f.code,
                f.severity,
                f.message,
                f.place,
                first.found,
                first.expected,
                first.source,
                first.remedy,
                parts,
                first.count + f.count,
            )
        else:
            seen[key] = f
    return ordered(seen.values())


def has_errors(findings: Iterable[Finding]) -> bool:
    """True when at least one finding is an error."""
    return any(f.severity is Severity.ERROR for f in findings)
