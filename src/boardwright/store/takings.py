"""Taking wood for a plan and putting it back: one transaction each, all of it or nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import Connection, Row, select, update

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.length_text import Units
from boardwright.core.rack import RackPiece, name_key
from boardwright.store.layout import defects, pieces, supplies, takings, used
from boardwright.store.opening import Refused, Store
from boardwright.store.pieces import (
    insert_pieces,
    locked,
    names_in_use,
    next_number,
    no_such_piece,
    read_pieces,
    taken_piece,
)
from boardwright.store.words import written, written_defects

_SAME = 0.01
"""Sizes that differ by less are one size [mm]."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a plan takes from the rack and what it leaves.

    Attributes:
        plan: title and version, for people.
        digest: tells one plan from another.
        pieces: as the plan knew them.
        offcuts: what will be left, of pieces of the rack and of what was bought; a name may be empty.
        supplies: how much is used of each supply of the rack, by its name.
    """

    plan: str
    digest: str
    pieces: tuple[RackPiece, ...]
    offcuts: tuple[RackPiece, ...] = ()
    supplies: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Taking:
    """A taking as it stands in the rack.

    Attributes:
        number: of the taking.
        plan, digest: of the plan.
        at: when it was taken. put_back_at: when it was put back; "" while it is out.
        pieces: names of what was taken. offcuts: names of what it left.
        supplies: how much it used of each supply, by its name.
    """

    number: int
    plan: str
    digest: str
    at: str
    put_back_at: str
    pieces: tuple[str, ...]
    offcuts: tuple[str, ...]
    supplies: tuple[tuple[str, float], ...] = ()


def take(store: Store, wanted: Wanted, at: str) -> tuple[Taking | None, list[Finding]]:
    """Take what a plan needs off the rack and put its offcuts there.

    Args:
        store: the rack.
        wanted: what the plan takes and leaves.
        at: the time, for the record.

    Returns:
        The taking; or None and every reason why nothing was changed.
    """
    try:
        with store.writing() as connection:
            # the counter's row is locked first, so that takings come one after the other
            number = next_number(connection, "taking")
            rows = locked(connection, [p.name for p in wanted.pieces])
            plans = {t.number: t for t in connection.execute(select(takings))}
            out = next((t for t in plans.values() if t.digest == wanted.digest and not t.put_back_at), None)
            if out is not None:
                raise Refused(_taken_already(store, wanted, out))
            there = {p.name: p for p, _ in read_pieces(connection, taken=True)}
            wrong = [f for p in wanted.pieces for f in _wrong(store, p, there.get(p.name), rows, plans)]
            wrong += _too_little(store, connection, wanted)
            if wrong:
                raise Refused(*wrong)
            row = {"number": number, "plan": wanted.plan, "digest": wanted.digest, "at": at}
            connection.execute(takings.insert().values(**row))
            connection.execute(update(pieces).where(pieces.c.name.in_(list(rows))).values(taken_by=number))
            _use(connection, number, wanted.supplies, -1)
            left = insert_pieces(connection, _free_names(connection, wanted.offcuts), made_by=number)
    except Refused as refused:
        return None, refused.findings
    names = tuple(sorted(rows, key=name_key))
    left_names = tuple(p.name for p in left)
    return Taking(number, wanted.plan, wanted.digest, at, "", names, left_names, wanted.supplies), []


def _too_little(store: Store, connection: Connection, wanted: Wanted) -> list[Finding]:
    """Supplies of which there is less than the plan uses; the rows of all of them are locked."""
    asked = select(supplies).where(supplies.c.name.in_([name for name, _ in wanted.supplies]))
    there = {r.name: r for r in connection.execute(asked.order_by(supplies.c.name).with_for_update())}
    return [
        Finding(
            "rack.too-little", Severity.ERROR, f"there is too little of `{name}`", Place(store.name),
            f"{there[name].quantity:g} {there[name].unit}" if name in there else "none", f"{many:g} or more",
            remedy="say how much there is now, or make the plan again; nothing was changed",
        )
        for name, many in wanted.supplies
        if name not in there or there[name].quantity < many
    ]  # fmt: skip


def _use(connection: Connection, number: int, supplied: Sequence[tuple[str, float]], sign: int) -> None:
    """Take supplies off (-1) for a taking, or put them back (1)."""
    for name, many in supplied:
        more = update(supplies).where(supplies.c.name == name)
        connection.execute(more.values(quantity=supplies.c.quantity + sign * many))
        if sign < 0:
            connection.execute(used.insert().values(taking=number, supply=name, quantity=many))


def _used(connection: Connection, number: int) -> tuple[tuple[str, float], ...]:
    asked = select(used).where(used.c.taking == number).order_by(used.c.supply)
    return tuple((r.supply, r.quantity) for r in connection.execute(asked))


def _free_names(connection: Connection, offcuts: Sequence[RackPiece]) -> list[RackPiece]:
    used = names_in_use(connection)
    free = []
    for piece in offcuts:
        free.append(replace(piece, name="") if piece.name in used else piece)
        used.add(piece.name)
    return free


def _wrong(
    store: Store,
    piece: RackPiece,
    there: RackPiece | None,
    rows: dict[str, Row[Any]],
    plans: dict[int, Row[Any]],
) -> list[Finding]:
    """Why a piece cannot be taken as the plan knew it."""
    row = rows.get(piece.name)
    if row is None or there is None:
        return [no_such_piece(store.name, piece.name)]
    if row.taken_by is not None:
        return [taken_piece(store.name, piece.name, plans[row.taken_by].plan)]
    if _same(piece, there):
        return []
    return [
        Finding(
            "rack.changed", Severity.ERROR, f"`{piece.name}` is not as the plan knew it", Place(store.name),
            _as_it_is(there, store.units), _as_it_is(piece, store.units),
            remedy="make the plan again with the rack as it is now; nothing was changed",
        )
    ]  # fmt: skip


def _same(a: RackPiece, b: RackPiece) -> bool:
    """Whether two records are of the same wood, size and defects."""
    if (a.kind, a.material, len(a.defects)) != (b.kind, b.material, len(b.defects)):
        return False
    sizes = [[p.thickness, p.length, p.width] for p in (a, b)]
    for own, p in zip(sizes, (a, b), strict=True):
        own += [mm for d in p.defects for mm in (d.x, d.y, d.length, d.width)]
    return all(abs(x - y) < _SAME for x, y in zip(*sizes, strict=True))


def _as_it_is(piece: RackPiece, units: Units) -> str:
    """A piece in a few words."""
    length, width, thick = (written(mm, units) for mm in (piece.length, piece.width, piece.thickness))
    marks = f", defects {written_defects(piece.defects, units)}" if piece.defects else ""
    return f"{piece.material}, {length} × {width}, {thick} thick{marks}"


def _taken_already(store: Store, wanted: Wanted, out: Row[Any]) -> Finding:
    return Finding(
        "rack.taken-already", Severity.ERROR, f"the wood for {wanted.plan} is taken already", Place(store.name),
        f"taking {out.number}, {out.at}", "a plan whose wood is on the rack",
        remedy=f"put it back first with `boardwright rack put-back {out.number}`; nothing was changed",
    )  # fmt: skip


def put_back(store: Store, which: str, at: str) -> tuple[Taking | None, list[Finding]]:
    """Put everything back that was taken for a plan, and take its offcuts off the rack.

    Args:
        store: the rack.
        which: number of the taking, or digest of the plan.
        at: the time, for the record.

    Returns:
        The taking; or None and every reason why nothing was changed.
    """
    try:
        with store.writing() as connection:
            found = _find(connection, which)
            if found is None:
                raise Refused(_nothing_out(store, which))
            made = select(pieces).where(pieces.c.made_by == found.number).with_for_update()
            offcuts = sorted(connection.execute(made), key=lambda r: name_key(r.name))
            used = [r.name for r in offcuts if r.taken_by is not None]
            if used:
                raise Refused(*(_offcut_used(store, name, found.plan) for name in used))
            was = connection.execute(select(pieces.c.name).where(pieces.c.taken_by == found.number)).scalars()
            names = tuple(sorted(was, key=name_key))
            back = _used(connection, found.number)
            _use(connection, found.number, back, 1)
            gone = [r.name for r in offcuts]
            connection.execute(defects.delete().where(defects.c.piece.in_(gone)))
            connection.execute(pieces.delete().where(pieces.c.name.in_(gone)))
            connection.execute(update(pieces).where(pieces.c.taken_by == found.number).values(taken_by=None))
            connection.execute(update(takings).where(takings.c.number == found.number).values(put_back_at=at))
    except Refused as refused:
        return None, refused.findings
    return Taking(found.number, found.plan, found.digest, found.at, at, names, tuple(gone), back), []


def _find(connection: Connection, which: str) -> Row[Any] | None:
    """The taking of that number or digest that is still out, locked."""
    asked = select(takings).where(takings.c.put_back_at.is_(None))
    if which.isdigit() and len(which) < 10:
        asked = asked.where(takings.c.number == int(which))
    else:
        asked = asked.where(takings.c.digest == which)
    return connection.execute(asked.with_for_update()).first()


def _nothing_out(store: Store, which: str) -> Finding:
    shown = f"taking {which}" if which.isdigit() else "no taking of this plan"
    return Finding(
        "rack.nothing-taken", Severity.ERROR, "nothing is out that could be put back", Place(store.name), shown,
        "a plan, or the number of a taking, that `boardwright rack list taken` shows",
        remedy="name one of those; nothing was changed",
    )  # fmt: skip


def _offcut_used(store: Store, name: str, plan: str) -> Finding:
    return Finding(
        "rack.offcut-used", Severity.ERROR, f"the offcut `{name}` of {plan} is taken for another plan",
        Place(store.name), "taken", "on the rack, since its board is to be whole again",
        remedy="put the other plan's wood back first; nothing was changed",
    )  # fmt: skip


def read_takings(connection: Connection) -> list[Taking]:
    """All takings, in order."""
    out: dict[int, list[str]] = {}
    left: dict[int, list[str]] = {}
    for row in connection.execute(select(pieces.c.name, pieces.c.taken_by, pieces.c.made_by)):
        for number, names in ((row.taken_by, out), (row.made_by, left)):
            if number is not None:
                names.setdefault(number, []).append(row.name)
    return [
        Taking(
            t.number, t.plan, t.digest, t.at, t.put_back_at or "",
            tuple(sorted(out.get(t.number, []), key=name_key)),
            tuple(sorted(left.get(t.number, []), key=name_key)),
            _used(connection, t.number),
        )
        for t in connection.execute(select(takings).order_by(takings.c.number))
    ]  # fmt: skip
