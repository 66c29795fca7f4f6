"""The `drawn` document: the bridge as a draughtsman needs it, its iron as built and as it is left.

Nothing is rated for it. Where a vehicle stands across the road is found as its loads are.
"""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.addresses import address
from eyebar.bridge.floor_parts import Floor, Floorbeam, Stringer
from eyebar.bridge.parts import Bar, Truss
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, Opened, closing, heading, opened
from eyebar.documents.vehicles import vehicle_objects
from eyebar.errors import NotMeasured, Unknown, nearest
from eyebar.loads.wheels_across import AcrossLine, RoadAcross, hat, worst_placings
from eyebar.record import Record
from eyebar.sections.outlines import Figure, figure
from eyebar.sections.properties import area
from eyebar.sections.shapes import Section


def drawn_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """Trusses, floor and road in figures. Raises BadRecord."""
    return drawn_of(opened(record, on=on, office=office))


def drawn_of(one: Opened, across: dict[str, Any] | None = None) -> dict[str, Any]:
    """The document of a record that has been opened; `across` is what `standing_across` gave."""
    bridge = one.bridge
    return {
        **heading("drawn", 1, one),
        "owner": bridge.owner,
        "place": bridge.place,
        "trusses": [_truss(truss) for truss in bridge.trusses],
        "road": _road(one),
        "floor": None if bridge.floor is None else _floor(bridge.floor),
        "across": across,
        "rules": list(bridge.rules),
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def standing_across(one: Opened, vehicle: str, part: str) -> dict[str, Any]:
    """Where the wheel lines of one vehicle stand across the road, worst for a truss or a stringer,
    or for a floorbeam or anything else as near to the first truss as they come.

    Raises Unknown for a vehicle that is not there, NotMeasured where the road was not measured.
    """
    if vehicle not in one.vehicles:
        raise Unknown("vehicle", vehicle, near=nearest(vehicle, one.vehicles))
    moved = one.vehicles[vehicle]
    road, trusses = one.bridge.road, [truss.name for truss in one.bridge.trusses]
    line, worst_for = _line(one, part, trusses)
    curb = one.bridge.floor.curb_ft if one.bridge.floor else road.curb_ft[trusses[0]]
    placing = worst_placings(
        line, RoadAcross(curb_ft=curb, clear_ft=road.clear_width_ft, held_ft=road.use.held_ft),
        gauge_ft=moved.gauge_ft, most_lanes=1, values=one.values,
    )[0]
    (object_,) = vehicle_objects([moved])
    return {
        "vehicle": object_, "worst_for": worst_for, "wheels_ft": list(placing.wheels_ft),
        "share": placing.share,
    }


def _line(one: Opened, part: str, trusses: Sequence[str]) -> tuple[AcrossLine, str]:
    """The influence line across, and the address that it is for."""
    spacing = one.bridge.road.truss_spacing_ft
    floor = one.bridge.floor
    if part.startswith("floor/panel ") and floor is not None:
        wanted = address(part).part
        found = {beam.address: beam for beam in floor.stringers}
        if wanted not in found:
            raise Unknown("part", wanted, near=nearest(wanted, found))
        alike = [beam for beam in floor.stringers if beam.panel == found[wanted].panel]
        places = [beam.place_ft for beam in alike]
        return hat(places, places.index(found[wanted].place_ft)), wanted
    named = part.partition("/")[0]
    truss = named if named in trusses else trusses[0]
    ends = (1.0, 0.0) if truss == trusses[0] else (0.0, 1.0)
    return AcrossLine(places_ft=(0.0, spacing), ordinates=ends), truss


def _truss(truss: Truss) -> dict[str, Any]:
    return {
        "truss": truss.name,
        "joints": {name: list(place) for name, place in truss.joints.items()},
        "floor_joints": [[joint, station] for joint, station in truss.floor_joints],
        "supports": {joint: list(held) for joint, held in truss.supports.items()},
        "bars": {
            **{bar.name: _bar(bar, broken=False) for bar in truss.bars},
            **{bar.name: _bar(bar, broken=True) for bar in truss.broken},
        },
        "pins": {pin.joint: pin.diameter for pin in truss.pins},
    }


def _bar(bar: Bar, *, broken: bool) -> dict[str, Any]:
    return {
        "part": bar.address, "kind": str(bar.kind), "ends": list(bar.ends),
        "length_in": bar.length, "can_push": bar.can_push, "can_pull": bar.can_pull,
        "broken": broken, "not_rated": bar.not_rated, "readings": list(bar.readings),
        **_section(bar.as_built, bar.left),
    }


def _section(as_built: Section, left: Section) -> dict[str, Any]:
    return {
        "as_built": figure_object(figure(as_built)), "left": figure_object(figure(left)),
        "area_in2": _area(as_built), "left_in2": _area(left),
    }


def _area(section: Section) -> float | None:
    try:
        return area(section)
    except NotMeasured:
        return None


def figure_object(one: Figure) -> dict[str, Any]:
    """A section as an object: its shape and its pieces with sizes and outlines."""
    return {
        "shape": one.shape,
        "apart_known": one.apart_known,
        "pieces": [
            {
                "name": piece.name,
                "sizes_in": dict(piece.sizes),
                "outline_in": [[float(x), float(y)] for x, y in piece.outline],
            }
            for piece in one.pieces
        ],
    }


def _road(one: Opened) -> dict[str, Any] | None:
    road = one.bridge.roadway
    if road is None:
        return None
    return {
        "clear_width_ft": road.clear_width_ft,
        "truss_spacing_ft": road.truss_spacing_ft,
        "curb_ft": one.bridge.floor.curb_ft if one.bridge.floor
        else road.curb_ft[one.bridge.trusses[0].name],
        "surface": road.surface,
    }


def _floor(floor: Floor) -> dict[str, Any]:
    deck = floor.deck
    return {
        "floorbeams": [_floorbeam(beam) for beam in floor.floorbeams],
        "stringers": [_stringer(beam) for beam in floor.stringers],
        "deck": None if deck is None else {
            "part": deck.address, "kind": deck.kind, "runs": deck.runs,
            "built_in": deck.built, "left_in": deck.thickness,
            "plank_width_in": deck.plank_width, "not_rated": deck.not_rated,
            "readings": list(deck.readings),
        },
        "layers": [layer.name for layer in floor.layers],
        "sidewalks": [
            {"truss": one.truss, "place_ft": one.place_ft, "width_ft": one.width_ft}
            for one in floor.sidewalks
        ],
    }


def _floorbeam(beam: Floorbeam) -> dict[str, Any]:
    return {
        "part": beam.address, "kind": "floorbeam", "joint": beam.joint,
        "station_ft": beam.station_ft, "span_ft": beam.span_ft, "slant": beam.slant,
        "riveted": beam.riveted, "trussed": beam.truss_rods is not None,
        "not_rated": beam.not_rated, "readings": list(beam.readings),
        **_section(beam.as_built, _least(beam)),
    }


def _stringer(beam: Stringer) -> dict[str, Any]:
    return {
        "part": beam.address, "kind": "stringer", "panel": beam.panel, "number": beam.number,
        "begin_ft": beam.begin_ft, "end_ft": beam.end_ft, "place_ft": beam.place_ft,
        "framed": beam.beam_ends.fastening is not None,
        "not_rated": beam.not_rated, "readings": list(beam.readings),
        **_section(beam.as_built, _least(beam)),
    }


def _least(beam: Floorbeam | Stringer) -> Section:
    """The stretch of a beam with least metal or wood; as built where none is told."""
    known = [(found, one.section) for one in beam.stretches
             if (found := _area(one.section)) is not None]
    return min(known, key=lambda pair: pair[0])[1] if known else beam.as_built
