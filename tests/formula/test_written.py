"""The three written forms, on equations whose right spelling is known."""

from xml.etree import ElementTree as ET

import pytest

from eyebar.formula import (
    Formula,
    Step,
    Symbol,
    equation_of,
    formula,
    mathml,
    plain,
    recording,
    significant,
    typst,
)


@formula(
    "I = min(50 ft / (L + 125 ft), 0.30)",
    result=Symbol("impact fraction", "1"),
    L=Symbol("loaded length", "ft", "loaded_length_ft"),
    source="for this test",
)
def impact_fraction(loaded_length_ft: float) -> float:
    """Impact [1] from the loaded length [ft]."""
    return min(50.0 / (loaded_length_ft + 125.0), 0.30)


@formula(
    "sigma_max = N / A - (M + N * e) / W if N > 0 kip else -N / A",
    result=Symbol("stress", "ksi"),
    N=Symbol("force", "kip"), A=Symbol("area", "in2"), M=Symbol("moment", "kip in"),
    e=Symbol("offset", "in"), W=Symbol("section modulus", "in3"),
    source="for this test",
)
def stress(N: float, A: float, M: float, e: float, W: float) -> float:
    """A stress [ksi]."""
    return N / A - (M + N * e) / W if N > 0 else -N / A


def _step(force: float) -> Step:
    with recording() as steps:
        stress(force, 4.0, -2.5, 0.5, 8.0)
    (step,) = steps
    assert isinstance(step, Step)
    return step


def test_plain_text_reads_like_the_equation() -> None:
    assert plain(equation_of(impact_fraction)) == "I = min(50 ft / (L + 125 ft), 0.30)"
    assert plain(equation_of(stress)) == (
        "\N{GREEK SMALL LETTER SIGMA}_max = N / A - (M + N \u00d7 e) / W if N > 0 kip; else -N / A"
    )


def test_numbers_are_put_in_with_their_units_and_only_the_branch_taken_is_shown() -> None:
    # By hand: 10/4 - (-2.5 + 5)/8 = 2.5 - 0.3125 = 2.1875.
    assert plain(_step(10.0)) == (
        "\N{GREEK SMALL LETTER SIGMA}_max = 10 kip / 4 in2 - (-2.5 kip in + 10 kip \u00d7 0.5 in)"
        " / 8 in3 = 2.188 ksi"
    )
    assert plain(_step(-6.0)).endswith("_max = -(-6 kip) / 4 in2 = 1.5 ksi")


def test_typst_has_fractions_and_quoted_units() -> None:
    assert typst(equation_of(impact_fraction)) == (
        'I = min(frac(50 thin "ft", L + 125 thin "ft"), 0.30)'
    )
    assert typst(equation_of(stress)).startswith("\N{GREEK SMALL LETTER SIGMA}_\"max\" = cases(")


@pytest.mark.parametrize("thing", [
    equation_of(impact_fraction), equation_of(stress), _step(10.0), _step(-6.0)])
def test_mathml_is_well_formed_and_says_itself_aloud(thing: Formula | Step) -> None:
    root = ET.fromstring(mathml(thing))
    assert root.tag == "math"
    assert root.attrib["alttext"] == plain(thing)


def test_mathml_of_a_quotient_is_a_fraction() -> None:
    root = ET.fromstring(mathml(equation_of(impact_fraction)))
    fraction = root.find(".//mfrac")
    assert fraction is not None
    assert "".join(fraction[0].itertext()) == "50ft"
    assert "".join(fraction[1].itertext()) == "L+125ft"


def test_powers_of_units_are_raised_where_it_is_typeset() -> None:
    assert '4 thin "in\N{SUPERSCRIPT TWO}"' in typst(_step(10.0))
    assert "<mtext>in\N{SUPERSCRIPT THREE}</mtext>" in mathml(_step(10.0))


@pytest.mark.parametrize(("value", "text"), [
    (27900.0, "27900"), (0.00053, "0.00053"), (12.26415, "12.26"), (-0.5, "-0.5"), (0.0, "0"),
    (286220.4, "286220"), (1e-12, "1.000e-12"), (float("inf"), "∞"),
])
def test_whole_digits_are_kept_and_four_figures_else(value: float, text: str) -> None:
    assert significant(value) == text
