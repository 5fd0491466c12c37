"""The plan as a PDF on Letter or A4, set by typst from the templates in `pages/`.

The same plan gives the same bytes: the document has no date, only the packaged fonts are used, and everything
that is read stands in one temporary folder.
"""

from __future__ import annotations

import json
import shutil
import tempfile
from importlib import resources
from pathlib import Path
from typing import Any, Literal

from boardwright.plan.schema import DrawingRecord, Plan
from boardwright.publish.svg import svg_text

Paper = Literal["letter", "a4"]
FACES = ("Regular", "It", "Semibold", "SemiboldIt", "Bold", "BoldIt")


def write_pdf(plan: Plan, path: Path, paper: Paper) -> None:
    """Writes the plan as a PDF.

    Args:
        plan: the plan; a plan with errors says so on its cover and lists them.
        path: the file to write.
        paper: `letter` or `a4`, portrait.

    Raises:
        OSError: the file cannot be written.
    """
    import typst

    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        _lay_out(plan, paper, folder)
        typst.compile(
            str(folder / "plan.typ"),
            output=str(path),
            root=str(folder),
            font_paths=[str(folder / "fonts")],
            ignore_system_fonts=True,
            format="pdf",
        )


def cover_drawing(plan: Plan) -> str:
    """Id of the drawing on the cover, or "": `plan.cover`, else the first that stands on no other page."""
    return plan.cover or next(iter(_views(plan)), "")


def _views(plan: Plan) -> list[str]:
    taken = {p.drawing for p in plan.parts} | {x.drawing for x in plan.layouts}
    taken |= {s.drawing for s in plan.steps}
    if plan.year:
        taken |= {plan.year.drawing, *(f.drawing for f in plan.year.fits)}
    return [d.id for d in plan.drawings if d.id not in taken]


def _lay_out(plan: Plan, paper: Paper, folder: Path) -> None:
    """Puts templates, fonts, drawings and data into the folder that typst reads."""
    for page in resources.files("boardwright.publish").joinpath("pages").iterdir():
        if page.name.endswith(".typ"):
            (folder / page.name).write_text(page.read_text(encoding="utf-8"), encoding="utf-8")
    _copy_fonts(folder / "fonts")
    (folder / "drawings").mkdir()
    pictures = {d.id: _picture(d, number, folder) for number, d in enumerate(plan.drawings)}
    cover = cover_drawing(plan)
    data = {
        "paper": paper,
        "plan": plan.model_dump(mode="json", exclude={"drawings"}),
        "pictures": pictures,
        "cover": cover,
        "views": [id for id in _views(plan) if id != cover],
    }
    (folder / "data.json").write_text(json.dumps(data, ensure_ascii=False), encoding="utf-8")


def _picture(drawing: DrawingRecord, number: int, folder: Path) -> dict[str, Any]:
    name = f"drawings/{number}.svg"
    (folder / name).write_text(svg_text(drawing), encoding="utf-8")
    return {
        "file": f"/{name}",
        "title": drawing.title,
        "scale": drawing.scale,
        "width": drawing.width,
        "height": drawing.height,
    }


def _copy_fonts(folder: Path) -> None:
    """Copies the faces that are used, one file a face, so that which file is found first does not matter."""
    import font_source_sans_pro

    folder.mkdir()
    source = Path(str(font_source_sans_pro.__file__)).parent / "files"
    for face in FACES:
        shutil.copyfile(source / f"SourceSansPro-{face}.otf", folder / f"SourceSansPro-{face}.otf")
