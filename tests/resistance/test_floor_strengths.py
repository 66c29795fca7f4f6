"""Strengths of the floor's parts: by hand, with each condition met and not met."""

from dataclasses import replace
from math import cos, pi, sin

import numpy as np
import pytest

from eyebar.bridge.floor_beams import with_depth
from eyebar.bridge.floor_joined import BeamEnds, Cope, Fastening
from eyebar.bridge.floor_parts import Deck, Stretch, Timber
from eyebar.bridge.parts import Material
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.office import office_values
from eyebar.resistance import Condition
from eyebar.resistance.decks import Patch, deck_strengths, strip_of, tyre
from eyebar.resistance.floor_beams import Beam, floor_beam_strengths
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength, floor_rules
from eyebar.resistance.hangers import bend_moment
from eyebar.resistance.timber import Stick, TimberStrength, timber_strength
from eyebar.sections.beams import beam_section
from eyebar.sections.joined import Group, Rivets
from eyebar.sections.pieces import Angle, Plate
from eyebar.sections.shapes import PlatesAndAngles, Rolled, RolledShape, Side, Toes
from eyebar.terms import Level, Metal, Method

VALUES = office_values()
SOUND = Condition(superstructure_condition=7, loss_measured=False)
ASR, LEGAL = (Method.ALLOWABLE_STRESS, Level.INVENTORY), (
    Method.LOAD_AND_RESISTANCE, Level.LEGAL)
IRON = Material(
    name="iron", metal=Metal.WROUGHT_IRON, yield_stress=26.0, tensile_strength=48.0,
    modulus=27_900.0, density=0.278, sources={},
)
JOIST = Rolled(
    shape=RolledShape.I, number=1, depth=10.0, web=0.3, flange=4.6, flange_thickness=0.5
)
FIR = Timber(
    name="fir", species="Douglas fir-larch", grade="No. 1", wet=False, incised=False
)


def by(method: tuple[Method, Level]) -> FloorRules:
    return floor_rules(*method, system="stringers", values=VALUES, condition=SOUND)


def joist(ends: BeamEnds, method: tuple[Method, Level] = ASR) -> dict[str, Strength]:
    beam = Beam(
        stretches=(Stretch(begin_ft=0.0, end_ft=15.0, section=JOIST),), as_built=JOIST,
        made_of=IRON, ends=ends, unheld=0.0,
    )
    return {one.check: one for one in floor_beam_strengths(beam, by(method), VALUES)}


# Beams of metal


def test_bending_and_web_of_a_rolled_joist() -> None:
    found = joist(BeamEnds())
    # By hand: two flanges and a web; 0.55 and 0.33 of 26 ksi.
    inertia = 4.6 * 10.0**3 / 12 - (4.6 - 0.3) * 9.0**3 / 12
    assert found["bending, flange held"].divisor == pytest.approx(inertia / 5.0)
    assert found["bending, flange held"].capacity == pytest.approx(0.55 * 26.0)
    assert found["shear of the web"].divisor == pytest.approx(3.0)
    assert found["shear of the web"].capacity == pytest.approx(0.33 * 26.0)
    assert all("not recorded" in one.remarks[-1] for one in found.values())


def test_a_flange_that_rust_has_made_thin_waves_by_every_method() -> None:
    # 2.3 in out and 0.14 in thick: 16.4; 0.38 sqrt(E / F_y) = 12.45, 0.56 sqrt(E / 0.7 F_y) =
    # 21.93: 0.42 of the way from F_y to 0.7 F_y.
    thin = replace(JOIST, flange_thickness=0.14)
    for method, part in ((ASR, 0.55), (LEGAL, 1.0)):
        beam = Beam(
            stretches=(Stretch(begin_ft=0.0, end_ft=15.0, section=thin),), as_built=JOIST,
            made_of=IRON, ends=BeamEnds(), unheld=0.0,
        )
        found = {one.check: one for one in floor_beam_strengths(beam, by(method), VALUES)}
        lost = 0.3 * (2.3 / 0.14 - 12.448) / (21.925 - 12.448)
        capacity = found["bending, flange held"].capacity
        assert capacity == pytest.approx(part * 26.0 * (1.0 - lost), rel=1e-3)


