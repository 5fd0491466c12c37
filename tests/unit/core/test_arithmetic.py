"""Tables of sum -> inches or mm, worked by hand."""

import pytest

from boardwright.core.arithmetic import ArithmeticProblem, CircularSizes, Resolver, UnknownSize, parse
from boardwright.core.lengths import LengthError, Printer

SIZES = {
    "case.width": 914.4,
    "stock.ply.thickness": 19.05,
    "a": 254.0,
    "b": 304.8,
    "case.inside.rows[1].size": 101.6,
}
INCHES = Printer("in", 25.4 / 32)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("case.width - 2 * stock.ply.thickness + 1/4", 34.75),
        ("case.width − 2 × stock.ply.thickness", 34.5),
        ("36 - 2*3/4", 34.5),
        ("5 - 3/8", 4.625),
        ("1-3/8", 1.375),
        ("12 - 1-3/8", 10.625),
        ("a-3/8", 9.625),
        ("a -3/8", 9.625),
        ("(5)-3/8", 4.625),
        ("36-1 1/2", 34.5),
        ("12-6", 6),
        ("b/4", 3),
        ("b ÷ 4", 3),
        ("b / 3 / 4", 1),
        ("b / (3/4)", 16),
        ("b / ¾", 16),
        ("3/4 * b", 9),
        ("2 ft - 6 in", 18),
        ("2 ft 6 in * 2", 60),
        ("2'-6\" + 1", 31),
        ("25.4 mm + 3/4", 1.75),
        ("min(a, b, 3/4)", 0.75),
        ("max(a, b - 1)", 11),
        ("min(2, 3) * a", 20),
        ("-a", -10),
        ("- - 3", 3),
        ("2 * -3", -6),
        ("a - (b - 2)", 0),
        ("-(a - b)", 2),
        ("a / b * b", 10),
        ("(1 + a / b) * b", 22),
        ("case.inside.rows[1].size", 4),
        ("2 * 3", 6),
        ("¾", 0.75),
    ],
)
def test_works_out_in_inches(text, inches):
    expression = parse(text, "in")
    assert expression.value(SIZES.__getitem__) / 25.4 == pytest.approx(inches, rel=1e-12, abs=1e-12)
    again = parse(expression.text, "in")
    assert again.text == expression.text
    assert again.value(SIZES.__getitem__) == expression.value(SIZES.__getitem__)


@pytest.mark.parametrize(
    ("text", "mm"), [("a - 10", 244), ("1/2 * a", 127), ("a + 1/2 in", 266.7), ("100 * 2 / 4", 50)]
)
def test_works_out_in_millimetres(text, mm):
    assert parse(text, "mm").value(SIZES.__getitem__) == pytest.approx(mm, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "column", "why"),
    [
        ("", 1, "nothing is written"),
        ("a*b", 3, "area"),
        ("2 in * 3 in", 8, "area"),
        ("a/b", 1, "plain ratio"),
        ("a/b + a", 1, "plain ratio"),
        ("1 / a", 5, "divided by a length"),
        ("a / (2 - 2)", 6, "divides by zero"),
        ("a / 3/4", 5, r"write \(3/4\)"),
        ("5 -3/8", 1, "one side only"),
        ("a - 5 -3/8", 5, "one side only"),
        ("a + 1/0", 5, "over zero"),
        ("a + 2' 14\"", 5, "less than 12"),
        ("1 3/8 mm + a", 1, "fractions"),
        ("2 a", 3, "no sign between"),
        ("2(3)", 2, "no sign between"),
        ("3 4", 3, "no sign between"),
        ("2 x 3", 3, "no sign between"),
        ("(1 + 2) in", 9, "after a number only"),
        ("in + 2", 1, "no number before it"),
        ("a +", 4, "stops after a sign"),
        ("* a", 1, "needs a value before it"),
        ("(a + b", 1, "not closed"),
        ("a)", 2, "never opened"),
        ("()", 2, "holds nothing"),
        ("min()", 5, "holds nothing"),
        ("min(a, )", 8, "holds nothing"),
        ("least(a, b)", 1, "'least' is not known"),
        ("1,5 + a", 2, "comma between digits"),
        ("min(1,5)", 6, "comma between digits"),
        ("a, b", 2, "a comma stands only"),
        ("a % 2", 3, "'%' cannot stand here"),
        ("(" * 500 + "a" + ")" * 500, 41, "nested"),
    ],
)
def test_refuses_with_the_column(text, column, why):
    with pytest.raises(ArithmeticProblem, match=why) as refused:
        parse(text, "in").value(SIZES.__getitem__)
    assert refused.value.column == column


