"""Keys for knobs and pulls of drawers."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator

from boardwright.design.keys.base import Keys, LengthText, optional


class Pull(Keys):
    """What a drawer is pulled by. A plain word, such as `knob`, stands for `{kind: knob}`."""

    kind: Literal["knob", "pull", "none"] | None = optional(
        "a knob, a pull with two screws, or nothing drilled", "`knob`"
    )
    count: int | None = optional("how many, side by side", "2 from {pull_two_from} wide, else 1", ge=1, le=2)
    spread: LengthText | None = optional("pull: between its two screws", "{pull_spread}")
    up: LengthText | None = optional("its height over the lower edge of the front", "half of the front")
    hole: LengthText | None = optional("diameter of the holes", "{knob_hole}")


def _pull(value: Any) -> Any:
    return {"kind": value} if isinstance(value, str) else value


PullSpec = Annotated[Pull, BeforeValidator(_pull)]
