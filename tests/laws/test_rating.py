"""Laws of the rating, each with the condition under which it is true.

Trusses are Pratts of 4 to 8 panels with slender diagonals, with and without counters, of random
areas and weights; bars go slack and taut on the way in many of them.
"""

from dataclasses import dataclass, replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.rating import BridgeRating, PartRating
from eyebar.sections.shapes import Eyebar, Eyebars, Given, Section
from eyebar.terms import Direction, Kind, Level, Method
from eyebar.vehicles import Vehicle, shipped_vehicles
from tests.rating.bridges import bar, bridge, pratt, rated, values, vehicle

SHIPPED = shipped_vehicles()
TRUCK = vehicle("truck", (8.0, 17.0, 17.0), (12.0, 4.0))
VARIED = vehicle("trailer", (6.0, 12.0, 15.0), (11.0, (14.0, 22.0)))

few = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow],
)

Key = tuple[str, Method, Level]

PULLED = (Kind.BOTTOM_CHORD, Kind.DIAGONAL, Kind.HIP_VERTICAL)


def eyebars(area: float) -> Eyebars:
    """Two eyebars of this area together, heads the stronger."""
    one = Eyebar(width=3.0, thickness=area / 6.0, head=8.0, hole=2.5)
    return Eyebars(bars=(one, one))


def column(area: float) -> Given:
    """A column of this area."""
    return Given(
        area=area, net_area=area, r_x=3.0, r_y=3.0, top=4.0, bottom=4.0, source="made"
    )


@dataclass(frozen=True)
class Drawn:
    """A truss drawn at random, and what each of its panel points weighs [kip]."""

    truss: Truss
    kip: float

    @property
    def bridge(self) -> Bridge:
        return bridge(self.truss, kip_a_panel=self.kip)


@st.composite
def drawn(draw: st.DrawFn) -> Drawn:
    panels = draw(st.sampled_from([4, 6, 8]))
    half = panels // 2
    areas = st.floats(1.5, 5.0)
    crossed = [f"U{i}-L{i - 1}" for i in range(half, 1, -1)][: draw(st.integers(0, half - 1))]
    crossed += [f"U{panels - int(name[1])}-L{panels - int(name[4])}" for name in crossed]
    more = tuple(
        bar(name, Kind.COUNTER, eyebars(draw(areas)))
        for name in dict.fromkeys(crossed)
    )
    plain = pratt(panels, slender=True)
    sections: dict[str, dict[str, Any]] = {}
    for one in plain.bars:
        size = draw(areas)
        section: Section = eyebars(size) if one.kind in PULLED else column(3.0 * size)
        sections[one.name] = {"as_built": section}
    truss = pratt(panels, slender=True, bars=sections, more=more)
    return Drawn(truss, draw(st.floats(3.0, 9.0)))


def factors(found: BridgeRating) -> dict[tuple[str, Key], PartRating]:
    """(bar, vehicle, method, level) -> rating."""
    return {
        (part.address, (r.vehicle, r.method, r.level)): r
        for part in found.parts for r in part.ratings
    }


def same(first: float | None, second: float | None, times: float = 1.0) -> bool:
    """Whether the second factor is so many times the first, or neither is there."""
    if first is None or second is None:
        return first is second
    return second == pytest.approx(times * first, rel=1e-7, abs=1e-9)


@few
@given(drawn())
def test_by_load_factor_inventory_is_1_3_over_2_17_of_operating_slack_bars_or_not(
    of: Drawn,
) -> None:
    # Condition: none. Both levels have one strength and one dead load; the live factor differs.
    found = factors(rated(of.bridge, TRUCK, SHIPPED["HS20"]))
    for (part, (name, method, level)), one in found.items():
        if (method, level) == (Method.LOAD_FACTOR, Level.OPERATING):
            other = found[part, (name, method, Level.INVENTORY)]
            assert same(one.factor, other.factor, 1.3 / 2.17)
            assert other.check == one.check


@few
@given(drawn())
def test_doubled_axles_halve_every_factor_slack_bars_or_not(of: Drawn) -> None:
    # Condition: the same dead load. The path of the load is the same, walked twice as fast.
    double = replace(VARIED, axles_kip=tuple(2.0 * kip for kip in VARIED.axles_kip))
    once, twice = (factors(rated(of.bridge, one)) for one in (VARIED, double))
    for key, one in once.items():
        assert same(one.factor, twice[key].factor, 0.5)
        # The vehicle weighs twice as much: the safe load is the same.
        assert same(one.tons, twice[key].tons)


@few
@given(drawn())
def test_hs15_is_three_quarters_of_hs20_with_its_lane_load(of: Drawn) -> None:
    # Condition: none. Axles, lane load and single weights all stand as 3 to 4.
    found = factors(rated(of.bridge, SHIPPED["HS15"], SHIPPED["HS20"]))
    for (part, (name, method, level)), one in found.items():
        if name == "HS15":
            other = found[part, ("HS20", method, level)]
            assert same(one.factor, other.factor, 0.75)
            assert other.check == one.check


