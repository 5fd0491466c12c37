"""SVG, DXF and record: what is written is read back by other programs' libraries."""

import io
import itertools
import json
import re
import xml.etree.ElementTree as ET

import ezdxf
import font_source_sans_pro
import jsonschema
import pypdf
import pytest
import typst
from drawing_samples import CHEST_SIDE, IN, LETTERS
from fontTools.ttLib import TTFont

from boardwright.drawings.dxf import to_dxf
from boardwright.drawings.fonts import CAP_HEIGHT, font_size, has_letter, runs, text_width
from boardwright.drawings.layout_dims import Ask, overlaps, stacked, text_box
from boardwright.drawings.part_sheet import part_drawing
from boardwright.drawings.record import from_record, to_record
from boardwright.drawings.records import Circle, Dimension, Drawing, Fill, Line, Text
from boardwright.drawings.styles import PATTERNS, WIDTHS, dashes
from boardwright.drawings.svg import to_svg

SHEET = part_drawing(CHEST_SIDE, IN, letters=LETTERS)
SVG = "{http://www.w3.org/2000/svg}"


def test_svg_text_reads_in_order_and_is_real_text():
    root = ET.fromstring(to_svg(SHEET))
    said = ["".join(t.itertext()) for t in root.iter(f"{SVG}text")]
    assert "34 19/32" in said
    assert any(s.startswith("2 × dado 3/4 wide × 1/4 deep") for s in said)
    assert root.get("width") == "180mm"


def test_svg_font_sizes_give_letters_of_2_2_mm_or_more():
    root = ET.fromstring(to_svg(SHEET))
    sizes = [float(t.get("font-size")) for t in root.iter(f"{SVG}text")]
    assert min(sizes) * CAP_HEIGHT >= 2.2 - 1e-3


def test_svg_lines_keep_the_ratio_of_iso_128():
    """ISO 128-2:2020, 6: wide to narrow lines 2:1 (0.35 and 0.18 of the standard's row of widths)."""
    assert WIDTHS["visible"] == 0.35
    assert WIDTHS["hidden"] == 0.18
    widths = set(re.findall(r'polyline[^>]*stroke-width="([\d.]+)"', to_svg(SHEET)))
    assert widths == {"0.35", "0.18"}
    assert dashes("hidden") == pytest.approx((12 * 0.18, 3 * 0.18))


def test_pdf_reads_back_the_sizes(tmp_path):
    (tmp_path / "sheet.svg").write_text(to_svg(SHEET), encoding="utf-8")
    (tmp_path / "a.typ").write_text(
        '#set page(width: 200mm, height: auto)\n#image("sheet.svg")', encoding="utf-8"
    )
    typst.compile(
        str(tmp_path / "a.typ"),
        output=str(tmp_path / "a.pdf"),
        font_paths=[font_source_sans_pro.font_directory],
        ignore_system_fonts=True,
    )
    text = pypdf.PdfReader(tmp_path / "a.pdf").pages[0].extract_text()
    for size in ("34 19/32", "17 5/8", "2 × dado 3/4 wide × 1/4 deep in the face"):
        assert size in text
    fonts = pypdf.PdfReader(tmp_path / "a.pdf").pages[0]["/Resources"]["/Font"]
    assert all("SourceSans" in f.get_object()["/BaseFont"] for f in fonts.values())


def test_text_width_is_the_font_s_own():
    """Against the advance widths in the font file, read here a second way."""
    font = TTFont(f"{font_source_sans_pro.font_directory}/SourceSansPro-Regular.ttf")
    units, table, names = font["head"].unitsPerEm, font["hmtx"], font.getBestCmap()
    want = (
        sum(table[names[ord(c)]][0] for c in "drawer side")
        / units
        * (2.2 / (font["OS/2"].sCapHeight / units))
    )
    assert text_width("drawer side", 2.2) == pytest.approx(want)
    assert font["OS/2"].sCapHeight / units == CAP_HEIGHT
    assert font_size(CAP_HEIGHT) == 1


