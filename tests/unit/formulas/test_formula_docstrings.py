"""Every formula says its units, limits, source and an example that runs."""

import doctest
import importlib
import inspect
import pkgutil
import re

import pytest

import boardwright.formulas
from boardwright.formulas.limits import Limit

MODULES = [
    importlib.import_module(f"boardwright.formulas.{m.name}")
    for m in pkgutil.iter_modules(boardwright.formulas.__path__)
    if m.name != "limits"
]
FORMULAS = [
    (module, function)
    for module in MODULES
    for name, function in inspect.getmembers(module, inspect.isfunction)
    if function.__module__ == module.__name__ and not name.startswith("_")
]


def named(pair):
    return pair[1].__name__


def section(doc, name):
    found = re.search(rf"^{name}:\n((?:    .*\n|\n)+)", doc + "\n", re.M)
    return found.group(1) if found else ""


def test_there_are_formulas_to_read():
    found = {m.__name__.rsplit(".", 1)[1] for m in MODULES}
    assert found >= {"moisture", "movement", "density", "screws", "beams", "lumber"}


@pytest.mark.parametrize("pair", FORMULAS, ids=named)
def test_sections(pair):
    doc = inspect.getdoc(pair[1])
    for name in ("Args", "Returns", "Limits", "Source", "Example"):
        assert section(doc, name).strip(), f"{name} is missing"
    assert ">>>" in section(doc, "Example")
    assert re.search(r"\[.+\]\.?\s*$", section(doc, "Returns").strip()), "the result has no unit"


@pytest.mark.parametrize("pair", FORMULAS, ids=named)
def test_every_argument_has_a_unit(pair):
    text = section(inspect.getdoc(pair[1]), "Args")
    entries = dict(re.findall(r"^    (\w+): ((?:.|\n     )+)", text, re.M))
    assert list(entries) == list(inspect.signature(pair[1]).parameters)
    for name, entry in entries.items():
        assert re.search(r"\[[^\]]+\]\.$", entry.strip()), f"{name} has no unit"


@pytest.mark.parametrize("module", MODULES, ids=lambda m: m.__name__)
def test_limits_name_real_arguments(module):
    for name, limits in module.LIMITS.items():
        arguments = inspect.signature(getattr(module, name)).parameters
        assert set(limits) <= set(arguments), name
        for limit in limits.values():
            assert isinstance(limit, Limit)
            assert limit.low is not None or limit.high is not None


@pytest.mark.parametrize("module", MODULES, ids=lambda m: m.__name__)
def test_examples_run(module):
    failed, attempted = doctest.testmod(module)
    assert attempted > 0
    assert failed == 0
