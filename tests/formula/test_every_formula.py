"""What is asserted of every formula and every procedure of the package, whoever wrote it."""

import importlib
import pkgutil
import random
import zlib

import pytest

import eyebar
from eyebar.errors import OutOfRange
from eyebar.formula import Formula, Procedure, Symbol, all_formulas, all_procedures
from eyebar.formula.dimensions import unit
from eyebar.formula.tree import names
from tests.formula.symbolic import computed_by_sympy, dimension

POINTS = 25


def _modules() -> list[str]:
    found = pkgutil.walk_packages(eyebar.__path__, "eyebar.")
    return [one.name for one in found if not one.name.endswith("__main__")]


for _name in _modules():
    importlib.import_module(_name)

FORMULAS = [one for one in all_formulas() if one.module.startswith("eyebar.")]
PROCEDURES = [one for one in all_procedures() if one.module.startswith("eyebar.")]


def _title(one: Formula | Procedure) -> str:
    return f"{one.module.removeprefix('eyebar.')}.{one.function.__name__}"


def _range(symbol: Symbol) -> tuple[float, float]:
    low = 0.5 if symbol.low is None else symbol.low
    high = max(50.0, low * 10) if symbol.high is None else symbol.high
    return low, high


def _point(one: Formula, draws: random.Random) -> dict[str, float]:
    return {name: draws.uniform(*_range(symbol)) for name, symbol in one.symbols.items()}


def _called(one: Formula, inputs: dict[str, float]) -> float:
    arguments = {parameter: inputs[name] for name, parameter in one.parameters}
    return float(one.function(**arguments))


def test_there_are_formulas_to_look_at() -> None:
    assert FORMULAS


@pytest.mark.parametrize("one", FORMULAS, ids=_title)
def test_the_text_of_a_formula_says_what_its_code_computes(one: Formula) -> None:
    draws = random.Random(zlib.crc32(_title(one).encode()))
    said, computed = computed_by_sympy(one), 0
    for _ in range(POINTS):
        inputs = _point(one, draws)
        try:
            got = _called(one, inputs)
        except OutOfRange:
            continue  # a limit of use that joins several symbols
        computed += 1
        assert got == pytest.approx(said(inputs), rel=1e-9, abs=1e-12), inputs
    assert computed >= POINTS // 2, "most points lie outside the limits: declare narrower ranges"


@pytest.mark.parametrize("one", FORMULAS, ids=_title)
def test_the_text_of_a_formula_is_homogeneous(one: Formula) -> None:
    assert dimension(one) in (None, unit(one.result.unit)[0])


@pytest.mark.parametrize("one", FORMULAS, ids=_title)
def test_a_formula_declares_the_symbols_and_parameters_it_has(one: Formula) -> None:
    assert names(one.equation.right) == set(one.symbols)
    assert {parameter for _, parameter in one.parameters} == set(one.signature.parameters)
    for symbol in (one.result, *one.symbols.values()):
        assert symbol.meaning
        unit(symbol.unit)


@pytest.mark.parametrize("one", FORMULAS, ids=_title)
def test_a_formula_refuses_what_lies_outside_its_limits_of_use(one: Formula) -> None:
    draws = random.Random(zlib.crc32(_title(one).encode()))
    for name, symbol in one.symbols.items():
        if not symbol.strict:
            continue
        span = (_range(symbol)[1] - _range(symbol)[0]) or 1.0
        outside = [low - 0.01 * span for low in (symbol.low,) if low is not None]
        outside += [high + 0.01 * span for high in (symbol.high,) if high is not None]
        assert outside, f"{name} is strict without a limit"
        for value in (*outside, float("nan")):
            with pytest.raises(OutOfRange):
                _called(one, _point(one, draws) | {name: value})


@pytest.mark.parametrize("one", [*FORMULAS, *PROCEDURES], ids=_title)
def test_docstrings_give_units_shapes_limits_and_the_declaration_a_source(
    one: Formula | Procedure,
) -> None:
    text = one.function.__doc__ or ""
    assert text.partition("\n")[0].rstrip().endswith((".", ":")), "first line: what it is"
    assert "Scalars" in text or "arrays" in text, "shapes: `Scalars.` or what arrays it takes"
    assert "Limits:" in text, "`Limits:` and what they are, or `Limits: none.`"
    assert "[" in text, "units in brackets"
    if isinstance(one, Formula):
        assert f"[{one.result.unit}]" in text, f"the result's unit, [{one.result.unit}]"
    else:
        assert one.steps
    assert one.source.strip()
