"""Tables of text -> mm. An inch is 25.4 mm exactly (international inch of 1959; from memory)."""

import math

import pytest

from boardwright.core.lengths import LengthError, Printer, read_length, read_step, settle, share_out

IN_INCHES = """
    0              0
    1              25.4
    .75            19.05
    0.75           19.05
    3/4            19.05
    5/4            31.75
    1 3/8          34.925
    1-3/8          34.925
    1–3/8          34.925
    1-3/8"         34.925
    1-3/8 in       34.925
    1 3/8 IN.      34.925
    1 3⁄8″         34.925
    ¾              19.05
    1¾"            44.45
    1 ¾            44.45
    1-¾            44.45
    ⅞              22.225
    -3/4           -19.05
    −3/4           -19.05
    - 3/4          -19.05
    +3/4           19.05
    2' 6"          762
    2’ 6”          762
    2′6″           762
    2'6            762
    2'-6"          762
    2'6''          762
    2' 6 1/2"      774.7
    2'-6-1/2"      774.7
    2 ft 6 in      762
    2 Ft. 6 In.    762
    2 ft           609.6
    1 foot         304.8
    1/2 ft         152.4
    2.5 feet       762
    2 feet 6 1/2 inches   774.7
    1 inch         25.4
    3''            76.2
    19 mm          19
    19mm           19
    1.9 cm         19
    1.2 m          1200
    2 millimetres  2
    1 Meter        1000
"""


def rows(table):
    return [tuple(s.strip() for s in line.strip().rsplit("  ", 1)) for line in table.strip().splitlines()]


@pytest.mark.parametrize(("text", "mm"), rows(IN_INCHES))
def test_reads_in_a_file_in_inches(text, mm):
    assert read_length(text, "in") == pytest.approx(float(mm), rel=1e-12)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("19", 19),
        ("0.5", 0.5),
        ("3/4 in", 19.05),
        ('1-3/8"', 34.925),
        ("2'", 609.6),
        ("1.2 m", 1200),
        (19, 19),
        (0.5, 0.5),
    ],
)
def test_reads_in_a_file_in_millimetres(text, mm):
    assert read_length(text, "mm") == pytest.approx(mm, rel=1e-12)


@pytest.mark.parametrize("space", ["\u00a0", "\u2009", "\u202f", "\u2007", "\t", "  "])
def test_every_kind_of_space_is_a_space(space):
    assert read_length(f"{space}1{space}3/8{space}in{space}", "in") == pytest.approx(34.925, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "why", "instead"),
    [
        ("", "nothing is written", "3/4 in"),
        ("  ", "nothing is written", "3/4 in"),
        ("1,5", "comma", "1.5"),
        ("1,234.5", "comma", "1234.5"),
        ("1.5/8", "decimal over", "3/16"),
        ("1/0", "over zero", "1/2"),
        ("1 3/0", "over zero", "1/2"),
        ("3 4", "side by side", "1 3/8"),
        ("1 1 1/2", "side by side", "1 3/8"),
        ("3/4 1/2", "side by side", "1 3/8"),
        ("½2", "side by side", "1 3/8"),
        ("1 3/8 mm", "fractions", "1.375 mm"),
        ("3/8 cm", "fractions", "0.375 cm"),
        ("2' 14\"", "less than 12", "3 ft 2 in"),
        ("2' 12\"", "less than 12", "3 ft 0 in"),
        ("2.5' 6\"", "whole", "2.5 ft"),
        ("5 5/4", "improper", "6.25"),
        ("5-5/4", "improper", "5 - 5/4"),
        ("5 - 3/8", "arithmetic", "1-3/8"),
        ("5 -3/8", "one side only", "5 - 3/8"),
        ("5- 3/8", "one side only", "5-3/8"),
        ("2' -6\"", "one side only", "2 ft - 6 in"),
        ("2 * 3", "arithmetic", "1-3/8"),
        ("3 yards", "not a unit", "in, ft, mm, cm or m"),
        ("1e3", "not a unit", "in, ft, mm, cm or m"),
        ("2' 19 mm", "only inches", "2 ft + 19 mm"),
        ("1 m 20 cm", "second number", "1 m + 20 mm"),
        ("1.5.2", "point too many", "0.75"),
        ("--3", "no number", "3/4 in"),
        ("nan", "no number", "3/4 in"),
        ("inf", "no number", "3/4 in"),
        ("in", "no number", "3/4 in"),
        ("9" * 5000, "digits", "shorter"),
        (math.nan, "too large", "3/4 in"),
        (-math.inf, "too large", "3/4 in"),
        (10**400, "too large", "3/4 in"),
        (True, "yes or no", "3/4 in"),
    ],
)
def test_refuses_with_a_reason_and_a_remedy(text, why, instead):
    with pytest.raises(LengthError) as refused:
        read_length(text, "in")
    assert why in refused.value.why
    assert instead in refused.value.instead
    assert refused.value.found in str(refused.value)


def test_refuses_a_bare_fraction_in_a_file_in_millimetres():
    with pytest.raises(LengthError, match=r"3/4 in for inches, or the decimal 0.75 for mm"):
        read_length("3/4", "mm")


