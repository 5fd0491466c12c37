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
limit is used up.

{caution}

Each check below has a design that fires it and a near twin that does not; a test runs both. This page is written by
`tools/check_docs.py`; a test compares it.
"""
COMPARED = """## Published values and ours

Every row is a test. *Provenance* says whether the published value was read on a page, computed from a formula that was
read, or remembered.

| what | published | ours | within | source | provenance |
|---|---|---|---|---|---|
"""


def codes() -> set[str]:
    """Every finding code that the checks can give."""
    found: set[str] = set()
    for file in sorted((ROOT / "src" / "boardwright" / "checks").glob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call):
                found |= FINDINGS["_given_to"](node)
    return {code for code in found if not FINDINGS["_is_key"](code)}


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
    return "\n\n".join(p.strip() for p in parts) + "\n\n" + COMPARED + _compared() + "\n"


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


def main() -> None:
    """Write the page."""
    PAGE.write_text(page_text(), encoding="utf-8")


if __name__ == "__main__":
    main()
