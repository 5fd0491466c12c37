"""A rack in SQLite and, where PostgreSQL is installed, one in a server of its own that is started for the tests."""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from boardwright.store.opening import Store, open_rack, start_rack


def _program(name: str) -> str | None:
    """A program of PostgreSQL, which Debian does not put on the path."""
    found = sorted(Path("/usr/lib/postgresql").glob(f"*/bin/{name}"))
    return shutil.which(name) or (str(found[-1]) if found else None)


@pytest.fixture(scope="session")
def postgresql() -> Iterator[str]:
    """URL of a server without databases; `BOARDWRIGHT_TEST_POSTGRESQL` names one that runs already."""
    given = os.environ.get("BOARDWRIGHT_TEST_POSTGRESQL")
    if given:
        yield given
        return
    pytest.importorskip("psycopg")
    initdb, server = _program("initdb"), _program("pg_ctl")
    if initdb is None or server is None:
        pytest.skip("PostgreSQL is not installed")
    as_user: list[str] = []
    if os.geteuid() == 0:
        if (
            shutil.which("runuser") is None
            or subprocess.run(["id", "postgres"], capture_output=True).returncode
        ):
            pytest.skip("PostgreSQL does not run as root")
        as_user = ["runuser", "-u", "postgres", "--"]
    folder = Path(tempfile.mkdtemp(prefix="boardwright-pg-"))
    if as_user:
        shutil.chown(folder, "postgres")
    data = folder / "data"
    options = f"-k {folder} -c listen_addresses='' -c fsync=off"
    made = [*as_user, initdb, "-D", str(data), "-A", "trust", "-U", "postgres", "--no-sync"]
    start = [*as_user, server, "-D", str(data), "-w", "-o", options, "-l", str(folder / "log"), "start"]
    try:
        for words in (made, start):
            subprocess.run(words, check=True, capture_output=True, cwd=folder, timeout=60)
        yield f"postgresql://postgres@/postgres?host={folder}"
    finally:
        stop = [*as_user, server, "-D", str(data), "-m", "immediate", "stop"]
        subprocess.run(stop, capture_output=True, cwd=folder, timeout=60)
        shutil.rmtree(folder, ignore_errors=True)


def _database(server: str) -> str:
    """URL of a database of this run, emptied."""
    import psycopg

    name = f"rack_{os.getpid()}"
    base, _, rest = server.partition("?")
    url = f"{base.rpartition('/')[0]}/{name}?{rest}"
    with psycopg.connect(server, autocommit=True) as connection:
        if not connection.execute("SELECT 1 FROM pg_database WHERE datname = %s", [name]).fetchone():
            connection.execute(f'CREATE DATABASE "{name}"')
    with psycopg.connect(url, autocommit=True) as connection:
        connection.execute("DROP SCHEMA public CASCADE")
        connection.execute("CREATE SCHEMA public")
    return url


@pytest.fixture
def empty_database(postgresql: str) -> str:
    """URL of an empty database of PostgreSQL."""
    return _database(postgresql)


@pytest.fixture(params=["sqlite", "postgresql"])
def where(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """Where a rack may be made: a file or a database."""
    if request.param == "sqlite":
        return str(tmp_path / "rack.db")
    database: str = request.getfixturevalue("empty_database")
    return database


@pytest.fixture
def store(where: str) -> Iterator[Store]:
    """An empty rack in inches."""
    assert start_rack(where, "in") == []
    made, findings = open_rack(where)
    assert findings == []
    assert made is not None
    yield made
    made.close()
