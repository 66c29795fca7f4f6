"""The bridge on a date: what is derived from a record, and by what rules.

The record holds the bridge as built, dated inspections and decisions; this is where they become one
frozen state. Every rule that decides something is said in the result.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from eyebar.bridge.bars import Made, made
from eyebar.bridge.checks import form_faults
from eyebar.bridge.laid import Laid, fault, laid_out, said_of_skew
from eyebar.bridge.lengths import Held, Strut, held
from eyebar.bridge.members import Member, member
from eyebar.bridge.metals import material_of
from eyebar.bridge.others import other_parts
from eyebar.bridge.parts import Bar, Bridge, Material, Roadway, Truss, Weight
from eyebar.bridge.road import across, roadway_on, unmeasured_road
from eyebar.bridge.running import running_on
from eyebar.bridge.timeline import (
    Findings,
    decisions_by_part,
    latest_entry,
    part_state,
    readings_by_part,
)
from eyebar.bridge.weights import weights_on
from eyebar.errors import BadRecord, Fault, OutOfRange
from eyebar.office import Values
from eyebar.record import Bearing, DecisionEntry, EndFixing, Record
from eyebar.record.layout import bearing_joints

DECK = "floor/deck"


@dataclass(slots=True, kw_only=True)
class _Gathering:
    """What is being put together for one bridge: the record on a date, rules and faults found."""

    record: Record
    on: date
    values: Values
    readings: Mapping[str, Findings]
    decisions: Mapping[str, tuple[DecisionEntry, ...]]
    materials: dict[str, Material] = field(default_factory=dict)
    rules: list[str] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    sizes_read: bool = False


def bridge_on(record: Record, on: date | None, values: Values) -> Bridge:
    """The bridge as it is on a date, by default that of the record's latest dated entry.

    Raises BadRecord with every fault at once where the record and its form do not agree or an entry
    does not fit its part, and OutOfRange for a date before the bridge was built.
    """
    day, said = _day(record, on)
    if faults := form_faults(record):
        raise BadRecord(record.file, faults)
    gathering = _Gathering(
        record=record, on=day, values=values, readings=readings_by_part(record, day),
        decisions=decisions_by_part(record, day),
        rules=[said, *said_of_skew(record)],
    )
    _gather_materials(gathering)
    trusses, pinned = [], {}
    for name in record.trusses.names:
        truss, pinned[name] = _truss(gathering, name)
        trusses.append(truss)
    if gathering.faults:
        raise BadRecord(record.file, tuple(gathering.faults))
    roadway = roadway_on(record, gathering.readings.get(DECK, ()))
    weights, unknown = _weights(gathering, trusses, roadway)
    if unknown:
        trusses = [_unrated(truss, unknown) for truss in trusses]
    return Bridge(
        name=record.name, number=record.number, owner=record.owner, place=record.place,
        built=record.built, on=day, trusses=tuple(trusses), weights=weights,
        roadway=roadway, others=other_parts(
            record, trusses, pinned, gathering.decisions
        ),
        superstructure_condition=_condition(record, day),
        condition_measured=gathering.sizes_read, unknown_loads=unknown,
        rules=tuple(dict.fromkeys(gathering.rules)), record_hash=record.hash,
    )


def _day(record: Record, on: date | None) -> tuple[date, str]:
    """The date, and the sentence that says what holds on it."""
    latest = latest_entry(record)
    if on is None and latest is None:
        if record.built is None:
            raise OutOfRange("date", "not known", "given: the record has no dated entry, no year")
        return date(record.built, 12, 31), "no dated entry: the bridge is taken as it was built"
    day = latest if on is None else on
    assert day is not None
    if record.built is not None and day.year < record.built:
        raise OutOfRange("date", day, f"not before {record.built}, when the bridge was built")
    return day, (
        f"as on {day}: of each measure the latest reading at each place holds, the least along a"
        " body governs it, heads go by their own readings; what was never read is as built"
    )


def _gather_materials(gathering: _Gathering) -> None:
    record = gathering.record
    for name, entry in record.materials.items():
        try:
            gathering.materials[name] = material_of(name, entry, record.built, gathering.values)
        except OutOfRange as refused:
            gathering.faults.append(
                fault(record, ("materials", name), f"{refused}", cure="look at its figures")
            )


def _truss(gathering: _Gathering, name: str) -> tuple[Truss, frozenset[str]]:
    """One truss, and its joints that turn about pins."""
    record = gathering.record
    laid = laid_out(record, name)
    said = {
        bar: member(record, name, bar, laid.groups[bar]) for bar in laid.layout.bars
    }
    holds = _holds(gathering, name, laid, said)
    bars: list[Bar] = []
    broken: list[Bar] = []
    for bar in laid.layout.bars:
        found = _bar(gathering, name, laid, said[bar], holds[bar])
        if found is not None:
            bars += found.bars
            broken += found.broken
            gathering.rules += found.rules
            gathering.sizes_read |= found.sizes_read
    pinned = frozenset(
        joint for bar in laid.layout.bars.values() for joint in bar.ends
        if said[bar.name].ends is EndFixing.PINNED
    )
    return Truss(
        name=name, joints=dict(laid.layout.joints),
        bars=running_on(bars, said, laid.layout.joints), broken=tuple(broken),
        floor_joints=laid.layout.floor_joints, supports=_supports(gathering, name),
    ), pinned


def _holds(
    gathering: _Gathering, truss: str, laid: Laid, said: Mapping[str, Member]
) -> Mapping[str, Held]:
    joints = laid.layout.joints
    struts = [
        Strut(
            name=bar.name, ends=bar.ends, member=said[bar.name],
            length=math.dist(joints[bar.ends[0]], joints[bar.ends[1]]),
        )
        for bar in laid.layout.bars.values()
    ]
    found, rules = held(struts)
    gathering.rules += [f"{truss}: {rule}" for rule in rules]
    return found


def _bar(
    gathering: _Gathering, truss: str, laid: Laid, said: Member, holds: Held
) -> Made | None:
    """One bar; None where an entry does not fit it, which is a fault then."""
    part = f"{truss}/{said.bar}"
    state = part_state(
        part, gathering.readings.get(part, ()), gathering.decisions.get(part, ())
    )
    material = gathering.materials.get(state.material or said.material)
    if material is None:
        return None
    try:
        return made(
            truss, laid.layout.bars[said.bar], laid.layout.joints, said,
            state=state, held=holds, material=material,
        )
    except OutOfRange as refused:
        gathering.faults.append(
            fault(gathering.record, said.path, f"{part}: {refused}", cure="look at what was read"
                  " and decided of it")
        )
        return None


def _supports(gathering: _Gathering, truss: str) -> Mapping[str, tuple[bool, bool]]:
    """Joint -> (x held, y held): one end held along the road, the other free to slide.

    No horizontal thrust between the two abutments is relied on: it would take pull from the bottom
    chord, and masonry yields and rust lets go.
    """
    record = gathering.record
    bearings = record.trusses.bearings
    ends = bearing_joints(record.trusses)
    how = []
    for joint, word in zip(ends, (bearings.zero, bearings.other), strict=True):
        own = record.overrides.get(f"{truss}/{joint}/bearing")
        how.append(word if own is None or own.bearing is None else own.bearing)
    holding = (Bearing.FIXED, Bearing.FROZEN)
    fixed = min((0, 1), key=lambda end: holding.index(how[end]) if how[end] in holding else 2)
    free = 1 - fixed
    if how[free] is not Bearing.FREE:
        gathering.rules.append(
            f"{truss}/{ends[free]}/bearing is {how[free]} and taken as free to slide: what it"
            " takes from the bottom chord today it may not take tomorrow"
        )
    return {ends[fixed]: (True, True), ends[free]: (False, True)}


def _weights(
    gathering: _Gathering, trusses: Iterable[Truss], roadway: Roadway | None
) -> tuple[Mapping[str, tuple[Weight, ...]], tuple[str, ...]]:
    """Truss -> its dead load items, and what of them nobody measured."""
    found: dict[str, tuple[Weight, ...]] = {}
    unknown = [*unmeasured_road(gathering.record)]
    for truss in trusses:
        found[truss.name], missing = weights_on(
            across(truss, roadway), gathering.record.floor, gathering.readings.get(DECK, ())
        )
        unknown += missing
        if roadway is None:
            found[truss.name] = ()
    return found, tuple(dict.fromkeys(unknown))


def _unrated(truss: Truss, unknown: tuple[str, ...]) -> Truss:
    """The truss with no bar rated: its dead load is not known."""
    reason = f"dead load not known: {'; '.join(unknown)}"
    return replace(
        truss, bars=tuple(
            replace(bar, not_rated="; ".join(filter(None, (bar.not_rated, reason))))
            for bar in truss.bars
        ),
    )


def _condition(record: Record, on: date) -> int | None:
    """The superstructure's code: the latest given up to the date, else the record's own."""
    given = [
        (inspection.date, inspection.condition.superstructure)
        for inspection in record.inspections
        if inspection.date <= on and inspection.condition is not None
        and inspection.condition.superstructure is not None
    ]
    return max(given)[1] if given else record.condition.superstructure