def mirrored(truss: Truss) -> Truss:
    """The truss seen from the other side of the river: every bar in its mirror image's place."""
    last = len(truss.floor_joints) - 1

    def turned(joint: str) -> str:
        return f"{joint[0]}{last - int(joint[1:])}"

    def name(one: Bar) -> str:
        a, b = (turned(joint) for joint in one.ends)
        return f"{a}-{b}" if one.kind not in (Kind.TOP_CHORD, Kind.BOTTOM_CHORD) else f"{b}-{a}"

    bars = tuple(
        replace(one, name=name(one), address=f"{truss.name}/{name(one)}",
                ends=tuple(turned(joint) for joint in one.ends))
        for one in truss.bars
    )
    return replace(truss, bars=bars)


def compared_with_its_image(of: Drawn) -> int:
    """Holds the factors of a bridge against those of its mirror image, and where the vehicles stand
    and which way they drive wherever both stand at images of one place; how many do so.

    Condition: bearings do not matter, since all loads are upright and one end always slides. Of two
    places with one factor the first is told, which is not the image of the image's first.
    """
    image = mirrored(of.truss)
    loads = (TRUCK, VARIED, SHIPPED["HS15"])
    straight = factors(rated(of.bridge, *loads))
    turned = factors(rated(replace(of.bridge, trusses=(image,)), *loads))
    span = of.truss.floor_joints[-1][1]
    names = {
        one.address: other.address for one, other in zip(of.truss.bars, image.bars, strict=True)
    }
    compared = 0
    for (part, key), one in straight.items():
        other = turned[names[part], key]
        assert same(one.factor, other.factor)
        if one.at is None or other.at is None:
            continue
        if abs(one.at.front_axle_ft - (span - other.at.front_axle_ft)) < 1e-6:
            assert {one.at.direction, other.at.direction} == set(Direction)
            compared += 1
    return compared


@few
@given(drawn())
def test_a_mirrored_bridge_has_mirrored_factors_and_the_vehicle_drives_the_other_way(
    of: Drawn,
) -> None:
    compared_with_its_image(of)


def test_of_a_bridge_without_symmetry_the_places_are_mirrored_too() -> None:
    # Every bar of another size: no factor has two places but that at which equilibrium ends.
    plain = pratt(6, slender=True)
    sections: dict[str, dict[str, Any]] = {
        one.name: {"as_built": eyebars(1.5 + 0.1 * i) if one.kind in PULLED
                   else column(5.0 + 0.3 * i)}
        for i, one in enumerate(plain.bars)
    }
    of = Drawn(pratt(6, slender=True, bars=sections), 9.0)
    assert compared_with_its_image(of) > len(plain.bars)


@few
@given(drawn(), st.floats(0.6, 0.99), st.data())
def test_at_the_same_forces_more_rust_never_raises_the_factor_of_a_bar_in_tension(
    of: Drawn, left: float, data: st.DataObject
) -> None:
    # Condition: concentric pull, forces as built: rust takes strength and not stiffness.
    pulled = [one.name for one in of.truss.bars if isinstance(one.as_built, Eyebars)]
    name = data.draw(st.sampled_from(pulled))
    bars = tuple(
        replace(one, left=thinned(one.left, left)) if one.name == name else one
        for one in of.truss.bars
    )
    sound = factors(rated(of.bridge, TRUCK))
    rusty = factors(rated(replace(of.bridge, trusses=(replace(of.truss, bars=bars),)), TRUCK))
    for (part, key), one in sound.items():
        other = rusty[part, key]
        if part != f"near/{name}":
            assert other.factor == one.factor
        elif one.factor is not None:
            assert other.factor is not None
            assert other.factor <= one.factor
            if one.check == "yield of the body" and one.factor > 0.0:
                assert other.factor < one.factor


def thinned(section: Section, part: float) -> Section:
    assert isinstance(section, Eyebars)
    bars = tuple(
        replace(one, thickness=part * one.thickness, head_thickness=one.thickness)
        for one in section.bars if one.thickness is not None
    )
    return Eyebars(bars=bars)


@few
@given(drawn(), st.floats(1.05, 2.0))
def test_more_of_everything_that_multiplies_the_axles_lowers_every_factor_alike(
    of: Drawn, times: float
) -> None:
    # Condition: the factor multiplies the axles of every part, whatever its impact.
    plain = values({"multiple presence.older methods.one lane": 1.0})
    more = values({"multiple presence.older methods.one lane": times})
    first, second = (factors(rated(of.bridge, TRUCK, by=by)) for by in (plain, more))
    for (part, (name, method, level)), one in first.items():
        if method is not Method.LOAD_AND_RESISTANCE:
            assert same(second[part, (name, method, level)].factor, one.factor, times)


@few
@given(drawn())
def test_a_vehicle_with_an_axle_more_never_has_a_greater_factor_where_no_bar_goes_slack(
    of: Drawn,
) -> None:
    # Condition: one set of working bars on the path, and an axle that the bar's line does not lift:
    # bars whose influence line has one sign (chords of a Pratt without counters in their panel).
    longer: Vehicle = replace(
        TRUCK, name="longer", axles_kip=(*TRUCK.axles_kip, 17.0),
        spacings_ft=(*TRUCK.spacings_ft, 4.0),
    )
    found = factors(rated(of.bridge, TRUCK, longer))
    for (part, (name, method, level)), one in found.items():
        other = found[part, ("longer", method, level)]
        if name == "truck" and one.factor is not None and other.factor is not None:
            chord = part.split("/")[1] in ("L0-L1", "L1-L2", "U1-L0")
            if chord and not one.events and not other.events:
                assert other.factor <= one.factor * (1.0 + 1e-9)