def test_a_compact_beam_held_reaches_its_plastic_moment_by_load_and_resistance() -> None:
    found = joist(BeamEnds(), LEGAL)
    inertia = 4.6 * 10.0**3 / 12 - (4.6 - 0.3) * 9.0**3 / 12
    plastic = 4.6 * 0.5 * 9.5 + 0.3 * 9.0**2 / 4
    assert found["bending, flange held"].capacity == pytest.approx(26.0 * plastic / (inertia / 5))
    assert found["Service II"].capacity == pytest.approx(0.80 * 26.0)


def test_the_web_over_its_seat() -> None:
    # 0.66 F_y on a web of 0.3 in over a seat of 4 in and 2.5 flange thicknesses.
    over = joist(BeamEnds(seat=4.0, seat_recorded=True))["web over the seat"]
    assert over.divisor == pytest.approx(0.3 * (4.0 + 2.5 * 0.5))
    assert over.capacity == pytest.approx(0.66 * 26.0)
    with pytest.raises(NotMeasured, match="length of the seat"):
        joist(BeamEnds(seat=None, seat_recorded=True))


def test_a_coped_end_is_what_is_left_of_web_and_lower_flange() -> None:
    found = joist(BeamEnds(cope=Cope(depth=1.5, length=5.0)))
    # A tee 8.5 in high: web 0.3 in, flange 4.6 in x 0.5 in below.
    area, first = 4.6 * 0.5 + 8.0 * 0.3, 4.6 * 0.5 * 0.25 + 8.0 * 0.3 * 4.5
    low = first / area
    inertia = 4.6 * 0.5**3 / 12 + 4.6 * 0.5 * (low - 0.25) ** 2
    inertia += 0.3 * 8.0**3 / 12 + 8.0 * 0.3 * (4.5 - low) ** 2
    assert found["shear of the coped web"].divisor == pytest.approx(0.3 * 8.5)
    assert found["bending at the cope"].divisor == pytest.approx(inertia / (8.5 - low) / 5.0)
    both = joist(BeamEnds(cope=Cope(depth=1.5, length=5.0, both=True)))
    assert both["bending at the cope"].divisor == pytest.approx(0.3 * 7.0**2 / 6 / 5.0)
    with pytest.raises(OutOfRange):
        joist(BeamEnds(cope=Cope(depth=9.8, length=5.0)))


def riveted(number: int, group: Group, post: Fastening | None = None) -> dict[str, Strength]:
    return joist(BeamEnds(fastening=Fastening(
        rivets=Rivets(number=number, diameter=0.75, cuts=2), thinner=0.3, group=group, post=post)))


THROUGH_THE_MIDDLE = Group(lines=1, pitch=None, gauge=None, off_centre=0.0)


def test_rivets_of_an_end_share_alike_where_the_force_passes_through_their_middle() -> None:
    found = riveted(6, THROUGH_THE_MIDDLE)["rivets of the end"]
    one = riveted(1, THROUGH_THE_MIDDLE)["rivets of the end"]
    assert found.capacity == pytest.approx(6 * one.capacity)
    # One rivet: bearing of structural steel, in the proportion of 48 ksi to that steel's strength.
    steel = VALUES.number("rivet.bearing.of steel")
    bearing = VALUES.number("rivet.bearing.allowable.inventory") * 48.0 / steel * 0.75 * 0.3
    shear = VALUES.number("rivet.shear.allowable.earlier.inventory") * 2 * pi * 0.75**2 / 4
    assert one.capacity == pytest.approx(min(bearing, shear))


def test_the_worst_rivet_of_a_group_that_is_held_beside_its_middle() -> None:
    one = riveted(1, THROUGH_THE_MIDDLE)["rivets of the end"].capacity
    # Five in one line 3 in apart, 2 1/4 in from the face: squares 2 (3² + 6²) = 90 in2; for a unit
    # force 1/5 upright and 2.25 x 6 / 90 = 0.15 level: 0.25. Four rivets' worth, not five.
    line = Group(lines=1, pitch=3.0, gauge=None, off_centre=2.25)
    assert riveted(5, line)["rivets of the end"].capacity == pytest.approx(4.0 * one)
    # Two lines of three, 4 in and 3 in apart, 3 in away: squares 6 x 2² + 4 x 3² = 60 in2; upright
    # 1/6 + 3 x 2 / 60 = 0.26667, level 3 x 3 / 60 = 0.15: 0.30596.
    two = Group(lines=2, pitch=3.0, gauge=4.0, off_centre=3.0)
    assert riveted(6, two)["rivets of the end"].capacity == pytest.approx(one / 0.305959, rel=1e-5)


