"""The PDF, read back with pypdf: what the plan says is printed, on its paper, the same bytes every time."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pypdf
import pytest
from ribbon_shelf import Units, make

from boardwright.checks.movement.curves import curves
from boardwright.core.lengths import Printer
from boardwright.core.letters import letter
from boardwright.drawings.record import to_record
from boardwright.pipeline import check_file, make_plan
from boardwright.plan.schema import DrawingRecord, Plan, PlanPart, PlanReason, Sizes
from boardwright.plan.year import plan_year
from boardwright.publish.pdf import Paper, cover_drawing, write_pdf

EXAMPLES = Path(__file__).parents[3] / "examples"
PAPERS = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}
"""Width and height [mm]: ANSI Y14.1 size A; ISO 216 A4."""
Printed = tuple[Plan, pypdf.PdfReader, str]
KINDS = [(units, paper) for units in ("in", "mm") for paper in PAPERS]


def read(plan: Plan, path: Path, paper: Paper = "letter") -> pypdf.PdfReader:
    write_pdf(plan, path, paper)
    return pypdf.PdfReader(path)


def words(text: str) -> str:
    return " ".join(text.replace("“", '"').replace("”", '"').replace("’", "'").split())


@cache
def pages_of(pdf: pypdf.PdfReader) -> list[str]:
    return [words(page.extract_text()) for page in pdf.pages]


def all_text(pdf: pypdf.PdfReader) -> str:
    return " ".join(pages_of(pdf))


def page_of(pdf: pypdf.PdfReader, start: str) -> str:
    return next(t for t in pages_of(pdf) if t.startswith(start))


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
    """The row up to the column with the page of the sheet."""
    f = part.finished
    rough = triple(part.rough) if part.rough else "from the sheet"
    mark = " ◊" if part.cut_when == "measure first" else ""
    return (
        f"{part.letter}{mark} {part.name} {part.count} {f.thickness.text} {f.width.text} {f.length.text} "
        f"{rough} {part.stock_name} {part.grain}"
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
            row = rf"{part.grain} \d+ Glue up from {n} strips, rough width: {re.escape(strips)}"
            assert re.search(row, page)


def test_the_cut_list_gives_the_page_of_every_part_sheet(printed: Printed) -> None:
    plan, pdf, _ = printed
    page = page_of(pdf, "Cut list")
    for part in plan.parts:
        found = re.search(re.escape(cut_list_row(part)) + r" (\d+)", page)
        assert found
        sheet = pages_of(pdf)[int(found[1]) - 1]
        assert f"{part.letter} {part.name} make {part.count}" in sheet


def test_every_line_to_buy_and_every_caution_is_printed(printed: Printed) -> None:
    plan, pdf, _ = printed
    text = all_text(pdf)
    for b in plan.buy:
        assert " ".join(words(s) for s in (b.item, b.detail, b.source, b.quantity) if s) in text
    for c in plan.cautions:
        assert c.about in text
        for line in c.lines:
            assert line in text


def test_part_sheets_say_all_but_the_work(printed: Printed) -> None:
    plan, pdf, _ = printed
    text = all_text(pdf)
    for part in plan.parts:
        assert f"make {part.count}; {part.stock_name}; {part.cut_when}; drawn 1:" in text
        assert f"{triple(part.finished)} {plan.units} T × W × L, finished" in text
        assert f"Where it goes {part.places}" in text
        assert all(line in text for line in part.preparation)
        assert not any(line in text for line in part.work)
    assert "Mirror Mirror image of A" in text


def test_drawings_are_printed_at_their_own_size(printed: Printed) -> None:
    """Lines stand at 1 (the page's own) or at 72/25.4 points to the millimetre of a drawing."""
    _, pdf, _ = printed
    first, last = (pages_of(pdf).index(page_of(pdf, name)) for name in ("Part sheets", "Joints"))
    seen = set()
    for page in pdf.pages[first:last]:
        drawn = page.get_contents().get_data().decode("latin-1")  # type: ignore[union-attr]
        seen |= {round(abs(float(m)), 4) for m in re.findall(r"q (\S+) 0 0 \S+ \S+ \S+ cm", drawn)}
    assert seen == {1.0, round(72 / 25.4, 4)}
    assert "smaller" not in all_text(pdf)


def test_no_part_sheet_is_broken_over_two_pages(printed: Printed) -> None:
    plan, pdf, _ = printed
    pages = pages_of(pdf)
    for part in plan.parts:
        start = f"{part.letter} {part.name} make {part.count}; {part.stock_name}"
        page = next(p for p in pages if start in p)
        assert f"Where it goes {part.places}" in page


def reason(r: PlanReason) -> str:
    """A reason as it stands under its head."""
    given = ", given" if r.given else ""
    how = (": " if r.given else " = ") + r.sum if r.sum and r.sum != r.size.text else ""
    rule = f"; {r.rule}" if r.rule else ""
    source = f" ({r.source})" if r.source and not r.given else ""
    return words(f"{r.path.rpartition(': ')[2]} {r.size.text}{given}{how}{rule}{source}")


def missing(plan: Plan, text: str) -> list[str]:
    """What the plan says and the printed text does not."""
    said = [*plan.notes, *(f"{f.name} {f.text}" for f in plan.facts)]
    said += [t for f in plan.findings for t in (f.message, f.found, f.expected, f.remedy)]
    said += [
        f"{g.name} {g.how} {'glued' if g.glued else 'no glue'} {g.count} {g.pairs}" for g in plan.joint_groups
    ]
    said += [f"{a.what} {a.text} {a.source}" for a in plan.allowances]
    said += [s.text for s in plan.layout_summaries]
    said += [x.title.removeprefix(f"{x.stock}, ") for x in plan.layouts]
    said += [reason(r) for r in plan.reasons]
    said += [f"= {c.whole.size.text} {c.whole.label}" for c in plan.chains]
    said += [f"{m.size.text.lstrip('-')} {m.label}" for c in plan.chains for m in c.members]
    said += [cut_list_row(p) for p in plan.parts]
    said += [f"{triple(p.finished)} {plan.units} T × W × L, finished" for p in plan.parts]
    said += [t for p in plan.parts for t in (p.places, *p.preparation)]
    said += [t for c in plan.cautions for t in (c.about, *c.lines)]
    said += [" ".join(words(t) for t in (b.item, b.detail, b.source, b.quantity) if t) for b in plan.buy]
    return [t for t in map(words, said) if squeezed(t) not in text]


def squeezed(text: str) -> str:
    """Without spaces and marks of keys: at the end of a line a reader of PDFs may put a space or none."""
    return re.sub(r"[\s`]", "", text)


def test_the_whole_plan_is_printed(printed: Printed) -> None:
    plan, pdf, _ = printed
    assert missing(plan, squeezed(all_text(pdf))) == []


@pytest.mark.parametrize(
    ("name", "units"), [("ribbon-chest", "in"), ("bolt-shelves", "in"), ("button-cabinet", "mm")]
)
def test_the_examples_are_printed_whole_on_both_papers(name: str, units: Units, tmp_path: Path) -> None:
    plan, _ = make_plan(check_file(EXAMPLES / f"{name}.yaml", units))
    assert plan
    for paper in PAPERS:
        pdf = read(plan, tmp_path / f"{paper}.pdf", paper)  # type: ignore[arg-type]
        text = all_text(pdf)
        assert missing(plan, squeezed(text)) == []
        assert "drawn smaller" not in text
        for page in pages_of(pdf)[1:]:
            own, _, _ = page.rpartition(f"{plan.title}, version")
            assert len(own) > 30, "a page with next to nothing on it"


def test_the_contents_on_page_2_give_the_page_of_every_section(printed: Printed) -> None:
    _, pdf, _ = printed
    page = pages_of(pdf)[1]
    assert page.startswith("In this plan")
    for name in ("Cautions", "What to buy", "Cut list", "Layouts", "Part sheets", "Joints"):
        found = re.search(rf"{name} [ .]*(\d+)", page)
        assert found
        assert pages_of(pdf)[int(found[1]) - 1].startswith(name)


def test_the_foot_of_every_page_counts_pages_and_names_the_plan(
    printed: Printed,
) -> None:
    plan, pdf, _ = printed
    unit = {"in": "inches", "mm": "millimetres"}[plan.units]
    for n, page in enumerate(pages_of(pdf), 1):
        foot = f"{plan.title}, version 1.2 Sizes in {unit}, finest step {plan.step.text}"
        assert f"{foot} Page {n} of {len(pdf.pages)}" in page


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
    cover = pages_of(pdf)[0]
    assert "This plan has open problems 1 error and 1 warning, listed on page 3" in cover
    page = pages_of(pdf)[2]
    assert page.startswith("This plan has open problems")
    assert "error drawer front L is 1/32 wider than its opening allows (3 times)" in page


def test_a_plan_with_warnings_only_says_so_more_quietly(tmp_path: Path) -> None:
    plan = make()
    plan = plan.model_copy(update={"findings": [f for f in plan.findings if f.severity != "error"]})
    pdf = read(plan, tmp_path / "plan.pdf")
    assert "open problems" not in all_text(pdf)
    assert "1 warning to read before cutting, on page 3" in pages_of(pdf)[0]
    assert pages_of(pdf)[2].startswith("Read before cutting")


def test_a_sound_plan_has_no_page_of_findings(tmp_path: Path) -> None:
    pdf = read(make(findings=False), tmp_path / "plan.pdf")
    assert "problems" not in all_text(pdf)
    assert pages_of(pdf)[2].startswith("Cautions")


def many_parts() -> Plan:
    plan = make()
    strokes = [f"Plane it, stroke{m:04}." for m in range(1, 1201)]
    parts = [
        plan.parts[n % 14].model_copy(update={"letter": letter(n), "preparation": strokes if n == 3 else []})
        for n in range(70)
    ]
    return plan.model_copy(update={"parts": parts})


def test_a_long_cut_list_repeats_its_head_and_breaks_no_row(tmp_path: Path) -> None:
    plan = many_parts()
    pages = pages_of(read(plan, tmp_path / "plan.pdf"))
    listed = [p for p in pages if "part no. thick wide long" in p]
    assert len(listed) > 1
    for part in plan.parts:
        row = cut_list_row(part)
        if part.glue_up:
            assert sum(bool(re.search(re.escape(row) + r" \d+ Glue up from", p)) for p in listed) == 1
        assert sum(row in p for p in listed) == 1


def test_a_part_sheet_longer_than_a_page_goes_on_on_the_next(tmp_path: Path) -> None:
    text = all_text(read(many_parts(), tmp_path / "plan.pdf"))
    for n in range(1, 1201):
        assert f"stroke{n:04}." in text


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


def test_the_year_stands_in_the_plan_only_where_something_moves(tmp_path: Path) -> None:
    plan = make()
    assert "Through the year" not in all_text(read(plan, tmp_path / "still.pdf"))
    found = check_file(EXAMPLES / "ribbon-chest.yaml")
    assert found.piece is not None
    year, charts = plan_year(found.piece, curves(found.piece, found.tables), Printer("in", found.piece.step))
    assert year is not None
    drawn = [DrawingRecord.model_validate(to_record(d)) for d in charts]
    moving = plan.model_copy(update={"year": year, "drawings": [*plan.drawings, *drawn]})
    [page] = [p for p in pages_of(read(moving, tmp_path / "moving.pdf")) if p.startswith("Through the year")]
    for fit in year.fits:
        least = min(fit.months, key=lambda s: s.mm)
        assert fit.what in page
        assert least.text in page
    assert cover_drawing(moving) == cover_drawing(plan)
