"""Laws of the rack: taking and putting back conserve stock, and a CSV file of any rack reads back as that rack."""

from __future__ import annotations

import tempfile
from decimal import Decimal
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from boardwright.core.lengths import INCH
from boardwright.core.rack import PRICE_UNITS, SUPPLY_KINDS, Defect, Price, Rack, RackPiece, Supply
from boardwright.store.csv_files import export_csv, read_csv
from boardwright.store.opening import Store, open_rack, start_rack
from boardwright.store.pieces import add_pieces, read_pieces
from boardwright.store.supplies import read_rack
from boardwright.store.takings import Wanted, put_back, read_takings, take
from boardwright.tables.load import default_tables

TABLES = default_tables()
FEW = settings(
    max_examples=12, stateful_step_count=12, deadline=None, suppress_health_check=list(HealthCheck)
)


def face(pieces: list[RackPiece]) -> float:
    return sum(p.length * p.width for p in pieces)


class RackMachine(RuleBasedStateMachine):
    """Plans come and go; the model is a dictionary."""

    @initialize(count=st.integers(1, 6))
    def start(self, count: int) -> None:
        self.folder = tempfile.TemporaryDirectory()
        where = str(Path(self.folder.name) / "rack.db")
        assert start_rack(where, "in") == []
        store, _ = open_rack(where)
        assert store is not None
        self.store: Store = store
        whole = [RackPiece("", "board", "oak_white", INCH, 2000.0, 150.0, "4_4") for _ in range(count)]
        self.there = {p.name: p for p in add_pieces(store, whole)[0]}
        self.out: dict[int, tuple[list[RackPiece], list[str]]] = {}
        self.plans = 0
        self.total = face(list(self.there.values()))

    @rule(data=st.data(), share=st.floats(0.1, 0.9))
    @precondition(lambda self: self.there)
    def take_some(self, data: st.DataObject, share: float) -> None:
        names = data.draw(st.lists(st.sampled_from(sorted(self.there)), min_size=1, unique=True))
        pieces = [self.there[n] for n in names]
        left = tuple(
            RackPiece(
                f"{p.name}-1", "board", p.material, INCH, p.length * share, p.width, "4_4", cut_from=p.name
            )
            for p in pieces
        )
        self.plans += 1
        taking, findings = take(self.store, Wanted("plan", f"plan {self.plans}", tuple(pieces), left), "now")
        assert findings == []
        assert taking is not None
        for p in pieces:
            del self.there[p.name]
        self.out[taking.number] = (pieces, list(taking.offcuts))
        for name, piece in zip(taking.offcuts, left, strict=True):
            self.there[name] = next(
                p
                for p, _ in read_now(self.store)
                if p.name == name and abs(p.length - piece.length) < 1e-5 and p.cut_from == piece.cut_from
            )

    @rule(data=st.data())
    @precondition(lambda self: self.out)
    def put_one_back(self, data: st.DataObject) -> None:
        number = data.draw(st.sampled_from(sorted(self.out)))
        pieces, offcuts = self.out[number]
        in_use = [n for n in offcuts if n not in self.there]
        taking, findings = put_back(self.store, str(number), "later")
        if in_use:
            assert taking is None
            assert {f.code for f in findings} == {"rack.offcut-used"}
            return
        assert findings == []
        del self.out[number]
        for name in offcuts:
            del self.there[name]
        self.there.update({p.name: p for p in pieces})

    @rule(data=st.data())
    @precondition(lambda self: self.out)
    def ask_for_what_is_gone(self, data: st.DataObject) -> None:
        gone = data.draw(st.sampled_from([p for pieces, _ in self.out.values() for p in pieces]))
        free = tuple(self.there.values())
        taking, findings = take(self.store, Wanted("greedy", "greedy", (*free, gone)), "now")
        assert taking is None
        assert [f.code for f in findings] == ["rack.taken"]

    @invariant()
    def the_rack_is_what_the_model_says(self) -> None:
        if not hasattr(self, "store"):
            return
        rack, _ = read_rack(self.store)
        assert {p.name: p for p in rack.pieces} == self.there
        offcuts = {n for _, names in self.out.values() for n in names}
        held = [p for p, _ in read_now(self.store) if p.name not in offcuts]
        assert abs(face(held) - self.total) < 1e-6  # whole boards are neither lost nor made
        with self.store.reading() as connection:
            assert {t.number for t in read_takings(connection) if not t.put_back_at} == set(self.out)

    def teardown(self) -> None:
        if hasattr(self, "store"):
            self.store.close()
            self.folder.cleanup()


