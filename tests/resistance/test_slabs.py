"""Slabs of concrete: by hand, and by the inertia of the cracked section."""

from dataclasses import replace
from math import pi

import pytest

from eyebar.bridge.floor_parts import Bars, Deck
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.office import office_values
from eyebar.resistance import Condition
from eyebar.resistance.decks import Patch, Strip, deck_strengths, strip_of
from eyebar.resistance.floor_rules import Strength, floor_rules
from eyebar.resistance.slabs import allowed_on_bars, wheels_on_strip
from eyebar.terms import Level, Method

VALUES = office_values()
SOUND = Condition(superstructure_condition=7, loss_measured=False)
INVENTORY = (Method.ALLOWABLE_STRESS, Level.INVENTORY)
FACTORED = (Method.LOAD_FACTOR, Level.OPERATING)
LEGAL = (Method.LOAD_AND_RESISTANCE, Level.LEGAL)
PATCH = Patch(across=20.0, along=10.0)
LOWER = Bars(diameter=0.625, built=0.625, every=6.0, cover=1.0, square=False, yield_stress=33.0)
UPPER = Bars(diameter=0.5, built=0.5, every=6.0, cover=1.5, square=True, yield_stress=33.0)
SLAB = Deck(
    address="floor/deck", kind="concrete", runs="across", thickness=7.0, built=7.0,
    plank_width=None, clear=24.0, support=5.0, made_of=None, continuous=True, joined=False,
    concrete=2.5, lower=LOWER, upper=UPPER,
)
"""On steel beams 24 in clear apart, flanges of 5 in: span 26.5 in."""


def strip(deck: Deck, method: Method) -> Strip:
    return strip_of(deck, PATCH, 8.0, VALUES, method=method)


def strengths(deck: Deck, by: tuple[Method, Level]) -> dict[str, Strength]:
    rules = floor_rules(*by, system="stringers", values=VALUES, condition=SOUND)
    found = deck_strengths(deck, strip(deck, by[0]), rules, VALUES)
    return {one.check: one for one in found}


def test_the_strip_and_its_moment_by_the_older_methods() -> None:
    found = strip(SLAB, Method.LOAD_FACTOR)
    assert found.span == 26.5
    # For a foot of width 0.8 (S + 2) P / 32 with S = 26.5 / 12 ft.
    assert found.moment / found.width == pytest.approx(0.8 * (26.5 / 12 + 2) / 32)
    # Without bars above, or where it does not run on, the whole simple moment.
    for other in (replace(SLAB, upper=None), replace(SLAB, continuous=False)):
        simple = strip(other, Method.LOAD_FACTOR)
        assert simple.moment / simple.width == pytest.approx((26.5 / 12 + 2) / 32)


def test_the_strip_by_load_and_resistance() -> None:
    found = strip(SLAB, Method.LOAD_AND_RESISTANCE)
    # 26 + 6.6 x 2.2083 = 40.575 in, less than 48 + 3 x 2.2083; a tyre of 20 in across.
    assert found.width == pytest.approx(40.575)
    assert found.moment == pytest.approx(0.8 * (26.5 / 4 - 20 / 8))


@pytest.mark.parametrize(("bars", "where"), [(LOWER, ""), (UPPER, " over the stringers")])
def test_allowable_stress_by_the_inertia_of_the_cracked_section(bars: Bars, where: str) -> None:
    found, width = strengths(SLAB, INVENTORY), strip(SLAB, INVENTORY[0]).width
    moment = strip(SLAB, INVENTORY[0]).moment
    across = 0.625 if bars is LOWER else 0.5
    steel = (pi / 4 if bars is LOWER else 1.0) * across**2 / 6.0 * width
    depth = 7.0 - (1.0 if bars is LOWER else 1.5) - across / 2
    n = 29_000.0 / (57.0 * 2500.0**0.5)
    # The neutral axis by halving: first moments of pushed concrete and of n times the bars.
    low, high = 0.0, depth
    for _ in range(80):
        x = (low + high) / 2
        low, high = (x, high) if width * x**2 / 2 < n * steel * (depth - x) else (low, x)
    inertia = width * x**3 / 3 + n * steel * (depth - x) ** 2
    pull, push = found[f"pull of the slab's bars{where}"], found[
        f"push of the slab's concrete{where}"]
    assert pull.divisor == pytest.approx(inertia / (n * (depth - x)) / moment)
    assert push.divisor == pytest.approx(inertia / x / moment)
    assert pull.capacity == pytest.approx(0.55 * 33.0)
    assert push.capacity == pytest.approx(0.40 * 2.5)


def test_a_slab_whose_bars_yield() -> None:
    found = strengths(SLAB, FACTORED)["bending of the slab"]
    # Bars of 0.30680 in2 every 6 in: 0.051133 in2 an inch, 5.6875 in deep; block 0.051133 x 33 /
    # (0.85 x 2.5) = 0.79406 in: lever 5.29047 in. Strip 96 x 26.5 / 50.5 = 50.3762 in.
    by_hand = 50.3762 * 0.051133 * 5.29047 / (0.8 * 26.5 / 4)
    assert found.divisor == pytest.approx(by_hand, rel=1e-4)
    assert found.capacity == pytest.approx(0.90 * 33.0)
    assert strengths(SLAB, LEGAL)["bending of the slab"].capacity == pytest.approx(0.90 * 33.0)


