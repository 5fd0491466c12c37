"""Ids and paths in words."""

import pytest

from boardwright.plan.places import chain_words, numbers_words, path_words, places_words


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("inside.row1.column2.width", "row 1, column 2: width"),
        ("inside.row1.divider.1.joint.depth", "row 1, divider 1: joint depth"),
        ("inside.row1.shelf_space2.height", "row 1, shelf space 2: height"),
        ("inside.row2.drawer4.height", "row 2, opening 4: height"),
        ("inside.between", "inside: between"),
        ("case.bottom.joint.depth", "case: bottom joint depth"),
        ("stock.cherry.thickness", "stock: cherry thickness"),
        ("parts.kickboard.length", "kickboard: length"),
        ("joints[0]", "joint 1"),
    ],
)
def test_a_path_reads_as_words(path: str, said: str) -> None:
    assert path_words(path) == said


@pytest.mark.parametrize(
    ("ids", "said"),
    [
        (["case.side.left"], "left side of the case"),
        (["case.side.left", "case.side.right"], "both sides of the case"),
        (["case.back"], "back of the case"),
        (["inside.row1.shelf.1", "inside.row1.shelf.2"], "row 1, shelves 1, 2"),
        (["drawer.1.front"], "drawer 1"),
        (["drawer.1.front", "drawer.2.front", "drawer.5.front"], "drawers 1, 2, 5"),
        (["drawer.1.bar.left", "drawer.2.bar.left", "drawer.3.bar.left"], "drawers 1 to 3: left"),
        (["drawer.4.runner.left", "drawer.4.runner.right"], "drawer 4: left and right"),
        (["parts.kickboard"], "kickboard"),
    ],
)
def test_places_read_as_people_say_them(ids: list[str], said: str) -> None:
    assert places_words(ids) == said


def test_names_in_sums_lose_their_dots() -> None:
    assert chain_words("height of inside.row2") == "height of row 2"
    assert chain_words("inside.row1.column2 width") == "row 1, column 2 width"
    assert chain_words("between") == "between"


def test_a_gap_in_the_numbers_is_never_hidden() -> None:
    assert numbers_words("drawer", [3, 1, 2, 2]) == "drawers 1 to 3"
    assert numbers_words("drawer", [1, 2, 4]) == "drawers 1, 2, 4"
    assert numbers_words("drawer", [7]) == "drawer 7"
