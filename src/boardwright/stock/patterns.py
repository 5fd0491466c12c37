"""Patterns: how one stock is divided, as sections of strips of parts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.stock.scaled import Scaled, Shape

Strip = tuple[Shape, ...]
"""Parts side by side in direction a; a strip holds one part when there are only two stages."""
Section = tuple[Strip, ...]
"""Strips stacked in direction b."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """Sections stacked in direction a, with what they hold and take up.

    Attributes:
        sections: the division.
        counts: copies of each item, by item.
        a: extent in direction a (grid).
        b: extent in direction b (grid).
    """

    sections: tuple[Section, ...]
    counts: tuple[int, ...]
    a: int
    b: int


def strip_a(strip: Strip) -> int:
    """Extent of a strip in direction a."""
    return sum(s.a for s in strip)


def strip_b(strip: Strip) -> int:
    """Extent of a strip in direction b."""
    return max(s.b for s in strip)


def section_a(section: Section) -> int:
    """Extent of a section in direction a."""
    return max(strip_a(s) for s in section)


def section_b(section: Section) -> int:
    """Extent of a section in direction b."""
    return sum(strip_b(s) for s in section)


def pattern(question: Scaled, sections: Sequence[Section]) -> Pattern:
    """A pattern from its sections, in a steady order: wide sections first, full strips first."""
    tidy = []
    for section in sections:
        strips = [tuple(sorted(s, key=lambda p: (-p.b, -p.a, p.item, p.turned))) for s in section]
        tidy.append(tuple(sorted(strips, key=lambda s: (-strip_a(s), -strip_b(s), [p.item for p in s]))))
    tidy.sort(key=lambda s: (-section_a(s), -section_b(s), [p.item for strip in s for p in strip]))
    counts = [0] * len(question.counts)
    for section in tidy:
        for strip in section:
            for part in strip:
                counts[part.item] += 1
    a = sum(section_a(s) for s in tidy)
    return Pattern(tuple(tidy), tuple(counts), a, max((section_b(s) for s in tidy), default=0))


def clipped(question: Scaled, whole: Pattern, remaining: Sequence[int]) -> Pattern:
    """The pattern without the copies that are not wanted any more."""
    left = [min(n, r) for n, r in zip(whole.counts, remaining, strict=True)]
    if tuple(left) == whole.counts:
        return whole
    sections: list[Section] = []
    for section in whole.sections:
        strips: list[Strip] = []
        for strip in section:
            kept = []
            for part in strip:
                if left[part.item] > 0:
                    left[part.item] -= 1
                    kept.append(part)
            if kept:
                strips.append(tuple(kept))
        if strips:
            sections.append(tuple(strips))
    return pattern(question, sections)
