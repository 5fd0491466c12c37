"""Boards, sheets and offcuts in the database."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from sqlalchemy import Connection, Row, select, update

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.rack import Defect, RackPiece, by_name, name_key
from boardwright.store.layout import counters, defects, pieces, takings
from boardwright.store.opening import Refused, Store

LETTERS = {"boards": "B", "sheets": "S", "offcuts": "O"}


def read_pieces(connection: Connection, taken: bool = False) -> list[tuple[RackPiece, int | None]]:
    """Pieces in the order of their names, each with the taking it is in.

    Args:
        connection: of the rack.
        taken: those that are taken too; they come with the number of their taking.
    """
    asked = select(pieces) if taken else select(pieces).where(pieces.c.taken_by.is_(None))
    marks: dict[str, list[Defect]] = {}
    for d in connection.execute(select(defects).order_by(defects.c.piece, defects.c.number)):
        marks.setdefault(d.piece, []).append(Defect(d.x, d.y, d.length, d.width, d.what))
    found = [(_piece(row, marks.get(row.name, [])), row.taken_by) for row in connection.execute(asked)]
    return sorted(found, key=lambda f: name_key(f[0].name))


def _piece(row: Row[Any], marks: Sequence[Defect]) -> RackPiece:
    return RackPiece(
        row.name, row.kind, row.material, row.thickness, row.length, row.width, row.lumber, row.measured,
        row.moisture, row.grade, tuple(marks), row.cut_from, row.note, row.picture,
    )  # fmt: skip


def names_in_use(connection: Connection) -> set[str]:
    """Names of all pieces, taken ones too."""
    return set(connection.execute(select(pieces.c.name)).scalars())


def next_number(connection: Connection, letter: str) -> int:
    """A number that was not given out before."""
    counted = update(counters).where(counters.c.letter == letter).values(last=counters.c.last + 1)
    connection.execute(counted)
    return int(connection.execute(select(counters.c.last).where(counters.c.letter == letter)).scalar_one())


def insert_pieces(
    connection: Connection, new: Iterable[RackPiece], made_by: int | None = None
) -> list[RackPiece]:
    """Put pieces on the rack; one without a name gets the next that is free.

    Args:
        connection: of the rack, writing.
        new: pieces; names that are given must be free.
        made_by: the taking that left them.

    Returns:
        The pieces with their names.
    """
    used = names_in_use(connection)
    added = []
    for piece in new:
        name = piece.name
        letter = LETTERS[piece.group]
        while not name or (not piece.name and name in used):
            name = f"{letter}{next_number(connection, letter)}"
        used.add(name)
        named = to_nanometres(replace(piece, name=name))
        connection.execute(pieces.insert().values(**_values(named), made_by=made_by))
        _insert_defects(connection, named)
        added.append(named)
    return added


def to_nanometres(piece: RackPiece) -> RackPiece:
    """A piece with its sizes in whole nanometres, as they are kept and written."""
    return replace(
        piece,
        thickness=round(piece.thickness, 6),
        length=round(piece.length, 6),
        width=round(piece.width, 6),
        measured=round(piece.measured, 6) if piece.measured else None,
        defects=tuple(
            Defect(round(d.x, 6), round(d.y, 6), round(d.length, 6), round(d.width, 6), d.what)
            for d in piece.defects
        ),
    )


def _values(piece: RackPiece) -> dict[str, object]:
    return {
        "name": piece.name, "kind": piece.kind, "material": piece.material, "lumber": piece.lumber,
        "thickness": piece.thickness, "measured": piece.measured, "length": piece.length,
        "width": piece.width, "moisture": piece.moisture, "grade": piece.grade,
        "cut_from": piece.cut_from, "note": piece.note, "picture": piece.picture,
    }  # fmt: skip


def _insert_defects(connection: Connection, piece: RackPiece) -> None:
    for n, d in enumerate(piece.defects):
        connection.execute(
            defects.insert().values(
                piece=piece.name, number=n, x=d.x, y=d.y, length=d.length, width=d.width, what=d.what
            )
        )


def write_piece(connection: Connection, piece: RackPiece) -> None:
    """Give the piece of that name what the record says."""
    piece = to_nanometres(piece)
    connection.execute(update(pieces).where(pieces.c.name == piece.name).values(**_values(piece)))
    connection.execute(defects.delete().where(defects.c.piece == piece.name))
    _insert_defects(connection, piece)


def locked(connection: Connection, names: Iterable[str]) -> dict[str, Row[Any]]:
    """Rows of pieces by name; nobody else changes them until the transaction ends.

    Args:
        connection: of the rack, writing.
        names: of pieces; those that are not there are not in the answer.
    """
    asked = select(pieces).where(pieces.c.name.in_(set(names))).order_by(pieces.c.name).with_for_update()
    return {row.name: row for row in connection.execute(asked)}


def add_pieces(store: Store, new: Sequence[RackPiece]) -> tuple[list[RackPiece], list[Finding]]:
    """Put pieces on the rack, all or none.

    Args:
        store: the rack.
        new: pieces; one without a name gets the next number of its kind.

    Returns:
        The pieces with their names; findings when a name is in use.
    """
    try:
        with store.writing() as connection:
            used = names_in_use(connection)
            given = [p.name for p in new if p.name]
            twice = by_name({n for n in given if n in used or given.count(n) > 1})
            if twice:
                raise Refused(*(name_in_use(store.name, n) for n in twice))
            return insert_pieces(connection, new), []
    except Refused as refused:
        return [], refused.findings


def change_piece(store: Store, piece: RackPiece) -> list[Finding]:
    """Give a piece of the rack what the record says; one that is taken stays as it is.

    Args:
        store: the rack.
        piece: as it is to be, under the name it has.
    """
    try:
        with store.writing() as connection:
            _on_the_rack(store, connection, [piece.name])
            write_piece(connection, piece)
    except Refused as refused:
        return refused.findings
    return []


def find_piece(store: Store, name: str) -> tuple[RackPiece | None, list[Finding]]:
    """A piece of the rack by its name; None, and why, when it is not there or taken."""
    try:
        with store.reading() as connection:
            plans = {t.number: t.plan for t in connection.execute(select(takings))}
            found = next((f for f in read_pieces(connection, taken=True) if f[0].name == name), None)
    except Refused as refused:
        return None, refused.findings
    if found is None:
        return None, [no_such_piece(store.name, name)]
    if found[1] is not None:
        return None, [taken_piece(store.name, name, plans[found[1]])]
    return found[0], []


def remove_pieces(store: Store, names: Sequence[str]) -> list[Finding]:
    """Take pieces off the rack for good, all or none.

    Args:
        store: the rack.
        names: of pieces that no plan has taken.
    """
    try:
        with store.writing() as connection:
            _on_the_rack(store, connection, names)
            connection.execute(defects.delete().where(defects.c.piece.in_(names)))
            connection.execute(pieces.delete().where(pieces.c.name.in_(names)))
    except Refused as refused:
        return refused.findings
    return []


def _on_the_rack(store: Store, connection: Connection, names: Sequence[str]) -> None:
    """Refuses when one of the pieces is not on the rack."""
    rows = locked(connection, names)
    plans = {t.number: t.plan for t in connection.execute(select(takings))}
    wrong = [no_such_piece(store.name, n) for n in names if n not in rows]
    wrong += [
        taken_piece(store.name, n, plans[rows[n].taken_by])
        for n in dict.fromkeys(names)
        if n in rows and rows[n].taken_by is not None
    ]
    if wrong:
        raise Refused(*wrong)


def name_in_use(where: str, name: str, place: Place | None = None) -> Finding:
    """Two pieces cannot have one name."""
    return Finding(
        "rack.name-in-use", Severity.ERROR, f"there is a piece named `{name}` already", place or Place(where),
        name, "a name that is free",
        remedy="take another name, or leave it out and the piece gets the next number",
    )  # fmt: skip


def no_such_piece(where: str, name: str) -> Finding:
    """A name that nothing on the rack has."""
    return Finding(
        "rack.no-such-piece", Severity.ERROR, f"nothing on the rack is named `{name}`", Place(where), name,
        "a name that `boardwright rack list` shows", remedy="correct the name; nothing was changed",
    )  # fmt: skip


def taken_piece(where: str, name: str, plan: str) -> Finding:
    """A piece that a plan has taken."""
    return Finding(
        "rack.taken", Severity.ERROR, f"`{name}` is taken for the plan {plan}", Place(where), "taken",
        "on the rack",
        remedy="use another piece, or put that plan's wood back with `boardwright rack put-back`; "
        "nothing was changed",
    )  # fmt: skip
