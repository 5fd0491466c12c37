"""Writes `docs/checks.md`: each check with its formula, source, limits and two designs; published values and ours.

python tools/check_docs.py
"""

from __future__ import annotations

import ast
import runpy
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
PAGE = ROOT / "docs" / "checks.md"
PAIRS = ROOT / "tests" / "errors"
FINDINGS: dict[str, Any] = runpy.run_path(str(ROOT / "tools" / "finding_docs.py"))
FACTS: dict[str, Any] = runpy.run_path(str(ROOT / "tools" / "check_facts.py"))["FACTS"]
INTRO = """# Checks

What Boardwright asks of every piece. A check that is not kept gives a finding: see [findings](findings.md) for the
exact words. `boardwright check FILE --all` lists what is kept as well, with its figure, its limit, and how much of the
limit is used up; and the checks that have no figure, with how many places they looked at.

{caution}

Each check below has a design that fires it and a near twin that does not; a test runs both. This page is written by
`tools/check_docs.py`; a test compares it.
"""
COMPARED = """## Published values and ours

Every row is a test. *Provenance* says whether the published value was read on a page, computed from a formula that was
read, or remembered. Beams, columns and frames are compared with a general finite-element library besides, within 2 in
10,000 (`tests/validation/test_frame_library.py`).

| what | published | ours | within | source | provenance |
|---|---|---|---|---|---|
"""


PRACTICE = """## Situations from practice and ours

What makers asked or got wrong, in forums, weblogs and magazines, each with its answer recomputed from first principles
there. Every row is a test; those that are no single number are designs in `tests/validation/test_practice_designs.py`.

| | what | right | ours | within | source |
|---|---|---|---|---|---|
"""
DIFFER = """## Where published values differ

- **Movement by the foot.** A hardwood association prints, for 12 in from 10 to 5 %, basswood 10, beech 14, hard maple
  12, oak 11, yellow birch 12 and yellow-poplar 9 sixty-fourths: 8 to 22 % under the handbook's coefficients. Ours are
  the handbook's: for clearances the larger figure is right.
- **Oak and other groups.** The coefficients of red oak, white oak, true hickory and green ash are of the group, not of
  the one wood: 0.00369 for red oak, where its own shrinkage would give 0.00304. The printed ones are kept.
- **Specific gravity of white ash at 12 %.** Printed 0.605, by the same page's equation 0.603: the equation is right.
- **Greatest moisture at 0.90.** Printed 44 %, by the equation beside it 46 %: the equation is used; the text is older.
- **Moisture at 97 % of humidity.** A laboratory's page prints 25.0 %, the equation gives 25.6: that is beyond the
  table, which ends at 95 %; no wood in a house is there.
- **Clamps.** A forum prints 934 clamps of 370 lb and 329 of 1,050 lb for 345,600 lb, cut off: whole clamps that reach
  the force are one more.
- **Dowels.** A paper of 2018 finds 4.9 MPa of bond on spiral-grooved dowels, the older regression for plain dowels well
  glued more. The regression is the mean; what is allowed for minutes, half of it, lies under both.
- **Finger joints and dovetails.** No usable regression is published. Their cheeks are counted as long-grain glue,
  halved and marked as such.
- **Varnish.** A rule adds 15 % for brush and can. The buying list gives the range from the label's low to its high
  coverage, which is wider, and adds nothing.
- **Legs.** Where all tenons are alike, four tapered legs are one kind. Tenons that pass each other in a leg are unlike,
  and then there are two kinds, mirrored.
- **Gap of a framed door.** A situation from practice counts both gaps of a door together and finds 0.104 in left in
  summer. The hinged edge stays where it is: ours leaves about 0.01 in at the free edge. Both say that it opens; ours
  adds that it hardly clears.
- **Width of a panel.** For a cherry panel in 8 3/4 in from groove to groove a situation from practice cuts 8 9/16; ours
  is 8 7/16. Both keep 1/8 in in each groove and have room when it is wettest; ours leaves more room.
"""


def codes() -> set[str]:
    """Every finding code that the checks can give."""
    found: set[str] = set()
    for file in sorted((ROOT / "src" / "boardwright" / "checks").rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call):
                found |= FINDINGS["_given_to"](node)
    return {code for code in found if not FINDINGS["_is_key"](code)} - set(FINDINGS["GUARDS"])


def twins() -> dict[str, tuple[str, str]]:
    """Code, what is changed, and into what, so that its design no longer gives it."""
    remedies = runpy.run_path(str(PAIRS / "test_remedies.py"))["REMEDIES"]
    own = runpy.run_path(str(PAIRS / "twins.py"))["TWINS"]
    return {code: (old, new) for code, old, new in [*((c, o, n) for c, _, o, n in remedies), *own]}


def page_text() -> str:
    """The page."""
    from boardwright.checks.margins import STANDING

    changed = twins()
    parts = [INTRO.format(caution=STANDING)]
    for group, title in FINDINGS["GROUPS"].items():
        own = [code for code in FACTS if code.startswith(f"{group}.")]
        if own:
            parts += [f"## {title}", *(_entry(code, *changed[code]) for code in own)]
    tables = [COMPARED + _compared(), PRACTICE + _practice(), DIFFER]
    return "\n\n".join(p.strip() for p in (*parts, *tables)) + "\n"


def _entry(code: str, old: str, new: str) -> str:
    facts = FACTS[code]
    design = (PAIRS / f"{code}.yaml").read_text(encoding="utf-8").partition("\n")[2]
    lines = [f"**{facts.asks}**", f"Figured: {facts.figured}.", f"Source: {facts.source}."]
    if facts.limits:
        lines.append(f"Limits: {facts.limits}.")
    return "\n\n".join(
        [
            f"### {code}",
            "  \n".join(lines),
            "It fires:",
            f"```yaml\n{design.rstrip()}\n```",
            f"Its twin, silent: {_change(old, new)}",
        ]
    )


def _change(old: str, new: str) -> str:
    before = " ".join(old.split())
    return f"`{before}` becomes `{' '.join(new.split())}`." if new.strip() else f"`{before}` is left out."


def _compared() -> str:
    test = runpy.run_path(str(ROOT / "tests" / "validation" / "test_check_values.py"))
    rows = []
    for row in test["ROWS"]:
        ours = test["COMPUTED"][row["id"]]()
        kept = [row["expected"], f"{ours:.6g}", row["tolerance"], row["source"], row["provenance"]]
        rows.append(f"| {' | '.join([row['what'], *kept])} |")
    return "\n".join(rows)


def _practice() -> str:
    test = runpy.run_path(str(ROOT / "tests" / "validation" / "test_practice_values.py"))
    rows = []
    for row in test["ROWS"]:
        ours = test["COMPUTED"][row["id"]]()
        kept = [row["case"], row["what"], row["expected"], f"{ours:.5g}", row["tolerance"], row["source"]]
        rows.append(f"| {' | '.join(kept)} |")
    return "\n".join(rows)


def main() -> None:
    """Write the page."""
    PAGE.write_text(page_text(), encoding="utf-8")


if __name__ == "__main__":
    main()
