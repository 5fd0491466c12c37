"""Dividers that stand on web frames, thick dust panels, and bases under bottoms with dadoes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from test_casework_sizes import design

from bench import IN, grooves, holes, piece_of
from boardwright.pipeline import check_text
from boardwright.solids.assembly import assembly_of

PARTED = (
    "inside: {{between: web_frame, dust: {dust}, "
    "rows: [{{columns: [{{open: true}}, {{open: true}}]}}, {{columns: [{{open: true}}, {{open: true}}]}}]}}"
)


@settings(max_examples=15, deadline=None)
@given(
    width=st.integers(400, 1100),
    depth=st.integers(250, 600),
    units=st.sampled_from(("in", "mm")),
    stock=st.sampled_from(("solid", "board")),
    dust=st.sampled_from(("true", "false")),
)
def test_dividers_stand_on_both_faces_of_a_web_frame(
    width: int, depth: int, units: str, stock: str, dust: str
) -> None:
    result = check_text(design(PARTED.format(dust=dust), units, stock, size=(width, 900, depth)))
    assert [f.text() for f in result.findings if f.severity == "error"] == []
    assert result.piece is not None
    assert assembly_of(result.piece).trapped == ()


def test_the_dadoes_of_a_web_frame_leave_the_groove_in_its_edge_whole() -> None:
    front = piece_of(design(PARTED.format(dust="true"))).part("inside.web_frame.1")
    [panel] = [g for g in grooves(front) if g.purpose == "panel"]
    for dado in (g for g in grooves(front) if g.purpose != "panel"):
        near = panel.at if not dado.side.high else front.size[2] - panel.at - panel.width
        assert dado.depth < near


def test_a_dust_panel_as_thick_as_the_frame_stays_between_its_faces() -> None:
    text = design(
        "inside: {between: web_frame, dust: true, rows: [{open: true}, {open: true}]}", stock="board"
    )
    thick = "\n".join(
        line for line in text.splitlines() if not line.startswith(("  thin", "  leaf", "  half"))
    )
    piece = piece_of(thick.replace("\n  inside", "\n  back: {set: none}\n  inside"))
    panel, frame = piece.part("inside.web_frame.1.dust").box, piece.part("inside.web_frame.1").box
    assert frame.low[2] - 1e-6 <= panel.low[2] < panel.high[2] <= frame.high[2] + 1e-6


@pytest.mark.parametrize("kind", ["plinth", "bracket_feet"])
@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("behind", ["", "  wall_cleat: {}\n"])
def test_the_screws_of_a_base_stand_beside_the_dado_of_a_divider(kind: str, units: str, behind: str) -> None:
    """No screw runs into the channel over it: 3/16 in of wood (common practice) less half a screw, at the least."""
    keys = f"base: {{kind: {kind}}}\n{behind}  inside: {{columns: [{{open: true}}, {{open: true}}]}}"
    piece = piece_of(design(keys, units))
    bottom = piece.part("case.bottom")
    [dado] = [g for g in grooves(bottom) if g.purpose != "panel"]
    tips = [h for h in holes(bottom) if h.purpose == "pilot"]
    assert tips
    for tip in tips:
        clear = max(dado.at - tip.at[0], tip.at[0] - dado.at - dado.width) - tip.diameter / 2
        assert clear > IN / 16