def test_a_group_whose_place_was_not_measured_is_not_rated() -> None:
    with pytest.raises(NotMeasured, match="off centre"):
        riveted(5, replace(THROUGH_THE_MIDDLE, off_centre=None))
    with pytest.raises(NotMeasured, match="pitch"):
        riveted(5, replace(THROUGH_THE_MIDDLE, off_centre=2.0))
    with pytest.raises(NotMeasured, match="gauge"):
        riveted(6, Group(lines=2, pitch=3.0, gauge=None, off_centre=2.0))
    with pytest.raises(OutOfRange, match="2 at least"):
        riveted(1, replace(THROUGH_THE_MIDDLE, off_centre=2.0))


def test_the_rivets_on_the_other_side_of_the_end_angles_are_a_check_of_their_own() -> None:
    post = Fastening(
        rivets=Rivets(number=4, diameter=0.75, cuts=1), thinner=0.375, group=THROUGH_THE_MIDDLE
    )
    both = riveted(6, THROUGH_THE_MIDDLE, post)
    shear = VALUES.number("rivet.shear.allowable.earlier.inventory") * pi * 0.75**2 / 4
    assert both["rivets through the post"].capacity == pytest.approx(4 * shear)
    alone = riveted(6, THROUGH_THE_MIDDLE)
    assert "rivets through the post" not in alone
    assert any("not looked at" in one for one in alone["rivets of the end"].remarks)


def test_an_unstiffened_web_cripples_over_its_seat() -> None:
    # Web 0.3 in, flange 0.5 in, 10 in deep on 4 in: 4 x 0.4 - 0.2 = 1.4, times (0.6)^1.5 = 0.46476:
    # 1.65066; sqrt(27,900 x 26 x 0.5 / 0.3) = 1099.55; 0.4 x 0.09 x 1.65066 x 1099.55 = 65.339 kip.
    ends = BeamEnds(seat=4.0, seat_recorded=True)
    check = "crippling of the web over the seat"
    assert joist(ends)[check].capacity == pytest.approx(65.339 / 2.0, rel=1e-4)
    assert joist(ends, LEGAL)[check].capacity == pytest.approx(65.339 * 0.80, rel=1e-4)
    assert check not in joist(replace(ends, stiffened=True))
    assert "web over the seat" in joist(replace(ends, stiffened=True))


def test_a_web_under_a_stringer() -> None:
    beam = Beam(
        stretches=(Stretch(begin_ft=0.0, end_ft=15.0, section=JOIST),), as_built=JOIST,
        made_of=IRON, ends=BeamEnds(), unheld=0.0, carries=6.0,
    )
    found = [one for one in floor_beam_strengths(beam, by(ASR), VALUES)
             if one.effect is Effect.STRINGER]
    # Yields: 0.66 x 26 x 0.3 x (6 + 5 x 0.5) = 43.76 kip. Cripples: 1 + 3 x 0.6 x 0.46476 =
    # 1.83657; 0.8 x 0.09 x 1.83657 x 1099.55 / 2 = 72.70 kip. The less governs.
    assert [one.check for one in found] == ["web under a stringer"]
    assert found[0].capacity * found[0].divisor == pytest.approx(43.758, rel=1e-4)
    # A web of 0.1 in: yields at 0.66 x 26 x 0.85 = 14.59 kip; cripples at 1 + 1.8 x 0.2^1.5 =
    # 1.16100; sqrt(27,900 x 26 x 5) = 1904.49; 0.8 x 0.01 x 1.161 x 1904.49 / 2 = 8.845 kip.
    thin = replace(JOIST, web=0.1)
    slim = replace(beam, stretches=(Stretch(begin_ft=0.0, end_ft=15.0, section=thin),))
    least = [one for one in floor_beam_strengths(slim, by(ASR), VALUES)
             if one.effect is Effect.STRINGER]
    assert [one.check for one in least] == ["crippling of the web under a stringer"]
    assert least[0].capacity == pytest.approx(8.845, rel=1e-3)


def angle(level: float) -> Angle:
    return Angle(upright=3.0, level=level, upright_thickness=0.375, level_thickness=0.375)


