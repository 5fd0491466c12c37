from boardwright.formulas.limits import Limit, breaches
from boardwright.formulas.movement import change_of_size
from boardwright.formulas.screws import screw_lateral_softwood


def test_inside_is_silent_and_bounds_count_as_inside():
    assert breaches(change_of_size, D_I=300, C=0.003, M_I=6, M_F=14) == []


def test_each_argument_outside_is_named_with_its_range():
    assert breaches(change_of_size, D_I=300, C=0.003, M_I=4, M_F=18.5) == [
        "M_I is 4 % of moisture; the formula holds for 6 to 14 % of moisture",
        "M_F is 18.5 % of moisture; the formula holds for 6 to 14 % of moisture",
    ]


def test_a_formula_answers_outside_its_limits():
    assert breaches(screw_lateral_softwood, G=0.6, D=4) == ["G is 0.6; the formula holds for 0.29 to 0.52"]
    assert screw_lateral_softwood(0.6, 4) == screw_lateral_softwood(0.52, 4)


def test_one_sided_limits_read_well():
    assert str(Limit(25, None, "mm")) == "at least 25 mm"
    assert str(Limit(None, 3, "-")) == "at most 3"


def test_a_formula_without_limits_has_no_breaches():
    assert breaches(len, obj=3) == []
