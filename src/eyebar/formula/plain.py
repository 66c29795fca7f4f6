"""Equations as one line of plain text, for terminals and for text that is read aloud."""

from eyebar.formula.declared import Formula
from eyebar.formula.spelling import (
    COMPARED,
    POWER,
    PRODUCT,
    SIGN,
    SUM,
    branches,
    is_signed,
    spelt,
    tightness,
    to_write,
)
from eyebar.formula.tree import Binary, Call, Comparison, Either, Name, Negative, Node, Number, Pi
from eyebar.formula.working import Step

_WORDS = {"+": " + ", "-": " - ", "*": " \u00d7 ", "/": " / "}


def plain(thing: Formula | Step, digits: int = 4) -> str:
    """A formula in symbols (`F_a = F_y / n`), or a step with its numbers and its result."""
    written = to_write(thing, digits)
    text = f"{_symbol(written.left)} = {_line(written.right)}"
    return text if written.result is None else f"{text} = {_line(written.result)}"


def _symbol(name: str) -> str:
    stem, below = spelt(name)
    return f"{stem}_{below.replace(', ', '_')}" if below else stem


def _within(node: Node, least: int) -> str:
    text = _line(node)
    return text if tightness(node) >= least else f"({text})"


def _line(node: Node) -> str:
    match node:
        case Number(_, text, word):
            return f"{text} {word}" if word else text
        case Pi():
            return "π"
        case Name(name):
            return _symbol(name)
        case Negative(term):
            return f"-{_within(term, SIGN)}"
        case Binary("**", left, right):
            return f"{_within(left, POWER + 1)}^{_within(right, POWER + 1)}"
        case Binary(operator, left, right):
            mine = SUM if operator in "+-" else PRODUCT
            return f"{_within(left, mine)}{_WORDS[operator]}{_behind(operator, right, mine)}"
        case Call(function, terms):
            return f"{function}({', '.join(_line(term) for term in terms)})"
        case Either(_, _, _):
            chosen, last = branches(node)
            pieces = [f"{_line(term)} if {_compared(condition)}" for term, condition in chosen]
            return f"{'; '.join(pieces)}; else {_line(last)}"


def _behind(operator: str, node: Node, mine: int) -> str:
    # A number and its unit are read together behind a stroke: `26 ksi / 27900 ksi`.
    if isinstance(node, Number) and not is_signed(node):
        return _line(node)
    least = mine if operator in "+*" else mine + 1
    return f"({_line(node)})" if is_signed(node) else _within(node, least)


def _compared(condition: Comparison) -> str:
    return f"{_line(condition.left)} {COMPARED[condition.operator]} {_line(condition.right)}"
