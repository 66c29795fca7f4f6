"""Design of a slab bridge, scribd.com document 175778705, sheet with HS20 on a slab of 16 ft span.

f_c 1,200 psi (0.40 of 3,000), f_s 20,000 psi (0.50 of 40,000), n 10, k 0.38, j 0.875. A wheel of
16,000 lb on E = 4.96 ft is 3226 lb on a foot, its moment P S / 4 = 12903 lb-ft; I 0.3. Total 22534
lb-ft: depth required 10.7 in, 10.5 in provided; bars 1.47 in2 a foot.
"""

from eyebar.office import office_values
from eyebar.resistance.decks import wheel_moment
from eyebar.resistance.slabs import bars_modulus_of, concrete_modulus_of, pushed_part
from tests.published.printing import printed

BARS = 1.47 / 12
"""Bars for an inch of width [in]."""


def test_the_moment_of_a_wheel() -> None:
    assert wheel_moment(1.0, 192.0, 0.0) / 12 * 16_000 / 4.96 == printed("12903")


def test_the_pushed_part_of_the_slab() -> None:
    assert pushed_part(10.0, BARS, 10.5) == printed("0.38")


def test_the_bars_bear_the_moment_at_their_allowed_stress() -> None:
    pushed = pushed_part(10.0, BARS, 10.5)
    borne = 20_000 * bars_modulus_of(12.0, BARS, 10.5, pushed) / 12
    assert borne == printed(
        "22534", within=150,
        because="the sheet rounds j to 0.875, where its bars make it 0.873, and the bars to 1.47",
    )


def test_the_concrete_bears_it_at_the_depth_required() -> None:
    # At k 0.38 and 10.7 in deep.
    borne = 1_200 * concrete_modulus_of(12.0, 0.38, 10.7) / 12
    assert borne == printed(
        "22534", within=450, because="the depth is printed to 0.1 in, 2 % of its square, and k"
        " to 0.38, where balanced stresses make it 0.375",
    )


def test_the_office_allows_the_concrete_as_much() -> None:
    assert office_values().number("slab.concrete.inventory") * 3_000 == printed("1200")
