"""Reads a sum over named sizes from left to right; `arithmetic` says what the signs mean."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from boardwright.core.expressions import (
    ArithmeticProblem,
    Choice,
    Kind,
    Lookup,
    Minus,
    Name,
    Node,
    Number,
    Product,
    Sum,
    as_length,
    multiplied,
    together,
    written,
)
from boardwright.core.length_text import GLYPHS, LengthError, Units, clean, scan, starts_number
from boardwright.core.lengths import Printer

__all__ = ["ArithmeticProblem", "Expression", "parse"]

_WORD = rf"(?:(?![{GLYPHS}])\w)"
_NAME = re.compile(rf"(?![0-9]){_WORD}+(?:\[[0-9]+\])*(?:\.{_WORD}+(?:\[[0-9]+\])*)*")
_SIMPLE_FRACTION = re.compile(r"[0-9]+/[0-9]+")
_UNIT_WORDS = frozenset(
    ["in", "inch", "inches", "ft", "foot", "feet", "mm", "cm", "m"]
    + [big + end for big in ("meter", "metre") for end in ("", "s")]
    + [small + big + end for small in ("milli", "centi") for big in ("meter", "metre") for end in ("", "s")]
)
_DEEPEST = 40


@dataclass(frozen=True, slots=True)
class Expression:
    """A sum that has been read.

    Attributes:
        root: the tree.
        units: what bare numbers mean.
        names: the names in it, each once, in the order in which they stand.
        text: the sum written evenly; it reads back to the same sum.
    """

    root: Node
    units: Units
    names: tuple[str, ...]
    text: str

    def value(self, lookup: Lookup) -> float:
        """The length [mm].

        Args:
            lookup: gives the length of a name [mm]; what it raises passes through.

        Raises:
            ArithmeticProblem: it divides by zero, or the result is no size.
        """
        try:
            mm = self.root.value(lookup)
        except OverflowError:
            mm = math.inf
        if not math.isfinite(mm):
            raise ArithmeticProblem("the result is too large to be a size", 1)
        return mm

    def sum_text(self, lookup: Lookup, printer: Printer) -> str:
        """The sum with the values filled in, without units: `36 - 2 × 3/4`.

        Args:
            lookup: gives the length of a name [mm].
            printer: how lengths are printed.

        Returns:
            The text. A length written in another unit than the printer's keeps its unit.
        """

        def filled(node: Node) -> str | None:
            if isinstance(node, Name):
                return printer.size(lookup(node.name))
            if isinstance(node, Number) and node.kind is Kind.LENGTH:
                same = node.units or node.written.unit == printer.units
                return printer.size(node.value(lookup)) if same else None
            if isinstance(node, Product) and node.units and node.units != printer.units:
                return printer.size(node.value(lookup))
            return None

        return written(self.root, filled)


def parse(text: str, units: Units) -> Expression:
    """Read a length that may be a sum over named sizes.

    Args:
        text: the sum.
        units: what a bare number means when it is a length, `in` or `mm`.

    Raises:
        ArithmeticProblem: it cannot be read, or it is no length; with the column.
    """
    reader = _Reader(clean(text), units)
    root = as_length(reader.whole(), units)
    return Expression(root, units, tuple(dict.fromkeys(reader.names)), written(root, lambda _: None))


class _Reader:
    """Reads a cleaned text from left to right."""

    def __init__(self, text: str, units: Units) -> None:
        self.text = text
        self.units = units
        self.at = 0
        self.depth = 0
        self.names: list[str] = []

    def whole(self) -> Node:
        """The whole text, with nothing left over."""
        if not self.text.strip():
            raise ArithmeticProblem("nothing is written here; write a length such as 3/4 in or 19 mm", 1)
        comma = re.search(r"[0-9],[0-9]", self.text)
        if comma:
            raise ArithmeticProblem(
                "a comma between digits may be a decimal sign or a separator; write a point for a decimal, "
                "and a space after the comma in min(…) and max(…)",
                comma.start() + 2,
            )
        node = self.sum()
        if self.peek():
            raise self.unexpected()
        return node

    def peek(self) -> str:
        """The next character that is no space, or "" at the end."""
        while self.text[self.at : self.at + 1] == " ":
            self.at += 1
        return self.text[self.at : self.at + 1]

    def sum(self) -> Node:
        """Terms with + and -."""
        first = self.product()
        signs, nodes = [False], [first]
        while self.peek() in ("+", "-"):
            signs.append(self.text[self.at] == "-")
            self.at += 1
            nodes.append(self.product())
        if len(nodes) == 1:
            return first
        nodes, kind = together(nodes, self.units)
        return Sum(tuple(zip(signs, nodes, strict=True)), kind, first.column)

    def product(self) -> Node:
        """Factors with × and ÷."""
        factors = [(False, self.signed())]
        while self.peek() in ("*", "/", "÷"):
            under = self.text[self.at] != "*"
            self.at += 1
            self.peek()
            fraction = _SIMPLE_FRACTION.match(self.text, self.at)
            start = self.at
            factor = self.signed()
            if under and fraction and isinstance(factor, Number) and factor.written.form == "fraction":
                f = fraction.group()
                top, bottom = f.split("/")
                raise ArithmeticProblem(
                    f"a fraction right after a division can be read in two ways; write ({f}) to divide by "
                    f"the fraction, or / {top} / {bottom} with spaces to divide twice",
                    start + 1,
                )
            factors.append((under, factor))
        return factors[0][1] if len(factors) == 1 else multiplied(factors)

    def signed(self) -> Node:
        """One value with its signs."""
        minus = False
        self.peek()
        start = self.at
        while self.peek() in ("+", "-"):
            minus ^= self.text[self.at] == "-"
            self.at += 1
        node = self.one()
        return Minus(node, start + 1) if minus else node

    def one(self) -> Node:
        """A number, a name, min or max, or a bracket."""
        char, start = self.peek(), self.at
        if char == "(":
            return self.bracket()
        try:
            number = scan(self.text, start)
        except LengthError as refused:
            raise ArithmeticProblem(str(refused), start + 1) from refused
        if number is not None:
            self.at = number.end
            return Number(number, start + 1)
        name = _NAME.match(self.text, start)
        if name is None:
            raise self.unexpected()
        word = name.group()
        if word.lower() in _UNIT_WORDS:
            raise ArithmeticProblem(f"the unit '{word}' has no number before it; write 1 {word}", start + 1)
        self.at = name.end()
        if self.peek() == "(":
            return self.choice(word, start)
        self.names.append(word)
        return Name(word, start + 1)

    def bracket(self) -> Node:
        """A sum in brackets; the bracket stands at the reader."""
        opened = self.at
        self.enter()
        node = self.sum()
        self.leave(opened)
        return node

    def choice(self, word: str, start: int) -> Node:
        """The branches of min or max; the bracket stands at the reader."""
        if word not in ("min", "max"):
            raise ArithmeticProblem(
                f"'{word}' is not known before a bracket; write min(…), max(…), or {word} * (…)", start + 1
            )
        opened = self.at
        self.enter()
        options = [self.sum()]
        while self.peek() == ",":
            self.at += 1
            options.append(self.sum())
        self.leave(opened)
        options, kind = together(options, self.units)
        return Choice(word, tuple(options), kind, start + 1)

    def enter(self) -> None:
        """Step over an opening bracket."""
        self.depth += 1
        if self.depth > _DEEPEST:
            raise ArithmeticProblem(
                f"brackets are nested more than {_DEEPEST} deep; give a part of the sum a name of its own",
                self.at + 1,
            )
        self.at += 1

    def leave(self, opened: int) -> None:
        """Step over a closing bracket."""
        char = self.peek()
        if not char:
            raise ArithmeticProblem("this bracket is not closed; write ) where it ends", opened + 1)
        if char != ")":
            raise self.unexpected()
        self.depth -= 1
        self.at += 1

    def unexpected(self) -> ArithmeticProblem:
        """Why what stands at the reader cannot stand there."""
        char, column = self.peek(), self.at + 1
        before = self.text[: self.at].rstrip()[-1:]
        wanted = before in ("", "+", "-", "*", "/", "÷", "(", ",")
        if not char:
            return ArithmeticProblem("the sum stops after a sign; write the value that follows it", column)
        if char == ")":
            why = "this bracket holds nothing to work out" if wanted else "this bracket was never opened"
            return ArithmeticProblem(f"{why}; write both brackets around a sum", column)
        if char == ",":
            why = "a comma stands only between the sizes of min(…) and max(…); write a point for a decimal"
            return ArithmeticProblem(why, column)
        if wanted and char in "*/÷":
            return ArithmeticProblem(f"'{char}' needs a value before it", column)
        name = _NAME.match(self.text, self.at)
        word = name.group() if name else char
        if not wanted and word.lower() in _UNIT_WORDS:
            why = f"the unit '{word}' stands after something that has one; write it after a number only"
            return ArithmeticProblem(why, column)
        if not wanted and (name or char == "(" or starts_number(self.text, self.at)):
            why = (
                f"'{word}' stands beside another value with no sign between; write +, -, * or / between them"
            )
            return ArithmeticProblem(f"{why} (units are in, ft, mm, cm, m)", column)
        why = f"'{char}' cannot stand here; write numbers, names, + - * / and brackets"
        return ArithmeticProblem(why, column)
