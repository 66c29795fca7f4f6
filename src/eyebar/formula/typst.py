"""Equations as typst mathematics (the inside of `$ ... $`), for the report."""

from eyebar.formula.declared import Formula
from eyebar.formula.spelling import (
    COMPARED,
    POWER,
    PRODUCT,
    SIGN,
    SUM,
    branches,
    is_signed,
    raised,
    spelt,
    tightness,
    to_write,
)
from eyebar.formula.tree import Binary, Call, Comparison, Either, Name, Negative, Node, Number, Pi
from eyebar.formula.working import Step

_OPERATORS = {"+": "+", "-": "-", "*": "dot.op"}
_UPRIGHT = {"asin": "arcsin", "acos": "arccos", "atan": "arctan", "log": "ln"}


def typst(thing: Formula | Step, digits: int = 4) -> str:
    """A formula in symbols, or a step with its numbers and its result."""
    written = to_write(thing, digits)
    body = f"{_symbol(written.left)} = {_line(written.right)}"
    return body if written.result is None else f"{body} = {_line(written.result)}"


def _symbol(name: str) -> str:
    stem, below = spelt(name)
    letter = stem if len(stem) == 1 else f'"{stem}"'
    if not below:
        return letter
    return f"{letter}_{below}" if len(below) == 1 and below.isalnum() else f'{letter}_"{below}"'


def typst_symbol(name: str) -> str:
    """A symbol by itself."""
    return _symbol(name)


def _number(text: str) -> str:
    """A number as mathematics: a power of ten raised, what is not finite by its sign."""
    digits, marked, power = text.partition("e")
    if marked and power.lstrip("+-").isdigit():
        return f"{digits} times 10^({int(power)})"
    return {"∞": "oo", "-∞": "-oo", "not a number": '"not a number"'}.get(text, text)


def _within(node: Node, least: int) -> str:
    text = _line(node)
    if isinstance(node, Number) and " times 10^" in text and least > PRODUCT:
        return f"({text})"
    if tightness(node) >= least or (isinstance(node, Binary) and node.operator == "/"
                                    and least <= PRODUCT + 1):
        return text
    return f"({text})"


def _behind(operator: str, node: Node, mine: int) -> str:
    if is_signed(node):
        return f"({_line(node)})"
    return _within(node, mine + 1 if operator == "-" else mine)


def _line(node: Node) -> str:
    match node:
        case Number(_, text, word):
            shown = _number(text)
            return f'{shown} thin "{raised(word)}"' if word else shown
        case Pi():
            return "pi"
        case Name(name):
            return _symbol(name)
        case Negative(term):
            return f"-{_within(term, SIGN)}"
        case Binary("/", left, right):
            return f"frac({_line(left)}, {_line(right)})"
        case Binary("**", left, right):
            return f"{_within(left, POWER + 1)}^({_line(right)})"
        case Binary(operator, left, right):
            mine = SUM if operator in "+-" else PRODUCT
            return f"{_within(left, mine)} {_OPERATORS[operator]} {_behind(operator, right, mine)}"
        case Call("sqrt" | "abs" as function, terms):
            return f"{function}({_line(terms[0])})"
        case Call(function, terms):
            word = _UPRIGHT.get(function, function)
            return f"{word}({', '.join(_line(term) for term in terms)})"
        case Either(_, _, _):
            return _choice(node)


def _choice(node: Either) -> str:
    chosen, last = branches(node)
    rows = [f'{_line(term)} &"if" {_compared(condition)}' for term, condition in chosen]
    rows.append(f'{_line(last)} &"else"')
    return f"cases({', '.join(rows)})"


def _compared(condition: Comparison) -> str:
    return f"{_line(condition.left)} {COMPARED[condition.operator]} {_line(condition.right)}"
