"""The text of a design file: YAML with the line and column of every key, comments and order kept."""

from __future__ import annotations

import io
import re
from dataclasses import dataclass, field
from typing import Any

from boardwright.core.findings import Finding, Place, Severity


@dataclass(frozen=True, slots=True)
class Source:
    """A design file as read.

    Attributes:
        name: file name as the user gave it.
        text: its whole text.
        data: plain dicts, lists and scalars.
        places: path → (line, column) of the key, from 1.
    """

    name: str
    text: str
    data: Any
    places: dict[str, tuple[int, int]] = field(default_factory=dict)

    def place(self, path: str) -> Place:
        """Where a path stands; the nearest key above it when the path itself is not in the file."""
        probe = path
        while probe and probe not in self.places:
            probe = re.sub(r"(\.[^.\[\]]+|\[\d+\]|^[^.\[\]]+)$", "", probe)
        line, column = self.places.get(probe, (1, 1) if self.text else (0, 0))
        return Place(self.name, line, column, path)


def join(path: str, key: str | int) -> str:
    """A path one step longer: `case` and `width` give `case.width`, `rows` and 1 give `rows[1]`."""
    if isinstance(key, int):
        return f"{path}[{key}]"
    return f"{path}.{key}" if path else str(key)


def _plain(node: Any, path: str, places: dict[str, tuple[int, int]]) -> Any:
    lc = getattr(node, "lc", None)
    if isinstance(node, dict):
        out: dict[Any, Any] = {}
        for key, value in node.items():
            here = join(path, key if isinstance(key, str) else str(key))
            if lc is not None and lc.data and key in lc.data:
                line, column = lc.key(key)
                places[here] = (line + 1, column + 1)
            out[key if isinstance(key, str) else str(key)] = _plain(value, here, places)
        return out
    if isinstance(node, list):
        items = []
        for i, value in enumerate(node):
            here = join(path, i)
            if lc is not None and lc.data and i in lc.data:
                line, column = lc.item(i)
                places[here] = (line + 1, column + 1)
            items.append(_plain(value, here, places))
        return items
    if isinstance(node, bool) or node is None:
        return node
    for kind in (int, float, str):
        if isinstance(node, kind):
            return kind(node)
    return str(node)


_YAML = "YAML 1.2: `key: value`, indented by spaces, each key once in its mapping"
_PLAINER = {
    "mapping values are not allowed here": "a second colon in the line, or a line that is indented too far",
    "found unexpected end of stream": "no end of the text that starts here",
    "could not find expected ':'": "a line without a colon after its key",
}


def _yaml_finding(error: Any, name: str) -> Finding:
    """What the YAML reader says, in plainer words; text that never ends is placed where it starts."""
    what = str(error.problem or error.context or "what is no YAML").split("\n")[0]
    opened = "scanning a" in str(error.context) or "parsing a flow" in str(error.context)
    mark = (error.context_mark if opened else None) or error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
    twice = re.search(r'duplicate key "(.*?)" with', what)
    if twice:
        return Finding(
            "file.double-key",
            Severity.ERROR,
            f"the key `{twice[1]}` stands twice",
            Place(name, line, column),
            found="it for the second time here",
            expected="each key once in its mapping",
            remedy="delete one of the two, or give this one another name",
        )
    met = re.match(r"expected .*, but found (.*)", what)
    return Finding(
        "file.not-yaml",
        Severity.ERROR,
        "the file cannot be read as YAML",
        Place(name, line, column),
        found=_PLAINER.get(what, met[1] if met else what.removeprefix("found ")),
        expected=_YAML,
        remedy="mend the line; text with a colon or a quote mark inside needs quotes around it",
    )


def read_source(text: str, name: str) -> tuple[Source | None, list[Finding]]:
    """Read the YAML of a design file.

    Args:
        text: the file's text.
        name: its name, for places.

    Returns:
        The source, or None when it is not YAML or not a mapping; and findings.
    """
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    yaml = YAML(typ="rt")
    try:
        node = yaml.load(io.StringIO(text))
    except MarkedYAMLError as e:
        return None, [_yaml_finding(e, name)]
    except (YAMLError, ValueError, RecursionError) as e:
        return None, [
            Finding(
                "file.not-yaml",
                Severity.ERROR,
                "the file cannot be read as YAML",
                Place(name, 1, 1),
                found=str(e).split("\n")[0][:200] or "what is no YAML",
                expected=_YAML,
                remedy="mend the file; it is plain text, with spaces to indent",
            )
        ]
    if not isinstance(node, dict):
        return None, [
            Finding(
                "file.not-a-mapping",
                Severity.ERROR,
                "the file holds no design",
                Place(name, 1, 1),
                found="nothing" if node is None else "a list" if isinstance(node, list) else "a single value",
                expected="keys such as `boardwright:`, `title:`, `units:`, `stock:`, `case:`",
                remedy="start one with `boardwright new chest`",
            )
        ]
    places: dict[str, tuple[int, int]] = {}
    return Source(name, text, _plain(node, "", places), places), []