def read_now(store: Store) -> list[tuple[RackPiece, int | None]]:
    with store.reading() as connection:
        return read_pieces(connection, taken=True)


RackMachine.TestCase.settings = FEW
test_taking_and_putting_back_conserve_stock = RackMachine.TestCase

words = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]) | st.just(" "), max_size=12).map(
    lambda s: " ".join(s.split())
)
sizes = st.one_of(
    st.integers(64, 64 * 120).map(lambda n: round(n * INCH / 64, 6)),
    st.floats(1, 3000).map(lambda x: round(x, 6)),
)


@st.composite
def rack_pieces(draw: st.DrawFn) -> RackPiece:
    length, width = draw(sizes), draw(sizes)
    marks = []
    for _ in range(draw(st.integers(0, 2))):
        x, y = round(length * draw(st.floats(0, 0.4)), 6), round(width * draw(st.floats(0, 0.4)), 6)
        what = draw(st.sampled_from(["", "knot", "in bark", "m", "check (end)"]))
        marks.append(Defect(x, y, round(length * 0.5, 6), round(width * 0.5, 6), what))
    common = {
        "length": length, "width": width, "moisture": draw(st.none() | st.floats(0, 100)),
        "measured": draw(st.none() | sizes), "grade": draw(words), "cut_from": draw(words),
        "note": draw(words), "picture": draw(words), "defects": tuple(marks),
    }  # fmt: skip
    if draw(st.booleans()):
        row = draw(st.sampled_from(sorted(TABLES.lumber.values(), key=lambda r: r.key)))
        return RackPiece("", "board", "oak_white", row.rough, lumber=row.key, **common)
    return RackPiece("", "sheet", "birch_plywood", 12.0, **common)


racks = st.builds(
    lambda pieces, supplies, prices: Rack(
        tuple(
            RackPiece(**{**{k: getattr(p, k) for k in p.__dataclass_fields__}, "name": f"N{n}"})
            for n, p in enumerate(pieces)
        ),
        tuple({s.name: s for s in supplies}.values()),
        tuple({(p.item, p.thickness, p.unit, p.day, p.seller): p for p in prices}.values()),
    ),
    st.lists(rack_pieces(), max_size=4),
    st.lists(
        st.builds(
            Supply,
            words.filter(bool),
            st.sampled_from(SUPPLY_KINDS),
            st.floats(0, 1e6),
            words.filter(bool),
            words,
        ),
        max_size=3,
    ),
    st.lists(
        st.builds(
            Price,
            st.sampled_from(["oak_white", "birch_plywood", "cup hinge"]),
            st.none(),
            st.decimals(0, 9999, places=2).map(lambda d: Decimal(str(d))),
            st.sampled_from(PRICE_UNITS),
            st.dates().map(lambda d: d.isoformat()),
            words,
            words,
        ),
        max_size=3,
    ),
)


@given(rack=racks, units=st.sampled_from(["in", "mm"]))
@settings(max_examples=150, deadline=None)
def test_a_csv_file_reads_back_as_the_rack(rack: Rack, units: str) -> None:
    text = export_csv(rack, "in" if units == "in" else "mm")
    entries, findings = read_csv(text, "rack.csv", "in" if units == "mm" else "mm", TABLES)
    assert [f.text() for f in findings if f.code != "rack.unknown-material"] == []
    assert [e for e, _ in entries] == [*rack.pieces, *rack.supplies, *rack.prices]
