"""From two parts and what is asked to a joint; refuses one that cannot be there, saying why."""

from __future__ import annotations

from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft, meeting
from boardwright.piece.joints.butt import butt
from boardwright.piece.joints.dado import dado
from boardwright.piece.joints.rabbet import rabbet
from boardwright.piece.joints.settings import JointSettings, settings
from boardwright.piece.joints.tongue import tongue
from boardwright.piece.setout import SetOut

MAKERS = {"butt": butt, "rabbet": rabbet, "dado": dado, "tongue": tongue}


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
) -> None:
    """Join two parts that stand face to face. See `settings` for the arguments."""
    want = settings(
        out, name, keys, path, default_kind, first, second, depth_share=depth_share, both_faces=both_faces
    )
    join(out, first, second, want)


def join(out: SetOut, first: Draft, second: Draft, want: JointSettings) -> None:
    """Make a joint whose numbers are settled."""
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
    MAKERS[want.kind](out, first, second, meet, want)
