"""The helper that tries remedies: the smallest that passes, none when nothing does; the piece stays as it was."""

from dataclasses import replace

from boardwright.checks import shelf_sag
from boardwright.checks.changes import edge_strip, load_of, other_wood, post, thicker
from boardwright.checks.context import Context, context
from boardwright.checks.held import panels
from boardwright.checks.loads import loads_of
from boardwright.checks.remedies import Change, Trial, listed
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

SHELF = """
boardwright: 1
title: Shelf
units: in
stock:
  pine: {wood: pine_eastern_white, thickness: 3/4}
case:
  width: WIDTH
  height: 24
  depth: 12
  stock: pine
  back: {set: none}
  inside:
    shelves: {count: 1}
loads: {top: nothing}
"""
ID = "inside.shelf.1"


def trial(width: int) -> Trial:
    result = check_text(SHELF.replace("WIDTH", str(width)))
    assert result.piece is not None
    assert result.design is not None
    c = context(result.piece, DryFit((), (), ()), result.tables, loads_of(result.design))
    return Trial(c, shelf_sag.measure, "strength.sag", ID)


def sag(c: Context) -> float:
    [margin] = [m for m in shelf_sag.measure(c, shelf_sag_site(c)) if m.parts == (ID,)]
    return margin.value / margin.limit


def shelf_sag_site(c: Context):
    from boardwright.checks.margins import site_of

    return site_of(c, ID)


def test_the_smallest_of_a_series_is_named_and_the_next_smaller_fails() -> None:
    t = trial(44)
    assert sag(t.c) > 1
    part = t.c.parts[ID]
    series = list(thicker(t.c, part))
    words = t.smallest(series)
    at = [change.words for change in series].index(words)
    assert at > 0
    assert sag(series[at].make(t.c)) <= 1 < sag(series[at - 1].make(t.c))
    assert t.c.parts[ID].size[2] == part.size[2]


def test_thickness_goes_with_the_cube_and_wood_with_its_stiffness() -> None:
    t = trial(38)
    part = t.c.parts[ID]
    inch = next(ch for ch in thicker(t.c, part) if "1 in" in ch.words)
    less_weight = sag(inch.make(t.c)) / sag(t.c)  # a little more than (3/4)^3: the shelf itself is heavier
    assert 0.75**3 < less_weight < 1.06 * 0.75**3
    oak = next(ch for ch in other_wood(t.c, part) if "pine_longleaf" in ch.words)
    pine, longleaf = (t.c.tables.species[k] for k in ("pine_eastern_white", "pine_longleaf"))
    assert pine.moe is not None
    assert longleaf.moe is not None
    share = pine.moe / longleaf.moe
    assert share < sag(oak.make(t.c)) / sag(t.c) < 1.06 * share


def test_a_support_halves_the_span() -> None:
    t = trial(38)
    [panel] = panels(t.c, ID)
    changed = post(t.c.parts[ID], panel.spans[0], 0.0).make(t.c)
    [halved] = panels(changed, ID)
    assert halved.spans[0].length == (panel.spans[0].length - 19.0) / 2
    assert sag(changed) < sag(t.c) / 6  # 2^4 less, and the limit is half


def test_a_strip_adds_its_own_stiffness() -> None:
    t = trial(38)
    [panel] = panels(t.c, ID)
    part = t.c.parts[ID]
    strip = next(
        ch for ch in edge_strip(t.c, part, panel.spans[0]) if ch.words.startswith("glue a strip 2 in")
    )
    shelf, edge = 12 * 0.75**3, 0.75 * 2**3
    assert abs(sag(strip.make(t.c)) / sag(t.c) - shelf / (shelf + edge)) < 1e-6


def test_whole_steps_are_found_by_halving() -> None:
    t = trial(38)
    words = t.greatest(load_of(t.c, "shelves"), 200)
    most = int(words.split()[4])
    assert t.keeps(load_of(t.c, "shelves")(most))
    assert not t.keeps(load_of(t.c, "shelves")(most + 1))
    assert t.greatest(load_of(t.c, "shelves"), most - 5).split()[4] == str(most - 5)

    def lift(n: int) -> Change:  # n steps take n tenths off the load
        return Change(f"{n} steps", lambda c: replace(c, loads=replace(c.loads, shelves=40 - 4.0 * n)))

    words = t.least(lift, 9)
    n = int(words.split()[0])
    assert t.keeps(lift(n))
    assert not t.keeps(lift(n - 1))
    assert t.least(lift, n - 1) == ""


def test_nothing_helps() -> None:
    t = trial(38)
    assert t.smallest([]) == ""
    assert t.smallest([Change("leave it", lambda c: c)]) == ""
    assert listed(["", ""], "shorten it") == "shorten it"
    assert listed(["a", "", "b"], "c") == "a, or b"
