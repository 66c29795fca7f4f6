"""What the floor's parts meet where they are other than simple: by hand, and by statics."""

from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured
from eyebar.office import office_values
from eyebar.rating.floor_again import floor_replay
from eyebar.rating.floor_facts import FloorFacts
from eyebar.rating.floor_shoes import ShoeLoads
from eyebar.rating.floor_stringers import StringerLoads
from eyebar.terms import Level, Method
from tests.documents import demos
from tests.rating.floor_stepped import greatest_on_joint
from tests.rating.floors import SOUND, Change, checks, entry, floor_bridge, part_loads, rated, some

INVENTORY = (Method.ALLOWABLE_STRESS, Level.INVENTORY)
OPERATING = (Method.ALLOWABLE_STRESS, Level.OPERATING)
LEGAL = (Method.LOAD_AND_RESISTANCE, Level.LEGAL)
VEHICLES = {one["name"]: one for one in demos.vehicles()["vehicles"]}
STRINGERS = [9.0 + (i - 3.5) * 26 / 12 for i in range(8)]
"""Places of quillmarsh's stringers [ft]."""
SEAT = "    seat: 5 in                   # lapped on the floorbeams; "
ALONG = (3 / 12 * 0.050 + 2 / 12 * 0.120) * 26 / 12 + 0.025
"""Dead load along an inner stringer of quillmarsh [kip/ft]."""


def running(seat: str) -> tuple[Change, ...]:
    """Stringers of two panels each, on seats so long."""
    return (
        (SEAT, f"    seat: {seat}\n    continuous: true\n    cut at: [L2, L4, L6, L8]  #"),
    )


def test_a_stringer_that_runs_on_bears_on_the_middle_floorbeam_with_both_its_spans() -> None:
    bridge = floor_bridge("quillmarsh", *running("2 in"))
    found = entry(rated(bridge, some("Type 3"))["floor/panel 2/stringer 4"], "Type 3", INVENTORY)
    assert found.check == "push across the grain on the seat"
    # Two equal spans: the middle bears 5/4 of one span's weight, 6 in x 2 in of wood.
    assert found.dead == pytest.approx(1.25 * ALONG * 15.0 / 12.0)
    # No less than simple spans would bring there, one wheel line alone on the stringer at most.
    assert found.live is not None
    assert found.live > greatest_on_joint(VEHICLES["Type 3"], 15.0, 15.0) * found.share / 12.0


def test_at_a_cut_end_it_bears_with_one_span() -> None:
    bridge = floor_bridge("quillmarsh", *running("2 in"))
    loads = part_loads(bridge, "floor/panel 2/stringer 4", some("Type 3"))
    assert checks(loads, INVENTORY).count("push across the grain on the seat") == 2
    own = entry(rated(bridge, some("Type 3"))["floor/panel 2/stringer 4"], "Type 3", INVENTORY)
    assert own.floor is not None
    assert own.floor.end == 0  # the middle, not the cut end at L2


def test_what_hangs_under_stringers_that_run_on_weighs_as_much_as_they_bring() -> None:
    simple = rated(floor_bridge("quillmarsh"), some("Type 3"))
    bridge = floor_bridge("quillmarsh", *running("5 in"))
    found = rated(bridge, some("Type 3"))
    for address in ("upstream/L1/hanger", "upstream/L2/hanger"):
        before, now = (entry(one[address], "Type 3", OPERATING) for one in (simple, found))
        assert before.dead is not None
        assert now.dead is not None
        # L1 lies under the middle of a run: 5/4 of the load that runs along. L2 is no lighter.
        along = before.dead - 1.150 / 2
        assert now.dead == pytest.approx(1.150 / 2 + along * (1.25 if "L1" in address else 1.0))


OF_A_STRIP = 31 / 26 * 31 / 2 / 120


@pytest.mark.parametrize(("changes", "check", "share"), [
    ((), "bending of the timber", OF_A_STRIP),
    # Timber's rule: half of it, and half of 0.60 of half of all.
    (running("5 in"), "shear along the grain", 0.5 * (0.30 + OF_A_STRIP)),
])
def test_an_edge_stringer_bears_of_a_lane_load_what_lies_on_its_deck(
    changes: tuple[Change, ...], check: str, share: float
) -> None:
    # The curb is 5 in outside the first stringer, the next 26 in inside: by the lever rule a
    # triangle from 31/26 at the curb to nothing, 31 in wide, of a strip of 120 in. Axles so light
    # that the lane load does more.
    light = replace(some("H20")["H20"], axles_kip=(1.0, 1.0))
    bridge = floor_bridge("quillmarsh", *changes)
    found = rated(bridge, {"H20": light})["floor/panel 2/stringer 1"]
    ours = entry(found, "H20", OPERATING)
    assert ours.check == f"lane load: {check}"
    assert ours.share == pytest.approx(share)
    assert found.floor is not None
    again = floor_replay(
        bridge, found.floor, ours, vehicle=light, values=office_values(), condition=SOUND
    )
    assert again() == ours


