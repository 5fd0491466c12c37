"""Ids and paths in the words that people say: where a part goes, what a size belongs to."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from boardwright.piece.cuts import Side
from boardwright.piece.records import Part

_NUMBERED = re.compile(r"^(.*?)_?(\d+)$")
_SIDES = ("left", "right")
_TOWARD = (("left", "right"), ("front", "rear"), ("bottom", "top"))
_CASE = {"top": "top of the case", "bottom": "bottom of the case", "back": "back of the case"}


def toward(same: Sequence[Part]) -> dict[str, str]:
    """Where each side of a kind of part points in the piece, in words, by `Side` value.

    A face that is seen in the finished piece is the show side, the other one the inside.

    Args:
        same: all parts of one letter.
    """
    return {side.value: _side_words(same, side) for side in Side}


def _side_words(same: Sequence[Part], side: Side) -> str:
    ways = dict.fromkeys(_direction(p, side) for p in same)
    words = " or ".join(ways)
    if side.axis != 2:
        return words
    other = Side.of(2, not side.high)
    if all(side.value in p.show and other.value not in p.show for p in same):
        return f"{words}, the show side"
    if all(other.value in p.show and side.value not in p.show for p in same):
        return f"{words}, the inside"
    return words


def _direction(part: Part, side: Side) -> str:
    axis = (part.pose.x, part.pose.y, part.pose.z)[side.axis]
    k = max(range(3), key=lambda i: abs(axis[i]))
    return _TOWARD[k][(axis[k] > 0) == side.high]


def numbers_words(one: str, numbers: Iterable[int]) -> str:
    """Numbered things of one sort: `drawer 1`, `drawers 1, 2, 5`, `drawers 1 to 6`.

    Args:
        one: the word for one of them.
        numbers: theirs, in any order.
    """
    found = sorted(set(numbers))
    if len(found) == 1:
        return f"{one} {found[0]}"
    many = "shelves" if one == "shelf" else f"{one}s"
    if len(found) > 2 and found[-1] - found[0] == len(found) - 1:
        return f"{many} {found[0]} to {found[-1]}"
    return f"{many} {', '.join(map(str, found))}"


def path_words(path: str) -> str:
    """A path of the design in words: `inside.row1.column2.width` is `row 1, column 2: width`."""
    places, rest = _split(path)
    if not places:
        places, rest = ([rest[0]], rest[1:]) if len(rest) > 1 else (rest, [])
    if places[0] == "parts" and rest:
        places, rest = [rest[0]], rest[1:]
    return ", ".join(places) + (f": {' '.join(rest)}" if rest else "")


def chain_words(text: str) -> str:
    """A label or a name with paths in it, in words: `height of inside.row2` is `height of row 2`."""
    return re.sub(r"inside\.[\w.]+", lambda m: path_words(m[0]), text)


def places_words(ids: Iterable[str]) -> str:
    """Where parts go: `left side of the case`, `drawers 1, 2: left`.

    Args:
        ids: ids of all parts of one letter.
    """
    drawers: dict[int, list[str]] = {}
    others: dict[str, None] = {}
    for id in ids:
        match = re.match(r"drawer\.(\d+)(?:\.(.*))?$", id)
        if match:
            side = next((s for s in _SIDES if s in (match[2] or "").split(".")), "")
            drawers.setdefault(int(match[1]), []).append(side)
        else:
            others[_place(id)] = None
    sides = [f"{s} side of the case" for s in _SIDES]
    if all(s in others for s in sides):
        others = {"both sides of the case": None, **{k: None for k in others if k not in sides}}
    alike: dict[str, list[int]] = {}
    for number, found in drawers.items():
        alike.setdefault(" and ".join(sorted({s for s in found if s})), []).append(number)
    return "; ".join(
        _together(others) + [numbers_words("drawer", n) + (f": {s}" if s else "") for s, n in alike.items()]
    )


def _together(places: Iterable[str]) -> list[str]:
    """`row 1, shelf 1` and `row 1, shelf 2` as `row 1, shelves 1, 2`."""
    found: dict[tuple[str, str], list[int]] = {}
    for place in places:
        before, _, last = place.rpartition(", ")
        match = re.fullmatch(r"(.+) (\d+)", last)
        name, number = (match[1], int(match[2])) if match else (last, 0)
        found.setdefault((before, name), []).append(number)
    return [
        (f"{before}, " if before else "") + (numbers_words(name, numbers) if numbers[0] else name)
        for (before, name), numbers in found.items()
    ]


def _place(id: str) -> str:
    words = id.split(".")
    if words[:2] == ["case", "side"] and words[-1] in _SIDES:
        return f"{words[-1]} side of the case"
    if words[0] == "case":
        name = _plain(".".join(words[1:])) or "case"
        return _CASE.get(name, f"{name}, case")
    places, rest = _split(id)
    return ", ".join([*places, *(w for w in rest if w != "parts")])


def _split(path: str) -> tuple[list[str], list[str]]:
    """Numbered steps of a path, and its other words; `inside` is only said when nothing else says where."""
    words = re.sub(r"\[(\d+)\]", lambda m: f".{int(m[1]) + 1}", path).split(".")
    if words[0] == "inside" and len(words) > 1 and words[1:] != ["between"]:
        words = words[1:]
        inside = True
    else:
        inside = False
    places: list[str] = []
    rest: list[str] = []
    for word in words:
        match = _NUMBERED.match(word)
        if word.isdigit() and rest:
            places.append(f"{_one(rest.pop())} {word}")
        elif match and match[1]:
            name = "opening" if inside and match[1] == "drawer" else _plain(match[1])
            places.append(f"{name} {match[2]}")
        else:
            rest.append(_plain(word))
    return places, rest


def _one(word: str) -> str:
    """One of what a list in the file holds: `joints` → `joint`."""
    return word[:-1] if word in ("joints", "rows", "columns", "drawers") else word


def _plain(word: str) -> str:
    return word.replace("_", " ").replace("-", " ").replace(".", " ")
