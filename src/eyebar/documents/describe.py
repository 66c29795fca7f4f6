"""The `describe` document: the bridge, its iron, what was read, decided and weighed, by date."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.bridge.parts import Bridge, Material, Truss
from eyebar.documents.check import sizes_not_measured
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, Opened, closing, heading, opened
from eyebar.record import Record
from eyebar.record.findings import DecisionEntry, InspectionEntry, ReadingEntry

CODES = ("deck", "superstructure", "substructure")
"""The components that have a condition code."""


def describe_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """What a rating starts from, in words and figures. Raises BadRecord."""
    return described(opened(record, on=on, office=office))


def described(one: Opened) -> dict[str, Any]:
    """The document of a record that has been opened."""
    record, bridge = one.record, one.bridge
    return {
        **heading("describe", 1, one),
        "owner": bridge.owner,
        "place": bridge.place,
        "built": bridge.built,
        "form": str(record.trusses.form or ""),
        "trusses": [_truss(truss) for truss in bridge.trusses],
        "road": _road(bridge),
        "condition": condition_codes(record, bridge.on),
        "materials": [_material(one) for one in _materials(bridge)],
        "timbers": [
            {"name": name, "species": str(timber.species or ""), "grade": str(timber.grade or "")}
            for name, timber in record.floor.timbers.items()
        ],
        "inspections": [
            _inspection(found) for found in sorted(record.inspections, key=lambda one: one.date)
            if found.date <= bridge.on
        ],
        "decisions": [
            _decision(made) for made in sorted(record.decisions, key=lambda one: one.date)
            if made.date <= bridge.on
        ],
        "dead_loads": [
            {
                "truss": truss, "name": weight.name, "kip_per_ft": weight.kip_per_ft,
                "kip_at_joints": sum(weight.kip_at_joints.values()), "wearing": weight.wearing,
                "working": weight.working,
            }
            for truss, weights in bridge.weights.items() for weight in weights
        ],
        "not_measured": [
            {"part": part, "what": list(what)}
            for part, what in sizes_not_measured(record).items()
        ],
        "unknown_loads": list(bridge.unknown_loads),
        "rules": list(bridge.rules),
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def _truss(truss: Truss) -> dict[str, Any]:
    heights = [y for _, y in truss.joints.values()]
    stations = [station for _, station in truss.floor_joints]
    return {
        "truss": truss.name,
        "panels": len(stations) - 1,
        "span_ft": stations[-1] - stations[0],
        "depth_ft": (max(heights) - min(heights)) / 12.0,
        "bars": len(truss.bars) + len(truss.broken),
    }


def _road(bridge: Bridge) -> dict[str, Any] | None:
    road = bridge.roadway
    if road is None:
        return None
    return {
        "clear_width_ft": road.clear_width_ft,
        "truss_spacing_ft": road.truss_spacing_ft,
        "surface": road.surface,
        "trucks_a_day": road.trucks_a_day,
    }


def condition_codes(record: Record, on: date) -> dict[str, int | None]:
    """Of each component the latest code up to the date, else the record's own."""
    found = {name: getattr(record.condition, name) for name in CODES}
    for inspection in sorted(record.inspections, key=lambda one: one.date):
        if inspection.date <= on and inspection.condition is not None:
            given = {name: getattr(inspection.condition, name) for name in CODES}
            found |= {name: code for name, code in given.items() if code is not None}
    return found


def _materials(bridge: Bridge) -> list[Material]:
    found = {
        bar.material.name: bar.material for truss in bridge.trusses
        for bar in (*truss.bars, *truss.broken)
    }
    return list(found.values())


def _material(one: Material) -> dict[str, Any]:
    return {
        "name": one.name,
        "metal": str(one.metal),
        "yield_ksi": one.yield_stress,
        "tensile_ksi": one.tensile_strength,
        "modulus_ksi": one.modulus,
        "coupons": one.coupons,
        "sources": [{"figure": figure, "source": said} for figure, said in one.sources.items()],
    }


def _inspection(one: InspectionEntry) -> dict[str, Any]:
    return {
        "date": one.date.isoformat(),
        "by": str(one.by),
        "note": str(one.note or ""),
        "readings": [_reading(reading) for reading in one.readings],
    }


def _reading(one: ReadingEntry) -> dict[str, Any]:
    return {
        "part": one.part.part,
        "place": one.place or one.part.place,
        "what": str(one.what),
        "value": str(one.value),
        "plus_minus": str(one.plus_minus or ""),
        "gauge": str(one.gauge or ""),
        "piece": one.piece,
        "note": str(one.note or ""),
    }


def _decision(one: DecisionEntry) -> dict[str, Any]:
    return {
        "date": one.date.isoformat(),
        "what": str(one.what),
        "part": one.part.part,
        "by": str(one.by or ""),
        "note": str(one.note or ""),
    }
