"""Opening a rack, and what can be wrong with that. Every use of the database goes through `reading` or `writing`.

A change of the rack is one transaction. In SQLite it begins with BEGIN IMMEDIATE, so that a second program waits
before it has read anything that the first is about to change; in PostgreSQL the rows that are changed are locked
as they are read. A program that is killed leaves a transaction that never was.
"""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event, select
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError, SQLAlchemyError

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.length_text import Units
from boardwright.store.layout import settings
from boardwright.store.steps import STEPS, bring_up_to_date, version_of

WAIT = 10.0
"""How long to wait for another program that is writing [s]."""
_WRITES = "boardwright_writes"


class Refused(Exception):
    """Undoes the transaction that is open; the findings say why."""

    def __init__(self, *findings: Finding) -> None:
        super().__init__(findings[0].message if findings else "")
        self.findings = list(findings)


@dataclass(frozen=True, slots=True)
class Store:
    """A rack that is open.

    Attributes:
        name: file or address, without a password.
        engine: the database.
        units: that bare numbers are in, and that sizes are printed in.
    """

    name: str
    engine: Engine
    units: Units

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """One moment of the rack.

        Raises:
            Refused: the database could not be read.
        """
        with _plain_words(self.name), self.engine.connect() as connection, connection.begin():
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """One change of the rack: all of it, or, when anything is raised, nothing.

        Raises:
            Refused: the database could not be written.
        """
        with _plain_words(self.name), self.engine.connect() as raw:
            connection = raw.execution_options(**{_WRITES: True})
            with connection.begin():
                yield connection

    def close(self) -> None:
        """Let go of the database."""
        self.engine.dispose()


def start_rack(where: str, units: Units) -> list[Finding]:
    """Make an empty rack.

    Args:
        where: a file that is not there yet, or the URL of an empty database.
        units: that bare numbers will be in.

    Returns:
        Findings; none when the rack was made.
    """
    try:
        url = _url(where)
        if url.get_backend_name() == "sqlite" and url.database and Path(url.database).exists():
            raise Refused(_there_already(_shown(url)))
        store = Store(_shown(url), _engine(url), units)
        with store.writing() as connection:
            if version_of(connection) != 0:
                raise Refused(_there_already(store.name))
            bring_up_to_date(connection)
            connection.execute(settings.insert().values(key="units", value=units))
        store.close()
    except Refused as refused:
        return refused.findings
    return []


def open_rack(where: str) -> tuple[Store | None, list[Finding]]:
    """Open a rack, brought up to date.

    Args:
        where: its file, or the URL of a database.

    Returns:
        The rack, or None and why it cannot be opened.
    """
    try:
        url = _url(where)
        name = _shown(url)
        if url.get_backend_name() == "sqlite" and not (url.database and Path(url.database).is_file()):
            raise Refused(_missing(name))
        store = Store(name, _engine(url), "in")
        with store.reading() as connection:
            version = version_of(connection)
        if version is None:
            raise Refused(_not_a_rack(name, "tables of something else"))
        if version == 0:
            raise Refused(_missing(name))
        if version > len(STEPS):
            raise Refused(_newer(name, version))
        if version < len(STEPS):
            with store.writing() as connection:
                bring_up_to_date(connection)
        with store.reading() as connection:
            units = connection.execute(select(settings.c.value).where(settings.c.key == "units")).scalar()
    except Refused as refused:
        return None, refused.findings
    return Store(name, store.engine, "mm" if units == "mm" else "in"), []


def _url(where: str) -> URL:
    """The URL of a file or of a database of a kind that is known here."""
    if "://" not in where and where.strip():
        return URL.create("sqlite", database=where)
    try:
        url = make_url(where)
        if url.drivername in ("postgresql", "postgres"):
            url = url.set(drivername="postgresql+psycopg")
        if url.get_backend_name() not in ("sqlite", "postgresql") or not url.database:
            raise Refused(_bad_address(where))
        url.get_dialect()
        if url.get_backend_name() == "postgresql":
            url.get_dialect().import_dbapi()
    except (ArgumentError, NoSuchModuleError):
        raise Refused(_bad_address(where)) from None
    except ImportError:
        raise Refused(_no_driver()) from None
    return url


