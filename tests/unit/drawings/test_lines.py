"""Lines that coincide are drawn once."""

from boardwright.drawings.lines import drawn_once
from boardwright.solids.exact import ProjectedEdge


def edge(*points, hidden=False):
    return ProjectedEdge(tuple((float(x), float(y)) for x, y in points), hidden, 0)


def spans(found, hidden):
    return [tuple((round(x, 6), round(y, 6)) for x, y in e.points) for e in found if e.hidden is hidden]


def test_hidden_lines_stay_only_where_no_visible_line_lies():
    found = drawn_once([edge((0, 5), (10, 5)), edge((30, 5), (0, 5), hidden=True), edge((20, 5), (25, 5))])
    assert spans(found, True) == [((10, 5), (20, 5)), ((25, 5), (30, 5))]
    assert spans(found, False) == [((0, 5), (10, 5)), ((20, 5), (25, 5))]


def test_pieces_of_one_line_are_joined_in_any_direction():
    for a, b, c in (((0, 0), (3, 4), (6, 8)), ((2, 0), (2, 5), (2, 9)), ((0, 8), (3, 4), (6, 0))):
        found = drawn_once([edge(a, b), edge(c, b), edge(a, c)])
        assert len(found) == 1
        assert {tuple(round(v, 6) for v in p) for p in found[0].points} == {a, c}


def test_parallel_lines_stay_apart():
    assert len(drawn_once([edge((0, 0), (9, 0)), edge((0, 0.5), (9, 0.5)), edge((0, 0), (0, 9))])) == 3


def test_a_hidden_curve_under_a_visible_one_is_dropped():
    ring = ((0, 0), (1, 1), (2, 0))
    found = drawn_once([edge(*ring, hidden=True), edge(*reversed(ring))])
    assert [e.hidden for e in found] == [False]
