"""Tops, covers and cleats screwed fast: more than one screw without a slot across the grain."""

from boardwright.checks.movement.lines import Check

CHECK = Check(
    "wood.screwed-fast",
    "{one} and {two} are screwed fast across the grain",
    "keep one screw fast and give the others slots, use buttons or clips, or turn the grain",
)