TIMBER_BEAM: Change = (
    """    section:
      plates and angles: {webs: 1, web: 24 in x 5/16 in, top angles: 3 in x 3 in x 3/8 in, """
    """bottom angles: 3 in x 3 in x 3/8 in}
    material: bar iron
    ends: hung
""",
    """    section: {timber: {number: 1, width: 12 in, depth: 18 in}}
    material: stringer fir
    ends: hung
""",
)


def test_no_stringer_beyond_one_depth_is_left_out_of_a_timber_floorbeams_shear() -> None:
    bridge = floor_bridge("quillmarsh", TIMBER_BEAM)
    loads = part_loads(bridge, "floor/L4/floorbeam", some("Type 3"))
    found = entry(rated(bridge, some("Type 3"))["floor/L4/floorbeam"], "Type 3", INVENTORY)
    assert "shear along the grain" in checks(loads, INVENTORY)
    # The first stringer stands 1.42 ft from the truss, the depth is 1.5 ft: it goes straight to the
    # end. All others count whole: a wheel over the second, at 3.58 ft, the other at 9.58 ft.
    shear = next(
        one for one in loads.strengths(*INVENTORY)
        if one.check == "shear along the grain" and one.end == 0
    )
    assert shear.divisor == pytest.approx(2 * 12 * 18 / 3)
    facts = found.floor
    assert facts is not None
    met = loads.met(
        replace(facts, strength=shear, section_ft=1.5, end=0), INVENTORY[0],
        some("Type 3")["Type 3"],
    )
    coming = greatest_on_joint(VEHICLES["Type 3"], 15.0, 15.0)
    share = ((1.0 - STRINGERS[1] / 18.0) + (1.0 - (STRINGERS[1] + 6.0) / 18.0)) / 2.0
    assert met.live * shear.divisor == pytest.approx(coming * share, rel=4e-3)
    assert met.live * shear.divisor >= coming * share * (1.0 - 1e-9)


def test_by_load_and_resistance_one_lane_has_its_presence_on_the_deck_too() -> None:
    found = rated(floor_bridge("quillmarsh"), some("Type 3"))["floor/deck"]
    assert entry(found, "Type 3", LEGAL).share == pytest.approx(1.2 / 2.0)
    assert entry(found, "Type 3", OPERATING).share == pytest.approx(1.0 / 2.0)


def test_a_deck_on_which_two_wheels_may_stand_is_not_rated() -> None:
    bridge = floor_bridge("quillmarsh", ("    plank width: 10 in\n",
                                         "    plank width: 10 in\n    clear: 5 ft\n"))
    assert "more than one wheel" in rated(bridge, some("Type 3"))["floor/deck"].not_rated


def test_a_gap_beyond_the_tables_range_is_shared_by_the_lever_rule() -> None:
    # Six stringers about the middle: gaps of 14, 14, 62, 14 and 14 in. Beside the wide gap the
    # mean is 38 in, within the plank's 5 ft; the gap of 62 in is not.
    bridge = floor_bridge(
        "quillmarsh", ("    number: 8\n", "    number: 6\n"),
        ("    spacing: 2 ft 2 in           # taped at L3 and L7; the outer ones carry the wheel "
         "guards\n", "    spacings: [14 in, 14 in, 62 in, 14 in, 14 in]\n"),
    )
    found = rated(bridge, some("Type 3"))
    beside = entry(found["floor/panel 2/stringer 3"], "Type 3", OPERATING)
    near = entry(found["floor/panel 2/stringer 2"], "Type 3", OPERATING)
    # A wheel over the stringer, the other 6 ft away beyond the gap: half of the axle at least.
    assert beside.share == pytest.approx(0.5)
    assert near.share == pytest.approx(14 / 12 / 4.0 / 2.0)


def test_rot_at_the_middle_of_a_stick_counts_in_its_shear() -> None:
    reading = ("{part: floor/panel 6/stringer 4, place: mid, what: depth, value: 12 in, gauge: "
               "increment borer, plus minus: 1/8 in}")
    rotten = reading.replace("value: 12 in", "value: 7 in")
    loads = part_loads(
        floor_bridge("quillmarsh", (reading, rotten)), "floor/panel 6/stringer 4", some("Type 3")
    )
    thin = [one for one in loads.strengths(*INVENTORY) if "thinnest" in one.check]
    # The reading holds from the quarter point to the end at L6; towards the end at L5, which was
    # read apart, the stick shears on 6 in x 7 in: 2 b d / 3.
    assert [one.end for one in thin] == [0]
    assert thin[0].divisor == pytest.approx(2 * 6 * 7 / 3)


