"""Hardware, glue, finish and prices in the database."""

from __future__ import annotations

from decimal import Decimal

from sqlalchemy import Connection, select, update

from boardwright.core.findings import Finding
from boardwright.core.rack import Price, Rack, Supply, name_key
from boardwright.store.layout import prices, supplies
from boardwright.store.opening import Refused, Store
from boardwright.store.pieces import no_such_piece, read_pieces


def read_supplies(connection: Connection) -> list[Supply]:
    """Supplies in the order of their kinds and names."""
    found = [Supply(r.name, r.kind, r.quantity, r.unit, r.note) for r in connection.execute(select(supplies))]
    return sorted(found, key=lambda s: (s.kind, name_key(s.name)))


def read_prices(connection: Connection) -> list[Price]:
    """Prices in the order of what they are of, oldest first."""
    found = [
        Price(r.item, r.thickness or None, Decimal(r.amount), r.unit, r.day, r.currency, r.seller)
        for r in connection.execute(select(prices))
    ]
    return sorted(found, key=lambda p: (p.item, p.thickness or 0.0, p.day, p.unit, p.seller))


def put_supply(connection: Connection, supply: Supply) -> None:
    """Write a supply, over the one of its name."""
    values = {
        "name": supply.name, "kind": supply.kind, "quantity": supply.quantity, "unit": supply.unit,
        "note": supply.note,
    }  # fmt: skip
    known = update(supplies).where(supplies.c.name == supply.name).values(**values)
    if connection.execute(known).rowcount == 0:
        connection.execute(supplies.insert().values(**values))


def put_price(connection: Connection, price: Price) -> None:
    """Write a price, over one of the same thing, unit, day and seller."""
    key = {
        "item": price.item, "thickness": price.thickness or 0.0, "unit": price.unit, "day": price.day,
        "seller": price.seller,
    }  # fmt: skip
    values = {"amount": str(price.amount), "currency": price.currency}
    known = update(prices).where(*(prices.c[name] == value for name, value in key.items())).values(**values)
    if connection.execute(known).rowcount == 0:
        connection.execute(prices.insert().values(**key, **values))


def write_supply(store: Store, supply: Supply) -> list[Finding]:
    """Put a supply on the rack, over the one of its name; findings when that cannot be."""
    try:
        with store.writing() as connection:
            put_supply(connection, supply)
    except Refused as refused:
        return refused.findings
    return []


def remove_supply(store: Store, name: str) -> list[Finding]:
    """Take a supply off the rack for good."""
    try:
        with store.writing() as connection:
            if connection.execute(supplies.delete().where(supplies.c.name == name)).rowcount == 0:
                raise Refused(no_such_piece(store.name, name))
    except Refused as refused:
        return refused.findings
    return []


def write_price(store: Store, price: Price) -> list[Finding]:
    """Put down a price; findings when that cannot be."""
    try:
        with store.writing() as connection:
            put_price(connection, price)
    except Refused as refused:
        return refused.findings
    return []


def read_rack(store: Store) -> tuple[Rack, list[Finding]]:
    """Everything that is on the rack now, at one moment.

    Args:
        store: the rack.

    Returns:
        The rack, without what is taken; findings when it cannot be read.
    """
    try:
        with store.reading() as connection:
            return (
                Rack(
                    tuple(piece for piece, _ in read_pieces(connection)),
                    tuple(read_supplies(connection)),
                    tuple(read_prices(connection)),
                ),
                [],
            )
    except Refused as refused:
        return Rack(), refused.findings
