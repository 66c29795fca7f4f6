"""Blocks and shoes at joints: which bars push on them, and why some are not rated."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from eyebar.addresses import LOOSE
from eyebar.bridge.parts import Bar, Material, Seat
from eyebar.record import BOTH_TRUSSES, Record
from eyebar.record.layout import images_of
from eyebar.terms import Metal

NOT_YET = "not rated by this version"
NO_PUSH = "no bar that can push ends on it"


def seats_of(
    record: Record, truss: str, materials: Mapping[str, Material]
) -> Mapping[str, Seat]:
    """Joint -> the block there, of one truss; of a mirrored half the images too."""
    seats: dict[str, Seat] = {}
    for entry in record.joint_blocks.values():
        material = materials.get(entry.material)
        if entry.truss not in (BOTH_TRUSSES, truss) or material is None:
            continue
        allowed = material.allowed
        images = images_of(record.trusses, entry.joints) if record.trusses.mirrored else ()
        for joint in (*entry.joints, *images):
            seats.setdefault(joint, Seat(
                joint=joint, metal=material.metal,
                area=None if entry.bearing is None else entry.bearing.number,
                allowed=None if allowed is None else allowed.push,
                source="" if allowed is None else allowed.source,
            ))
    return seats


def seated(bars: Sequence[Bar], seats: Mapping[str, Seat]) -> tuple[Bar, ...]:
    """The bars, those that push told which blocks their ends bear on."""
    return tuple(
        replace(bar, seats=tuple(seats[joint] for joint in bar.ends if joint in seats))
        if bar.can_push else bar
        for bar in bars
    )


def not_rated(seat: Seat, bars: Sequence[Bar]) -> str:
    """Why the block at a joint of a truss of these bars is not rated; empty where it is."""
    if seat.metal is not Metal.CAST_IRON and seat.metal is not Metal.TIMBER:
        return NOT_YET
    if seat.allowed is None:
        return (
            f"no allowable stress in push is given for its {seat.metal}; give one with its source"
        )
    if seat.area is None:
        return "the area that bars bear on it with is not measured"
    pushing = [bar for bar in bars if seat in bar.seats]
    loose = [bar.name for bar in pushing if bar.name.endswith(LOOSE)]
    if loose:
        return f"{loose[0]} bears on it beside its tight pieces: how they share is not known"
    return "" if pushing else NO_PUSH
