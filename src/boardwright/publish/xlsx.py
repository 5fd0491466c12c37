"""The lists as one workbook: a sheet each for the buying list, the cut list and the rough list."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

from boardwright.plan.schema import Plan
from boardwright.publish.tables import (
    BUYING_HEAD,
    CUT_LIST_HEAD,
    ROUGH_HEAD,
    buying_rows,
    cut_list_rows,
    rough_rows,
)

WIDEST = 60
"""Widest column [characters]; longer text is wrapped."""


def write_xlsx(plan: Plan, path: Path) -> None:
    """Writes the workbook; the same plan gives the same bytes.

    Args:
        plan: the plan.
        path: the file.
    """
    import xlsxwriter

    book = xlsxwriter.Workbook(str(path), {"strings_to_formulas": False, "strings_to_urls": False})
    book.set_properties({"title": plan.title, "created": datetime(2000, 1, 1)})
    head = book.add_format({"bold": True, "bottom": 1, "valign": "top"})
    plain = book.add_format({"text_wrap": True, "valign": "top"})
    _sheet(book, "Buying list", BUYING_HEAD, buying_rows(plan), head, plain, numbers=("cost",))
    _sheet(book, "Cut list", CUT_LIST_HEAD, cut_list_rows(plan), head, plain, numbers=("count",))
    _sheet(book, "Rough list", ROUGH_HEAD, rough_rows(plan), head, plain, numbers=("count",))
    book.close()


def _sheet(
    book: Any,
    name: str,
    head: Sequence[str],
    rows: Sequence[Sequence[str]],
    bold: Any,
    plain: Any,
    numbers: Sequence[str],
) -> None:
    sheet = book.add_worksheet(name)
    sheet.freeze_panes(1, 0)
    for c, title in enumerate(head):
        widest = max([len(title), *(len(row[c]) for row in rows)])
        sheet.set_column(c, c, min(WIDEST, widest + 2))
        sheet.write_string(0, c, title, bold)
        number = title in numbers or title.endswith(" mm")
        for r, row in enumerate(rows, 1):
            if number and row[c]:
                sheet.write_number(r, c, float(row[c]), plain)
            else:
                sheet.write_string(r, c, row[c], plain)
