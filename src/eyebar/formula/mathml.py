"""Equations as MathML, for pages."""

from html import escape

from eyebar.formula.declared import Formula
from eyebar.formula.plain import plain
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

MINUS = "\u2212"
_OPERATORS = {"+": "+", "-": MINUS, "*": "\u22c5"}


def mathml(thing: Formula | Step, digits: int = 4) -> str:
    """A `math` element: a formula in symbols, or a step with its numbers and its result."""
    written = to_write(thing, digits)
    body = f"{_symbol(written.left)}<mo>=</mo>{_row(written.right)}"
    if written.result is not None:
        body += f"<mo>=</mo>{_row(written.result)}"
    spoken = escape(plain(thing, digits), quote=True)
    return f'<math display="block" alttext="{spoken}"><mrow>{body}</mrow></math>'


def mathml_symbol(name: str) -> str:
    """A `math` element with a symbol by itself."""
    return f"<math>{_symbol(name)}</math>"


def _symbol(name: str) -> str:
    stem, below = spelt(name)
    letter = f"<mi>{escape(stem)}</mi>"
    return f"<msub>{letter}<mtext>{escape(below)}</mtext></msub>" if below else letter


def _group(node: Node, least: int) -> str:
    row = f"<mrow>{_row(node)}</mrow>"
    # A fraction and a root hold together by their own lines.
    if tightness(node) >= least or (isinstance(node, Binary) and node.operator == "/"
                                    and least <= PRODUCT + 1):
        return row
    return f"<mrow><mo>(</mo>{row}<mo>)</mo></mrow>"


def _behind(operator: str, node: Node, mine: int) -> str:
    if is_signed(node):
        return f"<mrow><mo>(</mo>{_row(node)}<mo>)</mo></mrow>"
    return _group(node, mine + 1 if operator == "-" else mine)


def _row(node: Node) -> str:
    match node:
        case Number(_, text, word):
            number = f"<mn>{escape(text.replace('-', MINUS))}</mn>"
            space = '<mspace width="0.2em"/>'
            return f"{number}{space}<mtext>{escape(raised(word))}</mtext>" if word else number
        case Pi():
            return "<mi>π</mi>"
        case Name(name):
            return _symbol(name)
        case Negative(term):
            return f"<mo>{MINUS}</mo>{_group(term, SIGN)}"
        case Binary("/", left, right):
            return f"<mfrac><mrow>{_row(left)}</mrow><mrow>{_row(right)}</mrow></mfrac>"
        case Binary("**", left, right):
            return f"<msup>{_group(left, POWER + 1)}<mrow>{_row(right)}</mrow></msup>"
        case Binary(operator, left, right):
            mine = SUM if operator in "+-" else PRODUCT
            sign = f"<mo>{_OPERATORS[operator]}</mo>"
            return f"{_group(left, mine)}{sign}{_behind(operator, right, mine)}"
        case Call("sqrt", terms):
            return f"<msqrt>{_row(terms[0])}</msqrt>"
        case Call("abs", terms):
            return f"<mo>|</mo>{_row(terms[0])}<mo>|</mo>"
        case Call(function, terms):
            inner = "<mo>,</mo>".join(f"<mrow>{_row(term)}</mrow>" for term in terms)
            return f"<mi>{function}</mi><mo>(</mo>{inner}<mo>)</mo>"
        case Either(_, _, _):
            return _choice(node)


def _choice(node: Either) -> str:
    chosen, last = branches(node)
    rows = [
        f"<mtr><mtd>{_row(term)}</mtd><mtd><mtext>if </mtext>{_compared(condition)}</mtd></mtr>"
        for term, condition in chosen
    ]
    rows.append(f"<mtr><mtd>{_row(last)}</mtd><mtd><mtext>else</mtext></mtd></mtr>")
    return f'<mo>{{</mo><mtable columnalign="left">{"".join(rows)}</mtable>'


def _compared(condition: Comparison) -> str:
    sign = escape(COMPARED[condition.operator])
    return f"{_row(condition.left)}<mo>{sign}</mo>{_row(condition.right)}"