PLATES: Change = (
    """      rods: {number: 4, diameter: 1 1/8 in, shape: round, threads: plain, """
    """root diameter: 15/16 in}
    material: bar iron
    bent: true
    inside: 2 3/4 in
    leg: 26 in
    pin: 2 3/4 in
""",
    """      plates: [5 in x 1/2 in, 5 in x 1/2 in]
    material: bar iron
    pin: 2 3/4 in
""",
)
EYES = "    pin: 2 3/4 in\n    hole: 2 7/8 in\n    beyond: 2 in\n"


def test_plates_on_a_pin_are_rated_at_their_hole() -> None:
    bridge = floor_bridge("quillmarsh", PLATES)
    assert "hole" in rated(bridge, some("Type 3"))["upstream/L4/hanger"].not_rated
    whole = (PLATES[0], PLATES[1].replace("    pin: 2 3/4 in\n", EYES))
    found = entry(
        rated(floor_bridge("quillmarsh", whole), some("Type 3"))["upstream/L4/hanger"], "Type 3",
        OPERATING,
    )
    # Across: (5 - 2 7/8) / (1.35 x 5) = 0.315 of the body; beyond: 2 / (0.75 x 5) = 0.533. The
    # body: 0.75 x 26 ksi x 5 in2 = 97.5 kip.
    assert found.check == "plate across its pin hole"
    assert found.capacity == pytest.approx(97.5 * 2.125 / (1.35 * 5.0))


def test_a_floorbeam_of_a_skew_bridge_is_longer_by_the_skew() -> None:
    square = rated(floor_bridge("quillmarsh"), some("Type 3"))["floor/L4/floorbeam"]
    skew = rated(floor_bridge("quillmarsh", ("skew: 0 deg", "skew: 30 deg")), some("Type 3"))
    a, b = (entry(one, "Type 3", OPERATING) for one in (square, skew["floor/L4/floorbeam"]))
    assert a.live is not None
    assert b.live is not None
    assert b.live == pytest.approx(a.live / 0.8660254)  # cosine of 30 degrees


OUT: Change = (
    "  bearings: {zero: fixed, other: free}",
    "  bearings: {zero: fixed, other: free, at: [L1, L9]}",
)
"""Quillmarsh on piers under L1 and L9, 120 ft apart, its floor 15 ft beyond either."""


def test_an_end_bears_more_than_all_of_what_stands_beyond_it() -> None:
    loads = part_loads(floor_bridge("quillmarsh", OUT), "upstream/L1/bearing", some("Type 3"))
    (push,) = [one for one in loads.strengths(*INVENTORY) if "pressure" in one.check]
    facts = FloorFacts(
        strength=push, lanes=1, dead_set="greatest", section_ft=-15.0, axle=2, way=1
    )
    met = loads.met(facts, INVENTORY[0], some("Type 3")["Type 3"])
    # The rear axle at the tip, 135 ft from the other pier, the others 4 and 19 ft nearer to it.
    reaction = (17 * 135 + 17 * 131 + 16 * 116) / 120
    assert met.live * push.divisor == pytest.approx(reaction * 24 / 36)
    assert loads.station(facts) == pytest.approx(0.0)


def test_what_stands_beyond_one_bearing_lifts_the_other() -> None:
    vehicles = some("Type 3")
    loads = part_loads(floor_bridge("quillmarsh", OUT), "upstream/L1/bearing", vehicles)
    found = rated(floor_bridge("quillmarsh", OUT), vehicles)
    ours = entry(found["upstream/L1/bearing"], "Type 3", OPERATING)
    (uplift,) = [one for one in loads.strengths(*OPERATING) if one.check == "uplift"]
    assert uplift.capacity == 0.0
    assert uplift.remarks == (
        "no anchorage measured: dead load alone is counted to hold it down",)
    facts = FloorFacts(
        strength=uplift, lanes=1, dead_set="least", section_ft=135.0, axle=2, way=-1
    )
    met = loads.met(facts, OPERATING[0], vehicles["Type 3"])
    # On the 15 ft beyond the other pier: an axle of 17 kip at the tip, one 4 ft in.
    assert met.live == pytest.approx((17 * 15 + 17 * 11) / 120 * 24 / 36)
    # Held down by tons, lifted by a few kip: the pressure governs, not the uplift.
    assert met.dead.dc < -10.0
    assert ours.check.endswith("pressure under the shoe")
    assert loads.station(facts) == pytest.approx(150.0)


def test_the_search_finds_the_worst_uplift_and_an_anchor_adds_to_what_holds() -> None:
    vehicles = some("Type 3", "SU7")
    light = "plate: 14 in x 16 in, pressure: 400 psi, source: \"sandstone; the office's practice"
    light += " for old masonry\"}"
    anchors = light.replace("14 in x 16 in", "140 in x 140 in")[:-1] + (
        ", anchors: {number: 2, root diameter: 1 in, material: bar iron}}")
    bridge = floor_bridge("quillmarsh", OUT, (light, anchors))
    ours = entry(rated(bridge, vehicles)["upstream/L1/bearing"], "Type 3", OPERATING)
    # Two bolts of 1 in at the root, 0.75 of 26 ksi.
    assert ours.capacity == pytest.approx(2 * 0.75 * 26 * 3.14159265 / 4)
    assert ours.check == "uplift"
    assert ours.live == pytest.approx((17 * 15 + 17 * 11) / 120 * 24 / 36)
    assert ours.dead is not None
    assert ours.capacity is not None
    assert ours.live is not None
    assert ours.factor == pytest.approx(
        (ours.capacity - ours.dead) / (ours.live * (1 + ours.impact)), rel=1e-3)


