"""Checks of a piece: one file a check, each a pure function from the piece to findings."""