def test_the_flange_that_is_pushed_is_the_lower_one_where_the_moment_is_turned_round() -> None:
    side = Side(web=None, top=angle(3.0), bottom=angle(3.0))
    beam = PlatesAndAngles(
        near=side, far=side, middle=Plate(width=20.0, thickness=0.3125), apart=None,
        toes=Toes.OUT, cover=Plate(width=9.0, thickness=0.375),
    )
    upper, lower = beam_section(beam), beam_section(beam, sense=-1)
    # The cover lies above: 9 in x 3/8 in more inertia about the upright axis there alone.
    assert upper.flange_inertia - lower.flange_inertia == pytest.approx(0.375 * 9.0**3 / 12)
    assert lower.flange == pytest.approx(2 * 3.0 + 0.3125)


def test_a_beam_that_tapers_is_as_deep_as_it_is_there() -> None:
    deep = with_depth(JOIST, 6.0, 0.5)
    assert isinstance(deep, Rolled)
    assert deep.depth == pytest.approx(8.0)
    whole = with_depth(JOIST, 6.0, 1.7)
    assert isinstance(whole, Rolled)
    assert whole.depth == pytest.approx(10.0)


# Timber: each factor and its condition


def strength(timber: Timber, stick: Stick) -> TimberStrength:
    return timber_strength(
        timber, stick, method=Method.ALLOWABLE_STRESS, level=Level.INVENTORY, reduction=1.0,
        shear_reduction=1.0, values=VALUES,
    )


@pytest.mark.parametrize(("timber", "stick", "psi"), [
    # Timber of 8 in x 16 in: 1,350 psi, 1.15 for vehicles, (12 / 16)^(1/9) deep; wet 1.00.
    (FIR, Stick(breadth=8.0, depth=16.0), 1350 * 1.15 * 0.75 ** (1 / 9)),
    (replace(FIR, wet=True), Stick(breadth=8.0, depth=16.0), 1350 * 1.15 * 0.75 ** (1 / 9)),
    # Incised 0.80; 12 in deep needs no size factor.
    (replace(FIR, incised=True), Stick(breadth=6.0, depth=12.0), 1350 * 1.15 * 0.80),
    # Three joists of 3 in x 12 in, 24 in apart, share: 1,000 psi, size 1.0, 1.15 again.
    (FIR, Stick(breadth=3.0, depth=12.0, sharing=3, apart=24.0), 1000 * 1.15 * 1.15),
    # Not two of them, not further apart, not thick ones.
    (FIR, Stick(breadth=3.0, depth=12.0, sharing=2, apart=24.0), 1000 * 1.15),
    (FIR, Stick(breadth=3.0, depth=12.0, sharing=8, apart=26.0), 1000 * 1.15),
    (FIR, Stick(breadth=6.0, depth=12.0, sharing=8, apart=20.0), 1350 * 1.15),
    # A plank laid flat, 4 in x 10 in: flat use 1.10, size of 4 in thick stuff 1.2.
    (FIR, Stick(breadth=10.0, depth=4.0, flat=True), 1000 * 1.15 * 1.10 * 1.2),
    # A timber laid flat of No. 1: 0.74.
    (FIR, Stick(breadth=12.0, depth=6.0, flat=True), 1350 * 1.15 * 0.74),
])
def test_bending_of_timber_with_its_factors(timber: Timber, stick: Stick, psi: float) -> None:
    assert 1000 * strength(timber, stick).bending == pytest.approx(psi)


def test_a_stick_nearly_square_is_graded_as_a_post_and_has_no_value_here() -> None:
    with pytest.raises(NotMeasured, match="graded as a post"):
        strength(FIR, Stick(breadth=8.0, depth=10.0))


def test_a_slender_stick_that_nothing_holds_bears_less_and_a_too_slender_one_nothing() -> None:
    held = strength(FIR, Stick(breadth=4.0, depth=14.0)).bending
    loose = strength(FIR, Stick(breadth=4.0, depth=14.0, unheld=180.0)).bending
    # By hand: l_e = 1.63 x 180 + 3 x 14 = 335.4, R_B = sqrt(335.4 x 14 / 16) = 17.13; E_min =
    # 1,700 ksi x 0.58875 x 1.03 / 1.66 = 621.0; F_bE = 1.20 x 621.0 / 293.5 = 2.539 ksi; over 1.15:
    # 2.208; C_L = 1.6885 - sqrt(1.6885² - 2.3243) = 0.9628.
    assert loose / held == pytest.approx(0.9628, rel=1e-3)
    with pytest.raises(OutOfRange, match="slenderness"):
        strength(FIR, Stick(breadth=1.5, depth=16.0, unheld=400.0))


