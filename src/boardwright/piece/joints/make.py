"""From two parts and what is asked to a joint; refuses one that cannot be there, saying why and what could be."""

from __future__ import annotations

from dataclasses import replace

from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft, Meeting, crossing, meeting
from boardwright.piece.joints.kinds import KINDS
from boardwright.piece.joints.settings import JointSettings, settings
from boardwright.piece.setout import SetOut


def make_joint(
    out: SetOut,
    name: str,
    keys: JointKeys | None,
    path: str,
    default_kind: str,
    first: Draft,
    second: Draft,
    *,
    depth_share: float | None = None,
    both_faces: bool = False,
    taken: float = 0.0,
    back: float = 0.0,
) -> None:
    """Join two parts that stand face to face, or pass through each other.

    See `settings` for the arguments, and `JointSettings` for `taken` and `back`.
    """
    want = settings(
        out, name, keys, path, default_kind, first, second, depth_share=depth_share, both_faces=both_faces
    )
    join(out, first, second, replace(want, taken=taken, back=back) if taken or back else want)


def join(out: SetOut, first: Draft, second: Draft, want: JointSettings) -> None:
    """Make a joint whose numbers are settled."""
    kind = KINDS[want.kind]
    through = crossing(first, second) if kind.cross is not None else None
    if through is not None and kind.cross is not None:
        kind.cross(out, first, second, through, want)
        return
    meet = meeting(first, second)
    if meet is None:
        out.find(
            "joint.apart",
            f"the {first.name} and the {second.name} do not meet",
            want.path,
            found="no face in common",
            expected="two faces that touch",
            remedy="place one part against the other, or join other parts",
            parts=(first.id, second.id),
        )
        return
    why = kind.why_not(first, second, meet)
    if why:
        refuse(out, first, second, meet, want, why)
        return
    kind.make(out, first, second, meet, want)


def refuse(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, why: str) -> None:
    """A finding: this joint cannot be there; the joints that could are named."""
    others = [k for k, kind in KINDS.items() if k != want.kind and not kind.why_not(first, second, meet)]
    could = " or ".join(f"`{k}`" for k in others)
    out.find(
        KINDS[want.kind].code,
        f"there can be no {KINDS[want.kind].trade} between the {first.name} and the {second.name}",
        want.path,
        found=why,
        expected=KINDS[want.kind].needs,
        source="common practice",
        remedy=f"use {could}, or move one of the parts" if could else "move one of the parts",
        parts=(first.id, second.id),
    )
