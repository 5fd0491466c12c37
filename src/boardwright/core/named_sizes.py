"""Named sizes that refer to each other: each worked out once, rings and unknown names refused."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from difflib import get_close_matches

from boardwright.core.length_text import Units
from boardwright.core.lengths import read_length
from boardwright.core.sums import Expression, parse

_PREFIX = "sizes."


class CircularSizes(ValueError):
    """Sizes that depend on each other in a ring.

    Attributes:
        ring: the names in order, the first one again at the end; it starts at the name that sorts first,
            so that it is the same ring wherever it is entered.
    """

    def __init__(self, names: list[str]) -> None:
        first = names.index(min(names))
        self.ring = (*names[first:], *names[:first], names[first])
        shown = " -> ".join(self.ring)
        super().__init__(f"sizes depend on each other in a ring: {shown}; give one of them a number")


class UnknownSize(ValueError):
    """A name that no size has.

    Attributes:
        name: the name as written.
        near: known names that look like it, nearest first.
    """

    def __init__(self, name: str, near: tuple[str, ...]) -> None:
        self.name = name
        self.near = near
        hint = f"nearest are {', '.join(near)}" if near else "no known name looks like it"
        super().__init__(f"no size is named '{name}'; {hint}")


class Resolver:
    """Works out named sizes.

    A name is looked up as it stands, then as `sizes.<name>`, then outside.
    """

    def __init__(
        self,
        sizes: Mapping[str, str | int | float],
        units: Units,
        outside: Callable[[str], float | None] = lambda _: None,
    ) -> None:
        """Take the sizes as they were written.

        Args:
            sizes: full name -> text, or a bare number in `units`.
            units: what a bare number means, `in` or `mm`.
            outside: length of a name that `sizes` does not hold [mm], or None.
        """
        self._sizes = dict(sizes)
        self._units: Units = units
        self._outside = outside
        self._known: dict[str, float] = {}
        self._read: dict[str, Expression] = {}
        self._open: list[str] = []

    def value(self, name: str) -> float:
        """The length of a name [mm].

        Raises:
            CircularSizes: the name depends on itself.
            UnknownSize: it, or a name that it needs, is known nowhere.
            LengthError, ArithmeticProblem: it, or a size that it needs, cannot be read or worked out.
        """
        key = self._key(name)
        if key is None:
            return self._from_outside(name)
        if key not in self._known:
            already_open = len(self._open)
            try:
                self._work_out(key)
            finally:
                del self._open[already_open:]
        return self._known[key]

    def _key(self, name: str) -> str | None:
        """The full name under which a size is held."""
        return next((key for key in (name, _PREFIX + name) if key in self._sizes), None)

    def _from_outside(self, name: str) -> float:
        found = self._outside(name)
        if found is None:
            known = sorted({*self._sizes, *(k.removeprefix(_PREFIX) for k in self._sizes)})
            raise UnknownSize(name, tuple(get_close_matches(name, known)))
        return found

    def _work_out(self, key: str) -> None:
        """Work out a size and all it needs, without recursion: chains may be long."""
        bottom = len(self._open)
        self._enter(key)
        while len(self._open) > bottom:
            top = self._open[-1]
            raw = self._sizes[top]
            if not isinstance(raw, str):
                self._known[top] = read_length(raw, self._units)
                self._open.pop()
                continue
            if top not in self._read:
                self._read[top] = parse(raw, self._units)
            needed = (self._key(name) for name in self._read[top].names)
            waiting = next((k for k in needed if k is not None and k not in self._known), None)
            if waiting is None:
                self._known[top] = self._read[top].value(self.value)
                self._open.pop()
            else:
                self._enter(waiting)

    def _enter(self, key: str) -> None:
        if key in self._open:
            raise CircularSizes(self._open[self._open.index(key) :])
        self._open.append(key)
