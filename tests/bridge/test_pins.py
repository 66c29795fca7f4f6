"""Packings that are told once and lie at a joint and at its mirror image.

The invented Quillmarsh is alike from both ends, and its record tells every pin by itself: told for
one half alone, its pins have to be the same.
"""

import re

import numpy as np
import pytest

from eyebar.bridge.parts import Bridge, Pin
from eyebar.bridge.state import bridge_on
from eyebar.errors import BadRecord
from eyebar.office import office_values
from eyebar.rating.pin_checks import pin_rows
from eyebar.record import record_of
from tests.documents import demos

PANELS = 10
LOWER, UPPER = [f"L{i}" for i in range(5)], [f"U{i}" for i in range(1, 5)]


def image(name: str) -> str:
    """By hand: of ten panels, L2 is L8 and U4-L2 is U6-L8; the upper joint or the lesser number
    stands first."""
    ends = [f"{joint[0]}{PANELS - int(joint[1:])}" for joint in name.split("-")]
    return "-".join(sorted(ends, key=lambda one: (one[0] == "L", int(one[1:]))))


def whole() -> str:
    return demos.record("quillmarsh").read_text(encoding="utf-8")


def half(joints: str) -> str:
    """The record with the pins of one half, `joints` saying where else each lies."""
    text = whole()
    for joint in (*LOWER, *UPPER):
        far = image(joint)
        text = re.sub(rf"  pin at {far}:.*\n(?:    .*\n)+", "", text)
        text = text.replace(
            f"    joints: [{joint}]\n", f"    joints: [{joints.format(joint, far)}]\n")
    return text


def bridge(text: str) -> Bridge:
    return bridge_on(record_of(text.encode()), None, office_values())


def pins(of: Bridge) -> dict[str, Pin]:
    return {pin.address: pin for truss in of.trusses for pin in truss.pins}


@pytest.fixture(scope="module")
def told() -> dict[str, Pin]:
    return pins(bridge(whole()))


def test_a_packing_told_for_a_joint_and_its_image_names_the_bars_of_each(
    told: dict[str, Pin]
) -> None:
    text = half("{}, {}")
    assert text.count("packing:") < whole().count("packing:") - 8
    assert pins(bridge(text)) == told


def test_of_a_mirrored_record_the_pins_of_the_other_half_are_mirrored(
    told: dict[str, Pin]
) -> None:
    text = half("{}").replace(
        "  panels: 10 at 15 ft\n", "  panels: 5 at 15 ft\n  span: 150 ft\n  mirrored: true\n")
    assert pins(bridge(text)) == told


def test_a_joint_named_by_itself_is_not_an_image(told: dict[str, Pin]) -> None:
    text = whole().replace(
        "  panels: 10 at 15 ft\n", "  panels: 5 at 15 ft\n  span: 150 ft\n  mirrored: true\n")
    other = text.replace(
        "  pin at L8:\n    joints: [L8]\n    diameter: 2 3/4 in",
        "  pin at L8:\n    joints: [L8]\n    diameter: 3 in",
    )
    found = pins(bridge(other))
    assert found["upstream/L8/pin"].diameter == 3.0
    assert found["upstream/L2/pin"] == told["upstream/L2/pin"]


def test_elsewhere_than_at_the_image_the_bars_are_refused() -> None:
    text = half("{}, {}").replace("joints: [L3, L7]", "joints: [L3]")
    with pytest.raises(BadRecord, match="is no bar at upstream/L7/pin"):
        bridge(text.replace("joints: [L2, L8]", "joints: [L2, L8, L7]"))


@pytest.mark.parametrize("joint", [*LOWER, *UPPER])
def test_mirrored_forces_bend_the_pin_at_the_image_the_other_way(
    joint: str, told: dict[str, Pin]
) -> None:
    # A law: at the image every horizontal force is turned, every upright one as it was. Condition:
    # both pins packed alike and of one size.
    one, other = pin_rows(told[f"downstream/{joint}/pin"]), pin_rows(
        told[f"downstream/{image(joint)}/pin"])
    forces = dict(zip(one.bars, np.random.default_rng(7).normal(size=len(one.bars)), strict=True))
    here = np.array([forces[bar] for bar in one.bars])
    there = np.array([forces[image(bar)] for bar in other.bars])
    for name in ("loads", "moments", "eased", "shears"):
        turned = getattr(other, name) @ there * np.array([-1.0, 1.0])
        assert turned == pytest.approx(getattr(one, name) @ here, abs=1e-9), name


L4 = "  pin at L4:"


def at_l4(*changes: tuple[str, str]) -> str:
    """The record with lines of the packing at L4 written otherwise."""
    text = whole()
    begin = text.index(L4)
    end = text.index("  pin at L5:")
    packing = text[begin:end]
    for before, after in changes:
        assert before in packing
        packing = packing.replace(before, after, 1)
    return text[:begin] + packing + text[end:]


BAR = "      - {bar: L4-L5, thickness: 3/4 in, clearance: 1/16 in}"


def shared(*shares: str) -> str:
    """Two bearings of L4-L5 with fixed shares."""
    return at_l4(*(
        (BAR, BAR.replace("clearance", f"share: {share}, clearance")) for share in shares
    ))


def test_shared_bearings_take_their_fixed_shares() -> None:
    # By hand: of 80 kip in L4-L5 the outer bar takes 3/8 and the inner one 1/8: 30 and 10 kip.
    pin = pins(bridge(shared("3/8", "1/8")))["downstream/L4/pin"]
    rows = pin_rows(pin)
    forces = np.array([80.0 if bar == "L4-L5" else 0.0 for bar in rows.bars])
    there = [i for i, one in enumerate(pin.packing) if one.bars == ("L4-L5",)]
    assert (rows.loads[there] @ forces)[:, 0] == pytest.approx([30.0, 10.0])


def test_a_packing_out_of_balance_is_refused_with_the_imbalance() -> None:
    # By hand: 3/8 and 1/4 are 0.625 of the bar's force where half a pin takes 0.5.
    with pytest.raises(BadRecord, match=(
        r"upstream/L4/pin carries 0\.625 of the force of L4-L5, not 0\.5: .* by \+0\.125"
    )):
        bridge(shared("3/8", "1/4"))


def test_a_packing_that_leaves_the_hung_load_out_is_refused() -> None:
    text = at_l4(("      - {bar: hanger, thickness: 1 1/8 in, clearance: 1/8 in}\n", ""))
    with pytest.raises(BadRecord, match=r"the load hung on the pin, not 0\.5: .* by -0\.5"):
        bridge(text)


def test_a_worn_pin_counts_with_what_was_read_and_a_worn_hole_takes_nothing_from_it(
    told: dict[str, Pin]
) -> None:
    # The record: upstream/L4/pin read 2 23/32 in, of 2 3/4 in; downstream none.
    assert told["upstream/L4/pin"].diameter == 2.71875
    assert told["downstream/L4/pin"].diameter == 2.75
    reading = "      - {part: upstream/L4/pin, what: diameter"
    assert reading in whole()
    worn = whole().replace(
        reading, "      - {part: downstream/U2-L4, place: hole L4, what: hole, value: 2 29/32 in, "
        f"gauge: caliper}}\n{reading}", 1)
    assert pins(bridge(worn))["downstream/L4/pin"] == told["downstream/L4/pin"]
