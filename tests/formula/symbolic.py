"""The other road to an equation's value, by SymPy, and an algebra of its dimensions."""

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

import mpmath
import sympy

from eyebar.formula import Formula
from eyebar.formula.dimensions import NUMBER, Dimension, unit
from eyebar.formula.tree import (
    Binary,
    Call,
    Comparison,
    Either,
    Name,
    Negative,
    Node,
    Number,
    Pi,
)

_FUNCTIONS: dict[str, Any] = {
    "min": sympy.Min, "max": sympy.Max, "abs": sympy.Abs, "sqrt": sympy.sqrt, "exp": sympy.exp,
    "log": sympy.log, "sin": sympy.sin, "cos": sympy.cos, "tan": sympy.tan, "sinh": sympy.sinh,
    "cosh": sympy.cosh, "tanh": sympy.tanh, "asin": sympy.asin, "acos": sympy.acos,
    "atan": sympy.atan, "floor": sympy.floor, "ceil": sympy.ceiling,
}
_RELATIONS: dict[str, Any] = {"<": sympy.Lt, "<=": sympy.Le, ">": sympy.Gt, ">=": sympy.Ge}
_SAME_DIMENSION = {"min", "max", "abs", "floor", "ceil"}


def expression(node: Node | Comparison) -> Any:
    """The tree as a SymPy expression in kip, inch, second and dollar."""
    match node:
        case Number(_, text, word):
            return sympy.Rational(text) * sympy.Float(unit(word or "1")[1], 30)
        case Pi():
            return sympy.pi
        case Name(name):
            return sympy.Symbol(name, real=True)
        case Negative(term):
            return -expression(term)
        case Call(function, terms):
            return _FUNCTIONS[function](*(expression(term) for term in terms))
        case Comparison(operator, left, right):
            return _RELATIONS[operator](expression(left), expression(right))
        case Either(condition, yes, no):
            return sympy.Piecewise(
                (expression(yes), expression(condition)), (expression(no), True)
            )
        case Binary(operator, left, right):
            return _joined(operator, expression(left), expression(right))


def _joined(operator: str, left: Any, right: Any) -> Any:
    if operator == "+":
        return left + right
    if operator == "-":
        return left - right
    if operator == "*":
        return left * right
    return left / right if operator == "/" else left**right


def computed_by_sympy(one: Formula) -> Callable[[Mapping[str, float]], float]:
    """What the formula's text says for inputs (in declared units), in the result's unit.

    SymPy writes its expression once as a function of the symbols, which counts with 30 digits.
    """
    symbols = [sympy.Symbol(name, real=True) for name in one.symbols]
    said = sympy.lambdify(symbols, expression(one.equation.right), modules="mpmath")
    units = {name: unit(symbol.unit)[1] for name, symbol in one.symbols.items()}

    def value(inputs: Mapping[str, float]) -> float:
        with mpmath.workdps(30):
            numbers = (mpmath.mpf(inputs[name]) * mpmath.mpf(size) for name, size in units.items())
            return float(said(*numbers) / mpmath.mpf(unit(one.result.unit)[1]))

    return value


class NotHomogeneous(Exception):
    """Terms of different dimensions were joined."""


def dimension(one: Formula) -> Dimension | None:
    """The dimension of the formula's right side; None where it is nought and so of any."""
    units = {name: unit(symbol.unit)[0] for name, symbol in one.symbols.items()}
    return _dimension(one.equation.right, units)


def _dimension(node: Node, units: Mapping[str, Dimension]) -> Dimension | None:
    match node:
        case Number(value, _, word):
            return unit(word)[0] if word else (NUMBER if value else None)
        case Pi():
            return NUMBER
        case Name(name):
            return units[name]
        case Negative(term):
            return _dimension(term, units)
        case Either(condition, yes, no):
            _alike(_dimension(condition.left, units), _dimension(condition.right, units))
            return _alike(_dimension(yes, units), _dimension(no, units))
        case Call(function, terms):
            return _of_call(function, [_dimension(term, units) for term in terms])
        case Binary("**", left, right):
            return _of_power(_dimension(left, units), right, units)
        case Binary(operator, left, right):
            one, other = _dimension(left, units), _dimension(right, units)
            if operator in "+-":
                return _alike(one, other)
            one, other = one or NUMBER, other or NUMBER
            return one * other if operator == "*" else one / other


def _alike(one: Dimension | None, other: Dimension | None) -> Dimension | None:
    if one is not None and other is not None and one != other:
        raise NotHomogeneous(f"{one} with {other}")
    return other if one is None else one


def _of_call(function: str, terms: list[Dimension | None]) -> Dimension | None:
    if function == "sqrt":
        return None if terms[0] is None else terms[0] ** Fraction(1, 2)
    if function in _SAME_DIMENSION:
        found = terms[0]
        for term in terms[1:]:
            found = _alike(found, term)
        return found
    for term in terms:
        _alike(term, NUMBER)
    return NUMBER


def _of_power(
    base: Dimension | None, exponent: Node, units: Mapping[str, Dimension]
) -> Dimension | None:
    _alike(_dimension(exponent, units), NUMBER)
    if base is None or base == NUMBER:
        return NUMBER
    return base ** _rational(exponent)


def _rational(node: Node) -> Fraction:
    match node:
        case Number(_, text, ""):
            return Fraction(text)
        case Negative(term):
            return -_rational(term)
        case Binary("/", left, right):
            return _rational(left) / _rational(right)
    raise NotHomogeneous("a quantity with a unit is raised to a power that is no plain number")
