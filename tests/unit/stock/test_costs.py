"""What a plan costs by the rack's prices, by sums done by hand; what the shop has is taken off."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from stock_pieces import GLASS_SHELVES, MDF_SHELVES, panel
from test_on_rack import board

from boardwright.core.arithmetic import Resolver
from boardwright.core.rack import Price, PriceUnit, Rack, Supply
from boardwright.pipeline import check_text
from boardwright.stock.costs import Bought, costed, lumber_amounts
from boardwright.stock.records import BuyLine, Result, ShopChoices
from boardwright.stock.run import run_stock, shop_choices


def priced(text: str, rack: Rack) -> Result:
    """The stock stage of a design with that rack."""
    read = check_text(text)
    assert read.design is not None
    assert read.piece is not None
    choices = shop_choices(read.design, Resolver(read.design.lengths, read.design.file.units).value)
    return run_stock(read.piece, read.tables, replace(choices, rack=rack))


def price(
    item: str, amount: str, unit: PriceUnit, thickness: float | None = None, day: str = "2026-03-05"
) -> Price:
    return Price(item, thickness, Decimal(amount), unit, day, "USD")


def total(result: Result) -> str:
    """What it comes to, less what has no price."""
    return result.value.cost.split(";")[0]


def test_lumber_by_the_board_foot() -> None:
    """So many board feet as the list asks for, at 7.40 each."""
    rack = Rack(
        prices=(price("cherry_black", "7.40", "board foot", 25.4), price("cherry_black", "9", "board foot"))
    )
    result = priced(panel("30", "5"), rack)
    [line] = [b for b in result.value.buy if b.group == "lumber"]
    feet = int(line.quantity.removesuffix(" board feet"))
    assert feet >= 4
    cost = f"{feet * Decimal('7.40'):.2f} USD"
    assert f"{feet} board feet at 7.40 USD come to {cost} (2026-03-05)" in line.detail
    assert total(result) == cost


def test_the_newest_price_counts() -> None:
    old, new = (
        price("cherry_black", a, "board foot", 25.4, d) for a, d in (("5", "2025-01-31"), ("6", "2026-01-31"))
    )
    result = priced(panel("30", "5"), Rack(prices=(new, old)))
    [line] = [b for b in result.value.buy if b.group == "lumber"]
    assert total(result) == f"{6 * int(line.quantity.split()[0])}.00 USD"


def test_sheets_by_the_sheet_and_by_area() -> None:
    """Three shelves of 40 x 30 on sheets of 97 x 49: one shelf does not lie beside another across, so 2 sheets."""
    by_sheet = priced(MDF_SHELVES, Rack(prices=(price("mdf", "41.5", "sheet"),)))
    [line] = [b for b in by_sheet.value.buy if b.group == "sheets"]
    count = int(line.quantity.split()[0])
    assert total(by_sheet) == f"{41.5 * count:.2f} USD"
    by_area = priced(MDF_SHELVES, Rack(prices=(price("mdf", "10", "square metre"),)))
    area = count * 97 * 49 * 0.0254**2
    assert Decimal(by_area.value.cost.split()[0]) == pytest.approx(Decimal(area * 10), abs=Decimal("0.1"))


def test_what_is_on_the_rack_costs_nothing() -> None:
    rack = Rack((board("B1", 60, 8),), (), (price("cherry_black", "7.40", "board foot"),))
    result = priced(panel("30", "5"), rack)
    assert total(result) == "nothing"
    assert all("USD" not in b.detail for b in result.value.buy)


def test_a_missing_price_is_said() -> None:
    result = priced(panel("30", "5"), Rack(prices=(price("oak_white", "8", "board foot"),)))
    assert result.value.cost.startswith("nothing; without a price: 4/4 black cherry, FAS, ")
    assert priced(panel("30", "5"), Rack()).value.cost == ""


def test_supplies_are_taken_off() -> None:
    lines = [
        BuyLine("fasteners", "No. 8 screw", "40", "36 are used"),
        BuyLine("hardware", "slide", "2 pairs"),
        BuyLine("glue", "yellow PVA", "120 to 210 g"),
    ]
    own = (
        Supply("no. 8 screw", "hardware", 25),
        Supply("Slide", "hardware", 3, "pair"),
        Supply("Yellow PVA", "glue", 450, "g"),
    )
    rack = Rack((), own, (price("No. 8 screw", "0.08", "piece"),))
    costs = costed([Bought(line, (line.item,)) for line in lines], ShopChoices(rack=rack))
    *bought, sum_line = costs.lines
    assert [b.quantity for b in bought] == ["15", "0 pairs", "120 to 210 g"]
    assert [(b.supply, b.taken) for b in bought] == [("no. 8 screw", 25), ("Slide", 2), ("", 0)]
    assert (sum_line.group, sum_line.cost) == ("total", "1.20 USD")
    assert costs.lines[0].detail.startswith(
        "36 are used; 40 less 25 on the rack; 15 pieces at 0.08 USD come to 1.20 USD"
    )
    assert costs.lines[2].detail == "450 g on the rack"
    assert costs.text == "1.20 USD; without a price: yellow PVA"


def test_a_price_of_the_file_goes_before_the_racks() -> None:
    """What the rack has is taken off for both: 40 screws less 25, at 9 cents each, are 1.35; 2 hinges at 4.05 USD."""
    lines = [BuyLine("fasteners", "No. 8 screw", "40"), BuyLine("hardware", "hinge", "2")]
    own = (Supply("no. 8 screw", "hardware", 25),)
    rack = Rack((), own, (price("No. 8 screw", "0.08", "piece"), price("hinge", "4.05", "piece")))
    choices = ShopChoices(prices=(("No. 8 screw", 0.09, "piece"),), rack=rack)
    costs = costed([Bought(line, (line.item,)) for line in lines], choices)
    assert [b.cost for b in costs.lines] == ["1.35", "8.10 USD", "1.35 and 8.10 USD"]
    assert costs.text == "1.35 and 8.10 USD"
    assert not costs.findings


def test_the_total_is_the_sum_of_what_is_printed() -> None:
    """Three lines of one piece at 0.335 are printed as 0.34 each (half a cent goes up), and come to 1.02."""
    lines = [BuyLine("hardware", name, "1") for name in ("a", "b", "c")]
    choices = ShopChoices(prices=tuple((b.item, 0.335, "piece") for b in lines))
    costs = costed([Bought(line, (line.item,)) for line in lines], choices)
    assert [b.cost for b in costs.lines] == ["0.34"] * 3 + ["1.02"]


def test_lumber_by_the_board_foot_in_a_plan_in_mm() -> None:
    """0.0236 m3 are 10 board feet of 144 cubic inches (0.00235974 m3), to the next tenth."""
    result = priced(panel("30", "5"), Rack())
    [lot] = [x for x in result.value.lots if x.kind == "wood"]
    assert lumber_amounts(lot, None, 0.0236)["board foot"] == 10.1
    assert lumber_amounts(lot, 12.0, 0.0236)["board foot"] == 12.0


def test_panes_are_bought_cut_to_size() -> None:
    """Two panes of one size: no layout, two pieces to pay for, and nothing of what is paid is lost."""
    result = priced(GLASS_SHELVES, Rack())
    [lot] = result.value.lots
    assert lot.to_size
    assert lot.layouts == ()
    [line] = [b for b in result.value.buy if b.group == "sheets"]
    assert line.quantity == "2 panes"
    assert line.detail.startswith("2 of 12 × 30 in, cut to size")
    assert line.cost == "25.00"
    assert lot.tally.lost_share == pytest.approx(0)


SIZES = """
shop:
  kerf: 1/8
  sheet_trim: 0
  prices: {board: {price: 50, per: sheet}}
  sheets: [{stock: board, length: 49, width: 31, price: SMALL}]
"""


@pytest.mark.parametrize(
    ("small", "quantity", "cost"),
    [("30", "1 sheet", "50.00"), ("16.60", "3 sheets", "49.80"), ("16.70", "1 sheet", "50.00")],
)
def test_layouts_take_what_costs_least(small: str, quantity: str, cost: str) -> None:
    """A sheet of 97 x 49 holds three shelves of 40 x 30 turned (90 1/4 long); a small one holds one of them."""
    result = priced(MDF_SHELVES + SIZES.replace("SMALL", small), Rack())
    [line] = [b for b in result.value.buy if b.group == "sheets"]
    assert (line.quantity, line.cost) == (quantity, cost)
