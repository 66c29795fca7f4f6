"""The pins of a truss as they are left, each with its packing, and why some are not rated."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from math import dist

from eyebar.addresses import address
from eyebar.bridge.metals import strength_unknown
from eyebar.bridge.packed import (
    out_of_balance,
    placed,
    proposed,
    said,
    with_own_weight,
)
from eyebar.bridge.parts import Bar, Material, Packed, Pin, Truss
from eyebar.bridge.timeline import Findings
from eyebar.errors import Fault, NotMeasured, did_you_mean
from eyebar.office import Values
from eyebar.record import BOTH_TRUSSES, Decided, DecisionEntry, PackedEntry, Record, What
from eyebar.record.layout import images_of, letters_between, mirrored_bar, panel_count
from eyebar.record.pins import HUNG, POST
from eyebar.record.tree import Path
from eyebar.units import Quantity

NOT_RECORDED = "pin not recorded"
LOAD = "the load hung on the pin"


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What a record says of one pin: group and override together; `path` of its packing."""

    address: str
    joint: str
    diameter: Quantity | None
    material: str
    packing: tuple[PackedEntry, ...]
    half: bool
    path: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What a pin needs besides the record's words: materials, readings, decisions, values."""

    materials: Mapping[str, Material]
    readings: Mapping[str, Findings]
    decisions: Mapping[str, tuple[DecisionEntry, ...]]
    values: Values


def pins_said(record: Record, truss: str) -> dict[str, Said]:
    """Joint -> what the record says of its pin, for one truss; images of a mirrored half too, where
    a joint is not named by itself."""
    found: dict[str, Said] = {}
    images: dict[str, Said] = {}
    for name, entry in record.pins.items():
        if entry.truss not in (BOTH_TRUSSES, truss):
            continue
        for joint in entry.joints:
            opposite, packing = joint, entry.packing
            if panel_count(record.trusses):
                opposite = images_of(record.trusses, (joint,))[0]
            mirrored = _mirrored(record, packing) if opposite != joint else packing
            if opposite == entry.joints[0]:
                packing, mirrored = mirrored, packing
            said = Said(
                address=f"{truss}/{joint}/pin", joint=joint, diameter=entry.diameter,
                material=entry.material, packing=packing, half=entry.half,
                path=("pins", name, "packing"),
            )
            found.setdefault(joint, said)
            if record.trusses.mirrored:
                images.setdefault(opposite, replace(
                    said, address=f"{truss}/{opposite}/pin", joint=opposite, packing=mirrored
                ))
    found = {**images, **found}
    for written, own in record.overrides.items():
        part = address(written)
        if part.truss != truss or str(part.kind) != "pin":
            continue
        usual = found.get(part.joint)
        found[part.joint] = Said(
            address=part.part, joint=part.joint,
            diameter=own.diameter or (usual.diameter if usual else None),
            material=own.material or (usual.material if usual else ""),
            packing=(usual.packing if usual else ()) if own.packing is None else own.packing,
            half=(usual.half if usual else True) if own.half is None else own.half,
            path=("overrides", written, "packing") if own.packing is not None or usual is None
            else usual.path,
        )
    return found


def _mirrored(
    record: Record, packing: Sequence[PackedEntry]
) -> tuple[PackedEntry, ...]:
    """A packing as it is at the mirror image of its joint: of each bar the image."""
    count, letters = panel_count(record.trusses), letters_between(record.trusses)
    return tuple(
        one.model_copy(update={"bar": tuple(
            name if name in (*HUNG, POST) else mirrored_bar(name, count, letters)
            for name in one.bar
        )})
        for one in packing
    )


def packing_faults(
    record: Record, truss: str, ends: Mapping[str, tuple[str, str]], hung: Sequence[str]
) -> Iterator[Fault]:
    """What is wrong with the packings of a truss: bars that do not end there, forces not carried.

    `ends` bar -> its joints; `hung` the joints on which load hangs or that stand on a shoe.
    """
    for pin in pins_said(record, truss).values():
        there = [bar for bar, joints in ends.items() if pin.joint in joints]
        named = [name for entry in pin.packing for name in entry.bar]
        strangers = [name for name in named if name not in (*there, *HUNG, POST)]
        for name in dict.fromkeys(strangers):
            yield record.fault(
                pin.path, f"is no bar at {pin.address}", got=name,
                cure=did_you_mean(name, there) if there else "",
            )
        if pin.packing and not strangers:
            yield from _imbalance(record, pin, there, hung=pin.joint in hung)


def _imbalance(
    record: Record, pin: Said, there: Sequence[str], *, hung: bool
) -> Iterator[Fault]:
    """Forces that a packing carries not whole; an upright under `post` is told with its load."""
    whole = 0.5 if pin.half else 1.0
    posts = [bar for bar in there if _upright(bar)]
    sums = dict.fromkeys((*there, *([LOAD] if hung else [])), 0.0)
    counts: dict[str, int] = {}
    rows = [
        [name for one in entry.bar for name in _means(one, posts)] for entry in pin.packing
    ]
    for row in rows:
        for name in row:
            counts[name] = counts.get(name, 0) + 1
    for entry, row in zip(pin.packing, rows, strict=True):
        for name in row:
            share = whole / counts[name] if entry.share is None else entry.share
            sums[name] = sums.get(name, 0.0) + share
    for name, got in sums.items():
        if abs(got - whole) > 1e-6:
            cure = "add its bearings, or mend the shares"
            if name == LOAD:
                cure = "add 'hanger', 'shoe' or 'post', whatever it comes to the pin by"
            yield record.fault(
                pin.path,
                f"of {pin.address} carries {got:g} of the force of {name}, not {whole:g}: the pin "
                f"is out of balance by {got - whole:+g} of it", cure=cure,
            )


