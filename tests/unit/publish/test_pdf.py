"""The PDF, read back with pypdf: what the plan says is printed, on its paper, the same bytes every time."""

from __future__ import annotations

import re
from pathlib import Path

import pypdf
import pytest
from ribbon_shelf import make

from boardwright.core.letters import letter
from boardwright.plan.schema import Plan, PlanPart, Sizes
from boardwright.publish.pdf import Paper, cover_drawing, write_pdf

PAPERS = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}
"""Width and height [mm]: ANSI Y14.1 size A; ISO 216 A4."""
Printed = tuple[Plan, pypdf.PdfReader, str]
KINDS = [(units, paper) for units in ("in", "mm") for paper in PAPERS]


def read(plan: Plan, path: Path, paper: Paper = "letter") -> pypdf.PdfReader:
    write_pdf(plan, path, paper)
    return pypdf.PdfReader(path)


def words(text: str) -> str:
    return " ".join(text.replace("“", '"').replace("”", '"').replace("’", "'").split())


def all_text(pdf: pypdf.PdfReader) -> str:
    return " ".join(words(page.extract_text()) for page in pdf.pages)


def page_of(pdf: pypdf.PdfReader, start: str) -> str:
    return next(t for page in pdf.pages if (t := words(page.extract_text())).startswith(start))


@pytest.fixture(scope="module", params=KINDS, ids=lambda k: "-".join(k))
def printed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    units, paper = request.param
    plan = make(units)
    return plan, read(plan, tmp_path_factory.mktemp("pdf") / "plan.pdf", paper), paper


def test_every_page_has_the_size_of_its_paper(printed: Printed) -> None:
    _, pdf, paper = printed
    for page in pdf.pages:
        size = [float(v) / 72 * 25.4 for v in (page.mediabox.width, page.mediabox.height)]
        assert size == pytest.approx(PAPERS[paper], abs=0.05)


def triple(s: Sizes) -> str:
    return f"{s.thickness.text} × {s.width.text} × {s.length.text}"


def cut_list_row(part: PlanPart) -> str:
    f = part.finished
    rough = triple(part.rough) if part.rough else "from the sheet"
    return (
        f"{part.letter} {part.name} {part.count} {f.thickness.text} {f.width.text} {f.length.text} {rough} "
        f"{part.stock_name} {part.grain}"
    )


def test_every_row_of_the_cut_list_is_printed(printed: Printed) -> None:
    plan, pdf, _ = printed
    page = page_of(pdf, "Cut list")
    assert len(plan.parts) == 14
    for part in plan.parts:
        assert cut_list_row(part) in page
        if part.glue_up:
            strips = ", ".join(f"{s.count} of {s.width.text}" for s in part.glue_up)
            n = sum(s.count for s in part.glue_up)
            assert f"{part.grain} Glue up from {n} strips, rough width: {strips}" in page


def test_every_line_to_buy_and_every_caution_is_printed(printed: Printed) -> None:
    plan, pdf, _ = printed
    text = all_text(pdf)
    for b in plan.buy:
        assert " ".join(words(s) for s in (b.item, b.detail, b.source, b.quantity) if s) in text
    for c in plan.cautions:
        assert c.about in text
        for line in c.lines:
            assert line in text


def test_part_sheets_say_size_count_work_and_place(printed: Printed) -> None:
    plan, pdf, _ = printed
    text = all_text(pdf)
    for part in plan.parts:
        assert f"{triple(part.finished)} {plan.units} T × W × L finished; make {part.count}" in text
        for n, work in enumerate(part.work, 1):
            assert f"{n} {work}" in text
    assert "Mirror image of A" in text
    assert "Where it goes case drawer front 1, case drawer front 2, case drawer front 3" in text


def test_the_rest_of_the_plan_is_printed(printed: Printed) -> None:
    plan, pdf, _ = printed
    text = all_text(pdf)
    expected = [*plan.notes, *(f.message for f in plan.findings), *(f.remedy for f in plan.findings)]
    expected += [f"{f.name} {f.text}" for f in plan.facts]
    expected += [f"{j.kind} {j.first} {j.second} {j.count} {j.summary}" for j in plan.joints]
    expected += [s.text for s in plan.layout_summaries]
    expected += [
        f"{r.path.replace('].drawer', ']. drawer')} {r.size.text} {r.sum}".strip() for r in plan.reasons
    ]
    expected += [f"= {c.whole.size.text} {c.whole.label}" for c in plan.chains]
    expected += [f"{m.size.text.lstrip('-')} {m.label}" for c in plan.chains for m in c.members]
    for e in expected:
        assert e in text


def test_the_foot_of_every_page_counts_pages_and_names_the_plan(
    printed: Printed,
) -> None:
    plan, pdf, _ = printed
    unit = {"in": "inches", "mm": "millimetres"}[plan.units]
    for n, page in enumerate(pdf.pages, 1):
        foot = f"{plan.title}, version 1.2 Sizes in {unit}, finest step {plan.step.text}"
        assert f"{foot} Page {n} of {len(pdf.pages)}" in words(page.extract_text())


