"""What the details say of the year: by hand, from the years of the table."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import Bridge
from eyebar.bridge.state import bridge_on
from eyebar.demo import SHOWN, bridge_records
from eyebar.history import age
from eyebar.history.age import _bracket, details, usual_spans
from eyebar.office import shipped_values
from eyebar.record import EndFixing
from eyebar.record.reading import record_of
from eyebar.sections.built import FlangedSegments
from eyebar.sections.shapes import Loops, Rod, Rods, RodShape
from eyebar.terms import Form, Metal


@pytest.fixture(scope="module")
def bridge() -> Bridge:
    """A demo bridge of wrought iron with eyebars and pins."""
    return bridge_on(record_of(bridge_records()[SHOWN].read_bytes()), None, shipped_values())


def made_of(bridge: Bridge, *metals: Metal) -> Bridge:
    """The same with bars of these metals in turn."""
    trusses = tuple(
        replace(truss, bars=tuple(
            replace(bar, material=replace(bar.material, metal=metals[i % len(metals)]))
            for i, bar in enumerate(truss.bars)
        ))
        for truss in bridge.trusses
    )
    return replace(bridge, trusses=trusses)


def test_every_row_has_a_source_and_years_in_order() -> None:
    for one in details().values():
        assert one.source
        assert one.first or one.last
        assert not (one.first and one.last) or one.first < one.last
    for name, span in usual_spans().items():
        assert Form(name)
        assert span.source
        assert 0.0 < span.least_ft < span.greatest_ft


def test_the_bracket_is_the_latest_beginning_to_the_earliest_end(bridge: Bridge) -> None:
    # Pins 1865 to 1910, wrought iron to 1895, half-hip from 1885 to 1920: 1885 to 1895.
    found = age(made_of(bridge, Metal.WROUGHT_IRON), [Form.HALF_HIP_PRATT])
    assert (found.first, found.last) == (1885, 1895)


def test_iron_and_steel_together_were_mixed_about_1890(bridge: Bridge) -> None:
    # Steel from 1888, iron to 1895.
    found = age(made_of(bridge, Metal.WROUGHT_IRON, Metal.STEEL), [])
    assert (found.first, found.last) == (1888, 1895)


def test_details_that_exclude_each_other_leave_no_bracket_and_are_told(bridge: Bridge) -> None:
    # Steel from 1888; a detail that ends before it: a row made up for this test.
    early = replace(details()["wrought iron"], last=1880)
    found = _bracket([early, details()["steel"]], None)
    assert (found.first, found.last) == (None, None)
    assert any("steel" in one and "1880" in one for one in found.contradictions)


def test_a_year_that_the_details_contradict_is_told(bridge: Bridge) -> None:
    found = age(replace(made_of(bridge, Metal.STEEL), built=1870), [])
    assert any("1870" in one and "steel" in one for one in found.contradictions)


def test_a_record_without_a_year_contradicts_nothing(bridge: Bridge) -> None:
    found = age(replace(made_of(bridge, Metal.STEEL), built=None), [])
    assert found.contradictions == ()
    assert found.first == 1888


def test_joints_that_are_riveted_or_welded_tell_their_years(bridge: Bridge) -> None:
    # Riveted from 1895, welded from 1930, pins to 1910: pins and welds exclude each other.
    steel = made_of(bridge, Metal.STEEL)
    riveted = age(steel, [], [EndFixing.RIVETED, EndFixing.PINNED])
    assert (riveted.first, riveted.last) == (1895, 1910)
    welded = age(steel, [], [EndFixing.WELDED])
    assert (welded.first, welded.last) == (None, None)
    assert any("welded" in one and "1930" in one for one in welded.contradictions)


def test_sections_tell_their_years(bridge: Bridge) -> None:
    # Forged loops tell of the smith, loops that are only bent say nothing.
    bar = bridge.trusses[0].bars[0]
    segments = FlangedSegments(segments=(), inside=6.0)
    loop = Rod(shape=RodShape.ROUND, size=1.0, looped=True)
    for section, name in (
        (segments, "flanged segments"), (Rods(rods=(loop,)), "loop rods"),
        (Rods(rods=(replace(loop, loops=Loops.BENT),)), ""),
    ):
        truss = replace(bridge.trusses[0], bars=(replace(bar, as_built=section),), broken=())
        found = {one.name for one in age(replace(bridge, trusses=(truss,)), []).details}
        assert found & {"flanged segments", "loop rods"} == ({name} if name else set())