def test_fractions_keep_their_text():
    assert "".join(r.text for r in runs("34 19/32 wide × 1/4", 2.2)) == "34 19/32 wide × 1/4"
    assert text_width("34 19/32", 2.2) < text_width("34 19", 2.2) + text_width("32", 2.2) + 2


def test_every_sign_we_print_is_in_the_font():
    assert all(has_letter(c) and has_letter(c, True) for c in "0123456789×Ø°/.,()=ABCXYZ")


def test_dxf_has_no_errors_and_real_dimensions():
    doc = ezdxf.read(io.StringIO(to_dxf(SHEET)))
    audit = doc.audit()
    assert not audit.errors
    assert not audit.fixes
    space = doc.modelspace()
    want = [e for e in SHEET.entities if isinstance(e, Dimension)]
    found = list(space.query("DIMENSION"))
    assert [d.dxf.text for d in found] == [d.text for d in want]
    for d, w in zip(found, want, strict=True):
        span = abs(w.second[1] - w.first[1]) if w.vertical else abs(w.second[0] - w.first[0])
        assert d.get_measurement() == pytest.approx(span, abs=1e-6)
    assert {t.dxf.text for t in space.query("TEXT")} == {
        e.text for e in SHEET.entities if isinstance(e, Text)
    }
    assert len(space.query("CIRCLE")) == sum(isinstance(e, Circle) for e in SHEET.entities)
    assert doc.header["$INSUNITS"] == 4


def test_dxf_layers_carry_the_iso_line_types():
    doc = ezdxf.read(io.StringIO(to_dxf(SHEET)))
    for style, width in WIDTHS.items():
        layer = doc.layers.get(style)
        assert layer.dxf.lineweight == round(width * 100)
        assert (layer.dxf.linetype != "Continuous") == (style in PATTERNS)


def test_same_bytes_twice():
    assert to_dxf(SHEET) == to_dxf(SHEET)
    assert to_svg(SHEET) == to_svg(SHEET)


def test_record_goes_through_json_and_back():
    data = json.loads(json.dumps(to_record(SHEET)))
    again = from_record(data)
    assert to_record(again) == data
    assert len(again.entities) == len(SHEET.entities)
    kinds = {"line": Line, "circle": Circle, "fill": Fill, "text": Text, "dimension": Dimension}
    assert all(isinstance(e, kinds[r["kind"]]) for e, r in zip(again.entities, data["entities"], strict=True))
    jsonschema.validate(
        data, {"type": "object", "required": ["id", "title", "scale", "width", "height", "entities"]}
    )


def test_record_refuses_an_unknown_entity():
    with pytest.raises(KeyError):
        from_record(
            {"id": "", "title": "", "scale": "", "width": 1.0, "height": 1.0, "entities": [{"kind": "x"}]}
        )


def test_stacked_dimensions_stand_in_order_and_apart():
    asks = [Ask((0, 10), (x, 10), str(x), "above") for x in (100.0, 3.0, 40.0, 41.0)]
    found = stacked(asks, (0, 0, 100, 10))
    assert [d.text for d in found] == ["3.0", "40.0", "41.0", "100.0"]
    lines = [d.line_at for d in found]
    assert lines == sorted(lines)
    assert min(b - a for a, b in itertools.pairwise(lines)) > 5
    assert overlaps(Drawing("", "", "", 200, 100, tuple(found))) == []
    assert found[0].text_at[0] < 0


def test_chained_dimensions_share_a_line():
    asks = [Ask((0, 0), (0, 30), "30", "right"), Ask((0, 36), (0, 80), "44", "right")]
    assert len({d.line_at for d in stacked(asks, (-10, 0, 0, 80))}) == 1


def test_overlaps_are_found():
    a, b = Text((10, 10), "one", 2.2), Text((12, 11), "two", 2.2, turn=90)
    assert overlaps(Drawing("", "", "", 50, 50, (a, b))) == [("one", "two")]
    assert overlaps(Drawing("", "", "", 50, 50, (a, Text((10, 20), "two", 2.2)))) == []
    x0, y0, x1, y1 = text_box(b)
    assert y1 - y0 > x1 - x0
