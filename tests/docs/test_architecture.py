"""`docs/architecture.md` against the folders, the import rule and what is really imported."""

import re
import subprocess
import sys
import tomllib

import pytest
from pages import ROOT, page, rows

PAGE = page("docs/architecture.md")
SOURCE = ROOT / "src/boardwright"
LINTER = tomllib.loads(page("pyproject.toml"))["tool"]["importlinter"]["contracts"]
TABLE = {r[0].strip("`").rstrip("/").removesuffix(".py"): r for r in rows(PAGE) if len(r) == 5}
DOORS = {
    "manifold3d": "manifold3d", "OCP": "OCCT", "ortools": "OR-tools", "numba": "numba", "ezdxf": "ezdxf",
    "typst": "typst", "ruamel": "ruamel.yaml", "sqlalchemy": "SQLAlchemy",
}  # fmt: skip


def test_every_folder_stands_on_the_page() -> None:
    folders = {p.parent.name for p in SOURCE.glob("*/__init__.py")}
    files = {p.stem for p in SOURCE.glob("*.py")} - {"__init__"}
    assert set(TABLE) == folders | files


def test_the_order_is_that_of_the_import_rule() -> None:
    layers = next(c for c in LINTER if c["type"] == "layers")["layers"]
    order = list(TABLE)
    at = 0
    for layer in reversed(layers):
        beside = {name.strip() for name in layer.split("|")}
        assert set(order[at : at + len(beside)]) == beside
        at += len(beside)
    assert at == len(order)


@pytest.mark.parametrize(("module", "name"), DOORS.items())
def test_a_heavy_library_has_the_door_that_the_page_names(module: str, name: str) -> None:
    named = {folder for folder, row in TABLE.items() if name in row[4]}
    assert len(named) == 1
    imports = re.compile(rf"^\s*(import|from) {module}\b", re.MULTILINE)
    found = {
        file.relative_to(SOURCE).parts[0]
        for file in SOURCE.rglob("*.py")
        if imports.search(file.read_text(encoding="utf-8"))
    }
    assert found == named
    shut = {s for c in LINTER if module in c.get("forbidden_modules", []) for s in c["source_modules"]}
    assert shut
    assert not {f"boardwright.{folder}" for folder in named} & shut


def test_checking_loads_no_library_that_it_does_not_need() -> None:
    code = (
        "import sys\nfrom boardwright.pipeline import check_file\n"
        f"assert check_file({str(ROOT / 'examples/bolt-shelves.yaml')!r}).ok\n"
        "print(*[m for m in ('OCP', 'ortools', 'typst', 'sqlalchemy') if m in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == ""


def test_files_that_the_page_names_are_there() -> None:
    named = re.findall(r"`([a-z_]+/[a-z_]+\.py)`", PAGE)
    assert len(named) >= 6
    assert [n for n in named if not (SOURCE / n).is_file()] == []
