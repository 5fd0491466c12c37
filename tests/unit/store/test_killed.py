"""A program that is killed while it writes leaves the rack as it was before the change, or after it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

TOOL = Path(__file__).parents[3] / "tools/kill_rack.py"


def killed(*words: str) -> dict[str, int]:
    run = subprocess.run([sys.executable, str(TOOL), *words], capture_output=True, text=True, timeout=120)
    assert run.returncode == 0, run.stdout + run.stderr
    told: dict[str, int] = json.loads(run.stdout.splitlines()[-1])
    return told


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
@pytest.mark.parametrize("kind", ["sqlite", "postgresql"])
def test_kills_leave_the_rack_whole(kind: str, request: pytest.FixtureRequest) -> None:
    rack = [] if kind == "sqlite" else ["--rack", request.getfixturevalue("empty_database")]
    told = killed("--times", "30", "--seed", "7", *rack)
    assert told["kills"] == 30
    assert told["faults"] == 0
    assert told["during_a_change"] >= 3  # else the test shows nothing


def test_the_look_after_a_kill_finds_what_is_wrong(tmp_path: Path) -> None:
    """The check that every kill is followed by is no empty one: it finds a doubled board and half a taking."""
    import runpy

    from rack_pieces import wanted
    from sqlalchemy import text

    from boardwright.store.opening import open_rack, start_rack
    from boardwright.store.pieces import add_pieces
    from boardwright.store.takings import take

    tool = runpy.run_path(str(TOOL))
    where = str(tmp_path / "rack.db")
    start_rack(where, "in")
    store, _ = open_rack(where)
    assert store is not None
    four = [tool["whole_board"](f"W{n}") for n in range(tool["BOARDS"])]
    add_pieces(store, four)
    assert tool["faults"](where) == []
    take(store, wanted(*four[:3]), "now")
    assert any("taking 1 has 3 boards" in f for f in tool["faults"](where))
    with store.writing() as connection:
        connection.execute(text("DELETE FROM pieces WHERE name = 'W9'"))
    assert any("lost or doubled" in f for f in tool["faults"](where))
