"""What is printed adds up exactly: texts are read back and summed as fractions, for every example in both
units."""

import re
from fractions import Fraction

import pytest

from boardwright.core.lengths import Printer, read_length

BOTH = [
    (name, units) for name in ("bolt-shelves", "button-cabinet", "ribbon-chest") for units in ("in", "mm")
]


def read(text: str) -> Fraction:
    """A printed size as the exact number that stands there: `34 19/32`, `914.5`, `(0.703)`, `-1/2`."""
    match = re.fullmatch(r"\(?(-?)(\d+\.\d+|\d+/\d+|\d+ \d+/\d+|\d+)\)?", text)
    assert match, text
    value = sum((Fraction(part) for part in match.group(2).split()), Fraction(0))
    return -value if match.group(1) else value


@pytest.mark.parametrize(
    ("text", "value"), [("34 19/32", "1107/32"), ("(0.703)", "703/1000"), ("-1/2", "-1/2"), ("18", "18")]
)
def test_reading_back(text: str, value: str) -> None:
    assert read(text) == Fraction(value)


@pytest.mark.parametrize(("name", "units"), BOTH)
def test_every_printed_chain_adds_up_exactly(example, name: str, units: str) -> None:  # type: ignore[no-untyped-def]
    _, plan = example(name, units)
    assert len(plan.chains) >= 3
    for chain in plan.chains:
        total = sum((read(m.size.text) for m in chain.members), Fraction(0))
        assert total == read(chain.whole.size.text), chain


@pytest.mark.parametrize(("name", "units"), BOTH)
def test_every_finished_size_is_on_the_step(example, name: str, units: str) -> None:  # type: ignore[no-untyped-def]
    _, plan = example(name, units)
    step = read(plan.step.text)
    for part in plan.parts:
        for size in (part.finished.length, part.finished.width):
            assert (read(size.text) / step).denominator == 1, f"{part.letter} {part.name}: {size.text}"


@pytest.mark.parametrize(("name", "units"), BOTH)
def test_texts_and_millimetres_are_the_same_size(example, name: str, units: str) -> None:  # type: ignore[no-untyped-def]
    _, plan = example(name, units)
    for part in plan.parts:
        for size in (part.finished.length, part.finished.width, part.finished.thickness):
            assert read_length(size.text.strip("()"), plan.units) == pytest.approx(size.mm, abs=2e-5)
            assert float(read(size.text)) * (25.4 if units == "in" else 1.0) == pytest.approx(
                size.mm, abs=2e-5
            )


@pytest.mark.parametrize(("name", "units"), BOTH)
def test_printed_parts_make_the_printed_outside(example, name: str, units: str) -> None:  # type: ignore[no-untyped-def]
    """Two parts that run through, and the one between them less what it has in each: that is the whole."""
    _, plan = example(name, units)
    by_id = {i.id: p for p in plan.parts for i in p.instances}
    side, top = by_id["case.side.left"], by_id["case.top"]
    depths = {c["depth"] for c in side.cuts if c.get("holds") == top.letter}
    [depth] = depths
    printed = read(Printer(plan.units, plan.step.mm).size(depth))
    total = 2 * read(side.finished.thickness.text) + read(top.finished.length.text) - 2 * printed
    outside = plan.outside["width"].text
    rounded = Fraction(5, 10_000) if plan.units == "in" else Fraction(5, 100)
    assert abs(total - read(outside)) <= (rounded if outside.startswith("(") else 0)
    exact = next(c for c in plan.chains if c.whole.label == "outside width")
    assert total == read(exact.whole.size.text)


@pytest.mark.parametrize(("name", "units"), BOTH)
def test_counts_and_letters(example, name: str, units: str) -> None:  # type: ignore[no-untyped-def]
    result, plan = example(name, units)
    assert sum(p.count for p in plan.parts) == len(result.piece.parts)
    assert all(p.count == len(p.instances) for p in plan.parts)
    letters = [p.letter for p in plan.parts]
    assert len(set(letters)) == len(letters)
    for part in plan.parts:
        if part.mirror_of:
            assert next(p for p in plan.parts if p.letter == part.mirror_of).mirror_of == part.letter