def test_an_end_that_dead_load_lifts_is_not_rated_without_anchors() -> None:
    loads = part_loads(floor_bridge("quillmarsh", OUT), "upstream/L1/bearing", some("Type 3"))
    assert isinstance(loads, ShoeLoads)
    lifted = replace(loads, up=loads.down, down=loads.up)
    with pytest.raises(NotMeasured, match="uplift of dead load"):
        lifted.strengths(*OPERATING)


def test_both_ends_bear_the_whole_dead_load() -> None:
    bridge = floor_bridge("quillmarsh", OUT)
    ends = [part_loads(bridge, f"upstream/{joint}/bearing", some("Type 3"))
            for joint in ("L1", "L9")]
    square = floor_bridge("quillmarsh")
    whole = [part_loads(square, f"upstream/{joint}/bearing", some("Type 3"))
             for joint in ("L0", "L10")]
    sums = [
        sum(one.down.dc - one.up.dc for one in both if isinstance(one, ShoeLoads))
        for both in (ends, whole)
    ]
    assert sums[0] == pytest.approx(sums[1])


def test_a_stringer_that_runs_on_may_lift_off_a_seat_unless_anchors_hold_it() -> None:
    vehicles = some("Type 3")
    bare = floor_bridge("quillmarsh", *running("5 in"))
    ours = entry(rated(bare, vehicles)["floor/panel 2/stringer 4"], "Type 3", OPERATING)
    simple = entry(rated(floor_bridge("quillmarsh"), vehicles)["floor/panel 2/stringer 4"],
                   "Type 3", OPERATING)
    # Nothing holds its seats: it bends as a simple span.
    assert ours.check == "bending of the timber, a seat lifted off"
    assert ours.factor == pytest.approx(simple.factor)
    anchors = "    anchors: {number: 2, root diameter: 5/8 in, material: bar iron}\n"
    ((old, new),) = running("5 in")
    held = floor_bridge("quillmarsh", (old, f"{anchors}{new}"))
    loads = part_loads(held, "floor/panel 2/stringer 4", vehicles)
    names = checks(loads, OPERATING)
    assert "uplift at the seat" in names
    assert entry(rated(held, vehicles)["floor/panel 2/stringer 4"], "Type 3", OPERATING).factor
    assert not [one for one in names if "lifted off" in one]
    uplift = next(one for one in loads.strengths(*OPERATING)
                  if one.check == "uplift at the seat" and one.end == 1)
    facts = FloorFacts(strength=uplift, lanes=1, dead_set="least", section_ft=15.0, sense=1)
    met = loads.met(facts, OPERATING[0], vehicles["Type 3"])
    # Two equal spans L1-L3 begin at L0: the far seat at L2 is lifted by loads on the other span by
    # 0.25 (x/L) (1 - (x/L)^2), at most 0.0962; dead load holds with 3/8 of one span.
    assert met.dead.dc + met.dead.dw == pytest.approx(-0.375 * ALONG * 15.0)
    places = [i / 2000 for i in range(2001)]
    worst = max(
        sum(axle * 0.25 * (x / 15) * (1 - (x / 15) ** 2)
            for axle, x in ((16.0, 15 * p), (17.0, 15 * p - 15.0), (17.0, 15 * p - 19.0))
            if 0.0 <= x <= 15.0)
        for p in [3 * one for one in places]
    )
    assert met.live == pytest.approx(worst * met.share, rel=4e-3)


def test_the_two_legs_of_one_bent_rod_are_a_single_bar() -> None:
    two = floor_bridge("quillmarsh", ("rods: {number: 4,", "rods: {number: 2,"))
    ratings = [
        entry(rated(one, some("Type 3"))["upstream/L4/hanger"], "Type 3", LEGAL)
        for one in (floor_bridge("quillmarsh"), two)
    ]
    # System factor 0.90 of several bars, 0.85 of one; half of the metal.
    assert ratings[0].capacity is not None
    assert ratings[1].capacity == pytest.approx(ratings[0].capacity / 2 * 0.85 / 0.90)


def test_thin_laminations_share_as_planks_do() -> None:
    def word(kind: str, thickness: str) -> str:
        floor = floor_bridge(
            "quillmarsh", ("    kind: plank\n    thickness: 3 in\n",
                           f"    kind: {kind}\n    thickness: {thickness}\n"),
            ("what: deck thickness, value: 2 7/8 in", f"what: deck thickness, value: {thickness}"),
        ).floor
        assert floor is not None
        return floor.deck_word

    assert word("nail-laminated", "3 in") == "plank"
    assert word("nail-laminated", "5 in") == "nail-laminated.thin"
    assert word("nail-laminated", "6 in") == "nail-laminated.thick"


