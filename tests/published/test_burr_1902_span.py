"""W. H. Burr, Ancient and Modern Engineering and the Isthmian Canal (1902), section 112.

Pp. 134-136, read as Project Gutenberg no. 75910. Through span of 240 ft, eight panels of 30 ft,
depths at the inner panel points 27, 36, 40, 40, 40, 36, 27 ft, one diagonal a panel falling
towards the middle; 84,000 lb at each lower joint and 12,000 lb at each upper one; E = 28,000,000
psi. The middle's deflection is found by unit loads, w = s z l / E a bar, with rounded unit
stresses s. Two lengths are misprinted as 472 in, for the end post and the first diagonal: 30 ft
by 27 ft is 484.3 in.
"""

import math

import pytest

from tests.analysis.solving import at_rest
from tests.analysis.trusses import Drawing, bar
from tests.published.printing import printed

DEPTHS = (27.0, 36.0, 40.0, 40.0, 40.0, 36.0, 27.0)
E = 28_000_000.0
BARS = {
    # Bar: stress [lb] and its print's last meaning digit, s [psi], z, l [in], w [in].
    "L0-L1": ("+373,300", 100, 12_000, ".555", 360.0, ".08563"),
    "L1-L2": ("+373,300", 100, 12_000, ".555", 360.0, ".08563"),
    "L2-L3": ("+480,000", 1_000, 12_000, ".833", 360.0, ".1284"),
    "L3-L4": ("+540,000", 1_000, 12_000, "1.125", 360.0, ".1736"),
    "U1-L0": ("-502,300", 100, -9_000, "-.748", 472.0, ".1132"),
    "U1-U2": ("-501,000", 1_000, -9_500, "-.870", 376.0, ".1108"),
    "U2-U3": ("-544,800", 100, -10_000, "-1.135", 363.0, ".1472"),
    "U3-U4": ("-576,000", 1_000, -10_000, "-1.50", 360.0, ".1928"),
    "U1-L1": ("+84,000", 1_000, 9_000, "0", 324.0, "0"),
    "U1-L2": ("+143,500", 100, 10_000, ".3738", 472.0, ".0629"),
    "U2-L2": ("-12,000", 1_000, -1_000, "-.250", 432.0, ".00386"),
    "U2-L3": ("+93,720", 10, 7_400, ".456", 562.0, ".0677"),
    "U3-L3": ("+12,000", 1_000, 1_000, "-.35", 480.0, "-.0060"),
    "U3-L4": ("+60,000", 1_000, 4_800, ".625", 600.0, ".0643"),
    "U4-L4": ("-12,000", 1_000, -1_000, "0", 480.0, "0"),
}
MISPRINTED = ("U1-L0", "U1-L2")


def span() -> Drawing:
    """The truss, with all bars working both ways; it is determinate, so areas do not matter."""
    joints = {f"L{i}": (360.0 * i, 0.0) for i in range(9)}
    joints |= {f"U{i}": (360.0 * i, 12.0 * depth) for i, depth in enumerate(DEPTHS, start=1)}
    bars = [bar(f"L{i}", f"L{i + 1}", 30.0) for i in range(8)]
    bars += [bar(f"U{i}", f"U{i + 1}", 50.0) for i in range(1, 7)]
    bars += [bar("U1", "L0", 50.0), bar("U7", "L8", 50.0)]
    bars += [bar(f"U{i}", f"L{i}", 12.0) for i in range(1, 8)]
    bars += [bar(f"U{i}", f"L{i + 1}", 12.0) for i in (1, 2, 3)]
    bars += [bar(f"U{i}", f"L{i - 1}", 12.0) for i in (7, 6, 5)]
    return Drawing(
        joints=joints, bars=tuple(bars), supports={"L0": (True, True), "L8": (False, True)},
        floor_joints=tuple(f"L{i}" for i in range(9)),
    )


SPAN = span()
FORCES = at_rest(
    SPAN, {f"L{i}": 84_000.0 for i in range(1, 8)} | {f"U{i}": 12_000.0 for i in range(1, 8)}
)
UNIT = at_rest(SPAN, {"L4": 1.0})


def length(name: str) -> float:
    """Length of a bar from its joints [in]."""
    upper, lower = name.split("-")
    return math.dist(SPAN.joints[upper], SPAN.joints[lower])


def deflection(lengths: dict[str, float]) -> float:
    """Of L4 [in], by the source's unit stresses: twice the half span; the middle post has z = 0."""
    return 2.0 * sum(BARS[name][2] * UNIT[name] * lengths[name] / E for name in BARS)


@pytest.mark.parametrize("name", BARS)
def test_the_stress_of_every_bar(name: str) -> None:
    text, unit, *_ = BARS[name]
    assert FORCES[name] == printed(text, unit=unit)


@pytest.mark.parametrize("name", BARS)
def test_the_stress_of_every_bar_under_a_unit_load_in_the_middle(name: str) -> None:
    because = "the print cuts off or carries the third figure of four-figure work"
    assert UNIT[name] == printed(BARS[name][3], within=0.001, because=because)


@pytest.mark.parametrize("name", BARS)
def test_the_length_of_every_bar_but_the_two_misprinted(name: str) -> None:
    if name in MISPRINTED:
        # 30 ft by 27 ft.
        assert length(name) == pytest.approx(484.3, abs=0.05)
        assert BARS[name][4] == 472.0
    else:
        assert length(name) == printed(f"{BARS[name][4]:.0f}")


@pytest.mark.parametrize("name", [name for name in BARS if name not in MISPRINTED])
def test_what_every_bar_adds_to_the_deflection(name: str) -> None:
    _, _, stress, z, inches, text = BARS[name]
    assert stress * float(z) * inches / E == printed(
        text, within=2e-4, because="the print's own factors are rounded to three figures"
    )
    assert stress * UNIT[name] * length(name) / E == printed(
        text, within=2e-4, because="the print's own factors are rounded to three figures"
    )


def test_the_printed_deflection_follows_from_the_printed_lengths() -> None:
    as_printed = {name: BARS[name][4] for name in BARS}
    assert deflection(as_printed) == printed(
        "2.4600", within=0.005, because="it adds up products of factors with three figures"
    )


def test_the_right_lengths_give_more_than_the_print() -> None:
    # By hand, 2 x (.08571 + .08571 + .12857 + .17357 + .11636 + .11095 + .14721 + .19286 + .06464
    # + .00386 + .06771 - .00600 + .06429) = 2 x 1.23544 = 2.4709 in.
    right = {name: length(name) for name in BARS}
    assert deflection(right) == pytest.approx(2.4709, abs=0.0005)
