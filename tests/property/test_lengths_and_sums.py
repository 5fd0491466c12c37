"""Laws of lengths and sums, on random ones."""

import math
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from boardwright.core.arithmetic import ArithmeticProblem, parse
from boardwright.core.length_text import GLYPHS
from boardwright.core.lengths import LengthError, Printer, read_length, settle, share_out

LAWS = settings(derandomize=True, database=None, deadline=None)
STEPS = [("in", 25.4 / n) for n in (2, 4, 8, 16, 32, 64)] + [("mm", s) for s in (0.1, 0.2, 0.5, 1.0)]
steps = st.sampled_from(STEPS)
counts = st.integers(-200_000, 200_000)
INCH = Fraction(254, 10)


@LAWS
@given(steps, counts)
def test_what_is_printed_reads_back_the_same(step, count):
    units, mm = step
    size = settle(count * mm, mm)
    printer = Printer(units, mm)
    assert printer.on_step(size)
    for other in ("in", "mm"):
        assert read_length(printer.text(size), other) == size
    assert read_length(printer.size(size), units) == size
    assert parse(printer.size(size), units).value(lambda _: math.nan) == size


@LAWS
@given(steps, st.floats(-1e4, 1e4))
def test_what_is_printed_is_never_rounded_to_the_step(step, mm):
    printer = Printer(*step)
    last_place = 25.4e-6 if step[0] == "in" else 1e-3
    assert abs(read_length(printer.text(mm), step[0]) - mm) <= max(last_place / 2, 1e-6) + 1e-9


@LAWS
@given(steps, st.floats(-1e4, 1e4))
def test_settling_is_idempotent_and_on_the_asked_side(step, mm):
    s = step[1]
    noise = 2e-6 * s
    down, near, up = settle(mm, s, "down"), settle(mm, s), settle(mm, s, "up")
    assert down <= mm + noise
    assert up >= mm - noise
    assert up - down <= s * 1.000001
    assert abs(near - mm) <= s / 2 + noise
    for size in (down, near, up):
        assert all(settle(size, s, d) == size for d in ("down", "nearest", "up"))


@LAWS
@given(steps, st.floats(0, 5000), st.lists(st.integers(1, 6), min_size=1, max_size=8), st.booleans())
def test_sharing_out_adds_up_and_is_fair(step, total, weights, settled):
    s = step[1]
    total = settle(total, s) if settled else total
    pieces = share_out(total, weights, s)
    assert abs(math.fsum(pieces) - total) <= 1e-9 + 1e-6 * s
    assert all(settle(p, s) == p for p in pieces[: None if settled else -1])
    for piece, weight in zip(pieces, weights, strict=True):
        assert abs(piece - total * weight / sum(weights)) <= s * 1.00001
    for weight in set(weights):
        same = [p for p, w in zip(pieces, weights, strict=True) if w == weight]
        assert max(same) - min(same) <= s * 1.00001


@LAWS
@given(st.integers(2, 9), st.integers(0, 900), steps)
def test_equal_shares_keep_the_outer_pieces_equal(pieces, count, step):
    s = step[1]
    shares = share_out(settle(count * s, s), [1] * pieces, s)
    if pieces > 2:
        assert shares[0] == shares[-1]
    odd = [a != b for a, b in zip(shares, reversed(shares), strict=True)]
    assert sum(odd) <= 2


