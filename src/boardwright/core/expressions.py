"""Sums over named sizes, as a tree: what kind of thing each branch is, its value, and how it is written.

A bare number is a number until it is added to a length, compared with one, or is the result: then it takes
the file's units. The ratio of two lengths stays a ratio and never becomes a length by itself.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from boardwright.core.length_text import LengthError, Units, WrittenLength
from boardwright.core.lengths import in_mm

Lookup = Callable[[str], float]


class ArithmeticProblem(ValueError):
    """A sum that cannot be read or worked out.

    Attributes:
        message: what is wrong and what to write instead.
        column: where in the text, counted from 1.
    """

    def __init__(self, message: str, column: int) -> None:
        self.message = message
        self.column = column
        super().__init__(f"column {column}: {message}")


class Kind(Enum):
    """What a branch of a sum is."""

    NUMBER = "a number"
    RATIO = "a ratio of two lengths"
    LENGTH = "a length"


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written; `units` is set when it counts as a length."""

    written: WrittenLength
    column: int
    units: Units | None = None

    @property
    def kind(self) -> Kind:
        """What it is."""
        return Kind.LENGTH if self.units or self.written.unit else Kind.NUMBER

    def value(self, lookup: Lookup) -> float:
        """What it is worth: a plain number, or a length [mm]."""
        if self.kind is Kind.NUMBER:
            return float(self.written.value)
        return in_mm(self.written, self.units or "mm")


@dataclass(frozen=True, slots=True)
class Name:
    """A named size."""

    name: str
    column: int
    kind: Kind = Kind.LENGTH

    def value(self, lookup: Lookup) -> float:
        """What it is worth: a plain number, or a length [mm]."""
        return lookup(self.name)


@dataclass(frozen=True, slots=True)
class Minus:
    """A branch with its sign turned."""

    inner: Node
    column: int

    @property
    def kind(self) -> Kind:
        """What it is."""
        return self.inner.kind

    def value(self, lookup: Lookup) -> float:
        """What it is worth: a plain number, or a length [mm]."""
        return -self.inner.value(lookup)


@dataclass(frozen=True, slots=True)
class Sum:
    """Terms, each added or taken away (True)."""

    terms: tuple[tuple[bool, Node], ...]
    kind: Kind
    column: int

    def value(self, lookup: Lookup) -> float:
        """What it is worth: a plain number, or a length [mm]."""
        total = 0.0
        for less, term in self.terms:
            worth = term.value(lookup)
            total = total - worth if less else total + worth
        return total


@dataclass(frozen=True, slots=True)
class Product:
    """Factors, each multiplied by or divided by (True); `units` is set when it counts as a length."""

    factors: tuple[tuple[bool, Node], ...]
    own_kind: Kind
    column: int
    units: Units | None = None

    @property
    def kind(self) -> Kind:
        """What it is."""
        return Kind.LENGTH if self.units else self.own_kind

    def value(self, lookup: Lookup) -> float:
        """What it is worth: a plain number, or a length [mm]."""
        total = 25.4 if self.units == "in" else 1.0
        for under, factor in self.factors:
            worth = factor.value(lookup)
            if under and worth == 0:
                raise ArithmeticProblem("this divides by zero; divide by something else", factor.column)
            total = total / worth if under else total * worth
        return total


@dataclass(frozen=True, slots=True)
class Choice:
    """The least or the greatest of some branches."""

    word: str
    options: tuple[Node, ...]
    kind: Kind
    column: int

    def value(self, lookup: Lookup) -> float:
        """What it is worth: a plain number, or a length [mm]."""
        worths = [o.value(lookup) for o in self.options]
        return min(worths) if self.word == "min" else max(worths)


Node = Number | Name | Minus | Sum | Product | Choice


