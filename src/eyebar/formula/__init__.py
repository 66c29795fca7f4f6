"""Formulas that keep their own equation, procedures that keep their steps, and their working.

    @formula(
        "I = min(50 ft / (L + 125 ft), 0.30)",
        result=Symbol("impact fraction", "1"),
        L=Symbol("loaded length", "ft", "loaded_length_ft", low=0.0, high=400.0),
        source="Standard Specifications 3.8.2, from memory",
    )
    def impact_fraction(loaded_length_ft: float) -> float:
        \"\"\"Impact on a part [1] from its loaded length [ft].

        Scalars. Limits: lengths of 0 and more.
        \"\"\"
        return min(50.0 / (loaded_length_ft + 125.0), 0.30)

Tests that run over every formula of the package: the text, evaluated by SymPy, gives what the code
gives; its dimensions agree; `strict` limits are refused outside; its docstring names the result's
unit in brackets, says `Scalars` or `arrays`, and has `Limits:`. A procedure's docstring does too.

Inside `with recording() as steps:` every formula adds a Step, every procedure a Block, `note` a
Note. With nobody recording a formula costs a tenth of a microsecond more than the bare function.
"""

from eyebar.formula.declared import (
    Formula,
    Procedure,
    Symbol,
    all_formulas,
    all_procedures,
    bare,
    equation_of,
    formula,
    procedure,
    remembered,
)
from eyebar.formula.mathml import mathml, mathml_symbol
from eyebar.formula.plain import plain
from eyebar.formula.spelling import significant
from eyebar.formula.typst import typst, typst_symbol
from eyebar.formula.working import (
    Block,
    Entry,
    Note,
    Step,
    Working,
    distinct,
    flat,
    note,
    recording,
)

__all__ = [
    "Block", "Entry", "Formula", "Note", "Procedure", "Step", "Symbol", "Working", "all_formulas",
    "all_procedures", "bare", "distinct", "equation_of", "flat", "formula", "mathml",
    "mathml_symbol", "note", "plain", "procedure", "recording", "remembered", "significant",
    "typst", "typst_symbol",
]
