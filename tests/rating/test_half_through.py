"""The invented pony bridge: its upper chord on elastic posts, and what that does to its rating."""

import math
from functools import cache

import pytest

from eyebar.analysis.elastic_posts import ElasticChord, Piece, buckling_multiple
from eyebar.bridge.parts import Bridge
from eyebar.bridge.state import bridge_on
from eyebar.demo import bridge_records
from eyebar.office import office_values
from eyebar.rating import BridgeRating, loaded_states, rated_bridge
from eyebar.rating.half_through import HeldChord, held_by_posts
from eyebar.record import record_of
from eyebar.vehicles import shipped_vehicles

VALUES = office_values()
TEXT = bridge_records()["wrenmallow"].read_text(encoding="utf-8")
OUTRIGGER = TEXT[TEXT.index("    outrigger:\n"):TEXT.index("\ntraffic:")]
TRUCKS = {name: shipped_vehicles()[name] for name in ("Type 3", "SU4")}


def made(*changes: tuple[str, str]) -> Bridge:
    text = TEXT
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return bridge_on(record_of(text, file="wrenmallow.yaml"), None, VALUES)


def solved(*changes: tuple[str, str]) -> tuple[Bridge, tuple[HeldChord, ...], list[str]]:
    found = made(*changes)
    return held_by_posts(
        found, lambda truss: loaded_states(found, truss)[0]["none"], VALUES
    )


def chord(*changes: tuple[str, str]) -> HeldChord:
    return solved(*changes)[1][0]


@cache
def rated(*changes: tuple[str, str]) -> BridgeRating:
    return rated_bridge(made(*changes), VALUES, TRUCKS)


def factor(rating: BridgeRating, part: str) -> float:
    (found,) = [one for one in rating.parts if one.address == part]
    return min(one.factor for one in found.ratings if one.factor is not None)


def test_the_line_runs_from_bearing_to_bearing() -> None:
    found = chord()
    assert found.joints == ("L0", "U0", "U1", "U2", "U3", "U4", "L4")
    assert math.inf in (found.stiffness[0], found.stiffness[-1])
    assert found.stiffness[1] == found.stiffness[5] == 0.0
    # By hand: hinged where the line turns from the end posts' slope into the chord's, 45.3 deg.
    assert found.hinged == (False, True, False, False, False, True, False)


def test_the_push_of_the_middle_panels_is_the_moment_over_the_depth() -> None:
    # By hand: U1-U2 and U2-U3 meet the same point L2 over mid-span, so their pushes are alike. The
    # line of U0-U1, about L1 at a quarter of 59 ft, has 3/4 of the height of theirs. Of two axles
    # s apart one stands over the peak, the other on the longer side: 3/4 (2 - s / 44.25) against
    # 2 - s / 29.5, most for 25 ft of those not over mid-span's reach: 30 ft gives 3/4 x 1.3220 over
    # 1 (the second axle is worth nothing beyond half the span's line: 2 - 30 / 29.5 < 1).
    found = chord()
    assert max(found.thrusts) == found.thrusts[2] == pytest.approx(found.thrusts[3])
    assert found.thrusts[1] == pytest.approx(0.75 * (2 - 30 / 44.25) / 1.0, rel=1e-6)


def test_every_bar_buckles_at_the_same_multiple() -> None:
    # By hand: Euler's load of the effective length, over the push, is the chord's own multiple.
    found = chord()
    for bar, thrust, length in zip(found.bars, found.thrusts, found.lengths, strict=True):
        from eyebar.resistance.whole_column import stiffness_across
        euler = math.pi**2 * bar.material.modulus * stiffness_across(bar)[0] / length**2
        assert euler / thrust == pytest.approx(found.multiple, rel=1e-9)


def test_the_posts_of_the_bridge_lie_between_no_posts_and_posts_that_do_not_give() -> None:
    found = chord()
    pieces = tuple(
        Piece(length=bar.length, rigidity=math.pi**-2 * length**2 * thrust * found.multiple,
              thrust=thrust)
        for bar, length, thrust in zip(found.bars, found.lengths, found.thrusts, strict=True)
    )
    def multiple(spring: float) -> float:
        springs = [spring if 0.0 < one < math.inf else one for one in found.stiffness]
        return buckling_multiple(ElasticChord(
            pieces=pieces, springs=tuple(springs), hinged=found.hinged))
    assert multiple(0.0) < multiple(found.stiffness[2]) < multiple(math.inf)
    assert multiple(found.stiffness[2]) == pytest.approx(found.multiple, rel=1e-5)


def test_a_weaker_outrigger_never_raises_the_factor_of_the_chord() -> None:
    weak = ("size: 3 in x 2 in x 1/4 in, placed: back to back",
            "size: 2 in x 2 in x 3/16 in, placed: back to back")
    assert chord(weak).multiple < chord().multiple
    assert factor(rated(weak), "north/U1-U2") < factor(rated(), "north/U1-U2")


def test_a_broken_outrigger_is_no_spring() -> None:
    broken = ("decisions:\n", "decisions:\n  - {date: 2025-06-01, what: broken,"
              " part: bracing/U2/strut, pieces: [1]}\n")
    _, (north, south), said = solved(broken)
    assert north.stiffness[3] == 0.0
    assert south.stiffness[3] > 0.0
    assert north.multiple < south.multiple
    assert any("outrigger at U2 is broken" in one for one in said)


def test_without_outriggers_hung_beams_hold_nothing_and_the_chord_is_not_rated() -> None:
    found = rated((OUTRIGGER, ""), ("  bases: held ", "  bases: hinged "))
    reasons = {part.address: part.not_rated for part in found.parts}
    assert "nothing recorded holds" in reasons["north/U1-U2"]
    assert "nothing recorded holds" in reasons["south/U0-L0"]


def test_riveted_posts_hold_without_outriggers_and_stiffer_joints_the_more() -> None:
    multiples = [
        chord((OUTRIGGER, ""), ("joint: hung ", f"joint: {how} ")).multiple
        for how in ("riveted", "stiffened", "gusset")
    ]
    assert multiples == sorted(multiples)
    assert multiples[0] > 0.0


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (("    height: 8 ft 3 in ", "    height: not measured "), "height of the chord"),
        (("      rolled: {shape: I, depth: 15 in,",
          "      rolled: {shape: I, depth: not measured,"), "depth"),
    ],
)
def test_what_is_not_measured_holds_nothing_and_is_said(
    change: tuple[str, str], said: str
) -> None:
    _, chords, words = solved(change)
    assert any(said in one for one in words)
    assert all(not 0.0 < spring < math.inf for one in chords for spring in one.stiffness)
    assert chords == () or chords[0].multiple < chord().multiple


def test_a_splice_without_plates_is_a_hinge() -> None:
    cut = ("  stiff joints: [U2] ", "  # stiff joints: [U2] ")
    assert chord(cut).hinged[3]
    assert chord(cut).multiple < chord().multiple


def test_an_effective_length_takes_no_factor_besides() -> None:
    bridge, _, _ = solved()
    from eyebar.resistance.whole_column import factor_out_of_plane
    bars = {bar.name: bar for bar in bridge.trusses[0].bars}
    assert factor_out_of_plane(bars["U1-U2"], VALUES) == 1.0
    assert factor_out_of_plane(bars["U1-L1"], VALUES) == VALUES.number(
        "effective length.out of plane"
    )
