"""A bridge under wind: by hand, by the laws, and with braces that are gone."""

import re
from dataclasses import replace
from functools import cache

import pytest

from eyebar.analysis.laterals import LateralForces
from eyebar.bridge.state import bridge_on
from eyebar.demo import bridge_records
from eyebar.errors import BadRecord
from eyebar.office import office_values
from eyebar.office.values import Values
from eyebar.rating.wind import WindChecks, wind_checks
from eyebar.rating.wind_members import NO_BRACE, NO_STRUT, Stood
from eyebar.rating.wind_posts import BY_FOOT, outrigger_force, post_beside_outrigger
from eyebar.record import record_of
from eyebar.vehicles import shipped_vehicles

TEXTS = {name: path.read_text(encoding="utf-8") for name, path in bridge_records().items()}
FOOT = "by the foot"


@cache
def checks(name: str, *changes: tuple[str, str], times: float = 1.0) -> WindChecks:
    """A demo with some of its text replaced, all figures of the foot rule so many times."""
    text = TEXTS[name]
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    values = office_values()
    rows = {
        row: replace(value, value=value.value * times)
        if row.startswith("wind.by the foot.") and isinstance(value.value, float) else value
        for row, value in values.rows.items()
    }
    bridge = bridge_on(record_of(text, file=f"{name}.yaml"), None, values)
    return wind_checks(bridge, Values(rows=rows), shipped_vehicles())


def decided(*decisions: str) -> tuple[str, str]:
    return "\ndecisions:\n", "\ndecisions:\n" + "".join(f"  - {{{one}}}\n" for one in decisions)


def of(found: WindChecks, part: str, what: str, rule: str = FOOT) -> Stood:
    (one,) = [
        each for each in found.stood if (each.part, each.what, each.rule) == (part, what, rule)
    ]
    return one


def lateral(found: WindChecks, level: str, state: str) -> LateralForces:
    return next(
        path.laterals[level].forces for path in found.paths
        if (path.wind.rule, path.wind.state) == (FOOT, state)
    )


def test_the_laterals_of_a_whole_bridge_by_hand() -> None:
    # By hand, Dovetansy: 7 panels of 17.5 ft, trusses 17 ft apart, 0.15 kip/ft. Above, from the
    # middle of the end panels on, 6 x 17.5 = 105 ft: 15.75 kip, 7.875 at each portal; end panel
    # 7.875 - 2.625 = 5.25 kip, its brace of sqrt(17.5^2 + 17^2) = 24.398 ft: 5.25 x 24.398 / 17 =
    # 7.535 kip. Below, empty, the end shear is 0.15 x 122.5/2 less half a panel's 1.3125: 7.875.
    found = checks("dovetansy")
    top, bottom = lateral(found, "top", "empty"), lateral(found, "bottom", "empty")
    assert top.applied == pytest.approx(15.75)
    assert top.reactions == pytest.approx((7.875, 7.875))
    assert top.pull[0] == pytest.approx(7.535, abs=5e-4)
    assert bottom.shear[0] == pytest.approx(7.875)


def test_a_rod_stands_its_capacity_over_its_pull() -> None:
    # By hand: wrought iron of 26 ksi, 0.55 of it at inventory, 1.25 times as much for wind, on a
    # body of 7/8 in, 0.6013 in2 (its upset end is wider): 10.75 kip over 7.535 kip.
    found = of(checks("dovetansy"), "bracing/U1-U2/lateral", "top lateral")
    assert found.verdict.capacity == pytest.approx(0.55 * 26 * 1.25 * 0.6013, rel=1e-3)
    assert found.verdict.margin == pytest.approx(10.75 / 7.535, rel=1e-3)


def test_turning_over_by_hand() -> None:
    # By hand: 0.15 x 105 ft at 22 + 1 ft, 0.15 x 122.5 ft at 1 ft: 362.25 + 18.375 kip ft.
    found = [one for one in checks("dovetansy").overturning if one.rule == FOOT]
    for one in found:
        assert one.turning == pytest.approx(380.625)
        assert one.factor == pytest.approx(one.holding / 380.625)


def test_an_outrigger_by_hand() -> None:
    # By hand: 2 kip 96 in up, outrigger from 48 in up to 20 in out, 52 in long. Moments about the
    # post's foot: its part across at 48 in is 2 x 96/48 = 4 kip, along it 4 x 52/20 = 10.4 kip; its
    # upright part 4 x 48/20 = 9.6 kip comes on the post.
    assert outrigger_force(2.0, 96.0, 48.0, 20.0) == pytest.approx(10.4)
    assert post_beside_outrigger(2.0, 96.0, 20.0) == pytest.approx(9.6)