def test_a_broken_span_cuts_a_stringer_that_runs_on() -> None:
    decision = "decisions:\n"
    bridge = floor_bridge(
        "quillmarsh", (SEAT, "    seat: 5 in\n    continuous: true  #"),
        (decision, f"{decision}  - date: 2026-06-10\n    what: broken\n"
                   "    part: floor/panel 4/stringer 3\n    note: split through\n"),
    )
    assert bridge.floor is not None
    runs = {one.address: one.run_ft for one in bridge.floor.stringers}
    assert runs["floor/panel 3/stringer 3"] == (15.0,) * 3
    assert runs["floor/panel 5/stringer 3"] == (15.0,) * 6
    assert runs["floor/panel 3/stringer 4"] == (15.0,) * 10


def test_two_lanes_on_twenty_feet_stand_each_in_its_half() -> None:
    # Trusses 24 ft apart, 20 ft clear, eight stringers 34 in apart about the middle.
    bridge = floor_bridge(
        "quillmarsh", ("  spacing: 18 ft  ", "  spacing: 24 ft  "),
        ("  clear width: 16 ft", "  clear width: 20 ft"),
        ("  curb to upstream truss: 1 ft ", "  curb to upstream truss: 2 ft "),
        ("  curb to downstream truss: 1 ft", "  curb to downstream truss: 2 ft"),
        ("    spacing: 2 ft 2 in ", "    spacing: 2 ft 10 in "),
    )
    found = rated(bridge, some("Type 3"))
    coming = greatest_on_joint(VEHICLES["Type 3"], 15.0, 15.0)
    hanger = entry(found["upstream/L4/hanger"], "Type 3", OPERATING)
    # Lanes of 10 ft: the first truck's outer wheel 2 ft from the curb, 4 ft from the truss, its
    # wheels at 4 and 10 ft; the second's 1 ft from the lane line, at 13 and 19 ft.
    share = sum(1.0 - y / 24.0 for y in (4.0, 10.0, 13.0, 19.0)) / 2.0
    assert hanger.lanes == 2
    assert hanger.share == pytest.approx(share)
    assert hanger.live == pytest.approx(coming * share, rel=4e-3)
    stringer = entry(found["floor/panel 2/stringer 4"], "Type 3", OPERATING)
    assert stringer.lanes == 2
    assert stringer.share == pytest.approx(34 / 12 / 3.75 / 2.0)
    beam = entry(found["floor/L4/floorbeam"], "Type 3", OPERATING)
    assert beam.lanes == 2
    # Either truck anywhere in its half: wheels 3 and 9 ft, 11 and 17 ft from the curb at the most.
    stringers = [12.0 + (i - 3.5) * 34 / 12 for i in range(8)]
    at = stringers[3]

    def moment(load: float) -> float:
        low = max(y for y in [-100.0, *stringers] if y <= load)
        high = min(y for y in [*stringers, 100.0] if y > load)
        line = [y * (24.0 - at) / 24.0 if y <= at else at * (24.0 - y) / 24.0 for y in (low, high)]
        return line[0] + (line[1] - line[0]) * (load - low) / (high - low)

    first = max(moment(2 + 2 + 0.01 * i) + moment(8 + 2 + 0.01 * i) for i in range(101))
    second = max(moment(11 + 2 + 0.01 * i) + moment(17 + 2 + 0.01 * i) for i in range(101))
    modulus = beam.floor.strength.divisor if beam.floor else 0.0
    expected = coming * (first + second) / 2.0 * 12.0 / modulus
    assert beam.live == pytest.approx(expected, rel=1e-2)


def test_a_stringer_stands_on_its_floorbeams_web_with_its_own_share_alone() -> None:
    bridge = floor_bridge("quillmarsh")
    loads = part_loads(bridge, "floor/L4/floorbeam", some("Type 3"))
    (strength,) = [one for one in loads.strengths(*INVENTORY) if "under a stringer" in one.check]
    # 6 in of wood on a web of 5/16 in, angles 3/8 in: 0.66 x 26 ksi on 5/16 x (6 + 5 x 3/8).
    assert strength.capacity * strength.divisor == pytest.approx(0.66 * 26 * 5 / 16 * 7.875)
    facts = entry(rated(bridge, some("Type 3"))["floor/L4/floorbeam"], "Type 3", INVENTORY).floor
    assert facts is not None
    met = loads.met(replace(facts, strength=strength, section_ft=STRINGERS[3], lanes=1, end=0),
                    INVENTORY[0], some("Type 3")["Type 3"])
    # One wheel over it, the other 6 ft away beyond its neighbours: half of what comes there.
    coming = greatest_on_joint(VEHICLES["Type 3"], 15.0, 15.0)
    assert met.live * strength.divisor == pytest.approx(coming / 2.0, rel=4e-3)
    assert met.dead.dc + met.dead.dw == pytest.approx(ALONG * 15.0 / strength.divisor)


