"""Keys for a pair of bevelled cleats by which a case hangs on a wall."""

from __future__ import annotations

from boardwright.design.keys.base import Keys, LengthText, optional


class WallCleat(Keys):
    """Two cleats with bevelled edges: one behind the back under the top, one for the wall."""

    stock: str | None = optional("stock", "`case.stock`")
    width: LengthText | None = optional("width of each, at its longer face", "{wall_cleat_width}")
    angle: float | None = optional("bevel in degrees", "{wall_cleat_angle}", ge=20, le=60)
    play: LengthText | None = optional(
        "the cleat on the wall is so much shorter at each end", "{wall_cleat_play}"
    )
