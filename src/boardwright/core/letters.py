"""Part letters: A, B, C … then AA, AB and so on.

Without I and O, which read as 1 and 0 on a bench (common practice).
"""

from __future__ import annotations

ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ"


def letter(index: int) -> str:
    """The letter of the index-th kind of part, counted from 0.

    Raises:
        ValueError: index < 0.
    """
    if index < 0:
        raise ValueError("index must not be negative")
    text = ""
    n = index + 1
    while n:
        n, rest = divmod(n - 1, len(ALPHABET))
        text = ALPHABET[rest] + text
    return text