# Decks


def deck(kind: str, runs: str, thickness: float, **more: object) -> Deck:
    usual: dict[str, object] = {
        "address": "floor/deck", "kind": kind, "runs": runs, "thickness": thickness,
        "built": thickness, "plank_width": 8.0, "clear": 20.0, "support": 6.0, "made_of": FIR,
        "continuous": False, "joined": False,
    }
    return Deck(**{**usual, **more})  # type: ignore[arg-type]


PATCH = Patch(across=20.0, along=10.0)


@pytest.mark.parametrize(("one", "width", "spread"), [
    # Planks across: one plank, 10 in at least; the tyre's 20 in lie along them.
    (deck("plank", "across", 3.0), 10.0, 20.0),
    (deck("plank", "across", 3.0, plank_width=12.0), 12.0, 20.0),
    # Planks along: the tyre's width; 10 in of it along the span.
    (deck("plank", "along", 3.0), 20.0, 10.0),
    # Laminations across: 15 in, and the thickness where they run on.
    (deck("nail-laminated", "across", 6.0), 15.0, 20.0),
    (deck("nail-laminated", "across", 6.0, joined=True), 21.0, 20.0),
    # Panels along: the tyre and twice the thickness where they are tied.
    (deck("glued-laminated", "along", 5.0, joined=True), 30.0, 10.0),
    # A grating: 1 1/4 in for each ton of the axle and two spaces: 16 kip are 8 tons.
    (deck("steel grating", "across", 5.0, bars_apart=4.0), 1.25 * 8.0 + 8.0, 20.0),
    # Corrugated plank: the tyre and twice the depth.
    (deck("steel plank", "across", 2.0), 10.0 + 4.0, 20.0),
])
def test_how_much_deck_carries_a_wheel(one: Deck, width: float, spread: float) -> None:
    strip = strip_of(one, PATCH, 8.0, VALUES)
    assert strip.width == pytest.approx(width)
    assert strip.spread == spread
    # Clear 20 in and half of 6 in, no more than 20 in and the thickness.
    assert strip.span == pytest.approx(min(23.0, 20.0 + (one.thickness or 0.0)))


def test_the_tyre_of_the_older_methods_grows_with_the_wheel() -> None:
    patch = tyre(Method.LOAD_FACTOR, 16.0, VALUES)
    assert patch.across == pytest.approx(20.0)  # sqrt(0.025 x 16,000)
    assert patch.along == pytest.approx(8.0)


def test_a_steel_deck_by_its_makers_modulus_and_none_where_it_has_rusted() -> None:
    plank = deck("steel plank", "across", 2.0, made_of=IRON, modulus=0.6)
    strip = strip_of(plank, PATCH, 8.0, VALUES)
    found = deck_strengths(plank, strip, by(ASR), VALUES)
    assert [one.check for one in found] == ["bending of the deck"]
    # A wheel of 1 kip on 22 in: spread over 20 in: 22 / 4 - 20 / 8 = 3 in; 14 in of deck.
    assert found[0].divisor == pytest.approx(0.6 * 14.0 / 3.0)
    with pytest.raises(NotMeasured, match="rust has left"):
        deck_strengths(replace(plank, thickness=1.8), strip, by(ASR), VALUES)


# Bent rods


@pytest.mark.parametrize(("radius", "leg"), [(1.5, 20.0), (2.0, 8.0), (1.8, 0.001)])
def test_the_bend_over_a_pin_by_integration(radius: float, leg: float) -> None:
    # Half of the hook: a quarter ring from the crown, then a straight leg whose end does not turn.
    # Crown moment m, half the load 1/2 in each leg: M(t) = m - R (1 - (1 - sin t)) / 2 ... by
    # statics M = m - R sin t / 2 on the ring, m - R / 2 on the leg; the turn of the end is nothing.
    angles = np.linspace(0.0, pi / 2, 200_001)
    step = angles[1] - angles[0]
    bent = np.sin(angles)
    area = (bent.sum() - (bent[0] + bent[-1]) / 2) * step * radius
    assert area == pytest.approx(radius * (cos(0.0) - cos(pi / 2)) * sin(pi / 2))
    whole = pi * radius / 2 + leg
    crown = radius / 2 * (area + leg) / whole
    assert bend_moment(radius, leg) == pytest.approx(crown, rel=1e-6)
