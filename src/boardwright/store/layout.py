"""The tables of the rack's database, as the newest of `steps.STEPS` leaves them."""

from __future__ import annotations

from sqlalchemy import Column, Float, ForeignKey, Integer, MetaData, Table, Text

metadata = MetaData()

settings = Table(
    "settings",
    metadata,
    Column("key", Text, primary_key=True),
    Column("value", Text, nullable=False),
)
"""`version` of these tables, `units` of the rack."""

counters = Table(
    "counters",
    metadata,
    Column("letter", Text, primary_key=True),
    Column("last", Integer, nullable=False),
)
"""Last number given out for each letter, so that no name is ever given twice."""

takings = Table(
    "takings",
    metadata,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("plan", Text, nullable=False),
    Column("digest", Text, nullable=False),
    Column("at", Text, nullable=False),
    Column("put_back_at", Text),
)
"""What was taken from the rack: for which plan, when, and when it was put back."""

pieces = Table(
    "pieces",
    metadata,
    Column("name", Text, primary_key=True),
    Column("kind", Text, nullable=False),
    Column("material", Text, nullable=False),
    Column("lumber", Text, nullable=False),
    Column("thickness", Float(53), nullable=False),
    Column("measured", Float(53)),
    Column("length", Float(53), nullable=False),
    Column("width", Float(53), nullable=False),
    Column("moisture", Float(53)),
    Column("grade", Text, nullable=False),
    Column("cut_from", Text, nullable=False),
    Column("note", Text, nullable=False),
    Column("picture", Text, nullable=False),
    Column("made_by", Integer, ForeignKey("takings.number")),
    Column("taken_by", Integer, ForeignKey("takings.number")),
)
"""Boards, sheets and offcuts: `taken_by` is empty while a piece is on the rack, `made_by` is the taking that
left an offcut."""

defects = Table(
    "defects",
    metadata,
    Column("piece", Text, ForeignKey("pieces.name", ondelete="CASCADE"), primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("x", Float(53), nullable=False),
    Column("y", Float(53), nullable=False),
    Column("length", Float(53), nullable=False),
    Column("width", Float(53), nullable=False),
    Column("what", Text, nullable=False),
)

supplies = Table(
    "supplies",
    metadata,
    Column("name", Text, primary_key=True),
    Column("kind", Text, nullable=False),
    Column("quantity", Float(53), nullable=False),
    Column("unit", Text, nullable=False),
    Column("note", Text, nullable=False),
)

used = Table(
    "used",
    metadata,
    Column("taking", Integer, ForeignKey("takings.number"), primary_key=True, autoincrement=False),
    Column("supply", Text, primary_key=True),
    Column("quantity", Float(53), nullable=False),
)
"""Supplies that a taking used."""

prices = Table(
    "prices",
    metadata,
    Column("item", Text, primary_key=True),
    Column("thickness", Float(53), primary_key=True),
    Column("unit", Text, primary_key=True),
    Column("day", Text, primary_key=True),
    Column("seller", Text, primary_key=True),
    Column("amount", Text, nullable=False),
    Column("currency", Text, nullable=False),
)
"""`thickness` 0 is any; `amount` is a decimal number, kept as it was written."""
