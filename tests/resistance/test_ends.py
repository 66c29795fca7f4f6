"""Pin plates, jaws, splices and butts, by hand."""

from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured, OutOfRange
from eyebar.sections.joined import PinPlates, Rivets, Splice
from eyebar.sections.shapes import Plate
from eyebar.terms import Kind, Level, Method
from tests.resistance.bars import EVERY_LEVEL, LACED, bar, given, limits_of

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
RIVETS = Rivets(number=6, diameter=0.75, cuts=1)
PINS = PinPlates(
    plate=Plate(width=5.0, thickness=0.375), hole=2.5, beyond=4.0, rivets=RIVETS
)
THIN = replace(PINS, plate=Plate(width=5.0, thickness=0.125), beyond=2.0)
SPLICE = Splice(
    butted=True, plates=(Plate(width=6.0, thickness=0.25),) * 2,
    rivets=Rivets(number=8, diameter=0.75, cuts=1), across=2,
)
BODY = 26 * 5.1875
"""The body's pull by load factor: two channels of 2.59375 in2 [kip]."""


def test_an_end_stronger_than_its_body_is_no_check_of_its_own() -> None:
    # By hand: through the hole 5.1875 - 2 x 2.5 x 0.25 + 2 x 2.5 x 0.375 = 5.8125 over 1.40 x 0.7 x
    # 5.1875 = 5.08375; behind it 2 x 4 x 0.625 = 5 over 3.63125.
    found = limits_of(bar(LACED, pin_plates=PINS), *OPERATING)
    assert "net section through the pin hole" not in found
    assert "metal behind the pin" not in found
    net = found["fracture of the net section"]
    assert not any("pin plates not recorded" in remark for remark in net.remarks)


def test_thin_pin_plates_take_from_the_bodys_pull() -> None:
    # By hand: 5.1875 - 1.25 + 2 x 2.5 x 0.125 = 4.5625 over 5.08375 is 0.897467; behind 2 x 2 x
    # 0.375 = 1.5 over 3.63125 is 0.413081; of 134.875 kip.
    found = limits_of(bar(LACED, pin_plates=THIN), *OPERATING)
    assert found["net section through the pin hole"].force == pytest.approx(
        0.8974674 * BODY, rel=1e-6
    )
    assert found["metal behind the pin"].force == pytest.approx(0.4130809 * BODY, rel=1e-6)


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_rivets_carry_the_pin_plates_share_both_ways(method: Method, level: Level) -> None:
    # By hand: shear of a rivet 9, 12, 18 and 0.90 x 18 ksi on 0.441786 in2, bearing on 1/8 in more
    # by load factor (8.1) and load and resistance (0.90 x 8.64), less by allowable stress: 40 x
    # 48/58 x 0.09375 = 3.103448 and 53 x 48/58 x 0.09375 = 4.112069; two webs, six rivets, a third
    # of the pressure.
    one = {
        (Method.ALLOWABLE_STRESS, Level.INVENTORY): 3.103448,
        (Method.ALLOWABLE_STRESS, Level.OPERATING): 4.112069,
        (Method.LOAD_FACTOR, Level.OPERATING): 7.952156,
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL): 7.156941,
    }[method, level]
    check = "rivets of the pin plates"
    found = limits_of(bar(LACED, pin_plates=THIN), method, level)
    assert found[check].force == pytest.approx(2 * 6 * one * 3, rel=1e-6)
    assert found[f"{check} in push"].force == -found[check].force


def test_jaws_are_columns_of_what_is_not_cut_away() -> None:
    # By hand: jaws 8 in long, 3/8 in thick in all, r 0.108253, slenderness 73.9008; 0.85 x 26 (1 -
    # 26 x 73.9008^2 / (4 pi^2 27900)) x 2 x 6 x 0.375 = 86.6293 kip. Through the hole 3 - 1.25 +
    # 0.625 = 2.375 over 5.08375 is 0.467175.
    found = limits_of(bar(LACED, pin_plates=THIN, jaw=8.0), *OPERATING)
    assert -found["jaws as columns"].force == pytest.approx(86.6293, rel=1e-6)
    assert found["net section through the pin hole"].force == pytest.approx(
        0.4671748 * BODY, rel=1e-6
    )
    assert "jaws as columns" not in limits_of(bar(LACED, pin_plates=THIN), *OPERATING)


def test_webs_without_pin_plates_stand_alone() -> None:
    # By hand: 5.1875 - 1.25 = 3.9375 over 5.08375 is 0.774527.
    plain = replace(PINS, plate=None, rivets=None)
    found = limits_of(bar(LACED, pin_plates=plain), *OPERATING)
    assert found["net section through the pin hole"].force == pytest.approx(
        0.7745267 * BODY, rel=1e-6
    )
    assert "rivets of the pin plates" not in found


