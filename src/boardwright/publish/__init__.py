"""`plan.json` → PDF, tables, DXF, STEP. The only door to typst."""
