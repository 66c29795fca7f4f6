"""A bar in pull: body, heads, threads, turnbuckles, loops, net section."""

import math
from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured, OutOfRange
from eyebar.resistance import Condition
from eyebar.sections.shapes import (
    Clevis,
    Eyebar,
    Eyebars,
    Loops,
    Rod,
    Rods,
    RodShape,
    Thread,
)
from eyebar.terms import Level, Metal, Method
from tests.resistance.bars import (
    EVERY_LEVEL,
    IRON,
    LACED,
    bar,
    eyebars,
    given,
    greatest_pull,
    limits_of,
    office,
)

TWO_BARS = bar(eyebars(2), can_push=False)  # two bars 3 x 3/4 in, 4.5 in2, yield 26 ksi


@pytest.mark.parametrize(
    ("method", "level", "kip"),
    [
        # By hand: 0.55 x 26 x 4.5; 0.75 x 26 x 4.5; 26 x 4.5.
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, 64.35),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, 87.75),
        (Method.LOAD_FACTOR, Level.INVENTORY, 117.0),
        (Method.LOAD_FACTOR, Level.OPERATING, 117.0),
    ],
)
def test_a_pair_of_eyebars_pulls_what_its_body_may(
    method: Method, level: Level, kip: float
) -> None:
    found = limits_of(TWO_BARS, method, level)
    # By hand: heads are (7 - 2.5)/(1.35 x 3) = 1.11 and 2.25/(0.75 x 3) = 1 of the body: no check.
    assert list(found) == ["yield of the body"]
    limit = found["yield of the body"]
    assert limit.force == limit.capacity == pytest.approx(kip, rel=1e-12)
    assert (limit.sense, limit.unit) == (1, "kip")


def test_by_load_and_resistance_condition_and_system_are_in_the_capacity() -> None:
    # By hand: 0.95 (code 5) x 0.90 (several bars) = 0.855; x 0.95 x 26 x 4.5 = 95.03325.
    fair = Condition(superstructure_condition=5, loss_measured=False)
    found = limits_of(TWO_BARS, Method.LOAD_AND_RESISTANCE, Level.LEGAL, condition=fair)
    assert found["yield of the body"].force == pytest.approx(95.03325, rel=1e-12)
    # By hand: 0.855 x 0.80 x 48 x 4.5 = 147.744.
    assert found["fracture of the net section"].force == pytest.approx(147.744, rel=1e-12)


@pytest.mark.parametrize("level", list(Level))
def test_by_load_and_resistance_every_level_has_the_same_strength(level: Level) -> None:
    # By hand: 1.00 x 0.90 x 0.95 x 26 x 4.5 = 100.035.
    assert greatest_pull(TWO_BARS, Method.LOAD_AND_RESISTANCE, level) == pytest.approx(100.035)


@pytest.mark.parametrize("method", [Method.ALLOWABLE_STRESS, Method.LOAD_FACTOR])
@pytest.mark.parametrize("level", [Level.LEGAL, Level.PERMIT])
def test_the_older_methods_know_inventory_and_operating_alone(
    method: Method, level: Level
) -> None:
    with pytest.raises(OutOfRange, match="inventory or operating"):
        limits_of(TWO_BARS, method, level)


def test_a_head_too_slim_weakens_the_whole_set_by_its_worst_piece() -> None:
    # By hand: body 2 x 2.5 x 9/16 = 2.8125 in2, 0.55 x 26 x 2.8125 = 40.21875 kip. Head 6 in, hole
    # 2 9/16 in, one of the heads thinned to 1/2 in: across 3.4375 x 0.5 / (1.35 x 1.40625) =
    # 0.905350, beyond 1.71875 x 0.5 / (0.75 x 1.40625) = 0.814815.
    sound = Eyebar(width=2.5, thickness=9 / 16, head=6.0, hole=2 + 9 / 16)
    thin = replace(sound, head_thickness=0.5)
    found = limits_of(
        bar(Eyebars(bars=(sound, thin)), can_push=False), Method.ALLOWABLE_STRESS, Level.INVENTORY
    )
    body = found["yield of the body"].force
    assert body == pytest.approx(40.21875, rel=1e-12)
    assert found["head across the pin hole"].force == pytest.approx(body * 0.905350, rel=1e-6)
    assert found["head beyond the pin hole"].force == pytest.approx(body * 0.814815, rel=1e-6)