@pytest.mark.parametrize(
    ("pins", "what"),
    [
        (replace(PINS, hole=None), "diameter of the pin hole"),
        (replace(PINS, beyond=None), "metal behind the pin hole"),
        (replace(PINS, plate=Plate(width=5.0, thickness=None)), "thickness of pin plates"),
        (replace(PINS, rivets=replace(RIVETS, number=None)), "number of the rivets of the pin"),
        (replace(PINS, rivets=replace(RIVETS, diameter=None)), "diameter of the rivets of the p"),
    ],
)
def test_ends_that_are_recorded_must_be_measured(pins: PinPlates, what: str) -> None:
    with pytest.raises(NotMeasured, match=what):
        limits_of(bar(LACED, pin_plates=pins), *OPERATING)


def test_pin_plates_narrower_than_the_hole_are_refused() -> None:
    narrow = replace(PINS, plate=Plate(width=2.0, thickness=0.25))
    with pytest.raises(OutOfRange, match="more than the hole"):
        limits_of(bar(LACED, pin_plates=narrow), *OPERATING)


def test_what_a_record_leaves_out_of_a_built_members_ends_is_said() -> None:
    chord = limits_of(bar(LACED, kind=Kind.BOTTOM_CHORD), *OPERATING)
    remarks = chord["fracture of the net section"].remarks
    assert "pin plates not recorded: its ends about the pins are not checked" in remarks
    assert "no splice recorded: none is checked" in remarks
    post = limits_of(bar(LACED, pin_plates=PINS), *OPERATING)
    said = post["fracture of the net section"].remarks
    assert not any(one.startswith(("pin plates", "no splice")) for one in said)
    webless = limits_of(bar(given(4.0, 1.0, 1.0), pin_plates=PINS), *OPERATING)
    assert "pin plates of a member without webs: not checked" in (
        webless["fracture of the net section"].remarks
    )


def test_splice_plates_and_their_rivets_pull() -> None:
    # By hand: two plates 6 x 1/4 in, 3.0 in2, two holes of 7/8 in across: 2 (6 - 1.75) 0.25 = 2.125
    # in2; 26 x 3 = 78 under 48 x 2.125 = 102 kip; eight rivets of 7.952156 kip.
    found = limits_of(bar(LACED, splice=SPLICE), *OPERATING)
    assert found["splice plates"].force == pytest.approx(78.0, rel=1e-12)
    assert found["rivets of the splice"].force == pytest.approx(8 * 7.952156, rel=1e-6)
    unpunched = limits_of(bar(LACED, splice=replace(SPLICE, across=None)), *OPERATING)
    remarks = unpunched["splice plates"].remarks
    assert remarks == (
        "holes of the splice not recorded: its net section taken as 0.7 of the gross",
    )


def test_a_joint_without_plates_cannot_pull() -> None:
    butt = Splice(butted=True)
    found = limits_of(bar(LACED, splice=butt, can_push=False), *OPERATING)["splice"]
    assert (found.force, found.capacity) == (0.0, 0.0)
    assert "a joint without splice plates cannot pull" in found.remarks


@pytest.mark.parametrize(
    ("method", "level", "part"),
    [
        # By hand: of the yield stress, 26 ksi, on 5.1875 in2; the last times 0.90 (system).
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, 0.80),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, 1.00),
        (Method.LOAD_FACTOR, Level.OPERATING, 1.00),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL, 0.90 * 1.40),
    ],
)
def test_butted_ends_push_by_bearing(method: Method, level: Level, part: float) -> None:
    found = limits_of(bar(LACED, splice=SPLICE, can_pull=False), method, level)
    assert -found["butted joint"].force == pytest.approx(part * BODY, rel=1e-12)
    assert "rivets of the splice in push" not in found


def test_ends_that_are_not_butted_push_through_their_splice() -> None:
    # By hand: 0.85 x 26 x 3.0 = 66.3 kip, too short to buckle; eight rivets of 7.952156.
    apart = replace(SPLICE, butted=False)
    found = limits_of(bar(LACED, splice=apart, can_pull=False), *OPERATING)
    assert -found["splice plates in push"].force == pytest.approx(66.3, rel=1e-12)
    assert -found["rivets of the splice in push"].force == pytest.approx(8 * 7.952156, rel=1e-6)
    nothing = Splice(butted=False)
    found = limits_of(bar(LACED, splice=nothing, can_pull=False), *OPERATING)
    assert found["splice in push"].force == 0.0