def _bad_address(where: str) -> Finding:
    return Finding(
        "rack.bad-address", Severity.ERROR, "this is not the address of a rack",
        found=re.sub(r"://[^@]*@", "://...@", where) or "nothing",
        expected="a file such as rack.db, or postgresql://user@host/name",
        remedy="correct the address",
    )  # fmt: skip


def _no_driver() -> Finding:
    return Finding(
        "rack.no-driver", Severity.ERROR, "a rack in PostgreSQL needs its driver, which is not installed",
        found="no package psycopg", expected="psycopg 3",
        remedy="install boardwright with its extra `postgresql`: pip install 'boardwright[postgresql]'",
    )  # fmt: skip


def _shown(url: URL) -> str:
    if url.get_backend_name() == "sqlite":
        return url.database or ":memory:"
    return url.set(drivername="postgresql").render_as_string(hide_password=True)


def _engine(url: URL) -> Engine:
    if url.get_backend_name() != "sqlite":
        return create_engine(url, pool_pre_ping=True, connect_args={"connect_timeout": int(WAIT)})
    engine = create_engine(url, connect_args={"timeout": WAIT, "isolation_level": None})

    @event.listens_for(engine, "connect")
    def set_up(raw: sqlite3.Connection, _: object) -> None:
        raw.execute("PRAGMA foreign_keys = ON")
        raw.execute("PRAGMA synchronous = FULL")

    @event.listens_for(engine, "begin")
    def begin(connection: Connection) -> None:
        writes = connection.get_execution_options().get(_WRITES, False)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

    return engine


@contextmanager
def _plain_words(name: str) -> Iterator[None]:
    """What the database says is wrong, as a finding."""
    try:
        yield
    except DBAPIError as error:
        raise Refused(_from_database(name, str(error.orig).strip().splitlines()[0])) from None
    except SQLAlchemyError as error:
        raise Refused(_from_database(name, str(error).splitlines()[0])) from None


def _from_database(name: str, said: str) -> Finding:
    place = Place(name)
    if "not a database" in said or "malformed" in said:
        return _not_a_rack(name, said)
    if "locked" in said or "lock timeout" in said or "duplicate key" in said or "UNIQUE constraint" in said:
        return Finding(
            "rack.busy", Severity.ERROR, "another program is writing to the rack", place, said,
            f"free within {WAIT:g} s", remedy="try again when it has finished; nothing was changed",
        )  # fmt: skip
    return Finding(
        "rack.unreachable", Severity.ERROR, "the rack cannot be used", place, said,
        "a file that can be read and written, or a database that answers",
        remedy="correct that; nothing was changed",
    )  # fmt: skip


def _missing(name: str) -> Finding:
    return Finding(
        "rack.not-there", Severity.ERROR, "there is no rack here", Place(name), "nothing",
        "a rack made by `boardwright rack new`",
        remedy="name the rack with --rack, or make one with `boardwright rack new`",
    )  # fmt: skip


def _there_already(name: str) -> Finding:
    return Finding(
        "rack.there-already", Severity.ERROR, "there is something here already; nothing was written",
        Place(name), "a file or a database that is not empty", "a name that is free",
        remedy="take another name, or use what is there",
    )  # fmt: skip


def _not_a_rack(name: str, said: str) -> Finding:
    return Finding(
        "rack.not-a-rack", Severity.ERROR, "this is not a rack", Place(name), said,
        "a file or database made by `boardwright rack new`",
        remedy="name the right file, or bring back a copy of it; nothing was changed",
    )  # fmt: skip


def _newer(name: str, version: int) -> Finding:
    return Finding(
        "rack.newer", Severity.ERROR, "the rack was written by a newer Boardwright", Place(name),
        f"version {version}", f"at most version {len(STEPS)}",
        remedy="use the newer Boardwright; nothing was changed",
    )  # fmt: skip