def test_a_bare_fraction_is_refused_as_millimetres_but_not_as_a_factor():
    with pytest.raises(ArithmeticProblem, match="3/4 in for inches"):
        parse("a - 3/4", "mm")
    assert parse("3/4 * a", "mm").value(SIZES.__getitem__) == 190.5


def test_a_long_sum_is_no_trouble():
    assert parse(" + ".join(["1"] * 5000), "mm").value(SIZES.__getitem__) == 5000


def test_names_stand_once_in_their_order():
    assert parse("b + min(a, b) - case.inside.rows[1].size", "in").names == (
        "b",
        "a",
        "case.inside.rows[1].size",
    )


@pytest.mark.parametrize(
    ("text", "shown", "filled"),
    [
        ("case.width-2*stock.ply.thickness", "case.width - 2 × stock.ply.thickness", "36 - 2 × 3/4"),
        ("b/4", "b ÷ 4", "12 ÷ 4"),
        ("2'-6\" - .75", "2 ft 6 in - 0.75", "30 - 3/4"),
        ("a - (b - 2)", "a - (b - 2)", "10 - (12 - 2)"),
        ("a + 19 mm", "a + 19 mm", "10 + 19 mm"),
        ("b ÷ ¾", "b ÷ (3/4)", "12 ÷ (3/4)"),
    ],
)
def test_prints_the_sum_and_the_sum_with_values(text, shown, filled):
    expression = parse(text, "in")
    assert expression.text == shown
    assert expression.sum_text(SIZES.__getitem__, INCHES) == filled


def test_the_sum_in_the_other_unit_has_no_inches_left_in_it():
    expression = parse("case.width - 2 * 3/4 + 1/4", "in")
    assert expression.sum_text(SIZES.__getitem__, Printer("mm", 0.5)) == "914.4 - 38.1 + 6.35"


def test_a_measured_thickness_prints_as_measured():
    assert parse("36 - 2 * ply", "in").sum_text(lambda _: 0.703 * 25.4, INCHES) == "36 - 2 × 0.703"


def test_sizes_refer_to_each_other():
    sizes = Resolver(
        {"sizes.reveal": "1/8", "gap": "reveal * 2", "depth": "gap + case.width", "count": 2}, "in", SIZES.get
    )
    assert sizes.value("reveal") == pytest.approx(3.175)
    assert sizes.value("sizes.reveal") == pytest.approx(3.175)
    assert sizes.value("depth") == pytest.approx(920.75)
    assert sizes.value("count") == pytest.approx(50.8)
    assert sizes.value("case.width") == 914.4


def test_an_exact_name_comes_before_one_of_sizes():
    assert Resolver({"gap": "1", "sizes.gap": "2"}, "mm").value("gap") == 1


@pytest.mark.parametrize("entered", ["a", "b", "c", "outer"])
def test_a_ring_is_the_same_wherever_it_is_entered(entered):
    sizes = Resolver({"sizes.b": "c + 1", "c": "a", "a": "b * 2", "outer": "c - 1"}, "in")
    with pytest.raises(CircularSizes, match=r"a -> sizes\.b -> c -> a") as refused:
        sizes.value(entered)
    assert refused.value.ring == ("a", "sizes.b", "c", "a")


def test_a_ring_of_one():
    with pytest.raises(CircularSizes) as refused:
        Resolver({"a": "a + 1"}, "in").value("a")
    assert refused.value.ring == ("a", "a")


def test_a_ring_through_the_outside_is_found():
    sizes = Resolver(
        {"a": "case.width / 2"}, "in", lambda name: sizes.value("a") if name == "case.width" else None
    )
    with pytest.raises(CircularSizes):
        sizes.value("a")


def test_a_long_chain_is_no_trouble():
    chain = {f"s{i}": f"s{i + 1} + 1" for i in range(3000)} | {"s3000": "0"}
    assert Resolver(chain, "mm").value("s0") == 3000


def test_each_size_is_worked_out_once():
    asked = []
    sizes = Resolver({"a": "far + far", "b": "a + a"}, "mm", lambda name: asked.append(name) or 5.0)
    assert (sizes.value("b"), sizes.value("b"), sizes.value("a")) == (20, 20, 10)
    assert asked == ["far", "far"]


def test_an_unknown_name_shows_its_neighbours():
    with pytest.raises(UnknownSize) as refused:
        Resolver({"sizes.reveal": "1/8", "gap": "revael * 2"}, "in").value("gap")
    assert refused.value.name == "revael"
    assert refused.value.near[0] == "reveal"


def test_a_size_that_cannot_be_read_says_so_and_the_others_still_work():
    sizes = Resolver({"bad": "1,5", "worse": True, "good": "2"}, "mm")
    with pytest.raises(ArithmeticProblem):
        sizes.value("bad")
    with pytest.raises(LengthError):
        sizes.value("worse")
    assert sizes.value("good") == 2
