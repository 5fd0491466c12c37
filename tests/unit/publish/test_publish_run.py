"""All files of a plan in one folder."""

from __future__ import annotations

import json
import math
from pathlib import Path

import ezdxf
import jsonschema
import pytest
from ribbon_shelf import INCH, make

from boardwright.plan.schema import Plan
from boardwright.publish import run
from boardwright.publish.run import publish
from boardwright.publish.step import parts_of
from boardwright.solids.exact import read_step_volumes

Written = tuple[Plan, Path, list[Path], list[Path]]
"""The plan, the folder, the paths returned, the paths reported."""
SCHEMA = Path(__file__).parents[3] / "docs/plan.schema.json"


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Written:
    folder = tmp_path_factory.mktemp("out") / "ribbon shelf"
    seen: list[Path] = []
    plan = make()
    return plan, folder, publish(plan, folder, "letter", progress=seen.append), seen


def test_every_file_is_there_and_nothing_else(written: Written) -> None:
    plan, folder, paths, seen = written
    names = {
        "plan.json",
        "plan.pdf",
        "cut-list.csv",
        "buying-list.csv",
        "rough-list.csv",
        "lists.xlsx",
        "piece.step",
    }
    names |= {f"drawings/{d.id}.{suffix}" for d in plan.drawings for suffix in ("svg", "dxf")}
    assert {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()} == names
    assert {p.relative_to(folder).as_posix() for p in paths} == names
    assert seen == paths
    assert all(not p.name.startswith(".") for p in folder.rglob("*"))


def test_plan_json_keeps_to_the_published_schema_and_reads_back(
    written: Written,
) -> None:
    plan, folder, _, _ = written
    data = json.loads((folder / "plan.json").read_text(encoding="utf-8"))
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    validator = jsonschema.Draft202012Validator(schema)
    validator.check_schema(schema)
    validator.validate(data)
    assert Plan.model_validate(data) == plan
    assert not validator.is_valid({**data, "colour": "red"})
    assert not validator.is_valid({k: v for k, v in data.items() if k != "parts"})


def test_the_step_file_holds_every_part_with_its_cuts_taken_away(
    written: Written,
) -> None:
    """Volumes by hand: blank less its cuts; cylinder pi r2 h, frustum pi h (R2 + R r + r2) / 3."""
    plan, folder, _, _ = written
    expected = []
    for part in plan.parts:
        f = part.finished
        blank = f.length.mm * f.width.mm * f.thickness.mm
        if part.letter in "AB":
            channels = 2 * (0.75 * 0.25 * 8.75)
            rabbet = 0.25 * 0.375 * 34.5
            shared = 2 * (0.75 * 0.25 * 0.25)
            blank -= (channels + rabbet - shared) * INCH**3
        if part.letter == "H":
            r, top, h = 2.5, 4.75, 2.25 / math.tan(math.radians(41))
            hole = math.pi * r**2 * (f.thickness.mm - h) + math.pi * h / 3 * (top**2 + top * r + r**2)
            blank -= 4 * hole + (0.5 * INCH) ** 2 * f.thickness.mm
        expected += [blank] * part.count
    found = read_step_volumes(folder / "piece.step")
    assert len(found) == 27
    assert sorted(found) == pytest.approx(sorted(expected), rel=1e-6)


def test_parts_stand_where_the_plan_puts_them() -> None:
    part = next(p for p in parts_of(make()) if p.letter == "B")
    assert part.pose.point((0.0, 0.0, 0.0)) == (0.75 * INCH, 0.0, 1000.0)
    assert part.pose.point((10.0, 2.0, 3.0)) == (0.75 * INCH - 3.0, 2.0, 1010.0)


def test_drawings_open_in_a_dxf_reader(written: Written) -> None:
    plan, folder, _, _ = written
    for d in plan.drawings:
        doc = ezdxf.readfile(folder / f"drawings/{d.id}.dxf")
        assert not doc.audit().has_errors


def test_the_same_plan_gives_the_same_files(written: Written, tmp_path: Path) -> None:
    plan, folder, paths, _ = written
    publish(plan, tmp_path, "letter")
    for p in paths:
        again, before = (tmp_path / p.relative_to(folder)).read_bytes(), p.read_bytes()
        assert again == before, p.name


def test_only_the_formats_asked_for_are_written(tmp_path: Path) -> None:
    paths = publish(make(), tmp_path, "a4", formats=("csv",))
    assert [p.name for p in paths] == ["cut-list.csv", "buying-list.csv", "rough-list.csv"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["buying-list.csv", "cut-list.csv", "rough-list.csv"]


def test_an_unknown_format_is_refused_before_anything_is_written(tmp_path: Path) -> None:
    with pytest.raises(
        ValueError, match="unknown format docx; expected any of json, csv, xlsx, svg, dxf, step, pdf"
    ):
        publish(make(), tmp_path / "out", "a4", formats=("csv", "docx"))
    assert not (tmp_path / "out").exists()


def test_a_stop_in_the_middle_leaves_the_old_file_and_no_half_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(make(), tmp_path, "a4", formats=("pdf",))
    old = (tmp_path / "plan.pdf").read_bytes()

    def stopped(plan: Plan, path: Path, paper: str) -> None:
        path.write_bytes(b"%PDF-half")
        raise KeyboardInterrupt

    monkeypatch.setattr(run, "write_pdf", stopped)
    with pytest.raises(KeyboardInterrupt):
        publish(make(), tmp_path, "a4", formats=("pdf",))
    assert [p.name for p in tmp_path.iterdir()] == ["plan.pdf"]
    assert (tmp_path / "plan.pdf").read_bytes() == old


def test_ids_of_drawings_cannot_lead_out_of_the_folder(tmp_path: Path) -> None:
    plan = make()
    drawing = plan.drawings[0].model_copy(update={"id": "../../out of/here"})
    paths = publish(plan.model_copy(update={"drawings": [drawing]}), tmp_path, "a4", formats=("svg",))
    assert [p.relative_to(tmp_path).as_posix() for p in paths] == ["drawings/out-of-here.svg"]
