"""Views with dimensions, as plain records; written to SVG and, through ezdxf, to DXF."""
