"""`docs/joints.md` and its pictures are what the code draws, and every joint and fastening stands there."""

import re
import runpy

import pytest
from pages import ROOT, page

from boardwright.design.schema import JointKeys
from boardwright.piece.joints.kinds import KINDS

TOOL = runpy.run_path(str(ROOT / "tools/joint_docs.py"))
EXAMPLES = TOOL["examples"]()
PICTURES = ROOT / "docs" / "pictures" / "joints"


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_an_example(kind: str) -> None:
    assert kind in TOOL["JOINTS"], f"give `{kind}` an entry in tools/joint_examples.py"
    assert TOOL["JOINTS"][kind].examples
    assert f"\n`kind: {kind}`" in page("docs/joints.md")


def test_every_fastening_has_an_example() -> None:
    assert set(TOOL["_fastenings"]()) == set(TOOL["FASTENINGS"])


def test_keys_named_are_keys_of_a_joint() -> None:
    known = {f.alias or name for name, f in JointKeys.model_fields.items()}
    for kind in KINDS:
        assert set(TOOL["JOINTS"][kind].keys) <= known, kind


def test_the_page_is_up_to_date() -> None:
    assert TOOL["page_text"]() == page("docs/joints.md"), "run python tools/joint_docs.py"


@pytest.mark.parametrize("name", EXAMPLES)
def test_pictures_are_up_to_date(name: str) -> None:
    example = EXAMPLES[name]
    svg = TOOL["to_svg"](TOOL["drawing_of"](TOOL["set_out"](example), name, example))
    assert (PICTURES / f"{name}.svg").read_text(encoding="utf-8") == svg, "run python tools/joint_docs.py"


def test_no_picture_is_left_over_and_none_is_missing() -> None:
    there = {p.stem for p in PICTURES.iterdir()}
    assert there == set(EXAMPLES)
    assert set(re.findall(r"\(pictures/joints/([\w-]+)\.svg\)", page("docs/joints.md"))) == there