def test_the_posts_of_a_half_through_bridge_hold_so_much_for_each_foot() -> None:
    # By hand, Wrenmallow: panels of 14 ft 9 in, 7 ft 7 in at the hips: U1 has half of 7.5833 +
    # 14.75 ft, U2 half of 29.5 ft, 300 lb each. At 8 ft 3 in it is 4.425 x 8.25 = 36.5 kip ft.
    found = {
        one.joint: one for one in checks("wrenmallow").posts
        if one.rule == BY_FOOT and one.truss == "north"
    }
    assert found["U1"].force == pytest.approx(0.3 * (7.5833 + 14.75) / 2, rel=1e-4)
    assert found["U2"].force == pytest.approx(4.425)
    assert found["U2"].joint_moment == pytest.approx(4.425 * 99.0)
    assert {one.verdicts["outrigger"].margin is not None for one in found.values()} == {True}


def test_a_post_that_hangs_without_an_outrigger_holds_nothing() -> None:
    text = TEXTS["wrenmallow"]
    outrigger = text[text.index("    outrigger:\n"):text.index("  bottom laterals:")]
    assert {
        one.verdicts["post"].margin for one in checks("wrenmallow", (outrigger, "")).posts
    } == {0.0}


def test_twice_the_wind_halves_the_margin_of_every_brace() -> None:
    # A law for parts that wind alone pulls or pushes; with steady forces margins fall to half too,
    # since the margin is on the wind alone. Vehicles and feet that dead load holds are left out.
    once, twice = checks("dovetansy"), checks("dovetansy", times=2.0)
    laterals = [one for one in once.stood if one.what.endswith("lateral") and one.rule == FOOT]
    assert laterals
    for one in laterals:
        other = of(twice, one.part, one.what)
        assert one.verdict.margin is not None
        assert other.verdict.margin == pytest.approx(one.verdict.margin / 2)


def test_a_brace_that_is_gone_leaves_its_panel_without_one() -> None:
    broken = decided("date: 2026-06-01, what: broken, part: bracing/U1-U2/lateral, pieces: [1]")
    found = of(checks("dovetansy", broken), "bracing/U1-U2/lateral", "top lateral")
    assert (found.verdict.check, found.verdict.margin) == (NO_BRACE, 0.0)
    # Piece 1 begins at the first truss, west: it is pulled by wind from there.
    assert found.windward == "west"
    others = of(checks("dovetansy", broken), "bracing/U5-U6/lateral", "top lateral")
    assert others.verdict.margin == of(
        checks("dovetansy"), "bracing/U5-U6/lateral", "top lateral").verdict.margin


def test_a_strut_that_is_gone_and_a_portal_that_is_gone_are_told() -> None:
    strut = checks("dovetansy", decided("date: 2026-06-01, what: broken, part: bracing/U3/strut"))
    assert of(strut, "bracing/U3/strut", "top strut").verdict.check == NO_STRUT
    portal = checks("dovetansy", decided("date: 2026-06-01, what: loose, part: bracing/U1/strut"))
    assert portal.broken == ("the portal at U1 is broken or loose",)
    assert not [one for one in portal.stood if "U1-L0" in one.part]
    assert [one for one in portal.stood if "U6-L7" in one.part]


def test_what_is_not_measured_is_not_judged_and_says_why() -> None:
    text = TEXTS["dovetansy"]
    block = text[text.index("  top laterals:"):text.index("  bottom laterals:")]
    found = of(
        checks("dovetansy", (block, "  top laterals: {}\n")), "bracing/U1-U2/lateral", "top lateral"
    )
    assert found.verdict.margin is None
    assert "section not measured" in found.verdict.unknown


def test_without_laterals_nothing_is_taken_to_carry_the_wind() -> None:
    text = TEXTS["wrenmallow"]
    block = text[text.index("  bottom laterals:"):text.index("\ntraffic:")]
    found = checks("wrenmallow", (block, ""))
    assert "no bottom laterals are recorded" in found.broken[0]
    assert not found.stood


@pytest.mark.parametrize("written", ["foot width: 9 furlongs", "foot width: -9 in"])
def test_a_foot_that_cannot_be_is_refused(written: str) -> None:
    text = re.sub(r"foot width: 9 in", written, TEXTS["dovetansy"], count=1)
    with pytest.raises(BadRecord, match="foot width"):
        record_of(text, file="dovetansy.yaml")
