"""How far bars run unheld: between lateral points, between splices."""

import pytest

from eyebar.bridge.parts import Bar
from tests.bridge.plain import bar_of, bridge

POINTS = "    lateral points: [U1, U2, U3, U4, U5]\n"


def feet(bar: Bar) -> float:
    return bar.length_out_of_plane / 12.0


def test_a_chord_held_at_every_panel_point() -> None:
    chord = bar_of(bridge(), "U2-U3")
    assert (chord.length_in_plane, feet(chord)) == (180.0, 15.0)


@pytest.mark.parametrize(
    ("points", "lengths"),
    [
        # By hand, panels of 15 ft, chord from U1 to U5, whose ends the portals hold.
        ("[U1, U3, U5]", {"U1-U2": 30, "U2-U3": 30, "U3-U4": 30, "U4-U5": 30}),
        ("[U2]", {"U1-U2": 15, "U2-U3": 45, "U3-U4": 45, "U4-U5": 45}),
    ],
)
def test_a_chord_held_at_some_of_them(points: str, lengths: dict[str, float]) -> None:
    found = bridge((POINTS, f"    lateral points: {points}\n"))
    assert {name: feet(bar_of(found, name)) for name in lengths} == lengths


def test_a_chord_whose_lateral_points_nobody_recorded_is_held_at_its_ends_alone() -> None:
    found = bridge((POINTS, ""))
    # By hand: four panels of 15 ft from hip to hip.
    assert {feet(bar_of(found, bar)) for bar in ("U1-U2", "U2-U3", "U3-U4", "U4-U5")} == {60.0}
    assert any(
        rule.startswith("left: lateral points of the top chord are not recorded")
        for rule in found.rules
    )


def test_a_post_is_held_at_its_top_where_the_chord_is() -> None:
    found = bridge((POINTS, "    lateral points: [U1, U3, U5]\n"))
    # By hand: 20 ft; free at the top it bends like a bar of twice its length.
    assert feet(bar_of(found, "U3-L3")) == 20.0
    assert feet(bar_of(found, "U2-L2")) == 40.0


def test_a_bar_held_at_neither_end_is_not_rated() -> None:
    posts = "    bars: [U2-L2, U3-L3, U4-L4]\n"
    found = bridge((posts, f"{posts}    lateral points: [U2, L2, U3]\n"))
    assert bar_of(found, "U2-L2").not_rated == ""
    assert feet(bar_of(found, "U3-L3")) == 40.0
    assert "neither of its ends" in bar_of(found, "U4-L4").not_rated


def test_a_chord_runs_through_where_it_is_not_spliced() -> None:
    found = bridge()
    # Spliced at U3 alone: U1-U3 and U3-U5 are pieces of two panels.
    assert all(bar_of(found, bar).continuous for bar in ("U1-U2", "U2-U3", "U3-U4", "U4-U5"))
    everywhere = bridge(("spliced at: [U3]", "spliced at: [U2, U3, U4]"))
    assert not any(
        bar_of(everywhere, bar).continuous for bar in ("U1-U2", "U2-U3", "U3-U4", "U4-U5")
    )


def test_a_chord_whose_splices_nobody_recorded_is_cut_at_every_joint() -> None:
    assert not bar_of(bridge(("    spliced at: [U3]\n", "")), "U1-U2").continuous


def test_end_posts_and_bottom_chords_are_no_continuous_chords() -> None:
    assert not bar_of(bridge(), "U1-L0").continuous
    assert not bar_of(bridge(), "L2-L3").continuous
