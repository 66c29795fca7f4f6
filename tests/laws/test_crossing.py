"""Laws of crossing, on a small bridge with a slack counter's panel and on two lanes.

Where a search is bounded it says so: so many vehicles, drawn anew in every run of the soak.
"""

from dataclasses import replace
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.bridge.parts import ANY_USE, Bridge, Use
from eyebar.rating.crossing import Crossing, Rater, crossings, rules_of_the_road
from eyebar.rating.kept import kept_for
from eyebar.rating.posting import wanted_by
from eyebar.sections.shapes import Eyebar, Eyebars
from eyebar.terms import Answer, Kind, Pace, VehicleClass
from eyebar.vehicles import Vehicle, loaded_by
from tests.rating.bridges import bar, bridge, pratt, road, values, vehicle
from tests.rating.test_crossing import POSTING, factor_under, made

VALUES = values()
ORDER = (Answer.NO, Answer.CONDITIONS, Answer.YES)
FEW = settings(max_examples=25, deadline=None)


@cache
def two_lanes() -> Bridge:
    """Six panels with counters that go slack, two lanes, a road with minor depressions."""
    heavy = Eyebars(bars=(Eyebar(width=4.0, thickness=1.25, head=9.0, hole=3.0),) * 2)
    counters = ("U3-L2", "U3-L4", "U2-L1", "U4-L5")
    truss = pratt(
        6, panel_ft=15.0, depth_ft=12.0, slender=True,
        bars={"L2-L3": {"as_built": heavy}, "U1-L2": {"as_built": heavy}},
        more=tuple(bar(name, Kind.COUNTER, can_push=False) for name in counters),
    )
    across = road(
        "near", truss_spacing_ft=24.0, clear_width_ft=20.0, curb_ft={"near": 2.0},
        surface="minor depressions",
    )
    return bridge(truss, kip_a_panel=16.0, roadway=across)


BRIDGES = (made(8.0), two_lanes())
"""Neither is closed, so that every no is one of the axles."""
which = st.sampled_from(range(len(BRIDGES)))


@cache
def rater(number: int) -> Rater:
    return Rater(bridge=BRIDGES[number], kept=kept_for(BRIDGES[number], VALUES, wanted_by(VALUES)))


@st.composite
def drawn(draw: st.DrawFn) -> Vehicle:
    """A vehicle of one to six axles; sometimes with what can be taken off it."""
    count = draw(st.integers(1, 6))
    axles = tuple(draw(st.floats(1.0, 40.0)) for _ in range(count))
    spacings = tuple(draw(st.floats(3.0, 40.0)) for _ in range(count - 1))
    empty = draw(st.floats(0.2, 1.0))
    gauge = draw(st.floats(4.0, 9.0))
    return vehicle(
        "drawn", axles, spacings, vehicle_class=VehicleClass.EVERYDAY, gauge_ft=gauge,
        width_ft=gauge + 2.0, empty_axles_kip=tuple(empty * axle for axle in axles),
        posted_as=draw(st.sampled_from([VehicleClass.SINGLE, VehicleClass.COMBINATION])),
    )


def answered(number: int, *vehicles: Vehicle) -> list[Crossing]:
    return list(crossings(BRIDGES[number], VALUES, vehicles, POSTING).crossings)


@FEW
@given(which, drawn(), st.floats(0.05, 1.0))
def test_all_axles_lighter_by_one_number_are_never_refused_where_the_heavier_is_allowed(
    number: int, heavy: Vehicle, scale: float
) -> None:
    light = replace(
        heavy, axles_kip=tuple(scale * axle for axle in heavy.axles_kip),
        empty_axles_kip=tuple(scale * axle for axle in heavy.empty_axles_kip),
    )
    first, second = answered(number, heavy, light)
    # Condition: rules of the road alone; how much may stay on a vehicle goes by half tons.
    if first.answer is Answer.YES or any(
        all(m.tons is None for m in way.conditions) for way in first.ways
    ):
        assert ORDER.index(second.answer) >= ORDER.index(first.answer)
    if first.by is not None and second.by is not None:
        assert (second.by.factor or 0.0) >= (first.by.factor or 0.0) * (1.0 - 1e-9)


@FEW
@given(which, drawn())
def test_a_condition_never_makes_it_worse(number: int, one: Vehicle) -> None:
    uses = [use for _, use in rules_of_the_road(VALUES)]

    def least(use: Use) -> float:
        (by,) = rater(number).least([one], use)
        return float("inf") if by is None or by.factor is None else by.factor

    base = least(ANY_USE)
    for use in uses:
        under = least(use)
        assert under >= base * (1.0 - 1e-9)
        for stricter in uses:
            held = use.held_ft is None or stricter.held_ft is not None
            alone = not use.alone or stricter.alone
            slow = use.pace is Pace.ANY or stricter.pace is Pace.WALKING
            if held and alone and slow:
                assert least(stricter) >= under * (1.0 - 1e-9)


@FEW
@given(which, drawn())
def test_no_vehicle_that_is_allowed_is_refused_when_rated_from_the_beginning(
    number: int, one: Vehicle
) -> None:
    """A bounded search: every yes and every way, rated again by itself with nothing kept."""
    (found,) = answered(number, one)
    if found.answer is Answer.YES:
        assert factor_under(BRIDGES[number], one, ANY_USE) >= 1.0
    for way in found.ways:
        assert factor_under(BRIDGES[number], way.vehicle, way.use) >= 1.0
    if found.answer is Answer.NO:
        assert factor_under(BRIDGES[number], one, ANY_USE) < 1.0


@FEW
@given(which, drawn(), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_less_on_a_vehicle_never_makes_it_worse(
    number: int, one: Vehicle, part: float, other: float
) -> None:
    less, more = sorted((part, other))
    pair = rater(number).least([loaded_by(one, less), loaded_by(one, more)], ANY_USE)
    first, second = (
        float("inf") if by is None or by.factor is None else by.factor for by in pair
    )
    assert first >= second * (1.0 - 1e-9)


@FEW
@given(which, drawn())
def test_over_the_posted_weight_never_a_plain_yes(number: int, one: Vehicle) -> None:
    made_of = crossings(BRIDGES[number], VALUES, [one], POSTING)
    (found,), posting = made_of.crossings, made_of.rating.posting
    limit = (posting.combination_tons if one.posted_as is VehicleClass.COMBINATION
             else posting.single_tons)
    if limit is not None and one.weight_tons > limit:
        assert found.answer is not Answer.YES
