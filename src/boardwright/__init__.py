"""Boardwright: from a design to a built and published piece of furniture.

from boardwright import check, load, plan, publish
made = plan(check(load("ribbon-chest.yaml")))
publish(made.plan, "out")
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from boardwright.library import Loaded, Made, check, load, plan, publish

__all__ = ["Loaded", "Made", "check", "load", "plan", "publish"]
__version__ = "0.1.0"


def __getattr__(name: str) -> Any:
    """Names of the library are imported when they are first asked for, so that the parts load on their own."""
    if name in __all__:
        from importlib import import_module

        return getattr(import_module("boardwright.library"), name)
    raise AttributeError(name)