numbers = st.one_of(
    st.integers(0, 40).map(lambda n: (str(n), Fraction(n))),
    st.tuples(st.integers(0, 31), st.sampled_from([2, 4, 8, 16, 32])).map(
        lambda f: (f"({f[0]}/{f[1]})", Fraction(*f))
    ),
    st.tuples(st.integers(1, 40), st.integers(1, 7)).map(
        lambda f: (f"({f[0]} {f[1]}/8)", f[0] + Fraction(f[1], 8))
    ),
    st.integers(0, 400).map(lambda n: (f"{n // 100}.{n % 100:02d}", Fraction(n, 100))),
)
NAMES = {"a": Fraction(7), "case.b[2].size": Fraction(5, 4)}
lengths = st.one_of(
    st.sampled_from(sorted(NAMES)).map(lambda n: (n, NAMES[n] * INCH)),
    st.integers(0, 900).map(lambda n: (f"{n} mm", Fraction(n))),
    st.tuples(st.integers(0, 9), st.integers(0, 11)).map(
        lambda f: (f"{f[0]}' {f[1]}\"", (f[0] * 12 + f[1]) * INCH)
    ),
)


def grown(inner):
    """A length made of lengths, with its value in mm kept beside the text in fractions."""
    return st.one_of(
        st.tuples(inner, inner).map(lambda p: (f"{p[0][0]} + ({p[1][0]})", p[0][1] + p[1][1])),
        st.tuples(inner, inner).map(lambda p: (f"{p[0][0]} - ({p[1][0]})", p[0][1] - p[1][1])),
        st.tuples(inner, numbers).map(lambda p: (f"{p[0][0]} - {p[1][0]}", p[0][1] - p[1][1] * INCH)),
        st.tuples(numbers, inner).map(lambda p: (f"{p[0][0]}*({p[1][0]})", p[0][1] * p[1][1])),
        st.tuples(inner, numbers.filter(lambda n: n[1])).map(
            lambda p: (f"({p[0][0]})/{p[1][0]}", p[0][1] / p[1][1])
        ),
        st.tuples(inner, inner).map(lambda p: (f"min({p[0][0]}, {p[1][0]})", min(p[0][1], p[1][1]))),
        st.tuples(inner, numbers).map(lambda p: (f"max({p[1][0]}, {p[0][0]})", max(p[0][1], p[1][1] * INCH))),
        inner.map(lambda p: (f"-({p[0]})", -p[1])),
    )


@settings(LAWS, max_examples=200)
@given(st.recursive(lengths, grown, max_leaves=8))
def test_sums_agree_with_fractions(pair):
    text, exact = pair
    expression = parse(text, "in")

    def lookup(name):
        return float(NAMES[name] * INCH)

    value = expression.value(lookup)
    assert math.isclose(value, exact, rel_tol=1e-9, abs_tol=1e-6)
    again = parse(expression.text, "in")
    assert (again.text, again.value(lookup)) == (expression.text, value)
    assert expression.sum_text(lookup, Printer("in", 25.4 / 32))


pieces = st.sampled_from(
    [
        *"0123456789 .,-+*/÷×()[]'\"_",
        *GLYPHS,
        "in",
        "ft",
        "mm",
        "cm",
        "m",
        "min(",
        "max(",
        "a",
        "a.b[1]",
        "−",
        "’",
        "\u2009",
    ]
)
scraps = st.one_of(st.text(max_size=30), st.lists(pieces, max_size=14).map("".join))


def attempt(refusal, action):
    """What an action gives, or its refusal; any other exception fails the test."""
    try:
        return action()
    except refusal as refused:
        return refused


@settings(LAWS, max_examples=500)
@given(scraps, st.sampled_from(["in", "mm"]))
def test_any_text_reads_or_is_refused(text, units):
    mm = attempt(LengthError, lambda: read_length(text, units))
    expression = attempt(ArithmeticProblem, lambda: parse(text, units))
    if isinstance(mm, LengthError):
        assert mm.why
        assert mm.instead
    else:
        assert math.isfinite(mm)
        assert math.isclose(expression.value(lambda _: 0.0), mm)
    if isinstance(expression, ArithmeticProblem):
        assert 1 <= expression.column <= len(text) + 1
    else:
        value = attempt(ArithmeticProblem, lambda: expression.value(lambda _: 12.5))
        assert isinstance(value, ArithmeticProblem) or math.isfinite(value)
        assert parse(expression.text, units).text == expression.text