def test_more_bars_than_three_quarters_of_the_balanced_amount_do_not_count() -> None:
    many = replace(SLAB, lower=replace(LOWER, every=0.7))
    # Balanced: 0.85 x 0.85 x 2.5 / 33 x 87 / 120 = 0.039682; 0.75 x 0.039682 x 5.6875 = 0.16927.
    found = strengths(many, FACTORED)["bending of the slab"]
    lever = 5.6875 - 0.169268 * 33 / (1.7 * 2.5)
    assert found.divisor == pytest.approx(50.3762 * 0.169268 * lever / 5.3, rel=1e-4)


def test_what_is_worn_off_a_slab_is_off_the_depth_of_its_bars() -> None:
    worn = strengths(replace(SLAB, thickness=6.25), FACTORED)["bending of the slab"]
    lever = 5.6875 - 0.75 - 0.79406 / 2
    assert worn.divisor == pytest.approx(50.3762 * 0.051133 * lever / 5.3, rel=1e-4)
    with pytest.raises(OutOfRange, match="bare"):
        strengths(replace(SLAB, thickness=5.5), FACTORED)


def test_rusted_bars_are_as_thin_as_they_were_read_and_lie_where_they_lay() -> None:
    rusted = replace(SLAB, lower=replace(LOWER, diameter=0.5))
    found = strengths(rusted, FACTORED)["bending of the slab"]
    area = pi / 4 * 0.25 / 6
    lever = 5.6875 - area * 33 / (1.7 * 2.5)
    assert found.divisor == pytest.approx(50.3762 * area * lever / 5.3, rel=1e-4)


@pytest.mark.parametrize(("changed", "what"), [
    (replace(SLAB, concrete=None), "strength of the concrete"),
    (replace(SLAB, lower=None), "bars of the slab"),
    (replace(SLAB, lower=replace(LOWER, cover=None)), "cover"),
    (replace(SLAB, lower=replace(LOWER, every=None)), "spacing"),
    (replace(SLAB, lower=replace(LOWER, yield_stress=None)), "yield stress"),
    (replace(SLAB, upper=replace(UPPER, diameter=None)), "diameter"),
    (replace(SLAB, thickness=None), "thickness"),
])
def test_a_slab_of_which_something_was_not_measured_is_not_rated(changed: Deck, what: str) -> None:
    for by in (INVENTORY, FACTORED, LEGAL):
        with pytest.raises(NotMeasured, match=what):
            strengths(changed, by)


def test_a_wide_slab_and_one_along_the_road_are_refused() -> None:
    with pytest.raises(OutOfRange, match="wheels of two vehicles"):
        strip(replace(SLAB, clear=80.0), Method.LOAD_FACTOR)
    with pytest.raises(OutOfRange, match="along the road"):
        strip(replace(SLAB, runs="along"), Method.LOAD_FACTOR)


def test_no_wider_span_than_where_two_wheels_do_more_than_one() -> None:
    # Two wheels 48 in apart on a simple span L, the greatest moment under one: P (L - 24)² / 2 L;
    # one at the middle: P L / 4.
    limit = VALUES.number("slab.wheel alone up to")
    assert (limit - 24.0) ** 2 / (2 * limit) < limit / 4
    assert (84.0 - 24.0) ** 2 / (2 * 84.0) > 84.0 / 4


def test_wheels_whose_strips_overlap_share_what_they_cover() -> None:
    # A strip of 50 in: 8.5 kip twice 48 in apart cover 98 in: 17 x 50 / 98 = 8.673.
    assert wheels_on_strip([8.0, 8.5, 8.5], [180.0, 48.0], 50.0) == pytest.approx(17 * 50 / 98)
    # 48 in strips do not overlap: the heaviest alone.
    assert wheels_on_strip([8.0, 8.5, 8.5], [180.0, 48.0], 48.0) == 8.5
    # A light wheel beside a heavy one: 12 x 50 / 98 is less than 10 alone.
    assert wheels_on_strip([10.0, 2.0], [48.0], 50.0) == 10.0
    assert wheels_on_strip([6.0], [], 50.0) == 6.0


@pytest.mark.parametrize(("stress", "inventory", "operating"), [
    (33.0, 18.15, 24.75), (36.0, 19.8, 27.0), (40.0, 20.0, 28.0), (60.0, 24.0, 36.0),
])
def test_stresses_allowed_on_bars(stress: float, inventory: float, operating: float) -> None:
    # The manual as remembered: 18 and 25 ksi for bars of before 1954, 20 and 27, 20 and 28, 24 and
    # 36 ksi for the others.
    for level, expected in (("inventory", inventory), ("operating", operating)):
        found = allowed_on_bars(
            VALUES.number(f"slab.bars.part.{level}"), stress,
            VALUES.number(f"slab.bars.common.{level}"),
            VALUES.number(f"slab.bars.strong part.{level}"),
        )
        assert found == pytest.approx(expected)
