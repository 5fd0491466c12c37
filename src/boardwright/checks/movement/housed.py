"""A shelf or divider glued over its whole width in a dado or rabbet of a part whose grain runs the other way."""

from boardwright.checks.movement.lines import Check

CHECK = Check(
    "wood.housed-across",
    "{one} and {two}: glued in a housing over a width in which they move differently",
    "glue only the front of the joint and leave the rest dry, or turn the grain of one",
)
