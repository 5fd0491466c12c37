"""`docs/design-file.md` says what the code does: keys, defaults, lengths."""

import re
import runpy

import pytest
from pages import ROOT, page, rows

from boardwright.core.arithmetic import ArithmeticProblem, parse
from boardwright.core.lengths import LengthError, Printer, read_length
from boardwright.pipeline import Result, check_text
from boardwright.stock.choices import allowances
from boardwright.stock.records import ShopChoices

TOOL = runpy.run_path(str(ROOT / "tools/design_docs.py"))
PAGE = page("docs/design-file.md")
MODELS = TOOL["models"]()
KEYS = [(model, key) for model in MODELS for key in TOOL["own_fields"](MODELS[model])]
HEAD = "boardwright: 1\ntitle: Defaults\n"
INCHES = HEAD + "units: in\nstock:\n  cherry: {wood: cherry_black, thickness: 3/4}\n"
WOODEN = INCHES + "  maple: {wood: maple_sugar, thickness: 1/2}\n"
CASE = "case: {width: 24, height: 24, depth: 16, stock: cherry"


def test_the_page_is_up_to_date() -> None:
    assert TOOL["page_text"](PAGE) == PAGE, "run python tools/design_docs.py"


def test_every_mapping_has_its_table_once() -> None:
    assert sorted(re.findall(r"<!-- keys: (\w+) -->", PAGE)) == sorted(MODELS)


@pytest.mark.parametrize(("model", "key"), KEYS)
def test_every_key_has_a_meaning_and_every_optional_one_a_default(model: str, key: str) -> None:
    field = TOOL["own_fields"](MODELS[model])[key]
    assert field.description
    assert bool(TOOL["left_out"](field)) is not field.is_required()


@pytest.mark.parametrize("row", [r for r in rows(PAGE[: PAGE.index("## Arithmetic")]) if len(r) == 3])
def test_lengths_are_read_and_refused_as_the_page_says(row: list[str]) -> None:
    for units, said in zip(("in", "mm"), row[1:], strict=True):
        if said == "refused":
            with pytest.raises(LengthError):
                read_length(row[0].strip("`"), units)
        else:
            assert f"{read_length(row[0].strip('`'), units):g} mm" == said


def test_arithmetic_refuses_what_the_page_says() -> None:
    assert parse("a / (3/4)", "in").names == ("a",)
    for refused in ("a / 3/4", "a * b", "a / b", "1,5 + a"):
        with pytest.raises(ArithmeticProblem):
            parse(refused, "in")


def said(model: str, key: str) -> str:
    """What the page says is taken when a key is left out."""
    table = PAGE.split(f"<!-- keys: {model} -->")[1].split("<!-- end -->")[0]
    return next(r[3] for r in rows(table) if r[0] == f"`{key}`")


def inches(model: str, key: str, after: str = "") -> float:
    """The first size in inches that the page gives for a key, after some words [mm]."""
    text = said(model, key)
    found = re.search(r"(\d+ )?\d+(/\d+)?(?= in\b)", text[text.index(after) :])
    assert found
    return read_length(found[0], "in")


def share(model: str, key: str, after: str = "") -> float:
    """The first fraction that the page gives for a key, after some words."""
    text = said(model, key)
    found = re.search(r"(\d+)/(\d+)", text[text.index(after) :])
    assert found
    return int(found[1]) / int(found[2])


def word(model: str, key: str) -> str:
    """The first word in code that the page gives for a key."""
    found = re.search(r"`(\w+)`", said(model, key))
    assert found
    return found[1]


def checked(text: str) -> Result:
    result = check_text(text)
    assert result.piece is not None, [f.text() for f in result.findings]
    return result


def reasons(text: str) -> dict[str, float | str]:
    """What `explain` shows: sizes [mm] and words, of what the file does not give."""
    piece = checked(text).piece
    assert piece is not None
    return {r.path: r.word or r.value for r in piece.reasons if not r.given}


def test_defaults_of_a_chest_on_bars() -> None:
    shown = reasons(WOODEN + CASE + ", inside: {drawers: {count: 4}}}\n")
    assert shown["case.back.depth"] == pytest.approx(inches("Back", "depth", "rabbet"))
    assert shown["case.top.joint.depth"] == pytest.approx(share("JointKeys", "depth", "rabbet") * 19.05)
    assert shown["drawer.1.front.reveal"] == pytest.approx(inches("DrawerFront", "reveal", "solid"))
    assert shown["drawer.1.height_clearance"] == pytest.approx(inches("Drawer", "height_clearance", "solid"))
    assert shown["drawer.1.side_clearance"] == pytest.approx(inches("Drawer", "side_clearance", "bars") / 2)
    assert shown["drawer.1.rear_clearance"] == pytest.approx(inches("Drawer", "rear_clearance"))
    assert shown["drawer.1.bottom.up"] == pytest.approx(inches("DrawerBottom", "up"))
    assert shown["drawer.1.bottom.depth"] == pytest.approx(inches("DrawerBottom", "depth"))
    assert shown["drawer.1.bars.groove"] == pytest.approx(inches("Bars", "groove"))
    play = inches("Bars", "height", "less")
    assert shown["drawer.1.bars.height"] == pytest.approx(inches("Bars", "height") - play)
    of_side = share("JointKeys", "depth", "drawer back")
    assert shown["drawer.1.back.joint.depth"] == pytest.approx(of_side * 12.7)