def as_length(node: Node, units: Units) -> Node:
    """The branch as a length: bare numbers in it take the units.

    Raises:
        ArithmeticProblem: it is a ratio, or a bare fraction where the units are millimetres.
    """
    if node.kind is Kind.LENGTH:
        return node
    if node.kind is Kind.RATIO:
        raise ArithmeticProblem(
            "a length divided by a length is a plain ratio, not a length; multiply it by a length",
            node.column,
        )
    if isinstance(node, Number):
        try:
            in_mm(node.written, units)
        except LengthError as refused:
            raise ArithmeticProblem(str(refused), node.column) from refused
        return Number(node.written, node.column, units)
    if isinstance(node, Minus):
        return Minus(as_length(node.inner, units), node.column)
    if isinstance(node, Product):
        return Product(node.factors, node.own_kind, node.column, units)
    if isinstance(node, Choice):
        return Choice(node.word, tuple(as_length(o, units) for o in node.options), Kind.LENGTH, node.column)
    if isinstance(node, Sum):
        return Sum(tuple((less, as_length(t, units)) for less, t in node.terms), Kind.LENGTH, node.column)
    return node


def together(nodes: list[Node], units: Units) -> tuple[list[Node], Kind]:
    """Branches that are added or compared, made one kind: lengths when one of them is a length.

    Raises:
        ArithmeticProblem: a ratio stands beside a length.
    """
    kinds = {n.kind for n in nodes}
    if Kind.LENGTH in kinds:
        return [as_length(n, units) for n in nodes], Kind.LENGTH
    return nodes, Kind.RATIO if Kind.RATIO in kinds else Kind.NUMBER


def multiplied(factors: list[tuple[bool, Node]]) -> Product:
    """A product, with its kind worked out from left to right.

    Raises:
        ArithmeticProblem: a length times a length, or a number divided by a length.
    """
    kind = factors[0][1].kind
    for under, factor in factors[1:]:
        length = factor.kind is Kind.LENGTH
        if length and kind is Kind.LENGTH:
            if not under:
                raise ArithmeticProblem(
                    "a length times a length is an area, not a length; multiply by a plain number or a ratio",
                    factor.column,
                )
            kind = Kind.RATIO
        elif length and under:
            raise ArithmeticProblem(
                "a number divided by a length is not a length; divide a length by a number or by a length",
                factor.column,
            )
        elif length:
            kind = Kind.LENGTH
        elif factor.kind is Kind.RATIO and kind is Kind.NUMBER:
            kind = Kind.RATIO
    return Product(tuple(factors), kind, factors[0][1].column)


def written(node: Node, leaf: Callable[[Node], str | None]) -> str:
    """A branch as text that reads back to the same branch; `leaf` may give the text of any branch itself."""
    own = leaf(node)
    if own is not None:
        return own
    if isinstance(node, Number):
        return node.written.text
    if isinstance(node, Name):
        return node.name
    if isinstance(node, Minus):
        inner = written(node.inner, leaf)
        wrap = isinstance(node.inner, Sum | Product) or inner.startswith("-")
        return f"-({inner})" if wrap else f"-{inner}"
    if isinstance(node, Choice):
        return f"{node.word}({', '.join(written(o, leaf) for o in node.options)})"
    if isinstance(node, Sum):
        parts = [(" - " if less else " + ", t, written(t, leaf)) for less, t in node.terms]
        texts = [sign + _wrapped(s, isinstance(t, Sum), first=not i) for i, (sign, t, s) in enumerate(parts)]
        return "".join(texts)[3:]
    parts = [(" ÷ " if under else " × ", f, written(f, leaf)) for under, f in node.factors]
    texts = []
    for i, (sign, f, s) in enumerate(parts):
        bar = sign == " ÷ " and "/" in s and isinstance(f, Number | Name)
        texts.append(sign + _wrapped(s, bar or isinstance(f, Sum | Product), first=not i))
    return "".join(texts)[3:]


def _wrapped(text: str, always: bool, *, first: bool) -> str:
    """A branch in brackets where it needs them: always, or with a minus sign after an operator."""
    return f"({text})" if always or (text.startswith("-") and not first) else text
