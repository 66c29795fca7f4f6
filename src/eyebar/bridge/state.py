"""The bridge on a date: what is derived from a record, and by what rules.

The record holds the bridge as built, dated inspections and decisions; this is where they become one
frozen state. Every rule that decides something is said in the result.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from eyebar.bridge.bars import Made, made
from eyebar.bridge.blocks import seated, seats_of
from eyebar.bridge.bracing import bracing_on, sideways
from eyebar.bridge.checks import form_faults
from eyebar.bridge.floor_said import FloorWords
from eyebar.bridge.floor_state import floor_on
from eyebar.bridge.laid import Laid, fault, laid_out, said_of_layout
from eyebar.bridge.lengths import Held, Strut, held
from eyebar.bridge.members import Member, member
from eyebar.bridge.metals import material_of
from eyebar.bridge.others import other_parts
from eyebar.bridge.parts import Bridge, Material, Roadway, Seat, Truss, Weight
from eyebar.bridge.pins import Found, packing_faults, pins_of
from eyebar.bridge.road import across, roadway_on, unmeasured_road
from eyebar.bridge.running import running_on
from eyebar.bridge.timeline import (
    Findings,
    decisions_by_part,
    latest_entry,
    part_state,
    readings_by_part,
    superstructure_code,
)
from eyebar.bridge.weights import weights_on
from eyebar.errors import BadRecord, Fault, OutOfRange
from eyebar.office import Values
from eyebar.record import Bearing, DecisionEntry, EndFixing, Record
from eyebar.record.known import Known
from eyebar.record.layout import bearing_joints
from eyebar.record.tree import Path

DECK = "floor/deck"


@dataclass(slots=True, kw_only=True)
class _Gathering:
    """What is being put together for one bridge: the record on a date, rules and faults found.

    `laid` and `made` are by truss, what was made of its bars by bar; `refused` has (path, reason)
    -> the parts that could not be made.
    """

    record: Record
    on: date
    values: Values
    readings: Mapping[str, Findings]
    decisions: Mapping[str, tuple[DecisionEntry, ...]]
    materials: dict[str, Material] = field(default_factory=dict)
    laid: dict[str, Laid] = field(default_factory=dict)
    said: dict[str, Mapping[str, Member]] = field(default_factory=dict)
    made: dict[str, list[Made]] = field(default_factory=dict)
    rules: list[str] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    refused: dict[tuple[Path, str], list[str]] = field(default_factory=dict)


def bridge_on(record: Record, on: date | None, values: Values) -> Bridge:
    """The bridge as it is on a date, by default that of the record's latest dated entry.

    Raises BadRecord with every fault at once where the record and its form do not agree or an entry
    does not fit its part, and OutOfRange for a date before the bridge was built.
    """
    gathering = _begun(record, on, values)
    if faults := _looked_over(gathering):
        raise BadRecord(record.file, faults)
    gathering.rules[:0] = [_said_of_day(record, on), *said_of_layout(record)]
    trusses, no_pins = _with_pins(gathering, [
        _truss(gathering, name) for name in record.trusses.names
    ])
    roadway = roadway_on(record, gathering.readings.get(DECK, ()))
    weights, unknown = _weights(gathering, trusses, roadway)
    if unknown:
        trusses = [_unrated(truss, unknown) for truss in trusses]
    words = FloorWords(
        record=record, materials=gathering.materials, readings=gathering.readings,
        decisions=gathering.decisions, values=gathering.values,
    )
    floor, reasons = floor_on(words, trusses, roadway, unknown)
    return Bridge(
        name=record.name, number=record.number, owner=record.owner, place=record.place,
        built=record.built, on=gathering.on, trusses=tuple(trusses), weights=weights,
        roadway=roadway, others=other_parts(
            record, trusses, {truss.name: _pinned(gathering, truss.name) for truss in trusses},
            gathering.decisions,
            seats={truss.name: _seats(gathering, truss.name) for truss in trusses},
            pins=no_pins, floor=reasons,
            rated=frozenset(one.address for one in floor.parts) if floor else frozenset(),
        ),
        superstructure_condition=superstructure_code(record, gathering.on),
        condition_measured=any(
            made.sizes_read for found in gathering.made.values() for made in found
        ),
        unknown_loads=unknown,
        rules=tuple(dict.fromkeys(gathering.rules)), record_hash=record.hash, floor=floor,
        bracing=bracing_on(words, tuple(trusses), gathering.said),
    )


def bridge_faults(record: Record, on: date | None, values: Values) -> tuple[Fault, ...]:
    """What is wrong on a date with a record that has faults, besides those that it tells itself.

    What they leave in doubt is not judged. Readings and pieces that do not fit their bars are among
    those that the record tells.
    """
    begun = _begun(record, on, values)
    begun.readings = {}
    begun.decisions = {
        part: tuple(decision for decision in decisions if decision.pieces is None)
        for part, decisions in begun.decisions.items()
    }
    return _looked_over(begun)


def _begun(record: Record, on: date | None, values: Values) -> _Gathering:
    day = _day(record, on) or date.max
    return _Gathering(
        record=record, on=day, values=values, readings=readings_by_part(record, day),
        decisions=decisions_by_part(record, day),
    )


def _looked_over(gathering: _Gathering) -> tuple[Fault, ...]:
    """Puts together what a bridge is made from, as far as that goes; what stands in the way."""
    record = gathering.record
    _gather_materials(gathering)
    known = Known(record=record)
    for name in record.trusses.names if known.joints_known else ():
        gathering.laid[name] = laid_out(record, name)
        _gather_bars(gathering, known, name)
    told = (*form_faults(known, gathering.laid), *gathering.faults)
    rules = {fault.rule for fault in told}
    return (*told, *(
        fault(record, path, f"{', '.join(parts)}: {reason}",
              cure="look at what was read and decided of it")
        for (path, reason), parts in gathering.refused.items() if reason not in rules
    ))


def _day(record: Record, on: date | None) -> date | None:
    """The date: that asked for, else that of the latest entry, else the year's end when built."""
    if on is not None:
        return on
    built = None if record.built is None else date(record.built, 12, 31)
    return latest_entry(record) or built


