"""Cuts as data and back."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardwright.piece.codec import KINDS, cut_from_data, cut_to_data
from boardwright.piece.cuts import BiscuitSlot, Cut, Groove, Hole, Notch, Rabbet, Side

mm = st.floats(0, 3000, allow_nan=False)
side = st.sampled_from(Side)
word = st.text(max_size=20)
CUTS = st.one_of(
    st.builds(Groove, side, st.integers(0, 2), mm, mm, mm, mm, mm, word, word),
    st.builds(Rabbet, side, side, mm, mm, mm, mm, word, word),
    st.builds(BiscuitSlot, side, st.integers(0, 2), st.tuples(mm, mm), mm, mm, mm, word, word),
    st.builds(Notch, side, side, mm, mm, word),
    st.builds(
        Hole, side, st.tuples(mm, mm), mm, mm, st.booleans(), mm, mm, mm, st.integers(0, 2), word, word
    ),
)


@given(CUTS)
def test_a_cut_comes_back_from_json_as_it_was(cut: Cut) -> None:
    assert cut_from_data(json.loads(json.dumps(cut_to_data(cut)))) == cut


def test_every_kind_of_cut_has_a_name() -> None:
    assert set(KINDS.values()) == set(Cut.__args__)  # type: ignore[attr-defined]


def test_a_groove_reads_as_written() -> None:
    data = cut_to_data(Groove(Side.FACE, 1, 12.0, 19.0, 6.0, 0.0, 222.0, "case.shelf"))
    assert data == {
        "kind": "groove",
        "side": "face",
        "along": 1,
        "at": 12.0,
        "width": 19.0,
        "depth": 6.0,
        "start": 0.0,
        "end": 222.0,
        "holds": "case.shelf",
        "purpose": "joint",
    }


def test_what_a_hole_is_for_is_written_for() -> None:
    data = cut_to_data(Hole(Side.EDGE, (5, 6), 4.0, 20.0, for_="dowel"))
    assert data["for"] == "dowel"
    assert data["at"] == [5, 6]


GROOVE = {"kind": "groove", "side": "face", "along": 1, "at": 1, "width": 2, "depth": 3, "start": 0, "end": 9}


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"kind": "dovetail"}, "unknown kind of cut 'dovetail'; expected one of groove, rabbet, notch, hole"),
        ({"kind": None}, "unknown kind of cut None"),
        ({"side": "top"}, "'top' is not a valid Side"),
        ({"along": 1.5}, "groove: `along` cannot be 1.5"),
        ({"width": "wide"}, "groove: `width` cannot be 'wide'"),
        ({"width": True}, "groove: `width` cannot be True"),
        ({"holds": 7}, "groove: `holds` cannot be 7"),
        ({"colour": "red"}, "groove: unknown `colour`"),
    ],
)
def test_wrong_data_is_refused(change: dict[str, object], says: str) -> None:
    with pytest.raises(ValueError, match=says.replace("(", r"\(")):
        cut_from_data({**GROOVE, **change})


def test_a_missing_number_is_named() -> None:
    with pytest.raises(ValueError, match="groove: `depth` is missing"):
        cut_from_data({k: v for k, v in GROOVE.items() if k != "depth"})


def test_reading_does_not_change_the_data() -> None:
    data = dict(GROOVE)
    cut_from_data(data)
    assert data == GROOVE
