"""Two woods joined along a width: both move across the grain, but not alike."""

from boardwright.checks.movement.lines import Check

CHECK = Check(
    "wood.mixed-woods",
    "{one} and {two} both move across the grain, but not alike",
    "glue only the front and leave the rest dry, make the hidden part as much shorter at the back, "
    "or use woods that move alike",
)
