"""Checks designs again and again with another size: does a check that remembers say the same as one that does not?

python tools/re_checks.py [--random 30] [--seed 1]

Every text is checked in this process, which has seen all texts before it, and in a child of it that was split off
before anything was checked. Prints what differs; exit code 1 when anything does.
"""

from __future__ import annotations

import argparse
import os
import random
import re
import sys
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from boardwright.pipeline import check_text
from boardwright.solids.assembly import assembly_of
from boardwright.solids.poses_tried import wrong_poses
from design_dice import design, text

ROOT = Path(__file__).parent.parent
WIDTH = re.compile(r"^(  (?:width|height|depth): )(\d[\d ./]*?)(?: (?:in|mm))?$", re.MULTILINE)
"""A size of the whole piece in a design file."""


def with_size(source: str, which: int, more: float) -> str:
    """A design with one of its outer sizes so many sixteenths of an inch, or doubled millimetres, greater."""
    found = list(WIDTH.finditer(source))
    if not found:
        return source
    m = found[which % len(found)]
    whole = sum(float(n) if "/" not in n else _share(n) for n in m[2].split())
    size = whole + (2 * more if "units: mm" in source else more / 16)
    return f"{source[: m.start()]}{m[1]}{size:g}{source[m.end() :]}"


def _share(written: str) -> float:
    over, under = written.split("/")
    return float(over) / float(under)


def told(source: str) -> str:
    """All that a check says, and how the piece goes together."""
    result = check_text(source)
    said = [repr(result.findings), repr(result.passed)]
    if result.piece is not None:
        said += [repr(assembly_of(result.piece)), repr(wrong_poses(result.piece))]
    return "\n".join(said)


def cold(source: str) -> str:
    """The same, in a child of this process."""
    near, far = os.pipe()
    child = os.fork()
    if child == 0:
        with os.fdopen(far, "w") as out:
            out.write(told(source))
        os._exit(0)
    os.close(far)
    with os.fdopen(near) as out:
        said = out.read()
    os.waitpid(child, 0)
    return said


def texts(count: int, seed: int) -> Iterator[tuple[str, str]]:
    """Names and texts: each example and random design, then the same with sizes changed by chance."""
    dice = random.Random(seed)
    sources = [(p.stem, p.read_text()) for p in sorted((ROOT / "examples").glob("*.yaml"))]
    sources += [(f"random {seed + i}", text(design(seed + i))) for i in range(count)]
    for name, source in sources:
        yield name, source
        for _ in range(2):
            yield f"{name}, another size", with_size(source, dice.randrange(3), dice.randint(1, 40))


def main() -> int:
    """Compare all texts."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--random", type=int, default=30)
    parser.add_argument("--seed", type=int, default=1)
    args = parser.parse_args()
    named = list(texts(args.random, args.seed))
    first = [cold(source) for _, source in named]
    wrong = [name for (name, source), said in zip(named, first, strict=True) if told(source) != said]
    print(
        f"{len(named)} checks, {sum('Assembly(' in s for s in first)} of them of a piece, {len(wrong)} differ"
    )
    for name in wrong:
        print(name)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
