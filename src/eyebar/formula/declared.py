"""How a formula or a procedure is declared, and the register of all of them."""

import inspect
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache, wraps
from typing import Any, ParamSpec, TypeVar

from eyebar.formula.tree import Equation, parsed
from eyebar.formula.working import Block, Step, Working, open_working

P = ParamSpec("P")
R = TypeVar("R")


@dataclass(frozen=True, slots=True)
class Symbol:
    """One quantity of a formula: `meaning`, `unit`, the function's `parameter` (else the symbol).

    `low` and `high` are the sensible range in that unit, from which tests draw. With `strict` they
    are limits of use as well: the function refuses (OutOfRange) what lies outside.
    """

    meaning: str
    unit: str
    parameter: str = ""
    low: float | None = None
    high: float | None = None
    strict: bool = False


@dataclass(frozen=True)
class Formula:
    """A closed form: its text, its symbols, its source and the function that computes it."""

    name: str
    module: str
    text: str
    result: Symbol
    symbols: Mapping[str, Symbol]
    source: str
    function: Callable[..., Any] = field(repr=False)

    @cached_property
    def equation(self) -> Equation:
        """The text as a tree, parsed once."""
        return parsed(self.text)

    @cached_property
    def parameters(self) -> tuple[tuple[str, str], ...]:
        """(symbol, parameter of the function) in the order of the text's symbols."""
        return tuple((name, one.parameter or name) for name, one in self.symbols.items())

    @cached_property
    def signature(self) -> inspect.Signature:
        """The function's signature."""
        return inspect.signature(self.function)

    @property
    def title(self) -> str:
        """The function's name in words."""
        return self.name.replace("_", " ")


@dataclass(frozen=True, slots=True)
class Procedure:
    """What has no closed form: its name in words, its source, and its named steps."""

    name: str
    module: str
    steps: tuple[str, ...]
    source: str
    function: Callable[..., Any] = field(repr=False)


_formulas: dict[str, Formula] = {}
_procedures: dict[str, Procedure] = {}


def formula(
    text: str, *, result: Symbol, source: str, **symbols: Symbol
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Declare the function below as a formula with this equation.

    `text` is `symbol = expression`; each symbol on its right is declared by a keyword. Every
    parameter of the function belongs to one symbol. The function itself decides the value: that
    text and function agree is tested for every formula of the package.
    """

    def declare(function: Callable[P, R]) -> Callable[P, R]:
        one = Formula(
            name=function.__name__, module=function.__module__, text=text, result=result,
            symbols=symbols, source=source, function=function,
        )
        _formulas[f"{one.module}.{one.name}"] = one

        @wraps(function)
        def recorded(*args: P.args, **kwargs: P.kwargs) -> R:
            steps = open_working.get()
            if steps is None:
                return function(*args, **kwargs)
            value = function(*args, **kwargs)
            _add(steps, one, args, kwargs, value)
            return value

        return recorded

    return declare


def procedure(
    name: str, *, source: str, steps: tuple[str, ...]
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Declare the function below as a procedure with named steps; its formulas stand inside it."""

    def declare(function: Callable[P, R]) -> Callable[P, R]:
        one = Procedure(
            name=name, module=function.__module__, steps=steps, source=source, function=function
        )
        _procedures[f"{one.module}.{function.__name__}"] = one

        @wraps(function)
        def recorded(*args: P.args, **kwargs: P.kwargs) -> R:
            outer = open_working.get()
            if outer is None:
                return function(*args, **kwargs)
            inner: Working = []
            token = open_working.set(inner)
            try:
                return function(*args, **kwargs)
            finally:
                open_working.reset(token)
                outer.append(Block(procedure=one, steps=tuple(inner)))

        return recorded

    return declare


def _add(
    steps: Working, one: Formula, args: tuple[Any, ...], kwargs: Mapping[str, Any], value: Any
) -> None:
    bound = one.signature.bind(*args, **kwargs)
    bound.apply_defaults()
    inputs = {name: bound.arguments[parameter] for name, parameter in one.parameters}
    if all(_is_scalar(number) for number in (*inputs.values(), value)):
        plain = {name: float(number) for name, number in inputs.items()}
        steps.append(Step(formula=one, inputs=plain, result=float(value)))


def _is_scalar(number: object) -> bool:
    return not getattr(number, "shape", ())


def bare(function: Callable[P, R]) -> Callable[P, R]:
    """The function without its recorder: for the inside of an iteration."""
    inner: Callable[P, R] = getattr(function, "__wrapped__", function)
    return inner


def remembered(function: Callable[P, R]) -> Callable[P, R]:
    """The pure function with its results remembered by its (hashable) arguments.

    Under a recorder it is computed anew, so that its steps stand in the working.
    """
    kept = lru_cache(maxsize=1024)(function)

    @wraps(function)
    def remembering(*args: P.args, **kwargs: P.kwargs) -> R:
        if open_working.get() is not None:
            return function(*args, **kwargs)
        return kept(*args, **kwargs)  # type: ignore[arg-type]  # it says what it hashes

    return remembering


def equation_of(function: Callable[..., Any]) -> Formula:
    """The declaration of a formula's function. Raises KeyError where it is none."""
    return _formulas[f"{function.__module__}.{function.__name__}"]


def all_formulas() -> tuple[Formula, ...]:
    """Every formula of the modules imported so far, in the order of their names."""
    return tuple(_formulas[name] for name in sorted(_formulas))


def all_procedures() -> tuple[Procedure, ...]:
    """Every procedure of the modules imported so far, in the order of their names."""
    return tuple(_procedures[name] for name in sorted(_procedures))
