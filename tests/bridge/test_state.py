"""The bridge on a date: readings and decisions applied, each rule said."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.bridge.parts import Bar, Bridge
from eyebar.errors import OutOfRange
from eyebar.loads.dead import joint_loads
from eyebar.sections.properties import area, properties
from eyebar.sections.shapes import Channels, Eyebars, Rods
from tests.bridge.plain import (
    bar_of,
    bridge,
    decided,
    inspected_on,
    refused,
    truss_of,
    with_readings,
)


def said(found: Bridge, words: str) -> bool:
    return any(words in rule for rule in found.rules)


def eyebars(bar: Bar) -> Eyebars:
    assert isinstance(bar.left, Eyebars)
    return bar.left


def test_the_plain_bridge_is_as_built() -> None:
    found = bridge()
    assert found.on == date(2020, 5, 4)
    assert [truss.name for truss in found.trusses] == ["left", "right"]
    truss = truss_of(found)
    # By hand: 2 end posts, 4 + 6 chords, 2 hip verticals, 3 posts, 4 diagonals, 2 counters.
    assert len(truss.bars) == 23
    assert truss.supports == {"L0": (True, True), "L6": (False, True)}
    assert truss.floor_joints[-1] == ("L6", 90.0)
    assert all(bar.as_built == bar.left and not bar.readings for bar in truss.bars)
    assert not found.condition_measured
    # By hand: sqrt(15^2 + 20^2) = 25 ft.
    assert bar_of(found, "U1-L2").length == pytest.approx(300.0)
    assert bar_of(found, "U1-L2").run == pytest.approx(180.0)


def test_what_goes_slack_cannot_push() -> None:
    pushing = {bar.name for bar in truss_of(bridge()).bars if bar.can_push}
    assert pushing == {
        "U1-L0", "U5-L6", "U1-U2", "U2-U3", "U3-U4", "U4-U5", "U2-L2", "U3-L3", "U4-L4",
    }
    assert all(bar.can_pull for bar in truss_of(bridge()).bars)


def test_the_latest_reading_at_a_place_holds() -> None:
    found = bridge(
        with_readings("part: left/L2-L3, place: mid, what: thickness, value: 15/16 in"),
        inspected_on("2024-06-01",
                     "part: left/L2-L3, place: mid, what: thickness, value: 7/8 in"),
    )
    assert found.on == date(2024, 6, 1)
    assert [bar.thickness for bar in eyebars(bar_of(found, "L2-L3")).bars] == [0.875, 0.875]
    assert bar_of(found, "L2-L3").readings == ("thickness 7/8 in at mid on 2024-06-01",)
    # The other truss, and the stiffness, are as built.
    assert area(bar_of(found, "L2-L3", "right").left) == pytest.approx(6.0)
    assert area(bar_of(found, "L2-L3").as_built) == pytest.approx(6.0)
    assert found.condition_measured


def test_the_state_on_an_earlier_date_knows_nothing_of_later_ones() -> None:
    changes = (
        with_readings("part: left/L2-L3, place: mid, what: thickness, value: 15/16 in"),
        inspected_on("2024-06-01",
                     "part: left/L2-L3, place: mid, what: thickness, value: 7/8 in"),
    )
    found = bridge(*changes, on=date(2022, 1, 1))
    assert eyebars(bar_of(found, "L2-L3")).bars[0].thickness == 0.9375
    earliest = bridge(*changes, on=date(1900, 1, 1))
    assert eyebars(bar_of(earliest, "L2-L3")).bars[0].thickness == 1.0
    assert not earliest.condition_measured


def test_a_date_before_the_bridge_was_built_is_refused() -> None:
    with pytest.raises(OutOfRange, match="not before 1892"):
        bridge(on=date(1890, 1, 1))


def test_the_least_of_all_places_governs_the_body() -> None:
    # An old reading at another place still holds: nobody has read that place again.
    found = bridge(
        with_readings("part: left/L2-L3, place: 2 ft from L2, what: thickness, value: 3/4 in"),
        inspected_on("2024-06-01",
                     "part: left/L2-L3, place: mid, what: thickness, value: 7/8 in"),
    )
    assert eyebars(bar_of(found, "L2-L3")).bars[0].thickness == 0.75


def test_heads_go_by_their_own_readings() -> None:
    found = bridge(with_readings(
        "part: left/L2-L3, place: head L2, what: thickness, value: 3/4 in",
        "part: left/L2-L3, place: head L3, what: thickness, value: 7/8 in",
    ))
    bar = eyebars(bar_of(found, "L2-L3")).bars[0]
    assert (bar.thickness, bar.head_thickness) == (1.0, 0.75)


def test_a_head_that_nobody_read_is_no_thicker_than_the_body_is_left() -> None:
    found = bridge(with_readings(
        "part: left/L2-L3, place: head L2, what: thickness, value: 15/16 in",
        "part: left/L2-L3, place: mid, what: thickness, value: 3/4 in",
    ))
    bar = eyebars(bar_of(found, "L2-L3")).bars[0]
    assert (bar.thickness, bar.head_thickness) == (0.75, 0.75)
    assert said(found, "left/L2-L3: only the head at L2 was read")


def test_a_reading_on_one_piece_leaves_the_others() -> None:
    found = bridge(with_readings(
        "part: left/L2-L3, place: mid, what: thickness, value: 7/8 in, piece: 2",
    ))
    assert [bar.thickness for bar in eyebars(bar_of(found, "L2-L3")).bars] == [1.0, 0.875]


def test_a_later_reading_on_one_piece_stands_for_that_piece_alone() -> None:
    found = bridge(
        with_readings("part: left/L2-L3, place: mid, what: thickness, value: 7/8 in"),
        inspected_on("2024-06-01",
                     "part: left/L2-L3, place: mid, what: thickness, value: 3/4 in, piece: 1"),
    )
    assert [bar.thickness for bar in eyebars(bar_of(found, "L2-L3")).bars] == [0.75, 0.875]


def test_the_bow_of_a_bent_post_is_kept_beside_its_section() -> None:
    found = bridge(with_readings("part: right/U3-L3, place: mid, what: bow, value: 3/4 in"))
    post = bar_of(found, "U3-L3", "right")
    assert (post.bow, post.left) == (0.75, post.as_built)
    assert not found.condition_measured


def test_a_new_section_drops_the_readings_before_it() -> None:
    found = bridge(
        with_readings("part: left/U1-L2, place: mid, what: thickness, value: 3/8 in"),
        decided(
            "date: 2021-03-03, what: repair, part: left/U1-L2, "
            "section: {eyebars: {thickness: 5/8 in}}"
        ),
    )
    # By hand: 4 bars of 2 in x 5/8 in = 5 in2.
    assert area(bar_of(found, "U1-L2").left) == pytest.approx(5.0)
    assert bar_of(found, "U1-L2").left == bar_of(found, "U1-L2").as_built
    assert said(found, "left/U1-L2: replaced on 2021-03-03")


def test_a_repair_without_a_section_makes_no_iron() -> None:
    found = bridge(
        with_readings("part: left/U1-L2, place: mid, what: thickness, value: 3/8 in"),
        decided("date: 2021-03-03, what: repair, part: left/U1-L2"),
    )
    # By hand: 4 bars of 2 in x 3/8 in = 3 in2.
    assert area(bar_of(found, "U1-L2").left) == pytest.approx(3.0)
    assert said(found, "without a new section")


def test_a_broken_bar_is_out_of_the_model() -> None:
    found = bridge(decided("date: 2021-03-03, what: broken, part: left/U3-L2"))
    truss = truss_of(found)
    assert "U3-L2" not in {bar.name for bar in truss.bars}
    assert [bar.not_rated for bar in truss.broken] == ["declared broken on 2021-03-03"]
    assert not truss_of(found, "right").broken


def test_a_broken_piece_leaves_the_others_to_carry_it_all() -> None:
    found = bridge(decided("date: 2021-03-03, what: broken, part: left/U1-L2, pieces: [2]"))
    bar = bar_of(found, "U1-L2")
    # By hand: 3 bars of 2 in x 1/2 in = 3 in2 left, for strength and for stiffness.
    assert (area(bar.left), area(bar.as_built)) == (3.0, 3.0)
    assert said(found, "piece 2 of 4 declared broken")


@pytest.mark.parametrize(
    "decision",
    [
        "what: broken, part: left/U1-L2, pieces: [2]",
        "what: loose, part: left/U1-L2, pieces: [1, 4]",
        "what: loose, part: left/U1-L2, pieces: [1, 4], gap: 1/8 in",
        "what: broken, part: left/U1-L2",
        "what: loose, part: left/U1-L2",
    ],
)
def test_what_is_broken_or_loose_still_hangs_there_and_weighs(decision: str) -> None:
    # Law: a set weighs what it weighs, whichever of its pieces work.
    whole, found = bridge(), bridge(decided(f"date: 2021-03-03, {decision}"))
    assert joint_loads(truss_of(found), ()) == {
        joint: pytest.approx(load) for joint, load in joint_loads(truss_of(whole), ()).items()
    }


def test_pieces_that_broke_and_others_that_are_loose_weigh_as_well() -> None:
    found = bridge(decided(
        "date: 2021-03-03, what: broken, part: left/U1-L2, pieces: [2]",
        "date: 2021-03-03, what: loose, part: left/U1-L2, pieces: [1, 3, 4], gap: 1/8 in",
    ))
    bar = bar_of(found, "U1-L2")
    assert bar.hanging is not None
    # By hand: four bars of 2 in x 1/2 in, 1 in2 each, one of them broken.
    assert (area(bar.as_built), area(bar.hanging)) == (3.0, 1.0)


def test_a_broken_bar_that_was_mended_is_back() -> None:
    found = bridge(decided(
        "date: 2021-03-03, what: broken, part: left/U3-L2",
        "date: 2021-04-01, what: repair, part: left/U3-L2",
    ))
    assert not truss_of(found).broken


def test_loose_pieces_without_a_gap_carry_nothing() -> None:
    found = bridge(decided("date: 2021-03-03, what: loose, part: left/U1-L2, pieces: [1, 4]"))
    bar = bar_of(found, "U1-L2")
    assert (area(bar.left), area(bar.as_built), bar.gap_in) == (2.0, 2.0, 0.0)
    assert said(found, "pieces 1 and 4 of 4 declared loose on 2021-03-03, its gap not measured")


def test_loose_pieces_with_a_gap_are_a_bar_of_their_own() -> None:
    found = bridge(
        with_readings("part: left/U1-L2, place: mid, what: thickness, value: 3/8 in, piece: 4"),
        decided(
            "date: 2021-03-03, what: loose, part: left/U1-L2, pieces: [3, 4], gap: 1/8 in"
        ),
    )
    tight, loose = bar_of(found, "U1-L2"), bar_of(found, "U1-L2 loose")
    # By hand: two bars of 1 in2 each; of the loose ones one is 2 in x 3/8 in = 0.75 in2.
    assert (area(tight.left), tight.gap_in) == (2.0, 0.0)
    assert (area(loose.left), area(loose.as_built), loose.gap_in) == (1.75, 2.0, 0.125)
    assert loose.address == "left/U1-L2 loose"
    assert loose.ends == tight.ends


def test_a_piece_that_breaks_later_does_not_mend_the_one_before() -> None:
    found = bridge(decided(
        "date: 2021-03-03, what: broken, part: left/U1-L2, pieces: [2]",
        "date: 2023-03-03, what: broken, part: left/U1-L2, pieces: [4]",
    ))
    # By hand: 2 of 4 bars of 2 in x 1/2 in are left.
    assert area(bar_of(found, "U1-L2").left) == 2.0
    assert said(found, "pieces 2 and 4 of 4 declared broken")
    earlier = bridge(decided(
        "date: 2021-03-03, what: broken, part: left/U1-L2, pieces: [2]",
        "date: 2023-03-03, what: broken, part: left/U1-L2, pieces: [4]",
    ), on=date(2022, 1, 1))
    assert area(bar_of(earlier, "U1-L2").left) == 3.0


@pytest.mark.parametrize(
    ("first", "second", "gap"),
    [
        # The same pieces, measured again: the later gap holds.
        ("pieces: [3, 4], gap: 1/8 in", "pieces: [3, 4], gap: 1/16 in", 1 / 16),
        ("pieces: [3, 4]", "pieces: [3, 4], gap: 1/16 in", 1 / 16),
        # Another piece besides: the widest gap, and none where one is not known.
        ("pieces: [3], gap: 1/8 in", "pieces: [4], gap: 1/16 in", 1 / 8),
        ("pieces: [3]", "pieces: [4], gap: 1/16 in", None),
        ("pieces: [3], gap: 1/16 in", "pieces: [4]", None),
    ],
)
def test_loose_pieces_add_up(first: str, second: str, gap: float | None) -> None:
    found = bridge(decided(
        f"date: 2021-03-03, what: loose, part: left/U1-L2, {first}",
        f"date: 2023-03-03, what: loose, part: left/U1-L2, {second}",
    ))
    # By hand: two of four bars are tight, 2 in2; where the gap is known the others are a bar too.
    assert area(bar_of(found, "U1-L2").left) == 2.0
    loose = [bar for bar in truss_of(found).bars if bar.name == "U1-L2 loose"]
    assert [bar.gap_in for bar in loose] == ([] if gap is None else [gap])


def test_a_bar_that_is_loose_stays_so_when_one_piece_is_named_later() -> None:
    found = bridge(decided(
        "date: 2021-03-03, what: loose, part: left/U1-L2, gap: 1/8 in",
        "date: 2023-03-03, what: loose, part: left/U1-L2, pieces: [1], gap: 1/16 in",
    ))
    assert bar_of(found, "U1-L2").gap_in == 0.125


def test_a_whole_bar_that_is_loose_keeps_its_name() -> None:
    found = bridge(decided("date: 2021-03-03, what: loose, part: left/U3-L2, gap: 1/4 in"))
    assert bar_of(found, "U3-L2").gap_in == 0.25


def test_a_whole_bar_that_is_loose_without_a_gap_is_out_of_the_model() -> None:
    found = bridge(decided("date: 2021-03-03, what: loose, part: left/U3-L2"))
    assert "its gap not measured" in truss_of(found).broken[0].not_rated


def test_a_crack_is_not_rated_until_it_is_mended() -> None:
    cracked = decided("date: 2021-03-03, what: crack found, part: left/L1-L2")
    assert "cracked, found on 2021-03-03" in bar_of(bridge(cracked), "L1-L2").not_rated
    mended = decided(
        "date: 2021-03-03, what: crack found, part: left/L1-L2",
        "date: 2021-03-09, what: repair, part: left/L1-L2",
    )
    assert bar_of(bridge(mended), "L1-L2").not_rated == ""


@pytest.mark.parametrize(
    ("reading", "words"),
    [
        ("part: left/L1-L2, place: head L1, what: crack, value: 1/2 in", "a crack was read"),
        ("part: left/L1-L2, what: gap, value: 1/8 in", "a gap was read"),
    ],
)
def test_a_finding_that_nobody_decided_on_is_not_passed_over(reading: str, words: str) -> None:
    assert words in bar_of(bridge(with_readings(reading)), "L1-L2").not_rated


def test_a_pull_counts_once_it_is_accepted() -> None:
    read = with_readings("part: left/U3-L2, what: pull, value: 2 kip")
    assert bar_of(bridge(read), "U3-L2").pull_kip is None
    assert said(bridge(read), "not used until it is accepted")
    accepted = decided(
        "date: 2021-03-03, what: pull accepted, part: left/U3-L2, pull: 2 kip"
    )
    assert bar_of(bridge(read, accepted), "U3-L2").pull_kip == 2.0


def test_what_is_loose_has_a_gap_and_no_pull() -> None:
    accepted = "date: 2021-03-03, what: pull accepted, part: left/U1-L2, pull: 2 kip"
    some = bridge(decided(
        accepted, "date: 2021-03-03, what: loose, part: left/U1-L2, pieces: [4], gap: 1/8 in"
    ))
    assert (bar_of(some, "U1-L2").pull_kip, bar_of(some, "U1-L2").gap_in) == (2.0, 0.0)
    loose = bar_of(some, "U1-L2 loose")
    assert (loose.pull_kip, loose.gap_in) == (None, 0.125)
    whole = bridge(decided(
        accepted, "date: 2021-03-03, what: loose, part: left/U1-L2, gap: 1/8 in"
    ))
    assert (bar_of(whole, "U1-L2").pull_kip, bar_of(whole, "U1-L2").gap_in) == (None, 0.125)
    assert said(whole, "its accepted pull is not used while it is loose")


def test_an_override_is_for_one_part_alone() -> None:
    found = bridge((
        "\nfloor:\n",
        "\noverrides:\n  left/L2-L3:\n    section: {eyebars: {thickness: 3/4 in}}\n"
        "    material: iron\n    reason: a replacement\n\nfloor:\n",
    ))
    assert area(bar_of(found, "L2-L3").as_built) == pytest.approx(4.5)
    assert bar_of(found, "L2-L3").material.name == "iron"
    assert area(bar_of(found, "L2-L3", "right").as_built) == pytest.approx(6.0)


def test_a_size_never_measured_stays_unknown_until_it_is_read() -> None:
    unknown = ("thickness: 1 in, head: 7 1/2 in", "thickness: not measured, head: 7 1/2 in")
    assert eyebars(bar_of(bridge(unknown), "L2-L3")).bars[0].thickness is None
    read = with_readings("part: left/L2-L3, place: mid, what: thickness, value: 7/8 in")
    found = bar_of(bridge(unknown, read), "L2-L3")
    assert eyebars(found).bars[0].thickness == 0.875
    assert found.as_built == found.left
    assert said(bridge(unknown, read), "thickness as built is not known")


@pytest.mark.parametrize("what", ["head thickness", "beyond hole"])
def test_what_is_written_down_as_not_measured_is_not_filled_in(what: str) -> None:
    unknown = ("hole: 2 1/2 in}\n    material: steel\n  hip",
               f"hole: 2 1/2 in, {what}: not measured}}\n    material: steel\n  hip")
    assert bar_of(bridge(unknown), "L2-L3").not_rated == f"{what} not measured"
    read = with_readings(f"part: left/L2-L3, place: head L2, what: {what}, value: 7/8 in")
    assert bar_of(bridge(unknown, read), "L2-L3").not_rated == ""


def test_a_frozen_bearing_is_taken_as_free_and_the_result_says_so() -> None:
    found = bridge(("other: free}", "other: frozen}"))
    assert truss_of(found).supports == {"L0": (True, True), "L6": (False, True)}
    assert said(found, "left/L6/bearing is frozen and taken as free")


@pytest.mark.parametrize(
    ("ends", "held"),
    [
        ("{zero: free, other: fixed}", "L6"), ("{zero: frozen, other: free}", "L0"),
        ("{zero: free, other: frozen}", "L6"), ("{zero: frozen, other: fixed}", "L6"),
        ("{zero: fixed, other: fixed}", "L0"), ("{zero: frozen, other: frozen}", "L0"),
    ],
)
def test_one_end_is_held_along_the_road_and_one_alone(ends: str, held: str) -> None:
    supports = truss_of(bridge(("{zero: fixed, other: free}", ends))).supports
    assert [joint for joint, (along, _) in supports.items() if along] == [held]
    assert all(up for _, up in supports.values())


def test_a_bearing_may_be_overridden() -> None:
    found = bridge((
        "\nfloor:\n",
        "\noverrides:\n  right/L6/bearing: {bearing: frozen, reason: rusted}\n\nfloor:\n",
    ))
    assert said(found, "right/L6/bearing is frozen")
    assert not said(found, "left/L6/bearing is frozen")


def test_the_superstructure_code_is_the_latest_given() -> None:
    later = inspected_on("2024-06-01")
    coded = (later[0], later[1].replace(
        "    readings:\n", "    condition: {superstructure: 4}\n    readings: []\n"
    ))
    assert bridge(coded).superstructure_condition == 4
    assert bridge(coded, on=date(2023, 1, 1)).superstructure_condition == 6


def test_pins_under_a_cover_plate_that_nobody_placed_are_at_mid_depth() -> None:
    silent = ("    pin offset: 1/2 in\n    spliced", "    spliced")
    found = bridge(silent)
    chord = bar_of(found, "U2-U3")
    assert isinstance(chord.as_built, Channels)
    # By hand: channels 2 x (8 x .25 + 2 x 1.75 x .25) = 5.75 in2 at 4 in, plate 3 in2 at 8.125 in:
    # (23 + 24.375) / 8.75 = 5.41429 in, 1.41429 above mid-depth.
    assert chord.pin_offset == pytest.approx(1.41429, abs=1e-5)
    assert chord.pin_offset == pytest.approx(properties(chord.as_built).y_bar - 4.0)
    assert said(found, "pin offset not recorded")
    assert bar_of(bridge(), "U2-U3").pin_offset == 0.5


def test_coupons_are_never_a_mean() -> None:
    tested = ("iron: {metal: wrought iron}",
              "iron: {metal: wrought iron, coupons: {yield: [30 ksi, 32 ksi, 34 ksi]}}")
    material = bar_of(bridge(tested), "U2-L2").material
    # By hand: mean 32, deviation 2, factor 3.152 (95 % share, 75 % confidence, 3 tests): 25.70.
    assert material.yield_stress == pytest.approx(25.70, abs=0.01)
    assert material.coupons == 3
    assert "3 coupons" in material.sources["yield stress"]
    # What was not tested is from the office's table.
    assert material.tensile_strength == 48.0


def test_two_coupons_are_refused() -> None:
    tested = ("iron: {metal: wrought iron}",
              "iron: {metal: wrought iron, coupons: {yield: [30 ksi, 32 ksi]}}")
    assert "number of coupons is 2; it must be 3 or more" in refused(tested)


def test_a_figure_given_with_its_source_comes_first() -> None:
    told = ("iron: {metal: wrought iron}",
            "iron: {metal: wrought iron, yield: 28 ksi, source: mill sheet}")
    material = bar_of(bridge(told), "U2-L2").material
    assert material.yield_stress == 28.0
    assert material.sources["yield stress"] == "28 ksi, mill sheet"


def test_steel_takes_the_strength_of_its_year() -> None:
    # Table by year, from memory: 26 ksi before 1905, 33 ksi from 1936 to 1963.
    assert bar_of(bridge(), "L1-L2").material.yield_stress == 26.0
    later = ("steel: {metal: steel}", "steel: {metal: steel, built: 1950}")
    assert bar_of(bridge(later), "L1-L2").material.yield_stress == 33.0


def test_cast_iron_is_not_rated_without_a_strength() -> None:
    cast = ("iron: {metal: wrought iron}",
            "iron: {metal: cast iron, modulus: 14000 ksi, source: a handbook}")
    assert "no strength is known here for cast iron" in bar_of(bridge(cast), "U2-L2").not_rated


def test_cast_iron_without_a_modulus_is_refused() -> None:
    assert "modulus of cast iron" in refused(
        ("iron: {metal: wrought iron}", "iron: {metal: cast iron}")
    )


def test_what_carries_traffic_and_is_no_bar_is_listed() -> None:
    found = bridge(decided("date: 2021-03-03, what: crack found, part: floor/L2/floorbeam"))
    listed = {part.address: part for part in found.others}
    # By hand: 12 pins, 5 hangers and 2 bearings a truss; 5 floorbeams, 6 x 6 stringers, a deck.
    assert len(listed) == 2 * (12 + 5 + 2) + 5 + 36 + 1
    assert listed["floor/L2/floorbeam"].not_rated.startswith("declared cracked on 2021-03-03")
    assert listed["left/U3/pin"].truss == "left"
    assert listed["floor/panel 6/stringer 4"].truss is None


def test_riveted_joints_have_no_pins() -> None:
    riveted = bridge(
        ("    material: iron\n    pin offset: 1/2 in\n    spliced",
         "    material: iron\n    ends: riveted\n    pin offset: 1/2 in\n    spliced"),
    )
    # Bars of the other groups still turn about pins there.
    assert "left/U3/pin" in {part.address for part in riveted.others}


def test_weights_that_nobody_measured_leave_every_bar_unrated() -> None:
    found = bridge(("kind: gravel, thickness: 2 in", "kind: gravel, thickness: not measured"))
    assert found.unknown_loads == ("thickness of surfacing not measured",)
    assert all("dead load not known" in bar.not_rated for bar in truss_of(found).bars)
    read = with_readings("part: floor/deck, what: surfacing thickness, value: 3 in")
    known = bridge(("kind: gravel, thickness: 2 in", "kind: gravel, thickness: not measured"), read)
    assert known.unknown_loads == ()
    assert known.roadway.surfacing_measured


def test_half_a_record_with_its_mirror_image_is_the_whole() -> None:
    half = bridge(
        ("panels: 6 at 15 ft", "panels: 3 at 15 ft\n  mirrored: true"),
        ("counters: [U3-L2, U3-L4]", "counters: [U3-L2]"),
        ("bars: [U1..U5]", "bars: [U1..U3]"), ("bars: [U1-L0, U5-L6]", "bars: [U1-L0]"),
        ("bars: [L0..L6]", "bars: [L0..L3]"), ("bars: [U1-L1, U5-L5]", "bars: [U1-L1]"),
        ("bars: [U2-L2, U3-L3, U4-L4]", "bars: [U2-L2, U3-L3]"),
        ("bars: [U1-L2, U5-L4]", "bars: [U1-L2]"), ("bars: [U2-L3, U4-L3]", "bars: [U2-L3]"),
        ("bars: [U3-L2, U3-L4]", "bars: [U3-L2]"),
        ("lateral points: [U1, U2, U3, U4, U5]", "lateral points: [U1, U2, U3]"),
    )
    whole = bridge()
    for truss in ("left", "right"):
        ours, theirs = truss_of(half, truss), truss_of(whole, truss)
        assert ours.joints == theirs.joints
        assert ours.supports == theirs.supports
        assert ours.floor_joints == theirs.floor_joints
        by_name = {bar.name: bar for bar in ours.bars}
        assert by_name == {bar.name: bar for bar in theirs.bars}


def test_a_truss_given_joint_by_joint_is_the_one_of_its_form() -> None:
    joints = "\n".join(
        [f"    L{i}: [{15 * i} ft, 0 ft]" for i in range(7)]
        + [f"    U{i}: [{15 * i} ft, 20 ft]" for i in range(1, 6)]
    )
    given_joints = bridge(
        ("  form: Pratt\n  panels: 6 at 15 ft\n  depth: 20 ft\n  counters: [U3-L2, U3-L4]\n",
         f"  joints:\n{joints}\n  floor: [L0, L1, L2, L3, L4, L5, L6]\n"),
    )
    ours, theirs = truss_of(given_joints), truss_of(bridge())
    assert ours.joints == theirs.joints
    assert {bar.name: bar for bar in ours.bars} == {bar.name: bar for bar in theirs.bars}


@settings(max_examples=15, deadline=None)  # each example reads three records
@given(st.lists(st.sampled_from(["7/8 in", "3/4 in", "15/16 in", "1/2 in"]), min_size=1,
                max_size=3))
def test_more_readings_never_leave_more(thicknesses: list[str]) -> None:
    # Law: readings at more places leave the body no thicker.
    before = 6.0
    for number in range(1, len(thicknesses) + 1):
        read = with_readings(*(
            f"part: left/L2-L3, place: {i + 1} ft from L2, what: thickness, value: {value}"
            for i, value in enumerate(thicknesses[:number])
        ))
        after = area(bar_of(bridge(read), "L2-L3").left)
        assert after <= before
        before = after


def test_a_rod_read_at_its_thread_and_at_its_body() -> None:
    threaded = (
        "rods: {number: 1, diameter: 1 in, shape: round, threads: none}",
        "rods: {number: 1, diameter: 1 in, shape: round, threads: upset, root diameter: 1 1/8 in}",
    )
    found = bridge(threaded, with_readings(
        "part: left/U3-L2, place: thread, what: root diameter, value: 1 in",
        "part: left/U3-L2, place: mid, what: diameter, value: 7/8 in",
    ))
    rods = bar_of(found, "U3-L2").left
    assert isinstance(rods, Rods)
    assert (rods.rods[0].size, rods.rods[0].root_diameter) == (0.875, 1.0)
