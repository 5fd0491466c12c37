"""Solid wood glued or screwed fast to a sheet, which hardly moves."""

from boardwright.checks.movement.lines import Check

CHECK = Check(
    "wood.solid-on-sheet",
    "{one} and {two}: solid wood is held to a sheet across its grain",
    "make both of the sheet, or screw the solid part in slots",
)
