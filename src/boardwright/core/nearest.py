"""Names like one that is not known, for "did you mean"."""

from __future__ import annotations

import difflib
import re
from collections.abc import Sequence

MOST = 3
LIKE = 0.4
"""Least likeness of two names, of 1."""


def nearest(asked: str, known: Sequence[str]) -> list[str]:
    """The names that are most like the one asked for, the likest first.

    A name that has all its words comes before one that is only spelled much like it.

    Args:
        asked: a name that is not known.
        known: those that are.

    Example:
        >>> nearest("oak_red", ["oak_red_northern", "oak_white", "pine_red"])
        ['oak_red_northern', 'oak_white', 'pine_red']
    """
    words = _words(asked)
    whole = [name for name in known if words <= _words(name)]
    whole.sort(key=lambda name: (len(_words(name)), name))
    like = difflib.get_close_matches(asked.lower(), [name.lower() for name in known], MOST, LIKE)
    by_lower = {name.lower(): name for name in reversed(known)}
    return list(dict.fromkeys([*whole, *(by_lower[name] for name in like)]))[:MOST]


def _words(name: str) -> set[str]:
    return set(re.findall(r"[a-z0-9]+", name.lower()))