def test_what_is_said_of_one_floorbeam_leaves_what_is_said_of_all() -> None:
    own = "overrides:\n  floor/L4/floorbeam: {floorbeam: {seat: 8 in}, reason: wider plates}\n"
    bridge = floor_bridge("quillmarsh", ("overrides: {}\n", own))
    assert bridge.floor is not None
    ends = next(one for one in bridge.floor.floorbeams if one.joint == "L4").beam_ends
    assert (ends.seat, ends.stiffened) == (8.0, True)


def test_stringers_that_are_riveted_to_a_floorbeam_do_not_stand_on_it() -> None:
    rivets = ("    rivets: {number: 4, diameter: 3/4 in, off centre: 0 in, thinner: 5/16 in}\n")
    bridge = floor_bridge("quillmarsh", (SEAT, f"{rivets}{SEAT}"))
    loads = part_loads(bridge, "floor/L4/floorbeam", some("Type 3"))
    assert not [one for one in checks(loads, INVENTORY) if "under a stringer" in one]


SLAB: tuple[Change, ...] = (
    ("""    kind: plank
    thickness: 3 in
    weight: 50 lb/ft3
    runs: across
    plank width: 10 in
    material: deck fir
    continuous: true             # every plank lies on all stringers
""", """    kind: concrete
    thickness: 7 in
    weight: 150 lb/ft3
    runs: across
    continuous: true
    concrete strength: 2500 psi
    lower bars: {diameter: 5/8 in, every: 6 in, cover: 1 in, yield stress: 33 ksi}
    upper bars: {diameter: 1/2 in, every: 6 in, cover: 1 1/2 in, square: true, yield stress: 33 ksi}
"""),
    ("what: deck thickness, value: 2 7/8 in", "what: deck thickness, value: 6 1/2 in"),
)


def test_a_slab_of_concrete_under_the_wheels_of_a_tandem() -> None:
    found = rated(floor_bridge("quillmarsh", *SLAB), some("Type 3"))["floor/deck"]
    ours = entry(found, "Type 3", (Method.LOAD_FACTOR, Level.OPERATING))
    # Clear 20 in between sticks of 6 in: span 23 in; a strip of 96 x 23 / 47 = 46.979 in, less
    # than the 48 in of the tandem: one wheel of 8.5 kip, 0.8 x 23 / 4 = 4.6 in. The upper bars
    # are the fewer, 1/4 in2 every 6 in, and of what is left 6.5 - 1.5 - 1/4 = 4.75 in deep.
    area = 0.25 / 6
    modulus = 46.979 * area * (4.75 - area * 33 / (1.7 * 2.5))
    assert ours.check == "bending of the slab over the stringers"
    assert ours.live == pytest.approx(8.5 * 4.6 / modulus, rel=1e-4)
    assert ours.impact == pytest.approx(0.30)
    # Dead load as of a simple span: 7 in of 150 lb/ft3 and 2 in of gravel on 46.979 in x 23 in.
    along = (7 / 12 * 0.150 + 2 / 12 * 0.120) / 144 * 46.979
    assert ours.dead == pytest.approx(along * 23**2 / 8 / modulus, rel=1e-4)
    assert ours.capacity == pytest.approx(0.9 * 33)
    left = 29.7 - 1.3 * ours.dead
    assert ours.factor == pytest.approx(left / (1.3 * 1.3 * ours.live), rel=1e-2)


SLAB_ON_STEEL: Change = ("""    kind: plank
    thickness: 3 in
    weight: 50 lb/ft3
    runs: across
    plank width: 8 in
    material: plank oak
    continuous: true
""", """    kind: concrete
    thickness: 6 in
    weight: 150 lb/ft3
    runs: across
    continuous: true
    concrete strength: 2500 psi
    lower bars: {diameter: 5/8 in, every: 6 in, cover: 1 in, yield stress: 33 ksi}
    upper bars: {diameter: 5/8 in, every: 6 in, cover: 1 in, yield stress: 33 ksi}
""")


