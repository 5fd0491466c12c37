"""The CSV files, parsed back with the standard library's reader."""

import csv
import io

import pytest
from ribbon_shelf import make

from boardwright.plan.schema import Plan
from boardwright.publish.tables import buying_csv, cut_list_csv


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


@pytest.mark.parametrize("units", ["in", "mm"])
def test_the_cut_list_comes_back_as_the_plan_has_it(units: str) -> None:
    plan = make(units)  # type: ignore[arg-type]
    found = rows(cut_list_csv(plan))
    assert len(found) == len(plan.parts)
    for row, part in zip(found, plan.parts, strict=True):
        assert (row["letter"], row["part"], int(row["count"])) == (part.letter, part.name, part.count)
        assert (row["material"], row["grain"], row["cut"]) == (part.stock_name, part.grain, part.cut_when)
        for kind, sizes in (("finished", part.finished), ("rough", part.rough)):
            for side in ("length", "width", "thickness"):
                text, mm = row[f"{kind} {side}"], row[f"{kind} {side} mm"]
                if sizes is None:
                    assert (text, mm) == ("", "")
                else:
                    assert text == getattr(sizes, side).text
                    assert float(mm) == pytest.approx(getattr(sizes, side).mm, abs=1e-4)


def test_notes_say_glue_up_and_mirror() -> None:
    found = {r["letter"]: r["notes"] for r in rows(cut_list_csv(make()))}
    assert found["C"] == "glue up from 3 strips, rough width: 2 of 3 1/2, 1 of 3 3/4"
    assert found["B"] == "glue up from 2 strips, rough width: 2 of 4 7/8; mirror of A"
    assert found["F"] == ""


def test_the_buying_list_comes_back_as_the_plan_has_it() -> None:
    plan = make()
    assert rows(buying_csv(plan)) == [b.model_dump() for b in plan.buy]


def test_lines_end_and_quotes_double_as_rfc_4180_says() -> None:
    """RFC 4180, 2.1 (CRLF), 2.6 and 2.7 (quotes)."""
    plan = make()
    first = plan.parts[0].model_copy(update={"name": 'side, "left"\nof the case'})
    text = cut_list_csv(plan.model_copy(update={"parts": [first]}))
    assert text.endswith("\r\n")
    assert 'A,"side, ""left""\nof the case",1,' in text
    assert rows(text)[0]["part"] == first.name


def test_an_empty_plan_gives_heads_only() -> None:
    plan: Plan = make().model_copy(update={"parts": [], "buy": []})
    assert cut_list_csv(plan).count("\r\n") == 1
    assert buying_csv(plan) == "group,item,quantity,detail,source,cost\r\n"
