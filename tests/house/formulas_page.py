"""Writes docs/formulas.md from the formulas themselves: python -m tests.house.formulas_page."""

import importlib
import pkgutil
from collections.abc import Iterator
from itertools import groupby
from pathlib import Path

import eyebar
from eyebar.formula import Formula, Procedure, Symbol, all_formulas, all_procedures, plain

PAGE = Path(__file__).parents[2] / "docs" / "formulas.md"

OPENING = """# Formulas and procedures

Every formula of the program with its symbols, its units and its source, and every procedure with
its steps. The page is written from the formulas themselves; tests hold each text to its code, in
value and in dimension.
"""


def import_everything() -> None:
    """Import every module of the package, so that every formula is declared."""
    for module in pkgutil.walk_packages(eyebar.__path__, "eyebar."):
        if not module.name.endswith("__main__"):
            importlib.import_module(module.name)


def room(one: Formula | Procedure) -> str:
    """The room that a formula or a procedure stands in."""
    return one.module.split(".")[1]


def unit(symbol: Symbol) -> str:
    """A symbol's unit in words."""
    return "a number" if symbol.unit == "1" else symbol.unit


def formula_section(one: Formula) -> str:
    """One formula: equation, result, symbols, source."""
    lines = [f"**{one.title}**, {one.result.meaning} [{unit(one.result)}]", ""]
    lines += [f"    {plain(one)}", ""]
    lines += [f"- `{name}`: {it.meaning} [{unit(it)}]" for name, it in one.symbols.items()]
    return "\n".join([*lines, f"- Source: {one.source}", ""])


def procedure_section(one: Procedure) -> str:
    """One procedure: its steps and its source."""
    steps = [f"{number}. {step}" for number, step in enumerate(one.steps, start=1)]
    return "\n".join([f"**{one.name}** (procedure)", "", *steps, "", f"Source: {one.source}", ""])


def chapters() -> Iterator[str]:
    """One chapter for each room that has formulas or procedures."""
    import_everything()
    everything: list[Formula | Procedure] = [
        one for one in (*all_formulas(), *all_procedures()) if one.module.startswith("eyebar.")
    ]
    for name, ones in groupby(sorted(everything, key=room), key=room):
        yield f"## {name}\n"
        for one in ones:
            yield formula_section(one) if isinstance(one, Formula) else procedure_section(one)


def page() -> str:
    """The whole page."""
    return "\n".join([OPENING, *chapters()])


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