INCHES = Printer("in", 25.4 / 32)
MILLIMETRES = Printer("mm", 0.5)


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (0, "0"),
        (-0.0, "0"),
        (19.05, "3/4"),
        (-19.05, "-3/4"),
        (914.4, "36"),
        (25.4 * 34 + 25.4 * 19 / 32, "34 19/32"),
        (-34.925, "-1 3/8"),
        (19.05 + 3e-9, "3/4"),
        (0.703 * 25.4, "0.703"),
        (36 * 25.4 - 25.4 * 0.00025, "35.99975"),
        (25.4 / 64, "0.015625"),
    ],
)
def test_prints_inches(mm, text):
    assert INCHES.size(mm) == text
    assert INCHES.text(mm) == f"{text} in"
    assert INCHES.on_step(mm) == ("." not in text)


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (914.4, "36"),
        (0.703 * 25.4, "(0.703)"),
        (36 * 25.4 - 25.4 * 0.00025, "(36.000)"),
        (25.4 / 64, "(0.016)"),
    ],
)
def test_what_lies_between_steps_is_rounded_only_in_parentheses(mm, text):
    assert INCHES.auxiliary(mm) == text


@pytest.mark.parametrize(
    ("mm", "text", "on"),
    [
        (914.5, "914.5", True),
        (19, "19", True),
        (18.2, "18.2", False),
        (-0.5, "-0.5", True),
        (0.1234, "0.123", False),
    ],
)
def test_prints_millimetres(mm, text, on):
    assert MILLIMETRES.size(mm) == text
    assert MILLIMETRES.text(mm) == f"{text} mm"
    assert MILLIMETRES.on_step(mm) is on


def test_prints_both_units_for_prose():
    assert INCHES.both(914.4) == "36 in (914 mm)"
    assert MILLIMETRES.both(914.5) == "914.5 mm (36 in)"


@pytest.mark.parametrize(
    ("units", "step"), [("in", 1.0), ("in", 25.4 / 10), ("in", 50.8), ("mm", 0.0), ("mm", -1.0)]
)
def test_a_printer_needs_a_step_of_its_units(units, step):
    with pytest.raises(ValueError, match="step"):
        Printer(units, step)


@pytest.mark.parametrize(
    ("mm", "step", "nearest", "down", "up"),
    [
        (10.2, 0.5, 10.0, 10.0, 10.5),
        (10.25, 0.5, 10.5, 10.0, 10.5),
        (-10.2, 0.5, -10.0, -10.5, -10.0),
        (10.5 + 1e-9, 0.5, 10.5, 10.5, 10.5),
        (10.5 - 1e-9, 0.5, 10.5, 10.5, 10.5),
        (0.1 + 0.2, 0.1, 0.3, 0.3, 0.3),
        (19.05 + 0.3, 25.4 / 32, 24 * (25.4 / 32), 24 * (25.4 / 32), 25 * (25.4 / 32)),
    ],
)
def test_settles_on_the_step(mm, step, nearest, down, up):
    assert (settle(mm, step), settle(mm, step, "down"), settle(mm, step, "up")) == (nearest, down, up)


@pytest.mark.parametrize(
    ("text", "units", "mm"),
    [
        ("1/32", "in", 25.4 / 32),
        ("1/64 in", "in", 25.4 / 64),
        ("0.5", "in", 12.7),
        (0.5, "mm", 0.5),
        ("1 mm", "mm", 1.0),
    ],
)
def test_reads_the_step(text, units, mm):
    assert read_step(text, units) == mm


@pytest.mark.parametrize(
    ("text", "units", "listed"),
    [
        ("1/10", "in", "1/2, 1/4, 1/8, 1/16, 1/32, 1/64 in"),
        (1, "in", "1/64 in"),
        (0.3, "mm", "0.1, 0.2, 0.5, 1 mm"),
        ("1/32 in", "mm", "0.1, 0.2, 0.5, 1 mm"),
        ("-0.5", "mm", "0.1, 0.2, 0.5, 1 mm"),
    ],
)
def test_refuses_other_steps_and_lists_them(text, units, listed):
    with pytest.raises(LengthError, match=listed):
        read_step(text, units)


@pytest.mark.parametrize(
    ("total", "weights", "pieces"),
    [
        (30, [1, 1, 1], [10, 10, 10]),
        (31, [1, 1, 1], [10, 11, 10]),
        (32, [1, 1, 1], [11, 10, 11]),
        (42, [1, 1, 1, 1], [10, 11, 11, 10]),
        (43, [1, 1, 1, 1], [11, 11, 10, 11]),
        (52, [1] * 5, [10, 11, 10, 11, 10]),
        (40, [1, 2, 1], [10, 20, 10]),
        (30.25, [1, 1], [15, 15.25]),
        (31.25, [1, 1], [16, 15.25]),
        (0, [1, 2], [0, 0]),
        (7, [3], [7]),
    ],
)
def test_shares_out(total, weights, pieces):
    assert share_out(total, weights, 1.0) == pieces


@pytest.mark.parametrize(
    ("total", "weights", "step"), [(-1, [1], 1), (1, [], 1), (1, [1, 0], 1), (1, [1], 0)]
)
def test_refuses_to_share_out_nonsense(total, weights, step):
    with pytest.raises(ValueError, match="share_out needs"):
        share_out(total, weights, step)
