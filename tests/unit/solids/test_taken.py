"""Volumes of every kind of cut: closed forms against both kernels, whichever way the cut lies."""

from __future__ import annotations

import math

import pytest

from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    Cut,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Hole,
    Mortise,
    Moulding,
    Pins,
    RaisedField,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
)
from boardwright.solids import exact, mesh

SIZE = (400.0, 120.0, 20.0)
L, W, T = SIZE
TAN10 = math.tan(math.radians(10))
CASES: dict[str, tuple[Cut, float]] = {
    "mortise": (Mortise(Side.EDGE, 0, 7.0, 6.0, 30.0, 50.0, 90.0), 6 * 30 * 40),
    "mortise through": (Mortise(Side.FACE, 1, 100.0, 8.0, 20.0, 20.0, 70.0, True), 8 * 20 * 50),
    "biscuit slot in an end": (
        BiscuitSlot(Side.END, 1, (60.0, 10.0), 4.0, 12.3, 50.0, "No. 20 biscuit"),
        4 * (50**2 * math.acos(37.7 / 50) - 37.7 * math.sqrt(50**2 - 37.7**2)),
    ),
    "biscuit slot in a face": (
        BiscuitSlot(Side.FACE, 0, (200.0, 60.0), 4.0, 8.0, 50.0),
        4 * (50**2 * math.acos(42 / 50) - 42 * math.sqrt(50**2 - 42**2)),
    ),
    "tenon": (
        Tenon(Side.FAR_END, 1, 30.0, 6.0, 7.0, ((15.0, 100.0, 30.0), (100.0, 120.0, 8.0))),
        30 * (T * W - 7 * 85) - 8 * 20 * 7,
    ),
    "twin tenon": (
        Tenon(Side.END, 1, 25.0, 5.0, 5.0, ((10.0, 50.0, 25.0), (70.0, 110.0, 25.0))),
        25 * (T * W - 10 * 80),
    ),
    "fingers": (
        Fingers(Side.END, 1, 18.0, ((0.0, 12.0), (24.0, 36.0), (108.0, 120.0))),
        18 * 36 * T,
    ),
    "tails": (
        Tails(Side.FAR_END, 1, 16.0, ((-5.0, 6.0), (40.0, 46.0), (114.0, 120.0)), 1 / 8),
        T * (16 * 6 + 16 * 16 / 16) * 1 + T * (16 * 6 + 2 * 16 * 16 / 16) + T * (16 * 6 + 16 * 16 / 16),
    ),
    "pins through": (
        Pins(Side.END, 1, 15.0, Side.BACK, T, ((8.0, 34.0), (60.0, 86.0)), 1 / 6),
        15 * 2 * (26 * T + T * T / 6),
    ),
    "pins half-blind": (
        Pins(Side.FAR_END, 1, 12.0, Side.FACE, 14.0, ((8.0, 34.0),), 1 / 6),
        12 * (26 * 14 + 14 * 14 / 6),
    ),
    "dovetail slot": (
        DovetailSlot(Side.FACE, 1, 200.0, 10.0, 8.0, 1 / 6, 0.0, 120.0),
        120 * (10 * 8 + 8 * 8 / 6),
    ),
    "dovetail tongue": (
        DovetailTongue(Side.END, 1, 8.0, 4.0, 4.0, 1 / 6),
        120 * 2 * (4 * 8 + 8 * 8 / 12),
    ),
    "mitred end": (Bevel(Side.END, 0.0, 1.0, 0.0), T * W * W / 2),
    "bevelled edge": (Bevel(Side.FAR_EDGE, 0.0, 0.0, TAN10), L * T * T * TAN10 / 2),
    "compound end": (
        Bevel(Side.FAR_END, 0.0, TAN10, 0.2),
        W * T * (TAN10 * W / 2 + 0.2 * T / 2),
    ),
    "mitre that leaves a nose": (Bevel(Side.END, -20.0, 1.0, 0.0), T * 100 * 100 / 2),
    "taper": (Taper(Side.EDGE, Side.FAR_END, 100.0, 30.0), T * 300 * 30 / 2),
    "chamfer": (
        Moulding(Side.FACE, Side.EDGE, "chamfer", 5.0, (), 0.0, L),
        L * 12.5,
    ),
    "stopped chamfer": (
        Moulding(Side.BACK, Side.FAR_EDGE, "chamfer", 5.0, (), 50.0, 350.0),
        300 * 12.5,
    ),
    "round-over": (
        Moulding(Side.FACE, Side.FAR_EDGE, "round-over", 10.0, (), 0.0, L),
        L * (100 - math.pi * 25),
    ),
    "raised field on two edges": (
        RaisedField(Side.FACE, 40.0, 8.0, 6.0, 2.0, (Side.EDGE, Side.FAR_EDGE)),
        2 * L * (8 * 14 + 32 * (14 + 2) / 2),
    ),
    "V groove": (VGroove(Side.BACK, 0, 60.0, 9.0, 4.5, 30.0, 370.0), 340 * 9 * 4.5 / 2),
    "arc": (
        Curve(Side.EDGE, 0, "arc", ((140.0, 0.0), (200.0, 20.0), (260.0, 0.0))),
        T * (100**2 * math.asin(0.6) - 60 * 80),
    ),
    "spline of one given cubic": (
        Curve(Side.FAR_EDGE, 0, "spline", ((100.0, 0.0), (200.0, 30.0), (300.0, 0.0))),
        T * 2 * (30 * 100 * 5 / 8),
    ),
    "cove": (Moulding(Side.FACE, Side.EDGE, "cove", 8.0, (), 0.0, L), L * math.pi * 16),
    "ogee": (
        Moulding(Side.BACK, Side.EDGE, "ogee", 8.0, (), 0.0, L),
        L * (16 + (16 - math.pi * 4) + math.pi * 4),
    ),
    "profile": (
        Moulding(Side.FACE, Side.EDGE, "profile", 9.0, ((9.0, 0.0), (9.0, 3.0), (0.0, 3.0)), 0.0, L),
        L * 27,
    ),
    "leaning hole": (
        Hole(Side.FACE, (200.0, 60.0), 9.0, 20.0, True, lean=15.0, lean_along=0),
        math.pi * 4.5**2 * T / math.cos(math.radians(15)),
    ),
    "counterbored hole": (
        Hole(Side.BACK, (200.0, 60.0), 4.0, 20.0, True, counterbore=10.0, counterbore_depth=6.0),
        math.pi * (4 * 14 + 25 * 6),
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_volume_is_the_closed_form_in_both_kernels(name: str) -> None:
    cut, taken = CASES[name]
    left = L * W * T - taken
    curved = isinstance(cut, Hole | Curve | BiscuitSlot) or getattr(cut, "shape", "") in (
        "round-over",
        "cove",
        "ogee",
    )
    assert exact.volume(exact._cut_blank(SIZE, (cut,))) == pytest.approx(
        left, abs=0.002 * taken if curved else 1e-3
    )
    assert mesh.shape(SIZE, (cut,)).volume() == pytest.approx(left, abs=0.01 * taken if curved else 1e-3)


def test_a_raised_field_mitres_at_its_corners() -> None:
    """By the prismatoid rule: the wood round a field is the frustum between the shoulder and the field."""
    cut = RaisedField(Side.FACE, 30.0, 0.0, 8.0, 0.0, (Side.END, Side.FAR_END, Side.EDGE, Side.FAR_EDGE))
    left = L * W * 8 + 12 / 6 * (L * W + 4 * (L - 30) * (W - 30) + (L - 60) * (W - 60))
    assert mesh.shape(SIZE, (cut,)).volume() == pytest.approx(left, abs=1e-3)
    assert exact.volume(exact._cut_blank(SIZE, (cut,))) == pytest.approx(left, abs=1e-3)
