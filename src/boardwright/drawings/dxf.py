"""A drawing as DXF (R2010, millimetres on paper), with real dimension entities that say the settled sizes."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

from boardwright.drawings.records import Circle, Dimension, Drawing, Entity, Fill, Line, Text
from boardwright.drawings.styles import ARROW_LENGTH, PATTERNS, WIDTHS, dashes, tone_colour

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts import Modelspace

DIMENSION_STYLE = "PAPER"
TEXT_STYLE = "PLAN"


def to_dxf(drawing: Drawing) -> str:
    """A drawing as the text of a DXF file; one layer for each line style, and `fill`, `text`, `dimension`."""
    import ezdxf
    from ezdxf import units

    options = ezdxf.options
    kept = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    """Fixed time stamps and ids: the same drawing gives the same file."""
    try:
        doc = ezdxf.new("R2010", units=units.MM)
        _prepare(doc)
        space = doc.modelspace()
        for e in drawing.entities:
            _write(space, e)
        out = io.StringIO()
        doc.write(out)
    finally:
        options.write_fixed_meta_data_for_testing = kept
    return out.getvalue()


def _prepare(doc: Document) -> None:
    for style, width in WIDTHS.items():
        pattern = dashes(style)
        name = "Continuous"
        if style in PATTERNS:
            name = f"ISO_{style}".upper()
            signed = [n if i % 2 == 0 else -n for i, n in enumerate(pattern)]
            doc.linetypes.add(name, [sum(pattern), *signed], description=f"ISO 128-2 {style} line")
        doc.layers.add(style, linetype=name, lineweight=round(width * 100))
    for name in ("fill", "text", "dimension"):
        doc.layers.add(name, lineweight=18)
    doc.styles.add(TEXT_STYLE, font="SourceSansPro-Regular.ttf")
    dim = doc.dimstyles.add(DIMENSION_STYLE)
    dim.dxf.dimtxsty = TEXT_STYLE
    dim.dxf.dimasz = ARROW_LENGTH
    dim.dxf.dimexo = 0.8
    dim.dxf.dimexe = 1.2
    dim.dxf.dimtad = 1
    dim.dxf.dimgap = 0.7
    dim.dxf.dimtih = 0
    dim.dxf.dimtoh = 0


def _write(space: Modelspace, e: Entity) -> None:
    from ezdxf.enums import TextEntityAlignment

    if isinstance(e, Line):
        space.add_lwpolyline(e.points, close=e.closed, dxfattribs={"layer": e.style})
    elif isinstance(e, Circle):
        space.add_circle(e.at, e.radius, dxfattribs={"layer": e.style})
    elif isinstance(e, Fill):
        colour = tone_colour(e.tone, e.hue)
        hatch = space.add_hatch(dxfattribs={"layer": "fill"})
        hatch.rgb = (int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16))
        hatch.paths.add_polyline_path(e.points, is_closed=True)
    elif isinstance(e, Text):
        align = {
            "left": TextEntityAlignment.LEFT,
            "middle": TextEntityAlignment.CENTER,
            "right": TextEntityAlignment.RIGHT,
        }[e.anchor]
        attributes = {"layer": "text", "style": TEXT_STYLE, "rotation": e.turn}
        space.add_text(e.text, height=e.size, dxfattribs=attributes).set_placement(e.at, align=align)
    else:
        _dimension(space, e)


def _dimension(space: Modelspace, d: Dimension) -> None:
    base = (d.line_at, d.first[1]) if d.vertical else (d.first[0], d.line_at)
    space.add_linear_dim(
        base=base,
        p1=d.first,
        p2=d.second,
        location=d.text_at,
        text=d.text,
        angle=90.0 if d.vertical else 0.0,
        dimstyle=DIMENSION_STYLE,
        override={"dimtxt": d.size},
        dxfattribs={"layer": "dimension"},
    ).render()