def test_rust_on_a_body_does_not_relieve_its_weak_head() -> None:
    # By hand: heads 0.815 of their bodies; the piece thinned by a half still takes half the pull,
    # by the stiffness it was built with, and brings it to its head: 40.21875 x 0.814815 as before.
    # The bodies together are worth three quarters.
    slim = Eyebar(width=2.5, thickness=9 / 16, head=6.0, hole=2 + 9 / 16, head_thickness=0.5)
    thin = replace(slim, thickness=9 / 32)
    built = Eyebars(bars=(slim, slim))
    found = limits_of(
        bar(built, left=Eyebars(bars=(slim, thin)), can_push=False),
        Method.ALLOWABLE_STRESS, Level.INVENTORY,
    )
    assert found["yield of the body"].force == pytest.approx(0.75 * 40.21875, rel=1e-12)
    assert found["head beyond the pin hole"].force == pytest.approx(32.77083, rel=1e-6)


def test_metal_beyond_the_hole_counts_as_it_was_measured() -> None:
    # By hand: 1.8 / (0.75 x 3) = 0.8, against 1 for a round head.
    worn = bar(eyebars(1, beyond=1.8), can_push=False)
    found = limits_of(worn, Method.LOAD_FACTOR, Level.OPERATING)
    assert found["head beyond the pin hole"].force == pytest.approx(0.8 * 58.5, rel=1e-12)
    assert "head across the pin hole" not in found


def test_a_hole_worn_long_has_lost_its_wear_beyond_the_pin() -> None:
    # By hand: hole 2 1/2 in worn to 2 3/4: beyond it 2.25 - 0.25 = 2.0 in, not (7 - 2.75)/2; 2.0 /
    # (0.75 x 3) = 0.888889 of 58.5 kip; across still 4.25 / (1.35 x 3) = 1.05.
    worn = bar(eyebars(1), left=eyebars(1, hole=2.75), can_push=False)
    found = limits_of(worn, Method.LOAD_FACTOR, Level.OPERATING)
    assert found["head beyond the pin hole"].force == pytest.approx(58.5 * 8 / 9, rel=1e-12)
    assert "head across the pin hole" not in found


@pytest.mark.parametrize(("read", "left"), [(None, 1.75), (1.7, 1.7), (1.9, 1.75)])
def test_metal_beyond_a_worn_hole_is_the_less_of_read_and_worn(
    read: float | None, left: float
) -> None:
    # By hand: recorded as built 2.0 in, worn by 0.25; what was read since holds where it is less.
    built = eyebars(1, beyond=2.0)
    now = eyebars(1, beyond=2.0 if read is None else read, hole=2.75)
    found = limits_of(
        bar(built, left=now, can_push=False), Method.LOAD_FACTOR, Level.OPERATING
    )
    assert found["head beyond the pin hole"].force == pytest.approx(
        58.5 * left / 2.25, rel=1e-12
    )


def test_a_hole_worn_out_to_the_end_is_refused() -> None:
    worn = bar(eyebars(1, head=5.0), left=eyebars(1, head=5.0, hole=3.8), can_push=False)
    with pytest.raises(OutOfRange, match="it is worn out"):
        limits_of(worn, Method.LOAD_FACTOR, Level.OPERATING)


def test_a_small_head_is_also_checked_against_breaking() -> None:
    # By hand: 48 x (4 - 2.5) x 0.75 = 54 kip under the body's 58.5; by proportion 26 x 1.125 / 1.35
    # = 21.667, which governs.
    found = limits_of(
        bar(eyebars(1, head=4.0), can_push=False), Method.LOAD_FACTOR, Level.OPERATING
    )
    assert found["fracture of the head across the pin hole"].force == pytest.approx(54.0, rel=1e-12)
    assert found["head across the pin hole"].force == pytest.approx(26 * 1.125 / 1.35, rel=1e-12)


