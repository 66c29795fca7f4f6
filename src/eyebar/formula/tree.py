"""The small tree that an equation's text is parsed into, once.

Grammar: Python's expressions, with `min`, `max`, `sqrt` and the functions of `FUNCTIONS`, the
constant `pi`, `a if condition else b`, and numbers that may carry a unit (`50 ft`, `0.2 kip/ft`).
"""

import ast
import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from eyebar.formula.dimensions import UNIT_WORD, unit

FUNCTIONS: dict[str, Callable[..., float]] = {
    "min": min, "max": max, "abs": abs, "sqrt": math.sqrt, "exp": math.exp, "log": math.log,
    "sin": math.sin, "cos": math.cos, "tan": math.tan, "sinh": math.sinh, "cosh": math.cosh,
    "tanh": math.tanh, "asin": math.asin, "acos": math.acos, "atan": math.atan,
    "floor": math.floor, "ceil": math.ceil,
}
"""The functions an equation may call."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written, with its unit (empty for a plain number)."""

    value: float
    text: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Pi:
    """The constant."""


@dataclass(frozen=True, slots=True)
class Name:
    """A symbol."""

    name: str


@dataclass(frozen=True, slots=True)
class Negative:
    """The negative of a term."""

    term: "Node"


@dataclass(frozen=True, slots=True)
class Binary:
    """Two terms joined by `+`, `-`, `*`, `/` or `**`."""

    operator: str
    left: "Node"
    right: "Node"


@dataclass(frozen=True, slots=True)
class Call:
    """A function of terms."""

    function: str
    terms: tuple["Node", ...]


@dataclass(frozen=True, slots=True)
class Comparison:
    """`left < right` and its like."""

    operator: str
    left: "Node"
    right: "Node"


@dataclass(frozen=True, slots=True)
class Either:
    """`yes if condition else no`."""

    condition: Comparison
    yes: "Node"
    no: "Node"


Node = Number | Pi | Name | Negative | Binary | Call | Either


@dataclass(frozen=True, slots=True)
class Equation:
    """`left = right`."""

    left: str
    right: Node


_UNIT = rf"{UNIT_WORD}\d?"
_MEASURED = re.compile(
    rf"(?<![\w.])(\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+)\s+({_UNIT}(?:[*/]{_UNIT})*)(?![\w(])"
)
_OPERATORS: dict[type[ast.operator], str] = {
    ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**",
}
_COMPARISONS: dict[type[ast.cmpop], str] = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=",
}


def parsed(text: str) -> Equation:
    """The equation that `text` states, `left = right`.

    Raises ValueError on what the grammar does not know.
    """
    left, sign, right = text.partition("=")
    if not sign or not left.strip().isidentifier():
        raise ValueError(f"an equation reads 'symbol = expression', not {text!r}")
    source = _MEASURED.sub(r"_measured(\1, '\2')", right.strip())
    return Equation(left.strip(), _node(ast.parse(source, mode="eval").body, source))


def _node(tree: ast.expr, source: str) -> Node:
    match tree:
        case ast.Constant(value=int() | float() as value):
            return Number(float(value), ast.get_source_segment(source, tree) or repr(value))
        case ast.Name(id="pi"):
            return Pi()
        case ast.Name(id=name):
            return Name(name)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return Negative(_node(operand, source))
        case ast.BinOp(left=left, op=operator, right=right) if type(operator) in _OPERATORS:
            word = _OPERATORS[type(operator)]
            return Binary(word, _node(left, source), _node(right, source))
        case ast.IfExp(test=test, body=yes, orelse=no):
            return Either(_comparison(test, source), _node(yes, source), _node(no, source))
        case ast.Call(func=ast.Name(id="_measured"), args=[number, ast.Constant(value=word)]):
            written = ast.get_source_segment(source, number) or ""
            return Number(float(written), written, str(word))
        case ast.Call(func=ast.Name(id=name), args=terms) if name in FUNCTIONS:
            return Call(name, tuple(_node(term, source) for term in terms))
    raise ValueError(f"not in the grammar of equations: {ast.unparse(tree)!r}")


def _comparison(tree: ast.expr, source: str) -> Comparison:
    match tree:
        case ast.Compare(left=left, ops=[operator], comparators=[right]) if (
            type(operator) in _COMPARISONS
        ):
            word = _COMPARISONS[type(operator)]
            return Comparison(word, _node(left, source), _node(right, source))
    raise ValueError(f"a condition compares two terms, not {ast.unparse(tree)!r}")


def names(node: Node | Comparison) -> frozenset[str]:
    """The symbols that stand in a tree."""
    match node:
        case Name(name):
            return frozenset((name,))
        case Negative(term):
            return names(term)
        case Binary(_, left, right) | Comparison(_, left, right):
            return names(left) | names(right)
        case Call(_, terms):
            return frozenset().union(*(names(term) for term in terms))
        case Either(condition, yes, no):
            return names(condition) | names(yes) | names(no)
        case _:
            return frozenset()


def evaluated(node: Node, values: Mapping[str, float]) -> float:
    """The tree's value, from `values` in kip, inch, second and dollar; the result likewise."""
    match node:
        case Number(value, _, word):
            return value * unit(word or "1")[1]
        case Pi():
            return math.pi
        case Name(name):
            return values[name]
        case Negative(term):
            return -evaluated(term, values)
        case Call(function, terms):
            return FUNCTIONS[function](*(evaluated(term, values) for term in terms))
        case Either(condition, yes, no):
            return evaluated(yes if holds(condition, values) else no, values)
        case Binary(operator, left, right):
            return _joined(operator, evaluated(left, values), evaluated(right, values))


def holds(condition: Comparison, values: Mapping[str, float]) -> bool:
    """Whether the comparison is true for `values` [base units]."""
    left, right = evaluated(condition.left, values), evaluated(condition.right, values)
    return {
        "<": left < right, "<=": left <= right, ">": left > right, ">=": left >= right,
    }[condition.operator]


def _joined(operator: str, left: float, right: float) -> float:
    if operator == "+":
        return left + right
    if operator == "-":
        return left - right
    if operator == "*":
        return left * right
    if operator == "/":
        return left / right
    return float(left**right)