def _upright(bar: str) -> bool:
    """Whether a bar stands upright by its name: U4-L4."""
    first, second = bar.split("-")
    return first.lstrip("UML") == second.lstrip("UML") and first[0] != second[0]


def _means(name: str, posts: Sequence[str]) -> tuple[str, ...]:
    if name == POST:
        return (*posts, LOAD)
    return (LOAD,) if name in HUNG else (name,)


def pins_of(
    record: Record, truss: Truss, joints: Sequence[str], found: Found
) -> tuple[tuple[Pin, ...], dict[str, str]]:
    """The pins of a truss at `joints`, and address -> why one is not rated."""
    pins: list[Pin] = []
    refused: dict[str, str] = {}
    every = pins_said(record, truss.name)
    for joint in joints:
        where = f"{truss.name}/{joint}/pin"
        one = every.get(joint)
        try:
            made = NOT_RECORDED if one is None else _pin(one, truss, found)
        except NotMeasured as missing:
            made = f"{missing}"
        if isinstance(made, str):
            refused[where] = made
        else:
            pins.append(made)
    return tuple(pins), refused


def _pin(one: Said, truss: Truss, found: Found) -> Pin | str:
    """One pin, or why it is not rated. Raises NotMeasured."""
    standing = _standing(found.decisions.get(one.address, ()))
    readings = found.readings.get(one.address, ())
    if any(reading.what is What.CRACK for _, reading in readings):
        standing = standing or "a crack was read: decide on it, or repair the pin"
    if standing:
        return standing
    material = found.materials.get(one.material)
    if material is None:
        return "material of the pin not recorded"
    unknown = strength_unknown(material)
    if unknown or material.yield_stress <= 0.0:
        return unknown or "no yield stress is known of its material"
    diameter, rules = _diameter(one, readings)
    bars = [bar for bar in truss.bars if one.joint in bar.ends]
    gap = found.values.number("pin.clearance")
    hung = one.joint in {joint for joint, _ in truss.floor_joints} | {*truss.supports}
    whole = 0.5 if one.half or not one.packing else 1.0
    if one.packing:
        lying = said(one.packing, bars, whole=whole, gap=gap)
    else:
        lying = proposed(bars, hung=hung, gap=gap)
        rules = (*rules, f"{one.address}: packing not measured; one is proposed, chord outside, "
                 "then diagonals, then post, the load innermost")
    lying = with_own_weight(lying, bars)
    wrong = [*out_of_balance(lying, bars, whole=whole, hung=True)]
    if wrong:
        name, by = wrong[0]
        return f"its packing leaves {name} out of balance by {by:+g} of its force"
    packing, thinned = _thinned(placed(lying, bars, material), one.joint, truss.name, found)
    return Pin(
        address=one.address, joint=one.joint, diameter=diameter, material=material,
        packing=packing, toward=_toward(one.joint, bars, truss),
        whole=whole, proposed=not one.packing, rules=(*rules, *thinned),
    )


def _thinned(
    packing: Sequence[Packed], joint: str, truss: str, found: Found
) -> tuple[tuple[Packed, ...], tuple[str, ...]]:
    """The packing with heads as thin as they were read, and what is said of it.

    The thinnest piece of a bar by its latest readings counts for all its bearings: the safe side.
    """
    made, rules = [], dict[str, None]()
    for one in packing:
        least, said = one.thickness, ""
        for bar in one.bars:
            part = f"{truss}/{bar}"
            for day, reading in _of_heads(part, joint, found):
                if reading.value.number < least:
                    least = reading.value.number
                    said = f"{part}: bears on the pin with {reading.value}, read on {day}"
        if least <= 0.0:
            raise NotMeasured(f"{truss}/{one.bars[0]}", "thickness at its pin")
        rules |= {said: None} if said else {}
        made.append(replace(one, worn=one.thickness - least))
    return tuple(made), tuple(rules)


def _of_heads(part: str, joint: str, found: Found) -> Findings:
    """The latest reading of the thickness of each piece of a bar's head at a joint, since the bar
    was last made new."""
    renewed = max(
        (one.date for one in found.decisions.get(part, ()) if one.section is not None),
        default=date.min,
    )
    latest = {
        reading.piece: (day, reading) for day, reading in found.readings.get(part, ())
        if reading.what is What.THICKNESS and day >= renewed
        and f"{reading.address.place}" == f"head {joint}"
    }
    return tuple(latest.values())


def _diameter(one: Said, readings: Findings) -> tuple[float, tuple[str, ...]]:
    """The least diameter by the latest reading at each place [in]. Raises NotMeasured."""
    latest = {
        reading.place: (reading.value.number, f"{one.address}: {reading.value} on {day}")
        for day, reading in readings if reading.what is What.DIAMETER
    }
    if latest:
        number, rule = min(latest.values())
        return number, (rule,)
    if one.diameter is None:
        raise NotMeasured(one.address, "diameter")
    return one.diameter.number, ()


def _standing(decisions: Sequence[DecisionEntry]) -> str:
    """What was declared of a pin and no repair has set right: others.py says it."""
    standing = ""
    for decision in decisions:
        standing = "" if decision.what is Decided.REPAIR else "not rated while that stands"
    return standing


def _toward(joint: str, bars: Sequence[Bar], truss: Truss) -> dict[str, tuple[float, float]]:
    x, y = truss.joints[joint]
    found = {}
    for bar in bars:
        other = bar.ends[1] if bar.ends[0] == joint else bar.ends[0]
        u, v = truss.joints[other]
        length = dist((x, y), (u, v))
        found[bar.name] = ((u - x) / length, (v - y) / length)
    return found
