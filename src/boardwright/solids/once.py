"""Keeps what follows from a record: asked for again with the very same record, it is not worked out again.

Records are frozen, so the same object always gives the same answer, and to see which object it is costs nothing, where
`lru_cache` would look at every number in it. The records are held as long as their answers are, so that no other can
take their place.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar

Made = TypeVar("Made")
MOST = 8192
"""Answers that each function keeps, if nothing else is said."""


def once(most: int = MOST) -> Callable[[Callable[..., Made]], Callable[..., Made]]:
    """Keep the answers of a function of one record, and perhaps of plain values after it.

    Args:
        most: answers that are kept; then it begins anew.
    """

    def keeping(function: Callable[..., Made]) -> Callable[..., Made]:
        kept: dict[tuple[Any, ...], tuple[object, Made]] = {}

        @wraps(function)
        def known(record: object, *more: Any) -> Made:
            key = (id(record), *more)
            found = kept.get(key)
            if found is not None:
                return found[1]
            made = function(record, *more)
            if len(kept) >= most:
                kept.clear()
            kept[key] = (record, made)
            return made

        return known

    return keeping
