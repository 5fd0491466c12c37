"""`docs/rack.md` shows what its commands print, and its table what each kind of entry holds."""

import re
import runpy

from pages import ROOT, page, rows

from boardwright.store.entries import ALLOWED, NEEDED

TOOL = runpy.run_path(str(ROOT / "tools/rack_docs.py"))
PAGE = page("docs/rack.md")


def test_the_examples_print_what_the_page_shows() -> None:
    assert TOOL["page_text"](PAGE) == PAGE, "run python tools/rack_docs.py"


def test_the_table_of_entries() -> None:
    shown = {}
    for kinds, needs, may in (r for r in rows(PAGE) if len(r) == 3):
        for kind in re.findall(r"`(\w+)`", kinds):
            shown[kind] = (set(re.findall(r"`(\w+)`", needs)), set(re.findall(r"`(\w+)`", may)))
    assert set(shown) == set(NEEDED)
    for kind, (needs, may) in shown.items():
        assert needs == set(NEEDED[kind])
        if kind != "sheet":  # the same as a board
            assert needs | may | {"kind"} == set(ALLOWED[kind])
