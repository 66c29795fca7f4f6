"""What the three written forms of an equation share: the spelling of symbols, numbers, brackets."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from unicodedata import lookup

from eyebar.formula.declared import Formula
from eyebar.formula.dimensions import unit
from eyebar.formula.tree import (
    Binary,
    Call,
    Comparison,
    Either,
    Name,
    Negative,
    Node,
    Number,
    holds,
)
from eyebar.formula.working import Step

_SMALL = (
    "alpha", "beta", "gamma", "delta", "epsilon", "eta", "theta", "kappa", "lamda", "mu", "nu",
    "xi", "rho", "sigma", "tau", "phi", "psi", "omega",
)
_CAPITAL = ("Delta", "Sigma", "Phi", "Omega")

GREEK = {name: lookup(f"GREEK SMALL LETTER {name}") for name in _SMALL} | {
    name: lookup(f"GREEK CAPITAL LETTER {name}") for name in _CAPITAL
}
"""Names that are written as Greek letters (`lambda` is a Python keyword, hence `lamda`)."""

SUM, PRODUCT, SIGN, POWER, ATOM = 1, 2, 3, 4, 5
"""How tightly a term holds together; what is looser than its place needs brackets."""

_TIGHTNESS = {"+": SUM, "-": SUM, "*": PRODUCT, "/": PRODUCT, "**": POWER}


def tightness(node: Node) -> int:
    """How tightly the term holds together when written on one line."""
    match node:
        case Binary(operator, _, _):
            return _TIGHTNESS[operator]
        case Negative(_):
            return SIGN
        case Number(_, _, word) if word or is_signed(node):
            return PRODUCT if word else SIGN
        case Either(_, _, _):
            return 0
        case _:
            return ATOM


def is_signed(node: Node) -> bool:
    """Whether the term begins with a minus: behind an operator it needs brackets."""
    match node:
        case Negative(_):
            return True
        case Number(_, text, _):
            return text.startswith("-")
        case Binary("*" | "/", left, _):
            return is_signed(left)
        case _:
            return False


def spelt(name: str) -> tuple[str, str]:
    """A symbol's stem and its subscript, Greek names as letters."""
    stem, _, below = name.partition("_")
    below = ", ".join(GREEK.get(piece, piece) for piece in below.split("_") if piece)
    return GREEK.get(stem, stem), below


_RAISED = str.maketrans({
    str(digit): lookup(f"SUPERSCRIPT {word}")
    for digit, word in enumerate(("ZERO", "ONE", "TWO", "THREE", "FOUR"))
})


def raised(word: str) -> str:
    """A unit as it is typeset: `in4` with a raised 4."""
    return word if word == "1" or word.startswith("1/") else word.translate(_RAISED)


def significant(value: float, digits: int = 4) -> str:
    """A number to so many significant digits, its whole digits always kept: `27900`, `0.00053`."""
    if not math.isfinite(value):
        return "∞" if value > 0 else "-∞" if value < 0 else "not a number"
    if value == 0:
        return "0"
    magnitude = math.floor(math.log10(abs(value)))
    if magnitude < -6 or magnitude > 9:
        return f"{value:.{digits - 1}e}"
    places = max(digits - 1 - magnitude, 0)
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def with_numbers(step: Step, digits: int = 4) -> Node:
    """The right side with the step's numbers put in, of a choice only the branch that was taken."""
    units = step.formula.symbols
    base = {name: value * unit(units[name].unit)[1] for name, value in step.inputs.items()}

    def put(node: Node) -> Node:
        match node:
            case Name(name):
                value, word = step.inputs[name], units[name].unit
                return Number(value, significant(value, digits), "" if word == "1" else word)
            case Negative(term):
                return Negative(put(term))
            case Binary(operator, left, right):
                return Binary(operator, put(left), put(right))
            case Call(function, terms):
                return Call(function, tuple(put(term) for term in terms))
            case Either(condition, yes, no):
                return put(yes if holds(condition, base) else no)
            case _:
                return node

    return put(step.formula.equation.right)


@dataclass(frozen=True, slots=True)
class Written:
    """What a written form starts from: the left symbol, the right side, and a result or none."""

    left: str
    right: Node
    result: Number | None


def to_write(thing: Formula | Step, digits: int) -> Written:
    """A formula in symbols, or a step with its numbers put in and its result."""
    if isinstance(thing, Formula):
        return Written(thing.equation.left, thing.equation.right, None)
    word = thing.formula.result.unit
    result = Number(thing.result, significant(thing.result, digits), "" if word == "1" else word)
    return Written(thing.formula.equation.left, with_numbers(thing, digits), result)


def branches(node: Either) -> tuple[tuple[tuple[Node, Comparison], ...], Node]:
    """The branches of a (nested) choice in order, each with its condition, and the last one."""
    found: list[tuple[Node, Comparison]] = [(node.yes, node.condition)]
    rest = node.no
    while isinstance(rest, Either):
        found.append((rest.yes, rest.condition))
        rest = rest.no
    return tuple(found), rest


COMPARED: Mapping[str, str] = {"<": "<", "<=": "≤", ">": ">", ">=": "≥"}
"""How a comparison is written."""
