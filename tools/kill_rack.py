"""Kills a program that is writing to a rack, many times, and looks at the rack after each.

python tools/kill_rack.py --times 200 --seed 1 [--rack postgresql://...]

A child process takes wood for plans, puts it back, imports and changes boards, without a pause. It is ended with
SIGKILL at a moment drawn by chance. Then the rack is opened and must be whole: the file is sound, no board is lost
or there twice, every taking has all its boards or none, and its offcuts stand or fall with it. One line a hundred
kills, and a line of JSON at the end. Needs a system with fork.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import signal
import sys
import tempfile
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

from sqlalchemy import Connection, event, text

from boardwright.core.lengths import INCH
from boardwright.core.rack import RackPiece
from boardwright.store.csv_files import import_csv
from boardwright.store.opening import Store, open_rack, start_rack
from boardwright.store.pieces import add_pieces, change_piece, read_pieces
from boardwright.store.takings import Wanted, put_back, read_takings, take
from boardwright.tables.load import default_tables

BOARDS = 12
PER_PLAN = 4
LONGEST = 0.2
"""Longest that a child lives, once it has opened the rack [s]; a change takes some hundredths."""
IN, OUT = b"\x01", b"\x00"


def whole_board(name: str) -> RackPiece:
    """One of the boards that are there from the start."""
    return RackPiece(name, "board", "oak_white", INCH, 2400.0, 200.0, "4_4")


def opened(where: str) -> Store:
    """The rack; it must open."""
    store, findings = open_rack(where)
    if store is None:
        raise SystemExit("the rack does not open: " + "; ".join(f.text() for f in findings))
    return store


def write_for_ever(where: str, seed: int, mark: int) -> None:
    """Change the rack until killed; `mark` is told when a transaction that writes has begun, and when it is over."""
    store = opened(where)

    @event.listens_for(store.engine, "before_cursor_execute")
    def begun(connection: Connection, _: object, statement: str, *rest: object) -> None:
        if statement.split(maxsplit=1)[0] in ("INSERT", "UPDATE", "DELETE"):
            os.write(mark, IN)

    chance = random.Random(seed)
    n = 0
    os.write(mark, OUT)
    while True:
        n += 1
        _one_change(store, chance, f"{seed}-{n}")
        os.write(mark, OUT)


def _one_change(store: Store, chance: random.Random, name: str) -> None:
    with store.reading() as connection:
        there = [p for p, _ in read_pieces(connection) if not p.cut_from and p.name.startswith("W")]
        out = [t.number for t in read_takings(connection) if not t.put_back_at]
    what = chance.choice(("take", "take", "back", "back", "import", "change"))
    if what == "take" and len(there) >= PER_PLAN:
        mine = tuple(chance.sample(there, PER_PLAN))
        left = tuple(replace(p, name=f"{p.name}-1", length=p.length / 3, cut_from=p.name) for p in mine)
        take(store, Wanted(f"plan {name}", name, mine, left), "now")
    elif what == "back" and out:
        put_back(store, str(chance.choice(out)), "later")
    elif what == "import":
        rows = "".join(f"board,I{name}-{k},oak_white,4_4,1000 mm,100 mm\n" for k in range(PER_PLAN))
        import_csv(store, f"kind,name,material,thickness,length,width\n{rows}", "rack.csv", default_tables())
    elif there:
        change_piece(store, replace(chance.choice(there), moisture=float(chance.randrange(6, 15)), note=name))


def faults(where: str) -> list[str]:
    """What is wrong with a rack after a kill; nothing, if the store is what it should be."""
    store = opened(where)
    found = []
    with store.reading() as connection:
        if connection.dialect.name == "sqlite":
            said = connection.execute(text("PRAGMA integrity_check")).scalar()
            if said != "ok":
                found.append(f"the file is not sound: {said}")
            broken = connection.execute(text("PRAGMA foreign_key_check")).all()
            found += [f"a row points nowhere: {row}" for row in broken]
        rows = read_pieces(connection, taken=True)
        takings = read_takings(connection)
    whole = sorted(p.name for p, _ in rows if p.name.startswith("W") and not p.cut_from)
    if whole != sorted(f"W{n}" for n in range(BOARDS)):
        found.append(f"whole boards are lost or doubled: {whole}")
    for t in takings:
        expected = (0, 0) if t.put_back_at else (PER_PLAN, PER_PLAN)
        if (len(t.pieces), len(t.offcuts)) != expected:
            found.append(f"taking {t.number} has {len(t.pieces)} boards and {len(t.offcuts)} offcuts")
        elif {n.removesuffix("-1") for n in t.offcuts} != set(t.pieces):
            found.append(f"taking {t.number} has offcuts of other boards")
    imports = Counter(p.name.rpartition("-")[0] for p, _ in rows if p.name.startswith("I"))
    found += [f"import {name} has {n} boards of {PER_PLAN}" for name, n in imports.items() if n != PER_PLAN]
    store.close()
    return found


def kill_once(where: str, seed: int) -> tuple[bool, int]:
    """Start a child, kill it, and say whether a change was under way and how many it had made."""
    listening, mark = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(listening)
        try:
            write_for_ever(where, seed, mark)
        finally:
            os._exit(1)
    os.close(mark)
    heard = os.read(listening, 1)  # the child has opened the rack
    time.sleep(random.Random(seed).uniform(0, LONGEST))
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    if not heard or not os.WIFSIGNALED(status):
        raise SystemExit("the child ended by itself")
    marks = b""
    while more := os.read(listening, 65536):
        marks += more
    os.close(listening)
    return marks.endswith(IN), marks.count(OUT)


def main() -> int:
    """Kill, look, and say what was found."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--times", type=int, default=200)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--rack", help="URL of an empty database; default: a new SQLite file")
    args = ask.parse_args()
    begun = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        where = args.rack or str(Path(folder) / "rack.db")
        if findings := start_rack(where, "in"):
            raise SystemExit("\n".join(f.text() for f in findings))
        store = opened(where)
        add_pieces(store, [whole_board(f"W{n}") for n in range(BOARDS)])
        store.close()
        inside = changes = 0
        wrong: list[str] = []
        for n in range(args.times):
            under_way, made = kill_once(where, args.seed * 100_000 + n)
            inside += under_way
            changes += made
            wrong += [f"kill {n + 1}: {fault}" for fault in faults(where)]
            if (n + 1) % 100 == 0:
                print(f"{n + 1} kills, {inside} during a change, {len(wrong)} faults", file=sys.stderr)
    print("\n".join(wrong), end="\n" if wrong else "")
    seconds = round(time.monotonic() - begun, 1)
    print(
        json.dumps(
            {
                "kills": args.times, "during_a_change": inside, "changes": changes, "faults": len(wrong),
                "seconds": seconds,
            }
        )
    )  # fmt: skip
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
