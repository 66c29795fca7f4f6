"""The working of a part as blocks of a report: symbols, numbers, result, unit, source."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from eyebar.formula import (
    Formula,
    Step,
    all_formulas,
    mathml,
    mathml_symbol,
    plain,
    significant,
    typst,
    typst_symbol,
)
from eyebar.formula.spelling import raised, spelt
from eyebar.views import report_words, words
from eyebar.views.blocks import Block, Equation, Paragraph, Points, Said, Section
from eyebar.views.columns import Document


@dataclass(frozen=True, slots=True, kw_only=True)
class Notation:
    """How mathematics is written: a formula or a step, and a symbol by itself."""

    equation: Callable[[Formula | Step], str]
    symbol: Callable[[str], str]


IN_TYPST = Notation(equation=typst, symbol=typst_symbol)
IN_MATHML = Notation(equation=mathml, symbol=mathml_symbol)


def working_section(
    explain: Document, *, rank: int = 2, notation: Notation = IN_TYPST
) -> Section:
    """The working of one `explain` document."""
    rating = explain["rating"]
    standing = words.standing(rating["method"], rating["level"])
    said = (words.answer(rating), report_words.path(rating), report_words.plain_formula(rating))
    blocks: list[Block] = [
        Paragraph(text=f"{rating['vehicle']}, by {standing}.", tone="strong"),
        Paragraph(text=" ".join(filter(None, said))),
    ]
    notes = (*explain["remarks"], *explain["readings"])
    if notes:
        blocks.append(Points(points=notes))
    blocks += _Steps(notation).blocks(explain["steps"], 0)
    return Section(
        heading=f"{explain['part']}, {explain['kind']}", blocks=tuple(blocks), rank=rank
    )


class _Steps:
    """Steps made into blocks; what was said once with the same numbers is not said again."""

    def __init__(self, notation: Notation) -> None:
        self.notation = notation
        self.known = {f"{one.module}.{one.name}": one for one in all_formulas()}
        self.said: set[tuple[str, str]] = set()
        self.explained: set[str] = set()

    def blocks(self, steps: list[Document], depth: int) -> Iterator[Block]:
        """The blocks of some steps, procedures opened up. Where one formula comes several times
        running, its title and source stand over the first."""
        running = ""
        for step in steps:
            if self._was_said(step):
                continue
            if step["entry"] == "procedure":
                yield Said(text=step["title"], source=step["source"], depth=depth)
                yield from self.blocks(step["steps"], depth + 1)
            elif step["entry"] == "note":
                yield Said(text=_note(step), depth=depth)
            else:
                one = self._equation(step, depth)
                again = step["formula"] == running
                yield replace(one, title="", source="") if again else one
            running = step.get("formula", "")

    def _was_said(self, step: Document) -> bool:
        """Whether a formula with the same numbers, or a procedure with the same steps, was said."""
        if step["entry"] == "note":
            return False
        about = (
            (step["title"], repr(step["steps"])) if step["entry"] == "procedure"
            else (step["equation"], step["with_numbers"])
        )
        before = about in self.said
        self.said.add(about)
        return before

    def _equation(self, step: Document, depth: int) -> Equation:
        formula = self.known[step["formula"]]
        first = step["formula"] not in self.explained
        self.explained.add(step["formula"])
        inputs = {name: symbol["value"] for name, symbol in step["symbols"].items()}
        with_numbers = Step(formula=formula, inputs=inputs, result=step["result"])
        return Equation(
            title=step["title"], symbols=self.notation.equation(formula) if first else "",
            symbols_said=plain(formula) if first else "",
            numbers=self.notation.equation(with_numbers), numbers_said=plain(with_numbers),
            meanings=self._meanings(formula) if first else (), source=step["source"], depth=depth,
        )

    def _meanings(self, formula: Formula) -> tuple[tuple[str, str, str], ...]:
        """Each symbol as mathematics and as it is read, and what it means with its unit."""
        return tuple(
            (
                self.notation.symbol(name), "_".join(filter(None, spelt(name))),
                symbol.meaning + ("" if symbol.unit == "1" else f", {raised(symbol.unit)}"),
            )
            for name, symbol in formula.symbols.items()
        )


def _note(step: Document) -> str:
    unit = "" if step["unit"] == "1" else f" {raised(step['unit'])}"
    symbol = f"{step['symbol']} = " if step["symbol"] else ""
    return f"{step['text']}: {symbol}{significant(step['value'])}{unit}"