def _said_of_day(record: Record, on: date | None) -> str:
    """The sentence that says what holds on the date. Raises OutOfRange for one that cannot be."""
    day = _day(record, on)
    if day is None:
        raise OutOfRange("date", "not known", "given: the record has no dated entry, no year")
    if record.built is not None and day.year < record.built:
        raise OutOfRange("date", day, f"not before {record.built}, when the bridge was built")
    if on is None and latest_entry(record) is None:
        return "no dated entry: the bridge is taken as it was built"
    return (
        f"as on {day}: of each measure the latest reading at each place holds, the least along a"
        " body governs it, heads go by their own readings; what was never read is as built"
    )


def _gather_materials(gathering: _Gathering) -> None:
    record = gathering.record
    for name, entry in record.materials.items():
        gathering.materials[name], wrong = material_of(
            name, entry, record.built, gathering.values
        )
        gathering.faults += [
            fault(record, ("materials", name, *keys), f"{refused}", cure="look at its figures")
            for keys, refused in wrong
        ]


def _gather_bars(gathering: _Gathering, known: Known, name: str) -> None:
    """What becomes of each bar of a truss about which nothing is in doubt."""
    record, laid = gathering.record, gathering.laid[name]
    said = {
        bar: member(record, name, bar, laid.groups[bar])
        for bar in laid.layout.bars if bar in laid.groups
    }
    holds = _holds(gathering, name, laid, said)
    gathering.said[name] = said
    made = [
        _bar(gathering, name, laid, one, holds[bar]) for bar, one in said.items()
        if f"{name}/{bar}" not in known.doubtful and one.group not in known.doubtful_sections
    ]
    gathering.made[name] = [one for one in made if one is not None]
    gathering.rules += [rule for one in gathering.made[name] for rule in one.rules]
    if set(laid.layout.bars) == set(laid.groups) and not known.lost:
        gathering.faults += packing_faults(
            record, name, {bar.name: bar.ends for bar in laid.layout.bars.values()},
            [joint for joint, _ in laid.layout.floor_joints],
        )


def _truss(gathering: _Gathering, name: str) -> Truss:
    laid, made = gathering.laid[name], gathering.made[name]
    bars = [bar for one in made for bar in one.bars]
    return Truss(
        name=name, joints=dict(laid.layout.joints),
        bars=seated(
            running_on(bars, gathering.said[name], laid.layout.joints), _seats(gathering, name)
        ),
        broken=tuple(bar for one in made for bar in one.broken),
        floor_joints=laid.layout.floor_joints, supports=_supports(gathering, name),
    )


def _with_pins(
    gathering: _Gathering, trusses: Sequence[Truss]
) -> tuple[list[Truss], dict[str, str]]:
    """The trusses with their pins; address -> why a pin is not rated."""
    found = Found(
        materials=gathering.materials, readings=gathering.readings,
        decisions=gathering.decisions, values=gathering.values,
    )
    whole: list[Truss] = []
    refused: dict[str, str] = {}
    for truss in trusses:
        pinned = _pinned(gathering, truss.name)
        joints = [joint for joint in truss.joints if joint in pinned]
        pins, reasons = pins_of(gathering.record, truss, joints, found)
        whole.append(replace(truss, pins=pins))
        refused |= reasons
        gathering.rules += [rule for pin in pins for rule in pin.rules]
    return whole, refused


def _seats(gathering: _Gathering, name: str) -> Mapping[str, Seat]:
    """The blocks at a truss's joints."""
    return seats_of(gathering.record, name, gathering.materials)


def _pinned(gathering: _Gathering, name: str) -> frozenset[str]:
    """The joints of a truss that turn about pins."""
    said = gathering.said[name]
    return frozenset(
        joint for bar in gathering.laid[name].layout.bars.values() for joint in bar.ends
        if said[bar.name].ends is EndFixing.PINNED
    )


def _holds(
    gathering: _Gathering, truss: str, laid: Laid, said: Mapping[str, Member]
) -> Mapping[str, Held]:
    joints = laid.layout.joints
    struts = [
        Strut(
            name=bar.name, ends=bar.ends, member=said[bar.name],
            length=math.dist(joints[bar.ends[0]], joints[bar.ends[1]]),
        )
        for bar in laid.layout.bars.values() if bar.name in said
    ]
    bracing = sideways(gathering.record, gathering.decisions, joints, gathering.values)
    found, rules = held(struts, bracing)
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
        # The record tells of it; what else is wrong with the bar does not depend on its material.
        material = next(iter(gathering.materials.values()), None)
    if material is None:
        return None
    try:
        return made(
            truss, laid.layout.bars[said.bar], laid.layout.joints, said,
            state=state, held=holds, material=material,
        )
    except OutOfRange as refused:
        gathering.refused.setdefault((said.path, f"{refused}"), []).append(part)
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
