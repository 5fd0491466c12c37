"""What `check --all` lists of checks that have no figure."""

import ast
import json
import runpy
from pathlib import Path

from typer.testing import CliRunner

from boardwright.checks.looked import PLACES
from boardwright.cli.main import app
from boardwright.pipeline import check_file

ROOT = Path(__file__).parents[3]
EXAMPLE = "examples/ribbon-chest.yaml"


def codes_with_a_figure() -> set[str]:
    """Every code that a Margin is made with."""
    found = set()
    for file in sorted((ROOT / "src" / "boardwright" / "checks").rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Margin":
                found |= {a.value for a in node.args[:1] if isinstance(a, ast.Constant)}
    return found


def test_every_check_is_listed_by_its_figure_or_by_what_it_looks_at() -> None:
    facts = runpy.run_path(str(ROOT / "tools" / "check_facts.py"))["FACTS"]
    looked = {code for code, _, _ in PLACES}
    by_variable = {"strength.bending", "strength.shear"}
    by_table = ("making.", "tolerance.", "passage.", "wood.", "drawer.height", "drawer.width", "drawer.depth")
    by_variable |= {c for c in facts if c.startswith((*by_table, "door.swells", "fit.binds-in-year"))}
    unlisted = set(facts) - codes_with_a_figure() - by_variable - looked
    # the anchor is a note on every tall piece
    assert unlisted <= {"stability.anchor"}
    assert not looked & codes_with_a_figure()


def test_places_are_counted() -> None:
    result = check_file(ROOT / EXAMPLE)
    piece = result.piece
    assert piece is not None
    counts = {k.check: k.count for k in result.looked}
    n = len(piece.parts)
    assert counts["fit.collision"] == n * (n - 1) / 2
    assert counts["fastener.meet"] == len(piece.fasteners)
    assert counts["drawer.hits"] == len(piece.motions)
    assert counts["stock.thickness-not-given"] == n
    assert "door.hits" not in counts  # it has no doors


def test_what_gives_a_finding_is_not_listed() -> None:
    result = check_file(ROOT / "tests/errors/joint.thin-web.yaml")
    assert "joint.thin-web" in {f.code for f in result.findings}
    assert "joint.thin-web" not in {k.check for k in result.looked}


def test_both_forms_print_it() -> None:
    file = str(ROOT / EXAMPLE)
    text = CliRunner().invoke(app, ["check", file, "--all"]).output
    assert "nothing found; 6 drawers and trays" in text
    data = json.loads(CliRunner().invoke(app, ["check", file, "--all", "--format", "json"]).output)
    assert {"check": "drawer.hits", "count": 6, "what": "drawers and trays"} in data["looked"]
    assert "looked" not in json.loads(CliRunner().invoke(app, ["check", file, "--format", "json"]).output)
