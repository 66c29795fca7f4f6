"""Parts that carry traffic and are no bars: pins, hangers, blocks, floor, deck, bearings."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType

from eyebar.bridge.blocks import not_rated
from eyebar.bridge.parts import OtherPart, Seat, Truss
from eyebar.record import Decided, DecisionEntry, Record
from eyebar.terms import Kind


def other_parts(
    record: Record, trusses: Sequence[Truss], pinned: Mapping[str, frozenset[str]],
    decisions: Mapping[str, tuple[DecisionEntry, ...]], *,
    seats: Mapping[str, Mapping[str, Seat]], pins: Mapping[str, str],
    rated: Collection[str] = (), floor: Mapping[str, str] = MappingProxyType({}),
) -> tuple[OtherPart, ...]:
    """Every part that is no bar, with the reason for which it is not rated.

    Blocks are told here only where something stands against rating them. `pinned` names the joints
    of each truss where a bar turns about a pin, `seats` the blocks of each by joint; `decisions`
    those in force, by address; `pins` has the reason for which a pin is not rated, by address:
    those that are not there are rated. `rated` are the parts of the floor that are, `floor` has the
    reason for some of those that are not.
    """
    found = [
        *(part for truss in trusses for part in _of_truss(truss, pinned[truss.name])),
        *_of_floor(record, trusses[0]),
    ]
    parts = [
        *((*part, pins[part[0]]) for part in found if part[0] in pins),
        *((*part, _of_floor_part(part[0], part[2], floor)) for part in found
          if part[2] is not Kind.PIN and part[0] not in rated),
        *(
            (f"{truss.name}/{joint}/{Kind.JOINT_BLOCK}", truss.name, Kind.JOINT_BLOCK,
             not_rated(seat, truss.bars))
            for truss in trusses for joint, seat in seats[truss.name].items()
        ),
    ]
    parts += [
        (address, address.partition("/")[0], Kind.BRACKET, why) for address, why in floor.items()
        if address.endswith(f"/{Kind.BRACKET}")
    ]
    told = [(*part[:3], [*_declared(decisions.get(part[0], ())), part[3]]) for part in parts]
    return tuple(
        OtherPart(
            address=address, truss=truss, kind=kind, not_rated="; ".join(filter(None, reasons))
        )
        for address, truss, kind, reasons in told if any(reasons)
    )


SIZE = "size not recorded"
UNPLACED = ""
"""The address under which the reason stands that no place across the road is known."""


def _of_floor_part(address: str, kind: Kind, floor: Mapping[str, str]) -> str:
    """Why a part of the floor is not rated."""
    if address in floor:
        return floor[address]
    if kind in (Kind.STRINGER, Kind.FLOORBEAM):
        return floor.get(UNPLACED, SIZE)
    return SIZE


def _of_truss(truss: Truss, pinned: frozenset[str]) -> Iterator[tuple[str, str | None, Kind]]:
    for joint in truss.joints:
        if joint in pinned:
            yield f"{truss.name}/{joint}/pin", truss.name, Kind.PIN
    for joint in beam_joints(truss):
        if not joint.startswith("U"):
            yield f"{truss.name}/{joint}/hanger", truss.name, Kind.HANGER
    for joint in truss.supports:
        yield f"{truss.name}/{joint}/bearing", truss.name, Kind.BEARING


def beam_joints(truss: Truss) -> tuple[str, ...]:
    """The floor's joints that have a floorbeam: all but those over the bearings."""
    return tuple(joint for joint, _ in truss.floor_joints if joint not in truss.supports)


def _of_floor(record: Record, truss: Truss) -> Iterator[tuple[str, str | None, Kind]]:
    for joint in beam_joints(truss):
        yield f"floor/{joint}/floorbeam", None, Kind.FLOORBEAM
    # A floor whose stringers nobody counted has one at least.
    stringers = record.floor.stringers.number or 1
    for panel in range(1, len(truss.floor_joints)):
        for stringer in range(1, stringers + 1):
            yield f"floor/panel {panel}/stringer {stringer}", None, Kind.STRINGER
    yield "floor/deck", None, Kind.DECK


def _declared(decisions: Iterable[DecisionEntry]) -> list[str]:
    """What was declared of such a part and no repair has set right."""
    standing: dict[Decided, str] = {}
    for decision in decisions:
        if decision.what is Decided.REPAIR:
            standing.clear()
        else:
            standing[decision.what] = f"declared {_WORDS[decision.what]} on {decision.date}"
    return list(standing.values())


_WORDS = {
    Decided.BROKEN: "broken", Decided.LOOSE: "loose", Decided.CRACK_FOUND: "cracked",
    Decided.PULL_ACCEPTED: "pulled as measured",
}
