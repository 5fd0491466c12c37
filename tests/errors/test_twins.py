"""Every check has a design that fires it and a near twin that does not."""

import runpy
from pathlib import Path

import pytest

from boardwright.pipeline import check_text, read

HERE = Path(__file__).parent
TWINS = runpy.run_path(str(HERE / "twins.py"))["TWINS"]


@pytest.mark.parametrize(("code", "old", "new"), TWINS, ids=[t[0] for t in TWINS])
def test_the_twin_is_silent(code: str, old: str, new: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(HERE)
    text, tables, _ = read(f"{code}.yaml")
    assert code in {f.code for f in check_text(text, tables=tables).findings}
    assert text.count(old) == 1
    after = check_text(text.replace(old, new), tables=tables)
    assert after.piece is not None
    assert code not in {f.code for f in after.findings}, [f.text() for f in after.findings if f.code == code]
