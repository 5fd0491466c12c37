"""Glue across the grain: two solid parts glued over a length in which they move differently."""

from boardwright.checks.movement.lines import Check

CHECK = Check(
    "wood.cross-grain",
    "{one} and {two} are held together across the grain",
    "let one of them float (a groove without glue, or screws in slots), turn its grain, or use a sheet",
)
