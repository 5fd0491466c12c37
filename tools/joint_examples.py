"""A small design for each joint and each fastening: what `docs/joints.md` draws and explains."""

from __future__ import annotations

from dataclasses import dataclass

STOCKS = """stock:
  cherry: {wood: cherry_black, thickness: 3/4}
"""
FRAME = """  stile: {stock: cherry, length: 9, width: 2 1/4, along: z, across: x, at: [0, 0, 0]}
  rail: {stock: cherry, length: 6, width: 2 1/4, along: x, across: z, at: [2 1/4, 0, 6 3/4]}
"""
CORNER = """  side: {stock: cherry, length: 7, width: 6, along: z, across: y, at: [0, 0, 0]}
  top: {stock: cherry, length: 8, width: 6, along: x, across: y, at: [3/4, 0, 6 1/4]}
"""
SHELF = """  side: {stock: cherry, length: 9, width: 6, along: z, across: y, at: [0, 0, 0]}
  shelf: {stock: cherry, length: 7, width: 6, along: x, across: y, at: [3/4, 0, 4]}
"""
FROM_LEFT = """  side: {stock: cherry, length: 9, width: 6, along: z, across: y, at: [7, 0, 0]}
  shelf: {stock: cherry, length: 7, width: 6, along: x, across: y, at: [0, 0, 4]}
"""
BOX = """  side: {stock: cherry, length: 7, width: 4, along: y, across: z, at: [0, 0, 0]}
  front: {stock: cherry, length: 8, width: 4, along: x, across: z, at: [3/4, 0, 0]}
"""
PINS = """  pin_board: {stock: cherry, length: 7, width: 4, along: x, across: z, at: [0, 7, 0]}
  tail_board: {stock: cherry, length: 7, width: 4, along: y, across: z, at: [0, 0, 0]}
"""
BOARDS = """  rear_board: {stock: cherry, length: 9, width: 4, along: x, across: y, at: [0, 4, 0]}
  front_board: {stock: cherry, length: 9, width: 4, along: x, across: y, at: [0, 0, 0]}
"""


@dataclass(frozen=True)
class Example:
    """A design of two parts and their joint.

    Attributes:
        parts: lines of the design file; the first part receives.
        joint: what the joint is asked to be.
        title: over the picture; "" for the joint as it comes.
        note: one more sentence, or "".
        below: True when it is seen from below.
    """

    parts: str
    joint: str
    title: str = ""
    note: str = ""
    below: bool = False

    @property
    def first(self) -> str:
        """The part that receives."""
        return self.parts.split(":")[0].strip()

    @property
    def text(self) -> str:
        """The design file."""
        second = self.parts.splitlines()[1].split(":")[0].strip()
        joint = f"  - {{first: {self.first}, second: {second}, {self.joint}}}\n"
        head = "boardwright: 1\ntitle: Joint\nunits: in\n"
        return f"{head}{STOCKS}parts:\n{self.parts}joints:\n{joint}"


@dataclass(frozen=True)
class Entry:
    """What the page says of a joint.

    Attributes:
        use: what it is good for, one or two sentences (common practice).
        keys: keys that it reads, beside `kind` and `glue`.
        words: how the table of keys names it, where a default differs from joint to joint.
        examples: the first is the joint as it comes.
    """

    use: str
    keys: tuple[str, ...]
    words: tuple[str, ...]
    examples: tuple[Example, ...]


