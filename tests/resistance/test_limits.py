"""All limits of a bar: replayed working, facts, and how long they take to say nothing new."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import RunsOn, Span
from eyebar.errors import NotMeasured
from eyebar.formula import Note, Step, distinct, flat, plain
from eyebar.resistance import Condition
from eyebar.sections.joined import PinPlates, Rivets, Splice
from eyebar.sections.punching import HoleLines, Punched, RivetHoles
from eyebar.sections.shapes import Angle, Angles, Battens, Lacing, Placed, Plate
from eyebar.terms import Level, Method
from tests.resistance.bars import (
    COVERED,
    EVERY_LEVEL,
    LACED,
    bar,
    eyebars,
    limits_of,
    working_of,
)

LEG = Angle(upright=3.0, level=3.0, upright_thickness=0.25, level_thickness=0.25)
SPAN = Span(length=180.0, run=180.0, area=8.0, density=480 / 1728, inertia=40.0)
BARS = {
    "eyebars": bar(eyebars(2, head=6.0), can_push=False),
    "post": bar(LACED, length=300.0, bow=0.5),
    "chord": bar(
        COVERED, left=replace(COVERED, near=replace(COVERED.near, web=0.2)), run=180.0,
        pin_offset=0.5,
    ),
    "riveted chord": bar(
        replace(
            COVERED, lacing=None, cover=Plate(width=11.0, thickness=0.1875),
            battens=Battens(
                plate=Plate(width=9.0, thickness=0.25), length=6.0, pitch=24.0, planes=1
            ),
        ),
        run=180.0, pin_offset=0.5, other_pin_offset=0.25, side_offset=0.125, bow=0.25, jaw=8.0,
        holes=RivetHoles(
            rivet=0.625,
            lines=(HoleLines(where=Punched.COVER, lines=2, gauge=8.0, stagger=1.0),),
        ),
        pin_plates=PinPlates(
            plate=Plate(width=5.0, thickness=0.125), hole=2.5, beyond=2.0,
            rivets=Rivets(number=6, diameter=0.75, cuts=1),
        ),
        splice=Splice(
            butted=False, plates=(Plate(width=6.0, thickness=0.25),) * 2, across=2,
            rivets=Rivets(number=8, diameter=0.75, cuts=1),
        ),
        runs_on=RunsOn(spans=(SPAN, SPAN, SPAN), place=1),
    ),
    "laced": bar(LACED, lacing_rivet=0.625),
    "star": bar(Angles(angles=(LEG,) * 2, placed=Placed.STAR, apart=0.25), length=48.0),
    "angle": bar(Angles(angles=(LEG,), placed=Placed.SINGLE), length=72.0),
    "box": bar(
        Angles(
            angles=(LEG,) * 4, placed=Placed.BOX, backs=12.0, backs_across=8.0,
            lacing=Lacing(bar=Plate(width=2.0, thickness=0.25), pitch=12.0, planes=2),
        ),
        length=240.0,
    ),
}


@pytest.mark.parametrize("name", BARS)
@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_limits_replayed_under_a_recorder_are_the_same_to_the_bit(
    name: str, method: Method, level: Level
) -> None:
    without = limits_of(BARS[name], method, level)
    found, steps = working_of(BARS[name], method, level)
    assert found == without
    results = {step.result for step in flat(steps) if isinstance(step, Step)}
    for limit in found.values():
        if limit.unit == "kip":
            assert limit.capacity in results


@pytest.mark.parametrize("name", BARS)
def test_the_working_is_written_with_every_step_once(name: str) -> None:
    _, steps = working_of(BARS[name], Method.LOAD_AND_RESISTANCE, Level.LEGAL)
    kept = distinct(steps)
    lines = [plain(step) for step in kept if isinstance(step, Step)]
    assert len(set(lines)) == len(lines)
    assert len(kept) < len(list(flat(steps))) or name == "eyebars"
    assert all(isinstance(entry, Step | Note) for entry in kept)


def test_remarks_of_the_factors_stand_on_every_limit() -> None:
    unknown = Condition(superstructure_condition=None, loss_measured=False)
    found = limits_of(
        BARS["post"], Method.LOAD_AND_RESISTANCE, Level.LEGAL, condition=unknown
    )
    assert all("not coded" in limit.remarks[0] for limit in found.values())


def test_inventory_uses_less_of_a_bar_than_operating() -> None:
    for one in BARS.values():
        inventory = limits_of(one, Method.ALLOWABLE_STRESS, Level.INVENTORY)
        operating = limits_of(one, Method.ALLOWABLE_STRESS, Level.OPERATING)
        assert inventory.keys() == operating.keys()
        for check, limit in inventory.items():
            assert abs(limit.force) < abs(operating[check].force)


def test_a_bar_that_can_neither_push_nor_pull_has_no_limits() -> None:
    idle = replace(BARS["post"], can_push=False, can_pull=False)
    assert limits_of(idle, Method.LOAD_FACTOR, Level.OPERATING) == {}


def test_a_size_never_known_as_built_is_taken_as_left_and_that_is_said() -> None:
    cover = COVERED.cover
    assert cover is not None
    unknown = bar(
        replace(COVERED, cover=replace(cover, thickness=None)), left=COVERED, run=180.0
    )
    found = limits_of(unknown, Method.LOAD_FACTOR, Level.OPERATING)["thrust with bending"]
    assert found.remarks == (
        "thickness of cover plate as built unknown: taken as it is left",
    )
    known = limits_of(bar(COVERED, run=180.0), Method.LOAD_FACTOR, Level.OPERATING)
    assert found.force == known["thrust with bending"].force


def test_the_part_is_named_where_a_size_is_missing() -> None:
    blank = bar(replace(LACED, apart=None), address="downstream/U3-L3")
    with pytest.raises(NotMeasured) as refused:
        limits_of(blank, Method.LOAD_FACTOR, Level.OPERATING)
    assert str(refused.value) == (
        "distance between the channels of downstream/U3-L3 not measured"
    )
