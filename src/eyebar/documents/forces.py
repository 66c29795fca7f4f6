"""The `forces` document: enough to solve the trusses again without eyebar."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.analysis.loaded import LoadedTruss
from eyebar.bridge.parts import Bridge, Truss
from eyebar.documents.opened import (
    CAUTION,
    NOT_ASSUMED_SOUND,
    Opened,
    closing,
    heading,
    opened,
)
from eyebar.documents.rate import place_object
from eyebar.documents.vehicles import vehicle_objects
from eyebar.errors import NotMeasured
from eyebar.loads import Shares, joint_loads, shares
from eyebar.rating.kept import Kept, kept_for
from eyebar.rating.live import LiveForces, dead_load_forces, live_forces
from eyebar.rating.stiffness import stiffness_areas
from eyebar.record import Record


def forces_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """Every truss as it was solved, and its forces under dead load and vehicles.

    Raises BadRecord, Unstable, OutOfRange, and NotMeasured where a weight of the floor is unknown.
    """
    return forces_of(opened(record, on=on, office=office))


def forces_of(one: Opened, kept: Kept | None = None) -> dict[str, Any]:
    """The document of a record that has been opened; `kept` is what its rating left, if at hand.

    Raises as `forces_document` does.
    """
    if one.bridge.unknown_loads:
        raise NotMeasured("the floor", f"weight ({', '.join(one.bridge.unknown_loads)})")
    vehicles = one.rated_vehicles
    kept = kept or kept_for(one.bridge, one.values)
    found = [_truss(one, truss, kept) for truss in one.bridge.trusses]
    assumed = [said for _, said in found]
    return {
        **heading("forces", 1, one),
        "trusses": [truss for truss, _ in found],
        "vehicles": vehicle_objects(vehicles.values()),
        "cautions": [
            CAUTION, NOT_ASSUMED_SOUND, *one.bridge.rules,
            *dict.fromkeys(sentence for said in assumed for sentence in said),
        ],
        **closing(one),
    }


def _truss(one: Opened, truss: Truss, kept: Kept) -> tuple[dict[str, Any], list[str]]:
    states, assumed = kept.states_of(one.bridge, truss)
    loaded = states[-1].loaded  # with the measured pulls, where there are any
    across = {
        name: shares(one.bridge.road, truss.name, vehicle, one.values)
        for name, vehicle in one.rated_vehicles.items()
        if vehicle.width_ft <= one.bridge.road.clear_width_ft
    }
    live = live_forces(
        loaded, {n: one.vehicles[n] for n in across}, {n: s.one_lane for n, s in across.items()}
    )
    return {
        "truss": truss.name,
        "joints": {name: list(place) for name, place in truss.joints.items()},
        "floor_joints": [[joint, station] for joint, station in truss.floor_joints],
        "bars": _bars(loaded),
        "supports": {joint: list(held) for joint, held in truss.supports.items()},
        "dead_loads": _dead_loads(one.bridge, truss),
        "share": {name: _share(of) for name, of in across.items()},
        "dead": dead_load_forces(loaded),
        "live": {
            name: None if forces.lost else _live(loaded, forces) for name, forces in live.items()
        },
        "no_equilibrium": {
            name: {"reason": forces.lost.sentence, "panel": forces.lost.panel}
            for name, forces in live.items() if forces.lost
        },
    }, assumed


def _bars(loaded: LoadedTruss) -> dict[str, Any]:
    return {
        bar.name: {
            "ends": list(bar.ends),
            "area_in2": bar.area,
            "modulus_ksi": bar.modulus,
            "can_push": bar.can_push,
            "can_pull": bar.can_pull,
            "initial_kip": bar.initial_kip,
            "gap_in": bar.gap_in,
        }
        for bar in loaded.model.bars
    }


def _dead_loads(bridge: Bridge, truss: Truss) -> dict[str, Any]:
    areas, _ = stiffness_areas(truss)
    loads = joint_loads(truss, bridge.weights[truss.name], areas)
    return {joint: {"dc_kip": dc, "dw_kip": dw} for joint, (dc, dw) in loads.items()}


def _share(of: Shares) -> dict[str, float | None]:
    return {"one_lane": of.one_lane, "two_lanes": of.two_lanes, "middle": of.middle}


def _live(loaded: LoadedTruss, forces: LiveForces) -> dict[str, Any]:
    return {
        name: {
            "min": float(forces.least[i]),
            "max": float(forces.greatest[i]),
            "min_at": place_object(forces.least_at[i]),
            "max_at": place_object(forces.greatest_at[i]),
        }
        for i, name in enumerate(loaded.model.names)
    }


