"""Writing files so that a stop in the middle leaves no half file."""

from __future__ import annotations

import os
import re
import tempfile
from collections.abc import Callable
from pathlib import Path


def write_whole(path: Path, write: Callable[[Path], None]) -> None:
    """Lets `write` fill a file in a temporary folder beside `path`, then moves it to `path` in one step.

    Args:
        path: where the finished file goes; an older one is replaced.
        write: is given a path of the same name in the temporary folder, and writes the file there.

    Raises:
        OSError: the folder cannot be written. What `write` raises passes through; then `path` is as it was.
    """
    with tempfile.TemporaryDirectory(prefix=".part-", dir=path.parent) as folder:
        unfinished = Path(folder) / path.name
        write(unfinished)
        os.replace(unfinished, path)


def file_name(id: str) -> str:
    """A steady file name, without suffix, for the id of a drawing."""
    return re.sub(r"[^A-Za-z0-9_-]+", "-", id).strip("-") or "drawing"
