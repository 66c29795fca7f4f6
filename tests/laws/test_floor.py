"""Laws of the floor, each with its condition."""

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.bridge.parts import Bridge
from eyebar.loads.wheels_across import RoadAcross, hat, worst_placings
from eyebar.office import office_values
from eyebar.rating import PartRating
from eyebar.resistance import Condition
from eyebar.resistance.bending import bending_strength
from eyebar.resistance.floor_rules import floor_rules
from eyebar.sections.beams import beam_section
from eyebar.sections.shapes import Rolled, RolledShape
from eyebar.terms import Level, Method
from eyebar.vehicles import Vehicle
from tests.rating.floors import Change, floor_bridge, rated, some

VALUES = office_values()
TRIED = ("Type 3", "SU7")
PARTS = (
    "floor/panel 2/stringer 1", "floor/panel 2/stringer 4", "floor/panel 6/stringer 4",
    "floor/L4/floorbeam", "upstream/L4/hanger", "upstream/L0/bearing", "floor/deck",
)
"""Parts of quillmarsh of every kind, one with loss along it."""
Key = tuple[str, str, Method, Level]


def factors(bridge: Bridge, vehicles: dict[str, Vehicle] | None = None) -> dict[Key, PartRating]:
    parts = rated(bridge, vehicles or dict(some(*TRIED)))
    return {
        (address, one.vehicle, one.method, one.level): one
        for address in PARTS for one in parts[address].ratings if one.factor is not None
    }


@cache
def as_it_is() -> dict[Key, PartRating]:
    return factors(floor_bridge("quillmarsh"))


def never_less(found: dict[Key, PartRating], known: dict[Key, PartRating]) -> int:
    """Whether no factor is less than the known one; how many are more."""
    more = 0
    assert found.keys() == known.keys()
    for key, one in found.items():
        before, now = known[key].factor, one.factor
        assert before is not None
        assert now is not None
        assert now >= before * (1.0 - 1e-9), key
        more += now > before * (1.0 + 1e-9)
    return more


@pytest.mark.parametrize("change", [
    ("    weight: 50 lb/ft3\n    runs: across", "    weight: 35 lb/ft3\n    runs: across"),
    ("weight: 120 lb/ft3, measured", "weight: 60 lb/ft3, measured"),
    ("    weight: 1150 lb\n", "    weight: 700 lb\n"),
    ("  wheel guards: {weight: 10 lb/ft}", "  wheel guards: {weight: 1 lb/ft}"),
])
def test_weight_taken_off_never_lowers_a_factor(change: Change) -> None:
    # Condition: stringers cut at every floorbeam and no truss rods, so that no dead load relieves;
    # a wheel guard between the stringers, where the lever rule gives no stringer less than nothing.
    assert never_less(factors(floor_bridge("quillmarsh", change)), as_it_is()) > 0


@pytest.mark.parametrize("change", [
    # Timber by values given: bending, shear and push a quarter more, the same modulus.
    ("    stringer fir: {species: Douglas fir-larch, grade: select structural, wet: false}",
     "    stringer fir: {bending: 2000 psi, shear: 213 psi, across the grain: 782 psi, modulus: "
     "1600 ksi, wet: false, source: made}"),
    # Rolled of a stronger metal: the beam is of the same sizes.
    ("    material: bar iron\n    ends: hung", "    material: steel\n    ends: hung"),
    ("root diameter: 15/16 in", "root diameter: 1 in"),
])
def test_a_part_made_stronger_never_lowers_a_factor(change: Change) -> None:
    # Condition: the same stiffness and weight; the loads of all parts stay what they were.
    never_less(factors(floor_bridge("quillmarsh", change)), as_it_is())


def test_a_vehicle_twice_as_heavy_has_half_the_factor() -> None:
    # Condition: no tyre that grows with the wheel, which spreads it: not the deck.
    heavy = {
        name: replace(one, axles_kip=tuple(2.0 * axle for axle in one.axles_kip))
        for name, one in some(*TRIED).items()
    }
    known = as_it_is()
    for key, one in factors(floor_bridge("quillmarsh"), heavy).items():
        if key[0] != "floor/deck":
            before = known[key].factor
            assert before is not None
            assert one.factor == pytest.approx(before / 2.0, rel=1e-9), key


def test_by_load_factor_inventory_is_in_one_proportion_to_operating() -> None:
    # Condition: the same check governs; strength 1.3 / 2.17, overload 1 / 1.67.
    known, seen = as_it_is(), 0
    for key, one in known.items():
        if key[2] is Method.LOAD_FACTOR and key[3] is Level.INVENTORY:
            other = known[(*key[:3], Level.OPERATING)]
            if one.check == other.check:
                service = one.check == "overload"
                part = 1.0 / 1.67 if service else 1.3 / 2.17
                assert one.factor == pytest.approx((other.factor or 0.0) * part, rel=1e-9)
                seen += 1
    assert seen > 3


places = st.lists(st.floats(1.5, 4.0), min_size=3, max_size=8)


@given(gaps=places, clear=st.floats(9.0, 24.0), lanes=st.integers(1, 2))
@settings(deadline=None)
def test_what_the_stringers_take_together_is_no_less_than_the_vehicle(
    gaps: list[float], clear: float, lanes: int
) -> None:
    # Condition: none; each stringer has its own worst place, so the sum is at least that of one.
    road = RoadAcross(curb_ft=1.0, clear_ft=clear)
    stringers = [1.0]
    for gap in gaps:
        stringers.append(stringers[-1] + gap)
    total = sum(
        worst_placings(
            hat(stringers, i), road, gauge_ft=6.0, most_lanes=lanes, values=VALUES
        )[-1].share
        for i in range(len(stringers))
    )
    assert total >= lanes - 1e-9


BEAM = Rolled(
    shape=RolledShape.I, number=1, depth=12.0, web=0.35, flange=5.0, flange_thickness=0.54
)


@given(
    unheld=st.floats(0.0, 360.0), longer=st.floats(0.0, 120.0), stress=st.floats(24.0, 33.0),
    method=st.sampled_from([
        (Method.ALLOWABLE_STRESS, Level.OPERATING), (Method.LOAD_FACTOR, Level.OPERATING),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL),
    ]),
)
@settings(deadline=None)
def test_a_beam_held_at_longer_distances_bears_no_more(
    unheld: float, longer: float, stress: float, method: tuple[Method, Level]
) -> None:
    # Condition: none but one section and one metal; held all along is a length of nothing.
    by = floor_rules(
        *method, system="stringers", values=VALUES,
        condition=Condition(superstructure_condition=6, loss_measured=False),
    )
    section = beam_section(BEAM)
    near, far = (
        bending_strength(section, by.bending, VALUES, yield_stress=stress, modulus=27_900.0,
                         unheld=length)
        for length in (unheld, unheld + longer)
    )
    assert far <= near + 1e-9
    # And stronger metal never bears less, as long as its proportions stay compact or not alike.
    strong = bending_strength(section, by.bending, VALUES, yield_stress=stress * 1.02,
                              modulus=27_900.0, unheld=0.0)
    held = bending_strength(section, by.bending, VALUES, yield_stress=stress, modulus=27_900.0,
                            unheld=0.0)
    assert strong >= held