def test_a_clevis_is_an_eye_of_two_jaws() -> None:
    # By hand: jaws 3 in wide, 1/2 in thick, hole 1 1/2 in: across 26 x 2 x 1.5 x 0.5 / 1.35 =
    # 28.8889 kip, beyond 26 x 2 x 0.75 x 0.5 / 0.75 = 26 kip, under 26 x 1.227185 = 31.907.
    fork = Clevis(width=3.0, thickness=0.5, hole=1.5)
    forked = bar(Rods(rods=(rod(clevis=fork),)), can_push=False)
    found = limits_of(forked, Method.LOAD_FACTOR, Level.OPERATING)
    assert found["clevis across its hole"].force == pytest.approx(26 * 1.5 / 1.35, rel=1e-12)
    assert found["clevis beyond its hole"].force == pytest.approx(26.0, rel=1e-12)
    long = replace(fork, beyond=1.5)
    stout = limits_of(
        bar(Rods(rods=(rod(clevis=long),)), can_push=False), Method.LOAD_FACTOR, Level.OPERATING
    )
    assert "clevis beyond its hole" not in stout


def test_loops_that_are_bent_and_not_welded_are_not_rated() -> None:
    bent = Rods(rods=(rod(looped=True, loops=Loops.BENT),))
    with pytest.raises(NotMeasured, match="strength of loops that are bent and not welded"):
        limits_of(bar(bent, can_push=False), Method.LOAD_FACTOR, Level.OPERATING)
    # By hand: an office that trusts them with half: 0.5 x 31.9068.
    found = limits_of(
        bar(bent, can_push=False), Method.LOAD_FACTOR, Level.OPERATING,
        values=office(loop_rod__bent=0.5),
    )
    assert found["bent loop"].force == pytest.approx(
        0.5 * found["yield of the body"].force, rel=1e-12
    )


def test_a_wide_thin_body_is_remarked_on() -> None:
    # By hand: 3 in is more than 8 x 0.35 in; 4 - 2.5 = 1.5 in across makes the head a check.
    thin = bar(eyebars(1, thickness=0.35, head=4.0), can_push=False)
    found = limits_of(thin, Method.LOAD_FACTOR, Level.OPERATING)
    assert "body wider than 8 thicknesses" in found["head across the pin hole"].remarks


def test_a_single_bar_has_the_lower_system_factor() -> None:
    # By hand: 0.85 x 0.95 x 26 x 2.25 = 47.239, against 0.90 for each of two.
    one = bar(eyebars(1), can_push=False)
    pull = greatest_pull(one, Method.LOAD_AND_RESISTANCE, Level.LEGAL)
    assert pull == pytest.approx(0.85 * 0.95 * 58.5, rel=1e-12)


def rod(**more: object) -> Rod:
    return Rod(shape=RodShape.ROUND, size=1.25, **more)  # type: ignore[arg-type]


def test_a_plain_thread_pulls_at_its_root() -> None:
    # By hand: root 1.065 in on a 1.25 in rod: 0.55 x 26 x pi x 1.065^2 / 4 = 12.7386.
    plain = bar(
        Rods(rods=(rod(threads=Thread.PLAIN, root_diameter=1.065),)), can_push=False
    )
    found = limits_of(plain, Method.ALLOWABLE_STRESS, Level.INVENTORY)
    assert found["threads at the root"].force == pytest.approx(12.7386, rel=1e-5)
    assert found["yield of the body"].force == pytest.approx(
        0.55 * 26 * math.pi * 1.25**2 / 4, rel=1e-12
    )


def test_an_upset_thread_is_no_check_while_its_root_is_more_than_the_body() -> None:
    upset = Rods(rods=(rod(threads=Thread.UPSET, root_diameter=1.375),) * 2)
    rusted = replace(upset, rods=(upset.rods[0], replace(upset.rods[1], root_diameter=1.2)))
    sound = limits_of(bar(upset, can_push=False), Method.LOAD_FACTOR, Level.OPERATING)
    worn = limits_of(bar(rusted, can_push=False), Method.LOAD_FACTOR, Level.OPERATING)
    assert list(sound) == ["yield of the body"]
    # By hand: the worse of the two rods weakens both, (1.2/1.25)^2 = 0.9216.
    assert worn["threads at the root"].force == pytest.approx(
        0.9216 * sound["yield of the body"].force, rel=1e-12
    )


