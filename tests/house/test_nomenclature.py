"""docs/nomenclature.md says what the program says."""

import re
from collections import defaultdict
from enum import StrEnum

import pytest

from eyebar.addresses import address, place_on_part
from eyebar.formula import all_formulas
from eyebar.record.words import What
from eyebar.terms import Form, Kind, Level, Method
from tests.house.formulas_page import import_everything
from tests.house.tracked import ROOT

TEXT = (ROOT / "docs" / "nomenclature.md").read_text(encoding="utf-8")

QUANTITIES = {
    name: (symbol.strip(), unit.strip())
    for name, symbol, unit in re.findall(r"^\| `(\w+)` \|([^|]+)\|([^|]+)\|", TEXT, re.MULTILINE)
}


def chapter(heading: str) -> str:
    """The text under one heading."""
    return TEXT.split(f"## {heading}\n")[1].split("\n## ")[0]


@pytest.mark.parametrize(
    ("heading", "opening", "words"),
    [
        ("Kinds", "", Kind),
        ("Forms", "", Form),
        ("Readings", "never what is lost:", What),
        ("Methods and levels", "Methods:", Method),
        ("Methods and levels", "Levels:", Level),
    ],
)
def test_a_closed_list_is_complete(heading: str, opening: str, words: type[StrEnum]) -> None:
    listed = chapter(heading).partition(opening)[2] if opening else chapter(heading)
    assert re.findall(r"`([^`]+)`", listed.lstrip().split("\n\n")[0]) == [str(one) for one in words]


def test_a_quantity_has_one_symbol_and_one_unit_in_every_formula() -> None:
    import_everything()
    assert QUANTITIES
    wrong = [
        f"{one.name}: {parameter} is {symbol} [{one.symbols[symbol].unit}]"
        for one in all_formulas()
        for symbol, parameter in one.parameters
        if (symbol, one.symbols[symbol].unit) != QUANTITIES.get(parameter, (symbol, ""))
        and parameter in QUANTITIES
    ]
    assert not wrong, "\n".join(wrong)


def test_a_parameter_of_one_name_has_one_unit_throughout() -> None:
    import_everything()
    units: dict[str, set[str]] = defaultdict(set)
    for one in all_formulas():
        for symbol, parameter in one.parameters:
            units[parameter].add(one.symbols[symbol].unit)
    assert {name: found for name, found in units.items() if len(found) > 1} == {}


def test_every_address_and_place_on_the_page_is_read() -> None:
    table = re.findall(r"^\| `([^`]+/[^`]+)` \|", TEXT, re.MULTILINE)
    assert len(table) == 8
    assert [str(address(text)) for text in table] == table
    assert address("upstream/U2-L4 @ head L4").place == "head L4"
    for place in ("mid", "turnbuckle", "thread", "head L4", "hole L4", "end L4"):
        assert place_on_part(place) == place
    assert place_on_part("4 ft 6 in from L4") == "4 ft 6 in from L4"
