"""Brackets of the sidewalks of a record on a date."""

from eyebar.bridge.floor_beams import declared
from eyebar.bridge.floor_parts import Bracket
from eyebar.bridge.floor_said import FloorWords
from eyebar.bridge.left import left_of, reading_words
from eyebar.bridge.parts import Truss
from eyebar.bridge.shaped import shaped
from eyebar.errors import NotMeasured, OutOfRange


def brackets_of(words: FloorWords, truss: Truss) -> tuple[tuple[Bracket, ...], dict[str, str]]:
    """The brackets of the walk outside one truss where they are recorded, one at every joint of
    the floor, and address -> why one is not rated."""
    walk = words.record.floor.sidewalks.get(truss.name)
    found: list[Bracket] = []
    refused: dict[str, str] = {}
    if walk is None or walk.bracket is None or not walk.outside:
        return (), refused
    entry, stations = walk.bracket, [station for _, station in truss.floor_joints]
    springs = entry.springs.number
    edge = walk.from_truss.number
    wide = walk.width.number
    for i, (joint, station) in enumerate(truss.floor_joints):
        part = f"{truss.name}/{joint}/bracket"
        before = station - stations[max(i - 1, 0)]
        behind = stations[min(i + 1, len(stations) - 1)] - station
        state = words.state(part)
        built = shaped(state.section or entry.section)
        try:
            found.append(Bracket(
                address=part, truss=truss.name, joint=joint, station_ft=station,
                long_ft=(abs(before) + abs(behind)) / 2.0, width_ft=wide / 12.0,
                arm=max(edge, springs) + wide / 2.0 - springs,
                unheld=max(edge, springs) + wide - springs,
                kip_per_ft2=walk.weight.in_unit("kip/ft2"),
                left=left_of(part, built, state.readings).section,
                made_of=words.metal(state.material or entry.material),
                not_rated=declared(words, part),
                readings=tuple(reading_words(day, one) for day, one in state.readings),
            ))
        except NotMeasured as missing:
            refused[part] = f"{missing.what} of {part} not recorded"
        except OutOfRange as outside:
            refused[part] = f"a reading does not fit it: {outside}"
    return tuple(found), refused
