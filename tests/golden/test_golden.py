"""The examples' texts, stage by stage, in both units. `make golden` writes them anew; read what changed.

These say that nothing changed unnoticed, not that it is right: what is right stands in the other tests.
"""

from pathlib import Path

import pytest

from boardwright.cli.show import cut_list

HERE = Path(__file__).parent
NAMES = ("bolt-shelves", "button-cabinet", "lace-cabinet", "pattern-chest", "ribbon-chest", "thread-table")
STAGES = ("list", "explain", "joints", "buying")


def text_of(stage: str, result, plan) -> str:  # type: ignore[no-untyped-def]
    if stage == "list":
        return cut_list(result.piece)
    if stage == "explain":
        return "\n".join(_reason(r) for r in plan.reasons)
    if stage == "joints":
        return "\n".join(f"{j.second} into {j.first} x {j.count}: {j.kind}; {j.summary}" for j in plan.joints)
    return "\n".join("  ".join(s for s in (b.group, b.quantity, b.item, b.detail) if s) for b in plan.buy)


def _reason(r) -> str:  # type: ignore[no-untyped-def]
    why = " ".join(s for s in (r.sum, f"({r.rule})" if r.rule else "") if s)
    return f"{r.path} = {r.size.text}" + (f": {why}" if why else "") + (" [given]" if r.given else "")


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("name", NAMES)
def test_text(name: str, units: str, stage: str, example, request: pytest.FixtureRequest) -> None:  # type: ignore[no-untyped-def]
    result, plan = example(name, units)
    text = text_of(stage, result, plan).rstrip() + "\n"
    golden = HERE / name / f"{stage}-{units}.txt"
    if request.config.getoption("--update"):
        golden.parent.mkdir(exist_ok=True)
        golden.write_text(text, encoding="utf-8")
    assert golden.is_file(), "run make golden"
    assert text == golden.read_text(encoding="utf-8"), "run make golden, and read what changed"


def test_no_text_is_left_over() -> None:
    wanted = {f"{name}/{stage}-{units}.txt" for name in NAMES for stage in STAGES for units in ("in", "mm")}
    assert {str(p.relative_to(HERE)) for p in HERE.glob("*/*.txt")} == wanted
