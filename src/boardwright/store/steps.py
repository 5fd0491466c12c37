"""How the rack's tables came to be, step by step: each step takes a rack of one version to the next.

A step is never changed once it was released; a new version gets a new step. A rack is brought up to date in
one transaction when it is opened.
"""

from __future__ import annotations

from sqlalchemy import Connection, inspect, select, text

from boardwright.store.layout import settings

Step = tuple[str, ...]

STEPS: tuple[Step, ...] = (
    (
        "CREATE TABLE settings (key TEXT PRIMARY KEY, value TEXT NOT NULL)",
        "CREATE TABLE counters (letter TEXT PRIMARY KEY, last INTEGER NOT NULL)",
        "CREATE TABLE takings (number INTEGER PRIMARY KEY, plan TEXT NOT NULL, digest TEXT NOT NULL,"
        " at TEXT NOT NULL, put_back_at TEXT)",
        "CREATE TABLE pieces (name TEXT PRIMARY KEY, kind TEXT NOT NULL CHECK (kind IN ('board', 'sheet')),"
        " material TEXT NOT NULL, lumber TEXT NOT NULL, thickness DOUBLE PRECISION NOT NULL CHECK (thickness > 0),"
        " measured DOUBLE PRECISION, length DOUBLE PRECISION NOT NULL CHECK (length > 0),"
        " width DOUBLE PRECISION NOT NULL CHECK (width > 0), moisture DOUBLE PRECISION, grade TEXT NOT NULL,"
        " cut_from TEXT NOT NULL, note TEXT NOT NULL, picture TEXT NOT NULL,"
        " made_by INTEGER REFERENCES takings (number), taken_by INTEGER REFERENCES takings (number))",
        "CREATE TABLE defects (piece TEXT NOT NULL REFERENCES pieces (name) ON DELETE CASCADE,"
        " number INTEGER NOT NULL, x DOUBLE PRECISION NOT NULL, y DOUBLE PRECISION NOT NULL,"
        " length DOUBLE PRECISION NOT NULL, width DOUBLE PRECISION NOT NULL, what TEXT NOT NULL,"
        " PRIMARY KEY (piece, number))",
        "CREATE TABLE supplies (name TEXT PRIMARY KEY, kind TEXT NOT NULL,"
        " quantity DOUBLE PRECISION NOT NULL CHECK (quantity >= 0), unit TEXT NOT NULL, note TEXT NOT NULL)",
        "CREATE TABLE used (taking INTEGER NOT NULL REFERENCES takings (number), supply TEXT NOT NULL,"
        " quantity DOUBLE PRECISION NOT NULL CHECK (quantity > 0), PRIMARY KEY (taking, supply))",
        "CREATE TABLE prices (item TEXT NOT NULL, thickness DOUBLE PRECISION NOT NULL, unit TEXT NOT NULL,"
        " day TEXT NOT NULL, seller TEXT NOT NULL, amount TEXT NOT NULL, currency TEXT NOT NULL,"
        " PRIMARY KEY (item, thickness, unit, day, seller))",
        "INSERT INTO counters (letter, last) VALUES ('B', 0), ('S', 0), ('O', 0), ('taking', 0)",
        "INSERT INTO settings (key, value) VALUES ('version', '1')",
    ),
)
"""Step n takes version n to version n + 1; version 0 is an empty database."""


def version_of(connection: Connection) -> int | None:
    """Version of a rack's tables: 0 for an empty database, None for one that holds something else."""
    names = inspect(connection).get_table_names()
    if not names:
        return 0
    if "settings" not in names or "takings" not in names:
        return None
    value = connection.execute(select(settings.c.value).where(settings.c.key == "version")).scalar()
    return int(value) if value is not None and value.isdigit() else None


def bring_up_to_date(connection: Connection, steps: tuple[Step, ...] = STEPS) -> None:
    """Take a rack to the newest version, in the transaction that is open.

    Args:
        connection: a rack of a known version, not newer than the steps.
        steps: all of them, from version 0.
    """
    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(4204611)"))
    version = version_of(connection) or 0
    for number, step in enumerate(steps[version:], version + 1):
        for line in step:
            connection.execute(text(line))
        connection.execute(settings.update().where(settings.c.key == "version").values(value=str(number)))