def test_a_turnbuckle_pulls_what_its_open_bars_do() -> None:
    # By hand: 2 bars of 0.5 in2 on a square rod of 1.1 in (1.21 in2): 26 x 1.0 = 26 kip.
    square = Rod(shape=RodShape.SQUARE, size=1.1, turnbuckle=True, turnbuckle_area=1.0)
    found = limits_of(
        bar(Rods(rods=(square,)), can_push=False), Method.LOAD_FACTOR, Level.OPERATING
    )
    assert found["turnbuckle"].force == pytest.approx(26.0, rel=1e-12)


def test_a_loops_weld_is_a_check_where_the_office_doubts_it() -> None:
    looped = bar(
        Rods(rods=(Rod(shape=RodShape.SQUARE, size=1.0, looped=True),) * 2), can_push=False
    )
    trusting = limits_of(looped, Method.LOAD_FACTOR, Level.OPERATING)
    doubting = limits_of(
        looped, Method.LOAD_FACTOR, Level.OPERATING, values=office(loop_rod__weld=0.8)
    )
    assert list(trusting) == ["yield of the body"]
    assert doubting["weld of the loop"].force == pytest.approx(0.8 * 52.0, rel=1e-12)


@pytest.mark.parametrize(
    ("section", "what"),
    [
        (eyebars(2, thickness=None), "thickness"),
        (eyebars(2, head=None), "width of head"),
        (eyebars(2, hole=None), "diameter of hole"),
        (Rods(rods=(Rod(shape=RodShape.ROUND, size=None),)), "diameter"),
        (Rods(rods=(rod(threads=Thread.UPSET),)), "root diameter of the threads"),
        (Rods(rods=(rod(turnbuckle=True),)), "area of the turnbuckle's open bars"),
        (Rods(rods=(rod(clevis=Clevis(width=None, thickness=0.5, hole=1.5)),)),
         "width of the clevis"),
    ],
)
def test_what_was_never_measured_is_not_taken_as_sound(section: Eyebars | Rods, what: str) -> None:
    with pytest.raises(NotMeasured) as refused:
        limits_of(bar(section, can_push=False), Method.LOAD_FACTOR, Level.OPERATING)
    assert (refused.value.part, refused.value.what) == ("upstream/U2-L2", what)


def test_a_head_narrower_than_its_hole_is_refused() -> None:
    with pytest.raises(OutOfRange, match="more than its hole"):
        limits_of(
            bar(eyebars(1, head=2.0), can_push=False), Method.LOAD_FACTOR, Level.OPERATING
        )


@pytest.mark.parametrize(
    ("method", "level", "kip"),
    [
        # By hand, 4 in2 gross and 3 in2 net, tensile strength 48 ksi: 0.50, 0.67 and 1 of 144 kip;
        # load and resistance 1.00 x 0.85 x 0.80 x 144.
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, 72.0),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, 96.48),
        (Method.LOAD_FACTOR, Level.OPERATING, 144.0),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL, 97.92),
    ],
)
def test_a_given_net_section_breaks_at_its_part_of_the_tensile_strength(
    method: Method, level: Level, kip: float
) -> None:
    plates = bar(given(4.0, 1.0, 1.0, net_area=3.0), can_push=False)
    found = limits_of(plates, method, level)["fracture of the net section"]
    assert found.force == pytest.approx(kip, rel=1e-12)


def test_unrecorded_holes_are_said_to_be_taken_on_the_safe_side() -> None:
    # By hand: channels 6 x 0.25 + 2 x 1.75 x 0.3125 = 2.59375 in2 each; 0.70 x 48 of both.
    found = limits_of(bar(LACED), Method.LOAD_FACTOR, Level.OPERATING)
    net = found["fracture of the net section"]
    assert net.force == pytest.approx(0.7 * 48 * 5.1875, rel=1e-12)
    assert "holes not recorded: net section taken as 0.7 of the gross" in net.remarks


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_a_bar_that_cannot_pull_has_no_limit_in_pull(method: Method, level: Level) -> None:
    found = limits_of(bar(LACED, can_pull=False), method, level)
    assert found
    assert all(limit.sense == -1 for limit in found.values())


@pytest.mark.parametrize("metal", [Metal.CAST_IRON, Metal.TIMBER])
def test_a_metal_without_a_rule_is_not_rated(metal: Metal) -> None:
    other = bar(eyebars(1), material=replace(IRON, metal=metal))
    with pytest.raises(NotMeasured, match=f"strength of {metal}"):
        limits_of(other, Method.LOAD_FACTOR, Level.OPERATING)
