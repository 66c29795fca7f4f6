"""Where the bracing that is there, and still works, holds chords and posts."""

import pytest

from tests.bridge.plain import bar_of, bridge, decided, refused

POINTS = "    lateral points: [U1, U2, U3, U4, U5]\n"
FLOOR = "\nfloor:\n"
BRACED = """
bracing:
  overhead: true
  portals: {zero: {form: lattice}, other: {form: lattice}}
  struts: {overhead: {at: [U2, U3, U4]}}
  top laterals: {}
"""


def braced(*changes: tuple[str, str], block: str = BRACED) -> tuple[tuple[str, str], ...]:
    return ((POINTS, ""), (FLOOR, f"{block}{FLOOR}"), *changes)


def lengths(*changes: tuple[str, str], block: str = BRACED) -> dict[str, float]:
    found = bridge(*braced(*changes, block=block))
    return {
        name: bar_of(found, name).length_out_of_plane / 12
        for name in ("U1-U2", "U2-U3", "U3-U4", "U4-U5")
    }


def test_a_strut_at_every_joint_holds_every_panel() -> None:
    assert set(lengths().values()) == {15.0}


def test_a_broken_strut_doubles_the_length_of_the_panels_beside_it() -> None:
    broken = decided("date: 2020-06-01, what: broken, part: bracing/U3/strut")
    # By hand: U2 and U4 are still held, 30 ft apart; U1-U2 and U4-U5 are panels of 15 ft.
    assert lengths(broken) == {"U1-U2": 15.0, "U2-U3": 30.0, "U3-U4": 30.0, "U4-U5": 15.0}
    assert set(lengths(decided(
        "date: 2020-06-01, what: loose, part: bracing/U3/strut",
        "date: 2020-07-01, what: repair, part: bracing/U3/strut",
    )).values()) == {15.0}


def test_the_post_under_a_broken_strut_is_free_at_its_top() -> None:
    broken = decided("date: 2020-06-01, what: broken, part: bracing/U3/strut")
    found = bridge(*braced(broken))
    assert bar_of(found, "U3-L3").length_out_of_plane == 480.0
    assert bar_of(found, "U2-L2").length_out_of_plane == 240.0


def test_laterals_that_are_gone_leave_their_joints_to_the_other_portal() -> None:
    gone = "date: 2020-06-01, what: broken, part: bracing/U2-U3/lateral"
    assert set(lengths(decided(gone)).values()) == {15.0}
    both = "date: 2020-06-02, what: loose, part: bracing/U3-U4/lateral"
    # By hand: U3 is cut off from both portals; it is held no more.
    assert lengths(decided(gone, both)) == {
        "U1-U2": 15.0, "U2-U3": 30.0, "U3-U4": 30.0, "U4-U5": 15.0,
    }


def test_one_of_two_crossed_braces_is_enough() -> None:
    one = "date: 2020-06-01, what: broken, part: bracing/{}/lateral, pieces: [1]"
    assert set(lengths(decided(one.format("U2-U3"), one.format("U3-U4"))).values()) == {15.0}


def test_struts_without_laterals_hold_nothing() -> None:
    # Two chords that struts join can still lean the same way.
    assert set(lengths(block=BRACED.replace("  top laterals: {}\n", "")).values()) == {60.0}


def test_without_a_portal_that_works_the_chord_is_not_rated() -> None:
    broken = decided("date: 2020-06-01, what: broken, part: bracing/U1/strut")
    for found in (
        bridge(*braced(broken)),
        bridge(*braced(block=BRACED.replace("zero: {form: lattice}, ", ""))),
    ):
        assert "portal" in bar_of(found, "U2-U3").not_rated
        assert "portal" in bar_of(found, "U1-L0").not_rated
        assert bar_of(found, "L2-L3").not_rated == ""


def test_a_low_truss_whose_bracing_nobody_recorded_is_not_rated() -> None:
    # No road passes under struts at 9 ft: lateral points alone do not tell what holds the chord.
    found = bridge(("  depth: 20 ft", "  depth: 9 ft"))
    assert "too low for struts overhead" in bar_of(found, "U2-U3").not_rated
    assert "too low for struts overhead" in bar_of(found, "U1-L0").not_rated
    assert bar_of(found, "U2-L3").not_rated == ""


@pytest.mark.parametrize(
    ("block", "told"),
    [
        ("bracing: {overhead: false, struts: {a: {at: [U2]}}}", "stands beside braces"),
        ("bracing: {overhead: true, cross frames: {height: 6 ft}}", "stands beside cross frames"),
        ("bracing: {overhead: true, struts: {a: {at: [U9]}}}", "is no joint of the truss"),
        ("bracing: {overhead: true, struts: {a: {at: [U2]}, b: {at: [U2]}}}",
         "has a strut already, in 'a'"),
        ("bracing: {overhead: true, top laterals: {material: mud}}", "is no material"),
        ("bracing: {overhead: false, cross frames: {height: 6 ft, clear height: 7 ft}}",
         "is more than the whole height"),
        ("bracing: {overhead: false, cross frames: {height: 6 ft, joint: glued}}", "glued"),
        ("bracing: {overhead: true, struts: {a: {at: [U2], knee: {along: 12 ft, down: 3 ft}}}}",
         "is past the middle between trusses"),
        ("bracing: {overhead: perhaps}", "perhaps"),
        ("bracing: {overhead: false, cross frames: {height: -6 ft}}", "-6 ft"),
        ("bracing: {overhead: false, stiff joints: [X1]}", "is no joint of the truss"),
    ],
)
def test_bad_input_is_refused_by_name(block: str, told: str) -> None:
    assert told in refused((POINTS, ""), (FLOOR, f"\n{block}\n{FLOOR}"))


def test_what_is_said_twice_is_refused() -> None:
    assert "says what the bracing says" in refused((FLOOR, f"{BRACED}{FLOOR}"))


@pytest.mark.parametrize(
    ("part", "told"),
    [("bracing/U9/strut", "names no joint"), ("bracing/U1-U3/lateral", "is no panel with laterals"),
     ("bracing/U1/rope", "names no part of the bracing")],
)
def test_parts_of_the_bracing_that_are_nowhere(part: str, told: str) -> None:
    assert told in refused(*braced(decided(f"date: 2020-06-01, what: broken, part: {part}")))


def test_parts_of_a_bracing_that_is_not_recorded() -> None:
    broken = decided("date: 2020-06-01, what: broken, part: bracing/U3/strut")
    assert "a bracing that the record has not" in refused(broken)