JOINTS: dict[str, Entry] = {
    "butt": Entry(
        "One part against another. Glue alone holds little on end grain, so it is fastened too.",
        ("fasten", "count", "screw", "screw_length", "biscuit"),
        ("butt", "biscuits", "pocket screws", "loose tenon", "tenon and loose tenon"),
        (Example(SHELF, "kind: butt"),),
    ),
    "rabbet": Entry(
        "Corners of plain cases and drawers, and backs. It squares the corner, and hides half of the end.",
        ("depth", "fasten"),
        ("rabbet",),
        (Example(CORNER, "kind: rabbet"),),
    ),
    "double_rabbet": Entry(
        "A rabbet in both parts: more glue face, less end grain to be seen.",
        ("depth", "width", "fasten"),
        ("double rabbet",),
        (Example(CORNER, "kind: double_rabbet"),),
    ),
    "dado": Entry(
        "Shelves, dividers and bottoms in the sides of a case. The dado carries the load.",
        ("depth", "stopped", "fasten"),
        ("dado",),
        (
            Example(SHELF, "kind: dado"),
            Example(SHELF, "kind: dado, stopped: 1/2", "Stopped", "Nothing of it is seen from the front."),
        ),
    ),
    "tongue": Entry(
        "A dado narrower than the part is thick: its shoulder hides the edge of the joint.",
        ("depth", "width", "shoulders"),
        ("tongue", "dado"),
        (Example(SHELF, "kind: tongue"),),
    ),
    "edge": Entry(
        "Boards edge to edge for panels and tops. Long grain takes glue well.",
        ("with", "depth", "width", "stopped"),
        ("edge", "the groove of a tongued or splined edge", "spline of an edge", "spline in an edge"),
        (
            Example(BOARDS, "kind: edge"),
            Example(BOARDS, "kind: edge, with: tongue", "Tongued"),
            Example(BOARDS, "kind: edge, with: spline", "With a spline"),
        ),
    ),
    "mortise_tenon": Entry(
        "Frames, doors, tables and chairs: rails in stiles and aprons in legs.",
        ("length", "thickness", "shoulder", "haunch", "through", "tenons", "wedges", "pinned", "drawbore"),
        ("tenon",),
        (
            Example(FRAME, "kind: mortise_tenon"),
            Example(FRAME, "kind: mortise_tenon, through: true", "Right through"),
        ),
    ),
    "bridle": Entry(
        "A tenon as wide as its part in a slot that is open at the end: quick to saw, with large glue faces.",
        ("thickness",),
        ("bridle", "tenon"),
        (Example(FRAME, "kind: bridle"),),
    ),
    "half_lap": Entry(
        "Frames and crossing strips. Both parts lie flush.",
        ("depth",),
        ("half lap",),
        (
            Example(FRAME, "kind: half_lap"),
            Example(
                "  upright: {stock: cherry, length: 8, width: 2, along: z, across: x, at: [3, 0, 0]}\n"
                "  crossbar: {stock: cherry, length: 8, width: 2, along: x, across: z, at: [0, 0, 3]}\n",
                "kind: half_lap",
                "Where two parts cross",
            ),
        ),
    ),
    "mitre": Entry(
        "Corners that show no end grain. End grain takes little glue, so a spline, keys, biscuits or dowels help.",
        ("with", "depth", "width"),
        ("mitre", "spline of a mitre", "spline or key of a mitre", "key"),
        (
            Example(FRAME, "kind: mitre"),
            Example(CORNER, "kind: mitre, with: spline", "On edge, with a spline"),
            Example(FRAME, "kind: mitre, with: keys", "With a key"),
            Example(CORNER, "kind: mitre, with: biscuits", "On edge, with biscuits"),
        ),
    ),
    "breadboard": Entry(
        "A board across the end of a top keeps it flat, and leaves it free to grow and shrink.",
        ("length", "depth", "thickness", "width", "tenons", "pinned", "drawbore"),
        ("breadboard end",),
        (
            Example(
                "  end: {stock: cherry, length: 12, width: 2 1/2, along: y, across: x, at: [0, 0, 0]}\n"
                "  top: {stock: cherry, length: 9, width: 12, along: x, across: y, at: [2 1/2, 0, 0]}\n",
                "kind: breadboard",
            ),
        ),
    ),
    "finger": Entry(
        "Boxes and drawers. Many straight fingers make a large glue face; a jig cuts them.",
        ("pitch", "cutter", "starts"),
        ("finger", "fingers", "finger, dovetails"),
        (Example(BOX, "kind: finger"),),
    ),
    "dovetail": Entry(
        "Boxes, chests and drawer backs. The tails hold one way even without glue.",
        ("slope", "tails", "pin", "half_pin", "cutter", "spacing", "tails_on"),
        ("dovetail", "dovetails"),
        (Example(PINS, "kind: dovetail"),),
    ),
    "half_blind": Entry(
        "Drawer fronts: the tails of the side end inside the front, so the joint is not seen from there.",
        ("lap", "slope", "tails", "pin", "half_pin", "cutter", "spacing"),
        ("half_blind", "half-blind dovetail", "dovetails"),
        (Example(PINS, "kind: half_blind"),),
    ),
    "sliding_dovetail": Entry(
        "Shelves, dividers and battens: the tongue slides in from one edge, and the joint cannot pull apart.",
        ("depth", "width", "slope", "stopped"),
        ("sliding dovetail",),
        (Example(SHELF, "kind: sliding_dovetail"),),
    ),
}
"""One entry for each kind of joint; a kind without one fails a test."""

FASTENINGS: dict[str, tuple[str, Example]] = {
    "screws": (
        "Screws through the first part into the second.",
        Example(FROM_LEFT, "kind: butt, fasten: screws"),
    ),
    "plugged_screws": (
        "Screws sunk deeper, with a plug of the same wood over each head.",
        Example(FROM_LEFT, "kind: butt, fasten: plugged_screws"),
    ),
    "pocket_screws": (
        "Screws driven aslant from inside the second part; from outside nothing is seen.",
        Example(SHELF, "kind: butt, fasten: pocket_screws", below=True),
    ),
    "dowels": ("Round pins, half in each part.", Example(SHELF, "kind: butt, fasten: dowels")),
    "biscuits": (
        "Thin ovals in slots that a plate joiner cuts: they leave room to shift the parts along the joint.",
        Example(SHELF, "kind: butt, fasten: biscuits"),
    ),
    "loose_tenons": (
        "A tenon of its own, in a mortise in each part; both parts are cut square.",
        Example(SHELF, "kind: butt, fasten: loose_tenons"),
    ),
}
"""One example for each fastening beside glue."""