@pytest.mark.parametrize(("by", "share"), [
    # By hand: stringers 2 1/3 ft apart. Standard Specifications Table 3.23.1: S / 7 of a wheel
    # line, half of that of the axles. By load and resistance a whole wheel line, half of the axles,
    # 1.2 for one lane. (The formula of LRFD Bridge Design Specifications Table 4.6.2.2.2b-1, from
    # memory, gives 0.06 + (S / 14)^0.4 (S / L)^0.3 x 1.02 = 0.34 at 16 ft: it is for 3 1/2 ft and
    # 20 ft upwards.)
    (OPERATING, 2.3333 / 7 / 2),
    (LEGAL, 1.2 / 2),
])
def test_what_a_steel_stringer_takes_under_a_slab_goes_by_the_method(
    by: tuple[Method, Level], share: float
) -> None:
    loads = part_loads(
        floor_bridge("dovetansy", SLAB_ON_STEEL), "floor/panel 3/stringer 4", some("Type 3")
    )
    assert isinstance(loads, StringerLoads)
    table = loads.shares_by(some("Type 3")["Type 3"], 1, by[0]).axles
    assert loads.context.presence(by[0], 1) * table == pytest.approx(share, rel=1e-4)
    found = rated(floor_bridge("dovetansy", SLAB_ON_STEEL), some("Type 3"))
    ours = entry(found["floor/panel 3/stringer 4"], "Type 3", by)
    assert ours.share == pytest.approx(share, rel=1e-4)


@pytest.mark.parametrize(("number", "share"), [
    # By hand: seven stringers 2 1/3 ft apart under 15 ft of road, the first 1/2 ft inside the curb.
    # By the lever rule (3 5/6 - 3) / 2 1/3 of the outer wheel line, 2 ft from the curb. Standard
    # Specifications 3.23.2.3.1.5, from memory: of four and more S / 5.5 at least.
    (7, 2.3333 / 5.5 / 2),
    # Of three the lever rule alone.
    (3, None),
])
def test_an_edge_stringer_of_several_under_a_slab_takes_its_least_share(
    number: int, share: float | None
) -> None:
    several: Change = ("    number: 7\n", f"    number: {number}\n")
    bridge = floor_bridge("dovetansy", SLAB_ON_STEEL, several)
    loads = part_loads(bridge, "floor/panel 3/stringer 1", some("Type 3"))
    assert isinstance(loads, StringerLoads)
    truck = some("Type 3")["Type 3"]
    table = loads.shares(truck, 1)
    ours = loads.shares_by(truck, 1, Method.ALLOWABLE_STRESS)
    if share is None:
        assert ours == table
        return
    assert table.axles == pytest.approx((3 + 5 / 6 - 3) / (2 + 1 / 3) / 2)
    assert (ours.axles, ours.beside) == pytest.approx((share, share), rel=1e-4)
    assert loads.shares_by(truck, 1, Method.LOAD_AND_RESISTANCE).axles == 0.5


def test_by_load_and_resistance_the_greatest_of_the_rules_counts_under_a_slab() -> None:
    # By hand: four stringers 4 ft apart of 17 1/2 ft, two lanes of 8 1/2 ft. Bending by LRFD Bridge
    # Design Specifications Table 4.6.2.2.2b-1, from memory: 0.075 + (4 / 9.5)^0.6 (4 / 17.5)^0.2 x
    # 1.02 = 0.5269; shear 0.2 + 4 / 12 - (4 / 35)^2 = 0.5203. Wheels 10 in on either side of the
    # middle bring the second stringer 17/24 and 7/24 of a wheel line, one that stands 10 in beyond
    # the first takes 5/24 off: less than a wheel line alone, half of an axle.
    bridge = floor_bridge(
        "dovetansy", SLAB_ON_STEEL,
        ("  clear width: 15 ft\n", "  clear width: 17 ft\n  lanes: 2\n"),
        ("  curb to west truss: 1 ft ", "  curb to west truss: 0 in "),
        ("  curb to east truss: 1 ft\n", "  curb to east truss: 0 in\n"),
        ("    number: 7\n    spacing: 2 ft 4 in ", "    number: 4\n    spacing: 4 ft "),
    )
    loads = part_loads(bridge, "floor/panel 3/stringer 2", some("Type 3"))
    assert isinstance(loads, StringerLoads)
    truck = some("Type 3")["Type 3"]
    assert loads.shares(truck, 2).beside == pytest.approx((17 + 7 - 5) / 24 / 2)
    ours = loads.shares_by(truck, 2, Method.LOAD_AND_RESISTANCE)
    assert (ours.axles, ours.beside, ours.lane) == pytest.approx((0.52686,) * 3, rel=1e-4)
    # The older methods have their table.
    assert loads.shares_by(truck, 2, Method.LOAD_FACTOR).axles == pytest.approx(4 / 5.5 / 2)


def test_a_slab_whose_bars_nobody_knows_is_not_rated() -> None:
    old, new = SLAB[0]
    bare = "".join(line for line in new.splitlines(keepends=True) if "lower bars" not in line)
    found = rated(floor_bridge("quillmarsh", (old, bare), SLAB[1]), some("Type 3"))["floor/deck"]
    assert found.not_rated == "bars of the slab of floor/deck not measured"


def test_readings_of_a_slabs_bars_count() -> None:
    reading = "    readings:\n"
    rusted = f"{reading}      - {{part: floor/deck, place: mid, what: diameter, value: 1/2 in}}\n"
    whole, thin = (
        entry(rated(floor_bridge("quillmarsh", *SLAB, *more), some("Type 3"))["floor/deck"],
              "Type 3", OPERATING)
        for more in ((), ((reading, rusted),))
    )
    assert whole.factor is not None
    assert thin.factor is not None
    assert thin.factor < whole.factor


