"""The `influence` document: the influence line of one bar, and the worst vehicle standing on it."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import numpy as np

from eyebar.addresses import address
from eyebar.analysis.loaded import LoadedTruss
from eyebar.analysis.paths import starting_sets
from eyebar.bridge.parts import Truss
from eyebar.documents.drawn import drawn_of
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, Opened, closing, heading, opened
from eyebar.documents.rate import place_object
from eyebar.documents.vehicles import vehicle_objects
from eyebar.errors import Unknown, Unstable, nearest
from eyebar.loads import shares
from eyebar.rating import Place, loaded_states
from eyebar.rating.live import LiveForces, dead_load_forces, live_forces
from eyebar.record import Record
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle


def influence_document(
    record: Path | Record, part: str, *, on: date | None = None, office: Path | None = None,
    vehicle: str | None = None,
) -> dict[str, Any]:
    """The influence line of a bar: `part` is its address, or its name in the first truss.

    Raises BadRecord, Unknown, Unstable, OutOfRange.
    """
    return influence_of(opened(record, on=on, office=office), part, vehicle)


def influence_of(one: Opened, part: str, vehicle: str | None = None) -> dict[str, Any]:
    """The document of a record that has been opened.

    Without a vehicle: of those by which the office posts the one that changes the force most.
    """
    truss, bar = _found(one, part)
    loaded = _loaded(one, truss)
    i = loaded.model.names.index(bar)
    vehicles = _vehicles(one, vehicle)
    across = {name: shares(one.bridge.road, truss.name, moved, one.values).one_lane
              for name, moved in vehicles.items()}
    live = live_forces(loaded, vehicles, across)
    name, sense = _worst(live, i)
    at = (live[name].greatest_at if sense > 0 else live[name].least_at)[i]
    force = float((live[name].greatest if sense > 0 else live[name].least)[i])
    stations = loaded.lines.stations_ft
    axles = _axles(vehicles[name], at)
    ordinates = _ordinates(loaded, axles, across[name])[:, i]
    (object_,) = vehicle_objects([vehicles[name]])
    return {
        **heading("influence", 1, one),
        "truss": next(
            shown for shown in drawn_of(one)["trusses"] if shown["truss"] == truss.name
        ),
        "part": f"{truss.name}/{bar}",
        "joints": list(loaded.floor_joints),
        "stations_ft": stations.tolist(),
        "ordinates": ordinates.tolist(),
        "dead_kip": dead_load_forces(loaded)[bar],
        "vehicle": object_,
        "share": across[name],
        "at": place_object(at),
        "axles": [
            {
                "station_ft": station, "axle_kip": weight,
                "ordinate": float(np.interp(station, stations, ordinates, left=0.0, right=0.0)),
            }
            for station, weight in axles
        ],
        "live_kip": force,
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def _found(one: Opened, part: str) -> tuple[Truss, str]:
    """The truss and the bar of an address, or of a bar's name alone in the first truss."""
    trusses = {truss.name: truss for truss in one.bridge.trusses}
    first = one.bridge.trusses[0].name
    wanted = address(part).part if "/" in part else f"{first}/{part}"
    known = {
        bar.address: (truss, bar.name) for truss in trusses.values() for bar in truss.bars
    }
    if wanted not in known:
        raise Unknown("bar", wanted, near=nearest(wanted, known), where=one.bridge.name)
    return known[wanted]


def _loaded(one: Opened, truss: Truss) -> LoadedTruss:
    states, _ = loaded_states(one.bridge, truss)
    return states.get("measured", states["none"])


def _vehicles(one: Opened, vehicle: str | None) -> dict[str, Vehicle]:
    if vehicle is None:
        return {name: one.vehicles[name] for name in one.values.names("posting.vehicles")}
    if vehicle not in one.vehicles or not one.vehicles[vehicle].axles_kip:
        raise Unknown("vehicle with axles", vehicle, near=nearest(vehicle, one.vehicles))
    return {vehicle: one.vehicles[vehicle]}


def _worst(live: Mapping[str, LiveForces], i: int) -> tuple[str, float]:
    """The vehicle that changes the force most, and in which sense: +1 to pull, -1 to push."""
    changes = {
        (name, sense): sense * float((of.greatest if sense > 0 else of.least)[i])
        for name, of in live.items() if of.lost is None for sense in (1.0, -1.0)
    }
    if not changes:
        lost = next(of.lost for of in live.values() if of.lost is not None)
        raise Unstable(
            f"no equilibrium under {', '.join(live)}: {lost.sentence}; an influence line with a "
            "vehicle on it needs one under which the truss stands",
            bars=lost.slack, panel=lost.panel,
        )
    return max(changes, key=lambda key: changes[key])


def _axles(vehicle: Vehicle, at: Place | None) -> list[tuple[float, float]]:
    """(station, weight) of every axle where it stands; none where the bar feels nothing."""
    if at is None:
        return []
    back = -1.0 if at.direction is Direction.UP else 1.0
    behind = vehicle.behind_front_ft(at.spacing_ft)
    return [
        (at.front_axle_ft + back * off, weight)
        for off, weight in zip(behind, vehicle.axles_kip, strict=True)
    ]


def _ordinates(
    loaded: LoadedTruss, axles: list[tuple[float, float]], share: float
) -> np.ndarray[Any, np.dtype[np.float64]]:
    """(p, n) by the bars that work with dead load and the vehicle where it stands."""
    lines = loaded.lines
    forces = loaded.dead(1.0, 1.0).copy()
    for station, weight in axles:
        if lines.stations_ft[0] <= station <= lines.stations_ft[-1]:
            forces += share * weight * np.array([
                np.interp(station, lines.stations_ft, column) for column in lines.units.T
            ])
    number = starting_sets(loaded.sets, forces[None])[0]
    return lines.ordinates(loaded.start(1.0, 1.0) if number is None else number)
