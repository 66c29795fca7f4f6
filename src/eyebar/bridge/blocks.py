"""Blocks and shoes at joints: which bars push on them, and why they are not rated."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from eyebar.bridge.parts import Bar, Material, Seat
from eyebar.record import BOTH_TRUSSES, Record
from eyebar.record.layout import images_of
from eyebar.terms import Metal

RATED_WITH_BARS = "its bearing is rated with the bars that push on it, by allowable stress alone"


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


def not_rated(seat: Seat) -> str:
    """Why a block is not rated, or how far it is."""
    if seat.metal is not Metal.CAST_IRON and seat.metal is not Metal.TIMBER:
        return ""
    if seat.allowed is None:
        return (
            f"no allowable stress in push is given for its {seat.metal}; give one with its source"
        )
    if seat.area is None:
        return "the area that bars bear on it with is not measured"
    return RATED_WITH_BARS
