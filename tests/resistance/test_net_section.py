"""What rivet holes leave of members, by hand."""

from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured, OutOfRange
from eyebar.resistance.punched import Hole, lines_of_holes, net_width
from eyebar.sections.punching import HoleLines, Punched, RivetHoles, punched_plates
from eyebar.sections.shapes import (
    Angle,
    Plate,
    Plates,
    PlatesAndAngles,
    Rolled,
    RolledShape,
    Side,
    Toes,
)
from eyebar.terms import Level, Method
from tests.resistance.bars import COVERED, LACED, bar, eyebars, limits_of

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
NET = "fracture of the net section"
HOLES = RivetHoles(
    rivet=0.625,
    lines=(HoleLines(where=Punched.WEB, lines=1), HoleLines(where=Punched.FLANGE, lines=1)),
)


def test_every_plate_loses_its_own_holes() -> None:
    # By hand, holes 5/8 + 1/8 = 3/4 in: two webs 0.75 x 1/4 each, four flanges 0.75 x 5/16 each:
    # 0.375 + 0.9375 of 5.1875 in2 leave 3.875, x 48 ksi = 186 kip.
    found = limits_of(bar(LACED, holes=HOLES), *OPERATING)[NET]
    assert found.force == pytest.approx(186.0, rel=1e-12)
    assert not any("holes not recorded" in remark for remark in found.remarks)


def test_holes_side_by_side_count_together_and_staggered_ones_give_back() -> None:
    # By hand, cover 11 x 1/4 in, two lines 8 in apart: side by side 2 x 0.75 x 0.25 = 0.375 in2;
    # staggered by 1 in: 1.5 - 1/(4 x 8) = 1.46875 in, 0.3671875 in2; by 6 in the step gives back
    # 1.125 in, so that one hole straight across takes more: 0.75 x 0.25. Gross 7.9375 in2.
    for stagger, taken in ((0.0, 0.375), (1.0, 0.3671875), (6.0, 0.1875)):
        line = HoleLines(where=Punched.COVER, lines=2, gauge=8.0, stagger=stagger)
        holes = RivetHoles(rivet=0.625, lines=(line,))
        found = limits_of(bar(COVERED, holes=holes), *OPERATING)[NET]
        assert found.force == pytest.approx(48 * (7.9375 - taken), rel=1e-12)


def test_a_chain_may_leave_the_straight_line_for_a_nearer_hole() -> None:
    # By hand: holes at 2 and 10 in, one at 6 in that is 1 in farther along. Straight through two:
    # 12 - 1.5 = 10.5; through all three: 12 - 2.25 + 2 x 1/16 = 9.875.
    holes = [Hole(along=0, across=2), Hole(along=1, across=6), Hole(along=0, across=10)]
    assert net_width(12.0, holes, 0.625) == pytest.approx(9.875, rel=1e-12)
    # 4 in farther along each step gives back 1 in, more than the hole takes: straight governs.
    holes[1] = Hole(along=4, across=6)
    assert net_width(12.0, holes, 0.625) == pytest.approx(10.5, rel=1e-12)
    assert net_width(12.0, [], 0.625) == 12.0


def test_an_endless_pattern_is_shown_by_two_holes_of_each_line() -> None:
    assert len(lines_of_holes(10.0, lines=3, gauge=3.0, stagger=0.0)) == 3
    pattern = lines_of_holes(10.0, lines=3, gauge=3.0, stagger=2.0)
    assert {hole.across for hole in pattern} == {2.0, 5.0, 8.0}
    # By hand: three holes less two steps of 4/12: 10 - 2.25 + 0.66667 = 8.41667; straight through
    # the two outer ones 10 - 1.5 = 8.5.
    assert net_width(10.0, pattern, 0.625) == pytest.approx(8.41667, abs=5e-6)


def test_holes_that_fit_no_plate_are_refused() -> None:
    legs = RivetHoles(rivet=0.625, lines=(HoleLines(where=Punched.LEG, lines=1),))
    with pytest.raises(OutOfRange, match="rivet holes is in a leg; it must be in one of its plat"):
        limits_of(bar(LACED, holes=legs), *OPERATING)
    wide = RivetHoles(
        rivet=0.625, lines=(HoleLines(where=Punched.WEB, lines=3, gauge=3.5),)
    )
    with pytest.raises(OutOfRange, match="outside the plate"):
        limits_of(bar(LACED, holes=wide), *OPERATING)
    with pytest.raises(OutOfRange, match="more than nothing"):
        net_width(2.0, [Hole(along=0, across=1)], 2.0)


@pytest.mark.parametrize(
    ("holes", "what"),
    [
        (replace(HOLES, rivet=None), "diameter of the rivets"),
        (RivetHoles(rivet=0.75, lines=(HoleLines(where=Punched.WEB, lines=2),)), "gauge of the ri"),
    ],
)
def test_holes_never_measured_are_not_guessed(holes: RivetHoles, what: str) -> None:
    with pytest.raises(NotMeasured, match=what):
        limits_of(bar(LACED, holes=holes), *OPERATING)


def test_the_plates_of_members_that_rivets_may_go_through() -> None:
    leg = Angle(upright=3.0, level=2.5, upright_thickness=0.25, level_thickness=0.3125)
    side = Side(web=Plate(width=12.0, thickness=0.375), top=leg, bottom=leg)
    built = PlatesAndAngles(near=side, far=side, middle=None, apart=9.0, toes=Toes.OUT)
    plates = punched_plates(built)
    assert [one.width for one in plates[Punched.WEB]] == [12.0, 12.0]
    assert [(one.width, one.thickness) for one in plates[Punched.LEG]] == [
        (3.0, 0.25), (2.5, 0.3125),
    ] * 4
    tee = Rolled(
        shape=RolledShape.TEE, number=1, depth=4.0, web=0.25, flange=5.0, flange_thickness=0.375
    )
    assert set(punched_plates(tee)) == {Punched.WEB, Punched.FLANGE}
    assert punched_plates(replace(tee, shape=RolledShape.I))[Punched.FLANGE][0].number == 2
    flat = Plates(plates=(Plate(width=8.0, thickness=0.5),))
    assert punched_plates(flat)[Punched.PLATE][0].width == 8.0
    assert punched_plates(eyebars(1)) == {}
