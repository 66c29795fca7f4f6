"""Modules stay short, functions take few positional parameters, names say what things are."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.house.rooms import PACKAGE

LONGEST = 350
"""Lines of a module; the guide is 60 to 300."""

LONGER: dict[str, str] = {
}
"""Modules that are longer, each with its reason."""

MOST_POSITIONAL = 4
"""Positional parameters of a function; more go by name."""

WIDER: dict[str, str] = {}
"""Functions (`room/module.py:name`) with more positional parameters, each with its reason."""

EMPTY_WORDS = {"utils", "util", "helper", "helpers", "manager", "process", "handle", "data", "info"}
"""Words that say nothing about what a thing is."""

MODULES = sorted(PACKAGE.rglob("*.py"))

Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions(module: Path) -> Iterator[tuple[str, Function]]:
    """(`room/module.py:name`, function) for every function of a module."""
    place = module.relative_to(PACKAGE).as_posix()
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, Function):
            yield f"{place}:{node.name}", node


def positional(function: Function) -> int:
    """How many parameters a caller may give by place, `self` and `cls` apart."""
    given = [argument.arg for argument in (*function.args.posonlyargs, *function.args.args)]
    return len([name for name in given if name not in ("self", "cls")])


def public(function: Function) -> bool:
    """Whether others call it: a name without a leading underscore, or a class's own making."""
    return function.name == "__init__" or not function.name.startswith("_")


def test_no_module_is_longer_than_can_be_read_at_one_sitting() -> None:
    long = [
        f"{place}: {lines} lines"
        for module in MODULES
        if (lines := len(module.read_text(encoding="utf-8").splitlines())) > LONGEST
        and (place := module.relative_to(PACKAGE).as_posix()) not in LONGER
    ]
    assert not long, "\n".join(long)


def test_no_function_takes_more_than_four_parameters_by_place() -> None:
    wide = [
        name
        for module in MODULES
        for name, function in functions(module)
        if positional(function) > MOST_POSITIONAL and name not in WIDER and public(function)
    ]
    assert not wide, "\n".join(wide)


def test_an_exception_that_is_needed_no_more_is_taken_off_the_list() -> None:
    places = {module.relative_to(PACKAGE).as_posix(): module for module in MODULES}
    for place in LONGER:
        assert len(places[place].read_text(encoding="utf-8").splitlines()) > LONGEST
    for name in WIDER:
        found = dict(functions(places[name.split(":")[0]]))
        assert positional(found[name]) > MOST_POSITIONAL


def test_names_of_modules_and_functions_say_what_they_are() -> None:
    named = [str(module.relative_to(PACKAGE).with_suffix("")) for module in MODULES]
    named += [name.split(":")[1] for module in MODULES for name, _ in functions(module)]
    empty = [
        name for name in named if EMPTY_WORDS & set(name.replace("/", "_").lower().split("_"))
    ]
    assert not empty, "\n".join(empty)


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("def f(a, b, c, d): ...", 4),
        ("def f(a, b, c, d, e): ...", 5),
        ("def f(self, a, /, b, *, c): ...", 2),
    ],
)
def test_parameters_by_place_are_counted_as_a_caller_sees_them(text: str, count: int) -> None:
    # By hand: `self` and what stands behind the star are not given by place.
    function = ast.parse(text).body[0]
    assert isinstance(function, Function)
    assert positional(function) == count