def test_the_measuring_lines_are_100_mm_and_4_inches_long(printed: Printed) -> None:
    """A PDF unit is 1/72 in (ISO 32000-1, 8.3.2.3)."""
    _, pdf, _ = printed
    page = next(p for p in pdf.pages if "Check the printer" in p.extract_text())
    drawn = page.get_contents().get_data().decode("latin-1")  # type: ignore[union-attr]
    lengths = [float(v) for v in re.findall(r" 0\.7 w \d+ M 0 0 m (\S+) 0 l", drawn)]
    for expected in (100 / 25.4 * 72, 4 * 72):
        assert any(abs(v - expected) < 0.001 for v in lengths)
    scales = {abs(float(v)) for m in re.findall(r"(\S+) 0 0 (\S+) \S+ \S+ cm", drawn) for v in m}
    assert scales == {1.0}


def test_the_same_plan_gives_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a", "b"):
        (tmp_path / name).mkdir()
        write_pdf(make(), tmp_path / name / "plan.pdf", "letter")
    assert (tmp_path / "a/plan.pdf").read_bytes() == (tmp_path / "b/plan.pdf").read_bytes()


def test_fractions_are_copied_from_the_page_as_they_are_written(tmp_path: Path) -> None:
    text = all_text(read(make(), tmp_path / "plan.pdf"))
    assert "14 29/32" in text
    assert not set("¼½¾⅛⅜⅝⅞⁄") & set(text)


def test_only_the_packaged_faces_are_used_in_the_words(tmp_path: Path) -> None:
    pdf = read(make(), tmp_path / "plan.pdf")
    fonts = {
        str(f["/BaseFont"]).split("+")[1]
        for p in pdf.pages
        for f in map(_object, p["/Resources"]["/Font"].values())
    }  # type: ignore[index]
    assert fonts
    assert all(f.startswith("SourceSansPro") for f in fonts), fonts


def _object(reference: pypdf.generic.IndirectObject) -> dict[str, object]:
    return reference.get_object()  # type: ignore[return-value]


def test_a_plan_with_errors_says_so_on_its_cover_and_points_to_the_list(tmp_path: Path) -> None:
    pdf = read(make(), tmp_path / "plan.pdf")
    cover = words(pdf.pages[0].extract_text())
    assert "This plan has open problems 1 error and 1 warning, listed on page 2" in cover
    page = words(pdf.pages[1].extract_text())
    assert page.startswith("This plan has open problems")
    assert "error drawer front L is 1/32 wider than its opening allows (3 times)" in page


def test_a_plan_with_warnings_only_says_so_more_quietly(tmp_path: Path) -> None:
    plan = make()
    plan = plan.model_copy(update={"findings": [f for f in plan.findings if f.severity != "error"]})
    pdf = read(plan, tmp_path / "plan.pdf")
    assert "open problems" not in all_text(pdf)
    assert "1 warning to read before cutting, on page 2" in words(pdf.pages[0].extract_text())
    assert words(pdf.pages[1].extract_text()).startswith("Read before cutting")


def test_a_sound_plan_has_no_page_of_findings(tmp_path: Path) -> None:
    pdf = read(make(findings=False), tmp_path / "plan.pdf")
    assert "problems" not in all_text(pdf)
    assert words(pdf.pages[1].extract_text()).startswith("How to read this plan")


def many_parts() -> Plan:
    plan = make()
    parts = [
        plan.parts[n % 14].model_copy(
            update={"letter": letter(n), "work": ["Plane it."] * 80 if n == 3 else []}
        )
        for n in range(70)
    ]
    return plan.model_copy(update={"parts": parts})


def test_a_long_cut_list_repeats_its_head_and_breaks_no_row(tmp_path: Path) -> None:
    plan = many_parts()
    pages = [words(p.extract_text()) for p in read(plan, tmp_path / "plan.pdf").pages]
    listed = [p for p in pages if "part no. thick wide long" in p]
    assert len(listed) > 1
    for part in plan.parts:
        row = cut_list_row(part)
        if part.glue_up:
            row += " Glue up from"
        assert sum(row in p for p in listed) == 1


def test_a_part_sheet_longer_than_a_page_goes_on_on_the_next(tmp_path: Path) -> None:
    text = all_text(read(many_parts(), tmp_path / "plan.pdf"))
    for n in range(1, 81):
        assert f"{n} Plane it." in text


def test_an_empty_plan_prints(tmp_path: Path) -> None:
    size = {"mm": 100, "text": "100"}
    empty: dict[str, list[object]] = {
        k: []
        for k, f in Plan.model_fields.items()
        if f.is_required() and str(f.annotation).startswith("list")
    }
    plan = Plan.model_validate(
        {"title": "Peg", "units": "mm", "step": size, "outside": {"width": size}, **empty}
    )
    assert "outside width 100 mm" in all_text(read(plan, tmp_path / "plan.pdf", "a4"))


def test_typst_marks_in_words_are_printed_not_obeyed(tmp_path: Path) -> None:
    odd = "#panic() *bold* $x$ \\ @where <here> [a] _b_ // c"
    plan = make().model_copy(update={"notes": [odd], "title": odd, "about": odd, "maker": odd})
    text = all_text(read(plan, tmp_path / "plan.pdf"))
    assert text.count(odd) >= 4


def test_the_cover_shows_the_first_view_unless_told_otherwise() -> None:
    assert cover_drawing(make()) == "assembled"
    assert cover_drawing(make().model_copy(update={"cover": "front"})) == "front"
    assert cover_drawing(make().model_copy(update={"drawings": []})) == ""
