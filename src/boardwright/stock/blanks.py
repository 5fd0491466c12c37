"""Blanks: rough pieces that are cut from a board in one, milled whole, and cut apart afterwards.

Short pieces are gathered so that machines can take them; matched pieces, so that their grain goes on.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer, settle
from boardwright.stock.choices import Allowances
from boardwright.stock.records import Blank, RoughPart, ShopChoices
from boardwright.stock.wishes import MATCH_WORDS, Matched
from boardwright.stock.wording import counted

Member = tuple[RoughPart, str, int]
"""A rough piece: of which kind of part, for which part, which strip of it."""


@dataclass(frozen=True, slots=True)
class Gathered:
    """What came of a lot: its parts with new lengths, its blanks, findings."""

    parts: tuple[RoughPart, ...]
    blanks: tuple[Blank, ...]
    findings: list[Finding]


def ids_of(part: RoughPart) -> list[str]:
    """Ids of the parts of a kind, and of its spare ones."""
    return [*part.parts, *(f"{part.letter}.spare.{n}" for n in range(1, part.spare + 1))]


def strips_of(part: RoughPart, id: str) -> int:
    """How many strips a part is made of."""
    return len(part.panels[ids_of(part).index(id)]) if part.panels else part.strips


def members(parts: Sequence[RoughPart]) -> list[Member]:
    """Every rough piece of some kinds of parts, kind by kind."""
    return [(p, id, strip) for p in parts for id in ids_of(p) for strip in range(1, strips_of(p, id) + 1)]


def gather(
    lot: str,
    parts: Sequence[RoughPart],
    matched: Sequence[Matched],
    longest: float,
    allow: Allowances,
    choices: ShopChoices,
    printer: Printer,
) -> Gathered:
    """Blanks of a lot.

    Args:
        lot: its id.
        parts: kinds of parts that are cut from it.
        matched: groups of parts of the piece; those of other lots are left alone.
        longest: longest piece that its boards give [mm].
        allow: allowances.
        choices: for places in the file.
        printer: prints sizes of the plan.
    """
    wood = any(p.rough is not None for p in parts)
    owner = {id: p for p in parts for id in p.parts}
    findings: list[Finding] = []
    groups: list[tuple[str, list[Member]]] = []
    for match in matched:
        if match.how == "book" or any(id not in owner for id in match.parts):
            continue
        many = {owner[id].strips for id in match.parts}
        if len(many) > 1:
            findings.append(_strips_differ(choices, match, many))
            continue
        groups += [(match.how, [(owner[id], id, k) for id in match.parts]) for k in range(1, many.pop() + 1)]
    in_groups = {(id, k) for _, group in groups for _, id, k in group}
    if wood:
        groups += _short(parts, in_groups, allow)
    in_groups = {(id, k) for _, group in groups if len(group) > 1 for _, id, k in group}
    changed = {p.letter: _apart(p, in_groups, allow, printer) for p in parts}
    made: list[Blank] = []
    for why, group in groups:
        own = [(changed[p.letter], id, k) for p, id, k in group]
        filled = list(_filled(own, longest, allow, wood))
        if len(filled) > 1 and why != "short":
            findings.append(_broken(choices, matched, why, own, filled, longest, printer))
        for some in filled:
            name = f"{lot} blank {len(made) + 1}"
            made.append(_blank(name, lot, some, why, allow, wood, printer))
    told = {p.letter: _told(p, made, printer) for p in changed.values()}
    return Gathered(tuple(told[p.letter] for p in parts), tuple(made), findings)


def _short(
    parts: Sequence[RoughPart], taken: set[tuple[str, int]], allow: Allowances
) -> Iterator[tuple[str, list[Member]]]:
    """Pieces that are too short for the machines, by their width."""
    short = [
        m
        for m in members([p for p in parts if p.finished[0] < allow.machine_least - 1e-6])
        if (m[1], m[2]) not in taken
    ]
    short.sort(key=lambda m: -m[0].strip[1])
    for _, group in groupby(short, key=lambda m: round(m[0].strip[1], 3)):
        yield "short", sorted(group, key=lambda m: -m[0].strip[0])


def _apart(part: RoughPart, inside: set[tuple[str, int]], allow: Allowances, printer: Printer) -> RoughPart:
    """The part with the length that its pieces have in a blank, when all of them lie in blanks with others.

    Strips of a panel keep theirs: they are trimmed when the panel is glued.
    """
    if part.rough is None or part.strips > 1 or not all((id, 1) in inside for id in ids_of(part)):
        return part
    length = settle(part.finished[0] + allow.apart, printer.step, "up")
    s = printer.size
    sum = f"{s(part.finished[0])} + {s(allow.apart)} = {s(length)}"
    return replace(part, rough=(length, *part.rough[1:]), strip=(length, part.strip[1]), length_sum=sum)


def _over(allow: Allowances, wood: bool) -> float:
    """What a blank is longer than its pieces and the saw cuts between them [mm]."""
    return allow.length + 2 * allow.snipe if wood else 0.0


def _filled(group: Sequence[Member], longest: float, allow: Allowances, wood: bool) -> Iterator[list[Member]]:
    """The group in as few matched blanks as its boards allow; short pieces in blanks as machines need."""
    short = wood and all(p.finished[0] < allow.machine_least for p, _, _ in group)
    some: list[Member] = []
    length = _over(allow, wood)
    rest = sum(m[0].strip[0] + allow.kerf for m in group)
    for member in group:
        more = member[0].strip[0] + (allow.kerf if some else 0.0)
        enough = short and length >= allow.machine_least and rest + _over(allow, wood) >= allow.machine_least
        if some and (length + more > longest + 1e-6 or enough):
            yield some
            some, length, more = [], _over(allow, wood), member[0].strip[0]
        some.append(member)
        length += more
        rest -= member[0].strip[0] + allow.kerf
    yield some


def _blank(
    name: str, lot: str, some: Sequence[Member], why: str, allow: Allowances, wood: bool, printer: Printer
) -> Blank:
    s = printer.size
    lengths = [p.strip[0] for p, _, _ in some]
    over = _over(allow, wood)
    if all(p.strip[0] >= p.finished[0] + over - 1e-6 for p, _, _ in some):
        over = 0.0
    bare = sum(lengths) + allow.kerf * (len(some) - 1) + over
    length = settle(bare, printer.step, "up")
    text = " + ".join(
        f"{n} × {s(mm)}" if (n := len(list(same))) > 1 else s(mm) for mm, same in groupby(lengths)
    )
    if len(some) > 1:
        text += f" + {len(some) - 1} × {s(allow.kerf)}" if len(some) > 2 else f" + {s(allow.kerf)}"
    if over:
        text += f" + {s(over)}"
    text += f" = {s(length)}" if len(some) > 1 or over else ""
    if wood and length < allow.machine_least - 1e-6:
        length = settle(allow.machine_least, printer.step, "up")
        text += f", but {s(length)} for the machines"
    width = max(p.strip[1] for p, _, _ in some)
    return Blank(name, lot, length, width, tuple((p.letter, id, k) for p, id, k in some), why, text)


def _told(part: RoughPart, blanks: Sequence[Blank], printer: Printer) -> RoughPart:
    """The part with a line on the first of the blanks that its pieces lie in."""
    own = [b for b in blanks if any(letter == part.letter for letter, _, _ in b.pieces)]
    if not own:
        return part
    one = own[0]
    held = ", ".join(
        f"{letter} × {n}" if (n := sum(x == letter for x, _, _ in one.pieces)) > 1 else letter
        for letter in dict.fromkeys(x for x, _, _ in one.pieces)
    )
    how = "" if one.why == "short" else f", {MATCH_WORDS[one.why]}"
    more = f" (and {counted(len(own) - 1, 'more blank')})" if len(own) > 1 else ""
    size = f"{printer.size(one.length)} × {printer.size(one.width)}"
    return replace(part, blank=f"in a blank {size} with {held}{how}: {one.sum}{more}")


def _strips_differ(choices: ShopChoices, match: Matched, many: set[int]) -> Finding:
    said = ", ".join(str(n) for n in sorted(many))
    return Finding(
        "stock.cannot-match", Severity.WARNING,
        f"{', '.join(match.parts)} cannot be cut {MATCH_WORDS[match.how]} from one board: "
        f"they are glued up of {said} strips",
        choices.place(match.path), f"{said} strips", "as many strips in each",
        "common practice", "match parts of like width, or take `matched` out",
    )  # fmt: skip


def _broken(
    choices: ShopChoices,
    matched: Sequence[Matched],
    why: str,
    group: Sequence[Member],
    filled: Sequence[Sequence[Member]],
    longest: float,
    printer: Printer,
) -> Finding:
    path = next(m.path for m in matched if m.how == why and group[0][1] in m.parts)
    whole = sum(m[0].strip[0] for m in group)
    runs = " + ".join(str(len(some)) for some in filled)
    return Finding(
        "stock.match-broken", Severity.WARNING,
        f"{len(group)} parts do not come {MATCH_WORDS[why]} from one board: the grain breaks "
        + ("once" if len(filled) == 2 else f"{len(filled) - 1} times"),
        choices.place(path), f"{printer.text(whole)} end to end, in runs of {runs}",
        f"at most {printer.text(longest)}, the longest piece that the boards give",
        "", "name a longer board under `shop.boards`, or match fewer parts",
        tuple(id for _, id, _ in group),
    )  # fmt: skip


def short_findings(
    parts: Sequence[RoughPart], blanks: Sequence[Blank], allow: Allowances, printer: Printer
) -> list[Finding]:
    """Pieces shorter than machines take, gathered into longer blanks: one finding for each width of a lot.

    Args:
        parts: rough sizes of the piece.
        blanks: that its pieces are gathered in.
        allow: the shortest piece for machines.
        printer: prints sizes of the plan.
    """
    finished: Mapping[str, float] = {p.letter: p.finished[0] for p in parts}
    found = []
    short = [b for b in blanks if b.why == "short"]
    for (_, width), same in groupby(short, key=lambda b: (b.lot, b.width)):
        group = list(same)
        pieces = [piece for b in group for piece in b.pieces]
        letters = list(dict.fromkeys(x for x, _, _ in pieces))
        lengths = ", ".join(printer.size(x) for x in sorted({finished[x] for x in letters}))
        long = list(dict.fromkeys(printer.size(b.length) for b in group))
        verb = "are" if len(pieces) > 1 else "is"
        found.append(
            Finding(
                "stock.short-parts",
                Severity.NOTE,
                f"{counted(len(pieces), 'piece')} of {', '.join(letters)} {verb} shorter than machines usually take",
                found=f"finished {lengths} {printer.units} long",
                expected=f"{printer.text(allow.machine_least)} or more at the jointer and planer; "
                "the machine's manual comes first",
                source="woodworking magazine, November 2007, p. 55, the 12 in and 3 in rule",
                remedy=f"mill them in {counted(len(group), 'blank')} {' or '.join(long)} {printer.units} long, "
                f"{printer.text(width)} wide, and crosscut last",
                parts=tuple(dict.fromkeys(id for _, id, _ in pieces if ".spare." not in id)),
            )
        )
    return found