WALK: Change = ("  wheel guards: {weight: 10 lb/ft}", """  sidewalks:
    upstream:
      width: 4 ft
      from truss: 6 in
      outside: true
      weight: 20 lb/ft2
      bracket: {section: {rolled: {shape: I, depth: 8 in, web: 1/4 in, flange: 4 in,
        flange thickness: 3/8 in}}, material: bar iron, springs: 4 in}
  wheel guards: {weight: 10 lb/ft}""")


def test_a_bracket_carries_a_crowd_on_its_half_of_both_panels() -> None:
    vehicles = some("crowd", "Type 3")
    found = rated(floor_bridge("quillmarsh", WALK), vehicles)
    ours = entry(found["upstream/L4/bracket"], "crowd", OPERATING)
    area = vehicles["crowd"].area_kip_per_ft2
    # 4 ft x 15 ft; its middle 6 + 24 - 4 = 26 in from where the bracket springs.
    modulus = (4.0 * 8.0**3 / 12 - 3.75 * 7.25**3 / 12) / 4.0
    assert ours.check.endswith("bending of the bracket")
    assert ours.live == pytest.approx(area * 4 * 15 * 26 / modulus)
    assert ours.dead == pytest.approx(0.020 * 4 * 15 * 26 / modulus)
    end = entry(found["upstream/L0/bracket"], "crowd", OPERATING)
    assert end.live == pytest.approx(ours.live / 2)
    wheels = entry(found["upstream/L4/bracket"], "Type 3", OPERATING)
    assert wheels.factor is None
    assert "does nothing to this part" in wheels.reason
    assert "downstream/L4/bracket" not in found


def test_a_bracket_of_which_a_size_was_not_measured_is_not_rated() -> None:
    old, new = WALK
    bridge = floor_bridge("quillmarsh", (old, new.replace("web: 1/4 in", "web: not measured")))
    found = rated(bridge, some("crowd"))["upstream/L4/bracket"]
    assert "not measured" in found.not_rated


@pytest.mark.parametrize("by", [INVENTORY, OPERATING])
def test_rot_at_either_end_of_a_stringer_counts_alike(by: tuple[Method, Level]) -> None:
    # A joist of 12 in left with 5 in over the last foot at one end or at the other: its shear there
    # governs, and the trains run both ways.
    part = "floor/panel 6/stringer 4"
    ends = [
        entry(rated(floor_bridge(
            "quillmarsh",
            (f"{part}, place: end L5, what: depth, value: 11 3/8 in",
             f"{part}, place: end {end}, what: depth, value: 5 in"),
            (f"{part}, place: mid", f"{part}, place: 2 ft from {end}"),
        ), some("Type 3"))[part], "Type 3", by)
        for end in ("L5", "L6")
    ]
    first, last = ends
    assert first.check == last.check == "shear along the grain"
    assert first.factor == pytest.approx(last.factor, rel=1e-12)
    assert [one.floor and one.floor.end for one in ends] == [0, 1]


def test_a_rating_of_a_part_alike_elsewhere_is_the_same_but_for_its_place() -> None:
    # Stringers of two panels with nothing between them but 15 ft of road.
    found = rated(floor_bridge("quillmarsh"), some("Type 3", "H20", "design tandem"))
    pairs = zip(found["floor/panel 2/stringer 3"].ratings,
                found["floor/panel 3/stringer 3"].ratings, strict=True)
    moved = 0
    for near, far in pairs:
        if near.at is None:
            assert near == far
            continue
        at = replace(near.at, front_axle_ft=near.at.front_axle_ft + 15.0)
        assert far.at is not None
        assert far.at.front_axle_ft == pytest.approx(at.front_axle_ft, rel=1e-12)
        assert near.elsewhere(at) == replace(near, at=at)
        assert replace(far, at=at) == replace(near, at=at)
        moved += 1
    assert moved > 5


def test_every_check_of_such_a_floor_is_made_again_to_the_bit() -> None:
    vehicles = some("Type 3", "crowd")
    bridge = floor_bridge("quillmarsh", WALK, OUT, *running("5 in"), *SLAB)
    seen: set[tuple[object, ...]] = set()
    for part in rated(bridge, vehicles).values():
        for one in part.ratings:
            key = (type(part.floor), one.check, one.vehicle, one.method, one.level)
            if one.floor is None or part.floor is None or key in seen:
                continue
            seen.add(key)
            again = floor_replay(
                bridge, part.floor, one, vehicle=vehicles[one.vehicle], values=office_values(),
                condition=SOUND,
            )()
            assert again == one
    checks_seen = {key[1] for key in seen}
    assert "bending of the slab over the stringers" in checks_seen
    assert "lane load: bending of the bracket" in checks_seen