def test_words_that_are_taken() -> None:
    shown = reasons(WOODEN + CASE + ", inside: {drawers: {count: 4}}}\n")
    for path, model, key in (
        ("case.through", "Case", "through"),
        ("case.top.kind", "Deck", "kind"),
        ("case.top.joint", "Deck", "joint"),
        ("case.back.set", "Back", "set"),
        ("drawer.1.runs_on", "Drawer", "runs_on"),
        ("drawer.1.front.set", "DrawerFront", "set"),
        ("drawer.1.front.joint", "DrawerFront", "joint"),
        ("drawer.1.bottom.set", "DrawerBottom", "set"),
        ("drawer.1.bottom.back", "DrawerBottom", "back"),
        ("drawer.1.back.joint", "DrawerBack", "joint"),
    ):
        assert shown[path] == word(model, key), path


def test_defaults_of_rails_runners_and_tongues() -> None:
    shown = reasons(
        WOODEN + CASE + ", top: {kind: rails}, back: {set: groove}, "
        "inside: {rows: [{drawer: {}}, {shelves: {count: 1}}]}}\ndrawers: {runs_on: runners}\n"
    )
    assert shown["case.top.rail_width"] == pytest.approx(inches("Deck", "rail_width"))
    assert shown["case.back.inset"] == pytest.approx(inches("Back", "inset"))
    assert shown["drawer.1.runners.width"] == pytest.approx(inches("Runners", "width"))
    tongued = reasons(WOODEN + CASE + ", inside: {shelves: {count: 1, joint: tongue}}}\n")
    assert tongued["inside.shelf.1.joint.width"] == pytest.approx(share("JointKeys", "width") * 19.05)
    dado = reasons(WOODEN + CASE + ", inside: {shelves: {count: 1}}}\n")
    assert dado["inside.shelf.1.joint.depth"] == pytest.approx(share("JointKeys", "depth", "dado") * 19.05)


def test_defaults_of_overlay_fronts_and_sheets() -> None:
    sheet = HEAD + "units: in\nstock:\n  cherry: {sheet: hardwood_plywood, thickness: 3/4, measured: 0.703}\n"
    drawers = "drawers: {front: {set: overlay}, runs_on: slides}\n"
    shown = reasons(sheet + CASE + ", inside: {drawers: {count: 3}}}\n" + drawers)
    assert shown["drawer.1.front.gap"] == pytest.approx(inches("DrawerFront", "gap"))
    assert shown["drawer.1.front.reveal"] == pytest.approx(inches("DrawerFront", "reveal", "a sheet"))
    assert shown["drawer.1.height_clearance"] == pytest.approx(inches("Drawer", "height_clearance", "sheet"))


def test_step_and_moisture_without_keys() -> None:
    text = INCHES + CASE + "}\n"
    design, piece = checked(text).design, checked(text).piece
    assert design is not None
    assert piece is not None
    assert design.step == pytest.approx(inches("DesignFile", "work_to"))
    metric = check_text(text, units="mm").design
    assert metric is not None
    assert f"{metric.step:g} mm" in said("DesignFile", "work_to")
    moisture = re.search(r"(\d+) %, from (\d+) to (\d+)", said("DesignFile", "region"))
    assert moisture
    of_piece = (piece.moisture.now, piece.moisture.driest, piece.moisture.wettest)
    assert of_piece == tuple(map(int, moisture.groups()))


def test_shop_without_keys() -> None:
    tables = checked(INCHES + CASE + "}\n").tables
    allow, _, _ = allowances(tables, ShopChoices(), Printer("in", 25.4 / 32))
    assert allow.kerf == pytest.approx(inches("Shop", "kerf"))
    assert allow.sheet_trim == pytest.approx(inches("Shop", "sheet_trim"))


def test_the_sum_of_the_measured_case_is_the_one_on_the_page() -> None:
    piece = checked(page("examples/bolt-shelves.yaml")).piece
    assert piece is not None
    chain = next(c for c in piece.chains if c.name == "width of the case")
    printer = Printer("in", piece.step)
    sum_text = " + ".join(printer.size(mm) for _, mm in chain.members)
    assert f"{sum_text} = {printer.size(chain.whole[1])}" in PAGE
