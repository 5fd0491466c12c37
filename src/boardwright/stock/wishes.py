"""What the file wants of some parts: which parts are meant, and whether their grain can go on from one to the next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches

from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part
from boardwright.stock.choices import MOST_ALLOWED
from boardwright.stock.records import Match, PartWish, ShopChoices

MATCH_WORDS = {"sequence": "in sequence", "around": "round the corners", "book": "book-matched"}


@dataclass(frozen=True, slots=True)
class Matched:
    """Parts whose grain goes on from one to the next.

    Attributes:
        how: `sequence`, `around` or `book`.
        parts: ids, in the order in which they lie.
        path: of the wish in the file.
    """

    how: Match
    parts: tuple[str, ...]
    path: str


@dataclass(frozen=True, slots=True)
class Wishes:
    """What is wanted, part by part.

    Attributes:
        longer, wider: letter and what its parts get over, to be trimmed later [mm].
        spare: letter and how many more of it.
        matched: groups of parts; a part is in one of them at most.
    """

    longer: dict[str, float]
    wider: dict[str, float]
    spare: dict[str, int]
    matched: tuple[Matched, ...]

    def booked(self) -> set[str]:
        """Ids of parts of two leaves."""
        return {id for m in self.matched if m.how == "book" for id in m.parts}


def meant(parts: Sequence[Part], name: str) -> list[Part]:
    """Parts that a name means: an id, the start of ids, a name on the plan, or a letter."""
    bare = name.strip()
    dotted = bare.removeprefix("parts.")
    found = [p for p in parts if p.id in (bare, dotted) or p.id == f"parts.{dotted}"]
    found = found or [p for p in parts if p.id.startswith((f"{bare}.", f"{dotted}."))]
    found = found or [p for p in parts if p.name == bare]
    return found or [p for p in parts if p.letter == bare]


def read_wishes(parts: Sequence[Part], choices: ShopChoices) -> tuple[Wishes, list[Finding]]:
    """Which parts each wish of the file means.

    Args:
        parts: of the piece.
        choices: with the wishes.

    Returns:
        The wishes that can be kept, and findings for the others.
    """
    longer: dict[str, float] = {}
    wider: dict[str, float] = {}
    spare: dict[str, int] = {}
    groups: list[Matched] = []
    taken: set[str] = set()
    findings: list[Finding] = []
    for wish in choices.wishes:
        mine: dict[str, Part] = {}
        for name in wish.parts:
            found = meant(parts, name)
            if not found:
                findings.append(_no_such_part(parts, choices, wish, name))
            mine |= {p.id: p for p in found}
        for key, over in (("length", wish.longer), ("width", wish.wider)):
            if not 0 <= over <= MOST_ALLOWED:
                findings.append(_no_size(choices, wish, key, over))
                wish = replace(wish, longer=0.0) if key == "length" else replace(wish, wider=0.0)
        for letter in dict.fromkeys(p.letter for p in mine.values()):
            longer[letter] = longer.get(letter, 0.0) + wish.longer
            wider[letter] = wider.get(letter, 0.0) + wish.wider
            spare[letter] = spare.get(letter, 0) + wish.spare
        if wish.matched and mine:
            why = _why_not(wish.matched, list(mine.values()), taken)
            if why:
                findings.append(_cannot(choices, wish, why))
                continue
            taken |= set(mine)
            groups.append(Matched(wish.matched, tuple(mine), wish.path))
    return Wishes(longer, wider, spare, tuple(groups)), findings


def _why_not(how: Match, parts: Sequence[Part], taken: set[str]) -> str:
    """Why parts cannot be matched as they are asked to be; "" when they can."""
    stocks = list(dict.fromkeys(p.stock.id for p in parts))
    if len(stocks) > 1:
        return f"they are of {', '.join(stocks[:-1])} and {stocks[-1]}"
    if any(p.id in taken for p in parts):
        return "one of them is matched with others already"
    if how == "book":
        if parts[0].stock.kind != "wood":
            return "a sheet is not resawn into leaves"
        return ""
    if len(parts) < 2:
        return "it is one part alone"
    if not parts[0].stock.grain:
        return "the sheet has no grain"
    return ""


def _no_size(choices: ShopChoices, wish: PartWish, key: str, over: float) -> Finding:
    return Finding(
        "stock.shop-value", Severity.ERROR, f"`{wish.path}.trim_later.{key}` is not a size to work with",
        choices.place(f"{wish.path}.trim_later.{key}"), f"{over:g} mm", f"from 0 to {MOST_ALLOWED:g} mm",
        "common practice", "give what the part gets over, or leave it out",
    )  # fmt: skip


def _no_such_part(parts: Sequence[Part], choices: ShopChoices, wish: PartWish, name: str) -> Finding:
    names = sorted({n for p in parts for n in (p.id, p.name)})
    near = get_close_matches(name, names, 3, 0.4)
    return Finding(
        "stock.no-such-part", Severity.ERROR, f"no part is named `{name}`",
        choices.place(wish.path), name,
        "a part's name in the file or on the plan" + (f", such as {', '.join(near)}" if near else ""),
        remedy="take a name from `boardwright list FILE --ids`",
    )  # fmt: skip


def _cannot(choices: ShopChoices, wish: PartWish, why: str) -> Finding:
    return Finding(
        "stock.cannot-match", Severity.WARNING,
        f"{', '.join(wish.parts)} cannot be cut {MATCH_WORDS[wish.matched]} from one board: {why}",
        choices.place(wish.path), "", "parts of one stock, each in one wish",
        "common practice", "correct `parts`, or take `matched` out",
    )  # fmt: skip
