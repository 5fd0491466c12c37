"""Keys for a board over the top of a case."""

from __future__ import annotations

from boardwright.design.keys.base import Keys, LengthText, optional


class Cover(Keys):
    """A board over the top of a case, screwed from below so that it can move. `case.height` includes it."""

    stock: str | None = optional("stock", "`case.stock`")
    overhang: LengthText | None = optional("how far it stands over at front and sides", "{cover_overhang}")
